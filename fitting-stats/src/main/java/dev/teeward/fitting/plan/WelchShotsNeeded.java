package dev.teeward.fitting.plan;

import dev.teeward.fitting.internal.Distributions;
import dev.teeward.fitting.internal.GaussLegendre;
import dev.teeward.fitting.internal.NoncentralT;

/**
 * How many shots with each club a Welch t test needs when the clubs scatter differently; exact for normal shots.
 *
 * <p>With n shots a club, nu = 2 (n - 1), ncp = difference / tau and tau^2 = (sd1^2 + sd2^2) / n, the share B that the first club
 * has in (n - 1) s1^2 / sd1^2 + (n - 1) s2^2 / sd2^2 is Beta((n - 1) / 2, (n - 1) / 2) and independent of that sum. Given B,
 * Welch's (1947) degrees of freedom are fixed and his statistic is a multiple of a noncentral t with nu degrees of freedom:
 * power is the mean of its tail over B. Both tails count. A noncentral t with the degrees of freedom of the true spreads is an
 * approximation to this, and the pooled plan of one common spread misses it.
 *
 * <p>Half-width = t_(1-alpha/2) tau with the degrees of freedom of the true spreads: what to expect, and kept in somewhat more
 * than half of all sessions only.
 *
 * <pre>{@code
 * WelchShotsNeeded plan = PairsNeeded.withDefaults().unpaired(3.0, 1.0);
 * plan.power(8.0, 3.2);             // 0.715
 * plan.forDifference(3.2).shots();  // 10 with each club
 * }</pre>
 *
 * <p>Immutable and thread-safe; made by {@link PairsNeeded#unpaired(double, double)}.
 */
public final class WelchShotsNeeded {
    private static final GaussLegendre RULE = new GaussLegendre(20);
    private static final int PANELS = 3;

    /** Twenty standard deviations of the angle, on both sides together. */
    private static final double REACH = 5.0;

    private final double power;
    private final double alpha;
    private final boolean oneSided;
    private final double firstVariance;
    private final double secondVariance;

    WelchShotsNeeded(double power, double alpha, boolean oneSided, double firstSd, double secondSd) {
        PairsNeeded.requireSpread(firstSd);
        PairsNeeded.requireSpread(secondSd);
        this.power = power;
        this.alpha = alpha;
        this.oneSided = oneSided;
        this.firstVariance = firstSd * firstSd;
        this.secondVariance = secondSd * secondSd;
    }

    /**
     * The power of a given number.
     *
     * @param shots shots with each club; at least 2, not necessarily whole
     * @param difference the true difference of the means, finite, in the unit of the standard deviations
     * @return the power, in [0, 1]; with a difference of 0, the true size of the test
     * @throws IllegalArgumentException if an argument is out of range
     */
    public double power(double shots, double difference) {
        PairsNeeded.requireShots(shots);
        PairsNeeded.requireFinite("difference", difference);
        double nu = 2.0 * (shots - 1.0);
        double tau2 = (firstVariance + secondVariance) / shots;
        double ncp = Math.abs(difference) / Math.sqrt(tau2);
        double middle = 0.25 * Math.PI;
        double low = Math.max(0.0, middle - REACH / Math.sqrt(nu));
        double[] sums = new double[2];
        // B = sin^2 of the angle, whose density goes with (sin cos)^(n - 2) and has no poles.
        RULE.visit(low, 2.0 * middle - low, PANELS, (angle, weight) -> {
            double sine = Math.sin(angle);
            double share = sine * sine;
            double density = weight * Math.pow(Math.sin(2.0 * angle), shots - 2.0);
            double first = firstVariance * share / shots;
            double second = secondVariance * (1.0 - share) / shots;
            double df = degreesOfFreedom(shots, first, second);
            double t = critical(df) * Math.sqrt(2.0 * (first + second) / tau2);
            double near = NoncentralT.upperTail(t, nu, ncp);
            sums[0] += density * (oneSided ? near : near + NoncentralT.cdf(-t, nu, ncp));
            sums[1] += density;
        });
        return Math.min(1.0, sums[0] / sums[1]);
    }

    /**
     * The number needed to find a difference.
     *
     * @param difference the smallest difference that matters, not 0
     * @return the number with each club, and its power
     * @throws IllegalArgumentException if the difference is out of range, or more than a million shots would be needed
     */
    public PairsNeeded.Result forDifference(double difference) {
        PairsNeeded.requireDifference(difference);
        double exact = PairsNeeded.smallest(n -> power(n, difference) - power, "difference " + difference);
        int shots = PairsNeeded.whole(exact);
        return new PairsNeeded.Result(shots, exact, power(shots, difference));
    }

    /**
     * The number needed for an interval of the difference.
     *
     * @param halfWidth the half-width to expect, above 0
     * @return the number with each club, and the half-width at the true spreads
     * @throws IllegalArgumentException if the half-width is out of range, or more than a million shots would be needed
     */
    public PairsNeeded.Result forHalfWidth(double halfWidth) {
        PairsNeeded.requireHalfWidth(halfWidth);
        double exact = PairsNeeded.smallest(n -> halfWidth - halfWidth(n), "half-width " + halfWidth);
        int shots = PairsNeeded.whole(exact);
        return new PairsNeeded.Result(shots, exact, halfWidth(shots));
    }

    private double halfWidth(double shots) {
        double first = firstVariance / shots;
        double second = secondVariance / shots;
        return critical(degreesOfFreedom(shots, first, second)) * Math.sqrt(first + second);
    }

    /** Of Welch and Satterthwaite, from the variances of two means. */
    private static double degreesOfFreedom(double shots, double first, double second) {
        double sum = first + second;
        return (shots - 1.0) * sum * sum / (first * first + second * second);
    }

    private double critical(double df) {
        return Distributions.tQuantile(1.0 - (oneSided ? alpha : 0.5 * alpha), df);
    }
}
