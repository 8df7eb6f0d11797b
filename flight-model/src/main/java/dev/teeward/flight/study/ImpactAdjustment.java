package dev.teeward.flight.study;

import dev.teeward.flight.impact.ClubHead;
import dev.teeward.flight.impact.ImpactModel;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.hipparchus.exception.MathIllegalStateException;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.hipparchus.linear.SingularValueDecomposition;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresBuilder;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresProblem;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LevenbergMarquardtOptimizer;
import org.hipparchus.util.Pair;

/**
 * The delivery that agrees best with everything measured of an impact, each difference in units of its standard deviation,
 * and what the measurements leave open: the null space of their Jacobian.
 */
final class ImpactAdjustment {
    private static final double STEP = 1e-4;
    private static final double RANK = 1e-7;

    private final ImpactModel model;
    private final ClubHead head;
    private final List<ImpactQuantity> observed = new ArrayList<>();
    private final List<Integer> free = new ArrayList<>();
    private final double[] values = new double[ImpactQuantity.values().length];
    private final double[] deviations = new double[values.length];
    private double[] delivery;
    private double[] residuals = {};
    private double[][] inverseRows = {};
    private double[][] nullSpace = {};
    private double[][] hat = {};
    private int rank;

    private ImpactAdjustment(ImpactModel model, ClubHead head, double[] start) {
        this.model = model;
        this.head = head;
        this.delivery = start;
    }

    static ImpactAdjustment of(ImpactModel model, ClubHead head, MeasuredImpact measured, double[] start) {
        ImpactAdjustment fit = new ImpactAdjustment(model, head, start.clone());
        Map<ImpactQuantity, MeasuredImpact.Reading> readings = measured.readings();
        for (ImpactQuantity quantity : ImpactQuantity.values()) {
            int i = quantity.index();
            MeasuredImpact.Reading reading = readings.get(quantity);
            boolean assumed = reading != null && reading.deviation() == 0.0;
            if (reading != null) {
                fit.values[i] = reading.value();
                fit.deviations[i] = reading.deviation();
                if (quantity.isDelivery()) {
                    fit.delivery[i] = reading.value();
                }
                if (!assumed) {
                    fit.observed.add(quantity);
                }
            }
            if (quantity.isDelivery() && !assumed) {
                fit.free.add(i);
            }
        }
        fit.solve();
        return fit;
    }

    private void solve() {
        double[] start = free.stream().mapToDouble(i -> delivery[i]).toArray();
        LeastSquaresProblem problem = new LeastSquaresBuilder()
                .start(start)
                .model(this::model)
                .target(new double[observed.size()])
                .parameterValidator(this::within)
                .lazyEvaluation(false)
                .maxEvaluations(500)
                .maxIterations(500)
                .build();
        double[] point;
        try {
            point = new LevenbergMarquardtOptimizer()
                    .optimize(problem)
                    .getPoint()
                    .toArray();
        } catch (MathIllegalStateException e) {
            throw new IllegalStateException(
                    "no delivery was found that agrees with the measurements; check units and signs", e);
        }
        delivery = at(point);
        residuals = residuals(delivery);
        analyse(jacobian(point));
    }

    private RealVector within(RealVector point) {
        double[] clipped = point.toArray();
        for (int j = 0; j < clipped.length; j++) {
            ImpactQuantity quantity = ImpactQuantity.ALL.get(free.get(j));
            double margin = 2.0 * STEP;
            clipped[j] = Math.max(quantity.low() + margin, Math.min(quantity.high() - margin, clipped[j]));
        }
        return new ArrayRealVector(clipped, false);
    }

    private Pair<RealVector, RealMatrix> model(RealVector point) {
        double[] p = point.toArray();
        return new Pair<>(new ArrayRealVector(residuals(at(p)), false), new Array2DRowRealMatrix(jacobian(p), false));
    }

    private double[] at(double[] point) {
        double[] x = delivery.clone();
        for (int j = 0; j < point.length; j++) {
            x[free.get(j)] = point[j];
        }
        return x;
    }

    /** Computed minus measured, in standard deviations; far away where no launch comes of a delivery. */
    private double[] residuals(double[] x) {
        double[] launch;
        try {
            launch = ImpactEquations.launch(model, head, x);
        } catch (IllegalArgumentException e) {
            launch = new double[] {1e4, 1e4, 1e4, 1e6, 179.0};
        }
        double[] r = new double[observed.size()];
        for (int row = 0; row < r.length; row++) {
            ImpactQuantity quantity = observed.get(row);
            int i = quantity.index();
            double difference = (quantity.isDelivery() ? x[i] : launch[i - ImpactQuantity.DELIVERY]) - values[i];
            if (quantity == ImpactQuantity.AXIS_TILT) {
                difference = Math.IEEEremainder(difference, 360.0);
            }
            r[row] = difference / deviations[i];
        }
        return r;
    }

    private double[][] jacobian(double[] point) {
        double[][] j = new double[observed.size()][point.length];
        for (int column = 0; column < point.length; column++) {
            double[] moved = point.clone();
            moved[column] = point[column] + STEP;
            double[] above = residuals(at(moved));
            moved[column] = point[column] - STEP;
            double[] below = residuals(at(moved));
            for (int row = 0; row < above.length; row++) {
                j[row][column] = (above[row] - below[row]) / (2.0 * STEP);
            }
        }
        return j;
    }

    private void analyse(double[][] jacobian) {
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
        rank = 0;
        while (rank < n && s[rank] > RANK * s[0]) {
            rank++;
        }
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
        hat = new double[jacobian.length][jacobian.length];
        for (int i = 0; i < jacobian.length; i++) {
            for (int l = 0; l < jacobian.length; l++) {
                for (int k = 0; k < rank; k++) {
                    hat[i][l] += u.getEntry(i, k) * u.getEntry(l, k);
                }
            }
        }
    }

    double[] delivery() {
        return delivery.clone();
    }

    int rank() {
        return rank;
    }

    int freeQuantities() {
        return free.size();
    }

    List<ImpactQuantity> observed() {
        return observed;
    }

    double[] residuals() {
        return residuals.clone();
    }

    /** The part of the variance of a measurement that its own fit leaves to its residual, in [0, 1]. */
    double leftToResidual(int row) {
        return 1.0 - hat[row][row];
    }

    double chiSquare() {
        double sum = 0.0;
        for (double r : residuals) {
            sum += r * r;
        }
        return sum;
    }

    /** How much of a gradient in the seven quantities the measurements do not see, in its own unit. */
    double unseen(double[] gradient) {
        return norm(nullSpace, gradient);
    }

    /** The standard deviation of a number with this gradient in the seven quantities. */
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
