package dev.teeward.quantity;

/**
 * The units of speed: value in SI = value times a fixed ratio.
 *
 * <p>Source of the factors: NIST Special Publication 811, 2008, appendix B. Immutable and thread-safe.
 */
public enum SpeedUnit implements Unit {
    /** The metre per second [m/s], the SI unit. */
    METER_PER_SECOND("m/s", "mps", 1, 1),

    /** The kilometre per hour [km/h], 1000/3600 m/s. */
    KILOMETER_PER_HOUR("km/h", "kmh", 1000, 3600),

    /** The mile per hour [mph], exactly 0.44704 m/s. */
    MILE_PER_HOUR("mph", "mph", 44704, 100000),

    /** The foot per second [ft/s], exactly 0.3048 m/s. */
    FOOT_PER_SECOND("ft/s", "fps", 3048, 10000),

    /** The knot [kn], 1852/3600 m/s. */
    KNOT("kn", "kn", 1852, 3600);

    private final String symbol;
    private final String suffix;
    // A ratio of two numbers and not one rounded factor: equal lengths in feet and inches then come out equal in
    // metres.
    private final double numerator;
    private final double denominator;

    SpeedUnit(String symbol, String suffix, double numerator, double denominator) {
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
    public SpeedUnit siUnit() {
        return METER_PER_SECOND;
    }
}
