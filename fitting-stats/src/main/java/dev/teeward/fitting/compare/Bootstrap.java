package dev.teeward.fitting.compare;

import dev.teeward.fitting.internal.Resamples;
import dev.teeward.fitting.internal.Sample;
import dev.teeward.quantity.Unit;
import java.util.Arrays;
import java.util.Objects;
import java.util.function.ToDoubleBiFunction;
import java.util.function.ToDoubleFunction;

/**
 * Bootstrap intervals of any statistic (Efron 1979): percentile, basic, studentised, and bias-corrected and accelerated (BCa;
 * Efron 1987), for one sample, two samples or pairs.
 *
 * <p>BCa takes the quantiles at Phi(z0 + (z0 + z) / (1 - a (z0 + z))): z0 is the normal quantile of the share of resamples
 * below the estimate, those equal to it counted half ({@link #withTiesBelow} counts none); a is sum U^3 / (6 (sum U^2)^1.5)
 * with U the deviations of the jackknife values, over all samples, each sample's scaled by (n_j - 1) / n_j. Quantiles
 * interpolate at 1 + (B - 1) alpha ({@link #withOuterQuantiles}: (B + 1) alpha). All n^n resamples are used when there are
 * no more of them than asked for (five shots have 3,125), random ones otherwise.
 *
 * <p>At ten shots every bootstrap is too narrow (nominal 95 % BCa holds 89 % for a mean, 83 % for a standard deviation,
 * simulated), so t, chi-square and exact intervals come first; below 20 shots there is the warning {@code narrow-interval}.
 * Use the logarithm for spreads. Other warnings: {@code no-spread} (all resamples give the same), {@code bca-undefined} (all
 * on one side: percentile limits instead), {@code no-acceleration} (the jackknife values are all equal: a = 0),
 * {@code undefined-resamples} (the statistic is not finite on some), {@code beyond-resamples} (a limit is the most extreme
 * resample), {@code too-few-shots}.
 *
 * <pre>{@code
 * Estimation e = Bootstrap.withDefaults().estimate(carry, v -> Arrays.stream(v).max().orElseThrow());
 * e.estimate().interval();
 * }</pre>
 *
 * <p>Immutable and thread-safe, as far as the statistic is. The arrays given to it are used again: it may change them but
 * must not keep them.
 */
public final class Bootstrap {
    private static final Bootstrap DEFAULTS =
            new Bootstrap(Options.DEFAULTS, Method.BCA, 9_999, 20_261_124L, false, false);

    private final Options options;
    private final Method method;
    private final int resamples;
    private final long seed;
    private final boolean tiesBelow;
    private final boolean outer;

    private Bootstrap(Options options, Method method, int resamples, long seed, boolean tiesBelow, boolean outer) {
        this.options = options;
        this.method = method;
        this.resamples = resamples;
        this.seed = seed;
        this.tiesBelow = tiesBelow;
        this.outer = outer;
    }

    /** How limits are taken from the resamples. */
    public enum Method {
        /** Bias-corrected and accelerated. */
        BCA,

        /** The quantiles themselves. */
        PERCENTILE,

        /** The quantiles mirrored at the estimate. */
        BASIC,

        /** The quantiles of (resample - estimate) / error, with the jackknife error in each resample (two layers). */
        STUDENTIZED
    }

    /**
     * BCa, two-sided, 95 %, 9,999 resamples.
     *
     * @return the default procedure
     */
    public static Bootstrap withDefaults() {
        return DEFAULTS;
    }

    /**
     * With another confidence level.
     *
     * @param level the level, in (0, 1)
     * @return a changed copy
     * @throws IllegalArgumentException if the level is not in (0, 1)
     */
    public Bootstrap withLevel(double level) {
        return new Bootstrap(options.withLevel(level), method, resamples, seed, tiesBelow, outer);
    }

    /**
     * With an interval open at one end.
     *
     * @param alternative two-sided unless changed; {@code GREATER} leaves the upper end open
     * @return a changed copy
     */
    public Bootstrap withAlternative(Alternative alternative) {
        return new Bootstrap(options.withAlternative(alternative), method, resamples, seed, tiesBelow, outer);
    }

    /**
     * With the unit of the statistic.
     *
     * @param unit the unit
     * @return a changed copy
     */
    public Bootstrap withUnit(Unit unit) {
        return new Bootstrap(options.withUnit(unit), method, resamples, seed, tiesBelow, outer);
    }

    /**
     * With another method.
     *
     * @param method the method
     * @return a changed copy
     */
    public Bootstrap withMethod(Method method) {
        return new Bootstrap(options, Objects.requireNonNull(method, "method"), resamples, seed, tiesBelow, outer);
    }

    /**
     * With another number of resamples.
     *
     * @param resamples how many, in [99, 1,000,000]
     * @return a changed copy
     * @throws IllegalArgumentException if the number lies outside
     */
    public Bootstrap withResamples(int resamples) {
        if (resamples < 99 || resamples > 1_000_000) {
            throw new IllegalArgumentException("resamples must be in [99, 1,000,000], but was " + resamples);
        }
        return new Bootstrap(options, method, resamples, seed, tiesBelow, outer);
    }

    /**
     * With another seed.
     *
     * @param seed the seed; the same seed gives the same result
     * @return a changed copy
     */
    public Bootstrap withSeed(long seed) {
        return new Bootstrap(options, method, resamples, seed, tiesBelow, outer);
    }

    /**
     * With resamples equal to the estimate counted as not below it, instead of half.
     *
     * @param wanted whether to; false unless changed
     * @return a changed copy
     */
    public Bootstrap withTiesBelow(boolean wanted) {
        return new Bootstrap(options, method, resamples, seed, wanted, outer);
    }

    /**
     * With quantiles at (B + 1) alpha instead of 1 + (B - 1) alpha.
     *
     * @param wanted whether to; false unless changed
     * @return a changed copy
     */
    public Bootstrap withOuterQuantiles(boolean wanted) {
        return new Bootstrap(options, method, resamples, seed, tiesBelow, wanted);
    }

    /**
     * Estimates a statistic of one sample.
     *
     * @param x the sample, at least one number, all finite
     * @param statistic the statistic, finite on the sample
     * @return the estimate with its interval
     * @throws IllegalArgumentException if the sample is empty, a number is not finite, or the statistic is not
     */
    public Estimation estimate(double[] x, ToDoubleFunction<double[]> statistic) {
        Sample.of("x", x);
        return run("one sample", values -> statistic.applyAsDouble(values[0]), true, x);
    }

    /**
     * Estimates a statistic of two independent samples, such as a difference of medians.
     *
     * @param x the first sample, at least one number, all finite
     * @param y the second sample, at least one number, all finite
     * @param statistic the statistic, finite on the samples
     * @return the estimate with its interval
     * @throws IllegalArgumentException if a sample is empty, a number is not finite, or the statistic is not
     */
    public Estimation estimate(double[] x, double[] y, ToDoubleBiFunction<double[], double[]> statistic) {
        Sample.of("x", x);
        Sample.of("y", y);
        return run("two samples", values -> statistic.applyAsDouble(values[0], values[1]), true, x, y);
    }

    /**
     * Estimates a statistic of pairs, which are drawn whole.
     *
     * @param x the first of each pair, at least one number, all finite
     * @param y the second of each pair, as many
     * @param statistic the statistic, finite on the pairs
     * @return the estimate with its interval
     * @throws IllegalArgumentException if lengths differ, there is no pair, a number is not finite, or the statistic is not
     */
    public Estimation estimatePairs(double[] x, double[] y, ToDoubleBiFunction<double[], double[]> statistic) {
        Sample.differences("x", x, "y", y);
        return run("pairs", values -> statistic.applyAsDouble(values[0], values[1]), false, x, y);
    }

    private Estimation run(String what, ToDoubleFunction<double[][]> statistic, boolean apart, double[]... samples) {
        double[][] copies = Arrays.stream(samples).map(double[]::clone).toArray(double[][]::new);
        double value = statistic.applyAsDouble(copies);
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException("the statistic must be finite on the data, but was " + value);
        }
        Resamples drawn = new Resamples(samples, apart, statistic);
        boolean all = drawn.ways(resamples) <= resamples;
        boolean layered = method == Method.STUDENTIZED;
        double[][] replicates = all ? drawn.all(layered) : drawn.random(resamples, seed, layered);
        BootstrapLimits limits = new BootstrapLimits(options, method, tiesBelow, outer);
        return limits.estimate(what, value, replicates, drawn.jackknife(), all, seed);
    }

    /** From resamples drawn elsewhere, one statistic each, and the jackknife values of each sample. */
    Estimation ofReplicates(double value, double[] replicates, double[][] jackknife) {
        return new BootstrapLimits(options, method, tiesBelow, outer)
                .estimate("given resamples", value, new double[][] {replicates}, jackknife, false, seed);
    }
}
