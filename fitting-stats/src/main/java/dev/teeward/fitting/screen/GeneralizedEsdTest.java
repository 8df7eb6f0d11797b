package dev.teeward.fitting.screen;

import dev.teeward.fitting.internal.Data;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.statistics.descriptive.Mean;
import org.apache.commons.statistics.descriptive.StandardDeviation;
import org.apache.commons.statistics.distribution.TDistribution;

/**
 * The generalized extreme studentized deviate test for up to r outliers in one metric.
 *
 * <p>R_1 is the largest |x - mean| / s; that value is set aside and R_2 found among the rest, and so on to R_r. The number of
 * outliers is the <em>largest</em> i with R_i above lambda_i = (n - i) t / sqrt((n - i - 1 + t^2)(n - i + 1)), where t is the
 * quantile of Student's t with n - i - 1 degrees of freedom at 1 - a / (2 (n - i + 1)); stopping at the first i that fails
 * would let two outliers hide each other (Rosner 1983, Technometrics 25; NIST/SEMATECH e-Handbook 1.3.5.17.3).
 *
 * <p>The critical values are approximate: very good from n = 25, fair from 15 (NIST/SEMATECH e-Handbook). With the defaults
 * at the nominal 5 %, good sets raise a flag in 4.8 % (n = 5), 5.1 % (8), 6.8 % (10), 6.3 % (12), 6.7 % (15), 6.2 % (20) and
 * 5.7 % (30) of cases: own simulation, 20,000 normal sets each. Where an exact rate matters more than several outliers, take
 * {@link GrubbsTest}. Below 25 shots the result carries a warning; the rate in a flag is the nominal one.
 *
 * <pre>{@code
 * GeneralizedEsdTest.Result r = GeneralizedEsdTest.withDefaults().screen(carries);
 * r.outliers();    // how many
 * r.flags();       // which ones
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class GeneralizedEsdTest {
    private static final String NAME = "generalized ESD test";
    private static final int GOOD_FROM = 25;
    private static final GeneralizedEsdTest DEFAULTS = new GeneralizedEsdTest(0.05, 0);

    private final double falseAlarmRate;

    /** 0 means by the number of shots. */
    private final int maxOutliers;

    private GeneralizedEsdTest(double falseAlarmRate, int maxOutliers) {
        this.falseAlarmRate = falseAlarmRate;
        this.maxOutliers = maxOutliers;
    }

    /**
     * A nominal false-alarm rate of 5 %, and up to n / 5 outliers but no fewer than 1 and no more than 10: 2 of 10 shots, 4 of
     * 20. That share is a choice of this library.
     *
     * @return the test
     */
    public static GeneralizedEsdTest withDefaults() {
        return DEFAULTS;
    }

    /**
     * The same test with another nominal false-alarm rate.
     *
     * @param rate the share of good sets that raise a flag, in (0, 1)
     * @return the test
     * @throws IllegalArgumentException if the rate is not in (0, 1)
     */
    public GeneralizedEsdTest withFalseAlarmRate(double rate) {
        Data.checkRate(rate);
        return new GeneralizedEsdTest(rate, maxOutliers);
    }

    /**
     * The same test for at most r outliers.
     *
     * @param r the largest number of outliers looked for, at least 1; at most n - 2 when it is used
     * @return the test
     * @throws IllegalArgumentException if r is less than 1
     */
    public GeneralizedEsdTest withMaxOutliers(int r) {
        if (r < 1) {
            throw new IllegalArgumentException("maximum number of outliers must be at least 1, but was " + r);
        }
        return new GeneralizedEsdTest(falseAlarmRate, r);
    }

    /**
     * Tests one set of values.
     *
     * @param values the values of one metric, any one unit, at least 3, all finite
     * @return the result
     * @throws IllegalArgumentException if there are fewer than 3 values, one is not finite, or more outliers are asked for
     *     than n - 2
     */
    public Result screen(double... values) {
        Data.check("values", values, 3);
        int n = values.length;
        int r = maxOutliers > 0 ? maxOutliers : Math.max(1, Math.min(10, n / 5));
        if (r > n - 2) {
            throw new IllegalArgumentException(
                    "maximum number of outliers must be in [1, " + (n - 2) + "] for " + n + " shots, but was " + r);
        }
        double[] rest = values.clone();
        int[] origin = new int[n];
        Arrays.setAll(origin, i -> i);
        List<Step> steps = new ArrayList<>(r);
        int outliers = 0;
        for (int i = 1; i <= r; i++) {
            int size = n - i + 1;
            double[] left = Arrays.copyOf(rest, size);
            double lambda = criticalValue(n, i, falseAlarmRate);
            if (Data.allEqual(left)) {
                break;
            }
            double mean = Mean.of(left).getAsDouble();
            double sd = StandardDeviation.of(left).getAsDouble();
            int farthest = 0;
            for (int j = 1; j < size; j++) {
                if (Math.abs(left[j] - mean) > Math.abs(left[farthest] - mean)) {
                    farthest = j;
                }
            }
            double deviate = Math.abs(left[farthest] - mean) / sd;
            steps.add(new Step(origin[farthest], values[origin[farthest]], deviate, lambda));
            if (deviate > lambda) {
                outliers = i;
            }
            // The last one fills the gap, so that what is left stays in front.
            rest[farthest] = rest[size - 1];
            origin[farthest] = origin[size - 1];
        }
        List<Flag> flags = steps.stream()
                .limit(outliers)
                .map(s -> new Flag(s.index(), NAME, "R", s.statistic(), s.criticalValue(), falseAlarmRate))
                .toList();
        List<Warning> warnings = new ArrayList<>();
        if (steps.isEmpty()) {
            warnings.add(Flag.noSpread());
        } else if (n < GOOD_FROM) {
            warnings.add(Warning.of(
                    "approximate-critical-values",
                    "the critical values of the generalized ESD test are approximate below " + GOOD_FROM
                            + " shots, and " + n + " were used: at a nominal 5 % up to 7 % of good sets raise a flag"));
        }
        return new Result(n, steps, flags, List.copyOf(warnings));
    }

    /**
     * The critical value lambda of one step.
     *
     * @param n the number of shots
     * @param i the step, from 1, at most n - 2
     * @param falseAlarmRate the nominal rate, in (0, 1)
     * @return the value that R_i must exceed
     */
    private static double criticalValue(int n, int i, double falseAlarmRate) {
        double df = n - i - 1.0;
        double t = TDistribution.of(df).inverseSurvivalProbability(falseAlarmRate / (2.0 * (n - i + 1.0)));
        return (n - i) * t / Math.sqrt((df + t * t) * (n - i + 1.0));
    }

    /**
     * One step of the test.
     *
     * @param index the index of the value set aside, from 0
     * @param value the value, in the unit of the data
     * @param statistic R_i, without a unit
     * @param criticalValue lambda_i, without a unit
     */
    public record Step(int index, double value, double statistic, double criticalValue) {}

    /** What the test found. Immutable and thread-safe. */
    public static final class Result {
        private final int n;
        private final List<Step> steps;
        private final List<Flag> flags;
        private final List<Warning> warnings;

        private Result(int n, List<Step> steps, List<Flag> flags, List<Warning> warnings) {
            this.n = n;
            this.steps = List.copyOf(steps);
            this.flags = flags;
            this.warnings = warnings;
        }

        /**
         * How many values were used: all of them.
         *
         * @return the number
         */
        public int n() {
            return n;
        }

        /**
         * The number of outliers.
         *
         * @return the largest i with R_i above its critical value, or 0
         */
        public int outliers() {
            return flags.size();
        }

        /**
         * The steps R_1, R_2, ..., fewer than asked for if the values left over are all equal.
         *
         * @return the steps in order
         */
        public List<Step> steps() {
            return steps;
        }

        /**
         * The shots that stand out, the most extreme first. An early one may lie below its own critical value: it is flagged
         * because a later one does not.
         *
         * @return one flag for each outlier
         */
        public List<Flag> flags() {
            return flags;
        }

        /**
         * What to know about this result.
         *
         * @return the warnings
         */
        public List<Warning> warnings() {
            return warnings;
        }
    }
}
