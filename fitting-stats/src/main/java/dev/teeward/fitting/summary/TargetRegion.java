package dev.teeward.fitting.summary;

import dev.teeward.fitting.internal.BoundaryIntegral;
import dev.teeward.fitting.internal.Data;
import java.util.Arrays;

/**
 * A place to land on: a green as a polygon, a circle about the flag, an ellipse.
 *
 * <p>The first coordinate is the distance along the target line, the second the offset from it, right positive; any unit, as
 * long as shots and region share it. The border belongs to the region.
 *
 * <pre>{@code
 * TargetRegion green = TargetRegion.polygon(new double[] {140, 158, 160, 143}, new double[] {-9, -11, 8, 10});
 * green.contains(150.0, 2.0); // true
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class TargetRegion {
    private final double[] x;
    private final double[] y;
    private final double centerX;
    private final double centerY;
    private final double first;
    private final double second;
    private final double angle;

    private TargetRegion(
            double[] x, double[] y, double centerX, double centerY, double first, double second, double angle) {
        this.x = x;
        this.y = y;
        this.centerX = centerX;
        this.centerY = centerY;
        this.first = first;
        this.second = second;
        this.angle = angle;
    }

    /**
     * A polygon whose edges do not cross.
     *
     * @param x the first coordinates of at least three corners, in order of either direction
     * @param y the second coordinates, as many
     * @return the region
     * @throws IllegalArgumentException if there are fewer than three corners, a number is not finite, or edges cross
     */
    public static TargetRegion polygon(double[] x, double[] y) {
        Data.check("x", x, 3);
        Data.checkSameLength("y", y, x.length);
        Data.check("y", y, 3);
        int n = x.length;
        for (int i = 0; i < n; i++) {
            for (int j = i + 2; j < n; j++) {
                boolean neighbours = i == 0 && j == n - 1;
                if (!neighbours && cross(x, y, i, j)) {
                    throw new IllegalArgumentException("the edges of a polygon must not cross, but edges " + (i + 1)
                            + " and " + (j + 1) + " do; give the corners in order");
                }
            }
        }
        return new TargetRegion(x.clone(), y.clone(), 0.0, 0.0, 0.0, 0.0, 0.0);
    }

    private static boolean cross(double[] x, double[] y, int i, int j) {
        int n = x.length;
        int k = (i + 1) % n;
        int l = (j + 1) % n;
        return side(x, y, i, k, j) * side(x, y, i, k, l) < 0.0 && side(x, y, j, l, i) * side(x, y, j, l, k) < 0.0;
    }

    private static double side(double[] x, double[] y, int a, int b, int c) {
        return Math.signum((x[b] - x[a]) * (y[c] - y[a]) - (y[b] - y[a]) * (x[c] - x[a]));
    }

    /**
     * A circle.
     *
     * @param centerX the first coordinate of its centre, finite
     * @param centerY the second coordinate of its centre, finite
     * @param radius the radius, above 0
     * @return the region
     * @throws IllegalArgumentException if a number is not finite or the radius not above 0
     */
    public static TargetRegion circle(double centerX, double centerY, double radius) {
        return ellipse(centerX, centerY, radius, radius, 0.0);
    }

    /**
     * An ellipse.
     *
     * @param centerX the first coordinate of its centre, finite
     * @param centerY the second coordinate of its centre, finite
     * @param first the semi-axis in the direction of the angle, above 0
     * @param second the other semi-axis, above 0
     * @param angle the direction of the first semi-axis, from the first coordinate towards the second [rad]
     * @return the region
     * @throws IllegalArgumentException if a number is not finite or a semi-axis not above 0
     */
    public static TargetRegion ellipse(double centerX, double centerY, double first, double second, double angle) {
        Data.check("ellipse", new double[] {centerX, centerY, first, second, angle}, 5);
        if (!(first > 0.0 && second > 0.0)) {
            throw new IllegalArgumentException(
                    "radii and semi-axes must be above 0, but were " + first + " and " + second);
        }
        return new TargetRegion(new double[0], new double[0], centerX, centerY, first, second, angle);
    }

    /**
     * Whether a point lies in the region.
     *
     * @param px the first coordinate
     * @param py the second coordinate
     * @return true if so, or on the border
     */
    public boolean contains(double px, double py) {
        if (!polygonal()) {
            double dx = px - centerX;
            double dy = py - centerY;
            double along = (dx * Math.cos(angle) + dy * Math.sin(angle)) / first;
            double across = (dy * Math.cos(angle) - dx * Math.sin(angle)) / second;
            return along * along + across * across <= 1.0;
        }
        boolean inside = false;
        for (int i = 0, j = x.length - 1; i < x.length; j = i++) {
            double turn = (x[i] - px) * (y[j] - py) - (x[j] - px) * (y[i] - py);
            boolean between = Math.min(x[i], x[j]) <= px
                    && px <= Math.max(x[i], x[j])
                    && Math.min(y[i], y[j]) <= py
                    && py <= Math.max(y[i], y[j]);
            if (turn == 0.0 && between) {
                return true;
            }
            if (y[i] > py != y[j] > py && px < (x[j] - x[i]) * (py - y[i]) / (y[j] - y[i]) + x[i]) {
                inside = !inside;
            }
        }
        return inside;
    }

    /**
     * The area.
     *
     * @return the area, in the squared unit of the coordinates
     */
    public double area() {
        if (!polygonal()) {
            return Math.PI * first * second;
        }
        double twice = 0.0;
        for (int i = 0; i < x.length; i++) {
            int j = (i + 1) % x.length;
            twice += (x[i] - x[0]) * (y[j] - y[0]) - (x[j] - x[0]) * (y[i] - y[0]);
        }
        return 0.5 * Math.abs(twice);
    }

    private boolean polygonal() {
        return x.length > 0;
    }

    double probability(BoundaryIntegral point) {
        return polygonal() ? point.polygon(x, y) : point.ellipse(centerX, centerY, first, second, angle);
    }

    /** The kind of region and where it is. */
    @Override
    public String toString() {
        return polygonal()
                ? "polygon " + Arrays.toString(x) + " " + Arrays.toString(y)
                : "ellipse about (" + centerX + ", " + centerY + "), semi-axes " + first + " and " + second;
    }
}
