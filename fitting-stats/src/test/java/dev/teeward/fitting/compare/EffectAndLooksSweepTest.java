package dev.teeward.fitting.compare;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Locale;
import java.util.SplittableRandom;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Coverage of effect sizes, and what looking, trends and equivalence cost, at ten shots a club and 20,000 seeded sessions. A
 * rate of 5 % has a standard deviation of 0.154 points; bounds are three of them beside what is claimed.
 */
@Tag("sweep")
class EffectAndLooksSweepTest {
    private static final int SESSIONS = 20_000;
    private static final double THREE = 3.0 * Math.sqrt(0.0475 / SESSIONS);

    private static double[] shots(SplittableRandom random, int n, double mean, double sd) {
        return IntStream.range(0, n)
                .mapToDouble(i -> mean + sd * random.nextGaussian())
                .toArray();
    }

    private static void check(String what, long seed, double low, double high, Predicate<SplittableRandom> event) {
        SplittableRandom random = new SplittableRandom(seed);
        int found = 0;
        for (int r = 0; r < SESSIONS; r++) {
            found += event.test(random) ? 1 : 0;
        }
        double rate = found / (double) SESSIONS;
        System.err.printf(Locale.ROOT, "SWEEP %s: %.4f of %d%n", what, rate, SESSIONS);
        assertTrue(rate >= low - THREE && rate <= high + THREE, what + " " + rate);
    }

    /** The noncentral t pivot is exact for equal spreads, and for the differences of pairs. */
    @Test
    void effectSizesAreCovered() {
        check(
                "Hedges g covers 0.8",
                1L,
                0.95,
                0.95,
                r -> HedgesG.withDefaults()
                        .test(shots(r, 10, 0.8, 1.0), shots(r, 10, 0.0, 1.0))
                        .estimate()
                        .interval()
                        .contains(0.8));
        check(
                "d_z covers 1.2",
                2L,
                0.95,
                0.95,
                r -> HedgesG.withDefaults()
                        .testPairs(shots(r, 10, 1.2, 1.0), new double[10])
                        .estimate()
                        .interval()
                        .contains(1.2));
    }

    /** At a true difference as large as the margin, equivalence is called in at most 5 %. */
    @Test
    void equivalenceAtTheMarginIsRare() {
        check(
                "equivalence at the margin, pairs",
                3L,
                0.045,
                0.05,
                r -> TostTest.withinMargin(2.0)
                        .testPairs(shots(r, 10, 2.0, 1.0), new double[10])
                        .equivalent());
        check(
                "equivalence at the margin, Welch",
                4L,
                0.04,
                0.055,
                r -> TostTest.withinMargin(2.0)
                        .test(shots(r, 10, 2.0, 1.0), shots(r, 10, 0.0, 2.0))
                        .equivalent());
    }

    /** Looked at after every one of 30 pairs: the last interval is cut with all earlier ones. */
    @Test
    void theConfidenceSequenceHoldsAtEveryLook() {
        check(
                "confidence sequence misses, 30 looks",
                5L,
                0.0,
                0.05,
                r -> !SequentialTTest.withDefaults()
                        .testPairs(shots(r, 30, 0.7, 1.0), new double[30])
                        .difference()
                        .interval()
                        .contains(0.7));
    }

    /** By the exact null distribution of Kendall's S at n = 10, whose largest size below 5 % is 4.66 % (Kendall's table). */
    @Test
    void trendsInShotsWithoutTrendAreRare() {
        check(
                "Mann-Kendall",
                6L,
                0.03,
                0.05,
                r -> MannKendallTest.withDefaults()
                                .test(shots(r, 10, 0.0, 1.0))
                                .slope()
                                .pValue()
                        <= 0.05);
    }
}
