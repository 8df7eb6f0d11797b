package dev.teeward.examples;

import dev.teeward.fitting.io.WholeFile;
import dev.teeward.flight.aero.SmitsSmith1994;
import dev.teeward.flight.aero.TypicalAerodynamics;
import dev.teeward.flight.study.Calibration;
import dev.teeward.flight.study.ObservedFlight;
import dev.teeward.flight.study.ObservedFlightReader;
import dev.teeward.flight.study.ParametricAerodynamics;
import dev.teeward.flight.study.Validation;
import dev.teeward.flight.study.ValidationResult;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
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

    @Option(
            names = {"-h", "--help"},
            usageHelp = true,
            description = "Show this help message and exit.")
    @SuppressWarnings("UnusedVariable") // picocli acts on it
    private boolean help;

    @Override
    public Integer call() {
        List<ObservedFlight> seen = flights == null ? typicalShots() : ObservedFiles.read(flights, null);
        Validation validation = Validation.withDefaults()
                .with("typical ball", TypicalAerodynamics.of())
                .with("Smits and Smith 1994", SmitsSmith1994.of());
        PrintWriter out = spec.commandLine().getOut();
        ValidationResult result;
        try {
            result = validation.compare(seen);
            out.print(result.markdown());
            if (leftOut) {
                ParametricAerodynamics family = ParametricAerodynamics.scaled(TypicalAerodynamics.of());
                out.println();
                out.print(validation
                        .leaveOneGroupOut(
                                "typical ball, fitted to the others", family, Calibration.withDefaults(), seen)
                        .markdown());
            }
        } catch (IllegalArgumentException | IllegalStateException e) {
            throw flights == null ? e : ObservedFiles.wrong(flights, e);
        }
        result.warnings().forEach(w -> out.println("warning: " + w.message()));
        if (csv != null) {
            WholeFile.write(csv, text -> text.write(result.csv()));
        }
        return 0;
    }

    /** Fourteen typical shots from drive to wedge: common practice, recalled from memory; calibration, never validation. */
    static List<ObservedFlight> typicalShots() {
        return ObservedFlightReader.flights(JsonText.resource("typical_shots.csv"));
    }
}
