package dev.teeward.flight.study;

import java.util.Arrays;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.EigenDecompositionSymmetric;
import org.hipparchus.linear.RealVector;

/**
 * How the rows r of one flight count: with a weight w each, and with what the errors of its launch do to all of them.
 *
 * <p>With the effects A, q columns of {@link LaunchErrors}, the rows have the covariance {@code S = W^-1 + A A'}. All that is
 * needed of its inverse lies in the q by q matrix {@code M = I + A'WA = V c^2 V'} (Woodbury 1950):
 *
 * <ul>
 *   <li>{@code b = M^-1 A'W r}, the errors of the launch that the rows suggest, and {@code e = r - A b}, what these leave;
 *   <li>{@code g = S^-1 r = W e}, and {@code A'g = b};
 *   <li>{@code z = S^(-1/2) r = W^(1/2) (r - A N A'W r)} up to a rotation, with {@code N = V 1/(c (c + 1)) V'};
 *   <li>{@code h = a' M^-1 a} for a row a of A; a row less what the others let expect is {@code e/(1 - w h)}, of variance
 *       {@code 1 + h/(1 - w h)} if it is no misread itself.
 * </ul>
 *
 * <p>No weight is divided by, so that a weight may be 0. Launches without errors have q = 0.
 */
final class FlightRows {
    private final double[][] effects;
    private final double[] weights;
    private final double[][] inverse;
    private final double[][] root;

    private FlightRows(double[][] effects, double[] weights) {
        this.effects = effects;
        this.weights = weights;
        int q = effects.length;
        inverse = new double[q][q];
        root = new double[q][q];
        if (q > 0) {
            EigenDecompositionSymmetric eigen =
                    new EigenDecompositionSymmetric(new Array2DRowRealMatrix(information()));
            for (int k = 0; k < q; k++) {
                double c = Math.sqrt(Math.max(1.0, eigen.getEigenvalue(k)));
                RealVector v = eigen.getEigenvector(k);
                for (int a = 0; a < q; a++) {
                    for (int b = 0; b < q; b++) {
                        double square = v.getEntry(a) * v.getEntry(b);
                        inverse[a][b] += square / (c * c);
                        root[a][b] += square / (c * (c + 1.0));
                    }
                }
            }
        }
    }

    private double[][] information() {
        int q = effects.length;
        double[][] m = new double[q][q];
        for (int a = 0; a < q; a++) {
            m[a][a] = 1.0;
            for (int b = 0; b < q; b++) {
                for (int i = 0; i < weights.length; i++) {
                    m[a][b] += weights[i] * (effects[a][i] * effects[b][i]);
                }
            }
        }
        return m;
    }

    /**
     * Rows that count in full.
     *
     * @param rows how many
     * @param effects the columns of A, of that length each; none for an exact launch
     */
    static FlightRows of(int rows, double[][] effects) {
        double[] full = new double[rows];
        Arrays.fill(full, 1.0);
        return new FlightRows(effects, full);
    }

    /** The same with other weights, in [0, 1]. */
    FlightRows weighed(double[] others) {
        return new FlightRows(effects, others);
    }

    double[] weights() {
        return weights;
    }

    /** The rows z, of which the sum of squares is {@code r' S^-1 r}. */
    double[] whitened(double[] r) {
        double[] z = less(r, times(root, seen(r)));
        for (int i = 0; i < z.length; i++) {
            z[i] *= Math.sqrt(weights[i]);
        }
        return z;
    }

    /** Each row less what the others, by their weights, let expect, over the standard deviation of this if its own weight is 1. */
    double[] judged(double[] r) {
        double[] t = less(r, times(inverse, seen(r)));
        for (int i = 0; i < t.length; i++) {
            t[i] /= (1.0 - weights[i] * leverage(i)) * Math.sqrt(expected(i));
        }
        return t;
    }

    /**
     * The weights w that give the {@link #judged} rows t the weights m of a loss: the variance v of a row given the others becomes
     * v/m, so that its part of the score is {@code m t / sqrt(v)}, as bounded as m t is.
     *
     * @param loss gives m
     * @param scale what t is divided by
     * @param r the rows
     */
    double[] weights(RobustLoss loss, double scale, double[] r) {
        double[] found = judged(r);
        for (int i = 0; i < found.length; i++) {
            double m = loss.weight(found[i] / scale);
            double v = expected(i);
            found[i] = m / (v - (v - 1.0) * m);
        }
        return found;
    }

    /** The size of the score, {@code g' (I + A A') g}: for exact launches the sum of the squares of w r. */
    double squares(double[] r) {
        double[] b = times(inverse, seen(r));
        double[] e = less(r, b);
        double sum = 0.0;
        for (int i = 0; i < e.length; i++) {
            sum += weights[i] * weights[i] * e[i] * e[i];
        }
        for (double x : b) {
            sum += x * x;
        }
        return sum;
    }

    /** The variance of a row given the others, if its own weight is 1. */
    private double expected(int i) {
        double h = leverage(i);
        return 1.0 + h / (1.0 - weights[i] * h);
    }

    private double leverage(int i) {
        double[] a = row(i);
        return dot(a, times(inverse, a));
    }

    private double[] row(int i) {
        return Arrays.stream(effects).mapToDouble(column -> column[i]).toArray();
    }

    /** {@code A'W r}. */
    private double[] seen(double[] r) {
        return Arrays.stream(effects)
                .mapToDouble(column -> {
                    double sum = 0.0;
                    for (int i = 0; i < r.length; i++) {
                        sum += weights[i] * column[i] * r[i];
                    }
                    return sum;
                })
                .toArray();
    }

    /** {@code r - A b}. */
    private double[] less(double[] r, double[] b) {
        double[] e = r.clone();
        for (int k = 0; k < b.length; k++) {
            for (int i = 0; i < e.length; i++) {
                e[i] -= effects[k][i] * b[k];
            }
        }
        return e;
    }

    private static double[] times(double[][] matrix, double[] x) {
        return Arrays.stream(matrix).mapToDouble(line -> dot(line, x)).toArray();
    }

    private static double dot(double[] x, double[] y) {
        double sum = 0.0;
        for (int k = 0; k < x.length; k++) {
            sum += x[k] * y[k];
        }
        return sum;
    }
}
