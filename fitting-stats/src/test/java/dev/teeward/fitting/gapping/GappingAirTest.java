package dev.teeward.fitting.gapping;

import static dev.teeward.quantity.Units.degrees;
import static dev.teeward.quantity.Units.feet;
import static dev.teeward.quantity.Units.mph;
import static dev.teeward.quantity.Units.rpm;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.ShotSet;
import dev.teeward.fitting.choose.ClubChoice;
import dev.teeward.fitting.choose.Goal;
import dev.teeward.fitting.complete.SameAir;
import dev.teeward.flight.FlightModel;
import dev.teeward.flight.LaunchConditions;
import dev.teeward.flight.air.Atmosphere;
import dev.teeward.quantity.Interval;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Two clubs with the very same launches, one hit mostly at the sea and the other mostly at 6,000 ft; all invented. */
class GappingAirTest {
    private static final SameAir SEA = SameAir.standardAt(feet(0.0));

    private static Session day(double elevationFeet, int alder, int rowan, boolean carries) {
        FlightModel model = FlightModel.standard().withAir(Atmosphere.standardAt(feet(elevationFeet)));
        List<Shot> shots = new ArrayList<>();
        for (int i = 0; i < alder + rowan; i++) {
            int launch = i < alder ? i : i - alder;
            LaunchConditions conditions = LaunchConditions.builder()
                    .ballSpeed(mph(115.0 + 0.9 * (launch % 5)))
                    .launchAngle(degrees(17.0))
                    .startDirection(degrees(0.0))
                    .spinRate(rpm(6_000.0 + 50.0 * (launch % 3)))
                    .axisTilt(degrees(0.0))
                    .build();
            Shot.Builder shot = Shot.builder(i < alder ? "Alder" : "Rowan")
                    .number(i + 1)
                    .measured(Metric.BALL_SPEED, conditions.ballSpeed().metersPerSecond())
                    .measured(Metric.LAUNCH_ANGLE, conditions.launchAngle().radians())
                    .measured(Metric.START_DIRECTION, 0.0)
                    .measured(Metric.SPIN_RATE, conditions.spinRate().radiansPerSecond())
                    .measured(Metric.AXIS_TILT, 0.0);
            if (carries) {
                shot.measured(Metric.CARRY, model.fly(conditions).carry().meters());
            }
            shots.add(shot.build());
        }
        return Session.builder()
                .elevation(feet(elevationFeet))
                .shots(ShotSet.of(shots))
                .build();
    }

    private static Session uneven(boolean carries) {
        return Session.combine(List.of(day(0.0, 10, 2, carries), day(6_000.0, 2, 10, carries)));
    }

    @Test
    void aGapThatIsTheAirsIsWarnedOfAndGoesInOneAir() {
        for (boolean carries : new boolean[] {true, false}) {
            Bag asHit = Gapping.withDefaults().measure(uneven(carries));
            assertTrue(asHit.warns("airs-differ"), asHit.warnings().toString());
            assertTrue(asHit.gaps().get(0).difference().estimate().value() > 3.0);
            Bag inOne = Gapping.withDefaults().withAir(SEA).measure(uneven(carries));
            assertFalse(inOne.warns("airs-differ"));
            Interval gap = inOne.gaps().get(0).difference().estimate().interval();
            assertTrue(gap.contains(0.0), gap.toString());
            // Ten launches and the first two of them again, with either club.
            assertEquals(0.0, inOne.gaps().get(0).difference().estimate().value(), 1e-6);
            assertEquals(
                    Gapping.withDefaults()
                            .measure(day(0.0, 10, 2, carries))
                            .club("Alder")
                            .carry()
                            .value(),
                    Gapping.withDefaults()
                            .withAir(SEA)
                            .measure(day(6_000.0, 10, 2, carries))
                            .club("Alder")
                            .carry()
                            .value(),
                    1e-6);
        }
    }

    @Test
    void evenlySpreadClubsAreNotWarnedOf() {
        Session even = Session.combine(List.of(day(0.0, 6, 6, true), day(6_000.0, 6, 6, true)));
        assertFalse(Gapping.withDefaults().measure(even).warns("airs-differ"));
    }

    /** Carries measured here and computed there stay of two kinds in whatever air. */
    @Test
    void twoKindsOfCarriesAreToldInOneAirToo() {
        Session mixed = Session.combine(List.of(day(0.0, 6, 6, true), day(6_000.0, 6, 6, false)));
        assertTrue(Gapping.withDefaults().measure(mixed).warns("carries-of-two-kinds"));
        assertTrue(Gapping.withDefaults().withAir(SEA).measure(mixed).warns("carries-of-two-kinds"));
        assertFalse(Gapping.withDefaults().withAir(SEA).measure(uneven(true)).warns("carries-of-two-kinds"));
    }

    /** The choice was sure of the club that was hit up high; in one air, with the same launches, it is a toss. */
    @Test
    void aChoiceThatIsTheAirsIsWarnedOfAndOpenInOneAir() {
        ClubChoice choice = ClubChoice.withGoal(Goal.distance());
        ClubChoice.Result asHit = choice.choose(uneven(true));
        assertEquals("Rowan", asHit.leader().name());
        assertTrue(asHit.leader().probability().orElseThrow() > 0.95);
        assertTrue(asHit.warnings().stream().anyMatch(w -> w.code().equals("airs-differ")));
        ClubChoice.Result inOne = choice.withAir(SEA).choose(uneven(true));
        assertEquals(0.5, inOne.leader().probability().orElseThrow(), 0.01);
        assertTrue(inOne.warnings().stream().noneMatch(w -> w.code().equals("airs-differ")));
    }
}
