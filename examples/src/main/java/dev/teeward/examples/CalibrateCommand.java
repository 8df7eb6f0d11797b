package dev.teeward.examples;

import dev.teeward.fitting.io.WholeFile;
import dev.teeward.flight.aero.TypicalAerodynamics;
import dev.teeward.flight.study.Calibration;
import dev.teeward.flight.study.CalibrationResult;
import dev.teeward.flight.study.ParametricAerodynamics;
import dev.teeward.flight.study.RobustLoss;
import dev.teeward.quantity.Interval;
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
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Finds by what factors the drag and lift of a ball differ from the typical ball's, from observed flights. */
@Command(
        name = "calibrate",
        description = "Finds a ball's drag and lift, as factors on the typical ball's, from observed flights.",
        sortOptions = false,
        footer = {
            "",
            "FLIGHTS.csv has the unit in the name of each column: ball_speed, launch_angle and spin_rate are needed, then what"
                    + " was seen (carry, apex, descent_angle, flight_time, side, curve, landing_speed) and the air"
                    + " (elevation or pressure, temperature, humidity, wind_speed with wind_from), as in"
                    + " ball_speed_mph,launch_angle_deg,spin_rate_rpm,carry_yd,apex_ft.",
            "",
            "An interval by the profile follows the misfit; where it differs from the estimate's, trust the profile."
        })
final class CalibrateCommand implements Callable<Integer> {
    @Spec
    @SuppressWarnings("NullAway.Init") // set by picocli
    private CommandSpec spec;

    @Parameters(paramLabel = "FLIGHTS.csv", description = "The observed flights.")
    @SuppressWarnings("NullAway.Init") // set by picocli
    private Path flights;

    @Option(
            names = "--tracks",
            paramLabel = "POINTS.csv",
            description = "Points of their paths: flight,time_s,downrange_m,height_m,side_m.")
    private @Nullable Path tracks;

    @Option(names = "--pool", description = "Borrow from the spread of balls in general: for a ball with few flights.")
    private boolean pool;

    @Option(
            names = "--loss",
            paramLabel = "LOSS",
            defaultValue = "HUBER",
            description = "SQUARES, HUBER or TUKEY; ${DEFAULT-VALUE} if not given.")
    private RobustLoss loss = RobustLoss.HUBER;

    @Mixin
    private LaunchErrorOptions errors = new LaunchErrorOptions();

    @Option(names = "--json", paramLabel = "FILE", description = "Write the result as JSON too.")
    private @Nullable Path json;

    @Option(
            names = {"-h", "--help"},
            usageHelp = true,
            description = "Show this help message and exit.")
    @SuppressWarnings("UnusedVariable") // picocli acts on it
    private boolean help;

    @Override
    public Integer call() {
        ParametricAerodynamics family =
                pool ? ParametricAerodynamics.ball() : ParametricAerodynamics.scaled(TypicalAerodynamics.of());
        CalibrationResult fit;
        try {
            fit = errors.with(Calibration.withDefaults().withLoss(loss))
                    .fit(family, ObservedFiles.read(flights, tracks));
        } catch (IllegalArgumentException | IllegalStateException e) {
            throw ObservedFiles.wrong(flights, e);
        }
        PrintWriter out = spec.commandLine().getOut();
        Map<String, @Nullable Object> parameters = new LinkedHashMap<>();
        for (String name : family.names()) {
            Interval tangent = fit.estimate(name).interval();
            Interval profile = fit.profileInterval(name);
            out.println(String.format(
                    Locale.ROOT,
                    "%s %.4f, 95 %% interval %s, by the profile %s",
                    name,
                    fit.estimate(name).value(),
                    text(tangent),
                    text(profile)));
            Map<String, @Nullable Object> parameter = new LinkedHashMap<>();
            parameter.put("value", fit.estimate(name).value());
            parameter.put("interval", ends(tangent));
            parameter.put("profile_interval", ends(profile));
            parameters.put(name, parameter);
        }
        out.println(String.format(
                Locale.ROOT,
                "%d observations, residuals %.2f times the stated scatter, %s",
                fit.observations(),
                fit.scale(),
                fit.method()));
        fit.warnings().forEach(w -> out.println("warning: " + w.message()));
        if (json != null) {
            Map<String, @Nullable Object> tree = new LinkedHashMap<>();
            tree.put("schema", "teeward-calibration/1");
            tree.put("parameters", parameters);
            tree.put("observations", fit.observations());
            tree.put("scale", fit.scale());
            tree.put("method", fit.method());
            tree.put("warnings", fit.warnings().stream().map(w -> w.message()).toList());
            WholeFile.write(json, text -> text.write(JsonText.of(tree)));
        }
        return 0;
    }

    private static String text(Interval i) {
        return i.bounded() ? String.format(Locale.ROOT, "%.4f to %.4f", i.lower(), i.upper()) : "without an end";
    }

    /** The ends; null stands for one that is not there. */
    private static List<@Nullable Double> ends(Interval i) {
        List<@Nullable Double> ends = new ArrayList<>(2);
        ends.add(Double.isFinite(i.lower()) ? i.lower() : null);
        ends.add(Double.isFinite(i.upper()) ? i.upper() : null);
        return ends;
    }
}
