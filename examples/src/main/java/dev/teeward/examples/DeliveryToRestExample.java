package dev.teeward.examples;

import static dev.teeward.quantity.Units.degrees;
import static dev.teeward.quantity.Units.mph;

import dev.teeward.flight.Flight;
import dev.teeward.flight.FlightModel;
import dev.teeward.flight.LaunchConditions;
import dev.teeward.flight.ground.Ground;
import dev.teeward.flight.ground.TurfClass;
import dev.teeward.flight.ground.TurfSpread;
import dev.teeward.flight.impact.ClubHead;
import dev.teeward.flight.impact.Delivery;
import dev.teeward.flight.impact.ImpliedDelivery;
import dev.teeward.flight.impact.RigidImpact;
import dev.teeward.flight.impact.TypicalHead;
import dev.teeward.flight.study.DeliveryPropagation;
import dev.teeward.flight.study.DeliveryTolerance;
import dev.teeward.flight.study.FlightOutput;
import dev.teeward.flight.study.HeadSpread;
import dev.teeward.quantity.Interval;
import dev.teeward.quantity.LengthUnit;
import java.util.Locale;

/** From the delivery of a club to where the ball stops, and back from the launch to the face and path that it implies. */
public final class DeliveryToRestExample {
    private DeliveryToRestExample() {}

    /**
     * Runs the example.
     *
     * @param args not used
     */
    public static void main(String[] args) {
        // README begin
        ClubHead head = TypicalHead.iron(6);
        Delivery delivery = Delivery.builder()
                .clubSpeed(mph(84.0))
                .attackAngle(degrees(-3.0))
                .clubPath(degrees(2.0))
                .faceAngle(degrees(-0.5))
                .dynamicLoft(degrees(22.0))
                .build();
        LaunchConditions launch = RigidImpact.standard().strike(delivery, head).launch();
        FlightModel model = FlightModel.standard().withGround(Ground.of(TurfClass.FAIRWAY));
        Flight flight = model.fly(launch);
        Interval rest = DeliveryPropagation.withDefaults()
                .withDelivery(DeliveryTolerance.typical())
                .withHeadSpread(HeadSpread.typical())
                .withBallSpread(model.ball().aerodynamics().spread().orElseThrow())
                .withTurfSpread(TurfSpread.typical())
                .propagate(model, head, delivery)
                .estimate(FlightOutput.TOTAL)
                .interval();
        ImpliedDelivery implied = ImpliedDelivery.of(launch, head);
        System.out.printf(
                Locale.ROOT,
                "impact: ball %.1f mph, launch %.1f deg, start %+.1f deg, spin %.0f rpm, tilt %+.1f deg%n"
                        + "flight: carry %.1f yd, curve %+.1f yd; at rest after %.1f yd (%.0f to %.0f yd)%n"
                        + "back:   face %+.1f deg, path %+.1f deg%n",
                launch.ballSpeed().mph(),
                launch.launchAngle().degrees(),
                launch.startDirection().degrees(),
                launch.spinRate().rpm(),
                launch.axisTilt().degrees(),
                flight.carry().yards(),
                flight.curve().yards(),
                flight.total().orElseThrow().yards(),
                LengthUnit.YARD.fromSi(rest.lower()),
                LengthUnit.YARD.fromSi(rest.upper()),
                implied.faceAngle().degrees(),
                implied.delivery().orElseThrow().clubPath().degrees());
        // README end
    }
}
