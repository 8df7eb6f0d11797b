package dev.teeward.fitting.summary;

import dev.teeward.fitting.internal.Distributions;
import dev.teeward.quantity.Interval;

/** What a standard deviation estimated with some degrees of freedom is multiplied by, for normal data. */
final class SpreadFactors {
    private SpreadFactors() {}

    /** The ends of the chi-square interval of a spread of 1: sqrt(df / quantile). */
    static Interval interval(double df, double level) {
        double tail = 0.5 * (1.0 - level);
        return Interval.of(
                Math.sqrt(df / Distributions.chiSquareQuantile(1.0 - tail, df)),
                Math.sqrt(df / Distributions.chiSquareQuantile(tail, df)),
                level);
    }

    /** The interval of a spread; without any, there is no upper limit: equal readings may be equal by rounding only. */
    static Interval interval(double spread, double df, double level) {
        if (spread == 0.0) {
            return Interval.of(0.0, Double.POSITIVE_INFINITY, level);
        }
        Interval factors = interval(df, level);
        return Interval.of(spread * factors.lower(), spread * factors.upper(), level);
    }

    /**
     * The mean of the estimate of a standard deviation of 1: c4 = sqrt(2 / df) Gamma((df + 1) / 2) / Gamma(df / 2), by the
     * recursion c4(df) c4(df + 1) = sqrt(df / (df + 1)) from c4(1) = sqrt(2 / pi).
     */
    static double unbiasing(int df) {
        double c4 = Math.sqrt(2.0 / Math.PI);
        for (int k = 1; k < df; k++) {
            c4 = Math.sqrt(k / (k + 1.0)) / c4;
        }
        return c4;
    }
}
