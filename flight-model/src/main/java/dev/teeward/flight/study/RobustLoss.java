package dev.teeward.flight.study;

/**
 * How much a residual counts, the larger it is: so that misreads do not bend a fit.
 *
 * <p>Residuals are in robust standard deviations (1.4826 times the median of their sizes). The tunings are those that keep 95
 * percent of the efficiency of least squares when errors are normal: Huber 1964, k = 1.345; the biweight of Beaton and Tukey
 * 1974, c = 4.685 (Holland and Welsch 1977).
 *
 * <pre>{@code
 * RobustLoss.HUBER.weight(1.0);   // 1: counts in full
 * RobustLoss.HUBER.weight(13.45); // 0.1
 * RobustLoss.TUKEY.weight(5.0);   // 0: does not count
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public enum RobustLoss {
    /** Least squares: every residual counts in full. */
    SQUARES {
        @Override
        public double weight(double residual) {
            return 1.0;
        }

        @Override
        double slope(double residual) {
            return 1.0;
        }
    },
    /** Huber's: large residuals pull with a constant force. One optimum; the default. */
    HUBER {
        @Override
        public double weight(double residual) {
            double size = Math.abs(residual);
            return size <= HUBER_TUNING ? 1.0 : HUBER_TUNING / size;
        }

        @Override
        double slope(double residual) {
            return Math.abs(residual) <= HUBER_TUNING ? 1.0 : 0.0;
        }
    },
    /** Tukey's biweight: very large residuals do not pull at all. There may be several optima. */
    TUKEY {
        @Override
        public double weight(double residual) {
            double u = residual / TUKEY_TUNING;
            return Math.abs(u) >= 1.0 ? 0.0 : (1.0 - u * u) * (1.0 - u * u);
        }

        @Override
        double slope(double residual) {
            double u = residual / TUKEY_TUNING;
            return Math.abs(u) >= 1.0 ? 0.0 : (1.0 - u * u) * (1.0 - 5.0 * u * u);
        }
    };

    private static final double HUBER_TUNING = 1.345;
    private static final double TUKEY_TUNING = 4.685;

    /**
     * The weight of a residual in a weighted least-squares fit.
     *
     * @param residual the residual, in robust standard deviations
     * @return the weight, in [0, 1]
     */
    public abstract double weight(double residual);

    /** The derivative of weight times residual. */
    abstract double slope(double residual);
}
