package dev.teeward.fitting.io;

/**
 * Strict decimal numbers: an optional sign, digits with at most one decimal mark, an optional exponent. No thousands
 * separators, no hexadecimal, no suffixes, no words.
 *
 * <p>In a table separated by commas the mark is a point. In others it may be a comma as well, but it has to be the same in
 * the whole table. One object belongs to one table and is not thread-safe.
 */
final class Decimal {
    /** Powers of ten that are exact in binary. */
    private static final double[] POWERS = {
        1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19,
        1e20, 1e21, 1e22
    };

    private static final long EXACT = 1L << 53;

    private final boolean commaAllowed;
    private char mark;
    private String problem = "";

    Decimal(boolean commaAllowed) {
        this.commaAllowed = commaAllowed;
    }

    boolean usesComma() {
        return mark == ',';
    }

    /** What was wrong with the last number. */
    String problem() {
        return problem;
    }

    double parse(String text) {
        return parse(text.toCharArray(), 0, text.length());
    }

    /** The number, or NaN if there is something wrong, which {@link #problem()} then says. */
    double parse(char[] text, int from, int to) {
        int i = from;
        boolean negative = false;
        if (i < to && (text[i] == '-' || text[i] == '+')) {
            negative = text[i] == '-';
            i++;
        }
        long mantissa = 0L;
        int digits = 0;
        int scale = 0;
        char seen = 0;
        boolean exact = true;
        for (; i < to; i++) {
            char c = text[i];
            if (c >= '0' && c <= '9') {
                digits++;
                exact &= mantissa <= (EXACT - 9L) / 10L;
                mantissa = exact ? 10L * mantissa + (c - '0') : mantissa;
                scale += seen == 0 ? 0 : 1;
            } else if (seen == 0 && (c == '.' || (c == ',' && commaAllowed))) {
                seen = c;
            } else {
                break;
            }
        }
        if (digits == 0) {
            return wrong("is not a number");
        }
        if (i < to) {
            int end = exponentEnd(text, i, to);
            if (end != to) {
                boolean separator = text[i] == ',' || text[i] == '.' || text[i] == '\'' || text[i] == ' ';
                return wrong(
                        separator
                                ? "is not a number; write it without separators between thousands"
                                : "is not a number");
            }
            exact = false;
        }
        if (seen != 0) {
            if (mark != 0 && mark != seen) {
                return wrong(
                        "has a decimal " + markName(seen) + ", but numbers above it have a decimal " + markName(mark));
            }
            mark = seen;
        }
        if (exact && scale < POWERS.length) {
            double size = mantissa / POWERS[scale];
            return negative ? 0.0 - size : size;
        }
        double value = Double.parseDouble(new String(text, from, to - from).replace(',', '.'));
        return Double.isFinite(value) ? value + 0.0 : wrong("is too large a number");
    }

    private double wrong(String text) {
        problem = text;
        return Double.NaN;
    }

    private static String markName(char mark) {
        return mark == ',' ? "comma" : "point";
    }

    private static int exponentEnd(char[] text, int from, int to) {
        int i = from;
        if (text[i] != 'e' && text[i] != 'E') {
            return from;
        }
        i++;
        if (i < to && (text[i] == '-' || text[i] == '+')) {
            i++;
        }
        int first = i;
        while (i < to && text[i] >= '0' && text[i] <= '9') {
            i++;
        }
        return i > first ? i : from;
    }
}
