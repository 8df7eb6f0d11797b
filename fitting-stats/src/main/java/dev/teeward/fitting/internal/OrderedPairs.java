package dev.teeward.fitting.internal;

/**
 * Order statistics of all pairwise differences or averages without forming them.
 *
 * <p>Counting how many of them lie at or below a value takes one walk with two pointers over the sorted samples; the k-th
 * is then found by halving over the bit patterns of {@code double}, so it is exact (it is one of the computed pairwise
 * values) and costs at most 64 walks. Two samples of 10,000 take milliseconds instead of 10^8 differences.
 *
 * <p>Stateless and thread-safe.
 */
public final class OrderedPairs {
    private OrderedPairs() {}

    private interface Count {
        long atMost(double value);
    }

    /**
     * The k-th smallest difference x - y over all pairs.
     *
     * @param x the first sample, ascending
     * @param y the second sample, ascending
     * @param k the rank, 1 to x.length * y.length
     * @return the k-th smallest difference
     */
    public static double difference(double[] x, double[] y, long k) {
        return search(v -> differencesAtMost(x, y, v), k);
    }

    /**
     * The median of all differences x - y: the Hodges-Lehmann shift.
     *
     * @param x the first sample, ascending
     * @param y the second sample, ascending
     * @return the median
     */
    public static double medianDifference(double[] x, double[] y) {
        long pairs = (long) x.length * y.length;
        double lower = difference(x, y, (pairs + 1) / 2);
        return (pairs & 1L) == 1L ? lower : 0.5 * (lower + difference(x, y, pairs / 2 + 1));
    }

    /**
     * The k-th smallest Walsh average (d[i] + d[j]) / 2, i at most j.
     *
     * @param d the differences, ascending
     * @param k the rank, 1 to n(n+1)/2
     * @return the k-th smallest average
     */
    public static double walshAverage(double[] d, long k) {
        return search(v -> walshAtMost(d, v), k);
    }

    /**
     * The median of all Walsh averages: the Hodges-Lehmann pseudomedian.
     *
     * @param d the differences, ascending
     * @return the median
     */
    public static double medianWalshAverage(double[] d) {
        long pairs = (long) d.length * (d.length + 1) / 2;
        double lower = walshAverage(d, (pairs + 1) / 2);
        return (pairs & 1L) == 1L ? lower : 0.5 * (lower + walshAverage(d, pairs / 2 + 1));
    }

    private static long differencesAtMost(double[] x, double[] y, double value) {
        long count = 0;
        int j = y.length;
        for (double xi : x) {
            // As x grows, fewer y are large enough: x - y at most value needs y at the top.
            while (j > 0 && xi - y[j - 1] <= value) {
                j--;
            }
            // y[j..] satisfy it for this x only if they still do.
            while (j < y.length && xi - y[j] > value) {
                j++;
            }
            count += y.length - j;
        }
        return count;
    }

    private static long walshAtMost(double[] d, double value) {
        long count = 0;
        int j = d.length - 1;
        for (int i = 0; i < d.length && j >= i; i++) {
            while (j >= i && 0.5 * (d[i] + d[j]) > value) {
                j--;
            }
            count += Math.max(0, j - i + 1);
        }
        return count;
    }

    private static double search(Count count, long k) {
        long low = key(-Double.MAX_VALUE);
        long high = key(Double.MAX_VALUE);
        while (low < high) {
            long middle = low + ((high - low) >>> 1);
            if (count.atMost(fromKey(middle)) >= k) {
                high = middle;
            } else {
                low = middle + 1;
            }
        }
        return fromKey(low) + 0.0;
    }

    /** A long that orders as the double does. */
    private static long key(double value) {
        long bits = Double.doubleToLongBits(value);
        return bits >= 0 ? bits : Long.MIN_VALUE - bits;
    }

    private static double fromKey(long key) {
        return Double.longBitsToDouble(key >= 0 ? key : Long.MIN_VALUE - key);
    }
}
