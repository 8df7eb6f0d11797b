package dev.teeward.fitting.internal;

import java.util.Arrays;
import java.util.SplittableRandom;

/**
 * All or many ways to deal the values of two samples out again (Pitman 1937; studentised: Janssen 1997).
 *
 * <p>The first sample must not be the larger one. Sums are put together from the subsets of two halves of the pooled
 * values, so that each is rounded only a few times. Statistics closer than 1e-10 of their scale count as equal, or than what the
 * rounding of the numbers as they were given makes of them, once for each, if that is more.
 *
 * <p>Not thread-safe while running; make one for each run.
 */
public final class Exchanges {
    private static final double TIE = 1e-10;

    private final int n;
    private final int m;
    private final double[] pooled;
    private final double[] squares;
    private final double sum;
    private final double sumOfSquares;
    private final boolean studentized;
    private final double observed;
    private final double tolerance;
    private final double observedSum;
    /** 1 over the number of exchanged values. */
    private final double[] shares;

    /**
     * Prepares a run.
     *
     * @param x the first sample, not larger than the second
     * @param y the second sample
     * @param studentized whether the statistic is Welch's t rather than the mean difference; both samples then need two
     *     values
     */
    public Exchanges(Sample x, Sample y, boolean studentized) {
        this.n = x.size();
        this.m = y.size();
        this.pooled = new double[n + m];
        System.arraycopy(x.toArray(), 0, pooled, 0, n);
        System.arraycopy(y.toArray(), 0, pooled, n, m);
        double centre = Sample.of("pooled", pooled).mean();
        this.squares = new double[n + m];
        double total = 0.0;
        double totalSquares = 0.0;
        double largest = 0.0;
        double first = 0.0;
        double firstSquares = 0.0;
        for (int i = 0; i < pooled.length; i++) {
            pooled[i] -= centre;
            squares[i] = pooled[i] * pooled[i];
            total += pooled[i];
            totalSquares += squares[i];
            largest = Math.max(largest, Math.abs(pooled[i]));
            if (i == n - 1) {
                first = total;
                firstSquares = totalSquares;
            }
        }
        this.sum = total;
        this.sumOfSquares = totalSquares;
        // With equal sizes t is an increasing function of the mean difference, so the cheaper statistic serves both.
        this.studentized = studentized && n != m;
        this.observedSum = first;
        this.shares = new double[n + 1];
        Arrays.setAll(shares, i -> i > 0 ? 1.0 / i : 0.0);
        this.observed = statistic(first, firstSquares);
        double rounding = (n + m) * Math.max(x.tieTolerance(), y.tieTolerance());
        double error = this.studentized ? standardError(first, firstSquares) : 0.0;
        if (this.studentized) {
            double share = error > 0.0 ? Math.max(TIE, rounding / error) : TIE;
            this.tolerance = share * Math.max(1.0, Math.abs(observed));
        } else {
            this.tolerance = Math.max(TIE * largest, rounding);
        }
    }

    /** Of the mean difference, or 0 if it is no more than rounding. */
    private double standardError(double firstSum, double firstSquares) {
        double meanX = firstSum / n;
        double meanY = (sum - firstSum) / m;
        double varX = (firstSquares - n * meanX * meanX) / (n - 1);
        double varY = (sumOfSquares - firstSquares - m * meanY * meanY) / (m - 1);
        double squared = varX / n + varY / m;
        return squared > 1e-20 * sumOfSquares ? Math.sqrt(squared) : 0.0;
    }

    private double statistic(double firstSum, double firstSquares) {
        double meanX = firstSum / n;
        double meanY = (sum - firstSum) / m;
        double difference = meanX - meanY;
        if (!studentized) {
            return difference;
        }
        double error = standardError(firstSum, firstSquares);
        if (!(error > 0.0)) {
            return Math.abs(difference) <= TIE * Math.sqrt(sumOfSquares) ? 0.0 : Math.copySign(1e12, difference);
        }
        return difference / error;
    }

    /**
     * The number of ways to choose k of n, as far as a limit.
     *
     * @param n how many there are
     * @param k how many are chosen
     * @param limit where to stop counting
     * @return the number, or {@code limit + 1} if it is larger than the limit
     */
    public static long ways(int n, int k, long limit) {
        double ways = 1.0;
        for (int i = 1; i <= Math.min(k, n - k); i++) {
            ways = ways * (n - Math.min(k, n - k) + i) / i;
            if (ways > limit + 0.5) {
                return limit + 1;
            }
        }
        return Math.round(ways);
    }

    /**
     * Visits all arrangements.
     *
     * @param limits whether to collect the thresholds for limits
     * @return the counts
     */
    public ArrangementCounts enumerate(boolean limits) {
        int arrangements = (int) ways(n + m, n, Integer.MAX_VALUE - 8);
        ArrangementCounts counts = new ArrangementCounts(true, limits ? arrangements - 1 : 0);
        int half = (n + m) / 2;
        SubsetTable low = new SubsetTable(0, half);
        SubsetTable high = new SubsetTable(half, n + m);
        for (int k = Math.max(0, n - high.largest()); k <= Math.min(n, low.largest()); k++) {
            for (int i = 0; i < low.sums[k].length; i++) {
                visit(counts, low, k, i, high);
            }
        }
        return counts;
    }

    private void visit(ArrangementCounts counts, SubsetTable low, int k, int i, SubsetTable high) {
        double lowSum = low.sums[k][i];
        double lowSquares = low.squareSums[k][i];
        double[] highSums = high.sums[n - k];
        double[] highSquares = high.squareSums[n - k];
        if (studentized) {
            compare(counts, lowSum, lowSquares, highSums, highSquares);
        } else {
            count(counts, lowSum, high.sorted(n - k));
        }
        if (counts.wantsThresholds()) {
            int lowKept = low.kept[k][i];
            int[] highKept = high.kept[n - k];
            double left = observedSum - lowSum;
            for (int j = 0; j < highSums.length; j++) {
                int moved = n - lowKept - highKept[j];
                if (moved > 0) {
                    counts.threshold((left - highSums[j]) * shares[moved]);
                }
            }
        }
    }

    private void compare(
            ArrangementCounts counts, double lowSum, double lowSquares, double[] highSums, double[] highSquares) {
        long greater = 0;
        long less = 0;
        long extreme = 0;
        double bound = Math.abs(observed) - tolerance;
        for (int j = 0; j < highSums.length; j++) {
            double t = statistic(lowSum + highSums[j], lowSquares + highSquares[j]);
            greater += t >= observed - tolerance ? 1 : 0;
            less += t <= observed + tolerance ? 1 : 0;
            extreme += Math.abs(t) >= bound ? 1 : 0;
        }
        counts.add(highSums.length, greater, less, extreme);
    }

    /** The mean difference grows with the sum of the first sample, so that bounds of the sum and sorted sums do. */
    private void count(ArrangementCounts counts, double lowSum, double[] sorted) {
        double bound = Math.abs(observed) - tolerance;
        int size = sorted.length;
        int greater = size - below(sorted, sumAt(observed - tolerance) - lowSum);
        int less = below(sorted, Math.nextUp(sumAt(observed + tolerance) - lowSum));
        int extreme = bound <= 0.0
                ? size
                : size - below(sorted, sumAt(bound) - lowSum) + below(sorted, Math.nextUp(sumAt(-bound) - lowSum));
        counts.add(size, greater, less, extreme);
    }

    /** The sum of the first sample at a mean difference. */
    private double sumAt(double difference) {
        return (difference + sum / m) / (1.0 / n + 1.0 / m);
    }

    /** How many are below a limit. */
    private static int below(double[] sorted, double limit) {
        int from = 0;
        int to = sorted.length;
        while (from < to) {
            int middle = (from + to) >>> 1;
            if (sorted[middle] < limit) {
                from = middle + 1;
            } else {
                to = middle;
            }
        }
        return from;
    }

    /**
     * Visits random arrangements.
     *
     * @param resamples how many, at least 1
     * @param seed the seed; the same seed gives the same counts
     * @return the counts, with thresholds
     */
    public ArrangementCounts sample(int resamples, long seed) {
        ArrangementCounts counts = new ArrangementCounts(false, resamples);
        deal(resamples, seed, (firstSum, firstSquares, moved) -> {
            double t = statistic(firstSum, firstSquares);
            counts.add(
                    1,
                    t >= observed - tolerance ? 1 : 0,
                    t <= observed + tolerance ? 1 : 0,
                    Math.abs(t) >= Math.abs(observed) - tolerance ? 1 : 0);
            counts.threshold(moved == 0 ? observedSum / n - (sum - observedSum) / m : (observedSum - firstSum) / moved);
        });
        return counts;
    }

    /**
     * The statistic of every arrangement.
     *
     * @return all of them, ascending
     */
    public double[] statistics() {
        double[] all = new double[(int) ways(n + m, n, Integer.MAX_VALUE - 8)];
        int filled = 0;
        int half = (n + m) / 2;
        SubsetTable low = new SubsetTable(0, half);
        SubsetTable high = new SubsetTable(half, n + m);
        for (int k = Math.max(0, n - high.largest()); k <= Math.min(n, low.largest()); k++) {
            for (int i = 0; i < low.sums[k].length; i++) {
                for (int j = 0; j < high.sums[n - k].length; j++) {
                    all[filled++] = statistic(
                            low.sums[k][i] + high.sums[n - k][j], low.squareSums[k][i] + high.squareSums[n - k][j]);
                }
            }
        }
        Arrays.sort(all);
        return all;
    }

    /**
     * The statistic of random arrangements.
     *
     * @param resamples how many, at least 1
     * @param seed the seed
     * @return all of them, ascending
     */
    public double[] randomStatistics(int resamples, long seed) {
        double[] all = new double[resamples];
        int[] filled = {0};
        deal(resamples, seed, (firstSum, firstSquares, moved) -> all[filled[0]++] = statistic(firstSum, firstSquares));
        Arrays.sort(all);
        return all;
    }

    private interface Deal {
        void visit(double firstSum, double firstSquares, int moved);
    }

    private void deal(int resamples, long seed, Deal visitor) {
        SplittableRandom random = new SplittableRandom(seed);
        int[] deck = new int[n + m];
        for (int i = 0; i < deck.length; i++) {
            deck[i] = i;
        }
        for (int r = 0; r < resamples; r++) {
            double firstSum = 0.0;
            double firstSquares = 0.0;
            int moved = 0;
            for (int i = 0; i < n; i++) {
                // Uniform below the bound, to 2^-48: the high half of a product instead of a division.
                int j = i + (int) Math.multiplyHigh(random.nextLong() >>> 1, 2L * (deck.length - i));
                int card = deck[j];
                deck[j] = deck[i];
                deck[i] = card;
                firstSum += pooled[card];
                firstSquares += squares[card];
                moved += card >= n ? 1 : 0;
            }
            visitor.visit(firstSum, firstSquares, moved);
        }
    }

    /** The subsets of a stretch of the pooled values by size: their sums, and how many come from the first sample. */
    private final class SubsetTable {
        private final double[][] sums;
        private final double[][] squareSums;
        private final int[][] kept;
        private final double[][] sorted;

        SubsetTable(int from, int to) {
            int largest = Math.min(n, to - from);
            sums = new double[largest + 1][];
            squareSums = new double[largest + 1][];
            kept = new int[largest + 1][];
            sorted = new double[largest + 1][0];
            sums[0] = new double[1];
            squareSums[0] = new double[1];
            kept[0] = new int[1];
            int[] last = {from - 1};
            for (int k = 1; k <= largest; k++) {
                int size = (int) ways(to - from, k, Integer.MAX_VALUE - 8);
                sums[k] = new double[size];
                squareSums[k] = new double[size];
                kept[k] = new int[size];
                int[] nextLast = new int[size];
                int filled = 0;
                for (int s = 0; s < last.length; s++) {
                    for (int e = last[s] + 1; e < to; e++) {
                        sums[k][filled] = sums[k - 1][s] + pooled[e];
                        squareSums[k][filled] = squareSums[k - 1][s] + squares[e];
                        kept[k][filled] = kept[k - 1][s] + (e < n ? 1 : 0);
                        nextLast[filled++] = e;
                    }
                }
                last = nextLast;
            }
        }

        /** The sums of a size in ascending order, without their squares and origins. */
        double[] sorted(int k) {
            if (sorted[k].length == 0) {
                sorted[k] = sums[k].clone();
                Arrays.sort(sorted[k]);
            }
            return sorted[k];
        }

        int largest() {
            return sums.length - 1;
        }
    }
}
