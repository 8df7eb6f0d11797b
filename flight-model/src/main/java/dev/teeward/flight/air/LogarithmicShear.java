package dev.teeward.flight.air;

import org.jspecify.annotations.Nullable;

/** {@code ln(z / z0) / ln(10 m / z0)} above 20 z0, or above 10 m if that is less; z0 is the roughness [m]. */
final class LogarithmicShear implements Shear {
    private static final long serialVersionUID = 1L;

    /** The roughness length [m]. */
    private final double roughness;

    /** Its logarithm. */
    private final double origin;

    /** One over the logarithm of 10 m over the roughness. */
    private final double scale;

    /** The height above which the law holds [m]. */
    private final double top;

    /** The ratio there. */
    private final double atTop;

    LogarithmicShear(double roughness) {
        this.roughness = roughness;
        origin = StrictMath.log(roughness);
        scale = 1.0 / (StrictMath.log(REFERENCE_HEIGHT) - origin);
        top = Math.min(20.0 * roughness, REFERENCE_HEIGHT);
        atTop = scale * (StrictMath.log(top) - origin);
    }

    double roughness() {
        return roughness;
    }

    @Override
    public double ratio(double height) {
        return height >= top
                ? scale * (StrictMath.log(height) - origin)
                : Shear.faded(height - roughness, top - roughness, atTop, scale / top);
    }

    /** Works the rest out from the roughness again. */
    private Object readResolve() {
        return new LogarithmicShear(roughness);
    }

    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof LogarithmicShear that && roughness == that.roughness;
    }

    @Override
    public int hashCode() {
        return Double.hashCode(roughness);
    }
}
