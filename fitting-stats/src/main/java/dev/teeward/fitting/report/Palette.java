package dev.teeward.fitting.report;

/**
 * The colours of pictures: variables that a page may set, each with a fallback for light paper.
 *
 * <p>The clubs have colours of the colour-blind-safe palette of Okabe and Ito 2008 (Color Universal Design): blue #0072B2 and
 * vermilion #D55E00 on light paper, sky blue #56B4E9 and orange #E69F00 on dark, which the page sets. Text is never in the
 * colour of a club.
 */
final class Palette {
    /** Text and means. */
    static final String INK = "var(--teeward-ink, #15202b)";

    /** Secondary text, ticks. */
    static final String SOFT = "var(--teeward-soft, #46535f)";

    /** Grid lines. */
    static final String GRID = "var(--teeward-grid, #d5dbe0)";

    /** Bands. */
    static final String BAND = "var(--teeward-band, #e9edf0)";

    /** What is behind everything. */
    static final String PAPER = "var(--teeward-paper, #ffffff)";

    /** The first club. */
    static final String FIRST = "var(--teeward-first, #0072b2)";

    /** The second club. */
    static final String SECOND = "var(--teeward-second, #d55e00)";

    private Palette() {}
}
