package dev.teeward.fitting.internal;

import java.util.SplittableRandom;

/**
 * All or many ways to flip the signs of paired differences (Fisher 1935).
 *
 * <p>Sums are put together from tables of the sums of subsets: of each half of the pairs where all arrangements are visited,
 * and of four pairs at a time where random ones are. Sums closer than 1e-10 of the largest difference count as equal, or than the rounding
 * of the numbers that the differences came from, once for each, if that is more.
 *
 * <p>Stateless and thread-safe.
 */
public final class SignFlips {
    private static final double TIE = 1e-10;

    /** So many differences are flipped together, by a table of the sums of their subsets. */
    private static final int GROUP = 4;

    private static final int GROUPS_OF_A_LONG = Long.SIZE / GROUP;

    private SignFlips() {}

    /**
     * Visits all sign arrangements.
     *
     * @param differences the differences after subtracting the null value, at most 30 of them
     * @param limits whether to collect the thresholds for limits
     * @return the counts; thresholds are relative to the null value
     */
    public static ArrangementCounts enumerate(Sample differences, boolean limits) {
        double[] d = differences.toArray();
        int n = d.length;
        int half = n / 2;
        double[] lowSums = subsetSums(d, 0, half);
        double[] highSums = subsetSums(d, half, n);
        double total = lowSums[lowSums.length - 1] + highSums[highSums.length - 1];
        double tolerance = tolerance(differences, d);
        ArrangementCounts counts = new ArrangementCounts(true, limits ? (1 << n) - 1 : 0);
        for (int i = 0; i < lowSums.length; i++) {
            long greater = 0;
            long less = 0;
            for (double high : highSums) {
                double flipped = lowSums[i] + high;
                greater += flipped <= tolerance ? 1 : 0;
                less += flipped >= -tolerance ? 1 : 0;
            }
            counts.add(highSums.length, greater, less, extreme(lowSums[i], highSums, total, tolerance));
            for (int j = i == 0 ? 1 : 0; limits && j < highSums.length; j++) {
                counts.threshold((lowSums[i] + highSums[j]) / (Integer.bitCount(i) + Integer.bitCount(j)));
            }
        }
        return counts;
    }

    /** Flipping a subset of sum f turns the total t into t - 2f, which is as extreme when f is outside (0, t). */
    private static long extreme(double low, double[] highSums, double total, double tolerance) {
        double least = Math.min(0.0, total) + tolerance;
        double most = Math.max(0.0, total) - tolerance;
        long extreme = 0;
        for (double high : highSums) {
            double flipped = low + high;
            extreme += flipped <= least || flipped >= most ? 1 : 0;
        }
        return extreme;
    }

    /**
     * Visits random sign arrangements.
     *
     * @param differences the differences after subtracting the null value
     * @param resamples how many, at least 1
     * @param seed the seed; the same seed gives the same counts
     * @return the counts, with thresholds
     */
    public static ArrangementCounts sample(Sample differences, int resamples, long seed) {
        double[] d = differences.toArray();
        SplittableRandom random = new SplittableRandom(seed);
        double total = 0.0;
        for (double v : d) {
            total += v;
        }
        double[][] sums = new double[(d.length + GROUP - 1) / GROUP][];
        for (int g = 0; g < sums.length; g++) {
            sums[g] = subsetSums(d, g * GROUP, Math.min(d.length, (g + 1) * GROUP));
        }
        double tolerance = tolerance(differences, d);
        double least = Math.min(0.0, total) + tolerance;
        double most = Math.max(0.0, total) - tolerance;
        ArrangementCounts counts = new ArrangementCounts(false, resamples);
        for (int r = 0; r < resamples; r++) {
            double flipped = 0.0;
            int flips = 0;
            long bits = 0L;
            for (int g = 0; g < sums.length; g++) {
                bits = g % GROUPS_OF_A_LONG == 0 ? random.nextLong() : bits >>> GROUP;
                int subset = (int) bits & (sums[g].length - 1);
                flipped += sums[g][subset];
                flips += Integer.bitCount(subset);
            }
            counts.add(
                    1,
                    flipped <= tolerance ? 1 : 0,
                    flipped >= -tolerance ? 1 : 0,
                    flipped <= least || flipped >= most ? 1 : 0);
            counts.threshold(flips == 0 ? total / d.length : flipped / flips);
        }
        return counts;
    }

    /** The sums of all subsets; bit i of the index says whether element from + i is in. */
    private static double[] subsetSums(double[] d, int from, int to) {
        double[] sums = new double[1 << (to - from)];
        for (int i = from; i < to; i++) {
            int size = 1 << (i - from);
            for (int s = 0; s < size; s++) {
                sums[size + s] = sums[s] + d[i];
            }
        }
        return sums;
    }

    private static double tolerance(Sample differences, double[] d) {
        double largest = 0.0;
        for (double v : d) {
            largest = Math.max(largest, Math.abs(v));
        }
        return Math.max(TIE * largest, d.length * differences.tieTolerance());
    }
}
