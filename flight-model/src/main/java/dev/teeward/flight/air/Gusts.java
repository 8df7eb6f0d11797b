package dev.teeward.flight.air;

import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Speed;
import java.util.Objects;
import java.util.function.BiFunction;
import java.util.random.RandomGenerator;

/**
 * A wind that is not the same for each ball: draws one of the winds that a gusty day has, around its mean.
 *
 * <p><b>Model.</b> The wind of one flight is the mean wind times {@code 1 + I a}, plus the mean wind turned to its right times {@code 0.8 I b}, at
 * every height alike; a and b are independent standard normal numbers (drawn again beyond 3). I is the turbulence intensity, the standard
 * deviation of the speed over its mean. One gust holds for the whole flight: balls fly 3 to 7 s and eddies that matter to them last
 * longer, so this is the worst a gust can do; shorter gusts average out along the way and are not modelled, nor is vertical
 * wind. The ratio 0.8 of the crosswise deviation to the lengthwise is that of 1.92 to 2.39 friction velocities over level ground (Panofsky and
 * Dutton 1984, from memory).
 *
 * <p>Over level country I is about {@code 1 / ln(10 / z0)} at 10 m: 0.17 over open grass, 0.33 in parkland (the same source with a
 * von Karman constant of 0.4, rounded).
 *
 * <pre>{@code
 * Gusts gusts = Gusts.around(WindProfile.logLaw(degrees(30.0), mph(12.0), Roughness.OPEN), 0.17);
 * Wind one = gusts.draw(new SplittableRandom(1L));
 * }</pre>
 *
 * <p>Immutable and thread-safe; the random numbers come from the caller, so that the same seed gives the same winds.
 */
public final class Gusts {
    /** Crosswise over lengthwise standard deviation [1]. */
    private static final double CROSSWISE = 0.8;

    private static final double BEYOND = 3.0;

    private final Angle direction;
    private final Speed speed;
    private final double intensity;
    private final Wind mean;
    private final BiFunction<Angle, Speed, Wind> winds;

    private Gusts(Angle direction, Speed speed, double intensity, Wind mean, BiFunction<Angle, Speed, Wind> winds) {
        this.direction = Objects.requireNonNull(direction, "direction");
        this.speed = Objects.requireNonNull(speed, "speed");
        this.mean = mean;
        this.winds = winds;
        this.intensity = intensity;
        if (!(speed.metersPerSecond() <= 15.0)) {
            throw new IllegalArgumentException(
                    "speed of the mean wind must be in [0, 15] m/s (0-33.5 mph), but was " + speed);
        }
        if (!(intensity >= 0.0 && intensity <= 0.5)) {
            throw new IllegalArgumentException("intensity must be in [0, 0.5], but was " + intensity
                    + (intensity > 1.0 && intensity <= 50.0
                            ? "; " + AirLimits.plain(intensity) + " percent is " + AirLimits.plain(intensity / 100.0)
                            : ""));
        }
    }

    /**
     * Gusts around a mean wind that grows with height.
     *
     * @param mean the mean wind, of at most 15 m/s at 10 m
     * @param intensity the standard deviation of the speed over its mean, in [0, 0.5]
     * @return the gusts
     * @throws IllegalArgumentException if the speed or the intensity lies outside
     */
    public static Gusts around(WindProfile mean, double intensity) {
        return new Gusts(mean.direction(), mean.speedAtTenMeters(), intensity, mean, mean::withWind);
    }

    /**
     * Gusts around a mean wind that is the same at every height.
     *
     * @param direction where the mean wind comes from: 0 headwind, 90 deg from the right
     * @param speed its speed, in [0, 15] m/s
     * @param intensity the standard deviation of the speed over its mean, in [0, 0.5]
     * @return the gusts
     * @throws IllegalArgumentException if the speed or the intensity lies outside
     */
    public static Gusts around(Angle direction, Speed speed, double intensity) {
        return new Gusts(direction, speed, intensity, Wind.from(direction, speed), Wind::from);
    }

    /**
     * The mean wind.
     *
     * @return the wind without gusts
     */
    public Wind mean() {
        return mean;
    }

    /**
     * The turbulence intensity.
     *
     * @return the standard deviation of the speed over its mean, in [0, 0.5]
     */
    public double intensity() {
        return intensity;
    }

    /**
     * The wind of one flight.
     *
     * @param random where the chance comes from; two normal numbers are taken
     * @return a wind of the same kind as the mean wind
     */
    public Wind draw(RandomGenerator random) {
        double lengthwise = 1.0 + intensity * normal(random);
        double crosswise = CROSSWISE * intensity * normal(random);
        double size = Math.sqrt(lengthwise * lengthwise + crosswise * crosswise);
        double turn = StrictMath.atan2(crosswise, lengthwise);
        return winds.apply(
                Angle.ofRadians(direction.radians() + turn), Speed.ofMetersPerSecond(speed.metersPerSecond() * size));
    }

    private static double normal(RandomGenerator random) {
        double value = random.nextGaussian();
        while (Math.abs(value) > BEYOND) {
            value = random.nextGaussian();
        }
        return value;
    }

    @Override
    public String toString() {
        return mean + ", turbulence intensity " + intensity;
    }
}
