package dev.teeward.flight.study;

import dev.teeward.quantity.Interval;
import java.util.Arrays;

/** Where the profile of the misfit of one parameter crosses what a level allows. */
final class ProfileSearch {
    private static final int MOST_STEPS = 40;
    private static final double EXACT = 1e-4;

    private final FitProblem problem;
    private final double[] best;
    private final Covariance covariance;
    private final double quantile;
    private final double least;
    private final Information frozen;

    ProfileSearch(FitProblem problem, double[] best, Covariance covariance, double quantile) {
        this.problem = problem;
        this.best = best;
        this.covariance = covariance;
        this.quantile = quantile;
        least = problem.cost(best);
        double[][] columns = problem.jacobian(best);
        double[] unit = new double[columns[0].length];
        Arrays.fill(unit, 1.0);
        frozen = Information.of(columns, unit);
    }

    Interval interval(int j, double level) {
        double low = end(j, -1.0);
        double high = end(j, 1.0);
        return Interval.of(Math.min(low, best[j]), Math.max(high, best[j]), level);
    }

    /** Walks outwards by what the tangent says, then narrows the crossing down by the rule of false position. */
    private double end(int j, double sign) {
        ParametricAerodynamics.Parameter p = problem.family().parameters().get(j);
        double bound = sign < 0.0 ? p.lowest() : p.highest();
        double error = Math.sqrt(covariance.of(j, j));
        double room = sign * (bound - best[j]);
        double inside = 0.0;
        double insideMiss = -quantile;
        double step = Math.min(room, quantile * error);
        double[] start = best.clone();
        for (int i = 0; i < MOST_STEPS; i++) {
            if (!(step > 0.0)) {
                return sign * Double.POSITIVE_INFINITY;
            }
            double[] fitted = fitted(j, best[j] + sign * step, start);
            double miss = signedRoot(j, fitted) - quantile;
            if (miss >= 0.0) {
                return best[j] + sign * narrowed(j, sign, inside, insideMiss, step, miss, fitted, error);
            }
            if (step >= room) {
                return sign * Double.POSITIVE_INFINITY;
            }
            inside = step;
            insideMiss = miss;
            start = fitted;
            step = Math.min(room, 1.3 * step + 0.1 * error);
        }
        return sign * Double.POSITIVE_INFINITY;
    }

    private double narrowed(
            int j, double sign, double from, double fromMiss, double to, double toMiss, double[] start, double error) {
        double low = from;
        double lowMiss = fromMiss;
        double high = to;
        double highMiss = toMiss;
        double[] near = start;
        for (int i = 0; i < MOST_STEPS && high - low > EXACT * error; i++) {
            double at = high - highMiss * (high - low) / (highMiss - lowMiss);
            near = fitted(j, best[j] + sign * at, near);
            double miss = signedRoot(j, near) - quantile;
            if (Math.abs(miss) < EXACT) {
                return at;
            }
            // Illinois: halve the end that stays, so that both ends close in.
            if (miss > 0.0) {
                high = at;
                highMiss = miss;
                lowMiss /= 2.0;
            } else {
                low = at;
                lowMiss = miss;
                highMiss /= 2.0;
            }
        }
        return 0.5 * (low + high);
    }

    private double[] fitted(int j, double value, double[] start) {
        double[] point = start.clone();
        point[j] = value;
        return problem.fit(point, j);
    }

    /** The distance from the best fit in standard errors, by the misfit. */
    private double signedRoot(int j, double[] point) {
        double worse = Math.max(0.0, problem.cost(point) - least);
        return Math.sqrt(worse * frozen.inverse(j, j) / covariance.of(j, j));
    }
}
