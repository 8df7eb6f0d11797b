package dev.teeward.flight;

import static dev.teeward.quantity.Units.degrees;
import static dev.teeward.quantity.Units.feet;
import static dev.teeward.quantity.Units.meters;
import static dev.teeward.quantity.Units.mph;
import static dev.teeward.quantity.Units.rpm;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.flight.ground.GridTerrain;
import dev.teeward.flight.ground.Ground;
import dev.teeward.flight.ground.Penner2002;
import dev.teeward.flight.ground.Stimpmeter;
import dev.teeward.flight.ground.Terrain;
import dev.teeward.flight.ground.Turf;
import dev.teeward.flight.ground.TurfClass;
import org.junit.jupiter.api.Test;

/** The examples of the documentation of the ground, with the numbers they show. */
class GroundExamplesTest {
    @Test
    void packageExample() {
        Terrain uphill = Terrain.plane(degrees(2.0), degrees(0.0));
        Ground ground = Ground.of(TurfClass.FAIRWAY).withTerrain(uphill);
        FlightModel model = FlightModel.standard().withGround(ground);
        Flight flight = model.fly(LaunchConditions.builder()
                .ballSpeed(mph(150.0))
                .launchAngle(degrees(12.0))
                .spinRate(rpm(2_700.0))
                .build());
        assertTrue(flight.total().orElseThrow().meters() > flight.carry().meters());
    }

    @Test
    void terrainExamples() {
        Terrain uphill = Terrain.plane(degrees(3.0), degrees(0.0));
        assertEquals(5.24, uphill.elevation(100.0, 0.0), 0.005);
        Terrain valley = (x, z) -> -5.0 * (1.0 - 1.0 / (1.0 + x * x / 1e4));
        assertEquals(-2.5, valley.elevation(100.0, 0.0), 1e-12);
        double[][] meters = {{0.0, 0.0, 0.0}, {0.5, 0.6, 0.7}, {1.0, 1.2, 1.4}};
        Terrain green = GridTerrain.of(meters(140.0), meters(-10.0), meters(10.0), meters);
        assertEquals(0.6, green.elevation(150.0, 0.0), 1e-12);
        assertEquals(0.0, green.elevation(0.0, 0.0), 1e-12);
    }

    @Test
    void turfExamples() {
        assertEquals(0.549, Stimpmeter.deceleration(feet(10.0)), 0.0005);
        assertEquals(9.6, Stimpmeter.level(feet(12.0), feet(8.0)).feet(), 1e-9);
        assertEquals(0.0784, Turf.ofStimp(feet(10.0)).rollingResistance(), 0.00005);
        assertEquals(0.499, Turf.ofStimp(feet(11.0)).rollDeceleration(9.80665), 0.0005);
        assertEquals(0.0784, TurfClass.GREEN.turf().rollingResistance(), 0.00005);
    }

    @Test
    void bounceExamples() {
        double[] motion = {13.0, -13.3, 0.0, 0.0, 0.0, 523.6};
        Penner2002.withDefaults().bounce(motion, new double[] {0.0, 1.0, 0.0}, TurfClass.FAIRWAY.turf(), 0.021335, 0.4);
        assertEquals(3.0, motion[1], 0.05);
        assertEquals(
                15.4,
                Penner2002.withDefaults()
                        .tilt(18.6, degrees(44.4), TurfClass.FAIRWAY.turf())
                        .degrees(),
                1e-9);
    }
}
