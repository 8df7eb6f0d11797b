package dev.teeward.quantity;

/**
 * The units of angle: value in SI = value times a fixed ratio.
 *
 * <p>Source of the factors: The SI Brochure, 9th edition, 2019. Immutable and thread-safe.
 */
public enum AngleUnit implements Unit {
    /** The radian [rad], the SI unit. */
    RADIAN("rad", "rad", 1, 1),

    /** The degree [deg], pi/180 rad. */
    DEGREE("deg", "deg", Math.PI, 180);

    private final String symbol;
    private final String suffix;
    // A ratio of two numbers and not one rounded factor: equal lengths in feet and inches then come out equal in
    // metres.
    private final double numerator;
    private final double denominator;

    AngleUnit(String symbol, String suffix, double numerator, double denominator) {
        this.symbol = symbol;
        this.suffix = suffix;
        this.numerator = numerator;
        this.denominator = denominator;
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
        return value * numerator / denominator;
    }

    @Override
    public double fromSi(double si) {
        return si * denominator / numerator;
    }

    @Override
    public AngleUnit siUnit() {
        return RADIAN;
    }
}
