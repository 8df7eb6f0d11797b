package dev.teeward.fitting.report;

/**
 * How many columns of a terminal a text takes: none for a mark that stands over the letter before it, two for a wide letter
 * (East Asian Wide and Fullwidth, Unicode Standard Annex 11; the blocks from memory), one for any other.
 */
final class Columns {
    private static final int[][] WIDE = {
        {0x1100, 0x115F},
        {0x2E80, 0x303E},
        {0x3041, 0xA4CF},
        {0xAC00, 0xD7A3},
        {0xF900, 0xFAFF},
        {0xFE30, 0xFE6F},
        {0xFF00, 0xFF60},
        {0xFFE0, 0xFFE6},
        {0x1F300, 0x1F64F},
        {0x1F680, 0x1F6FF},
        {0x1F900, 0x1F9FF},
        {0x20000, 0x3FFFD}
    };

    private Columns() {}

    static int of(String text) {
        return text.codePoints().map(Columns::of).sum();
    }

    private static int of(int character) {
        int type = Character.getType(character);
        if (type == Character.NON_SPACING_MARK || type == Character.ENCLOSING_MARK || type == Character.FORMAT) {
            return 0;
        }
        for (int[] block : WIDE) {
            if (character >= block[0] && character <= block[1]) {
                return 2;
            }
        }
        return 1;
    }

    /** The length of the longest start of a text that fits, at least one character. */
    static int fitting(String text, int columns) {
        int at = Character.charCount(text.codePointAt(0));
        int used = of(text.codePointAt(0));
        while (at < text.length()) {
            int next = text.codePointAt(at);
            used += of(next);
            if (used > columns) {
                return at;
            }
            at += Character.charCount(next);
        }
        return at;
    }

    /** The text, its end replaced by two points if it takes too much room. */
    static String cut(String text, int columns) {
        return of(text) <= columns ? text : text.substring(0, fitting(text, columns - 2)) + "..";
    }
}
