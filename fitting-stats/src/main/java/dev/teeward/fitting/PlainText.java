package dev.teeward.fitting;

/** Refuses text that a file could not give back. */
final class PlainText {
    private PlainText() {}

    /** Text of a table cell: line breaks and tabs are allowed, other control characters are not. */
    static String cell(String name, String text) {
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (Character.isISOControl(c) && c != '\n' && c != '\r' && c != '\t') {
                throw new IllegalArgumentException(String.format(
                        java.util.Locale.ROOT, "%s must not contain control characters, but has U+%04X", name, (int)
                                c));
            }
            if (Character.isSurrogate(c)) {
                boolean paired = Character.isHighSurrogate(c)
                        && i + 1 < text.length()
                        && Character.isLowSurrogate(text.charAt(i + 1));
                if (!paired) {
                    throw new IllegalArgumentException(name + " must not contain half of a surrogate pair");
                }
                i++;
            }
        }
        return text;
    }

    /** One line that is not blank, without the space around it. */
    static String line(String name, String text) {
        String line = cell(name, text).strip();
        if (line.isEmpty()) {
            throw new IllegalArgumentException(name + " must not be blank");
        }
        for (int i = 0; i < line.length(); i++) {
            if (Character.isISOControl(line.charAt(i))) {
                throw new IllegalArgumentException(name + " must be one line without tabs");
            }
        }
        return line;
    }

    /** The part before the colon of a header line. */
    static String headerName(String name, String text) {
        String line = line(name, text);
        if (line.contains(":")) {
            throw new IllegalArgumentException(name + " must not contain a colon, but was \"" + line + "\"");
        }
        return line;
    }
}
