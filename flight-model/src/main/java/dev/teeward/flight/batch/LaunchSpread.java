package dev.teeward.flight.batch;

import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Speed;
import dev.teeward.quantity.SpinRate;
import java.util.Locale;

/**
 * How launches scatter about a mean: jointly normal, with a standard deviation for each input and correlations between them.
 *
 * <p>It stands for a golfer's swings, or for a launch monitor's errors; for both at once, add the variances.
 *
 * <pre>{@code
 * LaunchSpread swings = LaunchSpread.none()
 *     .withBallSpeed(mph(1.5)).withLaunchAngle(degrees(1.0)).withSpinRate(rpm(350.0))
 *     .withCorrelation(LaunchSpread.Input.LAUNCH_ANGLE, LaunchSpread.Input.SPIN_RATE, -0.4);
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class LaunchSpread {
    /** What scatters. */
    public enum Input {
        /** The ball speed. */
        BALL_SPEED(0),
        /** The launch angle. */
        LAUNCH_ANGLE(1),
        /** The start direction. */
        START_DIRECTION(2),
        /** The spin rate. */
        SPIN_RATE(3),
        /** The axis tilt. */
        AXIS_TILT(4);

        private final int index;

        Input(int index) {
            this.index = index;
        }
    }

    private static final int INPUTS = Input.values().length;
    private static final LaunchSpread NONE = new LaunchSpread(new double[INPUTS], identity());

    private final double[] deviations;
    private final double[][] correlations;

    private LaunchSpread(double[] deviations, double[][] correlations) {
        this.deviations = deviations;
        this.correlations = correlations;
    }

    /**
     * No scatter and no correlation.
     *
     * @return the spread
     */
    public static LaunchSpread none() {
        return NONE;
    }

    /**
     * A copy with another scatter of the ball speed.
     *
     * @param deviation the standard deviation, not negative
     * @return the copy
     * @throws IllegalArgumentException if it is negative
     */
    public LaunchSpread withBallSpeed(Speed deviation) {
        return with(Input.BALL_SPEED, deviation.metersPerSecond());
    }

    /**
     * A copy with another scatter of the launch angle.
     *
     * @param deviation the standard deviation, not negative
     * @return the copy
     * @throws IllegalArgumentException if it is negative
     */
    public LaunchSpread withLaunchAngle(Angle deviation) {
        return with(Input.LAUNCH_ANGLE, deviation.radians());
    }

    /**
     * A copy with another scatter of the start direction.
     *
     * @param deviation the standard deviation, not negative
     * @return the copy
     * @throws IllegalArgumentException if it is negative
     */
    public LaunchSpread withStartDirection(Angle deviation) {
        return with(Input.START_DIRECTION, deviation.radians());
    }

    /**
     * A copy with another scatter of the spin rate.
     *
     * @param deviation the standard deviation, not negative
     * @return the copy
     * @throws IllegalArgumentException if it is negative
     */
    public LaunchSpread withSpinRate(SpinRate deviation) {
        return with(Input.SPIN_RATE, deviation.radiansPerSecond());
    }

    /**
     * A copy with another scatter of the axis tilt.
     *
     * @param deviation the standard deviation, not negative
     * @return the copy
     * @throws IllegalArgumentException if it is negative
     */
    public LaunchSpread withAxisTilt(Angle deviation) {
        return with(Input.AXIS_TILT, deviation.radians());
    }

    /**
     * A copy with another correlation between two inputs.
     *
     * @param one an input
     * @param other another input
     * @param correlation their correlation, in (-1, 1)
     * @return the copy
     * @throws IllegalArgumentException if it lies outside, the inputs are the same, or no joint distribution has all the
     *     correlations given so far
     */
    public LaunchSpread withCorrelation(Input one, Input other, double correlation) {
        if (one == other || !(Math.abs(correlation) < 1.0)) {
            throw new IllegalArgumentException("correlation must be in (-1, 1) and between two inputs, but was "
                    + correlation + " between " + one + " and " + other);
        }
        double[][] copy = new double[INPUTS][];
        for (int i = 0; i < INPUTS; i++) {
            copy[i] = correlations[i].clone();
        }
        copy[one.index][other.index] = correlation;
        copy[other.index][one.index] = correlation;
        LaunchSpread spread = new LaunchSpread(deviations, copy);
        spread.factor();
        return spread;
    }

    /**
     * The standard deviation of an input.
     *
     * @param input the input
     * @return the deviation, in SI units [m/s], [rad], [rad/s]
     */
    public double deviation(Input input) {
        return deviations[input.index];
    }

    /**
     * The correlation between two inputs.
     *
     * @param one an input
     * @param other an input
     * @return the correlation, in [-1, 1]
     */
    public double correlation(Input one, Input other) {
        return correlations[one.index][other.index];
    }

    /** The lower triangle L with L L' = the covariances (Cholesky), so that L times independent normals scatters so. */
    double[][] factor() {
        double[][] l = new double[INPUTS][INPUTS];
        for (int i = 0; i < INPUTS; i++) {
            for (int j = 0; j <= i; j++) {
                double sum = correlations[i][j];
                for (int k = 0; k < j; k++) {
                    sum -= l[i][k] * l[j][k];
                }
                if (i == j && !(sum > 1e-12)) {
                    throw new IllegalArgumentException(
                            "correlations must be those of a joint distribution, but those of " + Input.values()[i]
                                    + " with the inputs before it contradict each other");
                }
                l[i][j] = i == j ? Math.sqrt(sum) : sum / l[j][j];
            }
        }
        for (int i = 0; i < INPUTS; i++) {
            for (int j = 0; j <= i; j++) {
                l[i][j] *= deviations[i];
            }
        }
        return l;
    }

    private LaunchSpread with(Input input, double deviation) {
        if (!(deviation >= 0.0 && deviation < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(String.format(
                    Locale.ROOT, "the deviation of %s must be finite and not negative, but was %s", input, deviation));
        }
        double[] copy = deviations.clone();
        copy[input.index] = deviation;
        return new LaunchSpread(copy, correlations);
    }

    private static double[][] identity() {
        double[][] one = new double[INPUTS][INPUTS];
        for (int i = 0; i < INPUTS; i++) {
            one[i][i] = 1.0;
        }
        return one;
    }

    @Override
    public String toString() {
        return String.format(
                Locale.ROOT,
                "deviations %.3g m/s, %.3g rad up, %.3g rad to the side, %.3g rad/s, %.3g rad of tilt",
                deviations[0],
                deviations[1],
                deviations[2],
                deviations[3],
                deviations[4]);
    }
}
