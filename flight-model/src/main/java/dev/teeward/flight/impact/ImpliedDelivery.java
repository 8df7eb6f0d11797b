package dev.teeward.flight.impact;

import dev.teeward.flight.Ball;
import dev.teeward.flight.LaunchConditions;
import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Speed;
import java.util.Optional;

/**
 * Backwards through a central impact: from a launch to the face that made it, and, if the ball gripped, to the head's
 * velocity.
 *
 * <p>Every impulse at one point of a ball at rest gives tangential speed and spin together, {@code vt = k r w}, whatever the
 * head, its friction or its restitution. So the face normal where the ball was struck follows from the launch and the ball
 * alone: it is the launch direction turned about the spin axis, upwards for backspin, by {@code asin(k r w / v)}. Bulge, roll
 * and gear effect do not change that, but for a curved face it is the normal at the strike, not at the centre.
 *
 * <p>The velocity of the head follows only for a central strike that gripped, and needs mass and restitutions:
 * {@code V cos(psi) = vn (1 + m/M)/(1 + e)} and {@code V sin(psi) = vt (1 + c m/M)/((1 + et) c)}, c = k/(1 + k). A ball that
 * slipped has lost the trace of it; then there is none. One degree of measured tilt moves the implied face-to-path by about
 * 0.2 deg for a driver and 0.9 deg for a wedge. An off-centre strike is read as path: the gear effect of a flat-faced driver
 * struck 15 mm to the toe tilts the axis by 24 deg, which looks like 5 deg of path.
 *
 * <p>Derived from the rigid impact of {@link RigidImpact}, whose idealisations it shares; real balls deform.
 *
 * <pre>{@code
 * ImpliedDelivery implied = ImpliedDelivery.of(launch, head);
 * implied.faceAngle().degrees();
 * implied.delivery().map(d -> d.clubPath().degrees());
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class ImpliedDelivery {
    private final Angle faceAngle;
    private final Angle dynamicLoft;
    private final Optional<Delivery> delivery;

    private ImpliedDelivery(Angle faceAngle, Angle dynamicLoft, Optional<Delivery> delivery) {
        this.faceAngle = faceAngle;
        this.dynamicLoft = dynamicLoft;
        this.delivery = delivery;
    }

    /**
     * What a launch of the ball of the rules implies.
     *
     * @param launch the launch
     * @param head mass, restitutions and friction are used; depth of the centre of mass and inertia are not
     * @return face, and delivery where determined
     * @throws IllegalArgumentException if the spin is more than any single impulse at that ball speed can give, or the
     *     implied delivery is outside the range of {@link Delivery}
     */
    public static ImpliedDelivery of(LaunchConditions launch, ClubHead head) {
        return of(launch, head, StruckBall.STANDARD);
    }

    /**
     * What a launch of another ball implies.
     *
     * @param launch the launch
     * @param head mass, restitutions and friction are used; depth of the centre of mass and inertia are not
     * @param ball its mass, diameter and moment of inertia are used
     * @return face, and delivery where determined
     * @throws IllegalArgumentException if the spin is more than any single impulse at that ball speed can give, or the
     *     implied delivery is outside the range of {@link Delivery}
     */
    public static ImpliedDelivery of(LaunchConditions launch, ClubHead head, Ball ball) {
        return of(launch, head, StruckBall.of(ball));
    }

    static ImpliedDelivery of(LaunchConditions launch, ClubHead head, StruckBall ball) {
        double speed = launch.ballSpeed().metersPerSecond();
        double k = ball.inertiaFactor();
        double tangential = k * ball.radius() * launch.spinRate().radiansPerSecond();
        if (!(tangential < speed)) {
            throw new IllegalArgumentException("spinRate must be below " + speed / (k * ball.radius()) * 30.0 / Math.PI
                    + " rpm at a ball speed of " + launch.ballSpeed() + " for any impact, but was " + launch.spinRate()
                    + "; check the units");
        }
        double sin = tangential / speed;
        double cos = Math.sqrt((1.0 - sin) * (1.0 + sin));
        LaunchFrame frame = LaunchFrame.of(
                launch.launchAngle().radians(), launch.startDirection().radians());
        Vector axis = frame.spinAxis(launch.axisTilt().radians());
        Vector normal = frame.along().times(cos).plus(sin, axis.cross(frame.along()));
        Angle face = Angle.ofRadians(normal.azimuth());
        Angle loft = Angle.ofRadians(normal.elevation());
        boolean slid = tangential >= head.friction() * speed * cos;
        Optional<Delivery> delivery = slid
                ? Optional.empty()
                : Optional.of(gripped(head, ball, normal, axis, speed * cos, tangential)
                        .faceAngle(face)
                        .dynamicLoft(loft)
                        .build());
        return new ImpliedDelivery(face, loft, delivery);
    }

    private static Delivery.Builder gripped(
            ClubHead head, StruckBall ball, Vector normal, Vector axis, double vn, double vt) {
        double massRatio = ball.mass() / head.mass().kilograms();
        double c = ball.inertiaFactor() / (1.0 + ball.inertiaFactor());
        double across = vt * (1.0 + c * massRatio) / ((1.0 + head.tangentialRestitution()) * c);
        double approach = approach(head.restitution(), vn * (1.0 + massRatio));
        Vector velocity = normal.times(approach).plus(across, normal.cross(axis));
        return Delivery.builder()
                .clubSpeed(Speed.ofMetersPerSecond(velocity.norm()))
                .attackAngle(Angle.ofRadians(velocity.elevation()))
                .clubPath(Angle.ofRadians(velocity.azimuth()));
    }

    /** The normal speed u with (1 + e(u)) u = target [m/s], by bisection: it lies between target/2 and target. */
    private static double approach(NormalRestitution restitution, double target) {
        if (restitution instanceof ConstantRestitution constant) {
            return target / (1.0 + constant.coefficient());
        }
        double low = 0.5 * target;
        double high = target;
        for (int i = 0; i < 60; i++) {
            double middle = 0.5 * (low + high);
            double e = Allowed.number(
                    "restitution", restitution.at(middle), 0.0, 1.0, "check the restitution given to the head");
            if ((1.0 + e) * middle < target) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return 0.5 * (low + high);
    }

    /**
     * The bearing of the face normal where the ball was struck.
     *
     * @return the angle, right of the target positive
     */
    public Angle faceAngle() {
        return faceAngle;
    }

    /**
     * The elevation of the face normal where the ball was struck.
     *
     * @return the angle
     */
    public Angle dynamicLoft() {
        return dynamicLoft;
    }

    /**
     * The central delivery that gives this launch.
     *
     * @return the delivery; empty if the spin is at or above what the head's friction lets through, so that the ball slipped
     */
    public Optional<Delivery> delivery() {
        return delivery;
    }
}
