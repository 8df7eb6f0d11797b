package dev.teeward.flight.ground;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.flight.ground.RollOut.Phase;
import dev.teeward.flight.ground.RollOut.Point;
import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Length;
import java.util.List;
import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.nonstiff.DormandPrince853Integrator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Where a rolling ball gives way, against closed forms: a sphere on an incline rolls without slip if and only if {@code tan(a)
 * <= mu (1 + m r^2/I)}, and else slides with {@code g (sin a - mu cos a)} (any textbook of mechanics).
 */
class GripTest {
    private static final double G = 9.80665;
    private static final double R = 0.021335;
    private static final double MU = 0.1;
    private static final double RHO = 0.005;
    private static final Turf SLIPPERY = Turf.of(MU, RHO);

    /** A ball that rolls along x as it touches the ground. */
    private static RollOut roll(Terrain terrain, double speed, double k) {
        double[] n = new double[3];
        terrain.normal(0.0, 0.0, n);
        double[] velocity = {speed * n[1], -speed * n[0], 0.0};
        return Ground.of(SLIPPERY)
                .withTerrain(terrain)
                .run(new double[] {0.0, terrain.elevation(0.0, 0.0), 0.0}, velocity, spin(speed), R, k, G);
    }

    private static double[] spin(double speed) {
        return new double[] {0.0, 0.0, -speed / R};
    }

    private static Terrain downhill(double degrees) {
        return Terrain.plane(Angle.ofDegrees(-degrees), Angle.ofDegrees(0.0));
    }

    /** The limit for mu = 0.1: 19.29 deg for a uniform ball, 23.43 deg for one with k = 0.3. */
    @ParameterizedTest
    @CsvSource({
        "0.4, 5.0",
        "0.4, 19.2",
        "0.4, 19.4",
        "0.4, 35.0",
        "0.4, 44.0",
        "0.3, 23.3",
        "0.3, 23.6",
        "0.6666, 14.0",
        "0.6666, 14.1"
    })
    void aBallOnASlopeRollsOrSlidesByTheClosedForm(double k, double degrees) {
        double a = Math.toRadians(degrees);
        boolean rolls = Math.tan(a) <= MU * (1.0 + 1.0 / k);
        RollOut run = roll(downhill(degrees), 0.5, k);
        double acceleration =
                rolls ? G * (Math.sin(a) - RHO * Math.cos(a)) / (1.0 + k) : G * (Math.sin(a) - MU * Math.cos(a));
        for (Point p : run.path()) {
            double t = p.timeSeconds();
            double along = 0.5 * t + acceleration * t * t / 2.0;
            assertEquals(along * Math.cos(a), p.downrange().meters(), 1e-3 + 1e-6 * along, p::toString);
        }
        assertFalse(run.atRest());
        assertEquals(rolls ? Phase.ROLL : Phase.SKID, run.rest().phase());
        assertEquals(60.0, run.durationSeconds(), 0.05);
    }

    /** Sideways over a slope on which nothing rolls: the slip turns downhill, and friction always works against it. */
    @Test
    void aBallThatIsRolledAcrossASlipperySlopeSlidesDown() {
        Terrain slope = downhill(30.0);
        double[] velocity = {0.0, 0.0, 2.0};
        double a = Math.toRadians(30.0);
        double[] spin = {2.0 * Math.cos(a) / R, -2.0 * Math.sin(a) / R, 0.0};
        double[] n = new double[3];
        slope.normal(0.0, 0.0, n);
        // n x v / r, so that it rolls.
        assertEquals(0.0, Math.hypot(spin[0] - n[1] * 2.0 / R, spin[1] + n[0] * 2.0 / R), 1e-9);
        RollOut run = Ground.of(SLIPPERY).withTerrain(slope).run(new double[3], velocity, spin, R, 0.4, G);
        for (Point p : run.path()) {
            double t = p.timeSeconds();
            // The slip points straight downhill, where gravity does: so friction never acts across.
            assertEquals(2.0 * t, p.side().meters(), 1e-3);
            double along = G * (Math.sin(a) - MU * Math.cos(a)) * t * t / 2.0;
            assertEquals(along * Math.cos(a), p.downrange().meters(), 1e-3 + 1e-6 * along);
        }
    }

    /**
     * Over a brow {@code y = -c x^2/2} the ball rolls until {@code c x = mu (1 + 1/k)} and slides from there. Energy: {@code
     * (1 + k) v^2/2} while it rolls and {@code v^2/2} while it slides fall by {@code g dy} and the work of rho or mu over the
     * way on the map; time by an integration with Hipparchus.
     */
    @Test
    void overABrowItRollsAndThenGivesWay() {
        double c = 0.05;
        double k = 0.4;
        double v0 = 1.0;
        double way = MU * (1.0 + 1.0 / k) / c;
        double v1 = v0 * v0 + 2.0 / (1.0 + k) * (G * c * way * way / 2.0 - RHO * G * way);
        OrdinaryDifferentialEquation equation = new OrdinaryDifferentialEquation() {
            @Override
            public int getDimension() {
                return 1;
            }

            @Override
            public double[] computeDerivatives(double t, double[] s) {
                double x = s[0];
                double square = x < way
                        ? v0 * v0 + 2.0 / (1.0 + k) * (G * c * x * x / 2.0 - RHO * G * x)
                        : v1 + G * c * (x * x - way * way) - 2.0 * MU * G * (x - way);
                return new double[] {Math.sqrt(square) / Math.sqrt(1.0 + c * c * x * x)};
            }
        };
        RollOut run = roll((x, z) -> -c * x * x / 2.0, v0, k);
        List<Point> path = run.path();
        int from = path.size();
        boolean rolled = false;
        for (int i = 0; i < path.size() && from == path.size(); i++) {
            rolled |= path.get(i).phase() == Phase.ROLL;
            if (rolled && path.get(i).phase() == Phase.SKID) {
                from = i;
            }
        }
        assertTrue(from < path.size(), "it gives way");
        // Rolling is looked at every hundredth of a second, in which the ball moves some 3 cm.
        assertEquals(way, path.get(from).downrange().meters(), 0.04);
        for (Point p : path.subList(1, from + 30)) {
            if (p.timeSeconds() > 0.0) {
                double x = new DormandPrince853Integrator(1e-10, 0.1, 1e-11, 1e-11)
                        .integrate(equation, new ODEState(0.0, new double[] {0.0}), p.timeSeconds())
                        .getPrimaryState()[0];
                assertEquals(x, p.downrange().meters(), 0.01, p::toString);
            }
        }
        assertTrue(path.get(from + 30).downrange().meters() > 2.0 * way);
    }

    /** In a steep valley it slides at the sides, rolls at the bottom and comes to rest where the slope is rho = 0.1 at most. */
    @Test
    void inAValleyItComesToRest() {
        Terrain valley = (x, z) -> 2.0 * Math.cosh((x - 6.0) / 4.0);
        double top = valley.elevation(0.0, 0.0);
        RollOut run = Ground.of(Turf.of(MU, 0.1))
                .withTerrain(valley)
                .run(new double[] {0.0, top, 0.0}, new double[3], new double[3], R, 0.4, G);
        List<Phase> phases = run.path().stream().map(Point::phase).toList();
        assertEquals(Phase.SKID, phases.get(0));
        int rolling = phases.indexOf(Phase.ROLL);
        assertTrue(rolling > 5 && phases.subList(rolling, phases.size()).contains(Phase.SKID), phases::toString);
        assertTrue(run.atRest(), run::toString);
        // The slope is sinh((x - 6)/4)/2; asinh(0.2) is ln(0.2 + sqrt(1.04)).
        assertEquals(6.0, run.rest().downrange().meters(), 4.0 * Math.log(0.2 + Math.sqrt(1.04)) + 1e-6);
        run.path().forEach(p -> assertTrue(p.height().meters() <= top + 1e-9, p::toString));
    }

    /** Just above the slope that holds it, and far up a green that is almost that steep, a ball is slow, not fast. */
    @Test
    void sayWhyABallIsStillMoving() {
        Turf green = Turf.ofStimp(Length.ofFeet(10.0));
        double steepest = Stimpmeter.steepestStop(Length.ofFeet(10.0)).degrees();
        RollOut steeper = green(green, steepest + 0.01);
        assertFalse(steeper.atRest());
        assertTrue(message(steeper).contains("the turf holds a ball that has stopped on slopes up to 4.48 deg only"));
        RollOut creeping = green(green, steepest - 0.01);
        assertFalse(creeping.atRest());
        assertTrue(message(creeping).contains("it has not slowed down to a stop yet, though"), message(creeping));
        assertTrue(message(creeping).contains("still moves at 1.9"), message(creeping));
        assertTrue(message(creeping).contains("60 s after coming down"), message(creeping));
        assertFalse(message(creeping).contains("NaN"));
    }

    /** From 2 m/s, 0.01 deg less than the limit takes off {@code (5/7) g cos a 0.01 deg} a second: 0.07 m/s in a minute. */
    private static RollOut green(Turf turf, double degrees) {
        double a = Math.toRadians(degrees);
        return Ground.of(turf)
                .withTerrain(downhill(degrees))
                .run(new double[3], new double[] {2.0 * Math.cos(a), -2.0 * Math.sin(a), 0.0}, spin(2.0), R, 0.4, G);
    }

    private static String message(RollOut run) {
        return run.warnings().get(0).message();
    }
}
