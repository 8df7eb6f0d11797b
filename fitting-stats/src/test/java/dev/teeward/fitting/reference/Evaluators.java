package dev.teeward.fitting.reference;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.fitting.reference.ReferenceTable.Row;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.ToDoubleFunction;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;

/** What computes the value of each row of expected.csv, by the row's id. A row without a value fails its test. */
public final class Evaluators {
    private final Map<String, ToDoubleFunction<Row>> byId = new LinkedHashMap<>();
    private final Map<String, ToDoubleFunction<Row>> byKey = new LinkedHashMap<>();
    private final Map<String, String> corrected = new LinkedHashMap<>();
    private final Map<String, Double> exact = new LinkedHashMap<>();
    private final Map<String, Double> loose = new LinkedHashMap<>();

    /** The value of the rows of one id, by their quantity. */
    public void put(String id, ToDoubleFunction<Row> evaluator) {
        assertEquals(null, byId.put(id, evaluator), id);
    }

    /** The values of the rows of one id, one after the other in the order of the file. */
    public void put(String id, double... values) {
        List<String> keys =
                ReferenceTable.rows(id::equals).stream().map(Row::key).toList();
        assertEquals(keys.size(), values.length, id);
        put(id, row -> values[keys.indexOf(row.key())]);
    }

    /** The value of one row of an id whose other rows are checked elsewhere. */
    public void putRow(String key, ToDoubleFunction<Row> evaluator) {
        assertEquals(null, byKey.put(key, evaluator), key);
    }

    /** A row that is less exact than its tolerance says: the better value, to 1e-11, and the reason. */
    public void correct(String key, double value, String reason) {
        corrected.put(key, reason);
        exact.put(key, value);
    }

    /** A row that is a Monte Carlo value: how close to come, from the row's own method text or its replicates. */
    public void loosen(String key, double tolerance) {
        loose.put(key, tolerance);
    }

    /** One test for each row whose id is known here. */
    public Stream<DynamicTest> tests() {
        return rows().stream().map(row -> DynamicTest.dynamicTest(row.key(), () -> check(row)));
    }

    private void check(Row row) {
        double actual = Objects.requireNonNull(byKey.getOrDefault(row.key(), byId.get(row.id())))
                .applyAsDouble(row);
        Double better = exact.get(row.key());
        Double wide = loose.get(row.key());
        if (wide != null) {
            assertEquals(row.number(), actual, wide, row.key());
        } else if (row.toleranceKind().equals("text")) {
            assertEquals(row.value(), Double.isInfinite(actual) ? "inf" : Double.toString(actual), row.key());
        } else if (better == null) {
            row.check(actual);
        } else {
            assertEquals(better, actual, 1e-11 * Math.max(1e-3, Math.abs(better)), row.key());
            double bound = Double.parseDouble(row.tolerance());
            double scale = row.toleranceKind().equals("rel") ? Math.abs(better) : 1.0;
            assertTrue(Math.abs(row.number() - better) > bound * scale, row.key() + " needs no correction");
        }
    }

    private List<Row> rows() {
        return ReferenceTable.rows(id -> true).stream()
                .filter(row -> byId.containsKey(row.id()) || byKey.containsKey(row.key()))
                .toList();
    }

    /** The keys of the rows that are checked. */
    public Set<String> keys() {
        Set<String> ids = rows().stream().map(Row::id).collect(Collectors.toSet());
        assertTrue(ids.containsAll(byId.keySet()), () -> "not all ids are in the table: " + byId.keySet());
        assertTrue(rows().stream().map(Row::key).collect(Collectors.toSet()).containsAll(byKey.keySet()));
        return rows().stream().map(Row::key).collect(Collectors.toCollection(TreeSet::new));
    }

    /** A number of the row's parameters, such as 10 after {@code "n="}. */
    public static double number(Row row, String after) {
        Matcher m = Pattern.compile("(?:^|[ ,;])" + Pattern.quote(after) + "(-?[0-9.]+)")
                .matcher(row.parameters());
        assertTrue(m.find(), row.parameters());
        return Double.parseDouble(m.group(1));
    }

    /** Fails for a quantity that an evaluator does not know. */
    public static double unknown(Row row) {
        assertTrue(row.key().isEmpty(), "no quantity " + row.key());
        return 0.0;
    }
}
