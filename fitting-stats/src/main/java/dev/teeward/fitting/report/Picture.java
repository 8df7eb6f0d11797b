package dev.teeward.fitting.report;

import java.util.Objects;

/**
 * A picture of a report: an SVG fragment with a title and a description for those who cannot see it.
 *
 * <p>Immutable and thread-safe.
 */
public final class Picture {
    private final String id;
    private final String title;
    private final String description;
    private final String svg;

    private Picture(String id, String title, String description, String svg) {
        this.id = id;
        this.title = title;
        this.description = description;
        this.svg = svg;
    }

    /**
     * A picture.
     *
     * @param id a stable name, lower-case words joined by hyphens
     * @param title the title, plain text
     * @param description what is to be seen, plain text
     * @param svg one {@code svg} element, escaped, with the title and the description in it
     * @return the picture
     */
    public static Picture of(String id, String title, String description, String svg) {
        return new Picture(
                Objects.requireNonNull(id, "id"),
                Objects.requireNonNull(title, "title"),
                Objects.requireNonNull(description, "description"),
                Objects.requireNonNull(svg, "svg"));
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
     * The title.
     *
     * @return plain text
     */
    public String title() {
        return title;
    }

    /**
     * What is to be seen.
     *
     * @return plain text
     */
    public String description() {
        return description;
    }

    /**
     * The picture itself.
     *
     * @return one {@code svg} element that needs nothing outside itself but the page's colours
     */
    public String svg() {
        return svg;
    }
}
