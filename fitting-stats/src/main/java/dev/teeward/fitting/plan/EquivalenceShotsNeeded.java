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
 * <p><b>Too few shots cannot show it.</b> Even clubs observed to be exactly alike pass only if the spread of the sample is below
 * margin / (t sqrt(1/n)), or sqrt(2/n) for two samples ({@link #largestSpread}). Where the true spread is well above that, the
 * power is near 0 and falls below alpha, whatever the clubs are: 0.0019 for five pairs, a margin of 0.3 and a standard deviation
 * of 1, where the sample's would have to come out below 0.315. A test that does not show equivalence then says nothing at all.
 *
 * <pre>{@code
 * EquivalenceShotsNeeded.withDefaults().unpaired().power(10, 0.0, 1.0, 1.0); // 0.391
 * EquivalenceShotsNeeded.withDefaults().unpaired().power(20, 0.0, 1.0, 1.0); // 0.856
 * EquivalenceShotsNeeded.withDefaults().forMargin(1.0, 1.0, 0.3);            // 15 pairs
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
        double widest = largestSpread(shots, margin) / sd;
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
     * The largest standard deviation of the sample with which a given number can show equivalence at all, even at an observed
     * difference of 0. If the true one is above it, think of more shots.
     *
     * @param shots pairs, or shots with each club; at least 2
     * @param margin the largest difference that does not matter, above 0
     * @return the standard deviation, of the differences of pairs or pooled, in the unit of the margin
     * @throws IllegalArgumentException if an argument is out of range
     */
    public double largestSpread(int shots, double margin) {
        if (shots < 2 || !(margin > 0.0 && margin < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(
                    "need at least 2 shots and a margin above 0, but got " + shots + " and " + margin);
        }
        double df = paired ? shots - 1.0 : 2.0 * (shots - 1.0);
        return margin / (Distributions.tQuantile(1.0 - alpha, df) * Math.sqrt((paired ? 1.0 : 2.0) / shots));
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
        return forMargin(margin, sd, 0.0);
    }

    /**
     * The number needed to show equivalence of clubs that differ by less than the margin.
     *
     * @param margin the largest difference that does not matter, above 0
     * @param sd the standard deviation, above 0, in the unit of the margin
     * @param difference the true difference, of either sign and smaller than the margin
     * @return pairs, or shots with each club
     * @throws IllegalArgumentException if an argument is out of range, or more than 100,000 would be needed
     */
    public int forMargin(double margin, double sd, double difference) {
        if (Math.abs(difference) >= margin) {
            throw new IllegalArgumentException("difference must be smaller than the margin of " + margin + ", but was "
                    + difference + "; clubs that differ by the margin are not to be called equal");
        }
        int low = 1;
        int high = 2;
        while (power(high, difference, margin, sd) < power) {
            low = high;
            high *= 2;
            if (high > MOST) {
                throw new IllegalArgumentException("more than 100,000 shots would be needed for a margin of " + margin
                        + " at sd " + sd + " and a difference of " + difference);
            }
        }
        while (high - low > 1) {
            int middle = (low + high) >>> 1;
            if (power(middle, difference, margin, sd) < power) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return high;
    }

    /**
     * The number needed to show equivalence of clubs that do not differ when the standard deviation is known from a few shots
     * only.
     *
     * @param margin the largest difference that does not matter, above 0
     * @param pilotSd the standard deviation of the pilot, above 0
     * @param pilotShots how many pairs (or shots with each club) it came from, at least 2
     * @return the number at the pilot's standard deviation, at the ends of its 1 - 2 alpha interval, and at its upper 80 % limit
     * @throws IllegalArgumentException if an argument is out of range, or more than 100,000 would be needed
     */
    public Range fromPilot(double margin, double pilotSd, int pilotShots) {
        PairsNeeded.requireSpread(pilotSd);
        PilotSpread.requireShots(pilotShots);
        double df = paired ? pilotShots - 1.0 : 2.0 * (pilotShots - 1.0);
        PilotSpread spread = PilotSpread.of(pilotSd, df, 2.0 * alpha);
        return new Range(
                forMargin(margin, spread.low()),
                forMargin(margin, spread.central()),
                forMargin(margin, spread.safe()),
                forMargin(margin, spread.high()));
    }

    /**
     * The range of numbers that a pilot leaves open; pairs, or shots with each club.
     *
     * @param low at the lower end of the interval of the standard deviation
     * @param central at the pilot's standard deviation
     * @param safe at the upper 80 % limit of the standard deviation
     * @param high at the upper end of the interval
     */
    public record Range(int low, int central, int safe, int high) {}
}
