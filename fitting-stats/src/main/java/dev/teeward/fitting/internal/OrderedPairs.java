package dev.teeward.fitting.internal;

import java.util.Arrays;
import org.apache.commons.numbers.arrays.Selection;

/**
 * Order statistics of all pairwise differences or averages without forming them.
 *
 * <p>Of sorted samples the values are a matrix whose rows are sorted, and each of its rows is at or above the one before (or
 * below it). One walk with two pointers partitions it by a pivot; the pivot is a value of the matrix, the middle of the
 * middle row of what is left, so that a walk finds the k-th value or leaves about half. Of the few that are left in the end a library
 * selects. This is Hoare's selection with the partition of Johnson and Mizoguchi 1978 (SIAM Journal on Computing 7) and the
 * stop of Monahan 1984 (ACM Transactions on Mathematical Software 10, algorithm 616). Every third pivot halves the range of
 * {@code double} instead, which bounds the number of walks by about 200 whatever the values; rounded readings take about
 * ten. The result is exact: it is one of the computed pairwise values.
 *
 * <p>Stateless and thread-safe.
 */
public final class OrderedPairs {
    /** So many values, or so many for each row, are formed rather than walked over again. */
    private static final int FEW = 256;

    private static final long SHARE = 4;

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
     * Order statistics of the differences x - y over all pairs.
     *
     * @param x the first sample, ascending
     * @param y the second sample, ascending
     * @param ranks which, ascending, each 1 to x.length * y.length
     * @return for each rank its difference
     */
    public static double[] differences(double[] x, double[] y, long... ranks) {
        return select(new Differences(x, y), ranks);
    }

    /**
     * Order statistics of the Walsh averages (d[i] + d[j]) / 2, i at most j.
     *
     * @param d the differences, ascending
     * @param ranks which, ascending, each 1 to n(n+1)/2
     * @return for each rank its average
     */
    public static double[] walshAverages(double[] d, long... ranks) {
        return select(new WalshAverages(d), ranks);
    }

    private static double[] select(Rows matrix, long[] ranks) {
        int n = matrix.rows;
        int[] from = new int[n];
        int[] to = new int[n];
        for (int row = 0; row < n; row++) {
            from[row] = matrix.first(row);
            to[row] = matrix.end(row);
        }
        double[] found = new double[ranks.length];
        Block all = new Block(from, to, 0, -Double.MAX_VALUE, Double.MAX_VALUE);
        new Selecting(matrix, ranks, found).in(all, 0, ranks.length, 1);
        return found;
    }

    /** Places of the matrix with all values from low to high. */
    private static final class Block {
        final int[] from; // the first place of each row
        final int[] to; // the end of each row
        final long before; // how many values of the whole matrix come before these
        final double low;
        final double high;

        Block(int[] from, int[] to, long before, double low, double high) {
            this.from = from;
            this.to = to;
            this.before = before;
            this.low = low;
            this.high = high;
        }

        long left() {
            return size(from, to);
        }
    }

    /** Finds several ranks together, which share the walks until a pivot falls between them. */
    private static final class Selecting {
        private final Rows matrix;
        private final long[] ranks;
        private final double[] found;

        Selecting(Rows matrix, long[] ranks, double[] found) {
            this.matrix = matrix;
            this.ranks = ranks;
            this.found = found;
        }

        /** Finds the ranks [first, end), which lie in a block. */
        void in(Block start, int first, int end, int firstWalk) {
            Block block = start;
            int next = first;
            int walk = firstWalk;
            for (long left = block.left();
                    next < end && left > Math.max(FEW, SHARE * matrix.rows);
                    left = block.left()) {
                double pivot =
                        walk % 3 == 0 ? middle(block.low, block.high) : central(matrix, block.from, block.to, left);
                walk++;
                int[] notBelow = new int[matrix.rows];
                matrix.notBelow(pivot, notBelow);
                Block low = new Block(block.from, notBelow, block.before, block.low, pivot);
                long below = block.before + low.left();
                int split = next;
                while (split < end && ranks[split] <= below) {
                    split++;
                }
                if (split == end) {
                    block = low;
                    continue;
                }
                in(low, next, split, walk);
                next = split;
                int[] above = new int[matrix.rows];
                matrix.above(pivot, above);
                long atMost = block.before + size(block.from, above);
                while (next < end && ranks[next] <= atMost) {
                    found[next++] = pivot + 0.0;
                }
                block = new Block(above, block.to, atMost, pivot, block.high);
            }
            if (next < end) {
                among(block, next, end);
            }
        }

        private void among(Block block, int first, int end) {
            double[] rest = new double[(int) block.left()];
            int filled = 0;
            for (int row = 0; row < matrix.rows; row++) {
                for (int place = block.from[row]; place < block.to[row]; place++) {
                    rest[filled++] = matrix.value(row, place);
                }
            }
            int[] places = new int[end - first];
            Arrays.setAll(places, i -> (int) (ranks[first + i] - block.before - 1));
            Selection.select(rest, places.clone()); // it orders the places too
            for (int i = 0; i < places.length; i++) {
                found[first + i] = rest[places[i]] + 0.0;
            }
        }
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
