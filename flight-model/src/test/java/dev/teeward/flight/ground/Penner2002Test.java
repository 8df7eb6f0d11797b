package dev.teeward.flight.ground;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.quantity.Angle;
import org.junit.jupiter.api.Test;

/** The rows of its source are in {@link BounceExamplesTest}. */
class Penner2002Test extends BounceModelContract {
    @Override
    protected BounceModel model() {
        return Penner2002.withDefaults();
    }

    @Test
    void theCapIsOffUnlessAskedFor() {
        Turf turf = TurfClass.FAIRWAY.turf();
        Angle flat = Angle.ofDegrees(65.0);
        assertEquals(33.939, Penner2002.withDefaults().tilt(28.0, flat, turf).degrees(), 5e-4);
        Penner2002 capped = Penner2002.withDefaults().withTiltCap(Angle.ofDegrees(25.0));
        assertEquals(25.0, capped.tilt(28.0, flat, turf).degrees(), 1e-12);
        assertTrue(capped.reference().contains("25"));
        assertThrows(
                IllegalArgumentException.class, () -> Penner2002.withDefaults().withTiltCap(Angle.ofDegrees(91.0)));
    }

    /** A drive as in the worked rows B03 (27.7 deg of tilt) is covered, B02 (33.9 deg) is not, cap or no cap. */
    @Test
    void saysWhereItIsExtrapolated() {
        Turf turf = TurfClass.FAIRWAY.turf();
        Penner2002 capped = Penner2002.withDefaults().withTiltCap(Angle.ofDegrees(20.0));
        for (Penner2002 model : new Penner2002[] {Penner2002.withDefaults(), capped}) {
            assertTrue(model.covers(27.0, Math.toRadians(55.0), turf));
            assertFalse(model.covers(28.0, Math.toRadians(65.0), turf));
        }
        double[] flat = {28.0 * Math.sin(Math.toRadians(65.0)), -28.0 * Math.cos(Math.toRadians(65.0)), 0.0};
        assertEquals(
                "bounce-extrapolated",
                Ground.of(turf)
                        .run(new double[3], flat, new double[3], 0.021335, 0.4, 9.8)
                        .warnings()
                        .get(0)
                        .code());
        assertEquals(
                0,
                Ground.of(turf)
                        .withBounce(Daish1972.of(0.3))
                        .run(new double[3], flat, new double[3], 0.021335, 0.4, 9.8)
                        .warnings()
                        .size());
    }

    @Test
    void restitutionIsConstantForFastImpacts() {
        Turf turf = TurfClass.FAIRWAY.turf();
        Penner2002 model = Penner2002.withDefaults();
        assertEquals(0.510, model.restitution(0.0, turf), 0.0);
        assertEquals(0.120, model.restitution(30.0, turf), 0.0);
        assertEquals(0.120, model.restitution(20.0, turf), 2e-3, "the two pieces meet");
    }

    /** Sidespin turns the bounce, as on the page only backspin does. */
    @Test
    void aTiltedAxisKicksTheBallSideways() {
        double[] motion = {8.0, -12.0, 0.0, 300.0, 0.0, 400.0};
        Penner2002.withDefaults().bounce(motion, new double[] {0.0, 1.0, 0.0}, TurfClass.FAIRWAY.turf(), 0.021335, 0.4);
        // The contact point moves by -r omega x n: about +x it moves the ball's underside left, so friction kicks
        // right.
        assertTrue(motion[2] > 0.0, () -> "z velocity " + motion[2]);
    }
}
