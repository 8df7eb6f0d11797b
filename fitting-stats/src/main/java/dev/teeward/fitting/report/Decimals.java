package dev.teeward.fitting.report;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** Numbers as text of pictures: always with a point, never in scientific notation, never minus zero. */
final class Decimals {
    /** Far above the error of a product of doubles below {@link #LARGE}: only closer to a tie must its digits be looked at. */
    private static final double NEAR_TIE = 1e-6;

    private static final double LARGE = 1e6;

    private Decimals() {}

    /** A coordinate to a tenth, without trailing zero. */
    static String coordinate(double value) {
        double tenths = 10.0 * value;
        boolean nearTie = Math.abs(tenths - Math.floor(tenths) - 0.5) < NEAR_TIE;
        return nearTie || !(Math.abs(value) < LARGE) ? rounded(value, 1, true) : ofTenths((long) Math.rint(tenths));
    }

    private static String ofTenths(long tenths) {
        long size = Math.abs(tenths);
        String whole = tenths < 0 ? "-" + size / 10 : Long.toString(size / 10);
        return size % 10 == 0 ? whole : whole + "." + size % 10;
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
