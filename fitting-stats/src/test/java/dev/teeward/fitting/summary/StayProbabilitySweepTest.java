package dev.teeward.fitting.summary;

import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.quantity.Interval;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** How often the interval of landing and staying holds the truth, on seeded samples of a known distribution. Minutes. */
@Tag("sweep")
class StayProbabilitySweepTest {
    private static final int SESSIONS = 400;
    private static final int TRUTH = 1_000_000;

    /** Landing point and rest of balls that roll less the farther they fly; with no roll if {@code rolls} is 0. */
    private static double[][] shots(int n, double rolls, Random random) {
        double[][] columns = new double[4][n];
        for (int i = 0; i < n; i++) {
            columns[0][i] = 5.0 * random.nextGaussian();
            columns[1][i] = 4.0 * random.nextGaussian();
            double along = 3.0 - 0.2 * columns[0][i] + 1.5 * random.nextGaussian();
            double across = 0.1 * columns[1][i] + random.nextGaussian();
            columns[2][i] = columns[0][i] + rolls * along;
            columns[3][i] = columns[1][i] + rolls * across;
        }
        return columns;
    }

    private static double truth(TargetRegion region, double rolls) {
        double[][] many = shots(TRUTH, rolls, new Random(77L));
        int count = 0;
        for (int i = 0; i < TRUTH; i++) {
            count += region.contains(many[0][i], many[1][i]) && region.contains(many[2][i], many[3][i]) ? 1 : 0;
        }
        return count / (double) TRUTH;
    }

    /** At least 95 % but for three standard errors of 400 sessions, 3.3 points. */
    @Test
    void intervalsHoldTheTruth() {
        StringBuilder all = new StringBuilder();
        double lowest = 1.0;
        for (int n : new int[] {7, 10, 20}) {
            for (double rolls : new double[] {0.0, 1.0}) {
                for (double radius : new double[] {5.0, 9.0}) {
                    TargetRegion region = TargetRegion.circle(1.0, 0.0, radius);
                    double truth = truth(region, rolls);
                    Random random = new Random(51L + n);
                    int held = 0;
                    double width = 0.0;
                    for (int r = 0; r < SESSIONS; r++) {
                        double[][] s = shots(n, rolls, random);
                        Interval interval = StayProbability.withDefaults()
                                .withSeed(r)
                                .estimate(region, s[0], s[1], s[2], s[3])
                                .probability()
                                .orElseThrow()
                                .interval();
                        held += interval.contains(truth) ? 1 : 0;
                        width += (interval.upper() - interval.lower()) / SESSIONS;
                    }
                    double coverage = held / (double) SESSIONS;
                    lowest = Math.min(lowest, coverage);
                    all.append(String.format(
                            Locale.ROOT,
                            "%d shots, roll %.0f, radius %.0f, truth %.3f: %.4f, width %.2f%n",
                            n,
                            rolls,
                            radius,
                            truth,
                            coverage,
                            width));
                }
            }
        }
        System.err.print("SWEEP stay probability\n" + all);
        assertTrue(lowest > 0.95 - 0.033, all.toString());
    }
}
