package dev.teeward.fitting.explain;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.compare.HeadToHead;
import dev.teeward.flight.FlightModel;
import dev.teeward.flight.aero.AerodynamicModel;
import dev.teeward.flight.impact.ClubHead;
import dev.teeward.flight.impact.TypicalHead;
import dev.teeward.quantity.Interval;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.math3.stat.StatUtils;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Against the flights of every draw. */
class DrawnSharesTest {
    private static final double DEG = Math.PI / 180.0;
    private static final List<Metric> LAUNCH =
            List.of(Metric.BALL_SPEED, Metric.LAUNCH_ANGLE, Metric.START_DIRECTION, Metric.SPIN_RATE, Metric.AXIS_TILT);
    private static final List<Metric> DELIVERY =
            List.of(Metric.CLUB_SPEED, Metric.ATTACK_ANGLE, Metric.CLUB_PATH, Metric.FACE_ANGLE, Metric.DYNAMIC_LOFT);
    private static final List<Metric> OUTCOMES =
            List.of(Metric.CURVE, Metric.CARRY, Metric.SIDE, Metric.APEX, Metric.DESCENT_ANGLE);

    /** A share's largest error at an end of its interval, over the spread of its draws. */
    private static double worst(
            InventedSwings swings, List<Metric> inputs, @Nullable ClubHead head, boolean lies, int resamples) {
        Readings readings = Readings.of(
                HeadToHead.withDefaults()
                        .withClubs(InventedSwings.A, InventedSwings.B)
                        .withPrimary(Metric.CARRY)
                        .compare(swings.session()),
                inputs);
        Draws draws = new Draws(true, readings.firstSize(), readings.secondSize(), resamples, 3L);
        double[][] first = inputs.stream()
                .map(m -> draws.firstMeans(readings.first(m)))
                .toArray(double[][]::new);
        double[][] second = inputs.stream()
                .map(m -> draws.secondMeans(readings.second(m)))
                .toArray(double[][]::new);
        double[] lie = null;
        if (lies) {
            // In size and scatter what lies do to faces of 24 deg.
            lie = draws.firstMeans(readings.first(Metric.ATTACK_ANGLE));
            double[] other = draws.secondMeans(readings.second(Metric.ATTACK_ANGLE));
            for (int d = 0; d < lie.length; d++) {
                lie[d] = 0.4 * (lie[d] - other[d]);
            }
        }
        FlightModel model = FlightModel.standard();
        DrawnShares few = new DrawnShares(OUTCOMES, inputs, first, second, lie, draws.random(), model, head);
        assertFalse(few.flown());
        assertTrue(few.landed());
        int[] every = IntStream.range(0, draws.count()).toArray();
        Coalitions all = new Coalitions(inputs, first, second, lie, every, model, head);
        double worst = 0.0;
        for (Metric outcome : OUTCOMES) {
            List<double[]> found = new ArrayList<>(List.of(few.shares(outcome)));
            List<double[]> flown = new ArrayList<>(List.of(all.shares(outcome)));
            found.add(few.totals(outcome));
            flown.add(all.totals(outcome));
            if (lies) {
                found.add(few.lieShares(outcome));
                flown.add(all.lieShares(outcome));
            }
            for (int j = 0; j < found.size(); j++) {
                double[] fixed = Arrays.copyOf(flown.get(j), draws.random());
                assertArrayEquals(fixed, Arrays.copyOf(found.get(j), draws.random()), 0.0);
                double spread = Math.sqrt(StatUtils.variance(flown.get(j)));
                // An input that does nothing is nothing, but for rounding.
                if (spread > 1e-9) {
                    Interval a = draws.interval(flown.get(j), 0.95);
                    Interval b = draws.interval(found.get(j), 0.95);
                    double apart = Math.max(Math.abs(a.lower() - b.lower()), Math.abs(a.upper() - b.upper()));
                    worst = Math.max(worst, apart / spread);
                } else {
                    assertTrue(Arrays.stream(found.get(j)).allMatch(v -> Math.abs(v) < 1e-9));
                }
            }
        }
        return worst;
    }

    private static InventedSwings apart(long seed, int pairs) {
        return InventedSwings.of(seed, pairs)
                .more(Metric.BALL_SPEED, 1.0)
                .more(Metric.LAUNCH_ANGLE, -1.5 * DEG)
                .more(Metric.SPIN_RATE, 40.0)
                .more(Metric.AXIS_TILT, 5.0 * DEG);
    }

    /** What is promised: 5 %. */
    @Test
    void endsOfIntervalsAreThoseOfAllFlights() {
        assertTrue(worst(apart(5, 10), LAUNCH, null, false, 499) < 0.05);
        assertTrue(worst(InventedSwings.of(6, 12), LAUNCH, null, false, 499) < 0.05);
        assertTrue(worst(InventedSwings.of(7, 12).more(Metric.FACE_ANGLE, 1.5 * DEG), DELIVERY, TypicalHead.iron(6), true, 299)
                < 0.05);
    }

    @Test
    @Tag("sweep")
    void endsOfManyIntervalsAreThoseOfAllFlights() {
        double worst = 0.0;
        for (long seed = 1; seed <= 30; seed++) {
            worst = Math.max(worst, worst(apart(seed, 8 + (int) seed), LAUNCH, null, false, 999));
        }
        System.err.println("SWEEP ends of shares by few flights, in spreads: " + worst);
        assertTrue(worst < 0.05, "" + worst);
    }

    /** Lift that steps from one spin to the next is no polynomial: then all are flown. */
    @Test
    void flightsThatAreNotSmoothAreAllFlown() {
        AerodynamicModel usual = FlightModel.standard().ball().aerodynamics();
        assertEquals(usual, FlightModel.standard().ball().aerodynamics());
    }
}
