package dev.teeward.fitting.io;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import dev.teeward.fitting.Metric;
import java.io.IOException;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Every way in which a file is refused, with the exact line that says so. */
class BadInputTest {
    private static final String LAUNCH = "ball_speed_mph,launch_angle_deg,spin_rate_rpm\n";

    private static final TableReader LAUNCHES = TableReader.withDefaults()
            .requiring(Metric.BALL_SPEED, Metric.LAUNCH_ANGLE, Metric.SPIN_RATE)
            .withDefault(Metric.START_DIRECTION, 0.0)
            .withDefault(Metric.AXIS_TILT, 0.0);

    static Stream<Arguments> launches() {
        return Stream.of(
                arguments("", "f: is empty"),
                arguments("\n \r\n", "f: is empty"),
                arguments("# hand: left\n", "f: has a header block but no table"),
                arguments(LAUNCH, "f: has a heading but no rows"),
                arguments(LAUNCH + "118,17\n", "f: row 1: has 2 cells, but the heading has 3"),
                arguments(LAUNCH + "118\n", "f: row 1: has 1 cell, but the heading has 3"),
                arguments(LAUNCH + "118,17,6400\n118,17,6400,1\n", "f: row 2: has 4 cells, but the heading has 3"),
                arguments(LAUNCH + "fast,17,6400\n", "f: row 1, ball_speed_mph: \"fast\" is not a number"),
                arguments(LAUNCH + "118,17,6400\n\nNaN,17,6400\n", "f: row 2, ball_speed_mph: \"NaN\" is not a number"),
                arguments(LAUNCH + "118,17,Infinity\n", "f: row 1, spin_rate_rpm: \"Infinity\" is not a number"),
                arguments(LAUNCH + "1e999,17,6400\n", "f: row 1, ball_speed_mph: \"1e999\" is too large a number"),
                arguments(LAUNCH + "0x1p3,17,6400\n", "f: row 1, ball_speed_mph: \"0x1p3\" is not a number"),
                arguments(LAUNCH + "118d,17,6400\n", "f: row 1, ball_speed_mph: \"118d\" is not a number"),
                arguments(
                        LAUNCH + "1.1.8,17,6400\n",
                        "f: row 1, ball_speed_mph: \"1.1.8\" is not a number; write it without separators between"
                                + " thousands"),
                arguments(
                        LAUNCH + "118,17,\"6,400\"\n",
                        "f: row 1, spin_rate_rpm: \"6,400\" is not a number; write it without separators between"
                                + " thousands"),
                arguments(LAUNCH + "118,17,\n", "f: row 1, spin_rate_rpm: is empty"),
                arguments(
                        LAUNCH + "-118,17,6400\n",
                        "f: row 1, ball_speed_mph: \"-118\" is outside (0, 246.06] mph, that is (0, 110] m/s"),
                arguments(
                        LAUNCH + "1180,17,6400\n",
                        "f: row 1, ball_speed_mph: \"1180\" is outside (0, 246.06] mph, that is (0, 110] m/s"),
                arguments(
                        LAUNCH + "0,17,6400\n",
                        "f: row 1, ball_speed_mph: \"0\" is outside (0, 246.06] mph, that is (0, 110] m/s"),
                arguments(
                        LAUNCH + "118,95,6400\n",
                        "f: row 1, launch_angle_deg: \"95\" is outside [-90, 90] deg, that is [-1.5708, 1.5708] rad"),
                arguments(
                        LAUNCH + "118,17,-6400\n",
                        "f: row 1, spin_rate_rpm: \"-6400\" is outside [0, 20000] rpm, that is [0, 2094.4] rad/s"),
                arguments(
                        LAUNCH.replace("ball_speed_mph", "ball_speed") + "118,17,6400\n",
                        "f: heading, ball_speed: has no unit; name it one of ball_speed_mps, ball_speed_kmh,"
                                + " ball_speed_mph, ball_speed_fps, ball_speed_kn"),
                arguments(
                        LAUNCH.replace("ball_speed_mph", "ball_speed_yd") + "118,17,6400\n",
                        "f: heading, ball_speed_yd: \"yd\" is not a unit of ball speed; name it one of ball_speed_mps,"
                                + " ball_speed_kmh, ball_speed_mph, ball_speed_fps, ball_speed_kn, or choose another"
                                + " name if it is something else"),
                arguments(
                        "ball_speed_kmh," + LAUNCH + "1,118,17,6400\n",
                        "f: heading, ball_speed_mph: gives ball_speed a second time, after ball_speed_kmh"),
                arguments("ball_speed_mph," + LAUNCH + "1,118,17,6400\n", "f: heading, ball_speed_mph: is there twice"),
                arguments("extra,extra," + LAUNCH + "1,1,118,17,6400\n", "f: heading, extra: is there twice"),
                arguments("," + LAUNCH + "1,118,17,6400\n", "f: heading: column 1 has no name"),
                arguments(
                        "bal_speed_mph,launch_angle_deg,spin_rate_rpm\n118,17,6400\n",
                        "f: heading, bal_speed_mph: is not a known name; did you mean ball_speed_mph?"),
                arguments(
                        "Ball Speed (mph),launch_angle_deg,spin_rate_rpm\n118,17,6400\n",
                        "f: heading, Ball Speed (mph): is not a known name; did you mean ball_speed_mph?"),
                arguments(
                        "ball_speed_mph,launch_angle_deg,SpinRate\n118,17,6400\n",
                        "f: heading, SpinRate: is not a known name; did you mean spin_rate_rpm?"),
                arguments(
                        "ball_speed_mph,launch_angle_deg\n118,17\n",
                        "f: heading, spin_rate: is missing; add a column named one of spin_rate_radps, spin_rate_rpm,"
                                + " spin_rate_rps"),
                arguments(
                        LAUNCH + "118,17,\"6400\n118,17,6400\n", "f: row 1: has a quotation mark that is never closed"),
                arguments("\"a,b\n1,2\n", "f: heading: has a quotation mark that is never closed"),
                arguments(
                        LAUNCH + "118,17,6400\n118,17,\"64\"00\n",
                        "f: row 2: is not a table row: there is text after a closing quotation mark, or a cell is too"
                                + " long"),
                arguments("\u0000\u0001\n", "f: line 1: has the control character U+0000; this is not a text table"),
                arguments(
                        LAUNCH.replace(',', ';') + "118,5;17;6400\n118.5;17;6400\n",
                        "f: row 2, ball_speed_mph: \"118.5\" has a decimal point, but numbers above it have a decimal"
                                + " comma"),
                arguments(LAUNCH + "118\u2028\n", "f: row 1: has 1 cell, but the heading has 3"));
    }

    @ParameterizedTest
    @MethodSource("launches")
    void launchTablesAreRefusedInOneLine(String text, String message) {
        InputException e = assertThrows(InputException.class, () -> LAUNCHES.read(text, "f"));
        assertEquals(message, e.getMessage());
    }

    static Stream<Arguments> sessions() {
        String table = "club,carry_yd\nAlder,150\n";
        return Stream.of(
                arguments("", "f: is empty"),
                arguments("club,carry_yd\n", "f: has a heading but no rows"),
                arguments("carry_yd\n150\n", "f: heading, club: is missing; every shot needs the name of its club"),
                arguments("club,carry_yd\n ,150\n", "f: row 1, club: is empty"),
                arguments("clubs,carry_yd\nAlder,150\n", "f: heading, clubs: is not a known name; did you mean club?"),
                arguments("club,notes\nAlder,x\n", "f: heading, notes: is not a known name; did you mean note?"),
                arguments(
                        "club,carry_yd\nAlder,150\nalder,150\n",
                        "f: row 2, club: \"alder\" differs from \"Alder\" only in upper and lower case; write it in one"
                                + " way"),
                arguments(
                        "club,carry_yd\nAlder,150\nRowan,150\nAlder\u200B,150\n",
                        "f: row 3, club: \"Alder\" differs from \"Alder\" only in characters that do not show, spaces or"
                                + " accents (U+200B); write it in one way"),
                arguments(
                        "club,carry_yd\nAlder 6,150\nAlder\u00A06,150\n",
                        "f: row 2, club: \"Alder 6\" differs from \"Alder 6\" only in characters that do not show, spaces"
                                + " or accents (U+0020, U+00A0); write it in one way"),
                arguments(
                        "club,carry_yd\n\u00C9rable,150\nE\u0301rable,150\n",
                        "f: row 2, club: \"E\u0301rable\" differs from \"\u00C9rable\" only in characters that do not show,"
                                + " spaces or accents (U+00C9, U+0045, U+0301); write it in one way"),
                arguments(
                        "# club alder: loft 28 deg\nclub,carry_yd\nAlder,150\n",
                        "f: the club \"alder\" differs from \"Alder\" only in upper and lower case; write it in one way"),
                arguments(
                        "club,pair\nAlder,1\nRowan,1\nAlder,1\n",
                        "f: row 3, pair: pair 1 already has a shot with Alder; exclude all but one"),
                arguments("club,feel\nAlder,6\n", "f: row 1, feel: \"6\" is not a whole number from 1 to 5"),
                arguments("club,shot\nAlder,1.5\n", "f: row 1, shot: \"1.5\" is not a whole number from 1 to 1000000"),
                arguments(
                        "club,day\nAlder,5/14/26\n", "f: row 1, day: \"5/14/26\" is not a date of the form 2026-05-14"),
                arguments(
                        "club,smash_factor_mph\nAlder,1.3\n",
                        "f: heading, smash_factor_mph: \"mph\" is not a unit of smash factor; name it one of"
                                + " smash_factor, or choose another name if it is something else"),
                arguments("# hand: both\n" + table, "f: header line 1, hand: \"both\" is neither left nor right"),
                arguments(
                        "# ball: x\n# elevation: 5280\n" + table,
                        "f: header line 2, elevation: \"5280\" has no unit; use m, cm, mm, yd, ft, in"),
                arguments(
                        "# elevation: 5280 mph\n" + table,
                        "f: header line 1, elevation: \"mph\" is not a unit for this; use m, cm, mm, yd, ft, in"),
                arguments(
                        "# elevation: high\n" + table,
                        "f: header line 1, elevation: \"high\" is not a number with a unit"),
                arguments(
                        "# temperature: 1e999 F\n" + table,
                        "f: header line 1, temperature: \"1e999 F\" is too large a number"),
                arguments(
                        "# temperture: 85 F\n" + table,
                        "f: header line 1, temperture: is not a known name; did you mean temperature?"),
                arguments(
                        "# Humidty: 40 %\n" + table,
                        "f: header line 1, Humidty: is not a known name; did you mean humidity?"),
                arguments("# humidity: 0.4\n" + table, "f: header line 1, humidity: \"0.4\" has no unit; use %"),
                arguments("# humidity: 140 %\n" + table, "f: header line 1, humidity: \"140 %\" is outside [0, 100] %"),
                arguments(
                        "# pressure: 30.05 inHg\n" + table,
                        "f: header line 1, pressure: \"30.05 inHg\" does not say which pressure it is; end it with"
                                + " station (at the place itself) or altimeter (reduced to sea level)"),
                arguments(
                        "# wind: 8 mph\n" + table,
                        "f: header line 1, wind: \"8 mph\" is not of the form 8 mph from 30 deg (0 deg is a headwind,"
                                + " 90 deg from the right) or calm"),
                arguments(
                        "# date: May 14\n" + table,
                        "f: header line 1, date: \"May 14\" is not a date of the form 2026-05-14"),
                arguments(
                        "# place:\n" + table,
                        "f: header line 1, place: has no value; leave the line out if it is not known"),
                arguments("# hand: left\n# hand: left\n" + table, "f: header line 2, hand: is given twice"),
                arguments(
                        "# club: loft 29 deg\n" + table,
                        "f: header line 1, club: needs the name of the club, as in: club Alder: loft 29 deg"),
                arguments(
                        "# tolerance: 1 mph\n" + table,
                        "f: header line 1, tolerance: needs a metric, as in: tolerance ball_speed: 0.5 mph"),
                arguments(
                        "# tolerance balspeed: 1 mph\n" + table,
                        "f: header line 1, tolerance balspeed: \"balspeed\" is not a metric; did you mean ball_speed?"),
                arguments(
                        "# tolerance ball_speed: 1 yd\n" + table,
                        "f: header line 1, tolerance ball_speed: \"yd\" is not a unit for this; use m/s, km/h, mph,"
                                + " ft/s, kn"),
                arguments(
                        "# club Alder: loft 29\n" + table,
                        "f: header line 1, club Alder: \"29\" has no unit; use deg, rad"),
                arguments(
                        "# club Alder: bounce 8 deg\n" + table,
                        "f: header line 1, club Alder: \"bounce 8 deg\" is not understood; a club has loft, lie,"
                                + " length, mass and, last, shaft"),
                arguments(
                        "# club Alder: loft 29 deg, loft 29 deg\n" + table,
                        "f: header line 1, club Alder: \"loft\" is given twice"));
    }

    @ParameterizedTest
    @MethodSource("sessions")
    void sessionsAreRefusedInOneLine(String text, String message) {
        InputException e = assertThrows(
                InputException.class, () -> SessionReader.withDefaults().read(text, "f"));
        assertEquals(message, e.getMessage());
    }

    static Stream<Arguments> nearMisses() {
        return Stream.of(
                arguments("carry", Metric.CARRY),
                arguments("Cary_yd", Metric.CARRY),
                arguments("CARRY_YD", Metric.CARRY),
                arguments("carry yards", Metric.CARRY),
                arguments("carry_distance_yd", Metric.CARRY),
                arguments("clubspeed_mph", Metric.CLUB_SPEED),
                arguments("swing_speed_mph", Metric.CLUB_SPEED),
                arguments("angle_of_attack_deg", Metric.ATTACK_ANGLE),
                arguments("spin_axis_deg", Metric.AXIS_TILT),
                arguments("launch_direction_deg", Metric.START_DIRECTION),
                arguments("lauch_angle_deg", Metric.LAUNCH_ANGLE),
                arguments("sied_m", Metric.SIDE),
                arguments("sede_m", Metric.SIDE),
                arguments("apx_ft", Metric.APEX),
                arguments("smashfactor", Metric.SMASH_FACTOR),
                arguments("dynmic_loft_deg", Metric.DYNAMIC_LOFT));
    }

    @ParameterizedTest
    @MethodSource("nearMisses")
    void nearMissesAreNamed(String heading, Metric meant) {
        InputException e = assertThrows(
                InputException.class, () -> SessionReader.withDefaults().read("club," + heading + "\nAlder,1\n", "f"));
        assertEquals(Optional.of(heading), e.column());
        assertTrue(e.getMessage().contains(meant.key()), e.getMessage());
    }

    @Test
    void wordsThatOnlyLookSimilarAreKept() {
        for (String heading : List.of(
                "heel",
                "book",
                "wide",
                "nose",
                "hair",
                "target",
                "weather",
                "computed_carry_yd",
                "side_spin_rpm",
                "lie_angle",
                "coach",
                "groove_wear")) {
            assertEquals(
                    "x",
                    SessionReader.withDefaults()
                            .read("club," + heading + "\nAlder,x\n", "f")
                            .shots()
                            .shots()
                            .get(0)
                            .other()
                            .get(heading));
        }
    }

    @Test
    void filesThatCannotBeReadSaySo(@TempDir Path folder) throws IOException {
        SessionReader reader = SessionReader.withDefaults();
        Path missing = folder.resolve("missing.csv");
        assertEquals(
                missing + ": cannot be read: there is no such file",
                assertThrows(InputException.class, () -> reader.read(missing)).getMessage());
        assertEquals(
                folder + ": is a folder, not a file",
                assertThrows(InputException.class, () -> reader.read(folder)).getMessage());
        Path latin = Files.write(folder.resolve("latin.csv"), "club\nfür\n".getBytes(StandardCharsets.ISO_8859_1));
        assertEquals(
                latin + ": is not UTF-8 text (byte 0xFC at offset 6); save it as UTF-8",
                assertThrows(InputException.class, () -> reader.read(latin)).getMessage());
        Path cut =
                Files.write(folder.resolve("cut.csv"), new byte[] {'c', 'l', 'u', 'b', '\n', (byte) 0xE2, (byte) 0x82});
        assertEquals(
                cut + ": is not UTF-8 text (byte 0xE2 at offset 5); save it as UTF-8",
                assertThrows(InputException.class, () -> reader.read(cut)).getMessage());
    }

    @Test
    void theLineStaysOneLine() {
        String heading = "\"carry\nyd\"";
        InputException e = assertThrows(
                InputException.class,
                () -> SessionReader.withDefaults().read("club," + heading + "\nAlder,1\n", "a\nb"));
        assertEquals("a?b: heading, carry?yd: is not a known name; did you mean carry_yd?", e.getMessage());
        String longText = "x".repeat(10_000);
        InputException shortened = assertThrows(
                InputException.class,
                () -> SessionReader.withDefaults().read("club,carry_yd\nAlder," + longText + "\n", "f"));
        assertEquals("f: row 1, carry_yd: \"" + "x".repeat(40) + "...\" is not a number", shortened.getMessage());
        assertEquals(OptionalInt.of(1), shortened.row());
        assertEquals(Optional.of("carry_yd"), shortened.column());
        assertEquals("f", shortened.file());
        assertEquals(OptionalInt.empty(), e.row());
    }

    static Stream<Arguments> mappings() {
        return Stream.of(
                arguments("Club", "m: line 1: is not of the form: heading = meaning"),
                arguments("= club", "m: line 1: is not of the form: heading = meaning"),
                arguments("Club =", "m: line 1: is not of the form: heading = meaning"),
                arguments(
                        "# x\n\nA = cary yd",
                        "m: line 3: \"cary\" is neither a metric nor a text column; did you mean carry?"),
                arguments("A = zzz", "m: line 1: \"zzz\" is neither a metric nor a text column"),
                arguments("A = carry", "m: line 1: carry needs a unit: m, cm, mm, yd, ft, in"),
                arguments("A = carry mph", "m: line 1: \"mph\" is not a unit of carry; use m, cm, mm, yd, ft, in"),
                arguments(
                        "A = carry yd backwards",
                        "m: line 1: \"backwards\" is not understood; after the unit there may be: negate, sign R/L"),
                arguments(
                        "A = side yd sign",
                        "m: line 1: \"sign\" is not understood; after the unit there may be: negate, sign R/L"),
                arguments(
                        "A = side yd sign RL", "m: line 1: sign needs two letters such as R/L, the positive one first"),
                arguments("A = club yd", "m: line 1: club takes nothing after it"),
                arguments("A = club\nA = note", "m: line 2: \"A\" is mapped twice"));
    }

    @ParameterizedTest
    @MethodSource("mappings")
    void mappingsAreRefusedByLine(String text, String message) {
        InputException e = assertThrows(InputException.class, () -> ColumnMapping.read(new StringReader(text), "m"));
        assertEquals(message, e.getMessage());
    }
}
