package dev.teeward.flight.study;

import dev.teeward.flight.Flight;
import dev.teeward.flight.FlightException;
import dev.teeward.flight.ground.TurfSpread;
import dev.teeward.quantity.Warning;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/** The library's own flights beside a launch, and what the derivatives there miss. */
final class Neighbourhood {
    private static final double STEP = Math.sqrt(3.0);
    private static final double CURVED = 0.1;

    /** What is left over by less than this share of an output's scale is rounding. */
    private static final double NEGLIGIBLE = 1e-9;

    private Neighbourhood() {}

    static void addCurvature(
            Situation situation,
            List<FlightOutput> outputs,
            FlightInput[] inputs,
            double[][] axes,
            double[][] along,
            double[] deviations,
            List<Warning> warnings) {
        double[] missed = new double[deviations.length];
        double[] centre = library(situation, outputs, inputs, new double[inputs.length]);
        for (int k = 0; k < axes.length; k++) {
            double[] above = library(situation, outputs, inputs, times(axes[k], STEP));
            double[] below = library(situation, outputs, inputs, times(axes[k], -STEP));
            if (above.length == 0 || below.length == 0) {
                warnings.add(
                        Warning.of(
                                "linearization-fails",
                                "within the tolerances an input leaves its range or the ball does not land; ask the simulation"));
                return;
            }
            for (int o = 0; o < missed.length; o++) {
                double even = (above[o] + below[o]) / 2.0 - centre[o];
                double odd = (above[o] - below[o]) / 2.0 - STEP * along[k][o];
                missed[o] = Math.hypot(missed[o], Math.hypot(even, odd) / STEP);
            }
        }
        for (FlightOutput output : outputs) {
            int o = output.place();
            // The library's flight is exact to a hundredth of a millimetre; less than that cannot be seen.
            boolean seen = missed[o] > Math.max(NEGLIGIBLE * output.scale(), 2e-5);
            if (seen && missed[o] > CURVED * deviations[o]) {
                warnings.add(Warning.of(
                        "linearization-fails",
                        String.format(
                                Locale.ROOT,
                                "the derivatives give %s a standard deviation of %.3g %s and miss %.3g %s of it; ask the"
                                        + " simulation",
                                output.key(),
                                deviations[o],
                                output.unit().symbol(),
                                missed[o],
                                output.unit().symbol())));
            }
        }
    }

    /** Adds what a turf that is not known well does to the standard deviations, by two flights beside the middle. */
    static void addTurf(
            Situation situation,
            List<FlightOutput> outputs,
            TurfSpread spread,
            double[] deviations,
            List<Warning> warnings) {
        FlightInput[] none = {};
        double[] firm = library(situation.onTurf(spread, STEP), outputs, none, new double[0]);
        double[] soft = library(situation.onTurf(spread, -STEP), outputs, none, new double[0]);
        double[] centre = library(situation, outputs, none, new double[0]);
        if (firm.length == 0 || soft.length == 0) {
            warnings.add(Warning.of(
                    "linearization-fails",
                    "within the spread of the turf the ball does not come to a known rest; ask the simulation"));
            return;
        }
        for (FlightOutput output : outputs) {
            int o = output.place();
            deviations[o] = Math.hypot(deviations[o], (firm[o] - soft[o]) / (2.0 * STEP));
            double even = Math.abs((firm[o] + soft[o]) / 2.0 - centre[o]) / STEP;
            if (output.needsGround() && even > CURVED * deviations[o]) {
                warnings.add(Warning.of(
                        "linearization-fails",
                        String.format(
                                Locale.ROOT,
                                "%s does not change evenly with the firmness of the turf, by %.3g m; ask the simulation",
                                output.key(),
                                even)));
            }
        }
    }

    private static double[] times(double[] vector, double factor) {
        return Arrays.stream(vector).map(v -> factor * v).toArray();
    }

    /** The outputs of the library's flight with errors added to the inputs; empty if there is no such flight. */
    static double[] library(Situation situation, List<FlightOutput> outputs, FlightInput[] inputs, double[] error) {
        Situation moved = situation;
        for (int i = 0; i < inputs.length; i++) {
            double si = situation.value(inputs[i]) + error[i];
            if (!(si >= inputs[i].lowest() && si <= inputs[i].highest())) {
                return new double[0];
            }
            moved = moved.with(inputs[i], si);
        }
        try {
            Flight flight = moved.model().fly(moved.launch());
            return outputs.stream().mapToDouble(o -> o.of(flight)).toArray();
        } catch (FlightException | IllegalArgumentException e) {
            return new double[0];
        }
    }
}
