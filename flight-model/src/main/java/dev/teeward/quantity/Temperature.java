package dev.teeward.quantity;

import java.io.Serializable;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * A thermodynamic temperature, not a temperature difference.
 *
 * <p>Held as one {@code double} in {@link TemperatureUnit#KELVIN}; every value is finite and at or above
 * absolute zero. Equality is exact.
 *
 * <pre>{@code
 * Temperature warm = Temperature.ofFahrenheit(86.0);
 * double c = warm.celsius(); // 30, to about 1e-13
 * double k = warm.kelvins(); // 303.15
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class Temperature implements Comparable<Temperature>, Serializable {
    private static final long serialVersionUID = 1L;

    /** The value in SI. */
    private final double si;

    private Temperature(double si) {
        this.si = si;
    }

    /**
     * A temperature given in any of its units.
     *
     * @param value the number in that unit, finite
     * @param unit the unit it is given in
     * @return the temperature
     * @throws IllegalArgumentException if the value is NaN or infinite, becomes infinite in SI, or is below absolute zero
     */
    public static Temperature of(double value, TemperatureUnit unit) {
        double kelvins = Finite.toSi("temperature", value, unit);
        if (kelvins < 0.0) {
            throw new IllegalArgumentException("temperature must be at or above absolute zero (0 K, -273.15 degC,"
                    + " -459.67 degF), but was " + value + " " + unit.symbol());
        }
        return new Temperature(kelvins);
    }

    /**
     * A temperature in kelvins [K].
     *
     * @param value the number, finite [K]
     * @return the temperature
     * @throws IllegalArgumentException if the value is not finite or is below absolute zero
     */
    public static Temperature ofKelvins(double value) {
        return of(value, TemperatureUnit.KELVIN);
    }

    /**
     * A temperature in degrees Celsius [degC].
     *
     * @param value the number, finite [degC]
     * @return the temperature
     * @throws IllegalArgumentException if the value is not finite or is below absolute zero
     */
    public static Temperature ofCelsius(double value) {
        return of(value, TemperatureUnit.CELSIUS);
    }

    /**
     * A temperature in degrees Fahrenheit [degF].
     *
     * @param value the number, finite [degF]
     * @return the temperature
     * @throws IllegalArgumentException if the value is not finite or is below absolute zero
     */
    public static Temperature ofFahrenheit(double value) {
        return of(value, TemperatureUnit.FAHRENHEIT);
    }

    /**
     * The number in any unit of temperature.
     *
     * @param unit the unit wanted
     * @return the value in that unit
     */
    public double value(TemperatureUnit unit) {
        return unit.fromSi(si);
    }

    /**
     * This temperature in kelvins.
     *
     * @return the value [K]
     */
    public double kelvins() {
        return value(TemperatureUnit.KELVIN);
    }

    /**
     * This temperature in degrees Celsius.
     *
     * @return the value [degC]
     */
    public double celsius() {
        return value(TemperatureUnit.CELSIUS);
    }

    /**
     * This temperature in degrees Fahrenheit.
     *
     * @return the value [degF]
     */
    public double fahrenheit() {
        return value(TemperatureUnit.FAHRENHEIT);
    }

    /**
     * Puts what was deserialized through the checks of the factory.
     *
     * @return the checked value
     */
    private Object readResolve() {
        return of(si, TemperatureUnit.KELVIN);
    }

    @Override
    public int compareTo(Temperature other) {
        return Double.compare(si, other.si);
    }

    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof Temperature that && Double.compare(si, that.si) == 0;
    }

    @Override
    public int hashCode() {
        return Objects.hash(Temperature.class.getName(), si);
    }

    /** The value in SI and in the customary unit, six significant digits each. */
    @Override
    public String toString() {
        return Plain.both(si, TemperatureUnit.KELVIN, TemperatureUnit.FAHRENHEIT);
    }
}
