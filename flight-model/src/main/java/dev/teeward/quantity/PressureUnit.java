package dev.teeward.quantity;

/**
 * The units of pressure: value in SI = value times a fixed ratio.
 *
 * <p>Source of the factors: NIST Special Publication 811, 2008, appendix B. Immutable and thread-safe.
 */
public enum PressureUnit implements Unit {
    /** The pascal [Pa], the SI unit. */
    PASCAL("Pa", "pa", 1, 1),

    /** The hectopascal [hPa], the same as the millibar. */
    HECTOPASCAL("hPa", "hpa", 100, 1),

    /** The kilopascal [kPa]. */
    KILOPASCAL("kPa", "kpa", 1000, 1),

    /** The inch of mercury [inHg], 25.4 conventional millimetres of mercury of 133.322387415 Pa. */
    INCH_OF_MERCURY("inHg", "inhg", 3386.388640341, 1);

    private final String symbol;
    private final String suffix;
    // A ratio of two numbers and not one rounded factor: equal lengths in feet and inches then come out equal in
    // metres.
    private final double numerator;
    private final double denominator;

    PressureUnit(String symbol, String suffix, double numerator, double denominator) {
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
    public PressureUnit siUnit() {
        return PASCAL;
    }
}
