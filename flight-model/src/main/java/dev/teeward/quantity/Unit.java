package dev.teeward.quantity;

/**
 * One unit of measurement: its symbol, and the way to SI and back.
 *
 * <p>There is one enumeration of units for each dimension ({@link LengthUnit}, {@link SpeedUnit}, {@link AngleUnit},
 * {@link SpinRateUnit}, {@link TemperatureUnit}, {@link PressureUnit}, {@link MassUnit}, and for plain numbers
 * {@link DurationUnit} and {@link RatioUnit}). All of them are linear through zero except temperature.
 *
 * <pre>{@code
 * double si = LengthUnit.YARD.toSi(150.0);         // 137.16
 * double feet = LengthUnit.FOOT.fromSi(si);        // 450.0
 * String column = "carry_" + LengthUnit.YARD.suffix(); // carry_yd
 * }</pre>
 *
 * <p>The set of units is closed. All are enumeration constants: immutable, thread-safe and serializable.
 */
public sealed interface Unit
        permits LengthUnit,
                SpeedUnit,
                AngleUnit,
                SpinRateUnit,
                TemperatureUnit,
                PressureUnit,
                MassUnit,
                DurationUnit,
                RatioUnit {
    /**
     * The symbol as it is printed after a number.
     *
     * @return the symbol, ASCII, such as {@code yd} or {@code m/s}; empty for a pure number
     */
    String symbol();

    /**
     * The form of the symbol that ends a column name.
     *
     * @return lower-case letters only, such as {@code yd} or {@code mps}; empty for a pure number
     */
    String suffix();

    /**
     * From this unit to SI.
     *
     * @param value a number in this unit
     * @return the same in SI; not a number or infinite if the argument is
     */
    double toSi(double value);

    /**
     * From SI to this unit.
     *
     * @param si a number in SI
     * @return the same in this unit; not a number or infinite if the argument is
     */
    double fromSi(double si);

    /**
     * The SI unit of the same dimension; two units can be converted into each other if and only if these are equal.
     *
     * @return the SI unit
     */
    Unit siUnit();
}
