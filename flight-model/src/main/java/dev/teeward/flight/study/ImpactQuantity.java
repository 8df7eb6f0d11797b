package dev.teeward.flight.study;

import dev.teeward.quantity.AngleUnit;
import dev.teeward.quantity.LengthUnit;
import dev.teeward.quantity.SpeedUnit;
import dev.teeward.quantity.SpinRateUnit;
import dev.teeward.quantity.Unit;
import java.util.List;

/**
 * What can be measured of an impact: seven numbers of the delivery and the five of the launch that follow from them.
 *
 * <p>Signs are those of {@link dev.teeward.flight.impact.Delivery} and {@link dev.teeward.flight.LaunchConditions}.
 *
 * <pre>{@code
 * ImpactQuantity.CLUB_SPEED.unit();       // m/s, the unit in which estimates come
 * ImpactQuantity.CLUB_SPEED.isDelivery(); // true
 * ImpactQuantity.SPIN_RATE.isDelivery();  // false
 * }</pre>
 */
public enum ImpactQuantity {
    /** The speed of the head. */
    CLUB_SPEED(0, "club speed", SpeedUnit.METER_PER_SECOND, 1e-3, 70.0),
    /** The attack angle, upwards positive. */
    ATTACK_ANGLE(1, "attack angle", AngleUnit.DEGREE, -45.0, 45.0),
    /** The club path, right positive. */
    CLUB_PATH(2, "club path", AngleUnit.DEGREE, -45.0, 45.0),
    /** The face angle, right positive. */
    FACE_ANGLE(3, "face angle", AngleUnit.DEGREE, -60.0, 60.0),
    /** The dynamic loft. */
    DYNAMIC_LOFT(4, "dynamic loft", AngleUnit.DEGREE, -20.0, 85.0),
    /** The strike along the face, towards the toe positive. */
    STRIKE_TOE(5, "strike toe", LengthUnit.MILLIMETER, -60.0, 60.0),
    /** The strike up the face, upwards positive. */
    STRIKE_UP(6, "strike up", LengthUnit.MILLIMETER, -40.0, 40.0),
    /** The ball speed. */
    BALL_SPEED(7, "ball speed", SpeedUnit.METER_PER_SECOND, 1e-3, 110.0),
    /** The launch angle. */
    LAUNCH_ANGLE(8, "launch angle", AngleUnit.DEGREE, -90.0, 90.0),
    /** The start direction, right positive. */
    START_DIRECTION(9, "start direction", AngleUnit.DEGREE, -90.0, 90.0),
    /** The spin rate. */
    SPIN_RATE(10, "spin rate", SpinRateUnit.REVOLUTION_PER_MINUTE, 0.0, 20_000.0),
    /** The axis tilt, positive when the ball curves right. */
    AXIS_TILT(11, "axis tilt", AngleUnit.DEGREE, -180.0, 180.0);

    /** How many quantities describe the delivery; they come first. */
    static final int DELIVERY = 7;

    /** All of them, by {@link #index()}. */
    static final List<ImpactQuantity> ALL = List.of(values());

    private final int index;
    private final String label;

    @SuppressWarnings("ImmutableEnumChecker") // every unit is an enumeration constant
    private final Unit unit;

    private final double low;
    private final double high;

    ImpactQuantity(int index, String label, Unit unit, double low, double high) {
        this.index = index;
        this.label = label;
        this.unit = unit;
        this.low = low;
        this.high = high;
    }

    /**
     * The name in words.
     *
     * @return lower-case words
     */
    public String label() {
        return label;
    }

    /**
     * The unit in which estimates of this quantity come.
     *
     * @return m/s, degree, millimetre or rpm
     */
    public Unit unit() {
        return unit;
    }

    /**
     * Whether this describes the club's delivery and not the ball's launch.
     *
     * @return true for the first seven
     */
    public boolean isDelivery() {
        return index < DELIVERY;
    }

    /** The place in an array of all twelve, the delivery first. */
    int index() {
        return index;
    }

    /** The least value allowed [unit]. */
    double low() {
        return low;
    }

    /** The greatest value allowed [unit]. */
    double high() {
        return high;
    }
}
