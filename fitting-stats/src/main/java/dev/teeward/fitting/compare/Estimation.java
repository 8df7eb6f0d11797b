package dev.teeward.fitting.compare;

import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.Warning;
import java.util.List;
import java.util.OptionalDouble;

/**
 * What a bootstrap found: the statistic with its interval, its error and bias, and how the limits were taken.
 *
 * <pre>{@code
 * Estimation e = Bootstrap.withDefaults().estimate(x, y, statistic);
 * e.estimate().interval();
 * e.method(); // "BCa bootstrap, two samples, 9,999 random resamples, seed 20261124"
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 *
 * @param method the method actually used, in words
 * @param estimate the statistic on the data, with its interval
 * @param standardError the standard deviation of the resampled statistics, divisor B
 * @param bias the mean of the resampled statistics minus the estimate
 * @param biasCorrection z0 of BCa, or empty
 * @param acceleration a of BCa, or empty
 * @param probabilities the probabilities of the quantiles that the limits were taken at: lower, upper; none if there are no
 *     limits
 * @param resamples how many resamples gave a finite statistic
 * @param warnings what to know before using this
 */
public record Estimation(
        String method,
        Estimate estimate,
        double standardError,
        double bias,
        OptionalDouble biasCorrection,
        OptionalDouble acceleration,
        List<Double> probabilities,
        int resamples,
        List<Warning> warnings) {
    /**
     * Copies the lists.
     *
     * @param method the method actually used, in words
     * @param estimate the statistic on the data, with its interval
     * @param standardError the standard deviation of the resampled statistics, divisor B
     * @param bias the mean of the resampled statistics minus the estimate
     * @param biasCorrection z0 of BCa, or empty
     * @param acceleration a of BCa, or empty
     * @param probabilities the probabilities of the quantiles that the limits were taken at: lower, upper; none if there are no
     *     limits
     * @param resamples how many resamples gave a finite statistic
     * @param warnings what to know before using this
     */
    public Estimation {
        probabilities = List.copyOf(probabilities);
        warnings = List.copyOf(warnings);
    }

    /**
     * Whether there is a warning with a code.
     *
     * @param code the code
     * @return true if so
     */
    public boolean warns(String code) {
        return warnings.stream().anyMatch(w -> w.code().equals(code));
    }
}
