package dev.teeward.fitting.internal;

/**
 * A Student t moved and stretched: {@code centre + scale T}, T with so many degrees of freedom.
 *
 * <p>Immutable and thread-safe.
 *
 * @param centre the centre
 * @param scale the scale, above 0
 * @param degreesOfFreedom the degrees of freedom, at least 1
 */
public record ScaledT(double centre, double scale, double degreesOfFreedom) {
    /**
     * The next value after a normal sample, by the reference prior: centre mean, scale {@code s sqrt(1 + 1/n)}, n - 1 degrees
     * of freedom.
     *
     * @param sample at least two values that are not all equal
     * @return its predictive distribution
     */
    public static ScaledT nextAfter(Sample sample) {
        double n = sample.size();
        return new ScaledT(sample.mean(), sample.standardDeviation() * Math.sqrt(1.0 + 1.0 / n), n - 1.0);
    }

    /**
     * The mean behind a normal sample, by the reference prior: centre mean, scale {@code s / sqrt(n)}, n - 1 degrees of
     * freedom.
     *
     * @param size how many values, at least 2
     * @param mean their mean
     * @param variance their variance, above 0
     * @return the posterior distribution of the mean
     */
    public static ScaledT meanBehind(int size, double mean, double variance) {
        return new ScaledT(mean, Math.sqrt(variance / size), size - 1.0);
    }

    /**
     * The upper tail.
     *
     * @param x the argument
     * @return P(X above x)
     */
    public double above(double x) {
        return Distributions.tUpperTail((x - centre) / scale, degreesOfFreedom);
    }

    /**
     * The probability of a stretch.
     *
     * @param low its lower end
     * @param high its upper end, not below the lower
     * @return P(X between the two)
     */
    public double between(double low, double high) {
        // By the tails on one side, so that a far stretch keeps its digits.
        return low > centre
                ? above(low) - above(high)
                : Distributions.tUpperTail((centre - high) / scale, degreesOfFreedom)
                        - Distributions.tUpperTail((centre - low) / scale, degreesOfFreedom);
    }

    /**
     * How far to both sides of the centre the middle share of the distribution lies.
     *
     * @param share in (0, 1)
     * @return half of its width
     */
    public double reach(double share) {
        return scale * Distributions.tQuantile(0.5 + 0.5 * share, degreesOfFreedom);
    }

    /**
     * The tail of a difference of two that are independent, integrated: Behrens (1929), Fisher (1935).
     *
     * @param d the argument
     * @param first the first
     * @param second the second
     * @return P(first - second above d)
     */
    public static double differenceAbove(double d, ScaledT first, ScaledT second) {
        // The wider enters by its tail, so that the integrand is smooth.
        boolean firstWider = first.scale >= second.scale;
        ScaledT wide = firstWider ? first : second;
        ScaledT narrow = firstWider ? second : first;
        return HeavyTails.integrate(
                v -> {
                    double density = HeavyTails.density((v - narrow.centre) / narrow.scale, narrow.degreesOfFreedom)
                            / narrow.scale;
                    double z = firstWider ? v + d - wide.centre : wide.centre - (v - d);
                    return density * Distributions.tUpperTail(z / wide.scale, wide.degreesOfFreedom);
                },
                new double[] {narrow.centre},
                new double[] {narrow.scale},
                new double[] {narrow.degreesOfFreedom});
    }
}
