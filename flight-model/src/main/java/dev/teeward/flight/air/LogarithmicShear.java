package dev.teeward.flight.air;

/** {@code ln(z / z0) / ln(10 m / z0)} above 20 z0, or above 10 m if that is less; z0 is the roughness [m]. */
record LogarithmicShear(double roughness) implements Shear {
    @Override
    public double ratio(double height) {
        double origin = StrictMath.log(roughness);
        double scale = 1.0 / (StrictMath.log(REFERENCE_HEIGHT) - origin);
        double top = Math.min(20.0 * roughness, REFERENCE_HEIGHT);
        return height >= top
                ? scale * (StrictMath.log(height) - origin)
                : Shear.faded(height - roughness, top - roughness, scale * (StrictMath.log(top) - origin), scale / top);
    }
}
