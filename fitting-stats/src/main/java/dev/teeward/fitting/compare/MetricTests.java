package dev.teeward.fitting.compare;

import dev.teeward.fitting.Metric;
import dev.teeward.quantity.Unit;
import dev.teeward.quantity.Warning;
import java.util.Optional;
import java.util.OptionalDouble;

/** All that is worked out for one metric before multiplicity is known. */
record MetricTests(
        TestResult difference,
        TestResult exact,
        TestResult shift,
        TestResult effect,
        TestResult superiority,
        SpreadComparison spread,
        Optional<TostTest.Result> equivalence,
        TestResult drift) {
    /** From here on fewer random arrangements do: at this size they only confirm the t test. */
    private static final int LARGE = 1_000;

    private static final int FEW_RESAMPLES = 999;
    private static final int FEWER_RESAMPLES = 199;

    /** For each of the metrics that do not decide, all arrangements of 10 + 10 shots or 17 pairs, and not more. */
    private static final long SIDE_ENUMERATION = 200_000L;

    static MetricTests of(MetricSamples samples, double level, OptionalDouble margin, boolean primary) {
        Unit unit = samples.metric().siUnit();
        double[] all1 = samples.firstValues();
        double[] all2 = samples.secondValues();
        boolean paired = samples.paired();
        double[] x = paired ? samples.pairedFirst() : all1;
        double[] y = paired ? samples.pairedSecond() : all2;
        TestResult difference = paired
                ? PairedTTest.withDefaults().withLevel(level).withUnit(unit).test(x, y)
                : WelchTTest.withDefaults().withLevel(level).withUnit(unit).test(x, y);
        difference = difference.withExclusions(samples.exclusions());
        HodgesLehmannEstimator shift =
                HodgesLehmannEstimator.withDefaults().withLevel(level).withUnit(unit);
        HedgesG effect = HedgesG.withDefaults().withLevel(level);
        ProbabilityOfSuperiority superiority =
                ProbabilityOfSuperiority.withDefaults().withLevel(level);
        SpreadRatio ratio = SpreadRatio.withDefaults().withLevel(level);
        return new MetricTests(
                difference,
                paired ? signFlip(level, unit, primary, x, y) : permutation(level, unit, primary, x, y),
                paired ? shift.testPairs(x, y) : shift.test(x, y),
                paired ? effect.testPairs(x, y) : effect.test(x, y),
                paired ? superiority.testPairs(x, y) : superiority.test(x, y),
                new SpreadComparison(
                        paired ? ratio.testPairs(x, y) : ratio.test(x, y),
                        BrownForsytheTest.withDefaults()
                                .withLevel(level)
                                .withUnit(unit)
                                .test(all1, all2)),
                margin.isEmpty()
                        ? Optional.empty()
                        : Optional.of(tost(margin.getAsDouble(), level, unit, paired, x, y)),
                Drift.withDefaults().withLevel(level).withUnit(unit).test(samples.orderedValues(), samples.order()));
    }

    /** Marks an equivalence test against a margin that nobody set. */
    MetricTests withMarginDeclared(boolean declared, Metric metric) {
        return declared
                ? this
                : new MetricTests(
                        difference,
                        exact,
                        shift,
                        effect,
                        superiority,
                        spread,
                        equivalence.map(tost -> tost.withWarning(Warning.of(
                                "margin-not-declared",
                                "no margin was declared for " + metric.label() + ", so a common one was taken"))),
                        drift);
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
