package dev.teeward.fitting.summary;

import dev.teeward.fitting.internal.Data;
import java.util.stream.IntStream;
import org.apache.commons.statistics.descriptive.Median;

/**
 * The point with the least sum of distances to the shots (spatial median; Weber 1909): a centre of a landing pattern that one
 * or two mishits hardly move.
 *
 * <p>By Weiszfeld's iteration (1937) with the step of Vardi and Zhang (2000, PNAS 97) at a shot, finished by Newton's method;
 * to about 1e-13 of the spread. An even number of shots on one line has many such points; one of them is given.
 *
 * <pre>{@code
 * GeometricMedian m = GeometricMedian.of(carry, side);
 * m.x();
 * m.sumOfDistances();
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 *
 * @param x the first coordinate, in the unit of the shots
 * @param y the second coordinate
 * @param sumOfDistances the least sum of distances
 */
public record GeometricMedian(double x, double y, double sumOfDistances) {
    private static final int MOST_STEPS = 10_000;

    /**
     * The median.
     *
     * @param x the first coordinates, at least one finite number
     * @param y the second coordinates, one for each shot
     * @return the point
     * @throws IllegalArgumentException if there is no shot, the columns differ in length, or a value is not finite
     */
    public static GeometricMedian of(double[] x, double[] y) {
        Data.check("x", x, 1);
        Data.checkSameLength("y", y, x.length);
        Data.check("y", y, 1);
        double startX = Median.withDefaults().withCopy(true).evaluate(x);
        double startY = Median.withDefaults().withCopy(true).evaluate(y);
        double[] u =
                IntStream.range(0, x.length).mapToDouble(i -> x[i] - startX).toArray();
        double[] v =
                IntStream.range(0, x.length).mapToDouble(i -> y[i] - startY).toArray();
        double[] at = {0.0, 0.0};
        double scale = 0.0;
        for (int i = 0; i < u.length; i++) {
            scale = Math.max(scale, Math.hypot(u[i], v[i]));
        }
        for (int step = 0; step < MOST_STEPS; step++) {
            double[] next = step(u, v, at, scale);
            double moved = Math.hypot(next[0] - at[0], next[1] - at[1]);
            at = next;
            if (moved <= 1e-4 * scale && step > 20) {
                double[] newton = newton(u, v, at, scale);
                if (sum(u, v, newton) <= sum(u, v, at)) {
                    moved = Math.hypot(newton[0] - at[0], newton[1] - at[1]);
                    at = newton;
                }
            }
            if (moved <= 1e-16 * scale) {
                break;
            }
        }
        return new GeometricMedian(startX + at[0], startY + at[1], sum(u, v, at));
    }

    private static double sum(double[] u, double[] v, double[] at) {
        double sum = 0.0;
        for (int i = 0; i < u.length; i++) {
            sum += Math.hypot(u[i] - at[0], v[i] - at[1]);
        }
        return sum;
    }

    /** Weiszfeld's step; where it stands at shots, only as far as the pull of the others exceeds their own. */
    private static double[] step(double[] u, double[] v, double[] at, double scale) {
        double weights = 0.0;
        double x = 0.0;
        double y = 0.0;
        double pullX = 0.0;
        double pullY = 0.0;
        int here = 0;
        for (int i = 0; i < u.length; i++) {
            double dx = u[i] - at[0];
            double dy = v[i] - at[1];
            double d = Math.hypot(dx, dy);
            if (d <= 1e-14 * scale) {
                here++;
            } else {
                weights += 1.0 / d;
                x += u[i] / d;
                y += v[i] / d;
                pullX += dx / d;
                pullY += dy / d;
            }
        }
        if (!(weights > 0.0)) {
            return at;
        }
        double pull = Math.hypot(pullX, pullY);
        double keep = here == 0 ? 0.0 : pull > 0.0 ? Math.min(1.0, here / pull) : 1.0;
        return new double[] {(1.0 - keep) * x / weights + keep * at[0], (1.0 - keep) * y / weights + keep * at[1]};
    }

    private static double[] newton(double[] u, double[] v, double[] at, double scale) {
        double gx = 0.0;
        double gy = 0.0;
        double xx = 0.0;
        double xy = 0.0;
        double yy = 0.0;
        for (int i = 0; i < u.length; i++) {
            double dx = at[0] - u[i];
            double dy = at[1] - v[i];
            double d = Math.hypot(dx, dy);
            if (d <= 1e-9 * scale) {
                return at;
            }
            gx += dx / d;
            gy += dy / d;
            xx += dy * dy / (d * d * d);
            xy -= dx * dy / (d * d * d);
            yy += dx * dx / (d * d * d);
        }
        double determinant = xx * yy - xy * xy;
        return determinant > 1e-12 * xx * yy
                ? new double[] {at[0] - (yy * gx - xy * gy) / determinant, at[1] - (xx * gy - xy * gx) / determinant}
                : at;
    }
}
