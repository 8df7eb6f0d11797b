package dev.teeward.fitting.choose;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Locale;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Five clubs, ten shots each with standard deviation 1, each variance estimated from its own shots as a choice does: how far the mean of the club
 * that came out first lies above its true mean, raw and shrunk. 8,000 sessions a cell, standard error of a bias about 0.01
 * standard errors of a mean; 400 intervals, standard error of their coverage 1.1 %.
 */
@Tag("sweep")
class WinnersCurseSweepTest {
    private static final int SESSIONS = 8_000;
    private static final int INTERVALS = 400;
    private static final int CLUBS = 5;
    private static final int SHOTS = 10;

    private static double[] biases(double truths) {
        SplittableRandom random = new SplittableRandom(21);
        double error = 1.0 / Math.sqrt(SHOTS);
        double raw = 0.0;
        double shrunk = 0.0;
        double covered = 0.0;
        double[] own = new double[CLUBS];
        Arrays.fill(own, SHOTS - 1.0);
        for (int i = 0; i < SESSIONS; i++) {
            double[] theta = new double[CLUBS];
            double[] means = new double[CLUBS];
            double[] variances = new double[CLUBS];
            for (int k = 0; k < CLUBS; k++) {
                theta[k] = truths * error * random.nextGaussian();
                double[] x = new double[SHOTS];
                for (int j = 0; j < SHOTS; j++) {
                    x[j] = theta[k] + random.nextGaussian();
                    means[k] += x[j] / SHOTS;
                }
                for (double one : x) {
                    variances[k] += (one - means[k]) * (one - means[k]) / (SHOTS - 1.0) / SHOTS;
                }
            }
            int winner = 0;
            for (int k = 1; k < CLUBS; k++) {
                winner = means[k] > means[winner] ? k : winner;
            }
            double[] drawn = ShrunkMeans.means(means, variances);
            raw += (means[winner] - theta[winner]) / error;
            shrunk += (drawn[winner] - theta[winner]) / error;
            if (i < INTERVALS) {
                covered += ShrunkMeans.withDefaults()
                                .of(means, variances, own)
                                .get(winner)
                                .interval()
                                .contains(theta[winner])
                        ? 1
                        : 0;
            }
        }
        System.out.printf(
                Locale.ROOT,
                "true means spread by %.1f errors: raw %.3f, shrunk %.3f, interval of the winner holds %.3f%n",
                truths,
                raw / SESSIONS,
                shrunk / SESSIONS,
                covered / INTERVALS);
        return new double[] {raw / SESSIONS, shrunk / SESSIONS, covered / INTERVALS};
    }

    /** The expectation of the largest of five standard normal values is 1.16296 (Harter 1961, from memory). */
    @Test
    void equalClubsLoseHalfOfTheirLuck() {
        double[] bias = biases(0.0);
        assertTrue(Math.abs(bias[0] - 1.16296) < 0.04, "raw " + bias[0]);
        assertTrue(bias[1] > 0.0 && bias[1] < 0.55 * bias[0], "shrunk " + bias[1]);
    }

    @Test
    void clubsThatDifferAreNearlyUnbiased() {
        for (double truths : new double[] {1.0, 2.0, 4.0}) {
            double[] bias = biases(truths);
            assertTrue(bias[0] > 0.2, "raw " + bias[0]);
            assertTrue(Math.abs(bias[1]) < bias[0] / 3.0, "shrunk " + bias[1]);
            assertTrue(bias[2] > 0.93, "coverage " + bias[2]);
        }
    }
}
