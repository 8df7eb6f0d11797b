package dev.teeward.examples;

import dev.teeward.flight.aero.AerodynamicModel;
import dev.teeward.flight.aero.ModelDomain;

/**
 * A whole aerodynamic model in one file: what a ball of one's own needs to fly.
 *
 * <pre>
 * Cd = 0.22 + 0.25 S/(1 + S)
 * Cl = 1.6 S/(1 + 4 S)
 * </pre>
 *
 * <p>The numbers are invented. Both formulas are finite for every state, because a slow ball reaches any spin ratio; where
 * they are to be trusted, the domain says, and every flight that leaves it carries a warning. Neither has a kink, and so it is
 * smooth, which spares its flights the short steps that kinks need.
 */
final class InventedBall implements AerodynamicModel {
    @Override
    public double dragCoefficient(double re, double s) {
        return 0.22 + 0.25 * s / (1.0 + s);
    }

    @Override
    public double liftCoefficient(double re, double s) {
        return 1.6 * s / (1.0 + 4.0 * s);
    }

    @Override
    public boolean smooth() {
        return true;
    }

    @Override
    public ModelDomain domain() {
        return ModelDomain.of(8e4, 2.2e5, 0.08, 0.50);
    }

    @Override
    public String reference() {
        return "invented, to show how a model is added";
    }
}
