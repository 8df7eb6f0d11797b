package dev.teeward.examples;

import dev.teeward.fitting.io.WholeFile;
import dev.teeward.flight.aero.SmitsSmith1994;
import dev.teeward.flight.aero.TypicalAerodynamics;
import dev.teeward.flight.study.Agreement;
import dev.teeward.flight.study.Calibration;
import dev.teeward.flight.study.ObservedFlight;
import dev.teeward.flight.study.ObservedFlightReader;
import dev.teeward.flight.study.ParametricAerodynamics;
import dev.teeward.flight.study.Validation;
import dev.teeward.flight.study.ValidationResult;
import dev.teeward.quantity.Unit;
import dev.teeward.quantity.Warning;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Compares aerodynamic models with observed flights. */
@Command(
        name = "validate",
        description = "Compares aerodynamic models with observed flights: bias, root mean square, limits of agreement.",
        sortOptions = false,
        footer = {
            "",
            "FLIGHTS.csv is that of calibrate; its column group names the class of club. With the column turf (fairway,"
                    + " firm-fairway, soft-fairway, rough, green, firm-green or soft-green) it may hold total and run too,"
                    + " which calibrate leaves out. Differences are model less"
                    + " observation. Agreement with the flights that a model was fitted to is calibration, not validation."
        })
final class ValidateCommand implements Callable<Integer> {
    @Spec
    @SuppressWarnings("NullAway.Init") // set by picocli
    private CommandSpec spec;

    @Parameters(
            arity = "0..1",
            paramLabel = "FLIGHTS.csv",
            description =
                    "The observed flights; if not given, the 14 typical shots that the typical ball was fitted to.")
    private @Nullable Path flights;

    @Option(
            names = "--left-out",
            description = "Also fit drag and lift anew without each group, and predict that group.")
    private boolean leftOut;

    @Option(
            names = "--csv",
            paramLabel = "FILE",
            description = "Write the table with its intervals, in SI, as CSV too.")
    private @Nullable Path csv;

    @Option(names = "--json", paramLabel = "FILE", description = "Write the tables with their intervals as JSON too.")
    private @Nullable Path json;

    @Option(
            names = {"-h", "--help"},
            usageHelp = true,
            description = "Show this help message and exit.")
    @SuppressWarnings("UnusedVariable") // picocli acts on it
    private boolean help;

    @Override
    public Integer call() throws IOException {
        new ReportFiles(csv, json).check(flights == null ? List.of() : List.of(flights));
        List<ObservedFlight> seen = flights == null ? typicalShots() : ObservedFiles.read(flights, null);
        Validation validation = Validation.withDefaults()
                .with("typical ball", TypicalAerodynamics.of())
                .with("Smits and Smith 1994", SmitsSmith1994.of());
        PrintWriter out = spec.commandLine().getOut();
        ValidationResult result;
        Optional<ValidationResult> others = Optional.empty();
        try {
            result = validation.compare(seen);
            out.print(result.markdown());
            if (leftOut) {
                ParametricAerodynamics family = ParametricAerodynamics.scaled(TypicalAerodynamics.of());
                ValidationResult predicted = validation.leaveOneGroupOut(
                        "typical ball, fitted to the others", family, Calibration.withDefaults(), seen);
                out.println();
                out.print(predicted.markdown());
                others = Optional.of(predicted);
            }
        } catch (IllegalArgumentException | IllegalStateException e) {
            throw flights == null ? e : ObservedFiles.wrong(flights, e);
        }
        List<Warning> warnings = Stream.concat(
                        result.warnings().stream(), others.stream().flatMap(predicted -> predicted.warnings().stream()))
                .distinct()
                .toList();
        warnings.forEach(w -> out.println("warning: " + w.message()));
        Map<Path, WholeFile.Content> files = new LinkedHashMap<>();
        if (csv != null) {
            files.put(csv, text -> text.write(result.csv()));
        }
        if (json != null) {
            String text = JsonText.of(tree(result, others, warnings));
            files.put(json, file -> file.write(text));
        }
        WholeFile.writeAll(files);
        return 0;
    }

    private static Map<String, @Nullable Object> tree(
            ValidationResult result, Optional<ValidationResult> others, List<Warning> warnings) {
        List<Object> rows = new ArrayList<>();
        result.rows().forEach(row -> rows.add(tree(row, false)));
        others.ifPresent(predicted -> predicted.rows().forEach(row -> rows.add(tree(row, true))));
        Map<String, @Nullable Object> tree = new LinkedHashMap<>();
        tree.put("schema", "teeward-validation/1");
        tree.put("rows", rows);
        tree.put(
                "warnings",
                warnings.stream()
                        .map(w -> Map.of("code", w.code(), "message", w.message()))
                        .map(TreeMap::new)
                        .toList());
        return tree;
    }

    private static Map<String, @Nullable Object> tree(ValidationResult.Row row, boolean leftOut) {
        Agreement a = row.agreement();
        Unit unit = row.output().tableUnit();
        Map<String, @Nullable Object> tree = new LinkedHashMap<>();
        tree.put("model", row.model());
        tree.put("flights", row.part());
        tree.put("left_out", leftOut);
        tree.put("output", row.output().key());
        tree.put("unit", unit.symbol());
        tree.put("n", a.count());
        tree.put("bias", JsonNumbers.estimate(a.bias(), unit));
        tree.put("rms", unit.fromSi(a.rms()));
        tree.put("relative_rms", a.relativeRms().isPresent() ? a.relativeRms().getAsDouble() : null);
        tree.put("worst", unit.fromSi(a.worst()));
        tree.put(
                "lower_limit",
                a.lowerLimit().map(e -> JsonNumbers.estimate(e, unit)).orElse(null));
        tree.put(
                "upper_limit",
                a.upperLimit().map(e -> JsonNumbers.estimate(e, unit)).orElse(null));
        return tree;
    }

    /** Fourteen typical shots from drive to wedge: common practice, recalled from memory; calibration, never validation. */
    static List<ObservedFlight> typicalShots() {
        return ObservedFlightReader.flights(JsonText.resource("typical_shots.csv"));
    }
}
