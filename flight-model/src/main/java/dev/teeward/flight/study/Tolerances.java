package dev.teeward.flight.study;

import dev.teeward.flight.LaunchTolerance;
import dev.teeward.flight.aero.CoefficientSpread;
import java.util.Collections;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.EigenDecompositionSymmetric;
import org.hipparchus.linear.RealMatrix;

/**
 * How well the inputs of a flight are known: standard deviations, and the correlations between them.
 *
 * <p>A maker's "plus or minus" is seldom a standard deviation; if it means that 95 of 100 measurements lie within, divide it by
 * 1.96.
 *
 * <pre>{@code
 * Tolerances device = Tolerances.none()
 *     .with(FlightInput.BALL_SPEED, 0.3).with(FlightInput.SPIN_RATE, 20.0)   // m/s, rad/s
 *     .withCorrelation(FlightInput.BALL_SPEED, FlightInput.SPIN_RATE, 0.2);
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class Tolerances {
    /** A correlation matrix may have an eigenvalue as negative as this by rounding. */
    private static final double ROUNDING = 1e-10;

    private static final Tolerances NONE = new Tolerances(Map.of(), Map.of());

    /** An unordered pair; {@code first} is the one declared first. */
    private record Pair(FlightInput first, FlightInput second) {
        static Pair of(FlightInput a, FlightInput b) {
            return a.compareTo(b) < 0 ? new Pair(a, b) : new Pair(b, a);
        }
    }

    private final Map<FlightInput, Double> deviations;
    private final Map<Pair, Double> correlations;

    private Tolerances(Map<FlightInput, Double> deviations, Map<Pair, Double> correlations) {
        this.deviations = deviations;
        this.correlations = correlations;
    }

    /**
     * Everything known exactly.
     *
     * @return no tolerance
     */
    public static Tolerances none() {
        return NONE;
    }

    /**
     * The tolerances of a launch as a device states them, independent of each other.
     *
     * @param launch how well the launch is measured
     * @return the tolerances; what is known exactly has none
     */
    public static Tolerances of(LaunchTolerance launch) {
        Tolerances all = NONE;
        Map<FlightInput, Double> stated = new EnumMap<>(FlightInput.class);
        stated.put(FlightInput.BALL_SPEED, launch.ballSpeed().metersPerSecond());
        stated.put(FlightInput.LAUNCH_ANGLE, launch.launchAngle().radians());
        stated.put(FlightInput.START_DIRECTION, launch.startDirection().radians());
        stated.put(FlightInput.SPIN_RATE, launch.spinRate().radiansPerSecond());
        stated.put(FlightInput.AXIS_TILT, launch.axisTilt().radians());
        for (Map.Entry<FlightInput, Double> entry : stated.entrySet()) {
            all = entry.getValue() > 0.0 ? all.with(entry.getKey(), entry.getValue()) : all;
        }
        return all;
    }

    /**
     * A copy with the tolerance of one input.
     *
     * @param input the input
     * @param standardDeviation its standard deviation, positive, in its SI unit
     * @return the copy
     * @throws IllegalArgumentException if the standard deviation is not positive and finite
     */
    public Tolerances with(FlightInput input, double standardDeviation) {
        if (!(standardDeviation > 0.0 && standardDeviation < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("standardDeviation of " + input.key() + " must be positive and finite ["
                    + input.unit() + "], but was " + standardDeviation + "; leave out what is known exactly");
        }
        Map<FlightInput, Double> changed = new EnumMap<>(FlightInput.class);
        changed.putAll(deviations);
        changed.put(input, standardDeviation);
        return new Tolerances(changed, correlations);
    }

    /**
     * A copy for a ball that is one of its kind: {@link FlightInput#DRAG_SCALE} and {@link FlightInput#LIFT_SCALE} have the
     * standard deviations and the correlation of the spread between balls.
     *
     * @param spread the spread, as {@link dev.teeward.flight.aero.AerodynamicModel#spread()} gives it
     * @return the copy; a coefficient that does not spread stays known exactly
     */
    public Tolerances withBallSpread(CoefficientSpread spread) {
        Tolerances copy = this;
        if (spread.drag() > 0.0) {
            copy = copy.with(FlightInput.DRAG_SCALE, spread.drag());
        }
        if (spread.lift() > 0.0) {
            copy = copy.with(FlightInput.LIFT_SCALE, spread.lift());
        }
        return spread.drag() > 0.0 && spread.lift() > 0.0
                ? copy.withCorrelation(FlightInput.DRAG_SCALE, FlightInput.LIFT_SCALE, spread.correlation())
                : copy;
    }

    /**
     * A copy in which the errors of two inputs go together.
     *
     * @param one an input that has a tolerance
     * @param other another
     * @param correlation the correlation of their errors, in [-1, 1]
     * @return the copy
     * @throws IllegalArgumentException if an input has no tolerance, the two are the same, the correlation lies outside, or all
     *     correlations together are impossible (their matrix has a negative eigenvalue)
     */
    public Tolerances withCorrelation(FlightInput one, FlightInput other, double correlation) {
        if (one == other) {
            throw new IllegalArgumentException("the correlation of " + one.key() + " with itself is 1");
        }
        for (FlightInput input : new FlightInput[] {one, other}) {
            if (!deviations.containsKey(input)) {
                throw new IllegalArgumentException(
                        "give the tolerance of " + input.key() + " before its correlation with another input");
            }
        }
        if (!(Math.abs(correlation) <= 1.0)) {
            throw new IllegalArgumentException("correlation must be in [-1, 1], but was " + correlation);
        }
        Map<Pair, Double> changed = new LinkedHashMap<>(correlations);
        changed.put(Pair.of(one, other), correlation);
        Tolerances copy = new Tolerances(deviations, changed);
        double least = copy.least();
        if (least < -ROUNDING) {
            throw new IllegalArgumentException("a correlation of " + correlation + " between " + one.key() + " and "
                    + other.key() + " is impossible beside the others: the matrix has the eigenvalue " + least);
        }
        return copy;
    }

    /**
     * The inputs with a tolerance.
     *
     * @return the inputs, unmodifiable, in their declared order
     */
    public Set<FlightInput> inputs() {
        return Collections.unmodifiableSet(deviations.keySet());
    }

    /**
     * The standard deviation of one input.
     *
     * @param input the input
     * @return the standard deviation, 0 if it is known exactly, in its SI unit
     */
    public double standardDeviation(FlightInput input) {
        return Objects.requireNonNullElse(deviations.get(input), 0.0);
    }

    /** The principal axes of the errors: columns of one standard deviation each, rows in the order of the inputs, in SI. */
    double[][] axes() {
        FlightInput[] inputs = deviations.keySet().toArray(new FlightInput[0]);
        int n = inputs.length;
        double[][] columns = new double[n][n];
        if (n == 0) {
            return columns;
        }
        EigenDecompositionSymmetric eigen = new EigenDecompositionSymmetric(matrix());
        for (int k = 0; k < n; k++) {
            double size = Math.sqrt(Math.max(0.0, eigen.getEigenvalue(k)));
            for (int i = 0; i < n; i++) {
                columns[k][i] = size * eigen.getEigenvector(k).getEntry(i) * standardDeviation(inputs[i]);
            }
        }
        return columns;
    }

    private double least() {
        double least = 0.0;
        for (double value : new EigenDecompositionSymmetric(matrix()).getEigenvalues()) {
            least = Math.min(least, value);
        }
        return least;
    }

    private RealMatrix matrix() {
        FlightInput[] inputs = deviations.keySet().toArray(new FlightInput[0]);
        RealMatrix matrix = new Array2DRowRealMatrix(inputs.length, inputs.length);
        for (int i = 0; i < inputs.length; i++) {
            matrix.setEntry(i, i, 1.0);
            for (int j = 0; j < i; j++) {
                double r = Objects.requireNonNullElse(correlations.get(Pair.of(inputs[i], inputs[j])), 0.0);
                matrix.setEntry(i, j, r);
                matrix.setEntry(j, i, r);
            }
        }
        return matrix;
    }

    @Override
    public String toString() {
        return "standard deviations " + deviations + ", correlations " + correlations;
    }
}
