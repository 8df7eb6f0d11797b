package dev.teeward.flight.air;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.quantity.Length;
import dev.teeward.quantity.Pressure;
import dev.teeward.quantity.Temperature;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;

class AtmospherePropertiesTest {
    private static Atmosphere air(double hectopascals, double celsius, double humidity) {
        return Atmosphere.ofStationPressure(
                Pressure.ofHectopascals(hectopascals), Temperature.ofCelsius(celsius), humidity);
    }

    @Property
    void densityFallsWithTemperatureAndHumidityAndRisesWithPressure(
            @ForAll @DoubleRange(min = 500.0, max = 1_090.0) double hectopascals,
            @ForAll @DoubleRange(min = -30.0, max = 45.0) double celsius,
            @ForAll @DoubleRange(min = 0.0, max = 0.9) double humidity) {
        double density = air(hectopascals, celsius, humidity).density();
        assertTrue(air(hectopascals, celsius + 0.1, humidity).density() < density);
        assertTrue(air(hectopascals, celsius, humidity + 0.1).density() < density);
        assertTrue(air(hectopascals + 1.0, celsius, humidity).density() > density);
    }

    @Property
    void densityIsFiniteAndPositiveForAllAirThatIsAccepted(
            @ForAll @DoubleRange(min = 300.0, max = 1_100.0) double hectopascals,
            @ForAll @DoubleRange(min = -60.0, max = 60.0) double celsius,
            @ForAll @DoubleRange(min = 0.0, max = 1.0) double humidity) {
        Atmosphere air = air(hectopascals, celsius, humidity);
        // The ideal gas law for dry air, less 38 percent of the vapour's share, is within a percent: no sign or unit
        // slip.
        double vapor = MoistAir.vaporFraction(
                air.pressure().pascals(), air.temperature().kelvins(), humidity);
        double ideal = air.pressure().pascals() / (287.05 * air.temperature().kelvins()) * (1.0 - 0.378 * vapor);
        assertEquals(ideal, air.density(), 0.02 * ideal);
        assertTrue(Double.isFinite(air.densityAltitude().meters()));
    }

    @Property
    void standardAirThinsWithHeight(@ForAll @DoubleRange(min = -500.0, max = 8_990.0) double meters) {
        Atmosphere low = Atmosphere.standardAt(Length.ofMeters(meters));
        Atmosphere high = Atmosphere.standardAt(Length.ofMeters(meters + 1.0));
        assertTrue(high.density() < low.density());
        assertTrue(high.pressure().compareTo(low.pressure()) < 0);
    }

    @Property
    void densityAltitudeOfStandardAirIsItsElevation(@ForAll @DoubleRange(min = -500.0, max = 9_000.0) double meters) {
        assertEquals(
                meters,
                Atmosphere.standardAt(Length.ofMeters(meters)).densityAltitude().meters(),
                1e-7);
    }

    @Property
    void altimeterSettingComesBack(
            @ForAll @DoubleRange(min = 900.0, max = 1_060.0) double hectopascals,
            @ForAll @DoubleRange(min = -300.0, max = 5_000.0) double meters) {
        Length elevation = Length.ofMeters(meters);
        Pressure qnh = Pressure.ofHectopascals(hectopascals);
        Atmosphere air = Atmosphere.ofAltimeterSetting(qnh, elevation, Temperature.ofCelsius(20.0), 0.5);
        assertEquals(1.0, air.altimeterSetting(elevation).pascals() / qnh.pascals(), 1e-9);
    }

    @Property
    void atSeaLevelTheAltimeterSettingIsThePressure(
            @ForAll @DoubleRange(min = 850.0, max = 1_100.0) double hectopascals) {
        Atmosphere air = Atmosphere.ofAltimeterSetting(
                Pressure.ofHectopascals(hectopascals), Length.ofMeters(0.0), Temperature.ofCelsius(20.0), 0.5);
        assertEquals(hectopascals, air.pressure().hectopascals(), 1e-12);
    }

    @Property
    void standardSettingGivesTheStandardPressure(@ForAll @DoubleRange(min = -500.0, max = 9_000.0) double meters) {
        Length elevation = Length.ofMeters(meters);
        Atmosphere report = Atmosphere.ofAltimeterSetting(
                Pressure.ofHectopascals(1_013.25), elevation, Temperature.ofCelsius(20.0), 0.5);
        double standard = Atmosphere.standardAt(elevation).pressure().pascals();
        assertEquals(1.0, report.pressure().pascals() / standard, 1e-12);
    }

    @Property
    void geopotentialComesBack(@ForAll @DoubleRange(min = -2_000.0, max = 11_000.0) double meters) {
        assertEquals(meters, StandardAtmosphere.geometric(StandardAtmosphere.geopotential(meters)), 1e-8);
    }

    @Property
    void humidityFromADewPointIsAFractionAndGrowsWithIt(
            @ForAll @DoubleRange(min = -20.0, max = 45.0) double celsius,
            @ForAll @DoubleRange(min = 0.5, max = 30.0) double spread) {
        Atmosphere air = air(900.0, celsius, 0.0);
        double humidity =
                air.withDewPoint(Temperature.ofCelsius(celsius - spread)).relativeHumidity();
        double damper =
                air.withDewPoint(Temperature.ofCelsius(celsius - spread + 0.1)).relativeHumidity();
        assertTrue(humidity > 0.0 && humidity < damper && damper < 1.0);
    }
}
