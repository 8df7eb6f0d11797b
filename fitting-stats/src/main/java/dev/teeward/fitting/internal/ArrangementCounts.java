package dev.teeward.fitting.internal;

import java.util.Arrays;
import org.apache.commons.numbers.arrays.Selection;

/**
 * What a run over arrangements found: how many were at least as extreme as the observed one, and for each other
 * arrangement the null value at which the two would be equally extreme.
 *
 * <p>Those thresholds invert the test: the one-sided p at a null value c is the share of arrangements (the observed one
 * included) whose threshold is at most c, so their order statistics are exact confidence limits (Hartigan 1969 for sign
 * flips; the same algebra serves exchanges between two samples).
 *
 * <p>Owned by one run; not thread-safe.
 */
public final class ArrangementCounts {
    /** From here on a sample is worth its while. */
    private static final int MANY = 20_000;

    /** Every which threshold is sampled: a prime, since enumerations have a rhythm. */
    private static final int STRIDE = 61;

    private final boolean exact;
    private long arrangements;
    private long atLeast;
    private long atMost;
    private long asExtreme;
    private double[] thresholds = new double[0];
    private int thresholdCount;

    ArrangementCounts(boolean exact, int thresholdCapacity) {
        this.exact = exact;
        this.thresholds = new double[thresholdCapacity];
    }

    void add(long count, long greater, long less, long extreme) {
        arrangements += count;
        atLeast += greater;
        atMost += less;
        asExtreme += extreme;
    }

    boolean wantsThresholds() {
        return thresholds.length > 0;
    }

    void threshold(double value) {
        thresholds[thresholdCount++] = value;
    }

    /**
     * Whether all arrangements were visited.
     *
     * @return false for a random sample of them
     */
    public boolean exact() {
        return exact;
    }

    /**
     * The number of arrangements visited; the observed one is counted only when all were visited.
     *
     * @return the number
     */
    public long arrangements() {
        return arrangements;
    }

    /**
     * The p of the alternative that the difference is greater.
     *
     * @return b / m when exact, (b + 1) / (m + 1) for a random sample (Phipson and Smyth 2010)
     */
    public double greater() {
        return share(atLeast);
    }

    /**
     * The p of the alternative that the difference is less.
     *
     * @return as for {@link #greater()}
     */
    public double less() {
        return share(atMost);
    }

    /**
     * The two-sided p, by the size of the statistic.
     *
     * @return as for {@link #greater()}
     */
    public double twoSided() {
        return share(asExtreme);
    }

    private double share(long b) {
        return exact ? (double) b / arrangements : (b + 1.0) / (arrangements + 1.0);
    }

    /**
     * The lower confidence limit.
     *
     * @param tail the probability allowed below, in (0, 1)
     * @return the limit, or minus infinity if there are too few arrangements for it
     */
    public double lowerLimit(double tail) {
        long k = rank(tail);
        return k < 1 ? Double.NEGATIVE_INFINITY : ordered((int) Math.min(k, thresholdCount) - 1);
    }

    /**
     * The upper confidence limit.
     *
     * @param tail the probability allowed above, in (0, 1)
     * @return the limit, or plus infinity if there are too few arrangements for it
     */
    public double upperLimit(double tail) {
        long k = rank(tail);
        return k < 1 ? Double.POSITIVE_INFINITY : ordered((int) Math.max(0, thresholdCount - k));
    }

    /**
     * The threshold of a rank from 0 on: of many, a sample tells between which two values it lies almost surely, and only
     * what lies there is looked at; if it does not lie there, all are.
     */
    private double ordered(int rank) {
        if (thresholdCount >= MANY) {
            double[] sample = new double[thresholdCount / STRIDE];
            for (int i = 0; i < sample.length; i++) {
                sample[i] = thresholds[i * STRIDE];
            }
            Arrays.sort(sample);
            double place = (double) rank / STRIDE;
            double margin = 6.0 + 6.0 * Math.sqrt(Math.min(place, sample.length - place));
            int from = (int) (place - margin);
            int to = (int) (place + margin);
            double low = from < 0 ? Double.NEGATIVE_INFINITY : sample[Math.min(from, sample.length - 1)];
            double high = to >= sample.length ? Double.POSITIVE_INFINITY : sample[Math.max(to, 0)];
            // Twice what lies between on average; with more ties than that, all are looked at.
            double[] between = new double[(int) Math.min(thresholdCount, 4.0 * STRIDE * (margin + 1.0))];
            int kept = 0;
            int below = 0;
            for (int i = 0; i < thresholdCount && kept < between.length; i++) {
                double value = thresholds[i];
                if (value < low) {
                    below++;
                } else if (value <= high) {
                    between[kept++] = value;
                }
            }
            if (kept < between.length && rank >= below && rank < below + kept) {
                Selection.select(between, 0, kept, rank - below);
                return between[rank - below];
            }
        }
        Selection.select(thresholds, 0, thresholdCount, rank);
        return thresholds[rank];
    }

    private long rank(double tail) {
        long total = exact ? arrangements : arrangements + 1;
        return (long) Math.floor(tail * total * (1.0 + 1e-12));
    }
}
