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
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * Adds to each shot what follows from its readings, and never replaces a reading that is there.
 *
 * <p><b>Derived</b> ({@link Origin#DERIVED}), from readings that are not themselves computed:
 *
 * <pre>
 *   smash factor  = ball speed / club speed
 *   face to path  = face angle - club path
 *   spin loft     = angle in space between face normal and head velocity:
 *                   cos = sin(loft) sin(attack) + cos(loft) cos(attack) cos(face - path)
 *   curve         = side cos(start) - sqrt(carry^2 - side^2) sin(start)
 * </pre>
 *
 * <p><b>Computed</b> ({@link Origin#COMPUTED}), where ball speed, launch angle and spin rate are there: carry, apex, flight
 * time, descent angle and landing speed by the flight model in the air and wind of the session, with a missing start
 * direction or axis tilt taken as 0; side and curve only if both of these are there. The total distance only if asked for: with a flight model that has a
 * {@linkplain FlightModel#withGround ground}, and if start direction and axis tilt are there; it is the carry that the shot then
 * has, measured or computed, plus the computed run.
 *
 * <p><b>Aim.</b> If the session says where the golfer aimed, club path, face angle, start direction, side and wind are first
 * given relative to that aim; they keep their origin. The session that comes out has an aim offset of 0 and a remark with
 * the old one, so that completing it again changes nothing; the original numbers are those of the session that went in.
 *
 * <p><b>Warnings</b> beside those of {@link SessionAir}: {@code aim-turned}, {@code aim-not-turned}, {@code not-flown}
 * (names the shot), {@code axis-tilt-assumed}, and those of the flights, such as {@code spin-ratio-outside-model}, once for
 * the session with the number of shots.
 *
 * <pre>{@code
 * Completion completion = SessionCompleter.withDefaults().complete(session);
 * Session complete = completion.session();
 * }</pre>
 *
 * <p>Immutable, and thread-safe if the aerodynamic model is.
 */
public final class SessionCompleter {
    private static final SessionCompleter DEFAULTS = new SessionCompleter(FlightModel.standard());
    private static final Metric[] BY_DEFINITION = {
        Metric.SMASH_FACTOR, Metric.SPIN_LOFT, Metric.FACE_TO_PATH, Metric.CURVE
    };

    private final FlightModel model;

    private SessionCompleter(FlightModel model) {
        this.model = Objects.requireNonNull(model, "model");
    }

    /**
     * A standard ball over level ground.
     *
     * @return the procedure
     */
    public static SessionCompleter withDefaults() {
        return DEFAULTS;
    }

    /**
     * The same procedure with another flight model.
     *
     * @param value ball, landing elevation, gravity and ground; its air and wind are replaced by those of the session. With a
     *     ground the total is computed too
     * @return the procedure
     */
    public SessionCompleter withFlightModel(FlightModel value) {
        return new SessionCompleter(value);
    }

    /**
     * Completes a session.
     *
     * @param session the session
     * @return the session with the readings added, and what to know about them
     * @throws IllegalArgumentException as {@link SessionAir#of(Session)} does
     */
    public Completion complete(Session session) {
        List<Warning> warnings = new ArrayList<>();
        Session seen = AimLine.turned(session, warnings);
        SessionFlights flights = SessionFlights.of(seen, model);
        Tally tally = new Tally();
        List<Shot> shots = new ArrayList<>();
        for (Shot shot : seen.shots()) {
            shots.add(fly(Derivation.with(shot, BY_DEFINITION), flights, tally));
        }
        if (tally.flown > 0) {
            warnings.addAll(flights.air().warnings());
        }
        tally.report(warnings);
        return new Completion(seen.withShots(ShotSet.of(shots)), flights.air(), warnings);
    }

    private static Shot fly(Shot shot, SessionFlights flights, Tally tally) {
        Optional<Flight> flown;
        try {
            flown = Missing.anyIn(shot, flights.model()) ? flights.fly(shot) : Optional.empty();
        } catch (FlightException e) {
            tally.notFlown(shot, String.valueOf(e.getMessage()));
            return shot;
        }
        if (flown.isEmpty()) {
            return shot;
        }
        Flight flight = flown.get();
        if (flight.warnings().stream().anyMatch(w -> w.code().equals("lands-at-once"))) {
            tally.notFlown(shot, "the ball does not rise, and there is no model of how it rolls");
            return shot;
        }
        tally.flown++;
        tally.add(flight.warnings());
        boolean direction = shot.has(Metric.START_DIRECTION) && shot.has(Metric.AXIS_TILT);
        if (!shot.has(Metric.AXIS_TILT)) {
            tally.withoutTilt++;
        }
        Shot.Builder complete = shot.toBuilder();
        Missing.results(shot, flight, direction).forEach((metric, value) -> {
            if (shot.has(metric)) {
                return;
            }
            if (metric.allows(value)) {
                complete.reading(metric, Reading.of(value, Origin.COMPUTED));
            } else {
                tally.notFlown(shot, "the computed " + metric.label() + " lies outside what is believed");
            }
        });
        return complete.build();
    }

    /** What a flight tells about a shot. */
    private static final class Missing {
        private static final Metric[] ALWAYS = {
            Metric.CARRY, Metric.APEX, Metric.FLIGHT_TIME, Metric.DESCENT_ANGLE, Metric.LANDING_SPEED
        };

        private Missing() {}

        static boolean anyIn(Shot shot, FlightModel model) {
            for (Metric metric : ALWAYS) {
                if (!shot.has(metric)) {
                    return true;
                }
            }
            return !shot.has(Metric.SIDE)
                    || !shot.has(Metric.CURVE)
                    || (model.ground().isPresent() && !shot.has(Metric.TOTAL));
        }

        static Map<Metric, Double> results(Shot shot, Flight flight, boolean direction) {
            Map<Metric, Double> results = new EnumMap<>(Metric.class);
            results.put(Metric.CARRY, flight.carry().meters());
            results.put(Metric.APEX, flight.apex().meters());
            results.put(Metric.FLIGHT_TIME, flight.flightTimeSeconds());
            results.put(Metric.DESCENT_ANGLE, flight.descentAngle().radians());
            results.put(Metric.LANDING_SPEED, flight.landingSpeed().metersPerSecond());
            if (direction) {
                results.put(Metric.SIDE, flight.side().meters());
                results.put(Metric.CURVE, flight.curve().meters());
                double carry = shot.has(Metric.CARRY)
                        ? shot.value(Metric.CARRY)
                        : flight.carry().meters();
                flight.run().ifPresent(run -> results.put(Metric.TOTAL, carry + run.meters()));
            }
            return results;
        }
    }

    /** Counts what is said once for the whole session. */
    private static final class Tally {
        private int flown;
        private int withoutTilt;
        private final Map<String, Integer> codes = new LinkedHashMap<>();
        private final Map<String, String> first = new LinkedHashMap<>();
        private final List<Warning> named = new ArrayList<>();

        void notFlown(Shot shot, String why) {
            named.add(Warning.of(
                    "not-flown",
                    "shot " + shot.number() + " with " + shot.club() + " stays without computed results: " + why));
        }

        void add(List<Warning> warnings) {
            for (Warning warning : warnings) {
                codes.merge(warning.code(), 1, Integer::sum);
                first.putIfAbsent(warning.code(), warning.message());
            }
        }

        void report(List<Warning> warnings) {
            if (withoutTilt > 0) {
                warnings.add(Warning.of(
                        "axis-tilt-assumed",
                        withoutTilt + " of " + flown
                                + " computed flights had no axis tilt, which was taken as 0: their side"
                                + " and curve are left out, and a curving shot carries less than computed"));
            }
            codes.forEach((code, count) -> warnings.add(Warning.of(
                    code, count + " of " + flown + " computed flights; the first of them: " + first.get(code))));
            warnings.addAll(named);
        }
    }
}
