package dev.teeward.fitting.report;

/**
 * A number as it stands in a sentence, and where in {@code ReportData} it comes from.
 *
 * @param text the number as printed, without a unit, such as {@code 4.1} or {@code -0.8}
 * @param pointer the JSON pointer (RFC 6901) of its source, such as {@code /metrics/carry/difference/value}
 * @param magnitude whether the sentence prints the magnitude of the source because words tell the sign
 */
public record QuotedNumber(String text, String pointer, boolean magnitude) {}
