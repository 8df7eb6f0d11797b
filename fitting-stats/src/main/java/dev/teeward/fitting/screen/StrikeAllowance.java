package dev.teeward.fitting.screen;

import dev.teeward.fitting.Metric;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * What the strike explains of the smash factor, taken out.
 *
 * <p>A free head turns under a strike off the centre of the face and gives the ball less speed, in the first order by the
 * square of the distance from the centre. Good strikes, normally spread, therefore give smash factors with a long tail to
 * the low side, which a test for normal data takes for mishits. Taken out is one slope on the squared distance, fitted by
 * least squares within the clubs; each residual is divided by sqrt(1 - leverage), which gives all the same variance.
 */
final class StrikeAllowance {
    private static final List<Metric> STRIKE = List.of(Metric.STRIKE_TOE, Metric.STRIKE_UP);

    /** A shot that decides the slope alone has no residual; a choice of this library. */
    private static final double LARGEST_LEVERAGE = 1.0 - 1e-9;

    private final Map<String, int[]> shots = new LinkedHashMap<>();
    private final Map<String, double[]> residuals = new LinkedHashMap<>();

    private StrikeAllowance() {}

    static boolean concerns(Metric metric) {
        return metric == Metric.SMASH_FACTOR;
    }

    /** Over the clubs with strikes for at least half of the shots that have the metric, and for enough of them. */
    static StrikeAllowance of(Screening screening, Metric metric) {
        StrikeAllowance allowance = new StrikeAllowance();
        Map<String, double[]> offsets = new LinkedHashMap<>();
        double cross = 0.0;
        double square = 0.0;
        for (Map.Entry<String, int[]> club : screening.byClub().entrySet()) {
            int[] all = screening.with(club.getValue(), List.of(metric));
            int[] struck = screening.with(all, STRIKE);
            if (struck.length < Screening.FEWEST || 2 * struck.length < all.length) {
                continue;
            }
            double[] x = centered(squaredDistances(screening, struck));
            double[] y = centered(screening.values(struck, metric));
            for (int i = 0; i < x.length; i++) {
                cross += x[i] * y[i];
                square += x[i] * x[i];
            }
            allowance.shots.put(club.getKey(), struck);
            allowance.residuals.put(club.getKey(), y);
            offsets.put(club.getKey(), x);
        }
        if (square > 0.0) {
            for (Map.Entry<String, double[]> club : offsets.entrySet()) {
                double[] x = club.getValue();
                double[] y = Objects.requireNonNull(allowance.residuals.get(club.getKey()));
                for (int i = 0; i < x.length; i++) {
                    double leverage = 1.0 / x.length + x[i] * x[i] / square;
                    y[i] = leverage < LARGEST_LEVERAGE
                            ? (y[i] - cross / square * x[i]) / Math.sqrt(1.0 - leverage)
                            : 0.0;
                }
            }
        }
        return allowance;
    }

    boolean covers(String club) {
        return shots.containsKey(club);
    }

    /** The shots of a club that is covered; never changed. */
    int[] shots(String club) {
        return Objects.requireNonNull(shots.get(club));
    }

    /** The residuals of a club that is covered, in the unit of the metric, one for each of its shots. */
    double[] residuals(String club) {
        return Objects.requireNonNull(residuals.get(club)).clone();
    }

    private static double[] squaredDistances(Screening screening, int[] shots) {
        double[] toe = screening.values(shots, Metric.STRIKE_TOE);
        double[] up = screening.values(shots, Metric.STRIKE_UP);
        double[] squares = new double[toe.length];
        for (int i = 0; i < toe.length; i++) {
            squares[i] = toe[i] * toe[i] + up[i] * up[i];
        }
        return squares;
    }

    private static double[] centered(double[] values) {
        return MishitScreen.standardized(values, 1.0);
    }
}
