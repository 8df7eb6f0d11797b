package dev.teeward.flight.internal;

import dev.teeward.flight.internal.FlightEquations.Lanes;

/** What is told of the flights in a block of lanes besides their states. Mutable; one for each thread. */
final class LaneLog {
    private static final int W = Lanes.WIDTH;

    private final int[] row = new int[W];
    private final boolean[] again = new boolean[W];
    private final int[] rejections = new int[W];
    private final double[] launchReynolds = new double[W];
    private final double[] launchSpinRatio = new double[W];
    private final double[] leastReynolds = new double[W];
    private final double[] mostReynolds = new double[W];
    private final double[] leastSpinRatio = new double[W];
    private final double[] mostSpinRatio = new double[W];

    /** A launch takes a lane. */
    void launch(int i, int number, boolean second, double re, double s) {
        row[i] = number;
        again[i] = second;
        rejections[i] = 0;
        launchReynolds[i] = re;
        launchSpinRatio[i] = s;
        leastReynolds[i] = re;
        mostReynolds[i] = re;
        leastSpinRatio[i] = s;
        mostSpinRatio[i] = s;
    }

    /** Sees the end of a step of every lane. */
    void see(double[] reynolds, double[] spinRatios) {
        least(leastReynolds, reynolds);
        most(mostReynolds, reynolds);
        least(leastSpinRatio, spinRatios);
        most(mostSpinRatio, spinRatios);
    }

    /** Sees the end of a step of one lane. */
    void see(int i, double re, double s) {
        leastReynolds[i] = Math.min(leastReynolds[i], re);
        mostReynolds[i] = Math.max(mostReynolds[i], re);
        leastSpinRatio[i] = Math.min(leastSpinRatio[i], s);
        mostSpinRatio[i] = Math.max(mostSpinRatio[i], s);
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

    void reject(int i) {
        rejections[i]++;
    }

    int rejections(int i) {
        return rejections[i];
    }

    /** Puts what another log knows of one of its lanes into a lane of this one. */
    void take(int i, LaneLog from, int lane) {
        row[i] = from.row[lane];
        again[i] = from.again[lane];
        rejections[i] = from.rejections[lane];
        launchReynolds[i] = from.launchReynolds[lane];
        launchSpinRatio[i] = from.launchSpinRatio[lane];
        leastReynolds[i] = from.leastReynolds[lane];
        mostReynolds[i] = from.mostReynolds[lane];
        leastSpinRatio[i] = from.leastSpinRatio[lane];
        mostSpinRatio[i] = from.mostSpinRatio[lane];
    }

    void write(int i, LaneExchange.Result result) {
        result.row = row[i];
        result.again = again[i];
        result.rejections = rejections[i];
        result.launchReynolds = launchReynolds[i];
        result.launchSpinRatio = launchSpinRatio[i];
        result.leastReynolds = leastReynolds[i];
        result.mostReynolds = mostReynolds[i];
        result.leastSpinRatio = leastSpinRatio[i];
        result.mostSpinRatio = mostSpinRatio[i];
    }
}
