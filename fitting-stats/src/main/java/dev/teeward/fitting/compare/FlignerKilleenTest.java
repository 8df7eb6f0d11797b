package dev.teeward.fitting.compare;

import dev.teeward.fitting.internal.Distributions;
import dev.teeward.fitting.internal.Sample;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * The Fligner-Killeen test (1976) of equal spread of several clubs, about the median (Conover, Johnson and Johnson 1981):
 * hardly moved by outliers and heavy tails.
 *
 * <p>The distances from each club's median are ranked together; with the scores a_i = Phi^-1((1 + rank_i / (N + 1)) / 2) the
 * statistic is sum n_j (mean a_j - mean a)^2 / var(a), chi-square with k - 1 degrees of freedom in large samples. Warnings:
 * {@code too-few-shots}, {@code no-spread}.
 *
 * <pre>{@code
 * OmnibusResult r = FlignerKilleenTest.withDefaults().test(alder, rowan, hazel);
 * r.pValue();
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class FlignerKilleenTest {
    private static final String METHOD = "Fligner-Killeen test of equal spread about the medians, chi-square";
    private static final FlignerKilleenTest DEFAULTS = new FlignerKilleenTest();

    private FlignerKilleenTest() {}

    /**
     * The test; there is nothing to set.
     *
     * @return the default test
     */
    public static FlignerKilleenTest withDefaults() {
        return DEFAULTS;
    }

    /**
     * Tests.
     *
     * @param groups at least two clubs, each of at least one number, all finite
     * @return the statistic and p
     * @throws IllegalArgumentException if there are fewer than two clubs, one is empty or a number is not finite
     */
    public OmnibusResult test(double[]... groups) {
        List<Sample> samples = Groups.of(groups);
        List<Integer> sizes = Groups.sizes(samples);
        if (samples.stream().anyMatch(s -> s.size() < 2)) {
            return OmnibusResult.unanswered(
                    METHOD, "chi-square", sizes, Warning.of("too-few-shots", "one shot has no spread"));
        }
        List<Sample> deviations = new ArrayList<>();
        samples.forEach(s -> deviations.add(s.absoluteDeviations(s.median())));
        int[] ranks = Groups.doubledMidranks(deviations);
        double[] a = new double[ranks.length];
        for (int i = 0; i < a.length; i++) {
            a[i] = Distributions.normalQuantile(0.5 + 0.25 * ranks[i] / (a.length + 1.0));
        }
        Sample all = Sample.of("scores", a);
        if (!(all.variance() > 0.0)) {
            return OmnibusResult.unanswered(
                    METHOD,
                    "chi-square",
                    sizes,
                    Warning.of("no-spread", "all shots lie equally far from their median"));
        }
        double between = 0.0;
        int from = 0;
        for (int n : sizes) {
            double mean = 0.0;
            for (int i = from; i < from + n; i++) {
                mean += a[i] / n;
            }
            between += n * (mean - all.mean()) * (mean - all.mean());
            from += n;
        }
        double chi2 = between / all.variance();
        double df = sizes.size() - 1.0;
        return new OmnibusResult(
                METHOD,
                "chi-square",
                OptionalDouble.of(chi2),
                List.of(df),
                Distributions.chiSquareUpperTail(chi2, df),
                sizes,
                List.of());
    }
}
