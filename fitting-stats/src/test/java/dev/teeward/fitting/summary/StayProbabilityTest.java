package dev.teeward.fitting.summary;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.quantity.Estimate;
import java.util.Arrays;
import java.util.Random;
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

    /** Balls that stop where they land: with two dimensions idle, many shots give what HoldProbability says by quadrature. */
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
        // Four standard errors of 9,999 draws, and 197 against 198 degrees of freedom.
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
