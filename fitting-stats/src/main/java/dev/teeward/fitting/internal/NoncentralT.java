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

    /** Up to this |t| the nodes for Newton's method are few. */
    private static final double STEEPEST = 40.0;

    private static final int NEWTON_STEPS = 12;

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
        // On the side of the smaller tail, which keeps its digits.
        DoubleUnaryOperator miss = p > 0.5 ? t -> (1.0 - p) - upperTail(t, df, ncp) : t -> cdf(t, df, ncp) - p;
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
        if (upperTail > 0.5) {
            // T with the noncentrality d mirrored is T with -d.
            return -noncentrality(-t, df, 1.0 - upperTail);
        }
        if (Math.abs(t) > STEEPEST) {
            return bracketed(t, df, upperTail);
        }
        // The normal quantile of P(T above t) is nearly linear in the noncentrality, so Newton's steps settle at once.
        SpreadNodes nodes = SpreadNodes.of(df, Math.abs(t));
        double wanted = Distributions.normalQuantile(upperTail);
        double ncp = t * (1.0 - 0.25 / df) + wanted * Math.sqrt(1.0 + t * t / (2.0 * df));
        for (int i = 0; i < NEWTON_STEPS; i++) {
            double reached = Distributions.normalQuantile(nodes.probability(ncp, t));
            double step = (reached - wanted) * Distributions.normalDensity(reached) / nodes.density(ncp, t);
            if (!Double.isFinite(step)) {
                break;
            }
            ncp -= step;
            if (Math.abs(step) <= 1e-8 * (1.0 + Math.abs(ncp))) {
                return ncp;
            }
        }
        return bracketed(t, df, upperTail);
    }

    private static double bracketed(double t, double df, double upperTail) {
        DoubleUnaryOperator miss = ncp -> upperTail(t, df, ncp) - upperTail;
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
