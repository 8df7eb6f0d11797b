package dev.teeward.fitting.report;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.UnitSystem;
import dev.teeward.fitting.compare.HeadToHeadResult;
import dev.teeward.fitting.compare.TostTest;
import dev.teeward.fitting.explain.Agreement;
import dev.teeward.fitting.explain.Balance;
import dev.teeward.fitting.explain.ClubOrSwing;
import dev.teeward.fitting.explain.Explanation;
import dev.teeward.fitting.explain.FlightCounterfactual;
import dev.teeward.fitting.explain.InputShare;
import dev.teeward.fitting.explain.OutcomeShares;
import dev.teeward.fitting.explain.SwingSide;
import dev.teeward.fitting.explain.TotalAndDirect;
import dev.teeward.fitting.linear.Coefficient;
import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.Unit;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** The numbers of club or swing. */
final class ExplanationBranch {
    private final UnitSystem units;

    private ExplanationBranch(UnitSystem units) {
        this.units = units;
    }

    static Branch of(HeadToHeadResult result, Explanation explanation, UnitSystem units) {
        ExplanationBranch form = new ExplanationBranch(units);
        List<ClubOrSwing> answers = explanation.golferSide().stream()
                .flatMap(e -> ClubOrSwing.of(result, explanation, e.outcome()).stream())
                .toList();
        return new Branch()
                .branches("club_or_swing", Branch.each(answers, ExplanationBranch::answer))
                .branch("balance", form.balance(explanation.balance()))
                .branches("effects", Branch.each(explanation.effects(), form::effect))
                .branches("golfer_side", Branch.each(explanation.golferSide(), form::effect))
                .branch("flights", explanation.flights().map(form::flights).orElse(null))
                .branches("agreements", Branch.each(explanation.agreements(), form::agreement));
    }

    private static Branch answer(ClubOrSwing a) {
        return new Branch()
                .text("outcome", a.outcome().key())
                .word("answer", a.answer())
                .word("swing", a.swing())
                .word("club", a.club())
                .texts(
                        "swing_differs",
                        a.swingDiffers().stream().map(Metric::key).toList())
                .number("level", 1.0 - a.alpha())
                .warnings(a.warnings());
    }

    private Branch balance(Balance.Result b) {
        return new Branch()
                .text("golfer", b.side(SwingSide.GOLFER).map(Branch::word))
                .text("meeting", b.side(SwingSide.MEETING).map(Branch::word))
                .branches("inputs", Branch.each(b.inputs(), this::input))
                .texts("missing", b.missing().stream().map(Metric::key).toList())
                .warnings(b.warnings());
    }

    private Branch input(Balance.Input i) {
        Unit unit = i.metric().unit(units);
        Branch branch = new Branch()
                .text("metric", i.metric().key())
                .word("side", i.side())
                .test("difference", i.difference(), unit)
                .branch("equivalence", equivalence(i, unit))
                .number("adjusted_p", i.adjustedP())
                .word("verdict", i.verdict().verdict())
                .truth("trivially_different", i.verdict().differentButTrivial());
        return i.within().isPresent()
                ? branch.quantity("within", i.within().getAsDouble(), unit)
                : branch.nothing("within");
    }

    private static @Nullable Branch equivalence(Balance.Input i, Unit unit) {
        if (i.equivalence().isEmpty()) {
            return null;
        }
        TostTest.Result test = i.equivalence().get();
        return Branch.of(test.estimate(), unit)
                .number("margin", unit.fromSi(test.upper()))
                .truth("equivalent", test.equivalent())
                .number("p", test.pValue())
                .number("adjusted_p", i.adjustedEquivalenceP())
                .numbers("df", test.combined().degreesOfFreedom())
                .whole("n", test.combined().sampleSizes())
                .text("method", test.combined().method())
                .warnings(test.combined().warnings());
    }

    private Branch effect(TotalAndDirect.Result r) {
        Unit unit = r.outcome().unit(units);
        return new Branch()
                .text("outcome", r.outcome().key())
                .truth("paired", r.paired())
                .test("total", r.total(), unit)
                .branch("direct", coefficient(r.direct(), unit))
                .branch(
                        "direct_corrected",
                        r.corrected()
                                .map(c -> coefficient(c, unit).text("method", r.correctedMethod()))
                                .orElse(null))
                .texts(
                        "read_with_error",
                        r.readWithError().stream().map(Metric::key).toList())
                .branches("covariates", Branch.each(r.covariates(), m -> covariate(r, m, unit)))
                .whole("n", r.sampleSizes())
                .text("method", r.method())
                .exclusions(r.exclusions())
                .warnings(r.warnings());
    }

    private Branch covariate(TotalAndDirect.Result r, Metric metric, Unit unit) {
        Branch branch = new Branch().text("metric", metric.key());
        Optional.ofNullable(r.differences().get(metric))
                .ifPresent(d -> branch.test("difference", d, metric.unit(units)));
        Optional.ofNullable(r.explained().get(metric)).ifPresent(c -> branch.branch("part", coefficient(c, unit)));
        Optional.ofNullable(r.varianceInflation().get(metric)).ifPresent(v -> branch.number("variance_inflation", v));
        return branch;
    }

    private static Branch coefficient(Coefficient c, Unit unit) {
        return Branch.of(c.estimate(), unit).number("df", c.degreesOfFreedom()).number("p", c.pValue());
    }

    private Branch flights(FlightCounterfactual.Result f) {
        return new Branch()
                .texts("inputs", f.inputs().stream().map(Metric::key).toList())
                .truth("of_delivery", f.ofDelivery())
                .truth("paired", f.paired())
                .whole("n", f.sampleSizes())
                .branches("outcomes", Branch.each(f.outcomes(), this::outcome))
                .text("method", f.method())
                .exclusions(f.exclusions())
                .warnings(f.warnings());
    }

    private Branch outcome(OutcomeShares o) {
        Unit unit = o.outcome().unit(units);
        return new Branch()
                .text("outcome", o.outcome().key())
                .estimate("modelled", o.modelled(), unit)
                .estimate("measured", o.measured(), unit)
                .estimate("rest", o.rest(), unit)
                .branches("shares", Branch.each(o.shares(), s -> share(s, unit)));
    }

    private Branch share(InputShare s, Unit unit) {
        return new Branch()
                .text("input", s.input().key())
                .estimate("difference", s.difference(), s.input().unit(units))
                .estimate("share", s.share(), unit)
                .estimate(
                        "together",
                        Estimate.of(s.share().value(), s.together(), s.share().unit()),
                        unit)
                .estimate("lie", s.lie(), unit);
    }

    private Branch agreement(Agreement a) {
        Unit unit = a.outcome().unit(units);
        Branch branch = new Branch().text("outcome", a.outcome().key()).word("accord", a.accord());
        if (a.margin().isPresent()) {
            branch.quantity("margin", a.margin().getAsDouble(), unit);
        } else {
            branch.nothing("margin");
        }
        return branch.branches(
                        "inputs",
                        Branch.each(
                                a.inputs(),
                                i -> new Branch()
                                        .text("input", i.input().key())
                                        .estimate("by_flights", i.byFlights(), unit)
                                        .estimate("by_line", i.byLine(), unit)
                                        .estimate("apart", i.apart(), unit)
                                        .number("adjusted_p", i.adjustedP())
                                        .word("accord", i.accord())))
                .count("df", a.degreesOfFreedom())
                .text("method", a.method())
                .warnings(a.warnings());
    }
}
