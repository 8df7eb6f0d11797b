package dev.teeward.fitting.report;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** Numbers as text of pictures: always with a point, never in scientific notation, never minus zero. */
final class Decimals {
    private Decimals() {}

    /** A coordinate to a tenth, without trailing zero. */
    static String coordinate(double value) {
        return rounded(value, 1, true);
    }

    /** A number with a fixed count of decimals, with a real minus sign. */
    static String label(double value, int decimals) {
        return rounded(value, decimals, false).replace('-', '\u2212');
    }

    private static String rounded(double value, int decimals, boolean strip) {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException("only finite numbers can be drawn, but one was " + value);
        }
        BigDecimal rounded = BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_EVEN);
        if (rounded.signum() == 0) {
            rounded = strip ? BigDecimal.ZERO : BigDecimal.ZERO.setScale(decimals);
        } else if (strip) {
            rounded = rounded.stripTrailingZeros();
        }
        return rounded.toPlainString();
    }
}
