package dev.teeward.flight.ground;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.flight.ground.RollOut.Phase;
import dev.teeward.flight.ground.RollOut.Point;
import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Length;
import java.util.Comparator;
import java.util.List;
import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.nonstiff.DormandPrince853Integrator;
import org.junit.jupiter.api.Test;

/** Skid, roll and rest against closed forms and a general integrator (Hipparchus 4.0.2); hops over slopes likewise. */
class GroundTest {
    private static final double G = 9.80665;
    private static final double R = 0.021335;
    private static final Turf GREEN = Turf.ofStimp(Length.ofFeet(10.0));

    private static RollOut run(Ground ground, double[] velocity, double[] spin) {
        return ground.run(new double[3], velocity, spin, R, 0.4, G);
    }

    /** A ball that rolls as it touches the ground: along it, with the spin {@code n x v / r}. */
    private static RollOut roll(Ground ground, double vx, double vz) {
        double[] n = new double[3];
        ground.terrain().orElse(Terrain.level()).normal(0.0, 0.0, n);
        double vy = -(n[0] * vx + n[2] * vz) / n[1];
        double[] spin = {(n[1] * vz - n[2] * vy) / R, (n[2] * vx - n[0] * vz) / R, (n[0] * vy - n[1] * vx) / R};
        return run(ground, new double[] {vx, vy, vz}, spin);
    }

    private static Ground slope(double degrees) {
        return Ground.of(GREEN).withTerrain(Terrain.plane(Angle.ofDegrees(degrees), Angle.ofDegrees(0.0)));
    }

    @Test
    void aBallFromTheRampRollsItsReading() {
        RollOut run = roll(Ground.of(GREEN), Stimpmeter.RELEASE_SPEED, 0.0);
        assertEquals(10.0, run.rest().downrange().feet(), 1e-4);
        assertEquals(0, run.bounces());
        assertEquals(2.0 * 3.048 / Stimpmeter.RELEASE_SPEED, run.durationSeconds(), 1e-4);
    }

    /** {@code v^2 / (2 (5/7) g (rho cos a + sin a))} along the slope; its shadow is cos a of that. */
    @Test
    void upAndDownASlopeItRollsByTheClosedForm() {
        for (double degrees : new double[] {-3.0, -1.0, 2.0, 4.0}) {
            double a = Math.toRadians(degrees);
            double v = 1.5;
            RollOut run = roll(slope(degrees), v * Math.cos(a), 0.0);
            double length = v * v / (2.0 * G / 1.4 * (GREEN.rollingResistance() * Math.cos(a) + Math.sin(a)));
            assertEquals(length * Math.cos(a), run.rest().downrange().meters(), 1e-4, () -> degrees + " deg");
            assertEquals(length * Math.sin(a), run.rest().height().meters(), 1e-4);
        }
    }

    /** The ways down and up a slope a give the reading on the level over cos a, because the ball weighs less on the turf. */
    @Test
    void brede() {
        double a = Math.toRadians(2.0);
        double v = Stimpmeter.RELEASE_SPEED * Math.cos(a);
        double down = -roll(slope(2.0), -v, 0.0).rest().downrange().meters() / Math.cos(a);
        double up = roll(slope(2.0), v, 0.0).rest().downrange().meters() / Math.cos(a);
        assertEquals(
                10.0 / Math.cos(a),
                Stimpmeter.level(Length.ofMeters(down), Length.ofMeters(up)).feet(),
                1e-3);
    }

    /** Across a slope, against the same equation integrated by another program until it is slow. */
    @Test
    void aPuttThatBreaksFollowsItsEquation() {
        double a = Math.toRadians(2.0);
        Ground across = Ground.of(GREEN).withTerrain(Terrain.plane(Angle.ofDegrees(0.0), Angle.ofDegrees(2.0)));
        RollOut run = roll(across, 2.0, 0.0);
        OrdinaryDifferentialEquation equation = new OrdinaryDifferentialEquation() {
            @Override
            public int getDimension() {
                return 4;
            }

            @Override
            public double[] computeDerivatives(double t, double[] s) {
                // In the plane: x along the target, w up the slope.
                double speed = Math.hypot(s[2], s[3]);
                double resistance = GREEN.rollingResistance() * G * Math.cos(a) / speed;
                return new double[] {s[2], s[3], -resistance * s[2] / 1.4, (-G * Math.sin(a) - resistance * s[3]) / 1.4
                };
            }
        };
        List<Point> path = run.path();
        Point late = path.get(path.size() - 5);
        assertEquals(Phase.ROLL, late.phase());
        double[] s = new DormandPrince853Integrator(1e-10, 0.1, 1e-12, 1e-12)
                .integrate(equation, new ODEState(0.0, new double[] {0.0, 0.0, 2.0, 0.0}), late.timeSeconds())
                .getPrimaryState();
        assertEquals(s[0], late.downrange().meters(), 1e-4);
        assertEquals(s[1] * Math.cos(a), late.side().meters(), 1e-4);
        assertTrue(run.rest().side().meters() < -0.3, "it breaks downhill, to the left");
        assertTrue(run.atRest());
    }

    /** A ball struck without spin rolls at 5/7 of its speed, after {@code 12 v^2 / (49 mu g)}: Daish 1972, from memory. */
    @Test
    void aSpinlessBallSkidsByTheClosedForm() {
        Turf turf = Turf.of(0.4, 0.1);
        RollOut run = run(Ground.of(turf), new double[] {3.0, 0.0, 0.0}, new double[3]);
        double skid = 12.0 * 9.0 / (49.0 * 0.4 * G);
        Point start = rollingStart(run);
        assertEquals(skid, start.downrange().meters(), 1e-4);
        double rolling = 15.0 / 7.0;
        assertEquals(
                skid + rolling * rolling / (2.0 * turf.rollDeceleration(G)),
                run.rest().downrange().meters(),
                1e-4);
    }

    private static Point rollingStart(RollOut run) {
        return run.path().stream()
                .filter(p -> p.phase() == Phase.ROLL)
                .findFirst()
                .orElseThrow();
    }

    /** With r w = 7.5 and v = 2 the ball slides forwards, comes back and rolls at (5 * 2 - 2 * 7.5) / 7 = -5/7 m/s. */
    @Test
    void backspinPullsTheBallBack() {
        Turf turf = Turf.of(0.4, 0.1);
        RollOut run = run(Ground.of(turf), new double[] {2.0, 0.0, 0.0}, new double[] {0.0, 0.0, 7.5 / R});
        double time = 9.5 / (3.5 * 0.4 * G);
        double skid = 2.0 * time - 0.4 * G * time * time / 2.0;
        assertEquals(skid, rollingStart(run).downrange().meters(), 1e-4);
        double rolling = 25.0 / 49.0;
        assertEquals(
                skid - rolling / (2.0 * turf.rollDeceleration(G)),
                run.rest().downrange().meters(),
                1e-4);
    }

    @Test
    void aWedgeWithSpinComesBackOnAGreenAndOneWithoutRunsOn() {
        double[] velocity = {21.0 * Math.cos(Math.toRadians(52.0)), -21.0 * Math.sin(Math.toRadians(52.0)), 0.0};
        RollOut spun = run(Ground.of(GREEN), velocity, new double[] {0.0, 0.0, 10_000.0 * Math.PI / 30.0});
        RollOut dead = run(Ground.of(GREEN), velocity, new double[3]);
        assertTrue(spun.rest().downrange().meters() < -0.5, spun::toString);
        assertTrue(dead.rest().downrange().meters() > 20.0, dead::toString);
    }

    /** With the axis tilted, spin pulls sideways on the ground too; the mirror image goes the other way. */
    @Test
    void mirroredBallsRunMirrored() {
        double[] right = {15.0, -15.0, 2.0};
        double[] left = {15.0, -15.0, -2.0};
        Ground ground = Ground.of(TurfClass.FAIRWAY);
        Point one = run(ground, right, new double[] {200.0, -50.0, 500.0}).rest();
        Point other = run(ground, left, new double[] {-200.0, 50.0, 500.0}).rest();
        assertEquals(one.downrange().meters(), other.downrange().meters(), 1e-9);
        assertEquals(one.side().meters(), -other.side().meters(), 1e-9);
        Point straight = run(ground, right, new double[] {0.0, 0.0, 500.0}).rest();
        assertTrue(one.side().meters() > straight.side().meters() + 0.5);
    }

    @Test
    void onASteepSlopeItTurnsAndRollsBackAndDoesNotStop() {
        RollOut run = roll(slope(8.0), 3.0, 0.0);
        assertFalse(run.atRest());
        assertEquals("does-not-stop", run.warnings().get(0).code());
        assertTrue(run.rest().downrange().meters() < -100.0);
        double top = run.path().stream()
                .mapToDouble(p -> p.downrange().meters())
                .max()
                .orElseThrow();
        double a = Math.toRadians(8.0);
        double v = 3.0 / Math.cos(a);
        double length = v * v / (2.0 * G / 1.4 * (GREEN.rollingResistance() * Math.cos(a) + Math.sin(a)));
        assertEquals(length * Math.cos(a), top, 0.02, "sampled every tenth of a second");
    }

    /**
     * Energy: a uniform ball climbs {@code (1 + k) v^2/(2 g) = 0.7 v^2/g} less rho times the way on the map, for the load on the
     * turf is that of the map's way; whatever the foot of the slope. The top is sampled every tenth of a second.
     */
    @Test
    void overASmoothTierItClimbsWhatItsEnergyGives() {
        double rho = 0.005;
        double v = 2.5;
        double climb = 0.7 * v * v / G;
        for (double half : new double[] {0.05, 0.2, 1.0}) {
            for (double tan : new double[] {0.3, 0.7, 1.2}) {
                // Level at first, then bending within about half to the slope tan.
                Terrain tier = (x, z) -> x < 1.0 ? 0.0 : tan * (Math.sqrt((x - 1.0) * (x - 1.0) + half * half) - half);
                Ground ground = Ground.of(Turf.of(0.4, rho)).withTerrain(tier);
                Point top = top(roll(ground, v, 0.0));
                double spent = top.height().meters() + rho * top.downrange().meters();
                assertEquals(climb, spent, 0.01 * climb, () -> half + " " + tan);
                // Nothing acts across the slope but the resistance: that part of the velocity climbs nothing.
                double aside = top(roll(ground, v, 1.0)).height().meters();
                assertTrue(aside < 1.01 * climb && aside > 0.93 * climb, () -> half + " " + tan + ": " + aside);
            }
        }
    }

    private static Point top(RollOut run) {
        return run.path().stream()
                .max(Comparator.comparingDouble(p -> p.height().meters()))
                .orElseThrow();
    }

    /** A plane given as a terrain of its own, which is taken for curved, gives what the plane gives. */
    @Test
    void aPlaneTakenForCurvedGroundIsThePlane() {
        double rise = Math.tan(Math.toRadians(2.0));
        Point plane = roll(slope(2.0), 2.0, 0.5).rest();
        Point taken =
                roll(Ground.of(GREEN).withTerrain((x, z) -> rise * x), 2.0, 0.5).rest();
        assertEquals(plane.downrange().meters(), taken.downrange().meters(), 1e-3);
        assertEquals(plane.side().meters(), taken.side().meters(), 1e-3);
    }

    @Test
    void stopsOnTheSteepestSlopeThatHolds() {
        double steepest = Stimpmeter.steepestStop(Length.ofFeet(10.0)).degrees();
        // From the reading: 4.5 deg at 10 ft, as (7/5) a / g gives for the sine.
        assertEquals(4.5, steepest, 0.05);
        assertTrue(roll(slope(steepest - 0.1), 1.0, 0.0).atRest());
        assertFalse(roll(slope(steepest + 0.1), 1.0, 0.0).atRest());
    }

    /** A hop over a plane lasts {@code 2 (v . n) / (g n_y)}. */
    @Test
    void hopsOverASlopeByTheClosedForm() {
        double a = Math.toRadians(5.0);
        double[] v = {4.0, -6.0, 1.0};
        Ground ground = slope(5.0).withBounce(Daish1972.of(0.4));
        double[] motion = {v[0], v[1], v[2], 0.0, 0.0, 0.0};
        double[] n = {-Math.sin(a), Math.cos(a), 0.0};
        Daish1972.of(0.4).bounce(motion, n, GREEN, R, 0.4);
        double time = 2.0 * (motion[0] * n[0] + motion[1] * n[1]) / (G * n[1]);
        RollOut run = run(ground, v, new double[3]);
        Point second = run.path().get(8);
        assertEquals(Phase.BOUNCE, second.phase());
        assertEquals(time, second.timeSeconds(), 1e-10);
        assertEquals(motion[0] * time, second.downrange().meters(), 1e-9);
        assertEquals(motion[2] * time, second.side().meters(), 1e-9);
    }

    /** Over a terrain without closed form every point of the path lies on or above it. */
    @Test
    void neverGoesBelowTheGround() {
        Terrain hills = (x, z) -> 0.5 * Math.sin(x / 3.0) * Math.cos(z / 4.0);
        RollOut run = run(
                Ground.of(TurfClass.FIRM_FAIRWAY).withTerrain(hills), new double[] {20.0, -15.0, 1.0}, new double[3]);
        for (Point p : run.path()) {
            double elevation = hills.elevation(p.downrange().meters(), p.side().meters());
            assertTrue(p.height().meters() >= elevation - 1e-9, p::toString);
        }
        assertTrue(run.bounces() > 3);
        assertTrue(run.atRest());
    }

    /**
     * A drive of 27 m/s at 35 deg with 2,500 rpm, worked out by a few lines of Python from the same formulas, which let the ball
     * roll at once where ours skids 2 cm or less.
     */
    @Test
    void theStopRuleMatters() {
        double[] velocity = {27.0 * Math.cos(Math.toRadians(35.0)), -27.0 * Math.sin(Math.toRadians(35.0)), 0.0};
        double[] spin = {0.0, 0.0, 2_500.0 * Math.PI / 30.0};
        double[] millimeters = {5.0, 20.0, 50.0};
        double[] runs = {26.905, 24.440, 22.618};
        for (int i = 0; i < 3; i++) {
            Ground ground = Ground.of(TurfClass.FAIRWAY).withStopHeight(Length.ofMillimeters(millimeters[i]));
            assertEquals(
                    runs[i],
                    ground.run(new double[3], velocity, spin, R, 0.4, 9.81)
                            .rest()
                            .downrange()
                            .meters(),
                    0.025);
        }
    }

    @Test
    void pathIsInOrderAndEndsAtRest() {
        RollOut run = run(Ground.of(TurfClass.FAIRWAY), new double[] {20.0, -20.0, 0.0}, new double[3]);
        double time = -1.0;
        for (Point p : run.path()) {
            assertTrue(p.timeSeconds() >= time);
            time = p.timeSeconds();
        }
        assertEquals(Phase.REST, run.rest().phase());
        assertEquals(time, run.durationSeconds(), 0.0);
        assertEquals(0.0, run.landing().downrange().meters(), 0.0);
        assertThrows(UnsupportedOperationException.class, () -> run.path().clear());
    }

    @Test
    void refusesNumbersThatAreNone() {
        Ground ground = Ground.of(TurfClass.FAIRWAY);
        double[] broken = {Double.NaN, 0.0, 0.0};
        assertThrows(IllegalArgumentException.class, () -> run(ground, broken, new double[3]));
        assertThrows(IllegalArgumentException.class, () -> run(ground, new double[3], broken));
        assertThrows(
                IllegalArgumentException.class,
                () -> ground.run(new double[3], new double[3], new double[3], R, 0.4, 0.0));
        assertThrows(IllegalArgumentException.class, () -> ground.withStopHeight(Length.ofMillimeters(0.0)));
        assertThrows(IllegalArgumentException.class, () -> Turf.of(-0.1, 0.1));
        assertThrows(IllegalArgumentException.class, () -> Turf.ofStimp(Length.ofMeters(10.0)));
    }

    @Test
    void turfIsAValue() {
        Turf turf = TurfClass.FAIRWAY.turf();
        assertEquals(Turf.of(0.40, 0.131), turf);
        assertEquals(Turf.of(0.40, 0.131).hashCode(), turf.hashCode());
        assertFalse(turf.equals(turf.withTiltFactor(0.5)));
        assertEquals(0.5, turf.withRollingResistance(0.5).rollingResistance(), 0.0);
        assertTrue(Ground.of(turf).withTurf(GREEN).toString().contains("Penner 2002"));
        assertEquals(GREEN, Ground.of(turf).withTurf(GREEN).turf());
        assertEquals(5.0, Ground.of(turf).stopHeight().millimeters(), 1e-12);
    }
}
