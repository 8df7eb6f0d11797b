package dev.teeward.flight.impact;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.flight.Ball;
import dev.teeward.flight.LaunchConditions;
import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Handedness;
import dev.teeward.quantity.Length;
import dev.teeward.quantity.Speed;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/**
 * What every {@link ImpactModel} promises. A model's own test extends this class and supplies the model.
 *
 * <pre>{@code
 * class MyImpactTest extends ImpactModelContract {
 *     protected ImpactModel model() { return new MyImpact(); }
 * }
 * }</pre>
 */
public abstract class ImpactModelContract {
    private static final List<ClubHead> HEADS = List.of(
            TypicalHead.driver(),
            TypicalHead.fairwayWood(5),
            TypicalHead.hybrid(4),
            TypicalHead.iron(6),
            TypicalHead.wedge(56.0));
    private static final double[] LOFTS = {14.0, 18.0, 22.0, 24.0, 48.0};

    /**
     * The model under test.
     *
     * @return the model
     */
    protected abstract ImpactModel model();

    /**
     * The ball that the model strikes.
     *
     * @return the ball, that of the rules unless overridden
     */
    protected Ball ball() {
        return Ball.standard();
    }

    /**
     * Whether the model takes a strike beside the centre of the face; override with false if it refuses one.
     *
     * @return true unless overridden
     */
    protected boolean takesOffCentreStrikes() {
        return true;
    }

    private record Case(Delivery delivery, ClubHead head) {}

    private List<Case> cases() {
        SplittableRandom random = new SplittableRandom(19_720_101L);
        List<Case> cases = new ArrayList<>();
        for (int i = 0; i < 500; i++) {
            int kind = i % HEADS.size();
            double reach = takesOffCentreStrikes() && i % 2 == 0 ? 1.0 : 0.0;
            Handedness hand = i % 3 == 0 ? Handedness.LEFT : Handedness.RIGHT;
            cases.add(new Case(
                    delivery(
                            random.nextDouble(25.0, 52.0),
                            random.nextDouble(-6.0, 4.0),
                            random.nextDouble(-6.0, 6.0),
                            random.nextDouble(-6.0, 6.0),
                            LOFTS[kind] + random.nextDouble(-4.0, 4.0),
                            reach * random.nextDouble(-15.0, 15.0),
                            reach * random.nextDouble(-8.0, 8.0)),
                    HEADS.get(kind).toBuilder().handedness(hand).build()));
        }
        return cases;
    }

    private static Delivery delivery(
            double speed, double attack, double path, double face, double loft, double toe, double up) {
        return Delivery.builder()
                .clubSpeed(Speed.ofMetersPerSecond(speed))
                .attackAngle(Angle.ofDegrees(attack))
                .clubPath(Angle.ofDegrees(path))
                .faceAngle(Angle.ofDegrees(face))
                .dynamicLoft(Angle.ofDegrees(loft))
                .strikeToe(Length.ofMillimeters(toe))
                .strikeUp(Length.ofMillimeters(up))
                .build();
    }

    private static double[] numbers(LaunchConditions launch) {
        return new double[] {
            launch.ballSpeed().metersPerSecond(),
            launch.launchAngle().radians(),
            launch.startDirection().radians(),
            launch.spinRate().radiansPerSecond(),
            launch.axisTilt().radians()
        };
    }

    /** The ball cannot take more energy of flight and turning than the head brings, nor can both have lost less than none. */
    @Test
    void energyIsNotMade() {
        double mass = ball().mass().kilograms();
        double radius = 0.5 * ball().diameter().meters();
        double inertia = ball().inertiaFactor() * mass * radius * radius;
        for (Case one : cases()) {
            Impact impact = model().strike(one.delivery, one.head);
            double[] launch = numbers(impact.launch());
            double club = one.delivery.clubSpeed().metersPerSecond();
            double brought = 0.5 * one.head.mass().kilograms() * club * club;
            double taken = 0.5 * (mass * launch[0] * launch[0] + inertia * launch[3] * launch[3]);
            assertTrue(taken <= brought, () -> "energy of " + one);
            boolean told = impact.warnings().stream().anyMatch(w -> w.code().equals("energy-gained"));
            assertTrue(told || impact.energyLoss() >= -1e-9 * brought, () -> "energy loss of " + one);
        }
    }

    /** What the result says of itself fits its launch. */
    @Test
    void theResultAgreesWithItself() {
        for (Case one : cases()) {
            Impact impact = model().strike(one.delivery, one.head);
            double club = one.delivery.clubSpeed().metersPerSecond();
            assertTrue(impact.launch().ballSpeed().metersPerSecond() > 0.0);
            assertEquals(impact.launch().ballSpeed().metersPerSecond() / club, impact.smashFactor(), 1e-12);
            assertTrue(impact.spinLoft().degrees() >= 0.0 && impact.spinLoft().degrees() < 90.0);
            if (one.delivery.strikeToe().meters() == 0.0
                    && one.delivery.strikeUp().meters() == 0.0) {
                assertEquals(
                        one.delivery.spinLoft().radians(),
                        impact.spinLoft().radians(),
                        1e-9,
                        "spin loft at the centre");
            }
        }
    }

    /** A swing and a head seen in a mirror give the launch seen in the mirror. */
    @Test
    void bothHandsAreAlike() {
        for (Case one : cases()) {
            Delivery d = one.delivery;
            Delivery seen = d.toBuilder()
                    .clubPath(Angle.ofRadians(-d.clubPath().radians()))
                    .faceAngle(Angle.ofRadians(-d.faceAngle().radians()))
                    .build();
            Handedness other = one.head.handedness() == Handedness.LEFT ? Handedness.RIGHT : Handedness.LEFT;
            double[] here = numbers(model().strike(d, one.head).launch());
            double[] there = numbers(
                    model().strike(seen, one.head.toBuilder().handedness(other).build())
                            .launch());
            for (int i = 0; i < here.length; i++) {
                double sign = i == 2 || i == 4 ? -1.0 : 1.0;
                assertEquals(here[i], sign * there[i], 1e-9 * (1.0 + Math.abs(here[i])), () -> "mirror of " + one);
            }
        }
    }

    /** In the vertical plane a central strike starts between attack angle and loft, with backspin, and straight. */
    @Test
    void aStraightStrikeStaysInItsPlane() {
        for (int kind = 0; kind < HEADS.size(); kind++) {
            Delivery d = delivery(40.0, -2.0, 0.0, 0.0, LOFTS[kind], 0.0, 0.0);
            double[] launch = numbers(model().strike(d, HEADS.get(kind)).launch());
            assertTrue(launch[1] > Math.toRadians(-2.0) && launch[1] < Math.toRadians(LOFTS[kind]), "launch angle");
            assertEquals(0.0, launch[2], 1e-9, "start direction");
            assertTrue(launch[3] > 0.0, "spin");
            assertEquals(0.0, launch[4], 1e-9, "axis tilt: backspin");
        }
    }

    /** Inverses, calibrations and optima go by small steps of the delivery: the launch may not jump. */
    @Test
    void theLaunchDoesNotJump() {
        for (Case one : cases()) {
            Delivery d = one.delivery;
            Delivery beside = d.toBuilder()
                    .clubSpeed(Speed.ofMetersPerSecond(d.clubSpeed().metersPerSecond() * (1.0 + 1e-8)))
                    .dynamicLoft(Angle.ofRadians(d.dynamicLoft().radians() + 1e-8))
                    .faceAngle(Angle.ofRadians(d.faceAngle().radians() - 1e-8))
                    .build();
            double[] here = numbers(model().strike(d, one.head).launch());
            double[] there = numbers(model().strike(beside, one.head).launch());
            double[] scale = {50.0, 1.0, 1.0, 1_000.0, 10.0};
            for (int i = 0; i < here.length; i++) {
                assertEquals(here[i], there[i], 1e-5 * scale[i], () -> "beside " + one);
            }
        }
    }

    @Test
    void aFaceThatMovesAwayIsRefused() {
        Delivery away = delivery(40.0, -40.0, 0.0, 0.0, 70.0, 0.0, 0.0);
        assertThrows(IllegalArgumentException.class, () -> model().strike(away, HEADS.get(4)));
    }

    @Test
    void sameDeliveryGivesSameBitsFromManyThreads() {
        ImpactModel model = model();
        List<Case> cases = cases();
        List<Integer> serial = cases.stream().map(c -> bits(model, c)).toList();
        for (int repeat = 0; repeat < 4; repeat++) {
            assertEquals(serial, cases.parallelStream().map(c -> bits(model, c)).toList());
        }
    }

    private static int bits(ImpactModel model, Case one) {
        return Arrays.hashCode(numbers(model.strike(one.delivery, one.head).launch()));
    }
}
