package dev.teeward.quantity;

/**
 * The units of spin rate: value in SI = value times a fixed factor.
 *
 * <p>Source of the factors: NIST Special Publication 811, 2008, appendix B. Immutable and thread-safe.
 */
public enum SpinRateUnit implements Unit {
    /** The radian per second [rad/s], the SI unit. */
    RADIAN_PER_SECOND("rad/s", "radps", 1.0),

    /** The revolution per minute [rpm], 2 pi/60 rad/s. */
    REVOLUTION_PER_MINUTE("rpm", "rpm", 2.0 * Math.PI / 60.0),

    /** The revolution per second [r/s], 2 pi rad/s. */
    REVOLUTION_PER_SECOND("r/s", "rps", 2.0 * Math.PI);

    private final String symbol;
    private final String suffix;
    private final double factor;

    SpinRateUnit(String symbol, String suffix, double factor) {
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
    public SpinRateUnit siUnit() {
        return RADIAN_PER_SECOND;
    }
}
