package dev.teeward.fitting.internal;

import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;
import java.util.function.DoubleUnaryOperator;

/**
 * The probability that a bivariate normal or t point falls into a region, from its boundary alone. With the point made
 * circular about the origin, P is the integral along the boundary of K(r) (x dy - y dx) / (2 pi), K = G(r) / r^2, where G is
 * the radial distribution function: 1 - exp(-r^2/2), or 1 - (1 + r^2/nu)^(-nu/2) for t. Where the boundary keeps away from
 * the origin, G - 1 stands for G, whose missing part only counts how often the boundary winds around the origin; so small
 * tails keep their digits.
 *
 * <p>By Gauss-Legendre on pieces of an edge, to about 1e-13. A stretch of an ellipse that keeps more than 40 standard deviations
 * away from a normal point counts by the angle it spans alone, which is all that a double can tell. Immutable and thread-safe.
 */
public final class BoundaryIntegral {
    private static final GaussLegendre RULE = new GaussLegendre(20);
    private static final GaussLegendre QUICK = new GaussLegendre(8);

    /** The boundary counts as away from the origin from this many standard deviations. */
    private static final double AWAY = 0.5;

    /** Normal tails beyond this many standard deviations are below the smallest double. */
    private static final double FAR = 40.0;

    private static final int CURVE_PIECES = 48;

    /** The longest piece of a curve that is integrated [standard deviations]. */
    private static final double LONGEST = 1.0;

    /** The shortest, which nothing needs unless the ellipse is beyond the digits of a double [rad]. */
    private static final double SHORTEST = 1e-13;

    private final double meanX;
    private final double meanY;
    private final double l11;
    private final double l21;
    private final double l22;
    private final double nu;
    private final GaussLegendre rule;

    private BoundaryIntegral(
            double meanX, double meanY, double l11, double l21, double l22, double nu, GaussLegendre rule) {
        this.meanX = meanX;
        this.meanY = meanY;
        this.l11 = l11;
        this.l21 = l21;
        this.l22 = l22;
        this.nu = nu;
        this.rule = rule;
    }

    /**
     * A point.
     *
     * @param scale the covariance of a normal point or the scale of a t, not singular
     * @param meanX the first coordinate of the centre
     * @param meanY the second coordinate of the centre
     * @param degreesOfFreedom those of t, above 0; infinite for the normal
     * @return the probabilities of regions
     */
    public static BoundaryIntegral of(SymmetricMatrix2 scale, double meanX, double meanY, double degreesOfFreedom) {
        double l11 = Math.sqrt(scale.xx());
        return new BoundaryIntegral(
                meanX,
                meanY,
                l11,
                scale.xy() / l11,
                Math.sqrt(scale.determinant() / scale.xx()),
                degreesOfFreedom,
                RULE);
    }

    /**
     * The same with fewer nodes, for simulations: good to about 1e-6.
     *
     * @return the faster twin
     */
    public BoundaryIntegral coarse() {
        return new BoundaryIntegral(meanX, meanY, l11, l21, l22, nu, QUICK);
    }

    private double u(double x) {
        return (x - meanX) / l11;
    }

    private double v(double x, double y) {
        return ((y - meanY) - l21 * u(x)) / l22;
    }

    private double survival(double r2) {
        return Double.isInfinite(nu) ? Math.exp(-0.5 * r2) : Math.pow(1.0 + r2 / nu, -0.5 * nu);
    }

    private double kernel(double r2, boolean away) {
        if (away) {
            return -survival(r2) / r2;
        }
        if (r2 < 1e-280) {
            return 0.5;
        }
        return Double.isInfinite(nu) ? -Math.expm1(-0.5 * r2) / r2 : -Math.expm1(-0.5 * nu * Math.log1p(r2 / nu)) / r2;
    }

    /**
     * The probability of a simple polygon.
     *
     * @param x the first coordinates of the corners, in order of either direction
     * @param y the second coordinates
     * @return the probability, in [0, 1]
     */
    public double polygon(double[] x, double[] y) {
        int n = x.length;
        double[] a = new double[n];
        double[] b = new double[n];
        for (int i = 0; i < n; i++) {
            a[i] = u(x[i]);
            b[i] = v(x[i], y[i]);
        }
        double nearest = Double.POSITIVE_INFINITY;
        for (int i = 0; i < n; i++) {
            nearest = Math.min(nearest, distance(a[i], b[i], a[(i + 1) % n], b[(i + 1) % n]));
        }
        boolean away = nearest > AWAY;
        double sum = 0.0;
        double winding = 0.0;
        for (int i = 0; i < n; i++) {
            int j = (i + 1) % n;
            sum += edge(a[i], b[i], a[j], b[j], away);
            winding += Math.atan2(a[i] * b[j] - b[i] * a[j], a[i] * a[j] + b[i] * b[j]);
        }
        return probability(sum, winding, away);
    }

    private static double probability(double sum, double winding, boolean away) {
        double turns = Math.rint(winding / (2.0 * Math.PI));
        double p = sum / (2.0 * Math.PI) + (away ? turns : 0.0);
        return Math.min(1.0, Math.abs(p));
    }

    private static double distance(double ax, double ay, double bx, double by) {
        double dx = bx - ax;
        double dy = by - ay;
        double square = dx * dx + dy * dy;
        double t = square > 0.0 ? Math.max(0.0, Math.min(1.0, -(ax * dx + ay * dy) / square)) : 0.0;
        return Math.hypot(ax + t * dx, ay + t * dy);
    }

    private double edge(double ax, double ay, double bx, double by, boolean away) {
        double length = Math.hypot(bx - ax, by - ay);
        if (!(length > 0.0)) {
            return 0.0;
        }
        double cosine = (bx - ax) / length;
        double sine = (by - ay) / length;
        double h = ax * sine - ay * cosine;
        double from = ax * cosine + ay * sine;
        double to = from + length;
        double sum = 0.0;
        double at = from;
        while (at < to) {
            // Steps of 1 within 12 standard deviations and of 0.4 times the distance beyond, with an end at 0.
            double step = Math.max(1.0, Math.abs(at) > 12.0 ? 0.4 * Math.abs(at) : 1.0);
            double next = at < 0.0 ? Math.min(at + step, 0.0) : at + step;
            double end = Math.min(to, next);
            double start = at;
            sum += rule.integrate(t -> kernel(h * h + t * t, away), start, end, 1);
            at = end;
        }
        return h * sum;
    }

    /**
     * The probability of an ellipse.
     *
     * @param centerX the first coordinate of its centre
     * @param centerY the second coordinate of its centre
     * @param first the semi-axis in the direction of the angle
     * @param second the other semi-axis
     * @param angle the direction of the first semi-axis from the first coordinate [rad]
     * @return the probability, in [0, 1]
     */
    public double ellipse(double centerX, double centerY, double first, double second, double angle) {
        double cos = Math.cos(angle);
        double sin = Math.sin(angle);
        double[] ends = pieces(centerX, centerY, first, second, cos, sin);
        double[] before = curve(centerX, centerY, first, second, cos, sin, 0.0);
        double nearest = Double.POSITIVE_INFINITY;
        double winding = 0.0;
        double[] turns = new double[ends.length];
        double[] distances = new double[ends.length];
        for (int i = 1; i < ends.length; i++) {
            double[] point = curve(centerX, centerY, first, second, cos, sin, ends[i]);
            distances[i] = distance(before[0], before[1], point[0], point[1]);
            nearest = Math.min(nearest, distances[i]);
            turns[i] = Math.atan2(
                    before[0] * point[1] - before[1] * point[0], before[0] * point[0] + before[1] * point[1]);
            winding += turns[i];
            before = point;
        }
        boolean away = nearest > AWAY;
        DoubleUnaryOperator integrand = t -> {
            double[] p = curve(centerX, centerY, first, second, cos, sin, t);
            return kernel(p[0] * p[0] + p[1] * p[1], away) * (p[0] * p[3] - p[1] * p[2]);
        };
        double sum = 0.0;
        for (int i = 1; i < ends.length; i++) {
            if (far(distances[i])) {
                sum += away ? 0.0 : turns[i];
            } else {
                sum += rule.integrate(integrand, ends[i - 1], ends[i], 1);
            }
        }
        return probability(sum, winding, away);
    }

    /** Where G of the normal is 1 to the last bit, and 1 - G below the smallest number, K is 1 / r^2 and the integral an angle. */
    private boolean far(double distance) {
        return Double.isInfinite(nu) && distance > FAR;
    }

    /**
     * The ends of pieces of an ellipse, from 0 to 2 pi: short in standard deviations, except where they are far from the
     * origin, so that their number hardly grows with the ellipse.
     */
    private double[] pieces(double cx, double cy, double first, double second, double cos, double sin) {
        // The most standard deviations that one unit of length can be.
        double stretch = Math.sqrt(1.0 / (l11 * l11) + (1.0 + l21 * l21 / (l11 * l11)) / (l22 * l22));
        double speed = Math.max(first, second) * stretch;
        double[] ends = new double[CURVE_PIECES + 1];
        int filled = 1;
        Deque<Double> open = new ArrayDeque<>();
        for (int i = CURVE_PIECES; i > 0; i--) {
            open.push(2.0 * Math.PI * i / CURVE_PIECES);
        }
        while (!open.isEmpty()) {
            double from = ends[filled - 1];
            double to = open.element();
            double reach = 0.5 * (to - from) * speed;
            if (2.0 * reach > LONGEST && to - from > SHORTEST) {
                double middle = 0.5 * (from + to);
                double[] point = curve(cx, cy, first, second, cos, sin, middle);
                double closest = Math.hypot(point[0], point[1]) - reach;
                // As for edges, a step may be 0.4 times the distance beyond 12 standard deviations.
                if (!far(closest) && !(closest > 12.0 && Double.isFinite(nu) && 2.0 * reach < 0.4 * closest)) {
                    open.push(middle);
                    continue;
                }
            }
            if (filled == ends.length) {
                ends = Arrays.copyOf(ends, 2 * filled);
            }
            ends[filled++] = open.pop();
        }
        return Arrays.copyOf(ends, filled);
    }

    /** A point of the ellipse and its derivative, made circular. */
    private double[] curve(double cx, double cy, double first, double second, double cos, double sin, double t) {
        double c = Math.cos(t);
        double s = Math.sin(t);
        double x = cx + first * c * cos - second * s * sin;
        double y = cy + first * c * sin + second * s * cos;
        double dx = (-first * s * cos - second * c * sin) / l11;
        double dy = -first * s * sin + second * c * cos;
        return new double[] {u(x), v(x, y), dx, (dy - l21 * dx) / l22};
    }
}
