package dev.teeward.flight.internal;

import dev.teeward.flight.internal.FlightEquations.Lanes;

/**
 * What {@link Quintic} does, to the last bit, for a block of steps side by side: in one array with constant offsets, in loops
 * that the compiler of the virtual machine vectorises.
 *
 * <p>Mutable; one for each thread.
 */
final class LaneQuintics {
    private static final int W = Lanes.WIDTH;
    private static final int S = Lanes.STRIDE;

    /** Rows that make a quintic: value, first and second derivative at the start, and at the end. */
    static final int ROWS = 6;

    // The first six are the given rows; the value at the start is the first coefficient too.
    private static final int C0 = 0;
    private static final int V0 = S;
    private static final int A0 = 2 * S;
    private static final int P1 = 3 * S;
    private static final int V1 = 4 * S;
    private static final int A1 = 5 * S;
    private static final int H = 6 * S;
    private static final int C1 = 7 * S;
    private static final int C2 = 8 * S;
    private static final int C3 = 9 * S;
    private static final int C4 = 10 * S;
    private static final int C5 = 11 * S;
    private static final int SECOND = 12 * S;
    private static final int D = 13 * S;
    private static final int E = 14 * S;
    private static final int F = 15 * S;
    private static final int Q = 16 * S;
    private static final int MOVE = 17 * S;
    private static final int VALUE = 18 * S;

    private final double[] b = new double[19 * S];

    /** The coefficients for steps and rows found in an array. */
    void set(double[] from, int steps, int rows) {
        System.arraycopy(from, steps, b, H, W);
        System.arraycopy(from, rows, b, 0, ROWS * S);
        low(b);
        differences(b);
        high(b);
    }

    private static void low(double[] b) {
        for (int i = 0; i < W; i++) {
            b[C1 + i] = b[H + i] * b[V0 + i];
        }
        for (int i = 0; i < W; i++) {
            double second = b[H + i] * b[H + i] * b[A0 + i];
            b[SECOND + i] = second;
            b[C2 + i] = second / 2.0;
        }
    }

    private static void differences(double[] b) {
        for (int i = 0; i < W; i++) {
            b[D + i] = b[P1 + i] - b[C0 + i] - b[C1 + i] - b[C2 + i];
        }
        for (int i = 0; i < W; i++) {
            b[E + i] = b[H + i] * b[V1 + i] - b[C1 + i] - b[SECOND + i];
        }
        for (int i = 0; i < W; i++) {
            b[F + i] = (b[H + i] * b[H + i] * b[A1 + i] - b[SECOND + i]) / 2.0;
        }
    }

    private static void high(double[] b) {
        for (int i = 0; i < W; i++) {
            b[C3 + i] = 10.0 * b[D + i] - 4.0 * b[E + i] + b[F + i];
        }
        for (int i = 0; i < W; i++) {
            b[C4 + i] = -15.0 * b[D + i] + 7.0 * b[E + i] - 2.0 * b[F + i];
        }
        for (int i = 0; i < W; i++) {
            b[C5 + i] = 6.0 * b[D + i] - 3.0 * b[E + i] + b[F + i];
        }
    }

    /** The fractions at which to evaluate. */
    void fractions(double[] from, int at) {
        System.arraycopy(from, at, b, Q, W);
    }

    /** The values at the fractions. */
    void values(double[] to, int at) {
        for (int i = 0; i < W; i++) {
            double q = b[Q + i];
            b[VALUE + i] =
                    b[C0 + i] + q * (b[C1 + i] + q * (b[C2 + i] + q * (b[C3 + i] + q * (b[C4 + i] + q * b[C5 + i]))));
        }
        System.arraycopy(b, VALUE, to, at, W);
    }

    /** The slopes at the fractions, each divided by a length of a step. */
    void slopes(double[] to, int at) {
        for (int i = 0; i < W; i++) {
            double q = b[Q + i];
            double slope = b[C1 + i]
                    + q * (2.0 * b[C2 + i] + q * (3.0 * b[C3 + i] + q * (4.0 * b[C4 + i] + q * 5.0 * b[C5 + i])));
            b[VALUE + i] = slope / b[H + i];
        }
        System.arraycopy(b, VALUE, to, at, W);
    }

    /** Where the slope is 0 between the start and the end, by the quick way of {@link Quintic#extremum}. */
    void extrema() {
        for (int i = 0; i < W; i++) {
            double end = b[C1 + i] + (2.0 * b[C2 + i] + (3.0 * b[C3 + i] + (4.0 * b[C4 + i] + 5.0 * b[C5 + i])));
            b[Q + i] = b[C1 + i] / (b[C1 + i] - end);
        }
        for (int round = 0; round < Quintic.ROUNDS; round++) {
            towardsExtremum(b);
        }
    }

    private static void towardsExtremum(double[] b) {
        for (int i = 0; i < W; i++) {
            double q = b[Q + i];
            double slope = b[C1 + i]
                    + q * (2.0 * b[C2 + i] + q * (3.0 * b[C3 + i] + q * (4.0 * b[C4 + i] + q * 5.0 * b[C5 + i])));
            b[MOVE + i] = slope;
        }
        for (int i = 0; i < W; i++) {
            double q = b[Q + i];
            double bend = 2.0 * b[C2 + i] + q * (6.0 * b[C3 + i] + q * (12.0 * b[C4 + i] + q * 20.0 * b[C5 + i]));
            b[MOVE + i] = b[MOVE + i] / bend;
        }
        for (int i = 0; i < W; i++) {
            b[Q + i] = b[Q + i] - b[MOVE + i];
        }
    }

    /** Where the value is that of a level between the start, above it, and the end, by the quick way of {@link Quintic#root}. */
    void roots(double[] levels, int at) {
        System.arraycopy(levels, at, b, D, W);
        for (int i = 0; i < W; i++) {
            b[C0 + i] = b[C0 + i] - b[D + i];
        }
        for (int i = 0; i < W; i++) {
            double end = b[C0 + i] + (b[C1 + i] + (b[C2 + i] + (b[C3 + i] + (b[C4 + i] + b[C5 + i]))));
            b[Q + i] = b[C0 + i] / (b[C0 + i] - end);
        }
        for (int round = 0; round < Quintic.ROUNDS; round++) {
            towardsRoot(b);
        }
    }

    private static void towardsRoot(double[] b) {
        for (int i = 0; i < W; i++) {
            double q = b[Q + i];
            b[MOVE + i] =
                    b[C0 + i] + q * (b[C1 + i] + q * (b[C2 + i] + q * (b[C3 + i] + q * (b[C4 + i] + q * b[C5 + i]))));
        }
        for (int i = 0; i < W; i++) {
            double q = b[Q + i];
            double slope = b[C1 + i]
                    + q * (2.0 * b[C2 + i] + q * (3.0 * b[C3 + i] + q * (4.0 * b[C4 + i] + q * 5.0 * b[C5 + i])));
            b[MOVE + i] = b[MOVE + i] / slope;
        }
        for (int i = 0; i < W; i++) {
            b[Q + i] = b[Q + i] - b[MOVE + i];
        }
    }

    /** The fraction found in a lane. */
    double found(int i) {
        return b[Q + i];
    }

    /** Whether the fraction found in a lane is to be believed, see {@link Quintic}. */
    boolean settled(int i) {
        double q = b[Q + i];
        return Math.abs(b[MOVE + i]) <= Quintic.SETTLED && q > 0.0 && q < 1.0;
    }
}
