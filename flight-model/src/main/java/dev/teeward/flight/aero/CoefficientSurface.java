package dev.teeward.flight.aero;

import java.util.Arrays;

/**
 * A smooth surface through a grid of values, without bumps that the values do not have.
 *
 * <p>Every cell is a bicubic through its corners with the slopes and the mixed derivative stored at the nodes; neighbours
 * share them, so the surface and its gradient are continuous. The slopes start as {@link MonotoneSlopes} along the grid
 * lines. One axis at a time that is enough, but two rows in order can cross between their nodes; so a cell is checked by its
 * 16 Bernstein coefficients: within the four corner values, and rising (falling) along an axis if both edges along it rise
 * (fall). A polynomial lies within its coefficients, and its derivative within their differences, so what they keep the
 * surface keeps. Where a cell breaks it the derivatives at its corners are reduced by a quarter, again and again; with all at
 * 0 every condition holds, so this ends.
 */
final class CoefficientSurface {
    private static final double REDUCTION = 0.75;
    private static final int SMALL = 64;
    private static final double ROUNDING = 1e-13;

    private final double[] x;
    private final double[] y;
    // By column of the grid: index i * y.length + j.
    private final double[] f;
    private final double[] fx;
    private final double[] fy;
    private final double[] fxy;

    /** Values at {@code (x[i], y[j])} in order of i, then j; both axes rise strictly and have at least two nodes. */
    CoefficientSurface(double[] x, double[] y, double[] values) {
        this.x = x.clone();
        this.y = y.clone();
        this.f = values.clone();
        this.fx = alongX(f);
        this.fy = alongY(f);
        double[] first = alongY(fx);
        double[] second = alongX(fy);
        this.fxy = new double[f.length];
        for (int node = 0; node < f.length; node++) {
            fxy[node] = 0.5 * (first[node] + second[node]);
        }
        reduce();
    }

    private double[] alongX(double[] values) {
        double[] slopes = new double[values.length];
        double[] line = new double[x.length];
        for (int j = 0; j < y.length; j++) {
            for (int i = 0; i < x.length; i++) {
                line[i] = values[i * y.length + j];
            }
            double[] slope = MonotoneSlopes.of(x, line);
            for (int i = 0; i < x.length; i++) {
                slopes[i * y.length + j] = slope[i];
            }
        }
        return slopes;
    }

    private double[] alongY(double[] values) {
        double[] slopes = new double[values.length];
        for (int i = 0; i < x.length; i++) {
            double[] slope = MonotoneSlopes.of(y, Arrays.copyOfRange(values, i * y.length, (i + 1) * y.length));
            System.arraycopy(slope, 0, slopes, i * y.length, y.length);
        }
        return slopes;
    }

    private void reduce() {
        int[] reductions = new int[f.length];
        boolean again = true;
        while (again) {
            again = false;
            for (int i = 0; i < x.length - 1; i++) {
                for (int j = 0; j < y.length - 1; j++) {
                    if (!keepsOrder(bernstein(i, j))) {
                        again |= reduce(i, j, reductions);
                    }
                }
            }
        }
    }

    private boolean reduce(int i, int j, int[] reductions) {
        boolean changed = false;
        for (int node :
                new int[] {i * y.length + j, (i + 1) * y.length + j, i * y.length + j + 1, (i + 1) * y.length + j + 1
                }) {
            boolean any = fx[node] != 0.0 || fy[node] != 0.0 || fxy[node] != 0.0;
            changed |= any;
            reductions[node]++;
            double factor = reductions[node] < SMALL ? REDUCTION : 0.0;
            fx[node] *= factor;
            fy[node] *= factor;
            fxy[node] *= factor;
        }
        return changed;
    }

    /** The Bernstein coefficients of a cell, [along x][along y]. */
    double[][] bernstein(int i, int j) {
        double hx = (x[i + 1] - x[i]) / 3.0;
        double hy = (y[j + 1] - y[j]) / 3.0;
        double[][] b = new double[4][4];
        for (int right = 0; right < 2; right++) {
            for (int top = 0; top < 2; top++) {
                int node = (i + right) * y.length + j + top;
                double dx = (right == 0 ? hx : -hx) * fx[node];
                double dy = (top == 0 ? hy : -hy) * fy[node];
                double mixed = (right == top ? hx : -hx) * hy * fxy[node];
                b[3 * right][3 * top] = f[node];
                b[1 + right][3 * top] = f[node] + dx;
                b[3 * right][1 + top] = f[node] + dy;
                b[1 + right][1 + top] = f[node] + dx + dy + mixed;
            }
        }
        return b;
    }

    private static boolean keepsOrder(double[][] b) {
        double low = Math.min(Math.min(b[0][0], b[3][0]), Math.min(b[0][3], b[3][3]));
        double high = Math.max(Math.max(b[0][0], b[3][0]), Math.max(b[0][3], b[3][3]));
        double rounding = ROUNDING * Math.max(Math.abs(low), Math.abs(high));
        int signX = sign(b[3][0] - b[0][0], b[3][3] - b[0][3]);
        int signY = sign(b[0][3] - b[0][0], b[3][3] - b[3][0]);
        for (int k = 0; k < 4; k++) {
            for (int l = 0; l < 4; l++) {
                boolean inside = b[k][l] >= low - rounding && b[k][l] <= high + rounding;
                boolean ordered = (k == 3 || signX * (b[k + 1][l] - b[k][l]) >= -rounding)
                        && (l == 3 || signY * (b[k][l + 1] - b[k][l]) >= -rounding);
                if (!(inside && ordered)) {
                    return false;
                }
            }
        }
        return true;
    }

    /** The sign that two differences share, a 0 going with either; 0 if they differ. */
    private static int sign(double first, double second) {
        if (first >= 0.0 && second >= 0.0) {
            return 1;
        }
        return first <= 0.0 && second <= 0.0 ? -1 : 0;
    }

    /** The value at a point of the grid's rectangle; outside, that of the nearest point of it. */
    double at(double u, double v) {
        int i = cell(x, u);
        int j = cell(y, v);
        double hx = x[i + 1] - x[i];
        double hy = y[j + 1] - y[j];
        double p = Math.min(1.0, Math.max(0.0, (u - x[i]) / hx));
        double q = Math.min(1.0, Math.max(0.0, (v - y[j]) / hy));
        int left = i * y.length + j;
        int right = left + y.length;
        double bottom = hermite(p, f[left], hx * fx[left], f[right], hx * fx[right]);
        double top = hermite(p, f[left + 1], hx * fx[left + 1], f[right + 1], hx * fx[right + 1]);
        double bottomSlope = hermite(p, fy[left], hx * fxy[left], fy[right], hx * fxy[right]);
        double topSlope = hermite(p, fy[left + 1], hx * fxy[left + 1], fy[right + 1], hx * fxy[right + 1]);
        return hermite(q, bottom, hy * bottomSlope, top, hy * topSlope);
    }

    /** The cubic from (0, a) with slope da to (1, b) with slope db, exact at both ends. */
    private static double hermite(double t, double a, double da, double b, double db) {
        double s = 1.0 - t;
        return s * s * (a * (1.0 + 2.0 * t) + da * t) + t * t * (b * (1.0 + 2.0 * s) - db * s);
    }

    /** The cell whose nodes enclose a point, the first or last for one outside. */
    private static int cell(double[] nodes, double at) {
        int low = 0;
        int high = nodes.length - 1;
        while (high - low > 1) {
            int middle = (low + high) >>> 1;
            if (at < nodes[middle]) {
                high = middle;
            } else {
                low = middle;
            }
        }
        return low;
    }
}
