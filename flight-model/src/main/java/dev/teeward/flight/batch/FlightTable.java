package dev.teeward.flight.batch;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Flights in columns of primitive doubles, one row for each launch of a {@link LaunchTable}.
 *
 * <p>Every row has a {@link #status}. <b>A row whose ball did not land has no landing to report: its columns hold NaN</b>, so
 * that no sum over them can pass for a result, and {@link #landed()} counts the others. A row that did land holds finite
 * numbers only, but for the total and the run of a flight that has none ({@link dev.teeward.flight.Flight#total}).
 *
 * <p>The numbers are those of {@link dev.teeward.flight.Flight}, with the same signs. The arrays may be the caller's: only
 * columns that exist are computed. A batch clears the whole table before it flies; until then a row is {@link
 * FlightStatus#NOT_FLOWN}, and an array of the caller's holds what the caller left there.
 *
 * <pre>{@code
 * FlightTable flights = FlightTable.builder(launches.rows()).carry(myArray).build(); // carry and nothing else
 * batch.fly(launches, flights);
 * flights.status(7).landed();
 * }</pre>
 *
 * <p>Mutable, in that a batch writes into it; not thread-safe while it does.
 */
public final class FlightTable {
    private final int rows;
    private final double @Nullable [] carry;
    private final double @Nullable [] side;
    private final double @Nullable [] curve;
    private final double @Nullable [] apex;
    private final double @Nullable [] flightTime;
    private final double @Nullable [] descentAngle;
    private final double @Nullable [] landingSpeed;
    private final double @Nullable [] landingSpin;
    private final double @Nullable [] total;
    private final double @Nullable [] run;
    private final byte[] status;
    private final byte[] warnings;

    private FlightTable(Builder from) {
        rows = from.rows;
        carry = from.carry;
        side = from.side;
        curve = from.curve;
        apex = from.apex;
        flightTime = from.flightTime;
        descentAngle = from.descentAngle;
        landingSpeed = from.landingSpeed;
        landingSpin = from.landingSpin;
        total = from.total;
        run = from.run;
        status = new byte[rows];
        warnings = new byte[rows];
        Arrays.fill(status, FlightStatus.NOT_FLOWN.code());
    }

    private static double[] notFlown(int rows) {
        double[] column = new double[rows];
        Arrays.fill(column, Double.NaN);
        return column;
    }

    /**
     * A table with every column of the flight itself; those of the ground, total and run, are added by a builder.
     *
     * @param rows the number of rows, not negative
     * @return the table
     */
    public static FlightTable ofRows(int rows) {
        return flight(rows).build();
    }

    /** A table with every column, those of the ground too. */
    static FlightTable withTotals(int rows) {
        return flight(rows).total(notFlown(rows)).run(notFlown(rows)).build();
    }

    private static Builder flight(int rows) {
        Builder all = builder(rows);
        all.carry(notFlown(rows));
        all.side(notFlown(rows));
        all.curve(notFlown(rows));
        all.apex(notFlown(rows));
        all.flightTime(notFlown(rows));
        all.descentAngle(notFlown(rows));
        all.landingSpeed(notFlown(rows));
        all.landingSpin(notFlown(rows));
        return all;
    }

    /**
     * Starts a table with the columns that one wants.
     *
     * @param rows the number of rows, not negative
     * @return a builder without columns
     */
    public static Builder builder(int rows) {
        return new Builder(rows);
    }

    /**
     * The number of rows.
     *
     * @return how many flights there are
     */
    public int rows() {
        return rows;
    }

    /**
     * The horizontal distance from the start to the landing, not negative [m].
     *
     * @return the array itself, not a copy; NaN where no ball landed
     * @throws IllegalStateException if the table has no such column
     */
    public double[] carry() {
        return existing("carry", carry);
    }

    /**
     * The distance of the landing from the target line, right positive [m].
     *
     * @return the array itself, not a copy; NaN where no ball landed
     * @throws IllegalStateException if the table has no such column
     */
    public double[] side() {
        return existing("side", side);
    }

    /**
     * The distance of the landing from the vertical plane of the start direction, right positive [m].
     *
     * @return the array itself, not a copy; NaN where no ball landed
     * @throws IllegalStateException if the table has no such column
     */
    public double[] curve() {
        return existing("curve", curve);
    }

    /**
     * The greatest height above the start, not negative [m].
     *
     * @return the array itself, not a copy; NaN where no ball landed
     * @throws IllegalStateException if the table has no such column
     */
    public double[] apex() {
        return existing("apex", apex);
    }

    /**
     * The time from launch to landing [s].
     *
     * @return the array itself, not a copy; NaN where no ball landed
     * @throws IllegalStateException if the table has no such column
     */
    public double[] flightTime() {
        return existing("flightTime", flightTime);
    }

    /**
     * The angle below the horizontal at which the ball comes down, down positive [rad].
     *
     * @return the array itself, not a copy; NaN where no ball landed
     * @throws IllegalStateException if the table has no such column
     */
    public double[] descentAngle() {
        return existing("descentAngle", descentAngle);
    }

    /**
     * The speed over the ground at landing [m/s].
     *
     * @return the array itself, not a copy; NaN where no ball landed
     * @throws IllegalStateException if the table has no such column
     */
    public double[] landingSpeed() {
        return existing("landingSpeed", landingSpeed);
    }

    /**
     * The spin rate at landing [rad/s].
     *
     * @return the array itself, not a copy; NaN where no ball landed
     * @throws IllegalStateException if the table has no such column
     */
    public double[] landingSpin() {
        return existing("landingSpin", landingSpin);
    }

    /**
     * The horizontal distance from the start to where the ball stops [m].
     *
     * @return the array itself, not a copy; NaN where no ball landed, the model has no ground or {@link
     *     dev.teeward.flight.Flight#total} is empty
     * @throws IllegalStateException if the table has no such column
     */
    public double[] total() {
        return existing("total", total);
    }

    /**
     * The total less the carry, negative when the ball ends nearer the start than it landed [m].
     *
     * @return the array itself, not a copy; NaN where no ball landed, the model has no ground or {@link
     *     dev.teeward.flight.Flight#total} is empty
     * @throws IllegalStateException if the table has no such column
     */
    public double[] run() {
        return existing("run", run);
    }

    /**
     * How the flight of a row ended.
     *
     * @param row the row, from 0
     * @return its status
     */
    public FlightStatus status(int row) {
        return FlightStatus.of(status[row]);
    }

    /**
     * What to know of a row; nothing is said of one whose ball did not land, but its status.
     *
     * @param row the row, from 0
     * @return the warnings, usually none
     */
    public Set<RowWarning> warnings(int row) {
        Set<RowWarning> found = EnumSet.noneOf(RowWarning.class);
        for (RowWarning one : RowWarning.values()) {
            if ((warnings[row] & one.bit()) != 0) {
                found.add(one);
            }
        }
        return found;
    }

    /**
     * The rows whose ball landed.
     *
     * @return how many, those that landed at once included
     */
    public int landed() {
        int count = 0;
        for (int row = 0; row < rows; row++) {
            count += status(row).landed() ? 1 : 0;
        }
        return count;
    }

    /**
     * The rows with a warning.
     *
     * @param warning the warning
     * @return how many
     */
    public int warned(RowWarning warning) {
        int count = 0;
        for (byte bits : warnings) {
            count += (bits & warning.bit()) != 0 ? 1 : 0;
        }
        return count;
    }

    boolean wantsCurve() {
        return curve != null;
    }

    boolean wantsDescentAngle() {
        return descentAngle != null;
    }

    boolean wantsTotal() {
        return total != null || run != null;
    }

    void ground(int row, double totalValue, double runValue) {
        put(total, row, totalValue);
        put(run, row, runValue);
    }

    /** Nothing has flown: no row holds a number of an earlier run, those beyond the launches to come neither. */
    void clear() {
        Arrays.fill(status, FlightStatus.NOT_FLOWN.code());
        Arrays.fill(warnings, (byte) 0);
        clear(carry);
        clear(side);
        clear(curve);
        clear(apex);
        clear(flightTime);
        clear(descentAngle);
        clear(landingSpeed);
        clear(landingSpin);
        clear(total);
        clear(run);
    }

    private void clear(double @Nullable [] column) {
        if (column != null) {
            Arrays.fill(column, 0, rows, Double.NaN);
        }
    }

    void set(int row, FlightStatus how, int bits) {
        status[row] = how.code();
        warnings[row] = (byte) bits;
    }

    void numbers(
            int row,
            double carryValue,
            double sideValue,
            double curveValue,
            double apexValue,
            double timeValue,
            double descentValue,
            double speedValue,
            double spinValue) {
        put(carry, row, carryValue);
        put(side, row, sideValue);
        put(curve, row, curveValue);
        put(apex, row, apexValue);
        put(flightTime, row, timeValue);
        put(descentAngle, row, descentValue);
        put(landingSpeed, row, speedValue);
        put(landingSpin, row, spinValue);
    }

    private static void put(double @Nullable [] column, int row, double value) {
        if (column != null) {
            column[row] = value;
        }
    }

    private static double[] existing(String name, double @Nullable [] column) {
        if (column == null) {
            throw new IllegalStateException("the table has no column " + name + "; name it when building the table");
        }
        return column;
    }

    @Override
    public String toString() {
        return rows + " flights, " + landed() + " landed";
    }

    /** Collects the columns of a table; not thread-safe. */
    public static final class Builder {
        private final int rows;
        private double @Nullable [] carry;
        private double @Nullable [] side;
        private double @Nullable [] curve;
        private double @Nullable [] apex;
        private double @Nullable [] flightTime;
        private double @Nullable [] descentAngle;
        private double @Nullable [] landingSpeed;
        private double @Nullable [] landingSpin;
        private double @Nullable [] total;
        private double @Nullable [] run;

        private Builder(int rows) {
            if (rows < 0) {
                throw new IllegalArgumentException("rows must not be negative, but was " + rows);
            }
            this.rows = rows;
        }

        /**
         * The horizontal distance from the start to the landing, not negative.
         *
         * @param values receives the column [m]; at least as long as the table
         * @return this builder
         * @throws IllegalArgumentException if it is shorter
         */
        public Builder carry(double[] values) {
            carry = longEnough("carry", values);
            return this;
        }

        /**
         * The distance of the landing from the target line, right positive.
         *
         * @param values receives the column [m]; at least as long as the table
         * @return this builder
         * @throws IllegalArgumentException if it is shorter
         */
        public Builder side(double[] values) {
            side = longEnough("side", values);
            return this;
        }

        /**
         * The distance of the landing from the vertical plane of the start direction, right positive.
         *
         * @param values receives the column [m]; at least as long as the table
         * @return this builder
         * @throws IllegalArgumentException if it is shorter
         */
        public Builder curve(double[] values) {
            curve = longEnough("curve", values);
            return this;
        }

        /**
         * The greatest height above the start, not negative.
         *
         * @param values receives the column [m]; at least as long as the table
         * @return this builder
         * @throws IllegalArgumentException if it is shorter
         */
        public Builder apex(double[] values) {
            apex = longEnough("apex", values);
            return this;
        }

        /**
         * The time from launch to landing.
         *
         * @param values receives the column [s]; at least as long as the table
         * @return this builder
         * @throws IllegalArgumentException if it is shorter
         */
        public Builder flightTime(double[] values) {
            flightTime = longEnough("flightTime", values);
            return this;
        }

        /**
         * The angle below the horizontal at which the ball comes down, down positive.
         *
         * @param values receives the column [rad]; at least as long as the table
         * @return this builder
         * @throws IllegalArgumentException if it is shorter
         */
        public Builder descentAngle(double[] values) {
            descentAngle = longEnough("descentAngle", values);
            return this;
        }

        /**
         * The speed over the ground at landing.
         *
         * @param values receives the column [m/s]; at least as long as the table
         * @return this builder
         * @throws IllegalArgumentException if it is shorter
         */
        public Builder landingSpeed(double[] values) {
            landingSpeed = longEnough("landingSpeed", values);
            return this;
        }

        /**
         * The spin rate at landing.
         *
         * @param values receives the column [rad/s]; at least as long as the table
         * @return this builder
         * @throws IllegalArgumentException if it is shorter
         */
        public Builder landingSpin(double[] values) {
            landingSpin = longEnough("landingSpin", values);
            return this;
        }

        /**
         * The horizontal distance from the start to where the ball stops, not negative.
         *
         * @param values receives the column [m]; at least as long as the table
         * @return this builder
         * @throws IllegalArgumentException if it is shorter
         */
        public Builder total(double[] values) {
            total = longEnough("total", values);
            return this;
        }

        /**
         * The total less the carry, negative when the ball ends nearer the start than it landed.
         *
         * @param values receives the column [m]; at least as long as the table
         * @return this builder
         * @throws IllegalArgumentException if it is shorter
         */
        public Builder run(double[] values) {
            run = longEnough("run", values);
            return this;
        }

        /**
         * Builds the table.
         *
         * @return the table
         */
        public FlightTable build() {
            return new FlightTable(this);
        }

        private double[] longEnough(String name, double[] values) {
            if (values.length < rows) {
                throw new IllegalArgumentException(
                        name + " must have at least " + rows + " rows, but had " + values.length);
            }
            return values;
        }
    }
}
