package dev.teeward.quantity;

/**
 * The units of spin rate: value in SI = value times a fixed ratio.
 *
 * <p>Source of the factors: NIST Special Publication 811, 2008, appendix B. Immutable and thread-safe.
 */
public enum SpinRateUnit implements Unit {
    /** The radian per second [rad/s], the SI unit. */
    RADIAN_PER_SECOND("rad/s", "radps", 1, 1),

    /** The revolution per minute [rpm], 2 pi/60 rad/s. */
    REVOLUTION_PER_MINUTE("rpm", "rpm", Math.PI, 30),

    /** The revolution per second [r/s], 2 pi rad/s. */
    REVOLUTION_PER_SECOND("r/s", "rps", 2 * Math.PI, 1);

    private final String symbol;
    private final String suffix;
    // A ratio of two numbers and not one rounded factor: equal lengths in feet and inches then come out equal in
    // metres.
    private final double numerator;
    private final double denominator;

    SpinRateUnit(String symbol, String suffix, double numerator, double denominator) {
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
    public SpinRateUnit siUnit() {
        return RADIAN_PER_SECOND;
    }
}
