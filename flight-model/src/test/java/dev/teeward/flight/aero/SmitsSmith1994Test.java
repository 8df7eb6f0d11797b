package dev.teeward.flight.aero;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class SmitsSmith1994Test extends AerodynamicModelContract {
    @Override
    protected AerodynamicModel model() {
        return SmitsSmith1994.of();
    }

    /** The sine is 0, 1 and -1 at Re 9e4, 1.9e5 and -1e4 + 4e5; powers by hand: 0.1^0.4 = 10^-0.4 = 0.398107170553. */
    @Test
    void formulaAtStatesThatNeedNoCalculator() {
        AerodynamicModel model = model();
        assertEquals(0.24 + 0.018, model.dragCoefficient(9e4, 0.1), 1e-15);
        assertEquals(0.24 + 0.018 + 0.06, model.dragCoefficient(1.9e5, 0.1), 1e-15);
        assertEquals(0.24 + 0.018 - 0.06, model.dragCoefficient(3.9e5, 0.1), 1e-15);
        assertEquals(0.54 * 0.3981071705534972, model.liftCoefficient(1.5e5, 0.1), 1e-15);
        assertEquals(0.0, model.liftCoefficient(1.5e5, 0.0));
        assertEquals(0.54, model.liftCoefficient(1.5e5, 1.0));
    }

    /** The published law, d omega/dt = -2e-5 omega V/r (from memory), for the ball of the rules in air of 1.2 kg/m3. */
    @Test
    void momentEqualsThePublishedDecay() {
        double r = 0.02133;
        double mass = 0.04593;
        double inertia = 0.4 * mass * r * r;
        double speed = 70.0;
        double omega = 280.0;
        double cm = model().momentSlope() * r * omega / speed;
        double moment = 0.5 * 1.2 * Math.PI * r * r * speed * speed * 2.0 * r * cm;
        assertEquals(2e-5 * omega * speed / r, moment / inertia, 0.005 * 2e-5 * omega * speed / r);
    }

    @Test
    void rangeIsThatOfDrives() {
        ModelDomain domain = model().domain();
        assertTrue(domain.contains(1.9e5, 0.09));
        assertFalse(domain.contains(1.2e5, 0.42), "a wedge");
        assertFalse(domain.contains(5e4, 0.15), "a pitch");
        assertEquals("SmitsSmith1994", model().toString());
        assertTrue(model().reference().contains("1994"));
    }

    @Test
    void documentedExampleHolds() {
        assertEquals(0.3144, model().dragCoefficient(1.9e5, 0.08), 1e-12);
        assertEquals(0.1966, model().liftCoefficient(1.9e5, 0.08), 1e-4);
    }
}
