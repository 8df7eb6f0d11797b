package dev.teeward.flight.ground;

import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Length;

/**
 * The shape of the ground: its elevation above the ball's starting point, and how steeply it rises.
 *
 * <p>Frame: x to the target, y up, z right. A terrain of one's own is one method in SI doubles, and a lambda will do; who knows
 * the slopes in closed form overrides those methods too. All of them must be thread-safe, must return finite numbers for
 * every finite place, and the elevation must be continuous. At the start the terrain must not lie above the ball.
 *
 * <pre>{@code
 * Terrain uphill = Terrain.plane(degrees(3.0), degrees(0.0));
 * uphill.elevation(100.0, 0.0);                                  // 5.24... m
 * Terrain valley = (x, z) -> -5.0 * (1.0 - 1.0 / (1.0 + x * x / 1e4));
 * }</pre>
 */
@FunctionalInterface
public interface Terrain {
    /**
     * The elevation of the ground.
     *
     * @param x the distance towards the target [m]
     * @param z the distance to the right [m]
     * @return the height above the ball's starting point, negative for lower ground [m]
     */
    double elevation(double x, double z);

    /**
     * How steeply the ground rises towards the target.
     *
     * <p>The default is the central difference over 10 cm.
     *
     * @param x the distance towards the target [m]
     * @param z the distance to the right [m]
     * @return the derivative of the elevation by x, uphill positive [1]
     */
    default double slopeAlongTarget(double x, double z) {
        return (elevation(x + 0.05, z) - elevation(x - 0.05, z)) / 0.1;
    }

    /**
     * How steeply the ground rises towards the right.
     *
     * <p>The default is the central difference over 10 cm.
     *
     * @param x the distance towards the target [m]
     * @param z the distance to the right [m]
     * @return the derivative of the elevation by z, uphill positive [1]
     */
    default double slopeTowardsRight(double x, double z) {
        return (elevation(x, z + 0.05) - elevation(x, z - 0.05)) / 0.1;
    }

    /**
     * The upward unit normal of the ground.
     *
     * @param x the distance towards the target [m]
     * @param z the distance to the right [m]
     * @param normal receives its components x, y and z; y is positive [1]
     */
    default void normal(double x, double z, double[] normal) {
        double along = slopeAlongTarget(x, z);
        double right = slopeTowardsRight(x, z);
        double up = 1.0 / Math.sqrt(1.0 + along * along + right * right);
        normal[0] = -along * up;
        normal[1] = up;
        normal[2] = -right * up;
    }

    /**
     * Level ground at the height of the start.
     *
     * @return the terrain
     */
    static Terrain level() {
        return PlaneTerrain.LEVEL;
    }

    /**
     * Level ground, higher or lower than the start.
     *
     * @param elevation the elevation above the start, negative for lower ground, in [-1000, 0] m or, for a ball that starts
     *     from lower ground, up to 1000 m
     * @return the terrain
     * @throws IllegalArgumentException if it lies outside [-1000, 1000] m
     */
    static Terrain level(Length elevation) {
        return PlaneTerrain.level(elevation);
    }

    /**
     * A plane through the starting point.
     *
     * @param towardsTarget how steeply it rises towards the target, uphill positive, in [-45, 45] deg
     * @param towardsRight how steeply it rises towards the right, uphill positive, in [-45, 45] deg
     * @return the terrain
     * @throws IllegalArgumentException if an angle lies outside
     */
    static Terrain plane(Angle towardsTarget, Angle towardsRight) {
        return PlaneTerrain.of(towardsTarget, towardsRight);
    }
}
