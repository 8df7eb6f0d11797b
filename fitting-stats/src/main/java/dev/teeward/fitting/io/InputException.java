package dev.teeward.fitting.io;

import java.io.Serial;
import java.util.Optional;
import java.util.OptionalInt;
import org.jspecify.annotations.Nullable;

/**
 * A file that cannot be used as it is, said in one line: {@code FILE: row 7, ball_speed_mph: "fast" is not a number}.
 *
 * <p>Rows are data rows counted from 1, the first row under the heading; blank lines and the header block are not counted.
 * What concerns no row names its place otherwise: {@code heading}, {@code header line 3}, {@code line 3} of a mapping. The
 * message never has more than one line, whatever the file contains.
 */
public final class InputException extends RuntimeException {
    @Serial
    private static final long serialVersionUID = 1L;

    /** The longest piece of somebody else's text that is quoted. */
    private static final int LONGEST_QUOTE = 60;

    /** The name of the file. */
    private final String file;

    /** The data row, or 0. */
    private final int row;

    /** The column, or null. */
    private final @Nullable String column;

    private InputException(String file, String place, int row, @Nullable String column, String text) {
        super(oneLine(file + ": " + place + (place.isEmpty() || column == null ? "" : ", ")
                + (column == null ? "" : shorten(column)) + (place.isEmpty() && column == null ? "" : ": ") + text));
        this.file = file;
        this.row = row;
        this.column = column;
    }

    /**
     * Something is wrong with the file as a whole.
     *
     * @param file the name of the file
     * @param text what is wrong
     * @return the exception
     */
    public static InputException of(String file, String text) {
        return new InputException(file, "", 0, null, text);
    }

    /**
     * Something is wrong with a cell.
     *
     * @param file the name of the file
     * @param row the data row, from 1
     * @param column the heading of the column
     * @param text what is wrong
     * @return the exception
     */
    public static InputException atCell(String file, int row, String column, String text) {
        return new InputException(file, "row " + row, row, column, text);
    }

    /**
     * Something is wrong with a row.
     *
     * @param file the name of the file
     * @param row the data row, from 1
     * @param text what is wrong
     * @return the exception
     */
    public static InputException atRow(String file, int row, String text) {
        return new InputException(file, "row " + row, row, null, text);
    }

    /**
     * Something is wrong with the heading of the table.
     *
     * @param file the name of the file
     * @param column the column concerned
     * @param text what is wrong
     * @return the exception
     */
    public static InputException atHeading(String file, String column, String text) {
        return new InputException(file, "heading", 0, column, text);
    }

    /**
     * Something is wrong elsewhere.
     *
     * @param file the name of the file
     * @param place the place, such as {@code header line 3}
     * @param text what is wrong
     * @return the exception
     */
    static InputException at(String file, String place, String text) {
        return new InputException(file, place, 0, null, text);
    }

    /**
     * The one line.
     *
     * @return the file, the place and what is wrong there
     */
    @Override
    public String getMessage() {
        return String.valueOf(super.getMessage());
    }

    /**
     * The file.
     *
     * @return the name as it was given to the reader
     */
    public String file() {
        return file;
    }

    /**
     * The data row.
     *
     * @return the row, from 1, or empty if no row is concerned
     */
    public OptionalInt row() {
        return row > 0 ? OptionalInt.of(row) : OptionalInt.empty();
    }

    /**
     * The column.
     *
     * @return the heading, or empty if no column is concerned
     */
    public Optional<String> column() {
        return Optional.ofNullable(column);
    }

    /** Somebody else's text in quotation marks, shortened. */
    static String quote(String text) {
        return "\"" + shorten(text) + "\"";
    }

    private static String shorten(String text) {
        if (text.length() <= LONGEST_QUOTE) {
            return text;
        }
        return text.substring(0, text.offsetByCodePoints(0, Math.min(40, text.codePointCount(0, text.length()))))
                + "...";
    }

    private static String oneLine(String text) {
        StringBuilder line = new StringBuilder(text.length());
        text.codePoints().forEach(c -> {
            boolean breaks = Character.isISOControl(c) || c == 0x2028 || c == 0x2029;
            line.appendCodePoint(breaks || Character.getType(c) == Character.SURROGATE ? '?' : c);
        });
        return line.toString();
    }
}
