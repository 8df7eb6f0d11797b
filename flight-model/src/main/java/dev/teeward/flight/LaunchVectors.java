package dev.teeward.flight;

import dev.teeward.flight.internal.FlightEquations;
import dev.teeward.flight.internal.LaunchState;

/** Launch conditions as vectors in the frame x to the target, y up, z right; see {@link LaunchState}. */
final class LaunchVectors {
    private final double[] state = new double[FlightEquations.STATE];
    private final double[] axis = new double[3];

    private LaunchVectors(LaunchConditions launch) {
        LaunchState.write(
                launch.ballSpeed().metersPerSecond(),
                launch.launchAngle().radians(),
                launch.startDirection().radians(),
                launch.spinRate().radiansPerSecond(),
                launch.axisTilt().radians(),
                state,
                axis);
    }

    static LaunchVectors of(LaunchConditions launch) {
        return new LaunchVectors(launch);
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
