package dev.teeward.flight.internal;

import static dev.teeward.flight.internal.FlightEquations.AIR_SPEED;
import static dev.teeward.flight.internal.FlightEquations.RATES;
import static dev.teeward.flight.internal.FlightEquations.SPIN;
import static dev.teeward.flight.internal.FlightEquations.STATE;
import static dev.teeward.flight.internal.FlightEquations.VX;
import static dev.teeward.flight.internal.FlightEquations.VY;
import static dev.teeward.flight.internal.FlightEquations.VZ;
import static dev.teeward.flight.internal.FlightEquations.Y;

import dev.teeward.flight.ground.Terrain;
import dev.teeward.flight.internal.FlightPath.Ending;
import org.jspecify.annotations.Nullable;

/**
 * Flies one ball from launch to landing with {@link PrinceDormand65}.
 *
 * <p>The length of a step comes from the state alone, {@code h = a V / (|acc| + b V)}, and not from the steps before: equal
 * states make equal steps, in whatever company a flight is computed, and results are smooth in the inputs. The embedded
 * error estimate is only a guard. It never lengthens a step; it throws a step away and shortens it when the forces are less
 * smooth than the rule assumes, at kinks of a coefficient table for instance. In a wind profile, where the guard acts often,
 * its limit is lower, and a step is at most twice as long as the one before it.
 *
 * <p>Immutable and thread-safe.
 */
public final class FlightIntegrator {
    /** The a of the step rule. */
    private static final double STEP_SCALE = 0.45;

    /** The b of the step rule: a ball that keeps its velocity steps a/b seconds [1/s]. */
    private static final double STEP_DAMPING = 0.50;

    /** The rule's shortest step, for a ball that hangs in the air [s]. */
    private static final double SHORTEST_BY_RULE = 0.05;

    /** The guard's limit for the error estimate of one step, see {@link PrinceDormand65#step} [m]. */
    private static final double GUARD = 2e-5;

    /** The same where the wind changes with height, because a profile has heights at which its curvature jumps [m]. */
    private static final double SHEARED_GUARD = 2e-8;

    /** A step that must be shorter than this is taken for a failure [s]. */
    private static final double SHORTEST = 1e-7;

    /** The longest flight [s]. */
    public static final double TIME_LIMIT = 300.0;

    private static final int STEP_LIMIT = 20_000;

    private final FlightEquations equations;
    private final double elevation;
    private final @Nullable Terrain terrain;
    private final double guard;

    /**
     * Flights by one force sum to one elevation.
     *
     * @param equations the force sum
     * @param elevation the height of the landing above the start, negative for lower ground [m]
     */
    public FlightIntegrator(FlightEquations equations, double elevation) {
        this(equations, elevation, null);
    }

    /**
     * Flights by one force sum to a terrain.
     *
     * @param equations the force sum
     * @param terrain the terrain, not above the ball at the start
     */
    public FlightIntegrator(FlightEquations equations, Terrain terrain) {
        // A level that is never reached leaves the search for the apex alone.
        this(equations, Double.NEGATIVE_INFINITY, terrain);
    }

    private FlightIntegrator(FlightEquations equations, double elevation, @Nullable Terrain terrain) {
        this.equations = equations;
        this.elevation = elevation;
        this.terrain = terrain;
        guard = equations.windVaries() ? SHEARED_GUARD : GUARD;
    }

    /**
     * The step the rule asks for.
     *
     * @param airSpeed the speed relative to the air [m/s]
     * @param acceleration the size of the acceleration, gravity included [m/s2]
     * @return the step [s]
     */
    public static double ruledStep(double airSpeed, double acceleration) {
        return Math.max(SHORTEST_BY_RULE, STEP_SCALE * airSpeed / (acceleration + STEP_DAMPING * airSpeed));
    }

    /**
     * Whether a step may stand.
     *
     * @param error the error estimate of the step [m]
     * @return true if it is small enough; false for NaN
     */
    public boolean accepts(double error) {
        return error <= guard;
    }

    /**
     * Flies one ball. Always returns; the path says how the flight ended.
     *
     * @param launch the state at launch: the velocity and the spin are read, the position is 0
     * @param axis the unit vector of the spin axis
     * @return the path
     */
    public FlightPath fly(double[] launch, double[] axis) {
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
            double h = Math.min(ruledStep(k[AIR_SPEED], size(k)), longest);
            while (!accepts(scheme.step(equations, axis, state, k, h, next))) {
                path.reject();
                h /= 2.0;
                if (!(h >= SHORTEST)) {
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
            if (!(size(k) + Math.abs(k[SPIN]) < Double.POSITIVE_INFINITY)) {
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
            if (equations.windVaries()) {
                longest = 2.0 * h;
            }
        }
        return path.end(Ending.DID_NOT_COME_DOWN, time, search);
    }

    private static double size(double[] rates) {
        return Math.sqrt(rates[VX] * rates[VX] + rates[VY] * rates[VY] + rates[VZ] * rates[VZ]);
    }
}
