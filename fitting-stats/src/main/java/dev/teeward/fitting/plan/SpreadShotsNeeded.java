package dev.teeward.fitting.plan;

import dev.teeward.fitting.internal.Distributions;

/**
 * How many shots with each club it takes to tell two spreads apart, by the F test of normal shots: many. A robust test
 * needs more.
 *
 * <p>Power = P(F above F_(1-alpha/2) / ratio^2) + P(F below F_(alpha/2) / ratio^2), n - 1 degrees of freedom each.
 *
 * <pre>{@code
 * SpreadShotsNeeded.withDefaults().power(10, 2.0); // 0.496
 * SpreadShotsNeeded.withDefaults().forRatio(1.5);  // 50 shots with each club
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class SpreadShotsNeeded {
    private static final int MOST = 1_000_000;
    private static final SpreadShotsNeeded DEFAULTS = new SpreadShotsNeeded(0.8, 0.05);

    private final double power;
    private final double alpha;

    private SpreadShotsNeeded(double power, double alpha) {
        this.power = power;
        this.alpha = alpha;
    }

    /**
     * 80 % power, 5 % two-sided.
     *
     * @return the default plan
     */
    public static SpreadShotsNeeded withDefaults() {
        return DEFAULTS;
    }

    /**
     * With another power.
     *
     * @param wanted the power, above the significance level and below 1
     * @return a changed copy
     * @throws IllegalArgumentException if the power is out of range
     */
    public SpreadShotsNeeded withPower(double wanted) {
        if (!(wanted > alpha && wanted < 1.0)) {
            throw new IllegalArgumentException("power must be in (" + alpha + ", 1), but was " + wanted);
        }
        return new SpreadShotsNeeded(wanted, alpha);
    }

    /**
     * With another significance level.
     *
     * @param level the two-sided level, above 0 and below the power
     * @return a changed copy
     * @throws IllegalArgumentException if the level is out of range
     */
    public SpreadShotsNeeded withAlpha(double level) {
        if (!(level > 0.0 && level < power)) {
            throw new IllegalArgumentException("alpha must be in (0, " + power + "), but was " + level);
        }
        return new SpreadShotsNeeded(power, level);
    }

    /**
     * The power of a given number.
     *
     * @param shots the shots with each club, at least 2
     * @param ratio the true ratio of standard deviations, above 0
     * @return the power, in [0, 1]
     * @throws IllegalArgumentException if an argument is out of range
     */
    public double power(int shots, double ratio) {
        if (shots < 2 || !(ratio > 0.0 && ratio < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(
                    "need at least 2 shots and a finite ratio above 0, but got " + shots + " and " + ratio);
        }
        double df = shots - 1.0;
        double r2 = ratio * ratio;
        return Distributions.fUpperTail(Distributions.fQuantile(1.0 - 0.5 * alpha, df, df) / r2, df, df)
                + Distributions.fCdf(Distributions.fQuantile(0.5 * alpha, df, df) / r2, df, df);
    }

    /**
     * The number needed to find a ratio.
     *
     * @param ratio the ratio of standard deviations that matters, above 0, not 1
     * @return the shots with each club
     * @throws IllegalArgumentException if the ratio is out of range, or more than a million shots would be needed
     */
    public int forRatio(double ratio) {
        int low = 1;
        int high = 2;
        while (power(high, ratio) < power) {
            low = high;
            high *= 2;
            if (high > MOST) {
                throw new IllegalArgumentException("more than a million shots would be needed for a ratio of " + ratio);
            }
        }
        while (high - low > 1) {
            int middle = (low + high) >>> 1;
            if (power(middle, ratio) < power) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return high;
    }
}
