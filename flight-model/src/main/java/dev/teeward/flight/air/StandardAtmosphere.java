package dev.teeward.flight.air;

/**
 * The standard atmosphere of ISO 2533:1975 below the tropopause: dry air, an ideal gas that cools by 6.5 K per km.
 *
 * <p>{@code T = 288.15 - 0.0065 H; p = 101325 (T / 288.15)^(g0 / (R L)); rho = p / (R T)} with the geopotential height H
 * in metres, {@code R = 287.05287 J/(kg K)} and {@code g0 = 9.80665 m/s2}. The ICAO standard atmosphere and the US
 * Standard Atmosphere 1976 are the same up to 11 km (H). The same formulas serve below sea level.
 */
final class StandardAtmosphere {
    /** Temperature at sea level [K]. */
    static final double SEA_LEVEL_TEMPERATURE = 288.15;

    /** Pressure at sea level [Pa]. */
    static final double SEA_LEVEL_PRESSURE = 101_325.0;

    /** Fall of temperature with height [K/m]. */
    static final double LAPSE_RATE = 0.0065;

    /** Specific gas constant of dry air [J/(kg K)]. */
    static final double GAS_CONSTANT = 287.05287;

    /** Power of the temperature that gives the pressure, g0 / (R L), about 5.25588 [1]. */
    static final double PRESSURE_EXPONENT = 9.80665 / (GAS_CONSTANT * LAPSE_RATE);

    /** Radius that turns geometric into geopotential height, US Standard Atmosphere 1976 [m]. */
    private static final double EARTH_RADIUS = 6_356_766.0;

    private static final double SEA_LEVEL_DENSITY = SEA_LEVEL_PRESSURE / (GAS_CONSTANT * SEA_LEVEL_TEMPERATURE);

    private StandardAtmosphere() {}

    /** Temperature [K] at a geopotential height [m]. */
    static double temperature(double geopotential) {
        return SEA_LEVEL_TEMPERATURE - LAPSE_RATE * geopotential;
    }

    /** Pressure [Pa] at a geopotential height [m]. */
    static double pressure(double geopotential) {
        return SEA_LEVEL_PRESSURE
                * StrictMath.pow(temperature(geopotential) / SEA_LEVEL_TEMPERATURE, PRESSURE_EXPONENT);
    }

    /** Density [kg/m3] of dry air as an ideal gas. */
    static double density(double pascals, double kelvins) {
        return pascals / (GAS_CONSTANT * kelvins);
    }

    /** Geopotential height [m] at which this atmosphere has a density [kg/m3]; the inverse of the formulas above. */
    static double heightOfDensity(double density) {
        double temperatureRatio = StrictMath.pow(density / SEA_LEVEL_DENSITY, 1.0 / (PRESSURE_EXPONENT - 1.0));
        return SEA_LEVEL_TEMPERATURE / LAPSE_RATE * (1.0 - temperatureRatio);
    }

    /** Geopotential height [m] of a geometric height [m]: {@code r Z / (r + Z)}. 0.16 m less at 1 km. */
    static double geopotential(double geometric) {
        return EARTH_RADIUS * geometric / (EARTH_RADIUS + geometric);
    }

    /** Geometric height [m] of a geopotential height [m], the inverse. */
    static double geometric(double geopotential) {
        return EARTH_RADIUS * geopotential / (EARTH_RADIUS - geopotential);
    }
}
