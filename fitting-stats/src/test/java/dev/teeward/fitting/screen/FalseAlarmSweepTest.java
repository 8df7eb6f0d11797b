package dev.teeward.fitting.screen;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.function.Function;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** How often good, normally spread sets raise a flag, and where the simulated cut-offs come from. Minutes. */
@Tag("sweep")
class FalseAlarmSweepTest {
    private static final int REPLICATES = 20_000;

    /** Four standard errors of a rate near 5 % from 20,000 replicates. */
    private static final double FOUR_ERRORS = 4.0 * Math.sqrt(0.05 * 0.95 / REPLICATES);

    private static double[][] set(int n, long seed) {
        Random random = new Random(seed);
        double[][] columns = new double[2][n];
        for (int i = 0; i < n; i++) {
            columns[0][i] = random.nextGaussian();
            columns[1][i] = random.nextGaussian();
        }
        return columns;
    }

    private static double rate(int n, int replicates, long firstSeed, Function<double[][], List<Flag>> screen) {
        int flagged = 0;
        for (int r = 0; r < replicates; r++) {
            flagged += screen.apply(set(n, firstSeed + 7919L * r)).isEmpty() ? 0 : 1;
        }
        return (double) flagged / replicates;
    }

    /** The table itself, from its own seeds: replicate r of n shots has the seed 1 + 1000 r + n. */
    @Test
    void cutOffTableIsReproduced() {
        for (double[] row : McdCutOffs.table()) {
            int n = (int) row[0];
            int replicates = n <= 20 ? 40_000 : n <= 25 ? 20_000 : 5_000;
            double[] statistics = new double[replicates];
            for (int r = 0; r < replicates; r++) {
                double[][] columns = set(n, 1L + 1000L * r + n);
                statistics[r] = MinimumCovarianceDeterminant.withDefaults()
                        .screen(columns)
                        .statistic()
                        .orElseThrow();
            }
            Arrays.sort(statistics);
            double quantile = statistics[(int) Math.ceil(0.95 * replicates) - 1];
            assertEquals(McdFactors.subsetSize(n, 2, McdCutOffs.SHARE), (int) row[1]);
            // Beyond the enumeration fewer replicates than the 20,000 of the table: four errors of such a quantile are
            // 6 %.
            assertEquals(quantile, row[2], (n <= 25 ? 1e-3 : 0.06) * quantile, "n = " + n);
        }
    }

    /** Independent seeds; the allowance holds the errors of the table as well. Beyond 20 shots 4,000 replicates. */
    @Test
    void robustDistancesFlagFivePercentOfGoodSets() {
        for (int n : new int[] {6, 8, 10, 12, 16, 20, 25, 33, 80}) {
            double rate = rate(
                    n,
                    n <= 20 ? REPLICATES : 4_000,
                    1_000_003L * n,
                    c -> MinimumCovarianceDeterminant.withDefaults().screen(c).flags());
            assertEquals(0.05, rate, n <= 20 ? 0.0075 : 0.016, "n = " + n);
        }
    }

    @Test
    void grubbsFlagsFivePercentOfGoodSets() {
        for (int n : new int[] {3, 5, 10, 20}) {
            double rate = rate(
                    n,
                    REPLICATES,
                    2_000_003L * n,
                    c -> GrubbsTest.withDefaults().screen(c[0]).flags());
            assertEquals(0.05, rate, FOUR_ERRORS, "n = " + n);
        }
    }

    /** Bonferroni over distances that hardly exclude each other: at most the stated rate, and close to it. */
    @Test
    void classicalDistancesFlagFivePercentOfGoodSets() {
        for (int n : new int[] {6, 10, 20}) {
            double rate = rate(
                    n,
                    REPLICATES,
                    3_000_003L * n,
                    c -> MahalanobisTest.withDefaults().screen(c[0], c[1]).flags());
            assertEquals(0.05, rate, FOUR_ERRORS, "n = " + n);
        }
    }

    /** The rates that the documentation of the test states; measured, not nominal. */
    @Test
    void generalizedEsdFlagsGoodSetsAtTheStatedRates() {
        for (Map.Entry<Integer, Double> stated : Map.of(8, 0.0512, 10, 0.0684, 15, 0.0668, 20, 0.0624, 30, 0.0573)
                .entrySet()) {
            int n = stated.getKey();
            double rate = rate(
                    n,
                    REPLICATES,
                    4_000_003L * n,
                    c -> GeneralizedEsdTest.withDefaults().screen(c[0]).flags());
            assertEquals(stated.getValue(), rate, FOUR_ERRORS, "n = " + n);
        }
    }
}
