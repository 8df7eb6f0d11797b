package dev.teeward.quantity;

/**
 * The units of pure numbers: ratios such as the smash factor, probabilities, effect sizes, shares.
 *
 * <p>Immutable and thread-safe.
 */
public enum RatioUnit implements Unit {
    /** The number itself, without a symbol. */
    ONE("", "", 1.0),

    /** Hundredths [%]. */
    PERCENT("%", "pct", 0.01);

    private final String symbol;
    private final String suffix;
    private final double factor;

    RatioUnit(String symbol, String suffix, double factor) {
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
    public RatioUnit siUnit() {
        return ONE;
    }
}
