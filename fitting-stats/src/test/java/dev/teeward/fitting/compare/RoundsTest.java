package dev.teeward.fitting.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.fitting.reference.ReferenceTable;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.apache.commons.statistics.distribution.TDistribution;
import org.junit.jupiter.api.Test;

/** Several clubs hit in rounds: max-t within rounds, and the probability of the best under one common error. */
class RoundsTest {
    private static final double[] ALDER = {171.2, 168.9, 173.4, 170.1, 169.5, 172.8};
    private static final double[] ROWAN = {174.0, 170.3, 175.9, 173.8, 170.2, 176.1};
    private static final double[] HAZEL = {172.1, 169.3, 173.0, 171.9, 171.2, 173.5};

    /** Exchanging two clubs within a round flips the sign of their difference: one metric, one pair. */
    @Test
    void twoClubsGiveTheSignFlipTest() {
        PairwiseComparison.Pair pair =
                MaxTTest.withDefaults().testRounds(ALDER, ROWAN).pair(1, 0);
        TestResult flips = SignFlipTest.withDefaults().test(ROWAN, ALDER);
        assertEquals(flips.pValue(), pair.pValue(), 1e-15);
        MaxTTest.MetricResult one = MaxTTest.withDefaults()
                .testPairs(new double[][] {ROWAN}, new double[][] {ALDER})
                .metrics()
                .get(0);
        assertEquals(one.adjustedP(), pair.pValue(), 1e-15);
        assertEquals(one.difference().value(), pair.difference().value(), 1e-12);
        assertEquals(
                one.difference().interval().lower(),
                pair.difference().interval().lower(),
                1e-9);
        assertEquals(one.t().orElseThrow(), pair.t().orElseThrow(), 1e-9);
    }

    /** All 216 arrangements of three clubs in three rounds by plain recursion, with t from the paired t test. */
    @Test
    void threeClubsMeetPlainEnumeration() {
        double[][] clubs = {Arrays.copyOf(ALDER, 3), Arrays.copyOf(ROWAN, 3), Arrays.copyOf(HAZEL, 3)};
        double[] observed = {t(clubs, 1, 0), t(clubs, 2, 0), t(clubs, 2, 1)};
        int[][] orders = {{0, 1, 2}, {0, 2, 1}, {1, 0, 2}, {1, 2, 0}, {2, 0, 1}, {2, 1, 0}};
        int[] reached = new int[3];
        for (int[] a : orders) {
            for (int[] b : orders) {
                for (int[] c : orders) {
                    double[][] dealt = new double[3][];
                    for (int j = 0; j < 3; j++) {
                        dealt[j] = new double[] {clubs[a[j]][0], clubs[b[j]][1], clubs[c[j]][2]};
                    }
                    double most = Math.max(t(dealt, 1, 0), Math.max(t(dealt, 2, 0), t(dealt, 2, 1)));
                    for (int p = 0; p < 3; p++) {
                        reached[p] += most >= observed[p] * (1.0 - 1e-9) ? 1 : 0;
                    }
                }
            }
        }
        PairwiseComparison.Result r = MaxTTest.withDefaults().testRounds(clubs);
        assertTrue(r.method().contains("exact: all 36 arrangements"), r.method());
        for (int p = 0; p < 3; p++) {
            assertEquals(reached[p] / 216.0, r.pairs().get(p).pValue(), 1e-12);
        }
    }

    private static double t(double[][] clubs, int i, int j) {
        return Math.abs(
                PairedTTest.withDefaults().test(clubs[i], clubs[j]).statistic().orElseThrow());
    }

    @Test
    void manyRoundsAreDrawnAndKeepAClubsOwnDifference() {
        SplittableRandom random = new SplittableRandom(5L);
        double[][] clubs = new double[3][12];
        for (int b = 0; b < 12; b++) {
            double round = 5.0 * random.nextGaussian();
            for (int j = 0; j < 3; j++) {
                clubs[j][b] = 150.0 + round + (j == 2 ? 4.0 : 0.0) + random.nextGaussian();
            }
        }
        PairwiseComparison.Result r = MaxTTest.withDefaults().testRounds(clubs);
        assertTrue(r.method().contains("Monte Carlo: 9,999"), r.method());
        assertTrue(r.pair(2, 0).pValue() < 0.01
                && r.pair(2, 1).pValue() < 0.01
                && r.pair(1, 0).pValue() > 0.05);
        assertTrue(r.pair(2, 0).difference().interval().contains(4.0));
        assertEquals(r, MaxTTest.withDefaults().testRounds(clubs));
    }

    @Test
    void roundsThatCannotAnswerSaySo() {
        double[] same = {1.0, 2.0, 3.0};
        PairwiseComparison.Result shifted = MaxTTest.withDefaults().testRounds(same, new double[] {2.0, 3.0, 4.0});
        assertTrue(shifted.warnings().stream().anyMatch(w -> w.code().equals("no-spread")));
        assertTrue(Double.isInfinite(shifted.pair(1, 0).difference().interval().upper()));
        double[] ten = {1.0, 2.0, 3.0, 4.0, 5.0, 6.0, 7.0, 8.0, 9.0, 10.0};
        double[] later = {2.0, 3.0, 4.0, 5.0, 6.0, 7.0, 8.0, 9.0, 10.0, 11.0};
        assertEquals(
                1.0, MaxTTest.withDefaults().testRounds(ten, later).pair(1, 0).pValue(), "no error, so no p");
        PairwiseComparison.Result one = MaxTTest.withDefaults().testRounds(new double[] {1.0}, new double[] {2.0});
        assertEquals(1.0, one.pair(1, 0).pValue());
        assertThrows(
                IllegalArgumentException.class,
                () -> MaxTTest.withDefaults().testRounds(new double[] {1.0}, new double[] {2.0, 3.0}));
        assertTrue(ProbabilityOfBest.withDefaults().testRounds(same, new double[] {2.0, 3.0, 4.0}).warnings().stream()
                .anyMatch(w -> w.code().equals("no-spread")));
        assertTrue(
                ProbabilityOfBest.withDefaults().testRounds(new double[] {1.0}, new double[] {2.0}).warnings().stream()
                        .anyMatch(w -> w.code().equals("too-few-shots")));
    }

    /**
     * Two clubs in rounds are pairs: the posterior of the difference is t about its mean, so that P(best) is a t probability
     * and the loss its partial mean, se (f(t) (nu + t^2) / (nu - 1) - t P(T above t)). The sleep data.
     */
    @Test
    void bestOfTwoIsThePairedT() {
        double[] x = ReferenceTable.column("r_sleep", "extra", "group", "1");
        double[] y = ReferenceTable.column("r_sleep", "extra", "group", "2");
        TestResult paired = PairedTTest.withDefaults().test(y, x);
        double t = paired.statistic().orElseThrow();
        double se = paired.estimate().value() / t;
        TDistribution nine = TDistribution.of(9.0);
        ProbabilityOfBest.Result r = ProbabilityOfBest.withDefaults().testRounds(x, y);
        assertEquals(nine.cumulativeProbability(t), r.clubs().get(1).probability(), 1e-11);
        assertEquals(nine.survivalProbability(t), r.clubs().get(0).probability(), 1e-11);
        double missed = se * (nine.density(t) * (9.0 + t * t) / 8.0 - t * nine.survivalProbability(t));
        assertEquals(missed, r.clubs().get(1).expectedLoss().orElseThrow(), 1e-10);
        assertEquals(
                missed + paired.estimate().value(),
                r.clubs().get(0).expectedLoss().orElseThrow(),
                1e-10);
        assertEquals(
                r.clubs().get(1).probability(),
                ProbabilityOfBest.withDefaults()
                        .withSmallestBest(true)
                        .testRounds(x, y)
                        .clubs()
                        .get(0)
                        .probability(),
                1e-12);
    }

    /** The joint posterior drawn 400,000 times; four standard errors. */
    @Test
    void bestOfThreeMeetsDraws() {
        ProbabilityOfBest.Result r = ProbabilityOfBest.withDefaults().testRounds(ALDER, ROWAN, HAZEL);
        assertEquals(List.of(ALDER.length, ALDER.length, ALDER.length), r.counts());
        double[][] clubs = {ALDER, ROWAN, HAZEL};
        double[] means = Arrays.stream(clubs)
                .mapToDouble(c -> Arrays.stream(c).average().orElseThrow())
                .toArray();
        double grand = Arrays.stream(means).average().orElseThrow();
        double squares = 0.0;
        for (int b = 0; b < 6; b++) {
            double round = (ALDER[b] + ROWAN[b] + HAZEL[b]) / 3.0;
            for (int j = 0; j < 3; j++) {
                double left = clubs[j][b] - means[j] - round + grand;
                squares += left * left;
            }
        }
        SplittableRandom random = new SplittableRandom(77L);
        int draws = 400_000;
        int[] best = new int[3];
        double[] loss = new double[3];
        for (int d = 0; d < draws; d++) {
            double chi2 = 0.0;
            for (int i = 0; i < 10; i++) {
                double z = random.nextGaussian();
                chi2 += z * z;
            }
            double sd = Math.sqrt(squares / chi2 / 6.0);
            double[] mu = new double[3];
            int lead = 0;
            for (int j = 0; j < 3; j++) {
                mu[j] = means[j] + sd * random.nextGaussian();
                lead = mu[j] > mu[lead] ? j : lead;
            }
            best[lead]++;
            for (int j = 0; j < 3; j++) {
                loss[j] += (mu[lead] - mu[j]) / draws;
            }
        }
        for (int j = 0; j < 3; j++) {
            double p = r.clubs().get(j).probability();
            assertEquals(best[j] / (double) draws, p, 4.0 * Math.sqrt(p * (1.0 - p) / draws) + 1e-6);
            assertEquals(loss[j], r.clubs().get(j).expectedLoss().orElseThrow(), 0.01);
        }
    }
}
