package dev.teeward.fitting.io;

import de.siegmar.fastcsv.writer.CsvWriter;
import dev.teeward.fitting.Club;
import dev.teeward.fitting.Intent;
import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Origin;
import dev.teeward.fitting.Rating;
import dev.teeward.fitting.Reading;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.UnitSystem;
import dev.teeward.quantity.Handedness;
import dev.teeward.quantity.RatioUnit;
import dev.teeward.quantity.TemperatureUnit;
import dev.teeward.quantity.Unit;
import java.io.IOException;
import java.io.Writer;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * Writes sessions to files that {@link SessionReader} reads back to the same session.
 *
 * <p>Numbers are the shortest decimals that come back exactly. Only what was measured is written unless asked otherwise;
 * text is written as it is, with quotation marks where needed, and is never changed. A file appears whole or not at all.
 *
 * <pre>{@code
 * SessionWriter.withDefaults().write(Path.of("session.csv"), session);
 * SessionWriter.withDefaults().withUnits(UnitSystem.METRIC).withDerived(true).write(path, session);
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class SessionWriter {
    private final @Nullable UnitSystem units;
    private final boolean derived;

    private SessionWriter(@Nullable UnitSystem units, boolean derived) {
        this.units = units;
        this.derived = derived;
    }

    /**
     * A writer of what was measured, in the units of the session, or US units where it has none.
     *
     * @return the writer
     */
    public static SessionWriter withDefaults() {
        return new SessionWriter(null, false);
    }

    /**
     * With other units for the metrics.
     *
     * @param system the family of units
     * @return a copy
     */
    public SessionWriter withUnits(UnitSystem system) {
        return new SessionWriter(system, derived);
    }

    /**
     * With or without derived and computed numbers. Read back they are measured ones.
     *
     * @param wanted whether to write them
     * @return a copy
     */
    public SessionWriter withDerived(boolean wanted) {
        return new SessionWriter(units, wanted);
    }

    /**
     * Writes a file.
     *
     * @param path the file, replaced if it exists; its folder must exist
     * @param session the session, with at least one shot
     * @throws InputException if the file cannot be written
     * @throws IllegalArgumentException if the session has no shots, or has a column or header line of its own whose name
     *     could not be read back because it is nearly a known one
     */
    public void write(Path path, Session session) {
        check(session);
        WholeFile.write(path, out -> write(out, session));
    }

    /**
     * Writes a text.
     *
     * @param out where to; not closed
     * @param session the session, with at least one shot
     * @throws IOException if it cannot be written
     * @throws IllegalArgumentException as {@link #write(Path, Session)}
     */
    public void write(Writer out, Session session) throws IOException {
        check(session);
        for (String line : header(session)) {
            out.write("# " + line + "\n");
        }
        List<Cells> columns = columns(session);
        CsvWriter csv = Csv.writer(out, ',');
        csv.writeRecord(columns.stream().map(Cells::heading).toList());
        for (Shot shot : session.shots()) {
            csv.writeRecord(columns.stream().map(c -> c.text().apply(shot)).toList());
        }
        csv.flush();
    }

    /** One column: its heading and how a shot fills it. */
    private record Cells(String heading, Function<Shot, String> text) {}

    private List<Cells> columns(Session session) {
        List<Cells> columns = new ArrayList<>();
        columns.add(new Cells("club", Shot::club));
        columns.add(new Cells("shot", shot -> Integer.toString(shot.number())));
        optional(columns, session, "pair", Shot::pair);
        optional(columns, session, "exclude", Shot::exclusion);
        optional(columns, session, "note", Shot::note);
        for (Rating rating : Rating.values()) {
            optional(columns, session, rating.name().toLowerCase(Locale.ROOT), shot -> text(shot.rating(rating)));
        }
        optional(columns, session, "day", shot -> shot.day().map(LocalDate::toString));
        if (!session.parts().isEmpty()) {
            optional(
                    columns,
                    session,
                    "part",
                    shot -> shot.part().stream()
                            .mapToObj(place -> Integer.toString(place + 1))
                            .findFirst());
        }
        optional(columns, session, "intent", shot -> shot.intent().map(Intent::key));
        for (Metric metric : Metric.values()) {
            Unit unit =
                    units != null ? metric.unit(units) : session.unit(metric).orElse(metric.unit(UnitSystem.US));
            Function<Shot, Optional<String>> number =
                    shot -> shot.reading(metric).filter(this::wanted).map(r -> UnitText.shortest(r.value(), unit));
            boolean inTable = units == null && session.unit(metric).isPresent();
            if (inTable
                    || session.shots().stream()
                            .anyMatch(shot -> number.apply(shot).isPresent())) {
                columns.add(new Cells(
                        Names.heading(metric, unit), shot -> number.apply(shot).orElse("")));
            }
        }
        for (String name : others(session)) {
            columns.add(new Cells(name, shot -> shot.other().getOrDefault(name, "")));
        }
        return columns;
    }

    private boolean wanted(Reading reading) {
        return derived || reading.origin() == Origin.MEASURED;
    }

    private static void optional(
            List<Cells> columns, Session session, String heading, Function<Shot, Optional<String>> text) {
        if (session.shots().stream().anyMatch(shot -> text.apply(shot).isPresent())) {
            columns.add(new Cells(heading, shot -> text.apply(shot).orElse("")));
        }
    }

    private static Optional<String> text(OptionalInt value) {
        return value.isPresent() ? Optional.of(Integer.toString(value.getAsInt())) : Optional.empty();
    }

    private static Set<String> others(Session session) {
        Set<String> names = new LinkedHashSet<>();
        session.shots().forEach(shot -> names.addAll(shot.other().keySet()));
        return names;
    }

    private static List<String> header(Session session) {
        List<String> lines = named(session);
        lines.addAll(session.remarks());
        List<Session> parts = session.parts();
        if (!parts.isEmpty()) {
            lines.add("parts: " + parts.size());
        }
        for (int i = 0; i < parts.size(); i++) {
            String part = "part " + (i + 1);
            named(parts.get(i)).forEach(line -> lines.add(part + " " + line));
            parts.get(i).remarks().forEach(remark -> lines.add(part + ": " + remark));
        }
        return lines;
    }

    private static List<String> named(Session session) {
        List<String> lines = new ArrayList<>();
        session.hand().ifPresent(hand -> lines.add("hand: " + (hand == Handedness.LEFT ? "left" : "right")));
        session.aimOffset()
                .ifPresent(a -> lines.add("aim offset: " + UnitText.shortest(a.radians(), SessionHeader.ANGLES)));
        session.ball().ifPresent(ball -> lines.add("ball: " + ball));
        session.elevation()
                .ifPresent(e -> lines.add("elevation: " + UnitText.shortest(e.meters(), SessionHeader.ELEVATIONS)));
        session.temperature()
                .ifPresent(t ->
                        lines.add("temperature: " + UnitText.shortest(t.kelvins(), List.of(TemperatureUnit.values()))));
        session.humidity().ifPresent(h -> lines.add("humidity: " + UnitText.shortest(h, RatioUnit.PERCENT) + " %"));
        if (session.pressure().isPresent() && session.pressureKind().isPresent()) {
            String number = UnitText.shortest(session.pressure().get().pascals(), SessionHeader.PRESSURES);
            lines.add("pressure: " + number + " "
                    + SessionHeader.word(session.pressureKind().get()));
        }
        if (session.windSpeed().isPresent() && session.windFrom().isPresent()) {
            lines.add("wind: "
                    + UnitText.shortest(session.windSpeed().get().metersPerSecond(), SessionHeader.SPEEDS)
                    + " from " + UnitText.shortest(session.windFrom().get().radians(), SessionHeader.ANGLES));
        }
        session.date().ifPresent(date -> lines.add("date: " + date));
        session.place().ifPresent(place -> lines.add("place: " + place));
        session.tolerances()
                .forEach((metric, si) -> lines.add(
                        ("tolerance " + metric.key() + ": " + UnitText.shortest(si, metric.units())).strip()));
        session.clubs().values().forEach(club -> lines.add("club " + club.name() + ": " + build(club)));
        session.other().forEach((name, text) -> lines.add((name + ": " + text).strip()));
        return lines;
    }

    private static String build(Club club) {
        List<String> parts = new ArrayList<>();
        club.loft().ifPresent(a -> parts.add("loft " + UnitText.shortest(a.radians(), SessionHeader.ANGLES)));
        club.lie().ifPresent(a -> parts.add("lie " + UnitText.shortest(a.radians(), SessionHeader.ANGLES)));
        club.length().ifPresent(l -> parts.add("length " + UnitText.shortest(l.meters(), SessionHeader.CLUB_LENGTHS)));
        club.headMass().ifPresent(m -> parts.add("mass " + UnitText.shortest(m.kilograms(), SessionHeader.MASSES)));
        club.shaft().ifPresent(text -> parts.add("shaft " + text));
        return String.join(", ", parts);
    }

    private static void check(Session session) {
        if (session.shots().isEmpty()) {
            throw new IllegalArgumentException("a session without shots cannot be written");
        }
        Set<String> headerNames = new LinkedHashSet<>(session.other().keySet());
        session.parts().forEach(part -> headerNames.addAll(part.other().keySet()));
        for (String name : headerNames) {
            try {
                SessionHeader.refuseNearMiss(name);
            } catch (IllegalArgumentException e) {
                throw new IllegalArgumentException("header line " + name + " " + e.getMessage(), e);
            }
        }
        for (String name : others(session)) {
            try {
                Column column = Column.of(name, ColumnMapping.none(), SessionReader.TEXT_COLUMNS, "column");
                if (column.metric() != null || !column.text().isEmpty()) {
                    throw new IllegalArgumentException("column " + name + " has the name of a column with a meaning");
                }
            } catch (InputException e) {
                throw new IllegalArgumentException(e.getMessage(), e);
            }
        }
    }
}
