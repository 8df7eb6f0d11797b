package dev.teeward.flight.air;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** What every {@link Wind} must keep; a wind's own test extends this and supplies it. */
public abstract class WindContract {
    private static final int HEIGHTS = 10_000;

    /**
     * The wind under test.
     *
     * @return the wind
     */
    protected abstract Wind wind();

    /** Ground, below ground, where a ball flies, and far beyond. */
    private static double[] heights() {
        SplittableRandom random = new SplittableRandom(20_260_101L);
        double[] heights = new double[HEIGHTS];
        for (int i = 0; i < HEIGHTS; i++) {
            heights[i] = i % 2 == 0 ? random.nextDouble(-5.0, 60.0) : random.nextDouble(0.0, 3.0);
        }
        heights[0] = 0.0;
        heights[1] = -0.0;
        heights[2] = -1e9;
        heights[3] = 1e9;
        heights[4] = Double.MAX_VALUE;
        heights[5] = -Double.MAX_VALUE;
        heights[6] = Double.MIN_VALUE;
        return heights;
    }

    @Test
    void isFiniteAtEveryFiniteHeight() {
        Wind wind = wind();
        for (double height : heights()) {
            assertTrue(Double.isFinite(wind.alongTarget(height)), () -> "alongTarget at " + height);
            assertTrue(Double.isFinite(wind.towardsRight(height)), () -> "towardsRight at " + height);
        }
    }

    @Test
    void manyHeightsGiveTheSameBitsAsOne() {
        Wind wind = wind();
        double[] heights = heights();
        double[] along = new double[HEIGHTS];
        double[] right = new double[HEIGHTS];
        wind.velocities(heights, along, right);
        for (int i = 0; i < HEIGHTS; i++) {
            assertSameBits(wind.alongTarget(heights[i]), along[i], "along", heights[i]);
            assertSameBits(wind.towardsRight(heights[i]), right[i], "right", heights[i]);
        }
    }

    @Test
    void isContinuous() {
        Wind wind = wind();
        double step = 1e-9;
        for (double height : heights()) {
            if (Math.abs(height) < 100.0) {
                assertEquals(wind.alongTarget(height), wind.alongTarget(height + step), 1e-5, () -> "at " + height);
                assertEquals(wind.towardsRight(height), wind.towardsRight(height + step), 1e-5, () -> "at " + height);
            }
        }
    }

    @Test
    void threadsSeeTheSameWind() {
        Wind wind = wind();
        double[] heights = heights();
        double[] serial = IntStream.range(0, HEIGHTS)
                .mapToDouble(i -> wind.alongTarget(heights[i]))
                .toArray();
        double[] parallel = IntStream.range(0, HEIGHTS)
                .parallel()
                .mapToDouble(i -> wind.alongTarget(heights[i]))
                .toArray();
        for (int i = 0; i < HEIGHTS; i++) {
            assertSameBits(serial[i], parallel[i], "along", heights[i]);
        }
    }

    private static void assertSameBits(double one, double many, String component, double height) {
        assertEquals(
                Double.doubleToRawLongBits(one),
                Double.doubleToRawLongBits(many),
                () -> component + " at height " + height + ": " + one + " against " + many);
    }
}
