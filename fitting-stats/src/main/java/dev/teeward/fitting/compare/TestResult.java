package dev.teeward.fitting.compare;

import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.Interval;
import dev.teeward.quantity.Unit;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * What a test found: estimate with interval, statistic, degrees of freedom, p, the method actually used, how many values
 * were used or left out and why, and warnings.
 *
 * <p>Where the data cannot answer (one shot, no spread) the interval is unbounded, p is 1, the statistic is absent and a
 * warning says why; nothing is ever not-a-number.
 *
 * <pre>{@code
 * TestResult r = PairedTTest.withDefaults().test(x, y);
 * r.estimate().interval(); // of the mean difference, first minus second
 * r.pValue();              // in [0, 1]
 * r.method();              // "paired t test of the mean difference, two-sided"
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class TestResult {
    private final String method;
    private final Alternative alternative;
    private final double nullValue;
    private final Estimate estimate;
    private final String statisticName;
    private final OptionalDouble statistic;
    private final List<Double> degreesOfFreedom;
    private final double pValue;
    private final List<Integer> sampleSizes;
    private final List<Exclusion> exclusions;
    private final List<Warning> warnings;

    private TestResult(Draft draft, Estimate estimate) {
        this.method = draft.method;
        this.alternative = draft.options.alternative();
        this.nullValue = draft.options.nullValue();
        this.estimate = estimate;
        this.statisticName = draft.statisticName;
        this.statistic = draft.statistic;
        this.degreesOfFreedom = List.copyOf(draft.degreesOfFreedom);
        this.pValue = draft.pValue;
        this.sampleSizes = List.copyOf(draft.sampleSizes);
        this.exclusions = List.copyOf(draft.exclusions);
        this.warnings = List.copyOf(draft.warnings);
    }

    /**
     * The method actually used, in words, with what was exact and what was not.
     *
     * @return one phrase
     */
    public String method() {
        return method;
    }

    /**
     * The alternative.
     *
     * @return the direction looked in
     */
    public Alternative alternative() {
        return alternative;
    }

    /**
     * The null value.
     *
     * @return the value tested against, in the unit of the estimate
     */
    public double nullValue() {
        return nullValue;
    }

    /**
     * The estimate with its interval and its unit.
     *
     * @return the estimate, first minus second unless the test says otherwise
     */
    public Estimate estimate() {
        return estimate;
    }

    /**
     * The usual symbol or name of the statistic.
     *
     * @return such as {@code t}, {@code F}, {@code U} or {@code V}
     */
    public String statisticName() {
        return statisticName;
    }

    /**
     * The statistic.
     *
     * @return its value, or empty if the data do not define it
     */
    public OptionalDouble statistic() {
        return statistic;
    }

    /**
     * The degrees of freedom.
     *
     * @return none, one or two numbers
     */
    public List<Double> degreesOfFreedom() {
        return degreesOfFreedom;
    }

    /**
     * The p value.
     *
     * @return in [0, 1]; 1 if the data cannot answer
     */
    public double pValue() {
        return pValue;
    }

    /**
     * Whether p is at most 1 minus the level of the interval.
     *
     * @return true if so
     */
    public boolean significant() {
        return pValue <= 1.0 - estimate.interval().level();
    }

    /**
     * How many values were used.
     *
     * @return one number for pairs, one for each sample otherwise
     */
    public List<Integer> sampleSizes() {
        return sampleSizes;
    }

    /**
     * What was not used, and why.
     *
     * @return the exclusions, possibly none
     */
    public List<Exclusion> exclusions() {
        return exclusions;
    }

    /**
     * What to know before using this.
     *
     * @return the warnings, possibly none
     */
    public List<Warning> warnings() {
        return warnings;
    }

    /**
     * Whether there is a warning with a code.
     *
     * @param code the code
     * @return true if so
     */
    public boolean warns(String code) {
        return warnings.stream().anyMatch(w -> w.code().equals(code));
    }

    /**
     * With one more warning, such as one about the shot order.
     *
     * @param warning the warning
     * @return a changed copy
     */
    public TestResult withWarning(Warning warning) {
        return with(List.of(), List.of(warning));
    }

    /**
     * With one more exclusion, such as shots left out before the test.
     *
     * @param exclusion the exclusion
     * @return a changed copy
     */
    public TestResult withExclusion(Exclusion exclusion) {
        return withExclusions(List.of(exclusion));
    }

    TestResult withExclusions(List<Exclusion> more) {
        return more.isEmpty() ? this : with(more, List.of());
    }

    private TestResult with(List<Exclusion> moreExclusions, List<Warning> moreWarnings) {
        Draft draft = new Draft(
                method,
                statisticName,
                new Options(estimate.interval().level(), alternative, nullValue, estimate.unit()));
        draft.statistic = statistic;
        draft.degreesOfFreedom.addAll(degreesOfFreedom);
        draft.pValue = pValue;
        draft.sampleSizes.addAll(sampleSizes);
        draft.exclusions.addAll(exclusions);
        draft.warnings.addAll(warnings);
        draft.exclusions.addAll(moreExclusions);
        draft.warnings.addAll(moreWarnings);
        return new TestResult(draft, estimate);
    }

    /** Method, estimate, statistic and p. */
    @Override
    public String toString() {
        String value = statistic.isPresent() ? statisticName + " = " + statistic.getAsDouble() + ", " : "";
        return method + ": " + estimate + ", " + value + "p = " + pValue;
    }

    /** A result being put together. */
    static final class Draft {
        private final String method;
        private final String statisticName;
        private final Options options;
        private OptionalDouble statistic = OptionalDouble.empty();
        private final List<Double> degreesOfFreedom = new ArrayList<>();
        private double pValue = 1.0;
        private final List<Integer> sampleSizes = new ArrayList<>();
        private final List<Exclusion> exclusions = new ArrayList<>();
        private final List<Warning> warnings = new ArrayList<>();

        Draft(String method, String statisticName, Options options) {
            this.method = method;
            this.statisticName = statisticName;
            this.options = options;
        }

        Draft sizes(int... sizes) {
            for (int n : sizes) {
                sampleSizes.add(n);
            }
            return this;
        }

        int smallestSample() {
            return sampleSizes.stream().mapToInt(Integer::intValue).min().orElse(0);
        }

        Draft statistic(double value) {
            statistic = OptionalDouble.of(value + 0.0);
            return this;
        }

        Draft degreesOfFreedom(double... df) {
            for (double d : df) {
                degreesOfFreedom.add(d);
            }
            return this;
        }

        Draft pValue(double p) {
            pValue = Math.min(1.0, Math.max(0.0, p));
            return this;
        }

        Draft warn(String code, String message) {
            warnings.add(Warning.of(code, message));
            return this;
        }

        Draft exclude(int count, String reason) {
            if (count > 0) {
                exclusions.add(new Exclusion(count, reason));
            }
            return this;
        }

        TestResult estimate(double value, Interval interval) {
            return estimate(value, interval, options.unit());
        }

        TestResult estimate(double value, Interval interval, Unit unit) {
            return new TestResult(this, Estimate.of(value, interval, unit));
        }

        /** The answer of data that cannot answer. */
        TestResult unanswered(double value) {
            return estimate(value, Interval.unbounded(options.level()));
        }
    }
}
