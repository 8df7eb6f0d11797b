package dev.teeward.flight.air;

import java.io.Serializable;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * What a flight needs to know of the air: its density and its viscosity.
 *
 * <p>Made by {@link Atmosphere}, or given directly by someone who has measured both. One state serves the whole
 * flight: density falls by about 0.3 percent over 30 m of height, which is not modelled.
 *
 * <pre>{@code
 * AirState air = AirState.of(1.2, 1.81e-5);
 * air.kinematicViscosity(); // 1.508e-5 m2/s
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class AirState implements Serializable {
    private static final long serialVersionUID = 1L;

    /** Density [kg/m3]. */
    private final double density;

    /** Dynamic viscosity [Pa s]. */
    private final double dynamicViscosity;

    private AirState(double density, double dynamicViscosity) {
        this.density = density;
        this.dynamicViscosity = dynamicViscosity;
    }

    /**
     * Air of a given density and viscosity.
     *
     * @param density the density, in [0, 10]; 0 is a vacuum [kg/m3]
     * @param dynamicViscosity the dynamic viscosity, in [1e-6, 1e-4] [Pa s]
     * @return the state
     * @throws IllegalArgumentException if either lies outside its range or is NaN
     */
    public static AirState of(double density, double dynamicViscosity) {
        if (!(density >= 0.0 && density <= 10.0)) {
            throw new IllegalArgumentException("density must be in [0, 10] kg/m3 (0-0.62 lb/ft3), but was " + density
                    + " kg/m3; air at sea level has about 1.2");
        }
        if (!(dynamicViscosity >= 1e-6 && dynamicViscosity <= 1e-4)) {
            throw new IllegalArgumentException("dynamicViscosity must be in [1e-6, 1e-4] Pa s, but was "
                    + dynamicViscosity + " Pa s; air has about 1.8e-5");
        }
        return new AirState(density + 0.0, dynamicViscosity);
    }

    /**
     * The density.
     *
     * @return the density [kg/m3]
     */
    public double density() {
        return density;
    }

    /**
     * The dynamic viscosity.
     *
     * @return the viscosity [Pa s]
     */
    public double dynamicViscosity() {
        return dynamicViscosity;
    }

    /**
     * The kinematic viscosity, dynamic viscosity over density; infinite in a vacuum.
     *
     * @return the viscosity [m2/s]
     */
    public double kinematicViscosity() {
        return dynamicViscosity / density;
    }

    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof AirState that
                && Double.compare(density, that.density) == 0
                && Double.compare(dynamicViscosity, that.dynamicViscosity) == 0;
    }

    @Override
    public int hashCode() {
        return Objects.hash(density, dynamicViscosity);
    }

    @Override
    public String toString() {
        return "density " + density + " kg/m3, viscosity " + dynamicViscosity + " Pa s";
    }
}
