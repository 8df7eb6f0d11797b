package dev.teeward.fitting.report;

/**
 * Where text from outside stands in a sentence.
 *
 * @param start the index of its first character
 * @param end the index after its last
 */
public record Quotation(int start, int end) {}
