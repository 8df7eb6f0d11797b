package dev.teeward.flight.impact;

/**
 * The coefficient of restitution of club and ball along the face normal: speed of separation over speed of approach.
 *
 * <pre>{@code
 * NormalRestitution.constant(0.83);
 * NormalRestitution wood = v -> 0.86 - 0.0029 * v;  // Penner (2001), wooden heads, from memory
 * }</pre>
 *
 * <p>That restitution falls as the speed rises is well known (USGA, "What happens in the collision between club and ball",
 * 2025, in words only); by how much depends on ball and head, so a constant for the speed at hand is the default. An
 * implementation must be thread-safe.
 */
@FunctionalInterface
public interface NormalRestitution {
    /**
     * The coefficient at a speed of approach.
     *
     * @param normalSpeed the speed of approach along the face normal, positive [m/s]
     * @return the coefficient, in [0, 1]
     */
    double at(double normalSpeed);

    /**
     * The same coefficient at every speed.
     *
     * @param coefficient the coefficient, in [0, 1]; a driver at the limit of the rules has 0.83 (from memory)
     * @return the constant
     * @throws IllegalArgumentException if it lies outside
     */
    static NormalRestitution constant(double coefficient) {
        return new ConstantRestitution(
                Allowed.number("restitution", coefficient, 0.0, 1.0, "it is a ratio of speeds, about 0.7 to 0.83"));
    }
}
