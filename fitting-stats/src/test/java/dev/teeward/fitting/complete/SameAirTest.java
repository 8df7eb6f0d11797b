package dev.teeward.fitting.complete;

import static dev.teeward.quantity.Units.celsius;
import static dev.teeward.quantity.Units.degrees;
import static dev.teeward.quantity.Units.feet;
import static dev.teeward.quantity.Units.mph;
import static dev.teeward.quantity.Units.rpm;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Origin;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.ShotSet;
import dev.teeward.flight.Flight;
import dev.teeward.flight.FlightModel;
import dev.teeward.flight.LaunchConditions;
import dev.teeward.flight.OtherAir;
import dev.teeward.flight.air.Atmosphere;
import dev.teeward.flight.air.Wind;
import dev.teeward.quantity.Warning;
import java.util.List;
import org.junit.jupiter.api.Test;

class SameAirTest {
    private static final LaunchConditions LAUNCH = LaunchConditions.builder()
            .ballSpeed(mph(118.0))
            .launchAngle(degrees(17.2))
            .startDirection(degrees(-1.2))
            .spinRate(rpm(6_400.0))
            .axisTilt(degrees(-4.0))
            .build();
    private static final OtherAir QUICK = OtherAir.withDefaults().withDraws(40);

    private static Shot.Builder launched(int number) {
        return Shot.builder("Alder")
                .number(number)
                .measured(Metric.BALL_SPEED, LAUNCH.ballSpeed().metersPerSecond())
                .measured(Metric.LAUNCH_ANGLE, LAUNCH.launchAngle().radians())
                .measured(Metric.START_DIRECTION, LAUNCH.startDirection().radians())
                .measured(Metric.SPIN_RATE, LAUNCH.spinRate().radiansPerSecond())
                .measured(Metric.AXIS_TILT, LAUNCH.axisTilt().radians());
    }

    private static Session high(Shot... shots) {
        return Session.builder()
                .elevation(feet(5_280.0))
                .temperature(celsius(28.0))
                .humidity(0.3)
                .shots(ShotSet.of(shots))
                .build();
    }

    private static List<String> codes(SameAir.Result result) {
        return result.warnings().stream().map(Warning::code).toList();
    }

    @Test
    void movesMeasuredResultsByWhatTheModelSays() {
        Session session = high(launched(1)
                .measured(Metric.CARRY, 160.0)
                .measured(Metric.SIDE, -12.0)
                .measured(Metric.DESCENT_ANGLE, 0.8)
                .measured(Metric.TOTAL, 165.0)
                .build());
        SameAir.Result result =
                SameAir.standardAt(feet(0.0)).withProcedure(QUICK).bring(session);
        Shot shot = result.session().shots().shots().get(0);
        Flight here = FlightModel.standard()
                .withAir(SessionAir.of(session).atmosphere())
                .fly(LAUNCH);
        Flight sea = FlightModel.standard().fly(LAUNCH);
        double ratio = sea.carry().meters() / here.carry().meters();
        assertTrue(ratio < 1.0, "thicker air");
        assertEquals(160.0 * ratio, shot.value(Metric.CARRY), 1e-9);
        assertEquals(-12.0 + sea.side().meters() - here.side().meters(), shot.value(Metric.SIDE), 1e-9);
        assertEquals(
                0.8 + sea.descentAngle().radians() - here.descentAngle().radians(),
                shot.value(Metric.DESCENT_ANGLE),
                1e-9);
        assertEquals(Origin.COMPUTED, shot.reading(Metric.CARRY).orElseThrow().origin());
        assertEquals(
                Origin.MEASURED, shot.reading(Metric.BALL_SPEED).orElseThrow().origin());
        assertFalse(shot.has(Metric.TOTAL), "it hangs on the turf of the place");
        SameAir.Carry carry = result.carries().get(0);
        assertEquals(160.0 * ratio, carry.carry().value(), 1e-9);
        assertTrue(carry.carry().interval().contains(carry.carry().value()));
        assertEquals(160.0, carry.from().meters(), 1e-9);
        assertEquals(1, carry.shot());
        assertTrue(codes(result).contains("temperature-effects-not-modelled"));
    }

    @Test
    void computesWhatWasNotMeasuredInTheOtherAir() {
        SameAir.Result result = SameAir.standardAt(feet(0.0))
                .withProcedure(QUICK)
                .bring(high(launched(1).build()));
        Shot shot = result.session().shots().shots().get(0);
        Flight sea = FlightModel.standard().fly(LAUNCH);
        assertEquals(sea.carry().meters(), shot.value(Metric.CARRY), 1e-9);
        assertEquals(sea.apex().meters(), shot.value(Metric.APEX), 1e-9);
        assertEquals(sea.curve().meters(), shot.value(Metric.CURVE), 1e-9);
        assertEquals(sea.landingSpeed().metersPerSecond(), shot.value(Metric.LANDING_SPEED), 1e-9);
    }

    @Test
    void theSessionThatComesOutIsInTheOtherAir() {
        Atmosphere air = Atmosphere.standardAt(feet(300.0)).withTemperature(celsius(12.0));
        SameAir.Result result = SameAir.of(air, feet(300.0))
                .withWind(degrees(90.0), mph(10.0))
                .withProcedure(QUICK)
                .withFlightModel(FlightModel.standard())
                .bring(high(launched(1).build()));
        SessionAir written = SessionAir.of(result.session());
        assertEquals(air.density(), written.atmosphere().density(), 1e-12);
        assertEquals(Wind.from(degrees(90.0), mph(10.0)), written.wind());
        assertTrue(written.warnings().isEmpty(), () -> written.warnings().toString());
        double side = FlightModel.standard()
                .withAir(air)
                .withWind(written.wind())
                .fly(LAUNCH)
                .side()
                .meters();
        assertEquals(side, result.session().shots().shots().get(0).value(Metric.SIDE), 1e-9);
    }

    @Test
    void theSameAirChangesNothing() {
        Session session = high(launched(1).measured(Metric.CARRY, 160.0).build());
        Atmosphere air = SessionAir.of(session).atmosphere();
        SameAir.Result result =
                SameAir.of(air, feet(5_280.0)).withProcedure(QUICK).bring(session);
        assertEquals(160.0, result.session().shots().shots().get(0).value(Metric.CARRY), 1e-9);
        assertFalse(codes(result).contains("temperature-effects-not-modelled"));
        assertEquals(160.0, result.carries().get(0).carry().interval().lower(), 1e-9);
    }

    @Test
    void aShotWithoutALaunchLosesWhatBelongsToTheOldAir() {
        Shot partial = Shot.builder("Alder")
                .number(7)
                .measured(Metric.CARRY, 150.0)
                .measured(Metric.CLUB_SPEED, 38.0)
                .build();
        SameAir.Result result =
                SameAir.standardAt(feet(0.0)).withProcedure(QUICK).bring(high(partial));
        Shot shot = result.session().shots().shots().get(0);
        assertFalse(shot.has(Metric.CARRY));
        assertTrue(shot.has(Metric.CLUB_SPEED));
        assertTrue(result.carries().isEmpty());
        assertTrue(codes(result).contains("not-brought-over"));
    }

    /** A device that measures better leaves less open; the ball stays as unknown as it is. */
    @Test
    void usesTheTolerancesOfTheSession() {
        OtherAir known = OtherAir.withDefaults().withDraws(100).withBallSpread(0.0, 0.0);
        Session loose = high(launched(1).build());
        Session tight = loose.toBuilder()
                .tolerance(Metric.BALL_SPEED, 0.01)
                .tolerance(Metric.LAUNCH_ANGLE, 1e-4)
                .tolerance(Metric.START_DIRECTION, 1e-4)
                .tolerance(Metric.SPIN_RATE, 0.1)
                .tolerance(Metric.AXIS_TILT, 1e-4)
                .build();
        assertTrue(width(tight, known) < width(loose, known) / 5.0);
    }

    private static double width(Session session, OtherAir procedure) {
        var interval = SameAir.standardAt(feet(0.0))
                .withProcedure(procedure)
                .bring(session)
                .carries()
                .get(0)
                .carry()
                .interval();
        return interval.upper() - interval.lower();
    }
}
