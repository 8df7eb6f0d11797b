package dev.teeward.flight.ground;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** The closed forms of the rigid bounce, written out for two dimensions. */
class Daish1972Test extends BounceModelContract {
    private static final double R = 0.021335;
    private static final double[] UP = {0.0, 1.0, 0.0};

    @Override
    protected BounceModel model() {
        return Daish1972.of(0.4);
    }

    private static double[] bounce(double vt, double vn, double spin, double friction) {
        double[] motion = {vt, -vn, 0.0, 0.0, 0.0, spin};
        Daish1972.of(0.4).bounce(motion, UP, Turf.of(friction, 0.1), R, 0.4);
        return motion;
    }

    @Test
    void slidesBelowTheCriticalFriction() {
        // mu_c = 2 * (10 + R * 200) / (7 * 1.4 * 8) = 0.364
        double[] after = bounce(10.0, 8.0, 200.0, 0.3);
        assertEquals(10.0 - 0.3 * 1.4 * 8.0, after[0], 1e-12);
        assertEquals(0.4 * 8.0, after[1], 1e-12);
        assertEquals(200.0 - 5.0 * 0.3 / (2.0 * R) * 1.4 * 8.0, after[5], 1e-9);
    }

    @Test
    void gripsAboveIt() {
        double[] after = bounce(10.0, 8.0, 200.0, 0.5);
        double along = 5.0 / 7.0 * 10.0 - 2.0 / 7.0 * R * 200.0;
        assertEquals(along, after[0], 1e-12);
        assertEquals(-along / R, after[5], 1e-9);
    }

    @Test
    void bouncesBackwardsOnlyWithMoreBackspinThanFiveHalvesOfItsSpeed() {
        double limit = 2.5 * 4.0 / R;
        assertTrue(bounce(4.0, 20.0, 0.99 * limit, 1.0)[0] > 0.0);
        assertTrue(bounce(4.0, 20.0, 1.01 * limit, 1.0)[0] < 0.0);
    }

    /** A thin shell has 2/5 where a uniform ball has 2/7 (k / (1 + k) with k = 2/3). */
    @Test
    void usesTheInertiaOfTheBall() {
        double[] motion = {10.0, -8.0, 0.0, 0.0, 0.0, 0.0};
        Daish1972.of(0.4).bounce(motion, UP, Turf.of(1.0, 0.1), R, 2.0 / 3.0);
        assertEquals(6.0, motion[0], 1e-12);
    }

    @Test
    void refusesARestitutionOutside() {
        assertThrows(IllegalArgumentException.class, () -> Daish1972.of(1.1));
        assertThrows(IllegalArgumentException.class, () -> Daish1972.of(Double.NaN));
    }
}
