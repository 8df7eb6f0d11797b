package dev.teeward.flight.impact;

import static dev.teeward.quantity.Units.degrees;
import static dev.teeward.quantity.Units.kilograms;
import static dev.teeward.quantity.Units.metersPerSecond;
import static dev.teeward.quantity.Units.millimeters;
import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.teeward.flight.LaunchConditions;
import dev.teeward.quantity.Handedness;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * The rows of impact_examples.csv, computed by a second implementation of the same formulas (see the head of the file):
 * derived, with the structure of the formulas from memory.
 *
 * <p>Tolerance: half a unit of the last printed digit. The inputs of the rows are exact as printed, so nothing is added for
 * them, but for G10 (see there).
 */
class ImpactExamplesTest {
    private static final String FILE = "impact_examples.csv";

    /**
     * G10 is the only row whose face is turned both ways. The order of two turns is a convention; it moves the normal by at
     * most bulge^2 roll / 2 = 0.0492^2 * 0.0328 / 2 = 4.0e-5 rad = 0.0023 deg, and through it the start by as much, the tilt
     * by 1/sin(spin loft) = 4.8 times as much, the spin by dw/dpsi = 190 rpm/deg as much.
     */
    private static final double ORDER_OF_TURNS_DEGREES = 0.0023;

    @TestFactory
    Stream<DynamicTest> rightHandedRowsAgree() throws IOException {
        return rows().stream()
                .map(row -> DynamicTest.dynamicTest(
                        row.get("id") + " " + row.get("case"), () -> check(row, Handedness.RIGHT)));
    }

    @TestFactory
    Stream<DynamicTest> leftHandedMirrorImagesAgree() throws IOException {
        return rows().stream()
                .map(row -> DynamicTest.dynamicTest(row.get("id") + " mirrored", () -> check(row, Handedness.LEFT)));
    }

    @TestFactory
    Stream<DynamicTest> closedFormAgreesOnCentralRows() throws IOException {
        return rows().stream()
                .filter(row -> !text(row, "id").startsWith("G"))
                .map(row -> DynamicTest.dynamicTest(text(row, "id"), () -> {
                    DPlane plane = DPlane.of(delivery(row, Handedness.RIGHT), head(row, Handedness.RIGHT));
                    checkLaunch(row, plane.launch(), 1.0, 0.0);
                    near(row, "spin_loft_3d_deg", plane.spinLoft().degrees(), 1.0, 0.0);
                }));
    }

    @TestFactory
    Stream<DynamicTest> lieRowsAgreeWithTheirClosedForm() throws IOException {
        return rows().stream()
                .filter(row -> text(row, "id").startsWith("L"))
                .map(row -> DynamicTest.dynamicTest(text(row, "id"), () -> {
                    LieEffect lie = LieEffect.of(degrees(number(row, "lie_error_deg_upright_pos")), Handedness.RIGHT);
                    Delivery square = square(row, Handedness.RIGHT).build();
                    near(row, "face_deg", lie.faceAngle(square.dynamicLoft()).degrees(), 1.0, 0.0);
                    near(
                            row,
                            "effective_loft_deg",
                            lie.effectiveLoft(square.dynamicLoft()).degrees(),
                            1.0,
                            0.0);
                    LaunchConditions straight = RigidImpact.standard()
                            .strike(square, head(row, Handedness.RIGHT))
                            .launch();
                    near(
                            row,
                            "launch_angle_deg",
                            lie.launchAngle(straight.launchAngle()).degrees(),
                            1.0,
                            0.0);
                    near(
                            row,
                            "launch_direction_deg_right_pos",
                            lie.startDirection(straight.launchAngle()).degrees(),
                            1.0,
                            0.0);
                    near(
                            row,
                            "spin_axis_tilt_deg_right_pos",
                            lie.axisTilt(straight.launchAngle()).degrees(),
                            1.0,
                            0.0);
                }));
    }

    @Test
    void everyRowIsThere() throws IOException {
        assertEquals(18 + 6 + 10, rows().size());
    }

    private static void check(Map<String, String> row, Handedness hand) {
        Impact impact = RigidImpact.standard().strike(delivery(row, hand), head(row, hand));
        double turned = text(row, "id").equals("G10") ? ORDER_OF_TURNS_DEGREES : 0.0;
        checkLaunch(row, impact.launch(), hand.sign(), turned);
        near(row, "spin_loft_3d_deg", impact.spinLoft().degrees(), 1.0, turned);
        near(row, "smash_factor", impact.smashFactor(), 1.0, turned);
        assertEquals(text(row, "contact_regime").equals("slip"), impact.slipped(), "slipped");
    }

    private static void checkLaunch(Map<String, String> row, LaunchConditions launch, double sign, double turned) {
        double spin = launch.spinRate().rpm();
        near(row, "ball_speed_mps", launch.ballSpeed().metersPerSecond(), 1.0, turned);
        near(row, "launch_angle_deg", launch.launchAngle().degrees(), 1.0, turned);
        near(row, "launch_direction_deg_right_pos", launch.startDirection().degrees(), sign, turned);
        near(row, "total_spin_rpm", spin, 1.0, 190.0 * turned);
        near(row, "spin_axis_tilt_deg_right_pos", launch.axisTilt().degrees(), sign, 4.8 * turned);
        near(row, "backspin_rpm", spin * Math.cos(launch.axisTilt().radians()), 1.0, 190.0 * turned);
        near(row, "sidespin_rpm_right_pos", spin * Math.sin(launch.axisTilt().radians()), sign, 190.0 * turned);
    }

    private static Delivery delivery(Map<String, String> row, Handedness hand) {
        Delivery delivery = square(row, hand).build();
        String lie = text(row, "lie_error_deg_upright_pos");
        return lie.isEmpty()
                ? delivery
                : LieEffect.of(degrees(Double.parseDouble(lie)), hand).applyTo(delivery);
    }

    private static Delivery.Builder square(Map<String, String> row, Handedness hand) {
        return Delivery.builder()
                .clubSpeed(metersPerSecond(number(row, "club_speed_mps")))
                .attackAngle(degrees(number(row, "attack_angle_deg")))
                .clubPath(degrees(hand.sign() * number(row, "club_path_deg")))
                .faceAngle(degrees(hand.sign() * number(row, "face_angle_deg")))
                .dynamicLoft(degrees(number(row, "dynamic_loft_deg")))
                .strikeToe(millimeters(numberOrZero(row, "impact_toe_mm")))
                .strikeUp(millimeters(numberOrZero(row, "impact_high_mm")));
    }

    private static ClubHead head(Map<String, String> row, Handedness hand) {
        ClubHead.Builder head = ClubHead.builder()
                .mass(kilograms(number(row, "head_mass_kg")))
                .restitution(number(row, "cor_e"))
                .friction(number(row, "mu_face"))
                .handedness(hand);
        if (text(row, "id").startsWith("G")) {
            head.massCenterDepth(millimeters(number(row, "cg_depth_mm"))).inertia(5.679e-4, 4.085e-4, 2.843e-4);
            if (!text(row, "case").contains("flat")) {
                head.bulgeRadius(millimeters(305.0)).rollRadius(millimeters(305.0));
            }
        }
        return head.build();
    }

    /** Compares at half a unit of the last digit printed in the row; 1e-9 of it for the rounding of a tie. */
    private static void near(Map<String, String> row, String column, double actual, double sign, double extra) {
        String printed = text(row, column);
        int point = printed.indexOf('.');
        double unit = point < 0 ? 1.0 : Math.pow(10.0, -(printed.length() - point - 1));
        assertEquals(sign * Double.parseDouble(printed), actual, 0.5 * unit * (1.0 + 1e-9) + extra, column);
    }

    private static String text(Map<String, String> row, String column) {
        return Objects.requireNonNull(row.get(column), column);
    }

    private static double number(Map<String, String> row, String column) {
        return Double.parseDouble(text(row, column));
    }

    private static double numberOrZero(Map<String, String> row, String column) {
        return text(row, column).isEmpty() ? 0.0 : number(row, column);
    }

    private static List<Map<String, String>> rows() throws IOException {
        List<String> lines;
        try (InputStream in = Objects.requireNonNull(ImpactExamplesTest.class.getResourceAsStream(FILE), FILE);
                BufferedReader reader = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
            lines = reader.lines().filter(line -> !line.startsWith("#")).toList();
        }
        List<String> names = List.of(lines.get(0).split(",", -1));
        List<Map<String, String>> rows = new ArrayList<>();
        for (String line : lines.subList(1, lines.size())) {
            List<String> cells = List.of(line.split(",", -1));
            assertEquals(names.size(), cells.size(), line);
            Map<String, String> row = new HashMap<>();
            for (int i = 0; i < names.size(); i++) {
                row.put(names.get(i), cells.get(i));
            }
            rows.add(row);
        }
        return rows;
    }
}
