package dev.teeward.flight.impact;

/**
 * The coefficient of restitution of club and ball along the face normal: speed of separation over speed of approach.
 *
 * <pre>{@code
 * NormalRestitution.constant(0.83);
 * NormalRestitution.linear(0.744, 40.0, -0.0029);   // Penner (2001), wooden heads, from memory: 0.86 - 0.0029 v
 * NormalRestitution mine = v -> 0.83 / (1.0 + v / 1_000.0);
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

    /**
     * A coefficient that changes with the speed along a straight line, {@code e + slope (v - atSpeed)}, kept within [0, 1].
     *
     * @param coefficient the coefficient at one speed, in [0, 1]
     * @param atSpeed that speed of approach, in [0, 150] [m/s]
     * @param slope the change of the coefficient for each m/s, in [-0.05, 0.05], negative as a rule [s/m]
     * @return the line
     * @throws IllegalArgumentException if a number lies outside
     */
    static NormalRestitution linear(double coefficient, double atSpeed, double slope) {
        return new LinearRestitution(
                Allowed.number("restitution", coefficient, 0.0, 1.0, "it is a ratio of speeds, about 0.7 to 0.83"),
                Allowed.number("atSpeed", atSpeed, 0.0, 150.0, "it is in m/s; 1 mph is 0.447 m/s"),
                Allowed.number("slope", slope, -0.05, 0.05, "it is for each m/s, about -0.003"));
    }
}
