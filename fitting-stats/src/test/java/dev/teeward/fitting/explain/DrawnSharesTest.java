package dev.teeward.fitting.explain;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.compare.HeadToHead;
import dev.teeward.fitting.internal.ShapleyValue;
import dev.teeward.flight.Ball;
import dev.teeward.flight.FlightModel;
import dev.teeward.flight.aero.AerodynamicModel;
import dev.teeward.flight.impact.ClubHead;
import dev.teeward.flight.impact.TypicalHead;
import dev.teeward.quantity.Interval;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
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

    /** What is drawn of a session. */
    private static final class Drawn {
        private final List<Metric> inputs;
        private final Draws draws;
        private final double[][] first;
        private final double[][] second;

        private Drawn(List<Metric> inputs, Draws draws, double[][] first, double[][] second) {
            this.inputs = inputs;
            this.draws = draws;
            this.first = first;
            this.second = second;
        }

        static Drawn of(InventedSwings swings, List<Metric> inputs, int resamples) {
            Readings readings = Readings.of(
                    HeadToHead.withDefaults()
                            .withClubs(InventedSwings.A, InventedSwings.B)
                            .withPrimary(Metric.CARRY)
                            .compare(swings.session()),
                    inputs);
            Draws draws = new Draws(true, readings.firstSize(), readings.secondSize(), resamples, 3L);
            return new Drawn(
                    inputs,
                    draws,
                    inputs.stream()
                            .map(m -> draws.firstMeans(readings.first(m)))
                            .toArray(double[][]::new),
                    inputs.stream()
                            .map(m -> draws.secondMeans(readings.second(m)))
                            .toArray(double[][]::new));
        }

        /** In size and scatter what lies do to faces: less than the attack angles differ. */
        double[] lie() {
            double[] lie = new double[draws.count()];
            Arrays.setAll(lie, d -> 0.4 * (first[1][d] - second[1][d]));
            return lie;
        }

        DrawnShares few(double @Nullable [] lie, FlightModel model, @Nullable ClubHead head) {
            return new DrawnShares(OUTCOMES, inputs, first, second, lie, draws.random(), model, head);
        }

        Coalitions all(double @Nullable [] lie, FlightModel model, @Nullable ClubHead head) {
            int[] every = IntStream.range(0, draws.count()).toArray();
            return new Coalitions(inputs, first, second, lie, every, model, head);
        }
    }

    /** A share's largest error at an end of its interval, over the spread of its draws. */
    private static double worst(
            InventedSwings swings, List<Metric> inputs, @Nullable ClubHead head, boolean lies, int resamples) {
        Drawn drawn = Drawn.of(swings, inputs, resamples);
        Draws draws = drawn.draws;
        double[] lie = lies ? drawn.lie() : null;
        FlightModel model = FlightModel.standard();
        DrawnShares few = drawn.few(lie, model, head);
        assertTrue(few.landed());
        Coalitions all = drawn.all(lie, model, head);
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

    @Test
    void mostDrawsNeedNoFlight() {
        FlightModel model = FlightModel.standard();
        assertFalse(Drawn.of(apart(5, 10), LAUNCH, 299).few(null, model, null).flown());
        assertFalse(Drawn.of(InventedSwings.of(6, 12), LAUNCH, 299)
                .few(null, model, null)
                .flown());
    }

    /** What is promised: 5 %. */
    @Test
    void endsOfIntervalsAreThoseOfAllFlights() {
        assertTrue(worst(apart(5, 10), LAUNCH, null, false, 299) < 0.05);
        assertTrue(worst(InventedSwings.of(6, 12), LAUNCH, null, false, 299) < 0.05);
        assertTrue(worst(
                        InventedSwings.of(7, 12).more(Metric.FACE_ANGLE, 1.5 * DEG),
                        DELIVERY,
                        TypicalHead.iron(6),
                        true,
                        299)
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
        AerodynamicModel usual = Ball.standard().aerodynamics();
        AerodynamicModel stepped = new AerodynamicModel() {
            @Override
            public double dragCoefficient(double re, double s) {
                return usual.dragCoefficient(re, s);
            }

            @Override
            public double liftCoefficient(double re, double s) {
                return usual.liftCoefficient(re, s) + (Math.floor(200.0 * s) % 2.0 == 0.0 ? 0.03 : 0.0);
            }
        };
        FlightModel model = FlightModel.standard().withBall(Ball.of(stepped));
        Drawn drawn = Drawn.of(apart(5, 10), LAUNCH, 199);
        DrawnShares few = drawn.few(null, model, null);
        assertTrue(few.flown());
        Coalitions all = drawn.all(null, model, null);
        for (Metric outcome : OUTCOMES) {
            assertArrayEquals(all.totals(outcome), few.totals(outcome), 0.0);
            assertArrayEquals(all.shares(outcome)[3], few.shares(outcome)[3], 0.0);
        }
    }

    /** A polynomial of third degree in three inputs, against the average over all orders by {@link ShapleyValue}. */
    @Test
    void sharesOfACubicAreThoseOfAllOrders() {
        SplittableRandom random = new SplittableRandom(8);
        double[][] launches = new double[3][60];
        for (double[] input : launches) {
            Arrays.setAll(input, i -> 2.0 + 3.0 * random.nextDouble());
        }
        double[] worths = new double[60];
        Arrays.setAll(worths, i -> cubic(launches[0][i], launches[1][i], launches[2][i]));
        CubicFlight fitted = CubicFlight.design(launches).orElseThrow().fit(worths);
        double[] one = {2.5, 4.5, 3.0};
        double[] two = {3.5, 2.2, 4.9};
        double[] sets = new double[8];
        Arrays.setAll(
                sets,
                s -> cubic(
                        (s & 1) != 0 ? one[0] : two[0],
                        (s & 2) != 0 ? one[1] : two[1],
                        (s & 4) != 0 ? one[2] : two[2]));
        double[] expected = ShapleyValue.of(sets);
        double[] slopes = fitted.slopes(one, two);
        for (int j = 0; j < 3; j++) {
            assertEquals(expected[j], slopes[j] * (one[j] - two[j]), 1e-9);
        }
        // A part of the second input, before and after the rest of it, averaged over the other two.
        double part = 0.6;
        double sum = 0.0;
        double[] weights = ShapleyValue.weights(3);
        for (int s = 0; s < 4; s++) {
            double x = (s & 1) != 0 ? one[0] : two[0];
            double z = (s & 2) != 0 ? one[2] : two[2];
            double before = cubic(x, two[1] + part, z) - cubic(x, two[1], z);
            double after = cubic(x, one[1], z) - cubic(x, one[1] - part, z);
            sum += weights[Integer.bitCount(s)] * 0.5 * (before + after);
        }
        assertEquals(sum, part * (slopes[1] + fitted.bend(1, one[1] - two[1], part)), 1e-9);
    }

    private static double cubic(double x, double y, double z) {
        return 1.0
                + 2.0 * x
                - y
                + 0.5 * z
                + x * y
                - 3.0 * y * z
                + z * z
                + x * y * z
                - 2.0 * x * x * z
                + 0.7 * y * y * y
                - 0.3 * z * z * z
                + y * y * x;
    }

    @Test
    void anInputThatIsAlwaysTheSameHasNoSlope() {
        double[][] launches = {{1, 2, 3, 4, 5}, {7, 7, 7, 7, 7}};
        CubicFlight fitted = CubicFlight.design(launches).orElseThrow().fit(new double[] {1, 8, 27, 64, 125});
        assertArrayEquals(new double[] {39.0, 0.0}, fitted.slopes(new double[] {5, 7}, new double[] {2, 7}), 1e-9);
        assertEquals(0.0, fitted.bend(1, 1.0, 0.5));
        assertTrue(CubicFlight.design(new double[][] {{1, 2, 3}}).isEmpty());
        assertTrue(CubicFlight.design(new double[][] {{1, 2, 1, 2, 1, 2}}).isEmpty());
    }
}
