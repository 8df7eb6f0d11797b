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
    private final List<Quotation> quotations;

    private Sentence(String text, List<QuotedNumber> numbers, List<Quotation> quotations) {
        this.text = text;
        this.numbers = numbers;
        this.quotations = quotations;
    }

    /**
     * A sentence.
     *
     * @param text the sentence, plain text, one line
     * @param numbers the numbers in it, in the order in which they stand
     * @return the sentence
     */
    public static Sentence of(String text, List<QuotedNumber> numbers) {
        return of(text, numbers, List.of());
    }

    /**
     * A sentence that holds text from outside.
     *
     * @param text the sentence, plain text, one line
     * @param numbers the numbers in it, but for those inside the quotations, in the order in which they stand
     * @param quotations where the parts stand that are not the report's own words, in the order in which they stand
     * @return the sentence
     */
    public static Sentence of(String text, List<QuotedNumber> numbers, List<Quotation> quotations) {
        return new Sentence(Objects.requireNonNull(text, "text"), List.copyOf(numbers), List.copyOf(quotations));
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

    /**
     * The names, notes and messages in the sentence, which may hold digits of their own.
     *
     * @return where they stand, in order, unmodifiable
     */
    public List<Quotation> quotations() {
        return quotations;
    }

    @Override
    public String toString() {
        return text;
    }
}
