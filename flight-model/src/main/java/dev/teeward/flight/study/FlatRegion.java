package dev.teeward.flight.study;

/**
 * The set around a highest point where a landscape is lower by at most a stated loss, along rays from that point.
 *
 * <p>On each of 120 rays the nearest crossing is found, to 1e-8 of the sides; what lies beyond it again within the loss does
 * not count. The extremes over all directions are refined by a golden-section search between neighbouring rays.
 */
final class FlatRegion {
    private static final int RAYS = 120;
    private static final int LOOKS = 20;
    private static final double GOLDEN = 0.5 * (Math.sqrt(5.0) - 1.0);

    private final double[][] contour;
    private final double[][] extremes;

    private FlatRegion(double[][] contour, double[][] extremes) {
        this.contour = contour;
        this.extremes = extremes;
    }

    static FlatRegion around(Landscape landscape, double[] top, double loss) {
        double least = landscape.at(top[0], top[1]) - loss;
        double[][] contour = new double[RAYS][];
        for (int k = 0; k < RAYS; k++) {
            contour[k] = reach(landscape, top, least, angle(k));
        }
        double[][] extremes = new double[2][2];
        for (int side = 0; side < 2; side++) {
            extremes[side][0] = extreme(landscape, top, least, contour, side, -1.0);
            extremes[side][1] = extreme(landscape, top, least, contour, side, 1.0);
        }
        return new FlatRegion(contour, extremes);
    }

    /** Points around the region, in shares of the sides. */
    double[][] contour() {
        return contour;
    }

    double lowest(int side) {
        return extremes[side][0];
    }

    double highest(int side) {
        return extremes[side][1];
    }

    private static double angle(double ray) {
        return 2.0 * Math.PI * ray / RAYS;
    }

    private static double extreme(
            Landscape landscape, double[] top, double least, double[][] contour, int side, double sign) {
        int best = 0;
        for (int k = 1; k < RAYS; k++) {
            if (sign * contour[k][side] > sign * contour[best][side]) {
                best = k;
            }
        }
        double low = best - 1.0;
        double high = best + 1.0;
        double reached = contour[best][side];
        for (int i = 0; i < 12; i++) {
            double a = high - GOLDEN * (high - low);
            double b = low + GOLDEN * (high - low);
            double atA = reach(landscape, top, least, angle(a))[side];
            double atB = reach(landscape, top, least, angle(b))[side];
            if (sign * atA > sign * atB) {
                high = b;
            } else {
                low = a;
            }
            reached = sign * Math.max(sign * reached, sign * (sign * atA > sign * atB ? atA : atB));
        }
        return reached;
    }

    /** Where a ray leaves the region or the rectangle. */
    private static double[] reach(Landscape landscape, double[] top, double least, double angle) {
        double du = StrictMath.cos(angle);
        double dv = StrictMath.sin(angle);
        double end = Math.min(room(top[0], du), room(top[1], dv));
        double inside = 0.0;
        double outside = -1.0;
        for (int i = 1; i <= LOOKS; i++) {
            // Closer together near the top, so that a small region is not jumped over.
            double r = end * i * i / (LOOKS * LOOKS);
            if (landscape.at(top[0] + r * du, top[1] + r * dv) < least) {
                outside = r;
                break;
            }
            inside = r;
        }
        if (outside < 0.0) {
            return point(top, du, dv, end);
        }
        for (int i = 0; i < 60 && outside - inside > 1e-8; i++) {
            double middle = 0.5 * (inside + outside);
            if (landscape.at(top[0] + middle * du, top[1] + middle * dv) < least) {
                outside = middle;
            } else {
                inside = middle;
            }
        }
        return point(top, du, dv, inside);
    }

    private static double[] point(double[] top, double du, double dv, double r) {
        return new double[] {
            Math.min(1.0, Math.max(0.0, top[0] + r * du)), Math.min(1.0, Math.max(0.0, top[1] + r * dv))
        };
    }

    private static double room(double from, double direction) {
        if (direction > 0.0) {
            return (1.0 - from) / direction;
        }
        return direction < 0.0 ? -from / direction : Double.MAX_VALUE;
    }
}
