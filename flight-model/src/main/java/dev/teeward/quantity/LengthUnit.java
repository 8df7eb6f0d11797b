package dev.teeward.quantity;

/**
 * The units of length: value in SI = value times a fixed factor.
 *
 * <p>Source of the factors: International yard and pound agreement, 1959. Immutable and thread-safe.
 */
public enum LengthUnit implements Unit {
    /** The metre [m], the SI unit. */
    METER("m", "m", 1.0),

    /** The centimetre [cm]. */
    CENTIMETER("cm", "cm", 0.01),

    /** The millimetre [mm]. */
    MILLIMETER("mm", "mm", 0.001),

    /** The international yard [yd], exactly 0.9144 m. */
    YARD("yd", "yd", 0.9144),

    /** The international foot [ft], exactly 0.3048 m. */
    FOOT("ft", "ft", 0.3048),

    /** The international inch [in], exactly 0.0254 m. */
    INCH("in", "in", 0.0254);

    private final String symbol;
    private final String suffix;
    private final double factor;

    LengthUnit(String symbol, String suffix, double factor) {
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
    public LengthUnit siUnit() {
        return METER;
    }
}
