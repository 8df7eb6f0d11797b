package dev.teeward.fitting.summary;

import dev.teeward.fitting.internal.Data;
import dev.teeward.fitting.internal.WilsonInterval;
import dev.teeward.fitting.summary.ShotShape.Side;
import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The shapes of a set of shots: a table of start direction by curve, the side of the misses, and how many balls cross the
 * target line.
 *
 * <p>A start is straight within a threshold [deg] of the target line. A curve is straight if the angle under which it is seen
 * from the tee, atan(curve / carry), is within another. A miss is a landing outside a third, atan(side / carry). The three
 * defaults of 1, 1 and 2 degrees (1.7 %, 1.7 % and 3.5 % of the carry) are choices of this library. A ball crosses the target
 * line if it starts on one side and lands on the other. Shares carry Wilson intervals (Wilson 1927, Journal of the American
 * Statistical Association 22, from memory).
 *
 * <pre>{@code
 * ShotShapes.Result r = ShotShapes.withDefaults().describe(startDirection, curve, side, carry);
 * r.count(ShotShape.of(Side.RIGHT, Side.LEFT));
 * r.miss();           // ONE_SIDED_LEFT, say
 * r.crossingShare();  // 0.7 [0.397, 0.892]
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class ShotShapes {
    private static final ShotShapes DEFAULTS =
            new ShotShapes(0.95, Math.toRadians(1.0), Math.toRadians(1.0), Math.toRadians(2.0));

    private final double level;
    private final double startThreshold;
    private final double curveThreshold;
    private final double missThreshold;

    private ShotShapes(double level, double startThreshold, double curveThreshold, double missThreshold) {
        this.level = level;
        this.startThreshold = startThreshold;
        this.curveThreshold = curveThreshold;
        this.missThreshold = missThreshold;
    }

    /**
     * Thresholds of 1 deg (start), 1 deg (curve) and 2 deg (miss); intervals at 95 %.
     *
     * @return the procedure
     */
    public static ShotShapes withDefaults() {
        return DEFAULTS;
    }

    /**
     * The same procedure at another level.
     *
     * @param newLevel the level of all intervals, in (0, 1)
     * @return the procedure
     * @throws IllegalArgumentException if the level is not in (0, 1)
     */
    public ShotShapes withLevel(double newLevel) {
        return new ShotShapes(Data.checkLevel(newLevel), startThreshold, curveThreshold, missThreshold);
    }

    /**
     * The same procedure with other thresholds.
     *
     * @param startDegrees how far from the target line a start is still straight [deg], in [0, 45]
     * @param curveDegrees up to which angle a curve is still straight [deg], in [0, 45]
     * @param missDegrees how far from the target line a landing is not yet a miss [deg], in [0, 45]
     * @return the procedure
     * @throws IllegalArgumentException if a threshold is out of range
     */
    public ShotShapes withThresholds(double startDegrees, double curveDegrees, double missDegrees) {
        return new ShotShapes(
                level,
                threshold("start", startDegrees),
                threshold("curve", curveDegrees),
                threshold("miss", missDegrees));
    }

    private static double threshold(String name, double degrees) {
        if (!(degrees >= 0.0 && degrees <= 45.0)) {
            throw new IllegalArgumentException(name + " threshold must be in [0, 45] deg (0-0.785 rad), but was "
                    + degrees + " deg; radians are not expected here");
        }
        return Math.toRadians(degrees);
    }

    /**
     * The shape of one shot.
     *
     * @param startDirection the bearing of the launch, right of the target positive [rad]
     * @param curve the offset at landing from the vertical plane of the start, right positive [m]
     * @param carry the carry [m], greater than 0
     * @return the shape
     * @throws IllegalArgumentException if a number is not finite or the carry is not positive
     */
    public ShotShape shapeOf(double startDirection, double curve, double carry) {
        Data.checkNumber("start direction", 0, startDirection);
        Data.checkNumber("curve", 0, curve);
        return ShotShape.of(Side.of(startDirection, startThreshold), Side.of(bearing(curve, carry), curveThreshold));
    }

    private static double bearing(double offset, double carry) {
        if (!(carry > 0.0 && Double.isFinite(carry))) {
            throw new IllegalArgumentException("carry must be finite and greater than 0 m (0 yd), but was " + carry
                    + " m; leave out shots without a carry");
        }
        return Math.atan(offset / carry);
    }

    /**
     * Describes the shots of one set.
     *
     * @param startDirection the bearings of the launches, right of the target positive [rad], at least 1
     * @param curve the offsets from the start planes at landing, right positive [m], one for each shot
     * @param side the offsets from the target line at landing, right positive [m], one for each shot
     * @param carry the carries [m], all greater than 0, one for each shot
     * @return the shapes
     * @throws IllegalArgumentException if there is no shot, the columns differ in length, a value is not finite, or a carry is
     *     not positive
     */
    public Result describe(double[] startDirection, double[] curve, double[] side, double[] carry) {
        Data.check("start direction", startDirection, 1);
        int n = startDirection.length;
        Data.checkSameLength("curve", curve, n);
        Data.checkSameLength("side", side, n);
        Data.checkSameLength("carry", carry, n);
        Map<ShotShape, Integer> table = new LinkedHashMap<>();
        for (Side start : Side.values()) {
            for (Side bend : Side.values()) {
                table.put(ShotShape.of(start, bend), 0);
            }
        }
        int crossing = 0;
        int left = 0;
        int right = 0;
        for (int i = 0; i < n; i++) {
            ShotShape shape = shapeOf(startDirection[i], curve[i], carry[i]);
            table.merge(shape, 1, Integer::sum);
            Data.checkNumber("side", i, side[i]);
            if (startDirection[i] * side[i] < 0.0) {
                crossing++;
            }
            Side landing = Side.of(bearing(side[i], carry[i]), missThreshold);
            left += landing == Side.LEFT ? 1 : 0;
            right += landing == Side.RIGHT ? 1 : 0;
        }
        return new Result(n, level, missThreshold, table, crossing, left, right);
    }

    /** On which side the misses lie. */
    public enum Miss {
        /** No landing was a miss. */
        NONE,
        /** More than three quarters of the misses are left. */
        ONE_SIDED_LEFT,
        /** More than three quarters of the misses are right. */
        ONE_SIDED_RIGHT,
        /** Each side has at least a quarter of the misses. */
        TWO_SIDED
    }

    /** The shapes of one set. Immutable and thread-safe. */
    public static final class Result {
        private final int n;
        private final double level;
        private final double missThreshold;
        private final Map<ShotShape, Integer> table;
        private final int crossing;
        private final int left;
        private final int right;
        private final List<Warning> warnings;

        private Result(
                int n,
                double level,
                double missThreshold,
                Map<ShotShape, Integer> table,
                int crossing,
                int left,
                int right) {
            this.n = n;
            this.level = level;
            this.missThreshold = missThreshold;
            this.table = Collections.unmodifiableMap(table);
            this.crossing = crossing;
            this.left = left;
            this.right = right;
            List<Warning> found = new ArrayList<>();
            if (left + right > 0 && left + right < 4) {
                found.add(Warning.of(
                        "few-misses",
                        "the side of the misses rests on " + (left + right) + " of them, too few to tell one-sided from"
                                + " two-sided"));
            }
            this.warnings = List.copyOf(found);
        }

        /**
         * How many shots were used: all of them.
         *
         * @return the number
         */
        public int n() {
            return n;
        }

        /**
         * How far from the target line, seen from the tee, a landing is not yet a miss.
         *
         * @return the angle [rad]
         */
        public double missThreshold() {
            return missThreshold;
        }

        /**
         * How many shots had a shape.
         *
         * @param shape the shape
         * @return the number
         */
        public int count(ShotShape shape) {
            return table.getOrDefault(shape, 0);
        }

        /**
         * The whole table, also the shapes that did not occur.
         *
         * @return the number of shots for each of the nine shapes, starts from left to right, within them curves
         */
        public Map<ShotShape, Integer> table() {
            return table;
        }

        /**
         * How many shots missed left.
         *
         * @return the number
         */
        public int missesLeft() {
            return left;
        }

        /**
         * How many shots missed right.
         *
         * @return the number
         */
        public int missesRight() {
            return right;
        }

        /**
         * On which side the misses lie. One-sided means more than three quarters on one side, a choice of this library.
         *
         * @return the class
         */
        public Miss miss() {
            int misses = left + right;
            if (misses == 0) {
                return Miss.NONE;
            }
            if (4 * left > 3 * misses) {
                return Miss.ONE_SIDED_LEFT;
            }
            return 4 * right > 3 * misses ? Miss.ONE_SIDED_RIGHT : Miss.TWO_SIDED;
        }

        /**
         * The share of shots that start on one side of the target line and land on the other.
         *
         * @return the share with its Wilson interval
         */
        public Estimate crossingShare() {
            return share(crossing);
        }

        /**
         * The share of shots of one shape.
         *
         * @param shape the shape
         * @return the share with its Wilson interval
         */
        public Estimate share(ShotShape shape) {
            return share(count(shape));
        }

        private Estimate share(int count) {
            return WilsonInterval.share(count, n, level);
        }

        /**
         * How the shares' intervals were found.
         *
         * @return one line of text
         */
        public String method() {
            return "counts by angular thresholds, shares by Wilson intervals";
        }

        /**
         * What to know about these shapes.
         *
         * @return the warnings, often none
         */
        public List<Warning> warnings() {
            return warnings;
        }
    }
}
