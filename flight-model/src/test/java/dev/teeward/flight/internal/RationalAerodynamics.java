package dev.teeward.flight.internal;

import dev.teeward.flight.aero.AerodynamicModel;

/**
 * A smooth ball for tests, made of {@code + - * /} and {@code sqrt} only: drag through the drag crisis, lift levelling off.
 * The constants are near those of a golf ball but stand for no measured one.
 */
public final class RationalAerodynamics implements AerodynamicModel {
    /** For tests. */
    public RationalAerodynamics() {}

    @Override
    public double dragCoefficient(double re, double s) {
        double x = re / 0.676e5;
        double x2 = x * x;
        return 0.221 + 0.142 * s / (1.0 + 0.2 * s) + 0.343 / (1.0 + x2 * x2) + 0.015 * height(re);
    }

    @Override
    public double liftCoefficient(double re, double s) {
        double k = s + 0.175;
        return 0.341 * s * (s + 0.35) / (k * k) * (1.0 - 0.458 * height(re));
    }

    @Override
    public boolean smooth() {
        return true;
    }

    private static double height(double re) {
        double x = re / 1e5 - 1.2;
        return x / Math.sqrt(1.0 + x * x);
    }
}
