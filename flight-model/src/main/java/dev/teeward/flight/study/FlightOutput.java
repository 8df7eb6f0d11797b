package dev.teeward.flight.study;

import dev.teeward.flight.Flight;
import dev.teeward.flight.FlightModel;
import dev.teeward.quantity.AngleUnit;
import dev.teeward.quantity.DurationUnit;
import dev.teeward.quantity.Length;
import dev.teeward.quantity.LengthUnit;
import dev.teeward.quantity.SpeedUnit;
import dev.teeward.quantity.Unit;
import java.util.List;
import java.util.stream.Stream;

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
    LANDING_SPEED("landing_speed", SpeedUnit.METER_PER_SECOND, SpeedUnit.MILE_PER_HOUR, 25.0, 0.5),
    /** The horizontal distance from start to rest, there if the model has a ground [m]. */
    TOTAL("total", LengthUnit.METER, LengthUnit.YARD, 150.0, 4.0),
    /** The total less the carry, there if the model has a ground [m]. */
    RUN("run", LengthUnit.METER, LengthUnit.YARD, 15.0, 4.0);

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
     * The numbers of a model's flights.
     *
     * @param model the model
     * @return all, in their declared order, without {@link #TOTAL} and {@link #RUN} if the model has no ground; unmodifiable
     */
    public static List<FlightOutput> of(FlightModel model) {
        return Stream.of(values())
                .filter(output -> !output.needsGround() || model.ground().isPresent())
                .toList();
    }

    /**
     * Whether only a flight over a {@linkplain FlightModel#withGround ground} has it.
     *
     * @return true for {@link #TOTAL} and {@link #RUN}
     */
    public boolean needsGround() {
        return this == TOTAL || this == RUN;
    }

    /**
     * The number of a flight.
     *
     * @param flight the flight
     * @return its value, in the SI unit
     * @throws IllegalArgumentException if it {@linkplain #needsGround needs the ground} and the flight {@linkplain Flight#total()
     *     has no total}
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
            case TOTAL -> flight.total().map(Length::meters).orElseThrow(this::noTotal);
            case RUN -> flight.run().map(Length::meters).orElseThrow(this::noTotal);
        };
    }

    /** Whether a flight has it. */
    boolean knownOf(Flight flight) {
        return !needsGround() || flight.total().isPresent();
    }

    /** What to say of a flight without it. */
    IllegalArgumentException noTotal() {
        return new IllegalArgumentException(
                "there is no " + key + ": the flight ends with the landing, because its model has"
                        + " no ground (withGround), or it lands where the bounce model has no answer (bounce-outside-model)"
                        + " or does not stop (does-not-stop)");
    }

    /** Its place in an array over all outputs. */
    @SuppressWarnings("EnumOrdinal") // a place in an array that lives no longer than the program
    int place() {
        return ordinal();
    }
}
