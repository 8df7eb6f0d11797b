package dev.teeward.flight.impact;

import dev.teeward.flight.Ball;
import dev.teeward.flight.LaunchConditions;
import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Length;

/**
 * The plane of the head's velocity and the face normal, and what follows from it in closed form for a central strike.
 *
 * <p>The ball starts in that plane, nearer to the face; its spin axis is perpendicular to it; and since the plane is tilted
 * when face and path differ, the ball curves. With unit vectors n (face normal) and v (head velocity), psi between them, c =
 * k/(1 + k) = 2/7 and club speed V:
 *
 * <pre>
 *   launch velocity  V (a n + b v),   b = (1 + et) c / (1 + c m/M),   a = (1 + e) cos(psi) / (1 + m/M) - b cos(psi)
 *   spin vector      b V/(k r) (v x n)
 *   tilt             sin(tau) = -w.y / (|w| cos(launch angle))
 * </pre>
 *
 * <p>Where friction is too low for that, b is what makes the tangential speed mu times the normal speed. Depth of the centre
 * of mass, inertia, strike, bulge and roll are left out: {@link RigidImpact} has them, and agrees to rounding for a central
 * strike on a head without inertia.
 *
 * <p>For small angles the tilt is about face-to-path over spin loft: a driver's axis tilts by about 5 deg per degree of
 * face-to-path, a wedge's by about 1.
 *
 * <p>Source: Jorgensen, The Physics of Golf, 2nd ed. 1999 (definition, from memory); the formulas are derived from the rigid
 * impact. Wood, Henrikson and Broadie (2018) measured start directions 61 to 83 percent of the way from path to face;
 * {@link #faceShare()} lies there from a driver to a wedge of 46 deg of dynamic loft, and below it with more loft: 0.56 at 55,
 * all of a ball that leaves rolling. A restitution along the face lowers it, by about 0.06 in {@link TypicalHead}'s irons.
 *
 * <pre>{@code
 * DPlane plane = DPlane.of(delivery, head);
 * plane.launch().axisTilt().degrees();
 * plane.faceShare();                    // 0.81 for a driver
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class DPlane {
    /**
     * How far {@link #curveEstimate(Length)} may be from the integrated flight, as a fraction of the flight's curve: 0.3.
     * The spread of the rule over clubs, speeds and heights above the sea, not a confidence level.
     */
    public static final double CURVE_RELATIVE_ERROR = 0.3;

    /** The length of the rule [m]. */
    private static final double CURVE_LENGTH = 162.0;

    /** The spin loft at which the rule has half of its limit [deg]. */
    private static final double CURVE_HALF_LOFT = 24.5;

    private final LaunchConditions launch;
    private final Delivery delivery;
    private final double spinLoft;
    private final double faceShare;

    private DPlane(LaunchConditions launch, Delivery delivery, double spinLoft, double faceShare) {
        this.launch = launch;
        this.delivery = delivery;
        this.spinLoft = spinLoft;
        this.faceShare = faceShare;
    }

    /**
     * The plane of a delivery, its strike taken as central, for the ball of the rules.
     *
     * @param delivery how the head arrives
     * @param head mass, restitutions and friction are used
     * @return the plane and what follows from it
     * @throws IllegalArgumentException if the spin loft is 90 deg or more, if the restitution returned by the head is
     *     outside [0, 1], or if the launch is outside the range of {@link LaunchConditions}
     */
    public static DPlane of(Delivery delivery, ClubHead head) {
        return of(delivery, head, StruckBall.STANDARD);
    }

    /**
     * The plane of a delivery for another ball.
     *
     * @param delivery how the head arrives
     * @param head mass, restitutions and friction are used
     * @param ball its mass, diameter and moment of inertia are used
     * @return the plane and what follows from it
     * @throws IllegalArgumentException if the spin loft is 90 deg or more, if the restitution returned by the head is
     *     outside [0, 1], or if the launch is outside the range of {@link LaunchConditions}
     */
    public static DPlane of(Delivery delivery, ClubHead head, Ball ball) {
        return of(delivery, head, StruckBall.of(ball));
    }

    static DPlane of(Delivery delivery, ClubHead head, StruckBall ball) {
        Vector n = delivery.faceNormal();
        Vector v = delivery.headDirection();
        double psi = Delivery.between(n, v);
        double cos = n.dot(v);
        if (!(cos > 0.0)) {
            throw new IllegalArgumentException("spin loft must be less than 90 deg, but was " + Angle.ofRadians(psi)
                    + "; check the signs of dynamicLoft and attackAngle");
        }
        double speed = delivery.clubSpeed().metersPerSecond();
        double e = Allowed.number(
                "restitution", head.restitution().at(speed * cos), 0.0, 1.0, "check the restitution given to the head");
        double massRatio = ball.mass() / head.mass().kilograms();
        double k = ball.inertiaFactor();
        double c = k / (1.0 + k);
        double normal = (1.0 + e) * cos / (1.0 + massRatio);
        double gripping = (1.0 + head.tangentialRestitution()) * c / (1.0 + c * massRatio);
        double sin = v.cross(n).norm();
        double b = gripping * sin > head.friction() * normal ? head.friction() * normal / sin : gripping;
        double a = normal - b * cos;
        LaunchConditions launch = LaunchFrame.launch(
                n.times(a * speed).plus(b * speed, v), v.cross(n).times(b * speed / (k * ball.radius())));
        double level = a * Math.cos(delivery.dynamicLoft().radians());
        double share = level / (level + b * Math.cos(delivery.attackAngle().radians()));
        return new DPlane(launch, delivery, psi, share);
    }

    /**
     * The launch of the ball.
     *
     * @return speed, direction and spin
     */
    public LaunchConditions launch() {
        return launch;
    }

    /**
     * The angle between face normal and head velocity.
     *
     * @return the angle, in [0, 90) deg
     */
    public Angle spinLoft() {
        return Angle.ofRadians(spinLoft);
    }

    /**
     * Face angle minus club path, right positive.
     *
     * @return the angle
     */
    public Angle faceToPath() {
        return delivery.faceToPath();
    }

    /**
     * How far the start direction lies from the path towards the face: 0 on the path, 1 on the face.
     *
     * <p>The limit for a small face-to-path, {@code a cos L / (a cos L + b cos A)}.
     *
     * @return the share
     */
    public double faceShare() {
        return faceShare;
    }

    /**
     * How far the start direction lies from the face towards the path: what {@link #faceShare()} leaves of 1.
     *
     * @return the share
     */
    public double pathShare() {
        return 1.0 - faceShare;
    }

    /**
     * The tilt of the spin axis from the angles alone: {@code tan(tau) = cos A cos L sin(F - P) / sin(L - A)}.
     *
     * <p>For small face-to-path; at 2 deg it is within 0.3 deg of the exact tilt for a driver and within 0.5 deg for a
     * wedge, whose high launch turns the reference plane.
     *
     * @return the angle, positive when the ball curves right; 0 if spin loft is 0
     */
    public Angle approximateAxisTilt() {
        double attack = delivery.attackAngle().radians();
        double loft = delivery.dynamicLoft().radians();
        double across = Math.cos(attack)
                * Math.cos(loft)
                * Math.sin(delivery.faceAngle().radians() - delivery.clubPath().radians());
        return Angle.ofRadians(Math.atan2(across, Math.sin(loft - attack)));
    }

    /**
     * A rough curve, to be had without flying the ball: {@code carry^2 / 162 m * s/(s + 24.5 deg) * sin(tilt)}, s being the
     * spin loft.
     *
     * <p>The rule is fitted to flights of the default model in standard air without wind (spin loft 10 to 64 deg, ball speeds
     * of full shots with every club, 2 deg of face to path): it is within 15 percent of them. With slower and tilted
     * deliveries, level ground and up to 1500 m above the sea it keeps {@link #CURVE_RELATIVE_ERROR}. Where it matters,
     * integrate the flight.
     *
     * @param carry the carry
     * @return the offset from the plane of the start direction, right positive
     */
    public Length curveEstimate(Length carry) {
        return curve(carry, spinLoft, launch.axisTilt().radians());
    }

    /** The rule, for a spin loft and a tilt [rad]. */
    static Length curve(Length carry, double spinLoft, double tilt) {
        double loft = Math.toDegrees(spinLoft);
        double share = loft / (loft + CURVE_HALF_LOFT);
        double meters = carry.meters();
        return Length.ofMeters(meters * meters / CURVE_LENGTH * share * Math.sin(tilt));
    }

    @Override
    public String toString() {
        return "spin loft " + spinLoft() + ", face to path " + faceToPath() + ", " + launch;
    }
}
