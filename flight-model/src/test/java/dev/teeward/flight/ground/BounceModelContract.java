package dev.teeward.flight.ground;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** What every {@link BounceModel} must keep; a model's own test extends this and supplies it. */
public abstract class BounceModelContract {
    private static final int IMPACTS = 20_000;
    private static final double RADIUS = 0.021335;
    private static final double K = 0.4;
    private static final double[] UP = {0.0, 1.0, 0.0};

    /**
     * The model under test.
     *
     * @return the model
     */
    protected abstract BounceModel model();

    /** Into the ground at 0.01 to 45 m/s, from any side, with up to 1,500 rad/s about any axis. */
    private static double[][] impacts() {
        SplittableRandom random = new SplittableRandom(20_260_201L);
        double[][] impacts = new double[IMPACTS][];
        for (int i = 0; i < IMPACTS; i++) {
            double speed = i % 3 == 0 ? random.nextDouble(0.01, 1.0) : random.nextDouble(1.0, 45.0);
            double down = random.nextDouble(0.001, Math.PI / 2.0);
            double bearing = random.nextDouble(-Math.PI, Math.PI);
            double spin = i % 5 == 0 ? 0.0 : 1_500.0;
            impacts[i] = new double[] {
                speed * Math.cos(down) * Math.cos(bearing),
                -speed * Math.sin(down),
                speed * Math.cos(down) * Math.sin(bearing),
                random.nextDouble(-1.0, 1.0) * spin,
                random.nextDouble(-1.0, 1.0) * spin,
                random.nextDouble(-1.0, 1.0) * spin
            };
        }
        return impacts;
    }

    private static Turf turf(int i) {
        TurfClass[] classes = TurfClass.values();
        return classes[i % classes.length].turf();
    }

    private double[] bounced(double[] motion, double[] normal, Turf turf) {
        double[] after = motion.clone();
        model().bounce(after, normal, turf, RADIUS, K);
        return after;
    }

    private static double energy(double[] m) {
        double spin = m[3] * m[3] + m[4] * m[4] + m[5] * m[5];
        return (m[0] * m[0] + m[1] * m[1] + m[2] * m[2] + K * RADIUS * RADIUS * spin) / 2.0;
    }

    @Test
    void leavesFiniteNumbersAndAddsNoEnergy() {
        double[][] impacts = impacts();
        for (int i = 0; i < IMPACTS; i++) {
            double[] before = impacts[i];
            double[] after = bounced(before, UP, turf(i));
            assertTrue(Arrays.stream(after).allMatch(Double::isFinite), () -> Arrays.toString(before));
            assertTrue(energy(after) <= energy(before) * (1.0 + 1e-12), () -> Arrays.toString(before));
        }
    }

    @Test
    void leavesTheNormalAlone() {
        double[] normal = {0.6, 0.8, 0.0};
        bounced(new double[] {0.0, -5.0, 0.0, 0.0, 0.0, 100.0}, normal, turf(0));
        assertArrayEquals(new double[] {0.6, 0.8, 0.0}, normal);
    }

    @Test
    void treatsAllDirectionsAlike() {
        SplittableRandom random = new SplittableRandom(20_260_202L);
        double[][] impacts = impacts();
        for (int i = 0; i < 2_000; i++) {
            double a = random.nextDouble(-Math.PI, Math.PI);
            double b = random.nextDouble(-0.7, 0.7);
            double[] turnedNormal = turned(UP, 0, a, b);
            double[] turned = new double[6];
            System.arraycopy(turned(impacts[i], 0, a, b), 0, turned, 0, 3);
            System.arraycopy(turned(impacts[i], 3, a, b), 0, turned, 3, 3);
            double[] after = bounced(impacts[i], UP, turf(i));
            double[] expected = new double[6];
            System.arraycopy(turned(after, 0, a, b), 0, expected, 0, 3);
            System.arraycopy(turned(after, 3, a, b), 0, expected, 3, 3);
            assertArrayEquals(expected, bounced(turned, turnedNormal, turf(i)), 1e-8);
        }
    }

    /** A turn about the vertical, then one about x. */
    private static double[] turned(double[] v, int at, double a, double b) {
        double x = Math.cos(a) * v[at] + Math.sin(a) * v[at + 2];
        double z = -Math.sin(a) * v[at] + Math.cos(a) * v[at + 2];
        return new double[] {x, Math.cos(b) * v[at + 1] - Math.sin(b) * z, Math.sin(b) * v[at + 1] + Math.cos(b) * z};
    }

    /** A spin is an axial vector: in a mirror left to right its x and y change sign, the velocity's z does. */
    @Test
    void aMirrorImageBouncesAsTheMirrorImage() {
        double[][] impacts = impacts();
        double[] mirror = {1.0, 1.0, -1.0, -1.0, -1.0, 1.0};
        for (int i = 0; i < 2_000; i++) {
            double[] mirrored = new double[6];
            double[] expected = bounced(impacts[i], UP, turf(i));
            for (int j = 0; j < 6; j++) {
                mirrored[j] = mirror[j] * impacts[i][j];
                expected[j] *= mirror[j];
            }
            assertArrayEquals(expected, bounced(mirrored, UP, turf(i)), 1e-9);
        }
    }

    @Test
    void aSpinlessVerticalDropBouncesStraightUp() {
        for (TurfClass turf : TurfClass.values()) {
            double[] after = bounced(new double[] {0.0, -10.0, 0.0, 0.0, 0.0, 0.0}, UP, turf.turf());
            assertEquals(0.0, after[0], 1e-12);
            assertEquals(0.0, after[2], 1e-12);
            assertTrue(after[1] >= 0.0 && after[1] <= 10.0, () -> turf + " " + after[1]);
        }
    }

    @Test
    void threadsSeeTheSameBounce() {
        double[][] impacts = impacts();
        double[][] serial = new double[IMPACTS][];
        for (int i = 0; i < IMPACTS; i++) {
            serial[i] = bounced(impacts[i], UP, turf(i));
        }
        double[][] parallel = IntStream.range(0, IMPACTS)
                .parallel()
                .mapToObj(i -> bounced(impacts[i], UP, turf(i)))
                .toArray(double[][]::new);
        for (int i = 0; i < IMPACTS; i++) {
            assertArrayEquals(serial[i], parallel[i], 0.0);
        }
    }

    @Test
    void hasAReference() {
        assertFalse(model().reference().isBlank());
    }
}
