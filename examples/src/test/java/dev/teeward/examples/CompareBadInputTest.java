package dev.teeward.examples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
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
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** What {@code compare} refuses: exit code 2, exactly one line, nothing on standard output and no file. */
class CompareBadInputTest {
    private static final String HEADING = "club,carry_yd\n";
    private static final String GOOD = HEADING + "Alder,150\nRowan,151\nRowan,152\nAlder,149\n";
    private static final String SEE = "; see teeward-examples compare --help";

    @TempDir
    private Path folder = Path.of("");

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    private Path session = Path.of("");

    @BeforeEach
    void goodSession() throws IOException {
        session = Files.writeString(folder.resolve("session.csv"), GOOD);
    }

    /** Asks for both files, so that what is written is seen. */
    private void assertRefused(String line, String... args) throws IOException {
        List<Path> before = files();
        List<String> all = new ArrayList<>(List.of("compare"));
        all.addAll(List.of(args));
        if (!all.contains("--html")) {
            all.addAll(List.of("--html", folder.resolve("page.html").toString()));
        }
        if (!all.contains("--json")) {
            all.addAll(List.of("--json", folder.resolve("numbers.json").toString()));
        }
        int code = TeewardExamples.run(new PrintWriter(out), new PrintWriter(err), all.toArray(new String[0]));
        assertEquals(line + System.lineSeparator(), err.toString());
        assertEquals(2, code);
        assertEquals("", out.toString());
        assertEquals(before, files());
    }

    private List<Path> files() throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.sorted().toList();
        }
    }

    private static Stream<Arguments> badSessions() {
        return Stream.of(
                arguments("", "is empty"),
                arguments("\n \n", "is empty"),
                arguments(HEADING, "has a heading but no rows"),
                arguments("# hand: left\n", "has a header block but no table"),
                arguments(
                        HEADING + "Alder,150\nAlder\u200B,151\nAlder,150\nAlder\u200B,151\n",
                        "row 2, club: \"Alder\" differs from \"Alder\" only in characters that do not show, spaces or accents"
                                + " (U+200B); write it in one way"),
                arguments("carry_yd\n150\n", "heading, club: is missing; every shot needs the name of its club"),
                arguments(GOOD + "Alder,far\n", "row 5, carry_yd: \"far\" is not a number"),
                arguments("Dear golfer, hello\nhow, are, you\n", "row 1: has 3 cells, but the heading has 2"),
                arguments(HEADING + "Alder,150\nAlder,151\n", "only one club was hit, Alder; a comparison needs two"),
                arguments(
                        GOOD + "Hazel,150\nHazel,151\n",
                        "the session has 3 clubs; choose two of Alder, Rowan, Hazel by giving --club twice"),
                arguments(HEADING + "Alder,150\n", "only one club was hit, Alder; a comparison needs two"),
                arguments(
                        HEADING + "Alder,150\nRowan,151\nRowan,152\n",
                        "Alder has only one used shot; each club needs at least two"),
                arguments(
                        "club,carry_yd,exclude\nAlder,150,thin\nRowan,151,fat\nAlder,150,thin\nRowan,151,fat\n",
                        "all 4 shots of the session are excluded"),
                arguments(
                        "club,carry_yd,exclude\nAlder,150,\nRowan,151,fat\nAlder,150,\nRowan,151,fat\n",
                        "Rowan has no used shot (2 excluded); each club needs at least two"),
                arguments(
                        "club,carry_yd,spin_rate_rpm\nAlder,150,\nRowan,,6000\nAlder,151,\nRowan,,6100\n",
                        "no metric was measured at least twice with both Alder and Rowan"),
                arguments(
                        "# pressure: 1013 hPa altimeter\n" + GOOD,
                        "the altimeter pressure of 1013.0 hPa (29.91 inHg) needs the elevation of the place, which the"
                                + " session does not give; without one, give the station pressure, as a barometer at the place shows it"));
    }

    @ParameterizedTest
    @MethodSource("badSessions")
    void badSession(String text, String line) throws IOException {
        Files.writeString(session, text);
        assertRefused(session + ": " + line, session.toString());
    }

    @Test
    void junk() throws IOException {
        Files.write(session, new byte[] {'c', 'l', 'u', 'b', (byte) 0xC3, '('});
        assertRefused(session + ": is not UTF-8 text (byte 0xC3 at offset 4); save it as UTF-8", session.toString());
    }

    @Test
    void missing() throws IOException {
        Path none = folder.resolve("none.csv");
        assertRefused(none + ": cannot be read: there is no such file", none.toString());
    }

    @Test
    void folderAsSession() throws IOException {
        assertRefused(folder + ": is a folder, not a file", folder.toString());
    }

    private static Stream<Arguments> badOptions() {
        String margin = "Invalid value for option '--margin' (METRIC=AMOUNT): ";
        String carryUnits = "m, cm, mm, yd, ft, in";
        return Stream.of(
                arguments("--margin carry=5", margin + "\"5\" has no unit; use " + carryUnits),
                arguments("--margin carry=5mph", margin + "\"mph\" is not a unit for this; use " + carryUnits),
                arguments(
                        "--margin carry=-5yd",
                        margin
                                + "margin of carry must be in (0, 125] m (0-136.7 yd), but was -4.572 m; it is the largest"
                                + " difference that does not matter"),
                arguments(
                        "--margin carry=0yd",
                        margin
                                + "margin of carry must be in (0, 125] m (0-136.7 yd), but was 0 m; it is the largest"
                                + " difference that does not matter"),
                arguments("--margin carry=small", margin + "\"small\" is not a number with a unit"),
                arguments("--margin carry=", margin + "\"\" is not a number with a unit"),
                arguments("--margin carry=NaN", margin + "\"NaN\" is not a number with a unit"),
                arguments("--margin carry=1e999yd", margin + "\"1e999yd\" is too large a number"),
                arguments(
                        "--margin 5yd",
                        margin
                                + "\"5yd\" is not a margin; write a metric, = and an amount with its unit, as in carry=5yd"),
                arguments("--margin cary=5yd", margin + "\"cary\" is not a metric; did you mean carry?"),
                arguments("--margin smash_factor=0.02mph", margin + "\"0.02mph\" is not a number"),
                arguments("--margin carry=5yd --margin carry=4yd", "--margin of carry is given twice"),
                arguments(
                        "--primary ballspeed",
                        "Invalid value for option '--primary': \"ballspeed\" is not a metric; did you mean"
                                + " ball_speed?"),
                arguments("--level 95", "--level must be from 0.8 to 0.999, but was 95; for 95 percent write 0.95"),
                arguments(
                        "--level 0.95123", "--level must have at most three decimals, such as 0.995, but was 0.95123"),
                arguments(
                        "--margin carry=1e-300yd",
                        margin
                                + "the margin of carry must be at least 0.001 yd (0.000914 m), but was \"1e-300yd\"; no device"
                                + " reads so finely"),
                arguments(
                        "--margin smash_factor=1e-9",
                        margin
                                + "the margin of smash factor must be at least 0.00001 (0.00001), but was \"1e-9\"; no device"
                                + " reads so finely"),
                arguments(
                        "--target 1e-320yd",
                        "--target must be from 1 yd (0.914 m) to 546 yd (500 m), but was 1e-320yd"),
                arguments("--level high", "Invalid value for option '--level': \"high\" is not a number"),
                arguments("--club Alder", "--club must be given twice, but was given once"),
                arguments("--club Alder --club Alder", "--club must name two clubs, but both are \"Alder\""),
                arguments("--target 150", "--target: \"150\" has no unit; use " + carryUnits),
                arguments("--target -1yd", "--target must be from 1 yd (0.914 m) to 546 yd (500 m), but was -1yd"),
                arguments(
                        "--units imperial",
                        "Invalid value for option '--units': \"imperial\" is neither us nor metric"));
    }

    @ParameterizedTest
    @MethodSource("badOptions")
    void badOption(String options, String line) throws IOException {
        List<String> args = new ArrayList<>(List.of(options.split(" ")));
        args.add(session.toString());
        assertRefused(line + SEE, args.toArray(new String[0]));
    }

    @Test
    void unknownPrimaryWithoutANearOneListsAll() throws IOException {
        List<String> args = List.of("compare", session.toString(), "--primary", "happiness");
        assertEquals(2, TeewardExamples.run(new PrintWriter(out), new PrintWriter(err), args.toArray(new String[0])));
        assertEquals(1, err.toString().lines().count(), err.toString());
        assertTrue(
                err.toString()
                        .startsWith("Invalid value for option '--primary': \"happiness\" is not a metric; there"
                                + " are club_speed, attack_angle,"),
                err.toString());
    }

    @Test
    void primaryThatTheSessionLacks() throws IOException {
        assertRefused(
                session + ": the primary metric spin_rate has 0 numbers with Alder and 0 with Rowan, but needs two with"
                        + " each; there are carry",
                session.toString(),
                "--primary",
                "spin_rate");
    }

    @Test
    void clubThatWasNotHit() throws IOException {
        assertRefused(
                session + ": no shot was hit with \"Hazel\"; the session has Alder, Rowan",
                session.toString(),
                "--club",
                "Alder",
                "--club",
                "Hazel");
    }

    @Test
    void noSession() throws IOException {
        assertRefused("Missing required parameter: 'SESSION.csv'" + SEE);
    }

    @Test
    void sessionGivenTwice() throws IOException {
        assertRefused(
                session + ": is given twice; its shots would count double", session.toString(), session.toString());
    }

    @Test
    void secondDayOfAnotherHand() throws IOException {
        Path right = Files.writeString(folder.resolve("right.csv"), "# hand: right\n" + GOOD);
        Path left = Files.writeString(folder.resolve("left.csv"), "# hand: left\n" + GOOD);
        List<Path> before = files();
        int code = TeewardExamples.run(
                new PrintWriter(out), new PrintWriter(err), "compare", right.toString(), left.toString());
        assertEquals(2, code);
        assertTrue(err.toString().startsWith(left + ": "), err.toString());
        assertEquals(1, err.toString().lines().count(), err.toString());
        assertEquals(before, files());
    }

    @Test
    void emptyNames() throws IOException {
        assertRefused("SESSION.csv is empty; give the name of a file" + SEE, "");
        for (String option : List.of("--html", "--json", "--mapping")) {
            out.getBuffer().setLength(0);
            err.getBuffer().setLength(0);
            assertRefused(option + " is empty; give the name of a file" + SEE, session.toString(), option, "");
        }
    }

    /** A device that cannot be written to, where there is one; see WholeFileTest for the same with files alone. */
    @Test
    void ifOneFileCannotBeWrittenTheOtherIsNotThere() throws IOException {
        Path full = Path.of("/dev/full");
        Path json = Files.exists(full) ? full : Files.createDirectory(folder.resolve("folder"));
        Path page = folder.resolve("page.html");
        List<Path> before = files();
        int code = TeewardExamples.run(
                new PrintWriter(out),
                new PrintWriter(err),
                "compare",
                session.toString(),
                "--html",
                page.toString(),
                "--json",
                json.toString());
        assertEquals(2, code);
        assertTrue(err.toString().startsWith(json + ": "), err.toString());
        assertEquals(1, err.toString().lines().count(), err.toString());
        assertEquals("", out.toString());
        assertEquals(before, files());
    }

    @Test
    void missingFolder() throws IOException {
        Path page = folder.resolve("nowhere").resolve("page.html");
        assertRefused(page + ": the folder to write to does not exist", session.toString(), "--html", page.toString());
    }

    @Test
    void missingFolderOfTheSecondFile() throws IOException {
        Path json = folder.resolve("nowhere").resolve("numbers.json");
        assertRefused(json + ": the folder to write to does not exist", session.toString(), "--json", json.toString());
    }

    @Test
    void outputOverTheInput() throws IOException {
        assertRefused(
                session + ": is read as well; write to a file of another name",
                session.toString(),
                "--html",
                session.toString());
        assertEquals(GOOD, Files.readString(session, StandardCharsets.UTF_8));
    }

    @Test
    void bothOutputsInOneFile() throws IOException {
        String file = folder.resolve("answer").toString();
        assertRefused(
                file + ": is given both for the page and for the numbers",
                session.toString(),
                "--html",
                file,
                "--json",
                file);
    }

    @Test
    void badMapping() throws IOException {
        Path mapping = Files.writeString(folder.resolve("mapping.txt"), "Weite = carry\n");
        assertRefused(
                mapping + ": line 1: carry needs a unit: m, cm, mm, yd, ft, in",
                session.toString(),
                "--mapping",
                mapping.toString());
    }

    @Test
    void missingMapping() throws IOException {
        Path mapping = folder.resolve("mapping.txt");
        assertRefused(
                mapping + ": cannot be read: there is no such file",
                session.toString(),
                "--mapping",
                mapping.toString());
    }

    @Test
    void demoIntoNowhere() throws IOException {
        Path nowhere = folder.resolve("nowhere");
        int code = TeewardExamples.run(new PrintWriter(out), new PrintWriter(err), "demo", "--out", nowhere.toString());
        assertEquals(2, code);
        assertEquals(nowhere + ": is not a folder that exists" + System.lineSeparator(), err.toString());
        assertEquals("", out.toString());
        assertEquals(List.of(session), files());
    }
}
