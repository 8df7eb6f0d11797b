package dev.teeward.fitting.report;

import java.util.List;
import java.util.Objects;

/**
 * A titled group of sentences.
 *
 * <p>Immutable and thread-safe.
 */
public final class Section {
    private final String id;
    private final String title;
    private final List<Sentence> sentences;

    private Section(String id, String title, List<Sentence> sentences) {
        this.id = id;
        this.title = title;
        this.sentences = sentences;
    }

    /**
     * A section.
     *
     * @param id a stable name, lower-case words joined by hyphens
     * @param title the heading, plain text
     * @param sentences the sentences, in order
     * @return the section
     */
    public static Section of(String id, String title, List<Sentence> sentences) {
        return new Section(
                Objects.requireNonNull(id, "id"), Objects.requireNonNull(title, "title"), List.copyOf(sentences));
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
     * The heading.
     *
     * @return plain text
     */
    public String title() {
        return title;
    }

    /**
     * The sentences.
     *
     * @return the sentences in order, unmodifiable
     */
    public List<Sentence> sentences() {
        return sentences;
    }
}
