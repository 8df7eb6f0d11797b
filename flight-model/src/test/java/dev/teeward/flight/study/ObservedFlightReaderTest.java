package dev.teeward.flight.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.flight.ground.TurfClass;
import dev.teeward.quantity.SpeedUnit;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ObservedFlightReaderTest {
    @Test
    void readsUnitsAirWindAndText() {
        List<ObservedFlight> flights = ObservedFlightReader.flights("""
                \uFEFF# invented
                flight,group,ball_speed_mph,launch_angle_deg,spin_rate_rpm,axis_tilt_deg,temperature_c,pressure_hpa,humidity_pct,wind_speed_mps,wind_from_deg,landing_elevation_ft,carry_yd,apex_ft,flight_time_s
                a,"iron, ""mid\""",118,17.2,6400,-4,25,840,40,3,90,-10,170,,6.1

                b,,118,17.2,6400,,,,,,,,165,95,
                """);
        assertEquals(2, flights.size());
        ObservedFlight a = flights.get(0);
        assertEquals("a", a.name());
        assertEquals("iron, \"mid\"", a.group());
        assertEquals(118 * 0.44704, a.launch().ballSpeed().metersPerSecond(), 1e-12);
        assertEquals(170 * 0.9144, a.value(FlightOutput.CARRY).orElseThrow(), 1e-12);
        assertTrue(a.value(FlightOutput.APEX).isEmpty());
        assertEquals(List.of(FlightOutput.CARRY, FlightOutput.FLIGHT_TIME), a.outputs());
        assertEquals(-3.0, a.conditions().wind().towardsRight(0.0), 1e-12);
        assertEquals(-3.048, a.conditions().landingElevation().meters(), 1e-12);
        // Dry air at 840 hPa and 25 degC has 84000/(287.05 * 298.15) = 0.9815 kg/m3; moist air a little less.
        assertEquals(0.977, a.conditions().air().density(), 0.004);
        assertEquals(1.225, flights.get(1).conditions().air().density(), 1e-6);
        assertEquals(95 * 0.3048, flights.get(1).value(FlightOutput.APEX).orElseThrow(), 1e-12);
        assertTrue(a.toString().startsWith("a: "), a.toString());
    }

    @Test
    void readsTotalsOfFlightsThatCameToRestOnAKnownTurf() {
        List<ObservedFlight> flights = ObservedFlightReader.flights("""
                ball_speed_mph,launch_angle_deg,spin_rate_rpm,turf,carry_yd,total_yd,run_m
                167,10.9,2686,firm-fairway,275,300,
                167,10.9,2686,,275,,
                """);
        assertEquals(
                List.of(FlightOutput.CARRY, FlightOutput.TOTAL), flights.get(0).outputs());
        assertEquals(300 * 0.9144, flights.get(0).value(FlightOutput.TOTAL).orElseThrow(), 1e-12);
        assertEquals(
                TurfClass.FIRM_FAIRWAY.turf(),
                flights.get(0).conditions().ground().orElseThrow().turf());
        assertTrue(flights.get(1).conditions().ground().isEmpty());
    }

    /** The tables that the page for contributors shows are read. */
    @Test
    void readsTheTablesOfTheGuide() throws IOException {
        String guide = Files.readString(Path.of("..", "DEVELOPERS.md"), StandardCharsets.UTF_8);
        int from = guide.indexOf("flight,group,ball_speed_mph");
        String[] tables = guide.substring(from, guide.indexOf("```", from)).split("\n\n", -1);
        assertEquals(2, tables.length);
        List<ObservedFlight> flights =
                ObservedFlightReader.withTracks(ObservedFlightReader.flights(tables[0]), tables[1]);
        assertEquals(1, flights.size());
        assertEquals("iron", flights.get(0).group());
        assertEquals(162.5 * 0.9144, flights.get(0).value(FlightOutput.CARRY).orElseThrow(), 1e-12);
        assertEquals(25.1, flights.get(0).track().get(0).downrange(), 0.0);
    }

    @Test
    void readsTracks() {
        List<ObservedFlight> flights = ObservedFlightReader.withTracks(
                ObservedFlightReader.flights(
                        "flight,ball_speed_mps,launch_angle_deg,spin_rate_rpm,elevation_m\nx,60,12,3000,500\ny,61,12,3000,\n"),
                "flight,time_s,downrange_yd,height_m,side_m\nx,1,50,12,0.5\nx,500e-3,27,7,0.1\n");
        assertEquals(
                List.of(
                        new ObservedFlight.TrackPoint(1.0, 50 * 0.9144, 12.0, 0.5),
                        new ObservedFlight.TrackPoint(0.5, 27 * 0.9144, 7.0, 0.1)),
                flights.get(0).track());
        assertEquals(List.of(), flights.get(1).track());
        assertThrows(
                IllegalArgumentException.class,
                () -> ObservedFlightReader.withTracks(
                        flights, "flight,time_s,downrange_yd,height_m,side_m\nz,1,50,12,0.5\n"));
        assertThrows(
                IllegalArgumentException.class,
                () -> ObservedFlightReader.withTracks(flights, "flight,time_s,downrange_yd,height_m\nx,1,50,12\n"));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            ball_speed_mph,launch_angle_deg\\n118,17              | line 2: spin_rate is needed
            ball_speed_mph,launch_angle_deg,spin_rate_rpm\\n1,2   | line 2 has 2 cells
            ball_speed_mph,launch_angle_deg,spin_rate_rpm\\nx,2,3 | line 2, column ball_speed_mph
            ball_speed_mph,launch_angle_deg,spin_rate_rpm\\nNaN,2,3 | line 2, column ball_speed_mph
            ball_speed_mph,launch_angle_deg,spin_rate_rpm\\n500,2,3 | line 2: ballSpeed must be in
            ball_speed_mph,ball_speed_mps,launch_angle_deg,spin_rate_rpm\\n5,5,2,3 | line 2: ball_speed is there twice
            ball_speed_mph,ball_speed_mph\\n5,5                   | column ball_speed_mph is there twice
            ball_speed_mph,launch_angle_deg,spin_rate_rpm,carrie_yd\\n5,5,2,3 | column "carrie_yd" is not known
            ball_speed_mph,launch_angle_deg,spin_rate_rpm,wind_speed_mph\\n90,5,2,3 | line 2: wind_speed and wind_from
            ball_speed_mph,"launch\\n5,5                          | line 1 ends within a quoted cell
            ball_speed_mph,launch_angle_deg,spin_rate_rpm,total_yd\\n90,5,2000,100 | line 2: total needs the column turf
            ball_speed_mph,launch_angle_deg,spin_rate_rpm,run_yd,turf\\n90,5,2000,10, | line 2: run needs the column turf
            ball_speed_mph,launch_angle_deg,spin_rate_rpm,turf\\n90,5,2000,mud | line 2: turf must be one of [fairway, firm-fairway,
            # nothing                                             | there is no heading
            """)
    void errorsNameLineAndColumn(String text, String start) {
        String csv = text.replace("\\n", "\n");
        IllegalArgumentException e =
                assertThrows(IllegalArgumentException.class, () -> ObservedFlightReader.flights(csv));
        assertTrue(e.getMessage().startsWith(start), e.getMessage());
    }

    /** The units are those of the quantities, from their enumerations. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            ball_speed_mph,launch_angle_deg\\n118,17               | spin_rate is needed; its column is spin_rate_
            ball_speed,launch_angle_deg,spin_rate_rpm\\n118,17,3000 | "ball_speed" is not known; the unit ends the name: ball_speed_mps
            ball_speed_mi,launch_angle_deg,spin_rate_rpm\\n1,2,3    | "ball_speed_mi" is not known; the unit ends the name: ball_speed_mps
            carry_feet,launch_angle_deg,spin_rate_rpm\\n1,2,3       | "carry_feet" is not known; the unit ends the name: carry_m
            ball_speed_mph;launch_angle_deg;spin_rate_rpm\\n1;2;3   | is not known; cells are separated by commas, not semicolons
            ball_speed_mph,launch_angle_deg,spin_rate_rpm\\n1;2;3   | line 2 has 1 cells, but the heading has 3; cells are separated by commas
            """)
    void errorsSayWhatIsTaken(String text, String part) {
        String csv = text.replace("\\n", "\n");
        IllegalArgumentException e =
                assertThrows(IllegalArgumentException.class, () -> ObservedFlightReader.flights(csv));
        assertTrue(e.getMessage().contains(part), e.getMessage());
        for (SpeedUnit unit : part.contains("name: ball_speed") ? SpeedUnit.values() : new SpeedUnit[0]) {
            assertTrue(e.getMessage().contains("ball_speed_" + unit.suffix()), e.getMessage());
        }
    }

    /** Without the tilt a curved ball would be judged as a straight one. */
    @Test
    void aSideNeedsItsStartAndTilt() {
        String head = "flight,ball_speed_mps,launch_angle_deg,spin_rate_rpm,start_direction_deg,axis_tilt_deg,";
        assertEquals(
                9.144,
                ObservedFlightReader.flights(head + "side_yd\nx,60,12,3000,0,5,10\n")
                        .get(0)
                        .value(FlightOutput.SIDE)
                        .orElseThrow(),
                1e-12);
        for (String row : new String[] {"side_yd\nx,60,12,3000,0,,10\n", "curve_yd\nx,60,12,3000,0,,10\n"}) {
            IllegalArgumentException e =
                    assertThrows(IllegalArgumentException.class, () -> ObservedFlightReader.flights(head + row));
            assertTrue(e.getMessage().contains("axis_tilt_deg"), e.getMessage());
        }
        IllegalArgumentException e = assertThrows(
                IllegalArgumentException.class,
                () -> ObservedFlightReader.flights(head + "side_yd\nx,60,12,3000,,5,10\n"));
        assertTrue(
                e.getMessage().startsWith("line 2: ") && e.getMessage().contains("start_direction_deg"),
                e.getMessage());
    }
}
