package dev.teeward.fitting.compare;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.fitting.internal.ArrangementCounts;
import dev.teeward.fitting.internal.Exchanges;
import dev.teeward.fitting.internal.GaussLegendre;
import dev.teeward.fitting.internal.NoncentralT;
import dev.teeward.fitting.internal.OrderedPairs;
import dev.teeward.fitting.internal.Ranks;
import dev.teeward.fitting.internal.Sample;
import dev.teeward.fitting.internal.SignFlips;
import dev.teeward.quantity.Interval;
import dev.teeward.quantity.LengthUnit;
import dev.teeward.quantity.RatioUnit;
import dev.teeward.quantity.Warning;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.apache.commons.math3.stat.correlation.PearsonsCorrelation;
import org.apache.commons.math3.stat.regression.OLSMultipleLinearRegression;
import org.junit.jupiter.api.Test;

/** Definitions by brute force, symmetries, and agreement of interval and p. */
class ComparisonPropertiesTest {
    private static final double[] ALDER = {171.2, 168.9, 173.4, 170.1, 169.5, 172.8, 167.7, 171.9, 170.6, 172.2};
    private static final double[] ROWAN = {174.0, 170.3, 175.9, 173.8, 170.2, 176.1, 171.0, 173.5, 174.4, 173.9};

    @Test
    void packageExampleFindsTheLongerClub() {
        TestResult difference =
                PairedTTest.withDefaults().withUnit(LengthUnit.YARD).test(ALDER, ROWAN);
        TostTest.Result equivalence =
                TostTest.withinMargin(5.0).withUnit(LengthUnit.YARD).testPairs(ALDER, ROWAN);
        ThreeWayVerdict verdict = ThreeWayVerdict.of(difference, equivalence);
        assertEquals(new ThreeWayVerdict(Verdict.PRACTICALLY_THE_SAME, true), verdict);
        assertEquals(-2.48, difference.estimate().value(), 1e-12);
        assertEquals(LengthUnit.YARD, difference.estimate().unit());
        assertEquals("paired t test of the mean difference, two-sided", difference.method());
        assertTrue(difference.toString().contains("p = "));
    }

    /** The numbers in the documentation of NoncentralT, HedgesG, PValueAdjustment and the internal package. */
    @Test
    void documentedNumbers() {
        assertEquals(0.8031, NoncentralT.upperTail(2.262157162740992, 9.0, 3.1622776601683795), 5e-5);
        assertEquals(0.80414, NoncentralT.cdf(2.0, 9.0, 1.0), 5e-6);
        assertEquals(3.09170, NoncentralT.quantile(0.95, 9.0, 1.0), 5e-6);
        assertArrayEquals(new double[] {0.036, 0.20, 0.082}, PValueAdjustment.HOLM.adjust(0.012, 0.20, 0.041), 1e-15);
        assertEquals(1.0 / 3.0, new GaussLegendre(20).integrate(x -> x * x, 0.0, 1.0, 1), 1e-15);
    }

    @Test
    void verdictFollowsTheMargin() {
        TestResult difference = PairedTTest.withDefaults().test(ALDER, ROWAN);
        assertEquals(
                Verdict.DIFFERENT,
                ThreeWayVerdict.of(difference, TostTest.withinMargin(2.0).testPairs(ALDER, ROWAN))
                        .verdict());
        double[] x = {1.0, 5.0, 3.0, 8.0, 2.0};
        double[] y = {2.0, 3.0, 4.0, 6.0, 3.0};
        TostTest.Result wide = TostTest.withinMargin(0.1).testPairs(x, y);
        assertEquals(
                Verdict.UNDECIDED,
                ThreeWayVerdict.of(PairedTTest.withDefaults().test(x, y), wide).verdict());
        assertTrue(wide.combined().warns("margin-out-of-reach"));
        assertThrows(
                IllegalArgumentException.class,
                () -> ThreeWayVerdict.of(
                        PairedTTest.withDefaults().withNullValue(1.0).test(x, y), wide));
        assertThrows(IllegalArgumentException.class, () -> TostTest.withinMargin(0.0));
        assertThrows(IllegalArgumentException.class, () -> TostTest.between(1.0, Double.POSITIVE_INFINITY));
        assertThrows(
                IllegalArgumentException.class, () -> TostTest.withinMargin(1.0).withAlpha(0.5));
    }

    @Test
    void equivalenceIsTheIntervalInsideTheMargin() {
        SplittableRandom random = new SplittableRandom(3);
        int equivalent = 0;
        for (int i = 0; i < 300; i++) {
            double[] x = gaussian(random, 9, 1.0);
            double[] y = gaussian(random, 7, 1.0);
            TostTest.Result r = TostTest.withinMargin(1.0).test(x, y);
            assertEquals(r.pValue() <= 0.05, r.equivalent());
            equivalent += r.equivalent() ? 1 : 0;
        }
        assertTrue(equivalent > 10 && equivalent < 290, "both outcomes must occur, but equivalent was " + equivalent);
    }

    @Test
    void exchangingTheClubsTurnsEverySign() {
        double[] x = Arrays.copyOf(ALDER, 7);
        for (Alternative alternative : Alternative.values()) {
            TestResult there =
                    PermutationTest.withDefaults().withAlternative(alternative).test(x, ROWAN);
            TestResult back = PermutationTest.withDefaults()
                    .withAlternative(alternative.reversed())
                    .test(ROWAN, x);
            assertEquals(there.pValue(), back.pValue(), 1e-15);
            assertEquals(there.estimate().value(), -back.estimate().value(), 1e-12);
            assertEquals(
                    there.estimate().interval().lower(),
                    -back.estimate().interval().upper(),
                    1e-9);
            TestResult rankThere = HodgesLehmannEstimator.withDefaults()
                    .withAlternative(alternative)
                    .test(x, ROWAN);
            TestResult rankBack = HodgesLehmannEstimator.withDefaults()
                    .withAlternative(alternative.reversed())
                    .test(ROWAN, x);
            assertEquals(rankThere.pValue(), rankBack.pValue(), 1e-14);
            assertEquals(
                    rankThere.estimate().interval().upper(),
                    -rankBack.estimate().interval().lower(),
                    1e-12);
        }
    }

    @Test
    void limitsAreWhereTheTestTurns() {
        HypothesisTest<?>[] tests = {
            PairedTTest.withDefaults(),
            WelchTTest.withDefaults(),
            SignFlipTest.withDefaults(),
            PermutationTest.withDefaults(),
            PermutationTest.withDefaults().withStudentization(false)
        };
        for (HypothesisTest<?> test : tests) {
            TestResult r = run(test, ALDER, ROWAN);
            for (double end : new double[] {
                r.estimate().interval().lower(), r.estimate().interval().upper()
            }) {
                double out = end + Math.signum(end - r.estimate().value()) * 1e-6;
                double into = end - Math.signum(end - r.estimate().value()) * 1e-6;
                assertTrue(run(test.withNullValue(out), ALDER, ROWAN).pValue() <= 0.05, r.method());
                assertTrue(run(test.withNullValue(into), ALDER, ROWAN).pValue() > 0.05, r.method());
            }
        }
    }

    private static TestResult run(HypothesisTest<?> test, double[] x, double[] y) {
        if (test instanceof PairedTTest t) {
            return t.test(x, y);
        }
        if (test instanceof WelchTTest t) {
            return t.test(x, y);
        }
        if (test instanceof SignFlipTest t) {
            return t.test(x, y);
        }
        return ((PermutationTest) test).test(x, y);
    }

    @Test
    void oneSidedQuestionsLeaveOneEndOpen() {
        TestResult greater =
                WelchTTest.withDefaults().withAlternative(Alternative.GREATER).test(ALDER, ROWAN);
        assertEquals(Double.POSITIVE_INFINITY, greater.estimate().interval().upper());
        assertTrue(greater.pValue() > 0.99);
        TestResult less =
                SpreadRatio.withDefaults().withAlternative(Alternative.LESS).test(ALDER, ROWAN);
        assertEquals(0.0, less.estimate().interval().lower());
        TestResult superior = ProbabilityOfSuperiority.withDefaults()
                .withAlternative(Alternative.GREATER)
                .test(ALDER, ROWAN);
        assertEquals(1.0, superior.estimate().interval().upper());
    }

    /** R's PlantGrowth; s from scipy.stats.brunnermunzel (1.14): statistic (A - 1/2) / s = 1.3454905527673569 at A = 0.675. */
    @Test
    void superiorityOnTheLogitIsTheClosedForm() {
        double[] control = {4.17, 5.58, 5.18, 6.11, 4.50, 4.61, 5.17, 4.53, 5.33, 5.14};
        double[] treated = {4.81, 4.17, 4.41, 3.59, 5.87, 3.83, 6.03, 4.89, 4.32, 4.69};
        TestResult r = ProbabilityOfSuperiority.withDefaults().test(control, treated);
        assertEquals(1.3454905527673569, r.statistic().orElseThrow(), 1e-12);
        assertEquals(0.39385290122777633, r.estimate().interval().lower(), 1e-9);
        assertEquals(0.8690881336029647, r.estimate().interval().upper(), 1e-9);
        TestResult turned = ProbabilityOfSuperiority.withDefaults().test(treated, control);
        assertEquals(
                1.0 - r.estimate().interval().upper(),
                turned.estimate().interval().lower(),
                1e-12);
        assertTrue(r.method().contains("logit"));
        assertTrue(ProbabilityOfSuperiority.withDefaults()
                .withMethod(ProbabilityOfSuperiority.Method.CLIFF)
                .test(control, treated)
                .method()
                .contains("Cliff"));
    }

    @Test
    void fivePairsCannotReachSignificanceAndSayso() {
        double[] x = {5.0, 6.0, 7.0, 8.0, 9.0};
        double[] y = {1.0, 1.5, 2.2, 3.3, 4.4};
        TestResult r = SignFlipTest.withDefaults().test(x, y);
        assertEquals(2.0 / 32.0, r.pValue(), 1e-15);
        assertFalse(r.estimate().interval().bounded());
        assertTrue(r.warns("too-few-shots"));
        assertEquals(
                "sign-flip permutation test of the mean difference, two-sided, exact: all 32 arrangements", r.method());
    }

    @Test
    void monteCarloAgreesWithEnumerationAndIsNeverZero() {
        SplittableRandom random = new SplittableRandom(11);
        double[] d = gaussian(random, 16, 0.5);
        ArrangementCounts exact = SignFlips.enumerate(Sample.of("d", d), true);
        ArrangementCounts sampled = SignFlips.sample(Sample.of("d", d), 40_000, 5L);
        double p = exact.twoSided();
        assertEquals(p, sampled.twoSided(), 5.0 * Math.sqrt(p * (1.0 - p) / 40_000));
        assertEquals(exact.greater(), sampled.greater(), 0.02);
        assertEquals(exact.less(), sampled.less(), 0.02);
        assertEquals(exact.lowerLimit(0.025), sampled.lowerLimit(0.025), 0.05);
        double[] x = gaussian(random, 9, 0.4);
        double[] y = gaussian(random, 12, 0.0);
        for (boolean studentized : new boolean[] {true, false}) {
            Exchanges exchanges = new Exchanges(Sample.of("x", x), Sample.of("y", y), studentized);
            double q = exchanges.enumerate(false).twoSided();
            assertEquals(q, exchanges.sample(40_000, 5L).twoSided(), 5.0 * Math.sqrt(q * (1.0 - q) / 40_000));
        }
        double[] far = IntStream.range(0, 30).mapToDouble(i -> 100.0 + i).toArray();
        double[] near = IntStream.range(0, 30).mapToDouble(i -> i * 0.5).toArray();
        TestResult flips = SignFlipTest.withDefaults().withResamples(999).test(far, near);
        assertEquals(1.0 / 1000.0, flips.pValue(), 1e-15);
        assertTrue(flips.method().endsWith("Monte Carlo: 999 random arrangements, seed 20261124"), flips.method());
        TestResult perm =
                PermutationTest.withDefaults().withResamples(999).withSeed(3L).test(far, near);
        assertEquals(1.0 / 1000.0, perm.pValue(), 1e-15);
        assertTrue(perm.method().endsWith("seed 3"), perm.method());
        assertEquals(
                PermutationTest.withDefaults().test(far, near).estimate(),
                PermutationTest.withDefaults().test(far, near).estimate());
        assertTrue(SignFlipTest.withDefaults().withSeed(4L).test(far, near).pValue() > 0.0);
        assertThrows(
                IllegalArgumentException.class,
                () -> SignFlipTest.withDefaults().withResamples(98));
    }

    @Test
    void studentisedPermutationOfUnequalSizesFollowsItsDefinition() {
        double[] x = {1.0, 4.0, 2.5};
        double[] y = {3.0, 5.5, 4.2, 6.1, 2.2};
        double[] pooled = {1.0, 4.0, 2.5, 3.0, 5.5, 4.2, 6.1, 2.2};
        double observed = WelchTTest.withDefaults().test(x, y).statistic().orElseThrow();
        int extreme = 0;
        int all = 0;
        for (int bits = 0; bits < 256; bits++) {
            if (Integer.bitCount(bits) != 3) {
                continue;
            }
            int chosen = bits;
            double[] a = IntStream.range(0, 8)
                    .filter(i -> (chosen >> i & 1) == 1)
                    .mapToDouble(i -> pooled[i])
                    .toArray();
            double[] b = IntStream.range(0, 8)
                    .filter(i -> (chosen >> i & 1) == 0)
                    .mapToDouble(i -> pooled[i])
                    .toArray();
            double t = WelchTTest.withDefaults().test(a, b).statistic().orElseThrow();
            all++;
            extreme += Math.abs(t) >= Math.abs(observed) - 1e-9 ? 1 : 0;
        }
        assertEquals(56, all);
        TestResult r = PermutationTest.withDefaults().test(x, y);
        assertEquals(extreme / 56.0, r.pValue(), 1e-15);
        assertEquals(extreme / 56.0, PermutationTest.withDefaults().pValue(y, x), 1e-15);
        assertTrue(PermutationTest.withDefaults()
                .withLevel(0.8)
                .test(x, y)
                .estimate()
                .interval()
                .bounded());
        assertTrue(PermutationTest.withDefaults().test(new double[] {1.0}, y).warns("not-studentised"));
    }

    @Test
    void orderStatisticsOfPairsAreThoseOfAllPairs() {
        SplittableRandom random = new SplittableRandom(5);
        for (int round = 0; round < 40; round++) {
            double[] x = random.doubles(1 + random.nextInt(9))
                    .map(v -> Math.rint(8 * v) / 4 - 1.0)
                    .sorted()
                    .toArray();
            double[] y = random.doubles(1 + random.nextInt(9))
                    .map(v -> Math.rint(8 * v) / 4 - 1.0)
                    .sorted()
                    .toArray();
            double[] differences = Arrays.stream(x)
                    .flatMap(a -> Arrays.stream(y).map(b -> a - b))
                    .sorted()
                    .toArray();
            for (int k = 1; k <= differences.length; k++) {
                assertEquals(differences[k - 1], OrderedPairs.differences(x, y, k)[0], 0.0);
            }
            double[] walsh = IntStream.range(0, x.length)
                    .boxed()
                    .flatMap(i -> IntStream.rangeClosed(0, i).mapToObj(j -> 0.5 * (x[i] + x[j])))
                    .mapToDouble(v -> v)
                    .sorted()
                    .toArray();
            for (int k = 1; k <= walsh.length; k++) {
                assertEquals(walsh[k - 1], OrderedPairs.walshAverages(x, k)[0], 0.0);
            }
        }
    }

    @Test
    void rankDistributionsSumToOneAndMatchKnownTails() {
        // Wilcoxon, n = 5: P(V = 15) = 1/32; Mann-Whitney 2 + 3: P(U = 0) = 1/10.
        double[] signed = Ranks.signedRankSum(new int[] {1, 2, 3, 4, 5});
        assertEquals(1.0 / 32.0, Ranks.upperTail(signed, 15), 1e-15);
        double[] subset = Ranks.subsetRankSum(new int[] {1, 2, 3, 4, 5}, 2);
        assertEquals(0.1, Ranks.lowerTail(subset, 3), 1e-15);
        assertEquals(1.0, Ranks.lowerTail(subset, 100), 1e-12);
        assertEquals(6.0, Ranks.tieTerm(Ranks.doubledMidranks(new double[] {1.0, 1.0, 2.0}, 0.0)), 1e-15);
    }

    @Test
    void normalApproximationTakesOverBeyondTheLimitAndSaysSo() {
        SplittableRandom random = new SplittableRandom(9);
        double[] x = gaussian(random, 50, 0.4);
        double[] y = gaussian(random, 50, 0.0);
        TestResult exact = HodgesLehmannEstimator.withDefaults().test(x, y);
        TestResult normal = HodgesLehmannEstimator.withDefaults()
                .withMethod(RankMethod.NORMAL)
                .test(x, y);
        assertEquals(exact.pValue(), normal.pValue(), 0.01);
        assertEquals(
                exact.estimate().interval().lower(),
                normal.estimate().interval().lower(),
                0.05);
        double[] more = gaussian(random, 60, 0.0);
        TestResult large = HodgesLehmannEstimator.withDefaults().test(x, more);
        assertTrue(large.method().contains("normal approximation"), large.method());
        assertTrue(exact.method().contains("exact given the ties"), exact.method());
        assertThrows(
                IllegalArgumentException.class,
                () -> HodgesLehmannEstimator.withDefaults()
                        .withMethod(RankMethod.EXACT)
                        .test(x, more));
        double[] pairs = gaussian(random, 201, 0.1);
        double[] zeros = new double[201];
        assertTrue(HodgesLehmannEstimator.withDefaults()
                .testPairs(pairs, zeros)
                .method()
                .contains("normal approximation"));
    }

    /** Whatever the wins, losses and ties: the interval leaves out one half exactly when the sign test rejects it. */
    @Test
    void pairsWonAndTheSignTestNeverContradict() {
        for (int wins = 0; wins <= 12; wins++) {
            for (int losses = 0; losses <= 12; losses++) {
                for (int ties = wins + losses == 0 ? 1 : 0; ties <= 4; ties++) {
                    double[] d = new double[wins + losses + ties];
                    java.util.Arrays.fill(d, 0, wins, 1.0);
                    java.util.Arrays.fill(d, wins, wins + losses, -1.0);
                    TestResult r = ProbabilityOfSuperiority.withDefaults().testPairs(d, new double[d.length]);
                    Interval interval = r.estimate().interval();
                    assertEquals(r.significant(), !interval.contains(0.5), r.toString());
                    assertTrue(interval.contains(r.estimate().value()), r.toString());
                }
            }
        }
        TestResult tied = ProbabilityOfSuperiority.withDefaults().testPairs(new double[5], new double[5]);
        assertEquals(Interval.of(0.0, 1.0, 0.95), tied.estimate().interval());
        assertTrue(tied.warns("no-spread"));
    }

    /** Counting gives a p where nothing varies, but never limits. */
    @Test
    void noSpreadGivesNoLimits() {
        double[] x = {150, 150, 150, 150, 150, 150};
        double[] y = {160, 160, 160, 160, 160, 160};
        for (double[] other : new double[][] {x, y}) {
            for (TestResult r : java.util.List.of(
                    SignFlipTest.withDefaults().test(x, other),
                    PermutationTest.withDefaults().test(x, other),
                    HodgesLehmannEstimator.withDefaults().test(x, other),
                    HodgesLehmannEstimator.withDefaults().testPairs(x, other),
                    WelchTTest.withDefaults().test(x, other),
                    HedgesG.withDefaults().test(x, other))) {
                assertEquals(Interval.unbounded(0.95), r.estimate().interval(), r.toString());
                assertFalse(r.warnings().isEmpty(), r.toString());
            }
        }
        TestResult tied = ProbabilityOfSuperiority.withDefaults().test(x, x);
        assertEquals(Interval.of(0.0, 1.0, 0.95), tied.estimate().interval());
        assertTrue(tied.warns("no-spread"));
    }

    /** Skewed shots and unequal sizes: p counts both tails by size, the limits leave the same share in each. */
    @Test
    void disagreementOfPermutedPAndLimitsIsSaid() {
        SplittableRandom random = new SplittableRandom(5);
        int disagree = 0;
        for (int i = 0; i < 200; i++) {
            double[] x = random.doubles(8).map(u -> -4.0 * Math.log1p(-u)).toArray();
            double[] y = random.doubles(3).map(u -> -4.0 * Math.log1p(-u) - 3.0).toArray();
            TestResult r = PermutationTest.withDefaults()
                    .withStudentization(i % 2 == 0)
                    .test(x, y);
            boolean bounded = !r.estimate().interval().equals(Interval.unbounded(0.95));
            boolean differs = bounded && r.estimate().interval().contains(0.0) == r.significant();
            assertEquals(differs, r.warns("interval-and-p-disagree"), r.toString());
            disagree += differs ? 1 : 0;
        }
        assertTrue(disagree > 0);
    }

    @Test
    void signedRanksCountTheZerosThatTheyLeaveOut() {
        double[] x = {3.0, 4.0, 5.0, 1.0, 2.0, 2.0};
        double[] y = {2.0, 2.0, 2.0, 5.0, 2.0, 2.0};
        List<Exclusion> two =
                List.of(new Exclusion(2, "difference equal to the null value, not used by the signed-rank test"));
        HodgesLehmannEstimator wilcoxon = HodgesLehmannEstimator.withDefaults();
        TestResult r = wilcoxon.testPairs(x, y);
        assertEquals(two, r.exclusions());
        // By hand: 1, 2 and 3 of the ranks 1 to 4 are positive; of 16 arrangements 7 reach 6, and twice that is 0.875.
        assertEquals(6.0, r.statistic().orElseThrow(), 0.0);
        assertEquals(0.875, r.pValue(), 1e-14);
        assertEquals(two, wilcoxon.withPrattZeros(true).testPairs(x, y).exclusions());
        assertEquals(
                List.of(),
                wilcoxon.testPairs(new double[] {1.0, 3.0}, new double[] {0.0, 1.0})
                        .exclusions());
    }

    @Test
    void pairsWonCountsAndTies() {
        double[] x = {3.0, 4.0, 5.0, 1.0, 2.0, 6.0, 7.0, 8.0, 2.0, 2.0};
        double[] y = {2.0, 3.0, 4.0, 0.0, 1.0, 5.0, 6.0, 9.0, 3.0, 2.0};
        TestResult r = ProbabilityOfSuperiority.withDefaults().testPairs(x, y);
        assertEquals(0.75, r.estimate().value(), 1e-15);
        assertEquals(RatioUnit.ONE, r.estimate().unit());
        // Sign test of 7 wins in 9: 2 (36 + 9 + 1) / 512.
        assertEquals(92.0 / 512.0, r.pValue(), 1e-14);
        assertEquals(
                new Exclusion(1, "tied pair, not used by the sign test"),
                r.exclusions().get(0));
        double[] seven = {1, 1, 1, 1, 1, 1, 1, -1, -1, -1};
        TestResult exact = ProbabilityOfSuperiority.withDefaults().testPairs(seven, new double[10]);
        // Clopper and Pearson's interval of 7 in 10 (SciPy 1.17 binomtest(7, 10).proportion_ci(method="exact")).
        assertEquals(0.34754715, exact.estimate().interval().lower(), 1e-8);
        assertEquals(0.93326049, exact.estimate().interval().upper(), 1e-8);
        // No win of 2: exactly 0, not a rounding above it, and 1 - sqrt(0.025).
        TestResult lost = ProbabilityOfSuperiority.withDefaults().testPairs(new double[2], new double[] {1.0, 2.0});
        assertEquals(0.0, lost.estimate().value());
        assertEquals(0.0, lost.estimate().interval().lower());
        assertEquals(1.0 - Math.sqrt(0.025), lost.estimate().interval().upper(), 1e-9);
        TestResult all = ProbabilityOfSuperiority.withDefaults().test(new double[] {5, 6, 7}, new double[] {1, 2, 3});
        assertTrue(all.warns("complete-separation"));
        assertEquals(2.0 / 20.0, all.pValue(), 1e-15);
        TestResult none = ProbabilityOfSuperiority.withDefaults().test(new double[] {1, 2, 3}, new double[] {5, 6, 7});
        assertEquals(
                1.0 - all.estimate().interval().lower(),
                none.estimate().interval().upper(),
                1e-15);
    }

    @Test
    void pairedSpreadIsTheCorrelationOfDifferenceAndSum() {
        double[] difference =
                IntStream.range(0, 10).mapToDouble(i -> ALDER[i] - ROWAN[i]).toArray();
        double[] sum =
                IntStream.range(0, 10).mapToDouble(i -> ALDER[i] + ROWAN[i]).toArray();
        double r = new PearsonsCorrelation().correlation(difference, sum);
        TestResult pm = SpreadRatio.withDefaults().testPairs(ALDER, ROWAN);
        assertEquals(r * Math.sqrt(8.0 / (1.0 - r * r)), pm.statistic().orElseThrow(), 1e-9);
        // The limit is the ratio at which the test of x and ratio * y is just significant.
        double limit = pm.estimate().interval().upper();
        double[] stretched = Arrays.stream(ROWAN).map(v -> limit * v).toArray();
        assertEquals(
                0.05, SpreadRatio.withDefaults().testPairs(ALDER, stretched).pValue(), 1e-9);
    }

    @Test
    void intervalOfASpreadRatioAtTenShotsIsTwofold() {
        TestResult r = SpreadRatio.withDefaults().test(ALDER, ROWAN);
        // sqrt(F_.975(9,9)) = 2.006, F table.
        assertEquals(2.006, r.estimate().interval().upper() / r.estimate().value(), 5e-4);
        TestResult robust = SpreadRatio.withDefaults()
                .withMethod(SpreadRatio.Method.JACKKNIFE)
                .test(ALDER, ROWAN);
        assertTrue(robust.estimate().interval().contains(r.estimate().value()));
        assertTrue(robust.pValue() > 0.05);
    }

    @Test
    void driftIsTheRegressionOnOrderAndClub() {
        int[] clubs = {0, 1, 1, 0, 0, 1, 1, 0, 0, 1};
        double[] y = {150.0, 153.0, 152.0, 149.0, 148.5, 151.5, 152.2, 147.0, 147.9, 150.1};
        double[][] design = new double[10][];
        for (int i = 0; i < 10; i++) {
            design[i] = new double[] {clubs[i], i + 1.0};
        }
        OLSMultipleLinearRegression ols = new OLSMultipleLinearRegression();
        ols.newSampleData(y, design);
        double slope = ols.estimateRegressionParameters()[2];
        double error = ols.estimateRegressionParametersStandardErrors()[2];
        TestResult r = Drift.withDefaults().withUnit(LengthUnit.YARD).test(y, ShotOrder.of(clubs));
        assertEquals(10.0 * slope, r.estimate().value(), 1e-9);
        assertEquals(slope / error, r.statistic().orElseThrow(), 1e-9);
        assertEquals(7.0, r.degreesOfFreedom().get(0));
        assertThrows(IllegalArgumentException.class, () -> Drift.withDefaults().test(y, ShotOrder.of(0, 1)));
    }

    @Test
    void driftWarnsOfSerialDependenceAndExactLines() {
        double[] wave =
                IntStream.range(0, 40).mapToDouble(i -> Math.sin(i / 4.0)).toArray();
        assertTrue(Drift.withDefaults().test(wave, ShotOrder.of(new int[40])).warns("serial-dependence"));
        double[] line = IntStream.range(0, 12).mapToDouble(i -> 0.1 * i).toArray();
        TestResult exact = Drift.withDefaults().test(line, ShotOrder.of(new int[12]));
        assertTrue(exact.warns("no-spread"));
        assertEquals(1.0, exact.estimate().value(), 1e-12);
    }

    @Test
    void shotOrdersAreTold() {
        ShotOrder blocked = ShotOrder.of(0, 0, 0, 0, 1, 1, 1, 1);
        assertTrue(blocked.blocked());
        assertFalse(blocked.alternated());
        assertEquals("clubs-in-blocks", blocked.warnings().get(0).code());
        ShotOrder abba = ShotOrder.of(0, 1, 1, 0, 0, 1, 1, 0);
        assertTrue(abba.alternated());
        assertFalse(abba.blocked());
        assertTrue(abba.warnings().isEmpty());
        ShotOrder abab = ShotOrder.of(0, 1, 0, 1, 0, 1);
        assertTrue(abab.alternated());
        assertEquals(1.0, abab.lag(1, 0), 1e-15);
        assertEquals("drift-not-cancelled", abab.warnings().get(0).code());
        assertTrue(
                abab.warnings().get(0).message().contains("1.0 shots"),
                abab.warnings().toString());
        assertFalse(ShotOrder.of(0, 1, 2).alternated());
        assertFalse(ShotOrder.of(0, 1).blocked());
        assertEquals(3, ShotOrder.of(0, 1, 2).clubs());
        assertThrows(IllegalArgumentException.class, ShotOrder::of);
        assertThrows(IllegalArgumentException.class, () -> ShotOrder.of(0, -1));
        assertThrows(IllegalArgumentException.class, () -> ShotOrder.of(0, 2, 2));
        assertThrows(IllegalArgumentException.class, () -> ShotOrder.of(0, 7));
    }

    @Test
    void resultsTakeFurtherWarningsAndExclusions() {
        TestResult r = PairedTTest.withDefaults()
                .test(ALDER, ROWAN)
                .withWarning(Warning.of("drift-not-cancelled", "an order to know of"))
                .withExclusion(new Exclusion(2, "called out by the player"));
        assertTrue(r.warns("drift-not-cancelled"));
        assertEquals(2, r.exclusions().get(0).count());
        assertEquals(PairedTTest.withDefaults().test(ALDER, ROWAN).pValue(), r.pValue());
        assertThrows(IllegalArgumentException.class, () -> new Exclusion(0, "none"));
        assertThrows(IllegalArgumentException.class, () -> new Exclusion(1, " "));
        assertThrows(
                IllegalArgumentException.class, () -> WelchTTest.withDefaults().withLevel(95.0));
        assertThrows(
                IllegalArgumentException.class, () -> WelchTTest.withDefaults().withNullValue(Double.NaN));
        assertThrows(IllegalArgumentException.class, () -> HedgesG.correction(1.0));
        assertThrows(IllegalArgumentException.class, () -> PValueAdjustment.HOLM.adjust(0.5, 1.5));
        assertEquals(0, PValueAdjustment.HOMMEL.adjust().length);
    }

    @Test
    void levelWidensTheInterval() {
        assertTrue(BrownForsytheTest.withDefaults()
                        .withLevel(0.9)
                        .withUnit(LengthUnit.YARD)
                        .test(ALDER, ROWAN)
                        .estimate()
                        .interval()
                        .width()
                < BrownForsytheTest.withDefaults()
                        .test(ALDER, ROWAN)
                        .estimate()
                        .interval()
                        .width());
        assertTrue(HedgesG.withDefaults()
                        .withLevel(0.9)
                        .test(ALDER, ROWAN)
                        .estimate()
                        .interval()
                        .width()
                < HedgesG.withDefaults()
                        .test(ALDER, ROWAN)
                        .estimate()
                        .interval()
                        .width());
        assertTrue(SpreadRatio.withDefaults()
                        .withLevel(0.9)
                        .test(ALDER, ROWAN)
                        .estimate()
                        .interval()
                        .width()
                < SpreadRatio.withDefaults()
                        .test(ALDER, ROWAN)
                        .estimate()
                        .interval()
                        .width());
        assertTrue(ProbabilityOfSuperiority.withDefaults()
                        .withLevel(0.9)
                        .test(ALDER, ROWAN)
                        .estimate()
                        .interval()
                        .width()
                < ProbabilityOfSuperiority.withDefaults()
                        .test(ALDER, ROWAN)
                        .estimate()
                        .interval()
                        .width());
        TestResult huge = HedgesG.withDefaults().test(new double[] {1e6, 1e6 + 1e-3, 1e6}, new double[] {0, 1e-3, 0});
        assertTrue(huge.warns("effect-too-large"));
    }

    private static double[] gaussian(SplittableRandom random, int n, double mean) {
        return IntStream.range(0, n)
                .mapToDouble(i -> mean + random.nextGaussian())
                .toArray();
    }
}
