package dev.teeward.fitting.report;

import dev.teeward.fitting.VisibleText;

/**
 * The names of two clubs as pages show them: on one line, without what does not show, a long one without its middle. The data
 * and the descriptions of the pictures have the whole names. Two names that look the same when shortened get a number.
 *
 * @param first the first club
 * @param second the second club
 */
record ShownNames(String first, String second) {
    private static final int LONGEST = 48;
    private static final int END = 12;

    static ShownNames of(String first, String second) {
        String one = shortened(VisibleText.line(first));
        String two = shortened(VisibleText.line(second));
        return one.equals(two) ? new ShownNames(one + " (1)", two + " (2)") : new ShownNames(one, two);
    }

    /** The names of a report, by its data. */
    static ShownNames of(ReportData data) {
        return of(String.valueOf(data.value("/clubs/first/name")), String.valueOf(data.value("/clubs/second/name")));
    }

    /** A text with a name in it as pages show it, if the name is a long one. */
    static String within(String text, String name, String shown) {
        return name.codePointCount(0, name.length()) > LONGEST ? text.replace(name, shown) : text;
    }

    private static String shortened(String name) {
        int[] characters = name.codePoints().toArray();
        if (characters.length <= LONGEST) {
            return name;
        }
        int start = LONGEST - END - 3;
        return new String(characters, 0, start).strip() + "..."
                + new String(characters, characters.length - END, END).strip();
    }
}
