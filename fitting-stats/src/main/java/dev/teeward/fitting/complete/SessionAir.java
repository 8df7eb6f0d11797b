package dev.teeward.fitting.complete;

import dev.teeward.fitting.PressureKind;
import dev.teeward.fitting.Session;
import dev.teeward.flight.air.Atmosphere;
import dev.teeward.flight.air.Wind;
import dev.teeward.quantity.Length;
import dev.teeward.quantity.Pressure;
import dev.teeward.quantity.Speed;
import dev.teeward.quantity.Temperature;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * The air and wind of a session, from what was written down about the day.
 *
 * <p>The pressure is, in this order: the station pressure; the altimeter setting brought to the elevation; that of the
 * standard atmosphere at the elevation; that of the standard atmosphere at sea level. A missing temperature is that of the
 * standard atmosphere at the elevation, or at sea level if that is missing too; a missing humidity is 0, as in the standard
 * atmosphere; without a wind the air is calm, as in a studio. Each of these assumptions is a warning:
 *
 * <ul>
 *   <li>{@code elevation-assumed}, {@code pressure-assumed}, {@code temperature-assumed}, {@code humidity-assumed},
 *       {@code wind-assumed}: what was missing, and what was taken instead;
 *   <li>{@code pressure-contradicts-elevation}: the station pressure is more than 50 hPa (1.48 inHg) from that of the
 *       standard atmosphere at the elevation, which no weather explains; perhaps it is an altimeter setting. Weather moves
 *       the pressure by less than that but in the strongest storms (common practice, no source).
 * </ul>
 *
 * <pre>{@code
 * SessionAir air = SessionAir.of(session);
 * FlightModel model = FlightModel.standard().withAir(air.atmosphere()).withWind(air.wind());
 * air.description();   // one line in both families of units
 * }</pre>
 *
 * <p>Immutable, and thread-safe.
 */
public final class SessionAir {
    private static final double LARGEST_WEATHER_PASCALS = 5_000.0;

    /** One pound (0.45359237 kg) per cubic foot (0.3048 m)3, international yard and pound agreement 1959 [kg/m3]. */
    private static final double POUND_PER_CUBIC_FOOT = 0.45359237 / (0.3048 * 0.3048 * 0.3048);

    private final Atmosphere atmosphere;
    private final Wind wind;
    private final String description;
    private final List<Warning> warnings;

    private SessionAir(Atmosphere atmosphere, Wind wind, String description, List<Warning> warnings) {
        this.atmosphere = atmosphere;
        this.wind = wind;
        this.description = description;
        this.warnings = List.copyOf(warnings);
    }

    /**
     * The air of a session.
     *
     * @param session the session
     * @return its air and wind
     * @throws IllegalArgumentException if an altimeter setting is given without the elevation, which it needs, or if the
     *     pressure lies outside the range of {@link Atmosphere}
     */
    public static SessionAir of(Session session) {
        List<Warning> warnings = new ArrayList<>();
        Optional<Length> elevation = session.elevation();
        Optional<Pressure> stated = session.pressure();
        PressureKind kind = session.pressureKind().orElse(PressureKind.STATION);
        if (stated.isPresent() && kind == PressureKind.ALTIMETER && elevation.isEmpty()) {
            throw new IllegalArgumentException("the altimeter pressure of " + pressure(stated.get())
                    + " needs the elevation of the place, which the session does not give; without one, give the station"
                    + " pressure, as a barometer at the place shows it");
        }
        Atmosphere standard = Atmosphere.standardAt(elevation.orElse(Length.ofMeters(0.0)));
        Temperature temperature = session.temperature().orElse(standard.temperature());
        double humidity = session.humidity().orElse(0.0);
        Atmosphere atmosphere;
        String source;
        if (stated.isPresent()) {
            Pressure value = stated.get();
            atmosphere = kind == PressureKind.STATION
                    ? Atmosphere.ofStationPressure(value, temperature, humidity)
                    : Atmosphere.ofAltimeterSetting(value, elevation.orElseThrow(), temperature, humidity);
            source = kind == PressureKind.STATION ? "as stated" : "from the altimeter setting of " + pressure(value);
            checkAgainst(standard, atmosphere, elevation, warnings);
        } else {
            atmosphere = standard;
            if (session.temperature().isPresent()) {
                atmosphere = atmosphere.withTemperature(temperature);
            }
            if (session.humidity().isPresent()) {
                atmosphere = atmosphere.withRelativeHumidity(humidity);
            }
            source = elevation.isPresent() ? "standard at that elevation" : "standard at sea level";
            assumePressure(elevation, atmosphere, warnings);
        }
        if (session.temperature().isEmpty()) {
            warnings.add(Warning.of(
                    "temperature-assumed",
                    "no temperature is given, so that of the standard atmosphere is taken: "
                            + temperature(temperature)));
        }
        if (session.humidity().isEmpty()) {
            warnings.add(humidityAssumed(atmosphere));
        }
        Optional<Speed> speed = session.windSpeed();
        Wind wind = Wind.calm();
        String windText = "calm";
        if (speed.isPresent() && session.windFrom().isPresent()) {
            wind = Wind.from(session.windFrom().get(), speed.get());
            windText = speed.get().metersPerSecond() > 0.0
                    ? format(
                            "wind %.1f m/s (%.1f mph) from %.0f deg (0 is against, 90 from the right)",
                            speed.get().metersPerSecond(),
                            speed.get().mph(),
                            session.windFrom().get().degrees())
                    : "calm";
        } else {
            warnings.add(Warning.of("wind-assumed", "no wind is given, so calm air is taken, as in a studio"));
        }
        return new SessionAir(atmosphere, wind, describe(atmosphere, elevation, source) + "; " + windText, warnings);
    }

    private static void assumePressure(Optional<Length> elevation, Atmosphere atmosphere, List<Warning> warnings) {
        if (elevation.isEmpty()) {
            warnings.add(Warning.of(
                    "elevation-assumed",
                    "neither an air pressure nor an elevation is given, so sea level is taken; by this model carry"
                            + " grows by about 1 % for every 300 m (1,000 ft) of elevation"));
        }
        warnings.add(Warning.of(
                "pressure-assumed",
                "no air pressure is given, so that of the standard atmosphere is taken: "
                        + pressure(atmosphere.pressure())));
    }

    private static void checkAgainst(
            Atmosphere standard, Atmosphere atmosphere, Optional<Length> elevation, List<Warning> warnings) {
        double difference =
                atmosphere.pressure().pascals() - standard.pressure().pascals();
        if (elevation.isPresent() && Math.abs(difference) > LARGEST_WEATHER_PASCALS) {
            warnings.add(Warning.of(
                    "pressure-contradicts-elevation",
                    "the pressure at the place, " + pressure(atmosphere.pressure()) + ", is far from the "
                            + pressure(standard.pressure()) + " of the standard atmosphere at "
                            + length(elevation.get())
                            + "; if it comes from a weather report it is an altimeter setting"));
        }
    }

    private static Warning humidityAssumed(Atmosphere atmosphere) {
        double dry = atmosphere.withRelativeHumidity(0.0).density();
        double saturated = atmosphere.withRelativeHumidity(1.0).density();
        return Warning.of(
                "humidity-assumed",
                format(
                        "no humidity is given, so dry air is taken; saturated air would be thinner by %.1f %%",
                        100.0 * (1.0 - saturated / dry)));
    }

    private static String describe(Atmosphere air, Optional<Length> elevation, String source) {
        return temperature(air.temperature())
                + (elevation.isPresent() ? ", elevation " + length(elevation.get()) : "")
                + ", station pressure " + pressure(air.pressure()) + " (" + source + ")"
                + format(", humidity %.0f %%", 100.0 * air.relativeHumidity())
                + format(", density %.3f kg/m3 (%.4f lb/ft3)", air.density(), air.density() / POUND_PER_CUBIC_FOOT)
                + ", as at " + length(air.densityAltitude()) + " in standard air";
    }

    private static String temperature(Temperature value) {
        return format("%.1f degC (%.1f degF)", value.celsius(), value.fahrenheit());
    }

    private static String pressure(Pressure value) {
        return format("%.1f hPa (%.2f inHg)", value.hectopascals(), value.inchesOfMercury());
    }

    private static String length(Length value) {
        return format("%.0f m (%.0f ft)", value.meters(), value.feet());
    }

    private static String format(String pattern, Object... values) {
        return String.format(Locale.ROOT, pattern, values);
    }

    /**
     * The air.
     *
     * @return pressure, temperature and humidity at the place
     */
    public Atmosphere atmosphere() {
        return atmosphere;
    }

    /**
     * The wind.
     *
     * @return the same at every height; calm if none was stated
     */
    public Wind wind() {
        return wind;
    }

    /**
     * The air in plain words.
     *
     * @return one line, in metric and customary units
     */
    public String description() {
        return description;
    }

    /**
     * What had to be assumed.
     *
     * @return the warnings named in the class text, unmodifiable
     */
    public List<Warning> warnings() {
        return warnings;
    }

    @Override
    public String toString() {
        return description;
    }
}
