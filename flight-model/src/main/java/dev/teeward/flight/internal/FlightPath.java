package dev.teeward.flight.internal;

import static dev.teeward.flight.internal.FlightEquations.RATES;
import static dev.teeward.flight.internal.FlightEquations.SPIN;
import static dev.teeward.flight.internal.FlightEquations.STATE;
import static dev.teeward.flight.internal.FlightEquations.VX;
import static dev.teeward.flight.internal.FlightEquations.VY;
import static dev.teeward.flight.internal.FlightEquations.VZ;
import static dev.teeward.flight.internal.FlightEquations.X;
import static dev.teeward.flight.internal.FlightEquations.Y;
import static dev.teeward.flight.internal.FlightEquations.Z;

import java.util.Arrays;
import java.util.OptionalDouble;

/**
 * A flown path: the ends of the steps, the states between them by quintic interpolation, and how the flight ended.
 *
 * <p>Position by the quintic through position, velocity and acceleration at both ends of a step, velocity by its derivative,
 * spin by the cubic through spin and its rate. Immutable and thread-safe once the integrator has handed it over.
 */
public final class FlightPath {
    /** How a flight ended. */
    public enum Ending {
        /** The ball came down to the landing elevation. */
        LANDED,
        /** The ball starts at the landing elevation and does not rise above it. */
        LANDED_AT_ONCE,
        /** The ball came back to its starting height without having reached the higher landing elevation. */
        ELEVATION_NOT_REACHED,
        /** The ball was still in the air when the limit of time or steps was met. */
        DID_NOT_COME_DOWN,
        /** No step is short enough, because a rate is not finite or jumps without end. */
        DID_NOT_CONVERGE
    }

    private static final int KNOT = 1 + STATE + RATES;
    private static final int FIRST_CAPACITY = 16;

    private double[] knots = new double[FIRST_CAPACITY * KNOT];
    private int count;
    private int rejections;
    private Ending ending = Ending.DID_NOT_CONVERGE;
    private double endTime;
    private double apexTime;
    private double apexHeight;

    FlightPath() {}

    void add(double time, double[] state, double[] rates) {
        int at = count * KNOT;
        if (at == knots.length) {
            knots = Arrays.copyOf(knots, 2 * at);
        }
        knots[at] = time;
        System.arraycopy(state, 0, knots, at + 1, STATE);
        System.arraycopy(rates, 0, knots, at + 1 + STATE, RATES);
        count++;
    }

    void reject() {
        rejections++;
    }

    FlightPath end(Ending how, double time, LandingSearch search) {
        ending = how;
        endTime = time;
        apexTime = search.apexTime();
        apexHeight = search.apexHeight();
        return this;
    }

    /** A landing on a terrain, which a ball may meet while it still rises. */
    FlightPath landed(double time, LandingSearch search) {
        end(Ending.LANDED, time, search);
        if (apexTime > time) {
            apexTime = time;
            apexHeight =
                    Math.max(0.0, last(Y, VY).value((time - time(count - 2)) / (time(count - 1) - time(count - 2))));
        }
        return this;
    }

    /** A coordinate along the last step. */
    Quintic last(int p, int v) {
        return position(count - 2, p, v);
    }

    /**
     * How the flight ended.
     *
     * @return the ending
     */
    public Ending ending() {
        return ending;
    }

    /**
     * When it ended: the landing, or the last state known.
     *
     * @return the time since the launch [s]
     */
    public double endTime() {
        return endTime;
    }

    /**
     * The greatest height up to the end, at least 0, the height of the start.
     *
     * @return the height above the start [m]
     */
    public double apexHeight() {
        return apexHeight;
    }

    /**
     * When the greatest height was reached.
     *
     * @return the time since the launch [s]
     */
    public double apexTime() {
        return apexTime;
    }

    /**
     * The steps taken.
     *
     * @return how many
     */
    public int steps() {
        return count - 1;
    }

    /**
     * The steps tried and thrown away because their error estimate was too large.
     *
     * @return how many
     */
    public int rejections() {
        return rejections;
    }

    /**
     * When a step ended. The last may end after the landing.
     *
     * @param knot the end of a step, 0 for the launch, up to the number of steps
     * @return the time since the launch [s]
     */
    public double time(int knot) {
        return knots[knot * KNOT];
    }

    /**
     * The spin rate at the end of a step.
     *
     * @param knot the end of a step
     * @return the rate [rad/s]
     */
    public double spin(int knot) {
        return coordinate(knot, SPIN);
    }

    /**
     * The speed relative to the air at the end of a step.
     *
     * @param knot the end of a step
     * @return the speed [m/s]
     */
    public double airSpeed(int knot) {
        return knots[knot * KNOT + 1 + STATE + FlightEquations.AIR_SPEED];
    }

    /**
     * The state at a time.
     *
     * @param time the time since the launch, from 0 to the end of the flight [s]
     * @param state receives the seven numbers
     */
    public void at(double time, double[] state) {
        at(new double[] {time}, state);
    }

    /**
     * The states at many times; the same numbers, bit for bit, as one by one.
     *
     * @param times the times since the launch, ascending, from 0 to the end of the flight [s]
     * @param states receives seven numbers for each time
     */
    public void at(double[] times, double[] states) {
        int done = 0;
        if (count == 1) {
            for (; done < times.length; done++) {
                System.arraycopy(knots, 1, states, done * STATE, STATE);
            }
            return;
        }
        for (int knot = stepAt(times[0]); done < times.length; knot++) {
            done = within(knot, times, done, states);
        }
    }

    /** The states in one step, from the first time not yet done; all that are left if it is the last step. */
    private int within(int knot, double[] times, int first, double[] states) {
        double start = time(knot);
        double end = knot == count - 2 ? Double.POSITIVE_INFINITY : time(knot + 1);
        double h = time(knot + 1) - start;
        Quintic x = position(knot, X, VX);
        Quintic y = position(knot, Y, VY);
        Quintic z = position(knot, Z, VZ);
        int i = first;
        for (; i < times.length && times[i] < end; i++) {
            double q = (times[i] - start) / h;
            int at = i * STATE;
            states[at + X] = x.value(q);
            states[at + Y] = y.value(q);
            states[at + Z] = z.value(q);
            states[at + VX] = x.slope(q) / h;
            states[at + VY] = y.slope(q) / h;
            states[at + VZ] = z.slope(q) / h;
            states[at + SPIN] = spin(knot, q, h);
        }
        return i;
    }

    /**
     * The positions at the first multiples of an interval and at the end of the flight.
     *
     * @param interval the interval [s]
     * @param multiples how many multiples, from 0 on; all before the end
     * @param xs receives the distances towards the target [m]
     * @param ys receives the heights [m]
     * @param zs receives the distances to the right [m]
     */
    public void positions(double interval, int multiples, double[] xs, double[] ys, double[] zs) {
        int i = 0;
        // The number of the point again, because turning an int into a double makes every division wait for the one
        // before.
        double number = 0.0;
        int last = count - 2;
        Quintic x = new Quintic();
        Quintic y = new Quintic();
        Quintic z = new Quintic();
        for (int knot = 0; knot <= last; knot++) {
            double start = time(knot);
            double end = knot == last ? Double.POSITIVE_INFINITY : time(knot + 1);
            double h = time(knot + 1) - start;
            position(x, knot, X, VX);
            position(y, knot, Y, VY);
            position(z, knot, Z, VZ);
            int first = i;
            // The fractions of the step stand for a while where the last coordinate goes.
            for (; i < multiples && number * interval < end; i++) {
                zs[i] = (number * interval - start) / h;
                number += 1.0;
            }
            x.values(zs, xs, first, i);
            y.values(zs, ys, first, i);
            z.values(zs, zs, first, i);
            if (knot == last) {
                double q = (endTime - start) / h;
                xs[i] = x.value(q);
                ys[i] = y.value(q);
                zs[i] = z.value(q);
            }
        }
        if (count == 1) {
            for (int n = 0; n <= multiples; n++) {
                xs[n] = coordinate(0, X);
                ys[n] = coordinate(0, Y);
                zs[n] = coordinate(0, Z);
            }
        }
    }

    /**
     * When the ball first reaches a vertical plane {@code alongX * x + alongZ * z = distance}, from either side.
     *
     * @param alongX the x component of the unit normal of the plane
     * @param alongZ the z component
     * @param distance the distance of the plane from the start [m]
     * @return the time, up to the end of the flight [s]; empty if it never does
     */
    public OptionalDouble crossing(double alongX, double alongZ, double distance) {
        if (distance == 0.0) {
            return OptionalDouble.of(0.0);
        }
        for (int knot = 0; knot < count - 1 && time(knot) <= endTime; knot++) {
            double h = time(knot + 1) - time(knot);
            Quintic over =
                    new Quintic().combine(alongX, position(knot, X, VX), alongZ, position(knot, Z, VZ), distance);
            double[] ends = over.monotonePieces();
            double from = over.value(0.0);
            for (int i = 1; i < ends.length; i++) {
                // The end of a step is the start of the next, to the last bit: a crossing cannot fall between them.
                double to = i < ends.length - 1
                        ? over.value(ends[i])
                        : alongX * coordinate(knot + 1, X) + alongZ * coordinate(knot + 1, Z) - distance;
                if (to == 0.0 || from < 0.0 != to < 0.0) {
                    double time = time(knot) + h * over.root(ends[i - 1], ends[i]);
                    return time <= endTime ? OptionalDouble.of(time) : OptionalDouble.empty();
                }
                from = to;
            }
        }
        return OptionalDouble.empty();
    }

    private double coordinate(int knot, int component) {
        return knots[knot * KNOT + 1 + component];
    }

    private int stepAt(double time) {
        int low = 0;
        int high = count - 2;
        while (low < high) {
            int middle = (low + high + 1) >>> 1;
            if (time(middle) <= time) {
                low = middle;
            } else {
                high = middle - 1;
            }
        }
        return low;
    }

    private Quintic position(int knot, int p, int v) {
        return position(new Quintic(), knot, p, v);
    }

    private Quintic position(Quintic quintic, int knot, int p, int v) {
        int a = knot * KNOT + 1;
        int b = a + KNOT;
        return quintic.set(
                time(knot + 1) - time(knot),
                knots[a + p],
                knots[a + v],
                knots[a + STATE + v],
                knots[b + p],
                knots[b + v],
                knots[b + STATE + v]);
    }

    private double spin(int knot, double q, double h) {
        int a = knot * KNOT + 1;
        int b = a + KNOT;
        return spin(q, h, knots[a + SPIN], knots[a + STATE + SPIN], knots[b + SPIN], knots[b + STATE + SPIN]);
    }

    /** The cubic through spin and its rate at both ends of a step h, at the fraction q of the step. */
    static double spin(double q, double h, double from, double rateFrom, double to, double rateTo) {
        double slopeFrom = h * rateFrom;
        double slopeTo = h * rateTo;
        double change = to - from;
        double c2 = 3.0 * change - 2.0 * slopeFrom - slopeTo;
        double c3 = slopeFrom + slopeTo - 2.0 * change;
        return from + q * (slopeFrom + q * (c2 + q * c3));
    }
}
