package dev.teeward.flight;

import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Speed;
import dev.teeward.quantity.SpinRate;
import java.util.random.RandomGenerator;

/**
 * How well a launch is measured, as standard deviations of independent normal errors.
 *
 * <pre>{@code
 * LaunchTolerance device = LaunchTolerance.typical().withSpinRate(rpm(100.0));
 * LaunchConditions perhaps = device.draw(launch, new SplittableRandom(1L));
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class LaunchTolerance {
    private static final LaunchTolerance TYPICAL = new LaunchTolerance(
            Speed.ofMph(0.5), Angle.ofDegrees(0.3), Angle.ofDegrees(0.3), SpinRate.ofRpm(150.0), Angle.ofDegrees(1.0));

    private final Speed ballSpeed;
    private final Angle launchAngle;
    private final Angle startDirection;
    private final SpinRate spinRate;
    private final Angle axisTilt;

    private LaunchTolerance(
            Speed ballSpeed, Angle launchAngle, Angle startDirection, SpinRate spinRate, Angle axisTilt) {
        this.ballSpeed = ballSpeed;
        this.launchAngle = launchAngle;
        this.startDirection = startDirection;
        this.spinRate = spinRate;
        this.axisTilt = axisTilt;
        within("ballSpeed", ballSpeed.metersPerSecond(), 20.0, "[0, 20] m/s (0-44.7 mph)");
        within("launchAngle", launchAngle.degrees(), 20.0, "[0, 20] deg (0-0.35 rad)");
        within("startDirection", startDirection.degrees(), 20.0, "[0, 20] deg (0-0.35 rad)");
        within("spinRate", spinRate.rpm(), 5_000.0, "[0, 5000] rpm (0-524 rad/s)");
        within("axisTilt", axisTilt.degrees(), 45.0, "[0, 45] deg (0-0.79 rad)");
    }

    private static void within(String name, double value, double most, String range) {
        if (!(value >= 0.0 && value <= most)) {
            throw new IllegalArgumentException(name + " tolerance must be in " + range + ", but was " + value);
        }
    }

    /**
     * 0.5 mph, 0.3 deg both ways, 150 rpm and 1 deg of tilt (common practice, no source).
     *
     * @return the tolerance
     */
    public static LaunchTolerance typical() {
        return TYPICAL;
    }

    /**
     * A copy with another tolerance of the ball speed.
     *
     * @param value the standard deviation, in [0, 20] m/s
     * @return the copy
     * @throws IllegalArgumentException if it lies outside
     */
    public LaunchTolerance withBallSpeed(Speed value) {
        return new LaunchTolerance(value, launchAngle, startDirection, spinRate, axisTilt);
    }

    /**
     * A copy with another tolerance of the launch angle.
     *
     * @param value the standard deviation, in [0, 20] deg
     * @return the copy
     * @throws IllegalArgumentException if it lies outside
     */
    public LaunchTolerance withLaunchAngle(Angle value) {
        return new LaunchTolerance(ballSpeed, value, startDirection, spinRate, axisTilt);
    }

    /**
     * A copy with another tolerance of the start direction.
     *
     * @param value the standard deviation, in [0, 20] deg
     * @return the copy
     * @throws IllegalArgumentException if it lies outside
     */
    public LaunchTolerance withStartDirection(Angle value) {
        return new LaunchTolerance(ballSpeed, launchAngle, value, spinRate, axisTilt);
    }

    /**
     * A copy with another tolerance of the spin rate.
     *
     * @param value the standard deviation, in [0, 5000] rpm
     * @return the copy
     * @throws IllegalArgumentException if it lies outside
     */
    public LaunchTolerance withSpinRate(SpinRate value) {
        return new LaunchTolerance(ballSpeed, launchAngle, startDirection, value, axisTilt);
    }

    /**
     * A copy with another tolerance of the axis tilt.
     *
     * @param value the standard deviation, in [0, 45] deg
     * @return the copy
     * @throws IllegalArgumentException if it lies outside
     */
    public LaunchTolerance withAxisTilt(Angle value) {
        return new LaunchTolerance(ballSpeed, launchAngle, startDirection, spinRate, value);
    }

    /**
     * The tolerance of the ball speed.
     *
     * @return the standard deviation; 0 if it is known exactly
     */
    public Speed ballSpeed() {
        return ballSpeed;
    }

    /**
     * The tolerance of the launch angle.
     *
     * @return the standard deviation; 0 if it is known exactly
     */
    public Angle launchAngle() {
        return launchAngle;
    }

    /**
     * The tolerance of the start direction.
     *
     * @return the standard deviation; 0 if it is known exactly
     */
    public Angle startDirection() {
        return startDirection;
    }

    /**
     * The tolerance of the spin rate.
     *
     * @return the standard deviation; 0 if it is known exactly
     */
    public SpinRate spinRate() {
        return spinRate;
    }

    /**
     * The tolerance of the axis tilt.
     *
     * @return the standard deviation; 0 if it is known exactly
     */
    public Angle axisTilt() {
        return axisTilt;
    }

    /**
     * A launch as it may really have been.
     *
     * <p>Five normal numbers are taken; what would leave the limits of {@link LaunchConditions} is held at them.
     *
     * @param launch the launch as measured
     * @param random where the chance comes from
     * @return the launch with errors
     */
    public LaunchConditions draw(LaunchConditions launch, RandomGenerator random) {
        double speed = launch.ballSpeed().metersPerSecond() + ballSpeed.metersPerSecond() * random.nextGaussian();
        double up = launch.launchAngle().degrees() + launchAngle.degrees() * random.nextGaussian();
        double right = launch.startDirection().degrees() + startDirection.degrees() * random.nextGaussian();
        double spin = launch.spinRate().rpm() + spinRate.rpm() * random.nextGaussian();
        double tilt = launch.axisTilt().degrees() + axisTilt.degrees() * random.nextGaussian();
        return LaunchConditions.builder()
                .ballSpeed(Speed.ofMetersPerSecond(held(speed, 0.1, 110.0)))
                .launchAngle(Angle.ofDegrees(held(up, -90.0, 90.0)))
                .startDirection(Angle.ofDegrees(held(right, -90.0, 90.0)))
                .spinRate(SpinRate.ofRpm(held(spin, 0.0, 20_000.0)))
                .axisTilt(Angle.ofDegrees(held(tilt, -180.0, 180.0)))
                .build();
    }

    private static double held(double value, double low, double high) {
        return Math.max(low, Math.min(high, value));
    }

    @Override
    public String toString() {
        return "standard deviations: ball speed " + ballSpeed + ", launch angle " + launchAngle + ", start direction "
                + startDirection + ", spin rate " + spinRate + ", axis tilt " + axisTilt;
    }
}
