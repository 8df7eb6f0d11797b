package dev.teeward.fitting.choose;

import dev.teeward.fitting.internal.Sample;
import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.Unit;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * What to expect of each club: its mean drawn towards the others, each with its own variance s^2 / n on n - 1 degrees of
 * freedom. A club without a spread of its own (one shot, or all equal) has none and draws no other.
 */
final class ExpectedMeans {
    private ExpectedMeans() {}

    static List<Optional<Estimate>> of(double[][] scores, double level, Unit unit) {
        List<Sample> samples =
                Arrays.stream(scores).map(s -> Sample.of("shots", s)).toList();
        List<Sample> told = samples.stream().filter(ExpectedMeans::spread).toList();
        if (told.size() < 2) {
            return samples.stream().map(s -> Optional.<Estimate>empty()).toList();
        }
        List<Estimate> shrunk = ShrunkMeans.withDefaults()
                .withLevel(level)
                .withUnit(unit)
                .of(
                        told.stream().mapToDouble(Sample::mean).toArray(),
                        told.stream().mapToDouble(s -> s.variance() / s.size()).toArray(),
                        told.stream().mapToDouble(s -> s.size() - 1.0).toArray());
        return samples.stream()
                .map(s -> spread(s) ? Optional.of(shrunk.get(told.indexOf(s))) : Optional.<Estimate>empty())
                .toList();
    }

    private static boolean spread(Sample sample) {
        return sample.size() > 1 && sample.variance() > 0.0;
    }
}
