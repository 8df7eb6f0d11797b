package dev.teeward.flight.internal;

import static dev.teeward.flight.internal.FlightEquations.AIR_SPEED;
import static dev.teeward.flight.internal.FlightEquations.RATES;
import static dev.teeward.flight.internal.FlightEquations.SPIN;
import static dev.teeward.flight.internal.FlightEquations.STATE;
import static dev.teeward.flight.internal.FlightEquations.VX;
import static dev.teeward.flight.internal.FlightEquations.VY;
import static dev.teeward.flight.internal.FlightEquations.VZ;
import static dev.teeward.flight.internal.FlightEquations.X;
import static dev.teeward.flight.internal.FlightEquations.Y;
import static dev.teeward.flight.internal.FlightEquations.Z;

import dev.teeward.flight.ground.Terrain;
import dev.teeward.flight.internal.FlightPath.Ending;
import org.jspecify.annotations.Nullable;

/**
 * Flies one ball from launch to landing with {@link PrinceDormand65}.
 *
 * <p>The length of a step comes from the state alone, by a {@link StepRule}, and not from the steps before: equal
 * states make equal steps, in whatever company a flight is computed, and results are smooth in the inputs. The embedded
 * error estimate is only a guard. It never lengthens a step; it throws a step away and shortens it when the forces are less
 * smooth than the rule assumes. In a wind profile and with coefficients that have kinks, where the guard acts often, its limit
 * is lower, and a step is at most twice as long as the one before it. A ball that comes down at a shallow angle may fly twice, the
 * second time by shorter steps; only the second flight is told.
 *
 * <p>Immutable and thread-safe.
 */
public final class FlightIntegrator {
    /** The longest flight [s]. */
    public static final double TIME_LIMIT = 300.0;

    static final int STEP_LIMIT = 20_000;

    private final FlightEquations equations;
    private final double elevation;
    private final StepRule rule;
    private final @Nullable Terrain terrain;
    private final double guard;
    private final double jumpGuard;
    private final boolean gentle;

    /**
     * Flights by one force sum to one elevation, by the standard rule.
     *
     * @param equations the force sum
     * @param elevation the height of the landing above the start, negative for lower ground [m]
     */
    public FlightIntegrator(FlightEquations equations, double elevation) {
        this(equations, elevation, StepRule.STANDARD);
    }

    /**
     * Flights by one force sum to one elevation.
     *
     * @param equations the force sum
     * @param elevation the height of the landing above the start, negative for lower ground [m]
     * @param rule how long steps may be
     */
    public FlightIntegrator(FlightEquations equations, double elevation, StepRule rule) {
        this(equations, elevation, null, rule);
    }

    /**
     * Flights by one force sum to a terrain, by the standard rule.
     *
     * @param equations the force sum
     * @param terrain the terrain, not above the ball at the start
     */
    public FlightIntegrator(FlightEquations equations, Terrain terrain) {
        this(equations, terrain, StepRule.STANDARD);
    }

    /**
     * Flights by one force sum to a terrain.
     *
     * @param equations the force sum
     * @param terrain the terrain, not above the ball at the start
     * @param rule how long steps may be
     */
    public FlightIntegrator(FlightEquations equations, Terrain terrain, StepRule rule) {
        // A level that is never reached leaves the search for the apex alone.
        this(equations, Double.NEGATIVE_INFINITY, terrain, rule);
    }

    private FlightIntegrator(FlightEquations equations, double elevation, @Nullable Terrain terrain, StepRule rule) {
        this.equations = equations;
        this.elevation = elevation;
        this.terrain = terrain;
        this.rule = rule;
        guard = rule.guard(equations.windVaries(), equations.smooth());
        jumpGuard = rule.jumpGuard(equations.windVaries(), equations.smooth());
        gentle = rule.gentle(equations.windVaries(), equations.smooth());
    }

    /**
     * Flies one ball. Always returns; the path says how the flight ended.
     *
     * @param launch the state at launch: the velocity and the spin are read, the position is 0
     * @param axis the unit vector of the spin axis
     * @return the path
     */
    public FlightPath fly(double[] launch, double[] axis) {
        FlightPath path = fly(launch, axis, rule.scale());
        return rule.mayFlyAgain() && path.ending() == Ending.LANDED && again(path)
                ? fly(launch, axis, rule.scaleAgain())
                : path;
    }

    private boolean again(FlightPath path) {
        double[] end = new double[STATE];
        path.at(path.endTime(), end);
        return rule.again(end[VX], end[VY] - rising(end), end[VZ]);
    }

    private FlightPath fly(double[] launch, double[] axis, double scale) {
        double[] state = launch.clone();
        double[] next = new double[STATE];
        double[] k = new double[PrinceDormand65.STAGES * RATES];
        PrinceDormand65 scheme = new PrinceDormand65();
        FlightPath path = new FlightPath();
        LandingSearch search = new LandingSearch(elevation);
        equations.rates(state, axis, k, 0);
        path.add(0.0, state, k);
        LandingSearch.Event atLaunch = search.launch(state[VY], k[VY]);
        if (atLaunch != LandingSearch.Event.NOTHING) {
            boolean landed = atLaunch == LandingSearch.Event.LANDED;
            return path.end(landed ? Ending.LANDED_AT_ONCE : Ending.ELEVATION_NOT_REACHED, 0.0, search);
        }
        TerrainSearch surface = terrain == null ? null : new TerrainSearch(terrain);
        if (surface != null && surface.liesOn(state, k)) {
            return path.end(Ending.LANDED_AT_ONCE, 0.0, search);
        }
        double time = 0.0;
        double longest = Double.POSITIVE_INFINITY;
        while (time < TIME_LIMIT && path.steps() < STEP_LIMIT) {
            double h = Math.min(StepRule.step(scale, k[AIR_SPEED], size(k)), longest);
            while (!(scheme.step(equations, axis, state, k, h, next) <= limit(h))) {
                path.reject();
                h /= 2.0;
                if (!(h >= StepRule.SHORTEST)) {
                    return path.end(Ending.DID_NOT_CONVERGE, time, search);
                }
            }
            double y = state[Y];
            double v = state[VY];
            double a = k[VY];
            double[] swap = state;
            state = next;
            next = swap;
            equations.rates(state, axis, k, 0);
            if (!finite(k)) {
                return path.end(Ending.DID_NOT_CONVERGE, time, search);
            }
            path.add(time + h, state, k);
            LandingSearch.Event event = search.step(time, h, y, v, a, state[Y], state[VY], k[VY]);
            if (event != LandingSearch.Event.NOTHING) {
                boolean landed = event == LandingSearch.Event.LANDED;
                return path.end(landed ? Ending.LANDED : Ending.ELEVATION_NOT_REACHED, search.eventTime(), search);
            }
            if (surface != null && surface.step(time, h, path)) {
                return path.landed(surface.landingTime(), search);
            }
            time += h;
            if (gentle) {
                longest = 2.0 * h;
            }
        }
        return path.end(Ending.DID_NOT_COME_DOWN, time, search);
    }

    private double limit(double h) {
        return h < StepRule.JUMP ? jumpGuard : guard;
    }

    /** How fast the ground rises under a ball [m/s]. */
    private double rising(double[] state) {
        if (terrain == null) {
            return 0.0;
        }
        return terrain.slopeAlongTarget(state[X], state[Z]) * state[VX]
                + terrain.slopeTowardsRight(state[X], state[Z]) * state[VZ];
    }

    private static boolean finite(double[] rates) {
        double sizes = Math.abs(rates[VX]) + Math.abs(rates[VY]) + Math.abs(rates[VZ]) + Math.abs(rates[SPIN]);
        return sizes < Double.POSITIVE_INFINITY;
    }

    private static double size(double[] rates) {
        return Math.sqrt(rates[VX] * rates[VX] + rates[VY] * rates[VY] + rates[VZ] * rates[VZ]);
    }
}
