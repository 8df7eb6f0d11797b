package dev.teeward.flight.impact;

import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Handedness;

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
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class LieEffect {
    private final double turn;

    private LieEffect(double turn) {
        this.turn = turn;
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
        return new LieEffect(
                hand.sign() * Allowed.angle("upright", upright, -20.0, 20.0).radians());
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
