package dev.teeward.fitting.summary;

import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.fitting.internal.DiscProbability;
import dev.teeward.fitting.internal.SymmetricMatrix2;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** How often the intervals of the robust radii hold the truth: good shots only. Minutes. */
@Tag("sweep")
class RobustPatternSweepTest {
    private static final int SESSIONS = 1_000;
    private static final int MORE_SESSIONS = 400;

    private static double coverage(int n, double ratio, double share, boolean mishit, int sessions) {
        double truth = DiscProbability.of(new SymmetricMatrix2(ratio * ratio, 0.0, 1.0), 0.0, 0.0)
                .radius(share);
        Random random = new Random(41L + n);
        int held = 0;
        for (int r = 0; r < sessions; r++) {
            double[][] shots = new double[2][n];
            for (int i = 0; i < n; i++) {
                shots[0][i] = ratio * random.nextGaussian();
                shots[1][i] = random.nextGaussian();
            }
            if (mishit) {
                shots[0][0] -= 10.0 * ratio;
            }
            held += RobustPattern.withDefaults()
                            .withResamples(199)
                            .withSeed(r)
                            .describe(shots[0], shots[1])
                            .radius(share)
                            .orElseThrow()
                            .interval()
                            .contains(truth)
                    ? 1
                    : 0;
        }
        double coverage = held / (double) sessions;
        System.err.printf(
                Locale.ROOT,
                "SWEEP robust radius, %d shots%s, ratio %.0f, share %.2f: %.4f%n",
                n,
                mishit ? ", one a mishit" : "",
                ratio,
                share,
                coverage);
        return coverage;
    }

    /** 95 % with three standard errors of 1,000 sessions, 2.1 points, and a point and a half for the estimated shape. */
    @Test
    void radiiHoldTheTruth() {
        for (int n : new int[] {10, 16}) {
            for (double ratio : new double[] {1.0, 3.0}) {
                for (double share : new double[] {0.5, 0.95}) {
                    double coverage = coverage(n, ratio, share, false, SESSIONS);
                    String what = n + " shots, ratio " + ratio + ", share " + share;
                    assertTrue(coverage > 0.95 - 0.036 && coverage < 0.95 + 0.036, what + ": " + coverage);
                }
            }
        }
    }

    /** The stated coverage with a mishit ten standard deviations short among them, and beyond 20 shots. */
    @Test
    void radiiHoldTheTruthWithAMishitAndWithManyShots() {
        for (int n : new int[] {10, 16, 30}) {
            for (boolean mishit : new boolean[] {false, true}) {
                for (double share : new double[] {0.5, 0.95}) {
                    double coverage = coverage(n, 2.0, share, mishit, MORE_SESSIONS);
                    String what = n + " shots, mishit " + mishit + ", share " + share;
                    // Three standard errors of 400 sessions beside what is stated.
                    assertTrue(coverage > 0.92 - 0.033, what + ": " + coverage);
                }
            }
        }
    }
}
