package dev.teeward.fitting.io;

import dev.teeward.fitting.io.ColumnTable.HeaderLine;
import java.util.ArrayList;
import java.util.List;

/**
 * A file divided into its header block and its table, with the separator of the table.
 *
 * @param file the name of the file
 * @param header the lines that begin with a number sign before the table
 * @param table everything from the heading on
 * @param delimiter the character between cells
 */
record TableText(String file, List<HeaderLine> header, String table, char delimiter) {
    static TableText of(String text, String file) {
        List<HeaderLine> header = new ArrayList<>();
        int start = 0;
        int number = 1;
        while (start < text.length()) {
            int end = lineEnd(text, start);
            String line = text.substring(start, end).strip();
            if (!line.isEmpty() && line.charAt(0) != '#') {
                break;
            }
            if (!line.isEmpty()) {
                header.add(new HeaderLine(number, line.substring(1).strip()));
            }
            boolean pair = text.startsWith("\r\n", end);
            start = Math.min(text.length(), end + (pair ? 2 : 1));
            number++;
        }
        if (start >= text.length()) {
            throw InputException.of(file, header.isEmpty() ? "is empty" : "has a header block but no table");
        }
        String table = text.substring(start);
        char delimiter = delimiter(table);
        refuseOpenQuote(table, delimiter, file);
        return new TableText(file, header, table, delimiter);
    }

    private static int lineEnd(String text, int start) {
        int i = start;
        while (i < text.length() && text.charAt(i) != '\n' && text.charAt(i) != '\r') {
            i++;
        }
        return i;
    }

    /** The separator that occurs most often in the heading, outside of quotation marks. */
    private static char delimiter(String table) {
        int commas = 0;
        int semicolons = 0;
        int tabs = 0;
        boolean quoted = false;
        for (int i = 0; i < table.length(); i++) {
            char c = table.charAt(i);
            if (c == '"') {
                quoted = !quoted;
            } else if (!quoted) {
                if (c == '\n' || c == '\r') {
                    break;
                }
                commas += c == ',' ? 1 : 0;
                semicolons += c == ';' ? 1 : 0;
                tabs += c == '\t' ? 1 : 0;
            }
        }
        if (semicolons > commas && semicolons >= tabs) {
            return ';';
        }
        return tabs > commas ? '\t' : ',';
    }

    /** The CSV parser takes a quotation mark that is never closed for closed at the end; that would swallow the table. */
    private static void refuseOpenQuote(String table, char delimiter, String file) {
        if (table.indexOf('"') < 0) {
            return;
        }
        boolean quoted = false;
        boolean fieldStart = true;
        boolean blank = true;
        int row = 0;
        int opened = 0;
        for (int i = 0; i < table.length(); i++) {
            char c = table.charAt(i);
            if (quoted) {
                if (c == '"' && i + 1 < table.length() && table.charAt(i + 1) == '"') {
                    i++;
                } else if (c == '"') {
                    quoted = false;
                }
            } else if (c == '"' && fieldStart) {
                quoted = true;
                fieldStart = false;
                blank = false;
                opened = row;
            } else if (c == '\n' || c == '\r') {
                row += blank ? 0 : 1;
                blank = true;
                fieldStart = true;
            } else {
                blank = false;
                fieldStart = c == delimiter;
            }
        }
        if (quoted) {
            throw InputException.at(
                    file, opened == 0 ? "heading" : "row " + opened, "has a quotation mark that is never closed");
        }
    }
}
