package dev.teeward.flight.study;

import dev.teeward.flight.FlightModel;
import dev.teeward.flight.LaunchConditions;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;

/**
 * A flight that was observed: how it was launched, in what air, and what was seen of it.
 *
 * <p>What was not seen is absent. The air, the wind and the landing elevation are those of a flight model, whose ball lends
 * mass, diameter and inertia; its aerodynamics is replaced by that under study. Flights in different air may stand side by
 * side.
 *
 * <pre>{@code
 * ObservedFlight seen = ObservedFlight.of(launch)
 *     .withName("shot 3").withGroup("mid iron").withConditions(FlightModel.standard().withAir(air))
 *     .with(FlightOutput.CARRY, 148.2).with(FlightOutput.APEX, 28.0);   // metres
 * }</pre>
 *
 * <p>Immutable, and thread-safe if the wind is.
 */
public final class ObservedFlight {
    private final String name;
    private final String group;
    private final LaunchConditions launch;
    private final FlightModel conditions;
    private final Map<FlightOutput, Double> values;
    private final List<TrackPoint> track;

    private ObservedFlight(
            String name,
            String group,
            LaunchConditions launch,
            FlightModel conditions,
            Map<FlightOutput, Double> values,
            List<TrackPoint> track) {
        this.name = Objects.requireNonNull(name, "name");
        this.group = Objects.requireNonNull(group, "group");
        this.launch = Objects.requireNonNull(launch, "launch");
        this.conditions = Objects.requireNonNull(conditions, "conditions");
        this.values = values;
        this.track = track;
    }

    /**
     * A flight of which nothing has been seen yet, in standard air at sea level, calm, over level ground.
     *
     * @param launch how it was launched
     * @return the flight, without name and group
     */
    public static ObservedFlight of(LaunchConditions launch) {
        return new ObservedFlight("", "", launch, FlightModel.standard(), new EnumMap<>(FlightOutput.class), List.of());
    }

    /**
     * A copy with a name.
     *
     * @param value the name, for reports
     * @return the copy
     */
    public ObservedFlight withName(String value) {
        return new ObservedFlight(value, group, launch, conditions, values, track);
    }

    /**
     * A copy that belongs to a group: a class of club, a day, a golfer.
     *
     * @param value the name of the group; empty for none
     * @return the copy
     */
    public ObservedFlight withGroup(String value) {
        return new ObservedFlight(name, value, launch, conditions, values, track);
    }

    /**
     * A copy in other air, wind or place, or with another mass of the ball.
     *
     * @param value the model; its aerodynamics does not matter
     * @return the copy
     */
    public ObservedFlight withConditions(FlightModel value) {
        return new ObservedFlight(name, group, launch, value, values, track);
    }

    /**
     * A copy with one number seen.
     *
     * @param output which
     * @param si its value, finite, in its SI unit
     * @return the copy
     * @throws IllegalArgumentException if the value is not finite
     */
    public ObservedFlight with(FlightOutput output, double si) {
        if (!Double.isFinite(si)) {
            throw new IllegalArgumentException(output.key() + " must be finite ["
                    + output.unit().symbol() + "], but was " + si + "; leave out what was not seen");
        }
        Map<FlightOutput, Double> more = new EnumMap<>(FlightOutput.class);
        more.putAll(values);
        more.put(output, si);
        return new ObservedFlight(name, group, launch, conditions, more, track);
    }

    /**
     * A copy with points of the path.
     *
     * @param points where the ball was seen, in any order; they replace earlier ones
     * @return the copy
     */
    public ObservedFlight withTrack(List<TrackPoint> points) {
        return new ObservedFlight(name, group, launch, conditions, values, List.copyOf(points));
    }

    /**
     * The name.
     *
     * @return the name, possibly empty
     */
    public String name() {
        return name;
    }

    /**
     * The group.
     *
     * @return the group, possibly empty
     */
    public String group() {
        return group;
    }

    /**
     * How it was launched.
     *
     * @return the launch
     */
    public LaunchConditions launch() {
        return launch;
    }

    /**
     * The air, the wind and the place.
     *
     * @return a model whose aerodynamics does not matter
     */
    public FlightModel conditions() {
        return conditions;
    }

    /**
     * What was seen of a number.
     *
     * @param output which
     * @return its value in its SI unit; empty if it was not seen
     */
    public OptionalDouble value(FlightOutput output) {
        Double value = values.get(output);
        return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
    }

    /**
     * The numbers that were seen.
     *
     * @return which, in their declared order, unmodifiable
     */
    public List<FlightOutput> outputs() {
        return List.copyOf(new ArrayList<>(values.keySet()));
    }

    /**
     * The points of the path.
     *
     * @return the points, unmodifiable, possibly none
     */
    public List<TrackPoint> track() {
        return track;
    }

    @Override
    public String toString() {
        return (name.isEmpty() ? "a flight" : name) + ": " + launch + ", seen " + values;
    }

    /**
     * Where a ball was seen.
     *
     * @param timeSeconds the time since the launch, not negative [s]
     * @param downrange the distance towards the target [m]
     * @param height the height above the start [m]
     * @param side the distance to the right of the target line [m]
     */
    public record TrackPoint(double timeSeconds, double downrange, double height, double side) {
        /**
         * A point.
         *
         * @param timeSeconds the time since the launch, not negative [s]
         * @param downrange the distance towards the target [m]
         * @param height the height above the start [m]
         * @param side the distance to the right of the target line [m]
         * @throws IllegalArgumentException if a number is not finite or the time is negative
         */
        public TrackPoint {
            if (!(timeSeconds >= 0.0)
                    || !Double.isFinite(timeSeconds)
                    || !Double.isFinite(downrange)
                    || !Double.isFinite(height)
                    || !Double.isFinite(side)) {
                throw new IllegalArgumentException(
                        "a point must have a time not below 0 and finite coordinates, but had " + timeSeconds + " s, "
                                + downrange + " m, " + height + " m, " + side + " m");
            }
        }
    }
}
