package dev.teeward.fitting.internal;

import java.util.function.DoubleUnaryOperator;

/**
 * Expectations over the distribution of s = sqrt(chi-square(df) / df), the sample standard deviation of normal data with
 * unit spread. What depends on a t statistic is such an expectation of a normal probability.
 *
 * <p>The density is proportional to s^(df-1) exp(-df s^2 / 2). Its constant is found on the same nodes, which cancels the
 * rounding of the large exponents. Truncation at sqrt(df) +- 9.5 leaves less than 1e-19.
 *
 * <p>Stateless and thread-safe.
 */
public final class SpreadMixture {
    static final double REACH = 9.5;
    private static final int PANELS = 12;
    private static final GaussLegendre RULE = new GaussLegendre(20);

    private SpreadMixture() {}

    /**
     * The expectation of g(s).
     *
     * @param df the degrees of freedom, at least 1
     * @param centre where g changes fastest; anything if it is slow everywhere
     * @param width over what distance from there g is not yet settled, above 0; possibly infinite
     * @param g a function of s, bounded
     * @return E g(s)
     */
    public static double expectation(double df, double centre, double width, DoubleUnaryOperator g) {
        return integrate(df, centre, width, g) / integrate(df, centre, width, s -> 1.0);
    }

    private static double integrate(double df, double centre, double width, DoubleUnaryOperator g) {
        double low = Math.max(0.0, 1.0 - REACH / Math.sqrt(df));
        double high = 1.0 + REACH / Math.sqrt(df);
        double left = Math.min(high, Math.max(low, centre - width));
        double right = Math.min(high, Math.max(low, centre + width));
        DoubleUnaryOperator integrand = s -> density(df, s) * g.applyAsDouble(s);
        double sum = 0.0;
        if (left > low) {
            sum += RULE.integrate(integrand, low, left, PANELS);
        }
        if (right > left) {
            sum += RULE.integrate(integrand, left, right, PANELS);
        }
        if (high > right) {
            sum += RULE.integrate(integrand, right, high, PANELS);
        }
        return sum;
    }

    /** In proportion only: the constant is left out. */
    static double density(double df, double s) {
        double u = s - 1.0;
        return Math.exp((df - 1.0) * Math.log(s) - df * (u + 0.5 * u * u));
    }
}
