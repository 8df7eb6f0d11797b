package dev.teeward.examples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import dev.teeward.flight.FlightModel;
import dev.teeward.flight.aero.TypicalAerodynamics;
import dev.teeward.flight.impact.Delivery;
import dev.teeward.flight.impact.RigidImpact;
import dev.teeward.flight.impact.TypicalHead;
import dev.teeward.flight.study.Agreement;
import dev.teeward.flight.study.FlightOutput;
import dev.teeward.flight.study.LaunchOptimizer;
import dev.teeward.flight.study.LaunchOptimum;
import dev.teeward.flight.study.Validation;
import dev.teeward.flight.study.ValidationResult;
import dev.teeward.quantity.Angle;
import dev.teeward.quantity.AngleUnit;
import dev.teeward.quantity.LengthUnit;
import dev.teeward.quantity.Speed;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code calibrate}, {@code validate}, {@code optimise}, and the accuracy of the typical ball as the README states it. */
class StudyCommandsTest {
    @TempDir
    private Path folder = Path.of("");

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    private int run(String... args) {
        return TeewardExamples.run(new PrintWriter(out), new PrintWriter(err), args);
    }

    private Path typicalShots() throws IOException {
        return Files.writeString(folder.resolve("flights.csv"), JsonText.resource("typical_shots.csv"));
    }

    /** The README's numbers of the typical ball are those of the validation, and its table is the validation's. */
    @Test
    void readmeStatesTheCalibrationAsItIs() throws IOException {
        String readme = Files.readString(Path.of("..", "README.md"), StandardCharsets.UTF_8);
        ValidationResult result = Validation.withDefaults()
                .with("typical ball", TypicalAerodynamics.of())
                .compare(ValidateCommand.typicalShots());
        String table = result.markdown(row -> !row.part().startsWith("carry "));
        assertTrue(readme.contains("\n" + table + "\n"), () -> "README should hold\n" + table);
        Agreement carry =
                result.agreement("typical ball", "all", FlightOutput.CARRY).orElseThrow();
        Agreement apex =
                result.agreement("typical ball", "all", FlightOutput.APEX).orElseThrow();
        Agreement descent = result.agreement("typical ball", "all", FlightOutput.DESCENT_ANGLE)
                .orElseThrow();
        String line = String.format(
                Locale.ROOT,
                "| typical ball, carry of 14 typical shots | %.1f %% RMS, %.1f %% worst, 1.6 %% RMS left out one at a time |"
                        + " common practice from memory: calibration, not validation |",
                100.0 * carry.relativeRms().orElseThrow(),
                100.0 * carry.relativeWorst().orElseThrow());
        assertTrue(readme.contains(line), line);
        String others = String.format(
                Locale.ROOT,
                "| typical ball, apex and descent of the same | %.1f yd and %.1f deg RMS | the same |",
                LengthUnit.YARD.fromSi(apex.rms()),
                AngleUnit.DEGREE.fromSi(descent.rms()));
        assertTrue(readme.contains(others), others);
    }

    @Test
    void validatePrintsATableForEachModelAndLeavesGroupsOut() throws IOException {
        Path csv = folder.resolve("table.csv");
        assertEquals(
                0, run("validate", typicalShots().toString(), "--left-out", "--csv", csv.toString()), err.toString());
        assertTrue(out.toString().contains("| typical ball | all | carry [yd] | 14 | "), out.toString());
        assertTrue(out.toString().contains("| Smits and Smith 1994 | short iron and wedge | "), out.toString());
        assertTrue(out.toString().contains("| typical ball, fitted to the others | all | carry [yd] | 14 | "));
        assertTrue(Files.readString(csv).startsWith("model,flights,output,unit,n,bias,"));
        String given = out.toString();
        assertEquals(0, run("validate"), err.toString());
        assertTrue(given.contains(out.toString().substring(given.length()).strip()), "the bundled shots are the same");
    }

    @Test
    void calibrateFindsTheTypicalBallInItsOwnShots() throws IOException {
        Path json = folder.resolve("fit.json");
        assertEquals(0, run("calibrate", typicalShots().toString(), "--json", json.toString()), err.toString());
        assertTrue(out.toString().contains("42 observations"), out.toString());
        JsonNode tree = new ObjectMapper().readTree(Files.readString(json));
        for (String name : new String[] {"drag_scale", "lift_scale"}) {
            JsonNode parameter = tree.get("parameters").get(name);
            assertEquals(1.0, parameter.get("value").asDouble(), 0.05, name);
            assertTrue(parameter.get("interval").get(0).asDouble()
                    < parameter.get("interval").get(1).asDouble());
        }
        assertEquals(0, run("calibrate", typicalShots().toString(), "--pool", "--loss", "TUKEY"), err.toString());
        assertTrue(out.toString().contains("stated noise and prior"), out.toString());
    }

    @Test
    void calibrateAllowsForErrorsOfTheLaunchThatAreStated() throws IOException {
        String shots = typicalShots().toString();
        Path exact = folder.resolve("exact.json");
        Path noisy = folder.resolve("noisy.json");
        assertEquals(0, run("calibrate", shots, "--json", exact.toString()), err.toString());
        assertFalse(out.toString().contains("tolerances of the launch propagated"), out.toString());
        String[] device = {"--speed-error-pct", "0.5", "--direction-error-deg", "0.3", "--spin-error-pct", "3"};
        assertEquals(
                0,
                run(
                        "calibrate",
                        shots,
                        "--json",
                        noisy.toString(),
                        device[0],
                        device[1],
                        device[2],
                        device[3],
                        device[4],
                        device[5],
                        "--tilt-error-deg",
                        "1"),
                err.toString());
        assertTrue(out.toString().contains("tolerances of the launch propagated"), out.toString());
        // The stated errors explain a part of the scatter, in units of which less is left.
        ObjectMapper mapper = new ObjectMapper();
        assertTrue(mapper.readTree(Files.readString(noisy)).get("scale").asDouble()
                < mapper.readTree(Files.readString(exact)).get("scale").asDouble());
        assertEquals(2, run("calibrate", shots, "--direction-error-deg", "30"));
        assertTrue(err.toString().contains("--direction-error-deg must be in [0, 20] deg"), err.toString());
    }

    @Test
    void validateComparesTotalsOnTurf() throws IOException {
        Path csv = Files.writeString(folder.resolve("totals.csv"), """
                flight,turf,ball_speed_mph,launch_angle_deg,spin_rate_rpm,carry_yd,total_yd
                invented,fairway,167,10.9,2686,275,298
                """);
        assertEquals(0, run("validate", csv.toString()), err.toString());
        assertTrue(out.toString().contains("| typical ball | all | total [yd] | 1 | "), out.toString());
        Path bare = Files.writeString(
                folder.resolve("bare.csv"),
                "ball_speed_mph,launch_angle_deg,spin_rate_rpm,total_yd\n167,11,2600,298\n");
        assertEquals(2, run("validate", bare.toString()));
        assertTrue(err.toString().contains("line 2: total needs the column turf"), err.toString());
    }

    @Test
    void optimiseFindsLaunchOrDelivery() throws IOException {
        Path json = folder.resolve("best.json");
        assertEquals(0, run("optimise", "--ball-speed-mph", "155", "--json", json.toString()), err.toString());
        assertTrue(out.toString().startsWith("carry "), out.toString());
        assertTrue(out.toString().contains("launch angle "), out.toString());
        JsonNode tree = new ObjectMapper().readTree(Files.readString(json));
        assertTrue(tree.get("launch_angle_deg").get("lowest").asDouble()
                < tree.get("launch_angle_deg").get("value").asDouble());
        assertTrue(tree.get("spin_rate_rpm").get("highest").asDouble()
                > tree.get("spin_rate_rpm").get("value").asDouble());
        assertEquals(120, tree.get("contour").size());
        assertEquals(0, run("optimise", "--club-speed-mph=95", "--elevation-ft=5280", "--loss-yd=2"), err.toString());
        assertTrue(out.toString().contains("attack angle "), out.toString());
        assertTrue(out.toString().contains("what loses at most 2.0 yd"), out.toString());
        assertTrue(
                out.toString().contains("the ball's own error can be worth more than the loss of 2.0 yd"),
                out.toString());
    }

    /** The head is the typical one asked for: against the optimizer asked directly. */
    @Test
    void optimiseTakesATypicalHead() {
        for (String head : new String[] {"driver", "iron-5"}) {
            out.getBuffer().setLength(0);
            assertEquals(0, run("optimise", "--club-speed-mph=85", "--head", head), err.toString());
            Angle none = Angle.ofDegrees(0.0);
            LaunchOptimum best = LaunchOptimizer.of(FlightModel.standard())
                    .delivery(
                            Delivery.builder()
                                    .clubSpeed(Speed.ofMph(85.0))
                                    .attackAngle(none)
                                    .clubPath(none)
                                    .faceAngle(none)
                                    .dynamicLoft(Angle.ofDegrees(14.0))
                                    .build(),
                            head.equals("driver") ? TypicalHead.driver() : TypicalHead.iron(5),
                            RigidImpact.standard());
            String carry = String.format(
                    Locale.ROOT, "carry %.1f yd, ", best.flight().carry().yards());
            assertTrue(out.toString().startsWith(carry), out.toString());
        }
    }

    @Test
    void optimiseOnTurfMakesTheTotalGreat() throws IOException {
        Path json = folder.resolve("total.json");
        assertEquals(
                0,
                run("optimise", "--ball-speed-mph", "155", "--turf", "firm-fairway", "--json", json.toString()),
                err.toString());
        JsonNode total = new ObjectMapper().readTree(Files.readString(json));
        assertEquals(0, run("optimise", "--ball-speed-mph", "155", "--json", json.toString()), err.toString());
        JsonNode carry = new ObjectMapper().readTree(Files.readString(json));
        assertTrue(out.toString().contains(", total "), out.toString());
        assertTrue(carry.get("total_yd").isNull());
        assertTrue(total.get("total_yd").asDouble() > carry.get("carry_yd").asDouble());
        assertTrue(total.get("carry_yd").asDouble() < carry.get("carry_yd").asDouble());
        assertEquals(2, run("optimise", "--ball-speed-mph", "155", "--turf", "sand"));
    }

    @Test
    void wrongInputIsOneLineAndExitCodeTwo() throws IOException {
        Path bad = Files.writeString(folder.resolve("bad.csv"), "ball_speed_mph,launch_angle_deg\n118,17\n");
        Path none = Files.writeString(folder.resolve("none.csv"), "ball_speed_mph,launch_angle_deg,spin_rate_rpm\n");
        String missing = folder.resolve("no.csv").toString();
        String[][] wrong = {
            {"calibrate", missing},
            {"calibrate", bad.toString()},
            {"calibrate", none.toString()},
            {"validate", bad.toString()},
            {"calibrate", typicalShots().toString(), "--tracks", bad.toString()},
            {"calibrate", typicalShots().toString(), "--loss", "median"},
            {"optimise"},
            {"optimise", "--ball-speed-mph", "300"},
            {"optimise", "--ball-speed-mph", "150", "--head", "driver"},
            {"optimise", "--club-speed-mph", "90", "--head", "mallet"},
            {"optimise", "--ball-speed-mph", "150", "--loss-yd", "0"},
            {"optimise", "--ball-speed-mph", "150", "--club-speed-mph", "90"}
        };
        for (String[] args : wrong) {
            err.getBuffer().setLength(0);
            assertEquals(2, run(args), String.join(" ", args));
            assertEquals(1, err.toString().lines().count(), err.toString());
            assertFalse(err.toString().contains("Exception"), err.toString());
        }
        assertEquals("", out.toString());
    }
}
