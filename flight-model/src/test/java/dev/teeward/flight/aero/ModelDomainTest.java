package dev.teeward.flight.aero;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class ModelDomainTest {
    private static final ModelDomain DRIVES = ModelDomain.of(7e4, 2.1e5, 0.08, 0.20);

    @Test
    void endsBelongToTheDomain() {
        assertTrue(DRIVES.contains(7e4, 0.08));
        assertTrue(DRIVES.contains(2.1e5, 0.20));
        assertFalse(DRIVES.contains(Math.nextDown(7e4), 0.1));
        assertFalse(DRIVES.contains(Math.nextUp(2.1e5), 0.1));
        assertFalse(DRIVES.contains(1e5, Math.nextDown(0.08)));
        assertFalse(DRIVES.contains(1e5, Math.nextUp(0.20)));
        assertFalse(DRIVES.contains(Double.NaN, 0.1));
    }

    @Test
    void unboundedHoldsEverythingThatIsNotNegative() {
        assertTrue(ModelDomain.unbounded().contains(0.0, 0.0));
        assertTrue(ModelDomain.unbounded().contains(1e300, 1e300));
        assertFalse(ModelDomain.unbounded().contains(-1.0, 0.1));
    }

    @Test
    void emptyNegativeOrMissingRangesAreRefused() {
        assertThrows(IllegalArgumentException.class, () -> ModelDomain.of(2e5, 1e5, 0.0, 1.0));
        assertThrows(IllegalArgumentException.class, () -> ModelDomain.of(-1.0, 1e5, 0.0, 1.0));
        assertThrows(IllegalArgumentException.class, () -> ModelDomain.of(0.0, 1e5, 0.3, 0.3));
        assertThrows(IllegalArgumentException.class, () -> ModelDomain.of(0.0, 1e5, Double.NaN, 0.3));
    }

    @Test
    void equalByTheFourEnds() {
        ModelDomain same = ModelDomain.of(7e4, 2.1e5, 0.08, 0.20);
        assertEquals(DRIVES, same);
        assertEquals(DRIVES.hashCode(), same.hashCode());
        assertNotEquals(DRIVES, ModelDomain.of(7e4, 2.1e5, 0.08, 0.21));
        assertNotEquals(DRIVES, ModelDomain.unbounded());
        assertEquals("Re 70000.0 to 210000.0, S 0.08 to 0.2", DRIVES.toString());
    }
}
