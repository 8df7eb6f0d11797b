package dev.teeward.flight.study;

import java.util.Arrays;
import java.util.Objects;
import org.hipparchus.exception.MathRuntimeException;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresBuilder;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LevenbergMarquardtOptimizer;
import org.hipparchus.util.Pair;

/**
 * Nonlinear least squares over the free parameters of a family, by Levenberg and Marquardt (Hipparchus), with what is
 * believed beforehand as further rows.
 *
 * <p>Derivatives to the parameters are central differences over 1/1000 of the distance between the bounds; steps beyond a bound
 * end on it.
 */
final class FitProblem {
    private static final double STEP = 5e-4;
    private static final int MOST_ITERATIONS = 200;

    private final ParametricAerodynamics family;
    private final Residuals residuals;

    FitProblem(ParametricAerodynamics family, Residuals residuals) {
        this.family = family;
        this.residuals = residuals;
    }

    ParametricAerodynamics family() {
        return family;
    }

    Residuals residuals() {
        return residuals;
    }

    /** Rows for what is believed of the parameters; they follow those of the observations. */
    int priorRows() {
        return (int)
                family.parameters().stream().filter(p -> p.spread().isPresent()).count();
    }

    /** All rows at a point: observations, then beliefs. */
    double[] rows(double[] point) {
        double[] seen = residuals.of(family.model(point));
        double[] all = Arrays.copyOf(seen, seen.length + priorRows());
        int row = seen.length;
        for (int j = 0; j < point.length; j++) {
            ParametricAerodynamics.Parameter p = family.parameters().get(j);
            if (p.spread().isPresent()) {
                all[row++] = (point[j] - p.start()) / p.spread().orElseThrow();
            }
        }
        return all;
    }

    /** The derivatives of all rows to all parameters. */
    double[][] jacobian(double[] point) {
        double[][] columns = new double[point.length][];
        for (int j = 0; j < point.length; j++) {
            columns[j] = column(point, j);
        }
        return columns;
    }

    private double[] column(double[] point, int j) {
        ParametricAerodynamics.Parameter p = family.parameters().get(j);
        double h = STEP * (p.highest() - p.lowest());
        double[] up = point.clone();
        double[] down = point.clone();
        up[j] = Math.min(p.highest(), point[j] + h);
        down[j] = Math.max(p.lowest(), point[j] - h);
        double[] above = rows(up);
        double[] below = rows(down);
        for (int i = 0; i < above.length; i++) {
            above[i] = (above[i] - below[i]) / (up[j] - down[j]);
        }
        return above;
    }

    /** The sum of squares at a point. */
    double cost(double[] point) {
        return Arrays.stream(rows(point)).map(r -> r * r).sum();
    }

    /**
     * The least squares.
     *
     * @param start where to begin
     * @param fixed a parameter that keeps its value of the start, or -1
     * @return the point
     */
    double[] fit(double[] start, int fixed) {
        int[] free = new int[start.length - (fixed < 0 ? 0 : 1)];
        for (int j = 0, k = 0; j < start.length; j++) {
            if (j != fixed) {
                free[k++] = j;
            }
        }
        if (free.length == 0) {
            return start.clone();
        }
        double[] first = Arrays.stream(free).mapToDouble(j -> start[j]).toArray();
        int n = residuals.rows() + priorRows();
        try {
            double[] found = new LevenbergMarquardtOptimizer()
                    .withCostRelativeTolerance(1e-9)
                    .withParameterRelativeTolerance(1e-7)
                    .optimize(new LeastSquaresBuilder()
                            .start(first)
                            .target(new double[n])
                            .lazyEvaluation(false)
                            .maxEvaluations(10 * MOST_ITERATIONS)
                            .maxIterations(MOST_ITERATIONS)
                            .parameterValidator(point -> new ArrayRealVector(
                                    pick(family.clipped(put(start, free, point.toArray())), free), false))
                            .model(point -> {
                                double[] whole = family.clipped(put(start, free, point.toArray()));
                                RealMatrix jacobian = new Array2DRowRealMatrix(n, free.length);
                                for (int k = 0; k < free.length; k++) {
                                    jacobian.setColumn(k, column(whole, free[k]));
                                }
                                return new Pair<>(new ArrayRealVector(rows(whole), false), jacobian);
                            })
                            .build())
                    .getPoint()
                    .toArray();
            return family.clipped(put(start, free, found));
        } catch (MathRuntimeException e) {
            throw new IllegalStateException(
                    "the fit of " + family.names() + " does not converge: " + Objects.requireNonNull(e.getMessage())
                            + "; try another start or narrower bounds",
                    e);
        }
    }

    private static double[] put(double[] whole, int[] free, double[] values) {
        double[] all = whole.clone();
        for (int k = 0; k < free.length; k++) {
            all[free[k]] = values[k];
        }
        return all;
    }

    private static double[] pick(double[] whole, int[] free) {
        return Arrays.stream(free).mapToDouble(j -> whole[j]).toArray();
    }
}
