package dev.teeward.flight.air;

import java.io.Serializable;

/**
 * How the wind grows with height: the speed relative to that at 10 m, above flat ground.
 *
 * <p>Each law holds from {@code top} upwards. Below, a parabola takes it to zero at the ground, with the same value and
 * slope at {@code top}, so that the wind is continuous and has no steep start.
 */
sealed interface Shear extends Serializable {
    /** Height at which a reported wind is measured [m]. */
    double REFERENCE_HEIGHT = 10.0;

    /** Speed over speed at 10 m [1]; 0 at and below the ground. */
    double ratio(double height);

    /** {@code ln(z / z0) / ln(10 / z0)} above 20 z0, or above 10 m if that is less. */
    record Logarithmic(double roughness) implements Shear {
        @Override
        public double ratio(double height) {
            double origin = StrictMath.log(roughness);
            double scale = 1.0 / (StrictMath.log(REFERENCE_HEIGHT) - origin);
            double top = Math.min(20.0 * roughness, REFERENCE_HEIGHT);
            return height >= top
                    ? scale * (StrictMath.log(height) - origin)
                    : faded(height - roughness, top - roughness, scale * (StrictMath.log(top) - origin), scale / top);
        }
    }

    /** {@code (z / 10 m)^a} above 1 m. */
    record Power(double exponent) implements Shear {
        private static final double TOP = 1.0;

        @Override
        public double ratio(double height) {
            double atTop = StrictMath.pow(TOP / REFERENCE_HEIGHT, exponent);
            return height >= TOP
                    ? StrictMath.pow(height / REFERENCE_HEIGHT, exponent)
                    : faded(height, TOP, atTop, exponent * atTop / TOP);
        }
    }

    /** The parabola through 0 at 0, with a value and a slope at the end; 0 before 0. */
    private static double faded(double distance, double end, double valueAtEnd, double slopeAtEnd) {
        if (distance <= 0.0) {
            return 0.0;
        }
        double x = distance / end;
        double rise = slopeAtEnd * end;
        return x * (2.0 * valueAtEnd - rise + (rise - valueAtEnd) * x);
    }
}
