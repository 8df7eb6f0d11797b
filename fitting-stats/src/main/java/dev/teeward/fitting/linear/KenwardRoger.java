package dev.teeward.fitting.linear;

/**
 * Small-sample errors and degrees of freedom for a random intercept (Kenward and Roger 1997, Biometrics 53): with V = v_b
 * ZZ' + v_e I, Phi = (X'V^-1X)^-1, P_i = -X'V^-1 V_i V^-1 X, Q_ij = X'V^-1 V_i V^-1 V_j V^-1 X and W the inverse expected
 * information of the variances, the covariance becomes Phi + 2 Phi (sum W_ij (Q_ij - P_i Phi P_j)) Phi, and for one
 * coefficient df = 2 / (sum W_ij (Phi P_i Phi)_cc (Phi P_j Phi)_cc / Phi_cc^2). Stateless, thread-safe.
 */
final class KenwardRoger {
    private KenwardRoger() {}

    /** Fills the adjusted covariance and the two matrices Phi P_i Phi; returns W. */
    static double[][] adjust(
            double[][] columns,
            int[] of,
            int[] sizes,
            double between,
            double within,
            double[][] phi,
            double[][] adjusted,
            double[][][] slopes) {
        int k = columns.length;
        int groups = sizes.length;
        // V_g^-1 = (I - between a J) / within with a = 1 / (within + n between), and V_g^-1 1 = a 1.
        double[] a = new double[groups];
        for (int g = 0; g < groups; g++) {
            a[g] = 1.0 / (within + sizes[g] * between);
        }
        double[][] once = new double[k][];
        double[][] twice = new double[k][];
        double[][] sums = new double[k][];
        for (int j = 0; j < k; j++) {
            once[j] = solve(columns[j], of, groups, between, within, a);
            twice[j] = solve(once[j], of, groups, between, within, a);
            sums[j] = sums(once[j], of, groups);
        }
        double[][][] p = new double[2][k][k];
        double[][][] q = new double[3][k][k];
        for (int r = 0; r < k; r++) {
            for (int c = 0; c < k; c++) {
                for (int g = 0; g < groups; g++) {
                    double product = sums[r][g] * sums[c][g];
                    p[0][r][c] -= product;
                    q[0][r][c] += product * sizes[g] * a[g];
                    q[1][r][c] += product * a[g];
                }
                for (int i = 0; i < of.length; i++) {
                    p[1][r][c] -= once[r][i] * once[c][i];
                    q[2][r][c] += once[r][i] * twice[c][i];
                }
            }
        }
        double[] traces = new double[3];
        for (int g = 0; g < groups; g++) {
            double n = sizes[g];
            traces[0] += n * a[g] * n * a[g];
            traces[1] += n * a[g] * a[g];
            traces[2] += (n - 1.0) / (within * within) + a[g] * a[g];
        }
        double[] information = new double[3];
        for (int ij = 0; ij < 3; ij++) {
            double[][] first = times(phi, p[ij == 2 ? 1 : 0]);
            double[][] second = times(phi, p[ij == 0 ? 0 : 1]);
            information[ij] = 0.5 * (traces[ij] - 2.0 * trace(times(phi, q[ij])) + trace(times(first, second)));
        }
        double determinant = information[0] * information[2] - information[1] * information[1];
        double[][] w = {
            {information[2] / determinant, -information[1] / determinant},
            {-information[1] / determinant, information[0] / determinant}
        };
        double[][] lambda = new double[k][k];
        for (int i = 0; i < 2; i++) {
            slopes[i] = times(times(phi, p[i]), phi);
            for (int j = 0; j < 2; j++) {
                // Q_eb is the transpose of Q_be, which is symmetric here.
                double[][] bent = times(times(p[i], phi), p[j]);
                for (int r = 0; r < k; r++) {
                    for (int c = 0; c < k; c++) {
                        lambda[r][c] += w[i][j] * (q[i + j][r][c] - bent[r][c]);
                    }
                }
            }
        }
        double[][] correction = times(times(phi, lambda), phi);
        for (int r = 0; r < k; r++) {
            for (int c = 0; c < k; c++) {
                adjusted[r][c] = phi[r][c] + 2.0 * correction[r][c];
            }
        }
        return w;
    }

    static double degreesOfFreedom(int column, double[][] phi, double[][][] slopes, double[][] w) {
        double sum = 0.0;
        for (int i = 0; i < 2; i++) {
            for (int j = 0; j < 2; j++) {
                sum += w[i][j] * slopes[i][column][column] * slopes[j][column][column];
            }
        }
        return 2.0 * phi[column][column] * phi[column][column] / sum;
    }

    private static double[] sums(double[] x, int[] of, int groups) {
        double[] sums = new double[groups];
        for (int i = 0; i < x.length; i++) {
            sums[of[i]] += x[i];
        }
        return sums;
    }

    private static double[] solve(double[] x, int[] of, int groups, double between, double within, double[] a) {
        double[] sums = sums(x, of, groups);
        double[] z = new double[x.length];
        for (int i = 0; i < z.length; i++) {
            z[i] = (x[i] - between * a[of[i]] * sums[of[i]]) / within;
        }
        return z;
    }

    private static double[][] times(double[][] a, double[][] b) {
        int k = a.length;
        double[][] product = new double[k][k];
        for (int i = 0; i < k; i++) {
            for (int j = 0; j < k; j++) {
                for (int m = 0; m < k; m++) {
                    product[i][j] += a[i][m] * b[m][j];
                }
            }
        }
        return product;
    }

    private static double trace(double[][] a) {
        double sum = 0.0;
        for (int i = 0; i < a.length; i++) {
            sum += a[i][i];
        }
        return sum;
    }
}
