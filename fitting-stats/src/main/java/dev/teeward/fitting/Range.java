package dev.teeward.fitting;

/** The one wording of a number that lies outside its range. */
final class Range {
    private Range() {}

    static void check(String name, double value, double lower, double upper, String unit) {
        if (!(value >= lower && value <= upper)) {
            throw new IllegalArgumentException(name + " must be in [" + plain(lower) + ", " + plain(upper) + "] " + unit
                    + ", but was " + plain(value) + " " + unit);
        }
    }

    private static String plain(double value) {
        return new java.math.BigDecimal(value)
                .round(new java.math.MathContext(6))
                .stripTrailingZeros()
                .toPlainString();
    }
}
