package dev.teeward.quantity;

/**
 * The units of angle: value in SI = value times a fixed factor.
 *
 * <p>Source of the factors: The SI Brochure, 9th edition, 2019. Immutable and thread-safe.
 */
public enum AngleUnit implements Unit {
    /** The radian [rad], the SI unit. */
    RADIAN("rad", "rad", 1.0),

    /** The degree [deg], pi/180 rad. */
    DEGREE("deg", "deg", Math.PI / 180.0);

    private final String symbol;
    private final String suffix;
    private final double factor;

    AngleUnit(String symbol, String suffix, double factor) {
        this.symbol = symbol;
        this.suffix = suffix;
        this.factor = factor;
    }

    @Override
    public String symbol() {
        return symbol;
    }

    @Override
    public String suffix() {
        return suffix;
    }

    @Override
    public double toSi(double value) {
        return value * factor;
    }

    @Override
    public double fromSi(double si) {
        return si / factor;
    }

    @Override
    public AngleUnit siUnit() {
        return RADIAN;
    }
}
