package dev.teeward.flight.ground;

/**
 * What one impact on turf does to a ball's velocity and spin.
 *
 * <p>Implementations are called with a ball that moves into the ground. They must be thread-safe, must leave finite numbers,
 * must not add energy ({@code v^2 / 2 + k r^2 omega^2 / 2} does not grow), and must treat all directions alike: a turned
 * or mirrored ball on a turned or mirrored ground bounces in the same way, turned or mirrored.
 *
 * <pre>{@code
 * double[] motion = {13.0, -13.3, 0.0, 0.0, 0.0, 523.6};  // backspin of 5,000 rpm
 * Penner2002.withDefaults().bounce(motion, new double[] {0.0, 1.0, 0.0}, TurfClass.FAIRWAY.turf(), 0.021335, 0.4);
 * motion[1];                                              // 3.0... m/s: up again
 * }</pre>
 */
public interface BounceModel {
    /**
     * Changes a ball's motion by one impact.
     *
     * @param motion velocity x, y, z [m/s] and angular velocity x, y, z [rad/s] before the impact; receives those after. A
     *     ball that moves along x with backspin turns about +z
     * @param normal the upward unit normal of the ground
     * @param turf the turf
     * @param radius the radius of the ball [m]
     * @param inertiaFactor its moment of inertia over {@code m r^2}, 0.4 for a uniform sphere [1]
     */
    void bounce(double[] motion, double[] normal, Turf turf, double radius, double inertiaFactor);

    /**
     * Whether an impact lies where the model may be believed.
     *
     * @param speed the speed of the ball [m/s]
     * @param fromNormal the angle between its path and the normal of the ground, in [0, pi/2] [rad]
     * @param turf the turf
     * @return true unless the model says otherwise; false makes the warning {@code bounce-extrapolated}
     */
    default boolean covers(double speed, double fromNormal, Turf turf) {
        return true;
    }

    /**
     * Where the model comes from, to cite.
     *
     * @return author and year
     */
    String reference();
}
