package dev.teeward.fitting.report;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.complete.SessionAir;
import dev.teeward.fitting.complete.SessionFlights;
import dev.teeward.flight.Flight;
import dev.teeward.flight.FlightException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The flights of one club: of some single shots, and of the mean launch of all its used shots. */
final class DrawnFlights {
    private static final int MOST_FLIGHTS = 60;
    private static final Metric[] NEEDED = {Metric.BALL_SPEED, Metric.LAUNCH_ANGLE, Metric.SPIN_RATE};
    private static final Metric[] DIRECTIONS = {Metric.START_DIRECTION, Metric.AXIS_TILT};

    private final List<Flown> single;
    private final Optional<Flown> mean;
    private final int launches;

    /**
     * A flight.
     *
     * @param flight the flight
     * @param directed whether start direction and axis tilt were measured, so that its side means something
     */
    record Flown(Flight flight, boolean directed) {}

    private DrawnFlights(List<Flown> single, Optional<Flown> mean, int launches) {
        this.single = single;
        this.mean = mean;
        this.launches = launches;
    }

    static DrawnFlights of(DrawnShots shots, ClubMark mark, SessionFlights flights) {
        List<Shot> launched = shots.all(mark, false, NEEDED);
        List<Flown> single = new ArrayList<>();
        for (Shot shot : DrawnShots.thinned(launched, MOST_FLIGHTS)) {
            fly(flights, shot).ifPresent(single::add);
        }
        boolean oneAir =
                flights.airs().stream().map(SessionAir::description).distinct().count() == 1;
        Optional<Flown> mean = launched.isEmpty() || !oneAir
                ? Optional.empty()
                : fly(flights, meanShot(shots.club(mark).name(), launched));
        return new DrawnFlights(single, mean, launched.size());
    }

    private static Optional<Flown> fly(SessionFlights flights, Shot shot) {
        boolean directed = shot.has(Metric.START_DIRECTION) && shot.has(Metric.AXIS_TILT);
        try {
            return flights.fly(shot).map(flight -> new Flown(flight, directed));
        } catch (FlightException e) {
            return Optional.empty(); // a launch that never comes down is not drawn
        }
    }

    private static Shot meanShot(String club, List<Shot> shots) {
        Shot.Builder mean = Shot.builder(club);
        for (Metric metric : NEEDED) {
            mean.measured(metric, mean(shots, metric));
        }
        for (Metric metric : DIRECTIONS) {
            List<Shot> with = shots.stream().filter(shot -> shot.has(metric)).toList();
            if (!with.isEmpty()) {
                mean.measured(metric, mean(with, metric));
            }
        }
        return mean.build();
    }

    private static double mean(List<Shot> shots, Metric metric) {
        return shots.stream().mapToDouble(shot -> shot.value(metric)).average().orElseThrow();
    }

    /** Single flights, in the order of hitting. */
    List<Flown> single() {
        return single;
    }

    /** The flight of the mean launch. */
    Optional<Flown> mean() {
        return mean;
    }

    /** How many used shots have a launch. */
    int launches() {
        return launches;
    }
}
