package dev.teeward.fitting.report;

import dev.teeward.fitting.UnitSystem;
import dev.teeward.fitting.compare.MetricComparison;
import dev.teeward.fitting.compare.OriginCounts;
import dev.teeward.fitting.compare.SpreadComparison;
import dev.teeward.fitting.compare.TostTest;
import dev.teeward.fitting.summary.SampleSummary;
import dev.teeward.quantity.Unit;
import org.jspecify.annotations.Nullable;

/** The numbers of one metric. */
final class MetricBranch {
    private MetricBranch() {}

    static Branch of(MetricComparison c, UnitSystem units) {
        Unit unit = c.metric().unit(units);
        return new Branch()
                .text("label", c.metric().label())
                .text("unit", unit.symbol())
                .word("group", c.metric().group())
                .word("sense", c.metric().sense())
                .truth("primary", c.primary())
                .truth("paired", c.paired())
                .count("pairs", c.pairs())
                .branch(
                        "origins",
                        new Branch()
                                .branch("first", origins(c.firstOrigins()))
                                .branch("second", origins(c.secondOrigins())))
                .branch("first", summary(c.first(), unit))
                .branch("second", summary(c.second(), unit))
                .test("difference", c.difference(), unit)
                .number("difference_sd", unit.fromSi(c.differenceSd()))
                .test("exact", c.exact(), unit)
                .number("least_p_percent", 100.0 * leastP(c))
                .test("shift", c.shift(), unit)
                .ratio("effect", c.effect())
                .ratio("superiority", c.superiority())
                .branch("spread", spread(c.spread()))
                .branch("equivalence", equivalence(c, unit))
                .number("adjusted_p", c.adjustedP())
                .word("verdict", c.verdict().verdict())
                .truth("trivially_different", c.verdict().differentButTrivial())
                .scaled("drift", c.drift(), unit.fromSi(1.0), (unit.symbol() + " per ten shots").strip())
                .warnings(c.warnings());
    }

    /**
     * The smallest two-sided p of the exact test: two of all arrangements, 2^n for n pairs and (n + m)! / (n! m!) for two
     * samples, since every arrangement has its mirror image.
     */
    static double leastP(MetricComparison c) {
        double ways = 1.0;
        if (c.paired()) {
            ways = Math.scalb(1.0, c.pairs());
        } else {
            int n = Math.min(c.firstValues().length, c.secondValues().length);
            int m = Math.max(c.firstValues().length, c.secondValues().length);
            for (int i = 1; i <= n && ways < 1e300; i++) {
                ways *= (m + i) / (double) i;
            }
        }
        return Math.min(1.0, 2.0 / ways);
    }

    private static Branch origins(OriginCounts counts) {
        return new Branch()
                .count("measured", counts.measured())
                .count("derived", counts.derived())
                .count("computed", counts.computed());
    }

    static Branch summary(SampleSummary.Result s, Unit unit) {
        return new Branch()
                .count("n", s.n())
                .estimate("mean", s.mean(), unit)
                .estimate("sd", s.standardDeviation(), unit)
                .estimate("median", s.median(), unit)
                .number("min", unit.fromSi(s.minimum()))
                .number("max", unit.fromSi(s.maximum()))
                .text("method", s.method())
                .warnings(s.warnings());
    }

    private static Branch spread(SpreadComparison s) {
        return new Branch()
                .ratio("ratio", s.ratio())
                .branch(
                        "test",
                        new Branch()
                                .text("statistic_name", s.brownForsythe().statisticName())
                                .number("statistic", s.brownForsythe().statistic())
                                .numbers("df", s.brownForsythe().degreesOfFreedom())
                                .number("p", s.brownForsythe().pValue())
                                .text("method", s.brownForsythe().method())
                                .warnings(s.brownForsythe().warnings()));
    }

    private static @Nullable Branch equivalence(MetricComparison c, Unit unit) {
        if (c.equivalence().isEmpty() || c.margin().isEmpty()) {
            return null;
        }
        TostTest.Result test = c.equivalence().get();
        return Branch.of(test.estimate(), unit)
                .number("margin", unit.fromSi(c.margin().getAsDouble()))
                .truth("declared", c.marginDeclared())
                .truth("equivalent", test.equivalent())
                .number("p", test.pValue())
                .number("adjusted_p", c.adjustedEquivalenceP().orElseThrow())
                .numbers("df", test.combined().degreesOfFreedom())
                .text("method", test.combined().method())
                .warnings(test.combined().warnings());
    }
}
