package dev.teeward.fitting.compare;

import dev.teeward.fitting.internal.Distributions;
import dev.teeward.fitting.internal.NoncentralT;
import dev.teeward.fitting.internal.Sample;
import dev.teeward.quantity.Interval;
import dev.teeward.quantity.RatioUnit;
import java.util.Objects;

/**
 * The standardised mean difference with Hedges' small-sample correction (1981) and an interval by the noncentral t pivot.
 *
 * <p>g = J(df) d, with d the difference of means in standard deviations and J(m) = Gamma(m/2) / (sqrt(m/2) Gamma((m-1)/2)).
 * Two samples: d = (mean x - mean y) / s_pooled, df = n + m - 2. Pairs: say which one is meant; d_z divides by the standard
 * deviation of the differences and grows with good pairing, d_av divides by the average spread of the two clubs and
 * compares with unpaired studies. The interval is for the population effect size: the noncentralities at which the
 * observed t is just plausible, over the square root of the effective n. For d_av it is the interval of d_z rescaled, an
 * approximation. The test is the t test of a zero difference.
 *
 * <p>Report it last: golfers understand yards and "the longer one in 7 of 10". It assumes normal data, and equal spreads
 * for two samples.
 *
 * <pre>{@code
 * TestResult r = HedgesG.withDefaults().testPairs(x, y);
 * r.estimate().value();    // g_z = J(n - 1) d_z
 * r.estimate().interval(); // of the population effect size
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class HedgesG {
    private static final HedgesG DEFAULTS = new HedgesG(Options.DEFAULTS, Standardizer.DIFFERENCES);
    private static final double LARGEST_T = 1e3;

    private final Options options;
    private final Standardizer standardizer;

    private HedgesG(Options options, Standardizer standardizer) {
        this.options = options;
        this.standardizer = standardizer;
    }

    /** What a paired effect size divides by. */
    public enum Standardizer {
        /** The standard deviation of the differences: d_z. */
        DIFFERENCES,

        /** The root mean square of the two standard deviations: d_av. */
        AVERAGE_SPREAD
    }

    /**
     * 95 %, pairs by the spread of their differences.
     *
     * @return the default procedure
     */
    public static HedgesG withDefaults() {
        return DEFAULTS;
    }

    /**
     * With another confidence level.
     *
     * @param level the level, in (0, 1)
     * @return a changed copy
     * @throws IllegalArgumentException if the level is not in (0, 1)
     */
    public HedgesG withLevel(double level) {
        return new HedgesG(options.withLevel(level), standardizer);
    }

    /**
     * With another divisor for pairs.
     *
     * @param divisor what to divide by
     * @return a changed copy
     */
    public HedgesG withStandardizer(Standardizer divisor) {
        return new HedgesG(options, Objects.requireNonNull(divisor, "divisor"));
    }

    /**
     * The exact correction factor J.
     *
     * @param df the degrees of freedom, above 1
     * @return J, in (0, 1)
     * @throws IllegalArgumentException if the degrees of freedom are not above 1
     */
    public static double correction(double df) {
        if (!(df > 1.0)) {
            throw new IllegalArgumentException("df must be above 1, but was " + df);
        }
        // Gamma(h + 1/2) / Gamma(h) with h = (df - 1) / 2: recurrence up to large h, then the asymptotic series.
        double h = 0.5 * (df - 1.0);
        double factor = 1.0;
        while (h < 40.0) {
            factor *= h / (h + 0.5);
            h += 1.0;
        }
        double i = 1.0 / h;
        double series = 1.0
                + i
                        * (-1.0 / 8
                                + i
                                        * (1.0 / 128
                                                + i
                                                        * (5.0 / 1024
                                                                + i
                                                                        * (-21.0 / 32768
                                                                                + i
                                                                                        * (-399.0 / 262144
                                                                                                + i
                                                                                                        * (869.0
                                                                                                                / 4194304))))));
        return factor * Math.sqrt(h) * series / Math.sqrt(0.5 * df);
    }

    /**
     * The effect size of two samples, first minus second.
     *
     * @param x the first sample, at least one number, all finite
     * @param y the second sample, at least one number, all finite
     * @return g with its interval, t, degrees of freedom and p
     * @throws IllegalArgumentException if a sample is empty or holds a number that is not finite
     */
    public TestResult test(double[] x, double[] y) {
        Sample first = Sample.of("x", x);
        Sample second = Sample.of("y", y);
        Moments.Pivot pivot = Moments.Pivot.pooled(Moments.of(first), Moments.of(second));
        TestResult.Draft draft = new TestResult.Draft(
                        "Hedges g by the pooled spread, interval by the noncentral t pivot", "t", options)
                .sizes(x.length, y.length);
        return finish(draft, pivot, Math.sqrt(1.0 / x.length + 1.0 / y.length), 1.0);
    }

    /**
     * The effect size of pairs, first minus second.
     *
     * @param x the first of each pair, at least one number, all finite
     * @param y the second of each pair, as many
     * @return g with its interval, t, degrees of freedom and p
     * @throws IllegalArgumentException if the lengths differ, there is no pair or a number is not finite
     */
    public TestResult testPairs(double[] x, double[] y) {
        Sample d = Sample.differences("x", x, "y", y);
        double average = Math.sqrt(
                0.5 * (Sample.of("x", x).variance() + Sample.of("y", y).variance()));
        boolean byDifferences = standardizer == Standardizer.DIFFERENCES;
        TestResult.Draft draft = new TestResult.Draft(
                        byDifferences
                                ? "Hedges g of pairs by the spread of the differences (d_z), interval by the noncentral t pivot"
                                : "Hedges g of pairs by the average spread (d_av), interval rescaled from that of d_z",
                        "t",
                        options)
                .sizes(d.size());
        double rescale = byDifferences ? 1.0 : average > 0.0 ? d.standardDeviation() / average : 0.0;
        return finish(draft, Moments.Pivot.paired(Moments.of(d)), Math.sqrt(1.0 / d.size()), rescale);
    }

    private TestResult finish(TestResult.Draft draft, Moments.Pivot pivot, double perRoot, double rescale) {
        double df = pivot.degreesOfFreedom();
        if (!pivot.defined() || !(df > 1.0) || !(rescale > 0.0)) {
            return draft.warn(
                            "effect-undefined", "too few shots or no spread to express the difference in, so 0 stands")
                    .estimate(0.0, Interval.unbounded(options.level()), RatioUnit.ONE);
        }
        double t = pivot.t(0.0);
        double g = correction(df) * t * perRoot * rescale;
        double p = Alternative.TWO_SIDED.pValue(Distributions.tUpperTail(t, df), Distributions.tUpperTail(-t, df));
        draft.statistic(t).degreesOfFreedom(df).pValue(p);
        if (Math.abs(t) > LARGEST_T) {
            return draft.warn(
                            "effect-too-large",
                            "the spread is negligible beside the difference, so no interval is given")
                    .estimate(g, Interval.unbounded(options.level()), RatioUnit.ONE);
        }
        double tail = options.tail();
        double lower = NoncentralT.noncentrality(t, df, tail) * perRoot * rescale;
        double upper = NoncentralT.noncentrality(t, df, 1.0 - tail) * perRoot * rescale;
        return draft.estimate(g, Interval.of(lower, upper, options.level()), RatioUnit.ONE);
    }
}
