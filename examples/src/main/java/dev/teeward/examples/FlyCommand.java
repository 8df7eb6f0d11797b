package dev.teeward.examples;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.complete.SessionAir;
import dev.teeward.fitting.io.ColumnTable;
import dev.teeward.fitting.io.InputException;
import dev.teeward.fitting.io.SessionReader;
import dev.teeward.fitting.io.TableReader;
import dev.teeward.fitting.io.TableWriter;
import dev.teeward.flight.Flight;
import dev.teeward.flight.FlightException;
import dev.teeward.flight.FlightModel;
import dev.teeward.flight.LaunchConditions;
import dev.teeward.flight.ground.Ground;
import dev.teeward.flight.ground.TurfClass;
import dev.teeward.flight.impact.ClubHead;
import dev.teeward.quantity.AngleUnit;
import dev.teeward.quantity.DurationUnit;
import dev.teeward.quantity.Handedness;
import dev.teeward.quantity.LengthUnit;
import dev.teeward.quantity.SpeedUnit;
import dev.teeward.quantity.Unit;
import dev.teeward.quantity.Warning;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
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

/** Flies every launch of a table and writes the table again with the flights beside the launches. */
@Command(
        name = "fly",
        description = "Flies every launch of a table in still or windy air, over level ground.",
        sortOptions = false,
        footer = {
            "",
            "LAUNCHES.csv has the unit in the name of each column. Needed: ball_speed, launch_angle, spin_rate, as in"
                    + " ball_speed_mph,launch_angle_deg,spin_rate_rpm. start_direction and axis_tilt are 0 where they are"
                    + " missing or a cell is empty; both are right positive.",
            "",
            "A row without a launch may have a delivery instead: club_speed, attack_angle, club_path, face_angle and"
                    + " dynamic_loft, and strike_toe and strike_up (0 if not given), with --head. Its launch is computed, not"
                    + " measured, and written as computed_ball_speed_mph, computed_launch_angle_deg,"
                    + " computed_start_direction_deg, computed_spin_rate_rpm and computed_axis_tilt_deg. The hand is that of the"
                    + " header block, right if there is none.",
            "",
            "FLIGHTS.csv has all columns of LAUNCHES.csv, unchanged, and after them carry_yd, side_yd, curve_yd, apex_ft,"
                    + " descent_angle_deg, flight_time_s, landing_speed_mph and total_yd, each with computed_ before it"
                    + " where LAUNCHES.csv already has that metric. The total is where the ball stops on level ground of"
                    + " the --turf; no turf's numbers are validated: compare totals, do not promise them. It is"
                    + " empty for a ball that lands far faster or flatter than the bounce model covers, as a topped one.",
            "",
            "A header block of # lines is copied, and its elevation, temperature, humidity, pressure and wind are used as in"
                    + " a session; what the options give takes the place of what the file gives, and the answer says so.",
            "",
            "Flights outside the range of the aerodynamic model, and balls that do not rise, are counted on standard error, with"
                    + " the first of their rows."
        })
final class FlyCommand implements Callable<Integer> {
    private static final int MOST_ROWS = 5;

    private static final Map<String, String> WARNINGS = Map.of(
            "launch-incomplete", "the part of a launch that they have is not used: the delivery gave the whole",
            "lands-at-once", "the ball does not rise",
            "bounce-extrapolated", "lands faster or flatter than the bounce model covers: their total is a guess",
            "bounce-outside-model",
                    "lands far faster or flatter than the bounce model covers: where it stops is not known, and the total is left empty",
            "reynolds-outside-model", "slower or faster than the aerodynamic model covers",
            "spin-ratio-outside-model", "more spin for the speed than the aerodynamic model covers");

    private static final List<Result> RESULTS = List.of(
            new Result(Metric.CARRY, LengthUnit.YARD, flight -> flight.carry().meters()),
            new Result(Metric.SIDE, LengthUnit.YARD, flight -> flight.side().meters()),
            new Result(Metric.CURVE, LengthUnit.YARD, flight -> flight.curve().meters()),
            new Result(Metric.APEX, LengthUnit.FOOT, flight -> flight.apex().meters()),
            new Result(
                    Metric.DESCENT_ANGLE,
                    AngleUnit.DEGREE,
                    flight -> flight.descentAngle().radians()),
            new Result(Metric.FLIGHT_TIME, DurationUnit.SECOND, Flight::flightTimeSeconds),
            new Result(
                    Metric.LANDING_SPEED,
                    SpeedUnit.MILE_PER_HOUR,
                    flight -> flight.landingSpeed().metersPerSecond()),
            new Result(
                    Metric.TOTAL,
                    LengthUnit.YARD,
                    flight -> flight.rollOut().orElseThrow().rest().distance().meters()));

    /** A column of the result. */
    private record Result(Metric metric, Unit unit, ToDoubleFunction<Flight> si) {}

    @Spec
    @SuppressWarnings("NullAway.Init") // set by picocli
    private CommandSpec spec;

    @Parameters(paramLabel = "LAUNCHES.csv", description = "The launches.")
    @SuppressWarnings("NullAway.Init") // set by picocli
    private Path launches;

    @Option(
            names = "--out",
            required = true,
            paramLabel = "FLIGHTS.csv",
            description = "Where to write the flights; replaced if it exists, and whole or not at all.")
    @SuppressWarnings("NullAway.Init") // set by picocli
    private Path out;

    @Option(
            names = "--head",
            paramLabel = "HEAD",
            converter = HeadConverter.class,
            description =
                    "What strikes the ball in rows that have a delivery and no launch: " + HeadConverter.NAMES + ".")
    private @Nullable ClubHead head;

    @Mixin
    private AirOptions air = new AirOptions();

    @Option(
            names = "--turf",
            paramLabel = "KIND",
            converter = TurfConverter.class,
            defaultValue = "fairway",
            description =
                    "What the ball rolls on: fairway, firm-fairway, soft-fairway, rough, green, firm-green or soft-green;"
                            + " fairway if not given.")
    @SuppressWarnings("NullAway.Init") // set by picocli
    private TurfClass turf;

    @Option(
            names = {"-h", "--help"},
            usageHelp = true,
            description = "Show this help message and exit.")
    @SuppressWarnings("UnusedVariable") // picocli acts on it
    private boolean help;

    @Override
    public Integer call() throws IOException {
        if (launches.toString().isBlank() || out.toString().isBlank()) {
            throw new ParameterException(
                    spec.commandLine(),
                    (launches.toString().isBlank() ? "LAUNCHES.csv" : "--out") + " is empty; give the name of a file");
        }
        air.over(Session.builder().build(), new ArrayList<>()); // a wrong option is said before a file is read
        ColumnTable table = read();
        if (Files.exists(out) && Files.isSameFile(launches, out)) {
            throw InputException.of(out.toString(), "is the file with the launches; give --out another name");
        }
        RowLaunches rows = rows(table);
        List<String> conditions = new ArrayList<>();
        FlightModel model = model(table, conditions);
        if (rows.computed() > 0) {
            conditions.add(String.format(Locale.ROOT, "%,d launches computed from the delivery", rows.computed()));
        }
        Map<String, List<Integer>> warnings = new TreeMap<>();
        ColumnTable flights = fly(table, rows, model, warnings);
        TableWriter.withDefaults().write(out, flights);
        spec.commandLine()
                .getOut()
                .println(String.format(
                        Locale.ROOT,
                        "%s: %,d flights in air of %.4f kg/m3%s",
                        out,
                        table.rows(),
                        model.air().density(),
                        conditions.isEmpty() ? "" : "; " + String.join(", ", conditions)));
        if (!warnings.isEmpty()) {
            spec.commandLine().getErr().println(summary(table, warnings));
        }
        return 0;
    }

    private ColumnTable read() {
        TableReader reader = TableReader.withDefaults();
        ColumnTable table = reader.read(launches);
        if (RowLaunches.tellsOfDelivery(table) || RowLaunches.allMeasured(table)) {
            return table;
        }
        return reader.requiring(RowLaunches.LAUNCH.toArray(Metric[]::new))
                .read(launches); // names the cell that is missing
    }

    private RowLaunches rows(ColumnTable table) {
        Handedness hand = SessionReader.conditions(table).hand().orElse(Handedness.RIGHT);
        RowLaunches rows = RowLaunches.of(
                table, head == null ? null : head.toBuilder().handedness(hand).build());
        if (rows.computed() > 0 && head == null) {
            throw new ParameterException(
                    spec.commandLine(), "rows with a delivery and no launch need --head: " + HeadConverter.NAMES);
        }
        return rows;
    }

    private FlightModel model(ColumnTable table, List<String> conditions) {
        Session session = air.over(SessionReader.conditions(table), conditions);
        try {
            SessionAir day = SessionAir.of(session);
            return FlightModel.standard()
                    .withAir(day.atmosphere())
                    .withWind(day.wind())
                    .withGround(Ground.of(turf));
        } catch (IllegalArgumentException e) {
            InputException failure = InputException.of(table.file(), String.valueOf(e.getMessage()));
            failure.initCause(e);
            throw failure;
        }
    }

    private ColumnTable fly(
            ColumnTable table, RowLaunches launched, FlightModel model, Map<String, List<Integer>> warnings) {
        int rows = table.rows();
        double[][] si = new double[RESULTS.size()][rows];
        BitSet unknown = new BitSet();
        PrintWriter err = spec.commandLine().getErr();
        Progress progress = new Progress(err, rows, Progress.onTerminal());
        try {
            for (int row = 0; row < rows; row++) {
                List<Warning> said = new ArrayList<>();
                Flight flight = fly(table, row, model, launched.at(row, said));
                said.addAll(flight.warnings());
                for (int i = 0; i < si.length; i++) {
                    si[i][row] = RESULTS.get(i).si().applyAsDouble(flight);
                }
                unknown.set(row, flight.total().isEmpty());
                for (Warning warning : said) {
                    warnings.computeIfAbsent(warning.code(), code -> new ArrayList<>())
                            .add(row + 1);
                }
                progress.done(row + 1);
            }
        } finally {
            progress.end();
        }
        ColumnTable flights = launched.withComputed(table);
        for (int i = 0; i < si.length; i++) {
            Result result = RESULTS.get(i);
            BitSet absent = result.metric() == Metric.TOTAL ? unknown : new BitSet();
            flights = flights.withComputed(result.metric(), result.unit(), si[i], absent);
        }
        return flights;
    }

    private static Flight fly(ColumnTable table, int row, FlightModel model, LaunchConditions launch) {
        try {
            return model.fly(launch);
        } catch (FlightException e) {
            InputException failure = InputException.atRow(table.file(), row + 1, String.valueOf(e.getMessage()));
            failure.initCause(e);
            throw failure;
        }
    }

    private static String summary(ColumnTable table, Map<String, List<Integer>> warnings) {
        return table.file() + ": to know of the " + String.format(Locale.ROOT, "%,d", table.rows()) + " flights: "
                + warnings.entrySet().stream()
                        .map(entry -> String.format(
                                        Locale.ROOT, "%,d ", entry.getValue().size())
                                + entry.getKey()
                                + " ("
                                + (WARNINGS.containsKey(entry.getKey()) ? WARNINGS.get(entry.getKey()) + "; " : "")
                                + rows(entry.getValue()) + ")")
                        .collect(Collectors.joining(", "));
    }

    /** The first of them. */
    private static String rows(List<Integer> rows) {
        return (rows.size() == 1 ? "row " : "rows ")
                + rows.stream().limit(MOST_ROWS).map(String::valueOf).collect(Collectors.joining(", "))
                + (rows.size() > MOST_ROWS ? ", ..." : "");
    }
}
