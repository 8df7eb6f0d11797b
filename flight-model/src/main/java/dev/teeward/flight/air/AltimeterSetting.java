package dev.teeward.flight.air;

import static dev.teeward.flight.air.StandardAtmosphere.LAPSE_RATE;
import static dev.teeward.flight.air.StandardAtmosphere.PRESSURE_EXPONENT;
import static dev.teeward.flight.air.StandardAtmosphere.SEA_LEVEL_PRESSURE;
import static dev.teeward.flight.air.StandardAtmosphere.SEA_LEVEL_TEMPERATURE;

/**
 * Between the pressure at a place and the altimeter setting (QNH) that a weather report gives for it.
 *
 * <p>{@code p^n = QNH^n - p0^n L h / T0} with {@code n = R L / g0 = 0.190263}: the ICAO form, which follows from the
 * standard atmosphere. At h = 0 both pressures are the same. The form with rounded constants and an offset of 0.3 hPa
 * that some weather services use differs by less than 0.3 hPa. The pressure reduced with the measured temperature (QFF) is
 * a third thing and not this one.
 */
final class AltimeterSetting {
    private static final double N = 1.0 / PRESSURE_EXPONENT;

    private AltimeterSetting() {}

    /** Station pressure [Pa] for a QNH [Pa] at an elevation [m]. */
    static double toStation(double qnhPascals, double elevation) {
        return elevation == 0.0
                ? qnhPascals
                : StrictMath.pow(StrictMath.pow(qnhPascals, N) - reduction(elevation), PRESSURE_EXPONENT);
    }

    /** QNH [Pa] for a station pressure [Pa] at an elevation [m]. */
    static double fromStation(double stationPascals, double elevation) {
        return elevation == 0.0
                ? stationPascals
                : StrictMath.pow(StrictMath.pow(stationPascals, N) + reduction(elevation), PRESSURE_EXPONENT);
    }

    private static double reduction(double elevation) {
        return StrictMath.pow(SEA_LEVEL_PRESSURE, N) * LAPSE_RATE * elevation / SEA_LEVEL_TEMPERATURE;
    }
}
