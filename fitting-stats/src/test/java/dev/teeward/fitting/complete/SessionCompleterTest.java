package dev.teeward.fitting.complete;

import static dev.teeward.quantity.Units.celsius;
import static dev.teeward.quantity.Units.degrees;
import static dev.teeward.quantity.Units.feet;
import static dev.teeward.quantity.Units.hectopascals;
import static dev.teeward.quantity.Units.meters;
import static dev.teeward.quantity.Units.mph;
import static dev.teeward.quantity.Units.rpm;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Origin;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.ShotSet;
import dev.teeward.flight.Flight;
import dev.teeward.flight.FlightModel;
import dev.teeward.flight.LaunchConditions;
import dev.teeward.flight.air.Atmosphere;
import dev.teeward.flight.air.Wind;
import dev.teeward.flight.ground.Ground;
import dev.teeward.flight.ground.TurfClass;
import dev.teeward.quantity.Warning;
import java.util.List;
import org.junit.jupiter.api.Test;

class SessionCompleterTest {
    private static final LaunchConditions LAUNCH = LaunchConditions.builder()
            .ballSpeed(mph(118.0))
            .launchAngle(degrees(17.2))
            .startDirection(degrees(-1.2))
            .spinRate(rpm(6_400.0))
            .axisTilt(degrees(-4.0))
            .build();

    private static Shot.Builder launched() {
        return Shot.builder("Alder")
                .measured(Metric.BALL_SPEED, LAUNCH.ballSpeed().metersPerSecond())
                .measured(Metric.LAUNCH_ANGLE, LAUNCH.launchAngle().radians())
                .measured(Metric.START_DIRECTION, LAUNCH.startDirection().radians())
                .measured(Metric.SPIN_RATE, LAUNCH.spinRate().radiansPerSecond())
                .measured(Metric.AXIS_TILT, LAUNCH.axisTilt().radians());
    }

    private static Session.Builder studio() {
        return Session.builder()
                .elevation(feet(5_280.0))
                .temperature(celsius(21.0))
                .humidity(0.3);
    }

    private static Shot only(Session session) {
        return session.shots().shots().get(0);
    }

    private static Origin origin(Shot shot, Metric metric) {
        return shot.reading(metric).orElseThrow().origin();
    }

    private static Shot completed(Shot.Builder shot) {
        Session session = studio().shots(ShotSet.of(shot.build())).build();
        return only(SessionCompleter.withDefaults().complete(session).session());
    }

    private static List<String> codes(Completion completion) {
        return completion.warnings().stream().map(Warning::code).toList();
    }

    private static double rad(double degrees) {
        return Math.toRadians(degrees);
    }

    /** The unit vector of an elevation and a bearing: x to the target, y up, z right. */
    private static double[] direction(double elevation, double bearing) {
        return new double[] {
            Math.cos(elevation) * Math.cos(bearing), Math.sin(elevation), Math.cos(elevation) * Math.sin(bearing)
        };
    }

    @Test
    void theTotalIsComputedOnlyWithAGround() {
        SessionCompleter rolling = SessionCompleter.withDefaults()
                .withFlightModel(FlightModel.standard().withGround(Ground.of(TurfClass.FAIRWAY)));
        Session unmeasured = studio().shots(ShotSet.of(launched().build())).build();
        Completion completion = rolling.complete(unmeasured);
        Shot shot = only(completion.session());
        FlightModel model = FlightModel.standard()
                .withAir(SessionAir.of(unmeasured).atmosphere())
                .withGround(Ground.of(TurfClass.FAIRWAY));
        Flight flight = model.fly(LAUNCH);
        assertEquals(Origin.COMPUTED, origin(shot, Metric.TOTAL));
        assertEquals(flight.total().orElseThrow().meters(), shot.value(Metric.TOTAL), 1e-9);
        assertEquals(only(rolling.complete(completion.session()).session()), shot, "once more changes nothing");

        double carry = 150.0;
        Session measured = studio().shots(
                        ShotSet.of(launched().measured(Metric.CARRY, carry).build()))
                .build();
        assertEquals(
                carry + flight.run().orElseThrow().meters(),
                only(rolling.complete(measured).session()).value(Metric.TOTAL),
                1e-9);
        Session stated = studio().shots(
                        ShotSet.of(launched().measured(Metric.TOTAL, 160.0).build()))
                .build();
        assertEquals(160.0, only(rolling.complete(stated).session()).value(Metric.TOTAL), 0.0);
        Session untilted = studio().shots(ShotSet.of(Shot.builder("Alder")
                        .measured(Metric.BALL_SPEED, 50.0)
                        .measured(Metric.LAUNCH_ANGLE, 0.3)
                        .measured(Metric.SPIN_RATE, 600.0)
                        .build()))
                .build();
        assertFalse(only(rolling.complete(untilted).session()).has(Metric.TOTAL));
    }

    /** Closed forms; the spin loft by the scalar product of the two unit vectors. */
    @Test
    void derivedMetricsFollowTheirDefinitions() {
        double[][] cases = {
            {25.0, -4.0, 2.0, -3.0}, {12.0, 3.0, -1.0, 4.0}, {55.0, -8.0, 10.0, 10.0}, {20.0, -20.0, 0.0, 0.0}
        };
        for (double[] c : cases) {
            Shot shot = completed(Shot.builder("Alder")
                    .measured(Metric.CLUB_SPEED, 37.0)
                    .measured(Metric.BALL_SPEED, 51.8)
                    .measured(Metric.DYNAMIC_LOFT, rad(c[0]))
                    .measured(Metric.ATTACK_ANGLE, rad(c[1]))
                    .measured(Metric.FACE_ANGLE, rad(c[2]))
                    .measured(Metric.CLUB_PATH, rad(c[3])));
            double[] face = direction(rad(c[0]), rad(c[2]));
            double[] head = direction(rad(c[1]), rad(c[3]));
            double dot = face[0] * head[0] + face[1] * head[1] + face[2] * head[2];
            assertEquals(Math.acos(dot), shot.value(Metric.SPIN_LOFT), 1e-12);
            assertEquals(1.4, shot.value(Metric.SMASH_FACTOR), 1e-15);
            assertEquals(rad(c[2] - c[3]), shot.value(Metric.FACE_TO_PATH), 1e-15);
            for (Metric metric : List.of(Metric.SPIN_LOFT, Metric.SMASH_FACTOR, Metric.FACE_TO_PATH)) {
                assertEquals(Origin.DERIVED, origin(shot, metric));
            }
            assertEquals(Origin.MEASURED, origin(shot, Metric.BALL_SPEED));
            assertFalse(shot.has(Metric.CARRY));
        }
        // In one vertical plane the spin loft is loft minus attack angle, here 40 deg.
        assertEquals(
                rad(40.0),
                completed(Shot.builder("Alder")
                                .measured(Metric.DYNAMIC_LOFT, rad(20.0))
                                .measured(Metric.ATTACK_ANGLE, rad(-20.0))
                                .measured(Metric.FACE_ANGLE, 0.0)
                                .measured(Metric.CLUB_PATH, 0.0))
                        .value(Metric.SPIN_LOFT),
                1e-14);
    }

    @Test
    void missingResultsAreThoseOfTheFlightModelInTheAirOfTheSession() {
        Session session = Session.builder()
                .elevation(meters(1_655.0))
                .temperature(celsius(30.0))
                .humidity(0.2)
                .altimeterPressure(hectopascals(1_005.0))
                .wind(degrees(30.0), mph(8.0))
                .shots(ShotSet.of(launched().build()))
                .build();
        Completion completion = SessionCompleter.withDefaults().complete(session);
        Shot shot = only(completion.session());
        Flight flight = FlightModel.standard()
                .withAir(Atmosphere.ofAltimeterSetting(hectopascals(1_005.0), meters(1_655.0), celsius(30.0), 0.2))
                .withWind(Wind.from(degrees(30.0), mph(8.0)))
                .fly(LAUNCH);
        // Going through the SI value of the spin may move the launch by one rounding.
        assertEquals(flight.carry().meters(), shot.value(Metric.CARRY), 1e-9);
        assertEquals(flight.side().meters(), shot.value(Metric.SIDE), 1e-9);
        assertEquals(flight.curve().meters(), shot.value(Metric.CURVE), 1e-9);
        assertEquals(flight.apex().meters(), shot.value(Metric.APEX), 1e-9);
        assertEquals(flight.flightTimeSeconds(), shot.value(Metric.FLIGHT_TIME), 1e-9);
        assertEquals(flight.descentAngle().radians(), shot.value(Metric.DESCENT_ANGLE), 1e-9);
        assertEquals(flight.landingSpeed().metersPerSecond(), shot.value(Metric.LANDING_SPEED), 1e-9);
        assertEquals(Origin.COMPUTED, origin(shot, Metric.CARRY));
        assertFalse(shot.has(Metric.TOTAL));
        // The air is fully stated, so that only what the model says of this flight is left.
        assertEquals(flight.warnings().stream().map(Warning::code).toList(), codes(completion));
        assertEquals(
                completion.session(),
                SessionCompleter.withDefaults().complete(completion.session()).session());
    }

    @Test
    void whatWasMeasuredStays() {
        Shot shot = completed(launched()
                .measured(Metric.CLUB_SPEED, 37.0)
                .measured(Metric.SMASH_FACTOR, 1.3)
                .measured(Metric.CARRY, 140.0)
                .measured(Metric.SIDE, -5.0));
        assertEquals(140.0, shot.value(Metric.CARRY));
        assertEquals(Origin.MEASURED, origin(shot, Metric.CARRY));
        assertEquals(1.3, shot.value(Metric.SMASH_FACTOR));
        assertEquals(Origin.MEASURED, origin(shot, Metric.SMASH_FACTOR));
        assertEquals(Origin.COMPUTED, origin(shot, Metric.APEX));
        // The landing lies at the bearing asin(-5/140); the plane of the start at -1.2 deg.
        double expected = 140.0 * Math.sin(Math.asin(-5.0 / 140.0) - rad(-1.2));
        assertEquals(expected, shot.value(Metric.CURVE), 1e-10);
        assertEquals(Origin.DERIVED, origin(shot, Metric.CURVE));
    }

    @Test
    void sideNeedsDirectionAndTilt() {
        Session session = studio().shots(ShotSet.of(
                        launched().build().without(Metric.AXIS_TILT),
                        launched().build().without(Metric.START_DIRECTION),
                        launched().build().without(Metric.SPIN_RATE)))
                .build();
        Completion completion = SessionCompleter.withDefaults().complete(session);
        List<Shot> shots = completion.session().shots().shots();
        assertTrue(shots.get(0).has(Metric.CARRY) && !shots.get(0).has(Metric.SIDE));
        assertTrue(shots.get(1).has(Metric.CARRY) && !shots.get(1).has(Metric.CURVE));
        assertFalse(shots.get(2).has(Metric.CARRY));
        assertEquals(List.of("pressure-assumed", "wind-assumed", "axis-tilt-assumed"), codes(completion));
    }

    @Test
    void aShotWithoutFlightIsNamedAndTheRestGoesOn() {
        Shot topped =
                launched().number(2).measured(Metric.LAUNCH_ANGLE, rad(-2.0)).build();
        Session session = studio().shots(ShotSet.of(launched().build(), topped)).build();
        Completion completion = SessionCompleter.withDefaults().complete(session);
        assertTrue(completion.session().shots().shots().get(0).has(Metric.CARRY));
        assertEquals(topped, completion.session().shots().shots().get(1));
        Warning warning = completion.warnings().get(completion.warnings().size() - 1);
        assertEquals("not-flown", warning.code());
        assertTrue(warning.message().startsWith("shot 2 with Alder"), warning.message());

        // Nothing reaches a landing 500 m higher.
        Completion none = SessionCompleter.withDefaults()
                .withFlightModel(FlightModel.standard().withLandingElevation(meters(500.0)))
                .complete(session);
        assertEquals(session, none.session());
        assertEquals(List.of("not-flown", "not-flown"), codes(none));
    }

    /** Chips, far below the speeds of the model: one warning for all of them. */
    @Test
    void warningsOfTheModelAreCountedOnce() {
        Shot.Builder slow = launched().measured(Metric.BALL_SPEED, 4.0);
        Session session = studio().shots(
                        ShotSet.of(slow.build(), slow.build(), launched().build()))
                .build();
        Completion completion = SessionCompleter.withDefaults().complete(session);
        List<Warning> outside = completion.warnings().stream()
                .filter(w -> w.code().equals("reynolds-outside-model"))
                .toList();
        assertEquals(1, outside.size());
        assertTrue(
                outside.get(0).message().startsWith("2 of 3 computed flights"),
                outside.get(0).message());
    }

    @Test
    void modelIsInjected() {
        Session session = studio().shots(ShotSet.of(launched().build())).build();
        double level = only(SessionCompleter.withDefaults().complete(session).session())
                .value(Metric.CARRY);
        double raised = only(SessionCompleter.withDefaults()
                        .withFlightModel(FlightModel.standard().withLandingElevation(meters(10.0)))
                        .complete(session)
                        .session())
                .value(Metric.CARRY);
        assertTrue(raised < level, raised + " < " + level);
    }

    /** A rotation about the vertical: carry stays, and the landing keeps its bearing less the aim. */
    @Test
    void sidesAndDirectionsAreRelativeToTheAim() {
        Session plain = studio().wind(degrees(60.0), mph(12.0))
                .shots(ShotSet.of(launched()
                        .measured(Metric.CLUB_PATH, rad(3.0))
                        .measured(Metric.FACE_ANGLE, rad(1.0))
                        .build()))
                .build();
        Session aimed = plain.toBuilder().aimOffset(degrees(2.0)).build();
        Shot before = only(SessionCompleter.withDefaults().complete(plain).session());
        Completion completion = SessionCompleter.withDefaults().complete(aimed);
        Shot after = only(completion.session());
        assertEquals(rad(1.0), after.value(Metric.CLUB_PATH), 1e-15);
        assertEquals(rad(-1.0), after.value(Metric.FACE_ANGLE), 1e-15);
        assertEquals(rad(-3.2), after.value(Metric.START_DIRECTION), 1e-15);
        assertEquals(Origin.MEASURED, origin(after, Metric.CLUB_PATH));
        double carry = before.value(Metric.CARRY);
        assertEquals(carry, after.value(Metric.CARRY), 1e-6);
        assertEquals(
                carry * Math.sin(Math.asin(before.value(Metric.SIDE) / carry) - rad(2.0)),
                after.value(Metric.SIDE),
                1e-6);
        assertEquals(before.value(Metric.CURVE), after.value(Metric.CURVE), 1e-6);
        assertEquals("aim-turned", completion.warnings().get(0).code());
        assertEquals(0.0, completion.session().aimOffset().orElseThrow().degrees());
        assertEquals(
                completion.session(),
                SessionCompleter.withDefaults().complete(completion.session()).session());

        // A measured side turns by the same closed form; without a carry it cannot.
        Shot measured = Shot.builder("Alder")
                .measured(Metric.CARRY, 150.0)
                .measured(Metric.SIDE, 10.0)
                .build();
        Session pair = aimed.withShots(ShotSet.of(measured, measured.without(Metric.CARRY)));
        Completion turned = SessionCompleter.withDefaults().complete(pair);
        assertEquals(
                150.0 * Math.sin(Math.asin(10.0 / 150.0) - rad(2.0)),
                turned.session().shots().shots().get(0).value(Metric.SIDE),
                1e-10);
        assertFalse(turned.session().shots().shots().get(1).has(Metric.SIDE));
        assertTrue(codes(turned).contains("aim-not-turned"));
    }

    @Test
    void altimeterSettingWithoutElevationIsRefused() {
        Session session =
                Session.builder().altimeterPressure(hectopascals(1_005.0)).build();
        assertThrows(
                IllegalArgumentException.class,
                () -> SessionCompleter.withDefaults().complete(session));
    }

    /** The example of the package documentation. */
    @Test
    void exampleOfThePackage() {
        Session session = studio().shots(ShotSet.of(launched().build())).build();
        Completion completion = SessionCompleter.withDefaults().complete(session);
        Session complete = completion.session();
        assertTrue(completion.air().description().startsWith("21.0 degC (69.8 degF)"));
        assertEquals(
                Origin.COMPUTED,
                complete.shots()
                        .shots()
                        .get(0)
                        .reading(Metric.CARRY)
                        .orElseThrow()
                        .origin());
    }

    /** The same launch on a warm and a cold day: each carry is that of its own day, though the days are one session. */
    @Test
    void combinedDaysAreEachCompletedInTheirOwnAir() {
        Session warm = studio().shots(ShotSet.of(launched().build())).build();
        Session cold = warm.toBuilder().temperature(celsius(2.0)).build();
        Session both = Session.combine(List.of(warm, cold));
        assertEquals(2, both.parts().size());
        Completion whole = SessionCompleter.withDefaults().complete(both);
        List<Shot> shots = whole.session().shots().shots();
        List<Session> days = List.of(warm, cold);
        for (int i = 0; i < 2; i++) {
            Shot alone =
                    only(SessionCompleter.withDefaults().complete(days.get(i)).session());
            assertEquals(alone.value(Metric.CARRY), shots.get(i).value(Metric.CARRY), 0.0);
            assertEquals(i, shots.get(i).part().orElseThrow());
        }
        // Which is longer hangs on the launch: so much spin likes the denser air of the cold day.
        assertTrue(
                Math.abs(shots.get(0).value(Metric.CARRY) - shots.get(1).value(Metric.CARRY)) > 0.5, shots::toString);
        assertTrue(whole.warnings().stream().noneMatch(w -> w.code().equals("temperature-assumed")));
        Session oneAir = both.toBuilder().temperature(celsius(2.0)).build();
        List<Shot> cool = SessionCompleter.withDefaults()
                .complete(oneAir)
                .session()
                .shots()
                .shots();
        assertEquals(cool.get(0).value(Metric.CARRY), cool.get(1).value(Metric.CARRY), 0.0);
    }
}
