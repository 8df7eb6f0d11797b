package dev.teeward.flight.study;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.SingularValueDecomposition;

/**
 * What the rows of a fit know of its parameters: the inverse of J'J by the singular values of J with columns of length 1, so
 * that units do not matter. Directions whose singular value is below 1e-5 of the largest are not known.
 */
final class Information {
    private static final double UNKNOWN = 1e-5;

    private final double[][] inverse;
    private final boolean[] known;
    private final List<List<Integer>> mixtures = new ArrayList<>();

    private Information(int p) {
        inverse = new double[p][p];
        known = new boolean[p];
    }

    /**
     * Of a Jacobian by columns.
     *
     * @param columns the derivatives, one array for each parameter
     * @param weights of the rows
     */
    static Information of(double[][] columns, double[] weights) {
        int p = columns.length;
        int n = columns[0].length;
        Information result = new Information(p);
        double[] length = new double[p];
        RealMatrix unit = new Array2DRowRealMatrix(n, p);
        for (int j = 0; j < p; j++) {
            for (int i = 0; i < n; i++) {
                length[j] += weights[i] * columns[j][i] * columns[j][i];
            }
            length[j] = Math.sqrt(length[j]);
            result.known[j] = length[j] > 0.0;
            for (int i = 0; i < n && result.known[j]; i++) {
                unit.setEntry(i, j, Math.sqrt(weights[i]) * columns[j][i] / length[j]);
            }
        }
        SingularValueDecomposition svd = new SingularValueDecomposition(unit);
        double[] sizes = svd.getSingularValues();
        RealMatrix v = svd.getV();
        for (int k = 0; k < sizes.length; k++) {
            if (sizes[k] > UNKNOWN * sizes[0]) {
                for (int a = 0; a < p; a++) {
                    for (int b = 0; b < p && result.known[a]; b++) {
                        if (result.known[b]) {
                            result.inverse[a][b] +=
                                    v.getEntry(a, k) * v.getEntry(b, k) / (sizes[k] * sizes[k] * length[a] * length[b]);
                        }
                    }
                }
            } else {
                result.addMixture(v, k);
            }
        }
        return result;
    }

    private void addMixture(RealMatrix v, int k) {
        List<Integer> mixture = new ArrayList<>();
        for (int j = 0; j < known.length; j++) {
            if (Math.abs(v.getEntry(j, k)) > 0.1) {
                mixture.add(j);
            }
        }
        mixture.forEach(j -> known[j] = false);
        mixtures.add(mixture);
    }

    /** An entry of the inverse of J'J, over the directions that are known. */
    double inverse(int a, int b) {
        return inverse[a][b];
    }

    double[][] inverse() {
        return inverse;
    }

    /** Whether the rows determine a parameter. */
    boolean knows(int parameter) {
        return known[parameter];
    }

    /** The parameters that only a combination of is determined, group by group. */
    List<List<Integer>> mixtures() {
        return mixtures;
    }
}
