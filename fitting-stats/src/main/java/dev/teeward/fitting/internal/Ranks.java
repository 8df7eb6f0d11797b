package dev.teeward.fitting.internal;

import java.util.Arrays;

/**
 * Midranks and the exact null distributions of rank sums, given the midranks (Mann and Whitney 1947, Wilcoxon 1945; ties
 * by conditioning on the midranks).
 *
 * <p>Ranks are doubled so that midranks are integers, and the distributions are built by adding one rank at a time.
 *
 * <p>Stateless and thread-safe.
 */
public final class Ranks {
    private Ranks() {}

    /**
     * Twice the midrank of each value.
     *
     * @param values the values
     * @param tie the distance within which neighbours count as tied, at least 0
     * @return twice the midranks, in the order of the values
     */
    public static int[] doubledMidranks(double[] values, double tie) {
        int n = values.length;
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        int[] sortedRanks = new int[n];
        int start = 0;
        while (start < n) {
            int end = start;
            while (end + 1 < n && sorted[end + 1] - sorted[end] <= tie) {
                end++;
            }
            Arrays.fill(sortedRanks, start, end + 1, start + end + 2);
            start = end + 1;
        }
        int[] doubled = new int[n];
        for (int i = 0; i < n; i++) {
            // Any place of an equal value will do: equal values share their rank.
            doubled[i] = sortedRanks[Arrays.binarySearch(sorted, values[i])];
        }
        return doubled;
    }

    /**
     * The sum of t^3 - t over groups of t tied values.
     *
     * @param doubled twice the midranks
     * @return the tie term, 0 without ties
     */
    public static double tieTerm(int[] doubled) {
        int[] sorted = doubled.clone();
        Arrays.sort(sorted);
        double term = 0.0;
        int start = 0;
        for (int i = 1; i <= sorted.length; i++) {
            if (i == sorted.length || sorted[i] != sorted[start]) {
                double t = i - start;
                term += t * t * t - t;
                start = i;
            }
        }
        return term;
    }

    /**
     * The null distribution of the sum of the doubled ranks with positive sign, each sign a fair coin.
     *
     * @param doubled the doubled ranks, all positive
     * @return the probability of each sum, index 0 to the sum of all
     */
    public static double[] signedRankSum(int[] doubled) {
        int total = Arrays.stream(doubled).sum();
        double[] p = new double[total + 1];
        p[0] = 1.0;
        int reached = 0;
        for (int rank : doubled) {
            reached += rank;
            for (int s = reached; s >= 0; s--) {
                p[s] = 0.5 * (p[s] + (s >= rank ? p[s - rank] : 0.0));
            }
        }
        return p;
    }

    /**
     * The null distribution of the sum of the doubled ranks of a random subset.
     *
     * @param doubled the doubled ranks, all positive
     * @param size the size of the subset, 1 to the number of ranks
     * @return the probability of each sum, index 0 to the sum of all
     */
    public static double[] subsetRankSum(int[] doubled, int size) {
        int total = Arrays.stream(doubled).sum();
        double[][] ways = new double[size + 1][total + 1];
        ways[0][0] = 1.0;
        int seen = 0;
        int reached = 0;
        for (int rank : doubled) {
            seen++;
            reached += rank;
            for (int k = Math.min(size, seen); k >= 1; k--) {
                double[] more = ways[k];
                double[] fewer = ways[k - 1];
                for (int s = reached; s >= rank; s--) {
                    more[s] += fewer[s - rank];
                }
            }
        }
        double all = 0.0;
        for (double w : ways[size]) {
            all += w;
        }
        double[] p = ways[size];
        for (int s = 0; s < p.length; s++) {
            p[s] /= all;
        }
        return p;
    }

    /**
     * The lower tail.
     *
     * @param p the probabilities of 0, 1, 2, ...
     * @param atMost the largest value counted
     * @return the sum of p[0] to p[atMost]
     */
    public static double lowerTail(double[] p, int atMost) {
        double sum = 0.0;
        for (int s = 0; s <= Math.min(atMost, p.length - 1); s++) {
            sum += p[s];
        }
        return Math.min(1.0, sum);
    }

    /**
     * The upper tail.
     *
     * @param p the probabilities of 0, 1, 2, ...
     * @param atLeast the smallest value counted
     * @return the sum of p[atLeast] to the last
     */
    public static double upperTail(double[] p, int atLeast) {
        double sum = 0.0;
        for (int s = p.length - 1; s >= Math.max(0, atLeast); s--) {
            sum += p[s];
        }
        return Math.min(1.0, sum);
    }
}
