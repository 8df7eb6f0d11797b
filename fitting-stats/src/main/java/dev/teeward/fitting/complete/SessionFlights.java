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
 * Flies the measured launches of a session in its air and wind.
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

    private SessionFlights(SessionAir air, FlightModel model) {
        this.air = air;
        this.model = model;
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
        return new SessionFlights(air, model.withAir(air.atmosphere()).withWind(air.wind()));
    }

    /**
     * The air and wind.
     *
     * @return the air of the session
     */
    public SessionAir air() {
        return air;
    }

    /**
     * The model with the air and wind of the session.
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
        return launch(shot).map(model::fly);
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
