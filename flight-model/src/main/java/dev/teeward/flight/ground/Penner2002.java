package dev.teeward.flight.ground;

import dev.teeward.quantity.Angle;

/**
 * A ball that dents the turf: the impact of {@link Daish1972} on a surface tilted up against the ball.
 *
 * <pre>
 * tilt  theta = 15.4 deg (v / 18.6 m/s) (phi / 44.4 deg)     phi from the normal of the ground
 * e(vn) = 0.510 - 0.0375 vn + 0.000903 vn^2, 0.120 above 20 m/s   vn into the tilted surface [m/s]
 * </pre>
 *
 * <p>Both are multiplied by a factor of the {@link Turf}, 1 for the fairway that they were fitted to.
 *
 * <p><b>Range.</b> The tilt was set at one measured impact, 18.6 m/s at 44.4 deg, and is a straight line through it and through 0 for a
 * vertical drop. A drive that lands at 28 m/s, 25 deg below the horizontal, gets 34 deg, which looks too much; so a cap can be
 * set with {@link #withTiltCap}. There is none by default, nor a published one. A tilt above 30 deg by the law, cap or not, makes the
 * warning {@code bounce-extrapolated}; a topped ball, which grazes the turf, is stopped far too soon. Compared with more than 1000 measured bounces a rigid
 * model of this kind fits less well than a fitted map from landing to lift-off (Biber and others 2023, abstract). Sloping ground and a ball that
 * spins about any axis are our extension: the tilt is against the ball's direction along the ground.
 *
 * <pre>{@code
 * Penner2002 model = Penner2002.withDefaults();
 * model.tilt(18.6, degrees(44.4), TurfClass.FAIRWAY.turf()).degrees(); // 15.4
 * Ground ground = Ground.of(TurfClass.FAIRWAY).withBounce(model.withTiltCap(degrees(25.0)));
 * }</pre>
 *
 * <p>Source: A. R. Penner, The run of a golf ball, Can. J. Phys. 80 (2002) 931; formulas and constants from memory. That the
 * tilt is linear in speed and angle is confirmed by J. J. Biber and others, Sports Eng. 26 (2023). Immutable and
 * thread-safe.
 */
public final class Penner2002 implements BounceModel {
    private static final double REFERENCE_TILT = 15.4;
    private static final double REFERENCE_SPEED = 18.6;
    private static final double REFERENCE_ANGLE = 44.4;
    private static final double TRUSTED_TILT = 30.0;
    private static final double FAST = 20.0;
    private static final double FAST_RESTITUTION = 0.120;
    private static final double DEGREE = Math.PI / 180.0;
    private static final Penner2002 DEFAULTS = new Penner2002(Math.PI / 2.0);

    private final double tiltCap;

    private Penner2002(double tiltCap) {
        this.tiltCap = tiltCap;
    }

    /**
     * The model without a cap on the tilt.
     *
     * @return the model
     */
    public static Penner2002 withDefaults() {
        return DEFAULTS;
    }

    /**
     * A copy in which the tilt goes no further than a cap.
     *
     * @param value the largest tilt, in [0, 90] deg; 90 deg is no cap in effect
     * @return the copy
     * @throws IllegalArgumentException if it lies outside
     */
    public Penner2002 withTiltCap(Angle value) {
        if (!(value.degrees() >= 0.0 && value.degrees() <= 90.0)) {
            throw new IllegalArgumentException("tiltCap must be in [0, 90] deg (0 to 1.571 rad), but was " + value);
        }
        return new Penner2002(Math.min(value.radians(), Math.PI / 2.0));
    }

    /**
     * The tilt of the surface that the turf makes under the ball.
     *
     * @param speed the speed of the ball [m/s]
     * @param fromNormal the angle between its path and the normal of the ground, in [0, 90] deg
     * @param turf the turf
     * @return the tilt, in [0, 90] deg
     */
    public Angle tilt(double speed, Angle fromNormal, Turf turf) {
        return Angle.ofRadians(tilt(speed, fromNormal.radians(), turf.tiltFactor()));
    }

    private double tilt(double speed, double fromNormal, double factor) {
        double law = REFERENCE_TILT
                * DEGREE
                * (speed / REFERENCE_SPEED)
                * (fromNormal / (REFERENCE_ANGLE * DEGREE))
                * factor;
        return Math.min(Math.min(law, tiltCap), Math.PI / 2.0);
    }

    /**
     * The coefficient of restitution.
     *
     * @param normalSpeed the speed into the tilted surface [m/s]
     * @param turf the turf
     * @return e, in [0, 1]
     */
    public double restitution(double normalSpeed, Turf turf) {
        double law = normalSpeed > FAST
                ? FAST_RESTITUTION
                : 0.510 - 0.0375 * normalSpeed + 0.000903 * normalSpeed * normalSpeed;
        return Math.min(1.0, law * turf.restitutionFactor());
    }

    /** Whether the tilt by the law is at most 30 deg, about twice that of the impact it was set at (our choice, no source). */
    @Override
    public boolean covers(double speed, double fromNormal, Turf turf) {
        return new Penner2002(Math.PI / 2.0).tilt(speed, fromNormal, turf.tiltFactor()) <= TRUSTED_TILT * DEGREE;
    }

    @Override
    public void bounce(double[] motion, double[] normal, Turf turf, double radius, double inertiaFactor) {
        double into = -(motion[0] * normal[0] + motion[1] * normal[1] + motion[2] * normal[2]);
        double tx = motion[0] + into * normal[0];
        double ty = motion[1] + into * normal[1];
        double tz = motion[2] + into * normal[2];
        double along = Math.sqrt(tx * tx + ty * ty + tz * tz);
        double speed = Math.sqrt(along * along + into * into);
        double theta = tilt(speed, StrictMath.atan2(along, into), turf.tiltFactor());
        double up = StrictMath.cos(theta);
        double back = along > 0.0 ? StrictMath.sin(theta) / along : 0.0;
        double[] tilted = {
            up * normal[0] - back * tx, up * normal[1] - back * ty, up * normal[2] - back * tz,
        };
        double e = restitution(into * up + along * StrictMath.sin(theta), turf);
        RigidContact.apply(motion, tilted, e, turf.friction(), radius, inertiaFactor);
    }

    @Override
    public String reference() {
        return "Penner 2002, from memory"
                + (tiltCap < Math.PI / 2.0 ? ", tilt at most " + tiltCap / DEGREE + " deg" : "");
    }

    @Override
    public String toString() {
        return reference();
    }
}
