package dev.teeward.flight.study;

import static dev.teeward.flight.study.SensitivityTest.launch;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.flight.Flight;
import dev.teeward.flight.FlightException;
import dev.teeward.flight.FlightModel;
import dev.teeward.flight.LaunchConditions;
import dev.teeward.flight.air.AirState;
import dev.teeward.flight.air.Roughness;
import dev.teeward.flight.air.Wind;
import dev.teeward.flight.air.WindProfile;
import dev.teeward.flight.ground.Ground;
import dev.teeward.flight.ground.Terrain;
import dev.teeward.flight.ground.TurfClass;
import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Length;
import dev.teeward.quantity.Speed;
import java.util.List;
import java.util.SplittableRandom;
import org.hipparchus.ode.nonstiff.ClassicalRungeKuttaIntegrator;
import org.hipparchus.ode.nonstiff.DormandPrince54Integrator;
import org.hipparchus.ode.nonstiff.GraggBulirschStoerIntegrator;
import org.junit.jupiter.api.Test;

class ReferenceFlightTest {
    private static final ReferenceFlight REFERENCE = ReferenceFlight.withDefaults();

    /** The promise of the flight model for the landing [m]. */
    private static final double LANDING_BOUND = 1e-4;

    @Test
    void theLibraryLandsWithinItsPromiseInUniformAndProfileWindAndOnSlopes() {
        SplittableRandom random = new SplittableRandom(7L);
        double worst = 0.0;
        for (int i = 0; i < 120; i++) {
            Angle from = Angle.ofDegrees(random.nextDouble(-180.0, 180.0));
            Speed speed = Speed.ofMetersPerSecond(random.nextDouble(0.0, 8.0));
            FlightModel model = FlightModel.standard()
                    .withWind(i % 2 == 0 ? Wind.from(from, speed) : WindProfile.logLaw(from, speed, Roughness.OPEN))
                    .withLandingElevation(Length.ofMeters(random.nextDouble(-10.0, 3.0)));
            ReferenceFlight.Result r = REFERENCE.fly(
                    model,
                    launch(
                            random.nextDouble(30.0, 80.0),
                            random.nextDouble(10.0, 40.0),
                            random.nextDouble(-8.0, 8.0),
                            random.nextDouble(1_500.0, 10_000.0),
                            random.nextDouble(-20.0, 20.0)));
            worst = Math.max(worst, r.error().meters());
            assertEquals(r.apex().meters(), r.flight().apex().meters(), LANDING_BOUND);
            for (FlightOutput output : FlightOutput.of(FlightModel.standard())) {
                assertEquals(output.of(r.flight()) - r.value(output), r.error(output), 0.0);
                assertEquals(0.0, r.error(output), 1e-4 * Math.max(1.0, output.scale()));
            }
        }
        assertTrue(worst > 0.0 && worst <= LANDING_BOUND, "worst " + worst + " m");
    }

    /** The same flight, bounced and run, over a slope, a hill and a valley. */
    @Test
    void overTerrainBothLandOnTheTerrainAndRunToTheSameRest() {
        Terrain hill = (x, z) -> 6.0 / (1.0 + (x - 150.0) * (x - 150.0) / 900.0) - 6.0 / (1.0 + 25.0);
        Terrain valley = (x, z) -> -5.0 * (1.0 - 1.0 / (1.0 + x * x / 1e4)) + 0.02 * z;
        SplittableRandom random = new SplittableRandom(11L);
        double worst = 0.0;
        double lowest = 0.0;
        for (Terrain terrain : List.of(Terrain.plane(Angle.ofDegrees(2.0), Angle.ofDegrees(-1.5)), hill, valley)) {
            FlightModel model = FlightModel.standard()
                    .withGround(Ground.of(TurfClass.FAIRWAY).withTerrain(terrain));
            for (int i = 0; i < 20; i++) {
                ReferenceFlight.Result r = REFERENCE.fly(
                        model,
                        launch(
                                random.nextDouble(40.0, 70.0),
                                random.nextDouble(12.0, 25.0),
                                random.nextDouble(-8.0, 8.0),
                                random.nextDouble(3_000.0, 8_000.0),
                                random.nextDouble(-15.0, 15.0)));
                worst = Math.max(worst, r.error().meters());
                lowest = Math.min(lowest, r.flight().landing().height().meters());
                double x = r.carry().meters();
                assertEquals(x, r.flight().carry().meters(), LANDING_BOUND, "the referee is on the terrain");
                if (r.flight().total().isEmpty()) {
                    // The steepest of the hill is as steep as holds a ball just so: some creep for more than 60 s.
                    assertTrue(r.flight().warnings().stream()
                            .anyMatch(w -> w.code().equals("does-not-stop")));
                    continue;
                }
                // The run is exact to 0.1 mm, and one landing 0.1 mm from another may bounce a little otherwise.
                assertEquals(0.0, r.error(FlightOutput.TOTAL), 5e-3);
                assertEquals(r.value(FlightOutput.TOTAL) - x, r.value(FlightOutput.RUN), 1e-12);
            }
        }
        double farthest = worst;
        assertTrue(farthest > 0.0 && farthest <= LANDING_BOUND, () -> "worst " + farthest + " m");
        assertTrue(lowest < -1.0, "some landed below the start");
    }

    @Test
    void withoutGroundThereIsNoTotal() {
        ReferenceFlight.Result r = REFERENCE.fly(FlightModel.standard(), launch(53.0, 17.0, 0.0, 6_400.0, 0.0));
        for (FlightOutput output : List.of(FlightOutput.TOTAL, FlightOutput.RUN)) {
            IllegalArgumentException e = assertThrows(IllegalArgumentException.class, () -> r.value(output));
            assertTrue(e.getMessage().contains("withGround"), e.getMessage());
            assertThrows(IllegalArgumentException.class, () -> output.of(r.flight()));
        }
        assertEquals(7, FlightOutput.of(FlightModel.standard()).size());
        assertEquals(
                List.of(FlightOutput.values()),
                FlightOutput.of(FlightModel.standard().withGround(Ground.of(TurfClass.GREEN))));
    }

    @Test
    void integratorsAgreeWithEachOther() {
        LaunchConditions launch = launch(53.0, 17.0, -2.0, 6_400.0, 6.0);
        FlightModel model =
                FlightModel.standard().withWind(Wind.from(Angle.ofDegrees(30.0), Speed.ofMetersPerSecond(4.0)));
        ReferenceFlight.Result first = REFERENCE.fly(model, launch);
        ReferenceFlight extrapolation =
                ReferenceFlight.with(() -> new GraggBulirschStoerIntegrator(1e-9, 0.1, 1e-12, 1e-12));
        ReferenceFlight lower = ReferenceFlight.with(() -> new DormandPrince54Integrator(1e-9, 0.02, 1e-12, 1e-12));
        ReferenceFlight fixed = ReferenceFlight.with(() -> new ClassicalRungeKuttaIntegrator(0.002));
        for (ReferenceFlight other : List.of(extrapolation, lower, fixed)) {
            ReferenceFlight.Result second = other.fly(model, launch);
            for (FlightOutput output : FlightOutput.of(FlightModel.standard())) {
                assertEquals(first.value(output), second.value(output), 2e-8 * output.scale(), second.toString());
            }
        }
        assertTrue(first.evaluations() > 100);
        assertTrue(first.toString().contains("the library lands"), first.toString());
    }

    /** Closed form of a throw in a vacuum from a height h: t = (v sin + sqrt((v sin)^2 + 2 g h)) / g. */
    @Test
    void aVacuumIsAThrow() {
        FlightModel model =
                FlightModel.standard().withAir(AirState.of(0.0, 1.8e-5)).withLandingElevation(Length.ofMeters(-12.0));
        ReferenceFlight.Result r = REFERENCE.fly(model, launch(40.0, 30.0, 10.0, 5_000.0, 10.0));
        double up = 40.0 * Math.sin(Math.toRadians(30.0));
        double t = (up + Math.sqrt(up * up + 2.0 * 9.80665 * 12.0)) / 9.80665;
        double carry = 40.0 * Math.cos(Math.toRadians(30.0)) * t;
        assertEquals(t, r.value(FlightOutput.FLIGHT_TIME), 1e-10);
        assertEquals(carry, r.carry().meters(), 1e-9);
        assertEquals(carry * Math.sin(Math.toRadians(10.0)), r.side().meters(), 1e-9);
        assertEquals(0.0, r.value(FlightOutput.CURVE), 1e-9);
        assertEquals(up * up / (2.0 * 9.80665), r.apex().meters(), 1e-9);
        assertEquals(up / 9.80665, r.apexTimeSeconds(), 1e-9);
    }

    @Test
    void noFlightAndNoApexAreNotFailures() {
        ReferenceFlight.Result none = REFERENCE.fly(FlightModel.standard(), launch(40.0, -3.0, 0.0, 3_000.0, 0.0));
        assertEquals(0.0, none.carry().meters(), 0.0);
        assertEquals(0.0, none.error().meters(), 0.0);
        FlightModel down = FlightModel.standard().withLandingElevation(Length.ofMeters(-10.0));
        ReferenceFlight.Result dive = REFERENCE.fly(down, launch(40.0, -20.0, 0.0, 100.0, 0.0));
        assertEquals(0.0, dive.apex().meters(), 0.0);
        assertEquals(0.0, dive.error().meters(), LANDING_BOUND);
        Flight flight = dive.flight();
        assertTrue(flight.carry().meters() > 5.0);
    }

    @Test
    void failuresSayWhat() {
        LaunchConditions launch = launch(53.0, 17.0, 0.0, 6_400.0, 0.0);
        assertThrows(
                FlightException.class,
                () -> REFERENCE.fly(FlightModel.standard().withLandingElevation(Length.ofMeters(200.0)), launch));
        ReferenceFlight coarse = ReferenceFlight.with(() -> new DormandPrince54Integrator(1.0, 2.0, 1e-14, 1e-14));
        IllegalStateException e =
                assertThrows(IllegalStateException.class, () -> coarse.fly(FlightModel.standard(), launch));
        assertTrue(e.getMessage().contains("gave up"), e.getMessage());
    }
}
