package dev.teeward.flight.air;

/** {@code (z / 10 m)^a} above 1 m; a is the exponent. */
record PowerShear(double exponent) implements Shear {
    private static final double TOP = 1.0;

    @Override
    public double ratio(double height) {
        if (height >= TOP) {
            return StrictMath.pow(height / REFERENCE_HEIGHT, exponent);
        }
        double atTop = StrictMath.pow(TOP / REFERENCE_HEIGHT, exponent);
        return Shear.faded(height, TOP, atTop, exponent * atTop / TOP);
    }
}
