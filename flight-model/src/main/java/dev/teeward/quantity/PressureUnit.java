package dev.teeward.quantity;

/**
 * The units of pressure: value in SI = value times a fixed factor.
 *
 * <p>Source of the factors: NIST Special Publication 811, 2008, appendix B. Immutable and thread-safe.
 */
public enum PressureUnit implements Unit {
    /** The pascal [Pa], the SI unit. */
    PASCAL("Pa", "pa", 1.0),

    /** The hectopascal [hPa], the same as the millibar. */
    HECTOPASCAL("hPa", "hpa", 100.0),

    /** The kilopascal [kPa]. */
    KILOPASCAL("kPa", "kpa", 1000.0),

    /** The inch of mercury [inHg], 25.4 conventional millimetres of mercury of 133.322387415 Pa. */
    INCH_OF_MERCURY("inHg", "inhg", 25.4 * 133.322387415);

    private final String symbol;
    private final String suffix;
    private final double factor;

    PressureUnit(String symbol, String suffix, double factor) {
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
    public PressureUnit siUnit() {
        return PASCAL;
    }
}
