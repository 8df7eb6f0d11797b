package dev.teeward.flight.study;

import dev.teeward.flight.LaunchConditions;
import dev.teeward.flight.impact.ClubHead;
import dev.teeward.flight.impact.Delivery;
import dev.teeward.flight.impact.ImpactModel;
import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Length;
import dev.teeward.quantity.Speed;

/** An impact as a function of numbers: seven in the units of {@link ImpactQuantity}, five out. */
final class ImpactEquations {
    private ImpactEquations() {}

    static Delivery delivery(double[] x) {
        return Delivery.builder()
                .clubSpeed(Speed.ofMetersPerSecond(x[0]))
                .attackAngle(Angle.ofDegrees(x[1]))
                .clubPath(Angle.ofDegrees(x[2]))
                .faceAngle(Angle.ofDegrees(x[3]))
                .dynamicLoft(Angle.ofDegrees(x[4]))
                .strikeToe(Length.ofMillimeters(x[5]))
                .strikeUp(Length.ofMillimeters(x[6]))
                .build();
    }

    static double[] numbers(Delivery delivery) {
        return new double[] {
            delivery.clubSpeed().metersPerSecond(),
            delivery.attackAngle().degrees(),
            delivery.clubPath().degrees(),
            delivery.faceAngle().degrees(),
            delivery.dynamicLoft().degrees(),
            delivery.strikeToe().millimeters(),
            delivery.strikeUp().millimeters()
        };
    }

    static double[] launch(ImpactModel model, ClubHead head, double[] x) {
        return numbers(model.strike(delivery(x), head).launch());
    }

    static boolean slips(ImpactModel model, ClubHead head, double[] x) {
        return model.strike(delivery(x), head).slipped();
    }

    static double[] numbers(LaunchConditions launch) {
        return new double[] {
            launch.ballSpeed().metersPerSecond(),
            launch.launchAngle().degrees(),
            launch.startDirection().degrees(),
            launch.spinRate().rpm(),
            launch.axisTilt().degrees()
        };
    }
}
