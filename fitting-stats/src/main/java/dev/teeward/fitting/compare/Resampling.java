package dev.teeward.fitting.compare;

import dev.teeward.fitting.internal.ArrangementCounts;
import java.util.Locale;

/**
 * Up to how many arrangements all are visited, and beyond that how many random ones, from which seed; 0 resamples means by
 * the size of the data.
 */
record Resampling(int resamples, long seed, long largestEnumeration) {
    private static final long MOST = 3_000_000L;
    static final Resampling DEFAULTS = new Resampling(0, 20_261_124L, MOST);
    private static final int USUAL = 9_999;
    private static final int LEAST = 999;
    private static final int BUDGET = 20_000_000;

    Resampling withResamples(int other) {
        if (other < 99) {
            throw new IllegalArgumentException("resamples must be at least 99, but was " + other);
        }
        return new Resampling(other, seed, largestEnumeration);
    }

    Resampling withSeed(long other) {
        return new Resampling(resamples, other, largestEnumeration);
    }

    Resampling withLargestEnumeration(long other) {
        if (!(other >= 1 && other <= MOST)) {
            throw new IllegalArgumentException(
                    "largest enumeration must be in [1, " + MOST + "] arrangements, but was " + other);
        }
        return new Resampling(resamples, seed, other);
    }

    /** The usual number, fewer when each touches thousands of values. */
    int count(int values) {
        return resamples > 0 ? resamples : Math.max(LEAST, Math.min(USUAL, BUDGET / values - 1));
    }

    static double pValue(ArrangementCounts counts, Alternative alternative) {
        return Math.min(
                1.0,
                alternative == Alternative.GREATER
                        ? counts.greater()
                        : alternative == Alternative.LESS ? counts.less() : counts.twoSided());
    }

    String words(ArrangementCounts counts) {
        return counts.exact()
                ? String.format(Locale.ROOT, "exact: all %,d arrangements", counts.arrangements())
                : String.format(
                        Locale.ROOT, "Monte Carlo: %,d random arrangements, seed %d", counts.arrangements(), seed);
    }
}
