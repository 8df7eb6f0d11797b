package dev.teeward.examples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The command {@code curve}. */
class CurveCommandTest {
    @TempDir
    private Path folder = Path.of("");

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    private int run(String... args) {
        return TeewardExamples.run(new PrintWriter(out, true), new PrintWriter(err, true), args);
    }

    private JsonNode curve(String... more) throws Exception {
        Path json = folder.resolve("curve.json");
        String[] args = new String[7 + more.length];
        System.arraycopy(
                new String[] {"curve", "--club-speed-mph", "80", "--loft-deg", "23", "--json", json.toString()},
                0,
                args,
                0,
                7);
        System.arraycopy(more, 0, args, 7, more.length);
        assertEquals(0, run(args), err.toString());
        return new ObjectMapper().readTree(json.toFile());
    }

    /** An open face: starts and curves right, most of the way to the face, and a flatter lie is no remedy but an upright one. */
    @Test
    void anOpenFaceStartsAndCurvesRight() throws Exception {
        JsonNode tree = curve("--face-deg", "2", "--path-deg", "-1");
        double start = tree.get("start_direction_deg").asDouble();
        assertTrue(start > -1.0 && start < 2.0);
        assertEquals(3.0, tree.get("face_to_path_deg").asDouble(), 1e-9);
        assertTrue(tree.get("curve_yd").asDouble() > 0.0);
        assertTrue(tree.get("lie_to_start_straight_deg").asDouble() > 0.0);
        // The rule states its error: 30 % of the flight's curve.
        assertEquals(
                tree.get("curve_yd").asDouble(),
                tree.get("closed_curve_yd").asDouble(),
                0.3 * tree.get("curve_yd").asDouble());
        assertTrue(out.toString().contains("qualified club builder"), out.toString());
    }

    /** The lie that is told takes the start, and the other the curve, away when it is asked for. */
    @Test
    void theLieThatIsToldDoesIt() throws Exception {
        JsonNode before = curve("--face-deg", "1.5", "--path-deg", "0.5");
        String start = before.get("lie_to_start_straight_deg").asText();
        String fly = before.get("lie_to_fly_straight_deg").asText();
        JsonNode straight = curve("--face-deg", "1.5", "--path-deg", "0.5", "--lie-deg", start);
        assertEquals(0.0, straight.get("closed_start_direction_deg").asDouble(), 1e-6);
        JsonNode uncurved = curve("--face-deg", "1.5", "--path-deg", "0.5", "--lie-deg", fly);
        assertEquals(0.0, uncurved.get("closed_axis_tilt_deg").asDouble(), 1e-6);
        assertTrue(Math.abs(uncurved.get("curve_yd").asDouble()) < 0.05);
    }

    /** A left-handed golfer with everything mirrored sees the mirrored ball and the same lie. */
    @Test
    void theOtherHandIsTheMirror() throws Exception {
        JsonNode right = curve("--face-deg", "2", "--path-deg", "-1");
        JsonNode left = curve("--face-deg", "-2", "--path-deg", "1", "--left");
        assertEquals(-right.get("curve_yd").asDouble(), left.get("curve_yd").asDouble(), 1e-6);
        assertEquals(right.get("carry_yd").asDouble(), left.get("carry_yd").asDouble(), 1e-6);
        assertEquals(
                right.get("lie_to_fly_straight_deg").asDouble(),
                left.get("lie_to_fly_straight_deg").asDouble(),
                1e-9);
        assertTrue(out.toString().contains("fade") && !out.toString().contains("draw"), out.toString());
    }

    @Test
    void refusesWhatNoClubDoes() {
        assertEquals(2, run("curve", "--club-speed-mph", "80", "--loft-deg", "99"));
        assertEquals(2, run("curve", "--club-speed-mph", "80", "--loft-deg", "20", "--head", "putter"));
        assertTrue(err.toString().contains("none of driver"), err.toString());
        assertEquals(2, run("curve", "--loft-deg", "20"));
        assertEquals("", out.toString());
    }
}
