package dev.teeward.fitting.internal;

import java.util.function.DoubleUnaryOperator;

/**
 * Gauss-Legendre quadrature with equal panels.
 *
 * <p>The nodes are the roots of the Legendre polynomial, by Newton's method from the usual cosine start, so there is no
 * table to mistype (Press et al. 2007, Numerical Recipes, section 4.6, from memory).
 *
 * <pre>{@code
 * double third = new GaussLegendre(20).integrate(x -> x * x, 0.0, 1.0, 1); // 1/3
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class GaussLegendre {
    private final double[] nodes;
    private final double[] weights;

    /**
     * A rule.
     *
     * @param points the number of nodes in a panel, at least 2
     */
    public GaussLegendre(int points) {
        nodes = new double[points];
        weights = new double[points];
        for (int i = 0; i < points; i++) {
            double x = Math.cos(Math.PI * (i + 0.75) / (points + 0.5));
            double derivative = 1.0;
            for (int step = 0; step < 20; step++) {
                double p0 = 1.0;
                double p1 = x;
                for (int k = 2; k <= points; k++) {
                    double p2 = ((2 * k - 1) * x * p1 - (k - 1) * p0) / k;
                    p0 = p1;
                    p1 = p2;
                }
                derivative = points * (x * p1 - p0) / (x * x - 1.0);
                double dx = p1 / derivative;
                x -= dx;
                if (Math.abs(dx) < 1e-16) {
                    break;
                }
            }
            nodes[i] = x;
            weights[i] = 2.0 / ((1.0 - x * x) * derivative * derivative);
        }
    }

    /**
     * The number of nodes in a panel.
     *
     * @return the number
     */
    public int points() {
        return nodes.length;
    }

    /**
     * The integral of a smooth function.
     *
     * @param f the function, finite between the ends
     * @param from the lower end, finite
     * @param to the upper end, finite
     * @param panels the number of equal panels, at least 1
     * @return the integral
     */
    public double integrate(DoubleUnaryOperator f, double from, double to, int panels) {
        double half = 0.5 * (to - from) / panels;
        double sum = 0.0;
        for (int p = 0; p < panels; p++) {
            double centre = from + (2 * p + 1) * half;
            for (int i = 0; i < nodes.length; i++) {
                sum += weights[i] * f.applyAsDouble(centre + half * nodes[i]);
            }
        }
        return sum * half;
    }

    /** What to do with a node. */
    @FunctionalInterface
    public interface Visitor {
        /**
         * Sees one node.
         *
         * @param node where
         * @param weight its weight, scaled to the range
         */
        void visit(double node, double weight);
    }

    /**
     * The nodes and weights themselves, for integrals of integrals.
     *
     * @param from the lower end, finite
     * @param to the upper end, finite
     * @param panels the number of equal panels, at least 1
     * @param visitor what to do
     */
    public void visit(double from, double to, int panels, Visitor visitor) {
        double half = 0.5 * (to - from) / panels;
        for (int p = 0; p < panels; p++) {
            double centre = from + (2 * p + 1) * half;
            for (int i = 0; i < nodes.length; i++) {
                visitor.visit(centre + half * nodes[i], half * weights[i]);
            }
        }
    }
}
