package dev.teeward.flight.air;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Speed;
import java.io.IOException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class UniformWindTest extends WindContract {
    @Override
    protected Wind wind() {
        return Wind.from(Angle.ofDegrees(30.0), Speed.ofMph(8.0));
    }

    /** The compass of the class text: named by where it comes from. */
    @ParameterizedTest
    @CsvSource({"0, -5, 0", "90, 0, -5", "180, 5, 0", "-90, 0, 5", "30, -4.330127018922193, -2.5"})
    void isNamedByWhereItComesFrom(double degrees, double along, double right) {
        Wind wind = Wind.from(Angle.ofDegrees(degrees), Speed.ofMetersPerSecond(5.0));
        assertEquals(along, wind.alongTarget(12.0), 1e-14);
        assertEquals(right, wind.towardsRight(12.0), 1e-14);
    }

    @Test
    void calmIsAtRest() throws IOException, ClassNotFoundException {
        assertEquals(0.0, Wind.calm().alongTarget(10.0));
        assertEquals(0.0, Wind.calm().towardsRight(10.0));
        assertEquals(Wind.calm(), Wind.from(Angle.ofDegrees(77.0), Speed.ofMph(0.0)));
        assertEquals(wind(), AtmosphereTest.serialized(wind()));
    }

    @ParameterizedTest
    @ValueSource(doubles = {-1.0, 50.1})
    void refusesSpeeds(double metersPerSecond) {
        Speed speed = Speed.ofMetersPerSecond(metersPerSecond);
        IllegalArgumentException refusal =
                assertThrows(IllegalArgumentException.class, () -> Wind.from(Angle.ofDegrees(0.0), speed));
        assertEquals(
                "wind speed must be in [0, 50] m/s (0-112 mph), but was " + speed
                        + "; give the direction it comes from as an angle instead of a sign",
                refusal.getMessage());
    }
}
