package dev.teeward.fitting.compare;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.internal.Sample;
import dev.teeward.fitting.summary.SampleSummary;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/**
 * One metric of two clubs compared: difference, exact companion, effect, spread, equivalence and verdict. All numbers are in
 * the SI unit of the metric; differences are first minus second.
 *
 * <p>Difference, shift, effect, superiority and equivalence are of the pairs when {@link #paired()}, of all used shots
 * otherwise. The verdict calls a metric different by its {@link #adjustedP()}: the primary metric, declared beforehand, by
 * its own p, any other by Holm over all others. Equivalence is called in the same way, by {@link #adjustedEquivalenceP()}.
 *
 * <pre>{@code
 * MetricComparison carry = result.find(Metric.CARRY).orElseThrow();
 * carry.difference().estimate().convertTo(LengthUnit.YARD); // with its interval
 * carry.verdict().verdict();                                // DIFFERENT, PRACTICALLY_THE_SAME or UNDECIDED
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class MetricComparison {
    private final MetricSamples samples;
    private final MetricTests tests;
    private final boolean primary;
    private final double adjustedP;
    private final OptionalDouble adjustedEquivalenceP;
    private final OptionalDouble margin;
    private final boolean marginDeclared;
    private final double level;
    private volatile SampleSummary.@Nullable Result first; // worked out when asked for
    private volatile SampleSummary.@Nullable Result second;
    private final OriginCounts firstOrigins;
    private final OriginCounts secondOrigins;

    MetricComparison(
            MetricSamples samples,
            MetricTests tests,
            boolean primary,
            double adjustedP,
            OptionalDouble adjustedEquivalenceP,
            PracticalMargins margins,
            double level) {
        this.samples = samples;
        this.tests = tests;
        this.primary = primary;
        this.adjustedP = adjustedP;
        this.adjustedEquivalenceP = adjustedEquivalenceP;
        this.margin = margins.of(samples.metric());
        this.marginDeclared = margins.declared(samples.metric());
        this.level = level;
        this.firstOrigins = samples.firstOrigins();
        this.secondOrigins = samples.secondOrigins();
    }

    /**
     * Which metric.
     *
     * @return the metric
     */
    public Metric metric() {
        return samples.metric();
    }

    /**
     * Whether this is the metric that decides.
     *
     * @return true for one metric of a result
     */
    public boolean primary() {
        return primary;
    }

    /**
     * Whether this is one of the questions that are asked: all are that were measured at least once with either club, or
     * follow from measured readings by definition, and the one that decides. What the flight model worked out for every shot
     * says nothing that the launch does not say, so it is compared but not counted among the questions.
     *
     * @return false if every reading is computed, except for the metric that decides
     */
    public boolean inFamily() {
        return primary || !workedOut(samples);
    }

    static boolean workedOut(MetricSamples samples) {
        OriginCounts a = samples.firstOrigins();
        OriginCounts b = samples.secondOrigins();
        return a.computed() + b.computed() == a.total() + b.total();
    }

    /**
     * Whether the pairs were compared.
     *
     * @return true for pairs, false for two samples
     */
    public boolean paired() {
        return samples.paired();
    }

    /**
     * How many pairs have the metric with both clubs.
     *
     * @return the number, whether or not pairs were compared
     */
    public int pairs() {
        return samples.pairedFirst().length;
    }

    /**
     * The summary of the first club, of all its used shots with this metric.
     *
     * @return the summary [SI]
     */
    public SampleSummary.Result first() {
        SampleSummary.Result known = first;
        if (known == null) {
            known = summary(samples.firstValues());
            first = known;
        }
        return known;
    }

    /**
     * The summary of the second club, of all its used shots with this metric.
     *
     * @return the summary [SI]
     */
    public SampleSummary.Result second() {
        SampleSummary.Result known = second;
        if (known == null) {
            known = summary(samples.secondValues());
            second = known;
        }
        return known;
    }

    private SampleSummary.Result summary(double[] values) {
        return SampleSummary.withDefaults()
                .withLevel(level)
                .withUnit(metric().siUnit())
                .summarize(values);
    }

    /**
     * Where the numbers of the first club come from.
     *
     * @return how many were measured, derived, computed
     */
    public OriginCounts firstOrigins() {
        return firstOrigins;
    }

    /**
     * Where the numbers of the second club come from.
     *
     * @return how many were measured, derived, computed
     */
    public OriginCounts secondOrigins() {
        return secondOrigins;
    }

    /**
     * The numbers of the first club in the order of hitting.
     *
     * @return a new array [SI]
     */
    public double[] firstValues() {
        return samples.firstValues().clone();
    }

    /**
     * The numbers of the second club in the order of hitting.
     *
     * @return a new array [SI]
     */
    public double[] secondValues() {
        return samples.secondValues().clone();
    }

    /**
     * The first of each complete pair.
     *
     * @return a new array, as long as {@link #pairs()} [SI]
     */
    public double[] pairedFirst() {
        return samples.pairedFirst().clone();
    }

    /**
     * The second of each complete pair.
     *
     * @return a new array, as long as {@link #pairs()} [SI]
     */
    public double[] pairedSecond() {
        return samples.pairedSecond().clone();
    }

    /**
     * The main test: {@link PairedTTest} or {@link WelchTTest}, with what was left out and why.
     *
     * @return the difference of the means, first minus second [SI]
     */
    public TestResult difference() {
        return tests.difference();
    }

    /**
     * Its companion without normal shots: {@link SignFlipTest} or studentised {@link PermutationTest}. All arrangements are
     * visited up to 3,000,000 for the primary metric and up to 200,000 (10 + 10 shots, 17 pairs) for each other; beyond that
     * random ones, and beyond 1,000 values only 999 and 199 of them. Its method says which.
     *
     * @return the difference of the means, first minus second [SI]
     */
    public TestResult exact() {
        return tests.exact();
    }

    /**
     * The Hodges-Lehmann shift, which single wild shots do not move.
     *
     * @return the shift, first minus second [SI]
     */
    public TestResult shift() {
        return tests.shift();
    }

    /**
     * Hedges' g: of the pairs by the spread of their differences, else by the pooled spread.
     *
     * @return the effect size, a pure number
     */
    public TestResult effect() {
        return tests.effect();
    }

    /**
     * How often the first club gives more than the second, ties counted half.
     *
     * @return the probability, a pure number
     */
    public TestResult superiority() {
        return tests.superiority();
    }

    /**
     * Which club repeats better.
     *
     * @return the ratio of the spreads and the Brown-Forsythe test
     */
    public SpreadComparison spread() {
        return tests.spread();
    }

    /**
     * The margin below which a difference does not matter.
     *
     * @return the margin [SI], or empty if there is none
     */
    public OptionalDouble margin() {
        return margin;
    }

    /**
     * Whether the margin was set, rather than taken from the defaults.
     *
     * @return true if it was set
     */
    public boolean marginDeclared() {
        return marginDeclared;
    }

    /**
     * The equivalence test against the margin, its alpha 1 minus the level of the result, not adjusted for the number of
     * metrics. Unless the margin was declared it has the warning {@code margin-not-declared}.
     *
     * @return both one-sided tests, or empty without a margin
     */
    public Optional<TostTest.Result> equivalence() {
        return tests.equivalence();
    }

    /**
     * The p by which a difference is called: the test's own for the primary metric, Holm's over all others for the others
     * (over the computed ones alone for those that are not {@link #inFamily()}).
     *
     * @return in [0, 1]
     */
    public double adjustedP() {
        return adjustedP;
    }

    /**
     * The p by which the clubs are called practically the same: the equivalence test's own for the primary metric; for the
     * others Holm's, over all others whose margin was declared if this one was, over all others whose margin was not if not.
     *
     * @return in [0, 1], or empty without a margin
     */
    public OptionalDouble adjustedEquivalenceP() {
        return adjustedEquivalenceP;
    }

    /**
     * What can be said: practically the same if {@link #equivalence()} says so and {@link #adjustedEquivalenceP()} is below
     * 1 minus the level, else different by {@link #adjustedP()}, or undecided.
     *
     * @return the verdict
     */
    public ThreeWayVerdict verdict() {
        boolean different = adjustedP <= 1.0 - level;
        boolean same = tests.equivalence().filter(TostTest.Result::equivalent).isPresent()
                && adjustedEquivalenceP.orElse(1.0) < 1.0 - level;
        if (same) {
            return new ThreeWayVerdict(Verdict.PRACTICALLY_THE_SAME, different);
        }
        return new ThreeWayVerdict(different ? Verdict.DIFFERENT : Verdict.UNDECIDED, false);
    }

    /**
     * The drift of the metric over the session, both clubs together.
     *
     * @return the slope per ten shots [SI per ten shots]
     */
    public TestResult drift() {
        return tests.drift();
    }

    /**
     * The standard deviation of the difference of one shot with each club, on which the number of further pairs depends: of
     * the pairs, else the root of the sum of both variances.
     *
     * @return the standard deviation [SI], possibly 0
     */
    public double differenceSd() {
        if (paired()) {
            return Sample.differences("first", pairedFirst(), "second", pairedSecond())
                    .standardDeviation();
        }
        return Math.sqrt(Sample.of("first", firstValues()).variance()
                + Sample.of("second", secondValues()).variance());
    }

    /**
     * What to know about this metric, besides the warnings of the single tests.
     *
     * @return the warnings, often none
     */
    public List<Warning> warnings() {
        List<Warning> warnings = new ArrayList<>();
        if (samples.pairsPassedOver()) {
            warnings.add(Warning.of(
                    "pairs-not-used",
                    "too few pairs have " + metric().label()
                            + " with both clubs, so all shots were compared without pairing"));
        }
        OriginCounts a = firstOrigins();
        OriginCounts b = secondOrigins();
        if (a.computed() + b.computed() > 0) {
            boolean all = a.computed() + b.computed() == a.total() + b.total();
            warnings.add(Warning.of(
                    all ? "computed-readings" : "mixed-origins",
                    (a.computed() + b.computed()) + " of " + (a.total() + b.total()) + " numbers of " + metric().label()
                            + " were computed by the flight model, the others were not"));
        }
        return List.copyOf(warnings);
    }

    @Override
    public String toString() {
        return metric().label() + ": " + verdict().verdict() + ", " + difference();
    }
}
