package dev.teeward.flight.internal;

/**
 * The quintic through value, first and second derivative at both ends of a step, in the fraction 0 to 1 of the step.
 *
 * <p>Mutable, so that one serves many steps without garbage; one for each thread.
 */
final class Quintic {
    /** The ends of the pieces in which the value rises or falls throughout. */
    static final int PIECE_ENDS = 4;

    private static final int MAX_ITERATIONS = 120;

    /** Two units in the last place of 1: a finer fraction of the step means nothing. */
    private static final double RESOLUTION = 0x1.0p-51;

    /** A last move of Newton's method so short that the next would be lost in rounding. */
    static final double SETTLED = 1e-9;

    /** Rounds of the quick way. */
    static final int ROUNDS = 4;

    private double c0;
    private double c1;
    private double c2;
    private double c3;
    private double c4;
    private double c5;

    /** The zero. */
    Quintic() {}

    /** Becomes that from value p, first derivative v and second derivative a, by time, at the start and the end of a step h. */
    Quintic set(double h, double p0, double v0, double a0, double p1, double v1, double a1) {
        double first = h * v0;
        double second = h * h * a0;
        double half = second / 2.0;
        double d = p1 - p0 - first - half;
        double e = h * v1 - first - second;
        double f = (h * h * a1 - second) / 2.0;
        c0 = p0;
        c1 = first;
        c2 = half;
        c3 = 10.0 * d - 4.0 * e + f;
        c4 = -15.0 * d + 7.0 * e - 2.0 * f;
        c5 = 6.0 * d - 3.0 * e + f;
        return this;
    }

    /** Becomes {@code factor * one + otherFactor * other - constant}. */
    Quintic combine(double factor, Quintic one, double otherFactor, Quintic other, double constant) {
        c0 = factor * one.c0 + otherFactor * other.c0 - constant;
        c1 = factor * one.c1 + otherFactor * other.c1;
        c2 = factor * one.c2 + otherFactor * other.c2;
        c3 = factor * one.c3 + otherFactor * other.c3;
        c4 = factor * one.c4 + otherFactor * other.c4;
        c5 = factor * one.c5 + otherFactor * other.c5;
        return this;
    }

    double value(double q) {
        return c0 + q * (c1 + q * (c2 + q * (c3 + q * (c4 + q * c5))));
    }

    /** The values at many fractions, in a loop that the compiler of the virtual machine vectorises. */
    void values(double[] fractions, double[] to, int from, int end) {
        double k0 = c0;
        double k1 = c1;
        double k2 = c2;
        double k3 = c3;
        double k4 = c4;
        double k5 = c5;
        for (int i = from; i < end; i++) {
            double q = fractions[i];
            to[i] = k0 + q * (k1 + q * (k2 + q * (k3 + q * (k4 + q * k5))));
        }
    }

    /** The derivative by the fraction of the step. */
    double slope(double q) {
        return c1 + q * (2.0 * c2 + q * (3.0 * c3 + q * (4.0 * c4 + q * 5.0 * c5)));
    }

    private double bend(double q) {
        return 2.0 * c2 + q * (6.0 * c3 + q * (12.0 * c4 + q * 20.0 * c5));
    }

    private double twist(double q) {
        return 6.0 * c3 + q * (24.0 * c4 + q * 60.0 * c5);
    }

    /** The value, slope or bend, for order 0, 1 or 2. */
    private double derivative(int order, double q) {
        return switch (order) {
            case 0 -> value(q);
            case 1 -> slope(q);
            case 2 -> bend(q);
            default -> twist(q);
        };
    }

    /**
     * The ends of the pieces in which the value rises or falls throughout: 0, the extrema that sign changes of the slope
     * show, 1. The slope is searched on both sides of the point where its own derivative changes sign, so that a dip or a
     * bump inside the step is not missed.
     */
    double[] monotonePieces() {
        double[] ends = new double[PIECE_ENDS];
        monotonePieces(ends, false);
        return ends;
    }

    /** The same, into an array of {@link #PIECE_ENDS}; quick or not, see {@link #root(double, double, boolean)}. */
    void monotonePieces(double[] ends, boolean quick) {
        double turn = changesSign(2, 0.0, 1.0) ? root(2, 0.0, 1.0) : 1.0;
        ends[0] = 0.0;
        ends[1] = changesSign(1, 0.0, turn) ? extremum(0.0, turn, quick) : 0.0;
        ends[2] = turn < 1.0 && changesSign(1, turn, 1.0) ? extremum(turn, 1.0, quick) : 1.0;
        ends[3] = 1.0;
    }

    private boolean changesSign(int order, double from, double to) {
        double a = derivative(order, from);
        double b = derivative(order, to);
        return (a < 0.0 && b > 0.0) || (a > 0.0 && b < 0.0);
    }

    /** Where the value is 0 between two points; if rounding has left it one sign at both, the point where it is nearer to 0. */
    double root(double from, double to) {
        return root(from, to, false);
    }

    /**
     * The same. Quick is four rounds of Newton's method from where the chord is 0, which leaves nothing to gain on a step of a
     * flight; where the last of them still moved, or left the bracket, the slow way is taken after all.
     */
    double root(double from, double to, boolean quick) {
        double atFrom = value(from);
        double atTo = value(to);
        if ((atFrom > 0.0 && atTo > 0.0) || (atFrom < 0.0 && atTo < 0.0)) {
            return Math.abs(atFrom) < Math.abs(atTo) ? from : to;
        }
        if (quick) {
            double q = from + (to - from) * (atFrom / (atFrom - atTo));
            q -= value(q) / slope(q);
            q -= value(q) / slope(q);
            q -= value(q) / slope(q);
            double move = value(q) / slope(q);
            q -= move;
            if (Math.abs(move) <= SETTLED && q > from && q < to) {
                return q;
            }
        }
        return root(0, from, to);
    }

    /** Where the slope is 0 between two points at which it has different signs. */
    double extremum(double from, double to, boolean quick) {
        if (quick) {
            double atFrom = slope(from);
            double q = from + (to - from) * (atFrom / (atFrom - slope(to)));
            q -= slope(q) / bend(q);
            q -= slope(q) / bend(q);
            q -= slope(q) / bend(q);
            double move = slope(q) / bend(q);
            q -= move;
            if (Math.abs(move) <= SETTLED && q > from && q < to) {
                return q;
            }
        }
        return root(1, from, to);
    }

    /** Newton's method from the end of a bracket, bisection where it would leave it or not at least halve its step. */
    private double root(int order, double from, double to) {
        double atTo = derivative(order, to);
        if (atTo == 0.0) {
            return to;
        }
        boolean rising = atTo > 0.0;
        double low = from;
        double high = to;
        double q = to;
        double value = atTo;
        double lastMove = high - low;
        for (int i = 0; i < MAX_ITERATIONS; i++) {
            double next = q - value / derivative(order + 1, q);
            if (!(next > low && next < high && Math.abs(next - q) <= lastMove / 2.0)) {
                next = low + (high - low) / 2.0;
            }
            lastMove = Math.abs(next - q);
            if (lastMove <= RESOLUTION) {
                return next;
            }
            q = next;
            value = derivative(order, q);
            if (value == 0.0) {
                return q;
            }
            if (value > 0.0 == rising) {
                high = q;
            } else {
                low = q;
            }
        }
        return q;
    }
}
