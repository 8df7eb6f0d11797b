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
            "  (\\w+): ([0-9.]+) (yd|m) \\(95 % interval ([0-9.]+) to ([0-9.]+)\\), here ([0-9.]+), mean of (\\d+)");

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
            assertEquals("Alder", alder.group(1));
            assertEquals("Rowan", rowan.group(1));
            double carry = Double.parseDouble(alder.group(2));
            assertTrue(Double.parseDouble(alder.group(4)) <= carry && carry <= Double.parseDouble(alder.group(5)));
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
        assertEquals(direct, Double.parseDouble(match(lines.get(1)).group(2)), 0.05 + 1e-9);
    }

    @Test
    void takesElevationsInTheUnitsAskedFor() {
        assertEquals(0, run("altitude", session.toString(), "--elevation", "1600", "--units", "metric"));
        List<String> lines = out.toString().lines().toList();
        assertEquals(3, lines.size());
        assertEquals("At 1600 m:", lines.get(0));
        assertEquals("m", match(lines.get(1)).group(3));
    }

    @Test
    void refusesAnElevationThatNoPlaceHas() {
        assertEquals(2, run("altitude", session.toString(), "--elevation", "99999"));
        assertTrue(err.toString().contains("elevation must be in"), err.toString());
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
