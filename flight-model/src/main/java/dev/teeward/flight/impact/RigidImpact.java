package dev.teeward.flight.impact;

import dev.teeward.flight.Ball;
import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Handedness;
import dev.teeward.quantity.Speed;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.List;

/**
 * The impact of a rigid free head on a ball at rest, in three dimensions, anywhere on the face.
 *
 * <p>Momentum and angular momentum of both bodies are conserved; the relative velocity u of the contact changes by
 * {@code K P}, P the impulse on the ball and K the 3 x 3 compliance of both bodies. Along the face normal the restitution e
 * holds, {@code u1.n = -e u0.n}; along the face the ball grips, {@code u1 = -et u0}, or, where that needs more than friction
 * gives, it slips with {@code |Pt| = mu Pn} in the direction in which it would have gripped. Velocity and spin follow as
 * {@code P/m} and {@code I^-1 (r x P)}.
 *
 * <p>For a central strike on a head that cannot turn this is the textbook result, psi the spin loft, V the club speed and
 * k = 2/5 for a uniform ball:
 *
 * <pre>
 *   vn  = (1 + e) V cos(psi) / (1 + m/M)
 *   vt  = (1 + et) c V sin(psi) / (1 + c m/M),   c = k/(1 + k) = 2/7,   at most mu vn
 *   r w = vt/k
 * </pre>
 *
 * <p>Off-centre, the head turns during contact: ball speed is lost, and the face moving sideways or upwards gives the ball
 * the opposite spin (gear effect); bulge and roll turn the normal at the strike, by roll first, then by bulge. An inertia
 * with a depth of the centre of mass lowers the spin of a central strike too, since the head gives way.
 *
 * <p>The spin axis is always perpendicular to the launch velocity: a ball at rest that is touched at one point gets its
 * spin from {@code n x P} and its velocity from {@code P}, so that nothing has to be dropped.
 *
 * <p>Sources, from memory: Daish (1972); Cochran and Stobbs (1968); Winfield and Tan (1994) for three dimensions; Cross for
 * the tangential restitution. Left out: the shaft (in Proceedings (MDPI) 49(1):47, 2020, adding less than 3 g to the head
 * corrected ball speed), the ball's deformation, restitution that falls away from the centre, and the rotation of the head
 * before impact. A deep head whose face gives nothing back along itself, swung downwards, gets too much spin in consequence,
 * and the result warns: {@code spin-too-high-with-this-head}.
 *
 * <pre>{@code
 * Impact impact = RigidImpact.standard().strike(delivery, head);
 * impact.launch();
 * impact.smashFactor();
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class RigidImpact implements ImpactModel {
    private static final RigidImpact STANDARD = new RigidImpact(StruckBall.STANDARD);

    /** Deeper than any head but a driver's [m]: common practice, no source. */
    private static final double DEEP = 0.030;

    private static final Warning TOO_MUCH_SPIN = Warning.of(
            "spin-too-high-with-this-head",
            "A head with its centre of mass this deep and no restitution along the face gets too much spin when swung downwards:"
                    + " at 113 mph and an attack angle of -1.3 deg 30 to 37 percent above a typical 2,690 rpm (from memory), and more"
                    + " the steeper it comes down. Carry and total are those of that spin.");

    private final StruckBall ball;

    private RigidImpact(StruckBall ball) {
        this.ball = ball;
    }

    /**
     * The model with the ball of the rules: 45.93 g, 42.67 mm, uniform inside.
     *
     * @return the model
     */
    public static RigidImpact standard() {
        return STANDARD;
    }

    /**
     * The model with another ball; only its mass, diameter and moment of inertia matter here.
     *
     * @param ball the ball
     * @return a copy
     */
    public RigidImpact withBall(Ball ball) {
        return withBall(StruckBall.of(ball));
    }

    RigidImpact withBall(StruckBall value) {
        return new RigidImpact(value);
    }

    /**
     * Strikes a ball at rest.
     *
     * @param delivery how the head arrives
     * @param head what arrives; an off-centre strike needs its inertia
     * @return the launch, with a warning {@code energy-gained} if the given coefficients contradict each other, and {@code
     *     spin-too-high-with-this-head} where a head with its centre of mass 30 mm deep or more and a restitution along the face of
     *     0 comes down on the ball
     * @throws IllegalArgumentException if the face moves away from the ball, if the strike is off-centre and the head has no
     *     inertia, if the restitution returned by the head is outside [0, 1], or if the launch is
     *     outside the range of {@link dev.teeward.flight.LaunchConditions}
     */
    @Override
    public Impact strike(Delivery delivery, ClubHead head) {
        // Everything is solved along the axes of the face, in which both hands look the same.
        Face face = Face.of(delivery, head.handedness());
        double toe = delivery.strikeToe().meters();
        double up = delivery.strikeUp().meters();
        Vector normal = curved(toe * head.bulgeCurvature(), up * head.rollCurvature());
        Vector headDirection = face.toFace(delivery.headDirection());
        double speed = delivery.clubSpeed().metersPerSecond();
        Vector before = headDirection.times(-speed);
        double approach = -before.dot(normal);
        if (!(approach > 0.0)) {
            throw new IllegalArgumentException(
                    "the face must move towards the ball, but the spin loft was 90 deg or more: dynamicLoft "
                            + delivery.dynamicLoft() + ", attackAngle " + delivery.attackAngle() + ", faceToPath "
                            + delivery.faceToPath() + "; check the signs");
        }
        double e = head.restitution().at(approach);
        if (!(e >= 0.0 && e <= 1.0)) {
            throw new IllegalArgumentException("restitution must be in [0, 1], but was " + e + " at a normal speed of "
                    + approach + " m/s; check the restitution given to the head");
        }
        Compliance k = compliance(head, normal, toe, up);
        Vector change = change(before, normal, e, head.tangentialRestitution());
        Vector gripping = k.solve(change);
        double normalPart = gripping.dot(normal);
        Vector along = gripping.plus(-normalPart, normal);
        double sideways = along.norm();
        boolean slips = sideways > head.friction() * normalPart;
        Vector impulse = slips
                ? slipping(k, normal, along.times(1.0 / sideways), head.friction(), (1.0 + e) * approach)
                : gripping;

        Vector after = before.plus(1.0, k.times(impulse));
        double loss = -0.5 * (impulse.dot(before) + impulse.dot(after));
        double headMass = head.mass().kilograms();
        Vector headAfter = headDirection.times(speed).plus(-1.0 / headMass, impulse);
        Vector p = face.fromFace(impulse);
        Vector n = face.fromFace(normal);
        Vector velocity = p.times(1.0 / ball.mass());
        Vector spin = n.cross(p).times(-ball.radius() / ball.inertia());
        return Impact.builder(LaunchFrame.launch(velocity, spin), delivery)
                .spinLoft(Angle.ofRadians(Delivery.between(normal, headDirection)))
                .slipped(slips)
                .headSpeedAfter(Speed.ofMetersPerSecond(headAfter.norm()))
                .energyLoss(loss)
                .warnings(warnings(delivery, head, loss, 0.5 * headMass * speed * speed))
                .build();
    }

    /** The normal of the face where it is turned by both angles [rad]: up by roll, then towards the toe by bulge. */
    private static Vector curved(double bulge, double roll) {
        return new Vector(Math.cos(bulge) * Math.cos(roll), Math.cos(bulge) * Math.sin(roll), Math.sin(bulge));
    }

    private Compliance compliance(ClubHead head, Vector normal, double toe, double up) {
        double headMass = head.mass().kilograms();
        ClubHead.Inertia inertia = head.inertia();
        if (inertia != null) {
            Vector contact = new Vector(head.massCenterDepth().meters(), up, toe);
            return Compliance.of(ball, normal, headMass, contact, inertia);
        }
        if (toe != 0.0 || up != 0.0) {
            throw new IllegalArgumentException("an off-centre strike (toe " + 1000.0 * toe + " mm, up " + 1000.0 * up
                    + " mm) needs the inertia of the head; give ClubHead.builder().inertia(..), or a delivery without"
                    + " strike for the central result");
        }
        return Compliance.withoutTurning(ball, normal, headMass);
    }

    /** What the contact's velocity changes by if the ball grips: by (1 + e) along the normal, by (1 + et) along the face. */
    private static Vector change(Vector before, Vector normal, double e, double et) {
        return before.times(-(1.0 + et)).plus((et - e) * before.dot(normal), normal);
    }

    /**
     * The impulse at the limit of friction, in the direction of the gripping one. The normal response to it is positive: it
     * is linear in the friction, positive without, and positive at the friction that gripping would take.
     */
    private static Vector slipping(Compliance k, Vector normal, Vector direction, double friction, double change) {
        Vector line = normal.plus(friction, direction);
        return line.times(change / normal.dot(k.times(line)));
    }

    private static List<Warning> warnings(Delivery delivery, ClubHead head, double loss, double energyBefore) {
        List<Warning> found = new ArrayList<>(0);
        if (loss < -1e-12 * energyBefore) {
            found.add(Warning.of(
                    "energy-gained",
                    "The restitution given is too high for this off-centre strike: the impact would create energy."));
        }
        if (head.massCenterDepth().meters() >= DEEP
                && head.tangentialRestitution() == 0.0
                && delivery.attackAngle().radians() < 0.0) {
            found.add(TOO_MUCH_SPIN);
        }
        return found;
    }

    /** The axes of the face in the frame of the target: normal, up the face, towards the toe. */
    private record Face(Vector normal, Vector up, Vector toe) {
        static Face of(Delivery delivery, Handedness hand) {
            LaunchFrame axes = LaunchFrame.of(
                    delivery.dynamicLoft().radians(), delivery.faceAngle().radians());
            return new Face(axes.along(), axes.up(), axes.right().times(hand.sign()));
        }

        Vector toFace(Vector v) {
            return new Vector(v.dot(normal), v.dot(up), v.dot(toe));
        }

        Vector fromFace(Vector v) {
            return normal.times(v.x()).plus(v.y(), up).plus(v.z(), toe);
        }
    }
}
