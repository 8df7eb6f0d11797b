package dev.teeward.examples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** What {@code fly} refuses: exit code 2, exactly one line, nothing on standard output and no file. */
class FlyBadInputTest {
    private static final String HEADING = "ball_speed_mph,launch_angle_deg,spin_rate_rpm\n";
    private static final String GOOD = HEADING + "118,17.2,6400\n";

    @TempDir
    private Path folder = Path.of("");

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    private Path flights() {
        return folder.resolve("flights.csv");
    }

    private void assertRefused(String line, String... args) throws IOException {
        List<Path> before = files();
        assertEquals(2, TeewardExamples.run(new PrintWriter(out), new PrintWriter(err), args), err.toString());
        assertEquals(line + System.lineSeparator(), err.toString());
        assertEquals("", out.toString());
        assertEquals(before, files());
    }

    private List<Path> files() throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return new ArrayList<>(files.sorted().toList());
        }
    }

    private static Stream<Arguments> badFiles() {
        return Stream.of(
                arguments("", "is empty"),
                arguments("\n\n", "is empty"),
                arguments(HEADING, "has a heading but no rows"),
                arguments("# hand: left\n", "has a header block but no table"),
                arguments(
                        "# elevation: high\n" + GOOD, "header line 1, elevation: \"high\" is not a number with a unit"),
                arguments(
                        "# elevatio: 5 ft\n" + GOOD,
                        "header line 1, elevatio: is not a known name; did you mean elevation?"),
                arguments(GOOD + "118,17.2\n", "row 2: has 2 cells, but the heading has 3"),
                arguments(HEADING + "118,17.2,6400,1\n", "row 1: has 4 cells, but the heading has 3"),
                arguments(HEADING + "fast,17.2,6400\n", "row 1, ball_speed_mph: \"fast\" is not a number"),
                arguments(HEADING + "118,NaN,6400\n", "row 1, launch_angle_deg: \"NaN\" is not a number"),
                arguments(HEADING + "118,17.2,Infinity\n", "row 1, spin_rate_rpm: \"Infinity\" is not a number"),
                arguments(GOOD + "118,17.2,1e999\n", "row 2, spin_rate_rpm: \"1e999\" is too large a number"),
                arguments(HEADING + "118,,6400\n", "row 1, launch_angle_deg: is empty"),
                arguments(
                        HEADING + "-118,17.2,6400\n",
                        "row 1, ball_speed_mph: \"-118\" is outside (0, 246.06] mph, that is (0, 110] m/s"),
                arguments(
                        HEADING + "0,17.2,6400\n",
                        "row 1, ball_speed_mph: \"0\" is outside (0, 246.06] mph, that is (0, 110] m/s"),
                arguments(
                        HEADING + "1180,17.2,6400\n",
                        "row 1, ball_speed_mph: \"1180\" is outside (0, 246.06] mph, that is (0, 110] m/s"),
                arguments(
                        HEADING + "118,95,6400\n",
                        "row 1, launch_angle_deg: \"95\" is outside [-90, 90] deg, that is [-1.5708, 1.5708] rad"),
                arguments(
                        HEADING + "118,17.2,-6400\n",
                        "row 1, spin_rate_rpm: \"-6400\" is outside [0, 20000] rpm, that is [0, 2094.4] rad/s"),
                arguments(
                        "ball_speed,launch_angle_deg,spin_rate_rpm\n118,17.2,6400\n",
                        "heading, ball_speed: has no unit; name it one of ball_speed_mps, ball_speed_kmh, ball_speed_mph,"
                                + " ball_speed_fps, ball_speed_kn"),
                arguments(
                        "ball_speed_yd,launch_angle_deg,spin_rate_rpm\n118,17.2,6400\n",
                        "heading, ball_speed_yd: \"yd\" is not a unit of ball speed; name it one of ball_speed_mps,"
                                + " ball_speed_kmh, ball_speed_mph, ball_speed_fps, ball_speed_kn, or choose another name if"
                                + " it is something else"),
                arguments(
                        "ball_speed_mph,launch_angle_deg,spin_rate_rpm,ball_speed_kmh\n118,17.2,6400,190\n",
                        "heading, ball_speed_kmh: gives ball_speed a second time, after ball_speed_mph"),
                arguments(
                        "bal_speed_mph,launch_angle_deg,spin_rate_rpm\n118,17.2,6400\n",
                        "heading, bal_speed_mph: is not a known name; did you mean ball_speed_mph?"),
                arguments(
                        "ball_speed_mph,launch_angle_deg\n118,17.2\n",
                        "heading, spin_rate: is missing; add a column named one of spin_rate_radps, spin_rate_rpm,"
                                + " spin_rate_rps"),
                arguments(
                        HEADING + "118,17.2,\"6400\n118,17.2,6400\n",
                        "row 1: has a quotation mark that is never closed"),
                arguments(
                        HEADING + "118,17.2,64\u000000\n",
                        "line 2: has the control character U+0000; this is not a text table"));
    }

    @ParameterizedTest
    @MethodSource("badFiles")
    void refusesAFile(String text, String problem) throws IOException {
        Path launches = Files.writeString(folder.resolve("launches.csv"), text);
        assertRefused(
                launches + ": " + problem,
                "fly",
                launches.toString(),
                "--out",
                flights().toString());
        assertFalse(Files.exists(flights()));
    }

    @Test
    void refusesBinaryJunk() throws IOException {
        byte[] junk = new byte[5_000];
        new java.util.Random(3L).nextBytes(junk);
        junk[0] = (byte) 0x89;
        Path launches = Files.write(folder.resolve("launches.csv"), junk);
        assertRefused(
                launches + ": is not UTF-8 text (byte 0x89 at offset 0); save it as UTF-8",
                "fly",
                launches.toString(),
                "--out",
                flights().toString());
    }

    @Test
    void refusesAFolderAndAMissingFile() throws IOException {
        assertRefused(
                folder + ": is a folder, not a file",
                "fly",
                folder.toString(),
                "--out",
                flights().toString());
        err.getBuffer().setLength(0);
        Path missing = folder.resolve("none.csv");
        assertRefused(
                missing + ": cannot be read: there is no such file",
                "fly",
                missing.toString(),
                "--out",
                flights().toString());
    }

    @Test
    void refusesToWriteWhereItCannot() throws IOException {
        Path launches = Files.writeString(folder.resolve("launches.csv"), GOOD);
        Path nowhere = folder.resolve("none").resolve("flights.csv");
        assertRefused(
                nowhere + ": the folder to write to does not exist",
                "fly",
                launches.toString(),
                "--out",
                nowhere.toString());
        err.getBuffer().setLength(0);
        assertRefused(folder + ": is a folder, not a file", "fly", launches.toString(), "--out", folder.toString());
    }

    @Test
    void refusesToReplaceTheLaunches() throws IOException {
        Path launches = Files.writeString(folder.resolve("launches.csv"), GOOD);
        String same = folder.resolve(".").resolve("launches.csv").toString();
        assertRefused(
                same + ": is the file with the launches; give --out another name",
                "fly",
                launches.toString(),
                "--out",
                same);
        assertEquals(GOOD, Files.readString(launches));
    }

    @Test
    void leavesAnOlderFileAsItWas() throws IOException {
        Path launches = Files.writeString(folder.resolve("launches.csv"), GOOD + "fast,17.2,6400\n");
        Files.writeString(flights(), "older\n");
        assertRefused(
                launches + ": row 2, ball_speed_mph: \"fast\" is not a number",
                "fly",
                launches.toString(),
                "--out",
                flights().toString());
        assertEquals("older\n", Files.readString(flights()));
    }

    @Test
    void quotesWithoutControlCharacters() throws IOException {
        Path launches = Files.write(
                folder.resolve("launches.csv"), (HEADING + "\"fa\nst\",17.2,6400\n").getBytes(StandardCharsets.UTF_8));
        assertRefused(
                launches + ": row 1, ball_speed_mph: \"fa?st\" is not a number",
                "fly",
                launches.toString(),
                "--out",
                flights().toString());
    }

    private static Stream<Arguments> badOptions() {
        return Stream.of(
                arguments("--elevation-ft=high", "Invalid value for option '--elevation-ft': \"high\" is not a number"),
                arguments(
                        "--elevation-ft=5,2",
                        "Invalid value for option '--elevation-ft': \"5,2\" is not a number; write the decimal mark as a"
                                + " point"),
                arguments("--temperature-f=NaN", "Invalid value for option '--temperature-f': \"NaN\" is not a number"),
                arguments("--humidity=0x1p-3", "Invalid value for option '--humidity': \"0x1p-3\" is not a number"),
                arguments(
                        "--elevation-ft=40000",
                        "--elevation-ft must be in [-1640, 29527] ft (-500 to 9000 m), but was 40000"),
                arguments(
                        "--elevation-m=1e999",
                        "--elevation-m must be in [-500, 9000] m (-1640 to 29527 ft), but was too large a number"),
                arguments(
                        "--temperature-f=200",
                        "--temperature-f must be in [-76, 140] degF (-60 to 60 degC), but was 200"),
                arguments(
                        "--temperature-c=70",
                        "--temperature-c must be in [-60, 60] degC (-76 to 140 degF), but was 70"),
                arguments("--humidity=45", "--humidity must be in [0, 1], but was 45; for 45 percent write 0.45"),
                arguments("--humidity=-0.1", "--humidity must be in [0, 1], but was -0.1"),
                arguments("--wind-mph=8", "--wind-mph needs --wind-from-deg: the wind has a speed but no direction"),
                arguments(
                        "--wind-from-deg=30",
                        "--wind-from-deg needs --wind-mph: the wind has a direction but no speed"),
                arguments(
                        "--wind-mph=-8 --wind-from-deg=30",
                        "--wind-mph must be in [0, 111] mph (0 to 49.6 m/s), but was -8"),
                arguments(
                        "--wind-mph=8 --wind-from-deg=400", "--wind-from-deg must be in [-360, 360] deg, but was 400"),
                arguments(
                        "--elevation-ft=1 --elevation-m=2",
                        "--elevation-ft and --elevation-m say the same thing; give one of them"),
                arguments(
                        "--temperature-f=1 --temperature-c=2",
                        "--temperature-f and --temperature-c say the same thing; give one of them"),
                arguments("--wind=8", "Unknown option: '--wind=8'"));
    }

    @ParameterizedTest
    @MethodSource("badOptions")
    void refusesAnOption(String options, String problem) throws IOException {
        Path launches = Files.writeString(folder.resolve("launches.csv"), GOOD);
        List<String> args = new ArrayList<>(
                List.of("fly", launches.toString(), "--out", flights().toString()));
        args.addAll(List.of(options.split(" ", -1)));
        assertRefused(problem + "; see teeward-examples fly --help", args.toArray(String[]::new));
    }

    @Test
    void needsBothFiles() throws IOException {
        assertRefused("Missing required option: '--out=FLIGHTS.csv'; see teeward-examples fly --help", "fly", "a.csv");
        err.getBuffer().setLength(0);
        assertRefused(
                "Missing required parameter: 'LAUNCHES.csv'; see teeward-examples fly --help",
                "fly",
                "--out",
                flights().toString());
    }
}
