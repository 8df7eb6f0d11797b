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
 * the next launch. Launches are prepared a block at a time, so that their first rates are computed side by side too. Nothing
 * is allocated once this is made.
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
    private static final int RULED = ACCELERATION + S;
    private static final int LEVEL = RULED + S;
    private static final int EVENTLESS = LEVEL + S;
    private static final int ELEVATION = EVENTLESS + S;
    private static final int MORE_COMPONENTS = 5;
    private static final int PREPARED = Lanes.REYNOLDS_AT + 3 * S;

    /** Where launches come from and flights go to. */
    public interface Exchange {
        /**
         * Describes the next launch.
         *
         * @param launch receives it
         * @return false if there is none left
         */
        boolean next(Launch launch);

        /**
         * Takes a flight that has ended.
         *
         * @param result the flight, valid during the call
         */
        void ended(Result result);
    }

    /** A launch; mutable. */
    public static final class Launch {
        /** The state at launch; the position is not read. */
        public final double[] state = new double[STATE];

        /** The unit vector of the spin axis. */
        public final double[] axis = new double[3];

        /** A number of the caller's own. */
        public int row;

        /** The height of the landing above the start [m]. */
        public double elevation;

        /** The density of the air, where each launch has its own air [kg/m3]. */
        public double density;

        /** The viscosity of the air, where each launch has its own air [Pa s]. */
        public double viscosity;

        /** The wind towards the target, where each launch has its own wind [m/s]. */
        public double alongTarget;

        /** The wind towards the right, where each launch has its own wind [m/s]. */
        public double towardsRight;

        /** A launch of zeros. */
        public Launch() {}
    }

    /** How a flight ended; mutable. */
    public static final class Result {
        /** The state at the end; the last one known if the ball has not landed. */
        public final double[] state = new double[STATE];

        /** The number of the launch. */
        public int row;

        /** How it ended. */
        public Ending ending = Ending.DID_NOT_CONVERGE;

        /** When it ended [s]. */
        public double time;

        /** The greatest height [m]. */
        public double apexHeight;

        /** The Reynolds number at launch. */
        public double launchReynolds;

        /** The spin ratio at launch. */
        public double launchSpinRatio;

        /** The least Reynolds number at the ends of steps up to the end of the flight. */
        public double leastReynolds;

        /** The greatest Reynolds number there. */
        public double mostReynolds;

        /** The least spin ratio there. */
        public double leastSpinRatio;

        /** The greatest spin ratio there. */
        public double mostSpinRatio;

        /** Steps taken. */
        public int steps;

        /** Steps thrown away. */
        public int rejections;

        /** A flight not yet flown. */
        public Result() {}
    }

    private final Lanes lanes = new Lanes(PrinceDormand65.LANE_COMPONENTS + MORE_COMPONENTS);
    private final double[] b = lanes.block();
    private final Lanes pad = new Lanes();
    private final double[] p = pad.block();
    private final int[] padRow = new int[W];
    private final double[] padElevation = new double[W];
    private final Launch launch = new Launch();
    private final Result result = new Result();
    private final Quintic quintic = new Quintic();
    private final LandingSearch[] search = new LandingSearch[W];
    private final int[] free = new int[W];
    private final boolean[] flying = new boolean[W];
    private final int[] row = new int[W];
    private final int[] steps = new int[W];
    private final int[] rejections = new int[W];
    private final double[] time = new double[W];
    private final double[] longest = new double[W];
    private final double[] retry = new double[W];
    private final double[] launchReynolds = new double[W];
    private final double[] launchSpinRatio = new double[W];
    private final double[] leastReynolds = new double[W];
    private final double[] mostReynolds = new double[W];
    private final double[] leastSpinRatio = new double[W];
    private final double[] mostSpinRatio = new double[W];
    private int freed;
    private int padded;
    private int taken;
    private boolean exhausted;

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
     * @param exchange gives the launches and takes the flights, in the order in which they end
     */
    public void fly(FlightEquations equations, StepRule rule, boolean ownAir, boolean ownWind, Exchange exchange) {
        boolean windVaries = !ownWind && equations.windVaries();
        double guard = rule.guard(windVaries, equations.smooth());
        double jumpGuard = rule.jumpGuard(windVaries, equations.smooth());
        boolean gentle = rule.gentle(windVaries, equations.smooth());
        lanes.ownWind(ownWind);
        pad.ownWind(ownWind);
        for (LandingSearch one : search) {
            one.quick(rule.quick());
        }
        exhausted = false;
        padded = 0;
        taken = 0;
        for (int i = 0; i < W; i++) {
            rest(i);
            free[i] = i;
        }
        freed = W;
        int left = refill(equations, ownAir, ownWind, exchange);
        while (left > 0) {
            begin();
            steps(rule);
            PrinceDormand65.step(equations, lanes);
            judge(guard, jumpGuard, rule.shallowStep(), exchange);
            System.arraycopy(b, NEXT, b, Lanes.STATE_AT, 5 * S);
            equations.rates(lanes);
            acceleration(b, RATES);
            eventless(b);
            arrive(gentle, exchange);
            left -= freed;
            left += refill(equations, ownAir, ownWind, exchange);
        }
    }

    /** What a step has led to is where the next begins. */
    private void begin() {
        least(leastReynolds, lanes.reynolds());
        most(mostReynolds, lanes.reynolds());
        least(leastSpinRatio, lanes.spinRatios());
        most(mostSpinRatio, lanes.spinRatios());
        System.arraycopy(b, NEXT, b, START, STATE * S);
        System.arraycopy(b, RATES, b, K1, 4 * S);
        System.arraycopy(b, NEXT + VY * S, b, K1 + Y * S, W);
        System.arraycopy(b, NEXT + VX * S, b, K1 + X * S, W);
        System.arraycopy(b, NEXT + VZ * S, b, K1 + Z * S, W);
    }

    /** The length of every step: by the rule, or half of the one just thrown away. */
    private void steps(StepRule rule) {
        acceleration(b, K1);
        ruled(b, rule.scale(), rule.damping(), StepRule.SHORTEST_BY_RULE);
        for (int i = 0; i < W; i++) {
            double h = retry[i] == 0.0 ? Math.min(b[RULED + i], longest[i]) : retry[i];
            b[STEP + i] = flying[i] ? h : 0.0;
        }
        for (int c = 1; c < STATE; c++) {
            System.arraycopy(b, STEP, b, STEP + c * S, W);
        }
    }

    private static void acceleration(double[] b, int rates) {
        if (rates == K1) {
            for (int i = 0; i < W; i++) {
                double x = b[K1 + VX * S + i];
                double y = b[K1 + VY * S + i];
                double z = b[K1 + VZ * S + i];
                b[ACCELERATION + i] = Math.sqrt(x * x + y * y + z * z);
            }
        } else {
            for (int i = 0; i < W; i++) {
                double x = b[RATES + VX * S + i];
                double y = b[RATES + VY * S + i];
                double z = b[RATES + VZ * S + i];
                b[ACCELERATION + i] = Math.sqrt(x * x + y * y + z * z);
            }
        }
    }

    private static void ruled(double[] b, double scale, double damping, double shortest) {
        for (int i = 0; i < W; i++) {
            double speed = b[Lanes.SPEED_AT + i];
            b[RULED + i] = Math.max(shortest, scale * speed / (b[ACCELERATION + i] + damping * speed));
        }
    }

    /** Lets steps stand whose error estimate is small enough, and takes the others back. */
    private void judge(double guard, double jumpGuard, double shallowStep, Exchange exchange) {
        for (int i = 0; i < W; i++) {
            double limit = b[STEP + i] < StepRule.JUMP ? jumpGuard : guard;
            if (!flying[i] || (b[PrinceDormand65.ERROR_AT + i] <= limit && !tooLongToLand(i, shallowStep))) {
                retry[i] = 0.0;
                continue;
            }
            for (int c = 0; c < STATE; c++) {
                b[NEXT + c * S + i] = b[START + c * S + i];
            }
            rejections[i]++;
            retry[i] = b[STEP + i] / 2.0;
            if (!(retry[i] >= StepRule.SHORTEST)) {
                end(i, Ending.DID_NOT_CONVERGE, time[i], exchange);
            }
        }
    }

    private boolean tooLongToLand(int i, double shallowStep) {
        return b[NEXT + Y * S + i] <= b[ELEVATION + i]
                && b[STEP + i] > shallowStep
                && StepRule.shallow(b[NEXT + VX * S + i], b[NEXT + VY * S + i], b[NEXT + VZ * S + i]);
    }

    private static void least(double[] least, double[] now) {
        for (int i = 0; i < W; i++) {
            least[i] = Math.min(least[i], now[i]);
        }
    }

    private static void most(double[] most, double[] now) {
        for (int i = 0; i < W; i++) {
            most[i] = Math.max(most[i], now[i]);
        }
    }

    /**
     * A positive number where the height rises throughout the step, or falls and stays above the level that matters, and the
     * rates are finite: the first two cases of {@link LandingSearch#step}, without a branch. Elsewhere the search is asked.
     */
    private static void eventless(double[] b) {
        for (int i = 0; i < W; i++) {
            double rising = Math.min(b[START + VY * S + i], b[NEXT + VY * S + i]);
            b[EVENTLESS + i] = Math.min(rising, b[NEXT + Y * S + i] - b[START + Y * S + i]);
        }
        for (int i = 0; i < W; i++) {
            double bends = Math.max(b[K1 + VY * S + i], -b[RATES + VY * S + i]);
            b[EVENTLESS + i] = Math.min(b[EVENTLESS + i], bends);
        }
        for (int i = 0; i < W; i++) {
            double falling = -Math.max(b[START + VY * S + i], b[NEXT + VY * S + i]);
            double clear = Math.min(falling, b[NEXT + Y * S + i] - b[LEVEL + i]);
            double bends = -Math.min(b[K1 + VY * S + i], -b[RATES + VY * S + i]);
            b[EVENTLESS + i] = Math.max(b[EVENTLESS + i], Math.min(clear, bends));
        }
        for (int i = 0; i < W; i++) {
            double size = b[ACCELERATION + i] + Math.abs(b[RATES + SPIN * S + i]);
            b[EVENTLESS + i] = Math.min(b[EVENTLESS + i], Double.MAX_VALUE - size);
        }
    }

    /** The steps that stand: which flights are over? */
    private void arrive(boolean gentle, Exchange exchange) {
        for (int i = 0; i < W; i++) {
            if (!flying[i] || retry[i] != 0.0) {
                continue;
            }
            double h = b[STEP + i];
            if (!(b[EVENTLESS + i] > 0.0) && over(i, h, exchange)) {
                continue;
            }
            steps[i]++;
            time[i] += h;
            if (gentle) {
                longest[i] = 2.0 * h;
            }
            if (!(time[i] < FlightIntegrator.TIME_LIMIT && steps[i] < FlightIntegrator.STEP_LIMIT)) {
                seeEnd(i);
                end(i, Ending.DID_NOT_COME_DOWN, time[i], exchange);
            }
        }
    }

    /** Whether a flight is over after a step in which something may have happened. */
    private boolean over(int i, double h, Exchange exchange) {
        if (!(b[ACCELERATION + i] + Math.abs(b[RATES + SPIN * S + i]) < Double.POSITIVE_INFINITY)) {
            restoreStart(i);
            end(i, Ending.DID_NOT_CONVERGE, time[i], exchange);
            return true;
        }
        // Steps without an event are not told to the search. The height it must know is that at which the last of them
        // ended.
        search[i].seen(b[START + Y * S + i], time[i]);
        return searched(i, h, exchange);
    }

    /** Whether the flight ends in this step. */
    private boolean searched(int i, double h, Exchange exchange) {
        LandingSearch.Event event = search[i].step(
                time[i],
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
        steps[i]++;
        double arrival = time[i] + h;
        double at = search[i].eventTime();
        if (arrival <= at) {
            seeEnd(i);
        }
        interpolate(i, at, arrival - time[i]);
        end(i, event == LandingSearch.Event.LANDED ? Ending.LANDED : Ending.ELEVATION_NOT_REACHED, at, exchange);
        return true;
    }

    private void restoreStart(int i) {
        for (int c = 0; c < STATE; c++) {
            b[NEXT + c * S + i] = b[START + c * S + i];
        }
    }

    /** Sees the end of the last step too. */
    private void seeEnd(int i) {
        leastReynolds[i] = Math.min(leastReynolds[i], lanes.reynolds()[i]);
        mostReynolds[i] = Math.max(mostReynolds[i], lanes.reynolds()[i]);
        leastSpinRatio[i] = Math.min(leastSpinRatio[i], lanes.spinRatios()[i]);
        mostSpinRatio[i] = Math.max(mostSpinRatio[i], lanes.spinRatios()[i]);
    }

    /** Puts the state at a time within the step where the state at its end was; as {@link FlightPath} has it. */
    private void interpolate(int i, double at, double h) {
        double q = (at - time[i]) / h;
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

    private void end(int i, Ending ending, double at, Exchange exchange) {
        flying[i] = false;
        free[freed++] = i;
        for (int c = 0; c < STATE; c++) {
            result.state[c] = b[NEXT + c * S + i];
        }
        result.row = row[i];
        result.ending = ending;
        result.time = at;
        result.apexHeight = search[i].apexHeight();
        result.launchReynolds = launchReynolds[i];
        result.launchSpinRatio = launchSpinRatio[i];
        result.leastReynolds = leastReynolds[i];
        result.mostReynolds = mostReynolds[i];
        result.leastSpinRatio = leastSpinRatio[i];
        result.mostSpinRatio = mostSpinRatio[i];
        result.steps = steps[i];
        result.rejections = rejections[i];
        exchange.ended(result);
    }

    /** Gives the free lanes the next launches, and rest to those for which there are none; how many fly. */
    private int refill(FlightEquations equations, boolean ownAir, boolean ownWind, Exchange exchange) {
        int filled = 0;
        while (freed > 0) {
            if (taken == padded) {
                prepare(equations, ownAir, ownWind, exchange);
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
    private void prepare(FlightEquations equations, boolean ownAir, boolean ownWind, Exchange exchange) {
        padded = 0;
        taken = 0;
        while (!exhausted && padded < W) {
            if (!exchange.next(launch)) {
                exhausted = true;
                break;
            }
            int i = padded++;
            padRow[i] = launch.row;
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
    private boolean take(int i, int from, boolean ownWind, Exchange exchange) {
        b[NEXT + Y * S + i] = 0.0;
        b[NEXT + X * S + i] = 0.0;
        b[NEXT + Z * S + i] = 0.0;
        if (ownWind) {
            lanes.wind(i, pad.alongTarget(from), pad.towardsRight(from));
        }
        flying[i] = true;
        row[i] = padRow[from];
        time[i] = 0.0;
        steps[i] = 0;
        rejections[i] = 0;
        retry[i] = 0.0;
        longest[i] = Double.POSITIVE_INFINITY;
        search[i].restart(padElevation[from]);
        b[ELEVATION + i] = padElevation[from];
        b[LEVEL + i] = search[i].level();
        double re = pad.reynolds()[from];
        double s = pad.spinRatios()[from];
        lanes.reynolds()[i] = re;
        lanes.spinRatios()[i] = s;
        launchReynolds[i] = re;
        leastReynolds[i] = re;
        mostReynolds[i] = re;
        launchSpinRatio[i] = s;
        leastSpinRatio[i] = s;
        mostSpinRatio[i] = s;
        LandingSearch.Event event = search[i].launch(b[NEXT + VY * S + i], b[RATES + VY * S + i]);
        if (event == LandingSearch.Event.NOTHING) {
            return true;
        }
        boolean landed = event == LandingSearch.Event.LANDED;
        end(i, landed ? Ending.LANDED_AT_ONCE : Ending.ELEVATION_NOT_REACHED, 0.0, exchange);
        return false;
    }

    /** A lane without a ball: all its numbers stay finite. */
    private void rest(int i) {
        flying[i] = false;
        row[i] = -1;
        retry[i] = 0.0;
        for (int c = 0; c < STATE; c++) {
            b[NEXT + c * S + i] = c == VX ? 1.0 : 0.0;
        }
        for (int c = Lanes.AXIS_AT; c < PREPARED; c += S) {
            b[c + i] = 0.0;
        }
        b[Lanes.SPEED_AT + i] = 1.0;
        b[LEVEL + i] = -1.0;
        lanes.wind(i, 0.0, 0.0);
    }
}
