package dev.teeward.fitting.summary;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.fitting.internal.DiscProbability;
import dev.teeward.fitting.internal.SymmetricMatrix2;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** How often ellipses and intervals hold what they say, on seeded normal samples with a known answer. Minutes. */
@Tag("sweep")
class CoverageSweepTest {
    private static final int REPLICATES = 20_000;

    /** Standard deviations and bias of the patterns tried. */
    private static final double[][] PATTERNS = {
        {1.0, 1.0, 0.0, 0.0},
        {2.0, 1.0, 0.0, 0.0},
        {5.0, 1.0, 0.0, 0.0},
        {1.0, 1.0, 1.0, 0.0},
        {2.0, 1.0, 3.0, 0.0},
        {1.0, 1.0, 5.0, 0.0}
    };

    private static double[][] sample(int n, double[] pattern, Random random) {
        double[][] columns = new double[2][n];
        for (int i = 0; i < n; i++) {
            columns[0][i] = pattern[2] + pattern[0] * random.nextGaussian();
            columns[1][i] = pattern[3] + pattern[1] * random.nextGaussian();
        }
        return columns;
    }

    @Test
    void predictionEllipsesHoldTheNextShot() {
        for (int n : new int[] {5, 10, 20}) {
            Random random = new Random(11L * n);
            int held = 0;
            for (int r = 0; r < REPLICATES; r++) {
                double[][] shots = sample(n, PATTERNS[1], random);
                double[][] next = sample(1, PATTERNS[1], random);
                LandingPattern.Result p = LandingPattern.withDefaults().describe(shots[0], shots[1]);
                held += p.ellipse(EllipseKind.PREDICTION, 0.95).contains(next[0][0], next[1][0]) ? 1 : 0;
            }
            assertEquals(0.95, (double) held / REPLICATES, 0.005, "n = " + n);
        }
    }

    @Test
    void meanAndSpreadIntervalsHoldTheTruth() {
        Random random = new Random(12L);
        int mean = 0;
        int spread = 0;
        int median = 0;
        double medianLevel = 0.0;
        for (int r = 0; r < REPLICATES; r++) {
            SampleSummary.Result s = SampleSummary.withDefaults().summarize(sample(10, PATTERNS[0], random)[0]);
            mean += s.mean().interval().contains(0.0) ? 1 : 0;
            spread += s.standardDeviation().orElseThrow().interval().contains(1.0) ? 1 : 0;
            median += s.median().interval().contains(0.0) ? 1 : 0;
            medianLevel = s.median().interval().level();
        }
        assertEquals(0.95, (double) mean / REPLICATES, 0.0062);
        assertEquals(0.95, (double) spread / REPLICATES, 0.0062);
        assertEquals(medianLevel, (double) median / REPLICATES, 0.0062);
    }

    /** The stated coverage, 93 to 97 %, with four standard errors beside it. */
    @Test
    void radiiAboutTheCenterHoldTheTruthAsStated() {
        for (int n : new int[] {10, 20}) {
            for (double[] pattern : PATTERNS) {
                for (double share : new double[] {0.5, 0.9}) {
                    double truth = truth(pattern, false).radius(share);
                    Random random = new Random(13L * n);
                    int held = 0;
                    for (int r = 0; r < 5_000; r++) {
                        double[][] shots = sample(n, pattern, random);
                        held += LandingPattern.withDefaults()
                                        .describe(shots[0], shots[1])
                                        .radiusAboutCenter(share)
                                        .interval()
                                        .contains(truth)
                                ? 1
                                : 0;
                    }
                    double coverage = held / 5_000.0;
                    assertTrue(coverage > 0.93 - 0.012 && coverage < 0.97 + 0.012, n + " " + coverage);
                }
            }
        }
    }

    @Test
    void radiiAboutTheTargetHoldTheTruthAsStated() {
        StringBuilder all = new StringBuilder();
        double lowest = 1.0;
        double highest = 0.0;
        for (int n : new int[] {10, 20}) {
            for (double[] pattern : PATTERNS) {
                for (double share : new double[] {0.5, 0.9}) {
                    double truth = truth(pattern, true).radius(share);
                    Random random = new Random(14L * n);
                    int held = 0;
                    for (int r = 0; r < 500; r++) {
                        double[][] shots = sample(n, pattern, random);
                        held += LandingPattern.withDefaults()
                                        .withResamples(499)
                                        .withTarget(0.0, 0.0)
                                        .withSeed(r)
                                        .describe(shots[0], shots[1])
                                        .radiusAboutTarget(share)
                                        .orElseThrow()
                                        .interval()
                                        .contains(truth)
                                ? 1
                                : 0;
                    }
                    double coverage = held / 500.0;
                    lowest = Math.min(lowest, coverage);
                    highest = Math.max(highest, coverage);
                    all.append(n)
                            .append(' ')
                            .append(share)
                            .append(' ')
                            .append(coverage)
                            .append("; ");
                }
            }
        }
        // Stated: 92 to 98 %; three standard errors of 500 replicates beside it.
        assertTrue(lowest > 0.92 - 0.03 && highest < 0.98 + 0.02, all.toString());
    }

    private static DiscProbability truth(double[] pattern, boolean withBias) {
        return DiscProbability.of(
                new SymmetricMatrix2(pattern[0] * pattern[0], 0.0, pattern[1] * pattern[1]),
                withBias ? pattern[2] : 0.0,
                withBias ? pattern[3] : 0.0);
    }
}
