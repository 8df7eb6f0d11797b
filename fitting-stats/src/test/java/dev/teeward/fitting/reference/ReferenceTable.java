package dev.teeward.fitting.reference;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.fail;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.function.Predicate;

/** The outside reference values in expected.csv and the data sets they are about. */
public final class ReferenceTable {
    private static final String FOLDER = "/dev/teeward/fitting/reference/";

    private ReferenceTable() {}

    /** One reference value: the columns of expected.csv. */
    public record Row(
            String id,
            String method,
            String dataset,
            String parameters,
            String quantity,
            String value,
            String source,
            String toleranceKind,
            String tolerance) {
        /** The id and the quantity. */
        public String key() {
            return id + " " + quantity;
        }

        /** The reference number. */
        public double number() {
            return Double.parseDouble(value);
        }

        /** Asserts that a computed value is within the tolerance of this row. */
        public void check(double actual) {
            double expected = number();
            double allowed = switch (toleranceKind) {
                case "abs" -> Double.parseDouble(tolerance);
                case "rel" -> Double.parseDouble(tolerance) * Math.abs(expected);
                default -> fail(key() + " has tolerance kind " + toleranceKind);
            };
            assertEquals(expected, actual, allowed, key() + " (" + source + ")");
        }
    }

    /** The rows whose id passes. */
    public static List<Row> rows(Predicate<String> id) {
        List<Row> rows = new ArrayList<>();
        for (NamedCsvRecord r : read("expected.csv")) {
            if (id.test(r.getField("id"))) {
                rows.add(new Row(
                        r.getField("id"),
                        r.getField("method"),
                        r.getField("dataset"),
                        r.getField("parameters"),
                        r.getField("quantity"),
                        r.getField("value"),
                        r.getField("source"),
                        r.getField("tolerance_kind"),
                        r.getField("tolerance")));
            }
        }
        return rows;
    }

    /** One column of a data set. */
    public static double[] column(String dataset, String column) {
        return read("data/" + dataset + ".csv").stream()
                .mapToDouble(r -> Double.parseDouble(r.getField(column)))
                .toArray();
    }

    /** One column of the rows in which another column has a given value. */
    public static double[] column(String dataset, String column, String where, String value) {
        return read("data/" + dataset + ".csv").stream()
                .filter(r -> r.getField(where).equals(value))
                .mapToDouble(r -> Double.parseDouble(r.getField(column)))
                .toArray();
    }

    /** One column of a data set, as it is written. */
    public static String[] labels(String dataset, String column) {
        return read("data/" + dataset + ".csv").stream()
                .map(r -> r.getField(column))
                .toArray(String[]::new);
    }

    private static List<NamedCsvRecord> read(String name) {
        InputStream stream = Objects.requireNonNull(ReferenceTable.class.getResourceAsStream(FOLDER + name), name);
        try (CsvReader<NamedCsvRecord> reader =
                CsvReader.builder().ofNamedCsvRecord(new InputStreamReader(stream, StandardCharsets.UTF_8))) {
            return reader.stream().toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
