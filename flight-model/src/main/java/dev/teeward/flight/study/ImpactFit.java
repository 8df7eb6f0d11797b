package dev.teeward.flight.study;

import dev.teeward.flight.Ball;
import dev.teeward.flight.impact.ClubHead;
import dev.teeward.flight.impact.Impact;
import dev.teeward.flight.impact.ImpactModel;
import dev.teeward.flight.impact.NormalRestitution;
import java.util.Arrays;
import java.util.List;
import org.hipparchus.exception.MathIllegalStateException;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.hipparchus.linear.SingularValueDecomposition;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresBuilder;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LevenbergMarquardtOptimizer;

/**
 * The parameters of {@link ImpactCalibration} fitted from one start: restitution, restitution along the face, friction and, if
 * asked, the slope of the restitution.
 */
final class ImpactFit {
    private static final double STEP = 1e-6;
    private static final double TOLERANCE = 1e-9;

    /** Speeds that differ by less are equal [m/s]. */
    private static final double LEAST_SPREAD = 0.05;

    private static final double STEEPEST = 0.05 - 2.0 * STEP;

    final List<StruckShot> shots;
    final ClubHead head;
    final double[] parameters;
    final double cost;
    final int slipping;
    private final ImpactModel model;
    private final Ball ball;
    private final double[] deviations;
    private final double speed;

    ImpactFit(
            ImpactModel model,
            Ball ball,
            List<StruckShot> shots,
            ClubHead head,
            double[] deviations,
            boolean sloped,
            double friction) {
        this.model = model;
        this.ball = ball;
        this.shots = shots;
        this.head = head;
        this.deviations = deviations;
        double sum = 0.0;
        for (StruckShot shot : shots) {
            sum += approach(shot, head);
        }
        speed = sum / shots.size();
        double[] start = {0.78, Math.min(0.9, head.tangentialRestitution() + 0.05), friction, 0.0};
        parameters = optimum(sloped ? start : Arrays.copyOf(start, 3));
        double[] r = residuals(parameters);
        double squares = 0.0;
        for (double value : r) {
            squares += value * value;
        }
        cost = squares;
        int slips = 0;
        for (StruckShot shot : shots) {
            slips += strike(shot, parameters).slipped() ? 1 : 0;
        }
        slipping = slips;
    }

    /** The speed of approach along the face normal where the ball was struck [m/s]. */
    private double approach(StruckShot shot, ClubHead struckBy) {
        double spinLoft = model.strike(
                        shot.delivery(), struckBy.toBuilder().restitution(0.78).build())
                .spinLoft()
                .radians();
        return shot.delivery().clubSpeed().metersPerSecond() * Math.cos(spinLoft);
    }

    /** The mean speed of approach, at which the restitution is fitted [m/s]. */
    double speed() {
        return speed;
    }

    /** Where the search from a start ends; the start itself if it gets stuck between gripping and slipping. */
    private double[] optimum(double[] start) {
        try {
            return new LevenbergMarquardtOptimizer()
                    .withCostRelativeTolerance(TOLERANCE)
                    .withParameterRelativeTolerance(TOLERANCE)
                    .optimize(new LeastSquaresBuilder()
                            .start(start)
                            .model(this::residuals, this::jacobian)
                            .target(new double[3 * shots.size()])
                            .parameterValidator(ImpactFit::within)
                            .lazyEvaluation(true)
                            .maxEvaluations(300)
                            .maxIterations(300)
                            .build())
                    .getPoint()
                    .toArray();
        } catch (MathIllegalStateException e) {
            return start;
        }
    }

    private static RealVector within(RealVector point) {
        double[] clipped = point.toArray();
        for (int j = 0; j < clipped.length; j++) {
            double low = j < 3 ? 2.0 * STEP : -STEEPEST;
            double high = j < 3 ? 1.0 - 2.0 * STEP : STEEPEST;
            clipped[j] = Math.max(low, Math.min(high, clipped[j]));
        }
        return new ArrayRealVector(clipped, false);
    }

    ClubHead withParameters(double[] p) {
        return head.toBuilder()
                .restitution(
                        p.length == 3 ? NormalRestitution.constant(p[0]) : NormalRestitution.linear(p[0], speed, p[3]))
                .tangentialRestitution(p[1])
                .friction(p[2])
                .build();
    }

    private Impact strike(StruckShot shot, double[] p) {
        return model.strike(shot.delivery(), withParameters(p));
    }

    double[] residuals(double[] p) {
        double[] r = new double[3 * shots.size()];
        for (int i = 0; i < shots.size(); i++) {
            double[] computed = ImpactEquations.numbers(strike(shots.get(i), p).launch());
            double[] seen = ImpactEquations.numbers(shots.get(i).launch());
            r[3 * i] = (computed[0] - seen[0]) / deviations[0];
            r[3 * i + 1] = (computed[1] - seen[1]) / deviations[1];
            r[3 * i + 2] = (computed[3] - seen[3]) / deviations[2];
        }
        return r;
    }

    double[] deviations() {
        return deviations.clone();
    }

    double[][] jacobian(double[] p) {
        double[][] j = new double[3 * shots.size()][p.length];
        for (int column = 0; column < p.length; column++) {
            double[] moved = p.clone();
            moved[column] = p[column] + STEP;
            double[] above = residuals(moved);
            moved[column] = p[column] - STEP;
            double[] below = residuals(moved);
            for (int row = 0; row < above.length; row++) {
                j[row][column] = (above[row] - below[row]) / (2.0 * STEP);
            }
        }
        return j;
    }

    /** Whether there are shots enough, and speeds different enough, for a covariance with the slope. */
    boolean separates() {
        double squares = 0.0;
        for (StruckShot shot : shots) {
            double away = approach(shot, head) - speed;
            squares += away * away;
        }
        return shots.size() > parameters.length && Math.sqrt(squares / shots.size()) > LEAST_SPREAD;
    }

    /** The covariance of some of the parameters, clustered by shot, each shot's residuals as if it were left out. */
    double[][] covariance(List<Integer> which) {
        int p = which.size();
        double[][] whole = jacobian(parameters);
        double[] r = residuals(parameters);
        double[][] columns = new double[whole.length][p];
        for (int row = 0; row < whole.length; row++) {
            for (int a = 0; a < p; a++) {
                columns[row][a] = whole[row][which.get(a)];
            }
        }
        RealMatrix j = new Array2DRowRealMatrix(columns, false);
        RealMatrix inverse =
                new LUDecomposition(j.transpose().multiply(j)).getSolver().getInverse();
        RealMatrix scatter = new Array2DRowRealMatrix(p, p);
        for (int shot = 0; shot < shots.size(); shot++) {
            RealMatrix own = j.getSubMatrix(3 * shot, 3 * shot + 2, 0, p - 1);
            RealMatrix left = MatrixUtils.createRealIdentityMatrix(3)
                    .subtract(own.multiply(inverse).multiply(own.transpose()));
            RealVector outside =
                    new SingularValueDecomposition(left).getSolver().solve(new ArrayRealVector(r, 3 * shot, 3));
            RealVector score = own.transpose().operate(outside);
            scatter = scatter.add(score.outerProduct(score));
        }
        double n = shots.size();
        return inverse.multiply(scatter)
                .multiply(inverse)
                .scalarMultiply((n - 1.0) / n)
                .getData();
    }

    /** The greatest ratio of impulses along and across the face that a gripping shot needed. */
    double frictionNeeded() {
        double most = 0.0;
        double turning = ball.inertiaFactor() * 0.5 * ball.diameter().meters();
        for (StruckShot shot : shots) {
            Impact impact = strike(shot, parameters);
            if (!impact.slipped()) {
                double[] launch = ImpactEquations.numbers(impact.launch());
                // The impulse along the face is k m r omega, that along the launch m v.
                double sine = turning * launch[3] * Math.PI / 30.0 / launch[0];
                most = Math.max(most, sine / Math.sqrt(1.0 - sine * sine));
            }
        }
        return most;
    }
}
