package dev.teeward.fitting.complete;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Origin;
import dev.teeward.fitting.Reading;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.ShotSet;
import dev.teeward.flight.Flight;
import dev.teeward.flight.FlightException;
import dev.teeward.flight.FlightModel;
import dev.teeward.flight.LaunchConditions;
import dev.teeward.flight.LaunchTolerance;
import dev.teeward.flight.OtherAir;
import dev.teeward.flight.air.Atmosphere;
import dev.teeward.flight.air.Wind;
import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.Length;
import dev.teeward.quantity.Speed;
import dev.teeward.quantity.SpinRate;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Function;

/**
 * Brings a session into other air: every shot as it would have flown elsewhere, so that days and places can be compared.
 *
 * <p>Each launch is flown in the air of the session and in the other, and the readings are moved by what the model says of the change:
 *
 * <pre>
 *   carry, apex, flight time, landing speed   times the ratio of the computed ones
 *   side, curve, descent angle                plus their difference
 * </pre>
 *
 * <p>{@link OtherAir} says why a ratio, and what its interval holds; the tolerances are those that the session states, else the typical ones.
 * What the session does not have is computed first, by {@link SessionCompleter}. Everything moved is {@link Origin#COMPUTED} in what comes
 * out, and the air written there is the other one. A total is left out, because it hangs on the turf of the place.
 *
 * <p><b>Not modelled:</b> what temperature does to ball, club and golfer; {@code temperature-effects-not-modelled} says so when the
 * two airs differ by more than 5 K. <b>Warnings</b> beside that and those of the completion: {@code not-brought-over}, for a shot
 * whose launch is incomplete or does not land, which loses its results of flight.
 *
 * <pre>{@code
 * SameAir.Result sea = SameAir.standardAt(feet(0.0)).bring(session);
 * sea.session().shots().values(Metric.CARRY);
 * sea.carries().get(0).carry();              // with its interval
 * }</pre>
 *
 * <p>Immutable, and thread-safe if the aerodynamic model is; the same session gives the same bits.
 */
public final class SameAir {
    private static final Metric[] MOVED = {
        Metric.CARRY,
        Metric.APEX,
        Metric.FLIGHT_TIME,
        Metric.LANDING_SPEED,
        Metric.SIDE,
        Metric.CURVE,
        Metric.DESCENT_ANGLE
    };
    private static final Set<Metric> MOVED_SET = Collections.unmodifiableSet(EnumSet.copyOf(Arrays.asList(MOVED)));
    private static final double NOTICEABLE_KELVINS = 5.0;

    private final Atmosphere air;
    private final Length elevation;
    private final Angle windFrom;
    private final Speed windSpeed;
    private final FlightModel model;
    private final OtherAir procedure;
    private final boolean intervals;

    private SameAir(
            Atmosphere air,
            Length elevation,
            Angle windFrom,
            Speed windSpeed,
            FlightModel model,
            OtherAir procedure,
            boolean intervals) {
        this.air = Objects.requireNonNull(air, "air");
        this.elevation = Objects.requireNonNull(elevation, "elevation");
        this.windFrom = windFrom;
        this.windSpeed = windSpeed;
        this.model = Objects.requireNonNull(model, "model");
        this.procedure = Objects.requireNonNull(procedure, "procedure");
        this.intervals = intervals;
    }

    /**
     * Calm air.
     *
     * @param air the other air
     * @param elevation the elevation of the place that has it, in [-500, 9000] m; it is only written down
     * @return the procedure
     */
    public static SameAir of(Atmosphere air, Length elevation) {
        return new SameAir(
                air,
                elevation,
                Angle.ofDegrees(0.0),
                Speed.ofMetersPerSecond(0.0),
                FlightModel.standard(),
                OtherAir.withDefaults(),
                true);
    }

    /**
     * Calm standard air.
     *
     * @param elevation the elevation, in [-500, 9000] m
     * @return the procedure
     * @throws IllegalArgumentException if it lies outside
     */
    public static SameAir standardAt(Length elevation) {
        return of(Atmosphere.standardAt(elevation), elevation);
    }

    /**
     * The air and wind of a session, such as one on the golfer's home course; what it does not say is assumed as
     * {@link SessionAir} says.
     *
     * @param home a session, of which only air and wind count
     * @return the procedure
     * @throws IllegalArgumentException as {@link SessionAir#of(Session)} does
     */
    public static SameAir asIn(Session home) {
        SameAir calm = of(SessionAir.of(home).atmosphere(), home.elevation().orElse(Length.ofMeters(0.0)));
        return home.windFrom().isPresent() && home.windSpeed().isPresent()
                ? calm.withWind(home.windFrom().get(), home.windSpeed().get())
                : calm;
    }

    /**
     * What is moved to the other air, if a shot has it; the rest of a shot does not hang on the air.
     *
     * @return the metrics in their own order, unmodifiable
     */
    public static Set<Metric> metrics() {
        return MOVED_SET;
    }

    /**
     * The flight model.
     *
     * @return ball, landing elevation and gravity
     */
    public FlightModel flightModel() {
        return model;
    }

    /**
     * A copy that gives no intervals, and flies every launch twice only: for those who work out their own.
     *
     * @return the copy, of which {@link Result#carries()} is empty
     */
    public SameAir withoutIntervals() {
        return new SameAir(air, elevation, windFrom, windSpeed, model, procedure, false);
    }

    /**
     * A copy with a wind.
     *
     * @param from where it comes from: 0 headwind, 90 deg from the right, in [-360, 360] deg
     * @param speed its speed, the same at every height, in [0, 50] m/s
     * @return the copy
     */
    public SameAir withWind(Angle from, Speed speed) {
        return new SameAir(air, elevation, from, speed, model, procedure, intervals);
    }

    /**
     * A copy with another flight model.
     *
     * @param value ball, landing elevation and gravity; its air and wind are replaced
     * @return the copy
     */
    public SameAir withFlightModel(FlightModel value) {
        return new SameAir(air, elevation, windFrom, windSpeed, value, procedure, intervals);
    }

    /**
     * A copy with another way to the intervals.
     *
     * @param value number of draws, level, seed and spread of the ball; its tolerances count where the session has none
     * @return the copy
     */
    public SameAir withProcedure(OtherAir value) {
        return new SameAir(air, elevation, windFrom, windSpeed, model, value, intervals);
    }

    /**
     * Brings a session over.
     *
     * @param session the session, in its own air
     * @return the session in the other air, and each carry with its interval
     * @throws IllegalArgumentException as {@link SessionAir#of(Session)} does
     */
    public Result bring(Session session) {
        Completion completion =
                SessionCompleter.withDefaults().withFlightModel(model).complete(session);
        Session seen = completion.session();
        SessionFlights flights = SessionFlights.of(seen, model);
        FlightModel there = model.withAir(air).withWind(Wind.from(windFrom, windSpeed));
        OtherAir draws = procedure.withTolerance(tolerance(session));
        List<Warning> warnings = new ArrayList<>(completion.warnings());
        checkTemperature(flights.airs(), warnings);
        List<Shot> shots = new ArrayList<>();
        List<Carry> carries = new ArrayList<>();
        for (Shot shot : seen.shots()) {
            shots.add(bring(shot, flights.model(shot), there, draws, carries, warnings));
        }
        Session brought = seen.toBuilder()
                .shots(ShotSet.of(shots))
                .elevation(elevation)
                .temperature(air.temperature())
                .humidity(air.relativeHumidity())
                .stationPressure(air.pressure())
                .wind(windFrom, windSpeed)
                .remark("brought over from other air, which was "
                        + (flights.airs().stream()
                                                .map(SessionAir::description)
                                                .distinct()
                                                .count()
                                        > 1L
                                ? "not the same for all shots"
                                : completion.air().description()))
                .build();
        return new Result(brought, List.copyOf(carries), List.copyOf(warnings));
    }

    private Shot bring(
            Shot shot,
            FlightModel here,
            FlightModel there,
            OtherAir draws,
            List<Carry> carries,
            List<Warning> warnings) {
        Shot bare = shot.without(Metric.TOTAL);
        for (Metric metric : MOVED) {
            bare = bare.without(metric);
        }
        LaunchConditions launch = SessionFlights.launch(shot).orElse(null);
        if (launch == null) {
            warnings.add(lost(shot, "ball speed, launch angle or spin rate is missing"));
            return bare;
        }
        Flight first;
        Flight second;
        OtherAir.Result result = null;
        try {
            if (intervals) {
                result = draws.fly(here, there, launch);
            }
            first = result == null ? here.fly(launch) : result.here();
            second = result == null ? there.fly(launch) : result.there();
        } catch (FlightException e) {
            warnings.add(lost(shot, String.valueOf(e.getMessage())));
            return bare;
        }
        Shot moved = bare;
        for (Metric metric : MOVED) {
            OptionalDouble value = moved(shot, metric, first, second);
            if (value.isPresent() && metric.allows(value.getAsDouble())) {
                moved = moved.with(metric, Reading.of(value.getAsDouble(), Origin.COMPUTED));
            }
        }
        if (result != null && shot.has(Metric.CARRY)) {
            Length measured = Length.ofMeters(shot.value(Metric.CARRY));
            carries.add(new Carry(shot.number(), shot.club(), measured, result.carry(measured)));
        }
        return moved;
    }

    private static OptionalDouble moved(Shot shot, Metric metric, Flight here, Flight there) {
        if (!shot.has(metric)) {
            return OptionalDouble.empty();
        }
        double value = shot.value(metric);
        return switch (metric) {
            case CARRY -> times(value, here, there, flight -> flight.carry().meters());
            case APEX -> times(value, here, there, flight -> flight.apex().meters());
            case FLIGHT_TIME -> times(value, here, there, Flight::flightTimeSeconds);
            case LANDING_SPEED ->
                times(value, here, there, flight -> flight.landingSpeed().metersPerSecond());
            case SIDE ->
                OptionalDouble.of(value + there.side().meters() - here.side().meters());
            case CURVE ->
                OptionalDouble.of(value + there.curve().meters() - here.curve().meters());
            default ->
                OptionalDouble.of(value
                        + there.descentAngle().radians()
                        - here.descentAngle().radians());
        };
    }

    private static OptionalDouble times(double value, Flight here, Flight there, Function<Flight, Double> of) {
        double from = of.apply(here);
        return from > 0.0 ? OptionalDouble.of(value * of.apply(there) / from) : OptionalDouble.empty();
    }

    private static Warning lost(Shot shot, String why) {
        return Warning.of(
                "not-brought-over",
                "shot " + shot.number() + " with " + shot.club() + " stays without results of flight: " + why);
    }

    private LaunchTolerance tolerance(Session session) {
        LaunchTolerance tolerance = procedure.tolerance();
        tolerance = or(session, Metric.BALL_SPEED, tolerance, (t, v) -> t.withBallSpeed(Speed.ofMetersPerSecond(v)));
        tolerance = or(session, Metric.LAUNCH_ANGLE, tolerance, (t, v) -> t.withLaunchAngle(Angle.ofRadians(v)));
        tolerance = or(session, Metric.START_DIRECTION, tolerance, (t, v) -> t.withStartDirection(Angle.ofRadians(v)));
        tolerance = or(session, Metric.SPIN_RATE, tolerance, (t, v) -> t.withSpinRate(SpinRate.ofRadiansPerSecond(v)));
        return or(session, Metric.AXIS_TILT, tolerance, (t, v) -> t.withAxisTilt(Angle.ofRadians(v)));
    }

    /** A change of the tolerance by what the session states [SI]. */
    private interface Change {
        LaunchTolerance apply(LaunchTolerance tolerance, double si);
    }

    private static LaunchTolerance or(Session session, Metric metric, LaunchTolerance tolerance, Change change) {
        OptionalDouble stated = session.tolerance(metric);
        return stated.isPresent() ? change.apply(tolerance, stated.getAsDouble()) : tolerance;
    }

    /** The greatest change counts, where sessions in several airs were combined. */
    private void checkTemperature(List<SessionAir> from, List<Warning> warnings) {
        double change = from.stream()
                .map(a -> air.temperature().kelvins()
                        - a.atmosphere().temperature().kelvins())
                .max(Comparator.comparingDouble(Math::abs))
                .orElse(0.0);
        if (Math.abs(change) > NOTICEABLE_KELVINS) {
            warnings.add(Warning.of(
                    "temperature-effects-not-modelled",
                    String.format(
                            Locale.ROOT,
                            "the other air is %.0f K %s: what that does to ball, club and golfer is not modelled",
                            Math.abs(change),
                            change > 0.0 ? "warmer" : "colder")));
        }
    }

    /**
     * The carry of one shot in the other air.
     *
     * @param shot the number of the shot
     * @param club the club
     * @param from the carry in the air of the session, measured or computed
     * @param carry the carry in the other air, with its interval
     */
    public record Carry(int shot, String club, Length from, Estimate carry) {}

    /**
     * A session in other air.
     *
     * @param session the session brought over
     * @param carries the carries in order of the shots, unmodifiable
     * @param warnings what to know, unmodifiable
     */
    public record Result(Session session, List<Carry> carries, List<Warning> warnings) {}
}
