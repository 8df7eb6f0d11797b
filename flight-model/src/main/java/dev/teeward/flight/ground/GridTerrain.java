package dev.teeward.flight.ground;

import dev.teeward.quantity.Length;

/**
 * A terrain measured on a square grid, smooth between its points.
 *
 * <p>Between the points it is the cubic convolution of Keys (1981, a = -1/2, from memory): it meets every point, its slope is
 * continuous, and planes and parabolic cylinders along the grid are reproduced within it. Beyond the grid the elevation is that of the nearest point
 * of the border. The elevations are heights above the ball's starting point.
 *
 * <pre>{@code
 * double[][] meters = {{0.0, 0.0, 0.0}, {0.5, 0.6, 0.7}, {1.0, 1.2, 1.4}};  // [along x][along z]
 * Terrain green = GridTerrain.of(meters(140.0), meters(-10.0), meters(10.0), meters);
 * green.elevation(150.0, 0.0);                                              // 0.6 m
 * }</pre>
 *
 * <p>Source: R. G. Keys, IEEE Trans. Acoust. Speech Signal Process. 29 (1981) 1153. Immutable and thread-safe.
 */
public final class GridTerrain implements Terrain {
    private final double firstX;
    private final double firstZ;
    private final double spacing;
    private final double[][] elevations;

    private GridTerrain(double firstX, double firstZ, double spacing, double[][] elevations) {
        this.firstX = firstX;
        this.firstZ = firstZ;
        this.spacing = spacing;
        this.elevations = elevations;
    }

    /**
     * A terrain from a grid of elevations.
     *
     * @param firstDownrange the distance towards the target of the first row
     * @param firstSide the distance to the right of the first column
     * @param spacing the distance between neighbouring points, in [0.1, 1000] m
     * @param elevations the elevations, row after row towards the target, each from left to right, at least 2 by 2, in
     *     [-1000, 1000] [m]
     * @return the terrain
     * @throws IllegalArgumentException if there are too few points, rows of different length, or a number outside
     */
    public static GridTerrain of(Length firstDownrange, Length firstSide, Length spacing, double[][] elevations) {
        if (!(spacing.meters() >= 0.1 && spacing.meters() <= 1000.0)) {
            throw new IllegalArgumentException(
                    "spacing must be in [0.1, 1000] m (0.33 to 3281 ft), but was " + spacing);
        }
        if (elevations.length < 2 || elevations[0].length < 2) {
            throw new IllegalArgumentException("elevations must be at least 2 by 2, but has " + elevations.length
                    + " rows" + (elevations.length > 0 ? " of " + elevations[0].length : ""));
        }
        double[][] padded = new double[elevations.length + 2][];
        int columns = elevations[0].length;
        for (int i = 0; i < elevations.length; i++) {
            if (elevations[i].length != columns) {
                throw new IllegalArgumentException("elevations must have rows of equal length, but row " + i + " has "
                        + elevations[i].length + " and the first " + columns);
            }
            for (double elevation : elevations[i]) {
                if (!(Math.abs(elevation) <= 1000.0)) {
                    throw new IllegalArgumentException("elevations must be in [-1000, 1000] m (-3281 to 3281 ft), but"
                            + " row " + i + " has " + elevation);
                }
            }
            padded[i + 1] = extended(elevations[i]);
        }
        int last = padded.length - 1;
        padded[0] = rowBeyond(padded[1], padded[2]);
        padded[last] = rowBeyond(padded[last - 1], padded[last - 2]);
        return new GridTerrain(firstDownrange.meters(), firstSide.meters(), spacing.meters(), padded);
    }

    /** A row with one point more at either end, in a straight line with the two before it. */
    private static double[] extended(double[] row) {
        int n = row.length;
        double[] longer = new double[n + 2];
        System.arraycopy(row, 0, longer, 1, n);
        longer[0] = 2.0 * row[0] - row[1];
        longer[n + 1] = 2.0 * row[n - 1] - row[n - 2];
        return longer;
    }

    private static double[] rowBeyond(double[] border, double[] inner) {
        double[] row = new double[border.length];
        for (int j = 0; j < row.length; j++) {
            row[j] = 2.0 * border[j] - inner[j];
        }
        return row;
    }

    @Override
    public double elevation(double x, double z) {
        return evaluate(x, z, false, false);
    }

    @Override
    public double slopeAlongTarget(double x, double z) {
        return beyond(x, firstX, elevations.length) ? 0.0 : evaluate(x, z, true, false) / spacing;
    }

    @Override
    public double slopeTowardsRight(double x, double z) {
        return beyond(z, firstZ, elevations[0].length) ? 0.0 : evaluate(x, z, false, true) / spacing;
    }

    private boolean beyond(double place, double first, int padded) {
        double index = (place - first) / spacing;
        return index < 0.0 || index > padded - 3;
    }

    private double evaluate(double x, double z, boolean byX, boolean byZ) {
        double atX = Math.max(0.0, Math.min((x - firstX) / spacing, elevations.length - 3));
        double atZ = Math.max(0.0, Math.min((z - firstZ) / spacing, elevations[0].length - 3));
        int row = Math.min((int) atX, elevations.length - 4);
        int column = Math.min((int) atZ, elevations[0].length - 4);
        double u = atX - row;
        double w = atZ - column;
        double[] c = new double[4];
        for (int i = 0; i < 4; i++) {
            double[] p = elevations[row + i];
            c[i] = cubic(p[column], p[column + 1], p[column + 2], p[column + 3], w, byZ);
        }
        return cubic(c[0], c[1], c[2], c[3], u, byX);
    }

    /** The cubic between p1 and p2, or its slope. */
    private static double cubic(double p0, double p1, double p2, double p3, double t, boolean slope) {
        double c1 = (p2 - p0) / 2.0;
        double c2 = p0 - 2.5 * p1 + 2.0 * p2 - 0.5 * p3;
        double c3 = (p3 - p0) / 2.0 + 1.5 * (p1 - p2);
        return slope ? c1 + t * (2.0 * c2 + t * 3.0 * c3) : p1 + t * (c1 + t * (c2 + t * c3));
    }

    @Override
    public String toString() {
        return "grid of " + (elevations.length - 2) + " by " + (elevations[0].length - 2) + " points, " + spacing
                + " m apart";
    }
}
