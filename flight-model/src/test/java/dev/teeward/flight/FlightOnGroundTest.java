package dev.teeward.flight;

import static dev.teeward.quantity.Units.degrees;
import static dev.teeward.quantity.Units.feet;
import static dev.teeward.quantity.Units.meters;
import static dev.teeward.quantity.Units.mph;
import static dev.teeward.quantity.Units.rpm;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.flight.ground.Ground;
import dev.teeward.flight.ground.RollOut;
import dev.teeward.flight.ground.Terrain;
import dev.teeward.flight.ground.Turf;
import dev.teeward.flight.ground.TurfClass;
import org.junit.jupiter.api.Test;

/** Flights over ground: what they share with plain flights, and what they add. */
class FlightOnGroundTest {
    private static final FlightModel PLAIN = FlightModel.standard();
    private static final Ground FAIRWAY = Ground.of(TurfClass.FAIRWAY);
    private static final LaunchConditions DRIVE = launch(160.0, 11.0, 2_600.0, 4.0);
    private static final LaunchConditions WEDGE = launch(95.0, 28.0, 10_500.0, 0.0);

    private static LaunchConditions launch(double ballSpeed, double angle, double spin, double tilt) {
        return LaunchConditions.builder()
                .ballSpeed(mph(ballSpeed))
                .launchAngle(degrees(angle))
                .spinRate(rpm(spin))
                .axisTilt(degrees(tilt))
                .build();
    }

    @Test
    void groundDoesNotTouchTheFlight() {
        Flight plain = PLAIN.fly(DRIVE);
        Flight grounded = PLAIN.withGround(FAIRWAY).fly(DRIVE);
        assertEquals(plain.carry(), grounded.carry());
        assertEquals(plain.side(), grounded.side());
        assertEquals(plain.flightTimeSeconds(), grounded.flightTimeSeconds(), 0.0);
        assertEquals(plain.apex(), grounded.apex());
        assertEquals(plain.warnings(), grounded.warnings());
    }

    @Test
    void aPlainFlightHasNoTotal() {
        Flight plain = PLAIN.fly(DRIVE);
        assertTrue(plain.total().isEmpty());
        assertTrue(plain.run().isEmpty());
        assertTrue(plain.rollOut().isEmpty());
        assertTrue(PLAIN.ground().isEmpty());
    }

    @Test
    void theTotalIsCarryPlusRunAndTheDistanceOfTheRest() {
        Flight flight = PLAIN.withGround(FAIRWAY).fly(DRIVE);
        RollOut out = flight.rollOut().orElseThrow();
        double total = flight.total().orElseThrow().meters();
        assertEquals(
                Math.hypot(out.rest().downrange().meters(), out.rest().side().meters()), total, 1e-9);
        assertEquals(total, flight.carry().meters() + flight.run().orElseThrow().meters(), 1e-9);
        assertEquals(
                flight.landing().downrange().meters(), out.landing().downrange().meters(), 0.0);
        assertEquals(flight.landing().side().meters(), out.landing().side().meters(), 0.0);
        assertTrue(out.rest().side().meters() > flight.side().meters(), "it keeps going the way it curves");
        double run = flight.run().orElseThrow().yards();
        assertTrue(run > 10.0 && run < 45.0, () -> "run " + run);
    }

    /** For draws and fades, starts to either side, every turf, and slopes along and across; and the mirror image has the same total. */
    @Test
    void theTotalIsCarryPlusRunForEveryHandTurfAndSlope() {
        for (TurfClass turf : TurfClass.values()) {
            for (double rise : new double[] {-1.5, 0.0, 1.5}) {
                for (double across : new double[] {-1.5, 0.0, 1.5}) {
                    for (double start : new double[] {-6.0, 3.0}) {
                        Flight one = fly(turf, rise, across, start, -8.0);
                        Flight mirrored = fly(turf, rise, -across, -start, 8.0);
                        double total = one.total().orElseThrow().meters();
                        RollOut out = one.rollOut().orElseThrow();
                        assertTrue(out.atRest(), one::toString);
                        assertEquals(
                                total,
                                one.carry().meters() + one.run().orElseThrow().meters(),
                                1e-9);
                        assertEquals(total, out.rest().distance().meters(), 1e-9);
                        assertEquals(total, mirrored.total().orElseThrow().meters(), 1e-4, one::toString);
                        assertEquals(
                                out.rest().side().meters(),
                                -mirrored.rollOut().orElseThrow().rest().side().meters(),
                                1e-4);
                    }
                }
            }
        }
    }

    private static Flight fly(TurfClass turf, double rise, double across, double start, double tilt) {
        Ground ground = Ground.of(turf).withTerrain(Terrain.plane(degrees(rise), degrees(across)));
        return PLAIN.withGround(ground)
                .fly(LaunchConditions.builder()
                        .ballSpeed(mph(118.0))
                        .launchAngle(degrees(17.0))
                        .startDirection(degrees(start))
                        .spinRate(rpm(6_000.0))
                        .axisTilt(degrees(tilt))
                        .build());
    }

    @Test
    void aSpunWedgeEndsShortOfWhereItLanded() {
        Flight flight = PLAIN.withGround(Ground.of(TurfClass.GREEN)).fly(WEDGE);
        assertTrue(flight.run().orElseThrow().meters() < 0.0, flight.rollOut()::toString);
        assertTrue(flight.total().orElseThrow().meters() < flight.carry().meters());
    }

    @Test
    void levelTerrainIsTheLandingElevation() {
        for (double elevation : new double[] {0.0, -12.0}) {
            Flight byElevation = PLAIN.withLandingElevation(meters(elevation)).fly(DRIVE);
            Flight byTerrain = PLAIN.withGround(FAIRWAY.withTerrain(Terrain.level(meters(elevation))))
                    .fly(DRIVE);
            assertEquals(byElevation.carry().meters(), byTerrain.carry().meters(), 1e-9);
            assertEquals(byElevation.side().meters(), byTerrain.side().meters(), 1e-9);
            assertEquals(byElevation.apex().meters(), byTerrain.apex().meters(), 0.0);
            assertEquals(
                    PLAIN.withLandingElevation(meters(elevation))
                            .withGround(FAIRWAY)
                            .fly(DRIVE)
                            .total()
                            .orElseThrow()
                            .meters(),
                    byTerrain.total().orElseThrow().meters(),
                    1e-6);
        }
    }

    @Test
    void aVacuumParabolaMeetsASlopeByTheClosedForm() {
        double a = Math.toRadians(4.0);
        FlightModel vacuum = PLAIN.withAir(dev.teeward.flight.air.AirState.of(0.0, 1.8e-5))
                .withGround(FAIRWAY.withTerrain(Terrain.plane(degrees(4.0), degrees(0.0))));
        Flight flight = vacuum.fly(launch(100.0, 30.0, 3_000.0, 0.0));
        double v = 44.704;
        double up = Math.toRadians(30.0);
        double time = 2.0 * v * (Math.sin(up) - Math.cos(up) * Math.tan(a)) / 9.80665;
        assertEquals(time, flight.flightTimeSeconds(), 1e-9);
        assertEquals(v * Math.cos(up) * time, flight.carry().meters(), 1e-7);
        assertEquals(
                flight.carry().meters() * Math.tan(a), flight.landing().height().meters(), 1e-7);
    }

    @Test
    void uphillRunsLessThanLevelAndDownhillMore() {
        double up = total(2.0);
        double level = total(0.0);
        double down = total(-2.0);
        assertTrue(up < level && level < down, () -> up + " " + level + " " + down);
    }

    private static double total(double slope) {
        return PLAIN.withGround(FAIRWAY.withTerrain(Terrain.plane(degrees(slope), degrees(0.0))))
                .fly(DRIVE)
                .total()
                .orElseThrow()
                .meters();
    }

    /** A ball may land before its apex, on a hill; its greatest height is then that of the landing. */
    @Test
    void aBallThatMeetsAHillsideRisingHasItsApexThere() {
        Terrain hill = Terrain.plane(degrees(10.0), degrees(0.0));
        Flight flight = PLAIN.withGround(FAIRWAY.withTerrain(hill)).fly(launch(60.0, 12.0, 1_500.0, 0.0));
        assertTrue(flight.descentAngle().degrees() < 0.0, flight::toString);
        assertEquals(flight.landing().height().meters(), flight.apex().meters(), 1e-9);
        assertEquals(flight.flightTimeSeconds(), flight.apexTimeSeconds(), 0.0);
    }

    @Test
    void aBallThatDoesNotRiseAboveTheSlopeLandsAtOnceAndRolls() {
        Terrain hill = Terrain.plane(degrees(15.0), degrees(0.0));
        Flight flight = PLAIN.withGround(FAIRWAY.withTerrain(hill)).fly(launch(30.0, 10.0, 1_500.0, 0.0));
        assertEquals("lands-at-once", flight.warnings().get(0).code());
        assertEquals(0.0, flight.carry().meters(), 0.0);
        assertTrue(flight.rollOut().orElseThrow().bounces() > 0);
    }

    @Test
    void aRunawayBallIsSaidToBeOne() {
        Ground icy = Ground.of(Turf.of(0.3, 0.02)).withTerrain(Terrain.plane(degrees(-5.0), degrees(0.0)));
        Flight flight = PLAIN.withGround(icy).fly(DRIVE);
        assertTrue(flight.warnings().stream().anyMatch(w -> w.code().equals("does-not-stop")));
        assertTrue(flight.total().isEmpty() && flight.run().isEmpty(), "it has not stopped yet");
        assertTrue(flight.rollOut().orElseThrow().restKnown());
    }

    /** Around 0 deg, 150 mph: no launch that grazes the turf or tops the ball has a total, and the warning says so. */
    @Test
    void aBallThatGrazesTheTurfHasNoTotal() {
        FlightModel model = PLAIN.withGround(FAIRWAY);
        for (double angle = -3.0; angle <= 3.0; angle += 0.05) {
            Flight flight = model.fly(launch(150.0, angle, 2_500.0, 0.0));
            double total = flight.total().map(t -> t.yards()).orElse(0.0);
            boolean warned = flight.warnings().stream().anyMatch(w -> w.code().equals("bounce-outside-model"));
            assertEquals(flight.total().isEmpty(), warned, flight::toString);
            assertTrue(total < 400.0, () -> flight + " total " + total);
        }
        assertTrue(model.fly(launch(150.0, -0.1, 2_500.0, 0.0)).total().isEmpty());
        assertEquals(
                0,
                model.fly(launch(150.0, -0.1, 2_500.0, 0.0))
                        .rollOut()
                        .orElseThrow()
                        .bounces());
        // A putt rolls from the first, and slowly: 4 mph is that of a long one.
        assertTrue(model.fly(launch(4.0, 0.0, 0.0, 0.0)).total().isPresent());
    }

    @Test
    void refusesTwoElevationsAndABuriedBall() {
        Ground sloping = FAIRWAY.withTerrain(Terrain.plane(degrees(1.0), degrees(0.0)));
        FlightModel raised = PLAIN.withLandingElevation(feet(-10.0));
        assertThrows(IllegalArgumentException.class, () -> raised.withGround(sloping));
        FlightModel on = PLAIN.withGround(sloping);
        assertThrows(IllegalArgumentException.class, () -> on.withLandingElevation(feet(-10.0)));
        Ground above = FAIRWAY.withTerrain((x, z) -> 1.0);
        assertThrows(IllegalArgumentException.class, () -> PLAIN.withGround(above));
    }

    @Test
    void everyCopyKeepsTheGround() {
        FlightModel model = PLAIN.withGround(FAIRWAY)
                .withBall(Ball.standard())
                .withWind(PLAIN.wind())
                .withAir(PLAIN.air())
                .withLandingElevation(meters(-1.0))
                .withGravity(9.8);
        assertEquals(FAIRWAY, model.ground().orElseThrow());
        assertTrue(model.toString().contains("Penner 2002"));
    }

    /** The launch's landing with the ball's own inertia: a shell and a solid ball bounce differently. */
    @Test
    void theBallsInertiaCounts() {
        double solid = PLAIN.withGround(FAIRWAY).fly(DRIVE).run().orElseThrow().meters();
        double shell = PLAIN.withBall(Ball.standard().withInertiaFactor(0.6))
                .withGround(FAIRWAY)
                .fly(DRIVE)
                .run()
                .orElseThrow()
                .meters();
        assertTrue(Math.abs(solid - shell) > 0.5);
    }
}
