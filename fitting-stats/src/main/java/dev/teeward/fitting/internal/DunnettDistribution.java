package dev.teeward.fitting.internal;

import java.util.function.DoubleUnaryOperator;

/**
 * The largest of several t statistics that share a control and a standard deviation (Dunnett 1955): with l_j = sqrt(n_j / (n_j
 * + n_0)) the chance that all stay within c is the expectation over s and over a standard normal y of the product of
 * Phi((l_j y + c s) / sqrt(1 - l_j^2)) - Phi((l_j y - c s) / sqrt(1 - l_j^2)); one-sided without the second term. By
 * Gauss-Legendre quadrature to about 1e-13.
 *
 * <p>Immutable and thread-safe.
 */
public final class DunnettDistribution {
    private static final double REACH = 8.5;
    private static final int PANELS = 5;
    private static final GaussLegendre RULE = new GaussLegendre(24);
    private static final double DENSITY_AT_ZERO = 1.0 / Math.sqrt(2.0 * Math.PI);

    private final double[] loads;
    private final double df;
    private final boolean twoSided;

    /**
     * A distribution.
     *
     * @param control the size of the control, at least 1
     * @param others the sizes of the other samples, each at least 1
     * @param df the degrees of freedom of the common standard deviation, at least 1
     * @param twoSided whether the size of the statistics counts, rather than their value
     */
    public DunnettDistribution(int control, int[] others, double df, boolean twoSided) {
        loads = new double[others.length];
        for (int j = 0; j < loads.length; j++) {
            loads[j] = Math.sqrt(others[j] / (others[j] + (double) control));
        }
        this.df = df;
        this.twoSided = twoSided;
    }

    /**
     * The upper tail.
     *
     * @param c the argument
     * @return P(the largest is above c)
     */
    public double upperTail(double c) {
        if (twoSided && c <= 0.0) {
            return 1.0;
        }
        double p = SpreadMixture.expectation(df, 1.0, Double.POSITIVE_INFINITY, s -> above(c * s));
        return Math.min(1.0, Math.max(0.0, p));
    }

    private double above(double c) {
        DoubleUnaryOperator integrand = y -> {
            double product = DENSITY_AT_ZERO * Math.exp(-0.5 * y * y);
            for (double l : loads) {
                double rest = Math.sqrt(1.0 - l * l);
                double inside = Distributions.normalCdf((l * y + c) / rest);
                product *= twoSided ? inside - Distributions.normalCdf((l * y - c) / rest) : inside;
            }
            return product;
        };
        return 1.0 - RULE.integrate(integrand, -REACH, REACH, PANELS);
    }

    /**
     * The quantile.
     *
     * @param p a probability in (0, 1)
     * @return c with P(the largest at most c) = p
     */
    public double quantile(double p) {
        double high = 4.0;
        while (upperTail(high) > 1.0 - p) {
            high *= 2.0;
        }
        double low = twoSided ? 0.0 : -4.0;
        while (!twoSided && upperTail(low) < 1.0 - p) {
            low *= 2.0;
        }
        return NoncentralT.root(c -> (1.0 - p) - upperTail(c), low, high);
    }
}
