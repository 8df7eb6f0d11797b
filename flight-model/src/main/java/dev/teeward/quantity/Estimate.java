package dev.teeward.quantity;

import java.io.Serializable;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * A value estimated from data, with its interval and its unit. Value and both ends are in {@link #unit()}.
 *
 * <pre>{@code
 * Estimate e = Estimate.of(9.144, Interval.of(4.572, 13.716, 0.95), LengthUnit.METER);
 * Estimate yards = e.convertTo(LengthUnit.YARD); // 10 yd, [5, 15] at 95 %
 * yards.interval().contains(0.0);                // false: the direction is known at that level
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class Estimate implements Serializable {
    private static final long serialVersionUID = 1L;

    /** The value, in the unit. */
    private final double value;

    /** The interval, in the unit. */
    private final Interval interval;

    /** The unit of all three numbers; every unit is an enumeration constant and so serializable. */
    private final Unit unit;

    private Estimate(double value, Interval interval, Unit unit) {
        this.value = value;
        this.interval = interval;
        this.unit = unit;
    }

    /**
     * An estimate. The value usually lies in its interval but need not: a bias-corrected interval may exclude it.
     *
     * @param value the value, finite, in {@code unit}
     * @param interval the interval, in {@code unit}
     * @param unit the unit of all three numbers
     * @return the estimate
     * @throws IllegalArgumentException if the value is not finite
     */
    public static Estimate of(double value, Interval interval, Unit unit) {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException("estimate must be finite, but was " + value + " " + unit.symbol());
        }
        return new Estimate(
                value + 0.0, Objects.requireNonNull(interval, "interval"), Objects.requireNonNull(unit, "unit"));
    }

    /**
     * The estimated value.
     *
     * @return the value, in {@link #unit()}
     */
    public double value() {
        return value;
    }

    /**
     * The interval.
     *
     * @return the interval, in {@link #unit()}
     */
    public Interval interval() {
        return interval;
    }

    /**
     * The unit of the value and of both ends.
     *
     * @return the unit
     */
    public Unit unit() {
        return unit;
    }

    /**
     * The same estimate in another unit of the same dimension. Temperatures are refused: what converts a temperature
     * would convert a difference of temperatures wrongly, and an estimate may be either.
     *
     * @param other the unit wanted
     * @return the estimate in that unit
     * @throws IllegalArgumentException if the other unit is of another dimension, or if the units are two
     *     temperature scales
     */
    public Estimate convertTo(Unit other) {
        if (!unit.siUnit().equals(other.siUnit())) {
            throw new IllegalArgumentException("cannot convert from [" + unit.symbol() + "] to [" + other.symbol()
                    + "]: they measure different things");
        }
        if (unit.equals(other)) {
            return this;
        }
        if (unit instanceof TemperatureUnit) {
            throw new IllegalArgumentException("an estimate in " + unit.symbol() + " is not converted to "
                    + other.symbol() + ": it may be a difference; convert the temperatures before estimating");
        }
        Interval converted = Interval.of(
                other.fromSi(unit.toSi(interval.lower())), other.fromSi(unit.toSi(interval.upper())), interval.level());
        return of(other.fromSi(unit.toSi(value)), converted, other);
    }

    /**
     * Puts what was deserialized through the checks of the factory.
     *
     * @return the checked value
     */
    private Object readResolve() {
        return of(value, interval, unit);
    }

    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof Estimate that
                && Double.compare(value, that.value) == 0
                && interval.equals(that.interval)
                && unit.equals(that.unit);
    }

    @Override
    public int hashCode() {
        return Objects.hash(value, interval, unit);
    }

    /** Value, unit and interval to six significant digits. */
    @Override
    public String toString() {
        return Plain.withUnit(value, unit) + " " + interval;
    }
}
