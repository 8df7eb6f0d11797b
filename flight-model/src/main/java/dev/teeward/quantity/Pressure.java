package dev.teeward.quantity;

import java.io.Serializable;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * A pressure. Which pressure it is (at the station, or reduced to sea level) is told by the factory that takes it.
 *
 * <p>Held as one {@code double} in {@link PressureUnit#PASCAL}; every value is finite. Equality is exact.
 *
 * <pre>{@code
 * Pressure p = Pressure.ofInchesOfMercury(29.92);
 * double hpa = p.hectopascals(); // 1013.207...
 * p.equals(Units.inchesOfMercury(29.92)); // true
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class Pressure implements Comparable<Pressure>, Serializable {
    private static final long serialVersionUID = 1L;

    /** The value in SI. */
    private final double si;

    private Pressure(double si) {
        this.si = si;
    }

    /**
     * A pressure given in any of its units.
     *
     * @param value the number in that unit, finite
     * @param unit the unit it is given in
     * @return the pressure
     * @throws IllegalArgumentException if the value is NaN or infinite, or becomes infinite in SI
     */
    public static Pressure of(double value, PressureUnit unit) {
        return new Pressure(Finite.toSi("pressure", value, unit));
    }

    /**
     * A pressure in pascals [Pa].
     *
     * @param value the number, finite [Pa]
     * @return the pressure
     * @throws IllegalArgumentException if the value is not finite
     */
    public static Pressure ofPascals(double value) {
        return of(value, PressureUnit.PASCAL);
    }

    /**
     * A pressure in hectopascals [hPa].
     *
     * @param value the number, finite [hPa]
     * @return the pressure
     * @throws IllegalArgumentException if the value is not finite
     */
    public static Pressure ofHectopascals(double value) {
        return of(value, PressureUnit.HECTOPASCAL);
    }

    /**
     * A pressure in kilopascals [kPa].
     *
     * @param value the number, finite [kPa]
     * @return the pressure
     * @throws IllegalArgumentException if the value is not finite
     */
    public static Pressure ofKilopascals(double value) {
        return of(value, PressureUnit.KILOPASCAL);
    }

    /**
     * A pressure in inches of mercury [inHg].
     *
     * @param value the number, finite [inHg]
     * @return the pressure
     * @throws IllegalArgumentException if the value is not finite
     */
    public static Pressure ofInchesOfMercury(double value) {
        return of(value, PressureUnit.INCH_OF_MERCURY);
    }

    /**
     * The number in any unit of pressure.
     *
     * @param unit the unit wanted
     * @return the value in that unit
     */
    public double value(PressureUnit unit) {
        return unit.fromSi(si);
    }

    /**
     * This pressure in pascals.
     *
     * @return the value [Pa]
     */
    public double pascals() {
        return value(PressureUnit.PASCAL);
    }

    /**
     * This pressure in hectopascals.
     *
     * @return the value [hPa]
     */
    public double hectopascals() {
        return value(PressureUnit.HECTOPASCAL);
    }

    /**
     * This pressure in kilopascals.
     *
     * @return the value [kPa]
     */
    public double kilopascals() {
        return value(PressureUnit.KILOPASCAL);
    }

    /**
     * This pressure in inches of mercury.
     *
     * @return the value [inHg]
     */
    public double inchesOfMercury() {
        return value(PressureUnit.INCH_OF_MERCURY);
    }

    /**
     * Puts what was deserialized through the checks of the factory.
     *
     * @return the checked value
     */
    private Object readResolve() {
        return of(si, PressureUnit.PASCAL);
    }

    @Override
    public int compareTo(Pressure other) {
        return Double.compare(si, other.si);
    }

    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof Pressure that && Double.compare(si, that.si) == 0;
    }

    @Override
    public int hashCode() {
        return Objects.hash(Pressure.class.getName(), si);
    }

    /** The value in SI and in the customary unit, six significant digits each. */
    @Override
    public String toString() {
        return Plain.both(si, PressureUnit.PASCAL, PressureUnit.INCH_OF_MERCURY);
    }
}
