package dev.teeward.examples;

import dev.teeward.fitting.Session;
import dev.teeward.fitting.ShotSet;
import dev.teeward.fitting.VisibleText;
import dev.teeward.fitting.complete.SessionCompleter;
import dev.teeward.fitting.io.InputException;
import dev.teeward.fitting.io.MetricText;
import dev.teeward.fitting.plan.FittingPlan;
import dev.teeward.fitting.plan.PairByPair;
import dev.teeward.fitting.plan.ShootingOrder;
import dev.teeward.fitting.plan.SpreadGuess;
import dev.teeward.fitting.report.HtmlPage;
import dev.teeward.fitting.report.Picture;
import dev.teeward.fitting.report.PlanPicture;
import dev.teeward.fitting.report.Section;
import dev.teeward.fitting.report.Sentence;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.Callable;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** How many pairs settle a margin, or, with a running session, where it stands and whether to go on. */
@Command(
        name = "plan",
        description = "Plans a session of two clubs within a cap on full swings, or tells where a running one stands.",
        sortOptions = false,
        footer = {
            "",
            "Before: give --sd, or --pilot with an earlier session. During: give --session after every pair, with the"
                    + " margin and the metric that were settled before the first. A re-hit replaces a shot of the pair in"
                    + " play, for a reason said beforehand and before its reading is looked at; in the file the shot"
                    + " thrown away is excluded and both carry the same pair. The cap is the fitter's judgement of fatigue"
                    + " and safety."
        })
final class PlanCommand implements Callable<Integer> {
    @Spec
    @SuppressWarnings("NullAway.Init") // set by picocli
    private CommandSpec spec;

    @Mixin
    private SessionFiles reading = new SessionFiles();

    @Option(
            names = "--margin",
            paramLabel = "METRIC=AMOUNT",
            required = true,
            converter = Margin.Converter.class,
            description =
                    "The metric that decides and the largest difference in it that does not matter, such as carry=5yd.")
    @SuppressWarnings("NullAway.Init") // set by picocli
    private Margin margin;

    @Option(
            names = "--sd",
            paramLabel = "AMOUNT",
            description = "The standard deviation of the differences within pairs, such as 6yd.")
    private @Nullable String sd;

    @Option(
            names = "--sd-pairs",
            paramLabel = "N",
            description = "How many pairs --sd comes from; it is taken for known if not given.")
    private @Nullable Integer sdPairs;

    @Option(names = "--pilot", paramLabel = "SESSION.csv", description = "Take the standard deviation from a session.")
    private @Nullable Path pilot;

    @Option(
            names = "--session",
            paramLabel = "SESSION.csv",
            description = "Tell where this session stands after its pairs so far.")
    private @Nullable Path session;

    @Option(
            names = "--club",
            paramLabel = "NAME",
            description = "A club. Give it twice if more than two clubs were hit: differences are the first minus the"
                    + " second.")
    private List<String> clubs = new ArrayList<>();

    @Option(
            names = "--swings",
            paramLabel = "N",
            description = "The most full swings, all included; ${DEFAULT-VALUE} if not given.")
    private int swings = 60;

    @Option(
            names = "--warm-up",
            paramLabel = "N",
            description = "How many of them warm up; ${DEFAULT-VALUE} if not given.")
    private int warmUp = 8;

    @Option(
            names = "--reserve",
            paramLabel = "N",
            description = "How many of them are kept for re-hits; ${DEFAULT-VALUE} if not given.")
    private int reserve = 4;

    @Option(
            names = "--chance",
            paramLabel = "N",
            converter = DecimalConverter.class,
            description = "The chance of either answer that is wanted; ${DEFAULT-VALUE} if not given.")
    private double chance = 0.8;

    @Option(
            names = "--level",
            paramLabel = "N",
            converter = DecimalConverter.class,
            description = "The level of the intervals, from 0.8 to 0.999; ${DEFAULT-VALUE} if not given.")
    private double level = 0.95;

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
        int sources = (sd == null ? 0 : 1) + (pilot == null ? 0 : 1) + (session == null ? 0 : 1);
        if (sources != 1) {
            throw wrong("give one of --sd, --pilot and --session");
        }
        Path read = session == null ? pilot : session;
        output.check(reading.inputs(read == null ? List.of() : List.of(read)));
        FittingPlan plan = checked(() -> FittingPlan.withDefaults()
                .withReserve(0)
                .withWarmUp(0)
                .withMostSwings(swings)
                .withWarmUp(warmUp)
                .withReserve(reserve)
                .withChance(chance)
                .withLevel(level));
        PlanText text = new PlanText(margin.metric().unit(output.units()), margin);
        List<String> names = clubs.isEmpty() ? List.of("first", "second") : twoClubs(clubs);
        PrintWriter out = spec.commandLine().getOut();
        Map<String, @Nullable Object> tree;
        List<String> lines;
        Supplier<Picture> picture;
        if (session != null) {
            ShotSet shots = shots(session);
            names = names(shots, session);
            PairByPair now = standing(shots, names);
            lines = text.during(now, names, swings - warmUp, plan);
            tree = text.tree(now, names);
            String first = names.get(0);
            String second = names.get(1);
            picture = () -> PlanPicture.looks(now, first, second, margin.metric(), output.units());
        } else {
            SpreadGuess guess = guess();
            FittingPlan.Result result = checked(() -> plan.forMargin(margin.si(), guess));
            int wanted = Math.min(result.mostPairs(), result.atTheEnd().pairs().orElse(result.mostPairs()));
            List<String> order = ShootingOrder.of(names.get(0), names.get(1)).mirrored(wanted);
            lines = text.before(result, String.join(", ", order), new int[] {swings, warmUp, reserve}, chance);
            tree = text.tree(result, order);
            picture = () -> PlanPicture.chances(plan, result);
        }
        List<Sentence> said = lines.stream()
                .map(line -> Sentence.of(VisibleText.line(line), List.of()))
                .toList();
        output.write(
                () -> HtmlPage.of(
                        "Two clubs, one margin of " + margin.metric().label(),
                        "en",
                        List.of(Section.of("in-short", session == null ? "The plan" : "Where it stands", said)),
                        List.of(),
                        List.of(picture.get())),
                () -> tree);
        lines.forEach(out::println);
        return 0;
    }

    private List<String> twoClubs(List<String> given) {
        if (given.size() != 2 || given.get(0).equals(given.get(1))) {
            throw wrong("--club must be given twice, with two names");
        }
        return given;
    }

    private ShotSet shots(Path file) {
        Session whole = reading.reader().read(file);
        return checked(() -> SessionCompleter.withDefaults().complete(whole))
                .session()
                .shots();
    }

    private List<String> names(ShotSet shots, Path file) {
        List<String> hit = shots.clubs();
        List<String> chosen = clubs.isEmpty() ? hit : twoClubs(clubs);
        if (chosen.size() != 2 || !hit.containsAll(chosen)) {
            throw InputException.of(
                    file.toString(),
                    "two clubs are needed, and the session has " + String.join(", ", hit) + "; give --club twice");
        }
        return chosen;
    }

    private PairByPair standing(ShotSet shots, List<String> names) {
        return PairByPair.withinMargin(margin.si())
                .withUnit(margin.metric().siUnit())
                .withLevel(level)
                .withMostSwings(swings, warmUp, reserve)
                .appendAll(shots, names.get(0), names.get(1), margin.metric());
    }

    private SpreadGuess guess() {
        if (pilot != null) {
            ShotSet shots = shots(pilot);
            List<String> names = names(shots, pilot);
            Path file = pilot;
            PairByPair earlier =
                    PairByPair.withinMargin(margin.si()).appendAll(shots, names.get(0), names.get(1), margin.metric());
            return earlier.spread()
                    .orElseThrow(() -> InputException.of(
                            file.toString(),
                            (earlier.pairs() < 2
                                            ? "fewer than two whole pairs have "
                                            : "all differences within pairs are equal in ")
                                    + margin.metric().label()));
        }
        double spread;
        try {
            spread = MetricText.amount(margin.metric(), Objects.requireNonNull(sd));
        } catch (IllegalArgumentException e) {
            throw wrong("--sd: " + e.getMessage());
        }
        Integer pairs = sdPairs;
        return checked(() -> pairs == null ? SpreadGuess.known(spread) : SpreadGuess.ofPilot(spread, pairs));
    }

    /** What the library refuses is the user's business. */
    private <T> T checked(Supplier<T> action) {
        try {
            return action.get();
        } catch (InputException e) {
            throw e;
        } catch (IllegalArgumentException e) {
            throw new ParameterException(spec.commandLine(), String.valueOf(e.getMessage()), e);
        }
    }

    private ParameterException wrong(String message) {
        return new ParameterException(spec.commandLine(), message);
    }
}
