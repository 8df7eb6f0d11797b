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

/**
 * Flights whose last step is known, waiting until there are enough of them to find their apexes and landings side by side: what
 * {@link LandingSearch} and {@link FlightPath} do, to the last bit.
 *
 * <p>Mutable; one for each thread.
 */
final class LaneLandings {
    private static final int W = Lanes.WIDTH;
    private static final int S = Lanes.STRIDE;
    private static final int START = PrinceDormand65.START_AT;
    private static final int STEP = PrinceDormand65.STEP_AT;
    private static final int NEXT = PrinceDormand65.NEXT_AT;
    private static final int K1 = PrinceDormand65.K1_AT;
    private static final int RATES = Lanes.RATES_AT;

    /** What is kept of the step in which a flight had its apex, lane by lane: the step, then the rows of its height. */
    static final int APEX_ROWS = 1 + LaneQuintics.ROWS;

    private static final int TIME = 0;
    private static final int H = S;
    private static final int LEVEL = 2 * S;
    private static final int IN_X = 3 * S;
    private static final int IN_Y = IN_X + LaneQuintics.ROWS * S;
    private static final int IN_Z = IN_Y + LaneQuintics.ROWS * S;
    private static final int IN_SPIN = IN_Z + LaneQuintics.ROWS * S;
    private static final int IN_APEX = IN_SPIN + 4 * S;
    private static final int AT = IN_APEX + APEX_ROWS * S;
    private static final int LENGTH = AT + S;
    private static final int FRACTION = LENGTH + S;
    private static final int APEX = FRACTION + S;
    private static final int OUT = APEX + S;
    private static final int RE = OUT + STATE * S;
    private static final int RATIO = RE + S;

    private final double[] b = new double[RATIO + S];
    private final LaneLog log = new LaneLog();
    private final int[] steps = new int[W];
    private final double[] apexHeight = new double[W];
    private final boolean[] apexAhead = new boolean[W];
    private final LaneQuintics quintics = new LaneQuintics();
    private final Quintic quintic = new Quintic();
    private final LaneExchange.Result result = new LaneExchange.Result();
    private int waiting;

    LaneLandings() {}

    /** Forgets those that wait. */
    void clear() {
        waiting = 0;
    }

    boolean full() {
        return waiting == W;
    }

    /**
     * Takes a flight that comes down to a level in the last step of its lane, falling throughout.
     *
     * @param lanes the block
     * @param i the lane
     * @param time when the step began
     * @param level the height to which the ball comes down
     * @param stepsTaken the steps, this one included
     * @param of what else is known of the lane
     */
    void add(Lanes lanes, int i, double time, double level, int stepsTaken, LaneLog of) {
        double[] from = lanes.block();
        int n = waiting++;
        b[TIME + n] = time;
        b[H + n] = from[STEP + i];
        b[LEVEL + n] = level;
        coordinate(from, i, X, VX, IN_X + n);
        coordinate(from, i, Y, VY, IN_Y + n);
        coordinate(from, i, Z, VZ, IN_Z + n);
        b[IN_SPIN + n] = from[START + SPIN * S + i];
        b[IN_SPIN + S + n] = from[K1 + SPIN * S + i];
        b[IN_SPIN + 2 * S + n] = from[NEXT + SPIN * S + i];
        b[IN_SPIN + 3 * S + n] = from[RATES + SPIN * S + i];
        b[RE + n] = lanes.reynolds()[i];
        b[RATIO + n] = lanes.spinRatios()[i];
        steps[n] = stepsTaken;
        log.take(n, of, i);
    }

    private void coordinate(double[] from, int i, int position, int velocity, int to) {
        int x = position * S + i;
        int v = velocity * S + i;
        b[to] = from[START + x];
        b[to + S] = from[START + v];
        b[to + 2 * S] = from[K1 + v];
        b[to + 3 * S] = from[NEXT + x];
        b[to + 4 * S] = from[NEXT + v];
        b[to + 5 * S] = from[RATES + v];
    }

    /** Says how high the flight added last is known to have been, and where its apex is still to be found. */
    void apex(double height, boolean ahead, double[] rows, int at) {
        int n = waiting - 1;
        apexHeight[n] = height;
        apexAhead[n] = ahead;
        for (int r = 0; r < APEX_ROWS; r++) {
            b[IN_APEX + r * S + n] = rows[at + r * S];
        }
    }

    /** Ends the flights that wait. */
    void end(LaneExchange exchange) {
        apexes();
        landings();
        interpolate();
        int count = waiting;
        waiting = 0;
        for (int n = 0; n < count; n++) {
            double at = b[AT + n];
            if (b[TIME + n] + b[H + n] <= at) {
                log.see(n, b[RE + n], b[RATIO + n]);
            }
            for (int c = 0; c < STATE; c++) {
                result.state[c] = b[OUT + c * S + n];
            }
            log.write(n, result);
            result.ending = Ending.LANDED;
            result.time = at;
            result.steps = steps[n];
            result.apexHeight = apexAhead[n] ? Math.max(apexHeight[n], b[APEX + n]) : apexHeight[n];
            exchange.ended(result);
        }
    }

    private void apexes() {
        quintics.set(b, IN_APEX, IN_APEX + S);
        quintics.extrema();
        quintics.values(b, APEX);
        for (int n = 0; n < waiting; n++) {
            if (apexAhead[n] && !quintics.settled(n)) {
                b[APEX + n] = top(quintic(b, n, IN_APEX, IN_APEX + S));
            }
        }
    }

    private static double top(Quintic height) {
        return height.value(height.extremum(0.0, 1.0, true));
    }

    /** The apex in a step that a lane keeps, as {@link #apex} does, for a flight that ends in another way. */
    double apex(double[] rows, int at) {
        return top(quintic(rows, at, 0, S));
    }

    private void landings() {
        quintics.set(b, H, IN_Y);
        quintics.roots(b, LEVEL);
        for (int n = 0; n < waiting; n++) {
            double q = quintics.found(n);
            if (!quintics.settled(n)) {
                Quintic height = quintic(b, n, H, IN_Y);
                q = height.combine(1.0, height, 0.0, height, b[LEVEL + n]).root(0.0, 1.0, true);
            }
            b[AT + n] = b[TIME + n] + b[H + n] * q;
        }
    }

    private Quintic quintic(double[] from, int n, int h, int rows) {
        return quintic.set(
                from[h + n],
                from[rows + n],
                from[rows + S + n],
                from[rows + 2 * S + n],
                from[rows + 3 * S + n],
                from[rows + 4 * S + n],
                from[rows + 5 * S + n]);
    }

    /** The states at the landings. The length of a step is, as in a path, the difference of the times at its ends. */
    private void interpolate() {
        for (int n = 0; n < W; n++) {
            double length = b[TIME + n] + b[H + n] - b[TIME + n];
            b[LENGTH + n] = length;
            b[FRACTION + n] = (b[AT + n] - b[TIME + n]) / length;
        }
        quintics.fractions(b, FRACTION);
        coordinate(IN_X, X, VX);
        coordinate(IN_Y, Y, VY);
        coordinate(IN_Z, Z, VZ);
        for (int n = 0; n < waiting; n++) {
            b[OUT + SPIN * S + n] = FlightPath.spin(
                    b[FRACTION + n],
                    b[LENGTH + n],
                    b[IN_SPIN + n],
                    b[IN_SPIN + S + n],
                    b[IN_SPIN + 2 * S + n],
                    b[IN_SPIN + 3 * S + n]);
        }
    }

    private void coordinate(int rows, int position, int velocity) {
        quintics.set(b, LENGTH, rows);
        quintics.values(b, OUT + position * S);
        quintics.slopes(b, OUT + velocity * S);
    }
}
