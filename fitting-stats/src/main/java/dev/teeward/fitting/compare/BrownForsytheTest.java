package dev.teeward.fitting.compare;

import dev.teeward.fitting.internal.Distributions;
import dev.teeward.fitting.internal.LeveneAnova;
import dev.teeward.fitting.internal.Sample;
import dev.teeward.quantity.Interval;
import dev.teeward.quantity.Unit;
import java.util.List;

/**
 * The Brown-Forsythe test (1974) of equal spread: an analysis of variance of the absolute deviations from each median.
 *
 * <p>Holds its level on heavy-tailed and skewed shots, where the F test rejects true nulls in 13 to 17 % of cases
 * (simulated, 10 + 10). It finds little: a spread ratio of 2 at 10 + 10 shots in 31 % of cases (simulated). The estimate is
 * the difference of the mean absolute deviations, first minus second, with the t interval that belongs to the test; for the
 * ratio of spreads use {@link SpreadRatio}.
 *
 * <pre>{@code
 * TestResult r = BrownForsytheTest.withDefaults().withUnit(LengthUnit.YARD).test(x, y);
 * r.statistic(); // F with 1 and n + m - 2 degrees of freedom
 * r.pValue();
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class BrownForsytheTest {
    private static final BrownForsytheTest DEFAULTS = new BrownForsytheTest(Options.DEFAULTS);

    private final Options options;

    private BrownForsytheTest(Options options) {
        this.options = options;
    }

    /**
     * 95 %.
     *
     * @return the default test
     */
    public static BrownForsytheTest withDefaults() {
        return DEFAULTS;
    }

    /**
     * With another confidence level.
     *
     * @param level the level, in (0, 1)
     * @return a changed copy
     * @throws IllegalArgumentException if the level is not in (0, 1)
     */
    public BrownForsytheTest withLevel(double level) {
        return new BrownForsytheTest(options.withLevel(level));
    }

    /**
     * With the unit of the numbers.
     *
     * @param unit the unit that the numbers are in; a pure number unless changed
     * @return a changed copy
     */
    public BrownForsytheTest withUnit(Unit unit) {
        return new BrownForsytheTest(options.withUnit(unit));
    }

    /**
     * Tests whether two samples are equally spread.
     *
     * @param x the first sample, at least one number, all finite
     * @param y the second sample, at least one number, all finite
     * @return the difference of the mean absolute deviations from the median, F, degrees of freedom and p
     * @throws IllegalArgumentException if a sample is empty or holds a number that is not finite
     */
    public TestResult test(double[] x, double[] y) {
        Sample first = Sample.of("x", x);
        Sample second = Sample.of("y", y);
        Moments.Pivot pivot = Moments.Pivot.pooled(
                Moments.of(first.absoluteDeviations(first.median())),
                Moments.of(second.absoluteDeviations(second.median())));
        TestResult.Draft draft = new TestResult.Draft(
                        "Brown-Forsythe test of equal spread about the median, two-sided", "F", options)
                .sizes(x.length, y.length);
        if (Math.min(x.length, y.length) < 3) {
            return draft.warn("too-few-shots", "fewer than three shots with a club say nothing about spread")
                    .unanswered(pivot.estimate());
        }
        if (!pivot.defined()) {
            return draft.warn("no-spread", "the absolute deviations do not vary, so the test cannot judge")
                    .unanswered(pivot.estimate());
        }
        LeveneAnova anova = LeveneAnova.of(List.of(first, second), true);
        double reach = Distributions.tQuantile(1.0 - options.tail(), pivot.degreesOfFreedom()) * pivot.standardError();
        return draft.statistic(anova.statistic())
                .degreesOfFreedom(anova.df1(), anova.df2())
                .pValue(anova.pValue())
                .estimate(
                        pivot.estimate(),
                        Interval.of(pivot.estimate() - reach, pivot.estimate() + reach, options.level()));
    }
}
