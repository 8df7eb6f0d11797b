package dev.teeward.examples;

import dev.teeward.fitting.report.HtmlPage;
import dev.teeward.fitting.report.Picture;
import dev.teeward.fitting.report.Section;
import dev.teeward.fitting.report.Sentence;
import dev.teeward.fitting.report.Table;
import dev.teeward.flight.Ball;
import dev.teeward.flight.Flight;
import dev.teeward.flight.FlightModel;
import dev.teeward.flight.LaunchConditions;
import dev.teeward.flight.aero.AerodynamicModel;
import dev.teeward.flight.aero.Davies1949;
import dev.teeward.flight.aero.SmitsSmith1994;
import dev.teeward.flight.aero.TypicalAerodynamics;
import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Speed;
import dev.teeward.quantity.SpinRate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The same shots through every aerodynamic model that gives both drag and lift. */
final class ModelSpread {
    static final List<AerodynamicModel> MODELS =
            List.of(TypicalAerodynamics.of(), SmitsSmith1994.of(), Davies1949.of());

    /** Invented, one for each part of the bag. */
    static final List<Shot> SHOTS = List.of(
            new Shot("drive", "Drive", 150.0, 12.5, 2_700.0),
            new Shot("slow-drive", "Slow drive", 112.0, 14.5, 3_000.0),
            new Shot("six-iron", "6-iron", 118.0, 17.2, 6_400.0),
            new Shot("wedge", "Wedge", 92.0, 28.0, 9_200.0));

    private static final List<String> HEADINGS =
            List.of("Model", "carry yd", "apex yd", "descent deg", "95 of 100 balls yd", "left its range in");

    private final List<List<Flight>> flights = new ArrayList<>();
    private final List<List<Optional<BallBand>>> bands = new ArrayList<>();

    record Shot(String id, String name, double mph, double launchDegrees, double rpm) {
        LaunchConditions launch() {
            return LaunchConditions.builder()
                    .ballSpeed(Speed.ofMph(mph))
                    .launchAngle(Angle.ofDegrees(launchDegrees))
                    .spinRate(SpinRate.ofRpm(rpm))
                    .build();
        }

        String title() {
            return String.format(Locale.ROOT, "%s: %.0f mph, %.1f deg, %,.0f rpm", name, mph, launchDegrees, rpm);
        }
    }

    ModelSpread() {
        for (Shot shot : SHOTS) {
            flights.add(MODELS.stream()
                    .map(model -> FlightModel.of(Ball.of(model)).fly(shot.launch()))
                    .toList());
            bands.add(MODELS.stream()
                    .map(model -> BallBand.of(model, shot.launch()))
                    .toList());
        }
    }

    /** The flights of a shot, in the order of the models. */
    List<Flight> flights(int shot) {
        return flights.get(shot);
    }

    /** The spreads from ball to ball of a shot, in the order of the models. */
    List<Optional<BallBand>> bands(int shot) {
        return bands.get(shot);
    }

    private static String carries(BallBand band) {
        return String.format(
                Locale.ROOT,
                "%.0f to %.0f",
                band.shorter().carry().yards(),
                band.longer().carry().yards());
    }

    private String sentence(int shot) {
        List<Double> carries = flights(shot).stream()
                .map(f -> f.carry().yards())
                .sorted(Comparator.naturalOrder())
                .toList();
        double least = carries.get(0);
        double most = carries.get(carries.size() - 1);
        return String.format(
                Locale.ROOT,
                "%s: carries %.0f to %.0f yd, a spread of %.0f yd or %.0f %% of the longest.",
                SHOTS.get(shot).name(),
                least,
                most,
                most - least,
                100.0 * (most - least) / most);
    }

    private Table table(int shot) {
        List<List<String>> rows = new ArrayList<>();
        for (int i = 0; i < MODELS.size(); i++) {
            Flight flight = flights(shot).get(i);
            List<String> left = flight.warnings().stream()
                    .map(warning -> warning.code().startsWith("reynolds") ? "Reynolds number" : "spin ratio")
                    .toList();
            rows.add(List.of(
                    MODELS.get(i).toString(),
                    String.format(Locale.ROOT, "%.1f", flight.carry().yards()),
                    String.format(Locale.ROOT, "%.1f", flight.apex().yards()),
                    String.format(Locale.ROOT, "%.1f", flight.descentAngle().degrees()),
                    bands(shot).get(i).map(ModelSpread::carries).orElse("not stated"),
                    left.isEmpty() ? "nothing" : String.join(", ", left)));
        }
        return Table.of(SHOTS.get(shot).id(), SHOTS.get(shot).title(), HEADINGS, rows);
    }

    private static List<String> explanations() {
        return List.of(
                "The shots are invented; the air is standard air at sea level, calm, and every ball weighs and measures the same.",
                "Davies measured balls of 1949 at one speed; Smits and Smith balls of about 1994, for drives only.",
                "Balls differ: 95 of 100 balls of a kind carry what the table says and the band in the picture shows, by the spread"
                        + " of drag and lift that the model states. Only the typical ball states one, 3 % of each.",
                "The spread shows how much hangs on the ball and on the range of the measurements, not how wrong each is.");
    }

    /** The answer as lines of text. */
    String text() {
        StringBuilder text = new StringBuilder("The same shots through every model that gives both drag and lift\n\n");
        for (int shot = 0; shot < SHOTS.size(); shot++) {
            text.append(SHOTS.get(shot).title()).append('\n');
            String form = "  %-20s %9s %9s %12s %19s   %s%n";
            text.append(String.format(Locale.ROOT, form.replace("%n", "\n"), HEADINGS.toArray()));
            for (List<String> row : table(shot).rows()) {
                text.append(String.format(Locale.ROOT, form.replace("%n", "\n"), row.toArray()));
            }
            text.append("  ").append(sentence(shot)).append("\n\n");
        }
        explanations().forEach(line -> text.append(line).append('\n'));
        return text.toString();
    }

    /** The answer as a page with a picture of each shot. */
    String html() {
        List<Section> sections = new ArrayList<>();
        List<Table> tables = new ArrayList<>();
        List<Picture> pictures = new ArrayList<>();
        List<Sentence> answer = new ArrayList<>();
        for (int shot = 0; shot < SHOTS.size(); shot++) {
            answer.add(Sentence.of(sentence(shot), List.of()));
        }
        explanations().forEach(line -> answer.add(Sentence.of(line, List.of())));
        sections.add(Section.of("answer", "How far apart they land", answer));
        for (int shot = 0; shot < SHOTS.size(); shot++) {
            Shot one = SHOTS.get(shot);
            sections.add(Section.of(one.id(), one.name(), List.of()));
            tables.add(table(shot));
            pictures.add(Picture.of(
                    one.id(),
                    one.title(),
                    sentence(shot),
                    new FlightsFromTheSide(one, flights(shot), bands(shot), sentence(shot)).svg()));
        }
        return HtmlPage.of("The same shots through every model", "en", sections, tables, pictures);
    }
}
