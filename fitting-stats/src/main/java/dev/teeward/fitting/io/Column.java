package dev.teeward.fitting.io;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.UnitSystem;
import dev.teeward.fitting.io.ColumnMapping.Target;
import dev.teeward.quantity.Unit;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * What one column of a table means.
 *
 * @param heading the heading as it is in the table
 * @param metric the metric, or null for a text column
 * @param unit the unit of a metric, or null for a text column
 * @param text the name of a known text column, or empty
 * @param negate whether the table has the opposite sign
 * @param positive the letter that means positive, or 0 if there are no letters
 * @param negative the letter that means negative, or 0 if there are no letters
 */
record Column(
        String heading,
        @Nullable Metric metric,
        @Nullable Unit unit,
        String text,
        boolean negate,
        char positive,
        char negative) {
    /** Columns that Teeward computed are never read as measurements. */
    static final String COMPUTED = "computed_";

    static Column of(String heading, ColumnMapping mapping, List<String> textColumns, String file) {
        Target target = mapping.targets().get(heading);
        if (target != null) {
            String text = target.text().equals("other") ? "" : target.text();
            return new Column(
                    heading,
                    target.metric().orElse(null),
                    target.unit().orElse(null),
                    text,
                    target.negate(),
                    target.positive(),
                    target.negative());
        }
        if (textColumns.contains(heading)) {
            return text(heading, heading);
        }
        for (Metric metric : Metric.values()) {
            if (heading.equals(metric.key()) && !metric.siUnit().suffix().isEmpty()) {
                throw InputException.atHeading(file, heading, "has no unit; name it one of " + Names.headings(metric));
            }
            for (Unit unit : metric.units()) {
                if (heading.equals(Names.heading(metric, unit))) {
                    return new Column(heading, metric, unit, "", false, (char) 0, (char) 0);
                }
            }
        }
        if (!heading.startsWith(COMPUTED)) {
            refuseWrongUnit(heading, file);
            refuseNearMiss(heading, mapping, textColumns, file);
        }
        return text(heading, "");
    }

    private static Column text(String heading, String name) {
        return new Column(heading, null, null, name, false, (char) 0, (char) 0);
    }

    private static void refuseWrongUnit(String heading, String file) {
        int last = heading.lastIndexOf('_');
        Optional<Metric> metric = last < 0 ? Optional.empty() : Metric.find(heading.substring(0, last));
        if (metric.isPresent()) {
            throw InputException.atHeading(
                    file,
                    heading,
                    InputException.quote(heading.substring(last + 1)) + " is not a unit of "
                            + metric.get().label() + "; name it one of " + Names.headings(metric.get())
                            + ", or choose another name if it is something else");
        }
    }

    private static void refuseNearMiss(String heading, ColumnMapping mapping, List<String> textColumns, String file) {
        Optional<String> meant = Names.closest(heading, textColumns);
        if (meant.isEmpty()) {
            meant = Names.metric(heading).map(metric -> {
                String normal = Names.normal(heading);
                String word = normal.substring(normal.lastIndexOf('_') + 1);
                Unit unit = UnitText.find(word, metric.units()).orElse(metric.unit(UnitSystem.US));
                return Names.heading(metric, unit);
            });
        }
        if (meant.isEmpty()) {
            String normal = Names.normal(heading);
            meant = mapping.targets().keySet().stream()
                    .filter(known -> Names.normal(known).equals(normal))
                    .findFirst();
        }
        if (meant.isPresent()) {
            throw InputException.atHeading(file, heading, "is not a known name; did you mean " + meant.get() + "?");
        }
    }
}
