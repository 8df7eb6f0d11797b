package dev.teeward.fitting.screen;

import dev.teeward.fitting.internal.Data;
import dev.teeward.fitting.internal.SymmetricMatrix2;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.statistics.descriptive.Mean;
import org.apache.commons.statistics.distribution.BetaDistribution;

/**
 * The classical screen of two metrics: squared Mahalanobis distances from mean and covariance of all shots.
 *
 * <p>For normal data d^2 n / (n - 1)^2 follows a Beta distribution with 1 and (n - 3) / 2; the cut-off is its quantile at
 * 1 - a / n, times (n - 1)^2 / n, and p = min(1, n P(Beta &gt; largest)). A chi-square cut-off is wrong here: at n = 10 no
 * distance can exceed 8.1 (Gnanadesikan and Kettenring 1972, Biometrics 28, from memory; the cut-off values are checked by
 * the reference rows MAHA-crit).
 *
 * <p>Bad shots pull mean and covariance towards themselves and can hide; {@link MinimumCovarianceDeterminant} withstands
 * that, this test has the simpler null distribution.
 *
 * <pre>{@code
 * MahalanobisTest.Result r = MahalanobisTest.withDefaults().screen(carry, side);
 * r.squaredDistances();   // one for each shot
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class MahalanobisTest {
    private static final String NAME = "Mahalanobis distance";
    private static final MahalanobisTest DEFAULTS = new MahalanobisTest(0.05);

    private final double falseAlarmRate;

    private MahalanobisTest(double falseAlarmRate) {
        this.falseAlarmRate = falseAlarmRate;
    }

    /**
     * A false-alarm rate of 5 % for the set.
     *
     * @return the test
     */
    public static MahalanobisTest withDefaults() {
        return DEFAULTS;
    }

    /**
     * The same test with another false-alarm rate.
     *
     * @param rate the share of good sets that raise a flag, in (0, 1)
     * @return the test
     * @throws IllegalArgumentException if the rate is not in (0, 1)
     */
    public MahalanobisTest withFalseAlarmRate(double rate) {
        Data.checkRate(rate);
        return new MahalanobisTest(rate);
    }

    /**
     * The cut-off for a number of shots.
     *
     * @param n the number of shots, at least 4
     * @return the value that a squared distance must exceed, without a unit
     * @throws IllegalArgumentException if n is less than 4
     */
    public double cutOff(int n) {
        if (n < 4) {
            throw new IllegalArgumentException(
                    "Mahalanobis distances of two metrics need at least 4 shots, but n was " + n);
        }
        return largestPossible(n) * beta(n).inverseSurvivalProbability(falseAlarmRate / n);
    }

    /**
     * The largest squared distance that n shots can give.
     *
     * @param n the number of shots
     * @return (n - 1)^2 / n
     */
    public static double largestPossible(int n) {
        return (n - 1.0) * (n - 1.0) / n;
    }

    /**
     * Screens the shots of one set.
     *
     * @param first one metric, any one unit, at least 4 finite values
     * @param second the other metric, a value for each shot
     * @return the result
     * @throws IllegalArgumentException if there are fewer than 4 shots, the columns differ in length, or a value is not finite
     */
    public Result screen(double[] first, double[] second) {
        Data.check("values", first, 4);
        Data.check("values", second, 4);
        int n = first.length;
        if (second.length != n) {
            throw new IllegalArgumentException(
                    "metrics must have one value for each shot, but had " + n + " and " + second.length);
        }
        SymmetricMatrix2 covariance = SymmetricMatrix2.covarianceOf(first, second);
        double cutOff = cutOff(n);
        if (covariance.minorEigenvalue() == 0.0) {
            Warning flat = Warning.of(
                    "exact-fit",
                    "all shots lie on one point or line, so that distances across it have no scale; the readings may be"
                            + " rounded too coarsely");
            return new Result(new double[0], n, cutOff, 1.0, List.of(), List.of(flat));
        }
        double meanFirst = Mean.of(first).getAsDouble();
        double meanSecond = Mean.of(second).getAsDouble();
        double[] distances = new double[n];
        List<Flag> flags = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            distances[i] = covariance.inverseQuadraticForm(first[i] - meanFirst, second[i] - meanSecond);
            if (distances[i] > cutOff) {
                flags.add(new Flag(i, NAME, "squared distance", distances[i], cutOff, falseAlarmRate));
            }
        }
        double largest = Arrays.stream(distances).max().orElse(0.0);
        double p = Math.min(1.0, n * beta(n).survivalProbability(Math.min(1.0, largest / largestPossible(n))));
        return new Result(distances, n, cutOff, p, List.copyOf(flags), List.of());
    }

    private static BetaDistribution beta(int n) {
        return BetaDistribution.of(1.0, 0.5 * (n - 3.0));
    }

    /** What the screen found. Immutable and thread-safe. */
    public static final class Result {
        private final double[] distances;
        private final int n;
        private final double cutOff;
        private final double pValue;
        private final List<Flag> flags;
        private final List<Warning> warnings;

        private Result(
                double[] distances, int n, double cutOff, double pValue, List<Flag> flags, List<Warning> warnings) {
            this.distances = distances;
            this.n = n;
            this.cutOff = cutOff;
            this.pValue = pValue;
            this.flags = flags;
            this.warnings = warnings;
        }

        /**
         * How many shots were used: all of them.
         *
         * @return the number
         */
        public int n() {
            return n;
        }

        /**
         * The squared distances.
         *
         * @return one for each shot, without a unit; no entries if the shots lie on one line
         */
        public double[] squaredDistances() {
            return distances.clone();
        }

        /**
         * The cut-off for a squared distance.
         *
         * @return the value that must be exceeded to be flagged
         */
        public double cutOff() {
            return cutOff;
        }

        /**
         * The p value of the largest distance (Bonferroni bound, at most 1).
         *
         * @return the probability, in [0, 1]; 1 if the shots lie on one line
         */
        public double pValue() {
            return pValue;
        }

        /**
         * The shots that stand out.
         *
         * @return the flags in the order of the shots
         */
        public List<Flag> flags() {
            return flags;
        }

        /**
         * What to know about this result.
         *
         * @return the warnings, often none
         */
        public List<Warning> warnings() {
            return warnings;
        }
    }
}
