package dev.teeward.fitting.internal;

import java.util.Optional;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.RealMatrix;

/**
 * A symmetric matrix of any size, as a rule a covariance; for two metrics {@link SymmetricMatrix2} is quicker.
 *
 * <pre>{@code
 * SymmetricMatrix s = SymmetricMatrix.covarianceOf(new double[][] {u, v});
 * double d2 = s.inverse().orElseThrow().quadraticForm(difference);
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class SymmetricMatrix {
    /** Below this share of the product of the variances a determinant counts as 0. */
    private static final double SINGULAR = 1e-20;

    private final RealMatrix matrix;

    private SymmetricMatrix(RealMatrix matrix) {
        this.matrix = matrix;
    }

    /**
     * A matrix of given elements.
     *
     * @param elements the rows; copied
     * @return the matrix
     */
    public static SymmetricMatrix of(double[][] elements) {
        return new SymmetricMatrix(new Array2DRowRealMatrix(elements));
    }

    /**
     * The sample covariance with n - 1 in the denominator.
     *
     * @param columns one array for each metric, each of at least two values
     * @return the covariance
     */
    public static SymmetricMatrix covarianceOf(double[][] columns) {
        int p = columns.length;
        int n = columns[0].length;
        double[] means = means(columns);
        double[][] s = new double[p][p];
        for (int a = 0; a < p; a++) {
            for (int b = 0; b <= a; b++) {
                double sum = 0.0;
                for (int i = 0; i < n; i++) {
                    sum += (columns[a][i] - means[a]) * (columns[b][i] - means[b]);
                }
                s[a][b] = sum / (n - 1.0);
                s[b][a] = s[a][b];
            }
        }
        return new SymmetricMatrix(new Array2DRowRealMatrix(s, false));
    }

    /**
     * The mean of each metric.
     *
     * @param columns one array for each metric
     * @return the means
     */
    public static double[] means(double[][] columns) {
        double[] means = new double[columns.length];
        for (int a = 0; a < means.length; a++) {
            means[a] = Sample.of("column", columns[a]).mean();
        }
        return means;
    }

    /**
     * One element.
     *
     * @param row the row, from 0
     * @param column the column, from 0
     * @return the element
     */
    public double at(int row, int column) {
        return matrix.getEntry(row, column);
    }

    /**
     * The sum of two multiples.
     *
     * @param factor what to multiply this by
     * @param other the other matrix
     * @param otherFactor what to multiply the other by
     * @return the sum
     */
    public SymmetricMatrix plus(double factor, SymmetricMatrix other, double otherFactor) {
        return new SymmetricMatrix(matrix.scalarMultiply(factor).add(other.matrix.scalarMultiply(otherFactor)));
    }

    /**
     * This times a number.
     *
     * @param factor the number
     * @return the product
     */
    public SymmetricMatrix times(double factor) {
        return new SymmetricMatrix(matrix.scalarMultiply(factor));
    }

    /**
     * The inverse.
     *
     * @return the inverse, or empty if the matrix is singular as far as its digits go
     */
    public Optional<SymmetricMatrix> inverse() {
        double scale = 1.0;
        for (int a = 0; a < matrix.getRowDimension(); a++) {
            scale *= matrix.getEntry(a, a);
        }
        LUDecomposition lu = new LUDecomposition(matrix, 0.0);
        return lu.getSolver().isNonSingular() && lu.getDeterminant() > SINGULAR * scale
                ? Optional.of(new SymmetricMatrix(lu.getSolver().getInverse()))
                : Optional.empty();
    }

    /**
     * The quadratic form.
     *
     * @param x a vector
     * @return x'Mx
     */
    public double quadraticForm(double[] x) {
        double sum = 0.0;
        for (int a = 0; a < x.length; a++) {
            for (int b = 0; b < x.length; b++) {
                sum += x[a] * matrix.getEntry(a, b) * x[b];
            }
        }
        return sum;
    }

    /**
     * The trace of a product, and of its square.
     *
     * @param other the other matrix
     * @return tr(MN) and tr(MNMN)
     */
    public double[] tracesOfProduct(SymmetricMatrix other) {
        RealMatrix product = matrix.multiply(other.matrix);
        return new double[] {product.getTrace(), product.multiply(product).getTrace()};
    }
}
