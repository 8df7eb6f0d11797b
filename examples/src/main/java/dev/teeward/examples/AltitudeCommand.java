package dev.teeward.examples;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.UnitSystem;
import dev.teeward.fitting.compare.AirShare;
import dev.teeward.fitting.compare.AirShareResult;
import dev.teeward.fitting.complete.SameAir;
import dev.teeward.fitting.io.SessionReader;
import dev.teeward.fitting.io.WholeFile;
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
import java.util.concurrent.Callable;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** The carry of each club of a session at several elevations. */
@Command(
        name = "altitude",
        description = "Shows how far each club of a session carries at several elevations, with intervals.",
        sortOptions = false,
        footer = {
            "",
            "Each shot is flown in the air of the session and in calm standard air at each elevation; its carry is multiplied"
                    + " by the ratio. The interval holds what is not known of launch and ball, not the spread of the shots."
                    + " One launch is a session of one shot. What heat and cold do to ball and club is not modelled."
        })
final class AltitudeCommand implements Callable<Integer> {
    @Spec
    @SuppressWarnings("NullAway.Init") // set by picocli
    private CommandSpec spec;

    @Parameters(paramLabel = "SESSION.csv", description = "The session.")
    @SuppressWarnings("NullAway.Init") // set by picocli
    private Path session;

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
        new ReportFiles(null, json).check(List.of(session));
        boolean us = units == UnitSystem.US;
        LengthUnit high = OneAir.unit(units);
        LengthUnit far = us ? LengthUnit.YARD : LengthUnit.METER;
        Session read = SessionReader.withDefaults().read(session);
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
                result = SameAir.standardAt(place).bring(read);
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
        return tree;
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
        return text(
                "  %s: %.1f %s (%.0f %% interval %.1f to %.1f), here %.1f, mean of %d",
                club,
                unit.fromSi(mean(carries, carry -> carry.carry().value())),
                unit.symbol(),
                100.0 * carries.get(0).carry().interval().level(),
                unit.fromSi(mean(carries, carry -> carry.carry().interval().lower())),
                unit.fromSi(mean(carries, carry -> carry.carry().interval().upper())),
                unit.fromSi(mean(carries, carry -> carry.from().meters())),
                carries.size());
    }

    private static double mean(List<SameAir.Carry> carries, ToDoubleFunction<SameAir.Carry> meters) {
        return carries.stream().mapToDouble(meters).average().orElseThrow();
    }

    private static String text(String pattern, Object... values) {
        return String.format(Locale.ROOT, pattern, values);
    }
}
