package dev.teeward.fitting.choose;

import dev.teeward.fitting.io.ColumnTable;
import dev.teeward.fitting.io.InputException;
import dev.teeward.fitting.io.TableReader;
import dev.teeward.quantity.Length;
import dev.teeward.quantity.LengthUnit;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Set;
import java.util.TreeMap;

/**
 * A baseline: how many strokes it takes on average to hole out from a distance and a lie, as the user supplies it.
 *
 * <p>A CSV table with the columns {@code lie}, {@code strokes} and one of {@code distance_m}, {@code distance_yd} and
 * {@code distance_ft}; lies have any names. Strokes must not fall as the distance grows. Between the rows of a lie they are linear in the
 * distance, hence monotone; nearer than the nearest row that row counts, but on the hole itself (0) nothing is left; beyond the
 * farthest row no number is told.
 *
 * <p>{@link #example} is a few rows for approach shots quoted <b>from memory</b> after the tables of Broadie (2012, Interfaces
 * 42), rounded to 0.05: to try things out, not to judge anybody by.
 *
 * <pre>{@code
 * StrokesTable table = StrokesTable.read(Path.of("strokes.csv"));
 * table.strokes("fairway", Length.ofYards(150.0));
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class StrokesTable {
    private static final List<LengthUnit> UNITS = List.of(LengthUnit.METER, LengthUnit.YARD, LengthUnit.FOOT);

    private final Map<String, NavigableMap<Double, Double>> lies;

    private StrokesTable(Map<String, NavigableMap<Double, Double>> lies) {
        this.lies = lies;
    }

    /**
     * Reads a file.
     *
     * @param path the file
     * @return the table
     * @throws InputException if it cannot be used
     */
    public static StrokesTable read(Path path) {
        return of(TableReader.withDefaults().read(path));
    }

    /**
     * Reads a text.
     *
     * @param text the text
     * @param name what to call it in messages
     * @return the table
     * @throws InputException if it cannot be used
     */
    public static StrokesTable read(String text, String name) {
        return of(TableReader.withDefaults().read(text, name));
    }

    /**
     * The bundled example: lies fairway, rough, sand and green.
     *
     * @return a few rows from memory, see above
     */
    public static StrokesTable example() {
        try (InputStream in = StrokesTable.class.getResourceAsStream("example_strokes.csv")) {
            if (in == null) {
                throw new IllegalStateException("the jar lacks example_strokes.csv");
            }
            Reader reader = new InputStreamReader(in, StandardCharsets.UTF_8);
            return of(TableReader.withDefaults().read(reader, "example_strokes.csv"));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static StrokesTable of(ColumnTable table) {
        int lie = column(table, "lie");
        int strokes = column(table, "strokes");
        List<LengthUnit> given = UNITS.stream()
                .filter(unit -> table.column("distance_" + unit.suffix()).isPresent())
                .toList();
        if (given.size() != 1) {
            throw InputException.of(
                    table.file(), "one of the columns distance_m, distance_yd and distance_ft is needed");
        }
        LengthUnit unit = given.get(0);
        String heading = "distance_" + unit.suffix();
        int distance = column(table, heading);
        Map<String, NavigableMap<Double, Double>> lies = new LinkedHashMap<>();
        for (int row = 0; row < table.rows(); row++) {
            String name = table.text(row, lie).strip();
            if (name.isEmpty()) {
                throw InputException.atCell(table.file(), row + 1, "lie", "is empty");
            }
            double far = unit.toSi(number(table, row, distance, heading));
            double average = number(table, row, strokes, "strokes");
            if (lies.computeIfAbsent(name, key -> new TreeMap<>()).put(far, average) != null) {
                throw InputException.atCell(table.file(), row + 1, heading, "is given twice for " + name);
            }
        }
        lies.forEach((name, rows) -> rising(table.file(), name, rows));
        return new StrokesTable(lies);
    }

    private static int column(ColumnTable table, String heading) {
        return table.column(heading)
                .orElseThrow(() -> InputException.of(table.file(), "there is no column " + heading));
    }

    private static double number(ColumnTable table, int row, int column, String heading) {
        double value;
        try {
            value = Double.parseDouble(table.text(row, column).strip());
        } catch (NumberFormatException e) {
            throw InputException.atCell(table.file(), row + 1, heading, "is not a number");
        }
        boolean strokes = heading.equals("strokes");
        if (!(value > 0.0 && value <= 1_000.0) || (strokes && !(value >= 1.0 && value <= 10.0))) {
            throw InputException.atCell(
                    table.file(),
                    row + 1,
                    heading,
                    strokes ? "must be from 1 to 10" : "must be above 0 and at most 1000");
        }
        return value;
    }

    private static void rising(String file, String name, NavigableMap<Double, Double> rows) {
        double before = 0.0;
        for (double strokes : rows.values()) {
            if (strokes < before) {
                throw InputException.of(
                        file,
                        "the strokes from " + name + " fall from " + before + " to " + strokes
                                + " as the distance grows");
            }
            before = strokes;
        }
    }

    /**
     * The lies of the table.
     *
     * @return the names in the order of the table, unmodifiable
     */
    public Set<String> lies() {
        return java.util.Collections.unmodifiableSet(lies.keySet());
    }

    /**
     * The average number of strokes to hole out.
     *
     * @param lie a lie of the table
     * @param distance how far from the hole, at least 0 and at most the farthest row of that lie
     * @return the strokes; 0 on the hole
     * @throws IllegalArgumentException if the table has no such lie, or none so far
     */
    public double strokes(String lie, Length distance) {
        NavigableMap<Double, Double> rows = lies.get(lie);
        if (rows == null) {
            throw new IllegalArgumentException("the table has no lie \"" + lie + "\"; it has "
                    + String.join(", ", new ArrayList<>(lies.keySet())));
        }
        double far = distance.meters();
        if (!(far >= 0.0 && far <= rows.lastKey() + 1e-9)) {
            throw new IllegalArgumentException("distance must be in [0, " + rows.lastKey() + "] m for the lie " + lie
                    + ", but was " + far + "; add rows to the table");
        }
        if (far == 0.0) {
            return 0.0;
        }
        Map.Entry<Double, Double> below = rows.floorEntry(far);
        Map.Entry<Double, Double> above = rows.ceilingEntry(far);
        if (below == null || above == null) {
            return (below == null ? rows.firstEntry() : rows.lastEntry()).getValue();
        }
        double width = above.getKey() - below.getKey();
        double share = width > 0.0 ? (far - below.getKey()) / width : 0.0;
        return below.getValue() + share * (above.getValue() - below.getValue());
    }

    @Override
    public String toString() {
        return "strokes from " + String.join(", ", lies.keySet());
    }
}
