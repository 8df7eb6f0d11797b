package dev.teeward.examples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.flight.Flight;
import dev.teeward.flight.FlightModel;
import dev.teeward.flight.LaunchConditions;
import dev.teeward.flight.impact.ClubHead;
import dev.teeward.flight.impact.Delivery;
import dev.teeward.flight.impact.RigidImpact;
import dev.teeward.flight.impact.TypicalHead;
import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Handedness;
import dev.teeward.quantity.Length;
import dev.teeward.quantity.Speed;
import dev.teeward.quantity.SpinRate;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** {@code fly} on rows that tell of the club and not of the ball, against impact and flight model asked directly. */
class FlyFromDeliveryTest {
    private static final String DELIVERY =
            "club_speed_mph,attack_angle_deg,club_path_deg,face_angle_deg,dynamic_loft_deg";
    private static final String LAUNCH = "ball_speed_mph,launch_angle_deg,spin_rate_rpm";
    private static final double ROUNDING = 0.5e-3 + 1e-9;

    @TempDir
    private Path folder = Path.of("");

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    private Path flights() {
        return folder.resolve("flights.csv");
    }

    private int run(String table, String... options) throws IOException {
        Path in = Files.writeString(folder.resolve("launches.csv"), table);
        String[] args = new String[4 + options.length];
        System.arraycopy(new String[] {"fly", in.toString(), "--out", flights().toString()}, 0, args, 0, 4);
        System.arraycopy(options, 0, args, 4, options.length);
        return TeewardExamples.run(new PrintWriter(out), new PrintWriter(err), args);
    }

    private List<String> fly(String table, String... options) throws IOException {
        assertEquals(0, run(table, options), err.toString());
        return Files.readAllLines(flights());
    }

    private static LaunchConditions launch(ClubHead head, double toe, double up) {
        Delivery delivery = Delivery.builder()
                .clubSpeed(Speed.ofMph(84.0))
                .attackAngle(Angle.ofDegrees(-3.0))
                .clubPath(Angle.ofDegrees(2.0))
                .faceAngle(Angle.ofDegrees(-0.5))
                .dynamicLoft(Angle.ofDegrees(22.0))
                .strikeToe(Length.ofMillimeters(toe))
                .strikeUp(Length.ofMillimeters(up))
                .build();
        return RigidImpact.standard().strike(delivery, head).launch();
    }

    private static double cell(List<String> lines, int row, String heading) {
        int column = List.of(lines.get(0).split(",", -1)).indexOf(heading);
        assertTrue(column >= 0, heading + " in " + lines.get(0));
        return Double.parseDouble(lines.get(row).split(",", -1)[column]);
    }

    private static void assertLaunch(LaunchConditions expected, List<String> lines, int row) {
        assertEquals(expected.ballSpeed().mph(), cell(lines, row, "computed_ball_speed_mph"), ROUNDING);
        assertEquals(expected.launchAngle().degrees(), cell(lines, row, "computed_launch_angle_deg"), ROUNDING);
        assertEquals(expected.startDirection().degrees(), cell(lines, row, "computed_start_direction_deg"), ROUNDING);
        assertEquals(expected.spinRate().rpm(), cell(lines, row, "computed_spin_rate_rpm"), ROUNDING);
        assertEquals(expected.axisTilt().degrees(), cell(lines, row, "computed_axis_tilt_deg"), ROUNDING);
        Flight flight = FlightModel.standard().fly(expected);
        assertEquals(flight.carry().yards(), cell(lines, row, "carry_yd"), ROUNDING);
        assertEquals(flight.side().yards(), cell(lines, row, "side_yd"), ROUNDING);
    }

    @Test
    void aDeliveryIsStruckAndFlown() throws IOException {
        List<String> lines = fly(DELIVERY + "\n84,-3,2,-0.5,22\n", "--head", "iron-6");
        assertLaunch(launch(TypicalHead.iron(6), 0.0, 0.0), lines, 1);
        assertTrue(out.toString().contains("1 launches computed from the delivery"), out.toString());
        assertEquals("", err.toString());
        // Written again, the computed launch is not taken for a measured one.
        assertEquals(
                lines.get(1),
                fly(String.join("\n", lines) + "\n", "--head=iron-6")
                        .get(1)
                        .substring(0, lines.get(1).length()));
    }

    @Test
    void whatTheHeadIsKnownToGetWrongIsTold() throws IOException {
        fly(DELIVERY + "\n113,-1.3,0,0,12.8\n113,1.3,0,0,12.8\n", "--head=driver");
        assertTrue(err.toString().contains("1 spin-too-high-with-this-head ("), err.toString());
        assertTrue(err.toString().contains("(row 1)"), err.toString());
    }

    @Test
    void theStrikeAndTheHandMatter() throws IOException {
        ClubHead left =
                TypicalHead.driver().toBuilder().handedness(Handedness.LEFT).build();
        List<String> lines = fly(
                "# hand: left\n" + DELIVERY + ",strike_toe_mm,strike_up_mm\n84,-3,2,-0.5,22,12,\n84,-3,2,-0.5,22,,6\n",
                "--head=driver");
        List<String> table = lines.subList(1, 4);
        assertLaunch(launch(left, 12.0, 0.0), table, 1);
        assertLaunch(launch(left, 0.0, 6.0), table, 2);
        assertTrue(launch(left, 12.0, 0.0).startDirection().degrees()
                < launch(TypicalHead.driver(), 12.0, 0.0).startDirection().degrees());
    }

    @Test
    void aMeasuredLaunchGoesFirstRowByRow() throws IOException {
        List<String> lines = fly(
                LAUNCH + "," + DELIVERY
                        + "\n118,17.2,6400,84,-3,2,-0.5,22\n,,,84,-3,2,-0.5,22\n118,,,84,-3,2,-0.5,22\n",
                "--head=iron-6");
        int column = List.of(lines.get(0).split(",", -1)).indexOf("computed_ball_speed_mph");
        assertEquals("", lines.get(1).split(",", -1)[column]);
        Flight flight = FlightModel.standard()
                .fly(LaunchConditions.builder()
                        .ballSpeed(Speed.ofMph(118.0))
                        .launchAngle(Angle.ofDegrees(17.2))
                        .spinRate(SpinRate.ofRpm(6_400.0))
                        .build());
        assertEquals(flight.carry().yards(), cell(lines, 1, "carry_yd"), ROUNDING);
        assertLaunch(launch(TypicalHead.iron(6), 0.0, 0.0), lines, 2);
        assertLaunch(launch(TypicalHead.iron(6), 0.0, 0.0), lines, 3);
        assertTrue(
                err.toString().contains("1 launch-incomplete (")
                        && err.toString().contains("row 3"),
                err.toString());
    }

    /** A start direction or a tilt without the rest of a launch is measured too; empty cells and missing columns are not. */
    @Test
    void aMeasuredDirectionThatIsNotUsedIsSaid() throws IOException {
        List<String> lines = fly(
                DELIVERY
                        + ",start_direction_deg,axis_tilt_deg\n84,-3,2,-0.5,22,,\n84,-3,2,-0.5,22,3,\n84,-3,2,-0.5,22,,5\n",
                "--head=iron-6");
        for (int row = 1; row <= 3; row++) {
            assertLaunch(launch(TypicalHead.iron(6), 0.0, 0.0), lines, row);
        }
        assertTrue(
                err.toString().contains("2 launch-incomplete (")
                        && err.toString().contains("rows 2, 3"),
                err.toString());
    }

    @Test
    void whatIsMissingIsNamed() throws IOException {
        refused(
                "launches.csv: row 2: has neither a whole launch (without ball_speed, launch_angle, spin_rate) nor a whole"
                        + " delivery (without face_angle)",
                DELIVERY + "\n84,-3,2,-0.5,22\n84,-3,2,,22\n",
                "--head=iron-6");
        refused(
                "launches.csv: row 1: has neither a whole launch (without spin_rate) nor a whole delivery (without"
                        + " attack_angle, club_path, face_angle, dynamic_loft)",
                "ball_speed_mph,launch_angle_deg,club_speed_mph\n118,17.2,84\n");
        refused("rows with a delivery and no launch need --head: driver, ", DELIVERY + "\n84,-3,2,-0.5,22\n");
        refused("row 1: the face must move towards the ball", DELIVERY + "\n84,-40,2,-0.5,70\n", "--head=wedge-60");
    }

    @ParameterizedTest
    @CsvSource({"iron-10", "iron", "putter", "wedge-20", "hybrid-0", "driver-1", "fairway-wood-99"})
    void anUnknownHeadIsRefused(String head) throws IOException {
        refused(
                "Invalid value for option '--head': \"" + head + "\"",
                DELIVERY + "\n84,-3,2,-0.5,22\n",
                "--head",
                head);
    }

    private void refused(String message, String table, String... options) throws IOException {
        err.getBuffer().setLength(0);
        assertEquals(2, run(table, options), err.toString());
        assertEquals(1, err.toString().lines().count(), err.toString());
        assertTrue(err.toString().contains(message), err.toString());
        assertFalse(Files.exists(flights()));
    }
}
