package dev.teeward.fitting.screen;

/** Centre and covariance of some points, with the Cholesky factor for distances. Immutable, thread-safe. */
final class Scatter {
    /** A pivot below this share of its variance is rounding: the points lie on a line or plane. */
    private static final double SINGULAR = 1e-12;

    private final double[] center;
    private final double[][] covariance;
    private final double[][] factor;
    private final boolean singular;

    private Scatter(double[] center, double[][] covariance) {
        int p = center.length;
        this.center = center;
        this.covariance = covariance;
        this.factor = new double[p][p];
        boolean flat = false;
        for (int i = 0; i < p; i++) {
            for (int j = 0; j <= i; j++) {
                double rest = covariance[i][j];
                for (int k = 0; k < j; k++) {
                    rest -= factor[i][k] * factor[j][k];
                }
                if (i == j) {
                    flat |= !(rest > SINGULAR * covariance[i][i]);
                    factor[i][i] = Math.sqrt(Math.max(rest, 0.0));
                } else {
                    factor[i][j] = factor[j][j] > 0.0 ? rest / factor[j][j] : 0.0;
                }
            }
        }
        this.singular = flat;
    }

    /** The first {@code count} of the indices; count at least 2. */
    static Scatter of(double[][] columns, int[] indices, int count) {
        int p = columns.length;
        double[] center = new double[p];
        for (int j = 0; j < p; j++) {
            double first = columns[j][indices[0]];
            double sum = 0.0;
            for (int k = 0; k < count; k++) {
                sum += columns[j][indices[k]] - first;
            }
            center[j] = first + sum / count;
        }
        double[][] covariance = new double[p][p];
        for (int i = 0; i < p; i++) {
            for (int j = 0; j <= i; j++) {
                double sum = 0.0;
                for (int k = 0; k < count; k++) {
                    sum += (columns[i][indices[k]] - center[i]) * (columns[j][indices[k]] - center[j]);
                }
                covariance[i][j] = sum / (count - 1.0);
                covariance[j][i] = covariance[i][j];
            }
        }
        return new Scatter(center, covariance);
    }

    /** The same centre, the covariance times a number. */
    Scatter times(double number) {
        double[][] scaled = new double[center.length][center.length];
        for (int i = 0; i < center.length; i++) {
            for (int j = 0; j < center.length; j++) {
                scaled[i][j] = number * covariance[i][j];
            }
        }
        return new Scatter(center, scaled);
    }

    boolean singular() {
        return singular;
    }

    double determinant() {
        double root = 1.0;
        for (int i = 0; i < center.length; i++) {
            root *= factor[i][i];
        }
        return root * root;
    }

    /** A copy. */
    double[] center() {
        return center.clone();
    }

    /** A copy. */
    double[][] covariance() {
        double[][] copy = covariance.clone();
        for (int i = 0; i < copy.length; i++) {
            copy[i] = copy[i].clone();
        }
        return copy;
    }

    /** The squared Mahalanobis distance of every point; only for a scatter that is not singular. */
    double[] squaredDistances(double[][] columns) {
        int p = columns.length;
        double[] distances = new double[columns[0].length];
        double[] z = new double[p];
        for (int k = 0; k < distances.length; k++) {
            double sum = 0.0;
            for (int i = 0; i < p; i++) {
                double rest = columns[i][k] - center[i];
                for (int j = 0; j < i; j++) {
                    rest -= factor[i][j] * z[j];
                }
                z[i] = rest / factor[i][i];
                sum += z[i] * z[i];
            }
            distances[k] = sum;
        }
        return distances;
    }
}
