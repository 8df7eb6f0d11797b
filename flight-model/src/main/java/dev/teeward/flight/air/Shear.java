package dev.teeward.flight.air;

import java.io.Serializable;

/**
 * How the wind grows with height: the speed relative to that at 10 m, above flat ground.
 *
 * <p>Each law holds from some height upwards. Below, a parabola takes it to zero at the ground, with the same value and
 * slope where they meet, so that the wind is continuous and has no steep start.
 */
sealed interface Shear extends Serializable permits LogarithmicShear, PowerShear {
    /** Height at which a reported wind is measured [m]. */
    double REFERENCE_HEIGHT = 10.0;

    /** Speed over speed at 10 m [1]; 0 at and below the ground. */
    double ratio(double height);

    /** The parabola through 0 at 0, with a value and a slope at the end; 0 before 0. */
    static double faded(double distance, double end, double valueAtEnd, double slopeAtEnd) {
        if (distance <= 0.0) {
            return 0.0;
        }
        double x = distance / end;
        double rise = slopeAtEnd * end;
        return x * (2.0 * valueAtEnd - rise + (rise - valueAtEnd) * x);
    }
}
