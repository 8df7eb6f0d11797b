package dev.teeward.fitting.plan;

import dev.teeward.fitting.internal.Distributions;
import dev.teeward.fitting.internal.SpreadMixture;

/**
 * How likely a number of shots is to show that two clubs are practically the same: the power of two one-sided t tests.
 *
 * <p>With standard error se and t = t_(1-alpha), the power is the integral over s below margin / (t se) of
 * Phi((margin - d) / se - t s) - Phi((-margin - d) / se + t s), s being the sample spread of normal shots in units of the true
 * one (Owen 1965). Pooled degrees of freedom for two samples.
 *
 * <pre>{@code
 * EquivalenceShotsNeeded.withDefaults().unpaired().power(10, 0.0, 1.0, 1.0); // 0.391
 * EquivalenceShotsNeeded.withDefaults().unpaired().power(20, 0.0, 1.0, 1.0); // 0.856
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class EquivalenceShotsNeeded {
    private static final int MOST = 100_000;
    private static final EquivalenceShotsNeeded DEFAULTS = new EquivalenceShotsNeeded(0.8, 0.05, true);

    private final double power;
    private final double alpha;
    private final boolean paired;

    private EquivalenceShotsNeeded(double power, double alpha, boolean paired) {
        this.power = power;
        this.alpha = alpha;
        this.paired = paired;
    }

    /**
     * 80 % power, 5 % for each one-sided test, pairs.
     *
     * @return the default plan
     */
    public static EquivalenceShotsNeeded withDefaults() {
        return DEFAULTS;
    }

    /**
     * For two separate samples of the same size and spread; the standard deviation is then that of the shots of one club.
     *
     * @return a changed copy
     */
    public EquivalenceShotsNeeded unpaired() {
        return new EquivalenceShotsNeeded(power, alpha, false);
    }

    /**
     * With another power.
     *
     * @param wanted the power, in (0, 1)
     * @return a changed copy
     * @throws IllegalArgumentException if the power is out of range
     */
    public EquivalenceShotsNeeded withPower(double wanted) {
        if (!(wanted > 0.0 && wanted < 1.0)) {
            throw new IllegalArgumentException("power must be in (0, 1), but was " + wanted);
        }
        return new EquivalenceShotsNeeded(wanted, alpha, paired);
    }

    /**
     * With another significance level of each one-sided test; the interval that has to lie inside the margin has level 1 - 2
     * alpha.
     *
     * @param level the level, in (0, 0.5)
     * @return a changed copy
     * @throws IllegalArgumentException if the level is out of range
     */
    public EquivalenceShotsNeeded withAlpha(double level) {
        if (!(level > 0.0 && level < 0.5)) {
            throw new IllegalArgumentException("alpha must be in (0, 0.5), but was " + level);
        }
        return new EquivalenceShotsNeeded(power, level, paired);
    }

    /**
     * The power of a given number.
     *
     * @param shots pairs, or shots with each club; at least 2
     * @param difference the true difference
     * @param margin the largest difference that does not matter, above 0
     * @param sd the standard deviation, above 0; all three in one unit
     * @return the probability of showing equivalence, in [0, 1]
     * @throws IllegalArgumentException if an argument is out of range
     */
    public double power(int shots, double difference, double margin, double sd) {
        if (shots < 2
                || !(margin > 0.0 && margin < Double.POSITIVE_INFINITY)
                || !(sd > 0.0 && sd < Double.POSITIVE_INFINITY)
                || !Double.isFinite(difference)) {
            throw new IllegalArgumentException(
                    "need at least 2 shots, a finite difference, and a margin and sd above 0, but got " + shots + ", "
                            + difference + ", " + margin + " and " + sd);
        }
        double df = paired ? shots - 1.0 : 2.0 * (shots - 1.0);
        double se = sd * Math.sqrt((paired ? 1.0 : 2.0) / shots);
        double t = Distributions.tQuantile(1.0 - alpha, df);
        double widest = margin / (t * se);
        return SpreadMixture.expectation(
                df,
                widest,
                0.0,
                s -> s >= widest
                        ? 0.0
                        : Distributions.normalCdf((margin - difference) / se - t * s)
                                - Distributions.normalCdf((-margin - difference) / se + t * s));
    }

    /**
     * The number needed to show equivalence of clubs that do not differ.
     *
     * @param margin the largest difference that does not matter, above 0
     * @param sd the standard deviation, above 0, in the unit of the margin
     * @return pairs, or shots with each club
     * @throws IllegalArgumentException if an argument is out of range, or more than 100,000 would be needed
     */
    public int forMargin(double margin, double sd) {
        int low = 1;
        int high = 2;
        while (power(high, 0.0, margin, sd) < power) {
            low = high;
            high *= 2;
            if (high > MOST) {
                throw new IllegalArgumentException(
                        "more than 100,000 shots would be needed for a margin of " + margin + " at sd " + sd);
            }
        }
        while (high - low > 1) {
            int middle = (low + high) >>> 1;
            if (power(middle, 0.0, margin, sd) < power) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return high;
    }
}
