package dev.teeward.fitting;

import dev.teeward.quantity.AngleUnit;
import dev.teeward.quantity.DurationUnit;
import dev.teeward.quantity.LengthUnit;
import dev.teeward.quantity.RatioUnit;
import dev.teeward.quantity.SpeedUnit;
import dev.teeward.quantity.SpinRateUnit;
import dev.teeward.quantity.Unit;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Everything that can be measured about a shot, in the order in which a shot runs.
 *
 * <p>A metric knows its name in files, its name in the trade, its units, what its sign means and the limits beyond which a
 * number is refused as absurd. The limits are deliberately wide: they catch a wrong unit or a broken cell, not a mishit.
 * Those of ball speed, launch angle, start direction, spin rate and axis tilt are those of the flight model; the others are
 * common practice, no source.
 *
 * <pre>{@code
 * Metric metric = Metric.of("carry");
 * String heading = metric.key() + "_" + metric.unit(UnitSystem.US).suffix(); // carry_yd
 * boolean plausible = metric.allows(150.0); // metres
 * }</pre>
 *
 * <p>Whether more of it is better is nobody's business here: that depends on the golfer. Immutable and thread-safe.
 */
@SuppressWarnings("ImmutableEnumChecker") // the units are enumeration constants
public enum Metric {
    /** Speed of the club head just before impact [m/s]. */
    CLUB_SPEED(
            "club_speed",
            "club speed",
            SpeedUnit.MILE_PER_HOUR,
            SpeedUnit.KILOMETER_PER_HOUR,
            MetricGroup.APPROACH,
            Sense.NONE,
            0.0,
            90.0,
            true),

    /** Vertical direction of the club head, up positive [rad]. */
    ATTACK_ANGLE(
            "attack_angle",
            "attack angle",
            AngleUnit.DEGREE,
            AngleUnit.DEGREE,
            MetricGroup.APPROACH,
            Sense.UP,
            -deg(45.0),
            deg(45.0),
            false),

    /** Horizontal direction of the club head, right of the target positive [rad]. */
    CLUB_PATH(
            "club_path",
            "club path",
            AngleUnit.DEGREE,
            AngleUnit.DEGREE,
            MetricGroup.APPROACH,
            Sense.LATERAL,
            -deg(45.0),
            deg(45.0),
            false),

    /**
     * Horizontal direction of the face normal as delivered, right of the target positive; contains the effect of the
     * lie [rad].
     */
    FACE_ANGLE(
            "face_angle",
            "face angle",
            AngleUnit.DEGREE,
            AngleUnit.DEGREE,
            MetricGroup.FACE,
            Sense.LATERAL,
            -deg(60.0),
            deg(60.0),
            false),

    /** Elevation of the face normal as delivered; contains the effect of the lie [rad]. */
    DYNAMIC_LOFT(
            "dynamic_loft",
            "dynamic loft",
            AngleUnit.DEGREE,
            AngleUnit.DEGREE,
            MetricGroup.FACE,
            Sense.UP,
            -deg(30.0),
            deg(90.0),
            false),

    /** Shaft more upright at impact than the lie of the club (toe up) positive [rad]. */
    DYNAMIC_LIE(
            "dynamic_lie",
            "dynamic lie",
            AngleUnit.DEGREE,
            AngleUnit.DEGREE,
            MetricGroup.FACE,
            Sense.TOE,
            -deg(45.0),
            deg(45.0),
            false),

    /** Angle in space between the face normal and the velocity of the club head; derived [rad]. */
    SPIN_LOFT(
            "spin_loft",
            "spin loft",
            AngleUnit.DEGREE,
            AngleUnit.DEGREE,
            MetricGroup.FACE,
            Sense.NONE,
            0.0,
            deg(150.0),
            false),

    /** Face angle minus club path, right positive; derived [rad]. */
    FACE_TO_PATH(
            "face_to_path",
            "face to path",
            AngleUnit.DEGREE,
            AngleUnit.DEGREE,
            MetricGroup.FACE,
            Sense.LATERAL,
            -deg(105.0),
            deg(105.0),
            false),

    /** Distance of the strike from the centre of the face towards the toe [m]. */
    STRIKE_TOE(
            "strike_toe",
            "strike, toe",
            LengthUnit.MILLIMETER,
            LengthUnit.MILLIMETER,
            MetricGroup.STRIKE,
            Sense.TOE,
            -0.1,
            0.1,
            false),

    /** Distance of the strike from the centre of the face upwards [m]. */
    STRIKE_UP(
            "strike_up",
            "strike, up",
            LengthUnit.MILLIMETER,
            LengthUnit.MILLIMETER,
            MetricGroup.STRIKE,
            Sense.UP,
            -0.1,
            0.1,
            false),

    /** Speed of the ball just after impact [m/s]. */
    BALL_SPEED(
            "ball_speed",
            "ball speed",
            SpeedUnit.MILE_PER_HOUR,
            SpeedUnit.KILOMETER_PER_HOUR,
            MetricGroup.START,
            Sense.NONE,
            0.0,
            110.0,
            true),

    /** Angle of the start of the flight above the horizontal [rad]. */
    LAUNCH_ANGLE(
            "launch_angle",
            "launch angle",
            AngleUnit.DEGREE,
            AngleUnit.DEGREE,
            MetricGroup.START,
            Sense.UP,
            -deg(90.0),
            deg(90.0),
            false),

    /** Bearing of the start of the flight, right of the target positive [rad]. */
    START_DIRECTION(
            "start_direction",
            "start direction",
            AngleUnit.DEGREE,
            AngleUnit.DEGREE,
            MetricGroup.START,
            Sense.LATERAL,
            -deg(90.0),
            deg(90.0),
            false),

    /** Rate of spin just after impact, about whatever axis [rad/s]. */
    SPIN_RATE(
            "spin_rate",
            "spin rate",
            SpinRateUnit.REVOLUTION_PER_MINUTE,
            SpinRateUnit.REVOLUTION_PER_MINUTE,
            MetricGroup.START,
            Sense.NONE,
            0.0,
            SpinRateUnit.REVOLUTION_PER_MINUTE.toSi(20_000.0),
            false),

    /** Tilt of the spin axis, positive when the ball curves right [rad]. */
    AXIS_TILT(
            "axis_tilt",
            "axis tilt",
            AngleUnit.DEGREE,
            AngleUnit.DEGREE,
            MetricGroup.START,
            Sense.LATERAL,
            -deg(180.0),
            deg(180.0),
            false),

    /** Offset at landing from the vertical plane of the start direction, right positive [m]. */
    CURVE("curve", "curve", LengthUnit.YARD, LengthUnit.METER, MetricGroup.FLIGHT, Sense.LATERAL, -200.0, 200.0, false),

    /** Greatest height above the start [m]. */
    APEX("apex", "apex", LengthUnit.FOOT, LengthUnit.METER, MetricGroup.FLIGHT, Sense.NONE, 0.0, 200.0, false),

    /** Time from impact to landing [s]. */
    FLIGHT_TIME(
            "flight_time",
            "flight time",
            DurationUnit.SECOND,
            DurationUnit.SECOND,
            MetricGroup.FLIGHT,
            Sense.NONE,
            0.0,
            30.0,
            false),

    /** Horizontal distance to where the ball comes down at the landing elevation [m]. */
    CARRY("carry", "carry", LengthUnit.YARD, LengthUnit.METER, MetricGroup.LANDING, Sense.NONE, 0.0, 500.0, false),

    /** Offset from the target line at landing, right positive [m]. */
    SIDE("side", "side", LengthUnit.YARD, LengthUnit.METER, MetricGroup.LANDING, Sense.LATERAL, -300.0, 300.0, false),

    /** Angle of the path below the horizontal at landing [rad]. */
    DESCENT_ANGLE(
            "descent_angle",
            "descent angle",
            AngleUnit.DEGREE,
            AngleUnit.DEGREE,
            MetricGroup.LANDING,
            Sense.NONE,
            0.0,
            deg(90.0),
            false),

    /** Speed of the ball at landing [m/s]. */
    LANDING_SPEED(
            "landing_speed",
            "landing speed",
            SpeedUnit.MILE_PER_HOUR,
            SpeedUnit.KILOMETER_PER_HOUR,
            MetricGroup.LANDING,
            Sense.NONE,
            0.0,
            110.0,
            false),

    /** Horizontal distance to where the ball comes to rest [m]. */
    TOTAL("total", "total", LengthUnit.YARD, LengthUnit.METER, MetricGroup.LANDING, Sense.NONE, 0.0, 600.0, false),

    /** Ball speed divided by club speed; a pure number, measured or derived. */
    SMASH_FACTOR(
            "smash_factor",
            "smash factor",
            RatioUnit.ONE,
            RatioUnit.ONE,
            MetricGroup.RATIOS,
            Sense.NONE,
            0.0,
            2.0,
            true);

    private static final Map<String, Metric> BY_KEY = new HashMap<>();

    static {
        for (Metric metric : values()) {
            BY_KEY.put(metric.key, metric);
        }
    }

    private final String key;
    private final String label;
    private final Unit us;
    private final Unit metric;
    private final MetricGroup group;
    private final Sense sense;
    private final double lower;
    private final double upper;
    private final boolean lowerOpen;

    Metric(
            String key,
            String label,
            Unit us,
            Unit metric,
            MetricGroup group,
            Sense sense,
            double lower,
            double upper,
            boolean lowerOpen) {
        this.key = key;
        this.label = label;
        this.us = us;
        this.metric = metric;
        this.group = group;
        this.sense = sense;
        this.lower = lower;
        this.upper = upper;
        this.lowerOpen = lowerOpen;
    }

    /**
     * The metric with a key.
     *
     * @param key the name as in files, without a unit, such as {@code ball_speed}
     * @return the metric, or empty if there is none of exactly this name
     */
    public static Optional<Metric> find(String key) {
        return Optional.ofNullable(BY_KEY.get(Objects.requireNonNull(key, "key")));
    }

    /**
     * The metric with a key that must exist.
     *
     * @param key the name as in files, without a unit, such as {@code ball_speed}
     * @return the metric
     * @throws IllegalArgumentException if there is none of exactly this name; the message lists all
     */
    public static Metric of(String key) {
        return find(key)
                .orElseThrow(() -> new IllegalArgumentException("there is no metric \"" + key + "\"; there are "
                        + Stream.of(values()).map(Metric::key).collect(Collectors.joining(", "))));
    }

    /**
     * The name in files, without the unit.
     *
     * @return lower-case words joined by underscores
     */
    public String key() {
        return key;
    }

    /**
     * The name in the words of the trade.
     *
     * @return a few lower-case words
     */
    public String label() {
        return label;
    }

    /**
     * The SI unit that all numbers of this metric are held in.
     *
     * @return the unit
     */
    public Unit siUnit() {
        return us.siUnit();
    }

    /**
     * All units that the metric may be given in.
     *
     * @return the units of its dimension, SI first
     */
    public List<Unit> units() {
        Unit si = siUnit();
        if (si instanceof SpeedUnit) {
            return List.of(SpeedUnit.values());
        }
        if (si instanceof LengthUnit) {
            return List.of(LengthUnit.values());
        }
        if (si instanceof AngleUnit) {
            return List.of(AngleUnit.values());
        }
        if (si instanceof SpinRateUnit) {
            return List.of(SpinRateUnit.values());
        }
        return si instanceof DurationUnit ? List.of(DurationUnit.values()) : List.of(RatioUnit.ONE);
    }

    /**
     * The unit that people expect to see.
     *
     * @param system the family of units
     * @return the unit
     */
    public Unit unit(UnitSystem system) {
        return system == UnitSystem.US ? us : metric;
    }

    /**
     * The stage of the shot it belongs to.
     *
     * @return the group
     */
    public MetricGroup group() {
        return group;
    }

    /**
     * What the sign means.
     *
     * @return the sense
     */
    public Sense sense() {
        return sense;
    }

    /**
     * The lower limit of what is believed.
     *
     * @return the limit; whether it is itself allowed says {@link #lowerOpen()} [SI]
     */
    public double lower() {
        return lower;
    }

    /**
     * The upper limit of what is believed, itself allowed.
     *
     * @return the limit [SI]
     */
    public double upper() {
        return upper;
    }

    /**
     * Whether the lower limit itself is refused.
     *
     * @return true for the speeds at impact and the smash factor, which cannot be 0
     */
    public boolean lowerOpen() {
        return lowerOpen;
    }

    /**
     * Whether a number lies within the limits.
     *
     * @param si the number [SI]
     * @return false if outside or NaN
     */
    public boolean allows(double si) {
        // A limit itself, once written in another unit and read back, may come out a few roundings beyond it.
        double most = upper + 4.0 * Math.ulp(upper);
        double least = lower - 4.0 * Math.ulp(lower);
        return (lowerOpen ? si > lower : lower == 0.0 ? si >= 0.0 : si >= least) && si <= most;
    }

    private static double deg(double degrees) {
        return AngleUnit.DEGREE.toSi(degrees);
    }
}
