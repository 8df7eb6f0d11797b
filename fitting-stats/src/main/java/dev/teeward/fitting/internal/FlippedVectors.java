package dev.teeward.fitting.internal;

import java.util.Arrays;
import java.util.SplittableRandom;

/**
 * The p of Hotelling's T2 under sign flips of whole vectors. T2 is an increasing function of n d' M^-1 d with M the sum of
 * the outer products, which no flip changes, so that only the sum of the flipped vectors, made uncorrelated by M, is needed.
 *
 * <p>Values closer than 1e-10 relative count as equal. Immutable and thread-safe.
 */
public final class FlippedVectors {
    private static final double TIE = 1e-10;

    /** One row for each vector, made uncorrelated. */
    private final double[][] z;

    private final double bound;

    private FlippedVectors(double[][] z) {
        this.z = z;
        double[] sum = new double[z[0].length];
        for (double[] row : z) {
            for (int k = 0; k < sum.length; k++) {
                sum[k] += row[k];
            }
        }
        bound = squares(sum) * (1.0 - TIE);
    }

    /**
     * The vectors.
     *
     * @param columns one array for each coordinate; the covariance is not singular
     * @return the vectors, ready to be flipped
     */
    public static FlippedVectors of(double[][] columns) {
        int p = columns.length;
        int n = columns[0].length;
        // Gram-Schmidt on the columns about 0 makes M the identity.
        double[][] q = new double[p][];
        for (int k = 0; k < p; k++) {
            q[k] = columns[k].clone();
            for (int pass = 0; pass < 2; pass++) {
                for (int j = 0; j < k; j++) {
                    double along = 0.0;
                    for (int i = 0; i < n; i++) {
                        along += q[j][i] * q[k][i];
                    }
                    for (int i = 0; i < n; i++) {
                        q[k][i] -= along * q[j][i];
                    }
                }
            }
            double length = Math.sqrt(squares(q[k]));
            for (int i = 0; i < n; i++) {
                q[k][i] /= length;
            }
        }
        double[][] z = new double[n][p];
        for (int i = 0; i < n; i++) {
            for (int k = 0; k < p; k++) {
                z[i][k] = q[k][i];
            }
        }
        return new FlippedVectors(z);
    }

    private static double squares(double[] x) {
        double sum = 0.0;
        for (double v : x) {
            sum += v * v;
        }
        return sum;
    }

    /**
     * The share of all arrangements that are at least as far out.
     *
     * @return p, at least 2 / 2^n
     */
    public double exactP() {
        // The first sign may stay: flipping all signs changes nothing. The rest is put together from two halves.
        int half = (z.length - 1) / 2;
        double[][] low = sums(1, 1 + half, z[0]);
        double[][] high = sums(1 + half, z.length, new double[z[0].length]);
        long extreme = 0;
        for (double[] a : low) {
            for (double[] b : high) {
                double square = 0.0;
                for (int k = 0; k < a.length; k++) {
                    double s = a[k] + b[k];
                    square += s * s;
                }
                extreme += square >= bound ? 1 : 0;
            }
        }
        return extreme / ((double) low.length * high.length);
    }

    private double[][] sums(int from, int to, double[] start) {
        double[][] all = {start};
        for (int i = from; i < to; i++) {
            double[][] twice = new double[2 * all.length][start.length];
            for (int s = 0; s < all.length; s++) {
                for (int k = 0; k < start.length; k++) {
                    twice[2 * s][k] = all[s][k] + z[i][k];
                    twice[2 * s + 1][k] = all[s][k] - z[i][k];
                }
            }
            all = twice;
        }
        return all;
    }

    /**
     * p by random arrangements: (b + 1) / (m + 1) (Phipson and Smyth 2010).
     *
     * @param flips how many, at least 1
     * @param seed the seed; the same seed gives the same p
     * @return p, never 0
     */
    public double randomP(int flips, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        long extreme = 0;
        double[] sum = new double[z[0].length];
        for (int f = 0; f < flips; f++) {
            Arrays.fill(sum, 0.0);
            long bits = 0L;
            for (int i = 0; i < z.length; i++) {
                bits = i % 64 == 0 ? random.nextLong() : bits >>> 1;
                double sign = (bits & 1L) == 0L ? 1.0 : -1.0;
                for (int k = 0; k < sum.length; k++) {
                    sum[k] += sign * z[i][k];
                }
            }
            extreme += squares(sum) >= bound ? 1 : 0;
        }
        return (extreme + 1.0) / (flips + 1.0);
    }
}
