package dev.teeward.examples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.InputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The command {@code plan}: before from a standard deviation or a session, during after every pair. */
class PlanCommandTest {
    @TempDir
    private Path folder = Path.of("");

    private Path session = Path.of("");
    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    @BeforeEach
    void copy() throws Exception {
        session = folder.resolve("session.csv");
        try (InputStream demo = PlanCommandTest.class.getResourceAsStream("demo_session.csv")) {
            Files.copy(demo, session);
        }
    }

    private int run(String... args) {
        return TeewardExamples.run(new PrintWriter(out, true), new PrintWriter(err, true), args);
    }

    /** 14 pairs find 5 yd at a spread of 6 yd by R's power.t.test, and by SciPy show equivalence in 81 %. */
    @Test
    void plansFromAStandardDeviation() throws Exception {
        Path json = folder.resolve("plan.json");
        assertEquals(
                0,
                run(
                        "plan",
                        "--margin",
                        "carry=5yd",
                        "--sd",
                        "6yd",
                        "--club",
                        "Alder",
                        "--club",
                        "Rowan",
                        "--json",
                        json.toString()),
                err.toString());
        List<String> lines = out.toString().lines().toList();
        assertTrue(lines.get(0)
                .startsWith("The margin is 5.0 yd of carry; the differences within pairs spread by 6.0 yd"));
        assertTrue(lines.get(1).endsWith("at most 24 pairs."), lines.get(1));
        assertTrue(lines.get(2).startsWith("Looking once, at the end: 14 pairs settle it"), lines.get(2));
        assertTrue(lines.get(4).startsWith("Order: Alder, Rowan, Rowan, Alder, "), lines.get(4));
        JsonNode tree = new ObjectMapper().readTree(json.toFile());
        assertEquals(14, tree.at("/at_the_end/pairs").asInt());
        assertEquals(28, tree.at("/order").size());
        assertEquals("yd", tree.at("/unit").asText());
        assertTrue(tree.at("/after_every_pair/pairs").asInt() > 14);
    }

    /** Twelve with one club, then twelve with the other, half a metre lost with each shot, pairs written in. */
    @Test
    void clubsHitInBlocksAreTold() throws Exception {
        StringBuilder table = new StringBuilder("club,pair,carry_m\n");
        for (int i = 0; i < 24; i++) {
            table.append(i < 12 ? "Alder," : "Rowan,")
                    .append(1 + i % 12)
                    .append(',')
                    .append(150.0 - 0.5 * i + (i * i) % 7)
                    .append('\n');
        }
        Path blocks = Files.writeString(folder.resolve("blocks.csv"), table);
        Path json = folder.resolve("blocks.json");
        Path page = folder.resolve("blocks.html");
        assertEquals(
                0,
                run(
                        "plan",
                        "--margin",
                        "carry=5yd",
                        "--session",
                        blocks.toString(),
                        "--json",
                        json.toString(),
                        "--html",
                        page.toString()),
                err.toString());
        JsonNode tree = new ObjectMapper().readTree(json.toFile());
        assertEquals("clubs-in-blocks", tree.at("/warnings/0").asText());
        assertEquals("undecided", tree.at("/verdict").asText());
        assertTrue(tree.at("/settled_after").isNull());
        assertFalse(out.toString().contains("Settled"), out.toString());
        for (String text : List.of(out.toString(), Files.readString(page))) {
            assertTrue(
                    text.contains("the clubs were hit in blocks (other shots lie between the two of 12 of 12 pairs)"),
                    text);
        }
    }

    @Test
    void saysWhatTheCapMakesHopelessAndWhatIsInReach() {
        assertEquals(
                0,
                run(
                        "plan",
                        "--margin",
                        "carry=2m",
                        "--pilot",
                        session.toString(),
                        "--swings",
                        "30",
                        "--units",
                        "metric"));
        String said = out.toString();
        assertTrue(said.contains("which is more than the cap allows"), said);
        assertTrue(said.contains("the margin in reach is "), said);
        assertTrue(said.contains("(standard deviation, from 12 pairs)"), said);
    }

    /** The face of the bundled session is 1.8 deg more open to the path with Alder by construction. */
    @Test
    void tellsWhereASessionStands() throws Exception {
        Path json = folder.resolve("now.json");
        assertEquals(
                0,
                run(
                        "plan",
                        "--margin",
                        "face_to_path=1deg",
                        "--session",
                        session.toString(),
                        "--json",
                        json.toString()),
                err.toString());
        assertTrue(out.toString().startsWith("12 whole pairs, 24 of 52 swings"), out.toString());
        assertTrue(out.toString().contains("Settled after "), out.toString());
        assertTrue(out.toString().contains("the clubs differ in face to path"), out.toString());
        JsonNode tree = new ObjectMapper().readTree(json.toFile());
        assertEquals("settled", tree.at("/advice").asText());
        assertEquals("different", tree.at("/verdict").asText());
        assertTrue(tree.at("/upper").asDouble() < 0.0 || tree.at("/lower").asDouble() > 0.0);
    }

    @Test
    void tellsWhenItWillNotSettle() {
        assertEquals(0, run("plan", "--margin", "carry=0.5yd", "--session", session.toString()), err.toString());
        assertTrue(out.toString().contains("It will not settle at a sensible number of pairs"), out.toString());
        assertTrue(out.toString().contains("can settle a margin of "), out.toString());
    }

    @Test
    void keepsGoingAsLongAsItIsWorthIt() throws Exception {
        List<String> lines = Files.readAllLines(session);
        int heading = 0;
        while (lines.get(heading).startsWith("#")) {
            heading++;
        }
        Path begun = folder.resolve("begun.csv");
        Files.write(begun, lines.subList(0, heading + 5));
        assertEquals(0, run("plan", "--margin", "face_to_path=1deg", "--session", begun.toString()), err.toString());
        assertTrue(out.toString().startsWith("2 whole pairs, 4 of 52 swings"), out.toString());
        assertTrue(out.toString().contains("Keep going: "), out.toString());
    }

    /** 48 swings of 60 less 8 to warm up are hit, half of the pairs lack a reading: at most 2 more pairs. */
    @Test
    void countsSwingsThatMadeNoPair() throws Exception {
        StringBuilder text = new StringBuilder("club,pair,carry_yd\n");
        for (int i = 1; i <= 24; i++) {
            text.append("Alder,")
                    .append(i)
                    .append(",")
                    .append(150 + 9 * (i % 3))
                    .append("\n");
            text.append("Rowan,")
                    .append(i)
                    .append(",")
                    .append(i % 2 == 0 ? "" : "152")
                    .append("\n");
        }
        Path half = folder.resolve("half.csv");
        Files.writeString(half, text);
        Path json = folder.resolve("half.json");
        assertEquals(
                0,
                run("plan", "--margin", "carry=5yd", "--session", half.toString(), "--json", json.toString()),
                err.toString());
        assertTrue(out.toString().startsWith("12 whole pairs, 48 of 52 swings"), out.toString());
        JsonNode tree = new ObjectMapper().readTree(json.toFile());
        assertEquals(2, tree.at("/more_pairs/allowed").asInt(), out.toString());
    }

    @Test
    void refusesInOneLineAndWritesNothing() {
        Path json = folder.resolve("none.json");
        String[][] wrong = {
            {"plan", "--margin", "carry=5yd"},
            {"plan", "--margin", "carry=5yd", "--sd", "6yd", "--session", session.toString()},
            {"plan", "--margin", "carry=5yd", "--sd", "6deg"},
            {"plan", "--margin", "carry=5yd", "--sd", "0yd"},
            {"plan", "--margin", "carry=5yd", "--sd", "6yd", "--sd-pairs", "1"},
            {"plan", "--margin", "carry=5yd", "--sd", "6yd", "--swings", "10"},
            {"plan", "--margin", "carry=5yd", "--sd", "6yd", "--chance", "80"},
            {"plan", "--margin", "carry=5yd", "--session", session.toString(), "--club", "Alder"},
            {"plan", "--margin", "carry=5yd", "--session", session.toString(), "--club", "Alder", "--club", "Oak"},
            {
                "plan",
                "--margin",
                "carry=5yd",
                "--session",
                folder.resolve("no.csv").toString()
            }
        };
        for (String[] args : wrong) {
            err.getBuffer().setLength(0);
            String[] all = java.util.Arrays.copyOf(args, args.length + 2);
            all[args.length] = "--json";
            all[args.length + 1] = json.toString();
            assertEquals(2, run(all), String.join(" ", args));
            assertEquals(1, err.toString().lines().count(), err.toString());
            assertFalse(Files.exists(json));
        }
        assertEquals("", out.toString());
    }
}
