package dev.teeward.flight.batch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.flight.Accuracy;
import dev.teeward.flight.Ball;
import dev.teeward.flight.Flight;
import dev.teeward.flight.FlightModel;
import dev.teeward.flight.batch.RandomLaunches.Sample;
import dev.teeward.flight.ground.Ground;
import dev.teeward.flight.ground.Terrain;
import dev.teeward.flight.ground.TurfClass;
import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Length;
import dev.teeward.quantity.Warning;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.function.IntFunction;
import org.junit.jupiter.api.Test;

class GroundBatchTest {
    private static final Ground LEVEL = Ground.of(TurfClass.FAIRWAY);
    private static final Ground SLOPE = LEVEL.withTerrain(Terrain.plane(Angle.ofDegrees(-2.0), Angle.ofDegrees(1.0)));
    private static final Ground WAVES = LEVEL.withTerrain((x, z) -> 2.0 * (StrictMath.cos(x / 20.0 + 0.02 * z) - 1.0));

    private final Set<RowWarning> warned = EnumSet.noneOf(RowWarning.class);

    @Test
    void levelGroundHasTheTotalsOfSingleFlights() {
        for (Accuracy accuracy : Accuracy.values()) {
            RandomLaunches drawn = new RandomLaunches(Sample.ALONG_THE_BAG, 1_000, 10L);
            FlightModel model = FlightModel.standard().withGround(LEVEL).withAccuracy(accuracy);
            Arrays.setAll(drawn.elevation, row -> drawn.elevation[row] / 10.0);
            LaunchTable table =
                    drawn.launches().landingElevation(drawn.elevation).build();
            assertEquals(
                    0,
                    differing(drawn, FlightBatch.of(model).withThreads(2).fly(table), row -> drawn.over(model, row)));
        }
        assertTrue(warned.contains(RowWarning.BOUNCE_EXTRAPOLATED), warned::toString);
    }

    @Test
    void terrainsHaveTheBitsOfSingleFlights() {
        for (Ground ground : List.of(SLOPE, WAVES)) {
            for (Accuracy accuracy : Accuracy.values()) {
                RandomLaunches drawn = new RandomLaunches(Sample.ALONG_THE_BAG, 300, 20L);
                FlightModel model = FlightModel.standard().withGround(ground).withAccuracy(accuracy);
                LaunchTable table = drawn.launches().build();
                assertEquals(0, differing(drawn, FlightBatch.of(model).fly(table), row -> model));
                LaunchTable own = drawn.launches()
                        .density(drawn.density)
                        .viscosity(drawn.viscosity)
                        .windAlongTarget(drawn.along)
                        .windTowardsRight(drawn.across)
                        .build();
                assertEquals(
                        0,
                        differing(
                                drawn,
                                FlightBatch.of(model).withThreads(2).fly(own),
                                row -> drawn.inWind(drawn.inAir(model, row), row)));
            }
        }
        assertTrue(warned.contains(RowWarning.REYNOLDS_OUTSIDE_MODEL), warned::toString);
    }

    @Test
    void aSteepSlopeOfGreenDoesNotStopTheBall() {
        Ground steep =
                Ground.of(TurfClass.GREEN).withTerrain(Terrain.plane(Angle.ofDegrees(-15.0), Angle.ofDegrees(0.0)));
        RandomLaunches drawn = new RandomLaunches(Sample.ALONG_THE_BAG, 20, 30L);
        FlightModel model = FlightModel.standard().withGround(steep);
        FlightTable flights = FlightBatch.of(model).fly(drawn.launches().build());
        assertEquals(0, differing(drawn, flights, row -> model));
        assertTrue(flights.warned(RowWarning.DOES_NOT_STOP) > 10, warned::toString);
        for (int row = 0; row < flights.rows(); row++) {
            assertEquals(
                    flights.warnings(row).contains(RowWarning.DOES_NOT_STOP)
                            || flights.warnings(row).contains(RowWarning.BOUNCE_OUTSIDE_MODEL),
                    Double.isNaN(flights.total()[row]));
        }
    }

    /** The flights of one table over several models, with and without a ground. */
    @Test
    void onlyRowsOverAGroundHaveATotal() {
        int[] models = {0, 1, 2, 1};
        LaunchTable table = LaunchTable.builder()
                .ballSpeed(new double[] {60.0, 60.0, 60.0, 60.0})
                .launchAngle(new double[] {0.25, 0.25, 0.25, -0.1})
                .spinRate(new double[] {400.0, 400.0, 400.0, 400.0})
                .model(models)
                .build();
        FlightModel bare = FlightModel.of(Ball.standard());
        FlightTable flights = FlightBatch.of(List.of(bare, bare.withGround(LEVEL), bare.withGround(SLOPE)))
                .fly(table);
        assertTrue(Double.isNaN(flights.total()[0]) && Double.isNaN(flights.run()[0]));
        assertEquals(flights.carry()[0], flights.carry()[1]);
        assertTrue(flights.run()[1] > 0.0 && flights.carry()[2] > flights.carry()[1], "downhill it flies farther");
        assertEquals(flights.total()[2] - flights.carry()[2], flights.run()[2]);
        assertEquals(FlightStatus.LANDED_AT_ONCE, flights.status(3));
        assertTrue(Double.isNaN(flights.total()[3]) && Double.isNaN(flights.run()[3]), "where a topped ball stops");
        assertEquals(Set.of(RowWarning.LANDS_AT_ONCE, RowWarning.BOUNCE_OUTSIDE_MODEL), flights.warnings(3));
        FlightTable plain = FlightBatch.of(bare)
                .fly(LaunchTable.builder()
                        .ballSpeed(new double[] {60.0})
                        .launchAngle(new double[] {0.25})
                        .spinRate(new double[] {400.0})
                        .build());
        assertThrows(IllegalStateException.class, plain::total);
        assertThrows(IllegalStateException.class, plain::run);
    }

    @Test
    void aTerrainHasTheElevations() {
        double[] elevation = {0.0, 3.0};
        LaunchTable table = LaunchTable.builder()
                .ballSpeed(new double[] {60.0, 60.0})
                .launchAngle(new double[] {0.25, 0.25})
                .spinRate(new double[] {400.0, 400.0})
                .landingElevation(elevation)
                .build();
        FlightBatch batch = FlightBatch.of(FlightModel.standard().withGround(SLOPE));
        assertEquals(
                "row 1: landingElevation must be 0 over ground with a terrain, but was 3.0 m; the terrain has the elevations",
                assertThrows(IllegalArgumentException.class, () -> batch.fly(table))
                        .getMessage());
        elevation[1] = 0.0;
        assertEquals(2, batch.fly(table).landed());
    }

    private int differing(RandomLaunches drawn, FlightTable flights, IntFunction<FlightModel> models) {
        int differing = 0;
        int landed = 0;
        for (int row = 0; row < drawn.rows; row++) {
            if (!flights.status(row).landed()) {
                assertTrue(Double.isNaN(flights.total()[row]) && Double.isNaN(flights.run()[row]));
                continue;
            }
            landed++;
            warned.addAll(flights.warnings(row));
            Flight flight = models.apply(row).fly(drawn.launch(row));
            differing += differ(flight.carry().meters(), flights.carry()[row]);
            differing += differ(flight.side().meters(), flights.side()[row]);
            differing += differ(flight.curve().meters(), flights.curve()[row]);
            differing += differ(flight.apex().meters(), flights.apex()[row]);
            differing += differ(flight.flightTimeSeconds(), flights.flightTime()[row]);
            differing += differ(flight.descentAngle().radians(), flights.descentAngle()[row]);
            differing += differ(flight.landingSpeed().metersPerSecond(), flights.landingSpeed()[row]);
            differing += differ(flight.landingSpin().radiansPerSecond(), flights.landingSpin()[row]);
            differing += differ(flight.total().map(Length::meters).orElse(Double.NaN), flights.total()[row]);
            differing += differ(flight.run().map(Length::meters).orElse(Double.NaN), flights.run()[row]);
            assertEquals(
                    flight.warnings().stream().map(Warning::code).sorted().toList(),
                    flights.warnings(row).stream()
                            .map(RowWarning::code)
                            .sorted()
                            .toList());
        }
        assertTrue(landed > 0.8 * drawn.rows, "landed: " + landed);
        return differing;
    }

    private static int differ(double a, double b) {
        return Double.doubleToLongBits(a) == Double.doubleToLongBits(b) ? 0 : 1;
    }
}
