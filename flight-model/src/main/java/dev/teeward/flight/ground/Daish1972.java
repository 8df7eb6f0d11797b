package dev.teeward.flight.ground;

/**
 * A rigid ball on rigid turf: one coefficient of restitution, and friction that slides or grips.
 *
 * <p>With the tangential velocity v_t, the velocity v_n into the turf, backspin w and {@code s = v_t + r w}, the ball slides
 * throughout if the friction is below {@code mu_c = 2 s / (7 (1 + e) v_n)}:
 *
 * <pre>
 * slides   v_t' = v_t - mu (1 + e) v_n       w' = w - (5 mu / (2 r)) (1 + e) v_n
 * rolls    v_t' = (5/7) v_t - (2/7) r w      w' = -v_t' / r
 * both     v_n' = e v_n
 * </pre>
 *
 * <p>For a gripping ball that means backwards if {@code r w > (5/2) v_t}. On real turf, which gives way, drives run far too
 * long with this; it is here for firm surfaces and as the closed form that {@link Penner2002} contains. Of the turf only the
 * friction is used.
 *
 * <pre>{@code
 * BounceModel concrete = Daish1972.of(0.7);
 * Ground path = Ground.of(Turf.of(0.3, 0.02)).withBounce(concrete);
 * }</pre>
 *
 * <p>Source: C. B. Daish, The Physics of Ball Games (1972), from memory. Immutable and thread-safe.
 */
public final class Daish1972 implements BounceModel {
    private final double restitution;

    private Daish1972(double restitution) {
        this.restitution = restitution;
    }

    /**
     * The model with a coefficient of restitution.
     *
     * @param restitution e, the speed away from the turf over that into it, in [0, 1]
     * @return the model
     * @throws IllegalArgumentException if it lies outside or is NaN
     */
    public static Daish1972 of(double restitution) {
        if (!(restitution >= 0.0 && restitution <= 1.0)) {
            throw new IllegalArgumentException("restitution must be in [0, 1], but was " + restitution);
        }
        return new Daish1972(restitution);
    }

    @Override
    public void bounce(double[] motion, double[] normal, Turf turf, double radius, double inertiaFactor) {
        RigidContact.apply(motion, normal, restitution, turf.friction(), radius, inertiaFactor);
    }

    @Override
    public String reference() {
        return "Daish 1972, restitution " + restitution;
    }

    @Override
    public String toString() {
        return reference();
    }
}
