package dev.teeward.flight.batch;

import dev.teeward.flight.air.Wind;
import dev.teeward.flight.air.WindProfile;

/** Tells a wind that is the same at every height from one that is not. */
final class UniformWinds {
    private static final double[] HEIGHTS = {-20.0, 0.0, 0.5, 2.0, 10.0, 40.0};

    private UniformWinds() {}

    static void require(Wind wind, String what) {
        boolean uniform = !(wind instanceof WindProfile);
        for (double height : HEIGHTS) {
            uniform &= wind.alongTarget(height) == wind.alongTarget(0.0)
                    && wind.towardsRight(height) == wind.towardsRight(0.0);
        }
        if (!uniform) {
            throw new IllegalArgumentException(
                    what + " need a wind that is the same at every height, but it is " + wind);
        }
    }
}
