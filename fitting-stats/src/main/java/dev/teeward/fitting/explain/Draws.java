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
    private static final int MOST_GROUPS = 100;

    private final boolean paired;
    private final int firstSize;
    private final int secondSize;
    private final int[][] first;
    private final int[][] second;

    Draws(boolean paired, int firstSize, int secondSize, int resamples, long seed) {
        this.paired = paired;
        this.firstSize = firstSize;
        this.secondSize = secondSize;
        SplittableRandom random = new SplittableRandom(seed);
        int[][] one = new int[resamples][];
        int[][] two = new int[resamples][];
        for (int r = 0; r < resamples; r++) {
            one[r] = random.ints(firstSize, 0, firstSize).toArray();
            two[r] = paired ? one[r] : random.ints(secondSize, 0, secondSize).toArray();
        }
        first = one;
        second = two;
    }

    /** In how many groups shots are left out: one by one, of many shots in a hundred groups. */
    static int groups(int size) {
        return Math.min(size, MOST_GROUPS);
    }

    /** To which group a shot belongs. */
    static int group(int index, int size) {
        return index % groups(size);
    }

    private int jackknifes() {
        return paired ? groups(firstSize) : groups(firstSize) + groups(secondSize);
    }

    /** The first random draw. */
    int random() {
        return 1 + jackknifes();
    }

    int count() {
        return 1 + jackknifes() + first.length;
    }

    /** The means of a column of the first club, one for each draw. */
    double[] firstMeans(double[] column) {
        return means(column, 0, first);
    }

    double[] secondMeans(double[] column) {
        return means(column, paired ? 0 : groups(firstSize), second);
    }

    /** The groups of this column are left out from one draw on; in the other draws without random choice it is whole. */
    private double[] means(double[] column, int from, int[][] draws) {
        double[] means = new double[count()];
        int groups = groups(column.length);
        double[] left = new double[groups];
        int[] size = new int[groups];
        double all = 0.0;
        for (int i = 0; i < column.length; i++) {
            all += column[i];
            left[group(i, column.length)] += column[i];
            size[group(i, column.length)]++;
        }
        Arrays.fill(means, 0, 1 + jackknifes(), all / column.length);
        for (int g = 0; g < groups; g++) {
            means[1 + from + g] = (all - left[g]) / (column.length - size[g]);
        }
        for (int r = 0; r < draws.length; r++) {
            double sum = 0.0;
            for (int i : draws[r]) {
                sum += column[i];
            }
            means[1 + jackknifes() + r] = sum / column.length;
        }
        return means;
    }

    /** Those of the draws that leave one shot or pair out, by sample. */
    double[][] jackknife(double[] values) {
        double[] all = Arrays.copyOfRange(values, 1, 1 + jackknifes());
        int groups = groups(firstSize);
        return paired
                ? new double[][] {all}
                : new double[][] {Arrays.copyOf(all, groups), Arrays.copyOfRange(all, groups, all.length)};
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

    Interval interval(double[] values, double level) {
        double[] random = Arrays.copyOfRange(values, 1 + jackknifes(), values.length);
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

    /** The jackknife standard error (Tukey 1958), of more than a hundred shots that of groups. */
    double error(double[] values) {
        return Resamples.error(jackknife(values));
    }
}
