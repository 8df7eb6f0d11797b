package dev.teeward.flight.internal;

import static dev.teeward.flight.internal.FlightEquations.VX;
import static dev.teeward.flight.internal.FlightEquations.VY;
import static dev.teeward.flight.internal.FlightEquations.VZ;
import static dev.teeward.flight.internal.FlightEquations.X;
import static dev.teeward.flight.internal.FlightEquations.Y;
import static dev.teeward.flight.internal.FlightEquations.Z;

import dev.teeward.flight.ground.Terrain;

/**
 * Watches the height above a terrain, step by step, for the ball coming down to it.
 *
 * <p>Each step is looked at in {@value #PIECES} pieces, half a metre to a metre of the way for a drive; where the height is least in the
 * middle of three looks, the least is sought, so that a smooth surface is not passed through unseen. A ridge much narrower
 * than a piece may be. Mutable; one for each flight.
 */
final class TerrainSearch {
    private static final int PIECES = 48;

    /** The golden section. */
    private static final double GOLDEN = 0.381966011250105;

    private final Terrain terrain;
    private double landingTime;
    private boolean above;

    TerrainSearch(Terrain terrain) {
        this.terrain = terrain;
    }

    /** Whether a ball that starts on the surface does not rise above it. */
    boolean liesOn(double[] state, double[] rates) {
        if (terrain.elevation(0.0, 0.0) < 0.0) {
            above = true;
            return false;
        }
        double along = terrain.slopeAlongTarget(0.0, 0.0);
        double right = terrain.slopeTowardsRight(0.0, 0.0);
        double up = state[VY] - along * state[VX] - right * state[VZ];
        double acceleration = rates[VY] - along * rates[VX] - right * rates[VZ];
        return !(up > 0.0 || (up == 0.0 && acceleration > 0.0)) && !Double.isNaN(acceleration);
    }

    /** Whether the last step of the path, starting at a time [s] and as long [s], comes down to the surface. */
    boolean step(double time, double h, FlightPath path) {
        Quintic x = path.last(X, VX);
        Quintic y = path.last(Y, VY);
        Quintic z = path.last(Z, VZ);
        double before = Double.POSITIVE_INFINITY;
        double from = above ? gap(x, y, z, 0.0) : 0.0;
        for (int i = 1; i <= PIECES; i++) {
            double q = (double) i / PIECES;
            double to = gap(x, y, z, q);
            double start = (double) (i - 1) / PIECES;
            if (to <= 0.0 && (above || to < 0.0)) {
                double high = above ? start : firstAbove(x, y, z, start, q);
                landingTime = time + h * root(x, y, z, high, q);
                return true;
            }
            above = true;
            if (from < before && from < to && i > 1) {
                double low = (double) (i - 2) / PIECES;
                double least = least(x, y, z, low, q);
                if (gap(x, y, z, least) <= 0.0) {
                    landingTime = time + h * root(x, y, z, low, least);
                    return true;
                }
            }
            before = from;
            from = to;
        }
        return false;
    }

    private double gap(Quintic x, Quintic y, Quintic z, double q) {
        return y.value(q) - terrain.elevation(x.value(q), z.value(q));
    }

    /** A ball that leaves the surface and is back on it within the first piece. */
    private double firstAbove(Quintic x, Quintic y, Quintic z, double start, double end) {
        double q = end;
        for (int i = 0; i < 40; i++) {
            q = start + (q - start) / 2.0;
            if (gap(x, y, z, q) > 0.0) {
                return q;
            }
        }
        return start;
    }

    private double least(Quintic x, Quintic y, Quintic z, double low, double high) {
        double a = low;
        double b = high;
        double c = a + GOLDEN * (b - a);
        double d = b - GOLDEN * (b - a);
        double atC = gap(x, y, z, c);
        double atD = gap(x, y, z, d);
        for (int i = 0; i < 50; i++) {
            if (atC < atD) {
                b = d;
                d = c;
                atD = atC;
                c = a + GOLDEN * (b - a);
                atC = gap(x, y, z, c);
            } else {
                a = c;
                c = d;
                atC = atD;
                d = b - GOLDEN * (b - a);
                atD = gap(x, y, z, d);
            }
        }
        return (a + b) / 2.0;
    }

    /** Bisection between a fraction above the surface and one on or below it: the surface need only be continuous. */
    private double root(Quintic x, Quintic y, Quintic z, double above, double below) {
        double low = above;
        double high = below;
        for (int i = 0; i < 60; i++) {
            double middle = (low + high) / 2.0;
            if (gap(x, y, z, middle) > 0.0) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return high;
    }

    /** When the ball came down [s]. */
    double landingTime() {
        return landingTime;
    }
}
