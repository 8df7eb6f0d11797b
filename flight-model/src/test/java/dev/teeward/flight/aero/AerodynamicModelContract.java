package dev.teeward.flight.aero;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/**
 * What every {@link AerodynamicModel} promises. A model's own test extends this class and supplies the model.
 *
 * <pre>{@code
 * class MyBallTest extends AerodynamicModelContract {
 *     protected AerodynamicModel model() { return new MyBall(); }
 * }
 * }</pre>
 */
public abstract class AerodynamicModelContract {
    private static final double[] RE_CORNERS = {0.0, 1e-12, 1.0, 4e4, 9e4, 2.4e5, 1e7, 1e9};
    private static final double[] S_CORNERS = {0.0, 1e-12, 0.1, 0.6, 5.0, 1e7, 1e9};

    /**
     * The model under test.
     *
     * @return the model
     */
    protected abstract AerodynamicModel model();

    @Test
    void coefficientsAreFiniteEverywhere() {
        AerodynamicModel model = model();
        for (double re : RE_CORNERS) {
            for (double s : S_CORNERS) {
                String where = "Re " + re + ", S " + s;
                assertTrue(Double.isFinite(model.dragCoefficient(re, s)), () -> "drag at " + where);
                assertTrue(Double.isFinite(model.liftCoefficient(re, s)), () -> "lift at " + where);
                assertTrue(model.dragCoefficient(re, s) >= 0.0, () -> "drag at " + where);
            }
        }
    }

    @Test
    void coefficientsAreContinuousWithinTheGridOfFullShots() {
        AerodynamicModel model = model();
        for (double re = 4e4; re <= 2.4e5; re += 997.0) {
            for (double s = 0.01; s <= 0.6; s += 0.0173) {
                double reStep = re * (1.0 + 1e-9);
                double sStep = s * (1.0 + 1e-9);
                assertEquals(model.dragCoefficient(re, s), model.dragCoefficient(reStep, sStep), 1e-6, "drag");
                assertEquals(model.liftCoefficient(re, s), model.liftCoefficient(reStep, sStep), 1e-6, "lift");
            }
        }
    }

    @Test
    void lanesAreTheScalarMethodsBitForBit() {
        AerodynamicModel model = model();
        SplittableRandom random = new SplittableRandom(19_940_101L);
        int corners = RE_CORNERS.length * S_CORNERS.length;
        int n = corners + 4_096;
        double[] re = new double[n];
        double[] s = new double[n];
        for (int i = 0; i < n; i++) {
            re[i] = i < corners ? RE_CORNERS[i / S_CORNERS.length] : random.nextDouble(3e5);
            s[i] = i < corners ? S_CORNERS[i % S_CORNERS.length] : random.nextDouble(1.5);
        }
        double[] reBefore = re.clone();
        double[] sBefore = s.clone();
        double[] drag = new double[n];
        double[] lift = new double[n];
        // Often enough for the compiled form to be checked too, not only the interpreted one.
        for (int repeat = 0; repeat < 200; repeat++) {
            model.coefficients(re, s, drag, lift);
        }
        for (int i = 0; i < n; i++) {
            String where = "Re " + re[i] + ", S " + s[i];
            assertBits(model.dragCoefficient(re[i], s[i]), drag[i], "drag at " + where);
            assertBits(model.liftCoefficient(re[i], s[i]), lift[i], "lift at " + where);
            assertBits(reBefore[i], re[i], "Re must be left alone");
            assertBits(sBefore[i], s[i], "S must be left alone");
        }
    }

    @Test
    void noLanesIsAllowed() {
        double[] none = {};
        model().coefficients(none, none, none, none);
        assertEquals(0, none.length);
    }

    @Test
    void sameStateGivesSameBitsFromManyThreads() {
        AerodynamicModel model = model();
        long expected = checksum(model);
        long different = IntStream.range(0, 64)
                .parallel()
                .mapToLong(i -> checksum(model))
                .filter(sum -> sum != expected)
                .count();
        assertEquals(0L, different);
    }

    @Test
    void domainAndDecayAreSane() {
        AerodynamicModel model = model();
        ModelDomain domain = model.domain();
        assertTrue(domain.minRe() >= 0.0 && domain.minRe() < domain.maxRe());
        assertTrue(domain.minS() >= 0.0 && domain.minS() < domain.maxS());
        assertTrue(domain.contains(domain.minRe(), domain.minS()));
        assertTrue(Double.isFinite(model.momentSlope()) && model.momentSlope() >= 0.0);
        assertFalse(model.reference().isBlank());
    }

    private static long checksum(AerodynamicModel model) {
        long sum = 0L;
        for (int i = 0; i < 500; i++) {
            double re = 4e4 + 400.0 * i;
            double s = 0.0012 * i;
            sum = 31L * sum + Double.doubleToRawLongBits(model.dragCoefficient(re, s));
            sum = 31L * sum + Double.doubleToRawLongBits(model.liftCoefficient(re, s));
        }
        return sum;
    }

    private static void assertBits(double expected, double actual, String message) {
        assertEquals(Double.doubleToRawLongBits(expected), Double.doubleToRawLongBits(actual), message);
    }
}
