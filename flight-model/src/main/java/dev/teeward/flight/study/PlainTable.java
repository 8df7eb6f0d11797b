package dev.teeward.flight.study;

import dev.teeward.quantity.AngleUnit;
import dev.teeward.quantity.DurationUnit;
import dev.teeward.quantity.LengthUnit;
import dev.teeward.quantity.PressureUnit;
import dev.teeward.quantity.RatioUnit;
import dev.teeward.quantity.SpeedUnit;
import dev.teeward.quantity.SpinRateUnit;
import dev.teeward.quantity.TemperatureUnit;
import dev.teeward.quantity.Unit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** A small table of comma-separated values with the unit in the name of each column; lines that begin with # are notes. */
final class PlainTable {
    private static final List<Unit> UNITS = Stream.<Unit[]>of(
                    LengthUnit.values(),
                    SpeedUnit.values(),
                    AngleUnit.values(),
                    SpinRateUnit.values(),
                    TemperatureUnit.values(),
                    PressureUnit.values(),
                    RatioUnit.values(),
                    DurationUnit.values())
            .flatMap(Stream::of)
            .toList();

    private static final String SEMICOLON =
            "; cells are separated by commas, not semicolons, and numbers have a decimal point";

    private final List<String> heading;
    private final List<List<String>> rows = new ArrayList<>();
    private final List<Integer> lines = new ArrayList<>();

    PlainTable(String text) {
        List<String> head = List.of();
        int line = 0;
        for (String raw : (text.startsWith("\uFEFF") ? text.substring(1) : text).split("\\R", -1)) {
            line++;
            if (raw.isBlank() || raw.startsWith("#")) {
                continue;
            }
            List<String> cells = cells(raw, line);
            if (head.isEmpty()) {
                head = cells;
            } else if (cells.size() == head.size()) {
                rows.add(cells);
                lines.add(line);
            } else {
                throw new IllegalArgumentException("line " + line + " has " + cells.size()
                        + " cells, but the heading has " + head.size() + (raw.indexOf(';') >= 0 ? SEMICOLON : ""));
            }
        }
        if (head.isEmpty()) {
            throw new IllegalArgumentException("there is no heading: the first line names the columns");
        }
        heading = head;
        for (int i = 0; i < head.size(); i++) {
            if (head.indexOf(head.get(i)) != i) {
                throw new IllegalArgumentException("column " + head.get(i) + " is there twice");
            }
        }
    }

    private static List<String> cells(String line, int number) {
        List<String> cells = new ArrayList<>();
        StringBuilder cell = new StringBuilder();
        boolean quoted = false;
        for (int i = 0; i < line.length(); i++) {
            char c = line.charAt(i);
            if (c == '"' && quoted && i + 1 < line.length() && line.charAt(i + 1) == '"') {
                cell.append(c);
                i++;
            } else if (c == '"') {
                quoted = !quoted;
            } else if (c == ',' && !quoted) {
                cells.add(cell.toString().strip());
                cell.setLength(0);
            } else {
                cell.append(c);
            }
        }
        if (quoted) {
            throw new IllegalArgumentException("line " + number + " ends within a quoted cell");
        }
        cells.add(cell.toString().strip());
        return cells;
    }

    int rows() {
        return rows.size();
    }

    /** The line of the file, for messages. */
    int line(int row) {
        return lines.get(row);
    }

    /** A cell of text; empty if there is no such column. */
    String text(int row, String column) {
        int at = heading.indexOf(column);
        return at < 0 ? "" : rows.get(row).get(at);
    }

    /** Refuses columns that nobody has asked for, so that a misspelt one is not passed over. */
    void onlyKnown(List<String> texts, List<Quantity> quantities) {
        for (String column : heading) {
            if (!texts.contains(column) && quantities.stream().noneMatch(q -> unit(q, column) != null)) {
                throw new IllegalArgumentException(
                        "column \"" + column + "\" is not known" + hint(column, texts, quantities));
            }
        }
    }

    /** What is wrong with the name of a column: the separator, the unit, or all of it. */
    private String hint(String column, List<String> texts, List<Quantity> quantities) {
        if (heading.size() == 1 && column.indexOf(';') >= 0) {
            return SEMICOLON;
        }
        return quantities.stream()
                .filter(q -> column.equals(q.key()) || column.startsWith(q.key() + "_"))
                .max(Comparator.comparingInt(q -> q.key().length()))
                .map(q -> "; the unit ends the name: " + names(q))
                .orElseGet(() -> "; the unit ends the name, as in ball_speed_mph, and known are " + texts + " and "
                        + quantities.stream().map(Quantity::key).toList());
    }

    /** The names that a column of a quantity may have, one for each unit. */
    static String names(Quantity quantity) {
        List<String> names = UNITS.stream()
                .filter(unit -> unit.siUnit().equals(quantity.siUnit()))
                .map(quantity::column)
                .distinct()
                .toList();
        return names.size() == 1
                ? names.get(0)
                : String.join(", ", names.subList(0, names.size() - 1)) + " or " + names.get(names.size() - 1);
    }

    /** A number in SI; empty if there is no such column or nothing in the cell. */
    OptionalDouble si(int row, Quantity quantity) {
        OptionalInt found = OptionalInt.empty();
        for (int i = 0; i < heading.size(); i++) {
            if (unit(quantity, heading.get(i)) != null) {
                if (found.isPresent()) {
                    throw new IllegalArgumentException(quantity.key() + " is there twice, as "
                            + heading.get(found.getAsInt()) + " and " + heading.get(i));
                }
                found = OptionalInt.of(i);
            }
        }
        if (found.isEmpty() || rows.get(row).get(found.getAsInt()).isEmpty()) {
            return OptionalDouble.empty();
        }
        String column = heading.get(found.getAsInt());
        String cell = rows.get(row).get(found.getAsInt());
        Unit unit = unit(quantity, column);
        double value;
        try {
            value = Double.parseDouble(cell);
        } catch (NumberFormatException e) {
            throw new IllegalArgumentException(
                    "line " + line(row) + ", column " + column + ": \"" + cell
                            + "\" is not a number with a decimal point",
                    e);
        }
        if (!Double.isFinite(value) || unit == null) {
            throw new IllegalArgumentException(
                    "line " + line(row) + ", column " + column + ": must be finite, but was " + cell);
        }
        return OptionalDouble.of(unit.toSi(value));
    }

    private static @Nullable Unit unit(Quantity quantity, String column) {
        for (Unit unit : UNITS) {
            if (unit.siUnit().equals(quantity.siUnit()) && quantity.column(unit).equals(column)) {
                return unit;
            }
        }
        return null;
    }

    /** What a column measures. */
    record Quantity(String key, Unit siUnit) {
        /** The name of a column in this unit. */
        String column(Unit unit) {
            return unit.suffix().isEmpty() ? key : key + "_" + unit.suffix();
        }
    }
}
