package dev.teeward.quantity;

import java.io.Serializable;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * A speed, of a club head, a ball or the wind.
 *
 * <p>Held as one {@code double} in {@link SpeedUnit#METER_PER_SECOND}; every value is finite. Equality is exact.
 *
 * <pre>{@code
 * Speed ball = Speed.ofMph(100.0);
 * double mps = ball.metersPerSecond(); // 44.704
 * double kmh = ball.kmh(); // 160.9344
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class Speed implements Comparable<Speed>, Serializable {
    private static final long serialVersionUID = 1L;

    /** The value in SI. */
    private final double si;

    private Speed(double si) {
        this.si = si;
    }

    /**
     * A speed given in any of its units.
     *
     * @param value the number in that unit, finite
     * @param unit the unit it is given in
     * @return the speed
     * @throws IllegalArgumentException if the value is NaN or infinite, or becomes infinite in SI
     */
    public static Speed of(double value, SpeedUnit unit) {
        return new Speed(Finite.toSi("speed", value, unit));
    }

    /**
     * A speed in metres per second [m/s].
     *
     * @param value the number, finite [m/s]
     * @return the speed
     * @throws IllegalArgumentException if the value is not finite
     */
    public static Speed ofMetersPerSecond(double value) {
        return of(value, SpeedUnit.METER_PER_SECOND);
    }

    /**
     * A speed in kilometres per hour [km/h].
     *
     * @param value the number, finite [km/h]
     * @return the speed
     * @throws IllegalArgumentException if the value is not finite
     */
    public static Speed ofKmh(double value) {
        return of(value, SpeedUnit.KILOMETER_PER_HOUR);
    }

    /**
     * A speed in miles per hour [mph].
     *
     * @param value the number, finite [mph]
     * @return the speed
     * @throws IllegalArgumentException if the value is not finite
     */
    public static Speed ofMph(double value) {
        return of(value, SpeedUnit.MILE_PER_HOUR);
    }

    /**
     * A speed in feet per second [ft/s].
     *
     * @param value the number, finite [ft/s]
     * @return the speed
     * @throws IllegalArgumentException if the value is not finite
     */
    public static Speed ofFeetPerSecond(double value) {
        return of(value, SpeedUnit.FOOT_PER_SECOND);
    }

    /**
     * A speed in knots [kn].
     *
     * @param value the number, finite [kn]
     * @return the speed
     * @throws IllegalArgumentException if the value is not finite
     */
    public static Speed ofKnots(double value) {
        return of(value, SpeedUnit.KNOT);
    }

    /**
     * The number in any unit of speed.
     *
     * @param unit the unit wanted
     * @return the value in that unit
     */
    public double value(SpeedUnit unit) {
        return unit.fromSi(si);
    }

    /**
     * This speed in metres per second.
     *
     * @return the value [m/s]
     */
    public double metersPerSecond() {
        return value(SpeedUnit.METER_PER_SECOND);
    }

    /**
     * This speed in kilometres per hour.
     *
     * @return the value [km/h]
     */
    public double kmh() {
        return value(SpeedUnit.KILOMETER_PER_HOUR);
    }

    /**
     * This speed in miles per hour.
     *
     * @return the value [mph]
     */
    public double mph() {
        return value(SpeedUnit.MILE_PER_HOUR);
    }

    /**
     * This speed in feet per second.
     *
     * @return the value [ft/s]
     */
    public double feetPerSecond() {
        return value(SpeedUnit.FOOT_PER_SECOND);
    }

    /**
     * This speed in knots.
     *
     * @return the value [kn]
     */
    public double knots() {
        return value(SpeedUnit.KNOT);
    }

    /**
     * Puts what was deserialized through the checks of the factory.
     *
     * @return the checked value
     */
    private Object readResolve() {
        return of(si, SpeedUnit.METER_PER_SECOND);
    }

    @Override
    public int compareTo(Speed other) {
        return Double.compare(si, other.si);
    }

    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof Speed that && Double.compare(si, that.si) == 0;
    }

    @Override
    public int hashCode() {
        return Objects.hash(Speed.class.getName(), si);
    }

    /** The value in SI and in the customary unit, six significant digits each. */
    @Override
    public String toString() {
        return Plain.both(si, SpeedUnit.METER_PER_SECOND, SpeedUnit.MILE_PER_HOUR);
    }
}
