package dev.teeward.examples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import dev.teeward.fitting.complete.SameAir;
import dev.teeward.fitting.io.SessionReader;
import dev.teeward.quantity.Length;
import dev.teeward.quantity.LengthUnit;
import java.io.InputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The command {@code altitude} on the bundled session, which is from 5200 ft. */
class AltitudeCommandTest {
    private static final Pattern LINE = Pattern.compile(
            "  (?<club>\\w+): (?<carry>[0-9.]+) (?<unit>yd|m), mean of (?<shots>\\d+) as hit (?<hit>[0-9.]+); 95 % intervals: from"
                    + " shot to shot (?:(?<low>[0-9.]+) to (?<high>[0-9.]+)|not told), launch and ball (?<from>[0-9.]+) to"
                    + " (?<to>[0-9.]+)");

    @TempDir
    private Path folder = Path.of("");

    private Path session = Path.of("");
    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    @BeforeEach
    void copy() throws Exception {
        session = folder.resolve("session.csv");
        try (InputStream demo = AltitudeCommandTest.class.getResourceAsStream("demo_session.csv")) {
            Files.copy(demo, session);
        }
    }

    private int run(String... args) {
        return TeewardExamples.run(new PrintWriter(out, true), new PrintWriter(err, true), args);
    }

    private static Matcher match(String line) {
        Matcher matcher = LINE.matcher(line);
        assertTrue(matcher.matches(), line);
        return matcher;
    }

    @Test
    void carryGrowsWithElevation() {
        assertEquals(0, run("altitude", session.toString()), err.toString());
        List<String> lines = out.toString().lines().toList();
        assertEquals(12, lines.size(), out.toString());
        assertEquals("At 0 ft:", lines.get(0));
        assertEquals("At 7500 ft:", lines.get(9));
        double before = 0.0;
        for (int place = 0; place < 4; place++) {
            Matcher alder = match(lines.get(3 * place + 1));
            Matcher rowan = match(lines.get(3 * place + 2));
            assertEquals("Alder", alder.group("club"));
            assertEquals("Rowan", rowan.group("club"));
            double carry = Double.parseDouble(alder.group("carry"));
            assertTrue(
                    Double.parseDouble(alder.group("from")) <= carry && carry <= Double.parseDouble(alder.group("to")));
            assertTrue(carry > before);
            before = carry;
        }
        double direct =
                SameAir.standardAt(Length.ofFeet(0.0))
                        .bring(SessionReader.withDefaults().read(session))
                        .carries()
                        .stream()
                        .filter(carry -> carry.club().equals("Alder"))
                        .mapToDouble(
                                carry -> LengthUnit.YARD.fromSi(carry.carry().value()))
                        .average()
                        .orElseThrow();
        assertEquals(direct, Double.parseDouble(match(lines.get(1)).group("carry")), 0.05 + 1e-9);
    }

    @Test
    void takesElevationsInTheUnitsAskedFor() {
        assertEquals(0, run("altitude", session.toString(), "--elevation", "1600", "--units", "metric"));
        List<String> lines = out.toString().lines().toList();
        assertEquals(3, lines.size());
        assertEquals("At 1600 m:", lines.get(0));
        assertEquals("m", match(lines.get(1)).group("unit"));
    }

    @Test
    void refusesAnElevationThatNoPlaceHas() {
        assertEquals(2, run("altitude", session.toString(), "--elevation", "99999"));
        assertTrue(err.toString().contains("elevation must be in"), err.toString());
    }

    /**
     * In the air they were hit in, carries stay: 150 to 154 yd have the mean 152 and s = sqrt(2.5), and t of 4 is 2.776445 (printed
     * tables), so 152 +- 1.963. What is not known of launch and ball moves nothing then. The excluded 90 yd don't count.
     */
    @Test
    void bothIntervalsAreNamed() throws Exception {
        StringBuilder text = new StringBuilder("""
                # elevation: 0 ft
                club,ball_speed_mph,launch_angle_deg,spin_rate_rpm,carry_yd,exclude
                """);
        for (int carry = 150; carry < 155; carry++) {
            text.append("Alder,112,17,6300,").append(carry).append(",\n");
        }
        text.append("Alder,80,17,6300,90,topped\nRowan,112,17,6300,151,\n");
        Files.writeString(session, text);
        Path json = session.resolveSibling("altitude.json");
        assertEquals(
                0, run("altitude", session.toString(), "--elevation", "0", "--json", json.toString()), err.toString());
        List<String> lines = out.toString().lines().toList();
        Matcher alder = match(lines.get(1));
        assertEquals("152.0", alder.group("carry"));
        assertEquals("152.0", alder.group("hit"));
        assertEquals("5", alder.group("shots"));
        assertEquals("150.0", alder.group("low"));
        assertEquals("154.0", alder.group("high"));
        assertEquals("152.0", alder.group("from"));
        assertEquals("152.0", alder.group("to"));
        assertTrue(lines.get(2).contains("from shot to shot not told"), lines.get(2));
        JsonNode tree = new ObjectMapper().readTree(json.toFile());
        assertEquals(
                152.0 - 2.776445 * Math.sqrt(2.5 / 5.0),
                tree.at("/places/0/clubs/0/from_shot_to_shot/lower").asDouble(),
                1e-6);
        assertTrue(tree.at("/places/0/clubs/1/from_shot_to_shot").isNull());
        assertEquals(
                List.of(), CommandSchemasTest.faults(CommandSchemasTest.schema("altitude"), Files.readString(json)));
    }

    /** Alder up high on one day, Rowan by the sea on another, in two files: all of their difference is the air. */
    @Test
    void daysInFilesOfTheirOwnAreTakenTogether() throws Exception {
        Path second = session.resolveSibling("second.csv");
        for (String club : List.of("Alder", "Rowan")) {
            StringBuilder text = new StringBuilder("# elevation: " + (club.equals("Alder") ? 5280 : 0)
                    + " ft\nclub,ball_speed_mph,launch_angle_deg,start_direction_deg,spin_rate_rpm,axis_tilt_deg\n");
            for (int i = 0; i < 6; i++) {
                text.append(club).append(',').append(112 + i).append(",17,0,6300,0\n");
            }
            Files.writeString(club.equals("Alder") ? session : second, text);
        }
        Path json = session.resolveSibling("altitude.json");
        assertEquals(
                0,
                run("altitude", session.toString(), second.toString(), "--elevation", "0", "--json", json.toString()),
                err.toString());
        assertTrue(out.toString().contains("As hit, Alder minus Rowan: "), out.toString());
        JsonNode share = new ObjectMapper().readTree(json.toFile()).at("/share");
        assertTrue(share.at("/found/value").asDouble() > 3.0, share.toString());
        assertEquals(0.0, share.at("/rest/value").asDouble(), 1e-6);
        assertEquals(2, run("altitude", session.toString(), session.toString()));
        assertTrue(err.toString().contains("given twice"), err.toString());
    }

    /** The same launches with both clubs, one of them at 5280 ft: the whole difference is the air, and no club has it. */
    @Test
    void theAirOfTheDaysIsNoMeritOfAClub() throws Exception {
        StringBuilder text = new StringBuilder("""
                # parts: 2
                # part 1 elevation: 5280 ft
                # part 2 elevation: 0 ft
                club,part,ball_speed_mph,launch_angle_deg,start_direction_deg,spin_rate_rpm,axis_tilt_deg
                """);
        for (int i = 0; i < 6; i++) {
            text.append("Alder,1,").append(112 + i).append(",17,0,6300,0\n");
            text.append("Rowan,2,").append(112 + i).append(",17,0,6300,0\n");
        }
        Files.writeString(session, text);
        Path json = session.resolveSibling("altitude.json");
        assertEquals(
                0, run("altitude", session.toString(), "--elevation", "0", "--json", json.toString()), err.toString());
        List<String> lines = out.toString().lines().toList();
        Pattern number = Pattern.compile(".*: (-?[0-9.]+) yd \\(95 % interval (-?[0-9.]+) to (-?[0-9.]+)\\)");
        Matcher found = number.matcher(lines.get(3));
        Matcher air = number.matcher(lines.get(4));
        Matcher rest = number.matcher(lines.get(5));
        assertTrue(found.matches() && air.matches() && rest.matches(), out.toString());
        assertTrue(lines.get(3).startsWith("As hit, Alder minus Rowan: "), lines.get(3));
        assertTrue(Double.parseDouble(found.group(1)) > 3.0, lines.get(3));
        assertEquals(found.group(1), air.group(1));
        assertEquals(0.0, Double.parseDouble(rest.group(1)), 1e-9);
        JsonNode tree = new ObjectMapper().readTree(json.toFile());
        assertEquals(
                Double.parseDouble(air.group(1)), tree.at("/share/air/value").asDouble(), 0.05 + 1e-9);
        assertEquals("Alder", tree.at("/share/first").asText());
        assertEquals(6, tree.at("/places/0/clubs/1/shots").asInt());
        assertEquals(
                List.of(), CommandSchemasTest.faults(CommandSchemasTest.schema("altitude"), Files.readString(json)));
    }
}
