package dev.teeward.quantity;

import java.io.Serializable;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * A rotation rate.
 *
 * <p>Held as one {@code double} in {@link SpinRateUnit#RADIAN_PER_SECOND}; every value is finite. Equality is exact.
 *
 * <pre>{@code
 * SpinRate spin = SpinRate.ofRpm(6400.0);
 * double radps = spin.radiansPerSecond(); // 670.2064...
 * double rps = spin.revolutionsPerSecond(); // 106.666...
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class SpinRate implements Comparable<SpinRate>, Serializable {
    private static final long serialVersionUID = 1L;

    /** The value in SI. */
    private final double si;

    private SpinRate(double si) {
        this.si = si;
    }

    /**
     * A spin rate given in any of its units.
     *
     * @param value the number in that unit, finite
     * @param unit the unit it is given in
     * @return the spin rate
     * @throws IllegalArgumentException if the value is NaN or infinite, or becomes infinite in SI
     */
    public static SpinRate of(double value, SpinRateUnit unit) {
        return new SpinRate(Finite.toSi("spin rate", value, unit));
    }

    /**
     * A spin rate in radians per second [rad/s].
     *
     * @param value the number, finite [rad/s]
     * @return the spin rate
     * @throws IllegalArgumentException if the value is not finite
     */
    public static SpinRate ofRadiansPerSecond(double value) {
        return of(value, SpinRateUnit.RADIAN_PER_SECOND);
    }

    /**
     * A spin rate in revolutions per minute [rpm].
     *
     * @param value the number, finite [rpm]
     * @return the spin rate
     * @throws IllegalArgumentException if the value is not finite
     */
    public static SpinRate ofRpm(double value) {
        return of(value, SpinRateUnit.REVOLUTION_PER_MINUTE);
    }

    /**
     * A spin rate in revolutions per second [r/s].
     *
     * @param value the number, finite [r/s]
     * @return the spin rate
     * @throws IllegalArgumentException if the value is not finite
     */
    public static SpinRate ofRevolutionsPerSecond(double value) {
        return of(value, SpinRateUnit.REVOLUTION_PER_SECOND);
    }

    /**
     * The number in any unit of spin rate.
     *
     * @param unit the unit wanted
     * @return the value in that unit
     */
    public double value(SpinRateUnit unit) {
        return unit.fromSi(si);
    }

    /**
     * This spin rate in radians per second.
     *
     * @return the value [rad/s]
     */
    public double radiansPerSecond() {
        return value(SpinRateUnit.RADIAN_PER_SECOND);
    }

    /**
     * This spin rate in revolutions per minute.
     *
     * @return the value [rpm]
     */
    public double rpm() {
        return value(SpinRateUnit.REVOLUTION_PER_MINUTE);
    }

    /**
     * This spin rate in revolutions per second.
     *
     * @return the value [r/s]
     */
    public double revolutionsPerSecond() {
        return value(SpinRateUnit.REVOLUTION_PER_SECOND);
    }

    /**
     * Puts what was deserialized through the checks of the factory.
     *
     * @return the checked value
     */
    private Object readResolve() {
        return of(si, SpinRateUnit.RADIAN_PER_SECOND);
    }

    @Override
    public int compareTo(SpinRate other) {
        return Double.compare(si, other.si);
    }

    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof SpinRate that && Double.compare(si, that.si) == 0;
    }

    @Override
    public int hashCode() {
        return Objects.hash(SpinRate.class.getName(), si);
    }

    /** The value in SI and in the customary unit, six significant digits each. */
    @Override
    public String toString() {
        return Plain.both(si, SpinRateUnit.RADIAN_PER_SECOND, SpinRateUnit.REVOLUTION_PER_MINUTE);
    }
}
