package dev.teeward.flight.ground;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** What every {@link Terrain} must keep; a terrain's own test extends this and supplies it. */
public abstract class TerrainContract {
    private static final int PLACES = 5_000;

    /**
     * The terrain under test.
     *
     * @return the terrain
     */
    protected abstract Terrain terrain();

    /**
     * How far a slope may be from the central difference over 10 cm, where the terrain is smooth.
     *
     * @return the tolerance [1]
     */
    protected double slopeTolerance() {
        return 1e-3;
    }

    /** Where balls land, and far beyond. */
    private static double[][] places() {
        SplittableRandom random = new SplittableRandom(20_260_203L);
        double[][] places = new double[PLACES][];
        for (int i = 0; i < PLACES; i++) {
            double reach = i % 50 == 0 ? 1e5 : 300.0;
            places[i] = new double[] {random.nextDouble(-0.2, 1.0) * reach, random.nextDouble(-0.3, 0.3) * reach};
        }
        places[0] = new double[] {0.0, 0.0};
        places[1] = new double[] {-0.0, -0.0};
        return places;
    }

    @Test
    void isFiniteEverywhere() {
        Terrain terrain = terrain();
        for (double[] p : places()) {
            assertTrue(Double.isFinite(terrain.elevation(p[0], p[1])), () -> p[0] + ", " + p[1]);
            assertTrue(Double.isFinite(terrain.slopeAlongTarget(p[0], p[1])), () -> p[0] + ", " + p[1]);
            assertTrue(Double.isFinite(terrain.slopeTowardsRight(p[0], p[1])), () -> p[0] + ", " + p[1]);
        }
    }

    @Test
    void isContinuous() {
        Terrain terrain = terrain();
        for (double[] p : places()) {
            double here = terrain.elevation(p[0], p[1]);
            double tolerance = 1e-6 + 1e-12 * Math.abs(here);
            assertEquals(here, terrain.elevation(p[0] + 1e-8, p[1]), tolerance);
            assertEquals(here, terrain.elevation(p[0], p[1] + 1e-8), tolerance);
        }
    }

    @Test
    void doesNotLieAboveTheBallAtTheStart() {
        assertTrue(terrain().elevation(0.0, 0.0) <= 0.0);
    }

    @Test
    void slopesAreThoseOfTheElevation() {
        Terrain terrain = terrain();
        double half = 0.05;
        for (double[] p : places()) {
            if (Math.abs(p[0]) > 1e3) {
                continue;
            }
            double along = (terrain.elevation(p[0] + half, p[1]) - terrain.elevation(p[0] - half, p[1])) / (2.0 * half);
            double right = (terrain.elevation(p[0], p[1] + half) - terrain.elevation(p[0], p[1] - half)) / (2.0 * half);
            assertEquals(along, terrain.slopeAlongTarget(p[0], p[1]), slopeTolerance(), () -> p[0] + ", " + p[1]);
            assertEquals(right, terrain.slopeTowardsRight(p[0], p[1]), slopeTolerance(), () -> p[0] + ", " + p[1]);
        }
    }

    @Test
    void theNormalIsAUnitVectorAtRightAnglesToTheSlopes() {
        Terrain terrain = terrain();
        double[] n = new double[3];
        for (double[] p : places()) {
            terrain.normal(p[0], p[1], n);
            assertEquals(1.0, Math.sqrt(n[0] * n[0] + n[1] * n[1] + n[2] * n[2]), 1e-12);
            assertTrue(n[1] > 0.0);
            assertEquals(0.0, n[0] + n[1] * terrain.slopeAlongTarget(p[0], p[1]), 1e-12);
            assertEquals(0.0, n[2] + n[1] * terrain.slopeTowardsRight(p[0], p[1]), 1e-12);
        }
    }

    @Test
    void threadsSeeTheSameTerrain() {
        Terrain terrain = terrain();
        double[][] places = places();
        double[] parallel = IntStream.range(0, PLACES)
                .parallel()
                .mapToDouble(i -> terrain.elevation(places[i][0], places[i][1]))
                .toArray();
        for (int i = 0; i < PLACES; i++) {
            assertEquals(terrain.elevation(places[i][0], places[i][1]), parallel[i], 0.0);
        }
    }
}
