package dev.teeward.examples;

import static dev.teeward.quantity.Units.degrees;
import static dev.teeward.quantity.Units.fahrenheit;
import static dev.teeward.quantity.Units.feet;
import static dev.teeward.quantity.Units.mph;
import static dev.teeward.quantity.Units.rpm;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.compare.HeadToHead;
import dev.teeward.fitting.compare.HeadToHeadResult;
import dev.teeward.fitting.io.SessionReader;
import dev.teeward.fitting.report.HeadToHeadReport;
import dev.teeward.flight.Flight;
import dev.teeward.flight.FlightModel;
import dev.teeward.flight.LaunchConditions;
import dev.teeward.flight.air.Atmosphere;
import dev.teeward.flight.air.Wind;
import dev.teeward.quantity.SpeedUnit;
import java.io.PrintStream;
import java.nio.file.Path;
import java.util.Locale;

/** The programs of the README, between marks that its test looks for. {@code out} stands for {@code System.out}. */
final class ReadmePrograms {
    private ReadmePrograms() {}

    static void answer(Path file, PrintStream out) {
        // README answer
        Session session = SessionReader.withDefaults().read(file);
        HeadToHeadResult result = HeadToHead.withDefaults()
                .withPrimary(Metric.FACE_TO_PATH) // settled before the shots are hit, as is the margin
                .withMargin(Metric.CLUB_SPEED, SpeedUnit.MILE_PER_HOUR.toSi(1.0))
                .compare(session);
        HeadToHeadReport.of(result).sections().get(0).sentences().forEach(out::println);
        // README end
    }

    static void flight(PrintStream out) {
        // README flight
        LaunchConditions launch = LaunchConditions.builder()
                .ballSpeed(mph(118.0))
                .launchAngle(degrees(17.2))
                .startDirection(degrees(-1.2))
                .spinRate(rpm(6_400.0))
                .axisTilt(degrees(-4.0))
                .build();
        FlightModel model = FlightModel.standard()
                .withAir(Atmosphere.standardAt(feet(5_280.0)).withTemperature(fahrenheit(85.0)))
                .withWind(Wind.from(degrees(30.0), mph(8.0)));
        Flight flight = model.fly(launch);
        out.printf(
                Locale.ROOT,
                "carry %.1f yd, side %+.1f yd, curve %+.1f yd, apex %.0f ft, descent %.1f deg%n",
                flight.carry().yards(),
                flight.side().yards(),
                flight.curve().yards(),
                flight.apex().feet(),
                flight.descentAngle().degrees());
        // README end
    }
}
