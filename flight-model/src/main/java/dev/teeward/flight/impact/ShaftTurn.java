package dev.teeward.flight.impact;

import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Handedness;

/**
 * What turning the club about its shaft does to the face: it closes and delofts together.
 *
 * <p>The shaft leans towards the golfer by the lie angle above the horizontal, in the plane across the target line. Turning
 * the head about it by g moves a square face of loft L by
 *
 * <pre>
 *   face angle     dF = -g sin(lie)
 *   dynamic loft   dL = -g cos(lie)     so that dL = dF cot(lie)
 * </pre>
 *
 * <p>for small g (right-handed; closing is g positive, F right positive); the turn itself is exact for any g. At a lie of 62 deg each
 * degree that the face closes takes 0.53 deg of loft. Shaft lean towards the target and a forward or backward bend are left
 * out. Derived from the geometry; that a face closed by the shaft also launches lower, with less spin and a little more ball
 * speed, is common practice, no source.
 *
 * <pre>{@code
 * Delivery closed = ShaftTurn.of(degrees(2.0), degrees(62.0), Handedness.RIGHT).applyTo(delivery);
 * closed.faceAngle();   // 1.77 deg farther left
 * closed.dynamicLoft(); // 0.94 deg less
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class ShaftTurn {
    private final double turn;
    private final Vector shaft;

    private ShaftTurn(double turn, Vector shaft) {
        this.turn = turn;
        this.shaft = shaft;
    }

    /**
     * A turn about the shaft.
     *
     * @param closed by how much the shaft is turned, closing positive, in [-45, 45] deg
     * @param lie the angle of the shaft above the horizontal at impact, in [40, 90] deg
     * @param hand the golfer's
     * @return the turn
     * @throws IllegalArgumentException if an angle lies outside
     */
    public static ShaftTurn of(Angle closed, Angle lie, Handedness hand) {
        double angle = Allowed.angle("closed", closed, -45.0, 45.0).radians();
        double up = Allowed.angle("lie", lie, 40.0, 90.0).radians();
        // A right-handed golfer stands left of the ball.
        Vector shaft = new Vector(0.0, Math.sin(up), -hand.sign() * Math.cos(up));
        return new ShaftTurn(hand.sign() * angle, shaft);
    }

    /**
     * The delivery with the face turned about the shaft, the head's velocity unchanged.
     *
     * @param delivery a delivery
     * @return the same with the turned face
     * @throws IllegalArgumentException if the turned face leaves the range of {@link Delivery}
     */
    public Delivery applyTo(Delivery delivery) {
        Vector n = delivery.faceNormal();
        double cos = Math.cos(turn);
        // Rodrigues' formula.
        Vector turned = n.times(cos).plus(Math.sin(turn), shaft.cross(n)).plus((1.0 - cos) * shaft.dot(n), shaft);
        return delivery.toBuilder()
                .faceAngle(Angle.ofRadians(turned.azimuth()))
                .dynamicLoft(Angle.ofRadians(turned.elevation()))
                .build();
    }
}
