package dev.teeward.fitting.compare;

import dev.teeward.quantity.Unit;
import dev.teeward.quantity.Warning;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/**
 * All that is worked out for one metric before multiplicity is known. What no verdict rests on is worked out when it is first
 * asked for: it is a function of the samples alone, so it does not matter when, nor by which thread.
 */
final class MetricTests {
    /** From here on fewer random arrangements do: at this size they only confirm the t test. */
    private static final int LARGE = 1_000;

    private static final int FEW_RESAMPLES = 999;
    private static final int FEWER_RESAMPLES = 199;

    /** For each of the metrics that do not decide, all arrangements of 10 + 10 shots or 17 pairs, and not more. */
    private static final long SIDE_ENUMERATION = 200_000L;

    private final TestResult difference;
    private final Optional<TostTest.Result> equivalence;
    private final MetricSamples samples;
    private final double level;
    private final boolean primary;
    private volatile @Nullable Beside beside;

    private record Beside(
            TestResult exact,
            TestResult shift,
            TestResult effect,
            TestResult superiority,
            SpreadComparison spread,
            TestResult drift) {}

    private MetricTests(
            TestResult difference,
            Optional<TostTest.Result> equivalence,
            MetricSamples samples,
            double level,
            boolean primary) {
        this.difference = difference;
        this.equivalence = equivalence;
        this.samples = samples;
        this.level = level;
        this.primary = primary;
    }

    static MetricTests of(
            MetricSamples samples, double level, OptionalDouble margin, boolean declared, boolean primary) {
        Unit unit = samples.metric().siUnit();
        boolean paired = samples.paired();
        double[] x = paired ? samples.pairedFirst() : samples.firstValues();
        double[] y = paired ? samples.pairedSecond() : samples.secondValues();
        TestResult difference = paired
                ? PairedTTest.withDefaults().withLevel(level).withUnit(unit).test(x, y)
                : WelchTTest.withDefaults().withLevel(level).withUnit(unit).test(x, y);
        Optional<TostTest.Result> equivalence = margin.isEmpty()
                ? Optional.empty()
                : Optional.of(tost(margin.getAsDouble(), level, unit, paired, x, y));
        if (!declared) {
            equivalence = equivalence.map(tost -> tost.withWarning(Warning.of(
                    "margin-not-declared",
                    "no margin was declared for " + samples.metric().label() + ", so a common one was taken")));
        }
        return new MetricTests(difference.withExclusions(samples.exclusions()), equivalence, samples, level, primary);
    }

    TestResult difference() {
        return difference;
    }

    Optional<TostTest.Result> equivalence() {
        return equivalence;
    }

    TestResult exact() {
        return beside().exact();
    }

    TestResult shift() {
        return beside().shift();
    }

    TestResult effect() {
        return beside().effect();
    }

    TestResult superiority() {
        return beside().superiority();
    }

    SpreadComparison spread() {
        return beside().spread();
    }

    TestResult drift() {
        return beside().drift();
    }

    /** The same with everything worked out. */
    MetricTests whole() {
        beside();
        return this;
    }

    private Beside beside() {
        Beside known = beside;
        if (known == null) {
            known = workOut();
            beside = known;
        }
        return known;
    }

    private Beside workOut() {
        Unit unit = samples.metric().siUnit();
        boolean paired = samples.paired();
        double[] x = paired ? samples.pairedFirst() : samples.firstValues();
        double[] y = paired ? samples.pairedSecond() : samples.secondValues();
        HodgesLehmannEstimator shift =
                HodgesLehmannEstimator.withDefaults().withLevel(level).withUnit(unit);
        HedgesG effect = HedgesG.withDefaults().withLevel(level);
        ProbabilityOfSuperiority superiority =
                ProbabilityOfSuperiority.withDefaults().withLevel(level);
        SpreadRatio ratio = SpreadRatio.withDefaults().withLevel(level);
        return new Beside(
                paired ? signFlip(level, unit, primary, x, y) : permutation(level, unit, primary, x, y),
                paired ? shift.testPairs(x, y) : shift.test(x, y),
                paired ? effect.testPairs(x, y) : effect.test(x, y),
                paired ? superiority.testPairs(x, y) : superiority.test(x, y),
                new SpreadComparison(
                        paired ? ratio.testPairs(x, y) : ratio.test(x, y),
                        BrownForsytheTest.withDefaults()
                                .withLevel(level)
                                .withUnit(unit)
                                .test(samples.firstValues(), samples.secondValues())),
                Drift.withDefaults().withLevel(level).withUnit(unit).test(samples.orderedValues(), samples.order()));
    }

    private static TestResult signFlip(double level, Unit unit, boolean primary, double[] x, double[] y) {
        SignFlipTest test = SignFlipTest.withDefaults().withLevel(level).withUnit(unit);
        if (x.length + y.length > LARGE) {
            test = test.withResamples(primary ? FEW_RESAMPLES : FEWER_RESAMPLES);
        }
        return (primary ? test : test.withLargestEnumeration(SIDE_ENUMERATION)).test(x, y);
    }

    private static TestResult permutation(double level, Unit unit, boolean primary, double[] x, double[] y) {
        PermutationTest test = PermutationTest.withDefaults().withLevel(level).withUnit(unit);
        if (x.length + y.length > LARGE) {
            test = test.withResamples(primary ? FEW_RESAMPLES : FEWER_RESAMPLES);
        }
        return (primary ? test : test.withLargestEnumeration(SIDE_ENUMERATION)).test(x, y);
    }

    private static TostTest.Result tost(
            double margin, double level, Unit unit, boolean paired, double[] x, double[] y) {
        TostTest test = TostTest.withinMargin(margin).withAlpha(1.0 - level).withUnit(unit);
        return paired ? test.testPairs(x, y) : test.test(x, y);
    }
}
