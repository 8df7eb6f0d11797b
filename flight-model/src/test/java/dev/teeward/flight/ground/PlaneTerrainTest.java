package dev.teeward.flight.ground;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Length;
import org.junit.jupiter.api.Test;

class PlaneTerrainTest extends TerrainContract {
    @Override
    protected Terrain terrain() {
        return Terrain.plane(Angle.ofDegrees(3.0), Angle.ofDegrees(-2.0));
    }

    @Test
    void risesByTheTangent() {
        assertEquals(100.0 * Math.tan(Math.toRadians(3.0)), terrain().elevation(100.0, 0.0), 1e-12);
        assertEquals(-100.0 * Math.tan(Math.toRadians(2.0)), terrain().elevation(0.0, 100.0), 1e-12);
        assertEquals(-7.0, Terrain.level(Length.ofMeters(-7.0)).elevation(50.0, 3.0), 0.0);
        assertEquals(0.0, Terrain.level().elevation(50.0, 3.0), 0.0);
    }

    @Test
    void refusesWhatIsTooSteepOrTooHigh() {
        Angle flat = Angle.ofDegrees(0.0);
        assertThrows(IllegalArgumentException.class, () -> Terrain.plane(Angle.ofDegrees(46.0), flat));
        assertThrows(IllegalArgumentException.class, () -> Terrain.plane(flat, Angle.ofDegrees(-46.0)));
        assertThrows(IllegalArgumentException.class, () -> Terrain.level(Length.ofMeters(1001.0)));
    }
}
