package dev.teeward.flight.internal;

import dev.teeward.flight.aero.AerodynamicModel;

/**
 * The coefficients of Smits and Smith (1994), A new aerodynamic model of a golf ball in flight, Science and Golf II, pp
 * 340-347, quoted from memory: {@code Cd = 0.24 + 0.18 S + 0.06 sin(pi (Re - 9e4)/2e5)}, {@code Cl = 0.54 S^0.4}; the lift is
 * held at its value for S = 30, which only a ball slower than 1 m/s exceeds. A second law beside the rational one, with
 * functions of another kind.
 */
public final class SineAerodynamics implements AerodynamicModel {
    /** For tests. */
    public SineAerodynamics() {}

    @Override
    public double dragCoefficient(double re, double s) {
        return 0.24 + 0.18 * Math.min(s, 30.0) + 0.06 * StrictMath.sin(Math.PI * (re - 9e4) / 2e5);
    }

    @Override
    public double liftCoefficient(double re, double s) {
        return 0.54 * StrictMath.pow(Math.min(s, 30.0), 0.4);
    }
}
