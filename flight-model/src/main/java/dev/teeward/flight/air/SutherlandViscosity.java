package dev.teeward.flight.air;

/**
 * Dynamic viscosity of dry air by Sutherland's law, with the constants of the US Standard Atmosphere 1976.
 *
 * <p>{@code mu = 1.458e-6 T^1.5 / (T + 110.4)} [Pa s]. Other sets of constants differ by up to 1.3 percent. Humidity is left
 * out: saturated air is less viscous by 1.0 percent at 20 degC and 2.0 percent at 30 degC (P. T. Tsilingiris, 2008), which
 * moves the Reynolds number and nothing else.
 */
final class SutherlandViscosity {
    private SutherlandViscosity() {}

    /** Viscosity [Pa s] at a temperature [K]. */
    static double at(double kelvins) {
        return 1.458e-6 * kelvins * Math.sqrt(kelvins) / (kelvins + 110.4);
    }
}
