package dev.teeward.fitting.screen;

import java.util.Arrays;

/**
 * All subsets of h of n points, for the one whose scatter has the smallest determinant: exact, by branch and bound.
 *
 * <p>Points are taken or left one after the other, far ones first. A point added to a set never makes the determinant of its
 * scatter matrix (sums of squares and products about the mean) smaller, so a branch whose points so far exceed the best
 * whole subset is done with. Once n - h points are left out all others belong, and their sums are known beforehand. Sums
 * only ever add, so that a far point costs the others no digits.
 *
 * <p>Not thread-safe; one for each search.
 */
final class McdEnumeration {
    /** What rounding may do to a determinant, in proportion. */
    private static final double TIE = 1e-11;

    private final int p;
    private final int h;
    private final int n;
    private final int[] order;
    /** For each point in order: its coordinates and their products. */
    private final double[][] rows;
    /** The sums of the rows from each point on. */
    private final double[][] rest;
    /** The sums of the taken rows after each point, on the path that the search is on. */
    private final double[][] taken;

    private final boolean[] left;
    private double smallest = Double.POSITIVE_INFINITY;
    private int[] best = {};

    McdEnumeration(double[][] columns, int[] order, int h) {
        this.p = columns.length;
        this.h = h;
        this.n = order.length;
        this.order = order;
        this.rows = new double[n][];
        this.rest = new double[n + 1][p + p * (p + 1) / 2];
        this.taken = new double[n + 1][p + p * (p + 1) / 2];
        this.left = new boolean[n];
        for (int k = n - 1; k >= 0; k--) {
            rows[k] = row(columns, order[k]);
            add(rest[k + 1], rows[k], rest[k]);
        }
    }

    private double[] row(double[][] columns, int point) {
        double[] row = new double[p + p * (p + 1) / 2];
        int slot = p;
        for (int i = 0; i < p; i++) {
            row[i] = columns[i][point];
            for (int j = 0; j <= i; j++) {
                row[slot++] = columns[i][point] * columns[j][point];
            }
        }
        return row;
    }

    private static void add(double[] a, double[] b, double[] sum) {
        for (int i = 0; i < sum.length; i++) {
            sum[i] = a[i] + b[i];
        }
    }

    /** The best subset in ascending order; among equals the first in lexicographic order. */
    int[] best() {
        search(0, 0, 0);
        return best;
    }

    /** From the point k on, with as many taken and left out so far. */
    private void search(int k, int count, int out) {
        if (out == n - h) {
            double[] sums = taken[n];
            add(taken[k], rest[k], sums);
            consider(determinant(sums, h));
            return;
        }
        left[k] = true;
        double[] before = taken[k];
        double[] after = taken[k + 1];
        System.arraycopy(before, 0, after, 0, before.length);
        search(k + 1, count, out + 1);
        left[k] = false;
        if (count < h) {
            add(before, rows[k], after);
            if (count < p || determinant(after, count + 1) <= smallest + TIE * Math.abs(smallest)) {
                search(k + 1, count + 1, out);
            }
        }
    }

    private void consider(double determinant) {
        boolean less = determinant < smallest - TIE * Math.abs(smallest) || best.length == 0;
        if (less || determinant <= smallest + TIE * Math.abs(smallest)) {
            int[] subset = new int[h];
            int filled = 0;
            for (int k = 0; k < n; k++) {
                if (!left[k]) {
                    subset[filled++] = order[k];
                }
            }
            Arrays.sort(subset);
            if (less || Arrays.compare(subset, best) < 0) {
                best = subset;
                smallest = Math.min(smallest, determinant);
            }
        }
    }

    /** Of the scatter matrix of some points, from their sums and sums of products. */
    private double determinant(double[] sums, int count) {
        double a = sums[p] - sums[0] * sums[0] / count;
        if (p == 1) {
            return a;
        }
        double b = sums[p + 1] - sums[1] * sums[0] / count;
        double c = sums[p + 2] - sums[1] * sums[1] / count;
        if (p == 2) {
            return a * c - b * b;
        }
        double d = sums[p + 3] - sums[2] * sums[0] / count;
        double e = sums[p + 4] - sums[2] * sums[1] / count;
        double f = sums[p + 5] - sums[2] * sums[2] / count;
        return a * (c * f - e * e) - b * (b * f - e * d) + d * (b * e - c * d);
    }
}
