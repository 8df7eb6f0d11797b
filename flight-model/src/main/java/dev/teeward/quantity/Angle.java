package dev.teeward.quantity;

import java.io.Serializable;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * A plane angle. The sign belongs to what is measured and stands where it is used.
 *
 * <p>Held as one {@code double} in {@link AngleUnit#RADIAN}; every value is finite. Equality is exact.
 *
 * <pre>{@code
 * Angle launch = Angle.ofDegrees(17.2);
 * double rad = launch.radians(); // 0.3001966...
 * launch.equals(Units.degrees(17.2)); // true
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class Angle implements Comparable<Angle>, Serializable {
    private static final long serialVersionUID = 1L;

    /** The value in SI. */
    private final double si;

    private Angle(double si) {
        this.si = si;
    }

    /**
     * An angle given in any of its units.
     *
     * @param value the number in that unit, finite
     * @param unit the unit it is given in
     * @return the angle
     * @throws IllegalArgumentException if the value is NaN or infinite, or becomes infinite in SI
     */
    public static Angle of(double value, AngleUnit unit) {
        return new Angle(Finite.toSi("angle", value, unit));
    }

    /**
     * An angle in radians [rad].
     *
     * @param value the number, finite [rad]
     * @return the angle
     * @throws IllegalArgumentException if the value is not finite
     */
    public static Angle ofRadians(double value) {
        return of(value, AngleUnit.RADIAN);
    }

    /**
     * An angle in degrees [deg].
     *
     * @param value the number, finite [deg]
     * @return the angle
     * @throws IllegalArgumentException if the value is not finite
     */
    public static Angle ofDegrees(double value) {
        return of(value, AngleUnit.DEGREE);
    }

    /**
     * The number in any unit of angle.
     *
     * @param unit the unit wanted
     * @return the value in that unit
     */
    public double value(AngleUnit unit) {
        return unit.fromSi(si);
    }

    /**
     * This angle in radians.
     *
     * @return the value [rad]
     */
    public double radians() {
        return value(AngleUnit.RADIAN);
    }

    /**
     * This angle in degrees.
     *
     * @return the value [deg]
     */
    public double degrees() {
        return value(AngleUnit.DEGREE);
    }

    /**
     * Puts what was deserialized through the checks of the factory.
     *
     * @return the checked value
     */
    private Object readResolve() {
        return of(si, AngleUnit.RADIAN);
    }

    @Override
    public int compareTo(Angle other) {
        return Double.compare(si, other.si);
    }

    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof Angle that && Double.compare(si, that.si) == 0;
    }

    @Override
    public int hashCode() {
        return Objects.hash(Angle.class.getName(), si);
    }

    /** The value in SI and in the customary unit, six significant digits each. */
    @Override
    public String toString() {
        return Plain.both(si, AngleUnit.RADIAN, AngleUnit.DEGREE);
    }
}
