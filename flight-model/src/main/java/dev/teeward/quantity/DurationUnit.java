package dev.teeward.quantity;

/**
 * The units of flight time. A time has no quantity class of its own: programs read it as seconds.
 *
 * <p>Immutable and thread-safe.
 */
public enum DurationUnit implements Unit {
    /** The second [s], the SI unit. */
    SECOND("s", "s", 1.0),

    /** The millisecond [ms]. */
    MILLISECOND("ms", "ms", 0.001);

    private final String symbol;
    private final String suffix;
    private final double factor;

    DurationUnit(String symbol, String suffix, double factor) {
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
    public DurationUnit siUnit() {
        return SECOND;
    }
}
