package dev.teeward.quantity;

import java.io.Serializable;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * An interval of plausible values at a stated level: confidence, prediction or tolerance, as its maker says.
 *
 * <p>An end may be infinite: a one-sided interval has one infinite end, and where the data hold no information about
 * a value the interval is {@linkplain #unbounded the whole line} rather than absent.
 *
 * <pre>{@code
 * Interval i = Interval.of(-0.4, 2.6, 0.95);
 * i.contains(0.0);   // true
 * i.halfWidth();     // 1.5
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class Interval implements Serializable {
    private static final long serialVersionUID = 1L;

    /** The lower end, possibly minus infinity. */
    private final double lower;

    /** The upper end, possibly plus infinity. */
    private final double upper;

    /** The level, in (0, 1). */
    private final double level;

    private Interval(double lower, double upper, double level) {
        this.lower = lower;
        this.upper = upper;
        this.level = level;
    }

    /**
     * An interval from its ends.
     *
     * @param lower the lower end, not NaN, at most {@code upper}
     * @param upper the upper end, not NaN
     * @param level the level, in (0, 1), such as 0.95
     * @return the interval
     * @throws IllegalArgumentException if an end is NaN, the ends are the wrong way round, or the level is not in (0, 1)
     */
    public static Interval of(double lower, double upper, double level) {
        if (!(lower <= upper) || lower == Double.POSITIVE_INFINITY || upper == Double.NEGATIVE_INFINITY) {
            throw new IllegalArgumentException(
                    "interval ends must satisfy lower <= upper, with lower < +infinity and upper > -infinity, but were "
                            + lower + " and " + upper);
        }
        if (!(level > 0.0 && level < 1.0)) {
            throw new IllegalArgumentException(
                    "level must be in (0, 1), but was " + level + "; for 95 percent use 0.95");
        }
        return new Interval(lower + 0.0, upper + 0.0, level);
    }

    /**
     * The whole line: nothing is known at this level.
     *
     * @param level the level, in (0, 1)
     * @return the interval from minus to plus infinity
     * @throws IllegalArgumentException if the level is not in (0, 1)
     */
    public static Interval unbounded(double level) {
        return of(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY, level);
    }

    /**
     * The lower end.
     *
     * @return the lower end, possibly minus infinity
     */
    public double lower() {
        return lower;
    }

    /**
     * The upper end.
     *
     * @return the upper end, possibly plus infinity
     */
    public double upper() {
        return upper;
    }

    /**
     * The level.
     *
     * @return the level, in (0, 1)
     */
    public double level() {
        return level;
    }

    /**
     * Whether both ends are finite.
     *
     * @return true if so
     */
    public boolean bounded() {
        return Double.isFinite(lower) && Double.isFinite(upper);
    }

    /**
     * Whether a value lies inside; the ends count as inside.
     *
     * @param value the value; NaN lies nowhere
     * @return true if {@code lower <= value <= upper}
     */
    public boolean contains(double value) {
        return lower <= value && value <= upper;
    }

    /**
     * Whether this interval lies inside another, ends included.
     *
     * @param low the lower end of the other
     * @param high the upper end of the other
     * @return true if {@code low <= lower} and {@code upper <= high}
     */
    public boolean within(double low, double high) {
        return low <= lower && upper <= high;
    }

    /**
     * The distance between the ends.
     *
     * @return the width, possibly infinite
     */
    public double width() {
        return upper - lower;
    }

    /**
     * Half of the distance between the ends.
     *
     * @return the half-width, possibly infinite
     */
    public double halfWidth() {
        return 0.5 * width();
    }

    /**
     * Puts what was deserialized through the checks of the factory.
     *
     * @return the checked value
     */
    private Object readResolve() {
        return of(lower, upper, level);
    }

    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof Interval that
                && Double.compare(lower, that.lower) == 0
                && Double.compare(upper, that.upper) == 0
                && Double.compare(level, that.level) == 0;
    }

    @Override
    public int hashCode() {
        return Objects.hash(lower, upper, level);
    }

    /** The ends to six significant digits and the level in percent. */
    @Override
    public String toString() {
        return "[" + Plain.number(lower) + ", " + Plain.number(upper) + "] at " + Plain.number(100.0 * level) + " %";
    }
}
