package dev.teeward.quantity;

/**
 * The units of length: value in SI = value times a fixed ratio.
 *
 * <p>Source of the factors: International yard and pound agreement, 1959. Immutable and thread-safe.
 */
public enum LengthUnit implements Unit {
    /** The metre [m], the SI unit. */
    METER("m", "m", 1, 1),

    /** The centimetre [cm]. */
    CENTIMETER("cm", "cm", 1, 100),

    /** The millimetre [mm]. */
    MILLIMETER("mm", "mm", 1, 1000),

    /** The international yard [yd], exactly 0.9144 m. */
    YARD("yd", "yd", 9144, 10000),

    /** The international foot [ft], exactly 0.3048 m. */
    FOOT("ft", "ft", 3048, 10000),

    /** The international inch [in], exactly 0.0254 m. */
    INCH("in", "in", 254, 10000);

    private final String symbol;
    private final String suffix;
    // A ratio of two numbers and not one rounded factor: equal lengths in feet and inches then come out equal in
    // metres.
    private final double numerator;
    private final double denominator;

    LengthUnit(String symbol, String suffix, double numerator, double denominator) {
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
    public LengthUnit siUnit() {
        return METER;
    }
}
