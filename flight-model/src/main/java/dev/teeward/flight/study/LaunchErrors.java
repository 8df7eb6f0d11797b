package dev.teeward.flight.study;

import dev.teeward.flight.FlightException;
import dev.teeward.flight.LaunchConditions;
import dev.teeward.flight.LaunchTolerance;
import dev.teeward.flight.aero.AerodynamicModel;
import java.util.function.Function;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.RealMatrix;

/**
 * What the errors of a measured launch do to the rows of its flight, and how to take it out of them.
 *
 * <p>The rows r, in standard deviations of the observations, then have the covariance {@code S = I + A A'}, where a column of A is
 * the effect of one standard deviation of one number of the launch, {@code s (r(x + s) - r(x - s)) / 2s}; and with
 * {@code S = L L'} the rows {@code L^-1 r} have covariance I.
 */
final class LaunchErrors {
    private final Function<LaunchConditions, LaunchTolerance> tolerances;

    LaunchErrors(Function<LaunchConditions, LaunchTolerance> tolerances) {
        this.tolerances = tolerances;
    }

    /**
     * The factor L of one flight.
     *
     * @param seen the flight
     * @param rows whose flights are flown
     * @param model the coefficients to fly with
     */
    double[][] factor(ObservedFlight seen, Residuals rows, AerodynamicModel model) {
        Situation there = Situation.of(seen.conditions(), null, seen.launch());
        Tolerances known = Tolerances.of(tolerances.apply(seen.launch()));
        int n = Residuals.rows(seen);
        RealMatrix covariance = new Array2DRowRealMatrix(n, n);
        for (int i = 0; i < n; i++) {
            covariance.setEntry(i, i, 1.0);
        }
        for (FlightInput input : known.inputs()) {
            double[] effect = effect(seen, rows, model, there, input, known.standardDeviation(input));
            for (int i = 0; i < n; i++) {
                for (int j = 0; j < n; j++) {
                    covariance.addToEntry(i, j, effect[i] * effect[j]);
                }
            }
        }
        return new CholeskyDecomposition(covariance, 1e-12, 0.0).getL().getData();
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

    /** Solves {@code L z = r} for rows of one flight, which become z. */
    static void whiten(double[][] factor, double[] rows) {
        for (int i = 0; i < factor.length; i++) {
            double left = rows[i];
            for (int j = 0; j < i; j++) {
                left -= factor[i][j] * rows[j];
            }
            rows[i] = left / factor[i][i];
        }
    }
}
