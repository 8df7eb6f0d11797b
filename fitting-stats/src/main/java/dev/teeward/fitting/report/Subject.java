package dev.teeward.fitting.report;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.UnitSystem;
import dev.teeward.fitting.compare.HeadToHeadResult;
import dev.teeward.fitting.compare.MetricComparison;
import dev.teeward.fitting.compare.Verdict;
import dev.teeward.fitting.complete.UnevenAir;
import dev.teeward.quantity.Handedness;
import dev.teeward.quantity.Unit;
import java.util.List;
import java.util.Optional;

/** What all sections are about. */
record Subject(HeadToHeadResult result, UnitSystem units, ReportData data) {
    Wording words() {
        return new Wording(data);
    }

    String first() {
        return result.first().name();
    }

    String second() {
        return result.second().name();
    }

    Optional<Handedness> hand() {
        return result.session().hand();
    }

    Unit unit(Metric metric) {
        return metric.unit(units);
    }

    /** Whether the clubs were hit in different air. */
    boolean airsDiffer() {
        return result.warnings().stream().anyMatch(w -> w.code().equals(UnevenAir.CODE));
    }

    static String place(Metric metric) {
        return "/metrics/" + metric.key();
    }

    /** Those of a verdict, without what was only worked out. */
    List<MetricComparison> with(Verdict verdict) {
        return result.metrics().stream()
                .filter(c -> c.inFamily() && c.verdict().verdict() == verdict)
                .toList();
    }

    /** Words joined for reading aloud. */
    static String list(List<String> words) {
        int last = words.size() - 1;
        return last < 1
                ? String.join("", words)
                : String.join(", ", words.subList(0, last)) + " and " + words.get(last);
    }

    static List<String> labels(List<MetricComparison> comparisons) {
        return comparisons.stream().map(c -> label(c.metric())).toList();
    }

    static String label(Metric metric) {
        return switch (metric) {
            case STRIKE_TOE -> "strike along the face";
            case STRIKE_UP -> "strike up the face";
            default -> metric.label();
        };
    }
}
