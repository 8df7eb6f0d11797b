package dev.teeward.examples;

import dev.teeward.fitting.PressureKind;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.complete.SessionAir;
import dev.teeward.flight.FlightModel;
import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Length;
import dev.teeward.quantity.Pressure;
import dev.teeward.quantity.Speed;
import dev.teeward.quantity.Temperature;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import picocli.CommandLine.Spec.Target;

/**
 * The air and the wind on the command line. What is given neither there nor in the file is that of the standard atmosphere at
 * sea level, calm.
 */
final class AirOptions {
    @Spec(Target.MIXEE)
    private @Nullable CommandSpec spec;

    @Option(
            names = "--elevation-ft",
            paramLabel = "N",
            converter = DecimalConverter.class,
            description =
                    "Elevation of the place above sea level, -1640 to 29527 ft; 0 if not given here or in the file.")
    private @Nullable Double elevationFeet;

    @Option(
            names = "--elevation-m",
            paramLabel = "N",
            converter = DecimalConverter.class,
            description = "The same in metres, -500 to 9000 m.")
    private @Nullable Double elevationMeters;

    @Option(
            names = "--temperature-f",
            paramLabel = "N",
            converter = DecimalConverter.class,
            description =
                    "Temperature, -76 to 140 degF; the standard one of the elevation if not given here or in the file.")
    private @Nullable Double fahrenheit;

    @Option(
            names = "--temperature-c",
            paramLabel = "N",
            converter = DecimalConverter.class,
            description = "The same in degrees Celsius, -60 to 60 degC.")
    private @Nullable Double celsius;

    @Option(
            names = "--humidity",
            paramLabel = "N",
            converter = DecimalConverter.class,
            description = "Relative humidity, 0 to 1 (0.45 is 45 percent); dry if not given here or in the file.")
    private @Nullable Double humidity;

    @Option(
            names = "--wind-mph",
            paramLabel = "N",
            converter = DecimalConverter.class,
            description = "Wind speed, 0 to 111 mph, the same at every height; calm if not given here or in the file.")
    private @Nullable Double windMph;

    @Option(
            names = "--wind-from-deg",
            paramLabel = "N",
            converter = DecimalConverter.class,
            description = "Where the wind comes from, -360 to 360 deg: 0 is a headwind, 90 comes from the right.")
    private @Nullable Double windFromDegrees;

    /**
     * The conditions of a file, and in their place those of the options where both give them; a number that cannot be used is
     * an error of the command line. With an elevation from the options the file's pressure is left out: it is one of another
     * place.
     *
     * @param used gets a few words on each condition that is not the standard one, for telling
     */
    Session over(Session file, List<String> used) {
        exclusive("--elevation-ft", elevationFeet, "--elevation-m", elevationMeters);
        exclusive("--temperature-f", fahrenheit, "--temperature-c", celsius);
        Session.Builder both = Session.builder();
        boolean moved = elevationFeet != null || elevationMeters != null;
        elevation(file, both, used);
        if (!moved && file.pressure().isPresent()) {
            Pressure pressure = file.pressure().get();
            if (file.pressureKind().equals(Optional.of(PressureKind.ALTIMETER))) {
                both.altimeterPressure(pressure);
            } else {
                both.stationPressure(pressure);
            }
            used.add("pressure of the file");
        }
        temperature(file, both, used);
        humidity(file, both, used);
        wind(file, both, used);
        return both.build();
    }

    /** The model in the air and the wind of the options alone. */
    FlightModel applyTo(FlightModel model) {
        SessionAir day = SessionAir.of(over(Session.builder().build(), new ArrayList<>()));
        return model.withAir(day.atmosphere()).withWind(day.wind());
    }

    private static String source(String condition, boolean option, boolean file) {
        return condition
                + (option ? " of the command line" + (file ? " in the place of the file's" : "") : " of the file");
    }

    private void elevation(Session file, Session.Builder both, List<String> used) {
        boolean given = file.elevation().isPresent();
        if (elevationFeet != null) {
            both.elevation(Length.ofFeet(
                    checked("--elevation-ft", elevationFeet, -1_640.0, 29_527.0, "ft", -500.0, 9_000.0, "m")));
        } else if (elevationMeters != null) {
            both.elevation(Length.ofMeters(
                    checked("--elevation-m", elevationMeters, -500.0, 9_000.0, "m", -1_640.0, 29_527.0, "ft")));
        } else {
            file.elevation().ifPresent(both::elevation);
        }
        boolean option = elevationFeet != null || elevationMeters != null;
        if (option || given) {
            used.add(source("elevation", option, given));
        }
    }

    private void temperature(Session file, Session.Builder both, List<String> used) {
        boolean given = file.temperature().isPresent();
        if (fahrenheit != null) {
            both.temperature(Temperature.ofFahrenheit(
                    checked("--temperature-f", fahrenheit, -76.0, 140.0, "degF", -60.0, 60.0, "degC")));
        } else if (celsius != null) {
            both.temperature(Temperature.ofCelsius(
                    checked("--temperature-c", celsius, -60.0, 60.0, "degC", -76.0, 140.0, "degF")));
        } else {
            file.temperature().ifPresent(both::temperature);
        }
        boolean option = fahrenheit != null || celsius != null;
        if (option || given) {
            used.add(source("temperature", option, given));
        }
    }

    private void humidity(Session file, Session.Builder both, List<String> used) {
        boolean given = file.humidity().isPresent();
        if (humidity != null) {
            if (!(humidity >= 0.0 && humidity <= 1.0)) {
                throw wrong("--humidity must be in [0, 1], but was " + plain(humidity)
                        + (humidity > 1.0 && humidity <= 100.0
                                ? "; for " + plain(humidity) + " percent write "
                                        + plain(new BigDecimal(plain(humidity)).movePointLeft(2))
                                : ""));
            }
            both.humidity(humidity);
        } else {
            file.humidity().ifPresent(both::humidity);
        }
        if (humidity != null || given) {
            used.add(source("humidity", humidity != null, given));
        }
    }

    private void wind(Session file, Session.Builder both, List<String> used) {
        boolean given = file.windSpeed().isPresent() && file.windFrom().isPresent();
        if (windMph == null && windFromDegrees == null) {
            if (given) {
                both.wind(file.windFrom().orElseThrow(), file.windSpeed().orElseThrow());
                used.add(source("wind", false, true));
            }
            return;
        }
        if (windMph == null) {
            throw wrong("--wind-from-deg needs --wind-mph: the wind has a direction but no speed");
        }
        if (windFromDegrees == null) {
            throw wrong("--wind-mph needs --wind-from-deg: the wind has a speed but no direction");
        }
        double speed = checked("--wind-mph", windMph, 0.0, 111.0, "mph", 0.0, 49.6, "m/s");
        if (!(Math.abs(windFromDegrees) <= 360.0)) {
            throw wrong("--wind-from-deg must be in [-360, 360] deg, but was " + plain(windFromDegrees));
        }
        both.wind(Angle.ofDegrees(windFromDegrees), Speed.ofMph(speed));
        used.add(source("wind", true, given));
    }

    private double checked(
            String option,
            double value,
            double low,
            double high,
            String unit,
            double otherLow,
            double otherHigh,
            String otherUnit) {
        if (!(value >= low && value <= high)) {
            throw wrong(option + " must be in [" + plain(low) + ", " + plain(high) + "] " + unit + " ("
                    + plain(otherLow) + " to " + plain(otherHigh) + " " + otherUnit + "), but was " + plain(value));
        }
        return value;
    }

    private void exclusive(String first, @Nullable Double one, String second, @Nullable Double other) {
        if (one != null && other != null) {
            throw wrong(first + " and " + second + " say the same thing; give one of them");
        }
    }

    private ParameterException wrong(String text) {
        if (spec == null) {
            throw new IllegalStateException(text);
        }
        return new ParameterException(spec.commandLine(), text);
    }

    private static String plain(double value) {
        return Double.isInfinite(value) ? "too large a number" : plain(BigDecimal.valueOf(value));
    }

    private static String plain(BigDecimal value) {
        BigDecimal number = value.signum() == 0 ? BigDecimal.ZERO : value.stripTrailingZeros();
        return number.precision() - number.scale() > 12 ? number.toString() : number.toPlainString();
    }
}
