package dev.teeward.examples;

import static dev.teeward.quantity.Units.degrees;
import static dev.teeward.quantity.Units.fahrenheit;
import static dev.teeward.quantity.Units.feet;
import static dev.teeward.quantity.Units.mph;
import static dev.teeward.quantity.Units.rpm;

import dev.teeward.fitting.Intent;
import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.ShotSet;
import dev.teeward.fitting.UnitSystem;
import dev.teeward.fitting.compare.HeadToHead;
import dev.teeward.fitting.compare.HeadToHeadResult;
import dev.teeward.fitting.compare.Workability;
import dev.teeward.fitting.gapping.SetUpChange;
import dev.teeward.fitting.gapping.SetUpEffect;
import dev.teeward.fitting.io.SessionReader;
import dev.teeward.fitting.report.HeadToHeadReport;
import dev.teeward.flight.Flight;
import dev.teeward.flight.FlightModel;
import dev.teeward.flight.LaunchConditions;
import dev.teeward.flight.air.Atmosphere;
import dev.teeward.flight.air.Wind;
import dev.teeward.quantity.SpeedUnit;
import dev.teeward.quantity.Warning;
import java.io.PrintStream;
import java.nio.file.Path;
import java.util.List;
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

    static void workable(Path file, PrintStream out) {
        // README workable
        Session session = SessionReader.withDefaults().read(file);
        List<Shot> meant = session.shots().stream() // a file can say it shot by shot, in its column "intent"
                .map(shot -> shot.toBuilder().intent(Intent.FADE).build())
                .toList();
        Workability.Comparison clubs = Workability.withDefaults()
                .compare(session.toBuilder().shots(ShotSet.of(meant)).build(), "Alder", "Rowan");
        clubs.advice().stream()
                .map(a -> a.wish() + ": " + a.estimate() + ", " + a.lean())
                .forEach(out::println);
        clubs.warnings().stream().map(Warning::message).forEach(out::println);
        SetUpEffect.Result flatter = SetUpEffect.withDefaults()
                .of(session, "Alder", SetUpChange.none().withLie(degrees(-1.0)));
        flatter.effects().entrySet().stream()
                .map(e -> e.getKey().label() + ": "
                        + e.getValue().change().convertTo(e.getKey().unit(UnitSystem.US)))
                .forEach(out::println);
        flatter.warnings().stream().map(Warning::message).forEach(out::println);
        // README end
    }
}
