package dev.teeward.fitting.internal;

import java.util.Arrays;

/**
 * The distribution of s = sqrt(chi-square(df) / df) as points with weights, for many expectations of normal probabilities
 * that change over s with the same steepness: what {@link SpreadMixture} does anew for each one.
 *
 * <p>Gauss-Legendre with panels of four standard deviations of the sharper of density and Phi(steepness s), over which 20
 * points are exact to rounding; points that weigh less than 1e-25 are left out.
 *
 * <p>Immutable and thread-safe.
 */
final class SpreadNodes {
    private static final GaussLegendre RULE = new GaussLegendre(20);
    private static final double PANEL = 4.0;
    private static final double LEAST = 1e-25;

    private final double[] s;
    private final double[] weight;

    private SpreadNodes(double[] s, double[] weight) {
        this.s = s;
        this.weight = weight;
    }

    static SpreadNodes of(double df, double steepness) {
        double low = Math.max(0.0, 1.0 - SpreadMixture.REACH / Math.sqrt(df));
        double high = 1.0 + SpreadMixture.REACH / Math.sqrt(df);
        int panels = (int) Math.ceil((high - low) * Math.sqrt(steepness * steepness + 2.0 * df) / PANEL);
        double[] nodes = new double[panels * RULE.points()];
        double[] weights = new double[nodes.length];
        int[] filled = {0};
        double[] total = {0.0};
        RULE.visit(low, high, panels, (node, weight) -> {
            double share = weight * SpreadMixture.density(df, node);
            if (share > LEAST) {
                nodes[filled[0]] = node;
                weights[filled[0]++] = share;
                total[0] += share;
            }
        });
        for (int i = 0; i < filled[0]; i++) {
            weights[i] /= total[0];
        }
        return new SpreadNodes(Arrays.copyOf(nodes, filled[0]), Arrays.copyOf(weights, filled[0]));
    }

    /** E Phi(c - t s). */
    double probability(double c, double t) {
        double sum = 0.0;
        for (int i = 0; i < s.length; i++) {
            sum += weight[i] * Distributions.normalCdf(c - t * s[i]);
        }
        return sum;
    }

    /** E phi(c - t s), its derivative. */
    double density(double c, double t) {
        double sum = 0.0;
        for (int i = 0; i < s.length; i++) {
            sum += weight[i] * Distributions.normalDensity(c - t * s[i]);
        }
        return sum;
    }
}
