package dev.teeward.flight.ground;

/**
 * The impact of a rigid ball on a plane with friction, in three dimensions.
 *
 * <p>The contact point slips by {@code s = v_t - r omega x n}. The tangential impulse per mass is
 * {@code min(mu (1 + e) v_n, |s| k / (1 + k))} against s: sliding throughout, or rolling at the end (Daish 1972, whose two
 * dimensions these are three of). The spin about the normal is kept.
 */
final class RigidContact {
    private RigidContact() {}

    static void apply(double[] m, double[] n, double e, double friction, double radius, double k) {
        double into = -(m[0] * n[0] + m[1] * n[1] + m[2] * n[2]);
        double sx = m[0] + into * n[0] - radius * (m[4] * n[2] - m[5] * n[1]);
        double sy = m[1] + into * n[1] - radius * (m[5] * n[0] - m[3] * n[2]);
        double sz = m[2] + into * n[2] - radius * (m[3] * n[1] - m[4] * n[0]);
        double slip = Math.sqrt(sx * sx + sy * sy + sz * sz);
        double normalChange = (1.0 + e) * into;
        double tangential = Math.min(friction * normalChange, slip * k / (1.0 + k));
        double scale = slip > 0.0 ? tangential / slip : 0.0;
        m[0] += normalChange * n[0] - scale * sx;
        m[1] += normalChange * n[1] - scale * sy;
        m[2] += normalChange * n[2] - scale * sz;
        double turn = scale / (k * radius);
        m[3] += turn * (n[1] * sz - n[2] * sy);
        m[4] += turn * (n[2] * sx - n[0] * sz);
        m[5] += turn * (n[0] * sy - n[1] * sx);
    }
}
