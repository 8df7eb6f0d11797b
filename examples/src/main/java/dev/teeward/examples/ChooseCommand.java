package dev.teeward.examples;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.choose.ClubChoice;
import dev.teeward.fitting.choose.Goal;
import dev.teeward.fitting.compare.PairwiseComparison;
import dev.teeward.fitting.complete.SameAir;
import dev.teeward.fitting.io.InputException;
import dev.teeward.fitting.report.ChoiceReport;
import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.RatioUnit;
import dev.teeward.quantity.Unit;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Which club of a session serves a goal best. */
@Command(
        name = "choose",
        description =
                "Tells which club of a session serves a goal best, how sure that is, and what being wrong would cost.",
        sortOptions = false,
        footer = {
            "",
            "Settle the goal before the shots are hit. The mean to expect is drawn towards the other clubs, since the"
                    + " one that came out first owes something to luck; shares of balls are left as counted."
        })
final class ChooseCommand implements Callable<Integer> {
    @Spec
    @SuppressWarnings("NullAway.Init") // set by picocli
    private CommandSpec spec;

    @Parameters(
            arity = "1..*",
            paramLabel = "SESSION.csv",
            description = "A session with two clubs or more; several files count as one.")
    private List<Path> sessions = List.of();

    @Mixin
    private SessionFiles reading = new SessionFiles();

    @Mixin
    private GoalOptions goals = new GoalOptions();

    @Option(
            names = "--current",
            paramLabel = "NAME",
            description = "The club the golfer plays now: the others are compared with it.")
    private @Nullable String current;

    @Option(
            names = "--price",
            paramLabel = "NAME=AMOUNT",
            description = "What a club costs, in any money. Once for each club; a club without a price costs nothing.")
    private Map<String, Double> prices = new LinkedHashMap<>();

    @Option(
            names = "--worth-of-money",
            paramLabel = "N",
            converter = DecimalConverter.class,
            description =
                    "How much of the goal one unit of money is worth: yd (m with --units metric), strokes, share of"
                            + " balls.")
    private double worth;

    @Option(
            names = "--level",
            paramLabel = "N",
            converter = DecimalConverter.class,
            description = "The level of all intervals; ${DEFAULT-VALUE} if not given.")
    private double level = 0.95;

    @Mixin
    private OneAir oneAir = new OneAir();

    @Mixin
    private OutputOptions output = new OutputOptions();

    @Option(
            names = {"-h", "--help"},
            usageHelp = true,
            description = "Show this help message and exit.")
    @SuppressWarnings("UnusedVariable") // picocli acts on it
    private boolean help;

    @Override
    public Integer call() throws IOException {
        output.check(reading.inputs(sessions));
        Session read = read();
        Unit unit;
        ClubChoice.Result r;
        try {
            Goal goal = goals.goal();
            unit = goal.unit() == RatioUnit.ONE ? RatioUnit.ONE : Metric.CARRY.unit(output.units());
            ClubChoice choice = ClubChoice.withGoal(goal).withLevel(level).withWorthOfMoney(unit.toSi(worth));
            if (current != null) {
                choice = choice.withCurrentClub(current);
            }
            Optional<SameAir> air = oneAir.air(output.units());
            if (air.isPresent()) {
                choice = choice.withAir(air.get());
            }
            for (Map.Entry<String, Double> price : prices.entrySet()) {
                choice = choice.withPrice(price.getKey(), price.getValue());
            }
            r = choice.choose(read);
        } catch (InputException e) {
            throw e;
        } catch (IllegalArgumentException e) {
            throw new ParameterException(spec.commandLine(), String.valueOf(e.getMessage()), e);
        }
        output.write(ChoiceReport.of(r).withUnits(output.units())::html, () -> tree(r, unit));
        PrintWriter out = spec.commandLine().getOut();
        out.println(text(
                "%s; the %s mean is the best.", r.goal().words(), r.goal().smallestIsBest() ? "smallest" : "largest"));
        r.clubs().forEach(club -> out.println(line(club, unit)));
        r.againstCurrent().ifPresent(pairs -> pairs.pairs().forEach(pair -> out.println(difference(r, pair, unit))));
        if (r.againstCurrent().isEmpty()) {
            r.pairs().pairs().forEach(pair -> out.println(difference(r, pair, unit)));
        }
        out.println((r.leaders().size() > 1 ? "The best mean is shared by " : "The best mean has ")
                + listed(r.leaders())
                + (prices.isEmpty() ? "." : ", price counted."));
        if (!r.undecided().isEmpty()) {
            out.println("The shots can't tell between " + listed(r.undecided()) + ".");
        }
        r.warnings().forEach(warning -> out.println("note: " + warning.message()));
        if (!goals.withoutTurf().isEmpty()) {
            out.println("note: for " + String.join(" and ", goals.withoutTurf())
                    + " the balls count where they land; the turf counts for hold and total only");
        }
        if (goals.fromMemory()) {
            out.println("note: the strokes are a few rows quoted from memory, to try things out; give --strokes");
        }
        return 0;
    }

    private Session read() {
        try {
            return reading.together(sessions);
        } catch (InputException e) {
            throw e;
        } catch (IllegalArgumentException e) {
            throw SessionFiles.wrong(sessions, e);
        }
    }

    private static String listed(List<ClubChoice.ClubResult> clubs) {
        return String.join(
                " and ", clubs.stream().map(ClubChoice.ClubResult::name).toList());
    }

    private static String line(ClubChoice.ClubResult club, Unit unit) {
        String best = club.probability().isPresent()
                ? text(
                        ", the best with a probability of %.0f %%",
                        100.0 * club.probability().getAsDouble())
                : "";
        String loss = club.expectedLoss().isPresent()
                ? text(", expected loss %.2f", unit.fromSi(club.expectedLoss().getAsDouble()))
                : "";
        String shrunk = club.shrunk().map(e -> ", to expect " + shown(e, unit)).orElse("");
        return "  " + club.name() + ": " + shown(club.mean(), unit) + text(", %d shots", club.shots()) + shrunk + best
                + loss;
    }

    private static String difference(ClubChoice.Result r, PairwiseComparison.Pair pair, Unit unit) {
        return text(
                "  %s less %s: %s, p %s",
                r.clubs().get(pair.first()).name(),
                r.clubs().get(pair.second()).name(),
                shown(pair.difference(), unit),
                pair.pValue() < 0.001 ? "<0.001" : text("%.3f", pair.pValue()));
    }

    private static String shown(Estimate e, Unit unit) {
        String value = text("%.2f %s", unit.fromSi(e.value()), unit.symbol()).strip();
        return e.interval().bounded()
                ? value
                        + text(
                                " (%.2f to %.2f)",
                                unit.fromSi(e.interval().lower()),
                                unit.fromSi(e.interval().upper()))
                : value;
    }

    private static Map<String, @Nullable Object> tree(ClubChoice.Result r, Unit unit) {
        Map<String, @Nullable Object> tree = new LinkedHashMap<>();
        tree.put("schema", "teeward-choice/1");
        tree.put("goal", r.goal().words());
        tree.put("unit", unit.symbol());
        tree.put("smallest_is_best", r.goal().smallestIsBest());
        tree.put("leader", r.leader().name());
        tree.put(
                "leaders", r.leaders().stream().map(ClubChoice.ClubResult::name).toList());
        tree.put(
                "undecided",
                r.undecided().stream().map(ClubChoice.ClubResult::name).toList());
        tree.put("clubs", r.clubs().stream().map(club -> tree(club, unit)).toList());
        tree.put("pairs", r.pairs().pairs().stream().map(p -> tree(r, p, unit)).toList());
        tree.put("pairs_method", r.pairs().method());
        tree.put(
                "against_current",
                r.againstCurrent()
                        .map(against -> against.pairs().stream()
                                .map(pair -> tree(r, pair, unit))
                                .toList())
                        .orElse(null));
        tree.put(
                "against_current_method",
                r.againstCurrent().map(PairwiseComparison.Result::method).orElse(null));
        tree.put("warnings", r.warnings().stream().map(w -> w.code()).toList());
        return tree;
    }

    private static Map<String, @Nullable Object> tree(ClubChoice.ClubResult club, Unit unit) {
        Map<String, @Nullable Object> tree = new LinkedHashMap<>();
        tree.put("club", club.name());
        tree.put("shots", club.shots());
        tree.put("left_out", club.leftOut());
        tree.put("mean", JsonNumbers.estimate(club.mean(), unit));
        tree.put("price", unit.fromSi(club.price()));
        tree.put(
                "probability",
                club.probability().isPresent() ? club.probability().getAsDouble() : null);
        tree.put(
                "expected_loss",
                club.expectedLoss().isPresent()
                        ? unit.fromSi(club.expectedLoss().getAsDouble())
                        : null);
        tree.put("shrunk", club.shrunk().map(e -> JsonNumbers.estimate(e, unit)).orElse(null));
        return tree;
    }

    private static Map<String, @Nullable Object> tree(ClubChoice.Result r, PairwiseComparison.Pair pair, Unit unit) {
        Map<String, @Nullable Object> tree = new LinkedHashMap<>();
        tree.put("first", r.clubs().get(pair.first()).name());
        tree.put("second", r.clubs().get(pair.second()).name());
        tree.put("difference", JsonNumbers.estimate(pair.difference(), unit));
        tree.put("p_value", pair.pValue());
        return tree;
    }

    private static String text(String pattern, Object... values) {
        return String.format(Locale.ROOT, pattern, values);
    }
}
