package dev.teeward.fitting.summary;

import dev.teeward.fitting.internal.Data;
import org.apache.commons.statistics.distribution.FDistribution;

/**
 * What an ellipse drawn around shots means. The three look alike and differ in size by a factor of several, so that every
 * {@link Ellipse} carries its kind.
 *
 * <p>The ellipse is all points with (x - mean)' S^-1 (x - mean) at most {@link #scale k^2}; formulas for two dimensions:
 * Chew 1966, Journal of the American Statistical Association 61; Johnson and Wichern, Applied Multivariate Statistical
 * Analysis (from memory).
 *
 * <pre>{@code
 * EllipseKind.PREDICTION.scale(0.9, 10);   // 7.705
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public enum EllipseKind {
    /**
     * Would hold this share of all shots if mean and covariance of the sample were the true ones: k^2 = -2 ln(1 - level). Too
     * small for few shots: of ten shots a 90 % content ellipse holds 78 % of future shots on average.
     */
    CONTENT,

    /**
     * Holds the next shot with this probability: k^2 = 2 (n^2 - 1) / (n (n - 2)) F(2, n - 2). Exact for normal data at any
     * n; the default.
     */
    PREDICTION,

    /**
     * Holds the true mean at this confidence: k^2 = 2 (n - 1) / (n (n - 2)) F(2, n - 2). Says where the centre is, nothing
     * about single shots.
     */
    MEAN_CONFIDENCE;

    /**
     * The squared radius in units of the sample covariance.
     *
     * @param level the share, probability or confidence, in (0, 1)
     * @param n the number of shots, at least 3
     * @return k^2, without a unit
     * @throws IllegalArgumentException if an argument is out of range
     */
    public double scale(double level, int n) {
        Data.checkLevel(level);
        if (n < 3) {
            throw new IllegalArgumentException("an ellipse needs at least 3 shots, but n was " + n);
        }
        if (this == CONTENT) {
            return -2.0 * Math.log1p(-level);
        }
        double f = FDistribution.of(2.0, n - 2.0).inverseSurvivalProbability(1.0 - level);
        double mean = 2.0 * (n - 1.0) / (n * (n - 2.0)) * f;
        return this == PREDICTION ? mean * (n + 1.0) : mean;
    }
}
