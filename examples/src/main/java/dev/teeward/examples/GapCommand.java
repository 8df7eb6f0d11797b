package dev.teeward.examples;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.complete.SameAir;
import dev.teeward.fitting.gapping.Bag;
import dev.teeward.fitting.gapping.Gapping;
import dev.teeward.fitting.io.InputException;
import dev.teeward.fitting.report.GappingReport;
import dev.teeward.flight.FlightModel;
import dev.teeward.flight.ground.Ground;
import dev.teeward.flight.ground.TurfClass;
import dev.teeward.quantity.Length;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
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

/** The gaps of a bag. */
@Command(
        name = "gap",
        description =
                "Shows how far each club of a bag carries, the gaps between them, and distances that no club covers.",
        sortOptions = false,
        footer = {
            "",
            "Hit the clubs in rounds, a shot with each, rather than each in one go. Settle --wanted before the shots are hit."
                    + " What would mend a gap is a question to try out; have any change of a club made and checked by a qualified"
                    + " club builder."
        })
final class GapCommand implements Callable<Integer> {
    @Spec
    @SuppressWarnings("NullAway.Init") // set by picocli
    private CommandSpec spec;

    @Parameters(
            arity = "0..*",
            paramLabel = "SESSION.csv",
            description = "The session, or several; an invented bag if there is none.")
    private List<Path> files = new ArrayList<>();

    @Mixin
    private SessionFiles reading = new SessionFiles();

    @Option(
            names = "--wanted",
            paramLabel = "N",
            converter = DecimalConverter.class,
            description = "The gap wanted between neighbours, in yd, or in m with --units metric.")
    private @Nullable Double wanted;

    @Option(
            names = "--within",
            paramLabel = "N",
            converter = DecimalConverter.class,
            description = "How far from it a gap may be, in the same unit; ${DEFAULT-VALUE} if not given.")
    private double within = 3.0;

    @Option(names = "--club", paramLabel = "NAME", description = "A club of the bag; give it often. All if not given.")
    private List<String> clubs = new ArrayList<>();

    @Option(
            names = "--turf",
            paramLabel = "KIND",
            converter = TurfConverter.class,
            description = "Compute totals that were not measured, on level turf of this kind, such as fairway.")
    private @Nullable TurfClass turf;

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
        output.check(reading.inputs(files));
        Gapping procedure = procedure();
        Bag bag;
        try {
            bag = procedure.measure(files.isEmpty() ? BagSession.create(BagSession.SEED) : reading.together(files));
        } catch (InputException e) {
            throw e;
        } catch (IllegalArgumentException e) {
            throw wrongSession(e);
        }
        GappingReport report = GappingReport.of(bag).withUnits(output.units());
        output.write(report::html, report::data);
        PrintWriter out = spec.commandLine().getOut();
        if (files.isEmpty()) {
            out.println("This bag is invented: no file was given.");
            out.println();
        }
        out.print(report.text());
        return 0;
    }

    private Gapping procedure() {
        Gapping procedure = Gapping.withDefaults();
        try {
            if (wanted != null) {
                procedure = procedure.withWanted(length(wanted), length(within));
            }
            if (!clubs.isEmpty()) {
                procedure = procedure.withClubs(clubs.toArray(new String[0]));
            }
            Optional<SameAir> air = oneAir.air(output.units());
            if (air.isPresent()) {
                procedure = procedure.withAir(air.get());
            }
        } catch (IllegalArgumentException e) {
            throw new ParameterException(spec.commandLine(), String.valueOf(e.getMessage()), e);
        }
        return turf == null
                ? procedure
                : procedure.withFlightModel(FlightModel.standard().withGround(Ground.of(turf)));
    }

    private Length length(double value) {
        return Length.ofMeters(Metric.CARRY.unit(output.units()).toSi(value));
    }

    private RuntimeException wrongSession(IllegalArgumentException e) {
        return files.isEmpty()
                ? new ParameterException(spec.commandLine(), String.valueOf(e.getMessage()), e)
                : SessionFiles.wrong(files, e);
    }
}
