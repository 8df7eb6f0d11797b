package dev.teeward.fitting;

import java.text.Normalizer;
import java.util.Locale;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * What a reader sees of a text from outside, such as the name of a club in a file.
 *
 * <p>Some characters do not show or make a text read differently from what it says: zero-width spaces and joiners, soft
 * hyphens, marks that embed, override or isolate text directions, fillers, line and paragraph separators. They are of the
 * general categories Cc, Cf, Zl, Zp, Cs, Co and Cn of the Unicode standard, or have its property
 * Default_Ignorable_Code_Point (Unicode 15, chapter 5.21 and Unicode Technical Report 36, section 2.11, from memory). Letters
 * of different scripts that look alike are not found out.
 *
 * <pre>{@code
 * VisibleText.line("Al\u200Bder\u2028");                      // "Alder"
 * VisibleText.hides("Al\u200Bder");                           // true
 * VisibleText.key("Al\u200Bder").equals(VisibleText.key("ALDER"));  // true: nobody can tell them apart
 * }</pre>
 *
 * <p>Thread-safe.
 */
public final class VisibleText {
    private static final int FIRST_VARIATION = 0xFE00;
    private static final int LAST_VARIATION = 0xFE0F;

    private VisibleText() {}

    /**
     * The text on one line: separators of lines and all kinds of spaces become single spaces, what does not show is dropped.
     *
     * @param text any text
     * @return the line, a question mark if nothing of it shows
     */
    public static String line(String text) {
        StringBuilder line = new StringBuilder(text.length());
        text.codePoints().forEach(c -> {
            if (space(c)) {
                line.append(' ');
            } else if (!hidden(c)) {
                line.appendCodePoint(c);
            }
        });
        String plain = line.toString().strip().replaceAll(" {2,}", " ");
        return plain.isEmpty() ? "?" : plain;
    }

    /**
     * Whether something in a text does not show: whether {@link #line} drops or replaces anything but the usual space.
     *
     * @param text any text
     * @return true if it holds characters that do not show
     */
    public static boolean hides(String text) {
        return text.codePoints().anyMatch(c -> hidden(c) && c != '\n' && c != '\r' && c != '\t');
    }

    /**
     * A form that is equal for two names that a reader cannot tell apart: composed or decomposed (normalization form NFKC,
     * Unicode Standard Annex 15), in upper or lower case, with any kind and number of spaces, with or without what does not
     * show.
     *
     * @param name a name
     * @return the form, for comparing only
     */
    public static String key(String name) {
        String line = line(Normalizer.normalize(Objects.requireNonNull(name, "name"), Normalizer.Form.NFKC));
        StringBuilder plain = new StringBuilder(line.length());
        line.codePoints().filter(c -> !variation(c)).forEach(plain::appendCodePoint);
        String upper = plain.toString().toUpperCase(Locale.ROOT).toLowerCase(Locale.ROOT);
        return line(Normalizer.normalize(upper, Normalizer.Form.NFKC));
    }

    /**
     * How two names that a reader cannot tell apart differ, for a message.
     *
     * @param one a name
     * @param other another with the same {@link #key}
     * @return words such as {@code characters that do not show, spaces or accents (U+200B)}
     */
    public static String difference(String one, String other) {
        boolean letters = line(one).equalsIgnoreCase(line(other)) && !line(one).equals(line(other));
        if (letters) {
            return "upper and lower case";
        }
        Set<Integer> first = one.codePoints().boxed().collect(Collectors.toSet());
        Set<Integer> second = other.codePoints().boxed().collect(Collectors.toSet());
        String only = IntStream.concat(
                        one.codePoints().filter(c -> !second.contains(c)),
                        other.codePoints().filter(c -> !first.contains(c)))
                .distinct()
                .limit(6)
                .mapToObj(c -> String.format(Locale.ROOT, "U+%04X", c))
                .collect(Collectors.joining(", "));
        return "characters that do not show, spaces or accents" + (only.isEmpty() ? "" : " (" + only + ")");
    }

    /**
     * Whether a character does not show, or steers rather than shows.
     *
     * @param character a Unicode code point
     * @return true for those of the class text, line breaks and tabs among them; false for spaces and all that shows
     */
    public static boolean hidden(int character) {
        return switch (Character.getType(character)) {
            case Character.CONTROL,
                    Character.LINE_SEPARATOR,
                    Character.PARAGRAPH_SEPARATOR,
                    Character.FORMAT,
                    Character.SURROGATE,
                    Character.PRIVATE_USE,
                    Character.UNASSIGNED -> true;
            default -> filler(character);
        };
    }

    private static boolean space(int c) {
        return switch (Character.getType(c)) {
            case Character.CONTROL,
                    Character.LINE_SEPARATOR,
                    Character.PARAGRAPH_SEPARATOR,
                    Character.SPACE_SEPARATOR -> true;
            default -> false;
        };
    }

    /** Letters, marks and symbols that take no or only empty room: grapheme joiner, Hangul and Khmer fillers, blank Braille. */
    private static boolean filler(int c) {
        return c == 0x034F
                || c == 0x115F
                || c == 0x1160
                || c == 0x17B4
                || c == 0x17B5
                || (c >= 0x180B && c <= 0x180F)
                || c == 0x2800
                || c == 0x3164
                || c == 0xFFA0
                || (c >= 0xE0100 && c <= 0xE01EF);
    }

    /** Chooses between the forms of the character before it, as of an emoji: it may show, but not by itself. */
    private static boolean variation(int c) {
        return c >= FIRST_VARIATION && c <= LAST_VARIATION;
    }
}
