package dev.teeward.fitting.compare;

import dev.teeward.fitting.internal.Sample;

/**
 * The paired t test (Student 1908). The default for clubs whose shots alternate: pair k is the k-th shot with each club,
 * and what both shots share (wind, warm-up, mood) drops out of the difference.
 *
 * <p>t = (mean d - null) / (s_d / sqrt(n)) with n - 1 degrees of freedom, d = x - y.
 *
 * <p>With one shot in a sample, or without any spread, the difference is given with an unbounded interval, p = 1 and the
 * warning {@code too-few-shots} or {@code no-spread}: equal readings may be equal by rounding only.
 *
 * <pre>{@code
 * TestResult r = PairedTTest.withDefaults().withUnit(LengthUnit.YARD).test(x, y);
 * r.estimate().value(); // mean of x - y
 * r.pValue();
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class PairedTTest extends HypothesisTest<PairedTTest> {
    private static final PairedTTest DEFAULTS = new PairedTTest(Options.DEFAULTS);

    private PairedTTest(Options options) {
        super(options);
    }

    /**
     * Two-sided, 95 %, null value 0.
     *
     * @return the default test
     */
    public static PairedTTest withDefaults() {
        return DEFAULTS;
    }

    @Override
    PairedTTest copy(Options changed) {
        return new PairedTTest(changed);
    }

    /**
     * Tests the mean of the differences, first minus second.
     *
     * @param x the first of each pair, at least one number, all finite
     * @param y the second of each pair, as many
     * @return the mean difference with its t interval, t, degrees of freedom and p
     * @throws IllegalArgumentException if the lengths differ, there is no pair or a number is not finite
     */
    public TestResult test(double[] x, double[] y) {
        Sample d = Sample.differences("x", x, "y", y);
        TestResult.Draft draft = new TestResult.Draft(
                        "paired t test of the mean difference, "
                                + options.alternative().words(),
                        "t",
                        options)
                .sizes(d.size());
        return Moments.Pivot.paired(Moments.of(d)).result(draft, options);
    }
}
