package dev.teeward.flight.study;

import java.util.List;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.SingularValueDecomposition;

/** What the Jacobian of measurements tells of a number that depends on the quantities, and what it does not see. */
final class RowSpace {
    private static final double RANK = 1e-7;

    private final List<Integer> free;
    private final int rank;
    private final double[][] inverseRows;
    private final double[][] nullSpace;
    private final double[] leverages;

    /**
     * Of a Jacobian.
     *
     * @param jacobian a row for each measurement, a column for each free quantity
     * @param free the places of the free quantities among all
     */
    RowSpace(double[][] jacobian, List<Integer> free) {
        this.free = free;
        int n = free.size();
        // Padded with rows of zeros, so that all n right singular vectors come out.
        double[][] square = new double[Math.max(n, jacobian.length)][n];
        for (int row = 0; row < jacobian.length; row++) {
            square[row] = jacobian[row].clone();
        }
        SingularValueDecomposition svd = new SingularValueDecomposition(new Array2DRowRealMatrix(square, false));
        double[] s = svd.getSingularValues();
        RealMatrix v = svd.getV();
        RealMatrix u = svd.getU();
        int known = 0;
        while (known < n && s[known] > RANK * s[0]) {
            known++;
        }
        rank = known;
        inverseRows = new double[rank][n];
        nullSpace = new double[n - rank][n];
        for (int k = 0; k < n; k++) {
            for (int column = 0; column < n; column++) {
                if (k < rank) {
                    inverseRows[k][column] = v.getEntry(column, k) / s[k];
                } else {
                    nullSpace[k - rank][column] = v.getEntry(column, k);
                }
            }
        }
        leverages = new double[jacobian.length];
        for (int i = 0; i < jacobian.length; i++) {
            for (int k = 0; k < rank; k++) {
                leverages[i] += u.getEntry(i, k) * u.getEntry(i, k);
            }
        }
    }

    int rank() {
        return rank;
    }

    /** The share of the variance of a measurement that its own fit takes from its residual, in [0, 1]. */
    double leverage(int row) {
        return leverages[row];
    }

    /** How much of a gradient in all quantities the measurements do not see, in its own unit. */
    double unseen(double[] gradient) {
        return norm(nullSpace, gradient);
    }

    /** The standard deviation of a number with this gradient in all quantities. */
    double deviation(double[] gradient) {
        return norm(inverseRows, gradient);
    }

    private double norm(double[][] rows, double[] gradient) {
        double sum = 0.0;
        for (double[] row : rows) {
            double dot = 0.0;
            for (int j = 0; j < row.length; j++) {
                dot += row[j] * gradient[free.get(j)];
            }
            sum += dot * dot;
        }
        return Math.sqrt(sum);
    }
}
