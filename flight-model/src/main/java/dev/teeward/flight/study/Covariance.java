package dev.teeward.flight.study;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;

/** The covariance of fitted parameters, as {@link Calibration} defines it. */
final class Covariance {
    /** The efficiency of the robust losses for normal errors, by their tuning. */
    private static final double EFFICIENCY = 0.95;

    private final Information information;
    private final double[][] matrix;
    private final double degreesOfFreedom;
    private final String method;

    private Covariance(Information information, double[][] matrix, double degreesOfFreedom, String method) {
        this.information = information;
        this.matrix = matrix;
        this.degreesOfFreedom = degreesOfFreedom;
        this.method = method;
    }

    static Covariance of(FitProblem problem, double[] point, RobustLoss loss, double scale, boolean shared) {
        Residuals residuals = problem.residuals();
        double[][] columns = new FitProblem(problem.family(), residuals.unweighed()).jacobian(point);
        int n = residuals.rows();
        double[] unit = new double[columns[0].length];
        Arrays.fill(unit, 1.0);
        if (problem.family().hasPrior()) {
            Arrays.fill(unit, 0, n, loss == RobustLoss.SQUARES ? 1.0 : EFFICIENCY);
            Information information = Information.of(columns, unit);
            return new Covariance(
                    information,
                    information.inverse(),
                    Double.POSITIVE_INFINITY,
                    "stated noise and prior, normal intervals");
        }
        Information information = Information.of(columns, unit);
        List<double[]> raw = residuals.raw(problem.family().model(point));
        double[] slopes = Arrays.stream(residuals.judged(raw))
                .map(t -> loss.slope(t / scale))
                .toArray();
        return shared
                ? sandwich(information, slopes, problem, point)
                : plain(information, slopes, residuals.squares(raw), point.length);
    }

    private static Covariance plain(Information information, double[] slopes, double squares, int p) {
        int n = slopes.length;
        double mean = mean(slopes);
        double slopeSquares = 0.0;
        for (double own : slopes) {
            slopeSquares += own * own / n;
        }
        double k = 1.0 + p / (double) n * Math.max(0.0, slopeSquares - mean * mean) / (mean * mean);
        double factor = k * k * squares / (n - p) / (mean * mean);
        double[][] matrix = new double[p][p];
        for (int a = 0; a < p; a++) {
            for (int b = 0; b < p; b++) {
                matrix[a][b] = factor * information.inverse(a, b);
            }
        }
        return new Covariance(information, matrix, n - p, "independent errors, t intervals");
    }

    private static Covariance sandwich(Information information, double[] slopes, FitProblem problem, double[] point) {
        double[][] columns = problem.jacobian(point);
        double[] seen = problem.residuals().of(problem.family().model(point));
        int p = columns.length;
        int n = seen.length;
        double[][] scores = new double[1 + problem.residuals().flight(n - 1)][p];
        for (int i = 0; i < n; i++) {
            for (int a = 0; a < p; a++) {
                scores[problem.residuals().flight(i)][a] += seen[i] * columns[a][i];
            }
        }
        int used = (int) Arrays.stream(scores)
                .filter(s -> Arrays.stream(s).anyMatch(x -> x != 0.0))
                .count();
        double[][] middle = new double[p][p];
        for (double[] s : scores) {
            for (int a = 0; a < p; a++) {
                for (int b = 0; b < p; b++) {
                    middle[a][b] += s[a] * s[b];
                }
            }
        }
        double mean = mean(slopes);
        double few = used / Math.max(1.0, used - p);
        double[][] matrix = product(product(information.inverse(), middle), information.inverse());
        for (double[] row : matrix) {
            for (int b = 0; b < p; b++) {
                row[b] *= few / (mean * mean);
            }
        }
        return new Covariance(
                information, matrix, Math.max(1.0, used - p), "errors shared within flights, t intervals");
    }

    private static double mean(double[] slopes) {
        return Math.max(Arrays.stream(slopes).sum() / slopes.length, 0.05);
    }

    private static double[][] product(double[][] a, double[][] b) {
        double[][] c = new double[a.length][b.length];
        for (int i = 0; i < a.length; i++) {
            for (int j = 0; j < b.length; j++) {
                for (int k = 0; k < b.length; k++) {
                    c[i][j] += a[i][k] * b[k][j];
                }
            }
        }
        return c;
    }

    double of(int a, int b) {
        return matrix[a][b];
    }

    boolean knows(int parameter) {
        return information.knows(parameter);
    }

    List<List<Integer>> mixtures() {
        return information.mixtures();
    }

    double degreesOfFreedom() {
        return degreesOfFreedom;
    }

    String method() {
        return method;
    }

    OptionalDouble correlation(int a, int b) {
        double size = Math.sqrt(matrix[a][a] * matrix[b][b]);
        if (!knows(a) || !knows(b) || !(size > 0.0)) {
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(Math.max(-1.0, Math.min(1.0, matrix[a][b] / size)));
    }
}
