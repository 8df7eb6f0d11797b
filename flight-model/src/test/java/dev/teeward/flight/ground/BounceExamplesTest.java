package dev.teeward.flight.ground;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Length;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The rows of bounce_examples.csv, computed by a second implementation (see the head of the file), to half a unit of the last
 * digit printed. The inputs are exact as printed.
 */
class BounceExamplesTest {
    /** That of the rows [m/s2]. */
    private static final double GRAVITY = 9.81;

    private static final double RADIUS = 0.021335;
    private static final double RPM = Math.PI / 30.0;

    static Stream<Map<String, String>> bounces() {
        return rows().stream().filter(row -> text(row, "id").startsWith("B"));
    }

    static Stream<Map<String, String>> greens() {
        return rows().stream().filter(row -> text(row, "id").startsWith("S"));
    }

    @ParameterizedTest
    @MethodSource("bounces")
    void firstImpact(Map<String, String> row) {
        double speed = number(row, "v_in_mps");
        Turf turf = turf(row);
        Penner2002 model = Penner2002.withDefaults();
        double fromNormal = 90.0 - number(row, "landing_angle_below_horizontal_deg");
        Angle tilt = model.tilt(speed, Angle.ofDegrees(fromNormal), turf);
        near(row, "theta_c_deg", tilt.degrees());
        double into = speed * Math.cos(Math.toRadians(fromNormal) - tilt.radians());
        near(row, "v_normal_tilted_mps", into);
        double e = model.restitution(into, turf);
        near(row, "e", e);
        double spin = number(row, "backspin_in_rpm") * RPM;
        double along = speed * Math.sin(Math.toRadians(fromNormal) - tilt.radians());
        double critical = 2.0 * (along + RADIUS * spin) / (7.0 * (1.0 + e) * into);
        near(row, "mu_critical", critical);
        assertEquals(row.get("regime"), turf.friction() < critical ? "slide" : "roll");

        double[] motion = motion(row);
        model.bounce(motion, new double[] {0.0, 1.0, 0.0}, turf, RADIUS, 0.4);
        near(row, "vx_out_mps", motion[0]);
        near(row, "vy_out_mps", motion[1]);
        near(row, "v_out_mps", Math.hypot(motion[0], motion[1]));
        near(row, "angle_out_deg", Math.toDegrees(Math.atan2(motion[1], motion[0])));
        near(row, "backspin_out_rpm_neg_is_topspin", motion[5] / RPM);
        assertEquals(0.0, motion[2], 0.0);
    }

    @ParameterizedTest
    @MethodSource("bounces")
    void wholeRun(Map<String, String> row) {
        double[] motion = motion(row);
        RollOut run = Ground.of(turf(row))
                .run(
                        new double[3],
                        new double[] {motion[0], motion[1], motion[2]},
                        new double[] {motion[3], motion[4], motion[5]},
                        RADIUS,
                        0.4,
                        GRAVITY);
        assertEquals(number(row, "n_bounces"), run.bounces());
        double bouncing = run.bouncingEnd().downrange().meters();
        near(row, "bounce_distance_m", bouncing);
        // The rows let the spin become that of a rolling ball at one place; ours skids a few millimetres until it has.
        double rollingStart = run.path().stream()
                .filter(point -> point.phase() == RollOut.Phase.ROLL)
                .findFirst()
                .orElseThrow()
                .downrange()
                .meters();
        double rolling = run.rest().downrange().meters() - rollingStart;
        near(row, "roll_distance_m", rolling);
        near(row, "total_run_m", bouncing + rolling);
        assertEquals(0.0, rollingStart - bouncing, 0.005);
        assertTrue(run.atRest());
    }

    @ParameterizedTest
    @MethodSource("greens")
    void stimpmeterReadings(Map<String, String> row) {
        Length reading = Length.ofFeet(number(row, "stimp_ft"));
        near(row, "decel_mps2", Stimpmeter.deceleration(reading));
        // The rows divide by 9.81 m/s2, we by standard gravity.
        near(row, "rolling_resistance", Stimpmeter.rollingResistance(reading) * 9.80665 / GRAVITY);
    }

    @Test
    void countsOfRows() {
        assertEquals(13, bounces().count());
        assertEquals(9, greens().count());
    }

    private static Turf turf(Map<String, String> row) {
        Turf turf = TurfClass.FAIRWAY.turf().withFriction(number(row, "mu"));
        return text(row, "case").startsWith("NOT PHYSICAL") ? turf.withTiltFactor(0.0) : turf;
    }

    private static double[] motion(Map<String, String> row) {
        double speed = number(row, "v_in_mps");
        double down = Math.toRadians(number(row, "landing_angle_below_horizontal_deg"));
        return new double[] {
            speed * Math.cos(down), -speed * Math.sin(down), 0.0, 0.0, 0.0, number(row, "backspin_in_rpm") * RPM
        };
    }

    private static void near(Map<String, String> row, String column, double actual) {
        double half = new BigDecimal(text(row, column)).ulp().doubleValue() / 2.0;
        assertEquals(number(row, column), actual, half * (1.0 + 1e-6), () -> row.get("id") + " " + column);
    }

    private static double number(Map<String, String> row, String column) {
        return Double.parseDouble(text(row, column));
    }

    private static String text(Map<String, String> row, String column) {
        return Objects.requireNonNull(row.get(column), column);
    }

    private static List<Map<String, String>> rows() {
        try (InputStream in = Objects.requireNonNull(
                BounceExamplesTest.class.getResourceAsStream("bounce_examples.csv"), "bounce_examples.csv")) {
            List<String[]> lines = new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .filter(line -> !line.startsWith("#"))
                    .map(line -> line.split(",", -1))
                    .toList();
            return lines.stream()
                    .skip(1)
                    .map(line -> {
                        Map<String, String> row = new HashMap<>();
                        IntStream.range(0, line.length)
                                .forEach(i -> row.put(lines.get(0)[i], line[i].replace("\"", "")));
                        return row;
                    })
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
