package dev.teeward.fitting.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.quantity.LengthUnit;
import dev.teeward.quantity.Warning;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.apache.commons.math3.stat.inference.TTest;
import org.junit.jupiter.api.Test;

/** Identities of the methods for several clubs and metrics, and data that cannot answer. */
class SeveralClubsTest {
    private static final double[] A = {171.2, 168.9, 173.4, 170.1, 169.5, 172.8, 167.7, 171.9, 170.6, 172.2};
    private static final double[] B = {174.0, 170.3, 175.9, 173.8, 170.2, 176.1, 171.0, 173.5, 174.4, 173.9};
    private static final double[] FLAT = {5.0, 5.0, 5.0, 5.0, 5.0, 5.0, 5.0, 5.0, 5.0, 5.0};
    private static final double[] ONE = {5.0};

    private static boolean warns(List<Warning> warnings, String code) {
        return warnings.stream().anyMatch(w -> w.code().equals(code));
    }

    private static void saysNothing(HotellingTest.Result r) {
        assertTrue(warns(r.warnings(), "no-spread"), r.toString());
        assertEquals(1.0, r.pValue());
        assertTrue(r.t2().isEmpty() && r.f().isEmpty());
        assertTrue(r.differences().stream().noneMatch(d -> d.interval().bounded()));
    }

    /** Decimals that differ by the same, as written, differ in the last bit as doubles: no spread, whatever T2 would be. */
    @Test
    void hotellingTakesRoundingForNoSpread() {
        double[] before = {1.41, 1.38, 1.43, 1.46, 1.38, 1.45, 1.42, 1.47, 1.39, 1.48};
        double[] after = {1.40, 1.37, 1.42, 1.45, 1.37, 1.44, 1.41, 1.46, 1.38, 1.47};
        double[] real = {1.0, 3.0, -2.0, 4.0, 0.0, 2.0, 5.0, -1.0, 3.0, 2.0};
        double[][] x = {before, real};
        double[][] y = {after, new double[10]};
        HotellingTest test = HotellingTest.withDefaults();
        saysNothing(test.testPairs(x, y));
        saysNothing(test.withSignFlips(true).testPairs(x, y));
        double[] sums = {1.1 + 2.2, 3.3, 3.3, 1.1 + 2.2, 3.3, 3.3, 3.3, 1.1 + 2.2, 3.3, 3.3};
        double[] flat = {3.2, 3.2, 3.2, 3.2, 3.2, 3.2, 3.2, 3.2, 3.2, 3.2};
        saysNothing(test.testMeans(new double[][] {sums, real}, 3.2, 0.0));
        saysNothing(test.test(new double[][] {sums, real}, new double[][] {flat, A}));
        saysNothing(test.withPooledCovariance(true).test(new double[][] {sums, real}, new double[][] {flat, A}));
        assertTrue(
                test.test(new double[][] {sums, real}, new double[][] {B, A})
                        .t2()
                        .isPresent(),
                "one side varies");
    }

    /** With one metric T2 is the square of t; Commons Math as oracle. */
    @Test
    void hotellingWithOneMetricIsT() {
        HotellingTest.Result pairs = HotellingTest.withDefaults()
                .withUnit(LengthUnit.YARD)
                .testPairs(new double[][] {A}, new double[][] {B});
        double t = new TTest().pairedT(A, B);
        assertEquals(t * t, pairs.t2().orElseThrow(), 1e-9);
        assertEquals(new TTest().pairedTTest(A, B), pairs.pValue(), 1e-12);
        TestResult paired = PairedTTest.withDefaults().test(A, B);
        assertEquals(
                paired.estimate().interval().lower(),
                pairs.differences().get(0).interval().lower(),
                1e-9);
        HotellingTest.Result pooled =
                HotellingTest.withDefaults().withPooledCovariance(true).test(new double[][] {A}, new double[][] {B});
        assertEquals(new TTest().homoscedasticTTest(A, B), pooled.pValue(), 1e-12);
        HotellingTest.Result welch = HotellingTest.withDefaults().test(new double[][] {A}, new double[][] {B});
        assertEquals(new TTest().tTest(A, B), welch.pValue(), 1e-9);
    }

    @Test
    void hotellingByManyFlipsIsSeededAndNearF() {
        Random random = new Random(5L);
        double[][] x = new double[2][30];
        double[][] y = new double[2][30];
        for (int k = 0; k < 2; k++) {
            for (int i = 0; i < 30; i++) {
                x[k][i] = random.nextGaussian() + 0.35;
                y[k][i] = random.nextGaussian();
            }
        }
        HotellingTest test = HotellingTest.withDefaults().withLevel(0.9);
        HotellingTest.Result flips = test.withSignFlips(true).testPairs(x, y);
        assertTrue(flips.method().contains("Monte Carlo: 9,999"));
        assertEquals(flips.pValue(), test.withSignFlips(true).testPairs(x, y).pValue());
        assertEquals(test.testPairs(x, y).pValue(), flips.pValue(), 0.02);
        MaxTTest.Result max = MaxTTest.withDefaults().withSeed(3L).testPairs(x, y);
        assertTrue(max.method().contains("seed 3"));
        for (MaxTTest.MetricResult m : max.metrics()) {
            assertTrue(m.adjustedP() >= m.pValue() && m.adjustedP() <= 2.2 * m.pValue() + 0.01);
        }
    }

    @Test
    void hotellingThatCannotAnswerSaysSo() {
        HotellingTest test = HotellingTest.withDefaults();
        HotellingTest.Result same = test.testPairs(new double[][] {A, A}, new double[][] {B, B});
        assertTrue(warns(same.warnings(), "no-spread"));
        assertEquals(1.0, same.pValue());
        assertFalse(same.differences().get(0).interval().bounded());
        assertTrue(
                warns(test.testPairs(new double[][] {ONE}, new double[][] {ONE}).warnings(), "too-few-shots"));
        assertTrue(warns(test.test(new double[][] {ONE}, new double[][] {A}).warnings(), "too-few-shots"));
        assertTrue(warns(test.test(new double[][] {FLAT}, new double[][] {FLAT}).warnings(), "no-spread"));
        assertThrows(IllegalArgumentException.class, () -> test.testPairs(new double[0][], new double[0][]));
        assertThrows(IllegalArgumentException.class, () -> test.testMeans(new double[][] {A}, 1.0, 2.0));
        assertThrows(IllegalArgumentException.class, () -> test.testMeans(new double[][] {A, ONE}, 1.0, 2.0));
        assertThrows(IllegalArgumentException.class, () -> test.withLevel(1.0));
    }

    /** One metric: the flips of max-t are those of the sign-flip test. */
    @Test
    void maxTOfOneMetricIsTheSignFlipTest() {
        double p = SignFlipTest.withDefaults().test(A, B).pValue();
        MaxTTest.Result r = MaxTTest.withDefaults()
                .withUnit(LengthUnit.YARD)
                .testPairs(new double[][] {A, FLAT}, new double[][] {B, FLAT});
        assertEquals(p, r.metrics().get(0).pValue(), 1e-12);
        assertEquals(p, r.metrics().get(0).adjustedP(), 1e-12);
        assertEquals(1.0, r.metrics().get(1).adjustedP());
        assertTrue(warns(r.warnings(), "no-spread"));
        assertTrue(r.metrics().get(0).difference().interval().bounded());
        MaxTTest.Result few =
                MaxTTest.withDefaults().testPairs(new double[][] {{1.0, 2.0, 4.0}}, new double[][] {{0.0, 0.5, 1.0}});
        assertTrue(warns(few.warnings(), "too-few-shots"));
        assertThrows(
                IllegalArgumentException.class,
                () -> MaxTTest.withDefaults().testPairs(new double[][] {A}, new double[0][]));
        assertThrows(
                IllegalArgumentException.class,
                () -> MaxTTest.withDefaults().testPairs(new double[][] {A, ONE}, new double[][] {B, ONE}));
    }

    /** Without trimming Yuen's test is Welch's. */
    @Test
    void yuenWithoutTrimIsWelch() {
        YuenTest none = YuenTest.withDefaults().withTrim(0.0);
        assertEquals(
                WelchTTest.withDefaults().test(A, B).pValue(), none.test(A, B).pValue(), 1e-12);
        assertEquals(
                PairedTTest.withDefaults().test(A, B).pValue(),
                none.testPairs(A, B).pValue(),
                1e-12);
        TestResult trimmed = YuenTest.withDefaults().testPairs(A, B);
        assertEquals(List.of(6), trimmed.sampleSizes());
        assertEquals(4, trimmed.exclusions().get(0).count());
        double[] wild = B.clone();
        wild[2] = 20.0;
        assertTrue(YuenTest.withDefaults().test(A, wild).pValue() < 0.2);
        assertTrue(YuenTest.withDefaults().test(ONE, A).warns("too-few-shots"));
        assertTrue(YuenTest.withDefaults().test(FLAT, FLAT).warns("no-spread"));
        assertThrows(IllegalArgumentException.class, () -> none.withTrim(0.5));
    }

    /** With two clubs the family is one pair, and all methods are t tests. */
    @Test
    void twoClubsAreOneTTest() {
        PairwiseComparison games =
                PairwiseComparison.withDefaults().withLevel(0.9).withUnit(LengthUnit.YARD);
        TestResult welch = WelchTTest.withDefaults().withLevel(0.9).test(B, A);
        PairwiseComparison.Pair pair = games.test(A, B).pair(1, 0);
        assertEquals(welch.pValue(), pair.pValue(), 1e-10);
        assertEquals(
                welch.estimate().interval().lower(),
                pair.difference().interval().lower(),
                1e-8);
        double pooled = StudentTTest.withDefaults().test(B, A).pValue();
        for (PairwiseComparison.Method m :
                List.of(PairwiseComparison.Method.TUKEY_KRAMER, PairwiseComparison.Method.DUNNETT)) {
            assertEquals(pooled, games.withMethod(m).test(A, B).pair(1, 0).pValue(), 1e-10);
        }
        PairwiseComparison less =
                games.withMethod(PairwiseComparison.Method.DUNNETT).withAlternative(Alternative.LESS);
        assertEquals(
                StudentTTest.withDefaults()
                        .withAlternative(Alternative.LESS)
                        .test(B, A)
                        .pValue(),
                less.test(A, B).pair(1, 0).pValue(),
                1e-10);
        assertThrows(
                IllegalArgumentException.class,
                () -> games.withAlternative(Alternative.LESS).test(A, B));
        assertThrows(IllegalArgumentException.class, () -> games.test(A, B).pair(0, 1));
        assertThrows(IllegalArgumentException.class, () -> games.test(A));
        assertThrows(IllegalArgumentException.class, () -> games.dunnettCritical(0, 9.0));
    }

    /**
     * Computed: scipy.stats.ttest_ind of SciPy 1.17.1 without equal variances, p to 1 - (1 - p)^2 and confidence_interval at sqrt
     * 0.95.
     */
    @Test
    void welchAgainstTheFirstIsSciPys() {
        double[] wide = {160.0, 181.5, 169.0, 190.2, 155.1};
        PairwiseComparison sidak = PairwiseComparison.withDefaults().withMethod(PairwiseComparison.Method.WELCH_SIDAK);
        PairwiseComparison.Result r = sidak.test(A, B, wide);
        assertEquals(2, r.pairs().size());
        PairwiseComparison.Pair near = r.pair(1, 0);
        assertEquals(2.804653150597108, near.t().orElseThrow(), 1e-10);
        assertEquals(17.545333449086986, near.degreesOfFreedom(), 1e-9);
        assertEquals(0.02370529237510477, near.pValue(), 1e-11);
        assertEquals(0.3184401849742051, near.difference().interval().lower(), 1e-9);
        assertEquals(4.641559815025829, near.difference().interval().upper(), 1e-9);
        PairwiseComparison.Pair far = r.pair(2, 0);
        assertEquals(0.9985794845492761, far.pValue(), 1e-11);
        assertEquals(-22.36500181750231, far.difference().interval().lower(), 1e-8);
        PairwiseComparison.Pair above =
                sidak.withAlternative(Alternative.GREATER).test(A, B, wide).pair(1, 0);
        assertEquals(0.01188819004509778, above.pValue(), 1e-11);
        assertEquals(0.6245938020557067, above.difference().interval().lower(), 1e-9);
        assertEquals(Double.POSITIVE_INFINITY, above.difference().interval().upper());
        assertEquals(
                WelchTTest.withDefaults().test(B, A).pValue(),
                sidak.test(A, B).pair(1, 0).pValue(),
                1e-14);
        assertTrue(warns(sidak.test(A, ONE).warnings(), "too-few-shots"));
        assertTrue(warns(sidak.test(FLAT, FLAT).warnings(), "no-spread"));
    }

    @Test
    void pairsThatCannotAnswerSaySo() {
        PairwiseComparison games = PairwiseComparison.withDefaults();
        PairwiseComparison.Result r = games.test(A, ONE, FLAT, FLAT);
        assertTrue(warns(r.warnings(), "too-few-shots") && warns(r.warnings(), "no-spread"));
        assertEquals(1.0, r.pair(3, 2).pValue());
        assertFalse(r.pair(1, 0).difference().interval().bounded());
        PairwiseComparison.Result tukey =
                games.withMethod(PairwiseComparison.Method.TUKEY_KRAMER).test(ONE, ONE);
        assertTrue(warns(tukey.warnings(), "too-few-shots"));
    }

    @Test
    void severalClubsThatCannotAnswerSaySo() {
        assertTrue(warns(BartlettTest.withDefaults().test(A, ONE).warnings(), "too-few-shots"));
        assertTrue(warns(BartlettTest.withDefaults().test(A, FLAT).warnings(), "no-spread"));
        assertTrue(warns(FlignerKilleenTest.withDefaults().test(A, ONE).warnings(), "too-few-shots"));
        assertTrue(warns(FlignerKilleenTest.withDefaults().test(FLAT, FLAT).warnings(), "no-spread"));
        assertTrue(warns(KruskalWallisTest.withDefaults().test(FLAT, FLAT).warnings(), "no-spread"));
        assertTrue(warns(FriedmanTest.withDefaults().test(FLAT, FLAT).warnings(), "no-spread"));
        assertEquals(1.0, FriedmanTest.withDefaults().test(FLAT, FLAT).pValue());
        assertThrows(
                IllegalArgumentException.class,
                () -> FriedmanTest.withDefaults().test(A, ONE));
        assertThrows(
                IllegalArgumentException.class,
                () -> KruskalWallisTest.withDefaults().test(A));
    }

    @Test
    void permutedSpreads() {
        PermutationDispersionTest test = PermutationDispersionTest.withDefaults();
        double[] wide =
                IntStream.range(0, 10).mapToDouble(i -> 3.0 * (A[i] - 170.0)).toArray();
        TestResult r = test.withLevel(0.9).test(wide, A);
        assertEquals(3.0, r.estimate().value(), 1e-9);
        assertTrue(r.pValue() < 0.05 && r.estimate().interval().lower() > 1.0);
        assertTrue(test.withAlternative(Alternative.LESS).test(wide, A).pValue() > 0.9);
        assertTrue(test.withAlternative(Alternative.GREATER).test(wide, A).pValue() <= r.pValue());
        Random random = new Random(4L);
        double[] many = random.doubles(40).toArray();
        TestResult sampled = test.withSeed(9L).test(many, A);
        assertTrue(sampled.method().contains("Monte Carlo") && sampled.method().contains("seed 9"));
        assertTrue(test.test(ONE, A).warns("too-few-shots"));
        assertTrue(test.test(FLAT, A).warns("no-spread"));
        PermutationDispersionTest variances = test.withStatistic(PermutationDispersionTest.Statistic.VARIANCE_RATIO);
        assertEquals(3.0, variances.test(wide, A).estimate().value(), 1e-9);
        assertTrue(
                variances.test(new double[] {1.0, 2.0}, new double[] {4.0, 8.0}).pValue() <= 1.0);
        assertThrows(IllegalArgumentException.class, () -> variances.testPatterns(A, A, B, B));
        assertThrows(IllegalArgumentException.class, () -> test.testPatterns(A, ONE, B, B));
    }
}
