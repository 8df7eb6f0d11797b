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
