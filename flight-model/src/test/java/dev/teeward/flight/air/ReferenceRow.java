package dev.teeward.flight.air;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** One row of {@code atmosphere_checks.csv}: quantity, inputs, value, unit, source. */
record ReferenceRow(String quantity, String inputs, String value, String unit, String source) {
    private static final Pattern FIELD = Pattern.compile("\"([^\"]*)\"(?:,|$)|([^,]*)(?:,|$)");
    private static final Pattern NUMBER = Pattern.compile("(-?[0-9.]+(?:e-?[0-9]+)?) ?(\\S*).*");

    static List<ReferenceRow> readAll() {
        try (InputStream in = Objects.requireNonNull(
                ReferenceRow.class.getResourceAsStream("atmosphere_checks.csv"), "atmosphere_checks.csv")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .skip(1)
                    .map(ReferenceRow::parse)
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static ReferenceRow parse(String line) {
        List<String> fields = new ArrayList<>();
        Matcher matcher = FIELD.matcher(line);
        while (fields.size() < 6 && matcher.find()) {
            fields.add(matcher.group(1) != null ? matcher.group(1) : matcher.group(2));
        }
        return new ReferenceRow(fields.get(0), fields.get(1), fields.get(2), fields.get(3), fields.get(4));
    }

    /** Printed by someone, as opposed to worked out from formulas. */
    boolean published() {
        return source.startsWith("published");
    }

    double expected() {
        return Double.parseDouble(value);
    }

    /** An input in SI, or in degrees for a latitude. */
    double input(String name) {
        for (String part : inputs.split(";", -1)) {
            String trimmed = part.trim();
            if (trimmed.startsWith(name + "=")) {
                Matcher matcher = NUMBER.matcher(trimmed.substring(name.length() + 1));
                if (matcher.matches()) {
                    return toSi(Double.parseDouble(matcher.group(1)), matcher.group(2));
                }
            }
        }
        throw new IllegalStateException("no input " + name + " in " + this);
    }

    private double toSi(double number, String symbol) {
        return switch (symbol) {
            case "C" -> number + 273.15;
            case "mbar", "hPa" -> number * 100.0;
            case "inHg" -> number * 3386.38864034; // conventional inch of mercury, ISO 80000-4 annex
            case "ft" -> number * 0.3048;
            case "", "K", "Pa", "m", "m/s" -> number;
            default -> throw new IllegalStateException("unknown unit " + symbol + " in " + this);
        };
    }

    /** Half a unit of the last digit printed. */
    double halfLastDigit() {
        return new BigDecimal(value).ulp().doubleValue() / 2.0;
    }

    /** Half a unit of the n-th significant digit, for tables whose trailing zeros got lost. */
    double halfDigit(int significant) {
        BigDecimal number = new BigDecimal(value);
        int exponent = number.precision() - number.scale() - significant;
        return BigDecimal.ONE.scaleByPowerOfTen(exponent).doubleValue() / 2.0;
    }
}
