package dev.teeward.flight.air;

import dev.teeward.quantity.Length;
import dev.teeward.quantity.Pressure;
import dev.teeward.quantity.PressureUnit;
import dev.teeward.quantity.Temperature;
import dev.teeward.quantity.TemperatureUnit;
import java.math.BigDecimal;
import java.math.MathContext;

/** What air on a golf course can be, and a guess at the mistake when it is not. */
final class AirLimits {
    private static final PressureUnit[] LIKELY_PRESSURE_UNITS = {
        PressureUnit.HECTOPASCAL, PressureUnit.INCH_OF_MERCURY, PressureUnit.KILOPASCAL, PressureUnit.PASCAL
    };

    /** So that the limits themselves are accepted from every unit [K]. */
    private static final double ROUNDING = 1e-9;

    private AirLimits() {}

    static Pressure stationPressure(Pressure value) {
        return pressure("stationPressure", value, 300.0, "");
    }

    static Pressure altimeterSetting(Pressure value) {
        return pressure(
                "altimeterSetting",
                value,
                850.0,
                "; a pressure read at the place itself belongs in Atmosphere.ofStationPressure");
    }

    static Temperature temperature(String name, Temperature value) {
        if (isTemperature(value.kelvins())) {
            return value;
        }
        throw new IllegalArgumentException(name + " must be in [-60, 60] degC (-76 to 140 degF), but was "
                + plain(value.celsius()) + " degC (" + plain(value.fahrenheit()) + " degF)" + temperatureHint(value));
    }

    /** A wet bulb in kelvins, neither frozen nor above the temperature of the air. */
    static double wetBulb(Temperature wetBulb, Temperature air) {
        if (wetBulb.compareTo(air) > 0) {
            throw new IllegalArgumentException("wetBulb must not be above the temperature of " + air + ", but was "
                    + wetBulb + "; perhaps the two are exchanged");
        }
        if (!(wetBulb.kelvins() >= 273.15 - ROUNDING)) {
            throw new IllegalArgumentException("wetBulb must be at least 0 degC (32 degF), but was "
                    + plain(wetBulb.celsius()) + " degC (" + plain(wetBulb.fahrenheit())
                    + " degF); over ice give the dew point or the relative humidity");
        }
        return wetBulb.kelvins();
    }

    /** What a wet bulb gives, unless even dry air would be warmer. */
    static double humidityOf(Temperature wetBulb, Temperature air, double relativeHumidity) {
        if (!(relativeHumidity >= 0.0)) {
            throw new IllegalArgumentException("wetBulb must not be below that of dry air of " + air + ", but was "
                    + wetBulb + "; perhaps it is a dew point");
        }
        return Math.min(1.0, relativeHumidity);
    }

    static double relativeHumidity(double value) {
        if (value >= 0.0 && value <= 1.0) {
            return value + 0.0;
        }
        String hint = value > 1.0 && value <= 100.0
                ? "; " + plain(value) + " percent is "
                        + BigDecimal.valueOf(value)
                                .movePointLeft(2)
                                .stripTrailingZeros()
                                .toPlainString()
                : "";
        throw new IllegalArgumentException(
                "relativeHumidity must be in [0, 1] (0 to 100 percent), but was " + value + hint);
    }

    static double elevation(Length value) {
        double meters = value.meters();
        if (meters >= -500.0 && meters <= 9_000.0) {
            return meters;
        }
        double feetReadAsMeters = meters * 0.3048;
        throw new IllegalArgumentException("elevation must be in [-500, 9000] m (-1640 to 29527 ft), but was "
                + plain(meters) + " m (" + plain(value.feet()) + " ft)"
                + (feetReadAsMeters >= -500.0 && feetReadAsMeters <= 9_000.0
                        ? "; for feet use Length.ofFeet(" + plain(meters) + ")"
                        : ""));
    }

    static String plain(double value) {
        return new BigDecimal(value)
                .round(new MathContext(6))
                .stripTrailingZeros()
                .toPlainString();
    }

    private static Pressure pressure(String name, Pressure value, double lowest, String otherwise) {
        if (value.hectopascals() >= lowest && value.hectopascals() <= 1_100.0) {
            return value;
        }
        throw new IllegalArgumentException(name + " must be in [" + plain(lowest) + ", 1100] hPa ("
                + plain(Pressure.ofHectopascals(lowest).inchesOfMercury()) + " to 32.483 inHg), but was "
                + plain(value.hectopascals()) + " hPa (" + plain(value.inchesOfMercury()) + " inHg)"
                + pressureHint(value, lowest, otherwise));
    }

    /** The number was perhaps meant in another unit: the first one in which it would be a pressure of air. */
    private static String pressureHint(Pressure value, double lowest, String otherwise) {
        for (PressureUnit meant : LIKELY_PRESSURE_UNITS) {
            for (PressureUnit given : PressureUnit.values()) {
                double number = value.value(given);
                double hectopascals = PressureUnit.HECTOPASCAL.fromSi(meant.toSi(number));
                if (hectopascals >= lowest && hectopascals <= 1_100.0) {
                    return "; for " + meant.symbol() + " use Pressure." + factory(meant) + "(" + plain(number) + ")";
                }
            }
        }
        return otherwise;
    }

    private static String factory(PressureUnit unit) {
        return switch (unit) {
            case PASCAL -> "ofPascals";
            case HECTOPASCAL -> "ofHectopascals";
            case KILOPASCAL -> "ofKilopascals";
            case INCH_OF_MERCURY -> "ofInchesOfMercury";
        };
    }

    private static boolean isTemperature(double kelvins) {
        return kelvins >= 213.15 - ROUNDING && kelvins <= 333.15 + ROUNDING;
    }

    private static String temperatureHint(Temperature value) {
        for (TemperatureUnit given : TemperatureUnit.values()) {
            double number = value.value(given);
            for (TemperatureUnit meant : TemperatureUnit.values()) {
                if (isTemperature(meant.toSi(number))) {
                    return "; for " + meant.symbol() + " use Temperature." + factory(meant) + "(" + plain(number) + ")";
                }
            }
        }
        return "";
    }

    private static String factory(TemperatureUnit unit) {
        return switch (unit) {
            case KELVIN -> "ofKelvins";
            case CELSIUS -> "ofCelsius";
            case FAHRENHEIT -> "ofFahrenheit";
        };
    }
}
