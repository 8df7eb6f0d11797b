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

    /** A topped ball, 100 mph at 3 deg: the tilt by the law is 71 deg, and no rest is told. */
    @Test
    void whereATopShotStopsIsNotKnown() {
        Turf turf = TurfClass.FAIRWAY.turf();
        double[] topped = {44.7 * Math.cos(Math.toRadians(3.0)), -44.7 * Math.sin(Math.toRadians(3.0)), 0.0};
        assertEquals(
                15.4 * 44.7 / 18.6 * 87.0 / 44.4,
                Penner2002.withDefaults()
                        .tilt(44.7, Angle.ofDegrees(87.0), turf)
                        .degrees(),
                1e-9);
        assertFalse(Penner2002.withDefaults().reaches(44.7, Math.toRadians(87.0), turf));
        assertTrue(Penner2002.withDefaults().reaches(28.0, Math.toRadians(65.0), turf));
        RollOut run = Ground.of(turf).run(new double[3], topped, new double[3], 0.021335, 0.4, 9.8);
        assertFalse(run.restKnown());
        assertEquals("bounce-outside-model", run.warnings().get(0).code());
        assertEquals(1, run.warnings().size());
        double[] flat = {28.0 * Math.sin(Math.toRadians(65.0)), -28.0 * Math.cos(Math.toRadians(65.0)), 0.0};
        assertTrue(Ground.of(turf)
                .run(new double[3], flat, new double[3], 0.021335, 0.4, 9.8)
                .restKnown());
        assertTrue(Ground.of(turf)
                .withBounce(Daish1972.of(0.3))
                .run(new double[3], topped, new double[3], 0.021335, 0.4, 9.8)
                .restKnown());
    }

    /** Along a slope as along level ground: what counts is the speed along the ground, and 10 m/s is the limit of a roll. */
    @Test
    void grazingIsJudgedAlongTheSlope() {
        for (double slope : new double[] {-40.0, 0.0, 40.0}) {
            Ground ground = Ground.of(TurfClass.FAIRWAY.turf())
                    .withTerrain(Terrain.plane(Angle.ofDegrees(slope), Angle.ofDegrees(0.0)));
            double c = Math.cos(Math.toRadians(slope));
            double s = Math.sin(Math.toRadians(slope));
            for (double along : new double[] {9.9, 10.1, 12.5}) {
                double into = 0.01;
                double[] velocity = {along * c + into * s, along * s - into * c, 0.0};
                RollOut run = ground.run(new double[3], velocity, new double[3], 0.021335, 0.4, 9.8);
                assertEquals(0, run.bounces());
                assertEquals(along < 10.0, run.restKnown(), slope + " deg, " + along + " m/s");
                assertEquals(
                        along > 10.0,
                        run.warnings().stream().anyMatch(w -> w.code().equals("bounce-outside-model")));
            }
        }
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
