package dev.teeward.fitting.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Locale;
import java.util.SplittableRandom;
import java.util.function.DoubleSupplier;
import java.util.stream.IntStream;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Size under the null and coverage at 10 + 10 normal shots, 20,000 seeded sessions. Binomial standard error at 5 %: 0.154 of
 * a percentage point, so that the bounds of half a point are three and a quarter of them.
 */
@Tag("sweep")
class SizeAndCoverageTest {
    private static final int SESSIONS = 20_000;
    private static final int SHOTS = 10;

    private interface Rejects {
        boolean rejects(double[] x, double[] y);
    }

    private static double[] sample(SplittableRandom random, double sd, double shift) {
        return IntStream.range(0, SHOTS)
                .mapToDouble(i -> shift + sd * random.nextGaussian())
                .toArray();
    }

    private static double share(String what, long seed, double ratio, Rejects rejects) {
        SplittableRandom random = new SplittableRandom(seed);
        int count = 0;
        for (int i = 0; i < SESSIONS; i++) {
            count += rejects.rejects(sample(random, ratio, 0.0), sample(random, 1.0, 0.0)) ? 1 : 0;
        }
        double share = (double) count / SESSIONS;
        System.err.printf(Locale.ROOT, "SWEEP %s: %.4f%n", what, share);
        return share;
    }

    private static void between(double low, double high, DoubleSupplier share) {
        double value = share.getAsDouble();
        assertTrue(value >= low && value <= high, value + " is not between " + low + " and " + high);
    }

    @Test
    void tTestsHoldTheirSize() {
        between(
                0.045,
                0.055,
                () -> share(
                        "Welch",
                        1,
                        1.0,
                        (x, y) -> WelchTTest.withDefaults().test(x, y).pValue() <= 0.05));
        between(
                0.045,
                0.055,
                () -> share(
                        "Welch, spread ratio 2",
                        2,
                        2.0,
                        (x, y) -> WelchTTest.withDefaults().test(x, y).pValue() <= 0.05));
        between(
                0.045,
                0.055,
                () -> share(
                        "paired",
                        3,
                        1.0,
                        (x, y) -> PairedTTest.withDefaults().test(x, y).pValue() <= 0.05));
    }

    @Test
    void tIntervalsCover() {
        double truth = 1.7;
        between(
                0.945,
                0.955,
                () -> share(
                        "Welch covers",
                        4,
                        1.5,
                        (x, y) -> WelchTTest.withDefaults()
                                .test(plus(x, truth), y)
                                .estimate()
                                .interval()
                                .contains(truth)));
        between(
                0.945,
                0.955,
                () -> share(
                        "paired covers",
                        5,
                        1.5,
                        (x, y) -> PairedTTest.withDefaults()
                                .test(plus(x, truth), y)
                                .estimate()
                                .interval()
                                .contains(truth)));
    }

    private static double[] plus(double[] x, double shift) {
        return IntStream.range(0, x.length).mapToDouble(i -> x[i] + shift).toArray();
    }

    /** 2^10 = 1,024 arrangements in pairs of equal size: at most floor(0.05 * 512) / 512 = 25 / 512 = 4.883 %. */
    @Test
    void signFlipIsWithinHalfAPointBelowItsAttainableSize() {
        double attainable = 25.0 / 512.0;
        between(
                attainable - 0.005,
                0.05 + 0.0039,
                () -> share(
                        "sign flip",
                        6,
                        1.0,
                        (x, y) -> SignFlipTest.withDefaults().pValue(x, y) <= 0.05));
    }

    /** C(20, 10) = 184,756 arrangements, in pairs by exchanging the clubs: floor(0.05 * 92,378) / 92,378 = 4.9990 %. */
    @Test
    void permutationIsWithinHalfAPointOfItsAttainableSize() {
        double attainable = Math.floor(0.05 * 92_378.0) / 92_378.0;
        assertEquals(0.05, attainable, 2e-5);
        between(
                attainable - 0.005,
                0.05 + 0.0039,
                () -> share(
                        "permutation",
                        7,
                        1.0,
                        (x, y) -> PermutationTest.withDefaults().pValue(x, y) <= 0.05));
    }

    /** Mann-Whitney at 10 + 10: P(U at most 23) * 2 = 0.0433 is the largest size below 5 % (exact tables). */
    @Test
    void rankTestsAreWithinHalfAPointOfTheirAttainableSize() {
        between(
                0.0433 - 0.005,
                0.0433 + 0.005,
                () -> share(
                        "Mann-Whitney",
                        8,
                        1.0,
                        (x, y) ->
                                HodgesLehmannEstimator.withDefaults().test(x, y).pValue() <= 0.05));
        // Signed rank at n = 10: P(V at most 8) * 2 = 50 / 1,024 = 0.0488.
        between(
                0.0488 - 0.005,
                0.0488 + 0.005,
                () -> share(
                        "signed rank",
                        9,
                        1.0,
                        (x, y) -> HodgesLehmannEstimator.withDefaults()
                                        .testPairs(x, y)
                                        .pValue()
                                <= 0.05));
    }

    @Test
    void rankAndEffectIntervalsCover() {
        between(
                0.95,
                0.965,
                () -> share(
                        "Hodges-Lehmann shift covers",
                        10,
                        1.0,
                        (x, y) -> HodgesLehmannEstimator.withDefaults()
                                .test(x, y)
                                .estimate()
                                .interval()
                                .contains(0.0)));
        between(
                0.945,
                0.955,
                () -> share(
                        "spread ratio by F covers",
                        11,
                        2.0,
                        (x, y) -> SpreadRatio.withDefaults()
                                .test(x, y)
                                .estimate()
                                .interval()
                                .contains(2.0)));
        between(
                0.945,
                0.955,
                () -> share(
                        "spread ratio of pairs covers",
                        12,
                        2.0,
                        (x, y) -> SpreadRatio.withDefaults()
                                .testPairs(x, y)
                                .estimate()
                                .interval()
                                .contains(2.0)));
        between(
                0.92,
                0.97,
                () -> share(
                        "spread ratio by jackknife covers",
                        13,
                        2.0,
                        (x, y) -> SpreadRatio.withDefaults()
                                .withMethod(SpreadRatio.Method.JACKKNIFE)
                                .test(x, y)
                                .estimate()
                                .interval()
                                .contains(2.0)));
    }

    /** Stated: 96 to 98 % on the logit; 91 to 95.5 % by Cliff's interval, which is too narrow where the clubs hardly overlap. */
    @Test
    void superiorityIsCoveredAtEveryShift() {
        for (double shift : new double[] {0.0, 1.0, 1.5, 2.0}) {
            double truth = NormalDistribution.of(0.0, 1.0).cumulativeProbability(shift / Math.sqrt(2.0));
            for (ProbabilityOfSuperiority.Method method : ProbabilityOfSuperiority.Method.values()) {
                boolean logit = method == ProbabilityOfSuperiority.Method.LOGIT;
                double low = logit ? 0.96 : 0.91;
                double high = logit ? 0.98 : 0.955;
                between(
                        low - 3.0 * Math.sqrt(low * (1.0 - low) / SESSIONS),
                        high + 3.0 * Math.sqrt(high * (1.0 - high) / SESSIONS),
                        () -> share(
                                "superiority covers, " + method + ", shift " + shift,
                                14,
                                1.0,
                                (x, y) -> ProbabilityOfSuperiority.withDefaults()
                                        .withMethod(method)
                                        .test(plus(x, shift), y)
                                        .estimate()
                                        .interval()
                                        .contains(truth)));
            }
        }
    }

    /** With spreads of 2 and 1 the interval on the logit holds no less than it says. */
    @Test
    void superiorityIsCoveredWithUnequalSpreads() {
        for (double shift : new double[] {0.0, 1.0, 1.5, 2.0}) {
            double truth = NormalDistribution.of(0.0, 1.0).cumulativeProbability(shift / Math.sqrt(2.0));
            double real = shift * Math.sqrt(2.5);
            between(
                    0.955 - 3.0 * Math.sqrt(0.955 * 0.045 / SESSIONS),
                    0.98 + 3.0 * Math.sqrt(0.98 * 0.02 / SESSIONS),
                    () -> share(
                            "superiority covers, spreads 2 and 1, shift " + shift,
                            18,
                            2.0,
                            (x, y) -> ProbabilityOfSuperiority.withDefaults()
                                    .test(plus(x, real), y)
                                    .estimate()
                                    .interval()
                                    .contains(truth)));
        }
    }

    @Test
    void brownForsytheIsConservativeAndDriftHoldsItsSize() {
        between(
                0.025,
                0.05,
                () -> share(
                        "Brown-Forsythe",
                        15,
                        1.0,
                        (x, y) -> BrownForsytheTest.withDefaults().test(x, y).pValue() <= 0.05));
        between(
                0.035,
                0.065,
                () -> share(
                        "Brunner-Munzel",
                        16,
                        1.0,
                        (x, y) -> ProbabilityOfSuperiority.withDefaults()
                                        .test(x, y)
                                        .pValue()
                                <= 0.05));
        ShotOrder abba = ShotOrder.of(0, 1, 1, 0, 0, 1, 1, 0, 0, 1);
        between(
                0.045,
                0.055,
                () -> share(
                        "drift",
                        17,
                        1.0,
                        (x, y) -> Drift.withDefaults().test(x, abba).pValue() <= 0.05));
    }
}
