package dev.teeward.flight.internal;

import static dev.teeward.flight.internal.FlightEquations.AIR_SPEED;
import static dev.teeward.flight.internal.FlightEquations.RATES;
import static dev.teeward.flight.internal.FlightEquations.SPIN;
import static dev.teeward.flight.internal.FlightEquations.STATE;
import static dev.teeward.flight.internal.FlightEquations.VX;
import static dev.teeward.flight.internal.FlightEquations.VY;
import static dev.teeward.flight.internal.FlightEquations.VZ;
import static dev.teeward.flight.internal.FlightEquations.Y;

import dev.teeward.flight.internal.FlightPath.Ending;

/**
 * Flies one ball from launch to landing with {@link PrinceDormand65}.
 *
 * <p>The length of a step comes from the state alone, by a {@link StepRule}, and not from the steps before: equal
 * states make equal steps, in whatever company a flight is computed, and results are smooth in the inputs. The embedded
 * error estimate is only a guard. It never lengthens a step; it throws a step away and shortens it when the forces are less
 * smooth than the rule assumes, at kinks of a coefficient table for instance. In a wind profile, where the guard acts often,
 * its limit is lower, and a step is at most twice as long as the one before it.
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
    private final double guard;

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
        this.equations = equations;
        this.elevation = elevation;
        this.rule = rule;
        guard = rule.guard(equations.windVaries(), equations.smooth());
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
        search.quick(rule.quick());
        equations.rates(state, axis, k, 0);
        path.add(0.0, state, k);
        LandingSearch.Event atLaunch = search.launch(state[VY], k[VY]);
        if (atLaunch != LandingSearch.Event.NOTHING) {
            boolean landed = atLaunch == LandingSearch.Event.LANDED;
            return path.end(landed ? Ending.LANDED_AT_ONCE : Ending.ELEVATION_NOT_REACHED, 0.0, search);
        }
        double time = 0.0;
        double longest = Double.POSITIVE_INFINITY;
        while (time < TIME_LIMIT && path.steps() < STEP_LIMIT) {
            double h = Math.min(rule.step(k[AIR_SPEED], size(k)), longest);
            while (!(scheme.step(equations, axis, state, k, h, next) <= guard) || tooLongToLand(next, h)) {
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
            if (!(size(k) + Math.abs(k[SPIN]) < Double.POSITIVE_INFINITY)) {
                return path.end(Ending.DID_NOT_CONVERGE, time, search);
            }
            path.add(time + h, state, k);
            LandingSearch.Event event = search.step(time, h, y, v, a, state[Y], state[VY], k[VY]);
            if (event != LandingSearch.Event.NOTHING) {
                boolean landed = event == LandingSearch.Event.LANDED;
                return path.end(landed ? Ending.LANDED : Ending.ELEVATION_NOT_REACHED, search.eventTime(), search);
            }
            time += h;
            if (equations.windVaries()) {
                longest = 2.0 * h;
            }
        }
        return path.end(Ending.DID_NOT_COME_DOWN, time, search);
    }

    private boolean tooLongToLand(double[] next, double h) {
        return next[Y] <= elevation && h > rule.shallowStep() && StepRule.shallow(next[VX], next[VY], next[VZ]);
    }

    private static double size(double[] rates) {
        return Math.sqrt(rates[VX] * rates[VX] + rates[VY] * rates[VY] + rates[VZ] * rates[VZ]);
    }
}
