package dev.teeward.flight.internal;

/**
 * A launch as vectors in the frame x to the target, y up, z right.
 *
 * <p>With the launch direction d, h the horizontal unit vector to its right and n = h x d, which points up, the spin axis is
 * {@code cos(tilt) h - sin(tilt) n}: pure backspin turns about h and lifts along n, a positive tilt lifts to the right.
 */
public final class LaunchState {
    private LaunchState() {}

    /**
     * Writes the state and the spin axis.
     *
     * @param speed the speed [m/s]
     * @param up the angle above the horizontal [rad]
     * @param right the bearing, right positive [rad]
     * @param spin the spin rate [rad/s]
     * @param tilt the tilt of the spin axis, positive when the ball curves right [rad]
     * @param state receives the velocity and the spin, in the order of {@link FlightEquations}
     * @param axis receives the unit vector of the spin axis
     */
    public static void write(
            double speed, double up, double right, double spin, double tilt, double[] state, double[] axis) {
        double cosUp = StrictTrigonometry.cos(up);
        double sinUp = StrictTrigonometry.sin(up);
        double cosRight = StrictTrigonometry.cos(right);
        double sinRight = StrictTrigonometry.sin(right);
        double cosTilt = StrictTrigonometry.cos(tilt);
        double sinTilt = StrictTrigonometry.sin(tilt);
        state[FlightEquations.VX] = speed * (cosUp * cosRight);
        state[FlightEquations.VY] = speed * sinUp;
        state[FlightEquations.VZ] = speed * (cosUp * sinRight);
        state[FlightEquations.SPIN] = spin;
        axis[0] = sinTilt * sinUp * cosRight - cosTilt * sinRight;
        axis[1] = -sinTilt * cosUp;
        axis[2] = cosTilt * cosRight + sinTilt * sinUp * sinRight;
    }
}
