package dev.teeward.fitting.plan;

import dev.teeward.fitting.compare.Verdict;
import java.util.Arrays;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.SplittableRandom;

/**
 * How a session may go on: mean and spread drawn from what its pairs leave open (reference prior), then pairs drawn from them
 * and looked at one by one.
 */
final class Continuations {
    private static final int DRAWS = 1_000;

    private Continuations() {}

    /** Empty with fewer than three pairs, without spread, or if nothing more is allowed. */
    static Optional<Standing.Prediction> predict(RunningLooks now, int allowed, long seed) {
        int n = now.pairs();
        if (n < 3 || allowed < 1 || !(now.standardDeviation() > 0.0)) {
            return Optional.empty();
        }
        SplittableRandom random = new SplittableRandom(seed);
        int[] more = new int[DRAWS];
        Arrays.fill(more, Integer.MAX_VALUE);
        for (int draw = 0; draw < DRAWS; draw++) {
            double chiSquare = 0.0;
            for (int i = 1; i < n; i++) {
                double z = random.nextGaussian();
                chiSquare += z * z;
            }
            double sd = now.standardDeviation() * Math.sqrt((n - 1) / chiSquare);
            double mean = now.mean() + sd / Math.sqrt(n) * random.nextGaussian();
            RunningLooks run = new RunningLooks(now);
            for (int k = 1; k <= allowed; k++) {
                if (run.add(mean + sd * random.nextGaussian()).verdict() != Verdict.UNDECIDED) {
                    more[draw] = k;
                    break;
                }
            }
        }
        Arrays.sort(more);
        double chance = Arrays.stream(more).filter(k -> k <= allowed).count() / (double) DRAWS;
        return Optional.of(new Standing.Prediction(
                chance, quantile(more, 0.1), quantile(more, 0.5), quantile(more, 0.9), allowed));
    }

    private static OptionalInt quantile(int[] sorted, double share) {
        int at = sorted[(int) Math.ceil(share * sorted.length) - 1];
        return at == Integer.MAX_VALUE ? OptionalInt.empty() : OptionalInt.of(at);
    }
}
