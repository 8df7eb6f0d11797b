package dev.teeward.flight.air;

import dev.teeward.quantity.Length;
import dev.teeward.quantity.Pressure;
import dev.teeward.quantity.Temperature;
import java.io.Serializable;
import java.util.Objects;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import org.jspecify.annotations.Nullable;

/**
 * The air at a place: its pressure, temperature and humidity, and from them the density and viscosity.
 *
 * <p><b>Which pressure.</b> The pressure in a weather report (altimeter setting, QNH) is reduced to sea level; it is not the
 * pressure at the tee. Taking 1005 hPa as it stands at 1655 m overstates the density by 22 percent. So there are two
 * factories, {@link #ofStationPressure} for a barometer at the place and {@link #ofAltimeterSetting} for a report, and
 * none that takes just "a pressure".
 *
 * <p><b>Which density.</b> When only an elevation is given, the air is that of ISO 2533: dry, standard temperature, an ideal
 * gas, 1.225 kg/m3 at sea level. As soon as a temperature or a humidity is given, by a factory or by a {@code with} method,
 * it is moist air as a real gas by CIPM-2007 (Picard and others 2008). That equation is stated for 600 to 1100 hPa and 15
 * to 27 degC; beyond, it is an extrapolation, good to about 1e-4 where it could be compared. At the same
 * temperature and pressure the second is denser by 0.043 percent (1.22552 kg/m3): that step is real gas against ideal
 * gas, and below what a ball flight can show. The viscosity is Sutherland's for dry air (US Standard Atmosphere 1976).
 *
 * <p>Elevations are taken as geopotential heights, as altimetry does; the true height differs by 0.16 m at 1 km and 3.9 m
 * at 5 km. Limits: station pressure 300 to 1100 hPa, temperature -60 to 60 degC, relative humidity 0 to 1 (over liquid
 * water), elevation -500 to 9000 m.
 *
 * <pre>{@code
 * Atmosphere standard = Atmosphere.standardAt(feet(5_280.0));
 * Atmosphere summer = Atmosphere.ofAltimeterSetting(hectopascals(1005.0), meters(1655.0), celsius(30.0), 0.2);
 * double rho = summer.density(); // 0.941... kg/m3
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class Atmosphere implements Serializable {
    private static final long serialVersionUID = 1L;

    private static final Atmosphere SEA_LEVEL = standardAt(Length.ofMeters(0.0));

    /** The pressure at the place. */
    private final Pressure pressure;

    /** The temperature. */
    private final Temperature temperature;

    /** Relative humidity, 0 to 1. */
    private final double relativeHumidity;

    /** Whether only an elevation was given, so that the air is the ideal gas of ISO 2533. */
    private final boolean standard;

    private Atmosphere(Pressure pressure, Temperature temperature, double relativeHumidity, boolean standard) {
        this.pressure = AirLimits.stationPressure(pressure);
        this.temperature = AirLimits.temperature("temperature", temperature);
        this.relativeHumidity = AirLimits.relativeHumidity(relativeHumidity);
        this.standard = standard;
    }

    /**
     * The standard atmosphere at sea level: 15 degC, 1013.25 hPa, dry, 1.225 kg/m3.
     *
     * @return the air
     */
    public static Atmosphere seaLevel() {
        return SEA_LEVEL;
    }

    /**
     * The standard atmosphere of ISO 2533:1975 at an elevation, dry and an ideal gas.
     *
     * @param elevation the height above sea level, in [-500, 9000] m
     * @return the air
     * @throws IllegalArgumentException if the elevation lies outside
     */
    public static Atmosphere standardAt(Length elevation) {
        double height = AirLimits.elevation(elevation);
        return new Atmosphere(
                Pressure.ofPascals(StandardAtmosphere.pressure(height)),
                Temperature.ofKelvins(StandardAtmosphere.temperature(height)),
                0.0,
                true);
    }

    /**
     * Air of a pressure measured at the place itself.
     *
     * @param stationPressure the pressure of a barometer at the place, not reduced to sea level, in [300, 1100] hPa
     * @param temperature the temperature, in [-60, 60] degC
     * @param relativeHumidity the relative humidity, a fraction in [0, 1]
     * @return the air
     * @throws IllegalArgumentException if one of the three lies outside its range or is NaN
     */
    public static Atmosphere ofStationPressure(
            Pressure stationPressure, Temperature temperature, double relativeHumidity) {
        return new Atmosphere(stationPressure, temperature, relativeHumidity, false);
    }

    /**
     * Air of a pressure measured at the place itself, its humidity given by the dew point.
     *
     * @param stationPressure the pressure of a barometer at the place, not reduced to sea level, in [300, 1100] hPa
     * @param temperature the temperature, in [-60, 60] degC
     * @param dewPoint the dew point over liquid water, in [-60 degC, temperature]
     * @return the air
     * @throws IllegalArgumentException if one of the three lies outside its range
     */
    public static Atmosphere ofStationPressureAndDewPoint(
            Pressure stationPressure, Temperature temperature, Temperature dewPoint) {
        return ofStationPressure(stationPressure, temperature, 0.0).withDewPoint(dewPoint);
    }

    /**
     * Air of a pressure that a weather report gives, by the ICAO altimeter equation.
     *
     * @param altimeterSetting the QNH, which an altimeter is set to in order to show the elevation, in [850, 1100] hPa
     * @param elevation the elevation of the place, in [-500, 9000] m
     * @param temperature the temperature at the place, in [-60, 60] degC
     * @param relativeHumidity the relative humidity, a fraction in [0, 1]
     * @return the air
     * @throws IllegalArgumentException if one of the four, or the station pressure that follows, lies outside its range
     */
    public static Atmosphere ofAltimeterSetting(
            Pressure altimeterSetting, Length elevation, Temperature temperature, double relativeHumidity) {
        double qnh = AirLimits.altimeterSetting(altimeterSetting).pascals();
        double station = AltimeterSetting.toStation(qnh, AirLimits.elevation(elevation));
        return ofStationPressure(Pressure.ofPascals(station), temperature, relativeHumidity);
    }

    /**
     * Air as a weather report gives it: altimeter setting, temperature and dew point.
     *
     * @param altimeterSetting the QNH, in [850, 1100] hPa
     * @param elevation the elevation of the place, in [-500, 9000] m
     * @param temperature the temperature at the place, in [-60, 60] degC
     * @param dewPoint the dew point over liquid water, in [-60 degC, temperature]
     * @return the air
     * @throws IllegalArgumentException if one of the four, or the station pressure that follows, lies outside its range
     */
    public static Atmosphere ofAltimeterSettingAndDewPoint(
            Pressure altimeterSetting, Length elevation, Temperature temperature, Temperature dewPoint) {
        return ofAltimeterSetting(altimeterSetting, elevation, temperature, 0.0).withDewPoint(dewPoint);
    }

    /**
     * The same air at another temperature, with the same station pressure and the same relative humidity.
     *
     * @param value the temperature, in [-60, 60] degC
     * @return the air, a real gas even if this one is standard
     * @throws IllegalArgumentException if the temperature lies outside
     */
    public Atmosphere withTemperature(Temperature value) {
        return new Atmosphere(pressure, value, relativeHumidity, false);
    }

    /**
     * The same air with another humidity.
     *
     * @param value the relative humidity, a fraction in [0, 1]
     * @return the air, a real gas even if this one is standard
     * @throws IllegalArgumentException if the humidity lies outside or is NaN
     */
    public Atmosphere withRelativeHumidity(double value) {
        return new Atmosphere(pressure, temperature, value, false);
    }

    /**
     * The same air with another humidity, given by the dew point.
     *
     * @param dewPoint the dew point over liquid water, in [-60 degC, temperature]
     * @return the air, a real gas even if this one is standard
     * @throws IllegalArgumentException if the dew point lies outside
     */
    public Atmosphere withDewPoint(Temperature dewPoint) {
        AirLimits.temperature("dewPoint", dewPoint);
        if (dewPoint.compareTo(temperature) > 0) {
            throw new IllegalArgumentException("dewPoint must not be above the temperature of " + temperature
                    + ", but was " + dewPoint + "; perhaps the two are exchanged");
        }
        return withRelativeHumidity(
                MoistAir.relativeHumidity(pressure.pascals(), temperature.kelvins(), dewPoint.kelvins()));
    }

    /**
     * The same air with another humidity, given by the thermodynamic wet-bulb temperature, as psychrometric charts have it.
     *
     * <p>By the equation of ASHRAE Fundamentals 2017, chapter 1. An aspirated psychrometer reads something else: at 40 degC and a wet bulb
     * of 20 degC the two differ by 8 percent of the vapour. For its readings use {@link #withPsychrometer}.
     *
     * @param wetBulb the thermodynamic wet-bulb temperature, in [0 degC, temperature]
     * @return the air, a real gas even if this one is standard
     * @throws IllegalArgumentException if it lies outside, or so low that no air is dry enough for it
     */
    public Atmosphere withWetBulb(Temperature wetBulb) {
        double wet = AirLimits.wetBulb(wetBulb, temperature);
        return withRelativeHumidity(AirLimits.humidityOf(
                wetBulb, temperature, WetBulb.relativeHumidity(pressure.pascals(), temperature.kelvins(), wet)));
    }

    /**
     * The same air with another humidity, given by the wet thermometer of an aspirated psychrometer.
     *
     * <p>{@code e = es(tw) - A p (t - tw)} with {@code A = 6.60e-4 (1 + 0.00115 tw)} per K, t in degC (AMS Glossary of
     * Meteorology).
     *
     * @param wetThermometer what the ventilated wet thermometer shows, in [0 degC, temperature]
     * @return the air, a real gas even if this one is standard
     * @throws IllegalArgumentException if it lies outside, or so low that no air is dry enough for it
     */
    public Atmosphere withPsychrometer(Temperature wetThermometer) {
        double wet = AirLimits.wetBulb(wetThermometer, temperature);
        return withRelativeHumidity(AirLimits.humidityOf(
                wetThermometer,
                temperature,
                WetBulb.psychrometerHumidity(pressure.pascals(), temperature.kelvins(), wet)));
    }

    /**
     * The dew point over liquid water, the inverse of {@link #withDewPoint}.
     *
     * @return the temperature at which the vapour would condense; empty if it lies below -60 degC, as in dry air
     */
    public Optional<Temperature> dewPoint() {
        return root(
                213.15,
                kelvins -> MoistAir.relativeHumidity(pressure.pascals(), temperature.kelvins(), kelvins)
                        - relativeHumidity);
    }

    /**
     * The thermodynamic wet-bulb temperature, the inverse of {@link #withWetBulb}.
     *
     * @return the temperature; empty if it lies below 0 degC, where the water would be ice
     */
    public Optional<Temperature> wetBulb() {
        return root(
                273.15,
                kelvins -> WetBulb.relativeHumidity(pressure.pascals(), temperature.kelvins(), kelvins)
                        - relativeHumidity);
    }

    /** Where a rising function comes to zero between a lowest temperature [K] and that of the air, by bisection. */
    private Optional<Temperature> root(double lowest, DoubleUnaryOperator rising) {
        double low = lowest;
        double high = temperature.kelvins();
        if (high < low || rising.applyAsDouble(low) > 0.0) {
            return Optional.empty();
        }
        if (rising.applyAsDouble(high) <= 0.0) {
            return Optional.of(temperature);
        }
        for (int i = 0; i < 60; i++) {
            double middle = (low + high) / 2.0;
            if (rising.applyAsDouble(middle) < 0.0) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return Optional.of(Temperature.ofKelvins(high));
    }

    /**
     * The pressure at the place, not reduced to sea level.
     *
     * @return the pressure, in [300, 1100] hPa
     */
    public Pressure pressure() {
        return pressure;
    }

    /**
     * The altimeter setting (QNH) that a report for this place would give, the inverse of {@link #ofAltimeterSetting}.
     *
     * @param elevation the elevation of the place, in [-500, 9000] m
     * @return the pressure reduced to sea level by the ICAO equation
     * @throws IllegalArgumentException if the elevation lies outside
     */
    public Pressure altimeterSetting(Length elevation) {
        return Pressure.ofPascals(AltimeterSetting.fromStation(pressure.pascals(), AirLimits.elevation(elevation)));
    }

    /**
     * The temperature.
     *
     * @return the temperature, in [-60, 60] degC
     */
    public Temperature temperature() {
        return temperature;
    }

    /**
     * The relative humidity, over liquid water.
     *
     * @return a fraction in [0, 1]
     */
    public double relativeHumidity() {
        return relativeHumidity;
    }

    /**
     * The density, by the rule of the class text.
     *
     * @return the density [kg/m3]
     */
    public double density() {
        return standard
                ? StandardAtmosphere.density(pressure.pascals(), temperature.kelvins())
                : MoistAir.density(pressure.pascals(), temperature.kelvins(), relativeHumidity);
    }

    /**
     * The elevation at which the standard atmosphere has this density: {@code (T0 / L) (1 - (rho / 1.225)^(1 / 4.25588))}.
     *
     * <p>Exact down to 0.364 kg/m3 (11 km); for thinner air the same formula is continued.
     *
     * @return the density altitude, negative for air denser than standard at sea level
     */
    public Length densityAltitude() {
        return Length.ofMeters(StandardAtmosphere.heightOfDensity(density()));
    }

    /**
     * What a flight needs: density and viscosity.
     *
     * @return the state
     */
    public AirState state() {
        return AirState.of(density(), SutherlandViscosity.at(temperature.kelvins()));
    }

    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof Atmosphere that
                && pressure.equals(that.pressure)
                && temperature.equals(that.temperature)
                && Double.compare(relativeHumidity, that.relativeHumidity) == 0
                && standard == that.standard;
    }

    @Override
    public int hashCode() {
        return Objects.hash(pressure, temperature, relativeHumidity, standard);
    }

    @Override
    public String toString() {
        return (standard ? "standard atmosphere, " : "") + "station pressure " + pressure + ", temperature "
                + temperature + ", relative humidity " + AirLimits.plain(relativeHumidity);
    }
}
