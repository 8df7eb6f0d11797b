package dev.teeward.fitting.compare;

import dev.teeward.fitting.internal.ArrangementCounts;
import dev.teeward.fitting.internal.Sample;
import dev.teeward.fitting.internal.SignFlips;
import java.util.Locale;

/**
 * The sign-flip permutation test for pairs (Fisher 1935): if the clubs do not differ, each difference could as well have
 * had the other sign.
 *
 * <p>Statistic: the mean difference. All 2^n arrangements are visited up to n = 21 (2,097,152); beyond that 9,999 random
 * ones (fewer beyond 2,000 pairs, at least 999), with p = (b + 1) / (m + 1) (Phipson and Smyth 2010), so p is never 0. {@link TestResult#method()} says which. The
 * interval inverts the test: its ends are order statistics of the means of subsets of the differences (Hartigan 1969), and
 * it is unbounded when no arrangement can be extreme enough: five pairs cannot reach p = 0.05, the smallest is 2/32.
 * Equal differences leave no scatter to
 * draw limits from: then it is unbounded with the warning {@code no-spread}. Assumes that the differences are symmetric about the null value under the null hypothesis. Exact for any sample size.
 *
 * <pre>{@code
 * TestResult r = SignFlipTest.withDefaults().test(x, y);
 * r.method(); // "sign-flip permutation test of the mean difference, two-sided, exact: all 1,024 arrangements"
 * r.pValue();
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class SignFlipTest extends HypothesisTest<SignFlipTest> {
    private static final int LARGEST_ENUMERATION = 21;
    private static final SignFlipTest DEFAULTS = new SignFlipTest(Options.DEFAULTS, Resampling.DEFAULTS);

    private final Resampling resampling;

    private SignFlipTest(Options options, Resampling resampling) {
        super(options);
        this.resampling = resampling;
    }

    /**
     * Two-sided, 95 %, null value 0, exact up to 21 pairs, random arrangements beyond.
     *
     * @return the default test
     */
    public static SignFlipTest withDefaults() {
        return DEFAULTS;
    }

    @Override
    SignFlipTest copy(Options changed) {
        return new SignFlipTest(changed, resampling);
    }

    /**
     * With another number of random arrangements for samples too large to enumerate.
     *
     * @param resamples how many, at least 99
     * @return a changed copy
     * @throws IllegalArgumentException if there are fewer than 99
     */
    public SignFlipTest withResamples(int resamples) {
        return new SignFlipTest(options, resampling.withResamples(resamples));
    }

    /**
     * With another limit of enumeration: data with more arrangements get random ones.
     *
     * @param arrangements the limit, in [1, 3,000,000]
     * @return a changed copy
     * @throws IllegalArgumentException if it lies outside
     */
    public SignFlipTest withLargestEnumeration(long arrangements) {
        return new SignFlipTest(options, resampling.withLargestEnumeration(arrangements));
    }

    /**
     * With another seed for random arrangements.
     *
     * @param seed the seed; the same seed gives the same result
     * @return a changed copy
     */
    public SignFlipTest withSeed(long seed) {
        return new SignFlipTest(options, resampling.withSeed(seed));
    }

    /**
     * Tests the mean of the differences, first minus second.
     *
     * @param x the first of each pair, at least one number, all finite
     * @param y the second of each pair, as many
     * @return the mean difference, its interval and p
     * @throws IllegalArgumentException if the lengths differ, there is no pair or a number is not finite
     */
    public TestResult test(double[] x, double[] y) {
        Sample d = Sample.differences("x", x, "y", y);
        Sample shifted = d.plus(-options.nullValue());
        boolean exact = d.size() <= LARGEST_ENUMERATION && 1L << d.size() <= resampling.largestEnumeration();
        ArrangementCounts counts = exact
                ? SignFlips.enumerate(shifted, true)
                : SignFlips.sample(shifted, resampling.count(d.size()), resampling.seed());
        TestResult.Draft draft = new TestResult.Draft(
                        "sign-flip permutation test of the mean difference, "
                                + options.alternative().words() + ", " + resampling.words(counts),
                        "mean",
                        options)
                .sizes(d.size())
                .statistic(d.mean())
                .pValue(Resampling.pValue(counts, options.alternative()));
        double lower = options.nullValue() + counts.lowerLimit(options.tail());
        double upper = options.nullValue() + counts.upperLimit(options.tail());
        if (Double.isInfinite(lower)) {
            draft.warn(
                    "too-few-shots",
                    String.format(
                            Locale.ROOT,
                            "%d pairs have too few arrangements to reach significance at this level",
                            d.size()));
        }
        if (d.constant()) {
            return draft.warn(
                            "no-spread",
                            "all differences are equal, so p is that of counting and no limits are given; record with"
                                    + " finer resolution")
                    .unanswered(d.mean());
        }
        return draft.estimate(d.mean(), options.interval(lower, upper));
    }

    /** The p alone, without the work for the interval; for simulations. */
    double pValue(double[] x, double[] y) {
        Sample shifted = Sample.differences("x", x, "y", y).plus(-options.nullValue());
        return Resampling.pValue(SignFlips.enumerate(shifted, false), options.alternative());
    }
}
