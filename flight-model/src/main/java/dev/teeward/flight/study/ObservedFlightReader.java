package dev.teeward.flight.study;

import dev.teeward.flight.FlightModel;
import dev.teeward.flight.LaunchConditions;
import dev.teeward.flight.air.Atmosphere;
import dev.teeward.flight.air.Wind;
import dev.teeward.flight.ground.Ground;
import dev.teeward.flight.ground.TurfClass;
import dev.teeward.quantity.Angle;
import dev.teeward.quantity.AngleUnit;
import dev.teeward.quantity.DurationUnit;
import dev.teeward.quantity.Length;
import dev.teeward.quantity.LengthUnit;
import dev.teeward.quantity.Pressure;
import dev.teeward.quantity.PressureUnit;
import dev.teeward.quantity.RatioUnit;
import dev.teeward.quantity.Speed;
import dev.teeward.quantity.SpeedUnit;
import dev.teeward.quantity.SpinRate;
import dev.teeward.quantity.SpinRateUnit;
import dev.teeward.quantity.Temperature;
import dev.teeward.quantity.TemperatureUnit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Reads observed flights, and points of their paths, from comma-separated values (RFC 4180, one record a line).
 *
 * <p>The first line names the columns; lines that begin with {@code #} are notes. The unit ends the name of a column, as in
 * {@code carry_yd} or {@code carry_m}; an empty cell is absent. A flight has:
 *
 * <ul>
 *   <li>{@code ball_speed}, {@code launch_angle}, {@code spin_rate}, which are needed; {@code start_direction} and
 *       {@code axis_tilt}, 0 if absent and then no {@code side}, nor without the tilt {@code curve};
 *   <li>what was seen: {@code carry}, {@code side}, {@code curve}, {@code apex}, {@code descent_angle}, {@code flight_time},
 *       {@code landing_speed}; and {@code total} and {@code run}, for which {@code turf} is needed: the kind of turf, level at the
 *       landing elevation, one of {@code fairway}, {@code firm-fairway}, {@code soft-fairway}, {@code rough}, {@code green},
 *       {@code firm-green}, {@code soft-green};
 *   <li>the air: {@code elevation}, or {@code pressure} (of the place itself), {@code temperature} and {@code humidity} (0 to 1,
 *       or {@code humidity_pct}); what is absent is that of the standard atmosphere at the elevation, dry; {@code wind_speed} with
 *       {@code wind_from}; {@code landing_elevation};
 *   <li>{@code flight}, its name, and {@code group}, as text without a unit.
 * </ul>
 *
 * <p>Points of paths are a table of their own: {@code flight} with the name, {@code time}, {@code downrange}, {@code height},
 * {@code side}, all needed, as in {@code flight,time_s,downrange_m,height_m,side_m}.
 *
 * <pre>{@code
 * List<ObservedFlight> flights = ObservedFlightReader.flights("ball_speed_mph,launch_angle_deg,spin_rate_rpm,carry_yd\n"
 *     + "118,17.2,6400,162.5\n");
 * }</pre>
 *
 * <p>Every error is an {@link IllegalArgumentException} that names line and column; one about a unit lists the columns that are
 * taken. Stateless and thread-safe.
 */
public final class ObservedFlightReader {
    private static final String FLIGHT = "flight";
    private static final String GROUP = "group";
    private static final String TURF = "turf";
    private static final PlainTable.Quantity BALL_SPEED = speed("ball_speed");
    private static final PlainTable.Quantity LAUNCH_ANGLE = angle("launch_angle");
    private static final PlainTable.Quantity START_DIRECTION = angle("start_direction");
    private static final PlainTable.Quantity SPIN_RATE =
            new PlainTable.Quantity("spin_rate", SpinRateUnit.RADIAN_PER_SECOND);
    private static final PlainTable.Quantity AXIS_TILT = angle("axis_tilt");
    private static final PlainTable.Quantity ELEVATION = length("elevation");
    private static final PlainTable.Quantity PRESSURE = new PlainTable.Quantity("pressure", PressureUnit.PASCAL);
    private static final PlainTable.Quantity TEMPERATURE =
            new PlainTable.Quantity("temperature", TemperatureUnit.KELVIN);
    private static final PlainTable.Quantity HUMIDITY = new PlainTable.Quantity("humidity", RatioUnit.ONE);
    private static final PlainTable.Quantity WIND_SPEED = speed("wind_speed");
    private static final PlainTable.Quantity WIND_FROM = angle("wind_from");
    private static final PlainTable.Quantity LANDING_ELEVATION = length("landing_elevation");
    private static final PlainTable.Quantity TIME = new PlainTable.Quantity("time", DurationUnit.SECOND);
    private static final PlainTable.Quantity DOWNRANGE = length("downrange");
    private static final PlainTable.Quantity HEIGHT = length("height");
    private static final PlainTable.Quantity SIDE = length("side");
    private static final List<PlainTable.Quantity> OF_FLIGHTS = Stream.concat(
                    Stream.of(
                            BALL_SPEED,
                            LAUNCH_ANGLE,
                            START_DIRECTION,
                            SPIN_RATE,
                            AXIS_TILT,
                            ELEVATION,
                            PRESSURE,
                            TEMPERATURE,
                            HUMIDITY,
                            WIND_SPEED,
                            WIND_FROM,
                            LANDING_ELEVATION),
                    Stream.of(FlightOutput.values()).map(o -> new PlainTable.Quantity(o.key(), o.unit())))
            .toList();

    private static final Map<String, TurfClass> KINDS = Stream.of(TurfClass.values())
            .collect(Collectors.toMap(
                    turf -> turf.name().toLowerCase(Locale.ROOT).replace('_', '-'),
                    turf -> turf,
                    (one, other) -> one,
                    LinkedHashMap::new));

    private ObservedFlightReader() {}

    private static PlainTable.Quantity length(String key) {
        return new PlainTable.Quantity(key, LengthUnit.METER);
    }

    private static PlainTable.Quantity speed(String key) {
        return new PlainTable.Quantity(key, SpeedUnit.METER_PER_SECOND);
    }

    private static PlainTable.Quantity angle(String key) {
        return new PlainTable.Quantity(key, AngleUnit.RADIAN);
    }

    /**
     * Reads flights.
     *
     * @param csv the table
     * @return the flights, in order
     * @throws IllegalArgumentException if the table is wrong; the message names line and column
     */
    public static List<ObservedFlight> flights(String csv) {
        PlainTable table = new PlainTable(csv);
        table.onlyKnown(List.of(FLIGHT, GROUP, TURF), OF_FLIGHTS);
        List<ObservedFlight> flights = new ArrayList<>();
        for (int row = 0; row < table.rows(); row++) {
            try {
                flights.add(flight(table, row));
            } catch (IllegalArgumentException e) {
                String message = String.valueOf(e.getMessage());
                throw message.startsWith("line ")
                        ? e
                        : new IllegalArgumentException("line " + table.line(row) + ": " + message, e);
            }
        }
        return List.copyOf(flights);
    }

    /**
     * Reads points of paths, and puts them to the flights of the same name.
     *
     * @param flights the flights, each with a name of its own
     * @param csv the table of points
     * @return the flights, in order, those with points holding them
     * @throws IllegalArgumentException if the table is wrong, or a point belongs to no flight or to several
     */
    public static List<ObservedFlight> withTracks(List<ObservedFlight> flights, String csv) {
        PlainTable table = new PlainTable(csv);
        table.onlyKnown(List.of(FLIGHT), List.of(TIME, DOWNRANGE, HEIGHT, SIDE));
        Map<String, List<ObservedFlight.TrackPoint>> points = new LinkedHashMap<>();
        for (int row = 0; row < table.rows(); row++) {
            String name = table.text(row, FLIGHT);
            long bearers = flights.stream().filter(f -> f.name().equals(name)).count();
            if (bearers != 1) {
                throw new IllegalArgumentException("line " + table.line(row) + ": there are " + bearers
                        + " flights of the name \"" + name + "\", but a point belongs to one");
            }
            points.computeIfAbsent(name, n -> new ArrayList<>())
                    .add(new ObservedFlight.TrackPoint(
                            needed(table, row, TIME),
                            needed(table, row, DOWNRANGE),
                            needed(table, row, HEIGHT),
                            needed(table, row, SIDE)));
        }
        return flights.stream()
                .map(f -> points.containsKey(f.name()) ? f.withTrack(points.getOrDefault(f.name(), List.of())) : f)
                .toList();
    }

    private static ObservedFlight flight(PlainTable table, int row) {
        LaunchConditions launch = LaunchConditions.builder()
                .ballSpeed(Speed.ofMetersPerSecond(needed(table, row, BALL_SPEED)))
                .launchAngle(Angle.ofRadians(needed(table, row, LAUNCH_ANGLE)))
                .startDirection(Angle.ofRadians(table.si(row, START_DIRECTION).orElse(0.0)))
                .spinRate(SpinRate.ofRadiansPerSecond(needed(table, row, SPIN_RATE)))
                .axisTilt(Angle.ofRadians(table.si(row, AXIS_TILT).orElse(0.0)))
                .build();
        FlightModel conditions = FlightModel.standard()
                .withAir(air(table, row))
                .withWind(wind(table, row))
                .withLandingElevation(
                        Length.ofMeters(table.si(row, LANDING_ELEVATION).orElse(0.0)));
        String turf = table.text(row, TURF);
        if (!turf.isEmpty()) {
            conditions = conditions.withGround(Ground.of(turf(turf)));
        }
        ObservedFlight seen = ObservedFlight.of(launch)
                .withName(table.text(row, FLIGHT))
                .withGroup(table.text(row, GROUP))
                .withConditions(conditions);
        for (FlightOutput output : FlightOutput.values()) {
            OptionalDouble value = table.si(row, new PlainTable.Quantity(output.key(), output.unit()));
            if (value.isPresent()) {
                if (output.needsGround() && turf.isEmpty()) {
                    throw new IllegalArgumentException(
                            output.key() + " needs the column turf, the kind of turf the ball"
                                    + " came to rest on: one of " + KINDS.keySet());
                }
                if (output == FlightOutput.SIDE) {
                    measured(table, row, output, START_DIRECTION);
                }
                if (output == FlightOutput.SIDE || output == FlightOutput.CURVE) {
                    measured(table, row, output, AXIS_TILT);
                }
                seen = seen.with(output, value.getAsDouble());
            }
        }
        return seen;
    }

    private static TurfClass turf(String name) {
        TurfClass turf = KINDS.get(name);
        if (turf == null) {
            throw new IllegalArgumentException("turf must be one of " + KINDS.keySet() + ", but was \"" + name + "\"");
        }
        return turf;
    }

    private static Atmosphere air(PlainTable table, int row) {
        Atmosphere air =
                Atmosphere.standardAt(Length.ofMeters(table.si(row, ELEVATION).orElse(0.0)));
        OptionalDouble temperature = table.si(row, TEMPERATURE);
        OptionalDouble pressure = table.si(row, PRESSURE);
        OptionalDouble humidity = table.si(row, HUMIDITY);
        if (temperature.isPresent()) {
            air = air.withTemperature(Temperature.ofKelvins(temperature.getAsDouble()));
        }
        if (pressure.isPresent()) {
            air = Atmosphere.ofStationPressure(
                    Pressure.ofPascals(pressure.getAsDouble()), air.temperature(), air.relativeHumidity());
        }
        return humidity.isPresent() ? air.withRelativeHumidity(humidity.getAsDouble()) : air;
    }

    private static Wind wind(PlainTable table, int row) {
        OptionalDouble speed = table.si(row, WIND_SPEED);
        OptionalDouble from = table.si(row, WIND_FROM);
        if (speed.isPresent() != from.isPresent()) {
            throw new IllegalArgumentException("wind_speed and wind_from go together: a wind has both or is absent");
        }
        return speed.isEmpty()
                ? Wind.calm()
                : Wind.from(Angle.ofRadians(from.getAsDouble()), Speed.ofMetersPerSecond(speed.getAsDouble()));
    }

    /** An empty cell is not a straight ball: against it a side would be all error. */
    private static void measured(PlainTable table, int row, FlightOutput output, PlainTable.Quantity quantity) {
        if (table.si(row, quantity).isEmpty()) {
            throw new IllegalArgumentException(output.key() + " needs the launch's " + quantity.key()
                    + ", whose column is " + PlainTable.names(quantity) + "; write 0 if it was 0, or leave "
                    + output.key() + " out");
        }
    }

    private static double needed(PlainTable table, int row, PlainTable.Quantity quantity) {
        return table.si(row, quantity)
                .orElseThrow(() -> new IllegalArgumentException("line " + table.line(row) + ": " + quantity.key()
                        + " is needed; its column is " + PlainTable.names(quantity)));
    }
}
