package dev.teeward.flight.aero;

import java.io.Serializable;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * The range of Reynolds number and spin ratio in which a model was measured or calibrated.
 *
 * <pre>{@code
 * ModelDomain d = ModelDomain.of(7e4, 2.1e5, 0.08, 0.20);
 * d.contains(1.5e5, 0.10); // true
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class ModelDomain implements Serializable {
    private static final long serialVersionUID = 1L;
    private static final ModelDomain UNBOUNDED =
            new ModelDomain(0.0, Double.POSITIVE_INFINITY, 0.0, Double.POSITIVE_INFINITY);

    /** The lowest Reynolds number. */
    private final double minRe;

    /** The highest Reynolds number. */
    private final double maxRe;

    /** The lowest spin ratio. */
    private final double minS;

    /** The highest spin ratio. */
    private final double maxS;

    private ModelDomain(double minRe, double maxRe, double minS, double maxS) {
        this.minRe = minRe;
        this.maxRe = maxRe;
        this.minS = minS;
        this.maxS = maxS;
    }

    /**
     * A rectangle of Reynolds number and spin ratio.
     *
     * @param minRe the lowest Reynolds number, not negative
     * @param maxRe the highest Reynolds number, above the lowest, possibly infinite
     * @param minS the lowest spin ratio, not negative
     * @param maxS the highest spin ratio, above the lowest, possibly infinite
     * @return the domain
     * @throws IllegalArgumentException if a range is empty, starts below 0, or holds NaN
     */
    public static ModelDomain of(double minRe, double maxRe, double minS, double maxS) {
        if (!(minRe >= 0.0 && minRe < maxRe)) {
            throw new IllegalArgumentException(
                    "Reynolds numbers must satisfy 0 <= min < max, but were " + minRe + " and " + maxRe);
        }
        if (!(minS >= 0.0 && minS < maxS)) {
            throw new IllegalArgumentException(
                    "spin ratios must satisfy 0 <= min < max, but were " + minS + " and " + maxS);
        }
        return new ModelDomain(minRe, maxRe, minS, maxS);
    }

    /**
     * Everything: for a model that knows no limits or does not tell them.
     *
     * @return the unbounded domain
     */
    public static ModelDomain unbounded() {
        return UNBOUNDED;
    }

    /**
     * Whether a state lies inside, ends included.
     *
     * @param re the Reynolds number
     * @param s the spin ratio
     * @return true if both lie in their range
     */
    public boolean contains(double re, double s) {
        return re >= minRe && re <= maxRe && s >= minS && s <= maxS;
    }

    /**
     * The states that lie both here and there.
     *
     * @param other another domain
     * @return the common rectangle; empty if there is none, or it has no inside
     */
    public Optional<ModelDomain> intersection(ModelDomain other) {
        double lowRe = Math.max(minRe, other.minRe);
        double highRe = Math.min(maxRe, other.maxRe);
        double lowS = Math.max(minS, other.minS);
        double highS = Math.min(maxS, other.maxS);
        return lowRe < highRe && lowS < highS
                ? Optional.of(new ModelDomain(lowRe, highRe, lowS, highS))
                : Optional.empty();
    }

    /**
     * The lowest Reynolds number.
     *
     * @return the lower end
     */
    public double minRe() {
        return minRe;
    }

    /**
     * The highest Reynolds number.
     *
     * @return the upper end, possibly infinite
     */
    public double maxRe() {
        return maxRe;
    }

    /**
     * The lowest spin ratio.
     *
     * @return the lower end
     */
    public double minS() {
        return minS;
    }

    /**
     * The highest spin ratio.
     *
     * @return the upper end, possibly infinite
     */
    public double maxS() {
        return maxS;
    }

    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof ModelDomain that
                && Double.compare(minRe, that.minRe) == 0
                && Double.compare(maxRe, that.maxRe) == 0
                && Double.compare(minS, that.minS) == 0
                && Double.compare(maxS, that.maxS) == 0;
    }

    @Override
    public int hashCode() {
        return Objects.hash(minRe, maxRe, minS, maxS);
    }

    @Override
    public String toString() {
        return "Re " + minRe + " to " + maxRe + ", S " + minS + " to " + maxS;
    }
}
