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
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** What is wanted of a club, on the command line. */
final class GoalOptions {
    @Option(
            names = "--goal",
            paramLabel = "GOAL[=WEIGHT/SCALE]",
            required = true,
            description =
                    "What is wanted: distance, closeness, tightness, hold or strokes. Given often, each with a weight"
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
                    "The turf of the green, such as firm-green, for balls that hold it; they count where they land if"
                            + " not given. No turf's numbers are validated.")
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
        if (turf != null && goals.stream().noneMatch(goal -> goal.startsWith("hold"))) {
            throw new IllegalArgumentException(
                    "--turf tells how a green is held and goes with --goal hold only, but the goal is "
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
            case "closeness" -> Goal.closeness(target());
            case "tightness" -> Goal.tightness();
            case "hold" -> turf == null ? Goal.holding(green()) : Goal.holding(green(), Ground.of(turf));
            case "strokes" ->
                Goal.strokes(ApproachStrokes.of(
                        table == null ? StrokesTable.example() : StrokesTable.read(table), target(), green()));
            default ->
                throw new IllegalArgumentException(
                        "\"" + name + "\" is not a goal; there are distance, closeness, tightness, hold and strokes");
        };
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
