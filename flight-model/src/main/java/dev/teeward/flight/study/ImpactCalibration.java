package dev.teeward.flight.study;

import dev.teeward.flight.impact.ClubHead;
import dev.teeward.flight.impact.Impact;
import dev.teeward.flight.impact.RigidImpact;
import dev.teeward.quantity.Interval;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.hipparchus.distribution.continuous.TDistribution;
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
 * Restitution, restitution along the face, and friction of a head, from a golfer's own shots.
 *
 * <p>Ball speed, launch angle and spin rate of all shots are fitted together by least squares, each difference in units of a
 * typical standard deviation (of what the measurement of launch and delivery adds up to; 0.5 m/s, 0.6 deg and 250 rpm unless
 * given). Intervals take the scatter of the shots as it is: the sandwich covariance, clustered by shot, each shot's
 * residuals taken as if it had been left out (CR3: Bell and McCaffrey 2002, from memory), and Student's t with n - p degrees
 * of freedom, n the number of shots, p that of fitted numbers, for friction and the restitution along the face at most one less
 * than the shots that slipped or gripped. So wrong
 * standard deviations cost precision, not coverage.
 *
 * <p><b>What can be told apart.</b> Ball speed tells the restitution. Spin tells the restitution along the face if the ball
 * gripped, and the friction if it slipped; a shot never tells both. If no shot slips, or slipping
 * explains the shots no better than chance would (chi-square below 10.8), the friction is only known to be at least what the
 * shots needed; if all slip, the restitution along the face is not determined. What is not determined has no
 * estimate and keeps the value of the head given, and a warning says so. A delivery measured with a constant error, in loft
 * above all, goes into the numbers.
 *
 * <pre>{@code
 * ImpactCalibration.Result fit = ImpactCalibration.withDefaults().fit(shots, TypicalHead.iron(7));
 * fit.restitution();           // 0.781, with fit.restitutionInterval()
 * ClubHead mine = fit.head();  // the head with what was found
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class ImpactCalibration {
    private static final ImpactCalibration DEFAULTS = new ImpactCalibration(new double[] {0.5, 0.6, 250.0}, 0.95);
    private static final double[] FRICTIONS = {0.9, 0.4, 0.2, 0.1};
    private static final double STEP = 1e-6;
    private static final double CORRELATED = 0.95;
    private static final double TOLERANCE = 1e-9;
    private static final int LEAST = 4;

    /** The 0.999 quantile of chi-square with one degree of freedom. */
    private static final double BY_CHANCE = 10.83;

    private final double[] deviations;
    private final double level;

    private ImpactCalibration(double[] deviations, double level) {
        this.deviations = deviations;
        this.level = level;
    }

    /**
     * Intervals at 95 percent, and the standard deviations given above.
     *
     * @return the procedure
     */
    public static ImpactCalibration withDefaults() {
        return DEFAULTS;
    }

    /**
     * A copy with another level of the intervals.
     *
     * @param value the level, in (0, 1)
     * @return the copy
     * @throws IllegalArgumentException if it lies outside
     */
    public ImpactCalibration withLevel(double value) {
        if (!(value > 0.0 && value < 1.0)) {
            throw new IllegalArgumentException("level must be in (0, 1), but was " + value);
        }
        return new ImpactCalibration(deviations, value);
    }

    /**
     * A copy that weighs the three measurements otherwise.
     *
     * @param ballSpeed the standard deviation of a shot's ball speed about the model, positive [m/s]
     * @param launchAngle that of its launch angle, positive [deg]
     * @param spinRate that of its spin rate, positive [rpm]
     * @return the copy
     * @throws IllegalArgumentException if one is not positive and finite
     */
    public ImpactCalibration withDeviations(double ballSpeed, double launchAngle, double spinRate) {
        for (double value : new double[] {ballSpeed, launchAngle, spinRate}) {
            if (!(value > 0.0 && value < Double.POSITIVE_INFINITY)) {
                throw new IllegalArgumentException("standard deviations must be positive, but one was " + value);
            }
        }
        return new ImpactCalibration(new double[] {ballSpeed, launchAngle, spinRate}, level);
    }

    /**
     * Fits a head to shots.
     *
     * @param shots at least 4, all with this head
     * @param head mass, inertia, curvature and hand are used as they are; its coefficients where the shots do not tell
     * @return what was found
     * @throws IllegalArgumentException if there are fewer shots, or one cannot have been hit with such a head
     */
    public Result fit(List<StruckShot> shots, ClubHead head) {
        if (shots.size() < LEAST) {
            throw new IllegalArgumentException("shots must be at least " + LEAST + ", but were " + shots.size());
        }
        List<StruckShot> all = List.copyOf(shots);
        Fit gripping = new Fit(all, head, FRICTIONS[0]);
        Fit best = gripping;
        for (int i = 1; i < FRICTIONS.length; i++) {
            Fit fit = new Fit(all, head, FRICTIONS[i]);
            if (fit.cost < best.cost * (1.0 - 1e-9)) {
                best = fit;
            }
        }
        // A little less spin than expected, by chance, looks like a shot that slipped.
        double variance = best.cost / (3.0 * all.size() - 3.0);
        boolean chance = gripping.slipping == 0 && gripping.cost - best.cost <= BY_CHANCE * variance;
        return new Result(chance ? gripping : best, level);
    }

    /** The parameters: restitution, restitution along the face, friction; fitted from one start. */
    private final class Fit {
        final List<StruckShot> shots;
        final ClubHead head;
        final double[] parameters;
        final double cost;
        final int slipping;

        Fit(List<StruckShot> shots, ClubHead head, double friction) {
            this.shots = shots;
            this.head = head;
            double[] start = {0.78, Math.min(0.9, head.tangentialRestitution() + 0.05), friction};
            parameters = optimum(start);
            double[] r = residuals(parameters);
            double sum = 0.0;
            for (double value : r) {
                sum += value * value;
            }
            cost = sum;
            int slips = 0;
            for (StruckShot shot : shots) {
                slips += strike(shot, parameters).slipped() ? 1 : 0;
            }
            slipping = slips;
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
                                .parameterValidator(Fit::within)
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
                clipped[j] = Math.max(2.0 * STEP, Math.min(1.0 - 2.0 * STEP, clipped[j]));
            }
            return new ArrayRealVector(clipped, false);
        }

        ClubHead withParameters(double[] p) {
            return head.toBuilder()
                    .restitution(p[0])
                    .tangentialRestitution(p[1])
                    .friction(p[2])
                    .build();
        }

        private Impact strike(StruckShot shot, double[] p) {
            return RigidImpact.standard().strike(shot.delivery(), withParameters(p));
        }

        private double[] residuals(double[] p) {
            double[] r = new double[3 * shots.size()];
            for (int i = 0; i < shots.size(); i++) {
                double[] computed =
                        ImpactEquations.numbers(strike(shots.get(i), p).launch());
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
            for (StruckShot shot : shots) {
                Impact impact = strike(shot, parameters);
                if (!impact.slipped()) {
                    double[] launch = ImpactEquations.numbers(impact.launch());
                    // The tangential speed of a uniform ball of the rules is 2/5 r omega.
                    double sine = 0.4 * 0.021335 * launch[3] * Math.PI / 30.0 / launch[0];
                    most = Math.max(most, sine / Math.sqrt(1.0 - sine * sine));
                }
            }
            return most;
        }
    }

    /** The coefficients of a head as a golfer's shots tell them. */
    public static final class Result {
        private final double[] parameters;
        private final boolean[] determined;
        private final Interval[] intervals = new Interval[3];
        private final double frictionNeeded;
        private final int shots;
        private final int slipping;
        private final double[] scatter;
        private final ClubHead head;
        private final List<Warning> warnings;

        private Result(Fit fit, double level) {
            shots = fit.shots.size();
            slipping = fit.slipping;
            determined = new boolean[] {true, slipping < shots, slipping > 0};
            parameters = fit.parameters.clone();
            if (!determined[1]) {
                parameters[1] = fit.head.tangentialRestitution();
            }
            frictionNeeded = fit.frictionNeeded();
            if (!determined[2]) {
                parameters[2] = Math.max(fit.head.friction(), Math.min(1.0, frictionNeeded));
            }
            List<Integer> which = new ArrayList<>();
            for (int i = 0; i < 3; i++) {
                if (determined[i]) {
                    which.add(i);
                } else {
                    intervals[i] = Interval.unbounded(level);
                }
            }
            List<Warning> found = new ArrayList<>();
            double[][] covariance = fit.covariance(which);
            int[] telling = {shots - which.size(), shots - slipping - 1, slipping - 1};
            for (int a = 0; a < which.size(); a++) {
                int freedom = Math.max(1, Math.min(shots - which.size(), telling[which.get(a)]));
                double t = new TDistribution(freedom).inverseCumulativeProbability(0.5 + 0.5 * level);
                double middle = parameters[which.get(a)];
                double half = t * Math.sqrt(covariance[a][a]);
                intervals[which.get(a)] = Interval.of(middle - half, middle + half, level);
            }
            undetermined(found);
            correlations(which, covariance, found);
            scatter = scatter(fit);
            head = fit.withParameters(parameters);
            warnings = List.copyOf(found);
        }

        private void undetermined(List<Warning> found) {
            if (!determined[2]) {
                found.add(Warning.of(
                        "friction-not-determined",
                        String.format(
                                Locale.ROOT,
                                "No shot slipped on the face, so the friction is only known to be at least %.2f.",
                                frictionNeeded)));
            }
            if (!determined[1]) {
                found.add(Warning.of(
                        "tangential-restitution-not-determined",
                        "Every shot slipped on the face, so nothing tells the restitution along it."));
            }
            for (int i = 0; i < 3; i++) {
                if (determined[i] && (parameters[i] < 1e-4 || parameters[i] > 1.0 - 1e-4)) {
                    found.add(Warning.of(
                            "coefficient-at-its-limit",
                            "A coefficient ended at the end of its range, 0 or 1, where its interval does not hold."));
                }
            }
        }

        private static void correlations(List<Integer> which, double[][] covariance, List<Warning> found) {
            String[] names = {"restitution", "restitution along the face", "friction"};
            for (int a = 0; a < which.size(); a++) {
                for (int b = 0; b < a; b++) {
                    double correlation = covariance[a][b] / Math.sqrt(covariance[a][a] * covariance[b][b]);
                    if (Math.abs(correlation) > CORRELATED) {
                        found.add(Warning.of(
                                "cannot-be-told-apart",
                                "These shots hardly tell " + names[which.get(b)] + " and " + names[which.get(a)]
                                        + " apart: they can change together without a difference."));
                    }
                }
            }
        }

        private static double[] scatter(Fit fit) {
            double[] r = fit.residuals(fit.parameters);
            double[] sums = new double[3];
            for (int row = 0; row < r.length; row++) {
                sums[row % 3] += r[row] * r[row] / fit.shots.size();
            }
            double[] scatter = new double[3];
            double[] deviations = fit.deviations();
            for (int k = 0; k < 3; k++) {
                scatter[k] = deviations[k] * Math.sqrt(sums[k]);
            }
            return scatter;
        }

        /**
         * The restitution along the face normal, at the speeds of these shots.
         *
         * @return the coefficient, in [0, 1]
         */
        public double restitution() {
            return parameters[0];
        }

        /**
         * The interval of the restitution.
         *
         * @return the interval
         */
        public Interval restitutionInterval() {
            return intervals[0];
        }

        /**
         * The restitution along the face.
         *
         * @return the coefficient, in [0, 1]; empty if every shot slipped
         */
        public Optional<Double> tangentialRestitution() {
            return determined[1] ? Optional.of(parameters[1]) : Optional.empty();
        }

        /**
         * The interval of the restitution along the face.
         *
         * @return the interval, unbounded if it is not determined
         */
        public Interval tangentialRestitutionInterval() {
            return intervals[1];
        }

        /**
         * The friction.
         *
         * @return the coefficient, in [0, 1]; empty if no shot slipped
         */
        public Optional<Double> friction() {
            return determined[2] ? Optional.of(parameters[2]) : Optional.empty();
        }

        /**
         * The interval of the friction.
         *
         * @return the interval, unbounded if it is not determined
         */
        public Interval frictionInterval() {
            return intervals[2];
        }

        /**
         * The friction that the gripping shots needed: the face has at least this.
         *
         * @return the coefficient; 0 if every shot slipped
         */
        public double frictionAtLeast() {
            return frictionNeeded;
        }

        /**
         * How many of the shots slipped, by the fitted head.
         *
         * @return the number
         */
        public int slipping() {
            return slipping;
        }

        /**
         * How many shots were used.
         *
         * @return the number
         */
        public int shots() {
            return shots;
        }

        /**
         * The root mean square of computed less measured ball speed.
         *
         * @return the scatter [m/s]
         */
        public double ballSpeedScatter() {
            return scatter[0];
        }

        /**
         * The root mean square of computed less measured launch angle.
         *
         * @return the scatter [deg]
         */
        public double launchAngleScatter() {
            return scatter[1];
        }

        /**
         * The root mean square of computed less measured spin rate.
         *
         * @return the scatter [rpm]
         */
        public double spinRateScatter() {
            return scatter[2];
        }

        /**
         * The head with the coefficients found, and the given ones where the shots do not tell.
         *
         * @return the head
         */
        public ClubHead head() {
            return head;
        }

        /**
         * What a reader must know.
         *
         * @return {@code friction-not-determined}, {@code tangential-restitution-not-determined},
         *     {@code cannot-be-told-apart}, {@code coefficient-at-its-limit}, or nothing
         */
        public List<Warning> warnings() {
            return warnings;
        }

        @Override
        public String toString() {
            return String.format(
                    Locale.ROOT,
                    "%d shots, %d slipped: restitution %.4f %s",
                    shots,
                    slipping,
                    parameters[0],
                    intervals[0]);
        }
    }
}
