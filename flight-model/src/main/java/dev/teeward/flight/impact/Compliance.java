package dev.teeward.flight.impact;

/**
 * How the relative velocity at the contact answers to an impulse there, a symmetric positive definite matrix [1/kg]:
 * {@code K = (1/m + 1/M) 1 - [rb] Ib^-1 [rb] - [rh] Ih^-1 [rh]}, with [.] the cross-product matrix, rb from the ball's
 * centre and rh from the head's centre of mass to the contact. Axes: x along the face normal at the centre, y up the face,
 * z towards the toe.
 */
record Compliance(double xx, double yy, double zz, double xy, double xz, double yz) {

    /** Of a ball touched at {@code -radius * normal} from its centre, against a head; rh and its inertia may be absent. */
    static Compliance of(StruckBall ball, Vector normal, double headMass, Vector rh, ClubHead.Inertia inertia) {
        Compliance head = turning(rh, 1.0 / inertia.normal(), 1.0 / inertia.upFace(), 1.0 / inertia.heelToToe());
        Compliance free = withoutTurning(ball, normal, headMass);
        return new Compliance(
                free.xx + head.xx,
                free.yy + head.yy,
                free.zz + head.zz,
                free.xy + head.xy,
                free.xz + head.xz,
                free.yz + head.yz);
    }

    /** The same for a head that does not turn. */
    static Compliance withoutTurning(StruckBall ball, Vector normal, double headMass) {
        double sum = 1.0 / ball.mass() + 1.0 / headMass;
        double spin = 1.0 / ball.inertia();
        Compliance turn = turning(normal.times(-ball.radius()), spin, spin, spin);
        return new Compliance(sum + turn.xx, sum + turn.yy, sum + turn.zz, turn.xy, turn.xz, turn.yz);
    }

    /** -[r] D [r] for a diagonal D. */
    private static Compliance turning(Vector r, double dx, double dy, double dz) {
        return new Compliance(
                dy * r.z() * r.z() + dz * r.y() * r.y(),
                dx * r.z() * r.z() + dz * r.x() * r.x(),
                dx * r.y() * r.y() + dy * r.x() * r.x(),
                -dz * r.x() * r.y(),
                -dy * r.x() * r.z(),
                -dx * r.y() * r.z());
    }

    Vector times(Vector v) {
        return new Vector(
                xx * v.x() + xy * v.y() + xz * v.z(),
                xy * v.x() + yy * v.y() + yz * v.z(),
                xz * v.x() + yz * v.y() + zz * v.z());
    }

    /** The impulse that makes a change of relative velocity, by Cramer's rule: well conditioned at this size. */
    Vector solve(Vector change) {
        Vector a = new Vector(xx, xy, xz);
        Vector b = new Vector(xy, yy, yz);
        Vector c = new Vector(xz, yz, zz);
        Vector bc = b.cross(c);
        double determinant = a.dot(bc);
        return new Vector(change.dot(bc), change.dot(c.cross(a)), change.dot(a.cross(b))).times(1.0 / determinant);
    }
}
