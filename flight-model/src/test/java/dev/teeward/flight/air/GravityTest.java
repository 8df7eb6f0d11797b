package dev.teeward.flight.air;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Length;
import org.junit.jupiter.api.Test;

/** The values of the formula are in {@link AtmosphereChecksTest}. */
class GravityTest {
    private static final Length SEA_LEVEL = Length.ofMeters(0.0);

    @Test
    void equatorToPoleIsHalfAPercent() {
        double equator = Gravity.at(Angle.ofDegrees(0.0), SEA_LEVEL);
        double pole = Gravity.at(Angle.ofDegrees(90.0), SEA_LEVEL);
        assertEquals(0.0053, pole / equator - 1.0, 0.00005);
        assertEquals(pole, Gravity.at(Angle.ofDegrees(-90.0), SEA_LEVEL));
        assertEquals(9.80665, Gravity.STANDARD); // 3rd CGPM, 1901
    }

    @Test
    void refusesWhatIsNotOnEarth() {
        Angle tooFar = Angle.ofDegrees(90.1);
        IllegalArgumentException latitude =
                assertThrows(IllegalArgumentException.class, () -> Gravity.at(tooFar, SEA_LEVEL));
        assertEquals(
                "latitude must be in [-90, 90] deg (-1.5708 to 1.5708 rad), but was " + tooFar, latitude.getMessage());
        assertThrows(IllegalArgumentException.class, () -> Gravity.at(Angle.ofDegrees(0.0), Length.ofMeters(9_001.0)));
    }
}
