package dev.teeward.quantity;

import java.io.Serializable;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * A length or distance.
 *
 * <p>Held as one {@code double} in {@link LengthUnit#METER}; every value is finite. Equality is exact.
 *
 * <pre>{@code
 * Length carry = Length.ofYards(150.0);
 * double m = carry.meters(); // 137.16
 * Length.ofFeet(450.0).equals(carry); // true
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class Length implements Comparable<Length>, Serializable {
    private static final long serialVersionUID = 1L;

    /** The value in SI. */
    private final double si;

    private Length(double si) {
        this.si = si;
    }

    /**
     * A length given in any of its units.
     *
     * @param value the number in that unit, finite
     * @param unit the unit it is given in
     * @return the length
     * @throws IllegalArgumentException if the value is NaN or infinite, or becomes infinite in SI
     */
    public static Length of(double value, LengthUnit unit) {
        return new Length(Finite.toSi("length", value, unit));
    }

    /**
     * A length in metres [m].
     *
     * @param value the number, finite [m]
     * @return the length
     * @throws IllegalArgumentException if the value is not finite
     */
    public static Length ofMeters(double value) {
        return of(value, LengthUnit.METER);
    }

    /**
     * A length in centimetres [cm].
     *
     * @param value the number, finite [cm]
     * @return the length
     * @throws IllegalArgumentException if the value is not finite
     */
    public static Length ofCentimeters(double value) {
        return of(value, LengthUnit.CENTIMETER);
    }

    /**
     * A length in millimetres [mm].
     *
     * @param value the number, finite [mm]
     * @return the length
     * @throws IllegalArgumentException if the value is not finite
     */
    public static Length ofMillimeters(double value) {
        return of(value, LengthUnit.MILLIMETER);
    }

    /**
     * A length in international yards [yd].
     *
     * @param value the number, finite [yd]
     * @return the length
     * @throws IllegalArgumentException if the value is not finite
     */
    public static Length ofYards(double value) {
        return of(value, LengthUnit.YARD);
    }

    /**
     * A length in international feet [ft].
     *
     * @param value the number, finite [ft]
     * @return the length
     * @throws IllegalArgumentException if the value is not finite
     */
    public static Length ofFeet(double value) {
        return of(value, LengthUnit.FOOT);
    }

    /**
     * A length in international inches [in].
     *
     * @param value the number, finite [in]
     * @return the length
     * @throws IllegalArgumentException if the value is not finite
     */
    public static Length ofInches(double value) {
        return of(value, LengthUnit.INCH);
    }

    /**
     * The number in any unit of length.
     *
     * @param unit the unit wanted
     * @return the value in that unit
     */
    public double value(LengthUnit unit) {
        return unit.fromSi(si);
    }

    /**
     * This length in metres.
     *
     * @return the value [m]
     */
    public double meters() {
        return value(LengthUnit.METER);
    }

    /**
     * This length in centimetres.
     *
     * @return the value [cm]
     */
    public double centimeters() {
        return value(LengthUnit.CENTIMETER);
    }

    /**
     * This length in millimetres.
     *
     * @return the value [mm]
     */
    public double millimeters() {
        return value(LengthUnit.MILLIMETER);
    }

    /**
     * This length in international yards.
     *
     * @return the value [yd]
     */
    public double yards() {
        return value(LengthUnit.YARD);
    }

    /**
     * This length in international feet.
     *
     * @return the value [ft]
     */
    public double feet() {
        return value(LengthUnit.FOOT);
    }

    /**
     * This length in international inches.
     *
     * @return the value [in]
     */
    public double inches() {
        return value(LengthUnit.INCH);
    }

    /**
     * Puts what was deserialized through the checks of the factory.
     *
     * @return the checked value
     */
    private Object readResolve() {
        return of(si, LengthUnit.METER);
    }

    @Override
    public int compareTo(Length other) {
        return Double.compare(si, other.si);
    }

    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof Length that && Double.compare(si, that.si) == 0;
    }

    @Override
    public int hashCode() {
        return Objects.hash(Length.class.getName(), si);
    }

    /** The value in SI and in the customary unit, six significant digits each. */
    @Override
    public String toString() {
        return Plain.both(si, LengthUnit.METER, LengthUnit.YARD);
    }
}
