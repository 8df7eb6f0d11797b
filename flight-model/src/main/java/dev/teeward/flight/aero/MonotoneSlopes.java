package dev.teeward.flight.aero;

/**
 * Slopes at the nodes of a piecewise cubic that is monotone wherever its data are.
 *
 * <p>Inside, the weighted harmonic mean of the neighbouring secants, 0 where they differ in sign (Fritsch and Butland 1984,
 * SIAM J. Sci. Stat. Comput. 5, 300); at the ends the three-point formula, limited so that the cubic keeps the sign of the
 * secant there. The method known as PCHIP.
 */
final class MonotoneSlopes {
    private MonotoneSlopes() {}

    /** The slopes of y over x; x rises strictly and has at least two nodes. */
    static double[] of(double[] x, double[] y) {
        int n = x.length;
        double[] step = new double[n - 1];
        double[] secant = new double[n - 1];
        for (int i = 0; i < n - 1; i++) {
            step[i] = x[i + 1] - x[i];
            secant[i] = (y[i + 1] - y[i]) / step[i];
        }
        double[] slope = new double[n];
        if (n == 2) {
            slope[0] = secant[0];
            slope[1] = secant[0];
            return slope;
        }
        for (int i = 1; i < n - 1; i++) {
            double before = 2.0 * step[i] + step[i - 1];
            double after = step[i] + 2.0 * step[i - 1];
            slope[i] = secant[i - 1] * secant[i] > 0.0
                    ? (before + after) / (before / secant[i - 1] + after / secant[i])
                    : 0.0;
        }
        slope[0] = end(step[0], step[1], secant[0], secant[1]);
        slope[n - 1] = end(step[n - 2], step[n - 3], secant[n - 2], secant[n - 3]);
        return slope;
    }

    private static double end(double near, double far, double nearSecant, double farSecant) {
        double slope = ((2.0 * near + far) * nearSecant - near * farSecant) / (near + far);
        if (slope * nearSecant <= 0.0) {
            return 0.0;
        }
        return nearSecant * farSecant < 0.0 && Math.abs(slope) > 3.0 * Math.abs(nearSecant) ? 3.0 * nearSecant : slope;
    }
}
