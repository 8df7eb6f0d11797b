package dev.teeward.fitting.summary;

import dev.teeward.fitting.internal.Data;
import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.LengthUnit;

/**
 * The circular normal pattern: equal spread in all directions about the own centre, so that the distance from the centre has
 * a Rayleigh distribution.
 *
 * <p>sigma = sqrt(sum r^2 / (2 (n - 1))) with an exact chi-square interval of 2 (n - 1) degrees of freedom, and the radius
 * that holds the share P is sigma sqrt(-2 ln(1 - P)), with the same relative interval (closed forms; Grubbs 1964, Operations
 * Research 12, from memory). Simple, and wrong for patterns much longer than wide.
 *
 * <pre>{@code
 * CircularNormal c = pattern.circular();
 * c.radius(0.5);   // 1.17741 sigma with its interval
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class CircularNormal {
    private final double sigma;
    private final int df;
    private final double level;

    CircularNormal(double sigma, int df, double level) {
        this.sigma = sigma;
        this.df = df;
        this.level = level;
    }

    /**
     * The spread in any one direction.
     *
     * @return sigma with its exact interval [m]
     */
    public Estimate sigma() {
        return estimate(1.0);
    }

    /**
     * Sigma free of bias: the estimate divided by its mean for sigma 1.
     *
     * @return the spread [m]
     */
    public double unbiasedSigma() {
        return sigma / SpreadFactors.unbiasing(df);
    }

    /**
     * The degrees of freedom of the interval.
     *
     * @return 2 (n - 1)
     */
    public int degreesOfFreedom() {
        return df;
    }

    /**
     * The radius about the own centre that holds a share of all shots.
     *
     * @param share the share, in (0, 1), such as 0.5 or 0.9
     * @return the radius with its exact interval [m]
     * @throws IllegalArgumentException if the share is not in (0, 1)
     */
    public Estimate radius(double share) {
        Data.checkLevel(share);
        return estimate(Math.sqrt(-2.0 * Math.log1p(-share)));
    }

    /**
     * The mean distance from the own centre.
     *
     * @return sigma sqrt(pi / 2) with its exact interval [m]
     */
    public Estimate meanRadius() {
        return estimate(Math.sqrt(0.5 * Math.PI));
    }

    /**
     * The root mean square distance from the own centre.
     *
     * @return sigma sqrt(2) with its exact interval [m]
     */
    public Estimate rmsRadius() {
        return estimate(Math.sqrt(2.0));
    }

    private Estimate estimate(double factor) {
        return Estimate.of(factor * sigma, SpreadFactors.interval(factor * sigma, df, level), LengthUnit.METER);
    }
}
