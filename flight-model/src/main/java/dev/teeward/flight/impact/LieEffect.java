package dev.teeward.flight.impact;

import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Handedness;
import dev.teeward.quantity.Length;

/**
 * What a lie that is off does to face and ball: for asking "what if", not for adding to a measured face.
 *
 * <p>A delivered face angle and dynamic loft already contain the lie. This class turns the head by d about the horizontal
 * target line (toe up, more upright, positive) and says what changes. For a right-handed golfer, loft L and a square face:
 *
 * <pre>
 *   face angle       tan F  = -tan L sin d          about -d tan L
 *   effective loft   sin L' =  sin L cos d
 * </pre>
 *
 * <p>and, when the head travels level along the target line, so that the whole plane of velocity and normal turns with it,
 * exactly:
 *
 * <pre>
 *   start direction  tan    = -tan(launch) sin d    which the face angle overstates by 30 to 70 percent
 *   launch angle     sin th = sin(launch) cos d
 *   axis tilt        sin    = -sin d / cos th
 * </pre>
 *
 * <p>A left-handed golfer's signs are the other way round. Rotation about the target line is one choice; about the shaft or
 * the leading edge loft and face couple differently. Derived from the geometry; no published worked example was at hand.
 *
 * <pre>{@code
 * LieEffect flat = LieEffect.of(degrees(-2.0), Handedness.RIGHT);
 * flat.faceAngle(degrees(34.0)).degrees();       // 1.35: points right
 * flat.startDirection(degrees(27.1)).degrees();  // 1.02
 * LieEffect.removingStart(degrees(1.02), degrees(27.1), Handedness.RIGHT).upright(); // 2 deg
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class LieEffect {
    private static final double LARGEST_DEGREES = 20.0;

    private final double turn;
    private final Handedness hand;

    private LieEffect(double turn, Handedness hand) {
        this.turn = turn;
        this.hand = hand;
    }

    /**
     * The effect of a lie that is off.
     *
     * @param upright by how much the head sits toe up, more upright than it should, in [-20, 20] deg
     * @param hand for which hand the club is made
     * @return the effect
     * @throws IllegalArgumentException if the angle lies outside
     */
    public static LieEffect of(Angle upright, Handedness hand) {
        double allowed = Allowed.angle("upright", upright, -LARGEST_DEGREES, LARGEST_DEGREES)
                .radians();
        return new LieEffect(hand.sign() * allowed, hand);
    }

    /**
     * The change of lie that brings a start back to the target line, for a head that travels level along it:
     * {@code tan d = sin(start)/tan(launch)}.
     *
     * @param startDirection where the ball starts now, right of the target positive, in [-90, 90] deg
     * @param launchAngle its launch angle now, in [1, 85] deg
     * @param hand for which hand the club is made
     * @return the change; {@link #upright()} is what to bend the club by
     * @throws IllegalArgumentException if an angle lies outside, or the change would be more than 20 deg
     */
    public static LieEffect removingStart(Angle startDirection, Angle launchAngle, Handedness hand) {
        double start =
                Allowed.angle("startDirection", startDirection, -90.0, 90.0).radians();
        double launch = Allowed.angle("launchAngle", launchAngle, 1.0, 85.0).radians();
        return change(Math.atan(Math.sin(start) / Math.tan(launch)), hand);
    }

    /**
     * The change of lie that brings the start of a delivery to the target line, the head's velocity staying as it is: solved by
     * bisection on the launch of {@link DPlane}, for a central strike.
     *
     * @param delivery how the head arrives now
     * @param head what arrives, and for which hand
     * @return the change
     * @throws IllegalArgumentException if no change up to 20 deg does it, as with a path far off or a face with little loft
     */
    public static LieEffect removingStart(Delivery delivery, ClubHead head) {
        double low = -Math.toRadians(LARGEST_DEGREES);
        double high = -low;
        double atLow = startAfter(low, delivery, head);
        if (atLow * startAfter(high, delivery, head) > 0.0) {
            throw new IllegalArgumentException("no change of lie up to " + LARGEST_DEGREES
                    + " deg brings the start to the target line: " + delivery);
        }
        for (int i = 0; i < 60; i++) {
            double middle = 0.5 * (low + high);
            if (atLow * startAfter(middle, delivery, head) > 0.0) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return change(0.5 * (low + high), head.handedness());
    }

    private static double startAfter(double turn, Delivery delivery, ClubHead head) {
        Delivery turned = new LieEffect(turn, head.handedness()).applyTo(delivery);
        return DPlane.of(turned, head).launch().startDirection().radians();
    }

    /**
     * The change of lie that makes the spin axis level, so that the ball flies straight on from where it starts: the face is
     * turned into the upright plane of the head's velocity.
     *
     * @param delivery how the head arrives now
     * @param hand for which hand the club is made
     * @return the change
     * @throws IllegalArgumentException if no change up to 20 deg does it, as with a path far off or a face with little loft
     */
    public static LieEffect removingCurve(Delivery delivery, Handedness hand) {
        Vector n = delivery.faceNormal();
        // Turning by d brings the normal to z cos d - y sin d, which is to be x tan(path).
        double wanted = n.x() * Math.tan(delivery.clubPath().radians()) / Math.sqrt(n.y() * n.y() + n.z() * n.z());
        if (!(Math.abs(wanted) <= 1.0)) {
            throw new IllegalArgumentException(
                    "no change of lie brings the face to the path of this delivery: " + delivery);
        }
        return change(Math.atan2(n.z(), n.y()) - Math.asin(wanted), hand);
    }

    private static LieEffect change(double turn, Handedness hand) {
        if (!(Math.abs(turn) <= Math.toRadians(LARGEST_DEGREES))) {
            throw new IllegalArgumentException("the change of lie would be " + hand.sign() * Math.toDegrees(turn)
                    + " deg, more than " + LARGEST_DEGREES + " deg; look for the cause elsewhere, in path or face");
        }
        return new LieEffect(turn, hand);
    }

    /**
     * By how much the head is turned.
     *
     * @return the angle, toe up, more upright, positive
     */
    public Angle upright() {
        return Angle.ofRadians(hand.sign() * turn);
    }

    /**
     * Where a face that would be square points.
     *
     * @param loft the loft it would have, in [-20, 85] deg
     * @return the face angle, right of the target positive
     * @throws IllegalArgumentException if the loft lies outside
     */
    public Angle faceAngle(Angle loft) {
        return azimuth(Allowed.angle("loft", loft, -20.0, 85.0));
    }

    /**
     * The loft that is left.
     *
     * @param loft the loft it would have, in [-20, 85] deg
     * @return the elevation of the turned face normal
     * @throws IllegalArgumentException if the loft lies outside
     */
    public Angle effectiveLoft(Angle loft) {
        return elevation(Allowed.angle("loft", loft, -20.0, 85.0));
    }

    /**
     * Where the ball starts if the head travels level along the target line.
     *
     * @param launchAngle the launch angle without the error, in [-20, 85] deg
     * @return the start direction, right of the target positive
     * @throws IllegalArgumentException if the angle lies outside
     */
    public Angle startDirection(Angle launchAngle) {
        return azimuth(Allowed.angle("launchAngle", launchAngle, -20.0, 85.0));
    }

    /**
     * The launch angle that is left if the head travels level along the target line.
     *
     * @param launchAngle the launch angle without the error, in [-20, 85] deg
     * @return the launch angle
     * @throws IllegalArgumentException if the angle lies outside
     */
    public Angle launchAngle(Angle launchAngle) {
        return elevation(Allowed.angle("launchAngle", launchAngle, -20.0, 85.0));
    }

    /**
     * The tilt of the spin axis if the head travels level along the target line.
     *
     * @param launchAngle the launch angle without the error, in [-20, 85] deg
     * @return the tilt, positive when the ball curves right
     * @throws IllegalArgumentException if the angle lies outside
     */
    public Angle axisTilt(Angle launchAngle) {
        double launch = Allowed.angle("launchAngle", launchAngle, -20.0, 85.0).radians();
        // The same as sin(tau) = -sin d / cos(th), in a form that keeps its digits: tan(tau) = -tan d / cos(launch).
        return Angle.ofRadians(-Math.atan(Math.tan(turn) / Math.cos(launch)));
    }

    /**
     * A rough curve of an iron or wedge whose head travels level along the target line: the rule of
     * {@link DPlane#curveEstimate(Length)} with the tilt above and the loft for the spin loft, and with its error.
     *
     * @param loft the loft without the error, in [1, 70] deg
     * @param launchAngle the launch angle without the error, in [-20, 85] deg
     * @param carry the carry
     * @return the offset from the plane of the start direction, right positive
     * @throws IllegalArgumentException if an angle lies outside
     */
    public Length curveEstimate(Angle loft, Angle launchAngle, Length carry) {
        double spinLoft = Allowed.angle("loft", loft, 1.0, 70.0).radians();
        return DPlane.curve(carry, spinLoft, axisTilt(launchAngle).radians());
    }

    /**
     * The delivery with the head turned by this angle about the target line, its velocity unchanged.
     *
     * @param delivery a delivery with the lie as it should be
     * @return the same with the face the turned head would have
     * @throws IllegalArgumentException if the turned face leaves the range of {@link Delivery}
     */
    public Delivery applyTo(Delivery delivery) {
        Vector n = delivery.faceNormal();
        double cos = Math.cos(turn);
        double sin = Math.sin(turn);
        Vector turned = new Vector(n.x(), n.y() * cos + n.z() * sin, n.z() * cos - n.y() * sin);
        return delivery.toBuilder()
                .faceAngle(Angle.ofRadians(turned.azimuth()))
                .dynamicLoft(Angle.ofRadians(turned.elevation()))
                .build();
    }

    private Angle azimuth(Angle elevation) {
        return Angle.ofRadians(-Math.atan(Math.tan(elevation.radians()) * Math.sin(turn)));
    }

    private Angle elevation(Angle elevation) {
        return Angle.ofRadians(Math.asin(Math.sin(elevation.radians()) * Math.cos(turn)));
    }
}
