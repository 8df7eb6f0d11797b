package dev.teeward.fitting.compare;

import dev.teeward.fitting.internal.Distributions;
import dev.teeward.fitting.internal.Sample;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Bartlett's test (1937) of equal variances of several clubs. For normal data only: heavy tails make it reject true nulls as
 * the F test does. Use {@link FlignerKilleenTest} or, for two clubs, {@link BrownForsytheTest}; this one is here for
 * checking against published tables.
 *
 * <p>T = ((N - k) ln s_p^2 - sum (n_j - 1) ln s_j^2) / (1 + (sum 1/(n_j - 1) - 1/(N - k)) / (3 (k - 1))), chi-square with k -
 * 1 degrees of freedom. Warnings: {@code too-few-shots}, {@code no-spread}.
 *
 * <pre>{@code
 * OmnibusResult r = BartlettTest.withDefaults().test(alder, rowan, hazel);
 * r.pValue();
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class BartlettTest {
    private static final String METHOD = "Bartlett test of equal variances, chi-square";
    private static final BartlettTest DEFAULTS = new BartlettTest();

    private BartlettTest() {}

    /**
     * The test; there is nothing to set.
     *
     * @return the default test
     */
    public static BartlettTest withDefaults() {
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
            return OmnibusResult.unanswered(METHOD, "T", sizes, Warning.of("too-few-shots", "one shot has no spread"));
        }
        if (samples.stream().anyMatch(s -> !(s.variance() > 0.0))) {
            return OmnibusResult.unanswered(
                    METHOD, "T", sizes, Warning.of("no-spread", "the shots of a club are all equal"));
        }
        double df = 0.0;
        double squares = 0.0;
        double logs = 0.0;
        double inverse = 0.0;
        for (Sample s : samples) {
            double own = s.size() - 1.0;
            df += own;
            squares += own * s.variance();
            logs += own * Math.log(s.variance());
            inverse += 1.0 / own;
        }
        double k = samples.size() - 1.0;
        double t = (df * Math.log(squares / df) - logs) / (1.0 + (inverse - 1.0 / df) / (3.0 * k));
        return new OmnibusResult(
                METHOD,
                "T",
                OptionalDouble.of(t),
                List.of(k),
                Distributions.chiSquareUpperTail(Math.max(0.0, t), k),
                sizes,
                new ArrayList<>());
    }
}
