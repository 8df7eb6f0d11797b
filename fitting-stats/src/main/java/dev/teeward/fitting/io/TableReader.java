package dev.teeward.fitting.io;

import dev.teeward.fitting.Metric;
import java.io.Reader;
import java.nio.file.Path;
import java.util.Collections;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;

/**
 * Reads any table whose headings name metrics with their units (comma, semicolon or tab; RFC 4180 quoting).
 *
 * <p>A column {@code ball_speed_mph} is a metric; every other column is text and kept. Refused are: a known metric without a
 * unit or with a unit of something else, a name that is nearly a known one, the same metric twice, a number that is not one,
 * and a number beyond the limits of its metric.
 *
 * <pre>{@code
 * ColumnTable launches = TableReader.withDefaults()
 *     .requiring(Metric.BALL_SPEED, Metric.LAUNCH_ANGLE, Metric.SPIN_RATE)
 *     .withDefault(Metric.AXIS_TILT, 0.0).read(path);
 * }</pre>
 *
 * <p>Immutable and thread-safe. All failures are {@link InputException}s.
 */
public final class TableReader {
    private final ColumnMapping mapping;
    private final Set<Metric> required;
    private final Map<Metric, Double> defaults;
    private final List<String> textColumns;

    private TableReader(
            ColumnMapping mapping, Set<Metric> required, Map<Metric, Double> defaults, List<String> textColumns) {
        this.mapping = mapping;
        this.required = required;
        this.defaults = defaults;
        this.textColumns = textColumns;
    }

    /**
     * A reader that requires nothing.
     *
     * @return the reader
     */
    public static TableReader withDefaults() {
        return new TableReader(ColumnMapping.none(), Set.of(), Map.of(), List.of());
    }

    /**
     * With meanings for headings of one's own.
     *
     * @param columns the mapping
     * @return a copy
     */
    public TableReader withMapping(ColumnMapping columns) {
        return new TableReader(Objects.requireNonNull(columns, "columns"), required, defaults, textColumns);
    }

    /**
     * With metrics that every row must have.
     *
     * @param metrics which
     * @return a copy
     */
    public TableReader requiring(Metric... metrics) {
        Set<Metric> all = EnumSet.noneOf(Metric.class);
        all.addAll(required);
        all.addAll(List.of(metrics));
        return new TableReader(mapping, Collections.unmodifiableSet(all), defaults, textColumns);
    }

    /**
     * With a number for a metric that the table, or a cell, does not have.
     *
     * @param metric which
     * @param si the number, within the limits of the metric [SI unit of the metric]
     * @return a copy
     * @throws IllegalArgumentException if the number lies outside the limits
     */
    public TableReader withDefault(Metric metric, double si) {
        if (!metric.allows(si)) {
            throw new IllegalArgumentException("the default of " + metric.key() + " must be in [" + metric.lower()
                    + ", " + metric.upper() + "] " + metric.siUnit().symbol() + ", but was " + si);
        }
        Map<Metric, Double> all = new EnumMap<>(Metric.class);
        all.putAll(defaults);
        all.put(metric, si);
        return new TableReader(mapping, required, Collections.unmodifiableMap(all), textColumns);
    }

    /**
     * With names of text columns that are known, so that a misspelling of one is refused.
     *
     * @param names the headings
     * @return a copy
     */
    public TableReader withTextColumns(List<String> names) {
        return new TableReader(mapping, required, defaults, List.copyOf(names));
    }

    /**
     * Reads a file.
     *
     * @param path the file, UTF-8 with or without a byte-order mark
     * @return the table
     * @throws InputException if it cannot be used
     */
    public ColumnTable read(Path path) {
        return parse(TextFile.read(path), path.toString());
    }

    /**
     * Reads a text.
     *
     * @param reader the text; not closed
     * @param name what to call it in messages
     * @return the table
     * @throws InputException if it cannot be used
     */
    public ColumnTable read(Reader reader, String name) {
        return parse(TextFile.read(reader, name), name);
    }

    /**
     * Reads a text.
     *
     * @param text the text
     * @param name what to call it in messages
     * @return the table
     * @throws InputException if it cannot be used
     */
    public ColumnTable read(String text, String name) {
        return parse(TextFile.checked(text, name), name);
    }

    private ColumnTable parse(String text, String name) {
        return new TableParser(this, TableText.of(text, name)).parse();
    }

    ColumnMapping mapping() {
        return mapping;
    }

    Set<Metric> required() {
        return required;
    }

    Map<Metric, Double> defaults() {
        return defaults;
    }

    List<String> textColumns() {
        return textColumns;
    }
}
