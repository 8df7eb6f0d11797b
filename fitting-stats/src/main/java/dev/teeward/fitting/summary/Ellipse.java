package dev.teeward.fitting.summary;

import dev.teeward.fitting.internal.SymmetricMatrix2;

/**
 * An ellipse around shots, with what it means: its kind, its level and the number of shots behind it.
 *
 * <p>In landing patterns x is the carry direction and y the side, right positive; in strike patterns x is towards the toe
 * and y up. Semi-axes are k sqrt(eigenvalue of the covariance). If the shots lie on a line the ellipse is a segment.
 *
 * <pre>{@code
 * Ellipse e = pattern.ellipse(EllipseKind.PREDICTION, 0.9);
 * e.contains(150.0, -4.0);
 * double[][] outline = e.points(72);   // outline[0] are x, outline[1] are y
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class Ellipse {
    private final EllipseKind kind;
    private final double level;
    private final int n;
    private final double centerX;
    private final double centerY;
    private final double semiMajor;
    private final double semiMinor;
    private final double angle;

    Ellipse(EllipseKind kind, double level, int n, double centerX, double centerY, SymmetricMatrix2 covariance) {
        double scale = kind.scale(level, n);
        this.kind = kind;
        this.level = level;
        this.n = n;
        this.centerX = centerX;
        this.centerY = centerY;
        this.semiMajor = Math.sqrt(scale * covariance.majorEigenvalue());
        this.semiMinor = Math.sqrt(scale * covariance.minorEigenvalue());
        this.angle = covariance.majorAngle();
    }

    /**
     * What the ellipse means.
     *
     * @return the kind
     */
    public EllipseKind kind() {
        return kind;
    }

    /**
     * The level, whose meaning is that of the kind.
     *
     * @return the level, in (0, 1)
     */
    public double level() {
        return level;
    }

    /**
     * How many shots the ellipse rests on.
     *
     * @return the number
     */
    public int n() {
        return n;
    }

    /**
     * The x coordinate of the centre.
     *
     * @return the coordinate [m]
     */
    public double centerX() {
        return centerX;
    }

    /**
     * The y coordinate of the centre.
     *
     * @return the coordinate [m]
     */
    public double centerY() {
        return centerY;
    }

    /**
     * The longer semi-axis.
     *
     * @return the length [m]
     */
    public double semiMajor() {
        return semiMajor;
    }

    /**
     * The shorter semi-axis.
     *
     * @return the length [m], 0 if the shots lie on a line
     */
    public double semiMinor() {
        return semiMinor;
    }

    /**
     * The direction of the longer axis.
     *
     * @return the angle from x towards y [rad], in (-pi/2, pi/2]
     */
    public double angle() {
        return angle;
    }

    /**
     * The area.
     *
     * @return pi times both semi-axes [m^2]
     */
    public double area() {
        return Math.PI * semiMajor * semiMinor;
    }

    /**
     * Whether a point lies inside or on the ellipse.
     *
     * @param x the x coordinate [m]
     * @param y the y coordinate [m]
     * @return true if so; false if a coordinate is NaN
     */
    public boolean contains(double x, double y) {
        double along = Math.cos(angle) * (x - centerX) + Math.sin(angle) * (y - centerY);
        double across = Math.cos(angle) * (y - centerY) - Math.sin(angle) * (x - centerX);
        return share(along, semiMajor) + share(across, semiMinor) <= 1.0;
    }

    /** The squared coordinate in semi-axes; on an axis without length only 0 is inside. */
    private static double share(double coordinate, double semiAxis) {
        if (coordinate == 0.0) {
            return 0.0;
        }
        double ratio = coordinate / semiAxis;
        return ratio * ratio;
    }

    /**
     * Points on the outline, for drawing.
     *
     * @param count how many, at least 3
     * @return two rows, x and y [m], counter-clockwise from the end of the longer axis; the first point is not repeated
     * @throws IllegalArgumentException if the count is less than 3
     */
    public double[][] points(int count) {
        if (count < 3) {
            throw new IllegalArgumentException("an outline needs at least 3 points, but count was " + count);
        }
        double[][] outline = new double[2][count];
        for (int i = 0; i < count; i++) {
            double t = 2.0 * Math.PI * i / count;
            double along = semiMajor * Math.cos(t);
            double across = semiMinor * Math.sin(t);
            outline[0][i] = centerX + Math.cos(angle) * along - Math.sin(angle) * across;
            outline[1][i] = centerY + Math.sin(angle) * along + Math.cos(angle) * across;
        }
        return outline;
    }

    /** Kind, level, centre and semi-axes. */
    @Override
    public String toString() {
        return kind + " ellipse at " + level + " from " + n + " shots about (" + centerX + ", " + centerY
                + ") m, semi-axes " + semiMajor + " and " + semiMinor + " m";
    }
}
