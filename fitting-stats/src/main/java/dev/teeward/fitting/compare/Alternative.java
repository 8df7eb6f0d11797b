package dev.teeward.fitting.compare;

import java.util.Locale;

/**
 * The direction a test looks in, always for first minus second (or first over second).
 *
 * <p>Immutable and thread-safe.
 */
public enum Alternative {
    /** The difference is not the null value. */
    TWO_SIDED,

    /** The difference is greater than the null value; the interval then has a lower end only. */
    GREATER,

    /** The difference is less than the null value; the interval then has an upper end only. */
    LESS;

    /** The p from both tails; two-sided it is twice the smaller, at most 1. */
    double pValue(double greater, double less) {
        double p = this == GREATER ? greater : this == LESS ? less : 2.0 * Math.min(greater, less);
        return Math.min(1.0, Math.max(0.0, p));
    }

    /** The probability left outside at one end. */
    double tail(double level) {
        return this == TWO_SIDED ? 0.5 * (1.0 - level) : 1.0 - level;
    }

    /** The same question with the samples exchanged. */
    Alternative reversed() {
        return this == GREATER ? LESS : this == LESS ? GREATER : TWO_SIDED;
    }

    /** Lower-case words for the method text. */
    String words() {
        return this == TWO_SIDED ? "two-sided" : name().toLowerCase(Locale.ROOT);
    }
}
