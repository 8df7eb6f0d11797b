package dev.teeward.examples;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.UnitSystem;
import dev.teeward.fitting.VisibleText;
import dev.teeward.fitting.compare.AirShare;
import dev.teeward.fitting.compare.AirShareResult;
import dev.teeward.fitting.complete.SameAir;
import dev.teeward.fitting.io.InputException;
import dev.teeward.fitting.io.WholeFile;
import dev.teeward.fitting.summary.SampleSummary;
import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.Interval;
import dev.teeward.quantity.Length;
import dev.teeward.quantity.LengthUnit;
import dev.teeward.quantity.Warning;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** The carry of each club of a session, or of several, at several elevations. */
@Command(
        name = "altitude",
        description =
                "Shows how far each club of one session or several carries at several elevations, with intervals.",
        sortOptions = false,
        footer = {
            "",
            "Each shot is flown in the air of its session and in calm standard air at each elevation; its carry is multiplied"
                    + " by the ratio. There are two intervals: from shot to shot is that of the mean by Student's t over the"
                    + " shots, as though they were all of one day; launch and ball is what is not known of these, the same for"
                    + " all shots, and holds no scatter of the shots. Excluded shots don't count. One launch is a session of"
                    + " one shot. What heat and cold do to ball and club is not modelled.",
            "",
            "Several sessions are taken as one, each shot in the air of its own day. Of two clubs, what part of their"
                    + " difference is the air of the days is told too: what goes when all fly at the first elevation."
        })
final class AltitudeCommand implements Callable<Integer> {
    @Spec
    @SuppressWarnings("NullAway.Init") // set by picocli
    private CommandSpec spec;

    @Parameters(arity = "1..*", paramLabel = "SESSION.csv", description = "The session, or several, such as days.")
    private List<Path> files = List.of();

    @Mixin
    private SessionFiles reading = new SessionFiles();

    @Option(
            names = "--elevation",
            paramLabel = "N",
            converter = DecimalConverter.class,
            description =
                    "An elevation, in ft, or in m with --units metric; may be given often. 0, 2500, 5000 and 7500 ft if"
                            + " not given.")
    private List<Double> elevations = List.of();

    @Option(
            names = "--units",
            paramLabel = "us|metric",
            converter = UnitsConverter.class,
            defaultValue = "us",
            description = "us (yd, ft) or metric (m).")
    @SuppressWarnings("NullAway.Init") // set by picocli
    private UnitSystem units;

    @Option(names = "--json", paramLabel = "FILE", description = "Write the numbers, in the same units, as JSON too.")
    private @Nullable Path json;

    @Option(
            names = {"-h", "--help"},
            usageHelp = true,
            description = "Show this help message and exit.")
    @SuppressWarnings("UnusedVariable") // picocli acts on it
    private boolean help;

    @Override
    public Integer call() throws IOException {
        new ReportFiles(null, json).check(reading.inputs(files));
        boolean us = units == UnitSystem.US;
        LengthUnit high = OneAir.unit(units);
        LengthUnit far = us ? LengthUnit.YARD : LengthUnit.METER;
        Session read = together();
        Session used = read.withShots(read.shots().used());
        List<Length> places = (elevations.isEmpty() ? List.of(0.0, 2_500.0, 5_000.0, 7_500.0) : elevations)
                .stream()
                        .map(n -> elevations.isEmpty() ? Length.ofFeet(n) : Length.of(n, high))
                        .toList();
        PrintWriter out = spec.commandLine().getOut();
        Map<String, Warning> warnings = new LinkedHashMap<>();
        Map<String, @Nullable Object> tree = new LinkedHashMap<>();
        List<Object> elevationTrees = new ArrayList<>();
        tree.put("schema", "teeward-altitude/1");
        tree.put("elevation_unit", high.symbol());
        tree.put("unit", far.symbol());
        tree.put("places", elevationTrees);
        tree.put("share", null);
        for (Length place : places) {
            SameAir.Result result;
            try {
                result = SameAir.standardAt(place).bring(used);
            } catch (IllegalArgumentException e) {
                throw new ParameterException(spec.commandLine(), String.valueOf(e.getMessage()), e);
            }
            out.println(text("At %.0f %s:", place.value(high), high.symbol()));
            Map<String, List<SameAir.Carry>> clubs = result.carries().stream()
                    .collect(Collectors.groupingBy(SameAir.Carry::club, LinkedHashMap::new, Collectors.toList()));
            clubs.forEach((club, carries) -> out.println(line(club, carries, far)));
            Map<String, @Nullable Object> elevation = new LinkedHashMap<>();
            elevation.put("elevation", place.value(high));
            elevation.put(
                    "clubs",
                    clubs.entrySet().stream()
                            .map(e -> tree(e.getKey(), e.getValue(), far))
                            .toList());
            elevationTrees.add(elevation);
            result.warnings().forEach(warning -> warnings.putIfAbsent(warning.code(), warning));
        }
        if (read.parts().size() > 1 && read.shots().clubs().size() == 2) {
            tree.put("share", share(read, places.get(0), far, out));
        }
        tree.put("warnings", List.copyOf(warnings.keySet()));
        if (json != null) {
            WholeFile.write(json, text -> text.write(JsonText.of(tree)));
        }
        warnings.values().forEach(warning -> spec.commandLine().getErr().println("note: " + warning.message()));
        return 0;
    }

    private Session together() {
        try {
            return reading.together(files);
        } catch (InputException e) {
            throw e;
        } catch (IllegalArgumentException e) {
            throw SessionFiles.wrong(files, e);
        }
    }

    /** Clubs hit on several days: what part of their difference goes when all fly in the air of the first elevation. */
    private @Nullable Object share(Session read, Length place, LengthUnit unit, PrintWriter out) {
        List<String> clubs = read.shots().clubs();
        try {
            AirShareResult share =
                    AirShare.of(SameAir.standardAt(place)).betweenClubs(read, clubs.get(0), clubs.get(1), Metric.CARRY);
            out.println(text("As hit, %s minus %s: %s", clubs.get(0), clubs.get(1), words(share.found(), unit)));
            out.println("  the air of the days: " + words(share.air(), unit));
            out.println("  the rest: " + words(share.rest(), unit));
            Map<String, @Nullable Object> tree = new LinkedHashMap<>();
            tree.put("first", clubs.get(0));
            tree.put("second", clubs.get(1));
            tree.put("found", JsonNumbers.estimate(share.found(), unit));
            tree.put("air", JsonNumbers.estimate(share.air(), unit));
            tree.put("rest", JsonNumbers.estimate(share.rest(), unit));
            return tree;
        } catch (IllegalArgumentException e) {
            spec.commandLine().getErr().println("note: no share of the air: " + e.getMessage());
            return null;
        }
    }

    /** The interval is that of the mean if the error is shared by all shots, as the ball's is: the means of both ends. */
    private static Map<String, @Nullable Object> tree(String club, List<SameAir.Carry> carries, LengthUnit unit) {
        Interval interval = Interval.of(
                mean(carries, carry -> carry.carry().interval().lower()),
                mean(carries, carry -> carry.carry().interval().upper()),
                carries.get(0).carry().interval().level());
        Map<String, @Nullable Object> tree = new LinkedHashMap<>();
        tree.put("club", club);
        tree.put("shots", carries.size());
        tree.put("here", unit.fromSi(mean(carries, carry -> carry.from().meters())));
        tree.put(
                "carry",
                JsonNumbers.estimate(
                        Estimate.of(mean(carries, carry -> carry.carry().value()), interval, LengthUnit.METER), unit));
        tree.put(
                "from_shot_to_shot",
                sampled(carries).map(mean -> JsonNumbers.estimate(mean, unit)).orElse(null));
        return tree;
    }

    /** The mean with Student's t interval over the shots; empty for a single one, and for equal ones, which tell no spread. */
    private static Optional<Estimate> sampled(List<SameAir.Carry> carries) {
        Estimate mean = SampleSummary.withDefaults()
                .withLevel(carries.get(0).carry().interval().level())
                .withUnit(LengthUnit.METER)
                .summarize(carries.stream()
                        .mapToDouble(carry -> carry.carry().value())
                        .toArray())
                .mean();
        return Optional.of(mean).filter(m -> m.interval().bounded());
    }

    private static String words(Estimate estimate, LengthUnit unit) {
        Estimate e = estimate.convertTo(unit);
        return e.interval().bounded()
                ? text(
                        "%.1f %s (%.0f %% interval %.1f to %.1f)",
                        e.value(),
                        unit.symbol(),
                        100.0 * e.interval().level(),
                        e.interval().lower(),
                        e.interval().upper())
                : text("%.1f %s (no limits)", e.value(), unit.symbol());
    }

    private static String line(String club, List<SameAir.Carry> carries, LengthUnit unit) {
        double percent = 100.0 * carries.get(0).carry().interval().level();
        return text(
                "  %s: %.1f %s, mean of %d as hit %.1f; %.0f %% intervals: from shot to shot %s, launch and ball %.1f to %.1f",
                VisibleText.line(club),
                unit.fromSi(mean(carries, carry -> carry.carry().value())),
                unit.symbol(),
                carries.size(),
                unit.fromSi(mean(carries, carry -> carry.from().meters())),
                percent,
                sampled(carries).map(mean -> ends(mean.interval(), unit)).orElse("not told"),
                unit.fromSi(mean(carries, carry -> carry.carry().interval().lower())),
                unit.fromSi(mean(carries, carry -> carry.carry().interval().upper())));
    }

    private static String ends(Interval interval, LengthUnit unit) {
        return text("%.1f to %.1f", unit.fromSi(interval.lower()), unit.fromSi(interval.upper()));
    }

    private static double mean(List<SameAir.Carry> carries, ToDoubleFunction<SameAir.Carry> meters) {
        return carries.stream().mapToDouble(meters).average().orElseThrow();
    }

    private static String text(String pattern, Object... values) {
        return String.format(Locale.ROOT, pattern, values);
    }
}
