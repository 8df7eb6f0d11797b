package dev.teeward.fitting.summary;

import dev.teeward.fitting.internal.Data;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The outline of a landing pattern: the largest distance between two shots, the convex hull and the smallest circle around
 * all shots.
 *
 * <p>All three grow with the number of shots and hang on one or two of them. <b>Never compare them between clubs with
 * different numbers of shots</b>, and prefer {@link LandingPattern} for everything but a drawing.
 *
 * <p>Hull by Andrew's monotone chain (1979), circle by Welzl's method (1991), spread over the corners of the hull.
 *
 * <pre>{@code
 * PatternExtent e = PatternExtent.of(carry, side);
 * e.extremeSpread(); // the longest distance between two of them
 * e.circleRadius();
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class PatternExtent {
    private final double[][] hull;
    private final double extremeSpread;
    private final double[] circle;
    private final int n;

    private PatternExtent(double[][] hull, double extremeSpread, double[] circle, int n) {
        this.hull = hull;
        this.extremeSpread = extremeSpread;
        this.circle = circle;
        this.n = n;
    }

    /**
     * The outline.
     *
     * @param x the first coordinates, at least one finite number
     * @param y the second coordinates, one for each shot
     * @return the outline
     * @throws IllegalArgumentException if there is no shot, the columns differ in length, or a value is not finite
     */
    public static PatternExtent of(double[] x, double[] y) {
        Data.check("x", x, 1);
        Data.checkSameLength("y", y, x.length);
        Data.check("y", y, 1);
        double[][] points = new double[x.length][];
        Arrays.setAll(points, i -> new double[] {x[i], y[i]});
        double[][] hull = hull(points);
        double most = 0.0;
        for (double[] a : hull) {
            for (double[] b : hull) {
                most = Math.max(most, Math.hypot(a[0] - b[0], a[1] - b[1]));
            }
        }
        return new PatternExtent(hull, most, circle(hull), x.length);
    }

    private static double turn(double[] a, double[] b, double[] c) {
        return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
    }

    private static double[][] hull(double[][] points) {
        double[][] sorted = points.clone();
        Arrays.sort(sorted, (a, b) -> a[0] != b[0] ? Double.compare(a[0], b[0]) : Double.compare(a[1], b[1]));
        List<double[]> chain = new ArrayList<>();
        for (int pass = 0; pass < 2; pass++) {
            int base = chain.size();
            for (int i = 0; i < sorted.length; i++) {
                double[] p = sorted[pass == 0 ? i : sorted.length - 1 - i];
                while (chain.size() >= base + 2
                        && turn(chain.get(chain.size() - 2), chain.get(chain.size() - 1), p) <= 0.0) {
                    chain.remove(chain.size() - 1);
                }
                chain.add(p);
            }
            chain.remove(chain.size() - 1);
        }
        if (chain.isEmpty() || (chain.size() == 2 && Arrays.equals(chain.get(0), chain.get(1)))) {
            return new double[][] {sorted[0]};
        }
        return chain.toArray(double[][]::new);
    }

    private static double[] circle(double[][] p) {
        double[] c = {p[0][0], p[0][1], 0.0};
        for (int i = 1; i < p.length; i++) {
            if (outside(c, p[i])) {
                c = new double[] {p[i][0], p[i][1], 0.0};
                for (int j = 0; j < i; j++) {
                    if (outside(c, p[j])) {
                        c = around(p[i], p[j]);
                        for (int k = 0; k < j; k++) {
                            if (outside(c, p[k])) {
                                c = around(p[i], p[j], p[k]);
                            }
                        }
                    }
                }
            }
        }
        return c;
    }

    private static boolean outside(double[] c, double[] p) {
        return Math.hypot(p[0] - c[0], p[1] - c[1]) > c[2] * (1.0 + 1e-12);
    }

    private static double[] around(double[] a, double[] b) {
        return new double[] {0.5 * (a[0] + b[0]), 0.5 * (a[1] + b[1]), 0.5 * Math.hypot(a[0] - b[0], a[1] - b[1])};
    }

    private static double[] around(double[] a, double[] b, double[] c) {
        double bx = b[0] - a[0];
        double by = b[1] - a[1];
        double cx = c[0] - a[0];
        double cy = c[1] - a[1];
        double d = 2.0 * (bx * cy - by * cx);
        double b2 = bx * bx + by * by;
        double c2 = cx * cx + cy * cy;
        double x = (cy * b2 - by * c2) / d;
        double y = (bx * c2 - cx * b2) / d;
        return new double[] {a[0] + x, a[1] + y, Math.hypot(x, y)};
    }

    /**
     * The largest distance between two shots.
     *
     * @return the distance, in the unit of the shots
     */
    public double extremeSpread() {
        return extremeSpread;
    }

    /**
     * The corners of the convex hull.
     *
     * @return the corners, anticlockwise, two coordinates each; two for shots on a line, one for a single point
     */
    public double[][] hull() {
        return Arrays.stream(hull).map(double[]::clone).toArray(double[][]::new);
    }

    /**
     * The area of the convex hull.
     *
     * @return the area, in the squared unit of the shots
     */
    public double hullArea() {
        double twice = 0.0;
        for (int i = 1; i + 1 < hull.length; i++) {
            twice += turn(hull[0], hull[i], hull[i + 1]);
        }
        return 0.5 * twice;
    }

    /**
     * The centre of the smallest circle around all shots.
     *
     * @return its two coordinates
     */
    public double[] circleCenter() {
        return new double[] {circle[0], circle[1]};
    }

    /**
     * The radius of the smallest circle around all shots.
     *
     * @return the radius, in the unit of the shots
     */
    public double circleRadius() {
        return circle[2];
    }

    /**
     * What to know before using this.
     *
     * @return always that all of it grows with the number of shots, code {@code grows-with-shots}
     */
    public List<Warning> warnings() {
        return List.of(Warning.of(
                "grows-with-shots",
                "spread, hull and circle of " + n
                        + " shots grow with their number and hang on one or two of them; never"
                        + " compare them with those of another number"));
    }

    /**
     * The number of shots, without which none of this means anything.
     *
     * @return the number
     */
    public int n() {
        return n;
    }
}
