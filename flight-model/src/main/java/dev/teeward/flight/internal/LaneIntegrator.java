package dev.teeward.flight.internal;

import static dev.teeward.flight.internal.FlightEquations.SPIN;
import static dev.teeward.flight.internal.FlightEquations.STATE;
import static dev.teeward.flight.internal.FlightEquations.VX;
import static dev.teeward.flight.internal.FlightEquations.VY;
import static dev.teeward.flight.internal.FlightEquations.VZ;
import static dev.teeward.flight.internal.FlightEquations.X;
import static dev.teeward.flight.internal.FlightEquations.Y;
import static dev.teeward.flight.internal.FlightEquations.Z;

import dev.teeward.flight.internal.FlightEquations.Lanes;
import dev.teeward.flight.internal.FlightPath.Ending;
import java.util.Arrays;

/**
 * Flies many balls side by side, {@link Lanes#WIDTH} at a time: what {@link FlightIntegrator} does, to the last bit.
 *
 * <p>Every lane has its own step, guard and landing and knows nothing of its neighbours; when its ball has landed, it takes
 * the next launch. Launches are prepared a block at a time, so that their first rates are computed side by side too, and flights
 * that have come down wait in {@link LaneLandings} until a block of landings can be found side by side. Nothing is allocated for a
 * flight.
 *
 * <p>Mutable; one for each thread.
 */
public final class LaneIntegrator {
    private static final int W = Lanes.WIDTH;
    private static final int S = Lanes.STRIDE;
    private static final int START = PrinceDormand65.START_AT;
    private static final int STEP = PrinceDormand65.STEP_AT;
    private static final int NEXT = PrinceDormand65.NEXT_AT;
    private static final int K1 = PrinceDormand65.K1_AT;
    private static final int RATES = Lanes.RATES_AT;
    private static final int ACCELERATION = Lanes.FREE_AT + PrinceDormand65.LANE_COMPONENTS * S;
    private static final int LIMIT = ACCELERATION + S;
    private static final int LEVEL = LIMIT + S;
    private static final int ELEVATION = LEVEL + S;
    private static final int CLEAR = ELEVATION + S;
    private static final int TIME = CLEAR + S;
    private static final int SCALE = TIME + S;
    private static final int MORE_COMPONENTS = 7;
    /** Fewer steps do not reach the limit of time, because none is longer than a/b and no a exceeds 1. */
    private static final int SOONEST_LATE = (int) (FlightIntegrator.TIME_LIMIT * StepRule.DAMPING);

    private static final int PREPARED = Lanes.REYNOLDS_AT + 3 * S;

    private final Lanes lanes = new Lanes(PrinceDormand65.LANE_COMPONENTS + MORE_COMPONENTS);
    private final double[] b = lanes.block();
    private final Lanes pad = new Lanes();
    private final double[] p = pad.block();
    private final int[] padRow = new int[W];
    private final boolean[] padAgain = new boolean[W];
    private final double[] padElevation = new double[W];
    private final double[] padScale = new double[W];
    private final LaneExchange.Launch launch = new LaneExchange.Launch();
    private final LaneExchange.Result result = new LaneExchange.Result();
    private final LaneLandings landings = new LaneLandings();
    private final LaneLog log = new LaneLog();
    private final Quintic quintic = new Quintic();
    private final LandingSearch[] search = new LandingSearch[W];
    private final int[] free = new int[W];
    private final boolean[] flying = new boolean[W];
    private final boolean[] retrying = new boolean[W];
    private final boolean[] apexAhead = new boolean[W];
    private final double[] apex = new double[LaneLandings.APEX_ROWS * S];
    private final int[] started = new int[W];
    private final int[] unclear = new int[W];
    private int round;
    private int freed;
    private int padded;
    private int taken;

    /** The work space of a block of flights. */
    public LaneIntegrator() {
        LandingSearch.Scratch scratch = new LandingSearch.Scratch();
        Arrays.setAll(search, i -> new LandingSearch(0.0, scratch));
    }

    /**
     * Flies balls until there is no launch left and all have ended.
     *
     * @param equations the force sum
     * @param rule how long steps may be
     * @param ownAir whether each launch has its own air
     * @param ownWind whether each launch has its own, steady wind
     * @param outside gives the launches and takes the flights, in no order
     */
    public void fly(FlightEquations equations, StepRule rule, boolean ownAir, boolean ownWind, LaneExchange outside) {
        boolean windVaries = !ownWind && equations.windVaries();
        double guard = rule.guard(windVaries, equations.smooth());
        double jumpGuard = rule.jumpGuard(windVaries, equations.smooth());
        boolean gentle = rule.gentle(windVaries, equations.smooth());
        lanes.ownWind(ownWind);
        pad.ownWind(ownWind);
        SecondFlights exchange = new SecondFlights(rule, outside);
        landings.clear();
        round = 0;
        do {
            clear();
            int left = refill(equations, rule, ownAir, ownWind, exchange);
            while (left > 0) {
                round++;
                begin();
                steps();
                PrinceDormand65.step(equations, lanes);
                judge(guard, jumpGuard, exchange);
                equations.rates(lanes);
                clearEnd(b);
                arrive(gentle, exchange);
                left -= freed;
                left += refill(equations, rule, ownAir, ownWind, exchange);
            }
            landings.end(exchange);
        } while (exchange.waiting());
    }

    /** Frees all lanes. */
    private void clear() {
        padded = 0;
        taken = 0;
        for (int i = 0; i < W; i++) {
            rest(i);
            free[i] = i;
        }
        freed = W;
    }

    /** What a step has led to is where the next begins. */
    private void begin() {
        log.see(lanes.reynolds(), lanes.spinRatios());
        System.arraycopy(b, NEXT, b, START, STATE * S);
        System.arraycopy(b, RATES, b, K1, 4 * S);
        System.arraycopy(b, NEXT + VY * S, b, K1 + Y * S, W);
        System.arraycopy(b, NEXT + VX * S, b, K1 + X * S, W);
        System.arraycopy(b, NEXT + VZ * S, b, K1 + Z * S, W);
    }

    /** The length of every step: by the rule, unless its limit is shorter. */
    private void steps() {
        acceleration(b);
        ruled(b);
        for (int c = 1; c < STATE; c++) {
            System.arraycopy(b, STEP, b, STEP + c * S, W);
        }
    }

    private static void acceleration(double[] b) {
        for (int i = 0; i < W; i++) {
            double x = b[K1 + VX * S + i];
            double y = b[K1 + VY * S + i];
            double z = b[K1 + VZ * S + i];
            b[ACCELERATION + i] = Math.sqrt(x * x + y * y + z * z);
        }
    }

    private static void ruled(double[] b) {
        for (int i = 0; i < W; i++) {
            double speed = b[Lanes.SPEED_AT + i];
            double rate = b[ACCELERATION + i] + speed * (StepRule.DAMPING + StepRule.DRAG * speed);
            b[STEP + i] = Math.max(StepRule.SHORTEST_BY_RULE, b[SCALE + i] * speed / rate);
        }
        for (int i = 0; i < W; i++) {
            b[STEP + i] = Math.min(b[STEP + i], b[LIMIT + i]);
        }
    }

    /** Lets steps stand whose error estimate is small enough, and takes the others back. */
    private void judge(double guard, double jumpGuard, LaneExchange exchange) {
        for (int i = 0; i < W; i++) {
            double error = b[PrinceDormand65.ERROR_AT + i];
            if (error <= guard && !retrying[i]) {
                continue;
            }
            double limit = b[STEP + i] < StepRule.JUMP ? jumpGuard : guard;
            if (!flying[i] || error <= limit) {
                if (retrying[i]) {
                    retrying[i] = false;
                    b[LIMIT + i] = Double.POSITIVE_INFINITY;
                }
                continue;
            }
            restoreStart(i);
            log.reject(i);
            retrying[i] = true;
            b[LIMIT + i] = b[STEP + i] / 2.0;
            b[STEP + i] = 0.0;
            if (!(b[LIMIT + i] >= StepRule.SHORTEST)) {
                end(i, Ending.DID_NOT_CONVERGE, b[TIME + i], round - started[i] - log.rejections(i), exchange);
            }
        }
    }

    /**
     * A positive number where the height rises or falls throughout the step, ends above the level that matters, and the rates are
     * finite: there the search of {@link LandingSearch#step} would find nothing. Elsewhere it is asked.
     */
    private static void clearEnd(double[] b) {
        for (int i = 0; i < W; i++) {
            double sameWay = b[START + VY * S + i] * b[NEXT + VY * S + i];
            b[CLEAR + i] = Math.min(sameWay, b[NEXT + Y * S + i] - b[LEVEL + i]);
        }
        // No turn and turn back within: the speed grows at the start, or shrinks at the end.
        for (int i = 0; i < W; i++) {
            double v = b[START + VY * S + i];
            double bends = Math.max(v * b[K1 + VY * S + i], -(v * b[RATES + VY * S + i]));
            b[CLEAR + i] = Math.min(b[CLEAR + i], bends);
        }
        // Nothing times a finite number is nothing, otherwise it is not a number.
        for (int i = 0; i < W; i++) {
            double sum =
                    b[RATES + VX * S + i] + b[RATES + VY * S + i] + b[RATES + VZ * S + i] + b[RATES + SPIN * S + i];
            b[CLEAR + i] = b[CLEAR + i] - 0.0 * sum;
        }
    }

    /** The steps that stand: which flights are over? */
    private void arrive(boolean gentle, LaneExchange exchange) {
        // Without a branch, because a third of the steps are not clear and no processor guesses which.
        int count = 0;
        for (int i = 0; i < W; i++) {
            unclear[count] = i;
            count += b[CLEAR + i] > 0.0 ? 0 : 1;
        }
        for (int n = 0; n < count; n++) {
            int i = unclear[n];
            if (flying[i] && !retrying[i]) {
                look(i, b[STEP + i], exchange);
            }
        }
        for (int i = 0; i < W; i++) {
            if (round - started[i] >= SOONEST_LATE && b[CLEAR + i] > 0.0 && flying[i] && !retrying[i] && late(i)) {
                look(i, b[STEP + i], exchange);
            }
        }
        // A step taken back has been given the length 0.
        for (int i = 0; i < W; i++) {
            b[TIME + i] = b[TIME + i] + b[STEP + i];
        }
        for (int i = 0; gentle && i < W; i++) {
            if (flying[i] && !retrying[i]) {
                b[LIMIT + i] = 2.0 * b[STEP + i];
            }
        }
    }

    /** Whether time or the number of steps is up. */
    private boolean late(int i) {
        int steps = round - started[i] - log.rejections(i);
        return !(b[TIME + i] + b[STEP + i] < FlightIntegrator.TIME_LIMIT && steps < FlightIntegrator.STEP_LIMIT);
    }

    /** Looks at a step in which something may have happened. */
    private void look(int i, double h, LaneExchange exchange) {
        double time = b[TIME + i] + h;
        int steps = round - started[i] - log.rejections(i);
        boolean late = late(i);
        if (!finite(i)) {
            restoreStart(i);
            end(i, Ending.DID_NOT_CONVERGE, b[TIME + i], steps - 1, exchange);
        } else if (landsFalling(i)) {
            if (landings.full()) {
                landings.end(exchange);
            }
            landings.add(lanes, i, b[TIME + i], b[LEVEL + i], steps, log);
            landings.apex(search[i].apexHeight(), apexAhead[i], apex, i);
            release(i);
        } else if (!late && turnsOnly(i)) {
            keepApex(i, h);
        } else if (!searched(i, h, steps, exchange) && late) {
            seeEnd(i);
            end(i, Ending.DID_NOT_COME_DOWN, time, steps, exchange);
        }
    }

    private boolean finite(int i) {
        double sizes = Math.abs(b[RATES + VX * S + i])
                + Math.abs(b[RATES + VY * S + i])
                + Math.abs(b[RATES + VZ * S + i])
                + Math.abs(b[RATES + SPIN * S + i]);
        return sizes < Double.POSITIVE_INFINITY;
    }

    /** Whether the ball falls throughout the step, through the level of the landing: the landing can be found later. */
    private boolean landsFalling(int i) {
        double v0 = b[START + VY * S + i];
        double v1 = b[NEXT + VY * S + i];
        boolean falling = v0 < 0.0 && v1 < 0.0 && (b[K1 + VY * S + i] <= 0.0 || b[RATES + VY * S + i] >= 0.0);
        double level = b[LEVEL + i];
        return falling && b[START + Y * S + i] > level && b[NEXT + Y * S + i] <= level && search[i].above();
    }

    /** Whether nothing happened in the step but the first apex, of a flight to which its height does not matter. */
    private boolean turnsOnly(int i) {
        boolean turns = b[START + VY * S + i] > 0.0
                && b[NEXT + VY * S + i] < 0.0
                && b[K1 + VY * S + i] < 0.0
                && b[RATES + VY * S + i] < 0.0;
        return turns && !apexAhead[i] && b[ELEVATION + i] <= 0.0 && b[NEXT + Y * S + i] > b[LEVEL + i];
    }

    /** Keeps the step of the apex, to find its height later. */
    private void keepApex(int i, double h) {
        search[i].seen(b[START + Y * S + i], b[TIME + i]);
        apexAhead[i] = true;
        apex[i] = h;
        apex[S + i] = b[START + Y * S + i];
        apex[2 * S + i] = b[START + VY * S + i];
        apex[3 * S + i] = b[K1 + VY * S + i];
        apex[4 * S + i] = b[NEXT + Y * S + i];
        apex[5 * S + i] = b[NEXT + VY * S + i];
        apex[6 * S + i] = b[RATES + VY * S + i];
    }

    /** Whether the flight ends in this step. */
    private boolean searched(int i, double h, int steps, LaneExchange exchange) {
        double time = b[TIME + i];
        // Steps without an event are not told to the search: it must know the height at which the last of them ended.
        search[i].seen(b[START + Y * S + i], time);
        LandingSearch.Event event = search[i].step(
                time,
                h,
                b[START + Y * S + i],
                b[START + VY * S + i],
                b[K1 + VY * S + i],
                b[NEXT + Y * S + i],
                b[NEXT + VY * S + i],
                b[RATES + VY * S + i]);
        b[LEVEL + i] = search[i].level();
        if (event == LandingSearch.Event.NOTHING) {
            return false;
        }
        double arrival = time + h;
        double at = search[i].eventTime();
        if (arrival <= at) {
            seeEnd(i);
        }
        interpolate(i, at, arrival - time);
        Ending ending = event == LandingSearch.Event.LANDED ? Ending.LANDED : Ending.ELEVATION_NOT_REACHED;
        end(i, ending, at, steps, exchange);
        return true;
    }

    private void restoreStart(int i) {
        for (int c = 0; c < STATE; c++) {
            b[NEXT + c * S + i] = b[START + c * S + i];
        }
    }

    /** Sees the end of the last step too. */
    private void seeEnd(int i) {
        log.see(i, lanes.reynolds()[i], lanes.spinRatios()[i]);
    }

    /** Puts the state at a time within the step where the state at its end was; as {@link FlightPath} has it. */
    private void interpolate(int i, double at, double h) {
        double q = (at - b[TIME + i]) / h;
        double spin = FlightPath.spin(
                q, h, b[START + SPIN * S + i], b[K1 + SPIN * S + i], b[NEXT + SPIN * S + i], b[RATES + SPIN * S + i]);
        interpolate(i, q, h, X, VX);
        interpolate(i, q, h, Y, VY);
        interpolate(i, q, h, Z, VZ);
        b[NEXT + SPIN * S + i] = spin;
    }

    private void interpolate(int i, double q, double h, int position, int velocity) {
        int x = position * S + i;
        int v = velocity * S + i;
        quintic.set(h, b[START + x], b[START + v], b[K1 + v], b[NEXT + x], b[NEXT + v], b[RATES + v]);
        b[NEXT + x] = quintic.value(q);
        b[NEXT + v] = quintic.slope(q) / h;
    }

    private void end(int i, Ending ending, double at, int steps, LaneExchange exchange) {
        release(i);
        for (int c = 0; c < STATE; c++) {
            result.state[c] = b[NEXT + c * S + i];
        }
        log.write(i, result);
        result.ending = ending;
        result.time = at;
        result.steps = steps;
        double height = search[i].apexHeight();
        result.apexHeight = apexAhead[i] ? Math.max(height, landings.apex(apex, i)) : height;
        exchange.ended(result);
    }

    private void release(int i) {
        flying[i] = false;
        free[freed++] = i;
    }

    /** Gives the free lanes the next launches, and rest to those for which there are none; how many fly. */
    private int refill(
            FlightEquations equations, StepRule rule, boolean ownAir, boolean ownWind, LaneExchange exchange) {
        int filled = 0;
        while (freed > 0) {
            if (taken == padded) {
                prepare(equations, rule, ownAir, ownWind, exchange);
                if (padded == 0) {
                    while (freed > 0) {
                        rest(free[--freed]);
                    }
                    return filled;
                }
            }
            int count = Math.min(freed, padded - taken);
            int firstLane = freed - count;
            int first = taken;
            copy(firstLane, first, count);
            freed -= count;
            taken += count;
            // A flight that ends at once frees its lane again: what is freed lies before the lanes still to be looked
            // at.
            for (int n = 0; n < count; n++) {
                int i = free[firstLane + n];
                filled += take(i, first + n, ownWind, exchange) ? 1 : 0;
            }
        }
        return filled;
    }

    /** The numbers of prepared launches, component by component, to free lanes. */
    private void copy(int firstLane, int first, int count) {
        for (int c = 0; c < 4; c++) {
            copy(Lanes.STATE_AT + c * S, NEXT + c * S, firstLane, first, count);
            copy(RATES + c * S, RATES + c * S, firstLane, first, count);
        }
        for (int c = Lanes.AXIS_AT; c < Lanes.RATES_AT; c += S) {
            copy(c, c, firstLane, first, count);
        }
        for (int c = Lanes.SPEED_AT; c < PREPARED; c += S) {
            copy(c, c, firstLane, first, count);
        }
    }

    private void copy(int from, int to, int firstLane, int first, int count) {
        for (int n = 0; n < count; n++) {
            b[to + free[firstLane + n]] = p[from + first + n];
        }
    }

    /** Describes up to a block of launches and computes their rates. */
    private void prepare(
            FlightEquations equations, StepRule rule, boolean ownAir, boolean ownWind, LaneExchange exchange) {
        padded = 0;
        taken = 0;
        while (padded < W && exchange.next(launch)) {
            int i = padded++;
            padRow[i] = launch.row;
            padAgain[i] = launch.again;
            padScale[i] = launch.again ? rule.scaleAgain() : rule.scale();
            padElevation[i] = launch.elevation;
            for (int c = 0; c < 4; c++) {
                p[Lanes.STATE_AT + c * S + i] = launch.state[c];
            }
            for (int c = 0; c < 3; c++) {
                p[Lanes.AXIS_AT + c * S + i] = launch.axis[c];
            }
            if (ownAir) {
                equations.air(pad, i, launch.density, launch.viscosity);
            } else {
                equations.air(pad, i);
            }
            if (ownWind) {
                pad.wind(i, launch.alongTarget, launch.towardsRight);
            }
        }
        if (padded > 0) {
            equations.rates(pad);
        }
    }

    /** Begins the flight of a prepared launch; false if it ends at once. */
    private boolean take(int i, int from, boolean ownWind, LaneExchange exchange) {
        b[NEXT + Y * S + i] = 0.0;
        b[NEXT + X * S + i] = 0.0;
        b[NEXT + Z * S + i] = 0.0;
        if (ownWind) {
            lanes.wind(i, pad.alongTarget(from), pad.towardsRight(from));
        }
        flying[i] = true;
        started[i] = round;
        retrying[i] = false;
        apexAhead[i] = false;
        b[TIME + i] = 0.0;
        b[LIMIT + i] = Double.POSITIVE_INFINITY;
        search[i].restart(padElevation[from]);
        b[ELEVATION + i] = padElevation[from];
        b[SCALE + i] = padScale[from];
        b[LEVEL + i] = search[i].level();
        double re = pad.reynolds()[from];
        double s = pad.spinRatios()[from];
        lanes.reynolds()[i] = re;
        lanes.spinRatios()[i] = s;
        log.launch(i, padRow[from], padAgain[from], re, s);
        LandingSearch.Event event = search[i].launch(b[NEXT + VY * S + i], b[RATES + VY * S + i]);
        if (event == LandingSearch.Event.NOTHING) {
            return true;
        }
        boolean landed = event == LandingSearch.Event.LANDED;
        end(i, landed ? Ending.LANDED_AT_ONCE : Ending.ELEVATION_NOT_REACHED, 0.0, 0, exchange);
        return false;
    }

    /** A lane without a ball: all its numbers stay finite. */
    private void rest(int i) {
        flying[i] = false;
        retrying[i] = false;
        for (int c = 0; c < STATE; c++) {
            b[NEXT + c * S + i] = c == VX ? 1.0 : 0.0;
        }
        for (int c = Lanes.AXIS_AT; c < PREPARED; c += S) {
            b[c + i] = 0.0;
        }
        b[Lanes.SPEED_AT + i] = 1.0;
        b[LEVEL + i] = -1.0;
        b[LIMIT + i] = 0.0;
        b[TIME + i] = 0.0;
        b[ELEVATION + i] = 0.0;
        lanes.wind(i, 0.0, 0.0);
    }
}
