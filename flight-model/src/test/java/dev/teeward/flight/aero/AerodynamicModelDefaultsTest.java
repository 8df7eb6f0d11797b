package dev.teeward.flight.aero;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/** A plug-in of two methods, as the interface's page shows it, must inherit everything else. */
class AerodynamicModelDefaultsTest extends AerodynamicModelContract {
    @Override
    protected AerodynamicModel model() {
        return new AerodynamicModel() {
            @Override
            public double dragCoefficient(double re, double s) {
                return 0.47;
            }

            @Override
            public double liftCoefficient(double re, double s) {
                return 0.0;
            }
        };
    }

    @Test
    void defaultsAreTheDocumentedOnes() {
        assertEquals(0.010, model().momentSlope());
        assertEquals(ModelDomain.unbounded(), model().domain());
    }
}
