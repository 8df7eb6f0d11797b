package dev.teeward.flight.study;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Against the whole covariance of a flight, solved with and cut up by Commons Math. */
class FlightRowsTest {
    private final SplittableRandom random = new SplittableRandom(31L);

    private double[] numbers(int many, double size) {
        return random.doubles(many, -size, size).toArray();
    }

    private double[][] effects(int rows, int columns) {
        double[][] effects = new double[columns][];
        for (int k = 0; k < columns; k++) {
            effects[k] = numbers(rows, 3.0);
        }
        return effects;
    }

    private static RealMatrix covariance(double[][] effects, double[] weights) {
        RealMatrix covariance = MatrixUtils.createRealDiagonalMatrix(
                Arrays.stream(weights).map(w -> 1.0 / w).toArray());
        if (effects.length > 0) {
            RealMatrix a = new Array2DRowRealMatrix(effects).transpose();
            covariance = covariance.add(a.multiply(a.transpose()));
        }
        return covariance;
    }

    private static double[] without(double[] all, int i) {
        double[] rest = new double[all.length - 1];
        System.arraycopy(all, 0, rest, 0, i);
        System.arraycopy(all, i + 1, rest, i, rest.length - i);
        return rest;
    }

    private static double dot(double[] x, double[] y) {
        return new ArrayRealVector(x, false).dotProduct(new ArrayRealVector(y, false));
    }

    /** Generalised least squares need no more of the rows z than z(x) . z(y) = x' S^-1 y; 900 rows are a track of 300 points. */
    @ParameterizedTest
    @CsvSource({"1, 5", "4, 5", "9, 3", "6, 0", "900, 5"})
    void whitenedRowsMultiplyAsByTheInverseOfTheCovariance(int n, int q) {
        double[][] effects = effects(n, q);
        double[] weights = random.doubles(n, 0.05, 1.0).toArray();
        FlightRows rows = FlightRows.of(n, effects).weighed(weights);
        double[] x = numbers(n, 5.0);
        double[] y = numbers(n, 5.0);
        RealVector solved = new CholeskyDecomposition(covariance(effects, weights))
                .getSolver()
                .solve(new ArrayRealVector(y));
        double size = dot(rows.whitened(x), rows.whitened(x)) + dot(rows.whitened(y), rows.whitened(y));
        assertEquals(new ArrayRealVector(x).dotProduct(solved), dot(rows.whitened(x), rows.whitened(y)), 1e-11 * size);
        RealMatrix full = covariance(effects, FlightRows.of(n, effects).weights());
        double squares = solved.dotProduct(full.operate(solved));
        assertEquals(squares, rows.squares(y), 1e-10 * squares);
    }

    /** The normal distribution of one row given the others, by cutting the covariance up. */
    @Test
    void aRowIsJudgedGivenAllOthers() {
        int n = 7;
        double[][] effects = effects(n, 4);
        double[] weights = random.doubles(n, 0.05, 1.0).toArray();
        double[] r = numbers(n, 5.0);
        FlightRows rows = FlightRows.of(n, effects).weighed(weights);
        double[] judged = rows.judged(r);
        for (int i = 0; i < n; i++) {
            double[] own = weights.clone();
            own[i] = 1.0;
            RealMatrix covariance = covariance(effects, own);
            double[] across = without(covariance.getRow(i), i);
            double[][] others = new double[n - 1][];
            for (int k = 0; k < n - 1; k++) {
                others[k] = without(covariance.getRow(k < i ? k : k + 1), i);
            }
            RealVector slope = new CholeskyDecomposition(new Array2DRowRealMatrix(others))
                    .getSolver()
                    .solve(new ArrayRealVector(across));
            double left = r[i] - slope.dotProduct(new ArrayRealVector(without(r, i)));
            double variance = covariance.getEntry(i, i) - slope.dotProduct(new ArrayRealVector(across));
            assertEquals(left / Math.sqrt(variance), judged[i], 1e-10);
            // The score of a row with the weight found for it is psi over the standard deviation.
            for (RobustLoss loss : RobustLoss.values()) {
                double u = judged[i] / 1.3;
                double m = loss.weight(u);
                own[i] = rows.weights(loss, 1.3, r)[i];
                // No covariance has a row of weight 0; such a row has no score.
                double score = own[i] > 0.0
                        ? new CholeskyDecomposition(covariance(effects, own))
                                .getSolver()
                                .solve(new ArrayRealVector(r))
                                .getEntry(i)
                        : 0.0;
                assertEquals(m * judged[i] / Math.sqrt(variance), score, 1e-9, loss.name());
            }
        }
    }

    /** With all weights 1 it is (S^-1 r)_i / sqrt((S^-1)_ii), the deletion residual of regression diagnostics. */
    @Test
    void rowsThatCountInFullAreJudgedByTheInverseOfTheCovariance() {
        int n = 5;
        double[][] effects = effects(n, 3);
        double[] r = numbers(n, 5.0);
        FlightRows rows = FlightRows.of(n, effects);
        RealMatrix inverse = MatrixUtils.inverse(covariance(effects, rows.weights()));
        double[] scores = inverse.operate(r);
        for (int i = 0; i < n; i++) {
            assertEquals(scores[i] / Math.sqrt(inverse.getEntry(i, i)), rows.judged(r)[i], 1e-10);
        }
    }

    @Test
    void aRowOfWeightNothingIsLeftOut() {
        int n = 6;
        double[][] effects = effects(n, 3);
        double[] r = numbers(n, 5.0);
        double[] weights = {1.0, 0.4, 0.0, 0.7, 1.0, 0.2};
        double[][] fewer = Arrays.stream(effects).map(c -> without(c, 2)).toArray(double[][]::new);
        FlightRows all = FlightRows.of(n, effects).weighed(weights);
        FlightRows rest = FlightRows.of(n - 1, fewer).weighed(without(weights, 2));
        assertArrayEquals(rest.whitened(without(r, 2)), without(all.whitened(r), 2), 1e-12);
        assertEquals(0.0, all.whitened(r)[2], 0.0);
        assertArrayEquals(rest.judged(without(r, 2)), without(all.judged(r), 2), 1e-12);
    }

    @Test
    void exactLaunchesLeaveRowsAsTheyAre() {
        double[] r = {1.0, -2.0, 3.0};
        FlightRows rows = FlightRows.of(3, new double[0][]).weighed(new double[] {1.0, 0.25, 0.0});
        assertArrayEquals(new double[] {1.0, -1.0, 0.0}, rows.whitened(r), 0.0);
        assertArrayEquals(r, rows.judged(r), 0.0);
        assertEquals(1.25, rows.squares(r), 0.0);
    }
}
