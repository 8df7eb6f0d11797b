package dev.teeward.fitting.compare;

import dev.teeward.fitting.internal.Ranks;
import dev.teeward.fitting.internal.Sample;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** What tests of several clubs have in common. Stateless, thread-safe. */
final class Groups {
    private Groups() {}

    static List<Sample> of(double[][] groups) {
        if (groups.length < 2) {
            throw new IllegalArgumentException("there must be at least 2 clubs, but got " + groups.length);
        }
        List<Sample> samples = new ArrayList<>();
        for (int g = 0; g < groups.length; g++) {
            samples.add(Sample.of("group " + (g + 1), groups[g]));
        }
        return samples;
    }

    /** Clubs hit in rounds: as many numbers each. */
    static List<Sample> ofRounds(double[][] groups) {
        List<Sample> samples = of(groups);
        List<Integer> sizes = sizes(samples);
        if (sizes.stream().anyMatch(size -> size.intValue() != sizes.get(0))) {
            throw new IllegalArgumentException(
                    "every club needs one shot in each round, but had " + sizes + "; leave incomplete rounds out");
        }
        return samples;
    }

    /** What is left of the numbers less the means of their club and of their round. */
    static double[][] residuals(List<Sample> samples) {
        int k = samples.size();
        int rounds = samples.get(0).size();
        double[][] left = new double[k][rounds];
        for (int b = 0; b < rounds; b++) {
            double mean = 0.0;
            for (int j = 0; j < k; j++) {
                left[j][b] = samples.get(j).value(b) - samples.get(j).mean();
                mean += left[j][b] / k;
            }
            for (int j = 0; j < k; j++) {
                left[j][b] -= mean;
            }
        }
        return left;
    }

    /** The sum of squares of the residuals, 0 where it is rounding only. */
    static double interaction(List<Sample> samples) {
        double sum = 0.0;
        double largest = 0.0;
        for (double[] club : residuals(samples)) {
            for (double v : club) {
                sum += v * v;
            }
        }
        for (Sample s : samples) {
            largest = Math.max(largest, s.tieTolerance());
        }
        return Math.sqrt(sum) > largest ? sum : 0.0;
    }

    static List<Integer> sizes(List<Sample> samples) {
        return samples.stream().map(Sample::size).toList();
    }

    /** Twice the midranks of the pooled values, group by group. */
    static int[] doubledMidranks(List<Sample> samples) {
        double[] pooled = pooled(samples);
        return Ranks.doubledMidranks(pooled, Sample.of("pooled", pooled).tieTolerance());
    }

    static double[] pooled(List<Sample> samples) {
        return samples.stream().flatMapToDouble(s -> Arrays.stream(s.toArray())).toArray();
    }
}
