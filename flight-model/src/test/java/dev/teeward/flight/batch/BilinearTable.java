package dev.teeward.flight.batch;

import dev.teeward.flight.aero.AerodynamicModel;

/**
 * A table of coefficients over Reynolds number and spin ratio with straight lines between its rows: kinks at every one of them.
 * The numbers are near a golf ball's, rounded to two digits, and stand for no measured one.
 */
public final class BilinearTable implements AerodynamicModel {
    private static final double[] RE = {4e4, 6e4, 8e4, 1.1e5, 1.5e5, 2e5, 2.6e5};
    private static final double[] S = {0.0, 0.1, 0.2, 0.35, 0.55, 0.8, 1.2};

    private static final double[][] DRAG = {
        {0.52, 0.54, 0.57, 0.60, 0.62, 0.65, 0.67},
        {0.40, 0.42, 0.45, 0.47, 0.50, 0.52, 0.55},
        {0.30, 0.33, 0.35, 0.38, 0.40, 0.43, 0.46},
        {0.24, 0.27, 0.29, 0.32, 0.34, 0.37, 0.40},
        {0.22, 0.24, 0.26, 0.29, 0.31, 0.34, 0.37},
        {0.21, 0.24, 0.26, 0.28, 0.31, 0.33, 0.36},
        {0.21, 0.23, 0.25, 0.28, 0.30, 0.33, 0.36},
    };

    private static final double[][] LIFT = {
        {0.00, 0.22, 0.30, 0.34, 0.36, 0.38, 0.39},
        {0.00, 0.21, 0.29, 0.33, 0.36, 0.37, 0.38},
        {0.00, 0.20, 0.28, 0.33, 0.35, 0.37, 0.38},
        {0.00, 0.19, 0.27, 0.31, 0.34, 0.35, 0.36},
        {0.00, 0.17, 0.24, 0.28, 0.31, 0.32, 0.33},
        {0.00, 0.15, 0.20, 0.24, 0.26, 0.27, 0.28},
        {0.00, 0.14, 0.19, 0.22, 0.24, 0.25, 0.26},
    };

    /** For tests. */
    public BilinearTable() {}

    @Override
    public double dragCoefficient(double re, double s) {
        return between(DRAG, re, s);
    }

    @Override
    public double liftCoefficient(double re, double s) {
        return between(LIFT, re, s);
    }

    private static double between(double[][] table, double re, double s) {
        int i = row(RE, re);
        int j = row(S, s);
        double p = share(RE, i, re);
        double q = share(S, j, s);
        return (1.0 - p) * ((1.0 - q) * table[i][j] + q * table[i][j + 1])
                + p * ((1.0 - q) * table[i + 1][j] + q * table[i + 1][j + 1]);
    }

    private static int row(double[] at, double value) {
        int i = 0;
        while (i < at.length - 2 && value >= at[i + 1]) {
            i++;
        }
        return i;
    }

    private static double share(double[] at, int i, double value) {
        return Math.min(1.0, Math.max(0.0, (value - at[i]) / (at[i + 1] - at[i])));
    }
}
