package dev.teeward.fitting.io;

import de.siegmar.fastcsv.writer.CsvWriter;
import java.io.IOException;
import java.io.Writer;
import java.nio.file.Path;

/**
 * Writes a table as it was read, with its computed columns after it. Header block, separator and decimal mark are those of
 * the table that was read; the file appears whole or not at all.
 *
 * <pre>{@code
 * TableWriter.withDefaults().withDecimals(3).write(path, launches.withComputed(Metric.CARRY, LengthUnit.YARD, carries));
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class TableWriter {
    private static final int MOST_DECIMALS = 9;

    private final int decimals;

    private TableWriter(int decimals) {
        this.decimals = decimals;
    }

    /**
     * A writer of computed numbers with three decimals.
     *
     * @return the writer
     */
    public static TableWriter withDefaults() {
        return new TableWriter(3);
    }

    /**
     * With another number of decimals for computed numbers.
     *
     * @param count the decimals, in [0, 9]
     * @return a copy
     * @throws IllegalArgumentException if it lies outside
     */
    public TableWriter withDecimals(int count) {
        if (count < 0 || count > MOST_DECIMALS) {
            throw new IllegalArgumentException("decimals must be in [0, 9], but was " + count);
        }
        return new TableWriter(count);
    }

    /**
     * Writes a file.
     *
     * @param path the file, replaced if it exists; its folder must exist
     * @param table the table
     * @throws InputException if the file cannot be written
     */
    public void write(Path path, ColumnTable table) {
        WholeFile.write(path, out -> write(out, table));
    }

    /**
     * Writes a text.
     *
     * @param out where to; not closed
     * @param table the table
     * @throws IOException if it cannot be written
     */
    public void write(Writer out, ColumnTable table) throws IOException {
        for (ColumnTable.HeaderLine line : table.header()) {
            out.write("# " + line.text() + "\n");
        }
        CsvWriter csv = Csv.writer(out, table.delimiter());
        int own = table.columns().size();
        String[] cells = new String[own + table.computed().size()];
        for (int i = 0; i < own; i++) {
            cells[i] = table.columns().get(i).heading();
        }
        for (int i = own; i < cells.length; i++) {
            cells[i] = table.computed().get(i - own).heading();
        }
        csv.writeRecord(cells);
        char mark = table.decimalComma() ? ',' : '.';
        StringBuilder number = new StringBuilder();
        for (int row = 0; row < table.rows(); row++) {
            for (int i = 0; i < own; i++) {
                cells[i] = table.text(row, i);
            }
            for (int i = own; i < cells.length; i++) {
                ColumnTable.Computed column = table.computed().get(i - own);
                cells[i] = column.absent().get(row) ? "" : fixed(column.unit().fromSi(column.si()[row]), mark, number);
            }
            csv.writeRecord(cells);
        }
        csv.flush();
    }

    /** Rounded half up to the decimals, without an exponent and without a negative zero. */
    private String fixed(double value, char mark, StringBuilder text) {
        long power = 1L;
        for (int i = 0; i < decimals; i++) {
            power *= 10L;
        }
        if (Math.abs(value) >= 1e17 / power) {
            return new java.math.BigDecimal(value).toPlainString().replace('.', mark);
        }
        long scaled = Math.round(Math.abs(value) * power);
        text.setLength(0);
        if (value < 0.0 && scaled != 0L) {
            text.append('-');
        }
        text.append(scaled / power);
        if (decimals > 0) {
            text.append(mark);
            long rest = scaled % power;
            for (long p = power / 10L; p > 1L && rest < p; p /= 10L) {
                text.append('0');
            }
            text.append(rest);
        }
        return text.toString();
    }
}
