package dev.teeward.flight.batch;

import dev.teeward.flight.FlightModel;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Derivatives of many flights by launch and head wind.
 *
 * <p>Central differences, {@code (f(x + d) - f(x - d)) / (2 d)}: twelve flights a row for six inputs, in the batch. The steps d
 * are 0.02 m/s for ball speed and head wind, 2e-4 rad for the three angles and 0.5 rad/s for the spin. Because the steps of the
 * integrator are smooth in the inputs if the aerodynamic model is {@linkplain
 * dev.teeward.flight.aero.AerodynamicModel#smooth() smooth}, what it gets wrong it then gets wrong equally on both sides: on 200
 * random launches the derivative of the carry by the spin is within 1e-5 of the largest of them of an extrapolation from finer
 * differences. Kinks make the steps jump, and what is wrong no longer cancels: with a table of straight lines the derivatives of
 * the carry were within about 2e-4 of the largest by default, and 1e-3 at {@link dev.teeward.flight.Accuracy#MILLIMETER}.
 * Where balls that come down at less than 10 deg are flown by shorter steps, as at {@code MILLIMETER}, and the two flights of a
 * difference come down on either side of that angle, their landings may differ by up to a millimeter more than they should.
 *
 * <p>At an input's end, a spin below 0.5 rad/s or an angle at its limit, the difference is taken from the point itself to the
 * inside, at half the order. A row of which one flight does not land, or lands at once, has NaN in all its derivatives and false in
 * {@link Result#known}.
 *
 * <pre>{@code
 * FlightDerivatives.Result slopes = FlightDerivatives.of(model).differentiate(launches);
 * slopes.of(FlightDerivatives.Output.CARRY, FlightDerivatives.Input.BALL_SPEED)[0]; // m per m/s
 * }</pre>
 *
 * <p>Immutable and thread-safe as {@link FlightBatch} is.
 */
public final class FlightDerivatives {
    /** What is varied. */
    public enum Input {
        /** The ball speed [m/s]. */
        BALL_SPEED(0, 0.02),
        /** The launch angle [rad]. */
        LAUNCH_ANGLE(1, 2e-4),
        /** The start direction [rad]. */
        START_DIRECTION(2, 2e-4),
        /** The spin rate [rad/s]. */
        SPIN_RATE(3, 0.5),
        /** The axis tilt [rad]. */
        AXIS_TILT(4, 2e-4),
        /** A head wind, added to the wind at every height: the velocity of the air against the target [m/s]. */
        HEAD_WIND(5, 0.02);

        private final int index;
        private final double step;

        Input(int index, double step) {
            this.index = index;
            this.step = step;
        }

        /**
         * The step of the difference.
         *
         * @return half the distance between the two flights, in the SI unit of the input
         */
        public double step() {
            return step;
        }
    }

    /** What changes. */
    public enum Output {
        /** The carry [m]. */
        CARRY(0),
        /** The side [m]. */
        SIDE(1),
        /** The curve [m]. */
        CURVE(2),
        /** The apex [m]. */
        APEX(3),
        /** The flight time [s]. */
        FLIGHT_TIME(4),
        /** The descent angle [rad]. */
        DESCENT_ANGLE(5);

        private final int index;

        Output(int index) {
            this.index = index;
        }
    }

    private static final Input[] INPUTS = Input.values();
    private static final Output[] OUTPUTS = Output.values();
    private static final int FLIGHTS = 2 * INPUTS.length;
    private static final int ROWS_AT_ONCE = 4096;

    private final FlightModel model;
    private final int threads;

    private FlightDerivatives(FlightModel model, int threads) {
        this.model = model;
        this.threads = threads;
    }

    /**
     * Derivatives of flights by one model.
     *
     * @param model the model; its wind must be the same at every height
     * @return the procedure, in one thread
     * @throws IllegalArgumentException if the wind changes with height
     */
    public static FlightDerivatives of(FlightModel model) {
        UniformWinds.require(model.wind(), "derivatives by a head wind");
        return new FlightDerivatives(model, 1);
    }

    /**
     * A copy that uses several threads; the same bits for any number.
     *
     * @param value how many, in [1, 1024]
     * @return the copy
     * @throws IllegalArgumentException if the number lies outside
     */
    public FlightDerivatives withThreads(int value) {
        return new FlightDerivatives(model, FlightBatch.threads(value));
    }

    /**
     * The derivatives of every row.
     *
     * @param launches the launches; a column of models is not read
     * @return the derivatives
     * @throws IllegalArgumentException if a row lies outside the ranges of {@link LaunchTable}
     */
    public Result differentiate(LaunchTable launches) {
        launches.check(launches.rows(), Integer.MAX_VALUE, 0L);
        Result result = new Result(launches.rows());
        FlightBatch batch = FlightBatch.of(List.of(model)).withThreads(threads);
        VariedLaunches varied =
                new VariedLaunches(launches, model, Math.min(ROWS_AT_ONCE, Math.max(1, launches.rows())));
        int[] first = {0};
        FlightTable room = FlightTable.ofRows(varied.block().rows());
        batch.stream(varied.block(), room, block -> varied.fill(first[0]), (block, flights, rows) -> {
            first[0] = result.take(first[0], rows / FLIGHTS, varied, flights);
        });
        return result;
    }

    /** The launches of a block of rows, each with one input after the other made larger and smaller. */
    private static final class VariedLaunches {
        private final LaunchTable from;
        private final int most;
        private final LaunchTable block;
        private final double[][] inputs;
        private final double[] widths;
        private final double windAlong;
        private final double windRight;
        private final double[] right;
        private final double @Nullable [] elevation;
        private final double @Nullable [] density;
        private final double @Nullable [] viscosity;

        VariedLaunches(LaunchTable from, FlightModel model, int most) {
            this.from = from;
            this.most = most;
            windAlong = model.wind().alongTarget(0.0);
            windRight = model.wind().towardsRight(0.0);
            int rows = most * FLIGHTS;
            inputs = new double[INPUTS.length][rows];
            right = new double[rows];
            widths = new double[most * INPUTS.length];
            elevation = room(from.landingElevation(), rows);
            density = room(from.density(), rows);
            viscosity = room(from.viscosity(), rows);
            LaunchTable.Builder builder = LaunchTable.builder()
                    .ballSpeed(inputs[0])
                    .launchAngle(inputs[1])
                    .startDirection(inputs[2])
                    .spinRate(inputs[3])
                    .axisTilt(inputs[4])
                    .windAlongTarget(inputs[5])
                    .windTowardsRight(right);
            if (elevation != null) {
                builder.landingElevation(elevation);
            }
            if (density != null && viscosity != null) {
                builder.density(density).viscosity(viscosity);
            }
            block = builder.build();
        }

        LaunchTable block() {
            return block;
        }

        int fill(int first) {
            int rows = Math.min(most, from.rows() - first);
            for (int i = 0; i < rows; i++) {
                int row = first + i;
                for (int flight = 0; flight < FLIGHTS; flight++) {
                    int at = i * FLIGHTS + flight;
                    inputs[0][at] = from.ballSpeed()[row];
                    inputs[1][at] = from.launchAngle()[row];
                    inputs[2][at] = value(from.startDirection(), row, 0.0);
                    inputs[3][at] = from.spinRate()[row];
                    inputs[4][at] = value(from.axisTilt(), row, 0.0);
                    inputs[5][at] = value(from.windAlongTarget(), row, windAlong);
                    right[at] = value(from.windTowardsRight(), row, windRight);
                    copy(from.landingElevation(), row, elevation, at);
                    copy(from.density(), row, density, at);
                    copy(from.viscosity(), row, viscosity, at);
                }
                for (Input input : INPUTS) {
                    vary(i, input);
                }
            }
            return rows * FLIGHTS;
        }

        private void vary(int i, Input input) {
            double[] column = inputs[input.index];
            int up = i * FLIGHTS + 2 * input.index;
            double sign = input == Input.HEAD_WIND ? -1.0 : 1.0;
            double centre = column[up];
            double high = centre + input.step;
            double low = centre - input.step;
            double limit = limit(input);
            high = high > limit ? centre : high;
            low = low < (input == Input.SPIN_RATE || input == Input.BALL_SPEED ? 1e-9 : -limit) ? centre : low;
            column[up] = high;
            column[up + 1] = low;
            widths[i * INPUTS.length + input.index] = sign * (high - low);
        }

        private static double limit(Input input) {
            return switch (input) {
                case BALL_SPEED -> 110.0;
                case LAUNCH_ANGLE, START_DIRECTION -> LaunchTable.QUARTER;
                case SPIN_RATE -> LaunchTable.MOST_SPIN;
                case AXIS_TILT -> LaunchTable.HALF;
                case HEAD_WIND -> 50.0;
            };
        }

        private static double @Nullable [] room(double @Nullable [] column, int rows) {
            return column == null ? null : new double[rows];
        }

        private static void copy(double @Nullable [] from, int row, double @Nullable [] to, int at) {
            if (from != null && to != null) {
                to[at] = from[row];
            }
        }

        private static double value(double @Nullable [] column, int row, double otherwise) {
            return column == null ? otherwise : column[row];
        }
    }

    /**
     * Derivatives in columns, one row for each launch.
     *
     * <p>Mutable, in that the arrays are not copied.
     */
    public static final class Result {
        private final double[][][] slopes;
        private final boolean[] known;

        private Result(int rows) {
            slopes = new double[OUTPUTS.length][INPUTS.length][rows];
            known = new boolean[rows];
        }

        private int take(int first, int rows, VariedLaunches varied, FlightTable flights) {
            double[][] columns = {
                flights.carry(),
                flights.side(),
                flights.curve(),
                flights.apex(),
                flights.flightTime(),
                flights.descentAngle()
            };
            for (int i = 0; i < rows; i++) {
                known[first + i] = true;
                for (int flight = 0; flight < FLIGHTS; flight++) {
                    known[first + i] &= flights.status(i * FLIGHTS + flight) == FlightStatus.LANDED;
                }
                for (int output = 0; output < OUTPUTS.length; output++) {
                    for (int input = 0; input < INPUTS.length; input++) {
                        int up = i * FLIGHTS + 2 * input;
                        double change = columns[output][up] - columns[output][up + 1];
                        slopes[output][input][first + i] =
                                known[first + i] ? change / varied.widths[i * INPUTS.length + input] : Double.NaN;
                    }
                }
            }
            return first + rows;
        }

        /**
         * The derivatives of one output by one input.
         *
         * @param output what changes
         * @param input what is varied
         * @return a row for each launch, in the SI units of both; the array itself, NaN where not {@linkplain #known known}
         */
        public double[] of(Output output, Input input) {
            return slopes[output.index][input.index];
        }

        /**
         * Whether a row has derivatives.
         *
         * @param row the row, from 0
         * @return false if one of its flights did not land, or landed at once
         */
        public boolean known(int row) {
            return known[row];
        }

        @Override
        public String toString() {
            return known.length + " rows of derivatives";
        }
    }

    @Override
    public String toString() {
        return "derivatives by " + Arrays.toString(INPUTS) + " of flights by " + model;
    }
}
