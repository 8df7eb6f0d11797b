package dev.teeward.flight.batch;

import dev.teeward.quantity.AngleUnit;
import dev.teeward.quantity.SpinRateUnit;
import org.jspecify.annotations.Nullable;

/**
 * Launches in columns of primitive doubles, one row for each ball.
 *
 * <p>The arrays are the caller's and are not copied: a table of 1,000,000 rows costs nothing to make, and one table may be
 * filled again and again ({@link FlightBatch#stream}). All have the same length, the number of rows. Launch, air and wind are
 * checked when rows are flown; the error names the row, counted from 0.
 *
 * <p>Ball, and whatever is not in a column, come from the flight model; the column {@code model} says from which, where there
 * is more than one.
 *
 * <pre>{@code
 * LaunchTable launches = LaunchTable.builder()
 *     .ballSpeed(new double[] {60.0, 61.0}).launchAngle(new double[] {0.2, 0.21}).spinRate(new double[] {500.0, 520.0})
 *     .build();
 * }</pre>
 *
 * <p>As immutable and as thread-safe as the caller leaves the arrays.
 */
public final class LaunchTable {
    static final double QUARTER = AngleUnit.DEGREE.toSi(90.0);
    static final double HALF = AngleUnit.DEGREE.toSi(180.0);
    static final double MOST_SPIN = SpinRateUnit.REVOLUTION_PER_MINUTE.toSi(20_000.0);

    private final int rows;
    private final double[] ballSpeed;
    private final double[] launchAngle;
    private final double[] spinRate;
    private final double @Nullable [] startDirection;
    private final double @Nullable [] axisTilt;
    private final double @Nullable [] landingElevation;
    private final double @Nullable [] density;
    private final double @Nullable [] viscosity;
    private final double @Nullable [] windAlongTarget;
    private final double @Nullable [] windTowardsRight;
    private final int @Nullable [] model;

    private LaunchTable(Builder from) {
        ballSpeed = given("ballSpeed", from.ballSpeed);
        launchAngle = given("launchAngle", from.launchAngle);
        spinRate = given("spinRate", from.spinRate);
        startDirection = from.startDirection;
        axisTilt = from.axisTilt;
        landingElevation = from.landingElevation;
        density = from.density;
        viscosity = from.viscosity;
        windAlongTarget = from.windAlongTarget;
        windTowardsRight = from.windTowardsRight;
        model = from.model;
        rows = ballSpeed.length;
        sameLength("launchAngle", launchAngle, rows);
        sameLength("spinRate", spinRate, rows);
        sameLength("startDirection", startDirection, rows);
        sameLength("axisTilt", axisTilt, rows);
        sameLength("landingElevation", landingElevation, rows);
        sameLength("density", density, rows);
        sameLength("viscosity", viscosity, rows);
        sameLength("windAlongTarget", windAlongTarget, rows);
        sameLength("windTowardsRight", windTowardsRight, rows);
        if (model != null && model.length != rows) {
            throw new IllegalArgumentException(
                    "model must have " + rows + " rows, as many as ballSpeed, but had " + model.length);
        }
        together("density", density, "viscosity", viscosity);
        together("windAlongTarget", windAlongTarget, "windTowardsRight", windTowardsRight);
    }

    /**
     * Starts a table. Ball speed, launch angle and spin rate must be given.
     *
     * @return an empty builder
     */
    public static Builder builder() {
        return new Builder();
    }

    /**
     * The number of rows.
     *
     * @return how many launches there are
     */
    public int rows() {
        return rows;
    }

    /**
     * The speed of the ball at launch, in (0, 110] [m/s].
     *
     * @return the array itself, not a copy
     */
    public double[] ballSpeed() {
        return ballSpeed;
    }

    /**
     * The angle above the horizontal, in [-pi/2, pi/2] [rad].
     *
     * @return the array itself, not a copy
     */
    public double[] launchAngle() {
        return launchAngle;
    }

    /**
     * The spin rate, in [0, 2094.4] [rad/s].
     *
     * @return the array itself, not a copy
     */
    public double[] spinRate() {
        return spinRate;
    }

    /**
     * The bearing of the launch, right positive, in [-pi/2, pi/2] [rad].
     *
     * @return the array itself, not a copy; null if there is no such column
     */
    public double @Nullable [] startDirection() {
        return startDirection;
    }

    /**
     * The tilt of the spin axis, positive when the ball curves right, in [-pi, pi] [rad].
     *
     * @return the array itself, not a copy; null if there is no such column
     */
    public double @Nullable [] axisTilt() {
        return axisTilt;
    }

    /**
     * The height of the landing above the start, in [-1000, 1000] [m].
     *
     * @return the array itself, not a copy; null if there is no such column
     */
    public double @Nullable [] landingElevation() {
        return landingElevation;
    }

    /**
     * The density of the air, in [0, 10] [kg/m3].
     *
     * @return the array itself, not a copy; null if there is no such column
     */
    public double @Nullable [] density() {
        return density;
    }

    /**
     * The dynamic viscosity of the air, in [1e-6, 1e-4] [Pa s].
     *
     * @return the array itself, not a copy; null if there is no such column
     */
    public double @Nullable [] viscosity() {
        return viscosity;
    }

    /**
     * The velocity of the air towards the target at every height, negative for a headwind, in [-50, 50] [m/s].
     *
     * @return the array itself, not a copy; null if there is no such column
     */
    public double @Nullable [] windAlongTarget() {
        return windAlongTarget;
    }

    /**
     * The velocity of the air towards the right at every height, negative when it comes from the right, in [-50, 50]
     * [m/s].
     *
     * @return the array itself, not a copy; null if there is no such column
     */
    public double @Nullable [] windTowardsRight() {
        return windTowardsRight;
    }

    /**
     * Which flight model flies a row.
     *
     * @return the array itself, not a copy; null if there is no such column
     */
    public int @Nullable [] model() {
        return model;
    }

    /**
     * Checks rows against the ranges of launch conditions, air and wind.
     *
     * @param rows how many, from row 0 on
     * @param models the number of flight models
     * @param before the rows of the blocks before, which an error counts too
     */
    void check(int rows, int models, long before) {
        for (int row = 0; row < rows; row++) {
            double speed = ballSpeed[row];
            if (!(speed > 0.0 && speed <= 110.0)) {
                throw refuse(before + row, "ballSpeed", "(0, 110] m/s (0-246 mph)", speed, "m/s");
            }
            if (!(Math.abs(launchAngle[row]) <= QUARTER)) {
                throw refuse(before + row, "launchAngle", "[-pi/2, pi/2] rad (-90 to 90 deg)", launchAngle[row], "rad");
            }
            double spin = spinRate[row];
            if (!(spin >= 0.0 && spin <= MOST_SPIN)) {
                throw refuse(before + row, "spinRate", "[0, 2094.4] rad/s (0-20000 rpm)", spin, "rad/s");
            }
        }
        String quarters = "[-pi/2, pi/2] rad (-90 to 90 deg)";
        checkAbsolute(rows, before, "startDirection", startDirection, QUARTER, quarters, "rad");
        checkAbsolute(rows, before, "axisTilt", axisTilt, HALF, "[-pi, pi] rad (-180 to 180 deg)", "rad");
        String heights = "[-1000, 1000] m (-3281 to 3281 ft)";
        checkAbsolute(rows, before, "landingElevation", landingElevation, 1000.0, heights, "m");
        String winds = "[-50, 50] m/s (-112 to 112 mph)";
        checkAbsolute(rows, before, "windAlongTarget", windAlongTarget, 50.0, winds, "m/s");
        checkAbsolute(rows, before, "windTowardsRight", windTowardsRight, 50.0, winds, "m/s");
        if (density != null && viscosity != null) {
            for (int row = 0; row < rows; row++) {
                if (!(density[row] >= 0.0 && density[row] <= 10.0)) {
                    throw refuse(before + row, "density", "[0, 10] kg/m3 (0-0.62 lb/ft3)", density[row], "kg/m3");
                }
                if (!(viscosity[row] >= 1e-6 && viscosity[row] <= 1e-4)) {
                    throw refuse(before + row, "viscosity", "[1e-6, 1e-4] Pa s", viscosity[row], "Pa s");
                }
            }
        }
        if (model != null) {
            for (int row = 0; row < rows; row++) {
                if (model[row] < 0 || model[row] >= models) {
                    throw new IllegalArgumentException("row " + (before + row) + ": model must be in [0, "
                            + (models - 1) + "], the number of a flight model, but was " + model[row]);
                }
            }
        }
    }

    private static void checkAbsolute(
            int rows, long before, String name, double @Nullable [] column, double limit, String range, String unit) {
        if (column != null) {
            for (int row = 0; row < rows; row++) {
                if (!(Math.abs(column[row]) <= limit)) {
                    throw refuse(before + row, name, range, column[row], unit);
                }
            }
        }
    }

    private static IllegalArgumentException refuse(long row, String name, String range, double value, String unit) {
        return new IllegalArgumentException(
                "row " + row + ": " + name + " must be in " + range + ", but was " + value + " " + unit);
    }

    private static double[] given(String name, double @Nullable [] column) {
        if (column == null) {
            throw new IllegalStateException(name + " must be given; a default would be a guess");
        }
        return column;
    }

    private static void sameLength(String name, double @Nullable [] column, int rows) {
        if (column != null && column.length != rows) {
            throw new IllegalArgumentException(
                    name + " must have " + rows + " rows, as many as ballSpeed, but had " + column.length);
        }
    }

    private static void together(String a, double @Nullable [] first, String b, double @Nullable [] second) {
        if (first == null != (second == null)) {
            throw new IllegalArgumentException(a + " and " + b + " must be given together or not at all");
        }
    }

    @Override
    public String toString() {
        return rows + " launches";
    }

    /** Collects the columns of a table; not thread-safe. */
    public static final class Builder {
        private double @Nullable [] ballSpeed;
        private double @Nullable [] launchAngle;
        private double @Nullable [] spinRate;
        private double @Nullable [] startDirection;
        private double @Nullable [] axisTilt;
        private double @Nullable [] landingElevation;
        private double @Nullable [] density;
        private double @Nullable [] viscosity;
        private double @Nullable [] windAlongTarget;
        private double @Nullable [] windTowardsRight;
        private int @Nullable [] model;

        private Builder() {}

        /**
         * The speed of the ball at launch, in (0, 110].
         *
         * @param values the column [m/s]; kept, not copied
         * @return this builder
         */
        public Builder ballSpeed(double[] values) {
            ballSpeed = values;
            return this;
        }

        /**
         * The angle above the horizontal, in [-pi/2, pi/2].
         *
         * @param values the column [rad]; kept, not copied
         * @return this builder
         */
        public Builder launchAngle(double[] values) {
            launchAngle = values;
            return this;
        }

        /**
         * The spin rate, in [0, 2094.4]; 20,000 rpm.
         *
         * @param values the column [rad/s]; kept, not copied
         * @return this builder
         */
        public Builder spinRate(double[] values) {
            spinRate = values;
            return this;
        }

        /**
         * The bearing of the launch, right positive, in [-pi/2, pi/2]; 0 unless given.
         *
         * @param values the column [rad]; kept, not copied
         * @return this builder
         */
        public Builder startDirection(double[] values) {
            startDirection = values;
            return this;
        }

        /**
         * The tilt of the spin axis, positive when the ball curves right, in [-pi, pi]; 0 unless given.
         *
         * @param values the column [rad]; kept, not copied
         * @return this builder
         */
        public Builder axisTilt(double[] values) {
            axisTilt = values;
            return this;
        }

        /**
         * The height of the landing above the start, in [-1000, 1000]; that of the model unless given.
         *
         * @param values the column [m]; kept, not copied
         * @return this builder
         */
        public Builder landingElevation(double[] values) {
            landingElevation = values;
            return this;
        }

        /**
         * The density of the air, in [0, 10]; that of the model unless given, and only together with the viscosity.
         *
         * @param values the column [kg/m3]; kept, not copied
         * @return this builder
         */
        public Builder density(double[] values) {
            density = values;
            return this;
        }

        /**
         * The dynamic viscosity of the air, in [1e-6, 1e-4]; that of the model unless given.
         *
         * @param values the column [Pa s]; kept, not copied
         * @return this builder
         */
        public Builder viscosity(double[] values) {
            viscosity = values;
            return this;
        }

        /**
         * The velocity of the air towards the target at every height, negative for a headwind, in [-50, 50]; that of the
         * model unless given, and only together with the wind towards the right.
         *
         * @param values the column [m/s]; kept, not copied
         * @return this builder
         */
        public Builder windAlongTarget(double[] values) {
            windAlongTarget = values;
            return this;
        }

        /**
         * The velocity of the air towards the right at every height, negative when it comes from the right, in [-50,
         * 50].
         *
         * @param values the column [m/s]; kept, not copied
         * @return this builder
         */
        public Builder windTowardsRight(double[] values) {
            windTowardsRight = values;
            return this;
        }

        /**
         * Which flight model flies a row, counted from 0; the first unless given.
         *
         * @param values the column; kept, not copied
         * @return this builder
         */
        public Builder model(int[] values) {
            model = values;
            return this;
        }

        /**
         * Gives every launch column, ball speed, launch angle, start direction, spin rate and axis tilt, an array of its own,
         * full of zeros, to be filled later.
         *
         * @param rows the number of rows, at least 1
         * @return this builder
         */
        public Builder rows(int rows) {
            if (rows < 1) {
                throw new IllegalArgumentException("rows must be at least 1, but was " + rows);
            }
            return ballSpeed(new double[rows])
                    .launchAngle(new double[rows])
                    .startDirection(new double[rows])
                    .spinRate(new double[rows])
                    .axisTilt(new double[rows]);
        }

        /**
         * Builds the table.
         *
         * @return the table
         * @throws IllegalStateException if ball speed, launch angle or spin rate was not given
         * @throws IllegalArgumentException if the columns differ in length, or one of two that belong together is missing
         */
        public LaunchTable build() {
            return new LaunchTable(this);
        }
    }
}
