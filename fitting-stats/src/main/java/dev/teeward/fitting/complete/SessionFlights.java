package dev.teeward.fitting.complete;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Origin;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.Shot;
import dev.teeward.flight.Flight;
import dev.teeward.flight.FlightException;
import dev.teeward.flight.FlightModel;
import dev.teeward.flight.LaunchConditions;
import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Speed;
import dev.teeward.quantity.SpinRate;
import java.util.List;
import java.util.Optional;

/**
 * Flies the measured launches of a session in its air and wind; those of a {@linkplain Session#combine combined} session each in
 * the air and wind of its own part.
 *
 * <p>A launch needs ball speed, launch angle and spin rate. A start direction or an axis tilt that is missing counts as 0:
 * good for carry, height and time, not for side and curve.
 *
 * <pre>{@code
 * SessionFlights flights = SessionFlights.of(session);
 * Optional<Flight> flight = flights.fly(shot);   // empty if the launch was not measured in full
 * }</pre>
 *
 * <p>Immutable, and thread-safe if the aerodynamic model is.
 */
public final class SessionFlights {
    private static final List<Metric> NEEDED = List.of(Metric.BALL_SPEED, Metric.LAUNCH_ANGLE, Metric.SPIN_RATE);

    private final SessionAir air;
    private final FlightModel model;
    private final List<SessionAir> partAirs;
    private final List<FlightModel> partModels;

    private SessionFlights(SessionAir air, FlightModel model, List<SessionAir> partAirs, List<FlightModel> partModels) {
        this.air = air;
        this.model = model;
        this.partAirs = List.copyOf(partAirs);
        this.partModels = List.copyOf(partModels);
    }

    /**
     * Flights of a standard ball.
     *
     * @param session whose air and wind the balls fly through
     * @return the flights
     * @throws IllegalArgumentException as {@link SessionAir#of(Session)} does
     */
    public static SessionFlights of(Session session) {
        return of(session, FlightModel.standard());
    }

    /**
     * Flights by a model of one's own.
     *
     * @param session whose air and wind the balls fly through
     * @param model ball, landing elevation and gravity; its air and wind are replaced
     * @return the flights
     * @throws IllegalArgumentException as {@link SessionAir#of(Session)} does
     */
    public static SessionFlights of(Session session, FlightModel model) {
        SessionAir air = SessionAir.of(session);
        List<SessionAir> airs =
                AimLine.parts(session).stream().map(SessionAir::of).toList();
        return new SessionFlights(
                air,
                through(model, air),
                airs,
                airs.stream().map(a -> through(model, a)).toList());
    }

    private static FlightModel through(FlightModel model, SessionAir air) {
        return model.withAir(air.atmosphere()).withWind(air.wind());
    }

    /**
     * The air and wind.
     *
     * @return the air of the session as a whole; see {@link #airs()} for one that was combined
     */
    public SessionAir air() {
        return air;
    }

    /**
     * The air and wind of each of the {@linkplain Session#parts() parts} of a combined session.
     *
     * @return the airs in order, unmodifiable; that of the session alone if it was not combined
     */
    public List<SessionAir> airs() {
        return partAirs.isEmpty() ? List.of(air) : partAirs;
    }

    /**
     * The model with the air and wind that a shot met.
     *
     * @param shot the shot
     * @return the model for its part of a combined session, else {@link #model()}
     */
    public FlightModel model(Shot shot) {
        int part = shot.part().orElse(-1);
        return part >= 0 && part < partModels.size() ? partModels.get(part) : model;
    }

    /**
     * The model with the air and wind of the session as a whole.
     *
     * @return the model
     */
    public FlightModel model() {
        return model;
    }

    /**
     * Flies one shot.
     *
     * @param shot the shot
     * @return its flight; empty if ball speed, launch angle or spin rate is missing
     * @throws FlightException if it does not come to the landing elevation, as {@link FlightModel#fly} says
     */
    public Optional<Flight> fly(Shot shot) {
        return launch(shot).map(model(shot)::fly);
    }

    /**
     * The launch of one shot.
     *
     * @param shot the shot
     * @return its launch conditions; empty if ball speed, launch angle or spin rate is missing
     */
    public static Optional<LaunchConditions> launch(Shot shot) {
        for (Metric metric : NEEDED) {
            if (!shot.has(metric)) {
                return Optional.empty();
            }
        }
        // Going through the unit of the limit may overstep it by one rounding.
        double spin = Math.min(
                SpinRate.ofRadiansPerSecond(shot.value(Metric.SPIN_RATE)).rpm(), 20_000.0);
        return Optional.of(LaunchConditions.builder()
                .ballSpeed(Speed.ofMetersPerSecond(shot.value(Metric.BALL_SPEED)))
                .launchAngle(Angle.ofRadians(shot.value(Metric.LAUNCH_ANGLE)))
                .spinRate(SpinRate.ofRpm(spin))
                .startDirection(Angle.ofRadians(or0(shot, Metric.START_DIRECTION)))
                .axisTilt(Angle.ofRadians(or0(shot, Metric.AXIS_TILT)))
                .build());
    }

    static boolean measured(Shot shot, Metric metric) {
        return shot.reading(metric).filter(r -> r.origin() == Origin.MEASURED).isPresent();
    }

    private static double or0(Shot shot, Metric metric) {
        return shot.has(metric) ? shot.value(metric) : 0.0;
    }
}
