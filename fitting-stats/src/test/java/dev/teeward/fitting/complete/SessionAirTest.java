package dev.teeward.fitting.complete;

import static dev.teeward.quantity.Units.celsius;
import static dev.teeward.quantity.Units.degrees;
import static dev.teeward.quantity.Units.fahrenheit;
import static dev.teeward.quantity.Units.feet;
import static dev.teeward.quantity.Units.hectopascals;
import static dev.teeward.quantity.Units.meters;
import static dev.teeward.quantity.Units.metersPerSecond;
import static dev.teeward.quantity.Units.mph;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.fitting.Session;
import dev.teeward.flight.FlightModel;
import dev.teeward.flight.LaunchConditions;
import dev.teeward.flight.air.Atmosphere;
import dev.teeward.quantity.SpinRate;
import dev.teeward.quantity.Warning;
import java.util.List;
import org.junit.jupiter.api.Test;

class SessionAirTest {
    private static List<String> codes(SessionAir air) {
        return air.warnings().stream().map(Warning::code).toList();
    }

    /** ISO 2533:1975: 15 degC, 1013.25 hPa, 1.225 kg/m3 at sea level. */
    @Test
    void nothingKnownIsStandardAirAtSeaLevelAndSaysSo() {
        SessionAir air = SessionAir.of(Session.builder().build());
        assertEquals(1.225, air.atmosphere().density(), 1e-6);
        assertEquals(0.0, air.wind().alongTarget(10.0));
        assertEquals(
                List.of(
                        "elevation-assumed",
                        "pressure-assumed",
                        "temperature-assumed",
                        "humidity-assumed",
                        "wind-assumed"),
                codes(air));
    }

    /** ISO 2533:1975, table at 1600 m of geopotential height: 835.2 hPa (from memory: 835.24), 4.6 degC, 1.0476 kg/m3. */
    @Test
    void elevationAloneIsStandardAirThere() {
        SessionAir air =
                SessionAir.of(Session.builder().elevation(meters(1_600.0)).build());
        assertEquals(835.24, air.atmosphere().pressure().hectopascals(), 0.05);
        assertEquals(4.6, air.atmosphere().temperature().celsius(), 1e-9);
        assertEquals(
                List.of("pressure-assumed", "temperature-assumed", "humidity-assumed", "wind-assumed"), codes(air));
    }

    /** What the warning says of carry and elevation is what the model does, from drive to wedge, in standard air. */
    @Test
    void theWordsOnElevationAreThoseOfTheModel() {
        String words =
                SessionAir.of(Session.builder().build()).warnings().get(0).message();
        assertTrue(words.contains("about 1 % for every 300 m (1,000 ft)"), words);
        double[][] shots = {{74.0, 11.0, 2_700.0}, {59.0, 14.0, 4_600.0}, {53.0, 17.0, 6_400.0}, {45.0, 25.0, 9_000.0}};
        double sum = 0.0;
        for (double[] shot : shots) {
            LaunchConditions launch = LaunchConditions.builder()
                    .ballSpeed(metersPerSecond(shot[0]))
                    .launchAngle(degrees(shot[1]))
                    .spinRate(SpinRate.ofRpm(shot[2]))
                    .build();
            FlightModel high = FlightModel.standard().withAir(Atmosphere.standardAt(meters(1_600.0)));
            double gain = high.fly(launch).carry().meters()
                            / FlightModel.standard().fly(launch).carry().meters()
                    - 1.0;
            assertEquals(1.0, 100.0 * gain / (1_600.0 / 300.0), 0.25, () -> launch + ": " + gain);
            sum += 100.0 * gain / (1_600.0 / 300.0) / shots.length;
        }
        assertEquals(1.0, sum, 0.1);
    }

    @Test
    void temperatureAndHumidityRefineTheStandardPressure() {
        SessionAir air = SessionAir.of(Session.builder()
                .elevation(feet(5_280.0))
                .temperature(fahrenheit(85.0))
                .humidity(0.3)
                .wind(degrees(0.0), mph(10.0))
                .build());
        Atmosphere expected = Atmosphere.standardAt(feet(5_280.0))
                .withTemperature(fahrenheit(85.0))
                .withRelativeHumidity(0.3);
        assertEquals(expected, air.atmosphere());
        assertEquals(List.of("pressure-assumed"), codes(air));
        assertEquals(-4.4704, air.wind().alongTarget(5.0), 1e-12); // 1 mph is 0.44704 m/s exactly
    }

    @Test
    void stationPressureAndAltimeterSettingAreToldApart() {
        Session.Builder day = Session.builder()
                .elevation(meters(1_655.0))
                .temperature(celsius(30.0))
                .humidity(0.2)
                .wind(degrees(90.0), metersPerSecond(0.0));
        SessionAir report =
                SessionAir.of(day.altimeterPressure(hectopascals(1_005.0)).build());
        assertEquals(
                Atmosphere.ofAltimeterSetting(hectopascals(1_005.0), meters(1_655.0), celsius(30.0), 0.2),
                report.atmosphere());
        assertEquals(List.of(), codes(report));
        assertTrue(report.description().endsWith("; calm"), report.description());

        SessionAir mistaken =
                SessionAir.of(day.stationPressure(hectopascals(1_005.0)).build());
        assertEquals(1_005.0, mistaken.atmosphere().pressure().hectopascals(), 1e-9);
        assertEquals(List.of("pressure-contradicts-elevation"), codes(mistaken));
    }

    @Test
    void altimeterSettingNeedsTheElevation() {
        Session session =
                Session.builder().altimeterPressure(hectopascals(1_005.0)).build();
        IllegalArgumentException e = assertThrows(IllegalArgumentException.class, () -> SessionAir.of(session));
        assertTrue(String.valueOf(e.getMessage()).contains("needs the elevation"), e.getMessage());
        assertTrue(String.valueOf(e.getMessage()).contains("1005.0 hPa (29.68 inHg)"), e.getMessage());
    }

    @Test
    void descriptionIsOneLineInBothFamiliesOfUnits() {
        SessionAir air = SessionAir.of(Session.builder()
                .elevation(meters(1_655.0))
                .temperature(celsius(30.0))
                .humidity(0.2)
                .stationPressure(hectopascals(830.0))
                .wind(degrees(30.0), mph(8.0))
                .build());
        String text = air.toString();
        for (String part : List.of(
                "30.0 degC (86.0 degF)",
                "1655 m (5430 ft)",
                "830.0 hPa (24.51 inHg)",
                "humidity 20 %",
                "3.6 m/s (8.0 mph) from 30 deg")) {
            assertTrue(text.contains(part), part + " in " + text);
        }
        assertEquals(1, text.lines().count());
    }
}
