package dev.teeward.fitting.compare;

import dev.teeward.fitting.internal.Sample;

/**
 * Welch's t test: two samples of unequal spread (Welch 1947). The default for clubs whose shots were not paired.
 *
 * <p>t = (mean x - mean y - null) / sqrt(s_x^2 / n + s_y^2 / m), with Satterthwaite's degrees of freedom.
 *
 * <p>With one shot in a sample, or without any spread, the difference is given with an unbounded interval, p = 1 and the
 * warning {@code too-few-shots} or {@code no-spread}: equal readings may be equal by rounding only.
 *
 * <pre>{@code
 * TestResult r = WelchTTest.withDefaults().withUnit(LengthUnit.YARD).test(x, y);
 * r.estimate().interval(); // of mean x - mean y
 * r.pValue();
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class WelchTTest extends HypothesisTest<WelchTTest> {
    private static final WelchTTest DEFAULTS = new WelchTTest(Options.DEFAULTS);

    private WelchTTest(Options options) {
        super(options);
    }

    /**
     * Two-sided, 95 %, null value 0.
     *
     * @return the default test
     */
    public static WelchTTest withDefaults() {
        return DEFAULTS;
    }

    @Override
    WelchTTest copy(Options changed) {
        return new WelchTTest(changed);
    }

    /**
     * Tests the difference of the means, first minus second.
     *
     * @param x the first sample, at least one number, all finite
     * @param y the second sample, at least one number, all finite
     * @return the difference of the means with its t interval, t, degrees of freedom and p
     * @throws IllegalArgumentException if a sample is empty or holds a number that is not finite
     */
    public TestResult test(double[] x, double[] y) {
        return test(Moments.of(Sample.of("x", x)), Moments.of(Sample.of("y", y)));
    }

    TestResult test(Moments x, Moments y) {
        TestResult.Draft draft = new TestResult.Draft(
                        "Welch t test of the difference of means, "
                                + options.alternative().words(),
                        "t",
                        options)
                .sizes(x.size(), y.size());
        return Moments.Pivot.welch(x, y).result(draft, options);
    }
}
