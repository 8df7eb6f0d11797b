package dev.teeward.quantity;

/**
 * The units of speed: value in SI = value times a fixed factor.
 *
 * <p>Source of the factors: NIST Special Publication 811, 2008, appendix B. Immutable and thread-safe.
 */
public enum SpeedUnit implements Unit {
    /** The metre per second [m/s], the SI unit. */
    METER_PER_SECOND("m/s", "mps", 1.0),

    /** The kilometre per hour [km/h], 1000/3600 m/s. */
    KILOMETER_PER_HOUR("km/h", "kmh", 1000.0 / 3600.0),

    /** The mile per hour [mph], exactly 0.44704 m/s. */
    MILE_PER_HOUR("mph", "mph", 0.44704),

    /** The foot per second [ft/s], exactly 0.3048 m/s. */
    FOOT_PER_SECOND("ft/s", "fps", 0.3048),

    /** The knot [kn], 1852/3600 m/s. */
    KNOT("kn", "kn", 1852.0 / 3600.0);

    private final String symbol;
    private final String suffix;
    private final double factor;

    SpeedUnit(String symbol, String suffix, double factor) {
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
    public SpeedUnit siUnit() {
        return METER_PER_SECOND;
    }
}
