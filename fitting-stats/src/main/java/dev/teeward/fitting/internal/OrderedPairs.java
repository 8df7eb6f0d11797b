package dev.teeward.fitting.internal;

import java.util.Arrays;

/**
 * Order statistics of all pairwise differences or averages without forming them.
 *
 * <p>Of sorted samples the values are a matrix whose rows are sorted, and each of its rows is at or above the one before (or
 * below it). One walk with two pointers partitions it by a pivot; the pivot is a value of the matrix, the middle of the
 * middle row of what is left, so that a walk finds the k-th value or leaves about half. The few that are left in the end are
 * sorted. This is Hoare's selection with the partition of Johnson and Mizoguchi 1978 (SIAM Journal on Computing 7) and the
 * stop of Monahan 1984 (ACM Transactions on Mathematical Software 10, algorithm 616). Every third pivot halves the range of
 * {@code double} instead, which bounds the number of walks by about 200 whatever the values; rounded readings take about
 * ten. The result is exact: it is one of the computed pairwise values.
 *
 * <p>Stateless and thread-safe.
 */
public final class OrderedPairs {
    private OrderedPairs() {}

    /** A matrix of values that rise along each row. Counts of a row do not rise from one row to the next. */
    private abstract static class Rows {
        final int rows;

        Rows(int rows) {
            this.rows = rows;
        }

        /** Where the row begins, from 0. */
        abstract int first(int row);

        /** The end of the row, after its last place. */
        abstract int end(int row);

        abstract double value(int row, int place);

        /** For each row the first place whose value is not below the pivot. */
        abstract void notBelow(double pivot, int[] places);

        /** For each row the first place whose value is above the pivot. */
        abstract void above(double pivot, int[] places);
    }

    /** x[i] - y[m - 1 - place]: rising along a row, and from row to row. */
    private static final class Differences extends Rows {
        private final double[] x;
        private final double[] y;

        Differences(double[] x, double[] y) {
            super(x.length);
            this.x = x;
            this.y = y;
        }

        @Override
        int first(int row) {
            return 0;
        }

        @Override
        int end(int row) {
            return y.length;
        }

        @Override
        double value(int row, int place) {
            return x[row] - y[y.length - 1 - place];
        }

        @Override
        void notBelow(double pivot, int[] places) {
            int place = y.length;
            for (int row = 0; row < rows; row++) {
                while (place > 0 && !(x[row] - y[y.length - place] < pivot)) {
                    place--;
                }
                places[row] = place;
            }
        }

        @Override
        void above(double pivot, int[] places) {
            int place = y.length;
            for (int row = 0; row < rows; row++) {
                while (place > 0 && x[row] - y[y.length - place] > pivot) {
                    place--;
                }
                places[row] = place;
            }
        }
    }

    /** (d[i] + d[place]) / 2 for the places from i on: rising along a row, and from row to row. */
    private static final class WalshAverages extends Rows {
        private final double[] d;

        WalshAverages(double[] d) {
            super(d.length);
            this.d = d;
        }

        @Override
        int first(int row) {
            return row;
        }

        @Override
        int end(int row) {
            return d.length;
        }

        @Override
        double value(int row, int place) {
            return 0.5 * (d[row] + d[place]);
        }

        @Override
        void notBelow(double pivot, int[] places) {
            int place = d.length;
            for (int row = 0; row < rows; row++) {
                while (place > 0 && !(0.5 * (d[row] + d[place - 1]) < pivot)) {
                    place--;
                }
                places[row] = Math.max(row, place);
            }
        }

        @Override
        void above(double pivot, int[] places) {
            int place = d.length;
            for (int row = 0; row < rows; row++) {
                while (place > 0 && 0.5 * (d[row] + d[place - 1]) > pivot) {
                    place--;
                }
                places[row] = Math.max(row, place);
            }
        }
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
        return select(new Differences(x, y), k);
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
        return select(new WalshAverages(d), k);
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

    private static double select(Rows matrix, long k) {
        int n = matrix.rows;
        int[] from = new int[n];
        int[] to = new int[n];
        for (int row = 0; row < n; row++) {
            from[row] = matrix.first(row);
            to[row] = matrix.end(row);
        }
        int[] notBelow = new int[n];
        int[] above = new int[n];
        // What is left: the places [from, to) of each row, with values in [low, high]; its rank-th smallest is wanted.
        double low = -Double.MAX_VALUE;
        double high = Double.MAX_VALUE;
        long rank = k;
        long left = size(from, to);
        for (int walk = 1; left > Math.max(16, n / 4); walk++) {
            double pivot = walk % 3 == 0 ? middle(low, high) : central(matrix, from, to, left);
            matrix.notBelow(pivot, notBelow);
            long below = size(from, notBelow);
            if (rank <= below) {
                int[] spare = to;
                to = notBelow;
                notBelow = spare;
                high = pivot;
                left = below;
                continue;
            }
            matrix.above(pivot, above);
            long atMost = size(from, above);
            if (rank <= atMost) {
                return pivot + 0.0;
            }
            int[] spare = from;
            from = above;
            above = spare;
            low = pivot;
            left -= atMost;
            rank -= atMost;
        }
        double[] rest = new double[(int) left];
        int filled = 0;
        for (int row = 0; row < n; row++) {
            for (int place = from[row]; place < to[row]; place++) {
                rest[filled++] = matrix.value(row, place);
            }
        }
        Arrays.sort(rest);
        return rest[(int) rank - 1] + 0.0;
    }

    private static long size(int[] from, int[] to) {
        long size = 0;
        for (int row = 0; row < from.length; row++) {
            size += to[row] - from[row];
        }
        return size;
    }

    /** The middle of the row that holds the middle place of what is left. */
    private static double central(Rows matrix, int[] from, int[] to, long left) {
        long before = 0;
        int row = 0;
        while (2 * (before + to[row] - from[row]) < left) {
            before += to[row] - from[row];
            row++;
        }
        return matrix.value(row, (from[row] + to[row]) >>> 1);
    }

    /** Halfway in the order of all doubles. */
    private static double middle(double low, double high) {
        long a = key(low);
        return fromKey(a + ((key(high) - a) >>> 1));
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
