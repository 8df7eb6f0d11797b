package dev.teeward.fitting.compare;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Locale;
import java.util.SplittableRandom;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Sizes of the tests of order, of rounds and of paired spreads: ten normal shots, 20,000 seeded sessions, bounds of three
 * standard errors beside what is claimed.
 */
@Tag("sweep")
class SequenceSweepTest {
    private static final int SESSIONS = 20_000;

    private static double[] shots(SplittableRandom random) {
        return IntStream.range(0, 10).mapToDouble(i -> random.nextGaussian()).toArray();
    }

    private static void check(String what, long seed, double low, double high, Predicate<SplittableRandom> event) {
        SplittableRandom random = new SplittableRandom(seed);
        int found = 0;
        for (int r = 0; r < SESSIONS; r++) {
            found += event.test(random) ? 1 : 0;
        }
        double rate = found / (double) SESSIONS;
        System.err.printf(Locale.ROOT, "SWEEP %s: %.4f of %d%n", what, rate, SESSIONS);
        double below = 3.0 * Math.sqrt(low * (1.0 - low) / SESSIONS);
        double above = 3.0 * Math.sqrt(high * (1.0 - high) / SESSIONS);
        assertTrue(rate >= low - below && rate <= high + above, what + " " + rate);
    }

    /** Five shots on either side of the median: 2 or 10 runs in 4 of 252 orders; with 3 or 9 it were 20 of 252, over 5 %. */
    @Test
    void runsHoldTheirAttainableSize() {
        check(
                "runs",
                1L,
                4.0 / 252.0,
                4.0 / 252.0,
                r -> RunsTest.withDefaults().test(shots(r)).pValue() <= 0.05);
    }

    /** Both approximate; 4.37 and 5.48 % in 400,000 sessions simulated with NumPy by the same formulas. */
    @Test
    void serialDependenceHoldsItsSizeNearly() {
        check(
                "von Neumann",
                2L,
                0.0437,
                0.0437,
                r -> SerialDependenceTest.withDefaults().test(shots(r)).vonNeumannP() <= 0.05);
        check(
                "Ljung-Box",
                3L,
                0.0548,
                0.0548,
                r -> SerialDependenceTest.withDefaults().test(shots(r)).ljungBoxP() <= 0.05);
    }

    /** By chi-square; the exact size for three clubs in ten rounds is 4.556 % (all 6^10 orders, counted in Python). */
    @Test
    void friedmanHoldsItsAttainableSize() {
        check(
                "Friedman",
                4L,
                0.045560,
                0.045560,
                r -> FriedmanTest.withDefaults()
                                .test(shots(r), shots(r), shots(r))
                                .pValue()
                        <= 0.05);
    }

    /** Pitman and Morgan's is exact for normal pairs, correlated or not. */
    @Test
    void pairedSpreadsHoldTheirSize() {
        check("Pitman-Morgan", 5L, 0.05, 0.05, r -> {
            double[] common = shots(r);
            double[] x = shots(r);
            double[] y = shots(r);
            for (int i = 0; i < x.length; i++) {
                x[i] += common[i];
                y[i] += common[i];
            }
            return SpreadRatio.withDefaults().testPairs(x, y).pValue() <= 0.05;
        });
    }
}
