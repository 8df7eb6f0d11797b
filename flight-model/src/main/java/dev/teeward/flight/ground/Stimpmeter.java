package dev.teeward.flight.ground;

import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Length;

/**
 * Green speed: how far a ball rolls from the ramp that greens are measured with.
 *
 * <p>{@code a = v0^2 / (2 S)} with the reading S and the release speed v0 of 6.00 ft/s, 1.83 m/s (as printed in descriptions of the
 * instrument; another teaching text has 6.4 ft/s, which makes the deceleration 14 percent larger). The rolling resistance of {@link Turf} is
 * {@code (7/5) a / g}, {@code 0.784 / S} for S in feet. A reading is uncertain by about 12 in (Science and Golf III, 1998, abstract).
 *
 * <pre>{@code
 * Stimpmeter.deceleration(feet(10.0));                // 0.549 m/s2
 * Stimpmeter.level(feet(12.0), feet(8.0)).feet();     // 9.6 ft: down and up a slope
 * Turf.ofStimp(feet(10.0)).rollingResistance();       // 0.0784
 * }</pre>
 *
 * <p>Stateless and thread-safe.
 */
public final class Stimpmeter {
    /** The speed at which the ball leaves the ramp [m/s]. */
    public static final double RELEASE_SPEED = 1.83;

    private static final double STANDARD_GRAVITY = 9.80665;

    private Stimpmeter() {}

    /**
     * The deceleration of a ball that rolls on the level.
     *
     * @param reading the distance the ball rolls, in [2, 20] ft
     * @return the deceleration [m/s2]
     * @throws IllegalArgumentException if the reading lies outside
     */
    public static double deceleration(Length reading) {
        if (!(reading.feet() >= 2.0 - 1e-9 && reading.feet() <= 20.0 + 1e-9)) {
            throw new IllegalArgumentException(
                    "reading must be in [2, 20] ft (0.61 to 6.10 m), but was " + reading.feet() + " ft");
        }
        return RELEASE_SPEED * RELEASE_SPEED / (2.0 * reading.meters());
    }

    /**
     * The rolling resistance of the turf that gives a reading, under standard gravity.
     *
     * @param reading the distance the ball rolls, in [2, 20] ft
     * @return the resistance [1]
     * @throws IllegalArgumentException if the reading lies outside
     */
    public static double rollingResistance(Length reading) {
        return 1.4 * deceleration(reading) / STANDARD_GRAVITY;
    }

    /**
     * The reading on the level, from two readings on a slope: {@code 2 up down / (up + down)} (A. Brede, as quoted in the
     * USGA's manual of course rating).
     *
     * @param down the distance rolled down the slope
     * @param up the distance rolled up it
     * @return the reading on the level
     * @throws IllegalArgumentException if one of the two is not positive
     */
    public static Length level(Length down, Length up) {
        if (!(down.meters() > 0.0 && up.meters() > 0.0)) {
            throw new IllegalArgumentException("down and up must be above 0, but were " + down + " and " + up);
        }
        return Length.ofMeters(2.0 * up.meters() * down.meters() / (up.meters() + down.meters()));
    }

    /**
     * The steepest slope on which a ball that rolls down still stops: its tangent is the rolling resistance.
     *
     * @param reading the reading, in [2, 20] ft
     * @return the slope: 4.5 deg at 10 ft
     * @throws IllegalArgumentException if the reading lies outside
     */
    public static Angle steepestStop(Length reading) {
        return Angle.ofRadians(StrictMath.atan(rollingResistance(reading)));
    }
}
