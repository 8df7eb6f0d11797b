package dev.teeward.fitting.report;

import dev.teeward.fitting.VisibleText;
import dev.teeward.quantity.Warning;
import java.util.List;

/** Sections of sentences whose numbers are not told apart. */
final class Sentences {
    private Sentences() {}

    static Section section(String id, String title, List<String> sentences) {
        return Section.of(
                id,
                title,
                sentences.stream().map(text -> Sentence.of(text, List.of())).toList());
    }

    /** {@code warnings}: each a sentence of its own. */
    static Section warnings(List<Warning> warnings) {
        return section(
                "warnings",
                "What to know",
                warnings.stream()
                        .map(warning -> capital(VisibleText.line(warning.message())) + ".")
                        .toList());
    }

    private static String capital(String text) {
        return text.isEmpty()
                ? text
                : Character.toString(Character.toUpperCase(text.codePointAt(0)))
                        + text.substring(Character.charCount(text.codePointAt(0)));
    }
}
