package dev.teeward.flight.air;

import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Length;
import dev.teeward.quantity.Speed;
import java.io.Serializable;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * A wind that grows with height, from the direction and speed reported for 10 m.
 *
 * <p>Two laws: logarithmic, {@code u(z) = u10 ln(z / z0) / ln(10 / z0)} with the {@link Roughness roughness length} z0 of the
 * country upwind; and the power law {@code u(z) = u10 (z / 10)^a}. Both are means over about ten minutes, in neutral air
 * over level open country. They do not hold beside trees or buildings, nor on the lee of a hill: nothing does.
 *
 * <p>Limits, each of them continuous in value, and in slope where the law begins:
 * <ul>
 *   <li>the logarithmic law is used above 20 z0 only (0.6 m over open grass), or above 10 m if z0 is larger than 0.5 m, so
 *       that 10 m always has the speed given; below that a parabola fades it to 0 at z0;
 *   <li>the power law is used above 1 m only; below that a parabola fades it to 0 at the ground (our choice, no source);
 *   <li>at and below those heights the air is at rest;
 *   <li>the direction is the same at every height, and neither law is bounded above.
 * </ul>
 *
 * <p>Heights are those of {@link Wind}: above the ball's starting point, which is taken to be the ground everywhere. From an
 * elevated tee the wind lower down is therefore too weak: below the tee it is 0.
 *
 * <pre>{@code
 * Wind wind = WindProfile.logLaw(degrees(0.0), metersPerSecond(5.0), Roughness.OPEN); // a headwind
 * wind.alongTarget(2.0);  // -3.614... m/s
 * wind.alongTarget(30.0); // -5.945... m/s
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class WindProfile implements Wind, Serializable {
    private static final long serialVersionUID = 1L;

    /** Where the wind comes from. */
    private final Angle direction;

    /** The speed at 10 m. */
    private final Speed speed;

    /** The same as a velocity. */
    private final UniformWind atTenMeters;

    /** The law of growth with height. */
    private final Shear shear;

    private WindProfile(Angle direction, Speed speed, Shear shear) {
        this.direction = direction;
        this.speed = speed;
        this.atTenMeters = UniformWind.from(direction, speed);
        this.shear = shear;
    }

    /**
     * A logarithmic profile over one of the roughness classes.
     *
     * @param direction where the wind comes from: 0 headwind, 90 deg from the right
     * @param speedAtTenMeters its speed 10 m above the ground, in [0, 50] m/s
     * @param roughness the country upwind
     * @return the wind
     * @throws IllegalArgumentException if the speed lies outside its range
     */
    public static WindProfile logLaw(Angle direction, Speed speedAtTenMeters, Roughness roughness) {
        return logLaw(direction, speedAtTenMeters, roughness.length());
    }

    /**
     * A logarithmic profile with a roughness length of one's own.
     *
     * @param direction where the wind comes from: 0 headwind, 90 deg from the right
     * @param speedAtTenMeters its speed 10 m above the ground, in [0, 50] m/s
     * @param roughnessLength z0, in [0.00001, 2] m; it is about a tenth of the height of what makes the ground rough
     * @return the wind
     * @throws IllegalArgumentException if the speed or the length lies outside its range
     */
    public static WindProfile logLaw(Angle direction, Speed speedAtTenMeters, Length roughnessLength) {
        double meters = roughnessLength.meters();
        if (!(meters >= 1e-5 && meters <= 2.0)) {
            throw new IllegalArgumentException("roughnessLength must be in [0.00001, 2] m (0.0004 to 78.7 in), but was "
                    + AirLimits.plain(meters) + " m (" + AirLimits.plain(roughnessLength.inches())
                    + " in); open grass has 0.03 m");
        }
        return new WindProfile(direction, speedAtTenMeters, new LogarithmicShear(meters));
    }

    /**
     * A power-law profile.
     *
     * @param direction where the wind comes from: 0 headwind, 90 deg from the right
     * @param speedAtTenMeters its speed 10 m above the ground, in [0, 50] m/s
     * @param exponent a, in [0, 0.5]; 1/7 is usual over open grass
     * @return the wind
     * @throws IllegalArgumentException if the speed or the exponent lies outside its range or is NaN
     * @see Roughness#powerLawExponent()
     */
    public static WindProfile powerLaw(Angle direction, Speed speedAtTenMeters, double exponent) {
        if (!(exponent >= 0.0 && exponent <= 0.5)) {
            throw new IllegalArgumentException("exponent must be in [0, 0.5], but was " + exponent
                    + (exponent > 1.0 && exponent <= 20.0
                            ? "; for one in " + exponent + " use 1.0 / " + exponent
                            : ""));
        }
        return new WindProfile(direction, speedAtTenMeters, new PowerShear(exponent + 0.0));
    }

    /**
     * A copy that blows otherwise over the same country.
     *
     * @param from where it comes from: 0 headwind, 90 deg from the right
     * @param atTenMeters its speed 10 m above the ground, in [0, 50] m/s
     * @return the copy
     * @throws IllegalArgumentException if the speed lies outside its range
     */
    public WindProfile withWind(Angle from, Speed atTenMeters) {
        return new WindProfile(from, atTenMeters, shear);
    }

    /**
     * Where the wind comes from.
     *
     * @return the direction as it was given
     */
    public Angle direction() {
        return direction;
    }

    /**
     * The speed 10 m above the ground.
     *
     * @return the speed as it was given
     */
    public Speed speedAtTenMeters() {
        return speed;
    }

    /**
     * The speed at any height.
     *
     * @param height the height above the ball's starting point
     * @return the speed, 0 at the ground and below
     */
    public Speed speedAt(Length height) {
        return Speed.ofMetersPerSecond(speed.metersPerSecond() * shear.ratio(height.meters()));
    }

    @Override
    public double alongTarget(double height) {
        return atTenMeters.along() * shear.ratio(height);
    }

    @Override
    public double towardsRight(double height) {
        return atTenMeters.right() * shear.ratio(height);
    }

    @Override
    public void velocities(double[] height, double[] along, double[] right) {
        for (int i = 0; i < height.length; i++) {
            double ratio = shear.ratio(height[i]);
            along[i] = atTenMeters.along() * ratio;
            right[i] = atTenMeters.right() * ratio;
        }
    }

    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof WindProfile that
                && direction.equals(that.direction)
                && speed.equals(that.speed)
                && shear.equals(that.shear);
    }

    @Override
    public int hashCode() {
        return Objects.hash(direction, speed, shear);
    }

    @Override
    public String toString() {
        String law = shear instanceof LogarithmicShear log
                ? "logarithmic over roughness length " + log.roughness() + " m"
                : "power law with exponent " + ((PowerShear) shear).exponent();
        return "wind from " + direction + ", " + speed + " at 10 m, " + law;
    }
}
