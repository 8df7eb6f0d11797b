package dev.teeward.fitting.compare;

import dev.teeward.fitting.internal.Distributions;
import dev.teeward.fitting.internal.NoncentralT;
import dev.teeward.fitting.internal.Sample;
import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.Interval;
import dev.teeward.quantity.RatioUnit;
import dev.teeward.quantity.Unit;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;

/**
 * A paired t test that stays right however often one looks: after every pair, and stopping whenever one likes (Robbins 1970;
 * t with unknown spread: Lai 1976; Lindon and others on anytime-valid linear models).
 *
 * <p>After n pairs with t and nu = n - 1 the evidence is e = (1 + n g)^(-1/2) ((1 + t^2 / ((1 + n g) nu)) / (1 + t^2 /
 * nu))^(-(nu + 1) / 2), the likelihood ratio against a normal mixture of effect sizes of variance g. Without a difference it
 * exceeds 1 / alpha at any look with a chance of at most alpha; p = min(1, 1 / largest e so far). The interval is the mean +-
 * the s / sqrt n at which e = 1 / alpha, cut with all earlier ones.
 *
 * <p>The price at g = 1: |t| must reach 8.45, 3.87, 3.42 after 5, 10, 20 pairs, against 2.78, 2.26, 2.09 when the number was
 * fixed beforehand. At small n and g no t is enough and the interval is unbounded. With two or three looks planned,
 * {@code GroupSequentialPlan} asks for less. Looking after every pair at a plain p below 0.05 gives 12 to 23 % false
 * alarms. As long as the differences so far differ by rounding only, e = 1 and the interval is unbounded; if that is so to
 * the end there is the warning {@code no-spread}.
 *
 * <pre>{@code
 * SequentialTTest.Result r = SequentialTTest.withDefaults().withUnit(LengthUnit.YARD).testPairs(x, y);
 * r.pValue();                        // may be read after every pair
 * r.difference().interval();
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class SequentialTTest {
    private static final double TOO_LARGE = 1e8;
    private static final SequentialTTest DEFAULTS = new SequentialTTest(0.95, 1.0, RatioUnit.ONE);

    private final double level;
    private final double g;
    private final Unit unit;

    private SequentialTTest(double level, double g, Unit unit) {
        this.level = level;
        this.g = g;
        this.unit = unit;
    }

    /**
     * What is known after all pairs so far.
     *
     * @param method the method, in words
     * @param difference the mean difference, first minus second, with the interval that holds at every look
     * @param evidence e after each pair from the second on
     * @param pValue 1 over the largest e so far, at most 1
     * @param pairs the number of pairs
     * @param warnings what to know before using this
     */
    public record Result(
            String method,
            Estimate difference,
            List<Double> evidence,
            double pValue,
            int pairs,
            List<Warning> warnings) {
        /**
         * Copies the lists.
         *
         * @param method the method, in words
         * @param difference the mean difference, first minus second, with the interval that holds at every look
         * @param evidence e after each pair from the second on
         * @param pValue 1 over the largest e so far, at most 1
         * @param pairs the number of pairs
         * @param warnings what to know before using this
         */
        public Result {
            evidence = List.copyOf(evidence);
            warnings = List.copyOf(warnings);
        }
    }

    /**
     * 95 %, effect variance 1.
     *
     * @return the default test
     */
    public static SequentialTTest withDefaults() {
        return DEFAULTS;
    }

    /**
     * With another confidence level.
     *
     * @param level the level, in (0, 1)
     * @return a changed copy
     * @throws IllegalArgumentException if the level is not in (0, 1)
     */
    public SequentialTTest withLevel(double level) {
        return new SequentialTTest(Options.DEFAULTS.withLevel(level).level(), g, unit);
    }

    /**
     * With another variance of the effect sizes looked for, in squared standard deviations of the differences.
     *
     * @param variance the variance, above 0; 1 unless changed
     * @return a changed copy
     * @throws IllegalArgumentException if the variance is not above 0 or not finite
     */
    public SequentialTTest withEffectVariance(double variance) {
        if (!(variance > 0.0) || Double.isInfinite(variance)) {
            throw new IllegalArgumentException("effect variance must be finite and above 0, but was " + variance);
        }
        return new SequentialTTest(level, variance, unit);
    }

    /**
     * With the unit of the numbers.
     *
     * @param unit the unit
     * @return a changed copy
     */
    public SequentialTTest withUnit(Unit unit) {
        return new SequentialTTest(level, g, Objects.requireNonNull(unit, "unit"));
    }

    /**
     * The evidence of a t.
     *
     * @param t the paired t, finite
     * @param n the number of pairs, at least 2
     * @return e, above 0
     * @throws IllegalArgumentException if n is below 2 or t not finite
     */
    public double evidence(double t, int n) {
        if (n < 2 || !Double.isFinite(t)) {
            throw new IllegalArgumentException("n must be at least 2 and t finite, but were " + n + " and " + t);
        }
        double nu = n - 1.0;
        double square = t * t / nu;
        double more = 1.0 + n * g;
        return Math.exp(-0.5 * Math.log(more) - 0.5 * (nu + 1.0) * (Math.log1p(square / more) - Math.log1p(square)));
    }

    /**
     * The t at which the evidence reaches 1 over one minus the level.
     *
     * @param n the number of pairs, at least 2
     * @return the critical t, or empty if no t is enough with so few pairs
     * @throws IllegalArgumentException if n is below 2
     */
    public OptionalDouble criticalT(int n) {
        double wanted = 1.0 / (1.0 - level);
        if (evidence(TOO_LARGE, n) <= wanted) {
            return OptionalDouble.empty();
        }
        double high = 4.0;
        while (evidence(high, n) < wanted) {
            high *= 2.0;
        }
        return OptionalDouble.of(NoncentralT.root(t -> Math.log(evidence(t, n) / wanted), 0.0, high));
    }

    /**
     * The t that is just significant when the number of pairs was fixed beforehand, for comparison.
     *
     * @param n the number of pairs, at least 2
     * @return the two-sided critical t at this level
     * @throws IllegalArgumentException if n is below 2
     */
    public double fixedCriticalT(int n) {
        if (n < 2) {
            throw new IllegalArgumentException("n must be at least 2, but was " + n);
        }
        return Distributions.tQuantile(0.5 + 0.5 * level, n - 1.0);
    }

    /**
     * The half-width that holds at every look when the spread is known (Robbins 1970; Howard, Ramdas, McAuliffe and Sekhon
     * 2021): sigma sqrt((n g + 1) / (n^2 g) ln((n g + 1) / alpha^2)), g the variance of the mixture in units of sigma^2.
     *
     * @param n the number of values, at least 1
     * @param sigma the known standard deviation, above 0
     * @return the half-width
     * @throws IllegalArgumentException if n is below 1 or sigma not above 0
     */
    public double knownSpreadHalfWidth(int n, double sigma) {
        if (n < 1 || !(sigma > 0.0) || Double.isInfinite(sigma)) {
            throw new IllegalArgumentException(
                    "n must be at least 1 and sigma finite and above 0, but were " + n + " and " + sigma);
        }
        double alpha = 1.0 - level;
        double more = n * g + 1.0;
        return sigma * Math.sqrt(more / ((double) n * n * g) * Math.log(more / (alpha * alpha)));
    }

    /**
     * Tests the pairs so far, in the order hit.
     *
     * @param x the first of each pair, at least one number, all finite
     * @param y the second of each pair, as many
     * @return what is known after them
     * @throws IllegalArgumentException if the lengths differ, there is no pair or a number is not finite
     */
    public Result testPairs(double[] x, double[] y) {
        Sample d = Sample.differences("x", x, "y", y);
        List<Double> evidence = new ArrayList<>();
        List<Warning> warnings = new ArrayList<>();
        double largest = 0.0;
        double lower = Double.NEGATIVE_INFINITY;
        double upper = Double.POSITIVE_INFINITY;
        for (int n = 2; n <= d.size(); n++) {
            Moments m = Moments.of(Sample.differences("x", Arrays.copyOf(x, n), "y", Arrays.copyOf(y, n)));
            double error = Math.sqrt(m.meanVariance());
            double e = error > 0.0 ? evidence(m.mean() / error, n) : 1.0;
            evidence.add(e);
            largest = Math.max(largest, e);
            OptionalDouble critical = criticalT(n);
            if (error > 0.0 && critical.isPresent()) {
                lower = Math.max(lower, m.mean() - critical.getAsDouble() * error);
                upper = Math.min(upper, m.mean() + critical.getAsDouble() * error);
            }
        }
        if (d.size() < 2) {
            warnings.add(Warning.of("too-few-shots", "one pair says nothing about its error"));
        } else if (d.constant()) {
            warnings.add(Warning.of("no-spread", "all differences are equal, so there is no measure of error"));
        }
        if (lower > upper) {
            warnings.add(Warning.of(
                    "empty-interval",
                    "the limits of different looks exclude each other: something changed on the way"));
            lower = Double.NEGATIVE_INFINITY;
            upper = Double.POSITIVE_INFINITY;
        }
        double p = largest > 1.0 ? 1.0 / largest : 1.0;
        return new Result(
                "always-valid paired t test, normal mixture of effect variance " + g,
                Estimate.of(d.mean() + 0.0, Interval.of(lower, upper, level), unit),
                evidence,
                p,
                d.size(),
                warnings);
    }
}
