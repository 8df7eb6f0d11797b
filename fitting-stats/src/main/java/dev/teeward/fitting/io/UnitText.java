package dev.teeward.fitting.io;

import dev.teeward.quantity.Unit;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;

/** Numbers with their units as people write them, {@code 5280 ft}, and back. */
final class UnitText {
    private UnitText() {}

    /** The unit with a symbol or suffix, in upper or lower case; a degree sign stands for deg. */
    static <U extends Unit> Optional<U> find(String text, List<U> units) {
        String plain = text.strip().replace("\u00B0", "deg").toLowerCase(Locale.ROOT);
        return units.stream()
                .filter(unit -> !unit.suffix().isEmpty())
                .filter(unit -> plain.equals(unit.symbol().toLowerCase(Locale.ROOT)) || plain.equals(unit.suffix()))
                .findFirst();
    }

    /** A number and a unit of the dimension. */
    static <U extends Unit> Amount<U> parse(String text, List<U> units, Decimal decimal) {
        int end = 0;
        while (end < text.length() && "+-0123456789.,eE".indexOf(text.charAt(end)) >= 0) {
            end++;
        }
        double value = decimal.parse(text.substring(0, end));
        if (Double.isNaN(value)) {
            throw new IllegalArgumentException(
                    InputException.quote(text) + " " + (end == 0 ? "is not a number with a unit" : decimal.problem()));
        }
        String word = text.substring(end).strip();
        U unit = find(word, units)
                .orElseThrow(() -> new IllegalArgumentException((word.isEmpty()
                                ? InputException.quote(text) + " has no unit"
                                : InputException.quote(word) + " is not a unit for this")
                        + "; use " + list(units)));
        return new Amount<>(value, unit);
    }

    /** A number in a unit. */
    record Amount<U extends Unit>(double value, U unit) {}

    static String list(List<? extends Unit> units) {
        return units.stream()
                .map(Unit::symbol)
                .filter(symbol -> !symbol.isEmpty())
                .collect(Collectors.joining(", "));
    }

    /**
     * The shortest decimal that comes back as exactly the same number in SI; the nearest one of 17 digits if none does.
     */
    static String shortest(double si, Unit unit) {
        if (si == 0.0 && unit.toSi(0.0) == 0.0) {
            return "0";
        }
        BigDecimal full = new BigDecimal(unit.fromSi(si));
        for (int digits = 1; digits <= 17; digits++) {
            BigDecimal rounded = full.round(new MathContext(digits, RoundingMode.HALF_EVEN));
            if (unit.toSi(rounded.doubleValue()) == si) {
                return rounded.stripTrailingZeros().toPlainString();
            }
        }
        return full.round(new MathContext(17)).stripTrailingZeros().toPlainString();
    }

    /** The number in that unit in which it is shortest, with the symbol: the unit in which it was most likely given. */
    static String shortest(double si, List<? extends Unit> units) {
        String best = "";
        for (Unit unit : units) {
            String number = shortest(si, unit);
            String text = number + " " + unit.symbol();
            boolean exact = unit.toSi(Double.parseDouble(number)) == si;
            if (exact && (best.isEmpty() || digits(text) < digits(best))) {
                best = text;
            }
        }
        return best.isEmpty() ? shortest(si, units.get(0)) + " " + units.get(0).symbol() : best;
    }

    private static long digits(String text) {
        return text.chars().filter(Character::isDigit).count();
    }
}
