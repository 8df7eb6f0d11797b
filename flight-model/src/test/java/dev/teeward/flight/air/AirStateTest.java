package dev.teeward.flight.air;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AirStateTest {
    @Test
    void isAValue() {
        AirState air = AirState.of(1.2, 1.8e-5);
        assertEquals(1.5e-5, air.kinematicViscosity(), 1e-19);
        assertEquals(air, AirState.of(1.2, 1.8e-5));
        assertEquals(air.hashCode(), AirState.of(1.2, 1.8e-5).hashCode());
        assertNotEquals(air, AirState.of(1.1, 1.8e-5));
        assertNotEquals(air, AirState.of(1.2, 1.9e-5));
        assertEquals("density 1.2 kg/m3, viscosity 1.8E-5 Pa s", air.toString());
    }

    @Test
    void inAVacuumTheKinematicViscosityIsInfinite() {
        assertEquals(Double.POSITIVE_INFINITY, AirState.of(0.0, 1.8e-5).kinematicViscosity());
    }

    @ParameterizedTest
    @CsvSource({"-0.1, 1.8e-5", "10.1, 1.8e-5", "NaN, 1.8e-5", "1.2, 0", "1.2, 2e-4", "1.2, NaN"})
    void refuses(double density, double viscosity) {
        assertThrows(IllegalArgumentException.class, () -> AirState.of(density, viscosity));
    }
}
