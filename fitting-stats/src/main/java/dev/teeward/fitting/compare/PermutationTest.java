package dev.teeward.fitting.compare;

import dev.teeward.fitting.internal.ArrangementCounts;
import dev.teeward.fitting.internal.Exchanges;
import dev.teeward.fitting.internal.Sample;
import dev.teeward.quantity.Interval;
import dev.teeward.quantity.Warning;

/**
 * The two-sample permutation test (Pitman 1937), with Welch's t as the statistic unless asked otherwise (Janssen 1997;
 * Chung and Romano 2013).
 *
 * <p>All arrangements are visited up to 3,000,000 (11 + 11 shots have 705,432, 12 + 12 have 2,704,156); beyond that random
 * ones, 9,999 for up to 2,000 shots in all, then fewer, and at least 999, with p = (b + 1) / (m + 1) (Phipson and Smyth 2010).
 * {@link TestResult#method()} says which. Two-sided p counts arrangements whose statistic is at least as large in size.
 *
 * <p>The plain mean difference tests whether the distributions are equal and mistakes unequal spread for a difference when
 * the samples are of unequal size (18 % false alarms at a spread ratio of 3 with 10 and 5 shots, simulated); the
 * studentised statistic is right for means in large samples, and still too lively at five shots (8.6 %). With equal sizes
 * both give the same p.
 *
 * <p>The interval has equal tails: with a plain statistic or equal sizes its ends invert the two one-sided tests of the mean
 * difference exactly, as far as arrangements are enumerated. Two-sided p counts both tails by size instead, which with
 * unequal sizes and skewed shots is not twice the smaller tail, so that p and interval need not agree. For a studentised
 * statistic and unequal sizes the interval is estimate minus quantile times standard error, with the quantiles of the
 * permuted t after aligning the samples, and need not agree with p either. Where the two fall on different sides of the null
 * value there is the warning {@code interval-and-p-disagree}. Samples without any spread get no limits and the warning
 * {@code no-spread}.
 *
 * <pre>{@code
 * TestResult r = PermutationTest.withDefaults().withUnit(LengthUnit.YARD).test(x, y);
 * r.method(); // "studentised two-sample permutation test ..., exact: all 184,756 arrangements"
 * r.pValue();
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class PermutationTest extends HypothesisTest<PermutationTest> {
    private static final PermutationTest DEFAULTS = new PermutationTest(Options.DEFAULTS, Resampling.DEFAULTS, true);

    private final Resampling resampling;
    private final boolean studentized;

    private PermutationTest(Options options, Resampling resampling, boolean studentized) {
        super(options);
        this.resampling = resampling;
        this.studentized = studentized;
    }

    /**
     * Studentised, two-sided, 95 %, null value 0, exact up to 3,000,000 arrangements.
     *
     * @return the default test
     */
    public static PermutationTest withDefaults() {
        return DEFAULTS;
    }

    @Override
    PermutationTest copy(Options changed) {
        return new PermutationTest(changed, resampling, studentized);
    }

    /**
     * With or without dividing the mean difference by its standard error.
     *
     * @param wanted whether to studentise; true unless changed
     * @return a changed copy
     */
    public PermutationTest withStudentization(boolean wanted) {
        return new PermutationTest(options, resampling, wanted);
    }

    /**
     * With another number of random arrangements for samples too large to enumerate.
     *
     * @param resamples how many, at least 99
     * @return a changed copy
     * @throws IllegalArgumentException if there are fewer than 99
     */
    public PermutationTest withResamples(int resamples) {
        return new PermutationTest(options, resampling.withResamples(resamples), studentized);
    }

    /**
     * With another limit of enumeration: data with more arrangements get random ones.
     *
     * @param arrangements the limit, in [1, 3,000,000]
     * @return a changed copy
     * @throws IllegalArgumentException if it lies outside
     */
    public PermutationTest withLargestEnumeration(long arrangements) {
        return new PermutationTest(options, resampling.withLargestEnumeration(arrangements), studentized);
    }

    /**
     * With another seed for random arrangements.
     *
     * @param seed the seed; the same seed gives the same result
     * @return a changed copy
     */
    public PermutationTest withSeed(long seed) {
        return new PermutationTest(options, resampling.withSeed(seed), studentized);
    }

    /**
     * Tests the difference of the means, first minus second.
     *
     * @param x the first sample, at least one number, all finite
     * @param y the second sample, at least one number, all finite
     * @return the difference of the means, its interval and p
     * @throws IllegalArgumentException if a sample is empty or holds a number that is not finite
     */
    public TestResult test(double[] x, double[] y) {
        Sample first = Sample.of("x", x);
        Sample second = Sample.of("y", y);
        boolean tooSmall = Math.min(x.length, y.length) < 2;
        boolean welch = studentized && !tooSmall;
        Moments.Pivot pivot = Moments.Pivot.welch(Moments.of(first), Moments.of(second));
        ArrangementCounts counts = run(first.plus(-options.nullValue()), second, welch, true);
        TestResult.Draft draft = new TestResult.Draft(
                        (welch ? "studentised " : "") + "two-sample permutation test of the difference of means, "
                                + options.alternative().words() + ", " + resampling.words(counts),
                        welch ? "t" : "difference",
                        options)
                .sizes(x.length, y.length)
                .pValue(Resampling.pValue(counts, direction(x.length, y.length)));
        if (!welch) {
            draft.statistic(pivot.estimate());
        } else if (pivot.defined()) {
            draft.statistic(pivot.t(options.nullValue()));
        }
        if (studentized && tooSmall) {
            draft.warn(
                    "not-studentised", "a sample of one shot has no spread, so the plain mean difference was permuted");
        }
        boolean aligned = welch && x.length != y.length;
        Interval interval = aligned ? alignedInterval(first, second, pivot) : exchangedInterval(counts, x, y);
        if (!Double.isFinite(interval.lower()) && !Double.isFinite(interval.upper())) {
            draft.warn(
                    "too-few-shots", "there are too few arrangements, or too little spread, for limits at this level");
        }
        if (first.constant() && second.constant()) {
            return draft.warn(
                            "no-spread",
                            "no club shows any spread, so p is that of counting and no limits are given; record with"
                                    + " finer resolution")
                    .unanswered(pivot.estimate());
        }
        TestResult result = draft.estimate(pivot.estimate(), interval);
        boolean bounded = Double.isFinite(interval.lower()) || Double.isFinite(interval.upper());
        boolean holds = interval.contains(options.nullValue());
        return bounded && holds == result.significant()
                ? result.withWarning(Warning.of(
                        "interval-and-p-disagree",
                        "p and interval count arrangements differently and fall on two sides of the border here; take"
                                + " the more cautious one"))
                : result;
    }

    /** The p alone, without the work for the interval; for simulations. */
    double pValue(double[] x, double[] y) {
        ArrangementCounts counts = run(
                Sample.of("x", x).plus(-options.nullValue()),
                Sample.of("y", y),
                studentized && Math.min(x.length, y.length) >= 2,
                false);
        return Resampling.pValue(counts, direction(x.length, y.length));
    }

    /** The enumeration runs with the smaller sample first. */
    private Alternative direction(int n, int m) {
        return n <= m ? options.alternative() : options.alternative().reversed();
    }

    private ArrangementCounts run(Sample x, Sample y, boolean welch, boolean limits) {
        Sample small = x.size() <= y.size() ? x : y;
        Sample large = x.size() <= y.size() ? y : x;
        Exchanges exchanges = new Exchanges(small, large, welch);
        int all = x.size() + y.size();
        return Exchanges.ways(all, small.size(), resampling.largestEnumeration()) <= resampling.largestEnumeration()
                ? exchanges.enumerate(limits)
                : exchanges.sample(resampling.count(all), resampling.seed());
    }

    private Interval exchangedInterval(ArrangementCounts counts, double[] x, double[] y) {
        double lower = counts.lowerLimit(options.tail());
        double upper = counts.upperLimit(options.tail());
        return x.length <= y.length
                ? options.interval(options.nullValue() + lower, options.nullValue() + upper)
                : options.interval(options.nullValue() - upper, options.nullValue() - lower);
    }

    private Interval alignedInterval(Sample x, Sample y, Moments.Pivot pivot) {
        if (!pivot.defined()) {
            return Interval.unbounded(options.level());
        }
        boolean swapped = x.size() > y.size();
        Sample small = swapped ? y : x;
        Sample large = swapped ? x : y;
        Exchanges exchanges = new Exchanges(small.plus(large.mean() - small.mean()), large, true);
        int all = x.size() + y.size();
        double[] t =
                Exchanges.ways(all, small.size(), resampling.largestEnumeration()) <= resampling.largestEnumeration()
                        ? exchanges.statistics()
                        : exchanges.randomStatistics(resampling.count(all), resampling.seed());
        long k = (long) Math.floor(options.tail() * (t.length + 1));
        if (k < 1) {
            return Interval.unbounded(options.level());
        }
        double least = t[(int) k - 1];
        double most = t[(int) (t.length - k)];
        double se = pivot.standardError();
        return swapped
                ? options.interval(pivot.estimate() + least * se, pivot.estimate() + most * se)
                : options.interval(pivot.estimate() - most * se, pivot.estimate() - least * se);
    }
}
