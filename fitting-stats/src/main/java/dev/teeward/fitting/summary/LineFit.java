package dev.teeward.fitting.summary;

import java.util.Arrays;
import org.apache.commons.statistics.descriptive.Mean;

/** The least-squares line y = intercept + slope x, summed in two passes. Immutable, thread-safe. */
final class LineFit {
    private final int n;
    private final double meanX;
    private final double intercept;
    private final double slope;
    private final double sumX;
    private final double residualSquares;
    private final double explainedSquares;

    private LineFit(double[] x, double[] y) {
        n = x.length;
        double firstY = y[0];
        boolean level = Arrays.stream(y).allMatch(v -> v == firstY);
        meanX = Mean.of(x).getAsDouble();
        double meanY = Mean.of(y).getAsDouble();
        double xx = 0.0;
        double xy = 0.0;
        for (int i = 0; i < n; i++) {
            double dx = x[i] - meanX;
            xx += dx * dx;
            xy += dx * (y[i] - meanY);
        }
        sumX = xx;
        if (level) {
            // Rounding of the mean must not pass for a slope.
            slope = 0.0;
            intercept = firstY;
            residualSquares = 0.0;
            explainedSquares = 0.0;
            return;
        }
        double first = xx > 0.0 ? xy / xx : 0.0;
        // One step of refinement on the residuals, so that an intercept much smaller than y keeps its digits.
        double[] residuals = new double[n];
        double rest = 0.0;
        for (int i = 0; i < n; i++) {
            residuals[i] = Math.fma(-first, x[i], y[i]);
            rest += (x[i] - meanX) * residuals[i];
        }
        double correction = xx > 0.0 ? rest / xx : 0.0;
        slope = first + correction;
        intercept = Mean.of(residuals).getAsDouble() - correction * meanX;
        double squares = 0.0;
        for (int i = 0; i < n; i++) {
            double residual = y[i] - meanY - slope * (x[i] - meanX);
            squares += residual * residual;
        }
        residualSquares = squares;
        explainedSquares = slope * xy;
    }

    /** At least 3 points. */
    static LineFit of(double[] x, double[] y) {
        return new LineFit(x, y);
    }

    /** Whether all x are equal, so that there is no slope. */
    boolean flat() {
        return sumX == 0.0;
    }

    int degreesOfFreedom() {
        return n - 2;
    }

    double intercept() {
        return intercept;
    }

    double slope() {
        return slope;
    }

    double residualDeviation() {
        return Math.sqrt(residualSquares / (n - 2.0));
    }

    double slopeError() {
        return residualDeviation() / Math.sqrt(sumX);
    }

    double interceptError() {
        return residualDeviation() * Math.sqrt(1.0 / n + meanX * meanX / sumX);
    }

    /** The share of the variance of y that the line explains; 0 if y does not vary. */
    double determination() {
        double total = explainedSquares + residualSquares;
        return total > 0.0 ? explainedSquares / total : 0.0;
    }
}
