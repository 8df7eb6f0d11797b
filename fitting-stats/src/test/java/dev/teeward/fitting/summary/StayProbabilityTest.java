package dev.teeward.fitting.summary;

import static dev.teeward.quantity.Units.degrees;
import static dev.teeward.quantity.Units.mph;
import static dev.teeward.quantity.Units.rpm;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.flight.Flight;
import dev.teeward.flight.FlightModel;
import dev.teeward.flight.LaunchConditions;
import dev.teeward.flight.ground.Ground;
import dev.teeward.flight.ground.TurfClass;
import dev.teeward.quantity.Estimate;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;

class StayProbabilityTest {
    private static final TargetRegion CIRCLE = TargetRegion.circle(150.0, 0.0, 8.0);

    private static double[] normal(int n, double mean, double sd, long seed) {
        Random random = new Random(seed);
        double[] x = new double[n];
        Arrays.setAll(x, i -> mean + sd * random.nextGaussian());
        return x;
    }

    private static double[] plus(double[] x, double by) {
        return Arrays.stream(x).map(v -> v + by).toArray();
    }

    /** Balls that stop where they land: what HoldProbability says by quadrature. */
    @Test
    void ballsThatStopDeadStayWhereTheyLand() {
        double[] carry = normal(200, 149.0, 5.0, 1L);
        double[] side = normal(200, 1.0, 4.0, 2L);
        HoldProbability.Result lands = HoldProbability.withDefaults().estimate(CIRCLE, carry, side);
        StayProbability.Result stays = StayProbability.withDefaults().estimate(CIRCLE, carry, side, carry, side);
        assertEquals(lands.count(), stays.count());
        assertEquals(lands.share(), stays.share());
        assertEquals(stays.landed(), stays.rested());
        Estimate a = lands.probability().orElseThrow();
        Estimate b = stays.probability().orElseThrow();
        // Four standard errors of 9,999 draws.
        assertEquals(a.value(), b.value(), 0.02);
        assertEquals(a.interval().lower(), b.interval().lower(), 0.03);
        assertEquals(a.interval().upper(), b.interval().upper(), 0.03);
    }

    @Test
    void aHighLevelTakesMoreDrawsOrSaysSo() {
        double[] carry = normal(10, 149.0, 5.0, 11L);
        double[] side = normal(10, 1.0, 4.0, 12L);
        double[] rest = plus(carry, 2.0);
        StayProbability stay = StayProbability.withDefaults().withDraws(99);
        StayProbability.Result high = stay.withLevel(0.98).estimate(CIRCLE, carry, side, rest, side);
        StayProbability.Result higher = stay.withLevel(0.998).estimate(CIRCLE, carry, side, rest, side);
        assertTrue(higher.probability().orElseThrow().interval().width()
                > high.probability().orElseThrow().interval().width());
        assertTrue(higher.method().contains("999 posterior draws"), higher.method());
        assertTrue(higher.warnings().isEmpty());
        HoldProbability hold = HoldProbability.withDefaults();
        HoldProbability.Result most = hold.withLevel(0.9998).estimate(CIRCLE, carry, side);
        assertTrue(most.probability().orElseThrow().interval().width()
                > hold.withLevel(0.998)
                        .estimate(CIRCLE, carry, side)
                        .probability()
                        .orElseThrow()
                        .interval()
                        .width());
        assertTrue(most.warnings().isEmpty() && most.method().contains("9999 posterior draws"), most.method());
        HoldProbability.Result beyond = hold.withLevel(0.999999).estimate(CIRCLE, carry, side);
        assertEquals("beyond-resamples", beyond.warnings().get(0).code());
        assertEquals(
                "beyond-resamples",
                stay.withLevel(0.999999)
                        .estimate(CIRCLE, carry, side, rest, side)
                        .warnings()
                        .get(0)
                        .code());
    }

    /** A regular polygon of shots about the target, with the covariance spread^2 I to the last digits. */
    private static double[][] ring(int n, double spread) {
        double[][] shots = new double[2][n];
        double radius = spread * Math.sqrt(2.0 * (n - 1.0) / n);
        for (int i = 0; i < n; i++) {
            shots[0][i] = 150.0 + radius * Math.cos(2.0 * Math.PI * i / n);
            shots[1][i] = radius * Math.sin(2.0 * Math.PI * i / n);
        }
        return shots;
    }

    /**
     * Closed form of the predictive bivariate t with n - 2 degrees of freedom, a disc of k standard deviations about the mean:
     * 1 - (1 + k^2 / c)^(-(n - 2) / 2), c = (n + 1) (n - 1) / n; k = 2 gives 0.683, 0.743 and 0.807. Four standard errors of
     * 9,999 draws.
     */
    @Test
    void withoutRollItIsThePredictiveOfTheLanding() {
        for (int n : new int[] {7, 10, 20}) {
            double[][] shots = ring(n, 4.0);
            double c = (n + 1.0) * (n - 1.0) / n;
            double truth = 1.0 - Math.pow(1.0 + 4.0 / c, -0.5 * (n - 2.0));
            double error = 4.0 * Math.sqrt(truth * (1.0 - truth) / 9_999.0);
            StayProbability.Result dead = StayProbability.withDefaults()
                    .withDraws(99)
                    .estimate(CIRCLE, shots[0], shots[1], shots[0], shots[1]);
            assertEquals(truth, dead.probability().orElseThrow().value(), error, "n = " + n);
            assertTrue(dead.method().contains("landing with " + (n - 2) + " degrees"), dead.method());
            // A roll that is the same for all, of which rounding leaves a trace, is settled as well.
            double[] shifted = plus(shots[0], 0.3);
            StayProbability.Result same = StayProbability.withDefaults()
                    .withDraws(99)
                    .estimate(CIRCLE, shots[0], shots[1], shifted, shots[1]);
            assertTrue(same.method().contains("roll settled"), same.method());
        }
    }

    /** The interval is then that of HoldProbability, up to 399 draws of it. */
    @Test
    void withoutRollTheIntervalIsThatOfTheLanding() {
        double[][] shots = ring(10, 4.0);
        Estimate hold = HoldProbability.withDefaults()
                .withDraws(9_999)
                .estimate(CIRCLE, shots[0], shots[1])
                .probability()
                .orElseThrow();
        Estimate stay = StayProbability.withDefaults()
                .withDraws(1_999)
                .estimate(CIRCLE, shots[0], shots[1], shots[0], shots[1])
                .probability()
                .orElseThrow();
        assertEquals(hold.interval().lower(), stay.interval().lower(), 0.04);
        assertEquals(hold.interval().upper(), stay.interval().upper(), 0.02);
    }

    /**
     * Balls that all land within millimetres inside, and roll along with spread 1 whatever the landing, past a border b off: the
     * predictive of the roll is a t of n - 3 degrees of freedom whose scale the leverage widens, (1 + 1/n) (n - 1) / (n - 3) / B
     * with B the share that z'z is not of chi-square, Beta((n - 2) / 2, 1). Its expectation by SciPy 1.17.1:
     * {@code quad(lambda x: t.cdf(1 / sqrt((1+1/n)*(n-1)/(n-3)/x), n-3) * beta.pdf(x, (n-2)/2, 1), 0, 1)}.
     */
    @Test
    void theRollHasThePredictiveOfItsRegression() {
        int[] sizes = {7, 10};
        double[] computed = {0.71928027, 0.75966265};
        for (int k = 0; k < sizes.length; k++) {
            int n = sizes[k];
            double[][] shots = ring(n, 1e-3);
            // The second harmonic on the polygon: without correlation to the landing, mean 0, standard deviation 1.
            double[] rest = new double[n];
            for (int i = 0; i < n; i++) {
                rest[i] = shots[0][i] + Math.sqrt(2.0 * (n - 1.0) / n) * Math.cos(4.0 * Math.PI * i / n);
            }
            TargetRegion strip =
                    TargetRegion.polygon(new double[] {-9e9, 151, 151, -9e9}, new double[] {-900, -900, 900, 900});
            StayProbability.Result r =
                    StayProbability.withDefaults().withDraws(99).estimate(strip, shots[0], shots[1], rest, shots[1]);
            double error = 4.0 * Math.sqrt(computed[k] * (1.0 - computed[k]) / 9_999.0);
            assertEquals(computed[k], r.probability().orElseThrow().value(), error + 1e-3, "n = " + n);
        }
    }

    /** The example of the class: from launches over the ground to the green. */
    @Test
    void fromLaunchesThroughTheGroundModel() {
        Random random = new Random(9L);
        FlightModel model = FlightModel.standard().withGround(Ground.of(TurfClass.FAIRWAY));
        List<LaunchConditions> launches = Stream.generate(() -> LaunchConditions.builder()
                        .ballSpeed(mph(115.0 + 1.5 * random.nextGaussian()))
                        .launchAngle(degrees(18.0 + random.nextGaussian()))
                        .startDirection(degrees(random.nextGaussian()))
                        .spinRate(rpm(6_500.0 + 300.0 * random.nextGaussian()))
                        .build())
                .limit(12)
                .toList();
        List<Flight> flights = launches.stream().map(model::fly).toList();
        double middle = flights.stream()
                .mapToDouble(f -> f.landing().downrange().meters())
                .average()
                .orElseThrow();
        TargetRegion green = TargetRegion.circle(middle, 0.0, 5.0);
        StayProbability.Result r = StayProbability.withDefaults().estimate(green, flights);
        int landed = 0;
        int stayed = 0;
        for (Flight f : flights) {
            double x = f.landing().downrange().meters() - middle;
            boolean lands = Math.hypot(x, f.side().meters()) <= 5.0;
            var rest = f.rollOut().orElseThrow().rest();
            landed += lands ? 1 : 0;
            stayed += lands
                            && Math.hypot(
                                            rest.downrange().meters() - middle,
                                            rest.side().meters())
                                    <= 5.0
                    ? 1
                    : 0;
        }
        assertEquals(landed, r.landed());
        assertEquals(stayed, r.count());
        assertTrue(stayed > 0 && stayed < landed, stayed + " of " + landed);
        Estimate p = r.probability().orElseThrow();
        assertTrue(p.interval().contains(p.value()) && p.value() > 0.0 && p.value() < 1.0, p.toString());
        // Without a ground nobody knows where a ball rests.
        List<Flight> aloft = launches.stream().map(FlightModel.standard()::fly).toList();
        IllegalArgumentException e = assertThrows(
                IllegalArgumentException.class,
                () -> StayProbability.withDefaults().estimate(green, aloft));
        assertTrue(e.getMessage().contains("flight 1") && e.getMessage().contains("ground"), e.getMessage());
    }

    /**
     * A strip 20 long and endless across, balls that land about its middle with spread 5 and all roll 6: it must land in the
     * first 14. Closed form by the normal distribution; 5,000 shots leave no doubt of mean and spread.
     */
    @Test
    void aSteadyRollCutsTheRegion() {
        double[] carry = normal(5_000, 150.0, 5.0, 3L);
        double[] side = normal(5_000, 0.0, 5.0, 4L);
        TargetRegion strip =
                TargetRegion.polygon(new double[] {140, 160, 160, 140}, new double[] {-900, -900, 900, 900});
        StayProbability.Result r =
                StayProbability.withDefaults().withDraws(99).estimate(strip, carry, side, plus(carry, 6.0), side);
        NormalDistribution normal = NormalDistribution.of(150.0, 5.0);
        double truth = normal.probability(140.0, 154.0);
        assertEquals(truth, r.probability().orElseThrow().value(), 0.03);
        assertTrue(r.count() <= Math.min(r.landed(), r.rested()));
        assertTrue(r.landed() > r.count() && r.rested() > r.count());
        assertEquals(truth, r.share().value(), 0.03);
    }

    @Test
    void tenShotsHaveAWideInterval() {
        double[] carry = normal(10, 150.0, 5.0, 5L);
        double[] side = normal(10, 0.0, 5.0, 6L);
        double[] rolled = new double[10];
        double[] drift = normal(10, 0.0, 0.5, 7L);
        Arrays.setAll(rolled, i -> carry[i] + 3.0 + drift[i]);
        StayProbability.Result r = StayProbability.withDefaults().estimate(CIRCLE, carry, side, rolled, side);
        Estimate p = r.probability().orElseThrow();
        assertTrue(p.interval().contains(p.value()));
        assertTrue(p.interval().upper() - p.interval().lower() > 0.2, p.toString());
        assertTrue(p.interval().lower() > 0.0 && p.interval().upper() < 1.0);
        assertEquals(r, StayProbability.withDefaults().estimate(CIRCLE, carry, side, rolled, side));
        Estimate less = StayProbability.withDefaults()
                .withLevel(0.8)
                .estimate(CIRCLE, carry, side, rolled, side)
                .probability()
                .orElseThrow();
        assertTrue(less.interval().upper() < p.interval().upper());
    }

    @Test
    void shotsOnALineGiveTheCountOnly() {
        double[] line = {147, 148, 149, 150, 151, 152, 170};
        double[] zero = new double[7];
        StayProbability.Result r = StayProbability.withDefaults().estimate(CIRCLE, line, zero, plus(line, 4.0), zero);
        assertTrue(r.probability().isEmpty());
        assertEquals(6, r.landed());
        assertEquals(6, r.rested());
        assertEquals(6, r.count());
        assertTrue(r.warnings().stream().anyMatch(w -> w.code().equals("no-spread")));
    }

    @Test
    void whatCannotBeEstimatedIsRefused() {
        double[] six = {1, 2, 3, 4, 5, 6};
        double[] seven = {1, 2, 3, 4, 5, 6, 7};
        StayProbability p = StayProbability.withDefaults();
        assertThrows(IllegalArgumentException.class, () -> p.estimate(CIRCLE, six, six, six, six));
        assertThrows(IllegalArgumentException.class, () -> p.estimate(CIRCLE, seven, six, seven, seven));
        assertThrows(IllegalArgumentException.class, () -> p.withDraws(98));
    }
}
