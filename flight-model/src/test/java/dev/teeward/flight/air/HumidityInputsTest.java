package dev.teeward.flight.air;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.quantity.Pressure;
import dev.teeward.quantity.Temperature;
import org.junit.jupiter.api.Test;

/** Dew point, wet bulb and psychrometer, there and back; the published rows are in {@link AtmosphereChecksTest}. */
class HumidityInputsTest {
    private static Atmosphere air(double celsius, double humidity) {
        return Atmosphere.ofStationPressure(Pressure.ofHectopascals(950.0), Temperature.ofCelsius(celsius), humidity);
    }

    @Test
    void dewPointThereAndBack() {
        for (double t : new double[] {-10.0, 5.0, 20.0, 35.0}) {
            for (double h : new double[] {0.05, 0.4, 0.9, 1.0}) {
                Atmosphere air = air(t, h);
                Temperature dewPoint = air.dewPoint().orElseThrow();
                assertTrue(dewPoint.celsius() <= t + 1e-9);
                assertEquals(h, air.withDewPoint(dewPoint).relativeHumidity(), 1e-9);
            }
        }
        assertTrue(air(20.0, 0.0).dewPoint().isEmpty());
    }

    @Test
    void wetBulbThereAndBack() {
        for (double t : new double[] {12.0, 20.0, 35.0}) {
            for (double h : new double[] {0.3, 0.6, 0.95, 1.0}) {
                Atmosphere air = air(t, h);
                Temperature wet = air.wetBulb().orElseThrow();
                double dew = air.dewPoint().orElseThrow().celsius();
                assertTrue(dew <= wet.celsius() + 1e-9 && wet.celsius() <= t + 1e-9, "dew point, wet bulb, air");
                assertEquals(h, air.withWetBulb(wet).relativeHumidity(), 1e-9);
            }
        }
        assertTrue(air(3.0, 0.1).wetBulb().isEmpty(), "frozen");
        assertEquals(20.0, air(20.0, 1.0).wetBulb().orElseThrow().celsius(), 1e-9);
    }

    /** ASHRAE example 1 has W = 0.0065 at 40/20 degC where the psychrometer gives e = 970 Pa, W = 0.0060. */
    @Test
    void theTwoMeaningsOfWetBulbDiffer() {
        Atmosphere hot =
                Atmosphere.ofStationPressure(Pressure.ofHectopascals(1_013.25), Temperature.ofCelsius(40.0), 0.0);
        Temperature wet = Temperature.ofCelsius(20.0);
        double chart = hot.withWetBulb(wet).relativeHumidity();
        double instrument = hot.withPsychrometer(wet).relativeHumidity();
        assertEquals(0.0065 / 0.0060, chart / instrument, 0.03);
        assertEquals(1.0, hot.withPsychrometer(hot.temperature()).relativeHumidity(), 1e-12);
        assertEquals(1.0, hot.withWetBulb(hot.temperature()).relativeHumidity(), 1e-12);
    }

    @Test
    void refusesWetBulbsThatNoAirHas() {
        Atmosphere air = air(30.0, 0.5);
        for (double wet : new double[] {30.1, -0.1, 2.0}) {
            Temperature wrong = Temperature.ofCelsius(wet);
            assertThrows(IllegalArgumentException.class, () -> air.withWetBulb(wrong), () -> wet + " degC");
            assertThrows(IllegalArgumentException.class, () -> air.withPsychrometer(wrong), () -> wet + " degC");
        }
    }
}
