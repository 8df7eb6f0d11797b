package dev.teeward.flight.aero;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.Reader;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;

/** The text form of a {@link TableAerodynamics}: plain numbers, no quotes, every complaint with the line it is about. */
final class CoefficientCsv {
    private static final List<String> COLUMNS =
            List.of("reynolds_number", "spin_ratio", "drag_coefficient", "lift_coefficient");
    private static final String REFERENCE = "# reference:";

    private final String name;
    private final Map<Node, Row> rows = new TreeMap<>();
    private int[] order = {};
    private String reference = "";

    private CoefficientCsv(String name) {
        this.name = name;
    }

    private record Node(double re, double s) implements Comparable<Node> {
        @Override
        public int compareTo(Node other) {
            int byRe = Double.compare(re, other.re);
            return byRe != 0 ? byRe : Double.compare(s, other.s);
        }
    }

    private record Row(int line, double drag, double lift) {}

    static TableAerodynamics read(Reader reader, String name) throws IOException {
        CoefficientCsv table = new CoefficientCsv(name);
        BufferedReader lines = new BufferedReader(reader);
        int number = 0;
        for (String line = lines.readLine(); line != null; line = lines.readLine()) {
            number++;
            table.take(number, number == 1 && line.startsWith("\uFEFF") ? line.substring(1) : line);
        }
        return table.build();
    }

    private void take(int number, String line) {
        if (line.startsWith(REFERENCE)) {
            reference = line.substring(REFERENCE.length()).strip();
        } else if (!line.isBlank() && !line.startsWith("#")) {
            String[] cells = line.split(",", -1);
            for (int i = 0; i < cells.length; i++) {
                cells[i] = cells[i].strip();
            }
            if (order.length == 0) {
                heading(number, cells);
            } else {
                row(number, cells);
            }
        }
    }

    private void heading(int number, String[] cells) {
        order = new int[COLUMNS.size()];
        List<String> names = Arrays.asList(cells);
        for (int i = 0; i < order.length; i++) {
            order[i] = names.indexOf(COLUMNS.get(i));
        }
        if (!(cells.length == COLUMNS.size() && Arrays.stream(order).allMatch(at -> at >= 0))) {
            throw error(
                    number,
                    "the heading must name the columns " + String.join(",", COLUMNS) + " in any order, but was "
                            + String.join(",", cells)
                            + (cells[0].indexOf(';') >= 0
                                    ? "; cells are separated by commas, not semicolons, and decimals have a point"
                                    : ""));
        }
    }

    private void row(int number, String[] cells) {
        if (cells.length != COLUMNS.size()) {
            throw error(
                    number,
                    "a row must have " + COLUMNS.size() + " cells, but had " + cells.length
                            + (String.join("", cells).indexOf(';') >= 0
                                    ? "; cells are separated by commas, not semicolons, and decimals have a point"
                                    : ""));
        }
        double[] values = new double[COLUMNS.size()];
        for (int i = 0; i < values.length; i++) {
            values[i] = number(number, COLUMNS.get(i), cells[order[i]]);
        }
        Node node = new Node(
                within(number, COLUMNS.get(0), values[0], 0.0, 1e7),
                within(number, COLUMNS.get(1), values[1], 0.0, 10.0));
        Row row = new Row(
                number,
                within(number, COLUMNS.get(2), values[2], 0.0, 5.0),
                within(number, COLUMNS.get(3), values[3], -5.0, 5.0));
        Row before = rows.putIfAbsent(node, row);
        if (before != null) {
            throw error(number, "the point Re " + node.re + ", S " + node.s + " is already on line " + before.line);
        }
    }

    /** A finite decimal number; the sign of 0 is dropped, so that equal points are equal. */
    private double number(int line, String column, String cell) {
        try {
            double value = Double.parseDouble(cell);
            char last = cell.charAt(cell.length() - 1);
            if (Double.isFinite(value) && (Character.isDigit(last) || last == '.') && cell.indexOf('x') < 0) {
                return value + 0.0;
            }
        } catch (NumberFormatException e) {
            throw error(line, column + ": \"" + cell + "\" is not a number");
        }
        throw error(line, column + ": \"" + cell + "\" is not a number");
    }

    private double within(int line, String column, double value, double low, double high) {
        if (!(value >= low && value <= high)) {
            throw error(line, column + " must be in [" + low + ", " + high + "], but was " + value);
        }
        return value;
    }

    private TableAerodynamics build() {
        if (rows.isEmpty()) {
            throw new IllegalArgumentException(name + ": no rows; the heading is " + String.join(",", COLUMNS));
        }
        TreeSet<Double> reSet = new TreeSet<>();
        TreeSet<Double> sSet = new TreeSet<>();
        rows.keySet().forEach(node -> {
            reSet.add(node.re);
            sSet.add(node.s);
        });
        double[] re = reSet.stream().mapToDouble(Double::doubleValue).toArray();
        double[] s = sSet.stream().mapToDouble(Double::doubleValue).toArray();
        if (re.length < 2 || s.length < 2) {
            throw new IllegalArgumentException(
                    name + ": a table needs at least 2 Reynolds numbers and 2 spin ratios, but" + " had " + re.length
                            + " and " + s.length);
        }
        double[][] drag = new double[re.length][s.length];
        double[][] lift = new double[re.length][s.length];
        for (int i = 0; i < re.length; i++) {
            for (int j = 0; j < s.length; j++) {
                Row row = rows.get(new Node(re[i], s[j]));
                if (row == null) {
                    throw new IllegalArgumentException(name + ": the point Re " + re[i] + ", S " + s[j]
                            + " is missing; every Reynolds number must come with every spin ratio");
                }
                drag[i][j] = row.drag;
                lift[i][j] = row.lift;
            }
        }
        TableAerodynamics table;
        try {
            table = TableAerodynamics.of(re, s, drag, lift);
        } catch (IllegalArgumentException e) {
            throw new IllegalArgumentException(name + ": " + e.getMessage(), e);
        }
        return reference.isEmpty() ? table : table.withReference(reference);
    }

    private IllegalArgumentException error(int line, String what) {
        return new IllegalArgumentException(name + ": line " + line + ": " + what);
    }

    static void write(TableAerodynamics table, Appendable out) throws IOException {
        out.append(REFERENCE).append(' ').append(table.reference()).append('\n');
        out.append(String.join(",", COLUMNS)).append('\n');
        double[] re = table.reynoldsNumbers();
        double[] s = table.spinRatios();
        for (int i = 0; i < re.length; i++) {
            for (int j = 0; j < s.length; j++) {
                out.append(re[i] + "," + s[j] + "," + table.drag(i, j) + "," + table.lift(i, j))
                        .append('\n');
            }
        }
    }
}
