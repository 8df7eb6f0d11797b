package dev.teeward.fitting.compare;

import dev.teeward.fitting.internal.Distributions;
import dev.teeward.fitting.internal.GaussLegendre;
import dev.teeward.fitting.internal.SpreadMixture;
import java.util.Arrays;

/**
 * The chance of each of several means with one common error to be the largest, and the loss of picking it: given s, the
 * standard deviation in units of the true one, the means are independent normals about the sample means times s; over s the
 * chance is averaged. Lengths are in units of the error of one mean. Immutable.
 */
final class JointLead {
    private static final GaussLegendre RULE = new GaussLegendre(20);
    private static final double REACH = 9.0;

    private final double[] probabilities;
    private final double[] losses;

    private JointLead(double[] probabilities, double[] losses) {
        this.probabilities = probabilities;
        this.losses = losses;
    }

    /** From the means in units of their estimated error, and its degrees of freedom, at least 1. */
    static JointLead of(double[] means, double df) {
        double[] probabilities = new double[means.length];
        double[] losses = new double[means.length];
        double apart = Arrays.stream(means).max().orElse(0.0)
                - Arrays.stream(means).min().orElse(0.0);
        // Near s = 0 the chances change fast, until even the means furthest apart are told apart.
        double width = REACH / Math.max(1.0, apart);
        for (int i = 0; i < means.length; i++) {
            int own = i;
            probabilities[i] = SpreadMixture.expectation(df, 0.0, width, s -> chance(means, own, s));
            losses[i] = SpreadMixture.expectation(df, 0.0, width, s -> loss(means, own, s));
        }
        return new JointLead(probabilities, losses);
    }

    /** P(the own mean leads), given s. */
    private static double chance(double[] means, int own, double s) {
        return RULE.integrate(
                z -> {
                    double product = Distributions.normalDensity(z);
                    for (int j = 0; j < means.length; j++) {
                        product *= j == own ? 1.0 : Distributions.normalCdf(z + s * (means[own] - means[j]));
                    }
                    return product;
                },
                -REACH,
                REACH,
                3);
    }

    /** E(largest mean - own mean), given s, as the integral of P(largest above x) - P(own above x). */
    private static double loss(double[] means, int own, double s) {
        double most = Arrays.stream(means).max().orElse(means[own]);
        double top = s * (most - means[own]);
        double excess = RULE.integrate(
                z -> {
                    double below = 1.0;
                    for (double m : means) {
                        below *= Distributions.normalCdf(z + s * (most - m));
                    }
                    return z > 0.0 ? 1.0 - below : -below;
                },
                -REACH,
                REACH,
                6);
        return (top + excess) / s;
    }

    double probability(int i) {
        return probabilities[i];
    }

    double loss(int i) {
        return Math.max(0.0, losses[i]);
    }
}
