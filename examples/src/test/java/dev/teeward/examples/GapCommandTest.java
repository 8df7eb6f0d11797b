package dev.teeward.examples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.io.SessionReader;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The command {@code gap} on the invented bag. */
class GapCommandTest {
    @TempDir
    private Path folder = Path.of("");

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    private int run(String... args) {
        return TeewardExamples.run(new PrintWriter(out, true), new PrintWriter(err, true), args);
    }

    private Path bag() {
        Path file = folder.resolve("bag.csv");
        assertEquals(0, run("make-demo", "--bag", "--out", file.toString()), err.toString());
        return file;
    }

    /** What was put in comes out: ten clubs in order, the 7-iron close to the 6-iron, a wedge missing. */
    @Test
    void findsWhatWasPutIn() throws Exception {
        Path json = folder.resolve("bag.json");
        Path html = folder.resolve("bag.html");
        assertEquals(
                0, run("gap", "--wanted", "12", "--json", json.toString(), "--html", html.toString()), err.toString());
        String text = out.toString();
        assertTrue(text.startsWith("This bag is invented"), text);
        assertTrue(text.replaceAll("\\s+", " ").contains("qualified club builder"), text);
        assertTrue(text.lines().allMatch(line -> line.length() <= 96), text);
        JsonNode tree = new ObjectMapper().readTree(json.toFile());
        assertEquals(10, tree.get("clubs").size());
        assertEquals(9, tree.get("gaps").size());
        JsonNode close = gap(tree, "7-iron");
        JsonNode wide = gap(tree, "Wedge 58");
        assertEquals("6-iron", close.get("longer").asText());
        assertTrue(close.get("smaller").asDouble() > 0.8, close.toString());
        assertTrue(wide.get("larger").asDouble() > 0.8, wide.toString());
        // The 7-iron slower would do it too, but is no mend.
        assertEquals(3, close.get("mends").size(), close.toString());
        // 23 yd are more than the 6 deg that are looked at can move a wedge, by some 2 to 3 yd a degree: a club is
        // missing.
        for (JsonNode mend : wide.get("mends")) {
            assertEquals("club_speed", mend.get("means").asText(), wide.toString());
        }
        String page = Files.readString(html);
        assertTrue(page.contains("<svg") && page.contains("id=\"region-bag\"") && !page.contains("<script"));
    }

    private static JsonNode gap(JsonNode tree, String shorter) {
        for (JsonNode gap : tree.get("gaps")) {
            if (gap.get("shorter").asText().equals(shorter)) {
                return gap;
            }
        }
        throw new AssertionError("no gap above " + shorter);
    }

    /** The means in the JSON are those of the carries in the file, taken by hand. */
    @Test
    void theMeansAreThoseOfTheFile() throws Exception {
        Path file = bag();
        assertTrue(Files.readString(file).startsWith("# This bag is invented."));
        Path json = folder.resolve("bag.json");
        assertEquals(0, run("gap", file.toString(), "--units", "metric", "--json", json.toString()), err.toString());
        Session session = SessionReader.withDefaults().read(file);
        for (JsonNode club : new ObjectMapper().readTree(json.toFile()).get("clubs")) {
            double mean = Arrays.stream(
                            session.shots().club(club.get("name").asText()).values(Metric.CARRY))
                    .average()
                    .orElseThrow();
            assertEquals(mean, club.get("carry").get("value").asDouble(), 1e-9);
        }
        assertFalse(out.toString().contains("wanted"));
    }

    /** The bag without the 7-iron, and 6,000 ft up without the 6-iron: those two met different air, until brought into one. */
    @Test
    void clubsHitInDifferentAirAreBroughtIntoOne() throws Exception {
        String text = Files.readString(bag());
        Path low = folder.resolve("low.csv");
        Path high = folder.resolve("high.csv");
        String[] kept = {"6-iron", "7-iron"};
        for (int day = 0; day < 2; day++) {
            String other = kept[1 - day];
            String lines = text.lines()
                    .filter(line -> line.startsWith("#") || !line.contains(other))
                    .reduce("", (all, line) -> all + line + "\n");
            Files.writeString(
                    day == 0 ? low : high,
                    day == 0 ? lines : lines.replaceFirst("(?m)^# elevation.*$", "# elevation: 6000 ft"));
        }
        assertTrue(Files.readString(high).contains("# elevation: 6000 ft"), Files.readString(high));
        assertEquals(0, run("gap", low.toString(), high.toString()), err.toString());
        String asHit = out.toString().replaceAll("\\s+", " ");
        assertTrue(asHit.contains("The clubs were not hit in the same air"), asHit);
        out.getBuffer().setLength(0);
        assertEquals(0, run("gap", low.toString(), high.toString(), "--elevation", "0"), err.toString());
        assertFalse(out.toString().replaceAll("\\s+", " ").contains("not hit in the same air"), out.toString());
        assertEquals(2, run("gap", low.toString(), "--elevation", "40000"));
    }

    @Test
    void totalsNeedATurf() {
        assertEquals(0, run("gap", "--club", "6-iron", "--club", "9-iron", "--turf", "fairway"), err.toString());
        List<String> row =
                out.toString().lines().filter(line -> line.startsWith("6-iron")).toList();
        // club, shots, carry, +-, "a to b", total, ...
        String[] cells = row.get(0).split("\\s+", -1);
        assertTrue(Double.parseDouble(cells[7]) > Double.parseDouble(cells[2]), row.get(0));
    }

    @Test
    void refusesWhatCannotBeMeasured() throws Exception {
        assertEquals(2, run("gap", "--wanted", "2", "--within", "3"));
        assertEquals(2, run("gap", "--club", "6-iron", "--club", "2-iron"));
        assertTrue(err.toString().contains("\"2-iron\" was not hit"), err.toString());
        Path one = folder.resolve("one.csv");
        Files.writeString(one, "club,carry_yd\nAlder,150\nAlder,152\n");
        assertEquals(2, run("gap", one.toString()));
        assertTrue(err.toString().contains("one.csv: a bag needs at least two clubs"), err.toString());
        assertEquals(2, run("gap", one.toString(), one.toString()));
        assertEquals("", out.toString());
    }
}
