package dev.teeward.fitting.compare;

import dev.teeward.fitting.internal.Distributions;
import dev.teeward.fitting.internal.Sample;
import dev.teeward.quantity.Interval;
import dev.teeward.quantity.RatioUnit;
import java.util.Objects;

/**
 * The ratio of two standard deviations, first over second, with its interval.
 *
 * <p>Two samples: by the F distribution (exact for normal shots; at 10 + 10 shots the 95 % interval is the estimate divided
 * and multiplied by 2.006), or by the jackknife of the log variance (Miller 1968), which widens with heavy tails. Pairs: by
 * Pitman and Morgan (1939), from the correlation of difference and sum, which allows for what both shots of a pair share;
 * needs normal shots.
 *
 * <pre>{@code
 * TestResult r = SpreadRatio.withDefaults().test(x, y);
 * r.estimate().value();    // s_x / s_y
 * r.estimate().interval();
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class SpreadRatio {
    private static final SpreadRatio DEFAULTS = new SpreadRatio(Options.DEFAULTS.withNullValue(1.0), Method.F);

    private final Options options;
    private final Method method;

    private SpreadRatio(Options options, Method method) {
        this.options = options;
        this.method = method;
    }

    /** How the interval of two samples is made. */
    public enum Method {
        /** From the F distribution: exact for normal shots, too narrow for heavy tails. */
        F,

        /** From Miller's jackknife of the log variance: approximate, follows the tails. */
        JACKKNIFE
    }

    /**
     * Two-sided, 95 %, by the F distribution.
     *
     * @return the default procedure
     */
    public static SpreadRatio withDefaults() {
        return DEFAULTS;
    }

    /**
     * With another confidence level.
     *
     * @param level the level, in (0, 1)
     * @return a changed copy
     * @throws IllegalArgumentException if the level is not in (0, 1)
     */
    public SpreadRatio withLevel(double level) {
        return new SpreadRatio(options.withLevel(level), method);
    }

    /**
     * With another alternative; the ratio is tested against 1.
     *
     * @param alternative the alternative; two-sided unless changed
     * @return a changed copy
     */
    public SpreadRatio withAlternative(Alternative alternative) {
        return new SpreadRatio(options.withAlternative(alternative), method);
    }

    /**
     * With another method for two samples.
     *
     * @param other the method
     * @return a changed copy
     */
    public SpreadRatio withMethod(Method other) {
        return new SpreadRatio(options, Objects.requireNonNull(other, "other"));
    }

    /**
     * Two samples.
     *
     * @param x the first sample, at least one number, all finite
     * @param y the second sample, at least one number, all finite
     * @return the ratio of the standard deviations, its interval, F (or t), degrees of freedom and p
     * @throws IllegalArgumentException if a sample is empty or holds a number that is not finite
     */
    public TestResult test(double[] x, double[] y) {
        Sample first = Sample.of("x", x);
        Sample second = Sample.of("y", y);
        boolean byF = method == Method.F;
        TestResult.Draft draft = new TestResult.Draft(
                        "ratio of standard deviations by "
                                + (byF ? "the F distribution, " : "the jackknife of the log variance, ")
                                + options.alternative().words(),
                        byF ? "F" : "t",
                        options)
                .sizes(x.length, y.length);
        if (!usable(draft, first, second, byF ? 2 : 3)) {
            return draft.estimate(1.0, Interval.of(0.0, Double.POSITIVE_INFINITY, options.level()), RatioUnit.ONE);
        }
        return byF ? byF(draft, first, second) : byJackknife(draft, first, second);
    }

    private static boolean usable(TestResult.Draft draft, Sample x, Sample y, int least) {
        if (Math.min(x.size(), y.size()) < least) {
            draft.warn("too-few-shots", "too few shots for a ratio of spreads, so 1 stands with no limits");
            return false;
        }
        if (x.constant() || y.constant()) {
            draft.warn("no-spread", "a club shows no spread at all, so 1 stands with no limits");
            return false;
        }
        return true;
    }

    private TestResult byF(TestResult.Draft draft, Sample x, Sample y) {
        double f = x.variance() / y.variance();
        double df1 = x.size() - 1.0;
        double df2 = y.size() - 1.0;
        double tail = options.tail();
        Interval interval =
                interval(f * Distributions.fQuantile(tail, df2, df1), f / Distributions.fQuantile(tail, df1, df2));
        return draft.statistic(f)
                .degreesOfFreedom(df1, df2)
                .pValue(options.alternative()
                        .pValue(Distributions.fUpperTail(f, df1, df2), Distributions.fCdf(f, df1, df2)))
                .estimate(Math.sqrt(f), interval, RatioUnit.ONE);
    }

    private TestResult byJackknife(TestResult.Draft draft, Sample x, Sample y) {
        double[] px = pseudoValues(x);
        double[] py = pseudoValues(y);
        double ratio = x.standardDeviation() / y.standardDeviation();
        if (px.length == 0 || py.length == 0) {
            return draft.warn("no-spread", "without one of its shots a club shows no spread, so there are no limits")
                    .estimate(ratio, Interval.of(0.0, Double.POSITIVE_INFINITY, options.level()), RatioUnit.ONE);
        }
        Moments.Pivot pivot = Moments.Pivot.welch(Moments.of(Sample.of("x", px)), Moments.of(Sample.of("y", py)));
        double t = pivot.t(0.0);
        double df = pivot.degreesOfFreedom();
        double reach = Distributions.tQuantile(1.0 - options.tail(), df) * pivot.standardError();
        return draft.statistic(t)
                .degreesOfFreedom(df)
                .pValue(options.alternative().pValue(Distributions.tUpperTail(t, df), Distributions.tUpperTail(-t, df)))
                .estimate(
                        Math.exp(0.5 * pivot.estimate()),
                        interval(Math.exp(pivot.estimate() - reach), Math.exp(pivot.estimate() + reach)),
                        RatioUnit.ONE);
    }

    /** n ln s^2 - (n-1) ln s^2 without each shot; empty if that leaves no spread somewhere. */
    private static double[] pseudoValues(Sample sample) {
        int n = sample.size();
        double squares = (n - 1) * sample.variance();
        double[] pseudo = new double[n];
        for (int i = 0; i < n; i++) {
            double d = sample.value(i) - sample.mean();
            double without = (squares - d * d * n / (n - 1.0)) / (n - 2.0);
            if (!(without > 1e-12 * sample.variance())) {
                return new double[0];
            }
            pseudo[i] = n * Math.log(sample.variance()) - (n - 1) * Math.log(without);
        }
        return pseudo;
    }

    /**
     * Pairs, by Pitman and Morgan.
     *
     * @param x the first of each pair, at least one number, all finite
     * @param y the second of each pair, as many
     * @return the ratio of the standard deviations, its interval, t of the correlation of difference and sum, n - 2 degrees
     *     of freedom and p
     * @throws IllegalArgumentException if the lengths differ, there is no pair or a number is not finite
     */
    public TestResult testPairs(double[] x, double[] y) {
        Sample first = Sample.of("x", x);
        Sample second = Sample.of("y", y);
        Sample difference = Sample.differences("x", x, "y", y);
        double df = x.length - 2.0;
        TestResult.Draft draft = new TestResult.Draft(
                        "ratio of standard deviations of pairs by Pitman and Morgan, "
                                + options.alternative().words(),
                        "t",
                        options)
                .sizes(x.length);
        if (!usable(draft, first, second, 3)) {
            return draft.estimate(1.0, Interval.of(0.0, Double.POSITIVE_INFINITY, options.level()), RatioUnit.ONE);
        }
        double f = first.variance() / second.variance();
        double r = correlation(first, second);
        double unexplained = (1.0 - r) * (1.0 + r);
        if (difference.constant() || !(unexplained > 1e-14)) {
            return draft.warn("no-spread", "the two shots of a pair move exactly together, so the test cannot judge")
                    .estimate(Math.sqrt(f), Interval.of(0.0, Double.POSITIVE_INFINITY, options.level()), RatioUnit.ONE);
        }
        double t = (f - 1.0) * Math.sqrt(df) / Math.sqrt(4.0 * f * unexplained);
        double quantile = Distributions.tQuantile(1.0 - options.tail(), df);
        double k = 1.0 + 2.0 * unexplained * quantile * quantile / df;
        double stretch = k + Math.sqrt(k * k - 1.0);
        return draft.statistic(t)
                .degreesOfFreedom(df)
                .pValue(options.alternative().pValue(Distributions.tUpperTail(t, df), Distributions.tUpperTail(-t, df)))
                .estimate(Math.sqrt(f), interval(f / stretch, f * stretch), RatioUnit.ONE);
    }

    private static double correlation(Sample x, Sample y) {
        double products = 0.0;
        for (int i = 0; i < x.size(); i++) {
            products += (x.value(i) - x.mean()) * (y.value(i) - y.mean());
        }
        double r = products / ((x.size() - 1) * x.standardDeviation() * y.standardDeviation());
        return Math.max(-1.0, Math.min(1.0, r));
    }

    /** From limits of the ratio of variances; a ratio has 0 where a difference has minus infinity. */
    private Interval interval(double lower, double upper) {
        return Interval.of(
                options.alternative() == Alternative.LESS ? 0.0 : Math.sqrt(lower),
                options.alternative() == Alternative.GREATER ? Double.POSITIVE_INFINITY : Math.sqrt(upper),
                options.level());
    }
}
