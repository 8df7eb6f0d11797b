package dev.teeward.fitting.report;

import java.util.List;
import java.util.Objects;

/**
 * One sentence of a report, with the numbers it quotes.
 *
 * <pre>{@code
 * Sentence s = report.sections().get(0).sentences().get(0);
 * s.text();     // Rowan carries 4.1 yd farther than Alder (95 % interval 1.2 to 7.0 yd).
 * s.numbers();  // 4.1 from /metrics/carry/difference/value, ...
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class Sentence {
    private final String text;
    private final List<QuotedNumber> numbers;

    private Sentence(String text, List<QuotedNumber> numbers) {
        this.text = text;
        this.numbers = numbers;
    }

    /**
     * A sentence.
     *
     * @param text the sentence, plain text, one line
     * @param numbers the numbers in it, in the order in which they stand
     * @return the sentence
     */
    public static Sentence of(String text, List<QuotedNumber> numbers) {
        return new Sentence(Objects.requireNonNull(text, "text"), List.copyOf(numbers));
    }

    /**
     * The sentence.
     *
     * @return plain text, one line; not escaped for any markup
     */
    public String text() {
        return text;
    }

    /**
     * The numbers in the sentence.
     *
     * @return the numbers, in the order in which they stand, unmodifiable
     */
    public List<QuotedNumber> numbers() {
        return numbers;
    }

    @Override
    public String toString() {
        return text;
    }
}
