package dev.teeward.quantity;

/**
 * Short forms of the quantity factories, for static import: {@code carry(yards(150.0))}.
 *
 * <p>Each one is the factory of the same unit and throws what it throws: {@link IllegalArgumentException} for a number
 * that is not finite. Stateless and thread-safe.
 */
public final class Units {
    private Units() {}

    /**
     * A length [m].
     *
     * @param value the number [m]
     * @return the length
     * @throws IllegalArgumentException if the value is not finite
     */
    public static Length meters(double value) {
        return Length.ofMeters(value);
    }

    /**
     * A length [cm].
     *
     * @param value the number [cm]
     * @return the length
     * @throws IllegalArgumentException if the value is not finite
     */
    public static Length centimeters(double value) {
        return Length.ofCentimeters(value);
    }

    /**
     * A length [mm].
     *
     * @param value the number [mm]
     * @return the length
     * @throws IllegalArgumentException if the value is not finite
     */
    public static Length millimeters(double value) {
        return Length.ofMillimeters(value);
    }

    /**
     * A length [yd].
     *
     * @param value the number [yd]
     * @return the length
     * @throws IllegalArgumentException if the value is not finite
     */
    public static Length yards(double value) {
        return Length.ofYards(value);
    }

    /**
     * A length [ft].
     *
     * @param value the number [ft]
     * @return the length
     * @throws IllegalArgumentException if the value is not finite
     */
    public static Length feet(double value) {
        return Length.ofFeet(value);
    }

    /**
     * A length [in].
     *
     * @param value the number [in]
     * @return the length
     * @throws IllegalArgumentException if the value is not finite
     */
    public static Length inches(double value) {
        return Length.ofInches(value);
    }

    /**
     * A speed [m/s].
     *
     * @param value the number [m/s]
     * @return the speed
     * @throws IllegalArgumentException if the value is not finite
     */
    public static Speed metersPerSecond(double value) {
        return Speed.ofMetersPerSecond(value);
    }

    /**
     * A speed [km/h].
     *
     * @param value the number [km/h]
     * @return the speed
     * @throws IllegalArgumentException if the value is not finite
     */
    public static Speed kmh(double value) {
        return Speed.ofKmh(value);
    }

    /**
     * A speed [mph].
     *
     * @param value the number [mph]
     * @return the speed
     * @throws IllegalArgumentException if the value is not finite
     */
    public static Speed mph(double value) {
        return Speed.ofMph(value);
    }

    /**
     * A speed [ft/s].
     *
     * @param value the number [ft/s]
     * @return the speed
     * @throws IllegalArgumentException if the value is not finite
     */
    public static Speed feetPerSecond(double value) {
        return Speed.ofFeetPerSecond(value);
    }

    /**
     * A speed [kn].
     *
     * @param value the number [kn]
     * @return the speed
     * @throws IllegalArgumentException if the value is not finite
     */
    public static Speed knots(double value) {
        return Speed.ofKnots(value);
    }

    /**
     * An angle [rad].
     *
     * @param value the number [rad]
     * @return the angle
     * @throws IllegalArgumentException if the value is not finite
     */
    public static Angle radians(double value) {
        return Angle.ofRadians(value);
    }

    /**
     * An angle [deg].
     *
     * @param value the number [deg]
     * @return the angle
     * @throws IllegalArgumentException if the value is not finite
     */
    public static Angle degrees(double value) {
        return Angle.ofDegrees(value);
    }

    /**
     * A spin rate [rad/s].
     *
     * @param value the number [rad/s]
     * @return the spin rate
     * @throws IllegalArgumentException if the value is not finite
     */
    public static SpinRate radiansPerSecond(double value) {
        return SpinRate.ofRadiansPerSecond(value);
    }

    /**
     * A spin rate [rpm].
     *
     * @param value the number [rpm]
     * @return the spin rate
     * @throws IllegalArgumentException if the value is not finite
     */
    public static SpinRate rpm(double value) {
        return SpinRate.ofRpm(value);
    }

    /**
     * A spin rate [r/s].
     *
     * @param value the number [r/s]
     * @return the spin rate
     * @throws IllegalArgumentException if the value is not finite
     */
    public static SpinRate revolutionsPerSecond(double value) {
        return SpinRate.ofRevolutionsPerSecond(value);
    }

    /**
     * A pressure [Pa].
     *
     * @param value the number [Pa]
     * @return the pressure
     * @throws IllegalArgumentException if the value is not finite
     */
    public static Pressure pascals(double value) {
        return Pressure.ofPascals(value);
    }

    /**
     * A pressure [hPa].
     *
     * @param value the number [hPa]
     * @return the pressure
     * @throws IllegalArgumentException if the value is not finite
     */
    public static Pressure hectopascals(double value) {
        return Pressure.ofHectopascals(value);
    }

    /**
     * A pressure [kPa].
     *
     * @param value the number [kPa]
     * @return the pressure
     * @throws IllegalArgumentException if the value is not finite
     */
    public static Pressure kilopascals(double value) {
        return Pressure.ofKilopascals(value);
    }

    /**
     * A pressure [inHg].
     *
     * @param value the number [inHg]
     * @return the pressure
     * @throws IllegalArgumentException if the value is not finite
     */
    public static Pressure inchesOfMercury(double value) {
        return Pressure.ofInchesOfMercury(value);
    }

    /**
     * A mass [kg].
     *
     * @param value the number [kg]
     * @return the mass
     * @throws IllegalArgumentException if the value is not finite
     */
    public static Mass kilograms(double value) {
        return Mass.ofKilograms(value);
    }

    /**
     * A mass [g].
     *
     * @param value the number [g]
     * @return the mass
     * @throws IllegalArgumentException if the value is not finite
     */
    public static Mass grams(double value) {
        return Mass.ofGrams(value);
    }

    /**
     * A mass [oz].
     *
     * @param value the number [oz]
     * @return the mass
     * @throws IllegalArgumentException if the value is not finite
     */
    public static Mass ounces(double value) {
        return Mass.ofOunces(value);
    }

    /**
     * A mass [lb].
     *
     * @param value the number [lb]
     * @return the mass
     * @throws IllegalArgumentException if the value is not finite
     */
    public static Mass pounds(double value) {
        return Mass.ofPounds(value);
    }

    /**
     * A mass [gr].
     *
     * @param value the number [gr]
     * @return the mass
     * @throws IllegalArgumentException if the value is not finite
     */
    public static Mass grains(double value) {
        return Mass.ofGrains(value);
    }

    /**
     * A temperature [K].
     *
     * @param value the number [K]
     * @return the temperature
     * @throws IllegalArgumentException if the value is not finite or is below absolute zero
     */
    public static Temperature kelvins(double value) {
        return Temperature.ofKelvins(value);
    }

    /**
     * A temperature [degC].
     *
     * @param value the number [degC]
     * @return the temperature
     * @throws IllegalArgumentException if the value is not finite or is below absolute zero
     */
    public static Temperature celsius(double value) {
        return Temperature.ofCelsius(value);
    }

    /**
     * A temperature [degF].
     *
     * @param value the number [degF]
     * @return the temperature
     * @throws IllegalArgumentException if the value is not finite or is below absolute zero
     */
    public static Temperature fahrenheit(double value) {
        return Temperature.ofFahrenheit(value);
    }
}
