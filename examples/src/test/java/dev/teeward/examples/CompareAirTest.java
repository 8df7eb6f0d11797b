package dev.teeward.examples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The same launches with both clubs, one of them at 6000 ft: the air is not called a club, and one air mends it. */
class CompareAirTest {
    @TempDir
    private Path folder = Path.of("");

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    private int run(String... args) {
        return TeewardExamples.run(new PrintWriter(out, true), new PrintWriter(err, true), args);
    }

    private String file(String club, int feet) throws Exception {
        StringBuilder text = new StringBuilder(
                "# elevation: " + feet + " ft\n"
                        + "club,club_speed_mph,attack_angle_deg,ball_speed_mph,launch_angle_deg,start_direction_deg,spin_rate_rpm,axis_tilt_deg\n");
        for (int i = 0; i < 12; i++) {
            int turn = 5 * i % 12;
            text.append(club + ',' + (80.0 + 0.1 * turn) + ",-4." + (7 * i % 5) + ',' + (112.0 + 0.2 * turn)
                    + ",17.0,0.0,6300,0.0\n");
        }
        Path file = folder.resolve(club + ".csv");
        Files.writeString(file, text);
        return file.toString();
    }

    @Test
    void theAirIsNotCalledAClub() throws Exception {
        Path json = folder.resolve("compare.json");
        String high = file("Alder", 6_000);
        String low = file("Rowan", 0);
        assertEquals(0, run("compare", high, low, "--primary", "carry", "--json", json.toString()), err.toString());
        String said = out.toString().replaceAll("\\s+", " ");
        assertTrue(said.contains("they differ, but were not hit in the same air"), said);
        assertFalse(said.contains("in carry, asked by itself: club"), said);
        assertFalse(said.contains("both clubs were hit"), said);
        assertTrue(Files.readString(json).contains("airs-differ"));
    }

    @Test
    void oneAirMendsIt() throws Exception {
        Path json = folder.resolve("compare.json");
        String high = file("Alder", 6_000);
        String low = file("Rowan", 0);
        assertEquals(
                0,
                run("compare", high, low, "--primary", "carry", "--elevation", "0", "--json", json.toString()),
                err.toString());
        String said = out.toString().replaceAll("\\s+", " ");
        assertFalse(said.contains("same air"), said);
        assertTrue(said.contains("in carry the clubs are practically the same"), said);
        assertFalse(Files.readString(json).contains("airs-differ"));
    }

    @Test
    void whatTheOtherAirLeavesOutIsOnThePageAndInTheNumbersToo() throws Exception {
        Path json = folder.resolve("cold.json");
        Path html = folder.resolve("cold.html");
        String alder = file("Alder", 0);
        String rowan = file("Rowan", 0);
        assertEquals(
                0,
                run(
                        "compare",
                        alder,
                        rowan,
                        "--elevation",
                        "9000",
                        "--json",
                        json.toString(),
                        "--html",
                        html.toString()),
                err.toString());
        for (String said : List.of(out.toString(), Files.readString(json), Files.readString(html))) {
            assertTrue(said.replaceAll("\\s+", " ").contains("is not modelled"), said);
        }
    }

    @Test
    void refusesAnElevationThatNoPlaceHas() throws Exception {
        assertEquals(2, run("compare", file("Alder", 0), "--elevation", "99999"));
        assertTrue(err.toString().contains("elevation must be in"), err.toString());
        assertEquals(1, err.toString().lines().count(), err.toString());
    }
}
