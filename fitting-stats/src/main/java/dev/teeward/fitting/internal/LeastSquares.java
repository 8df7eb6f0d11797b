package dev.teeward.fitting.internal;

import java.util.OptionalInt;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.DecompositionSolver;
import org.hipparchus.linear.QRDecomposition;
import org.hipparchus.linear.RealMatrix;

/**
 * Linear least squares by Householder QR (Hipparchus), with columns scaled to length 1 and the solution refined on residuals
 * summed in doubled precision, so that ill-conditioned designs keep the digits they have.
 *
 * <pre>{@code
 * LeastSquares ls = LeastSquares.of(new double[][] {{1, 1, 1}, {1, 2, 3}}); // two columns
 * double[] beta = ls.solve(new double[] {2.0, 4.0, 6.0});                   // 0, 2
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class LeastSquares {
    /** A column whose part across the others is below this share of its length counts as dependent on them. */
    private static final double DEPENDENT = 1e-11;

    private static final int REFINEMENTS = 3;

    private final double[][] columns;
    private final double[] lengths;
    private final DecompositionSolver solver;
    private final double[][] inverseR;
    private final int dependent;

    private LeastSquares(double[][] columns) {
        this.columns = columns;
        int k = columns.length;
        int n = columns[0].length;
        lengths = new double[k];
        double[][] scaled = new double[n][k];
        for (int j = 0; j < k; j++) {
            double squares = 0.0;
            for (double v : columns[j]) {
                squares += v * v;
            }
            lengths[j] = squares > 0.0 ? Math.sqrt(squares) : 1.0;
            for (int i = 0; i < n; i++) {
                scaled[i][j] = columns[j][i] / lengths[j];
            }
        }
        QRDecomposition qr = new QRDecomposition(new Array2DRowRealMatrix(scaled, false), 0.0);
        RealMatrix r = qr.getR();
        int found = -1;
        for (int j = 0; j < k && found < 0; j++) {
            if (!(Math.abs(r.getEntry(j, j)) > DEPENDENT)) {
                found = j;
            }
        }
        dependent = found;
        solver = qr.getSolver();
        inverseR = found < 0 ? invertUpper(r, k) : new double[0][0];
    }

    /**
     * The problem.
     *
     * @param columns the columns of the design, at least one, all of one length, which is at least their number; not copied
     * @return the factored problem
     */
    public static LeastSquares of(double[][] columns) {
        return new LeastSquares(columns);
    }

    /**
     * The first column that is a combination of those before it.
     *
     * @return its index, or empty if there is none and the problem has one solution
     */
    public OptionalInt dependentColumn() {
        return dependent < 0 ? OptionalInt.empty() : OptionalInt.of(dependent);
    }

    private static double[][] invertUpper(RealMatrix r, int k) {
        double[][] inverse = new double[k][k];
        for (int j = 0; j < k; j++) {
            inverse[j][j] = 1.0 / r.getEntry(j, j);
            for (int i = j - 1; i >= 0; i--) {
                double sum = 0.0;
                for (int m = i + 1; m <= j; m++) {
                    sum += r.getEntry(i, m) * inverse[m][j];
                }
                inverse[i][j] = -sum / r.getEntry(i, i);
            }
        }
        return inverse;
    }

    /**
     * The coefficients that make the sum of squared residuals least.
     *
     * @param y the response, one number for each row
     * @return one coefficient for each column
     */
    public double[] solve(double[] y) {
        double[] beta = new double[columns.length];
        double[] rest = y;
        for (int step = 0; step <= REFINEMENTS; step++) {
            double[] more = solver.solve(new ArrayRealVector(rest, false)).toArray();
            for (int j = 0; j < beta.length; j++) {
                beta[j] += more[j] / lengths[j];
            }
            rest = residuals(y, beta);
        }
        return beta;
    }

    /**
     * What is left of the response.
     *
     * @param y the response
     * @param beta the coefficients
     * @return y - X beta, each rounded once
     */
    public double[] residuals(double[] y, double[] beta) {
        double[] rest = new double[y.length];
        for (int i = 0; i < y.length; i++) {
            double high = y[i];
            double low = 0.0;
            for (int j = 0; j < beta.length; j++) {
                double product = -columns[j][i] * beta[j];
                low += Math.fma(-columns[j][i], beta[j], -product);
                double sum = high + product;
                double part = sum - high;
                low += (high - (sum - part)) + (product - part);
                high = sum;
            }
            rest[i] = high + low;
        }
        return rest;
    }

    /**
     * The inverse of X'X.
     *
     * @return a symmetric matrix, one row for each column of the design
     */
    public double[][] inverseGram() {
        int k = columns.length;
        double[][] gram = new double[k][k];
        for (int i = 0; i < k; i++) {
            for (int j = 0; j < k; j++) {
                double sum = 0.0;
                for (int m = Math.max(i, j); m < k; m++) {
                    sum += inverseR[i][m] * inverseR[j][m];
                }
                gram[i][j] = sum / (lengths[i] * lengths[j]);
            }
        }
        return gram;
    }

    /**
     * The leverage of each row: the diagonal of X (X'X)^-1 X'.
     *
     * @return one number in [0, 1] for each row
     */
    public double[] leverages() {
        double[] h = new double[columns[0].length];
        for (int i = 0; i < h.length; i++) {
            double sum = 0.0;
            for (double q : orthonormalRow(i)) {
                sum += q * q;
            }
            h[i] = Math.min(1.0, sum);
        }
        return h;
    }

    private double[] orthonormalRow(int i) {
        int k = columns.length;
        double[] q = new double[k];
        for (int m = 0; m < k; m++) {
            for (int j = 0; j <= m; j++) {
                q[m] += columns[j][i] / lengths[j] * inverseR[j][m];
            }
        }
        return q;
    }

    /**
     * The sandwich (X'X)^-1 X' diag(w) X (X'X)^-1.
     *
     * @param weights one weight for each row, at least 0
     * @return a symmetric matrix, one row for each column of the design
     */
    public double[][] sandwich(double[] weights) {
        int k = columns.length;
        double[][] filling = new double[k][k];
        for (int i = 0; i < weights.length; i++) {
            double[] q = orthonormalRow(i);
            for (int a = 0; a < k; a++) {
                for (int b = 0; b < k; b++) {
                    filling[a][b] += weights[i] * q[a] * q[b];
                }
            }
        }
        double[][] sandwich = new double[k][k];
        for (int i = 0; i < k; i++) {
            for (int j = 0; j < k; j++) {
                double sum = 0.0;
                for (int a = i; a < k; a++) {
                    for (int b = j; b < k; b++) {
                        sum += inverseR[i][a] * filling[a][b] * inverseR[j][b];
                    }
                }
                sandwich[i][j] = sum / (lengths[i] * lengths[j]);
            }
        }
        return sandwich;
    }

    /**
     * The logarithm of the determinant of X'X.
     *
     * @return the natural logarithm
     */
    public double logGramDeterminant() {
        double sum = 0.0;
        for (int j = 0; j < columns.length; j++) {
            sum += 2.0 * (Math.log(lengths[j]) - Math.log(Math.abs(inverseR[j][j])));
        }
        return sum;
    }
}
