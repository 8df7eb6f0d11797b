package dev.teeward.examples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.flight.Flight;
import dev.teeward.flight.FlightModel;
import dev.teeward.flight.LaunchConditions;
import dev.teeward.flight.air.Atmosphere;
import dev.teeward.flight.air.Wind;
import dev.teeward.flight.ground.Ground;
import dev.teeward.flight.ground.TurfClass;
import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Length;
import dev.teeward.quantity.Pressure;
import dev.teeward.quantity.Speed;
import dev.teeward.quantity.SpinRate;
import dev.teeward.quantity.Temperature;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The table that {@code fly} writes, against the flight model asked directly. */
class FlyCommandTest {
    private static final String HEADING =
            "ball_speed_mph,launch_angle_deg,start_direction_deg,spin_rate_rpm,axis_tilt_deg";
    private static final String RESULTS =
            "carry_yd,side_yd,curve_yd,apex_ft,descent_angle_deg,flight_time_s,landing_speed_mph,total_yd";

    /** Three decimals are written, so a number is off by half of the last one, and a little for the conversions. */
    private static final double ROUNDING = 0.5e-3 + 1e-9;

    @TempDir
    private Path folder = Path.of("");

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    private int run(String... args) {
        return TeewardExamples.run(new PrintWriter(out), new PrintWriter(err), args);
    }

    private List<String> fly(String launches, String... options) throws IOException {
        Path in = Files.writeString(folder.resolve("launches.csv"), launches);
        Path flights = folder.resolve("flights.csv");
        String[] args = Stream.concat(
                        Stream.of("fly", in.toString(), "--out", flights.toString()), Arrays.stream(options))
                .toArray(String[]::new);
        assertEquals(0, run(args), err.toString());
        return Files.readAllLines(flights);
    }

    private static Flight flight(
            FlightModel model, double mph, double angle, double direction, double rpm, double tilt) {
        return flight(model, TurfClass.FAIRWAY, mph, angle, direction, rpm, tilt);
    }

    private static Flight flight(
            FlightModel model, TurfClass turf, double mph, double angle, double direction, double rpm, double tilt) {
        return model.withGround(Ground.of(turf))
                .fly(LaunchConditions.builder()
                        .ballSpeed(Speed.ofMph(mph))
                        .launchAngle(Angle.ofDegrees(angle))
                        .startDirection(Angle.ofDegrees(direction))
                        .spinRate(SpinRate.ofRpm(rpm))
                        .axisTilt(Angle.ofDegrees(tilt))
                        .build());
    }

    private static void assertFlight(Flight expected, String line, int firstResult) {
        double[] given = Arrays.stream(line.split(",", -1))
                .skip(firstResult)
                .mapToDouble(Double::parseDouble)
                .toArray();
        double[] wanted = {
            expected.carry().yards(),
            expected.side().yards(),
            expected.curve().yards(),
            expected.apex().feet(),
            expected.descentAngle().degrees(),
            expected.flightTimeSeconds(),
            expected.landingSpeed().mph(),
            expected.total().orElseThrow().yards()
        };
        assertEquals(wanted.length, given.length, line);
        for (int i = 0; i < wanted.length; i++) {
            assertEquals(wanted[i], given[i], ROUNDING, "result " + i + " of " + line);
        }
    }

    @Test
    void writesTheFlightBesideTheLaunch() throws IOException {
        List<String> lines = fly(HEADING + "\n118,17.2,-1.2,6400,-4\n150,11,2,2700,9\n");
        assertEquals(HEADING + "," + RESULTS, lines.get(0));
        assertEquals(3, lines.size());
        assertTrue(lines.get(1).startsWith("118,17.2,-1.2,6400,-4,"), lines.get(1));
        assertFlight(flight(FlightModel.standard(), 118.0, 17.2, -1.2, 6_400.0, -4.0), lines.get(1), 5);
        assertFlight(flight(FlightModel.standard(), 150.0, 11.0, 2.0, 2_700.0, 9.0), lines.get(2), 5);
        assertEquals(
                folder.resolve("flights.csv") + ": 2 flights in air of 1.2250 kg/m3",
                out.toString().strip());
    }

    @Test
    void fliesInTheAirAndWindOfTheOptions() throws IOException {
        FlightModel model = FlightModel.standard()
                .withAir(Atmosphere.standardAt(Length.ofFeet(5_280.0))
                        .withTemperature(Temperature.ofFahrenheit(85.0))
                        .withRelativeHumidity(0.2))
                .withWind(Wind.from(Angle.ofDegrees(30.0), Speed.ofMph(8.0)));
        List<String> lines = fly(
                HEADING + "\n118,17.2,-1.2,6400,-4\n",
                "--elevation-ft",
                "5280",
                "--temperature-f=85",
                "--humidity=0.2",
                "--wind-mph=8",
                "--wind-from-deg=30");
        assertFlight(flight(model, 118.0, 17.2, -1.2, 6_400.0, -4.0), lines.get(1), 5);
    }

    @Test
    void rollsOnTheTurfAskedFor() throws IOException {
        String launch = HEADING + "\n150,11,2,2700,9\n";
        for (TurfClass turf : TurfClass.values()) {
            String name = turf.name().toLowerCase(Locale.ROOT).replace('_', '-');
            Flight expected = flight(FlightModel.standard(), turf, 150.0, 11.0, 2.0, 2_700.0, 9.0);
            assertFlight(expected, fly(launch, "--turf", name).get(1), 5);
        }
        Path in = Files.writeString(folder.resolve("launches.csv"), launch);
        assertEquals(
                2, run("fly", in.toString(), "--out", folder.resolve("none.csv").toString(), "--turf", "carpet"));
        assertTrue(err.toString().contains("\"carpet\" is none of fairway, firm-fairway"), err.toString());
        assertFalse(Files.exists(folder.resolve("none.csv")));
    }

    @Test
    void metricOptionsSayTheSame() throws IOException {
        FlightModel model = FlightModel.standard()
                .withAir(Atmosphere.standardAt(Length.ofMeters(1_600.0)).withTemperature(Temperature.ofCelsius(-5.0)));
        List<String> lines = fly(HEADING + "\n118,17.2,0,6400,0\n", "--elevation-m", "1600", "--temperature-c", "-5");
        assertFlight(flight(model, 118.0, 17.2, 0.0, 6_400.0, 0.0), lines.get(1), 5);
    }

    @Test
    void fliesInTheAirAndWindOfTheHeader() throws IOException {
        FlightModel model = FlightModel.standard()
                .withAir(Atmosphere.ofStationPressure(Pressure.ofHectopascals(840.0), Temperature.ofCelsius(25.0), 0.3))
                .withWind(Wind.from(Angle.ofDegrees(30.0), Speed.ofMph(8.0)));
        String header =
                "# pressure: 840 hPa station\n# temperature: 25 degC\n# humidity: 30 %\n# wind: 8 mph from 30 deg\n";
        List<String> lines = fly(header + HEADING + "\n118,17.2,-1.2,6400,-4\n");
        assertFlight(flight(model, 118.0, 17.2, -1.2, 6_400.0, -4.0), lines.get(5), 5);
        assertTrue(
                out.toString()
                        .contains(
                                "; pressure of the file, temperature of the file, humidity of the file, wind of the file"),
                out.toString());
    }

    @Test
    void optionsTakeThePlaceOfTheHeaderAndTheAnswerSaysSo() throws IOException {
        FlightModel model = FlightModel.standard()
                .withAir(Atmosphere.standardAt(Length.ofFeet(5_280.0)).withTemperature(Temperature.ofCelsius(25.0)));
        String header =
                "# elevation: 100 ft\n# pressure: 1010 hPa station\n# temperature: 25 degC\n# wind: 8 mph from 30 deg\n";
        List<String> lines = fly(
                header + HEADING + "\n118,17.2,-1.2,6400,-4\n",
                "--elevation-ft=5280",
                "--wind-mph=0",
                "--wind-from-deg=0");
        assertFlight(flight(model, 118.0, 17.2, -1.2, 6_400.0, -4.0), lines.get(5), 5);
        assertTrue(
                out.toString()
                        .contains(
                                "; elevation of the command line in the place of the file's, temperature of the file, wind of"
                                        + " the command line in the place of the file's"),
                out.toString());
    }

    @Test
    void aWarningNamesTheFirstRowsOnly() throws IOException {
        fly(HEADING + "\n" + "100,-3,0,3000,0\n".repeat(7) + "150,11,0,2700,0\n");
        assertTrue(
                err.toString().contains("7 lands-at-once (the ball does not rise; rows 1, 2, 3, 4, 5, ...)"),
                err::toString);
    }

    @Test
    void directionAndTiltAreZeroWhereMissing() throws IOException {
        List<String> lines = fly("ball_speed_mph,launch_angle_deg,spin_rate_rpm\n118,17.2,6400\n");
        assertFlight(flight(FlightModel.standard(), 118.0, 17.2, 0.0, 6_400.0, 0.0), lines.get(1), 3);
        lines = fly(HEADING + "\n118,17.2,,6400,\n");
        assertFlight(flight(FlightModel.standard(), 118.0, 17.2, 0.0, 6_400.0, 0.0), lines.get(1), 5);
    }

    @Test
    void keepsWhatIsThereAndMarksWhatItComputed() throws IOException {
        List<String> lines = fly("""
                # place: range 4
                "note";ball_speed_kmh;launch_angle_deg;spin_rate_rpm;carry_m;landing_speed_mph;total_yd
                "a ""good"" one; I think";190,5;17,25;6400;150,5;;
                """);
        assertEquals("# place: range 4", lines.get(0));
        assertEquals(
                "note;ball_speed_kmh;launch_angle_deg;spin_rate_rpm;carry_m;landing_speed_mph;total_yd;computed_carry_yd;"
                        + "side_yd;curve_yd;apex_ft;descent_angle_deg;flight_time_s;computed_landing_speed_mph;computed_total_yd",
                lines.get(1));
        String start = "\"a \"\"good\"\" one; I think\";190,5;17,25;6400;150,5;;;";
        assertTrue(lines.get(2).startsWith(start), lines.get(2));
        Flight expected = FlightModel.standard()
                .withGround(Ground.of(TurfClass.FAIRWAY))
                .fly(LaunchConditions.builder()
                        .ballSpeed(Speed.ofKmh(190.5))
                        .launchAngle(Angle.ofDegrees(17.25))
                        .spinRate(SpinRate.ofRpm(6_400.0))
                        .build());
        assertFlight(
                expected,
                lines.get(2).substring(start.length()).replace(',', '.').replace(';', ','),
                0);
    }

    @Test
    void countsWarningsInOneLine() throws IOException {
        List<String> lines = fly(HEADING + "\n100,-3,0,3000,0\n150,11,0,2700,0\n20,0,0,0,0\n");
        assertEquals(4, lines.size());
        assertTrue(lines.get(1).contains(",0.000,0.000,0.000,0.000,3.000,0.000,100.000,"), lines.get(1));
        assertEquals(1, err.toString().lines().count(), err.toString());
        assertTrue(
                err.toString()
                        .startsWith(
                                folder.resolve("launches.csv")
                                        + ": to know of the 3 flights: 1 bounce-extrapolated (lands faster or flatter than the"
                                        + " bounce model covers: their total is a guess; row 1), 2 lands-at-once (the ball does not rise; rows 1, 3)"),
                err.toString());
    }

    @Test
    void replacesAnOlderFile() throws IOException {
        Files.writeString(folder.resolve("flights.csv"), "something else\n".repeat(100));
        assertEquals(2, fly(HEADING + "\n118,17.2,0,6400,0\n").size());
        try (Stream<Path> files = Files.list(folder)) {
            assertEquals(2, files.count());
        }
    }

    @Test
    void helpSaysWhatTheTotalIs() {
        assertEquals(0, run("fly", "--help"));
        assertTrue(out.toString().contains("total_yd"), out.toString());
        assertTrue(out.toString().contains("no turf's numbers are validated"), out.toString());
    }

    @Test
    void aFileWhoseNameBeginsWithAnAtSignIsAFile() {
        assertEquals(
                2,
                run(
                        "fly",
                        "@launches.csv",
                        "--out",
                        folder.resolve("flights.csv").toString()));
        assertEquals(
                "@launches.csv: cannot be read: there is no such file",
                err.toString().strip());
    }

    @Test
    void progressIsForLongRunsOnATerminal() {
        Progress brief = new Progress(new PrintWriter(err), 19_999, true);
        Progress unseen = new Progress(new PrintWriter(err), 100_000, false);
        for (Progress progress : List.of(brief, unseen)) {
            progress.done(5_000);
            progress.end();
        }
        assertEquals("", err.toString());
        Progress shown = new Progress(new PrintWriter(err), 20_000, true);
        shown.done(4_999);
        assertEquals("", err.toString());
        shown.done(5_000);
        assertEquals("\r5,000 of 20,000 flights", err.toString());
        shown.end();
        assertEquals("\r5,000 of 20,000 flights\r" + " ".repeat(23) + "\r", err.toString());
    }
}
