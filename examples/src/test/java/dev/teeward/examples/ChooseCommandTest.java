package dev.teeward.examples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import dev.teeward.fitting.choose.ClubChoice;
import dev.teeward.fitting.choose.Goal;
import dev.teeward.fitting.io.SessionReader;
import java.io.InputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The command {@code choose} on the bundled session. */
class ChooseCommandTest {
    @TempDir
    private Path folder = Path.of("");

    private Path session = Path.of("");
    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    @BeforeEach
    void copy() throws Exception {
        session = folder.resolve("session.csv");
        try (InputStream demo = ChooseCommandTest.class.getResourceAsStream("demo_session.csv")) {
            Files.copy(demo, session);
        }
    }

    private int run(String... args) {
        return TeewardExamples.run(new PrintWriter(out, true), new PrintWriter(err, true), args);
    }

    @Test
    void choosesByDistance() throws Exception {
        Path json = folder.resolve("choice.json");
        assertEquals(
                0,
                run(
                        "choose",
                        session.toString(),
                        "--goal",
                        "distance",
                        "--current",
                        "Rowan",
                        "--json",
                        json.toString()),
                err.toString());
        List<String> lines = out.toString().lines().toList();
        assertEquals("carry; the largest mean is the best.", lines.get(0));
        assertTrue(lines.get(1).startsWith("  Rowan: "), lines.get(1));
        assertTrue(lines.get(3).startsWith("  Alder less Rowan: "), lines.get(3));
        ClubChoice.Result direct = ClubChoice.withGoal(Goal.distance())
                .withCurrentClub("Rowan")
                .choose(SessionReader.withDefaults().read(session));
        JsonNode tree = new ObjectMapper().readTree(json.toFile());
        assertEquals(direct.leader().name(), tree.at("/leader").asText());
        assertEquals(
                direct.clubs().get(0).mean().value() / 0.9144,
                tree.at("/clubs/0/mean/value").asDouble(),
                1e-9);
        assertEquals(
                1.0,
                tree.at("/clubs/0/probability").asDouble()
                        + tree.at("/clubs/1/probability").asDouble(),
                1e-6);
    }

    @Test
    void everyGoalHasAnAnswer() {
        for (String goal : List.of("closeness", "tightness", "hold", "strokes")) {
            out.getBuffer().setLength(0);
            assertEquals(
                    0, run("choose", session.toString(), "--goal", goal, "--target", "165yd"), goal + err.toString());
            assertTrue(out.toString().contains("The best mean "), out.toString());
            assertEquals(goal.equals("strokes"), out.toString().contains("from memory"));
        }
        assertEquals(
                0,
                run("choose", session.toString(), "--goal", "hold", "--target", "165yd", "--turf", "firm-green"),
                err.toString());
        assertTrue(out.toString().contains("stay on the green"), out.toString());
        assertEquals(
                0,
                run(
                        "choose",
                        session.toString(),
                        "--goal",
                        "distance=1/5yd",
                        "--goal",
                        "closeness=2/3yd",
                        "--target",
                        "165yd",
                        "--price",
                        "Alder=300",
                        "--worth-of-money",
                        "0.01"),
                err.toString());
        assertTrue(out.toString().contains(", price counted."), out.toString());
    }

    /** Ten yards of difference with a yard of scatter: p is small, and never printed as 0. */
    @Test
    void aSmallPIsNotZeroAndATieIsNamed() throws Exception {
        Path json = folder.resolve("tie.json");
        Path file = folder.resolve("plain.csv");
        StringBuilder rows = new StringBuilder("# schema: teeward-session/1\nclub,carry_yd,side_yd\n");
        for (int i = 0; i < 10; i++) {
            rows.append("Alder,").append(160 + i % 2).append(",0\n");
            rows.append("Rowan,").append(170 + i % 2).append(",0\n");
        }
        Files.writeString(file, rows.toString());
        assertEquals(0, run("choose", file.toString(), "--goal", "distance"), err.toString());
        assertTrue(out.toString().contains(", p <0.001"), out.toString());
        assertFalse(out.toString().contains("p 0.000"), out.toString());
        assertFalse(out.toString().contains("can't tell"), out.toString());
        out.getBuffer().setLength(0);
        String[] hold = {"choose", file.toString(), "--goal", "hold", "--target", "165yd", "--json", json.toString()};
        assertEquals(0, run(hold), err.toString());
        assertTrue(out.toString().contains("The best mean is shared by Alder and Rowan."), out.toString());
        assertTrue(out.toString().contains("The shots can't tell between Alder and Rowan."), out.toString());
        JsonNode tree = new ObjectMapper().readTree(json.toFile());
        assertEquals(2, tree.at("/leaders").size());
        assertEquals(2, tree.at("/undecided").size());
        assertTrue(tree.at("/clubs/0/shrunk").isNull(), tree.toString());
    }

    /** On the fairway the totals are longer than the carries; what counts where it lands is said. */
    @Test
    void theTotalNeedsATurfAndOtherGoalsSayThatTheyDoNotUseIt() throws Exception {
        Path carries = folder.resolve("carries.json");
        Path totals = folder.resolve("totals.json");
        String file = session.toString();
        assertEquals(0, run("choose", file, "--goal", "distance", "--json", carries.toString()), err.toString());
        assertEquals(
                0,
                run("choose", file, "--goal", "total", "--turf", "fairway", "--json", totals.toString()),
                err.toString());
        assertTrue(out.toString().contains("total, run included; the largest mean is the best."), out.toString());
        for (int club = 0; club < 2; club++) {
            String mean = "/clubs/" + club + "/mean/value";
            double carry =
                    new ObjectMapper().readTree(carries.toFile()).at(mean).asDouble();
            double total = new ObjectMapper().readTree(totals.toFile()).at(mean).asDouble();
            assertTrue(total > carry + 1.0 && total < carry + 60.0, carry + " " + total);
        }
        assertFalse(out.toString().contains("count where they land"), out.toString());
        assertEquals(
                0,
                run(
                        "choose",
                        file,
                        "--goal",
                        "strokes=1/0.1",
                        "--goal",
                        "hold=1/0.1",
                        "--target",
                        "165yd",
                        "--turf",
                        "firm-green"),
                err.toString());
        assertTrue(out.toString().contains("note: for strokes the balls count where they land"), out.toString());
    }

    @Test
    void refusesInOneLineAndWritesNothing() {
        Path json = folder.resolve("none.json");
        String[][] wrong = {
            {"choose", session.toString()},
            {"choose", session.toString(), "--goal", "glory"},
            {"choose", session.toString(), "--goal", "closeness"},
            {"choose", session.toString(), "--goal", "distance", "--goal", "tightness"},
            {"choose", session.toString(), "--goal", "distance=0/5yd"},
            {"choose", session.toString(), "--goal", "distance", "--current", "Oak"},
            {"choose", session.toString(), "--goal", "distance", "--level", "2"},
            {"choose", session.toString(), "--goal", "strokes", "--target", "165yd", "--strokes", "no.csv"},
            {"choose", session.toString(), "--goal", "strokes", "--target", "165yd", "--turf", "firm-green"},
            {"choose", session.toString(), "--goal", "closeness", "--target", "165yd", "--turf", "firm-green"},
            {"choose", session.toString(), "--goal", "distance", "--turf", "fairway"},
            {"choose", session.toString(), "--goal", "total"},
            {"choose", session.toString(), "--goal", "distance", "--elevation", "30000"},
            {"choose", session.toString(), session.toString(), "--goal", "distance"},
            {"choose", "no.csv", "--goal", "distance"}
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
