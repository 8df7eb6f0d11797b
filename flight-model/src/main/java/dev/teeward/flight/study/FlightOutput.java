package dev.teeward.flight.study;

import dev.teeward.flight.Flight;
import dev.teeward.quantity.AngleUnit;
import dev.teeward.quantity.DurationUnit;
import dev.teeward.quantity.LengthUnit;
import dev.teeward.quantity.SpeedUnit;
import dev.teeward.quantity.Unit;

/**
 * A number that a flight ends in, and that a device or a person may observe: what is studied here.
 *
 * <p>Each has a key for files, an SI unit, the unit of tables, a natural scale, and the standard deviation assumed of one
 * observation where a study is told no other. The scales are round sizes of a full shot; they set the steps of differences and
 * say what counts as a small derivative. The standard deviations are judgements, common practice without a source.
 *
 * <pre>{@code
 * FlightOutput.CARRY.of(flight);          // metres
 * FlightOutput.CARRY.unit();              // LengthUnit.METER
 * FlightOutput.CARRY.tableUnit();         // LengthUnit.YARD
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
@SuppressWarnings("ImmutableEnumChecker") // the units are enumeration constants
public enum FlightOutput {
    /** The horizontal distance from start to landing [m]. */
    CARRY("carry", LengthUnit.METER, LengthUnit.YARD, 150.0, 2.0),
    /** The offset of the landing from the target line, right positive [m]. */
    SIDE("side", LengthUnit.METER, LengthUnit.YARD, 10.0, 2.0),
    /** The offset of the landing from the plane of the start direction, right positive [m]. */
    CURVE("curve", LengthUnit.METER, LengthUnit.YARD, 10.0, 2.0),
    /** The greatest height above the start [m]. */
    APEX("apex", LengthUnit.METER, LengthUnit.YARD, 30.0, 1.0),
    /** The angle below the horizontal at landing, down positive [rad]. */
    DESCENT_ANGLE("descent_angle", AngleUnit.RADIAN, AngleUnit.DEGREE, 0.8, 0.02),
    /** The time from launch to landing [s]. */
    FLIGHT_TIME("flight_time", DurationUnit.SECOND, DurationUnit.SECOND, 6.0, 0.1),
    /** The speed over the ground at landing [m/s]. */
    LANDING_SPEED("landing_speed", SpeedUnit.METER_PER_SECOND, SpeedUnit.MILE_PER_HOUR, 25.0, 0.5);

    private final String key;

    private final Unit unit;

    private final Unit tableUnit;

    private final double scale;
    private final double standardDeviation;

    FlightOutput(String key, Unit unit, Unit tableUnit, double scale, double standardDeviation) {
        this.key = key;
        this.unit = unit;
        this.tableUnit = tableUnit;
        this.scale = scale;
        this.standardDeviation = standardDeviation;
    }

    /**
     * The name in files, before the unit, as in {@code carry_yd}.
     *
     * @return lower-case words joined by underscores
     */
    public String key() {
        return key;
    }

    /**
     * The SI unit of {@link #of}.
     *
     * @return the unit
     */
    public Unit unit() {
        return unit;
    }

    /**
     * The unit in which tables show it.
     *
     * @return the unit
     */
    public Unit tableUnit() {
        return tableUnit;
    }

    /**
     * A round size of it on a full shot.
     *
     * @return the scale, in the SI unit
     */
    public double scale() {
        return scale;
    }

    /**
     * The standard deviation of one observation where none is given: a judgement, common practice, no source.
     *
     * @return the standard deviation, in the SI unit
     */
    public double standardDeviation() {
        return standardDeviation;
    }

    /**
     * The number of a flight.
     *
     * @param flight the flight
     * @return its value, in the SI unit
     */
    public double of(Flight flight) {
        return switch (this) {
            case CARRY -> flight.carry().meters();
            case SIDE -> flight.side().meters();
            case CURVE -> flight.curve().meters();
            case APEX -> flight.apex().meters();
            case DESCENT_ANGLE -> flight.descentAngle().radians();
            case FLIGHT_TIME -> flight.flightTimeSeconds();
            case LANDING_SPEED -> flight.landingSpeed().metersPerSecond();
        };
    }

    /** Its place in an array over all outputs. */
    @SuppressWarnings("EnumOrdinal") // a place in an array that lives no longer than the program
    int place() {
        return ordinal();
    }
}
