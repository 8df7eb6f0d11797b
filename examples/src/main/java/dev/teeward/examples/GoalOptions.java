package dev.teeward.examples;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.choose.ApproachStrokes;
import dev.teeward.fitting.choose.Goal;
import dev.teeward.fitting.choose.StrokesTable;
import dev.teeward.fitting.io.MetricText;
import dev.teeward.fitting.summary.TargetRegion;
import dev.teeward.flight.ground.Ground;
import dev.teeward.flight.ground.TurfClass;
import dev.teeward.quantity.Length;
import dev.teeward.quantity.RatioUnit;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** What is wanted of a club, on the command line. */
final class GoalOptions {
    /** The goals that a turf is for. */
    private static final List<String> ON_TURF = List.of("total", "hold");

    @Option(
            names = "--goal",
            paramLabel = "GOAL[=WEIGHT/SCALE]",
            required = true,
            description =
                    "What is wanted: distance, total, closeness, tightness, hold or strokes. Given often, each with a weight"
                            + " and the amount that is worth as much as the others': --goal distance=1/5yd --goal"
                            + " closeness=2/3yd.")
    private List<String> goals = new ArrayList<>();

    @Option(
            names = "--target",
            paramLabel = "DISTANCE",
            description = "The distance of the target, such as 165yd; needed for closeness, hold and strokes.")
    private @Nullable String target;

    @Option(
            names = "--green-depth",
            paramLabel = "DISTANCE",
            description = "The depth of the green, an ellipse about the target; ${DEFAULT-VALUE} if not given.")
    private String depth = "25yd";

    @Option(
            names = "--green-width",
            paramLabel = "DISTANCE",
            description = "The width of the green; ${DEFAULT-VALUE} if not given.")
    private String width = "25yd";

    @Option(
            names = "--turf",
            paramLabel = "KIND",
            converter = TurfConverter.class,
            description =
                    "The turf, such as firm-green, for balls that hold the green, where they count where they land if it"
                            + " is not given, and for the total, which needs it. No turf's numbers are validated.")
    private @Nullable TurfClass turf;

    @Option(
            names = "--strokes",
            paramLabel = "TABLE.csv",
            description =
                    "A baseline with the columns lie (fairway, rough, green), distance_yd and strokes. A few rows from"
                            + " memory if not given.")
    private @Nullable Path table;

    /** The goal, or an {@link IllegalArgumentException} that says what is wrong. */
    Goal goal() {
        if (turf != null && names().noneMatch(ON_TURF::contains)) {
            throw new IllegalArgumentException(
                    "--turf tells how balls run and goes with --goal hold or total only, but the goal is "
                            + String.join(", ", goals));
        }
        if (goals.size() == 1 && goals.get(0).indexOf('=') < 0) {
            return named(goals.get(0));
        }
        return Goal.mixture(goals.stream().map(this::part).toList());
    }

    /** Whether the strokes are those of the bundled example. */
    boolean fromMemory() {
        return table == null && goals.stream().anyMatch(goal -> goal.startsWith("strokes"));
    }

    /** The goals for which balls count where they land though a turf is given for another. */
    List<String> withoutTurf() {
        return turf == null
                ? List.of()
                : names().filter(name -> !ON_TURF.contains(name)).distinct().toList();
    }

    private Stream<String> names() {
        return goals.stream().map(goal -> goal.replaceFirst("=.*", ""));
    }

    private Goal.Part part(String text) {
        int equals = text.indexOf('=');
        int slash = text.indexOf('/');
        if (equals < 1 || slash < equals) {
            throw new IllegalArgumentException(
                    "several goals need a weight and a scale each, as in closeness=2/3yd, but one is \"" + text + "\"");
        }
        Goal goal = named(text.substring(0, equals));
        Metric kind = goal.unit() == RatioUnit.ONE ? Metric.SMASH_FACTOR : Metric.CARRY;
        return new Goal.Part(
                goal,
                MetricText.amount(Metric.SMASH_FACTOR, text.substring(equals + 1, slash)),
                MetricText.amount(kind, text.substring(slash + 1)));
    }

    private Goal named(String name) {
        return switch (name) {
            case "distance" -> Goal.distance();
            case "total" -> total();
            case "closeness" -> Goal.closeness(target());
            case "tightness" -> Goal.tightness();
            case "hold" -> turf == null ? Goal.holding(green()) : Goal.holding(green(), Ground.of(turf));
            case "strokes" ->
                Goal.strokes(ApproachStrokes.of(
                        table == null ? StrokesTable.example() : StrokesTable.read(table), target(), green()));
            default ->
                throw new IllegalArgumentException("\"" + name
                        + "\" is not a goal; there are distance, total, closeness, tightness, hold and strokes");
        };
    }

    private Goal total() {
        if (turf == null) {
            throw new IllegalArgumentException(
                    "--turf is needed for the total, such as --turf fairway; how far a ball runs hangs on it");
        }
        return Goal.total(Ground.of(turf));
    }

    private TargetRegion green() {
        return TargetRegion.ellipse(
                target().meters(),
                0.0,
                0.5 * MetricText.amount(Metric.CARRY, depth),
                0.5 * MetricText.amount(Metric.CARRY, width),
                0.0);
    }

    private Length target() {
        if (target == null) {
            throw new IllegalArgumentException("--target is needed for closeness, hold and strokes");
        }
        return Length.ofMeters(MetricText.amount(Metric.CARRY, target));
    }
}
