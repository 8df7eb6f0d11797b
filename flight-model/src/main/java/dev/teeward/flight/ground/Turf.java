package dev.teeward.flight.ground;

import dev.teeward.quantity.Length;
import java.io.Serializable;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * What the ground is made of: friction, rolling resistance, and how hard it is beside the fairway that {@link Penner2002} was
 * fitted to.
 *
 * <p>A rolling ball loses {@code (5/7) rho g} of speed each second, with the rolling resistance rho; a skidding one
 * {@code mu g}. Firmer turf has a restitution factor above 1 and a tilt factor below 1. {@link TurfClass} has named ones;
 * none of the numbers has been validated.
 *
 * <pre>{@code
 * Turf green = Turf.ofStimp(feet(11.0));                        // a fast green
 * Turf baked = TurfClass.FAIRWAY.turf().withRestitutionFactor(1.3).withTiltFactor(0.6);
 * green.rollDeceleration(9.80665);                              // 0.499 m/s2
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class Turf implements Serializable {
    private static final long serialVersionUID = 1L;

    /** Coefficient of sliding friction [1]. */
    private final double friction;

    /** Rolling resistance [1]. */
    private final double rollingResistance;

    /** What the restitution is multiplied by [1]. */
    private final double restitutionFactor;

    /** What the tilt is multiplied by [1]. */
    private final double tiltFactor;

    private Turf(double friction, double rollingResistance, double restitutionFactor, double tiltFactor) {
        this.friction = within("friction", friction, 0.01, 2.0);
        this.rollingResistance = within("rollingResistance", rollingResistance, 0.005, 2.0);
        this.restitutionFactor = within("restitutionFactor", restitutionFactor, 0.0, 2.0);
        this.tiltFactor = within("tiltFactor", tiltFactor, 0.0, 2.0);
    }

    /**
     * Turf as hard as the fairway of {@link Penner2002}.
     *
     * @param friction the coefficient of sliding friction, in [0.01, 2]
     * @param rollingResistance the rolling resistance, in [0.005, 2]
     * @return the turf
     * @throws IllegalArgumentException if a number lies outside or is NaN
     */
    public static Turf of(double friction, double rollingResistance) {
        return new Turf(friction, rollingResistance, 1.0, 1.0);
    }

    /**
     * A green by its speed, otherwise as the fairway.
     *
     * @param reading the reading of a {@link Stimpmeter}, in [2, 20] ft
     * @return the turf
     * @throws IllegalArgumentException if it lies outside
     */
    public static Turf ofStimp(Length reading) {
        return of(0.40, Stimpmeter.rollingResistance(reading));
    }

    /**
     * A copy with another friction.
     *
     * @param value the coefficient, in [0.01, 2]
     * @return the copy
     * @throws IllegalArgumentException if it lies outside
     */
    public Turf withFriction(double value) {
        return new Turf(value, rollingResistance, restitutionFactor, tiltFactor);
    }

    /**
     * A copy on which a ball rolls farther or less far.
     *
     * @param value the rolling resistance, in [0.005, 2]
     * @return the copy
     * @throws IllegalArgumentException if it lies outside
     */
    public Turf withRollingResistance(double value) {
        return new Turf(friction, value, restitutionFactor, tiltFactor);
    }

    /**
     * A copy from which a ball bounces higher or less high.
     *
     * @param value what the coefficient of restitution is multiplied by, in [0, 2]
     * @return the copy
     * @throws IllegalArgumentException if it lies outside
     */
    public Turf withRestitutionFactor(double value) {
        return new Turf(friction, rollingResistance, value, tiltFactor);
    }

    /**
     * A copy that is dented more or less deeply.
     *
     * @param value what the tilt is multiplied by, in [0, 2]; 0 is turf that is not dented
     * @return the copy
     * @throws IllegalArgumentException if it lies outside
     */
    public Turf withTiltFactor(double value) {
        return new Turf(friction, rollingResistance, restitutionFactor, value);
    }

    /**
     * The coefficient of sliding friction.
     *
     * @return mu, in [0.01, 2]
     */
    public double friction() {
        return friction;
    }

    /**
     * The rolling resistance.
     *
     * @return rho, in [0.005, 2]
     */
    public double rollingResistance() {
        return rollingResistance;
    }

    /**
     * What the coefficient of restitution is multiplied by.
     *
     * @return the factor, in [0, 2]
     */
    public double restitutionFactor() {
        return restitutionFactor;
    }

    /**
     * What the tilt is multiplied by.
     *
     * @return the factor, in [0, 2]
     */
    public double tiltFactor() {
        return tiltFactor;
    }

    /**
     * The deceleration of a uniform ball that rolls on the level: {@code (5/7) rho g}.
     *
     * @param gravity the acceleration of free fall [m/s2]
     * @return the deceleration [m/s2]
     */
    public double rollDeceleration(double gravity) {
        return rollingResistance * gravity / 1.4;
    }

    private static double within(String name, double value, double low, double high) {
        if (!(value >= low && value <= high)) {
            throw new IllegalArgumentException(
                    name + " must be in [" + low + ", " + high + "], but was " + value + "; it has no unit");
        }
        return value + 0.0;
    }

    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof Turf that
                && Double.compare(friction, that.friction) == 0
                && Double.compare(rollingResistance, that.rollingResistance) == 0
                && Double.compare(restitutionFactor, that.restitutionFactor) == 0
                && Double.compare(tiltFactor, that.tiltFactor) == 0;
    }

    @Override
    public int hashCode() {
        return Objects.hash(friction, rollingResistance, restitutionFactor, tiltFactor);
    }

    @Override
    public String toString() {
        return "turf of friction " + friction + ", rolling resistance " + rollingResistance + ", restitution x "
                + restitutionFactor + ", tilt x " + tiltFactor;
    }
}
