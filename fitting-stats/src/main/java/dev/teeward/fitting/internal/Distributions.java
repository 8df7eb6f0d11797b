package dev.teeward.fitting.internal;

import org.apache.commons.statistics.distribution.ChiSquaredDistribution;
import org.apache.commons.statistics.distribution.ContinuousDistribution;
import org.apache.commons.statistics.distribution.FDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.apache.commons.statistics.distribution.TDistribution;

/**
 * Tail probabilities and quantiles of the normal, t, chi-square and F distributions, from Commons Statistics.
 *
 * <p>Upper tails come from survival functions, so that small p keep their digits. Quantiles of the solver-based
 * distributions get two Newton steps on the side of the smaller tail, which brings them to about 1e-14.
 *
 * <p>Stateless and thread-safe.
 */
public final class Distributions {
    private static final NormalDistribution NORMAL = NormalDistribution.of(0.0, 1.0);
    private static final int NEWTON_STEPS = 2;

    private Distributions() {}

    /**
     * The standard normal distribution function.
     *
     * @param z the argument
     * @return P(Z at most z)
     */
    public static double normalCdf(double z) {
        return NORMAL.cumulativeProbability(z);
    }

    /**
     * The standard normal upper tail.
     *
     * @param z the argument
     * @return P(Z above z)
     */
    public static double normalUpperTail(double z) {
        return NORMAL.survivalProbability(z);
    }

    /**
     * The standard normal quantile.
     *
     * @param p a probability in (0, 1)
     * @return z with P(Z at most z) = p
     */
    public static double normalQuantile(double p) {
        return NORMAL.inverseCumulativeProbability(p);
    }

    /**
     * The upper tail of Student's t.
     *
     * @param t the argument
     * @param df the degrees of freedom, above 0
     * @return P(T above t)
     */
    public static double tUpperTail(double t, double df) {
        return TDistribution.of(df).survivalProbability(t);
    }

    /**
     * The quantile of Student's t.
     *
     * @param p a probability in (0, 1)
     * @param df the degrees of freedom, above 0
     * @return t with P(T at most t) = p
     */
    public static double tQuantile(double p, double df) {
        return quantile(TDistribution.of(df), p);
    }

    /**
     * The upper tail of chi-square.
     *
     * @param x the argument
     * @param df the degrees of freedom, above 0
     * @return P(X above x)
     */
    public static double chiSquareUpperTail(double x, double df) {
        return ChiSquaredDistribution.of(df).survivalProbability(x);
    }

    /**
     * The quantile of chi-square.
     *
     * @param p a probability in (0, 1)
     * @param df the degrees of freedom, above 0
     * @return x with P(X at most x) = p
     */
    public static double chiSquareQuantile(double p, double df) {
        return quantile(ChiSquaredDistribution.of(df), p);
    }

    /**
     * The lower tail of F.
     *
     * @param f the argument
     * @param df1 the degrees of freedom of the numerator
     * @param df2 the degrees of freedom of the denominator
     * @return P(F at most f)
     */
    public static double fCdf(double f, double df1, double df2) {
        return FDistribution.of(df1, df2).cumulativeProbability(f);
    }

    /**
     * The upper tail of F.
     *
     * @param f the argument
     * @param df1 the degrees of freedom of the numerator
     * @param df2 the degrees of freedom of the denominator
     * @return P(F above f)
     */
    public static double fUpperTail(double f, double df1, double df2) {
        return FDistribution.of(df1, df2).survivalProbability(f);
    }

    /**
     * The quantile of F.
     *
     * @param p a probability in (0, 1)
     * @param df1 the degrees of freedom of the numerator
     * @param df2 the degrees of freedom of the denominator
     * @return f with P(F at most f) = p
     */
    public static double fQuantile(double p, double df1, double df2) {
        return quantile(FDistribution.of(df1, df2), p);
    }

    private static double quantile(ContinuousDistribution distribution, double p) {
        double q = distribution.inverseCumulativeProbability(p);
        for (int i = 0; i < NEWTON_STEPS; i++) {
            double density = distribution.density(q);
            double miss = p <= 0.5
                    ? distribution.cumulativeProbability(q) - p
                    : (1.0 - p) - distribution.survivalProbability(q);
            double next = q - miss / density;
            if (!(density > 0.0) || !Double.isFinite(next) || Math.abs(next - q) > 1e-6 * (Math.abs(q) + 1e-6)) {
                break;
            }
            q = next;
        }
        return q;
    }
}
