package dev.teeward.flight.air;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.quantity.Length;
import dev.teeward.quantity.Pressure;
import dev.teeward.quantity.Temperature;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.ObjectInputStream;
import java.io.ObjectOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AtmosphereTest {
    private static final Pressure STATION = Pressure.ofHectopascals(940.0);
    private static final Temperature WARM = Temperature.ofCelsius(28.0);

    @Test
    void seaLevelIsTheStandard() {
        Atmosphere air = Atmosphere.seaLevel();
        assertEquals(101_325.0, air.pressure().pascals()); // ISO 2533:1975
        assertEquals(15.0, air.temperature().celsius(), 1e-12);
        assertEquals(0.0, air.relativeHumidity());
        assertEquals(1.225, air.density(), 1.225e-6);
        assertEquals(1.7894e-5, air.state().dynamicViscosity(), 0.5e-9); // ISO 2533:1975, sea level
        assertEquals(1.4607e-5, air.state().kinematicViscosity(), 0.5e-9);
        assertEquals(air, Atmosphere.standardAt(Length.ofMeters(0.0)));
    }

    /** ICAO standard atmosphere, Doc 7488 (1993), by geopotential height; values from memory. */
    @ParameterizedTest
    @CsvSource({"0, 288.150, 1013.25", "1000, 281.650, 898.746", "2000, 275.150, 794.952", "3000, 268.650, 701.085"})
    void agreesWithTheIcaoTable(double meters, double kelvins, double hectopascals) {
        Atmosphere air = Atmosphere.standardAt(Length.ofMeters(meters));
        assertEquals(kelvins, air.temperature().kelvins(), 0.0005);
        assertEquals(hectopascals, air.pressure().hectopascals(), 0.0005);
    }

    @Test
    void aGivenTemperatureMakesItARealGas() {
        Atmosphere standard = Atmosphere.seaLevel();
        Atmosphere real = standard.withTemperature(standard.temperature());
        assertEquals(4.3e-4, real.density() / standard.density() - 1.0, 0.1e-4);
        assertNotEquals(standard, real);
        assertEquals(real, standard.withRelativeHumidity(0.0));
        assertEquals(real, Atmosphere.ofStationPressure(standard.pressure(), standard.temperature(), 0.0));
    }

    @Test
    void altimeterSettingIsReducedToTheStation() {
        Pressure qnh = Pressure.ofHectopascals(1_005.0);
        Atmosphere right = Atmosphere.ofAltimeterSetting(qnh, Length.ofMeters(1_655.0), WARM, 0.2);
        Atmosphere wrong = Atmosphere.ofStationPressure(qnh, WARM, 0.2);
        assertEquals(0.22, wrong.density() / right.density() - 1.0, 0.005);
        assertEquals(1_005.0, right.altimeterSetting(Length.ofMeters(1_655.0)).hectopascals(), 1e-6);
    }

    /** By the definition of the dew point: the vapour of saturated air at 12 degC, heated to 28 degC. */
    @Test
    void dewPointGivesTheHumidity() {
        Temperature dewPoint = Temperature.ofCelsius(12.0);
        Atmosphere air = Atmosphere.ofStationPressureAndDewPoint(STATION, WARM, dewPoint);
        // Ratio of Goff-Gratch-like saturation pressures, Buck (1996): e(12) / e(28), which leaves out the 2e-4 of f.
        assertEquals(buck(12.0) / buck(28.0), air.relativeHumidity(), 4e-4);
        assertEquals(air, Atmosphere.ofStationPressure(STATION, WARM, 0.9).withDewPoint(dewPoint));
        assertEquals(1.0, air.withDewPoint(WARM).relativeHumidity());
        Atmosphere report = Atmosphere.ofAltimeterSettingAndDewPoint(
                Pressure.ofHectopascals(1_013.25), Length.ofMeters(0.0), WARM, dewPoint);
        assertEquals(buck(12.0) / buck(28.0), report.relativeHumidity(), 4e-4);
    }

    private static double buck(double celsius) {
        return 6.1121 * Math.exp((18.678 - celsius / 234.5) * celsius / (257.14 + celsius));
    }

    @ParameterizedTest
    @CsvSource({
        "45, '45.0; 45 percent is 0.45'",
        "100, '100.0; 100 percent is 1'",
        "1.5, '1.5; 1.5 percent is 0.015'",
        "-0.1, -0.1",
        "101, 101.0",
        "NaN, NaN"
    })
    void refusesHumidity(double value, String end) {
        String expected = "relativeHumidity must be in [0, 1] (0 to 100 percent), but was " + end;
        refuses(expected, () -> Atmosphere.ofStationPressure(STATION, WARM, value));
        refuses(expected, () -> Atmosphere.seaLevel().withRelativeHumidity(value));
        refuses(
                expected,
                () -> Atmosphere.ofAltimeterSetting(
                        Pressure.ofHectopascals(1_010.0), Length.ofMeters(0.0), WARM, value));
    }

    @Test
    void refusesStationPressureWithAGuessAtTheUnit() {
        String range = "stationPressure must be in [300, 1100] hPa (8.85899 to 32.483 inHg), but was ";
        refusesPressure(
                range + "10.13 hPa (0.299139 inHg); for hPa use Pressure.ofHectopascals(1013)",
                Pressure.ofPascals(1_013.0));
        refusesPressure(
                range + "29.92 hPa (0.883537 inHg); for inHg use Pressure.ofInchesOfMercury(29.92)",
                Pressure.ofHectopascals(29.92));
        refusesPressure(
                range + "0.95 hPa (0.0280535 inHg); for kPa use Pressure.ofKilopascals(95)", Pressure.ofPascals(95.0));
        refusesPressure(
                range + "101325 hPa (2992.13 inHg); for Pa use Pressure.ofPascals(101325)",
                Pressure.ofHectopascals(101_325.0));
        refusesPressure(range + "0 hPa (0 inHg)", Pressure.ofPascals(0.0));
    }

    private static void refusesPressure(String expected, Pressure value) {
        refuses(expected, () -> Atmosphere.ofStationPressure(value, WARM, 0.5));
    }

    @Test
    void refusesAStationPressureAsAltimeterSetting() {
        refuses(
                "altimeterSetting must be in [850, 1100] hPa (25.1005 to 32.483 inHg), but was 820 hPa (24.2146 inHg);"
                        + " a pressure read at the place itself belongs in Atmosphere.ofStationPressure",
                () -> Atmosphere.ofAltimeterSetting(
                        Pressure.ofHectopascals(820.0), Length.ofMeters(1_655.0), WARM, 0.5));
        IllegalArgumentException tooHigh = assertThrows(
                IllegalArgumentException.class,
                () -> Atmosphere.ofAltimeterSetting(
                        Pressure.ofHectopascals(1_090.0), Length.ofMeters(-400.0), WARM, 0.5));
        assertTrue(String.valueOf(tooHigh.getMessage()).startsWith("stationPressure must be in [300, 1100] hPa"));
    }

    @Test
    void refusesTemperatureWithAGuessAtTheUnit() {
        String range = "temperature must be in [-60, 60] degC (-76 to 140 degF), but was ";
        refusesTemperature(
                range + "85 degC (185 degF); for degF use Temperature.ofFahrenheit(85)", Temperature.ofCelsius(85.0));
        refusesTemperature(
                range + "293.15 degC (559.67 degF); for K use Temperature.ofKelvins(293.15)",
                Temperature.ofCelsius(293.15));
        refusesTemperature(
                range + "-253.15 degC (-423.67 degF); for degC use Temperature.ofCelsius(20)",
                Temperature.ofKelvins(20.0));
        refusesTemperature(range + "726.85 degC (1340.33 degF)", Temperature.ofKelvins(1_000.0));
    }

    private static void refusesTemperature(String expected, Temperature value) {
        refuses(expected, () -> Atmosphere.ofStationPressure(STATION, value, 0.5));
        refuses(expected, () -> Atmosphere.seaLevel().withTemperature(value));
    }

    @Test
    void refusesADewPointAboveTheTemperature() {
        refuses(
                "dewPoint must not be above the temperature of 301.15 K (82.4 degF), but was 303.15 K (86 degF);"
                        + " perhaps the two are exchanged",
                () -> Atmosphere.ofStationPressureAndDewPoint(STATION, WARM, Temperature.ofCelsius(30.0)));
        refuses(
                "dewPoint must be in [-60, 60] degC (-76 to 140 degF), but was -80 degC (-112 degF)",
                () -> Atmosphere.seaLevel().withDewPoint(Temperature.ofCelsius(-80.0)));
    }

    @Test
    void refusesElevation() {
        refuses(
                "elevation must be in [-500, 9000] m (-1640 to 29527 ft), but was 10000 m (32808.4 ft);"
                        + " for feet use Length.ofFeet(10000)",
                () -> Atmosphere.standardAt(Length.ofMeters(10_000.0)));
        refuses(
                "elevation must be in [-500, 9000] m (-1640 to 29527 ft), but was 50000 m (164042 ft)",
                () -> Atmosphere.seaLevel().altimeterSetting(Length.ofMeters(50_000.0)));
    }

    private static void refuses(String expected, Executable action) {
        assertEquals(
                expected, assertThrows(IllegalArgumentException.class, action).getMessage());
    }

    @Test
    void isAValue() throws IOException, ClassNotFoundException {
        Atmosphere air = Atmosphere.ofStationPressure(STATION, WARM, 0.9);
        Atmosphere same = Atmosphere.ofStationPressure(STATION, WARM, 0.9);
        assertEquals(air, same);
        assertEquals(air.hashCode(), same.hashCode());
        assertNotEquals(air, air.withTemperature(Temperature.ofCelsius(27.0)));
        assertNotEquals(air, air.withRelativeHumidity(0.8));
        assertNotEquals(air, Atmosphere.ofStationPressure(Pressure.ofHectopascals(941.0), WARM, 0.9));
        assertNotEquals(air, new Object());
        assertEquals(Atmosphere.ofStationPressure(STATION, WARM, -0.0), air.withRelativeHumidity(0.0));
        assertEquals(
                "station pressure 94000 Pa (27.7582 inHg), temperature 301.15 K (82.4 degF), relative humidity 0.9",
                air.toString());
        assertTrue(Atmosphere.seaLevel().toString().startsWith("standard atmosphere, station pressure 101325 Pa"));
        assertEquals(air, serialized(air));
        assertEquals(air.state(), serialized(air.state()));
    }

    static Object serialized(Object value) throws IOException, ClassNotFoundException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ObjectOutputStream out = new ObjectOutputStream(bytes)) {
            out.writeObject(value);
        }
        try (ObjectInputStream in = new ObjectInputStream(new ByteArrayInputStream(bytes.toByteArray()))) {
            return in.readObject();
        }
    }
}
