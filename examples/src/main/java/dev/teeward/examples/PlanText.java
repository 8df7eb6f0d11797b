package dev.teeward.examples;

import dev.teeward.fitting.compare.SequentialTTest;
import dev.teeward.fitting.compare.Verdict;
import dev.teeward.fitting.plan.FittingPlan;
import dev.teeward.fitting.plan.PairByPair;
import dev.teeward.fitting.plan.Standing;
import dev.teeward.quantity.Interval;
import dev.teeward.quantity.Unit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalInt;
import org.jspecify.annotations.Nullable;

/** What {@code plan} says, in lines and as a tree of numbers. */
final class PlanText {
    private final Unit unit;
    private final Margin margin;
    private final String label;

    PlanText(Unit unit, Margin margin) {
        this.unit = unit;
        this.margin = margin;
        this.label = margin.metric().label();
    }

    List<String> before(FittingPlan.Result r, String order, int[] swings, double chance) {
        List<String> lines = new ArrayList<>();
        lines.add(text(
                "The margin is %s of %s; the differences within pairs spread by %s (standard deviation, %s).",
                amount(r.margin()),
                label,
                amount(r.spread().value()),
                r.spread().pairs().isPresent()
                        ? "from " + r.spread().pairs().getAsInt() + " pairs"
                        : "taken for known"));
        lines.add(text(
                "%d full swings: %d to warm up, %d kept for re-hits, at most %d pairs.",
                swings[0], swings[1], swings[2], r.mostPairs()));
        lines.add("Looking once, at the end: " + design(r, r.atTheEnd(), chance));
        lines.add("Looking after every pair: " + design(r, r.afterEveryPair(), chance));
        lines.add("Order: " + order + ".");
        lines.add("Which of the two, the metric and the margin are settled before the first shot.");
        return lines;
    }

    private String design(FittingPlan.Result r, FittingPlan.Design d, double chance) {
        String needed = d.pairs().isPresent() ? d.pairs().getAsInt() + " pairs" : "more than 200 pairs";
        String cap = r.withinCap(d) ? "" : ", which is more than the cap allows";
        return text("%s settle it with a chance of %.0f %% either way%s. ", needed, 100.0 * chance, cap)
                + text(
                        "With %d pairs, clubs that differ by the margin are found different in %.0f %% of sessions and"
                                + " clubs that do not differ are shown to be within it in %.0f %%; %s.",
                        r.mostPairs(),
                        100.0 * d.findsDifference(),
                        100.0 * d.showsSame(),
                        d.reachableMargin().isPresent()
                                ? "the margin in reach is "
                                        + amount(d.reachableMargin().getAsDouble())
                                : "no margin below 20 standard deviations is in reach");
    }

    List<String> during(PairByPair now, List<String> clubs, int swings, FittingPlan plan) {
        List<String> lines = new ArrayList<>();
        Standing standing = now.standing();
        lines.add(text(
                "%d whole pairs, %d of %d swings without warming up, %d re-hits.",
                now.pairs(), now.swings(), swings, now.reHits().size()));
        standing.look().ifPresent(look -> lines.add(difference(look, clubs)));
        lines.add(
                switch (standing.advice()) {
                    case SETTLED -> settled(standing);
                    case KEEP_GOING -> "Keep going: " + expected(standing);
                    case WILL_NOT_SETTLE -> "It will not settle at a sensible number of pairs: " + expected(standing);
                });
        if (standing.advice() == Standing.Advice.WILL_NOT_SETTLE && now.spread().isPresent()) {
            FittingPlan.Result r = plan.forMargin(margin.si(), now.spread().get());
            r.atTheEnd()
                    .reachableMargin()
                    .ifPresent(reach -> lines.add(text(
                            "Another session of %d pairs, looked at once at the end, can settle a margin of %s.",
                            r.mostPairs(), amount(reach))));
        }
        standing.warnings().forEach(warning -> lines.add("note: " + warning.message()));
        return lines;
    }

    private String difference(SequentialTTest.Result look, List<String> clubs) {
        Interval i = look.difference().interval();
        String interval = i.bounded()
                ? text(
                        "%.0f %% interval %+.1f to %+.1f",
                        100.0 * i.level(), unit.fromSi(i.lower()), unit.fromSi(i.upper()))
                : text("no %.0f %% interval yet", 100.0 * i.level());
        return text(
                "%s, %s less %s: %+.1f %s (%s, which may be read after every pair).",
                label, clubs.get(0), clubs.get(1), unit.fromSi(look.difference().value()), unit.symbol(), interval);
    }

    private String settled(Standing s) {
        return text(
                "Settled after %d pairs: the clubs %s.",
                s.settledAfter().orElseThrow(),
                s.verdict() == Verdict.DIFFERENT
                        ? "differ in " + label
                        : "are practically the same in " + label + ", within " + amount(margin.si()));
    }

    private static String expected(Standing s) {
        if (s.warnings().stream().anyMatch(warning -> warning.code().equals("clubs-in-blocks"))) {
            return s.advice() == Standing.Advice.KEEP_GOING
                    ? "in turn from now on, so that the pairs hit in blocks weigh little."
                    : "the clubs were hit in blocks; hit them in turn in another session.";
        }
        if (s.prediction().isEmpty()) {
            return s.advice() == Standing.Advice.KEEP_GOING
                    ? "too few pairs to tell how many more it takes."
                    : "the cap is reached.";
        }
        Standing.Prediction p = s.prediction().get();
        String more = p.central().isPresent()
                ? text(
                        "about %d more (%s to %s) settle it; ",
                        p.central().getAsInt(), number(p.low()), number(p.high()))
                : "";
        return text(
                "%sthe %d more pairs that the cap allows settle it with a chance of %.0f %%.",
                more, p.allowed(), 100.0 * p.chance());
    }

    private static String number(OptionalInt pairs) {
        return pairs.isPresent() ? String.valueOf(pairs.getAsInt()) : "more than allowed";
    }

    Map<String, @Nullable Object> tree(FittingPlan.Result r, List<String> order) {
        Map<String, @Nullable Object> tree = head();
        tree.put("sd", unit.fromSi(r.spread().value()));
        tree.put("sd_pairs", orNull(r.spread().pairs()));
        tree.put("most_pairs", r.mostPairs());
        tree.put("at_the_end", tree(r.atTheEnd()));
        tree.put("after_every_pair", tree(r.afterEveryPair()));
        tree.put("order", order);
        return tree;
    }

    private Map<String, @Nullable Object> tree(FittingPlan.Design d) {
        Map<String, @Nullable Object> tree = new LinkedHashMap<>();
        tree.put("pairs", orNull(d.pairs()));
        tree.put("finds_difference", d.findsDifference());
        tree.put("shows_same", d.showsSame());
        tree.put(
                "reachable_margin",
                d.reachableMargin().isPresent()
                        ? unit.fromSi(d.reachableMargin().getAsDouble())
                        : null);
        return tree;
    }

    Map<String, @Nullable Object> tree(PairByPair now, List<String> clubs) {
        Map<String, @Nullable Object> tree = head();
        Standing standing = now.standing();
        tree.put("clubs", clubs);
        tree.put("pairs", now.pairs());
        tree.put("swings", now.swings());
        tree.put("re_hits", now.reHits().size());
        SequentialTTest.Result look = standing.look().orElse(null);
        Interval i = look == null || !look.difference().interval().bounded()
                ? null
                : look.difference().interval();
        tree.put(
                "difference",
                look == null ? null : unit.fromSi(look.difference().value()));
        tree.put("lower", i == null ? null : unit.fromSi(i.lower()));
        tree.put("upper", i == null ? null : unit.fromSi(i.upper()));
        tree.put("level", look == null ? null : look.difference().interval().level());
        tree.put("p_value", look == null ? null : look.pValue());
        tree.put("method", look == null ? null : look.method());
        tree.put("advice", standing.advice().name().toLowerCase(Locale.ROOT));
        tree.put("verdict", standing.verdict().name().toLowerCase(Locale.ROOT));
        tree.put("settled_after", orNull(standing.settledAfter()));
        tree.put("more_pairs", standing.prediction().map(PlanText::tree).orElse(null));
        tree.put("warnings", standing.warnings().stream().map(w -> w.code()).toList());
        return tree;
    }

    private static Map<String, @Nullable Object> tree(Standing.Prediction p) {
        Map<String, @Nullable Object> more = new LinkedHashMap<>();
        more.put("chance", p.chance());
        more.put("low", orNull(p.low()));
        more.put("central", orNull(p.central()));
        more.put("high", orNull(p.high()));
        more.put("allowed", p.allowed());
        return more;
    }

    private Map<String, @Nullable Object> head() {
        Map<String, @Nullable Object> tree = new LinkedHashMap<>();
        tree.put("schema", "teeward-plan/1");
        tree.put("metric", margin.metric().key());
        tree.put("unit", unit.symbol());
        tree.put("margin", unit.fromSi(margin.si()));
        return tree;
    }

    private static @Nullable Integer orNull(OptionalInt number) {
        return number.isPresent() ? Integer.valueOf(number.getAsInt()) : null;
    }

    private String amount(double si) {
        return text("%.1f %s", unit.fromSi(si), unit.symbol()).strip();
    }

    private static String text(String pattern, Object... values) {
        return String.format(Locale.ROOT, pattern, values);
    }
}
