package dev.teeward.fitting.compare;

import static dev.teeward.quantity.Units.degrees;
import static dev.teeward.quantity.Units.feet;
import static dev.teeward.quantity.Units.mph;
import static dev.teeward.quantity.Units.rpm;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.ShotSet;
import dev.teeward.fitting.complete.SameAir;
import dev.teeward.flight.FlightModel;
import dev.teeward.flight.LaunchConditions;
import dev.teeward.flight.air.Atmosphere;
import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.Interval;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Two invented days, one high up; the golfer hits 4 m farther on the first, and the rest is the air. */
class AirShareTest {
    private static final double GOLFER = 4.0;
    private static final FlightModel HIGH = FlightModel.standard().withAir(Atmosphere.standardAt(feet(5_280.0)));
    private static final FlightModel SEA = FlightModel.standard().withAir(Atmosphere.standardAt(feet(0.0)));
    private static final AirShare SHARE = AirShare.of(SameAir.standardAt(feet(0.0)));

    private static LaunchConditions launch(int i) {
        return LaunchConditions.builder()
                .ballSpeed(mph(115.0 + 7.0 * (i % 4) + 0.3 * i))
                .launchAngle(degrees(16.0 + i % 3))
                .startDirection(degrees(0.0))
                .spinRate(rpm(6_000.0 + 100.0 * (i % 5)))
                .axisTilt(degrees(0.0))
                .build();
    }

    private static double carry(FlightModel model, int i) {
        return model.fly(launch(i)).carry().meters();
    }

    private static Shot.Builder shot(String club, int i, double carry) {
        LaunchConditions launch = launch(i);
        return Shot.builder(club)
                .number(i + 1)
                .measured(Metric.BALL_SPEED, launch.ballSpeed().metersPerSecond())
                .measured(Metric.LAUNCH_ANGLE, launch.launchAngle().radians())
                .measured(Metric.START_DIRECTION, 0.0)
                .measured(Metric.SPIN_RATE, launch.spinRate().radiansPerSecond())
                .measured(Metric.AXIS_TILT, 0.0)
                .measured(Metric.CARRY, carry);
    }

    /** Monday at 5280 ft; its launches are 0 to 8. */
    private static Session monday() {
        List<Shot> shots = new ArrayList<>();
        for (int i = 0; i < 9; i++) {
            // At sea level it would be the model's carry plus 4 m; the air multiplies.
            shots.add(shot("Alder", i, (carry(SEA, i) + GOLFER) * carry(HIGH, i) / carry(SEA, i))
                    .build());
        }
        return Session.builder()
                .elevation(feet(5_280.0))
                .shots(ShotSet.of(shots))
                .build();
    }

    /** Tuesday at sea level, the same launches. */
    private static Session tuesday() {
        List<Shot> shots = new ArrayList<>();
        for (int i = 0; i < 9; i++) {
            shots.add(shot("Alder", i, carry(SEA, i)).build());
        }
        return Session.builder().elevation(feet(0.0)).shots(ShotSet.of(shots)).build();
    }

    private static double[] found() {
        return monday().shots().values(Metric.CARRY);
    }

    private static double[] atSea() {
        return IntStream.range(0, 9).mapToDouble(i -> carry(SEA, i) + GOLFER).toArray();
    }

    private static double[] moved() {
        double[] found = found();
        double[] sea = atSea();
        return IntStream.range(0, 9).mapToDouble(i -> found[i] - sea[i]).toArray();
    }

    @Test
    void theAirAndTheGolferAreToldApart() {
        AirShareResult r = SHARE.betweenDays(monday(), tuesday(), Metric.CARRY);
        double air =
                IntStream.range(0, 9).mapToDouble(i -> moved()[i]).average().orElseThrow();
        assertTrue(air > 5.0, "thin air carries farther");
        assertEquals(air, r.air().value(), 1e-9);
        assertEquals(GOLFER, r.rest().value(), 1e-9);
        assertEquals(air + GOLFER, r.found().value(), 1e-9);
        assertEquals(9, r.firstShots());
        assertEquals(9, r.secondShots());
        assertFalse(r.paired());
        assertTrue(r.air().interval().bounded() && r.air().interval().contains(air));
    }

    /** With a known ball the intervals are Welch's, of the numbers above. */
    @Test
    void theIntervalsOfAKnownBallAreWelchs() {
        AirShareResult r = SHARE.withBallSpread(0.0, 0.0).withLevel(0.9).betweenDays(monday(), tuesday(), Metric.CARRY);
        double[] there = tuesday().shots().values(Metric.CARRY);
        near(WelchTTest.withDefaults().withLevel(0.9).test(found(), there).estimate(), r.found());
        near(WelchTTest.withDefaults().withLevel(0.9).test(atSea(), there).estimate(), r.rest());
        // On Tuesday nothing moves, so only Monday's spread is in the part of the air: Student's t of nine.
        double[] moved = moved();
        near(
                PairedTTest.withDefaults()
                        .withLevel(0.9)
                        .test(moved, new double[9])
                        .estimate(),
                r.air());
    }

    private static void near(Estimate expected, Estimate actual) {
        assertEquals(expected.value(), actual.value(), 1e-9);
        assertEquals(expected.interval().lower(), actual.interval().lower(), 1e-8);
        assertEquals(expected.interval().upper(), actual.interval().upper(), 1e-8);
        assertEquals(expected.interval().level(), actual.interval().level());
    }

    /** What is not known of the ball widens the part of the air and nothing of what was found. */
    @Test
    void theBallWidensThePartOfTheAir() {
        AirShareResult known = SHARE.withBallSpread(0.0, 0.0).betweenDays(monday(), tuesday(), Metric.CARRY);
        AirShareResult open = SHARE.withBallSpread(0.1, 0.1).betweenDays(monday(), tuesday(), Metric.CARRY);
        assertTrue(open.air().interval().width() > known.air().interval().width());
        assertTrue(open.rest().interval().width() > known.rest().interval().width());
        assertEquals(known.found(), open.found());
    }

    /** The definition of Fieller's limits: air minus limit times found is t of its own standard errors away from 0. */
    @Test
    void theLimitsOfTheShareMeetTheirDefinition() {
        Session far = withCarries(tuesday(), -30.0);
        AirShareResult r = SHARE.withBallSpread(0.0, 0.0).betweenDays(monday(), far, Metric.CARRY);
        Interval share = r.share().orElseThrow().interval();
        assertEquals(
                r.air().value() / r.found().value(), r.share().orElseThrow().value(), 1e-12);
        double[] found = found();
        double[] moved = moved();
        double[] there = far.shots().values(Metric.CARRY);
        double[] t = new double[2];
        double[] limits = {share.lower(), share.upper()};
        for (int k = 0; k < 2; k++) {
            double ratio = limits[k];
            double[] x = IntStream.range(0, 9)
                    .mapToDouble(i -> moved[i] - ratio * found[i])
                    .toArray();
            double[] y =
                    IntStream.range(0, 9).mapToDouble(i -> -ratio * there[i]).toArray();
            t[k] = WelchTTest.withDefaults().test(x, y).statistic().orElseThrow();
        }
        // 8 degrees of freedom, those of the air's part: t = 2.306004 (printed in every table of Student's t).
        assertEquals(2.306004, Math.max(t[0], t[1]), 1e-5);
        assertEquals(-2.306004, Math.min(t[0], t[1]), 1e-5);
    }

    private static Session withCarries(Session session, double shift) {
        List<Shot> shots = new ArrayList<>();
        for (Shot shot : session.shots()) {
            shots.add(shot.toBuilder()
                    .measured(Metric.CARRY, shot.value(Metric.CARRY) + shift)
                    .build());
        }
        return session.withShots(ShotSet.of(shots));
    }

    @Test
    void thereIsNoShareOfADifferenceThatMayBeNothing() {
        AirShareResult r = SHARE.betweenDays(tuesday(), tuesday(), Metric.CARRY);
        assertTrue(r.share().isEmpty());
        assertTrue(r.warnings().stream().map(Warning::code).toList().contains("share-unsettled"));
        assertEquals(0.0, r.air().value(), 1e-12);
    }

    /** Alder on Monday, Rowan on Tuesday: the club gets no credit for the air. */
    @Test
    void clubsOfTwoDaysAreComparedInOneAir() {
        List<Shot> rowan = tuesday().shots().stream()
                .map(s -> shot("Rowan", s.number() - 1, s.value(Metric.CARRY)).build())
                .toList();
        Session both = Session.combine(List.of(monday(), tuesday().withShots(ShotSet.of(rowan))));
        AirShareResult clubs = SHARE.betweenClubs(both, "Alder", "Rowan", Metric.CARRY);
        AirShareResult days = SHARE.betweenDays(monday(), tuesday(), Metric.CARRY);
        near(days.air(), clubs.air());
        near(days.rest(), clubs.rest());
    }

    @Test
    void pairsOfOneDayLoseNothingToTheAir() {
        List<Shot> shots = new ArrayList<>();
        for (int i = 0; i < 8; i++) {
            shots.add(shot("Alder", i, carry(SEA, i) + GOLFER + 0.1 * (i % 3))
                    .pair("p" + i)
                    .build());
            shots.add(shot("Rowan", i, carry(SEA, i)).pair("p" + i).build());
        }
        Session session =
                Session.builder().elevation(feet(0.0)).shots(ShotSet.of(shots)).build();
        AirShareResult r = SHARE.betweenClubs(session, "Alder", "Rowan", Metric.CARRY);
        assertTrue(r.paired());
        assertEquals(8, r.firstShots());
        assertEquals(0.0, r.air().value(), 1e-12);
        assertEquals(r.found().value(), r.rest().value(), 1e-12);
    }

    /** Shots in turn are pairs without names; in turn over two days they are none, even from one file. */
    @Test
    void pairsByOrderAreFoundWithinADayOnly() {
        List<Shot> oneDay = new ArrayList<>();
        List<Shot> twoDays = new ArrayList<>();
        for (int i = 0; i < 6; i++) {
            Shot alder =
                    shot("Alder", i, carry(SEA, i) + GOLFER + 0.1 * (i % 3)).build();
            Shot rowan = shot("Rowan", i, carry(SEA, i)).build();
            oneDay.addAll(List.of(alder, rowan));
            twoDays.addAll(List.of(
                    alder.toBuilder().part(0).build(), rowan.toBuilder().part(1).build()));
        }
        Session low = Session.builder().elevation(feet(0.0)).build();
        AirShareResult inTurn = SHARE.betweenClubs(low.withShots(ShotSet.of(oneDay)), "Alder", "Rowan", Metric.CARRY);
        assertTrue(inTurn.paired());
        assertEquals(6, inTurn.firstShots());
        assertEquals(GOLFER + 0.1, inTurn.found().value(), 1e-9);
        Session both = low.toBuilder()
                .shots(ShotSet.of(twoDays))
                .parts(List.of(low, low))
                .build();
        assertFalse(SHARE.betweenClubs(both, "Alder", "Rowan", Metric.CARRY).paired());
    }

    @Test
    void changesAreToldForEveryMetricThatTheAirMoves() {
        List<AirChange> changes = SHARE.changes(monday());
        assertEquals(
                List.copyOf(SameAir.metrics()),
                changes.stream().map(AirChange::metric).toList());
        AirChange carry = changes.stream()
                .filter(c -> c.metric() == Metric.CARRY)
                .findFirst()
                .orElseThrow();
        double air =
                IntStream.range(0, 9).mapToDouble(i -> moved()[i]).average().orElseThrow();
        assertEquals(-air, carry.change().value(), 1e-9);
        assertEquals(9, carry.shots());
    }

    @Test
    void theHomeCourseIsTheAirOfASession() {
        AirShareResult standard = SHARE.betweenDays(monday(), tuesday(), Metric.CARRY);
        AirShareResult home = AirShare.of(SameAir.asIn(tuesday())).betweenDays(monday(), tuesday(), Metric.CARRY);
        assertEquals(standard.air(), home.air());
    }

    @Test
    void whatCannotBeAnsweredIsRefusedOrWarnedOf() {
        assertThrows(IllegalArgumentException.class, () -> SHARE.betweenDays(monday(), tuesday(), Metric.BALL_SPEED));
        assertThrows(
                IllegalArgumentException.class, () -> SHARE.betweenClubs(monday(), "Alder", "Rowan", Metric.CARRY));
        assertThrows(IllegalArgumentException.class, () -> SHARE.withBallSpread(0.3, 0.0));
        Session other = tuesday().toBuilder().ball("a soft one").build();
        assertTrue(SHARE.betweenDays(monday(), other, Metric.CARRY).warnings().stream()
                .anyMatch(w -> w.code().equals("balls-differ")));
        Session one = monday().withShots(ShotSet.of(monday().shots().shots().get(0)));
        AirShareResult single = SHARE.betweenDays(one, tuesday(), Metric.CARRY);
        assertFalse(single.found().interval().bounded());
        assertTrue(single.warnings().stream().anyMatch(w -> w.code().equals("too-few-shots")));
    }
}
