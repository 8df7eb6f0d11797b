package dev.teeward.flight.air;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Length;
import dev.teeward.quantity.Speed;
import java.io.IOException;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class WindProfileTest {
    private static final Angle FROM = Angle.ofDegrees(60.0);
    private static final Speed FIVE = Speed.ofMetersPerSecond(5.0);

    @Nested
    class LogLawTest extends WindContract {
        @Override
        protected Wind wind() {
            return WindProfile.logLaw(FROM, FIVE, Roughness.ROUGHLY_OPEN);
        }
    }

    @Nested
    class PowerLawTest extends WindContract {
        @Override
        protected Wind wind() {
            return WindProfile.powerLaw(FROM, FIVE, 1.0 / 7.0);
        }
    }

    @ParameterizedTest
    @EnumSource(Roughness.class)
    void hasTheSpeedGivenAtTenMetersAndNoneAtTheGround(Roughness roughness) {
        WindProfile wind = WindProfile.logLaw(FROM, FIVE, roughness);
        double z0 = roughness.length().meters();
        assertEquals(5.0, wind.speedAt(Length.ofMeters(10.0)).metersPerSecond(), 1e-14);
        assertEquals(-5.0 * Math.cos(Math.PI / 3.0), wind.alongTarget(10.0), 1e-14);
        assertEquals(-5.0 * Math.sin(Math.PI / 3.0), wind.towardsRight(10.0), 1e-14);
        assertEquals(0.0, wind.speedAt(Length.ofMeters(z0)).metersPerSecond());
        assertEquals(0.0, Math.abs(wind.alongTarget(-3.0)));
        double top = Math.min(20.0 * z0, 10.0);
        double step = 1e-5 * top;
        double below = ratio(wind, top) - ratio(wind, top - step);
        double above = ratio(wind, top + step) - ratio(wind, top);
        assertEquals(above, below, 1e-4 * above, "slope at the lower end of the law");
        for (double z = 0.01; z < 60.0; z += 0.01) {
            assertTrue(ratio(wind, z + 0.01) >= ratio(wind, z), "grows with height");
        }
    }

    private static double ratio(WindProfile wind, double meters) {
        return wind.speedAt(Length.ofMeters(meters)).metersPerSecond() / 5.0;
    }

    /**
     * Below 20 z0 the value is that of the parabola, for z0 = 0.1 m at 1.5 m: with U = ln 20, U' h = 0.95, x = 1.4 / 1.9,
     * {@code (x (2 U - 0.95) + x^2 (0.95 - U)) / ln 100}; the logarithm itself would give 0.588.
     */
    @Test
    void fadesBelowTwentyRoughnessLengths() {
        WindProfile wind = WindProfile.logLaw(FROM, FIVE, Roughness.ROUGHLY_OPEN);
        double u = Math.log(20.0);
        double x = 1.4 / 1.9;
        assertEquals((x * (2.0 * u - 0.95) + x * x * (0.95 - u)) / Math.log(100.0), ratio(wind, 1.5), 1e-12);
    }

    @Test
    void powerLawFadesBelowOneMeter() {
        WindProfile wind = WindProfile.powerLaw(FROM, FIVE, 0.2);
        assertEquals(5.0, wind.speedAt(Length.ofMeters(10.0)).metersPerSecond(), 1e-14);
        assertEquals(Math.pow(0.1, 0.2), ratio(wind, 1.0), 1e-15);
        assertEquals(Math.pow(0.1, 0.2) * (0.5 * 1.8 - 0.25 * 0.8), ratio(wind, 0.5), 1e-15);
        assertEquals(0.0, ratio(wind, 0.0));
        assertEquals(0.0, ratio(wind, -1.0));
        WindProfile flat = WindProfile.powerLaw(FROM, FIVE, 0.0);
        assertEquals(5.0, flat.speedAt(Length.ofMeters(40.0)).metersPerSecond());
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.0, -1.0, 2.1})
    void refusesRoughness(double meters) {
        IllegalArgumentException refusal = assertThrows(
                IllegalArgumentException.class, () -> WindProfile.logLaw(FROM, FIVE, Length.ofMeters(meters)));
        assertTrue(String.valueOf(refusal.getMessage())
                .startsWith("roughnessLength must be in [0.00001, 2] m (0.0004 to 78.7 in), but was "
                        + AirLimits.plain(meters) + " m"));
    }

    @Test
    void refusesExponents() {
        assertEquals(
                "exponent must be in [0, 0.5], but was 7.0; for one in 7.0 use 1.0 / 7.0",
                refusal(7.0).getMessage());
        assertEquals(
                "exponent must be in [0, 0.5], but was NaN", refusal(Double.NaN).getMessage());
        assertEquals("exponent must be in [0, 0.5], but was -0.1", refusal(-0.1).getMessage());
        assertThrows(
                IllegalArgumentException.class, () -> WindProfile.powerLaw(FROM, Speed.ofMetersPerSecond(51.0), 0.1));
    }

    private static IllegalArgumentException refusal(double exponent) {
        return assertThrows(IllegalArgumentException.class, () -> WindProfile.powerLaw(FROM, FIVE, exponent));
    }

    @Test
    void isAValue() throws IOException, ClassNotFoundException {
        WindProfile wind = WindProfile.logLaw(FROM, FIVE, Roughness.OPEN);
        assertEquals(FROM, wind.direction());
        assertEquals(FIVE, wind.speedAtTenMeters());
        assertEquals(wind, WindProfile.logLaw(FROM, FIVE, Length.ofMeters(0.03)));
        assertEquals(
                wind.hashCode(), WindProfile.logLaw(FROM, FIVE, Roughness.OPEN).hashCode());
        assertNotEquals(wind, WindProfile.logLaw(FROM, FIVE, Roughness.ROUGH));
        assertNotEquals(wind, WindProfile.powerLaw(FROM, FIVE, 0.03));
        assertNotEquals(wind, WindProfile.logLaw(FROM, Speed.ofMph(5.0), Roughness.OPEN));
        assertNotEquals(wind, WindProfile.logLaw(Angle.ofDegrees(0.0), FIVE, Roughness.OPEN));
        assertEquals(wind, AtmosphereTest.serialized(wind));
        assertEquals(
                "wind from " + FROM + ", " + FIVE + " at 10 m, logarithmic over roughness length 0.03 m",
                wind.toString());
        assertEquals(
                "wind from " + FROM + ", " + FIVE + " at 10 m, power law with exponent 0.2",
                WindProfile.powerLaw(FROM, FIVE, 0.2).toString());
    }
}
