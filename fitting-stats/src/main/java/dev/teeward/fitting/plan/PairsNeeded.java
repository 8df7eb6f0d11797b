package dev.teeward.fitting.plan;

import dev.teeward.fitting.internal.Distributions;
import dev.teeward.fitting.internal.NoncentralT;
import java.util.function.DoubleFunction;
import java.util.function.DoubleUnaryOperator;

/**
 * How many pairs (or shots with each club) a t test needs, by exact noncentral t, and how many an interval needs.
 *
 * <p>Power = P(|T| above t_(1-alpha/2)) for a noncentral T with df = n - 1 and noncentrality sqrt(n) difference / sd for pairs,
 * sd being the standard deviation of the differences; for two samples of n each df = 2n - 2, noncentrality
 * sqrt(n/2) difference / sd. Both tails count. Half-width = t_(1-alpha/2) s / sqrt(n), or s sqrt(2/n), with s
 * the standard deviation of the sample: planned with the true one it is the half-width to expect, and kept in somewhat more than
 * half of all sessions only. P(half-width at most w) = P(chi-square(df) at most df (w / planned half-width)^2), the assurance
 * (Kupper and Hafner 1989, from memory).
 *
 * <p>{@link #unpaired()} takes both clubs to scatter alike; {@link #unpaired(double, double)} does not.
 *
 * <p>Known points: a difference of 0.5, 0.75, 1, 1.25, 1.5 and 2 standard deviations of the differences needs 34, 16, 10, 8,
 * 6 and 5 pairs at 80 %.
 *
 * <pre>{@code
 * PairsNeeded.withDefaults().forDifference(1.0, 1.0).shots();           // 10 pairs
 * PairsNeeded.withDefaults().detectable(10, 1.0);                       // 0.996
 * PairsNeeded.withDefaults().forHalfWidth(4.0, 6.0, 0.8).shots();       // 14 pairs keep +-4 in 80 % of sessions
 * PairsNeeded.withDefaults().fromPilot(1.0, 1.0, 10).high().shots();    // if the pilot's spread was luckily small
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class PairsNeeded {
    private static final int MOST = 1_000_000;
    private static final PairsNeeded DEFAULTS = new PairsNeeded(0.8, 0.05, true, false);

    private final double power;
    private final double alpha;
    private final boolean paired;
    private final boolean oneSided;

    private PairsNeeded(double power, double alpha, boolean paired, boolean oneSided) {
        this.power = power;
        this.alpha = alpha;
        this.paired = paired;
        this.oneSided = oneSided;
    }

    /**
     * 80 % power, 5 % two-sided, pairs.
     *
     * @return the default plan
     */
    public static PairsNeeded withDefaults() {
        return DEFAULTS;
    }

    /**
     * With another power.
     *
     * @param wanted the probability of finding the difference, in (alpha, 1)
     * @return a changed copy
     * @throws IllegalArgumentException if the power is not above alpha and below 1
     */
    public PairsNeeded withPower(double wanted) {
        return checked(new PairsNeeded(wanted, alpha, paired, oneSided));
    }

    /**
     * With another significance level; intervals have level 1 - alpha.
     *
     * @param level the level, in (0, power)
     * @return a changed copy
     * @throws IllegalArgumentException if the level is not above 0 and below the power
     */
    public PairsNeeded withAlpha(double level) {
        return checked(new PairsNeeded(power, level, paired, oneSided));
    }

    /**
     * For two separate samples of the same size and spread; the standard deviation is then that of the shots of one club.
     *
     * @return a changed copy
     */
    public PairsNeeded unpaired() {
        return new PairsNeeded(power, alpha, false, oneSided);
    }

    /**
     * For two separate samples of the same size and different spreads, by Welch's test.
     *
     * @param firstSd the standard deviation of the first club's shots, above 0
     * @param secondSd that of the second's, in the same unit
     * @return a plan with this power and level
     * @throws IllegalArgumentException if a standard deviation is out of range
     */
    public WelchShotsNeeded unpaired(double firstSd, double secondSd) {
        return new WelchShotsNeeded(power, alpha, oneSided, firstSd, secondSd);
    }

    /**
     * For a one-sided test.
     *
     * @return a changed copy
     */
    public PairsNeeded oneSided() {
        return new PairsNeeded(power, alpha, paired, true);
    }

    private static PairsNeeded checked(PairsNeeded plan) {
        if (!(plan.alpha > 0.0 && plan.alpha < plan.power && plan.power < 1.0)) {
            throw new IllegalArgumentException(
                    "need 0 < alpha < power < 1, but alpha was " + plan.alpha + " and power " + plan.power);
        }
        return plan;
    }

    /**
     * The power of a given number.
     *
     * @param shots pairs, or shots with each club; at least 2, not necessarily whole
     * @param difference the true difference
     * @param sd the standard deviation, above 0, in the unit of the difference
     * @return the power, in [0, 1]
     * @throws IllegalArgumentException if an argument is out of range
     */
    public double power(double shots, double difference, double sd) {
        requireSpread(sd);
        requireFinite("difference", difference);
        requireShots(shots);
        double df = degreesOfFreedom(shots);
        double ncp = Math.abs(difference) / sd * Math.sqrt(paired ? shots : 0.5 * shots);
        double t = critical(df);
        double near = NoncentralT.upperTail(t, df, ncp);
        return oneSided ? near : Math.min(1.0, near + NoncentralT.cdf(-t, df, ncp));
    }

    /**
     * The number needed to find a difference.
     *
     * @param difference the smallest difference that matters, not 0
     * @param sd the standard deviation, above 0, in the unit of the difference
     * @return the number
     * @throws IllegalArgumentException if an argument is out of range, or more than a million would be needed
     */
    public Result forDifference(double difference, double sd) {
        requireSpread(sd);
        requireDifference(difference);
        double exact = smallest(n -> power(n, difference, sd) - power, "difference " + difference + " at sd " + sd);
        int shots = whole(exact);
        return new Result(shots, exact, power(shots, difference, sd));
    }

    /**
     * The difference that a given number finds.
     *
     * @param shots pairs, or shots with each club; at least 2
     * @param sd the standard deviation, above 0
     * @return the difference, above 0, in the unit of the standard deviation
     * @throws IllegalArgumentException if an argument is out of range
     */
    public double detectable(int shots, double sd) {
        requireSpread(sd);
        DoubleUnaryOperator miss = d -> power(shots, d, 1.0) - power;
        double high = 1.0;
        while (miss.applyAsDouble(high) < 0.0) {
            high *= 2.0;
        }
        return sd * NoncentralT.root(miss, 0.0, high);
    }

    /**
     * The number needed for an interval of the difference, as it is to be expected: with the true standard deviation in the
     * place of the sample's. About one session in three has a longer interval; {@link #forHalfWidth(double, double, double)}
     * guards against that.
     *
     * @param halfWidth the half-width to expect, above 0
     * @param sd the standard deviation, above 0, in the unit of the half-width
     * @return the number; its {@link Result#achieved()} is the half-width to expect
     * @throws IllegalArgumentException if an argument is out of range, or more than a million would be needed
     */
    public Result forHalfWidth(double halfWidth, double sd) {
        requireSpread(sd);
        requireHalfWidth(halfWidth);
        double exact = smallest(n -> halfWidth - halfWidth(n, sd), "half-width " + halfWidth + " at sd " + sd);
        int shots = whole(exact);
        return new Result(shots, exact, halfWidth(shots, sd));
    }

    /**
     * The number with which the interval of the difference is as short as wanted in a stated share of sessions.
     *
     * @param halfWidth the half-width wanted, above 0
     * @param sd the standard deviation, above 0, in the unit of the half-width
     * @param assurance the share of sessions, in (0, 1)
     * @return the number; its {@link Result#achieved()} is the half-width kept with that assurance
     * @throws IllegalArgumentException if an argument is out of range, or more than a million would be needed
     */
    public Result forHalfWidth(double halfWidth, double sd, double assurance) {
        requireSpread(sd);
        requireHalfWidth(halfWidth);
        if (!(assurance > 0.0 && assurance < 1.0)) {
            throw new IllegalArgumentException("assurance must be in (0, 1), but was " + assurance);
        }
        DoubleUnaryOperator kept = n -> {
            double df = degreesOfFreedom(n);
            return halfWidth(n, sd) * Math.sqrt(Distributions.chiSquareQuantile(assurance, df) / df);
        };
        double exact = smallest(
                n -> halfWidth - kept.applyAsDouble(n),
                "half-width " + halfWidth + " at sd " + sd + " with assurance " + assurance);
        int shots = whole(exact);
        return new Result(shots, exact, kept.applyAsDouble(shots));
    }

    /**
     * In what share of sessions an interval is as short as wanted.
     *
     * @param shots pairs, or shots with each club; at least 2, not necessarily whole
     * @param halfWidth the half-width wanted, above 0
     * @param sd the standard deviation, above 0, in the unit of the half-width
     * @return the probability, in [0, 1]
     * @throws IllegalArgumentException if an argument is out of range
     */
    public double assurance(double shots, double halfWidth, double sd) {
        requireSpread(sd);
        requireHalfWidth(halfWidth);
        requireShots(shots);
        double df = degreesOfFreedom(shots);
        double ratio = halfWidth / halfWidth(shots, sd);
        return Math.max(0.0, 1.0 - Distributions.chiSquareUpperTail(df * ratio * ratio, df));
    }

    /**
     * The number needed for a difference when the standard deviation is known from a few shots only: n goes with its
     * square, so after ten pairs the range is about sevenfold.
     *
     * @param difference the smallest difference that matters, not 0
     * @param pilotSd the standard deviation of the pilot, above 0
     * @param pilotShots how many pairs (or shots with each club) it came from, at least 2
     * @return the number at the pilot's standard deviation, at the ends of its 1 - alpha interval, and at its upper 80 % limit
     *     (Browne 1995)
     * @throws IllegalArgumentException if an argument is out of range, or more than a million would be needed
     */
    public Range fromPilot(double difference, double pilotSd, int pilotShots) {
        return range(sd -> forDifference(difference, sd), pilotSd, pilotShots);
    }

    /**
     * The number needed for an interval when the standard deviation is known from a few shots only.
     *
     * @param halfWidth the half-width to expect, above 0
     * @param pilotSd the standard deviation of the pilot, above 0
     * @param pilotShots how many pairs (or shots with each club) it came from, at least 2
     * @return the number as {@link #forHalfWidth(double, double)} gives it at the pilot's standard deviation, at the ends of its
     *     1 - alpha interval, and at its upper 80 % limit
     * @throws IllegalArgumentException if an argument is out of range, or more than a million would be needed
     */
    public Range halfWidthFromPilot(double halfWidth, double pilotSd, int pilotShots) {
        return range(sd -> forHalfWidth(halfWidth, sd), pilotSd, pilotShots);
    }

    private Range range(DoubleFunction<Result> plan, double pilotSd, int pilotShots) {
        requireSpread(pilotSd);
        PilotSpread.requireShots(pilotShots);
        PilotSpread spread = PilotSpread.of(pilotSd, degreesOfFreedom(pilotShots), alpha);
        return new Range(
                plan.apply(spread.low()),
                plan.apply(spread.central()),
                plan.apply(spread.safe()),
                plan.apply(spread.high()));
    }

    private double halfWidth(double shots, double sd) {
        return critical(degreesOfFreedom(shots)) * sd * Math.sqrt((paired ? 1.0 : 2.0) / shots);
    }

    private double degreesOfFreedom(double shots) {
        return paired ? shots - 1.0 : 2.0 * (shots - 1.0);
    }

    private double critical(double df) {
        return Distributions.tQuantile(1.0 - (oneSided ? alpha : 0.5 * alpha), df);
    }

    /** The root of an increasing function of the number, or 2 if that is enough. */
    static double smallest(DoubleUnaryOperator surplus, String what) {
        if (surplus.applyAsDouble(2.0) >= 0.0) {
            return 2.0;
        }
        double high = 4.0;
        while (surplus.applyAsDouble(high) < 0.0) {
            high *= 2.0;
            if (high > MOST) {
                throw new IllegalArgumentException("more than a million shots would be needed for " + what);
            }
        }
        return NoncentralT.root(surplus, 0.5 * high, high);
    }

    static int whole(double exact) {
        return (int) Math.ceil(exact - 1e-9);
    }

    static void requireSpread(double sd) {
        if (!(sd > 0.0 && sd < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("sd must be finite and above 0, but was " + sd);
        }
    }

    static void requireShots(double shots) {
        if (!(shots >= 2.0)) {
            throw new IllegalArgumentException("shots must be at least 2, but was " + shots);
        }
    }

    static void requireDifference(double difference) {
        requireFinite("difference", difference);
        if (difference == 0.0) {
            throw new IllegalArgumentException("difference must not be 0: no number of shots finds nothing");
        }
    }

    static void requireHalfWidth(double halfWidth) {
        requireFinite("halfWidth", halfWidth);
        if (!(halfWidth > 0.0)) {
            throw new IllegalArgumentException("halfWidth must be above 0, but was " + halfWidth);
        }
    }

    static void requireFinite(String name, double value) {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException(name + " must be finite, but was " + value);
        }
    }

    /**
     * A number of shots.
     *
     * @param shots pairs, or shots with each club, rounded up
     * @param exact the same before rounding; 2 if two are more than enough
     * @param achieved the power, or the half-width, of the rounded number
     */
    public record Result(int shots, double exact, double achieved) {}

    /**
     * The range of numbers that a pilot leaves open.
     *
     * @param low at the lower end of the interval of the standard deviation
     * @param central at the pilot's standard deviation
     * @param safe at the upper 80 % limit of the standard deviation
     * @param high at the upper end of the interval
     */
    public record Range(Result low, Result central, Result safe, Result high) {}
}
