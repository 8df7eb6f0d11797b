package dev.teeward.fitting.compare;

import dev.teeward.fitting.internal.Sample;

/**
 * Yuen's t test of trimmed means (1974): the mean without the longest and shortest fifth of each club's shots, so that a
 * mishit or two do not decide.
 *
 * <p>With g = floor(share n) shots trimmed at each end and h = n - 2 g left, the error of a trimmed mean is
 * sqrt((n - 1) s_w^2 / (h (h - 1))), s_w^2 the variance after the trimmed shots are moved to the nearest kept one
 * (winsorised); t has Welch's degrees of freedom with h for n. Pairs: the trimmed mean of the differences with h - 1
 * (Tukey and McLaughlin 1963). It answers a question about trimmed means, which for skewed shots are not the means.
 *
 * <p>With fewer than two shots left in a sample, or without spread among them, the difference is given with an unbounded
 * interval, p = 1 and the warning {@code too-few-shots} or {@code no-spread}.
 *
 * <pre>{@code
 * TestResult r = YuenTest.withDefaults().withUnit(LengthUnit.YARD).test(x, y);
 * r.estimate().interval(); // of the difference of the trimmed means
 * r.sampleSizes();         // what is left of each sample
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class YuenTest extends HypothesisTest<YuenTest> {
    private static final YuenTest DEFAULTS = new YuenTest(Options.DEFAULTS, 0.2);

    private final double share;

    private YuenTest(Options options, double share) {
        super(options);
        this.share = share;
    }

    /**
     * Two-sided, 95 %, null value 0, a fifth trimmed at each end.
     *
     * @return the default test
     */
    public static YuenTest withDefaults() {
        return DEFAULTS;
    }

    @Override
    YuenTest copy(Options changed) {
        return new YuenTest(changed, share);
    }

    /**
     * With another share to trim.
     *
     * @param share the share of the shots trimmed at each end, in [0, 0.5)
     * @return a changed copy
     * @throws IllegalArgumentException if the share is not in [0, 0.5)
     */
    public YuenTest withTrim(double share) {
        if (!(share >= 0.0 && share < 0.5)) {
            throw new IllegalArgumentException(
                    "trimmed share must be in [0, 0.5) at each end, but was " + share + "; a fifth is 0.2");
        }
        return new YuenTest(options, share);
    }

    /**
     * Tests the difference of the trimmed means, first minus second.
     *
     * @param x the first sample, at least one number, all finite
     * @param y the second sample, at least one number, all finite
     * @return the difference with its t interval, t, degrees of freedom and p
     * @throws IllegalArgumentException if a sample is empty or holds a number that is not finite
     */
    public TestResult test(double[] x, double[] y) {
        Sample first = Sample.of("x", x);
        Sample second = Sample.of("y", y);
        Moments a = trimmed(first);
        Moments b = trimmed(second);
        return Moments.Pivot.welch(a, b)
                .result(draft("Yuen t test of the difference of trimmed means", x.length + y.length, a, b), options);
    }

    /**
     * Tests the trimmed mean of the differences, first minus second.
     *
     * @param x the first of each pair, at least one number, all finite
     * @param y the second of each pair, as many
     * @return the trimmed mean difference with its t interval, t, degrees of freedom and p
     * @throws IllegalArgumentException if the lengths differ, there is no pair or a number is not finite
     */
    public TestResult testPairs(double[] x, double[] y) {
        Moments d = trimmed(Sample.differences("x", x, "y", y));
        return Moments.Pivot.paired(d)
                .result(draft("Yuen t test of the trimmed mean difference of pairs", x.length, d), options);
    }

    private TestResult.Draft draft(String what, int all, Moments... kept) {
        TestResult.Draft draft = new TestResult.Draft(
                what + ", " + Math.round(100.0 * share) + " % trimmed at each end, "
                        + options.alternative().words(),
                "t",
                options);
        int left = 0;
        for (Moments m : kept) {
            draft.sizes(m.size());
            left += m.size();
        }
        return draft.exclude(all - left, "trimmed at the ends, by the method");
    }

    /** The moments that make Welch's formulas Yuen's: h, the trimmed mean, and (n - 1) s_w^2 / (h - 1). */
    private Moments trimmed(Sample sample) {
        double[] sorted = sample.sorted();
        int n = sorted.length;
        int g = (int) Math.floor(share * n + 1e-9);
        int h = n - 2 * g;
        double mean = 0.0;
        for (int i = g; i < n - g; i++) {
            mean += sorted[i] / h;
        }
        double[] winsorized = sorted.clone();
        for (int i = 0; i < g; i++) {
            winsorized[i] = sorted[g];
            winsorized[n - 1 - i] = sorted[n - 1 - g];
        }
        double variance = Sample.of("winsorised", winsorized).variance();
        return new Moments(h, mean, h > 1 ? (n - 1.0) * variance / (h - 1.0) : 0.0);
    }
}
