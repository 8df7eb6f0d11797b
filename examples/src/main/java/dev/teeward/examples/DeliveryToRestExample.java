package dev.teeward.examples;

import static dev.teeward.quantity.Units.degrees;
import static dev.teeward.quantity.Units.mph;

import dev.teeward.flight.Flight;
import dev.teeward.flight.FlightModel;
import dev.teeward.flight.LaunchConditions;
import dev.teeward.flight.ground.Ground;
import dev.teeward.flight.ground.TurfClass;
import dev.teeward.flight.impact.ClubHead;
import dev.teeward.flight.impact.Delivery;
import dev.teeward.flight.impact.ImpliedDelivery;
import dev.teeward.flight.impact.RigidImpact;
import dev.teeward.flight.impact.TypicalHead;
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
        ImpliedDelivery implied = ImpliedDelivery.of(launch, head);
        System.out.printf(
                Locale.ROOT,
                "impact: ball %.1f mph, launch %.1f deg, start %+.1f deg, spin %.0f rpm, tilt %+.1f deg%n"
                        + "flight: carry %.1f yd, curve %+.1f yd; at rest after %.1f yd%n"
                        + "back:   face %+.1f deg, path %+.1f deg%n",
                launch.ballSpeed().mph(),
                launch.launchAngle().degrees(),
                launch.startDirection().degrees(),
                launch.spinRate().rpm(),
                launch.axisTilt().degrees(),
                flight.carry().yards(),
                flight.curve().yards(),
                flight.total().orElseThrow().yards(),
                implied.faceAngle().degrees(),
                implied.delivery().orElseThrow().clubPath().degrees());
        // README end
    }
}
