package dev.teeward.flight.study;

import dev.teeward.flight.LaunchTolerance;
import dev.teeward.flight.aero.CoefficientSpread;
import java.util.EnumMap;
import java.util.Map;
import java.util.Set;

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
    private static final Tolerances NONE = new Tolerances(CorrelatedErrors.none(FlightInput.class, FlightInput::key));

    private final CorrelatedErrors<FlightInput> errors;

    private Tolerances(CorrelatedErrors<FlightInput> errors) {
        this.errors = errors;
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
        return new Tolerances(errors.with(input, standardDeviation));
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
        return new Tolerances(errors.withCorrelation(one, other, correlation));
    }

    /**
     * The inputs with a tolerance.
     *
     * @return the inputs, unmodifiable, in their declared order
     */
    public Set<FlightInput> inputs() {
        return errors.inputs();
    }

    /**
     * The standard deviation of one input.
     *
     * @param input the input
     * @return the standard deviation, 0 if it is known exactly, in its SI unit
     */
    public double standardDeviation(FlightInput input) {
        return errors.standardDeviation(input);
    }

    /** The principal axes of the errors: columns of one standard deviation each, rows in the order of the inputs, in SI. */
    double[][] axes() {
        return errors.axes();
    }

    @Override
    public String toString() {
        return errors.toString();
    }
}
