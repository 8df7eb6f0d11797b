package dev.teeward.flight.study;

import dev.teeward.flight.FlightException;
import dev.teeward.flight.LaunchConditions;
import dev.teeward.flight.LaunchTolerance;
import dev.teeward.flight.aero.AerodynamicModel;
import java.util.function.Function;

/**
 * What the errors of a measured launch do to the rows of its flight: for each number of the launch that has a tolerance, the
 * effect of one standard deviation s of it, {@code s (r(x + s) - r(x - s)) / 2s}, on the rows, in standard deviations of the
 * observations.
 */
final class LaunchErrors {
    private final Function<LaunchConditions, LaunchTolerance> tolerances;

    LaunchErrors(Function<LaunchConditions, LaunchTolerance> tolerances) {
        this.tolerances = tolerances;
    }

    /**
     * The effects on one flight.
     *
     * @param seen the flight
     * @param rows whose flights are flown
     * @param model the coefficients to fly with
     * @return one column for each number that has a tolerance
     */
    double[][] effects(ObservedFlight seen, Residuals rows, AerodynamicModel model) {
        Situation there = Situation.of(seen.conditions(), null, seen.launch());
        Tolerances known = Tolerances.of(tolerances.apply(seen.launch()));
        return known.inputs().stream()
                .map(input -> effect(seen, rows, model, there, input, known.standardDeviation(input)))
                .toArray(double[][]::new);
    }

    private static double[] effect(
            ObservedFlight seen,
            Residuals rows,
            AerodynamicModel model,
            Situation there,
            FlightInput input,
            double deviation) {
        double above = Math.min(input.highest(), there.value(input) + deviation);
        double below = Math.max(input.lowest(), there.value(input) - deviation);
        try {
            double[] up = rows.of(seen, there.with(input, above).launch(), model);
            double[] down = rows.of(seen, there.with(input, below).launch(), model);
            for (int i = 0; i < up.length; i++) {
                up[i] = deviation * (up[i] - down[i]) / (above - below);
            }
            return up;
        } catch (FlightException | IllegalArgumentException e) {
            throw new IllegalArgumentException(
                    "the tolerance of " + input.key() + ", " + deviation + " " + input.unit()
                            + ", takes a launch to where there is no flight (" + seen
                            + "); state a smaller one, or leave the flight out",
                    e);
        }
    }
}
