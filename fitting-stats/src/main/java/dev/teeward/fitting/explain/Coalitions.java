package dev.teeward.fitting.explain;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.internal.ShapleyValue;
import dev.teeward.flight.FlightModel;
import dev.teeward.flight.LaunchConditions;
import dev.teeward.flight.batch.FlightBatch;
import dev.teeward.flight.batch.FlightTable;
import dev.teeward.flight.batch.LaunchTable;
import dev.teeward.flight.impact.ClubHead;
import dev.teeward.flight.impact.Delivery;
import dev.teeward.flight.impact.RigidImpact;
import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Length;
import dev.teeward.quantity.Speed;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.jspecify.annotations.Nullable;

/**
 * Flies, for draws and for every set of inputs, the launch that has the inputs of the set from the first club and the others
 * from the second; all flights in one batch.
 *
 * <p>With a lie inside the face there are, for every set without the face, two more: the face turned by what the lies differ
 * alone, and by all but that. Within the face the share is split in the same way, over both orders of the two (Owen 1977), so
 * that the face's share stays what it was.
 */
final class Coalitions {
    private final List<Metric> inputs;
    private final double[][] first;
    private final double[][] second;
    private final double @Nullable [] lie;
    private final int face;
    private final int sets;
    private final int rowsOfDraw;
    private final int[] draws;
    private final FlightModel model;
    private final @Nullable ClubHead head;
    private final FlightTable flights;

    /**
     * Flies.
     *
     * @param inputs what is exchanged
     * @param first the inputs of the first club, by input and draw
     * @param second the inputs of the second club
     * @param lie by how much the lies turn the faces apart, for each draw, or null
     * @param draws which draws are flown
     * @param model the air and the ball
     * @param head what strikes the ball, or null if the inputs are those of the launch
     */
    Coalitions(
            List<Metric> inputs,
            double[][] first,
            double[][] second,
            double @Nullable [] lie,
            int[] draws,
            FlightModel model,
            @Nullable ClubHead head) {
        this.inputs = inputs;
        this.first = first;
        this.second = second;
        this.lie = lie;
        this.draws = draws;
        this.model = model;
        this.head = head;
        face = inputs.indexOf(Metric.FACE_ANGLE);
        sets = 1 << inputs.size();
        rowsOfDraw = lie == null ? sets : 2 * sets;
        double[][] mixed = new double[draws.length * rowsOfDraw][inputs.size()];
        for (int row = 0; row < mixed.length; row++) {
            mix(draws[row / rowsOfDraw], row % rowsOfDraw, mixed[row]);
        }
        flights = fly(mixed);
    }

    /** Some launches and what came of them. */
    static final class Sample {
        private final double[][] inputs;
        private final FlightTable flights;

        private Sample(double[][] inputs, FlightTable flights) {
            this.inputs = inputs;
            this.flights = flights;
        }

        double[][] inputs() {
            return inputs;
        }

        double[] worths(Metric outcome) {
            return column(flights, outcome);
        }
    }

    /** Sets of some draws, so many of each, by lot. */
    Sample sample(int[] some, int each, SplittableRandom random) {
        double[][] mixed = new double[some.length * each][inputs.size()];
        for (int row = 0; row < mixed.length; row++) {
            mix(some[row / each], random.nextInt(sets), mixed[row]);
        }
        double[][] columns = new double[inputs.size()][mixed.length];
        for (int j = 0; j < columns.length; j++) {
            int input = j;
            Arrays.setAll(columns[j], row -> mixed[row][input]);
        }
        return new Sample(columns, fly(mixed));
    }

    private FlightTable fly(double[][] mixed) {
        int rows = mixed.length;
        Launches launches = new Launches(rows);
        for (int row = 0; row < rows; row++) {
            if (head == null) {
                launches.set(row, inputs, mixed[row]);
            } else {
                launches.set(row, strike(mixed[row], head));
            }
        }
        FlightTable table = FlightTable.builder(rows)
                .carry(new double[rows])
                .side(new double[rows])
                .curve(new double[rows])
                .apex(new double[rows])
                .descentAngle(new double[rows])
                .build();
        FlightBatch.of(model).fly(launches.table(), table);
        return table;
    }

    /** Columns to fill. */
    private static final class Launches {
        private final double[] speed;
        private final double[] angle;
        private final double[] spin;
        private final double[] start;
        private final double[] tilt;

        Launches(int rows) {
            speed = new double[rows];
            angle = new double[rows];
            spin = new double[rows];
            start = new double[rows];
            tilt = new double[rows];
        }

        void set(int row, List<Metric> inputs, double[] values) {
            for (int j = 0; j < values.length; j++) {
                column(inputs.get(j))[row] = values[j];
            }
            // A mean of readings at the limit may overstep it by one rounding.
            spin[row] = Math.min(spin[row], Metric.SPIN_RATE.upper());
        }

        private double[] column(Metric metric) {
            return switch (metric) {
                case BALL_SPEED -> speed;
                case LAUNCH_ANGLE -> angle;
                case SPIN_RATE -> spin;
                case START_DIRECTION -> start;
                case AXIS_TILT -> tilt;
                default -> throw new IllegalStateException(metric + " is not of the launch");
            };
        }

        void set(int row, LaunchConditions launch) {
            speed[row] = launch.ballSpeed().metersPerSecond();
            angle[row] = launch.launchAngle().radians();
            spin[row] = launch.spinRate().radiansPerSecond();
            start[row] = launch.startDirection().radians();
            tilt[row] = launch.axisTilt().radians();
        }

        LaunchTable table() {
            return LaunchTable.builder()
                    .ballSpeed(speed)
                    .launchAngle(angle)
                    .spinRate(spin)
                    .startDirection(start)
                    .axisTilt(tilt)
                    .build();
        }
    }

    /** The inputs of one set of one draw. */
    private void mix(int draw, int set, double[] mixed) {
        boolean part = set >= sets;
        int chosen = part ? set - sets : set;
        for (int j = 0; j < mixed.length; j++) {
            mixed[j] = ((chosen >> j & 1) == 1 ? first : second)[j][draw];
        }
        if (part && lie != null) {
            // Beyond the sets: the face in the set stands for the lie alone, the face outside for all but the lie.
            boolean alone = (chosen >> face & 1) == 1;
            mixed[face] = alone ? second[face][draw] + lie[draw] : first[face][draw] - lie[draw];
        }
    }

    private LaunchConditions strike(double[] values, ClubHead struck) {
        Delivery.Builder delivery = Delivery.builder();
        for (int j = 0; j < values.length; j++) {
            double v = values[j];
            switch (inputs.get(j)) {
                case CLUB_SPEED -> delivery.clubSpeed(Speed.ofMetersPerSecond(v));
                case ATTACK_ANGLE -> delivery.attackAngle(Angle.ofRadians(v));
                case CLUB_PATH -> delivery.clubPath(Angle.ofRadians(v));
                case FACE_ANGLE -> delivery.faceAngle(Angle.ofRadians(v));
                case DYNAMIC_LOFT -> delivery.dynamicLoft(Angle.ofRadians(v));
                case STRIKE_TOE -> delivery.strikeToe(Length.ofMeters(v));
                case STRIKE_UP -> delivery.strikeUp(Length.ofMeters(v));
                default -> throw new IllegalStateException(inputs.get(j) + " is not of the delivery");
            }
        }
        return RigidImpact.standard()
                .withBall(model.ball())
                .strike(delivery.build(), struck)
                .launch();
    }

    private static double[] column(FlightTable flights, Metric outcome) {
        return switch (outcome) {
            case CARRY -> flights.carry();
            case SIDE -> flights.side();
            case CURVE -> flights.curve();
            case APEX -> flights.apex();
            case DESCENT_ANGLE -> flights.descentAngle();
            default -> throw new IllegalStateException(outcome + " is not of the flight");
        };
    }

    /** Whether both launches of the first draw flown land. */
    boolean landed() {
        return flights.status(0).landed() && flights.status(sets - 1).landed();
    }

    /** The difference of both clubs' own launches for each draw flown; NaN where a ball does not land. */
    double[] totals(Metric outcome) {
        double[] worth = column(flights, outcome);
        double[] totals = new double[draws.length];
        for (int d = 0; d < draws.length; d++) {
            totals[d] = worth[d * rowsOfDraw + sets - 1] - worth[d * rowsOfDraw];
        }
        return totals;
    }

    /** The share of each input, by input and draw flown; NaN where a ball does not land. */
    double[][] shares(Metric outcome) {
        double[] worth = column(flights, outcome);
        double[][] shares = new double[inputs.size()][draws.length];
        for (int d = 0; d < draws.length; d++) {
            double[] of = ShapleyValue.of(Arrays.copyOfRange(worth, d * rowsOfDraw, d * rowsOfDraw + sets));
            for (int j = 0; j < of.length; j++) {
                shares[j][d] = of[j];
            }
        }
        return shares;
    }

    /** Of the face's share the part of the lie, by draw flown. */
    double[] lieShares(Metric outcome) {
        double[] worth = column(flights, outcome);
        double[] weights = ShapleyValue.weights(inputs.size());
        double[] shares = new double[draws.length];
        int bit = 1 << face;
        for (int d = 0; d < draws.length; d++) {
            int at = d * rowsOfDraw;
            for (int set = 0; set < sets; set++) {
                if ((set & bit) == 0) {
                    double before = worth[at + sets + (set | bit)] - worth[at + set];
                    double after = worth[at + (set | bit)] - worth[at + sets + set];
                    shares[d] += weights[Integer.bitCount(set)] * 0.5 * (before + after);
                }
            }
        }
        return shares;
    }
}
