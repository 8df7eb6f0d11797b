package dev.teeward.examples;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.VisibleText;
import dev.teeward.fitting.io.SessionReader;
import dev.teeward.fitting.pool.ClubOverGolfers;
import dev.teeward.fitting.pool.GolferEffect;
import dev.teeward.fitting.report.PoolReport;
import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.Unit;
import dev.teeward.quantity.Warning;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** The difference between two clubs over many golfers, from one session of each. */
@Command(
        name = "pool",
        description = "Shows what a club does over many golfers, from one session of each, with intervals.",
        sortOptions = false,
        footer = {
            "",
            "The two clubs are those of the first session, in the order of their first shots; every session needs both."
                    + " The mean is for all golfers like these, the next golfer for one more of them. Left-handed golfers are"
                    + " counted in mirror image where there is a right and a left."
        })
final class PoolCommand implements Callable<Integer> {
    @Spec
    @SuppressWarnings("NullAway.Init") // set by picocli
    private CommandSpec spec;

    @Parameters(arity = "2..*", paramLabel = "SESSION.csv", description = "The sessions, one of each golfer.")
    private List<Path> sessions = List.of();

    @Option(
            names = "--metric",
            paramLabel = "METRIC",
            converter = MetricConverter.class,
            defaultValue = "carry",
            description = "What to compare; carry if not given.")
    @SuppressWarnings("NullAway.Init") // set by picocli
    private Metric metric;

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
        output.check(sessions);
        Map<String, Session> golfers = new LinkedHashMap<>();
        for (Path path : sessions) {
            if (golfers.put(path.toString(), SessionReader.withDefaults().read(path)) != null) {
                throw new ParameterException(spec.commandLine(), path + " is given twice; each golfer counts once");
            }
        }
        List<String> clubs = golfers.values().iterator().next().shots().clubs();
        if (clubs.size() != 2) {
            throw new ParameterException(
                    spec.commandLine(), "the first session must have two clubs, but has " + clubs.size());
        }
        ClubOverGolfers.Result result;
        try {
            result = ClubOverGolfers.of(clubs.get(0), clubs.get(1), metric).pool(golfers);
        } catch (IllegalArgumentException e) {
            throw new ParameterException(spec.commandLine(), String.valueOf(e.getMessage()), e);
        }
        output.write(PoolReport.of(result).withUnits(output.units())::html, () -> tree(result));
        print(result, spec.commandLine().getOut());
        return 0;
    }

    private void print(ClubOverGolfers.Result r, PrintWriter out) {
        out.println(
                VisibleText.line(r.first()) + " minus " + VisibleText.line(r.second()) + ", " + metric.label() + ":");
        for (GolferEffect golfer : r.golfers()) {
            out.println("  " + VisibleText.line(golfer.golfer()) + ": " + words(golfer.difference()));
        }
        r.leftOut()
                .forEach((golfer, why) ->
                        out.println("  " + VisibleText.line(golfer) + ": left out, " + VisibleText.line(why)));
        out.println("mean over golfers: " + words(r.pooled().mean()));
        out.println("next golfer: " + words(r.pooled().nextGolfer()));
        out.println(
                "golfers differ by (standard deviation): " + words(r.pooled().spread()));
        r.warnings().forEach(warning -> out.println("note: " + warning.message()));
    }

    private String words(Estimate estimate) {
        Estimate e = estimate.convertTo(unit());
        return e.interval().bounded()
                ? String.format(
                        Locale.ROOT,
                        "%.1f %s (%.0f %% interval %.1f to %.1f)",
                        e.value(),
                        e.unit().symbol(),
                        100.0 * e.interval().level(),
                        e.interval().lower(),
                        e.interval().upper())
                : String.format(
                        Locale.ROOT, "%.1f %s (no limits)", e.value(), e.unit().symbol());
    }

    private Unit unit() {
        return metric.unit(output.units());
    }

    private Map<String, @Nullable Object> tree(ClubOverGolfers.Result r) {
        List<Object> golfers = new ArrayList<>();
        for (GolferEffect golfer : r.golfers()) {
            Map<String, @Nullable Object> one = new LinkedHashMap<>();
            one.put("golfer", golfer.golfer());
            one.put("difference", JsonNumbers.estimate(golfer.difference(), unit()));
            one.put("mirrored", golfer.mirrored());
            one.put("warnings", golfer.warnings().stream().map(Warning::code).toList());
            golfers.add(one);
        }
        Map<String, @Nullable Object> tree = new LinkedHashMap<>();
        tree.put("schema", "teeward-pool/1");
        tree.put("first", r.first());
        tree.put("second", r.second());
        tree.put("metric", metric.key());
        tree.put("unit", unit().symbol());
        tree.put("mean", JsonNumbers.estimate(r.pooled().mean(), unit()));
        tree.put("next_golfer", JsonNumbers.estimate(r.pooled().nextGolfer(), unit()));
        tree.put("golfer_sd", JsonNumbers.estimate(r.pooled().spread(), unit()));
        tree.put("golfers", golfers);
        tree.put("left_out", r.leftOut());
        tree.put("session_warnings", sessionWarnings(r));
        tree.put("warnings", r.warnings().stream().map(Warning::code).toList());
        return tree;
    }

    /** With how many golfers each warning of a session was found. */
    private static List<Object> sessionWarnings(ClubOverGolfers.Result r) {
        Map<String, Integer> counts = new LinkedHashMap<>();
        r.golfers().forEach(golfer -> golfer.warnings().forEach(w -> counts.merge(w.code(), 1, Integer::sum)));
        List<Object> found = new ArrayList<>();
        counts.forEach((code, golfers) -> found.add(Map.of("code", code, "golfers", golfers)));
        return found;
    }
}
