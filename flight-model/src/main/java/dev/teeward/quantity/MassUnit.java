package dev.teeward.quantity;

/**
 * The units of mass: value in SI = value times a fixed ratio.
 *
 * <p>Source of the factors: International yard and pound agreement, 1959. Immutable and thread-safe.
 */
public enum MassUnit implements Unit {
    /** The kilogram [kg], the SI unit. */
    KILOGRAM("kg", "kg", 1, 1),

    /** The gram [g]. */
    GRAM("g", "g", 1, 1000),

    /** The avoirdupois ounce [oz], exactly 28.349523125 g. */
    OUNCE("oz", "oz", 28349523125.0, 1e12),

    /** The avoirdupois pound [lb], exactly 0.45359237 kg. */
    POUND("lb", "lb", 45359237, 1e8),

    /** The grain [gr], exactly 64.79891 mg. */
    GRAIN("gr", "gr", 6479891, 1e11);

    private final String symbol;
    private final String suffix;
    // A ratio of two numbers and not one rounded factor: equal lengths in feet and inches then come out equal in
    // metres.
    private final double numerator;
    private final double denominator;

    MassUnit(String symbol, String suffix, double numerator, double denominator) {
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
    public MassUnit siUnit() {
        return KILOGRAM;
    }
}
