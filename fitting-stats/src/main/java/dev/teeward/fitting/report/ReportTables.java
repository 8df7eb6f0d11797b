package dev.teeward.fitting.report;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.compare.MetricComparison;
import dev.teeward.fitting.compare.Verdict;
import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** The numbers of a report as tables. */
final class ReportTables {
    private static final String NOTHING = "-";

    private final Subject subject;
    private final String first;
    private final String second;

    ReportTables(Subject subject) {
        this.subject = subject;
        ShownNames names = ShownNames.of(subject.data());
        this.first = names.first();
        this.second = names.second();
    }

    List<Table> all() {
        List<Table> tables = new ArrayList<>();
        tables.add(means());
        plan().ifPresent(tables::add);
        tables.add(spreads());
        tables.add(tests());
        if (subject.data().value("/patterns/first/landing") != null
                || subject.data().value("/patterns/second/landing") != null) {
            tables.add(patterns());
        }
        return List.copyOf(tables);
    }

    private Table means() {
        List<List<String>> rows = new ArrayList<>();
        for (MetricComparison c : subject.result().metrics()) {
            Unit unit = subject.unit(c.metric());
            int d = NumberText.decimals(unit);
            String place = Subject.place(c.metric());
            Estimate e = c.difference().estimate().convertTo(unit);
            int precise = DifferenceWords.decimals(e, 0.0);
            rows.add(List.of(
                    Subject.label(c.metric()),
                    unit.symbol(),
                    pairs(place + "/compared"),
                    cell(place + "/compared/first_mean/value", d),
                    cell(place + "/compared/second_mean/value", d),
                    cell(place + "/difference/value", precise),
                    interval(place + "/difference", precise),
                    verdict(c)));
        }
        return Table.of(
                "means",
                "Means of the shots compared (those in pairs where a number of pairs is given, else all), and " + first
                        + " minus " + second + " with its " + level() + " interval",
                List.of("metric", "unit", "pairs", first, second, "diff.", "interval", "verdict"),
                rows);
    }

    private static String verdict(MetricComparison c) {
        if (!c.inFamily()) {
            return "worked out";
        }
        return switch (c.verdict().verdict()) {
            case DIFFERENT -> "different";
            case PRACTICALLY_THE_SAME -> "same in practice";
            case UNDECIDED -> "can't tell yet";
        };
    }

    /** How much more would settle what is undecided; the words say the same. */
    private Optional<Table> plan() {
        List<List<String>> rows = new ArrayList<>();
        boolean paired = false;
        for (MetricComparison c : subject.result().metrics()) {
            String plan = "/plan/metrics/" + c.metric().key();
            if (c.verdict().verdict() != Verdict.UNDECIDED || subject.data().value(plan) == null) {
                continue;
            }
            boolean pairs = Boolean.TRUE.equals(subject.data().value(plan + "/paired"));
            paired |= pairs;
            String high = cell(plan + "/more/high", 0);
            rows.add(List.of(
                    Subject.label(c.metric()),
                    pairs ? "pairs" : "shots",
                    cell(plan + "/now", 0),
                    cell(plan + "/more/central", 0),
                    cell(plan + "/more/low", 0) + (high.equals(NOTHING) ? " or far more" : " to " + high)));
        }
        return rows.isEmpty()
                ? Optional.empty()
                : Optional.of(Table.of(
                        "plan",
                        "How many more " + (paired ? "pairs" : "shots with each club")
                                + " would usually settle what can't be told yet (0: as many as these usually do)",
                        List.of("metric", "of", "now", "more", "range"),
                        rows));
    }

    /** The pairs that the difference is of; nothing if it is one of all used shots. */
    private String pairs(String place) {
        return Boolean.TRUE.equals(subject.data().value(place + "/paired")) ? cell(place + "/first_shots", 0) : NOTHING;
    }

    private Table spreads() {
        List<List<String>> rows = new ArrayList<>();
        for (MetricComparison c : subject.result().metrics()) {
            Unit unit = subject.unit(c.metric());
            int d = NumberText.decimals(unit);
            String place = Subject.place(c.metric());
            rows.add(List.of(
                    Subject.label(c.metric()),
                    unit.symbol(),
                    cell(place + "/first/n", 0),
                    cell(place + "/first/mean/value", d),
                    cell(place + "/first/sd/value", d),
                    cell(place + "/second/n", 0),
                    cell(place + "/second/mean/value", d),
                    cell(place + "/second/sd/value", d),
                    ratio(place + "/spread/ratio/value"),
                    ratios(place + "/spread/ratio")));
        }
        return Table.of(
                "spreads",
                "All used shots, first with " + first + ", then with " + second
                        + ": number, mean, standard deviation (SD); the ratio of the SDs with its " + level()
                        + " interval",
                List.of("metric", "unit", "shots", "mean", "SD", "shots", "mean", "SD", "ratio", "interval"),
                rows);
    }

    private Table tests() {
        List<List<String>> rows = new ArrayList<>();
        for (MetricComparison c : subject.result().metrics()) {
            String place = Subject.place(c.metric());
            rows.add(List.of(
                    Subject.label(c.metric()) + (c.primary() ? " (decides)" : ""),
                    c.paired() ? "pairs" : "samples",
                    p(place + "/difference/p"),
                    p(place + "/adjusted_p"),
                    p(place + "/exact/p"),
                    p(place + "/equivalence/adjusted_p"),
                    cell(place + "/effect/value", 2),
                    cell(place + "/superiority/value", 2)));
        }
        return Table.of(
                "tests",
                "p of the difference, after Holm, by exchanging shots, of being the same; effect size; how often "
                        + first + " is above " + second,
                List.of("metric", "of", "p", "p Holm", "p exact", "p same", "effect", "above"),
                rows);
    }

    private Table patterns() {
        Unit unit = subject.unit(Metric.CARRY);
        List<List<String>> rows = new ArrayList<>();
        row(rows, "balls", "", "/landing/n", 0);
        row(rows, "centre, carry", unit.symbol(), "/landing/center/carry/value", 1);
        row(rows, "centre, side (right positive)", unit.symbol(), "/landing/center/side/value", 1);
        row(rows, "half of the balls within", unit.symbol(), "/landing/r50_center/value", 1);
        row(rows, "nine in ten within", unit.symbol(), "/landing/r90_center/value", 1);
        row(rows, "half within, of the target", unit.symbol(), "/landing/r50_target/value", 1);
        row(rows, "nine in ten within, of the target", unit.symbol(), "/landing/r90_target/value", 1);
        outline(rows, "ellipse for the next ball, reach", unit.symbol(), "/landing/ellipse/semi_major");
        outline(rows, "the same, across", unit.symbol(), "/landing/ellipse/semi_minor");
        row(rows, "crossing the target line", "%", "/shapes/crossing_share/value", 0);
        return Table.of("patterns", "Where the balls came down", List.of("what", "unit", first, second), rows);
    }

    private void row(List<List<String>> rows, String what, String unit, String place, int decimals) {
        String one = cell("/patterns/first" + place, decimals);
        String two = cell("/patterns/second" + place, decimals);
        if (!one.equals(NOTHING) || !two.equals(NOTHING)) {
            rows.add(List.of(what, unit, one, two));
        }
    }

    /** As in the picture, nothing of an ellipse that rests on too few balls. */
    private void outline(List<List<String>> rows, String what, String unit, String place) {
        String one = enough("first") ? cell("/patterns/first" + place, 1) : NOTHING;
        String two = enough("second") ? cell("/patterns/second" + place, 1) : NOTHING;
        if (!one.equals(NOTHING) || !two.equals(NOTHING)) {
            rows.add(List.of(what, unit, one, two));
        }
    }

    private boolean enough(String club) {
        return subject.data().number("/patterns/" + club + "/landing/n").orElse(0.0) >= DrawnShots.FEWEST_FOR_OUTLINE;
    }

    private String level() {
        double percent = subject.data().number("/level_percent").orElse(0.0);
        return NumberText.fixed(percent, NumberText.percentDecimals(percent)) + " %";
    }

    private String cell(String pointer, int decimals) {
        OptionalDouble number = subject.data().number(pointer);
        return number.isPresent() ? NumberText.fixed(number.getAsDouble(), decimals) : NOTHING;
    }

    /** Two decimals, or two figures where that is more or less of them. */
    private String ratio(String pointer) {
        double value = subject.data().number(pointer).orElse(1.0);
        return cell(pointer, value < 0.1 || value >= 10.0 ? NumberText.twoFigures(value) : 2);
    }

    private String ratios(String place) {
        String lower = ratio(place + "/lower");
        String upper = ratio(place + "/upper");
        return lower.equals(NOTHING) || upper.equals(NOTHING) ? NOTHING : lower + " to " + upper;
    }

    private String p(String pointer) {
        OptionalDouble p = subject.data().number(pointer);
        return p.isPresent() && p.getAsDouble() < 0.001 ? "<0.001" : cell(pointer, 3);
    }

    private String interval(String place, int decimals) {
        String lower = cell(place + "/lower", decimals);
        String upper = cell(place + "/upper", decimals);
        return lower.equals(NOTHING) || upper.equals(NOTHING) ? NOTHING : lower + " to " + upper;
    }
}
