package dev.teeward.flight.ground;

import dev.teeward.quantity.Length;
import java.util.Objects;
import java.util.Optional;

/**
 * The ground that a ball comes down on, and the rule by which it bounces, skids, rolls and stops.
 *
 * <p><b>Bounce.</b> Each impact is one call of the {@link BounceModel}. Between impacts the ball flies without air.
 *
 * <p><b>End of the bouncing.</b> When the next bounce would rise less than the stop height over the ground, 5 mm by default
 * (Penner 2002, from memory), the ball stays down; so it does when it touches the ground more gently than by a fall from that height. It matters: a drive that runs 26.9 m with 5 mm runs 22.6 m with 50 mm.
 *
 * <p><b>Grazing the turf.</b> A ball that comes down too gently for a bounce and yet faster than 10 m/s along the ground (our
 * choice, no source) skims the turf, of which neither bounce nor roll speaks: its rest {@linkplain RollOut#restKnown is not
 * known}.
 *
 * <p><b>Skid and roll.</b> The ball then slides with the friction of the turf until its contact point is at rest, be it forwards
 * or, with backspin left, backwards; and rolls: {@code a = (g_t - rho g_n v/|v|) / (1 + k)} with the components of gravity along
 * and into the ground, 5/7 for a uniform ball. Rolling resistance is left out while it slides, and the ball stays on the
 * ground over crests. Where the ground is curved, the curvature turns the velocity and leaves the speed, by the balance of
 * energy: without resistance a ball that rolls at v climbs {@code 0.7 v^2/g}, however sharp the foot of the slope.
 *
 * <p><b>Grip.</b> Rolling on a slope a takes the friction {@code g_t k/(1 + k)}. Where that is more than {@code mu g_n}, which is
 * where {@code tan a > mu (1 + 1/k)}, 54 deg for a friction of 0.4, the contact point gives way downhill and the ball skids until the ground lets it roll again.
 *
 * <p><b>Rest.</b> It rests when its speed comes to zero where the tangent of the slope is no more than rho; where it is steeper, the
 * ball turns and rolls back down. A ball is followed for 60 s from its first touch; one that still moves then, because the ground is
 * steeper or because it has not lost its speed yet, carries the warning {@code does-not-stop}, which says which of the two it is.
 *
 * <pre>{@code
 * Ground ground = Ground.of(TurfClass.FAIRWAY).withTerrain(Terrain.plane(degrees(-2.0), degrees(0.0)));
 * Flight flight = FlightModel.standard().withGround(ground).fly(launch);
 * flight.total();       // Optional of carry and run
 * }</pre>
 *
 * <p>Immutable, and thread-safe if the terrain and the bounce model are.
 */
public final class Ground {
    private final Turf turf;
    private final Optional<Terrain> terrain;
    private final BounceModel bounce;
    private final double stopHeight;

    private Ground(Turf turf, Optional<Terrain> terrain, BounceModel bounce, double stopHeight) {
        this.turf = Objects.requireNonNull(turf, "turf");
        this.terrain = terrain;
        this.bounce = Objects.requireNonNull(bounce, "bounce");
        this.stopHeight = stopHeight;
    }

    /**
     * Level ground at the landing elevation, with the bounce of {@link Penner2002}.
     *
     * @param turf the turf, the same everywhere
     * @return the ground
     */
    public static Ground of(Turf turf) {
        return new Ground(turf, Optional.empty(), Penner2002.withDefaults(), 0.005);
    }

    /**
     * Level ground at the landing elevation, with the bounce of {@link Penner2002}.
     *
     * @param turf the kind of turf, the same everywhere
     * @return the ground
     */
    public static Ground of(TurfClass turf) {
        return of(turf.turf());
    }

    /**
     * A copy with another turf.
     *
     * @param value the turf, the same everywhere
     * @return the copy
     */
    public Ground withTurf(Turf value) {
        return new Ground(value, terrain, bounce, stopHeight);
    }

    /**
     * A copy with a shape of its own instead of the landing elevation.
     *
     * @param value the terrain
     * @return the copy
     */
    public Ground withTerrain(Terrain value) {
        return new Ground(turf, Optional.of(value), bounce, stopHeight);
    }

    /**
     * A copy with another model of the impact.
     *
     * @param value the bounce model
     * @return the copy
     */
    public Ground withBounce(BounceModel value) {
        return new Ground(turf, terrain, value, stopHeight);
    }

    /**
     * A copy with another end of the bouncing.
     *
     * @param value the height below which a bounce is none, in [1, 100] mm
     * @return the copy
     * @throws IllegalArgumentException if it lies outside
     */
    public Ground withStopHeight(Length value) {
        if (!(value.meters() >= 0.001 && value.meters() <= 0.1)) {
            throw new IllegalArgumentException(
                    "stopHeight must be in [1, 100] mm (0.04 to 3.9 in), but was " + value.millimeters() + " mm");
        }
        return new Ground(turf, terrain, bounce, value.meters());
    }

    /**
     * The turf.
     *
     * @return the turf
     */
    public Turf turf() {
        return turf;
    }

    /**
     * The shape of the ground.
     *
     * @return the terrain; empty if it is level at the landing elevation
     */
    public Optional<Terrain> terrain() {
        return terrain;
    }

    /**
     * The model of the impact.
     *
     * @return the bounce model
     */
    public BounceModel bounce() {
        return bounce;
    }

    /**
     * The end of the bouncing.
     *
     * @return the height below which a bounce is none
     */
    public Length stopHeight() {
        return Length.ofMeters(stopHeight);
    }

    /**
     * Runs a ball from its first touch of the ground to its rest.
     *
     * <p>{@code FlightModel.fly} calls this with the landing of a flight. On its own it serves chips, putts and tests.
     *
     * @param position where the ball touches the ground: x, y, z. Without a terrain, the ground is level at y [m]
     * @param velocity its velocity: x, y, z; one that does not go into the ground skids or rolls at once [m/s]
     * @param spin its angular velocity: x, y, z; backspin of a ball that moves along x turns about +z [rad/s]
     * @param radius the radius of the ball, in (0, 0.1] [m]
     * @param inertiaFactor its moment of inertia over {@code m r^2}, in [0.2, 2/3] [1]
     * @param gravity the acceleration of free fall, in [1, 30] [m/s2]
     * @return bounces, skid and roll
     * @throws IllegalArgumentException if a number is outside or not finite
     */
    public RollOut run(
            double[] position, double[] velocity, double[] spin, double radius, double inertiaFactor, double gravity) {
        within("radius", radius, Double.MIN_VALUE, 0.1);
        within("inertiaFactor", inertiaFactor, 0.2, 2.0 / 3.0);
        within("gravity", gravity, 1.0, 30.0);
        for (int i = 0; i < 3; i++) {
            within("position", position[i], -1e5, 1e5);
            within("velocity", velocity[i], -1e3, 1e3);
            within("spin", spin[i], -1e4, 1e4);
        }
        Terrain shape = terrain.orElseGet(() -> new PlaneTerrain(position[1], 0.0, 0.0));
        return new GroundRun(this, shape, stopHeight, radius, inertiaFactor, gravity).run(position, velocity, spin);
    }

    private static void within(String name, double value, double low, double high) {
        if (!(value >= low && value <= high)) {
            throw new IllegalArgumentException(
                    name + " must be in [" + low + ", " + high + "] in SI units, but was " + value);
        }
    }

    @Override
    public String toString() {
        return turf + "; " + terrain.map(Object::toString).orElse("level at the landing elevation") + "; "
                + bounce.reference() + "; bounces below " + stopHeight + " m are none";
    }
}
