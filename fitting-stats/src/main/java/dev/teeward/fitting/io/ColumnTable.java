package dev.teeward.fitting.io;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Shot;
import dev.teeward.quantity.Unit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.NoSuchElementException;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import org.jspecify.annotations.Nullable;

/**
 * A table of which some columns are metrics. Metrics are columns of {@code double} in SI; every cell keeps its text, so that
 * the table can be written again as it was, with computed columns after it.
 *
 * <pre>{@code
 * ColumnTable launches = TableReader.withDefaults().requiring(Metric.BALL_SPEED).read(path);
 * double[] speeds = launches.values(Metric.BALL_SPEED); // metres per second
 * ColumnTable flights = launches.withComputed(Metric.CARRY, LengthUnit.YARD, carries);
 * }</pre>
 *
 * <p>Rows and columns are counted from 0 here, as arrays are; messages to people count rows from 1. Immutable and
 * thread-safe.
 */
public final class ColumnTable {
    private final String file;
    private final List<HeaderLine> header;
    private final char delimiter;
    private final boolean decimalComma;
    private final List<Column> columns;
    private final CellStore cells;
    private final int rows;
    private final Map<Metric, Values> metrics;
    private final List<Computed> computed;
    private final Metric[] inOrder; // those of the columns
    private final Values[] values; // of these

    /** The numbers of one metric, and where there is none. */
    @SuppressWarnings("ArrayRecordComponent") // never compared and never handed out
    record Values(double[] si, BitSet absent) {}

    /** A column to be written after those of the table. */
    @SuppressWarnings("ArrayRecordComponent") // never compared and never handed out
    record Computed(String heading, Unit unit, double[] si, BitSet absent) {}

    /** One line of the header block, without the number sign. */
    record HeaderLine(int number, String text) {}

    ColumnTable(
            String file,
            List<HeaderLine> header,
            char delimiter,
            boolean decimalComma,
            List<Column> columns,
            CellStore cells,
            int rows,
            Map<Metric, Values> metrics,
            List<Computed> computed) {
        this.file = file;
        this.header = List.copyOf(header);
        this.delimiter = delimiter;
        this.decimalComma = decimalComma;
        this.columns = List.copyOf(columns);
        this.cells = cells;
        this.rows = rows;
        this.metrics = Collections.unmodifiableMap(new EnumMap<>(metrics));
        this.computed = List.copyOf(computed);
        this.inOrder = this.columns.stream()
                .map(Column::metric)
                .filter(Objects::nonNull)
                .toArray(Metric[]::new);
        this.values = Arrays.stream(inOrder).map(this.metrics::get).toArray(Values[]::new);
    }

    /**
     * The file.
     *
     * @return the name as it was given to the reader
     */
    public String file() {
        return file;
    }

    /**
     * How many rows there are.
     *
     * @return the number of data rows, at least 1
     */
    public int rows() {
        return rows;
    }

    /**
     * The headings of the table as it was read.
     *
     * @return the headings in order, unmodifiable
     */
    public List<String> headings() {
        return columns.stream().map(Column::heading).toList();
    }

    /**
     * The place of a column.
     *
     * @param heading its heading, exactly
     * @return the index from 0, or empty
     */
    public OptionalInt column(String heading) {
        int index = headings().indexOf(heading);
        return index < 0 ? OptionalInt.empty() : OptionalInt.of(index);
    }

    /**
     * The text of a cell.
     *
     * @param row the row, from 0
     * @param column the column, from 0
     * @return the text as it was read, without quotation marks
     * @throws IndexOutOfBoundsException if there is no such row or column
     */
    public String text(int row, int column) {
        Objects.checkIndex(column, columns.size());
        return cells.text(Objects.checkIndex(row, rows) * columns.size() + column);
    }

    /**
     * Whether there is a column of a metric, in the table or by default.
     *
     * @param metric which
     * @return true if there is
     */
    public boolean has(Metric metric) {
        return metrics.containsKey(metric);
    }

    /**
     * Whether a row has a number of a metric.
     *
     * @param metric which
     * @param row the row, from 0
     * @return true if there is such a column and the cell is not empty, or there is a default
     */
    public boolean has(Metric metric, int row) {
        Values values = metrics.get(metric);
        return values != null && !values.absent().get(Objects.checkIndex(row, rows));
    }

    /**
     * The number of a metric in a row.
     *
     * @param metric which
     * @param row the row, from 0
     * @return the number [SI unit of the metric]
     * @throws NoSuchElementException if there is none; ask {@link #has(Metric, int)} first
     */
    public double value(Metric metric, int row) {
        if (!has(metric, row)) {
            throw new NoSuchElementException("row " + (row + 1) + " has no " + metric.label());
        }
        return values(metric, metrics).si()[row];
    }

    /**
     * All numbers of a metric that every row has.
     *
     * @param metric which
     * @return the numbers in order; a new array [SI unit of the metric]
     * @throws NoSuchElementException if a row has none; what the reader was told to require every row has
     */
    public double[] values(Metric metric) {
        Values values = values(metric, metrics);
        if (!values.absent().isEmpty()) {
            throw new NoSuchElementException(
                    "row " + (values.absent().nextSetBit(0) + 1) + " has no " + metric.label());
        }
        return values.si().clone();
    }

    /**
     * The unit of a metric in the table.
     *
     * @param metric which
     * @return the unit, or empty if there is no such column
     */
    public Optional<Unit> unit(Metric metric) {
        return columns.stream()
                .filter(column -> column.metric() == metric)
                .<Unit>map(ColumnTable::unitOf)
                .findFirst();
    }

    /**
     * The same table with a computed column at the end.
     *
     * @param metric of what; the heading is its key and the unit, after {@code computed_} where the table has the metric
     * @param unit the unit to write it in, of the dimension of the metric
     * @param si one finite number for each row; copied [SI unit of the metric]
     * @return a longer table
     * @throws IllegalArgumentException if the unit is of another dimension, the count is wrong or a number is not finite
     */
    public ColumnTable withComputed(Metric metric, Unit unit, double[] si) {
        return withComputed(metric, unit, si, new BitSet());
    }

    /**
     * The same table with a computed column at the end, in which some cells stay empty.
     *
     * @param metric of what; the heading is its key and the unit, after {@code computed_} where the table has the metric
     * @param unit the unit to write it in, of the dimension of the metric
     * @param si one finite number for each row, any where there is none; copied [SI unit of the metric]
     * @param absent the rows without a number; copied
     * @return a longer table
     * @throws IllegalArgumentException if the unit is of another dimension, the count is wrong or a number is not finite
     */
    public ColumnTable withComputed(Metric metric, Unit unit, double[] si, BitSet absent) {
        return with(unit(metric).isPresent() ? Column.COMPUTED : "", metric, unit, si, absent);
    }

    /**
     * The same table with a computed column at the end whose heading says so in any case, for what another reader of the written
     * table must not take for measured.
     *
     * @param metric of what; the heading is its key and the unit, after {@code computed_}
     * @param unit the unit to write it in, of the dimension of the metric
     * @param si one finite number for each row, any where there is none; copied [SI unit of the metric]
     * @param absent the rows without a number; copied
     * @return a longer table
     * @throws IllegalArgumentException if the unit is of another dimension, the count is wrong or a number is not finite
     */
    public ColumnTable withMarkedAsComputed(Metric metric, Unit unit, double[] si, BitSet absent) {
        return with(Column.COMPUTED, metric, unit, si, absent);
    }

    private ColumnTable with(String prefix, Metric metric, Unit unit, double[] si, BitSet absent) {
        if (!metric.units().contains(unit)) {
            throw new IllegalArgumentException("[" + unit.symbol() + "] is not a unit of " + metric.label());
        }
        if (si.length != rows) {
            throw new IllegalArgumentException("there must be " + rows + " numbers, but there were " + si.length);
        }
        for (double value : si) {
            if (!Double.isFinite(value)) {
                throw new IllegalArgumentException("computed " + metric.key() + " must be finite, but was " + value);
            }
        }
        String heading = prefix + Names.heading(metric, unit);
        List<String> used = new ArrayList<>(headings());
        computed.forEach(column -> used.add(column.heading()));
        while (used.contains(heading)) {
            heading = Column.COMPUTED + heading;
        }
        List<Computed> longer = new ArrayList<>(computed);
        longer.add(new Computed(heading, unit, si.clone(), (BitSet) absent.clone()));
        return new ColumnTable(file, header, delimiter, decimalComma, columns, cells, rows, metrics, longer);
    }

    /** The place of the column that is no metric and has this meaning; -1 if there is none. */
    int textColumn(String meaning) {
        for (int i = 0; i < columns.size(); i++) {
            if (columns.get(i).text().equals(meaning)) {
                return i;
            }
        }
        return -1;
    }

    /** Puts the metrics of a row into a shot, in the order of the columns. */
    void measured(int row, Shot.Builder shot) {
        for (int i = 0; i < inOrder.length; i++) {
            if (!values[i].absent().get(row)) {
                shot.measured(inOrder[i], values[i].si()[row]);
            }
        }
    }

    List<HeaderLine> header() {
        return header;
    }

    char delimiter() {
        return delimiter;
    }

    boolean decimalComma() {
        return decimalComma;
    }

    List<Column> columns() {
        return columns;
    }

    List<Computed> computed() {
        return computed;
    }

    private static Values values(Metric metric, Map<Metric, Values> metrics) {
        @Nullable Values values = metrics.get(metric);
        if (values == null) {
            throw new NoSuchElementException("there is no " + metric.label());
        }
        return values;
    }

    private static Unit unitOf(Column column) {
        return Objects.requireNonNull(column.unit());
    }
}
