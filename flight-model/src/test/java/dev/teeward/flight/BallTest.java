package dev.teeward.flight;

import static dev.teeward.quantity.Units.millimeters;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.flight.internal.RationalAerodynamics;
import dev.teeward.flight.internal.SineAerodynamics;
import dev.teeward.quantity.Mass;
import dev.teeward.quantity.Warning;
import java.util.List;
import org.junit.jupiter.api.Test;

class BallTest {
    private static final Ball BALL = Ball.of(new RationalAerodynamics());

    /** The rules: 1.620 oz is 45.93 g, 1.680 in is 42.67 mm, both to four digits (1 oz = 28.349523125 g, 1 in = 25.4 mm). */
    @Test
    void theStandardBallIsAtTheLimitsOfTheRules() {
        assertEquals(1.620, BALL.mass().ounces(), 5e-4);
        assertEquals(1.680, BALL.diameter().inches(), 5e-4);
        assertTrue(BALL.warnings().isEmpty());
    }

    /** 2/5 m r^2 of a uniform sphere: 0.4 * 45.93 g * (2.1335 cm)^2 = 83.63 g cm2. */
    @Test
    void theInertiaIsThatOfAUniformSphere() {
        assertEquals(83.63e-7, BALL.momentOfInertia(), 0.005e-7);
        Ball measured = BALL.withMomentOfInertia(80.0e-7);
        assertEquals(80.0e-7, measured.momentOfInertia(), 1e-18);
        assertEquals(0.4 * 80.0 / 83.63, measured.inertiaFactor(), 1e-4);
        assertEquals(0.38, BALL.withInertiaFactor(0.38).inertiaFactor());
    }

    @Test
    void ballsOutsideTheRulesSaySo() {
        Ball odd = BALL.withMass(Mass.ofGrams(46.0)).withDiameter(millimeters(41.1));
        assertEquals(
                List.of("ball-too-heavy", "ball-too-small"),
                odd.warnings().stream().map(Warning::code).toList());
        assertTrue(BALL.withMass(Mass.ofGrams(45.0)).warnings().isEmpty());
    }

    @Test
    void aBallCannotBeAnything() {
        assertThrows(IllegalArgumentException.class, () -> BALL.withMass(Mass.ofGrams(150.0)));
        assertThrows(IllegalArgumentException.class, () -> BALL.withDiameter(millimeters(20.0)));
        assertThrows(IllegalArgumentException.class, () -> BALL.withInertiaFactor(Double.NaN));
        String message = String.valueOf(assertThrows(IllegalArgumentException.class, () -> BALL.withInertiaFactor(0.1))
                .getMessage());
        assertTrue(message.startsWith("inertiaFactor must be in [0.2, 0.667]"), message);
    }

    @Test
    void aCopyWithOtherAerodynamicsKeepsTheRest() {
        SineAerodynamics other = new SineAerodynamics();
        assertEquals(other, BALL.withAerodynamics(other).aerodynamics());
        assertTrue(BALL.toString().contains("inertia factor 0.4"));
    }
}
