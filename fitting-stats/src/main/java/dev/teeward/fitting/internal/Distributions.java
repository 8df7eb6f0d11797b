package dev.teeward.fitting.internal;

import java.util.function.DoubleUnaryOperator;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;
import org.apache.commons.statistics.distribution.ContinuousDistribution;
import org.apache.commons.statistics.distribution.FDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.apache.commons.statistics.distribution.TDistribution;

/**
 * Tail probabilities and quantiles of the normal, t, chi-square and F distributions, from Commons Statistics.
 *
 * <p>Upper tails come from survival functions, so that small p keep their digits. Quantiles start from closed approximations
 * (t: Gaver and Kafadar 1984; chi-square: Wilson and Hilferty 1931; F: Paulson 1942) and take Halley's steps on the side of
 * the smaller tail, which brings them to 2e-14 in proportion, or where t is about 0 to 1e-16 (190 values by mpmath); where that
 * does not settle, the library's solver and two Newton steps do. The approximations, from memory, decide about speed only. t
 * with 1 and 2 degrees of freedom has closed quantiles.
 *
 * <p>Stateless and thread-safe.
 */
public final class Distributions {
    private static final NormalDistribution NORMAL = NormalDistribution.of(0.0, 1.0);
    private static final int NEWTON_STEPS = 2;
    private static final int HALLEY_STEPS = 12;

    /** A step this small in proportion leaves an error of about its cube. */
    private static final double SETTLED = 1e-6;

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
     * The standard normal density.
     *
     * @param z the argument
     * @return exp(-z^2 / 2) / sqrt(2 pi)
     */
    public static double normalDensity(double z) {
        return Math.exp(-0.5 * z * z) / Math.sqrt(2.0 * Math.PI);
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
        if (p == 0.5) {
            return 0.0;
        }
        if (df == 1.0) {
            double tail = Math.min(p, 1.0 - p);
            return tail < 0.25 ? Math.copySign(1.0 / Math.tan(Math.PI * tail), p - 0.5) : Math.tan(Math.PI * (p - 0.5));
        }
        if (df == 2.0) {
            return (p - 0.5) * Math.sqrt(2.0 / (p * (1.0 - p)));
        }
        TDistribution t = TDistribution.of(df);
        if (!(df > 2.0)) {
            return solved(t, p);
        }
        double z = normalQuantile(p);
        double start = Math.copySign(Math.sqrt(df * Math.expm1(z * z * (df - 1.5) / ((df - 1.0) * (df - 1.0)))), z);
        return settled(t, p, start, q -> -(df + 1.0) * q / (df + q * q));
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
        double a = 2.0 / (9.0 * df);
        double root = 1.0 - a + normalQuantile(p) * Math.sqrt(a);
        return settled(ChiSquaredDistribution.of(df), p, df * root * root * root, q -> (0.5 * df - 1.0) / q - 0.5);
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
        double a = 2.0 / (9.0 * df1);
        double b = 2.0 / (9.0 * df2);
        double z = normalQuantile(p);
        double under = a * (1.0 - b) * (1.0 - b) + b * (1.0 - a) * (1.0 - a) - z * z * a * b;
        double divisor = (1.0 - b) * (1.0 - b) - z * z * b;
        double root = divisor > 0.0 && under > 0.0 ? ((1.0 - a) * (1.0 - b) + z * Math.sqrt(under)) / divisor : 0.0;
        return settled(
                FDistribution.of(df1, df2),
                p,
                root * root * root,
                q -> (0.5 * df1 - 1.0) / q - 0.5 * (df1 + df2) * df1 / (df2 + df1 * q));
    }

    /** Halley's method from a start; the slope is that of the logarithm of the density. */
    private static double settled(
            ContinuousDistribution distribution, double p, double start, DoubleUnaryOperator slope) {
        double q = start;
        for (int i = 0; i < HALLEY_STEPS && q > distribution.getSupportLowerBound() && Double.isFinite(q); i++) {
            double newton = miss(distribution, p, q) / distribution.density(q);
            double step = newton / Math.max(0.5, 1.0 - 0.5 * newton * slope.applyAsDouble(q));
            q -= step;
            if (Math.abs(step) <= SETTLED * Math.abs(q)) {
                return q;
            }
        }
        return solved(distribution, p);
    }

    private static double miss(ContinuousDistribution distribution, double p, double q) {
        return p <= 0.5 ? distribution.cumulativeProbability(q) - p : (1.0 - p) - distribution.survivalProbability(q);
    }

    private static double solved(ContinuousDistribution distribution, double p) {
        double q = p <= 0.5
                ? distribution.inverseCumulativeProbability(p)
                : distribution.inverseSurvivalProbability(1.0 - p);
        for (int i = 0; i < NEWTON_STEPS; i++) {
            double density = distribution.density(q);
            double next = q - miss(distribution, p, q) / density;
            if (!(density > 0.0) || !Double.isFinite(next) || Math.abs(next - q) > 1e-6 * (Math.abs(q) + 1e-6)) {
                break;
            }
            q = next;
        }
        return q;
    }
}
