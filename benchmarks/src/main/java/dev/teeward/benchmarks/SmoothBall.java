package dev.teeward.benchmarks;

import dev.teeward.flight.aero.AerodynamicModel;

/** A smooth ball of rational functions, near a golf ball, so that the integrators are timed and not the coefficients. */
final class SmoothBall implements AerodynamicModel {
    @Override
    public double dragCoefficient(double re, double s) {
        double x = re / 0.676e5;
        double x2 = x * x;
        return 0.221 + 0.142 * s / (1.0 + 0.2 * s) + 0.343 / (1.0 + x2 * x2);
    }

    @Override
    public double liftCoefficient(double re, double s) {
        double k = s + 0.175;
        return 0.341 * s * (s + 0.35) / (k * k);
    }

    @Override
    public boolean smooth() {
        return true;
    }
}
