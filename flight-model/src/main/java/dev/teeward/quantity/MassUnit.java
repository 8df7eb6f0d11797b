package dev.teeward.quantity;

/**
 * The units of mass: value in SI = value times a fixed factor.
 *
 * <p>Source of the factors: International yard and pound agreement, 1959. Immutable and thread-safe.
 */
public enum MassUnit implements Unit {
    /** The kilogram [kg], the SI unit. */
    KILOGRAM("kg", "kg", 1.0),

    /** The gram [g]. */
    GRAM("g", "g", 0.001),

    /** The avoirdupois ounce [oz], exactly 28.349523125 g. */
    OUNCE("oz", "oz", 0.028349523125),

    /** The avoirdupois pound [lb], exactly 0.45359237 kg. */
    POUND("lb", "lb", 0.45359237),

    /** The grain [gr], exactly 64.79891 mg. */
    GRAIN("gr", "gr", 0.00006479891);

    private final String symbol;
    private final String suffix;
    private final double factor;

    MassUnit(String symbol, String suffix, double factor) {
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
    public MassUnit siUnit() {
        return KILOGRAM;
    }
}
