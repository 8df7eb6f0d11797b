package dev.teeward.fitting.compare;

import dev.teeward.fitting.internal.Distributions;
import dev.teeward.fitting.internal.Sample;
import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.Unit;
import dev.teeward.quantity.Warning;

/**
 * Two one-sided t tests (Schuirmann 1987): is the difference surely smaller than what matters?
 *
 * <p>Equivalent at alpha when both p are at most alpha, which is when the interval at level 1 - 2 alpha (90 % for 5 %) lies
 * inside the margin. The margin is in the unit of the shots and set before them. Not significant is not the same as
 * equivalent, and at 10 shots a club a margin of one standard deviation is reached in 39 % of sessions even when there is no
 * difference at all (pooled, exact); when the interval is wider than the margin allows, no data with this spread could have
 * shown equivalence, and the warning {@code margin-out-of-reach} says so.
 *
 * <pre>{@code
 * TostTest.Result r = TostTest.withinMargin(5.0).withUnit(LengthUnit.YARD).testPairs(x, y);
 * r.equivalent(); // the mean difference is between -5 and 5 yd
 * r.pValue();     // the larger of the two
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class TostTest {
    private final double lower;
    private final double upper;
    private final double alpha;
    private final Options options;

    private TostTest(double lower, double upper, double alpha, Options options) {
        this.lower = lower;
        this.upper = upper;
        this.alpha = alpha;
        this.options = options;
    }

    /**
     * Equivalence within a symmetric margin, alpha 0.05.
     *
     * @param margin the largest difference that does not matter, above 0
     * @return the test
     * @throws IllegalArgumentException if the margin is not finite and above 0
     */
    public static TostTest withinMargin(double margin) {
        if (!(margin > 0.0)) {
            throw new IllegalArgumentException("margin must be above 0, but was " + margin);
        }
        return between(-margin, margin);
    }

    /**
     * Equivalence between two bounds, alpha 0.05.
     *
     * @param lower the lower bound of what does not matter
     * @param upper the upper bound, above the lower
     * @return the test
     * @throws IllegalArgumentException if the bounds are not finite and in order
     */
    public static TostTest between(double lower, double upper) {
        if (!(lower < upper) || Double.isInfinite(lower) || Double.isInfinite(upper)) {
            throw new IllegalArgumentException(
                    "bounds must be finite with lower < upper, but were " + lower + " and " + upper);
        }
        return new TostTest(lower, upper, 0.05, Options.DEFAULTS);
    }

    /**
     * With another significance level.
     *
     * @param level the level of each one-sided test, in (0, 0.5)
     * @return a changed copy
     * @throws IllegalArgumentException if the level is not in (0, 0.5)
     */
    public TostTest withAlpha(double level) {
        if (!(level > 0.0 && level < 0.5)) {
            throw new IllegalArgumentException("alpha must be in (0, 0.5), but was " + level);
        }
        return new TostTest(lower, upper, level, options);
    }

    /**
     * With the unit of the numbers and of the margin.
     *
     * @param unit the unit; a pure number unless changed
     * @return a changed copy
     */
    public TostTest withUnit(Unit unit) {
        return new TostTest(lower, upper, alpha, options.withUnit(unit));
    }

    /**
     * Tests two samples of unequal spread (Welch).
     *
     * @param x the first sample, at least one number, all finite
     * @param y the second sample, at least one number, all finite
     * @return both one-sided tests and the verdict
     * @throws IllegalArgumentException if a sample is empty or holds a number that is not finite
     */
    public Result test(double[] x, double[] y) {
        return test(Moments.of(Sample.of("x", x)), Moments.of(Sample.of("y", y)));
    }

    Result test(Moments x, Moments y) {
        return finish("Welch", Moments.Pivot.welch(x, y), x.size(), y.size());
    }

    /**
     * Tests pairs.
     *
     * @param x the first of each pair, at least one number, all finite
     * @param y the second of each pair, as many
     * @return both one-sided tests and the verdict
     * @throws IllegalArgumentException if the lengths differ, there is no pair or a number is not finite
     */
    public Result testPairs(double[] x, double[] y) {
        Sample d = Sample.differences("x", x, "y", y);
        return finish("paired", Moments.Pivot.paired(Moments.of(d)), d.size());
    }

    private Result finish(String kind, Moments.Pivot pivot, int... sizes) {
        TestResult above = side(kind, pivot, lower, Alternative.GREATER, sizes);
        TestResult below = side(kind, pivot, upper, Alternative.LESS, sizes);
        TestResult.Draft draft = new TestResult.Draft(
                        "two one-sided " + kind + " t tests of equivalence", "t", options.withLevel(1.0 - 2.0 * alpha))
                .sizes(sizes);
        if (!pivot.defined()) {
            above.warnings().forEach(w -> draft.warn(w.code(), w.message()));
            return new Result(above, below, draft.unanswered(pivot.estimate()), lower, upper);
        }
        double df = pivot.degreesOfFreedom();
        double reach = Distributions.tQuantile(1.0 - alpha, df) * pivot.standardError();
        if (2.0 * reach >= upper - lower) {
            draft.warn(
                    "margin-out-of-reach",
                    "the interval is wider than the margin, so these shots could not have shown equivalence");
        }
        TestResult weaker = above.pValue() >= below.pValue() ? above : below;
        TestResult combined = draft.statistic(weaker.statistic().orElse(0.0))
                .degreesOfFreedom(df)
                .pValue(weaker.pValue())
                .estimate(
                        pivot.estimate(),
                        options.withLevel(1.0 - 2.0 * alpha)
                                .interval(pivot.estimate() - reach, pivot.estimate() + reach));
        return new Result(above, below, combined, lower, upper);
    }

    private TestResult side(String kind, Moments.Pivot pivot, double bound, Alternative alternative, int... sizes) {
        Options oneSided =
                options.withLevel(1.0 - alpha).withAlternative(alternative).withNullValue(bound);
        TestResult.Draft draft = new TestResult.Draft(
                        kind + " t test against one bound of the margin, " + alternative.words(), "t", oneSided)
                .sizes(sizes);
        return pivot.result(draft, oneSided);
    }

    /**
     * Both one-sided tests together.
     *
     * <p>Immutable and thread-safe.
     */
    public static final class Result {
        private final TestResult aboveLower;
        private final TestResult belowUpper;
        private final TestResult combined;
        private final double lower;
        private final double upper;

        private Result(TestResult aboveLower, TestResult belowUpper, TestResult combined, double lower, double upper) {
            this.aboveLower = aboveLower;
            this.belowUpper = belowUpper;
            this.combined = combined;
            this.lower = lower;
            this.upper = upper;
        }

        Result withWarning(Warning warning) {
            return new Result(aboveLower, belowUpper, combined.withWarning(warning), lower, upper);
        }

        /**
         * The test that the difference is above the lower bound.
         *
         * @return its result
         */
        public TestResult aboveLower() {
            return aboveLower;
        }

        /**
         * The test that the difference is below the upper bound.
         *
         * @return its result
         */
        public TestResult belowUpper() {
            return belowUpper;
        }

        /**
         * Both as one result: the larger p with its t, and the interval at level 1 - 2 alpha.
         *
         * @return the result
         */
        public TestResult combined() {
            return combined;
        }

        /**
         * The difference, first minus second, with its interval at level 1 - 2 alpha.
         *
         * @return the estimate
         */
        public Estimate estimate() {
            return combined.estimate();
        }

        /**
         * The larger of the two p.
         *
         * @return in [0, 1]
         */
        public double pValue() {
            return combined.pValue();
        }

        /**
         * Whether the interval at level 1 - 2 alpha lies inside the margin.
         *
         * @return true if the clubs are practically the same
         */
        public boolean equivalent() {
            return estimate().interval().bounded()
                    && estimate().interval().lower() > lower
                    && estimate().interval().upper() < upper;
        }

        /**
         * The lower bound of the margin.
         *
         * @return the bound, in the unit of the estimate
         */
        public double lower() {
            return lower;
        }

        /**
         * The upper bound of the margin.
         *
         * @return the bound, in the unit of the estimate
         */
        public double upper() {
            return upper;
        }
    }
}
