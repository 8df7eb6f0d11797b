package dev.teeward.flight;

import dev.teeward.flight.internal.FlightEquations;

/**
 * Launch conditions as vectors in the frame x to the target, y up, z right.
 *
 * <p>With the launch direction d, h the horizontal unit vector to its right and n = h x d, which points up, the spin axis is
 * {@code cos(tilt) h - sin(tilt) n}: pure backspin turns about h and lifts along n, a positive tilt lifts to the right.
 */
final class LaunchVectors {
    private final double[] state;
    private final double[] axis;

    private LaunchVectors(double[] state, double[] axis) {
        this.state = state;
        this.axis = axis;
    }

    static LaunchVectors of(LaunchConditions launch) {
        double speed = launch.ballSpeed().metersPerSecond();
        double cosUp = StrictMath.cos(launch.launchAngle().radians());
        double sinUp = StrictMath.sin(launch.launchAngle().radians());
        double cosRight = StrictMath.cos(launch.startDirection().radians());
        double sinRight = StrictMath.sin(launch.startDirection().radians());
        double cosTilt = StrictMath.cos(launch.axisTilt().radians());
        double sinTilt = StrictMath.sin(launch.axisTilt().radians());
        double[] state = new double[FlightEquations.STATE];
        state[FlightEquations.VX] = speed * (cosUp * cosRight);
        state[FlightEquations.VY] = speed * sinUp;
        state[FlightEquations.VZ] = speed * (cosUp * sinRight);
        state[FlightEquations.SPIN] = launch.spinRate().radiansPerSecond();
        double[] axis = {
            sinTilt * sinUp * cosRight - cosTilt * sinRight,
            -sinTilt * cosUp,
            cosTilt * cosRight + sinTilt * sinUp * sinRight
        };
        return new LaunchVectors(state, axis);
    }

    /** The state at launch, in the order of {@link FlightEquations}; not a copy. */
    double[] state() {
        return state;
    }

    /** The unit vector of the spin axis; not a copy. */
    double[] axis() {
        return axis;
    }
}
