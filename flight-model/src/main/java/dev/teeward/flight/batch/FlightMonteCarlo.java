package dev.teeward.flight.batch;

import dev.teeward.flight.FlightModel;
import dev.teeward.flight.LaunchConditions;
import dev.teeward.quantity.AngleUnit;
import dev.teeward.quantity.DurationUnit;
import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.Interval;
import dev.teeward.quantity.LengthUnit;
import dev.teeward.quantity.Speed;
import dev.teeward.quantity.SpeedUnit;
import dev.teeward.quantity.SpinRateUnit;
import dev.teeward.quantity.Unit;
import java.util.Arrays;
import java.util.SplittableRandom;

/**
 * What scatter of the launch and of the wind does to the flight: many launches drawn about one, all flown.
 *
 * <p>Launches are drawn jointly normal about the given one, by a {@link LaunchSpread}; a draw outside the ranges of
 * {@link LaunchConditions} is drawn again, and counted. Gusts add to the model's wind a random velocity for each flight, the
 * same during the whole flight, with independent normal components along and across the target line: the spread between shots
 * in gusty weather, not the bumps within one.
 *
 * <p>An estimate's value is the median of the flights that landed, its interval holds the middle share of them, the level. With
 * n draws of a normal result the standard error of an end of a 95 percent interval is {@code 2.67/sqrt(n)} standard deviations:
 * the square root of {@code p (1 - p) / n} over the density there.
 *
 * <p>The draws come from {@link SplittableRandom} and Marsaglia's polar method in {@code StrictMath}, in one sequence: the same
 * seed gives the same bits for any number of threads.
 *
 * <pre>{@code
 * FlightMonteCarlo.Result result = FlightMonteCarlo.withDefaults()
 *     .withSpread(LaunchSpread.none().withSpinRate(rpm(300.0))).fly(model, launch);
 * result.carry().interval();
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class FlightMonteCarlo {
    private static final int MOST_DRAWS = 10_000_000;
    private static final int MOST_TRIES = 1000;

    private final LaunchSpread spread;
    private final double gustAlong;
    private final double gustAcross;
    private final int draws;
    private final double level;
    private final long seed;
    private final int threads;

    private FlightMonteCarlo(
            LaunchSpread spread, double gustAlong, double gustAcross, int draws, double level, long seed, int threads) {
        this.spread = spread;
        this.gustAlong = gustAlong;
        this.gustAcross = gustAcross;
        this.draws = draws;
        this.level = level;
        this.seed = seed;
        this.threads = threads;
    }

    /**
     * 10,000 draws without any scatter yet, level 0.95, seed 1, one thread.
     *
     * @return the procedure
     */
    public static FlightMonteCarlo withDefaults() {
        return new FlightMonteCarlo(LaunchSpread.none(), 0.0, 0.0, 10_000, 0.95, 1L, 1);
    }

    /**
     * A copy with another scatter of the launch.
     *
     * @param value the scatter
     * @return the copy
     */
    public FlightMonteCarlo withSpread(LaunchSpread value) {
        return new FlightMonteCarlo(value, gustAlong, gustAcross, draws, level, seed, threads);
    }

    /**
     * A copy with gusts.
     *
     * @param along the standard deviation of the wind's component along the target line, in [0, 10] m/s
     * @param across that of the component across it, in [0, 10] m/s
     * @return the copy
     * @throws IllegalArgumentException if either lies outside
     */
    public FlightMonteCarlo withGusts(Speed along, Speed across) {
        double x = along.metersPerSecond();
        double z = across.metersPerSecond();
        if (!(x >= 0.0 && x <= 10.0 && z >= 0.0 && z <= 10.0)) {
            throw new IllegalArgumentException(
                    "gusts must be in [0, 10] m/s (0-22 mph), but were " + along + " and " + across);
        }
        return new FlightMonteCarlo(spread, x, z, draws, level, seed, threads);
    }

    /**
     * A copy with another number of draws.
     *
     * @param value how many flights, in [2, 10000000]
     * @return the copy
     * @throws IllegalArgumentException if the number lies outside
     */
    public FlightMonteCarlo withDraws(int value) {
        if (value < 2 || value > MOST_DRAWS) {
            throw new IllegalArgumentException("draws must be in [2, " + MOST_DRAWS + "], but was " + value);
        }
        return new FlightMonteCarlo(spread, gustAlong, gustAcross, value, level, seed, threads);
    }

    /**
     * A copy with another level.
     *
     * @param value the share of the flights within an interval, in (0, 1)
     * @return the copy
     * @throws IllegalArgumentException if it lies outside
     */
    public FlightMonteCarlo withLevel(double value) {
        if (!(value > 0.0 && value < 1.0)) {
            throw new IllegalArgumentException("level must be in (0, 1), but was " + value);
        }
        return new FlightMonteCarlo(spread, gustAlong, gustAcross, draws, value, seed, threads);
    }

    /**
     * A copy with another seed.
     *
     * @param value any number
     * @return the copy
     */
    public FlightMonteCarlo withSeed(long value) {
        return new FlightMonteCarlo(spread, gustAlong, gustAcross, draws, level, value, threads);
    }

    /**
     * A copy that uses several threads; the same bits for any number.
     *
     * @param value how many, in [1, 1024]
     * @return the copy
     * @throws IllegalArgumentException if the number lies outside
     */
    public FlightMonteCarlo withThreads(int value) {
        return new FlightMonteCarlo(spread, gustAlong, gustAcross, draws, level, seed, FlightBatch.threads(value));
    }

    /**
     * Draws and flies.
     *
     * @param model the model
     * @param launch the launch about which to draw
     * @return what became of the flights
     * @throws IllegalArgumentException if there are gusts and the model's wind changes with height, or so few draws fall inside
     *     the ranges of a launch that they cannot stand for the scatter
     */
    public Result fly(FlightModel model, LaunchConditions launch) {
        double[][] factor = spread.factor();
        double[][] columns = new double[5][draws];
        double[] mean = {
            launch.ballSpeed().metersPerSecond(),
            launch.launchAngle().radians(),
            launch.startDirection().radians(),
            launch.spinRate().radiansPerSecond(),
            launch.axisTilt().radians()
        };
        NormalDraws normal = new NormalDraws(new SplittableRandom(seed));
        double[] independent = new double[mean.length];
        long redrawn = 0;
        for (int i = 0; i < draws; i++) {
            int tries = 0;
            do {
                if (tries > MOST_TRIES) {
                    throw new IllegalArgumentException("spread must leave some launches within their ranges, but "
                            + MOST_TRIES + " draws in a row fell outside; it was " + spread);
                }
                redrawn += tries++ > 0 ? 1 : 0;
                for (int c = 0; c < mean.length; c++) {
                    independent[c] = normal.next();
                }
                for (int c = 0; c < mean.length; c++) {
                    double value = mean[c];
                    for (int k = 0; k <= c; k++) {
                        value += factor[c][k] * independent[k];
                    }
                    columns[c][i] = value;
                }
            } while (!within(columns, i));
        }
        LaunchTable.Builder table = LaunchTable.builder()
                .ballSpeed(columns[0])
                .launchAngle(columns[1])
                .startDirection(columns[2])
                .spinRate(columns[3])
                .axisTilt(columns[4]);
        if (gustAlong > 0.0 || gustAcross > 0.0) {
            UniformWinds.require(model.wind(), "gusts");
            double[] along = new double[draws];
            double[] right = new double[draws];
            for (int i = 0; i < draws; i++) {
                along[i] = model.wind().alongTarget(0.0) + gustAlong * normal.next();
                right[i] = model.wind().towardsRight(0.0) + gustAcross * normal.next();
            }
            table.windAlongTarget(along).windTowardsRight(right);
        }
        LaunchTable launches = table.build();
        FlightTable flights = FlightBatch.of(model).withThreads(threads).fly(launches);
        return new Result(launches, flights, redrawn, level);
    }

    private static boolean within(double[][] columns, int i) {
        return columns[0][i] > 0.0
                && columns[0][i] <= 110.0
                && Math.abs(columns[1][i]) <= LaunchTable.QUARTER
                && Math.abs(columns[2][i]) <= LaunchTable.QUARTER
                && columns[3][i] >= 0.0
                && columns[3][i] <= LaunchTable.MOST_SPIN
                && Math.abs(columns[4][i]) <= LaunchTable.HALF;
    }

    /** Independent standard normal numbers: Marsaglia and Bray's polar method (1964). */
    private static final class NormalDraws {
        private final SplittableRandom random;
        private double spare;
        private boolean hasSpare;

        NormalDraws(SplittableRandom random) {
            this.random = random;
        }

        double next() {
            if (hasSpare) {
                hasSpare = false;
                return spare;
            }
            while (true) {
                double u = 2.0 * random.nextDouble() - 1.0;
                double v = 2.0 * random.nextDouble() - 1.0;
                double s = u * u + v * v;
                if (s > 0.0 && s < 1.0) {
                    double factor = Math.sqrt(-2.0 * StrictMath.log(s) / s);
                    spare = v * factor;
                    hasSpare = true;
                    return u * factor;
                }
            }
        }
    }

    /**
     * The flights of the drawn launches, summed up.
     *
     * <p>Immutable, but for the tables, which are not copied.
     */
    public static final class Result {
        private final LaunchTable launches;
        private final FlightTable flights;
        private final long redrawn;
        private final double level;
        private final int landed;

        private Result(LaunchTable launches, FlightTable flights, long redrawn, double level) {
            this.launches = launches;
            this.flights = flights;
            this.redrawn = redrawn;
            this.level = level;
            landed = flights.landed();
        }

        /**
         * The carry.
         *
         * @return the median, and the interval of the middle flights [m]
         * @throws IllegalStateException if no ball landed; so for the other estimates
         */
        public Estimate carry() {
            return estimate(flights.carry(), LengthUnit.METER);
        }

        /**
         * The side.
         *
         * @return the median, and the interval of the middle flights [m]
         */
        public Estimate side() {
            return estimate(flights.side(), LengthUnit.METER);
        }

        /**
         * The curve.
         *
         * @return the median, and the interval of the middle flights [m]
         */
        public Estimate curve() {
            return estimate(flights.curve(), LengthUnit.METER);
        }

        /**
         * The apex.
         *
         * @return the median, and the interval of the middle flights [m]
         */
        public Estimate apex() {
            return estimate(flights.apex(), LengthUnit.METER);
        }

        /**
         * The flight time.
         *
         * @return the median, and the interval of the middle flights [s]
         */
        public Estimate flightTime() {
            return estimate(flights.flightTime(), DurationUnit.SECOND);
        }

        /**
         * The descent angle.
         *
         * @return the median, and the interval of the middle flights [rad]
         */
        public Estimate descentAngle() {
            return estimate(flights.descentAngle(), AngleUnit.RADIAN);
        }

        /**
         * The landing speed.
         *
         * @return the median, and the interval of the middle flights [m/s]
         */
        public Estimate landingSpeed() {
            return estimate(flights.landingSpeed(), SpeedUnit.METER_PER_SECOND);
        }

        /**
         * The spin at landing.
         *
         * @return the median, and the interval of the middle flights [rad/s]
         */
        public Estimate landingSpin() {
            return estimate(flights.landingSpin(), SpinRateUnit.RADIAN_PER_SECOND);
        }

        /**
         * The flights whose ball landed.
         *
         * @return how many; the others are in no estimate
         */
        public int landed() {
            return landed;
        }

        /**
         * Draws that fell outside the ranges of a launch and were drawn again; many of them mean that the scatter was cut off.
         *
         * @return how many
         */
        public long redrawn() {
            return redrawn;
        }

        /**
         * The drawn launches.
         *
         * @return the table, not a copy
         */
        public LaunchTable launches() {
            return launches;
        }

        /**
         * All flights.
         *
         * @return the table, not a copy
         */
        public FlightTable flights() {
            return flights;
        }

        private Estimate estimate(double[] column, Unit unit) {
            if (landed == 0) {
                throw new IllegalStateException(
                        "none of " + flights.rows() + " balls landed; see flights().status(row)");
            }
            double[] sorted = new double[landed];
            int count = 0;
            for (int row = 0; row < flights.rows(); row++) {
                if (flights.status(row).landed()) {
                    sorted[count++] = column[row];
                }
            }
            Arrays.sort(sorted);
            double tail = (1.0 - level) / 2.0;
            return Estimate.of(
                    quantile(sorted, 0.5),
                    Interval.of(quantile(sorted, tail), quantile(sorted, 1.0 - tail), level),
                    unit);
        }

        /** Linear between the order statistics: definition 7 of Hyndman and Fan (1996). */
        private static double quantile(double[] sorted, double share) {
            double at = share * (sorted.length - 1);
            int low = (int) at;
            int high = Math.min(low + 1, sorted.length - 1);
            return sorted[low] + (at - low) * (sorted[high] - sorted[low]);
        }

        @Override
        public String toString() {
            return landed + " of " + flights.rows() + " balls landed";
        }
    }

    /**
     * How the flights are drawn, in one line.
     *
     * @return the scatter, the draws and the seed
     */
    @Override
    public String toString() {
        return draws + " draws with seed " + seed + ", " + spread + ", gusts " + gustAlong + " and " + gustAcross
                + " m/s";
    }
}
