package dev.teeward.flight.study;

import dev.teeward.flight.aero.AerodynamicModel;
import dev.teeward.flight.aero.ModelDomain;

/** A ball whose drag and lift coefficients are constant multiples of another's. */
record ScaledCoefficients(AerodynamicModel base, double drag, double lift) implements AerodynamicModel {
    @Override
    public double dragCoefficient(double re, double s) {
        return drag * base.dragCoefficient(re, s);
    }

    @Override
    public double liftCoefficient(double re, double s) {
        return lift * base.liftCoefficient(re, s);
    }

    @Override
    public boolean smooth() {
        return base.smooth();
    }

    @Override
    public double momentSlope() {
        return base.momentSlope();
    }

    @Override
    public ModelDomain domain() {
        return base.domain();
    }

    @Override
    public String reference() {
        return base.reference() + ", drag times " + drag + ", lift times " + lift;
    }
}
