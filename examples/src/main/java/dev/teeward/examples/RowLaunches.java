package dev.teeward.examples;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.io.ColumnTable;
import dev.teeward.fitting.io.InputException;
import dev.teeward.flight.LaunchConditions;
import dev.teeward.flight.impact.ClubHead;
import dev.teeward.flight.impact.Delivery;
import dev.teeward.flight.impact.Impact;
import dev.teeward.flight.impact.RigidImpact;
import dev.teeward.quantity.Angle;
import dev.teeward.quantity.AngleUnit;
import dev.teeward.quantity.Length;
import dev.teeward.quantity.Speed;
import dev.teeward.quantity.SpeedUnit;
import dev.teeward.quantity.SpinRate;
import dev.teeward.quantity.SpinRateUnit;
import dev.teeward.quantity.Unit;
import dev.teeward.quantity.Warning;
import java.util.BitSet;
import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** The launch of each row of a table: as measured, or, where the row has none, from its delivery by the impact model. */
final class RowLaunches {
    static final List<Metric> LAUNCH = List.of(Metric.BALL_SPEED, Metric.LAUNCH_ANGLE, Metric.SPIN_RATE);

    static final List<Metric> DELIVERY =
            List.of(Metric.CLUB_SPEED, Metric.ATTACK_ANGLE, Metric.CLUB_PATH, Metric.FACE_ANGLE, Metric.DYNAMIC_LOFT);

    /** Taken as 0 where a measured launch has none. */
    private static final List<Metric> DIRECTIONS = List.of(Metric.START_DIRECTION, Metric.AXIS_TILT);

    private static final List<Computed> COMPUTED = List.of(
            new Computed(
                    Metric.BALL_SPEED,
                    SpeedUnit.MILE_PER_HOUR,
                    l -> l.ballSpeed().metersPerSecond()),
            new Computed(
                    Metric.LAUNCH_ANGLE, AngleUnit.DEGREE, l -> l.launchAngle().radians()),
            new Computed(
                    Metric.START_DIRECTION,
                    AngleUnit.DEGREE,
                    l -> l.startDirection().radians()),
            new Computed(
                    Metric.SPIN_RATE,
                    SpinRateUnit.REVOLUTION_PER_MINUTE,
                    l -> l.spinRate().radiansPerSecond()),
            new Computed(Metric.AXIS_TILT, AngleUnit.DEGREE, l -> l.axisTilt().radians()));

    private final ColumnTable table;
    private final @Nullable ClubHead head;
    private final BitSet measured = new BitSet();
    private final double[][] si;

    /** A column of the result. */
    private record Computed(Metric metric, Unit unit, ToDoubleFunction<LaunchConditions> si) {}

    private RowLaunches(ColumnTable table, @Nullable ClubHead head) {
        this.table = table;
        this.head = head;
        for (int row = 0; row < table.rows(); row++) {
            measured.set(row, missing(LAUNCH, row).isEmpty());
        }
        si = new double[COMPUTED.size()][computed() == 0 ? 0 : table.rows()];
    }

    /**
     * Of a table, in which every row must have a whole launch or a whole delivery.
     *
     * @param table the table
     * @param head what struck the ball where there is no launch, or null if it is not known
     */
    static RowLaunches of(ColumnTable table, @Nullable ClubHead head) {
        RowLaunches launches = new RowLaunches(table, head);
        for (int row = launches.measured.nextClearBit(0);
                row < table.rows();
                row = launches.measured.nextClearBit(row + 1)) {
            List<Metric> delivery = launches.missing(DELIVERY, row);
            if (!delivery.isEmpty()) {
                throw InputException.atRow(
                        table.file(),
                        row + 1,
                        "has neither a whole launch (without " + keys(launches.missing(LAUNCH, row))
                                + ") nor a whole delivery (without " + keys(delivery) + ")");
            }
        }
        return launches;
    }

    /** Whether a table has any column that says how the club was delivered. */
    static boolean tellsOfDelivery(ColumnTable table) {
        return DELIVERY.stream().anyMatch(table::has);
    }

    /** Whether every row has a whole launch. */
    static boolean allMeasured(ColumnTable table) {
        return new RowLaunches(table, null).computed() == 0;
    }

    private static String keys(List<Metric> metrics) {
        return metrics.stream().map(Metric::key).collect(Collectors.joining(", "));
    }

    private List<Metric> missing(List<Metric> metrics, int row) {
        return metrics.stream().filter(metric -> !table.has(metric, row)).toList();
    }

    /** How many rows have no launch of their own. */
    int computed() {
        return table.rows() - measured.cardinality();
    }

    /** The launch of a row, from 0; what is to be known of it is added to the warnings. */
    LaunchConditions at(int row, List<Warning> warnings) {
        if (measured.get(row)) {
            return LaunchConditions.builder()
                    .ballSpeed(Speed.ofMetersPerSecond(table.value(Metric.BALL_SPEED, row)))
                    .launchAngle(Angle.ofRadians(table.value(Metric.LAUNCH_ANGLE, row)))
                    .startDirection(Angle.ofRadians(orZero(Metric.START_DIRECTION, row)))
                    .spinRate(SpinRate.ofRadiansPerSecond(table.value(Metric.SPIN_RATE, row)))
                    .axisTilt(Angle.ofRadians(orZero(Metric.AXIS_TILT, row)))
                    .build();
        }
        Impact impact = struck(row);
        warnings.addAll(impact.warnings());
        if (missing(LAUNCH, row).size() < LAUNCH.size()
                || missing(DIRECTIONS, row).size() < DIRECTIONS.size()) {
            warnings.add(Warning.of(
                    "launch-incomplete", "A part of a launch is not used, since the whole comes from the delivery."));
        }
        for (int i = 0; i < si.length; i++) {
            si[i][row] = COMPUTED.get(i).si.applyAsDouble(impact.launch());
        }
        return impact.launch();
    }

    private double orZero(Metric metric, int row) {
        return table.has(metric, row) ? table.value(metric, row) : 0.0;
    }

    private Impact struck(int row) {
        if (head == null) {
            throw new IllegalStateException("a head is needed");
        }
        try {
            Delivery.Builder delivery = Delivery.builder()
                    .clubSpeed(Speed.ofMetersPerSecond(table.value(Metric.CLUB_SPEED, row)))
                    .attackAngle(Angle.ofRadians(table.value(Metric.ATTACK_ANGLE, row)))
                    .clubPath(Angle.ofRadians(table.value(Metric.CLUB_PATH, row)))
                    .faceAngle(Angle.ofRadians(table.value(Metric.FACE_ANGLE, row)))
                    .dynamicLoft(Angle.ofRadians(table.value(Metric.DYNAMIC_LOFT, row)));
            if (table.has(Metric.STRIKE_TOE, row)) {
                delivery.strikeToe(Length.ofMeters(table.value(Metric.STRIKE_TOE, row)));
            }
            if (table.has(Metric.STRIKE_UP, row)) {
                delivery.strikeUp(Length.ofMeters(table.value(Metric.STRIKE_UP, row)));
            }
            return RigidImpact.standard().strike(delivery.build(), head);
        } catch (IllegalArgumentException e) {
            InputException failure = InputException.atRow(table.file(), row + 1, String.valueOf(e.getMessage()));
            failure.initCause(e);
            throw failure;
        }
    }

    /** A table with the computed launches as columns after its own, empty where the launch was measured. */
    ColumnTable withComputed(ColumnTable flights) {
        ColumnTable longer = flights;
        for (int i = 0; i < si.length && computed() > 0; i++) {
            Computed column = COMPUTED.get(i);
            longer = longer.withMarkedAsComputed(column.metric, column.unit, si[i], measured);
        }
        return longer;
    }
}
