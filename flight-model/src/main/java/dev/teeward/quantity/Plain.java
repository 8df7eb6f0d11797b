package dev.teeward.quantity;

import java.math.BigDecimal;
import java.math.MathContext;

/** Numbers as text for {@code toString}: at most six significant digits, a point in every locale. */
final class Plain {
    private static final MathContext SIX_DIGITS = new MathContext(6);

    private Plain() {}

    static String number(double value) {
        if (!Double.isFinite(value)) {
            return Double.toString(value);
        }
        BigDecimal rounded = new BigDecimal(value).round(SIX_DIGITS);
        double size = Math.abs(value);
        return size != 0.0 && (size < 1e-4 || size >= 1e9)
                ? Double.toString(rounded.doubleValue())
                : rounded.stripTrailingZeros().toPlainString();
    }

    static String withUnit(double value, Unit unit) {
        return unit.symbol().isEmpty() ? number(value) : number(value) + " " + unit.symbol();
    }

    static String both(double si, Unit siUnit, Unit customary) {
        double other = customary.fromSi(si);
        // 0 degF has to pass through 255 K: what is left of it then is rounding.
        boolean rounding = customary instanceof TemperatureUnit && Math.abs(other) < 1e-9;
        return withUnit(si, siUnit) + " (" + withUnit(rounding ? 0.0 : other, customary) + ")";
    }
}
