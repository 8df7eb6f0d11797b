package dev.teeward.flight;

import dev.teeward.flight.aero.AerodynamicModel;
import dev.teeward.flight.aero.ModelDomain;

/** A ball like another, with its drag and lift multiplied. */
record BallSpread(AerodynamicModel ball, double drag, double lift) implements AerodynamicModel {
    @Override
    public double dragCoefficient(double re, double s) {
        return drag * ball.dragCoefficient(re, s);
    }

    @Override
    public double liftCoefficient(double re, double s) {
        return lift * ball.liftCoefficient(re, s);
    }

    @Override
    public boolean smooth() {
        return ball.smooth();
    }

    @Override
    public double momentSlope() {
        return ball.momentSlope();
    }

    @Override
    public ModelDomain domain() {
        return ball.domain();
    }

    @Override
    public String reference() {
        return ball.reference() + ", drag x " + drag + ", lift x " + lift;
    }
}
