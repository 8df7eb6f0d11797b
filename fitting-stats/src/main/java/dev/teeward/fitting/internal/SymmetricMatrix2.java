package dev.teeward.fitting.internal;

/**
 * A symmetric 2 by 2 matrix [xx xy; xy yy], as a rule a covariance.
 *
 * <pre>{@code
 * SymmetricMatrix2 s = SymmetricMatrix2.covarianceOf(x, y);
 * double distance = s.inverseQuadraticForm(dx, dy); // squared Mahalanobis distance
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 *
 * @param xx the upper left element
 * @param xy the element beside the diagonal
 * @param yy the lower right element
 */
public record SymmetricMatrix2(double xx, double xy, double yy) {

    /**
     * The sample covariance with n - 1 in the denominator, in two passes.
     *
     * @param x the first coordinates, at least 2
     * @param y the second coordinates, as many
     * @return the covariance
     */
    public static SymmetricMatrix2 covarianceOf(double[] x, double[] y) {
        double meanX = mean(x);
        double meanY = mean(y);
        double xx = 0.0;
        double xy = 0.0;
        double yy = 0.0;
        for (int i = 0; i < x.length; i++) {
            double dx = x[i] - meanX;
            double dy = y[i] - meanY;
            xx += dx * dx;
            xy += dx * dy;
            yy += dy * dy;
        }
        double divisor = x.length - 1.0;
        return new SymmetricMatrix2(xx / divisor, xy / divisor, yy / divisor);
    }

    /** The mean, corrected by the mean of the residuals. */
    private static double mean(double[] values) {
        double sum = 0.0;
        for (double value : values) {
            sum += value / values.length;
        }
        double correction = 0.0;
        for (double value : values) {
            correction += value - sum;
        }
        return sum + correction / values.length;
    }

    /**
     * The determinant, free of cancellation beyond one rounding (Kahan's difference of products).
     *
     * @return xx yy - xy xy
     */
    public double determinant() {
        double square = xy * xy;
        double error = Math.fma(-xy, xy, square);
        return Math.fma(xx, yy, -square) + error;
    }

    /**
     * The trace.
     *
     * @return xx + yy
     */
    public double trace() {
        return xx + yy;
    }

    /**
     * The trace of the square.
     *
     * @return xx xx + 2 xy xy + yy yy
     */
    public double traceOfSquare() {
        return xx * xx + 2.0 * xy * xy + yy * yy;
    }

    /**
     * The larger eigenvalue.
     *
     * @return the eigenvalue
     */
    public double majorEigenvalue() {
        return 0.5 * (trace() + Math.hypot(xx - yy, 2.0 * xy));
    }

    /**
     * The smaller eigenvalue of a matrix without negative eigenvalues; what rounding leaves below 1e-15 of the larger one
     * counts as 0.
     *
     * @return the eigenvalue, at least 0
     */
    public double minorEigenvalue() {
        double major = majorEigenvalue();
        double minor = major > 0.0 ? determinant() / major : 0.0;
        return minor > 1e-15 * major ? minor : 0.0;
    }

    /**
     * The direction of the eigenvector of the larger eigenvalue.
     *
     * @return the angle from the first axis towards the second [rad], in (-pi/2, pi/2]; 0 for equal eigenvalues
     */
    public double majorAngle() {
        return 0.5 * Math.atan2(2.0 * xy, xx - yy);
    }

    /**
     * The quadratic form of the inverse.
     *
     * @param dx the first coordinate of the vector
     * @param dy the second coordinate
     * @return (dx dy) M^-1 (dx dy)'; not finite if the matrix is singular
     */
    public double inverseQuadraticForm(double dx, double dy) {
        return (yy * dx * dx - 2.0 * xy * dx * dy + xx * dy * dy) / determinant();
    }

    /**
     * This matrix times a number.
     *
     * @param factor the number
     * @return the product
     */
    public SymmetricMatrix2 times(double factor) {
        return new SymmetricMatrix2(factor * xx, factor * xy, factor * yy);
    }
}
