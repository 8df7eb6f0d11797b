package dev.teeward.fitting.internal;

import java.util.function.DoubleUnaryOperator;
import org.apache.commons.numbers.rootfinder.BrentSolver;

/**
 * The noncentral t distribution: of (Z + ncp) / sqrt(chi-square(df) / df).
 *
 * <p>P(T at most t) is the expectation of Phi(t s - ncp) over s = sqrt(chi-square(df) / df), by quadrature. Both tails are
 * sums of positive terms, so small tails keep their digits, which the series of Lenth (1989, AS 243) do not. Meant for
 * df of at least 1; relative error about 1e-12 down to tails of 1e-12.
 *
 * <pre>{@code
 * NoncentralT.cdf(2.0, 9.0, 1.0);       // 0.80414
 * NoncentralT.quantile(0.95, 9.0, 1.0); // 3.09170
 * }</pre>
 *
 * <p>Stateless and thread-safe.
 */
public final class NoncentralT {
    private static final double SETTLED = 9.5;

    private NoncentralT() {}

    /**
     * The lower tail.
     *
     * @param t the argument, finite
     * @param df the degrees of freedom, at least 1
     * @param ncp the noncentrality, finite
     * @return P(T at most t)
     */
    public static double cdf(double t, double df, double ncp) {
        return probability(t, df, ncp, s -> Distributions.normalCdf(t * s - ncp));
    }

    /**
     * The upper tail.
     *
     * @param t the argument, finite
     * @param df the degrees of freedom, at least 1
     * @param ncp the noncentrality, finite
     * @return P(T above t)
     */
    public static double upperTail(double t, double df, double ncp) {
        return probability(t, df, ncp, s -> Distributions.normalUpperTail(t * s - ncp));
    }

    private static double probability(double t, double df, double ncp, DoubleUnaryOperator tail) {
        double steepness = Math.abs(t);
        double p = steepness < 1e-3
                ? SpreadMixture.expectation(df, 1.0, Double.POSITIVE_INFINITY, tail)
                : SpreadMixture.expectation(df, ncp / t, SETTLED / steepness, tail);
        return Math.min(1.0, Math.max(0.0, p));
    }

    /**
     * The quantile.
     *
     * @param p a probability in (0, 1)
     * @param df the degrees of freedom, at least 1
     * @param ncp the noncentrality, finite
     * @return t with P(T at most t) = p
     */
    public static double quantile(double p, double df, double ncp) {
        DoubleUnaryOperator miss = t -> cdf(t, df, ncp) - p;
        double step = 1.0 + Math.abs(ncp);
        double low = ncp - step;
        while (miss.applyAsDouble(low) > 0.0) {
            low -= step;
            step *= 2.0;
        }
        step = 1.0 + Math.abs(ncp);
        double high = ncp + step;
        while (miss.applyAsDouble(high) < 0.0) {
            high += step;
            step *= 2.0;
        }
        return root(miss, low, high);
    }

    /**
     * The noncentrality at which an observed t has a given upper tail: the pivot of an interval for an effect size.
     *
     * @param t the observed t, finite
     * @param df the degrees of freedom, at least 1
     * @param upperTail the wanted P(T above t), in (0, 1)
     * @return the noncentrality
     */
    public static double noncentrality(double t, double df, double upperTail) {
        DoubleUnaryOperator miss = upperTail <= 0.5
                ? ncp -> upperTail(t, df, ncp) - upperTail
                : ncp -> (1.0 - upperTail) - cdf(t, df, ncp);
        double step = 1.0 + 0.1 * Math.abs(t);
        double low = t - step;
        while (miss.applyAsDouble(low) > 0.0) {
            low -= step;
            step *= 2.0;
        }
        step = 1.0 + 0.1 * Math.abs(t);
        double high = t + step;
        while (miss.applyAsDouble(high) < 0.0) {
            high += step;
            step *= 2.0;
        }
        return root(miss, low, high);
    }

    /**
     * The root of a continuous function between two ends where it has opposite signs, by Brent's method.
     *
     * @param f the function
     * @param low one end
     * @param high the other end
     * @return the root, to about 1e-14 relative
     */
    public static double root(DoubleUnaryOperator f, double low, double high) {
        return new BrentSolver(1e-14, 1e-14, 0.0).findRoot(f, low, high);
    }
}
