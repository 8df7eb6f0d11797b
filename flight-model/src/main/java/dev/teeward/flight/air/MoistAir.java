package dev.teeward.flight.air;

/**
 * Density of moist air as a real gas, by the CIPM-2007 equation.
 *
 * <p>{@code rho = p Ma / (Z R T) [1 - xv (1 - Mv / Ma)]} with {@code xv = h f psv / p}. Carbon dioxide is 400 umol/mol;
 * 25 umol/mol more raise the density by 1e-5. Stated for 600 to 1100 hPa and 15 to 27 degC with a relative standard
 * uncertainty of 2.2e-5 (this figure from memory). Outside it is an extrapolation.
 * Vapour is saturated over liquid water, below 0 degC too.
 *
 * <p>Source: A. Picard, R. S. Davis, M. Glaeser, K. Fujii, Metrologia 45 (2008) 149, doi 10.1088/0026-1394/45/2/004;
 * the constants were taken from codes that quote the paper.
 */
final class MoistAir {
    /** Molar mass of dry air with 400 umol/mol carbon dioxide [kg/mol]. */
    static final double DRY_MOLAR_MASS = 28.96546e-3;

    private static final double VAPOR_MOLAR_MASS = 18.01528e-3;
    private static final double GAS_CONSTANT = 8.314472;
    private static final double ZERO_CELSIUS = 273.15;

    private MoistAir() {}

    /** Density [kg/m3] at a pressure [Pa], temperature [K] and relative humidity [0..1]. */
    static double density(double pascals, double kelvins, double relativeHumidity) {
        double vapor = vaporFraction(pascals, kelvins, relativeHumidity);
        return pascals
                * DRY_MOLAR_MASS
                / (compressibility(pascals, kelvins, vapor) * GAS_CONSTANT * kelvins)
                * (1.0 - vapor * (1.0 - VAPOR_MOLAR_MASS / DRY_MOLAR_MASS));
    }

    /** Relative humidity [1] of air at a temperature [K] whose vapour condenses at a dew point [K]. */
    static double relativeHumidity(double pascals, double kelvins, double dewPointKelvins) {
        return vaporFraction(pascals, dewPointKelvins, 1.0) / vaporFraction(pascals, kelvins, 1.0);
    }

    /** Mole fraction of water vapour [1]. */
    static double vaporFraction(double pascals, double kelvins, double relativeHumidity) {
        return relativeHumidity * enhancementFactor(pascals, kelvins) * saturationVaporPressure(kelvins) / pascals;
    }

    /** Pressure [Pa] of pure water vapour over liquid water. */
    static double saturationVaporPressure(double kelvins) {
        return StrictMath.exp(
                1.2378847e-5 * kelvins * kelvins - 1.9121316e-2 * kelvins + 33.93711047 - 6.3431645e3 / kelvins);
    }

    /** By how much air over water holds more vapour than a vacuum over water does [1]. */
    static double enhancementFactor(double pascals, double kelvins) {
        double t = kelvins - ZERO_CELSIUS;
        return 1.00062 + 3.14e-8 * pascals + 5.6e-7 * t * t;
    }

    /** Departure Z from the ideal gas [1]. */
    static double compressibility(double pascals, double kelvins, double vapor) {
        double t = kelvins - ZERO_CELSIUS;
        double ratio = pascals / kelvins;
        double first = 1.58123e-6
                + (-2.9331e-8 + 1.1043e-10 * t) * t
                + (5.707e-6 - 2.051e-8 * t) * vapor
                + (1.9898e-4 - 2.376e-6 * t) * vapor * vapor;
        return 1.0 - ratio * first + ratio * ratio * (1.83e-11 - 0.765e-8 * vapor * vapor);
    }
}
