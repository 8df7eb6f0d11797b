package dev.teeward.fitting.io;

import de.siegmar.fastcsv.reader.CommentStrategy;
import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import dev.teeward.fitting.Metric;
import dev.teeward.fitting.io.ColumnTable.Values;
import dev.teeward.quantity.Unit;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/** Reads one table. Holds the state of this one reading and is used once. */
final class TableParser {
    private final TableReader options;
    private final TableText source;
    private final String file;
    private final List<Column> columns = new ArrayList<>();
    private final CellStore cells = new CellStore();
    private final Decimal decimal;
    private double[][] numbers = new double[0][];
    private BitSet[] absent = new BitSet[0];
    private int rows;

    TableParser(TableReader options, TableText source) {
        this.options = options;
        this.source = source;
        this.file = source.file();
        this.decimal = new Decimal(source.delimiter() != ',');
    }

    ColumnTable parse() {
        try {
            CsvReader<CellStore> reader = CsvReader.builder()
                    .fieldSeparator(source.delimiter())
                    .commentStrategy(CommentStrategy.NONE)
                    .allowExtraFields(true)
                    .allowMissingFields(true)
                    .build(cells, source.table());
            Iterator<CellStore> records = reader.iterator();
            if (records.hasNext()) {
                records.next();
                heading();
            }
            while (records.hasNext()) {
                records.next();
                row();
            }
        } catch (CsvParseException e) {
            throw failure(file, columns.isEmpty() ? "heading" : "row " + (rows + 1), e);
        }
        if (rows == 0) {
            throw InputException.of(file, "has a heading but no rows");
        }
        return new ColumnTable(
                file,
                source.header(),
                source.delimiter(),
                decimal.usesComma(),
                columns,
                cells,
                rows,
                metrics(),
                List.of());
    }

    /** The CSV parser wraps whatever it meets, a lack of memory too; only what it says itself is a fault of the file. */
    static InputException failure(String file, String place, CsvParseException e) {
        if (e.getCause() instanceof Error error) {
            throw error;
        }
        if (e.getCause() instanceof RuntimeException fault && !(fault instanceof CsvParseException)) {
            throw fault;
        }
        InputException failure = InputException.at(
                file, place, "is not a table row: there is text after a closing quotation mark, or a cell is too long");
        failure.initCause(e);
        return failure;
    }

    private void heading() {
        Map<String, String> meanings = new HashMap<>();
        for (int i = 0; i < cells.fieldsOfLastRecord(); i++) {
            String heading = cells.text(i).strip();
            if (heading.isEmpty()) {
                throw InputException.at(file, "heading", "column " + (i + 1) + " has no name");
            }
            Column column = Column.of(heading, options.mapping(), options.textColumns(), file);
            String meaning = column.metric() != null ? column.metric().key() : column.text();
            String before = meanings.put(meaning.isEmpty() ? " " + heading : meaning, heading);
            if (before != null) {
                throw InputException.atHeading(
                        file,
                        heading,
                        meaning.isEmpty() || before.equals(heading)
                                ? "is there twice"
                                : "gives " + meaning + " a second time, after " + before);
            }
            columns.add(column);
        }
        for (Metric metric : options.required()) {
            if (columns.stream().noneMatch(column -> column.metric() == metric)) {
                throw InputException.atHeading(
                        file, metric.key(), "is missing; add a column named one of " + Names.headings(metric));
            }
        }
        cells.clear();
        numbers = new double[columns.size()][];
        absent = new BitSet[columns.size()];
        for (int i = 0; i < columns.size(); i++) {
            numbers[i] = new double[columns.get(i).metric() == null ? 0 : 64];
            absent[i] = new BitSet();
        }
    }

    private void row() {
        int count = cells.fieldsOfLastRecord();
        if (count != columns.size()) {
            throw InputException.atRow(
                    file,
                    rows + 1,
                    "has " + count + (count == 1 ? " cell" : " cells") + ", but the heading has " + columns.size());
        }
        int first = cells.cells() - count;
        for (int i = 0; i < count; i++) {
            Column column = columns.get(i);
            Metric metric = column.metric();
            if (metric == null) {
                continue;
            }
            if (rows == numbers[i].length) {
                numbers[i] = Arrays.copyOf(numbers[i], 2 * rows);
            }
            number(column, metric, i, first + i);
        }
        rows++;
    }

    private void number(Column column, Metric metric, int index, int cell) {
        char[] chars = cells.chars();
        int from = cells.start(cell);
        int to = cells.end(cell);
        while (from < to && chars[from] <= ' ') {
            from++;
        }
        while (from < to && chars[to - 1] <= ' ') {
            to--;
        }
        if (from == to) {
            Double standard = options.defaults().get(metric);
            if (standard != null) {
                numbers[index][rows] = standard;
            } else if (options.required().contains(metric)) {
                throw at(column, "is empty");
            } else {
                absent[index].set(rows);
            }
            return;
        }
        double value = column.positive() == 0
                ? decimal.parse(chars, from, to)
                : lettered(column, chars, from, to, cells.text(cell));
        if (Double.isNaN(value)) {
            throw at(column, InputException.quote(cells.text(cell)) + " " + decimal.problem());
        }
        Unit unit = Objects.requireNonNull(column.unit());
        double si = unit.toSi(column.negate() ? 0.0 - value : value);
        if (!metric.allows(si)) {
            throw at(column, outside(metric, unit, cells.text(cell).strip()));
        }
        numbers[index][rows] = si + 0.0;
    }

    /** A number whose sign is a letter before or after it. */
    private double lettered(Column column, char[] chars, int from, int to, String text) {
        char first = Character.toUpperCase(chars[from]);
        char last = Character.toUpperCase(chars[to - 1]);
        int start = from;
        int end = to;
        char letter = 0;
        if (first == column.positive() || first == column.negative()) {
            letter = first;
            start++;
        } else if (last == column.positive() || last == column.negative()) {
            letter = last;
            end--;
        }
        while (start < end && chars[start] <= ' ') {
            start++;
        }
        while (start < end && chars[end - 1] <= ' ') {
            end--;
        }
        double value = decimal.parse(chars, start, end);
        if (value != 0.0 && (letter == 0 || value < 0.0)) {
            throw at(
                    column,
                    InputException.quote(text) + " must be a number with " + column.positive() + " or "
                            + column.negative() + " for its sign");
        }
        return letter == column.negative() ? 0.0 - value : value;
    }

    private InputException at(Column column, String text) {
        return InputException.atCell(file, rows + 1, column.heading(), text);
    }

    private static String outside(Metric metric, Unit unit, String text) {
        String symbol = unit.symbol().isEmpty() ? "" : " " + unit.symbol();
        Unit si = metric.siUnit();
        return InputException.quote(text) + " is outside " + limits(metric, unit) + symbol
                + (si.equals(unit) ? "" : ", that is " + limits(metric, si) + " " + si.symbol());
    }

    private static String limits(Metric metric, Unit unit) {
        return (metric.lowerOpen() ? "(" : "[") + plain(unit.fromSi(metric.lower())) + ", "
                + plain(unit.fromSi(metric.upper())) + "]";
    }

    private static String plain(double value) {
        BigDecimal rounded = new BigDecimal(value).round(new MathContext(5));
        return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
    }

    private Map<Metric, Values> metrics() {
        Map<Metric, Values> metrics = new EnumMap<>(Metric.class);
        options.defaults().forEach((metric, standard) -> {
            double[] same = new double[rows];
            Arrays.fill(same, standard);
            metrics.put(metric, new Values(same, new BitSet()));
        });
        for (int i = 0; i < columns.size(); i++) {
            Metric metric = columns.get(i).metric();
            if (metric != null) {
                metrics.put(metric, new Values(Arrays.copyOf(numbers[i], rows), absent[i]));
            }
        }
        return metrics;
    }
}
