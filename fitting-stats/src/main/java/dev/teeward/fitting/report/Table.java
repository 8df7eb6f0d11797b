package dev.teeward.fitting.report;

import java.util.List;
import java.util.Objects;

/**
 * A table of a report: a caption, headings and rows of plain text. The first cell of a row names the row.
 *
 * <p>Immutable and thread-safe.
 */
public final class Table {
    private final String id;
    private final String caption;
    private final List<String> headings;
    private final List<List<String>> rows;

    private Table(String id, String caption, List<String> headings, List<List<String>> rows) {
        this.id = id;
        this.caption = caption;
        this.headings = headings;
        this.rows = rows;
    }

    /**
     * A table.
     *
     * @param id a stable name, lower-case words joined by hyphens
     * @param caption what it shows, plain text
     * @param headings the headings of the columns
     * @param rows the rows, each with as many cells as there are headings
     * @return the table
     * @throws IllegalArgumentException if a row has another number of cells
     */
    public static Table of(String id, String caption, List<String> headings, List<List<String>> rows) {
        for (List<String> row : rows) {
            if (row.size() != headings.size()) {
                throw new IllegalArgumentException(
                        "a row of " + headings.size() + " cells is needed, but one has " + row.size() + ": " + row);
            }
        }
        return new Table(
                Objects.requireNonNull(id, "id"),
                Objects.requireNonNull(caption, "caption"),
                List.copyOf(headings),
                rows.stream().map(List::copyOf).toList());
    }

    /**
     * The stable name.
     *
     * @return lower-case words joined by hyphens
     */
    public String id() {
        return id;
    }

    /**
     * What the table shows.
     *
     * @return plain text
     */
    public String caption() {
        return caption;
    }

    /**
     * The headings of the columns.
     *
     * @return the headings, unmodifiable
     */
    public List<String> headings() {
        return headings;
    }

    /**
     * The rows.
     *
     * @return the rows, each as long as the headings, unmodifiable
     */
    public List<List<String>> rows() {
        return rows;
    }
}
