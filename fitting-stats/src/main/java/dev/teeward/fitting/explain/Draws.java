package dev.teeward.fitting.explain;

import dev.teeward.fitting.internal.Distributions;
import dev.teeward.fitting.internal.Resamples;
import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.Interval;
import dev.teeward.quantity.Unit;
import java.util.Arrays;
import java.util.SplittableRandom;

/**
 * Choices of shots whose means are wanted: first all, then all but one, then random ones with replacement. Pairs are drawn
 * whole.
 */
final class Draws {
    private static final double NOISE = 1e-12;

    private final boolean paired;
    private final int firstSize;
    private final int secondSize;
    private final int[][] first;
    private final int[][] second;
    private final int jackknifes;

    Draws(boolean paired, int firstSize, int secondSize, int resamples, long seed) {
        this.paired = paired;
        this.firstSize = firstSize;
        this.secondSize = secondSize;
        this.jackknifes = paired ? firstSize : firstSize + secondSize;
        int[][] one = new int[1 + jackknifes + resamples][];
        int[][] two = new int[one.length][];
        int[] allOne = without(firstSize, -1);
        int[] allTwo = without(secondSize, -1);
        one[0] = allOne;
        two[0] = allTwo;
        for (int j = 0; j < jackknifes; j++) {
            one[1 + j] = j < firstSize ? without(firstSize, j) : allOne;
            two[1 + j] = paired ? one[1 + j] : j < firstSize ? allTwo : without(secondSize, j - firstSize);
        }
        SplittableRandom random = new SplittableRandom(seed);
        for (int r = 1 + jackknifes; r < one.length; r++) {
            one[r] = random.ints(firstSize, 0, firstSize).toArray();
            two[r] = paired ? one[r] : random.ints(secondSize, 0, secondSize).toArray();
        }
        first = one;
        second = two;
    }

    private static int[] without(int size, int left) {
        int[] index = new int[left < 0 ? size : size - 1];
        for (int i = 0, at = 0; i < size; i++) {
            if (i != left) {
                index[at++] = i;
            }
        }
        return index;
    }

    int count() {
        return first.length;
    }

    /** The means of a column of the first club, one for each draw. */
    double[] firstMeans(double[] column) {
        return means(column, first);
    }

    double[] secondMeans(double[] column) {
        return means(column, second);
    }

    private static double[] means(double[] column, int[][] draws) {
        double[] means = new double[draws.length];
        for (int d = 0; d < draws.length; d++) {
            double sum = 0.0;
            for (int i : draws[d]) {
                sum += column[i];
            }
            means[d] = sum / draws[d].length;
        }
        return means;
    }

    /** Those of the draws that leave one shot or pair out, by sample. */
    double[][] jackknife(double[] values) {
        double[] all = Arrays.copyOfRange(values, 1, 1 + jackknifes);
        return paired
                ? new double[][] {all}
                : new double[][] {
                    Arrays.copyOf(all, firstSize), Arrays.copyOfRange(all, firstSize, firstSize + secondSize)
                };
    }

    /**
     * The estimate of all shots with the expanded percentile interval (Hesterberg 2015, from memory): quantiles of the random
     * draws, at the tail probabilities Phi(-sqrt(n / (n - 1)) t), t with n - 1 degrees of freedom, so that at ten pairs the
     * interval of a mean is as long as Student's and not 7 % to 16 % too short. Unbounded if the draws do not spread or some
     * are undefined.
     */
    Estimate estimate(double[] values, double level, Unit unit) {
        return Estimate.of(values[0] + 0.0, interval(values, level), unit);
    }

    private Interval interval(double[] values, double level) {
        double[] random = Arrays.copyOfRange(values, 1 + jackknifes, values.length);
        Arrays.sort(random);
        int last = random.length - 1;
        int n = Math.min(firstSize, secondSize);
        // Numbers that are not a number are sorted last.
        boolean finite = Double.isFinite(random[0]) && Double.isFinite(random[last]);
        if (n < 2
                || !finite
                || !(random[last] - random[0] > NOISE * Math.max(Math.abs(random[0]), Math.abs(random[last])))) {
            return Interval.unbounded(level);
        }
        double t = Distributions.tQuantile(0.5 + 0.5 * level, n - 1.0);
        double tail = Distributions.normalCdf(-t * Math.sqrt(n / (n - 1.0)));
        return Interval.of(quantile(random, tail), quantile(random, 1.0 - tail), level);
    }

    /** At (B + 1) p, the extremes beyond. */
    private static double quantile(double[] sorted, double p) {
        double at = Math.max(0.0, Math.min(sorted.length - 1.0, p * (sorted.length + 1.0) - 1.0));
        int below = (int) at;
        int above = Math.min(sorted.length - 1, below + 1);
        return sorted[below] + (at - below) * (sorted[above] - sorted[below]);
    }

    /** The jackknife standard error (Tukey 1958). */
    double error(double[] values) {
        return Resamples.error(jackknife(values));
    }
}
