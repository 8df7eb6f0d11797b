package dev.teeward.fitting.internal;

/**
 * The studentised range (Tukey 1953): the range of k standard normal values over an independent s = sqrt(chi-square(df) /
 * df). P(Q at most q) is the expectation over s of k times the integral over z of phi(z) (Phi(z) - Phi(z - q s))^(k - 1),
 * by Gauss-Legendre quadrature to about 1e-13.
 *
 * <pre>{@code
 * StudentizedRange.upperTail(4.018417089, 5, 45.0); // 0.05
 * }</pre>
 *
 * <p>Stateless and thread-safe.
 */
public final class StudentizedRange {
    private static final double REACH = 8.5;
    private static final int PANELS = 5;
    private static final GaussLegendre RULE = new GaussLegendre(24);
    private static final double DENSITY_AT_ZERO = 1.0 / Math.sqrt(2.0 * Math.PI);

    private StudentizedRange() {}

    /**
     * The upper tail.
     *
     * @param q the argument, at least 0
     * @param k the number of means, at least 2
     * @param df the degrees of freedom, at least 1
     * @return P(Q above q)
     */
    public static double upperTail(double q, int k, double df) {
        double p = q > 0.0 ? SpreadMixture.expectation(df, 1.0, Double.POSITIVE_INFINITY, s -> above(q * s, k)) : 1.0;
        return Math.min(1.0, Math.max(0.0, p));
    }

    /** The chance that the range of k normal values is above w. */
    private static double above(double w, int k) {
        double below = k
                * RULE.integrate(
                        z -> {
                            double inside = Distributions.normalCdf(z) - Distributions.normalCdf(z - w);
                            return DENSITY_AT_ZERO * Math.exp(-0.5 * z * z) * Math.pow(inside, k - 1.0);
                        },
                        -REACH,
                        REACH,
                        PANELS);
        return 1.0 - below;
    }

    /**
     * The quantile.
     *
     * @param p a probability in (0, 1)
     * @param k the number of means, at least 2
     * @param df the degrees of freedom, at least 1
     * @return q with P(Q at most q) = p
     */
    public static double quantile(double p, int k, double df) {
        double high = 4.0;
        while (upperTail(high, k, df) > 1.0 - p) {
            high *= 2.0;
        }
        return NoncentralT.root(q -> (1.0 - p) - upperTail(q, k, df), 0.0, high);
    }
}
