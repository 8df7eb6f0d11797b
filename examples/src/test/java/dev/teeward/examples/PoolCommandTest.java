package dev.teeward.examples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The command {@code pool}: five invented golfers whose pairs differ by 1 to 5 yd in the mean, all with equal errors. */
class PoolCommandTest {
    @TempDir
    private Path folder = Path.of("");

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    private int run(List<String> args) {
        return TeewardExamples.run(new PrintWriter(out, true), new PrintWriter(err, true), args.toArray(String[]::new));
    }

    private List<String> golfers() throws Exception {
        List<String> args = new ArrayList<>(List.of("pool"));
        for (int g = 1; g <= 5; g++) {
            StringBuilder text = new StringBuilder("# hand: left\nclub,pair,carry_yd\n");
            for (int i = 0; i < 6; i++) {
                text.append(String.format(Locale.ROOT, "Alder,%d,%d%n", i, 150 + g + i % 3 - 1));
                text.append(String.format(Locale.ROOT, "Rowan,%d,%d%n", i, 150));
            }
            Path file = folder.resolve("golfer" + g + ".csv");
            Files.writeString(file, text);
            args.add(file.toString());
        }
        return args;
    }

    /** Student's t of 1 to 5 yd: 3 +- 2.776445 sqrt(0.5) = 1.037 to 4.963. */
    @Test
    void theMeanOverGolfersIsPrintedAndWritten() throws Exception {
        List<String> args = golfers();
        Path json = folder.resolve("pool.json");
        args.addAll(List.of("--json", json.toString()));
        assertEquals(0, run(args), err.toString());
        assertTrue(out.toString().contains("Alder minus Rowan, carry:"), out.toString());
        assertTrue(out.toString().contains("mean over golfers: 3.0 yd (95 % interval 1.0 to 5.0)"), out.toString());
        JsonNode tree = new ObjectMapper().readTree(Files.readString(json));
        assertEquals(3.0, tree.at("/mean/value").asDouble(), 1e-9);
        assertEquals(3.0 - 2.776445 * Math.sqrt(0.5), tree.at("/mean/lower").asDouble(), 1e-6);
        assertEquals(5, tree.at("/golfers").size());
        assertEquals("yd", tree.at("/unit").asText());
    }

    /** Equal clubs, Alder first in one go and then Rowan, while the golfers warm up: text, page and numbers say so. */
    @Test
    void clubsHitInOneGoAreSaidEverywhere() throws Exception {
        List<String> args = new ArrayList<>(List.of("pool"));
        for (int g = 1; g <= 6; g++) {
            StringBuilder text = new StringBuilder("club,carry_yd\n");
            for (int i = 0; i < 16; i++) {
                text.append(i < 8 ? "Alder," : "Rowan,")
                        .append(140 + g + i + i % 2)
                        .append('\n');
            }
            Path file = folder.resolve("golfer" + g + ".csv");
            Files.writeString(file, text);
            args.add(file.toString());
        }
        Path json = folder.resolve("pool.json");
        Path html = folder.resolve("pool.html");
        args.addAll(List.of("--json", json.toString(), "--html", html.toString()));
        assertEquals(0, run(args), err.toString());
        assertTrue(out.toString().contains("note: with 6 of 6 golfers each club was hit in one go"), out.toString());
        assertTrue(Files.readString(html).contains("With 6 of 6 golfers each club was hit in one go"));
        JsonNode tree = new ObjectMapper().readTree(Files.readString(json));
        assertEquals("clubs-in-blocks", tree.at("/session_warnings/0/code").asText());
        assertEquals(6, tree.at("/session_warnings/0/golfers").asInt());
        assertEquals("clubs-in-blocks", tree.at("/golfers/5/warnings/0").asText());
        assertTrue(tree.at("/warnings").toString().contains("clubs-in-blocks"), tree.toString());
        assertEquals(List.of(), CommandSchemasTest.faults(CommandSchemasTest.schema("pool"), Files.readString(json)));
    }

    @Test
    void wrongInputEndsInOneLine() throws Exception {
        List<String> args = golfers();
        assertEquals(2, run(List.of("pool", args.get(1))));
        assertEquals(2, run(List.of("pool", args.get(1), args.get(1))));
        assertTrue(err.toString().contains("is given twice"), err.toString());
        assertEquals(2, run(List.of("pool", args.get(1), args.get(2), "--metric", "side")));
        assertEquals(3, err.toString().strip().lines().count(), err.toString());
        assertEquals("", out.toString());
    }
}
