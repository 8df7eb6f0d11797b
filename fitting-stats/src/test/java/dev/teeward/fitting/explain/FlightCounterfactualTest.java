package dev.teeward.fitting.explain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.ShotSet;
import dev.teeward.fitting.compare.HeadToHead;
import dev.teeward.fitting.compare.HeadToHeadResult;
import dev.teeward.flight.Flight;
import dev.teeward.flight.FlightModel;
import dev.teeward.flight.LaunchConditions;
import dev.teeward.flight.impact.ClubHead;
import dev.teeward.flight.impact.Delivery;
import dev.teeward.flight.impact.LieEffect;
import dev.teeward.flight.impact.RigidImpact;
import dev.teeward.flight.impact.TypicalHead;
import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Handedness;
import dev.teeward.quantity.Speed;
import dev.teeward.quantity.SpinRate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;

/** Against the axioms, against the average over all orders of single flights, and against closed forms. */
class FlightCounterfactualTest {
    private static final double DEG = Math.PI / 180.0;
    private static final FlightCounterfactual QUICK =
            FlightCounterfactual.withDefaults().withResamples(199);
    private static final List<Metric> LAUNCH =
            List.of(Metric.BALL_SPEED, Metric.LAUNCH_ANGLE, Metric.START_DIRECTION, Metric.SPIN_RATE, Metric.AXIS_TILT);
    private static final Map<Metric, ToDoubleFunction<Flight>> OUTCOMES = Map.of(
            Metric.CURVE, f -> f.curve().meters(),
            Metric.CARRY, f -> f.carry().meters(),
            Metric.SIDE, f -> f.side().meters(),
            Metric.APEX, f -> f.apex().meters(),
            Metric.DESCENT_ANGLE, f -> f.descentAngle().radians());

    private static HeadToHeadResult compare(Session session) {
        return HeadToHead.withDefaults()
                .withClubs(InventedSwings.A, InventedSwings.B)
                .withPrimary(Metric.CARRY)
                .compare(session);
    }

    private static FlightCounterfactual.Result explain(Session session) {
        return QUICK.explain(compare(session)).orElseThrow();
    }

    private static InventedSwings differing() {
        return InventedSwings.of(5, 10)
                .more(Metric.BALL_SPEED, 1.0)
                .more(Metric.LAUNCH_ANGLE, -1.5 * DEG)
                .more(Metric.START_DIRECTION, 1.0 * DEG)
                .more(Metric.SPIN_RATE, 40.0)
                .more(Metric.AXIS_TILT, 5.0 * DEG);
    }

    private static double mean(Session session, String club, Metric metric) {
        return java.util.Arrays.stream(session.shots().club(club).values(metric))
                .average()
                .orElseThrow();
    }

    private static LaunchConditions launch(double... v) {
        return LaunchConditions.builder()
                .ballSpeed(Speed.ofMetersPerSecond(v[0]))
                .launchAngle(Angle.ofRadians(v[1]))
                .startDirection(Angle.ofRadians(v[2]))
                .spinRate(SpinRate.ofRadiansPerSecond(v[3]))
                .axisTilt(Angle.ofRadians(v[4]))
                .build();
    }

    @Test
    void sharesAreTheAverageOverAllOrdersOfSingleFlights() {
        Session session = differing().session();
        HeadToHeadResult result = compare(session);
        FlightModel model = FlightModel.standard().withAir(result.air().atmosphere());
        double[] first =
                LAUNCH.stream().mapToDouble(m -> mean(session, "Alder", m)).toArray();
        double[] second =
                LAUNCH.stream().mapToDouble(m -> mean(session, "Rowan", m)).toArray();
        FlightCounterfactual.Result flown = QUICK.explain(result).orElseThrow();
        assertEquals(5, flown.outcomes().size());
        List<Flight> sets = new ArrayList<>();
        for (int set = 0; set < 32; set++) {
            double[] mixed = second.clone();
            for (int j = 0; j < 5; j++) {
                mixed[j] = (set >> j & 1) == 1 ? first[j] : second[j];
            }
            sets.add(model.fly(launch(mixed)));
        }
        for (OutcomeShares outcome : flown.outcomes()) {
            ToDoubleFunction<Flight> number = OUTCOMES.get(outcome.outcome());
            double[] sum = new double[5];
            int orders = orders(new ArrayList<>(), sets, number, sum);
            assertEquals(120, orders);
            for (int j = 0; j < 5; j++) {
                double share =
                        outcome.share(LAUNCH.get(j)).orElseThrow().share().value();
                assertEquals(sum[j] / orders, share, 1e-9, outcome.outcome() + " of " + LAUNCH.get(j));
            }
        }
    }

    private static int orders(List<Integer> order, List<Flight> sets, ToDoubleFunction<Flight> number, double[] sum) {
        if (order.size() == 5) {
            int set = 0;
            for (int j : order) {
                sum[j] += number.applyAsDouble(sets.get(set | 1 << j)) - number.applyAsDouble(sets.get(set));
                set |= 1 << j;
            }
            return 1;
        }
        int count = 0;
        for (int j = 0; j < 5; j++) {
            if (!order.contains(j)) {
                List<Integer> longer = new ArrayList<>(order);
                longer.add(j);
                count += orders(longer, sets, number, sum);
            }
        }
        return count;
    }

    @Test
    void everythingAddsUp() {
        for (OutcomeShares outcome : explain(differing().session()).outcomes()) {
            double shares = outcome.shares().stream()
                    .mapToDouble(s -> s.share().value())
                    .sum();
            assertEquals(outcome.modelled().value(), shares, 1e-10);
            assertEquals(
                    outcome.measured().orElseThrow().value(),
                    shares + outcome.rest().orElseThrow().value(),
                    1e-10);
        }
    }

    /** A start direction only turns a flight through still air: it has all of its own of the side, and none of the rest. */
    @Test
    void anInputThatDoesNothingHasNoShare() {
        FlightCounterfactual.Result r = explain(differing().session());
        for (Metric outcome : List.of(Metric.CARRY, Metric.CURVE, Metric.APEX, Metric.DESCENT_ANGLE)) {
            InputShare start =
                    r.of(outcome).orElseThrow().share(Metric.START_DIRECTION).orElseThrow();
            assertEquals(0.0, start.share().value(), 1e-9, outcome.key());
            assertTrue(Math.abs(start.difference().value()) > 0.5 * DEG);
        }
        assertTrue(r.of(Metric.SIDE)
                        .orElseThrow()
                        .share(Metric.START_DIRECTION)
                        .orElseThrow()
                        .share()
                        .value()
                > 1.0);
    }

    @Test
    void anInputThatDoesNotDifferHasNoShare() {
        Session session = differing().input(Metric.SPIN_RATE, 620.0, 0.0, 0.0).session();
        for (OutcomeShares outcome : explain(session).outcomes()) {
            assertEquals(
                    0.0, outcome.share(Metric.SPIN_RATE).orElseThrow().share().value());
        }
    }

    /** Exchanging the clubs turns every sign and changes nothing else. */
    @Test
    void clubsMayBeExchanged() {
        HeadToHeadResult one = compare(differing().session());
        HeadToHeadResult two = HeadToHead.withDefaults()
                .withClubs(InventedSwings.B, InventedSwings.A)
                .withPrimary(Metric.CARRY)
                .compare(differing().session());
        OutcomeShares a = QUICK.explain(one).orElseThrow().of(Metric.CURVE).orElseThrow();
        OutcomeShares b = QUICK.explain(two).orElseThrow().of(Metric.CURVE).orElseThrow();
        for (Metric input : LAUNCH) {
            assertEquals(
                    a.share(input).orElseThrow().share().value(),
                    -b.share(input).orElseThrow().share().value(),
                    1e-10);
        }
    }

    /** A golfer in the mirror has the mirror's shares: sides turn, distances stay. */
    @Test
    void leftHandersAreTheMirrorImage() {
        Session right = differing().session();
        List<Shot> turned = new ArrayList<>();
        for (Shot shot : right.shots()) {
            Shot.Builder copy = Shot.builder(shot.club()).number(shot.number());
            for (Metric metric : shot.metrics()) {
                boolean lateral = metric.sense() == dev.teeward.fitting.Sense.LATERAL;
                copy.measured(metric, lateral ? -shot.value(metric) : shot.value(metric));
            }
            turned.add(copy.build());
        }
        Session left = Session.builder()
                .hand(Handedness.LEFT)
                .shots(ShotSet.of(turned))
                .build();
        for (FlightCounterfactual procedure : List.of(QUICK, QUICK.withHead(TypicalHead.iron(6)))) {
            FlightCounterfactual.Result one = procedure.explain(compare(right)).orElseThrow();
            FlightCounterfactual.Result two = procedure.explain(compare(left)).orElseThrow();
            for (Metric input : one.inputs()) {
                assertEquals(share(one, Metric.CURVE, input), -share(two, Metric.CURVE, input), 1e-9, input.key());
                assertEquals(share(one, Metric.CARRY, input), share(two, Metric.CARRY, input), 1e-9, input.key());
            }
        }
    }

    private static double share(FlightCounterfactual.Result r, Metric outcome, Metric input) {
        return r.of(outcome).orElseThrow().share(input).orElseThrow().share().value();
    }

    @Test
    void theSameSeedGivesTheSameIntervals() {
        HeadToHeadResult result = compare(differing().session());
        OutcomeShares one = QUICK.explain(result).orElseThrow().of(Metric.CARRY).orElseThrow();
        OutcomeShares two = QUICK.explain(result).orElseThrow().of(Metric.CARRY).orElseThrow();
        OutcomeShares other =
                QUICK.withSeed(7).explain(result).orElseThrow().of(Metric.CARRY).orElseThrow();
        assertEquals(one, two);
        assertFalse(one.modelled().interval().equals(other.modelled().interval()));
        assertEquals(one.modelled().value(), other.modelled().value());
    }

    @Test
    void throughTheImpactTheModelledDifferenceIsThatOfBothMeanDeliveries() {
        Session session =
                InventedSwings.of(6, 10).more(Metric.FACE_ANGLE, 1.5 * DEG).session();
        HeadToHeadResult result = compare(session);
        ClubHead head = TypicalHead.iron(6);
        FlightCounterfactual.Result r = QUICK.withHead(head).explain(result).orElseThrow();
        assertTrue(r.ofDelivery());
        assertEquals(7, r.inputs().size());
        FlightModel model = FlightModel.standard().withAir(result.air().atmosphere());
        double difference = struck(model, head, session, "Alder") - struck(model, head, session, "Rowan");
        OutcomeShares curve = r.of(Metric.CURVE).orElseThrow();
        assertEquals(difference, curve.modelled().value(), 1e-9);
        double shares =
                curve.shares().stream().mapToDouble(s -> s.share().value()).sum();
        assertEquals(difference, shares, 1e-9);
        assertTrue(curve.share(Metric.FACE_ANGLE).orElseThrow().share().value() > 2.0);
    }

    private static double struck(FlightModel model, ClubHead head, Session session, String club) {
        Delivery delivery = Delivery.builder()
                .clubSpeed(Speed.ofMetersPerSecond(mean(session, club, Metric.CLUB_SPEED)))
                .attackAngle(Angle.ofRadians(mean(session, club, Metric.ATTACK_ANGLE)))
                .clubPath(Angle.ofRadians(mean(session, club, Metric.CLUB_PATH)))
                .faceAngle(Angle.ofRadians(mean(session, club, Metric.FACE_ANGLE)))
                .dynamicLoft(Angle.ofRadians(mean(session, club, Metric.DYNAMIC_LOFT)))
                .strikeToe(dev.teeward.quantity.Length.ofMeters(mean(session, club, Metric.STRIKE_TOE)))
                .strikeUp(dev.teeward.quantity.Length.ofMeters(mean(session, club, Metric.STRIKE_UP)))
                .build();
        return model.fly(RigidImpact.standard().strike(delivery, head).launch())
                .curve()
                .meters();
    }

    /**
     * Faces that differ by nothing but what the lies make of them: the lie has the whole of the face's share. With no lie
     * apart it has none of it.
     */
    @Test
    void theLieIsInsideTheFace() {
        double lie = 3.0 * DEG;
        double turned = LieEffect.of(Angle.ofRadians(lie), Handedness.RIGHT)
                .faceAngle(Angle.ofDegrees(24.0))
                .radians();
        Session all = exact().input(Metric.DYNAMIC_LIE, 0.0, 0.0, lie)
                .input(Metric.FACE_ANGLE, 0.0, 0.0, turned)
                .session();
        Session none = exact().input(Metric.DYNAMIC_LIE, 0.0, 0.0, 0.0)
                .input(Metric.FACE_ANGLE, 0.0, 0.0, turned)
                .session();
        Session half = exact().input(Metric.DYNAMIC_LIE, 0.0, 0.0, lie)
                .input(Metric.FACE_ANGLE, 0.0, 0.0, 2.0 * turned)
                .session();
        FlightCounterfactual procedure = QUICK.withHead(TypicalHead.iron(6));
        InputShare whole = face(procedure.explain(compare(all)).orElseThrow());
        InputShare nothing = face(procedure.explain(compare(none)).orElseThrow());
        InputShare part = face(procedure.explain(compare(half)).orElseThrow());
        assertTrue(whole.share().value() < -2.0, "toe up turns the face to the left: " + whole.share());
        assertEquals(whole.share().value(), whole.lie().orElseThrow().value(), 1e-9);
        assertEquals(0.0, nothing.lie().orElseThrow().value(), 1e-12);
        assertEquals(whole.share().value(), nothing.share().value(), 1e-9, "the lie is in the face, never beside it");
        // The curve bends a little with the face: half of it to a few percent.
        assertEquals(0.5, part.lie().orElseThrow().value() / part.share().value(), 0.03);
    }

    private static InputShare face(FlightCounterfactual.Result r) {
        assertFalse(r.inputs().contains(Metric.DYNAMIC_LIE));
        return r.of(Metric.CURVE).orElseThrow().share(Metric.FACE_ANGLE).orElseThrow();
    }

    /** Every swing of a club the same, but for the speed, which makes no side. */
    private static InventedSwings exact() {
        return InventedSwings.of(1, 6)
                .input(Metric.ATTACK_ANGLE, 0.0, 0.0, 0.0)
                .input(Metric.CLUB_PATH, 0.0, 0.0, 0.0)
                .input(Metric.DYNAMIC_LOFT, 24.0 * DEG, 0.0, 0.0)
                .input(Metric.STRIKE_TOE, 0.0, 0.0, 0.0)
                .input(Metric.STRIKE_UP, 0.0, 0.0, 0.0);
    }

    @Test
    void whatWasNotMeasuredIsNotSplit() {
        FlightCounterfactual.Result r =
                explain(differing().without(Metric.AXIS_TILT).session());
        assertEquals(
                List.of(Metric.CARRY, Metric.APEX, Metric.DESCENT_ANGLE),
                r.outcomes().stream().map(OutcomeShares::outcome).toList());
        assertTrue(r.warnings().stream().anyMatch(w -> w.code().equals("input-not-measured")));
        assertTrue(QUICK.explain(compare(differing()
                        .without(Metric.SPIN_RATE)
                        .input(Metric.CARRY, 150.0, 3.0, 0.0)
                        .session()))
                .isEmpty());
        assertTrue(QUICK.explain(compare(InventedSwings.of(1, 2).session())).isEmpty());
    }

    @Test
    void aShotThatLacksAnInputTakesItsPairAlong() {
        Session session = differing().session();
        List<Shot> shots = new ArrayList<>(session.shots().shots());
        shots.set(4, shots.get(4).without(Metric.AXIS_TILT));
        FlightCounterfactual.Result r = explain(session.withShots(ShotSet.of(shots)));
        assertEquals(List.of(9), r.sampleSizes());
        assertEquals(1, r.exclusions().get(0).count());
        assertTrue(r.paired());
    }

    @Test
    void withoutPairsTheShotsOfEachClubAreDrawn() {
        HeadToHeadResult result = HeadToHead.withDefaults()
                .withoutPairing()
                .withPrimary(Metric.CARRY)
                .compare(differing().session());
        FlightCounterfactual.Result r = QUICK.explain(result).orElseThrow();
        assertFalse(r.paired());
        assertEquals(List.of(10, 10), r.sampleSizes());
        assertEquals(
                explain(differing().session())
                        .of(Metric.CURVE)
                        .orElseThrow()
                        .modelled()
                        .value(),
                r.of(Metric.CURVE).orElseThrow().modelled().value(),
                1e-10);
    }

    @Test
    void resamplesHaveARange() {
        assertThrows(IllegalArgumentException.class, () -> QUICK.withResamples(198));
        assertThrows(IllegalArgumentException.class, () -> QUICK.withResamples(100_001));
        assertEquals(
                200,
                1
                        + Integer.parseInt(QUICK.explain(compare(differing().session()))
                                .orElseThrow()
                                .method()
                                .replaceAll(".*, (\\d+) resamples.*", "$1")));
    }
}
