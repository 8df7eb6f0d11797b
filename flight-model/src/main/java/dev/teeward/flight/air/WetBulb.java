package dev.teeward.flight.air;

/**
 * Humidity from a wet-bulb temperature, in the two meanings of the word.
 *
 * <p>Thermodynamic: {@code W = ((2501 - 2.326 tw) Ws(tw) - 1.006 (t - tw)) / (2501 + 1.86 t - 4.186 tw)} (ASHRAE Fundamentals 2017,
 * chapter 1; formula from memory, held to its printed examples). Aspirated psychrometer: {@code e = es(tw) - A p (t - tw)} with
 * {@code A = 6.60e-4 (1 + 0.00115 tw)} per K (AMS Glossary of Meteorology; the factor in brackets from two further pages). t and tw
 * in degC, over liquid water.
 */
final class WetBulb {
    /** Molar mass of water over that of dry air, as ASHRAE has it [1]. */
    private static final double MASS_RATIO = 0.621945;

    private static final double ZERO_CELSIUS = 273.15;

    private WetBulb() {}

    /** Mass of vapour for each mass of dry air [1], from the mole fraction of vapour [1]. */
    static double humidityRatio(double vapor) {
        return MASS_RATIO * vapor / (1.0 - vapor);
    }

    /** Humidity ratio [1] at a temperature and a thermodynamic wet bulb [K], with the ratio of air saturated at the latter [1]. */
    static double humidityRatio(double saturated, double kelvins, double wetKelvins) {
        double t = kelvins - ZERO_CELSIUS;
        double tw = wetKelvins - ZERO_CELSIUS;
        return ((2501.0 - 2.326 * tw) * saturated - 1.006 * (t - tw)) / (2501.0 + 1.86 * t - 4.186 * tw);
    }

    /** Relative humidity [1], negative where no air is so dry. */
    static double relativeHumidity(double pascals, double kelvins, double wetKelvins) {
        double saturated = humidityRatio(MoistAir.vaporFraction(pascals, wetKelvins, 1.0));
        double ratio = humidityRatio(saturated, kelvins, wetKelvins);
        return ratio / (MASS_RATIO + ratio) / MoistAir.vaporFraction(pascals, kelvins, 1.0);
    }

    /** Vapour pressure [Pa] by the psychrometer, with the saturation pressure at the wet thermometer [Pa]. */
    static double psychrometer(double saturated, double pascals, double kelvins, double wetKelvins) {
        return saturated - 6.60e-4 * (1.0 + 0.00115 * (wetKelvins - ZERO_CELSIUS)) * pascals * (kelvins - wetKelvins);
    }

    /** Relative humidity [1] by the psychrometer, negative where no air is so dry. */
    static double psychrometerHumidity(double pascals, double kelvins, double wetKelvins) {
        double saturated = pascals * MoistAir.vaporFraction(pascals, wetKelvins, 1.0);
        return psychrometer(saturated, pascals, kelvins, wetKelvins)
                / (pascals * MoistAir.vaporFraction(pascals, kelvins, 1.0));
    }
}
