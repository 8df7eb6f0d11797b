package dev.teeward.fitting.explain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.ShotSet;
import dev.teeward.fitting.compare.HeadToHead;
import dev.teeward.fitting.compare.HeadToHeadResult;
import dev.teeward.fitting.complete.SessionCompleter;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Sessions in which the readings follow the flights, do not, or are too wild to tell. */
class AgreementTest {
    private static final double DEG = Math.PI / 180.0;

    /** Twelve pairs whose axis tilts differ; the curve is read as that of the flight times a factor, with an error [m]. */
    private static Explanation explain(double factor, double error) {
        Session flown = SessionCompleter.withDefaults()
                .complete(InventedSwings.of(21, 12)
                        .more(Metric.AXIS_TILT, 6.0 * DEG)
                        .session())
                .session();
        SplittableRandom random = new SplittableRandom(5);
        List<Shot> shots = new ArrayList<>();
        for (Shot shot : flown.shots()) {
            shots.add(shot.without(Metric.CURVE).toBuilder()
                    .measured(Metric.CURVE, factor * shot.value(Metric.CURVE) + error * random.nextGaussian())
                    .build());
        }
        HeadToHeadResult result = HeadToHead.withDefaults()
                .withClubs("Alder", "Rowan")
                .withPrimary(Metric.CURVE)
                .compare(flown.withShots(ShotSet.of(shots)));
        return Explain.withDefaults()
                .withFlights(FlightCounterfactual.withDefaults().withResamples(199))
                .explain(result);
    }

    @Test
    void readingsOfTheFlightsAgree() {
        Agreement curve = explain(1.0, 0.3).agreement(Metric.CURVE).orElseThrow();
        assertEquals(Agreement.Accord.AGREE, curve.accord());
        assertEquals(List.of(), curve.warnings());
        Agreement.Input tilt = curve.inputs().get(0);
        assertEquals(Metric.AXIS_TILT, tilt.input());
        assertTrue(tilt.byFlights().value() > 2.0);
        assertTrue(tilt.apart().interval().contains(0.0));
        assertEquals(
                tilt.byFlights().value() - tilt.byLine().value(), tilt.apart().value(), 1e-12);
    }

    @Test
    void readingsThatGoAgainstTheFlightsDisagree() {
        assertEquals(
                Agreement.Accord.DISAGREE,
                explain(-1.5, 0.3).agreement(Metric.CURVE).orElseThrow().accord());
    }

    @Test
    void wildReadingsTellNothing() {
        assertEquals(
                Agreement.Accord.UNDECIDED,
                explain(1.0, 25.0).agreement(Metric.CURVE).orElseThrow().accord());
    }

    /** Of a response that is linear in its inputs the line is exact, whatever is left out. */
    @Test
    void theLineIsSlopeTimesDifference() {
        HeadToHeadResult result = HeadToHead.withDefaults()
                .withClubs("Alder", "Rowan")
                .withPrimary(Metric.CARRY)
                .compare(linear());
        Explanation why = Explain.withDefaults()
                .withFlights(FlightCounterfactual.withDefaults().withResamples(199))
                .explain(result);
        Agreement carry = why.agreement(Metric.CARRY).orElseThrow();
        assertEquals(8, carry.degreesOfFreedom());
        double[] slope = {2.5, 40.0, -0.02};
        for (int j = 0; j < 3; j++) {
            Agreement.Input input = carry.inputs().get(j);
            double difference = result.find(input.input())
                    .orElseThrow()
                    .difference()
                    .estimate()
                    .value();
            assertEquals(
                    slope[j] * difference,
                    input.byLine().value(),
                    1e-8,
                    input.input().key());
        }
    }

    private static Session linear() {
        List<Shot> shots = new ArrayList<>();
        for (Shot shot : InventedSwings.of(8, 12).session().shots()) {
            shots.add(shot.toBuilder()
                    .measured(
                            Metric.CARRY,
                            20.0
                                    + 2.5 * shot.value(Metric.BALL_SPEED)
                                    + 40.0 * shot.value(Metric.LAUNCH_ANGLE)
                                    - 0.02 * shot.value(Metric.SPIN_RATE))
                    .build());
        }
        return Session.builder().shots(ShotSet.of(shots)).build();
    }

    @Test
    void computedFlightsAgreeByConstructionAndSaySo() {
        HeadToHeadResult result = HeadToHead.withDefaults()
                .withPrimary(Metric.CARRY)
                .compare(InventedSwings.of(3, 12).session());
        Agreement carry = Explain.withDefaults()
                .withFlights(FlightCounterfactual.withDefaults().withResamples(199))
                .explain(result)
                .agreement(Metric.CARRY)
                .orElseThrow();
        assertEquals("computed-outcome", carry.warnings().get(0).code());
        assertEquals(Agreement.Accord.AGREE, carry.accord());
    }
}
