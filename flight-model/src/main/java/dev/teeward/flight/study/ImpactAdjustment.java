package dev.teeward.flight.study;

import dev.teeward.flight.impact.ClubHead;
import dev.teeward.flight.impact.ImpactModel;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.hipparchus.exception.MathIllegalStateException;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresBuilder;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresProblem;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LevenbergMarquardtOptimizer;
import org.hipparchus.optim.nonlinear.vector.leastsquares.MultivariateJacobianFunction;
import org.hipparchus.util.Pair;
import org.jspecify.annotations.Nullable;

/**
 * The delivery that agrees best with everything measured of an impact, each difference in units of its standard deviation,
 * and what the measurements leave open: the null space of their Jacobian, there and a few degrees and millimetres beside it.
 */
final class ImpactAdjustment {
    private static final double STEP = 1e-4;

    /** A number that moves by this much of its own unit along what nothing measures is not determined. */
    private static final double UNSEEN = 1e-4;

    /** Two answers whose chi-squares differ by less agree equally well: nothing measured tells them apart. */
    private static final double AS_GOOD = 1e-8;

    /** So near to its end a search must come that equally good answers differ by less than {@link #UNSEEN} if they are one. */
    private static final LevenbergMarquardtOptimizer SEARCH = new LevenbergMarquardtOptimizer()
            .withCostRelativeTolerance(1e-14)
            .withParameterRelativeTolerance(1e-12)
            .withOrthoTolerance(1e-12);

    /** What is enough for the height of chi-square. */
    private static final LevenbergMarquardtOptimizer ROUGH = new LevenbergMarquardtOptimizer()
            .withCostRelativeTolerance(1e-7)
            .withParameterRelativeTolerance(1e-7)
            .withOrthoTolerance(1e-7);

    private static final int MOST_STEPS = 500;

    /** Where nothing else was found: along a flat valley a search creeps. */
    private static final int CREEPING = 5_000;

    /** How tightly a strike is held while the rest gives way to it [mm]. */
    private static final double HELD = 0.5;

    /** Where else to look at what the measurements tell: shares of a step that keeps to no symmetry, in the quantities' units. */
    private static final double[] SHARES = {1.0, -0.6};

    private static final double[] BESIDE = {0.7, 0.4, -2.1, 1.7, -0.9, 3.1, -2.3};

    /** Another delivery and what the measurements would tell there. */
    @SuppressWarnings("ArrayRecordComponent") // never compared and never handed out
    private record Place(double[] x, RowSpace rows) {}

    private final ImpactModel model;
    private final ClubHead head;
    private final List<ImpactQuantity> observed = new ArrayList<>();
    private final List<Integer> free = new ArrayList<>();
    private final double[] values = new double[ImpactQuantity.values().length];
    private final double[] deviations = new double[values.length];
    private double[] delivery;
    private final List<double[]> answers = new ArrayList<>();
    private final List<double[]> asGood = new ArrayList<>();
    private double[] residuals = {};
    private final List<Place> others = new ArrayList<>();
    private RowSpace here;
    private int rank;

    private ImpactAdjustment(ImpactModel model, ClubHead head, double[] start) {
        this.model = model;
        this.head = head;
        this.delivery = start;
        this.here = new RowSpace(new double[1][1], List.of(0));
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
        fit.solve(measured);
        return fit;
    }

    private void solve(MeasuredImpact measured) {
        residuals = residuals(delivery);
        lookForAnswers(measured);
        analyse(free.stream().mapToDouble(i -> delivery[i]).toArray());
    }

    private double[] optimum(double[] start) {
        return optimum(SEARCH, MOST_STEPS, start, this::model, observed.size());
    }

    /** The best fit if a number, too, had been measured. */
    double[] pulled(ToDoubleFunction<double[]> value, double to, double deviation, double[] start) {
        int n = observed.size();
        return at(optimum(
                ROUGH,
                MOST_STEPS,
                free.stream().mapToDouble(i -> start[i]).toArray(),
                point -> {
                    double[] x = at(point.toArray());
                    Pair<RealVector, RealMatrix> model = model(point);
                    double[][] rows = Arrays.copyOf(model.getSecond().getData(), n + 1);
                    double[] gradient = gradient(value, x);
                    rows[n] = free.stream()
                            .mapToDouble(i -> gradient[i] / deviation)
                            .toArray();
                    return new Pair<>(
                            model.getFirst().append((value.applyAsDouble(x) - to) / deviation),
                            new Array2DRowRealMatrix(rows, false));
                },
                n + 1));
    }

    private double[] optimum(
            LevenbergMarquardtOptimizer optimizer,
            int steps,
            double[] start,
            MultivariateJacobianFunction model,
            int rows) {
        LeastSquaresProblem problem = new LeastSquaresBuilder()
                .start(start)
                .model(model)
                .target(new double[rows])
                .parameterValidator(this::within)
                .lazyEvaluation(false)
                .maxEvaluations(steps)
                .maxIterations(steps)
                .build();
        return optimizer.optimize(problem).getPoint().toArray();
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

    /** What the measurements tell here, and beside here: a place of symmetry hides what depends on what. */
    private void analyse(double[] point) {
        here = new RowSpace(jacobian(point), free);
        rank = here.rank();
        Optional<Boolean> slips = slips(delivery);
        for (double share : SHARES) {
            double[] moved = point.clone();
            for (int j = 0; j < moved.length; j++) {
                moved[j] += share * BESIDE[free.get(j)];
            }
            double[] beside = within(new ArrayRealVector(moved, false)).toArray();
            if (slips.isPresent() && slips.equals(slips(at(beside)))) {
                RowSpace rows = new RowSpace(jacobian(beside), free);
                rank = Math.max(rank, rows.rank());
                others.add(new Place(at(beside), rows));
            }
        }
    }

    /** Whether the ball slips on the face; empty if no launch comes of the delivery. */
    private Optional<Boolean> slips(double[] x) {
        try {
            return Optional.of(ImpactEquations.slips(model, head, x));
        } catch (IllegalArgumentException e) {
            return Optional.empty();
        }
    }

    private void take(double[] start, List<double[]> found) {
        keep(at(optimum(free.stream().mapToDouble(i -> start[i]).toArray())), found);
    }

    private void keep(double[] x, List<double[]> found) {
        found.add(x);
        if (found.size() == 1 || sumOfSquares(residuals(x)) < chiSquare() - AS_GOOD) {
            delivery = x;
            residuals = residuals(x);
        }
    }

    /** Takes the best of what comes of all starts, and keeps whatever else is not refuted. */
    private void lookForAnswers(MeasuredImpact measured) {
        @Nullable MathIllegalStateException failure = null;
        List<double[]> found = new ArrayList<>();
        List<double[]> starts = new ArrayList<>(List.of(delivery));
        for (int k = 0; k < starts.size(); k++) {
            double[] start = starts.get(k);
            try {
                take(start, found);
            } catch (MathIllegalStateException e) {
                failure = e;
            }
            if (k == 0) {
                starts.addAll(ImpactStarts.beside(delivery, measured));
            }
        }
        for (ImpactQuantity strike : List.of(ImpactQuantity.STRIKE_TOE, ImpactQuantity.STRIKE_UP)) {
            double away = ImpactStarts.away(strike);
            if (measured.value(strike).isEmpty() && !found.isEmpty()) {
                for (double side : new double[] {-away, away}) {
                    try {
                        take(pulled(x -> x[strike.index()], side, HELD, delivery), found);
                    } catch (MathIllegalStateException e) {
                        failure = e;
                    }
                }
            }
        }
        if (found.isEmpty()) {
            double[] first = free.stream().mapToDouble(i -> delivery[i]).toArray();
            try {
                keep(at(optimum(SEARCH, CREEPING, first, this::model, observed.size())), found);
            } catch (MathIllegalStateException e) {
                failure = e;
            }
        }
        if (found.isEmpty()) {
            throw new IllegalStateException(
                    "no delivery was found that agrees with the measurements; check units and signs", failure);
        }
        answers.addAll(found);
        for (double[] x : found) {
            double worse = sumOfSquares(residuals(x)) - chiSquare();
            if (worse <= AS_GOOD) {
                asGood.add(x);
            }
        }
    }

    /**
     * Whether the measurements determine a number: it changes along no direction that they do not see, here or beside here, and
     * is the same in a second answer.
     */
    boolean determines(ToDoubleFunction<double[]> value) {
        double best = value.applyAsDouble(delivery);
        return here.unseen(gradient(value, delivery)) <= UNSEEN
                && asGood.stream().allMatch(x -> Math.abs(value.applyAsDouble(x) - best) <= UNSEEN)
                && others.stream().allMatch(place -> place.rows.unseen(gradient(value, place.x)) <= UNSEEN);
    }

    /** All that the search came to, good or bad. */
    List<double[]> answers() {
        return answers;
    }

    /** The standard deviation of a number, to first order. */
    double deviation(ToDoubleFunction<double[]> value) {
        return here.deviation(gradient(value, delivery));
    }

    private static double[] gradient(ToDoubleFunction<double[]> value, double[] x) {
        double[] gradient = new double[x.length];
        for (int i = 0; i < x.length; i++) {
            double[] moved = x.clone();
            moved[i] = x[i] + STEP;
            double above = value.applyAsDouble(moved);
            moved[i] = x[i] - STEP;
            gradient[i] = (above - value.applyAsDouble(moved)) / (2.0 * STEP);
        }
        return gradient;
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
        return 1.0 - here.leverage(row);
    }

    /** Chi-square of another delivery. */
    double chiSquare(double[] x) {
        return sumOfSquares(residuals(x));
    }

    double chiSquare() {
        return sumOfSquares(residuals);
    }

    private static double sumOfSquares(double[] values) {
        double sum = 0.0;
        for (double value : values) {
            sum += value * value;
        }
        return sum;
    }
}
