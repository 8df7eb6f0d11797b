package dev.teeward.quantity;

import java.io.Serializable;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * A mass, of a ball or a club head.
 *
 * <p>Held as one {@code double} in {@link MassUnit#KILOGRAM}; every value is finite. Equality is exact.
 *
 * <pre>{@code
 * Mass ball = Mass.ofOunces(1.62);
 * double g = ball.grams(); // 45.926...
 * double kg = ball.kilograms();
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class Mass implements Comparable<Mass>, Serializable {
    private static final long serialVersionUID = 1L;

    /** The value in SI. */
    private final double si;

    private Mass(double si) {
        this.si = si;
    }

    /**
     * A mass given in any of its units.
     *
     * @param value the number in that unit, finite
     * @param unit the unit it is given in
     * @return the mass
     * @throws IllegalArgumentException if the value is NaN or infinite, or becomes infinite in SI
     */
    public static Mass of(double value, MassUnit unit) {
        return new Mass(Finite.toSi("mass", value, unit));
    }

    /**
     * A mass in kilograms [kg].
     *
     * @param value the number, finite [kg]
     * @return the mass
     * @throws IllegalArgumentException if the value is not finite
     */
    public static Mass ofKilograms(double value) {
        return of(value, MassUnit.KILOGRAM);
    }

    /**
     * A mass in grams [g].
     *
     * @param value the number, finite [g]
     * @return the mass
     * @throws IllegalArgumentException if the value is not finite
     */
    public static Mass ofGrams(double value) {
        return of(value, MassUnit.GRAM);
    }

    /**
     * A mass in avoirdupois ounces [oz].
     *
     * @param value the number, finite [oz]
     * @return the mass
     * @throws IllegalArgumentException if the value is not finite
     */
    public static Mass ofOunces(double value) {
        return of(value, MassUnit.OUNCE);
    }

    /**
     * A mass in avoirdupois pounds [lb].
     *
     * @param value the number, finite [lb]
     * @return the mass
     * @throws IllegalArgumentException if the value is not finite
     */
    public static Mass ofPounds(double value) {
        return of(value, MassUnit.POUND);
    }

    /**
     * A mass in grains [gr].
     *
     * @param value the number, finite [gr]
     * @return the mass
     * @throws IllegalArgumentException if the value is not finite
     */
    public static Mass ofGrains(double value) {
        return of(value, MassUnit.GRAIN);
    }

    /**
     * The number in any unit of mass.
     *
     * @param unit the unit wanted
     * @return the value in that unit
     */
    public double value(MassUnit unit) {
        return unit.fromSi(si);
    }

    /**
     * This mass in kilograms.
     *
     * @return the value [kg]
     */
    public double kilograms() {
        return value(MassUnit.KILOGRAM);
    }

    /**
     * This mass in grams.
     *
     * @return the value [g]
     */
    public double grams() {
        return value(MassUnit.GRAM);
    }

    /**
     * This mass in avoirdupois ounces.
     *
     * @return the value [oz]
     */
    public double ounces() {
        return value(MassUnit.OUNCE);
    }

    /**
     * This mass in avoirdupois pounds.
     *
     * @return the value [lb]
     */
    public double pounds() {
        return value(MassUnit.POUND);
    }

    /**
     * This mass in grains.
     *
     * @return the value [gr]
     */
    public double grains() {
        return value(MassUnit.GRAIN);
    }

    /**
     * Puts what was deserialized through the checks of the factory.
     *
     * @return the checked value
     */
    private Object readResolve() {
        return of(si, MassUnit.KILOGRAM);
    }

    @Override
    public int compareTo(Mass other) {
        return Double.compare(si, other.si);
    }

    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof Mass that && Double.compare(si, that.si) == 0;
    }

    @Override
    public int hashCode() {
        return Objects.hash(Mass.class.getName(), si);
    }

    /** The value in SI and in the customary unit, six significant digits each. */
    @Override
    public String toString() {
        return Plain.both(si, MassUnit.KILOGRAM, MassUnit.OUNCE);
    }
}
