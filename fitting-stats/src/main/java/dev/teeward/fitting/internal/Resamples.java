package dev.teeward.fitting.internal;

import java.util.SplittableRandom;
import java.util.function.ToDoubleFunction;

/**
 * Draws from samples with replacement and evaluates a statistic on each draw.
 *
 * <p>Not thread-safe; make one for each run.
 */
public final class Resamples {
    private final double[][] samples;
    private final boolean apart;
    private final ToDoubleFunction<double[][]> statistic;

    /**
     * Samples to draw from.
     *
     * @param samples the samples; not copied, not changed
     * @param apart whether each is drawn by itself, rather than all by the same indices
     * @param statistic the statistic of draws of the same sizes, and of draws one smaller
     */
    public Resamples(double[][] samples, boolean apart, ToDoubleFunction<double[][]> statistic) {
        this.samples = samples;
        this.apart = apart;
        this.statistic = statistic;
    }

    /**
     * The number of different ordered draws, as far as a limit.
     *
     * @param limit where to stop counting
     * @return the number, or more than the limit
     */
    public long ways(long limit) {
        double ways = 1.0;
        for (int s = 0; s < (apart ? samples.length : 1); s++) {
            ways *= Math.pow(samples[s].length, samples[s].length);
        }
        return ways > limit ? limit + 1 : Math.round(ways);
    }

    private int[] indices() {
        int total = 0;
        for (int s = 0; s < (apart ? samples.length : 1); s++) {
            total += samples[s].length;
        }
        return new int[total];
    }

    /** The size of the sample that an index draws from. */
    private int[] bounds(int[] index) {
        int[] bounds = new int[index.length];
        int at = 0;
        for (int s = 0; s < (apart ? samples.length : 1); s++) {
            for (int i = 0; i < samples[s].length; i++) {
                bounds[at++] = samples[s].length;
            }
        }
        return bounds;
    }

    /**
     * Every draw.
     *
     * @param errors whether to evaluate the jackknife error of each draw too
     * @return the statistics, and their errors if wanted
     */
    public double[][] all(boolean errors) {
        int[] index = indices();
        int[] bounds = bounds(index);
        double[][] found = new double[errors ? 2 : 1][(int) ways(Integer.MAX_VALUE - 8)];
        double[][] draw = empty();
        for (int r = 0; r < found[0].length; r++) {
            evaluate(index, draw, found, r);
            for (int i = 0; i < index.length && ++index[i] == bounds[i]; i++) {
                index[i] = 0;
            }
        }
        return found;
    }

    /**
     * Random draws.
     *
     * @param resamples how many
     * @param seed the seed; the same seed gives the same draws
     * @param errors whether to evaluate the jackknife error of each draw too
     * @return the statistics, and their errors if wanted
     */
    public double[][] random(int resamples, long seed, boolean errors) {
        SplittableRandom random = new SplittableRandom(seed);
        int[] index = indices();
        int[] bounds = bounds(index);
        double[][] found = new double[errors ? 2 : 1][resamples];
        double[][] draw = empty();
        for (int r = 0; r < resamples; r++) {
            for (int i = 0; i < index.length; i++) {
                // Uniform below the bound, to 2^-48: the high half of a product instead of a division.
                index[i] = (int) Math.multiplyHigh(random.nextLong() >>> 1, 2L * bounds[i]);
            }
            evaluate(index, draw, found, r);
        }
        return found;
    }

    private double[][] empty() {
        double[][] draw = new double[samples.length][];
        for (int s = 0; s < draw.length; s++) {
            draw[s] = new double[samples[s].length];
        }
        return draw;
    }

    private void evaluate(int[] index, double[][] draw, double[][] found, int r) {
        fill(index, draw);
        found[0][r] = statistic.applyAsDouble(draw);
        if (found.length > 1) {
            fill(index, draw);
            found[1][r] = error(jackknife(draw));
        }
    }

    private void fill(int[] index, double[][] draw) {
        int at = 0;
        for (int s = 0; s < draw.length; s++) {
            if (!apart) {
                at = 0;
            }
            for (int i = 0; i < draw[s].length; i++) {
                draw[s][i] = samples[s][index[at++]];
            }
        }
    }

    /**
     * The statistic with each value left out, sample by sample; pairs are left out whole.
     *
     * @return one array for each sample, one for all pairs; empty where a sample has one value
     */
    public double[][] jackknife() {
        return jackknife(samples);
    }

    private double[][] jackknife(double[][] from) {
        double[][] values = new double[apart ? from.length : 1][];
        for (int s = 0; s < values.length; s++) {
            int n = from[s].length;
            values[s] = new double[n < 2 ? 0 : n];
            for (int left = 0; left < values[s].length; left++) {
                double[][] draw = new double[from.length][];
                for (int t = 0; t < draw.length; t++) {
                    draw[t] = !apart || t == s ? without(from[t], left) : from[t].clone();
                }
                values[s][left] = statistic.applyAsDouble(draw);
            }
        }
        return values;
    }

    private static double[] without(double[] x, int left) {
        double[] rest = new double[x.length - 1];
        System.arraycopy(x, 0, rest, 0, left);
        System.arraycopy(x, left + 1, rest, left, rest.length - left);
        return rest;
    }

    /**
     * The jackknife standard error: sqrt(sum over samples of (n - 1) / n sum (value - mean)^2).
     *
     * @param jackknife the values with each observation left out, sample by sample
     * @return the error
     */
    public static double error(double[][] jackknife) {
        double variance = 0.0;
        for (double[] values : jackknife) {
            double mean = 0.0;
            for (double v : values) {
                mean += v / values.length;
            }
            double sum = 0.0;
            for (double v : values) {
                sum += (v - mean) * (v - mean);
            }
            variance += values.length > 0 ? sum * (values.length - 1.0) / values.length : 0.0;
        }
        return Math.sqrt(variance);
    }
}
