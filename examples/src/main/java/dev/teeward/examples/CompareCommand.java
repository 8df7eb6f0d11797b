package dev.teeward.examples;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.compare.ComparisonException;
import dev.teeward.fitting.compare.HeadToHead;
import dev.teeward.fitting.compare.HeadToHeadResult;
import dev.teeward.fitting.complete.Completion;
import dev.teeward.fitting.complete.SameAir;
import dev.teeward.fitting.complete.SessionAir;
import dev.teeward.fitting.complete.SessionCompleter;
import dev.teeward.fitting.explain.Explain;
import dev.teeward.fitting.io.InputException;
import dev.teeward.fitting.io.MetricText;
import dev.teeward.fitting.io.SessionReader;
import dev.teeward.fitting.report.HeadToHeadReport;
import dev.teeward.quantity.Length;
import dev.teeward.quantity.Warning;
import java.io.IOException;
import java.io.PrintWriter;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** The main job: a session in, two clubs compared, the answer on the screen and in files. */
@Command(
        name = "compare",
        description =
                "Compares two clubs of a session: what differs, by how much, what is practically the same, and what"
                        + " these shots cannot tell.",
        sortOptions = false,
        footer = {
            "",
            "Settle --primary and --margin before the shots are hit: chosen afterwards, they prove less than they seem to."
        })
final class CompareCommand implements Callable<Integer> {
    /** The explanation flies every pair many times over; beyond this a person would wait for it. */
    private static final int MOST_EXPLAINED = 2_000;

    @Spec
    @SuppressWarnings("NullAway.Init") // set by picocli
    private CommandSpec spec;

    @Parameters(
            arity = "1..*",
            paramLabel = "SESSION.csv",
            description =
                    "The session. Several files are the days of one test, in order; pairs never span two of them.")
    @SuppressWarnings("NullAway.Init") // set by picocli
    private List<Path> sessions;

    @Option(
            names = "--club",
            paramLabel = "NAME",
            description =
                    "A club to compare. Give it twice: differences are the first minus the second. Needed if more than"
                            + " two clubs were hit.")
    private List<String> clubs = new ArrayList<>();

    @Option(
            names = "--primary",
            paramLabel = "METRIC",
            converter = MetricConverter.class,
            description =
                    "The one metric that decides, such as carry or face_to_path. The others have to pass a stricter"
                            + " test.")
    private @Nullable Metric primary;

    @Option(
            names = "--margin",
            paramLabel = "METRIC=AMOUNT",
            converter = Margin.Converter.class,
            description =
                    "The largest difference that does not matter to this golfer, with its unit, such as carry=5yd."
                            + " Once for each metric; the others have common ones.")
    private List<Margin> margins = new ArrayList<>();

    @Option(
            names = "--target",
            paramLabel = "DISTANCE",
            description = "The distance of the target on the target line, with its unit, such as 150yd: misses are then"
                    + " counted from there.")
    private @Nullable String target;

    @Option(
            names = "--level",
            paramLabel = "N",
            converter = DecimalConverter.class,
            description = "The level of all intervals, from 0.8 to 0.999; ${DEFAULT-VALUE} if not given.")
    private double level = 0.95;

    @Mixin
    private OneAir oneAir = new OneAir();

    @Mixin
    private OutputOptions output = new OutputOptions();

    @Mixin
    private SessionFiles reading = new SessionFiles();

    @Option(
            names = {"-h", "--help"},
            usageHelp = true,
            description = "Show this help message and exit.")
    @SuppressWarnings("UnusedVariable") // picocli acts on it
    private boolean help;

    @Override
    public Integer call() throws IOException {
        HeadToHead procedure = procedure();
        Optional<SameAir> air = air();
        sessions.forEach(path -> named(path, "SESSION.csv"));
        named(reading.mapping(), "--mapping");
        named(output.html(), "--html");
        named(output.json(), "--json");
        ReportFiles files = new ReportFiles(output.html(), output.json());
        files.check(reading.inputs(sessions));
        List<String> notes = new ArrayList<>();
        Session hit = read(notes);
        boolean explained = hit.shots().shots().size() <= MOST_EXPLAINED;
        Session inAir = air.map(same -> brought(same, hit)).orElse(hit);
        Session session = explained
                ? inAir
                : remarked(
                        inAir,
                        List.of("club or swing is explained up to " + MOST_EXPLAINED + " shots, and so not here"));
        PrintWriter out = spec.commandLine().getOut();
        HeadToHeadResult result = compare(procedure, session);
        HeadToHeadReport report = HeadToHeadReport.of(result);
        if (explained) {
            report = report.withExplanation(Explain.withDefaults().explain(result));
        }
        files.write(report.withUnits(output.units()), Map.of(), out);
        notes.forEach(out::println);
        return 0;
    }

    /** An empty name would be taken for the current folder. */
    private void named(@Nullable Path path, String what) {
        if (path != null && path.toString().isBlank()) {
            throw wrong(what + " is empty; give the name of a file");
        }
    }

    private HeadToHead procedure() {
        HeadToHead procedure = HeadToHead.withDefaults();
        if (!clubs.isEmpty()) {
            if (clubs.size() != 2) {
                throw wrong("--club must be given twice, but was given "
                        + (clubs.size() == 1 ? "once" : clubs.size() + " times"));
            }
            if (clubs.get(0).equals(clubs.get(1))) {
                throw wrong("--club must name two clubs, but both are \"" + clubs.get(0) + "\"");
            }
            procedure = procedure.withClubs(clubs.get(0), clubs.get(1));
        }
        if (primary != null) {
            procedure = procedure.withPrimary(primary);
        }
        Set<Metric> seen = EnumSet.noneOf(Metric.class);
        for (Margin margin : margins) {
            if (!seen.add(margin.metric())) {
                throw wrong("--margin of " + margin.metric().key() + " is given twice");
            }
            procedure = procedure.withMargin(margin.metric(), margin.si());
        }
        if (target != null) {
            procedure = procedure.withTarget(target(target));
        }
        if (!(level >= 0.8 && level <= 0.999)) {
            throw wrong("--level must be from 0.8 to 0.999, but was " + plain(BigDecimal.valueOf(level))
                    + (level > 50.0 && level < 100.0
                            ? "; for " + plain(BigDecimal.valueOf(level)) + " percent write "
                                    + plain(BigDecimal.valueOf(level).movePointLeft(2))
                            : ""));
        }
        if (BigDecimal.valueOf(level).scale() > 3) {
            throw wrong("--level must have at most three decimals, such as 0.995, but was "
                    + BigDecimal.valueOf(level).toPlainString());
        }
        return procedure.withLevel(level);
    }

    private Optional<SameAir> air() {
        try {
            return oneAir.air(output.units());
        } catch (IllegalArgumentException e) {
            throw wrong("--elevation: " + e.getMessage());
        }
    }

    /** The session in one air; what to know of that goes into its remarks. */
    private Session brought(SameAir air, Session session) {
        SameAir.Result result =
                sessionFault(sessions.get(0), () -> air.withoutIntervals().bring(session));
        return remarked(
                result.session(),
                result.warnings().stream().map(Warning::message).toList());
    }

    /** With what the page and the numbers must say as well as the screen; a remark has no colon. */
    private static Session remarked(Session session, List<String> remarks) {
        Session.Builder builder = session.toBuilder();
        remarks.forEach(remark -> builder.remark(remark.replace(":", " -")));
        return builder.build();
    }

    private static String plain(BigDecimal number) {
        BigDecimal stripped = number.stripTrailingZeros();
        return Math.abs(stripped.scale()) <= 12 ? stripped.toPlainString() : stripped.toString();
    }

    private Length target(String text) {
        double meters;
        try {
            meters = MetricText.amount(Metric.CARRY, text);
        } catch (IllegalArgumentException e) {
            throw wrong("--target: " + e.getMessage());
        }
        // A hair below, so that 1 yd written in another unit is not refused for its last digit.
        if (!(meters >= Length.ofYards(1.0).meters() - 1e-9 && meters <= Metric.CARRY.upper())) {
            throw wrong("--target must be from 1 yd (0.914 m) to 546 yd (500 m), but was " + text);
        }
        return Length.ofMeters(meters);
    }

    private Session read(List<String> notes) throws IOException {
        SessionReader reader = reading.reader();
        if (sessions.size() == 1) {
            Session session = reader.read(sessions.get(0));
            sessionFault(sessions.get(0), () -> SessionAir.of(session));
            return session;
        }
        for (int i = 0; i < sessions.size(); i++) {
            for (int j = 0; j < i; j++) {
                if (sessions.get(i).equals(sessions.get(j))
                        || (Files.exists(sessions.get(i))
                                && Files.exists(sessions.get(j))
                                && Files.isSameFile(sessions.get(i), sessions.get(j)))) {
                    throw InputException.of(sessions.get(i).toString(), "is given twice; its shots would count double");
                }
            }
        }
        // What depends on the air of a day is computed before the days become one session.
        List<Session> days = new ArrayList<>();
        for (Path path : sessions) {
            Completion day =
                    sessionFault(path, () -> SessionCompleter.withDefaults().complete(reader.read(path)));
            days.add(day.session());
            for (Warning warning : day.warnings()) {
                notes.add(path + ": " + warning.message());
            }
            sessionFault(path, () -> Session.combine(days));
        }
        return Session.combine(days);
    }

    private HeadToHeadResult compare(HeadToHead procedure, Session session) {
        Path first = sessions.get(0);
        try {
            return procedure.compare(session);
        } catch (ComparisonException e) {
            String files = sessions.size() == 1 ? first.toString() : first + " and " + (sessions.size() - 1) + " more";
            String how = e.reason() == ComparisonException.Reason.CLUBS_NOT_CHOSEN ? " by giving --club twice" : "";
            throw caused(InputException.of(files, e.getMessage() + how), e);
        }
    }

    /** A session that contradicts itself or the ones before it is a fault of the file. */
    private static <T> T sessionFault(Path path, Supplier<T> step) {
        try {
            return step.get();
        } catch (IllegalArgumentException e) {
            throw caused(InputException.of(path.toString(), String.valueOf(e.getMessage())), e);
        }
    }

    private static InputException caused(InputException failure, Exception cause) {
        failure.initCause(cause);
        return failure;
    }

    private ParameterException wrong(String text) {
        return new ParameterException(spec.commandLine(), text);
    }
}
