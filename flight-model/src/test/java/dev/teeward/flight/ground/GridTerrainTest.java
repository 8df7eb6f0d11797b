package dev.teeward.flight.ground;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dev.teeward.quantity.Length;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class GridTerrainTest extends TerrainContract {
    private static final Length ORIGIN = Length.ofMeters(-40.0);
    private static final Length SPACING = Length.ofMeters(20.0);

    /** The slope breaks at the border, and there the difference is between both sides. */
    @Override
    protected double slopeTolerance() {
        return 0.05;
    }

    @Override
    protected Terrain terrain() {
        SplittableRandom random = new SplittableRandom(3L);
        double[][] elevations = new double[12][8];
        for (double[] row : elevations) {
            for (int j = 0; j < row.length; j++) {
                row[j] = random.nextDouble(-1.0, 0.0);
            }
        }
        return GridTerrain.of(ORIGIN, ORIGIN, SPACING, elevations);
    }

    private static double quadratic(double x, double z) {
        return -1.0 + 0.02 * x - 0.03 * z + 1e-4 * x * z;
    }

    private static GridTerrain sampled() {
        double[][] elevations = new double[6][5];
        for (int i = 0; i < 6; i++) {
            for (int j = 0; j < 5; j++) {
                elevations[i][j] = quadratic(-40.0 + 20.0 * i, -40.0 + 20.0 * j);
            }
        }
        return GridTerrain.of(ORIGIN, ORIGIN, SPACING, elevations);
    }

    @Test
    void reproducesABilinearSurface() {
        GridTerrain grid = sampled();
        for (double x = -40.0; x <= 60.0; x += 3.7) {
            for (double z = -40.0; z <= 40.0; z += 2.9) {
                assertEquals(quadratic(x, z), grid.elevation(x, z), 1e-12);
                assertEquals(0.02 + 1e-4 * z, grid.slopeAlongTarget(x, z), 1e-12);
                assertEquals(-0.03 + 1e-4 * x, grid.slopeTowardsRight(x, z), 1e-12);
            }
        }
    }

    @Test
    void isConstantBeyondTheBorder() {
        GridTerrain grid = sampled();
        assertEquals(quadratic(60.0, 10.0), grid.elevation(1e6, 10.0), 1e-12);
        assertEquals(quadratic(10.0, -40.0), grid.elevation(10.0, -1e6), 1e-12);
        assertEquals(0.0, grid.slopeAlongTarget(61.0, 0.0), 0.0);
        assertEquals(0.0, grid.slopeTowardsRight(0.0, 41.0), 0.0);
    }

    @Test
    void refusesWhatIsNoGrid() {
        double[][] ragged = {{0.0, 0.0}, {0.0, 0.0, 0.0}};
        double[][] thin = {{0.0, 0.0}};
        double[][] broken = {{0.0, Double.NaN}, {0.0, 0.0}};
        double[][] good = {{0.0, 0.0}, {0.0, 0.0}};
        for (double[][] bad : new double[][][] {ragged, thin, broken, {}}) {
            assertThrows(IllegalArgumentException.class, () -> GridTerrain.of(ORIGIN, ORIGIN, SPACING, bad));
        }
        assertThrows(IllegalArgumentException.class, () -> GridTerrain.of(ORIGIN, ORIGIN, Length.ofMeters(0.01), good));
    }
}
