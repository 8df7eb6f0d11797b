package dev.teeward.flight.aero;

import java.util.Locale;
import java.util.Objects;
import java.util.Optional;

/** A model with drag and lift each multiplied by a factor. */
final class ScaledAerodynamics implements AerodynamicModel {
    private final AerodynamicModel model;
    private final double drag;
    private final double lift;

    ScaledAerodynamics(AerodynamicModel model, double drag, double lift) {
        this.model = Objects.requireNonNull(model, "model");
        this.drag = factor("drag", drag);
        this.lift = factor("lift", lift);
    }

    private static double factor(String name, double value) {
        if (!(value > 0.0 && value <= 10.0)) {
            throw new IllegalArgumentException(
                    name + " factor must be in (0, 10], but was " + value + "; 1 leaves the coefficient alone");
        }
        return value;
    }

    @Override
    public double dragCoefficient(double re, double s) {
        return drag * model.dragCoefficient(re, s);
    }

    @Override
    public double liftCoefficient(double re, double s) {
        return lift * model.liftCoefficient(re, s);
    }

    @Override
    public void coefficients(double[] re, double[] s, double[] drags, double[] lifts) {
        model.coefficients(re, s, drags, lifts);
        for (int i = 0; i < re.length; i++) {
            drags[i] = drag * drags[i];
            lifts[i] = lift * lifts[i];
        }
    }

    @Override
    public double momentSlope() {
        return model.momentSlope();
    }

    @Override
    public boolean smooth() {
        return model.smooth();
    }

    @Override
    public ModelDomain domain() {
        return model.domain();
    }

    @Override
    public Optional<CoefficientSpread> spread() {
        return model.spread();
    }

    @Override
    public String reference() {
        return String.format(Locale.ROOT, "%s, drag times %.4g, lift times %.4g", model.reference(), drag, lift);
    }

    @Override
    public String toString() {
        return reference();
    }
}
