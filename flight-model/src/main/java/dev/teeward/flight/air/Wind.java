package dev.teeward.flight.air;

import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Speed;

/**
 * The horizontal velocity of the air, as a function of the height above the ball's starting point.
 *
 * <p>Frame: x to the target, y up, z right. A wind is <em>named</em> by where it comes from: 0 deg is a headwind, 90 deg
 * comes from the right. The methods here give the velocity itself, so a headwind has a negative {@link #alongTarget}.
 *
 * <p>{@link #from} is the same at every height; {@link WindProfile} grows with height. A wind of one's own is one class with two methods in SI doubles. They are called several times in every step: they
 * must be thread-safe, must return finite numbers for every finite height, negative ones too, and should be continuous.
 *
 * <pre>{@code
 * Wind breeze = Wind.from(degrees(30.0), mph(8.0)); // mostly against, a little from the right
 * breeze.alongTarget(10.0);                         // -3.097... m/s
 * }</pre>
 */
public interface Wind {
    /**
     * The velocity of the air towards the target.
     *
     * @param height the height above the ball's starting point [m]
     * @return the x component of the velocity of the air, negative for a headwind [m/s]
     */
    double alongTarget(double height);

    /**
     * The velocity of the air towards the right.
     *
     * @param height the height above the ball's starting point [m]
     * @return the z component of the velocity of the air, negative when it comes from the right [m/s]
     */
    double towardsRight(double height);

    /**
     * Many heights at once; the same numbers, bit for bit, as the two methods above.
     *
     * @param height the heights [m]
     * @param along receives the x components [m/s]
     * @param right receives the z components [m/s]
     */
    default void velocities(double[] height, double[] along, double[] right) {
        for (int i = 0; i < height.length; i++) {
            along[i] = alongTarget(height[i]);
            right[i] = towardsRight(height[i]);
        }
    }

    /**
     * Air at rest.
     *
     * @return no wind
     */
    static Wind calm() {
        return UniformWind.CALM;
    }

    /**
     * The same wind at every height.
     *
     * @param direction where it comes from: 0 headwind, 90 deg from the right, 180 deg tailwind, -90 deg from the left
     * @param speed its speed, in [0, 50] m/s
     * @return the wind
     * @throws IllegalArgumentException if the speed is negative or above 50 m/s (112 mph)
     */
    static Wind from(Angle direction, Speed speed) {
        return UniformWind.from(direction, speed);
    }
}
