package dev.teeward.fitting.gapping;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.ShotSet;
import dev.teeward.fitting.complete.SessionFlights;
import dev.teeward.flight.Flight;
import dev.teeward.flight.FlightException;
import dev.teeward.flight.FlightModel;
import dev.teeward.flight.impact.ClubHead;
import dev.teeward.flight.impact.Delivery;
import dev.teeward.flight.impact.ImpactModel;
import dev.teeward.flight.impact.ImpliedDelivery;
import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Length;
import dev.teeward.quantity.Speed;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;

/**
 * The swings with one club, ready to be struck and flown again with something changed. A delivery is as measured if club
 * speed, attack angle and dynamic loft are there (a missing path or face is on the target line, a strike counts if both its
 * parts were measured and the head's inertia is known); else it is what the launch implies for a central strike.
 */
final class ClubSwings {
    private static final List<Metric> NEEDED = List.of(Metric.CLUB_SPEED, Metric.ATTACK_ANGLE, Metric.DYNAMIC_LOFT);

    private final ClubHead head;
    private final ImpactModel impact;
    private final List<Swing> swings;
    private final int implied;
    private final int missing;

    private record Swing(Delivery delivery, FlightModel model) {}

    private ClubSwings(ClubHead head, ImpactModel impact, List<Swing> swings, int implied, int missing) {
        this.head = head;
        this.impact = impact;
        this.swings = swings;
        this.implied = implied;
        this.missing = missing;
    }

    static ClubSwings of(ShotSet shots, ClubHead head, ImpactModel impact, SessionFlights flights) {
        List<Swing> swings = new ArrayList<>();
        int implied = 0;
        for (Shot shot : shots) {
            boolean measured = NEEDED.stream().allMatch(shot::has);
            Optional<Swing> swing = (measured ? delivery(shot, head) : implied(shot, head))
                    .map(delivery -> new Swing(delivery, flights.model(shot)))
                    .filter(candidate ->
                            fly(candidate, candidate.delivery, head, impact).isPresent());
            if (swing.isPresent()) {
                swings.add(swing.get());
                implied += measured ? 0 : 1;
            }
        }
        return new ClubSwings(head, impact, List.copyOf(swings), implied, shots.size() - swings.size());
    }

    private static Optional<Delivery> delivery(Shot shot, ClubHead head) {
        Delivery.Builder delivery = Delivery.builder();
        try {
            delivery.clubSpeed(Speed.ofMetersPerSecond(shot.value(Metric.CLUB_SPEED)))
                    .attackAngle(angle(shot, Metric.ATTACK_ANGLE))
                    .dynamicLoft(angle(shot, Metric.DYNAMIC_LOFT))
                    .clubPath(angle(shot, Metric.CLUB_PATH))
                    .faceAngle(angle(shot, Metric.FACE_ANGLE));
            if (head.hasInertia() && shot.has(Metric.STRIKE_TOE) && shot.has(Metric.STRIKE_UP)) {
                delivery.strikeToe(Length.ofMeters(shot.value(Metric.STRIKE_TOE)))
                        .strikeUp(Length.ofMeters(shot.value(Metric.STRIKE_UP)));
            }
            return Optional.of(delivery.build());
        } catch (IllegalArgumentException e) {
            return Optional.empty();
        }
    }

    private static Angle angle(Shot shot, Metric metric) {
        return Angle.ofRadians(shot.has(metric) ? shot.value(metric) : 0.0);
    }

    private static Optional<Delivery> implied(Shot shot, ClubHead head) {
        try {
            return SessionFlights.launch(shot)
                    .flatMap(launch -> ImpliedDelivery.of(launch, head).delivery());
        } catch (IllegalArgumentException e) {
            return Optional.empty();
        }
    }

    private static Optional<Flight> fly(Swing swing, Delivery delivery, ClubHead head, ImpactModel impact) {
        try {
            return Optional.of(swing.model.fly(impact.strike(delivery, head).launch()));
        } catch (IllegalArgumentException | FlightException e) {
            return Optional.empty();
        }
    }

    int size() {
        return swings.size();
    }

    /** How many deliveries are those that the launch implies. */
    int implied() {
        return implied;
    }

    /** How many shots have no delivery that can be flown. */
    int missing() {
        return missing;
    }

    double meanClubSpeed() {
        return swings.stream()
                .mapToDouble(swing -> swing.delivery.clubSpeed().metersPerSecond())
                .average()
                .orElse(0.0);
    }

    /** The flights with every delivery changed, in order; empty if one of them cannot be flown. */
    Optional<List<Flight>> fly(UnaryOperator<Delivery> change) {
        List<Flight> flights = new ArrayList<>(swings.size());
        for (Swing swing : swings) {
            Optional<Flight> flight;
            try {
                flight = fly(swing, change.apply(swing.delivery), head, impact);
            } catch (IllegalArgumentException e) {
                return Optional.empty(); // the change leaves the range of a delivery
            }
            if (flight.isEmpty()) {
                return Optional.empty();
            }
            flights.add(flight.get());
        }
        return Optional.of(flights);
    }
}
