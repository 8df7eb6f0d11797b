package dev.teeward.fitting.screen;

import java.util.Arrays;
import java.util.OptionalDouble;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;

/**
 * Simulated cut-offs for the largest squared robust distance of two metrics at the default share 0.75: the value that 5 % of
 * good, normally spread sets exceed.
 *
 * <p>Squared distances are those of the raw estimate with both factors. For 6 to 20 shots every number has its own entry.
 * Beyond 20 the ratio of the cut-off to the Sidak chi-square cut-off is interpolated linearly in 1 / n, and reaches 1 at
 * infinity, where the estimate is exact. The table is re-derived by {@code FalseAlarmSweepTest}.
 */
final class McdCutOffs {
    static final double FALSE_ALARM_RATE = 0.05;
    static final double SHARE = 0.75;
    static final int FEWEST = 6;

    private static final int LAST_OWN_ENTRY = 20;

    /** {n, h, cut-off}; replicates and seed stand in the sweep. */
    private static final double[][] TABLE = {
        {6, 5, 46.93},
        {7, 6, 29.79},
        {8, 6, 57.11},
        {9, 7, 39.05},
        {10, 8, 30.58},
        {11, 9, 25.71},
        {12, 9, 34.82},
        {13, 10, 29.33},
        {14, 11, 26.18},
        {15, 12, 23.83},
        {16, 12, 28.81},
        {17, 13, 25.88},
        {18, 14, 24.37},
        {19, 15, 23.06},
        {20, 15, 25.73},
        {22, 17, 22.90},
        {26, 20, 22.22},
        {28, 21, 22.85},
        {30, 23, 21.75},
        {35, 27, 20.79},
        {40, 30, 21.49},
        {60, 45, 20.07},
        {100, 75, 19.48}
    };

    private McdCutOffs() {}

    static OptionalDouble of(int n, int p, double alpha) {
        if (p != 2 || alpha != SHARE || n < FEWEST) {
            return OptionalDouble.empty();
        }
        if (n <= LAST_OWN_ENTRY) {
            return OptionalDouble.of(TABLE[n - FEWEST][2]);
        }
        double ratio = 1.0;
        for (int i = LAST_OWN_ENTRY - FEWEST; i < TABLE.length; i++) {
            boolean last = i == TABLE.length - 1;
            if (last || n < TABLE[i + 1][0]) {
                double x0 = 1.0 / TABLE[i][0];
                double x1 = last ? 0.0 : 1.0 / TABLE[i + 1][0];
                double y0 = ratio(TABLE[i]);
                double y1 = last ? 1.0 : ratio(TABLE[i + 1]);
                ratio = y0 + (y1 - y0) * (1.0 / n - x0) / (x1 - x0);
                break;
            }
        }
        return OptionalDouble.of(ratio * asymptotic(n));
    }

    /** A copy of the table. */
    static double[][] table() {
        return Arrays.stream(TABLE).map(double[]::clone).toArray(double[][]::new);
    }

    private static double ratio(double[] row) {
        return row[2] / asymptotic((int) row[0]);
    }

    /** The value that the largest of n independent chi-squares with 2 degrees of freedom exceeds in 5 % of sets. */
    private static double asymptotic(int n) {
        double tail = -Math.expm1(Math.log1p(-FALSE_ALARM_RATE) / n);
        return ChiSquaredDistribution.of(2.0).inverseSurvivalProbability(tail);
    }
}
