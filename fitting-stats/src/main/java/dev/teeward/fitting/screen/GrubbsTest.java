package dev.teeward.fitting.screen;

import dev.teeward.fitting.internal.Data;
import dev.teeward.quantity.Warning;
import java.util.List;
import java.util.Objects;
import org.apache.commons.statistics.descriptive.Mean;
import org.apache.commons.statistics.descriptive.StandardDeviation;
import org.apache.commons.statistics.distribution.TDistribution;

/**
 * Grubbs's test for one outlier in one metric: does the shot farthest from the mean lie farther than chance explains?
 *
 * <p>G = max |x - mean| / s. With t the quantile of Student's t with n - 2 degrees of freedom at 1 - a / (2n) (two-sided; at
 * 1 - a / n for one named end), the cut-off is (n - 1) / sqrt(n) sqrt(t^2 / (n - 2 + t^2)), and p = min(1, 2n P(T &gt; t(G))),
 * a bound that is exact wherever no two shots can exceed G at once, which holds at the usual levels (Grubbs 1950, Annals of
 * Mathematical Statistics 21; Grubbs 1969, Technometrics 11; NIST/SEMATECH e-Handbook 1.3.5.17.1).
 *
 * <p>Two outliers on the same side hide each other from this test; {@link GeneralizedEsdTest} looks for several. The largest
 * G that n shots can give is (n - 1) / sqrt(n): 2.85 at n = 10.
 *
 * <pre>{@code
 * GrubbsTest.Result r = GrubbsTest.withDefaults().screen(carries);
 * r.statistic();   // G
 * r.flags();       // at most one; empty if p is above 0.05
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class GrubbsTest {
    private static final String NAME = "Grubbs test";

    /** Which end is suspected, decided before the shots are looked at. */
    public enum Suspect {
        /** Either the largest or the smallest value: two-sided. */
        EITHER,
        /** The largest value only. */
        LARGEST,
        /** The smallest value only. */
        SMALLEST
    }

    private static final GrubbsTest DEFAULTS = new GrubbsTest(0.05, Suspect.EITHER);

    private final double falseAlarmRate;
    private final Suspect suspect;

    private GrubbsTest(double falseAlarmRate, Suspect suspect) {
        this.falseAlarmRate = falseAlarmRate;
        this.suspect = suspect;
    }

    /**
     * Two-sided with a false-alarm rate of 5 %.
     *
     * @return the test
     */
    public static GrubbsTest withDefaults() {
        return DEFAULTS;
    }

    /**
     * The same test with another false-alarm rate.
     *
     * @param rate the share of good sets that raise a flag, in (0, 1)
     * @return the test
     * @throws IllegalArgumentException if the rate is not in (0, 1)
     */
    public GrubbsTest withFalseAlarmRate(double rate) {
        Data.checkRate(rate);
        return new GrubbsTest(rate, suspect);
    }

    /**
     * The same test for another end.
     *
     * @param end the suspected end
     * @return the test
     */
    public GrubbsTest with(Suspect end) {
        return new GrubbsTest(falseAlarmRate, Objects.requireNonNull(end, "end"));
    }

    /**
     * The cut-off for a number of shots.
     *
     * @param n the number of shots, at least 3
     * @return the value that G must exceed, without a unit
     * @throws IllegalArgumentException if n is less than 3
     */
    public double cutOff(int n) {
        if (n < 3) {
            throw new IllegalArgumentException("Grubbs's test needs at least 3 shots, but n was " + n);
        }
        double t = TDistribution.of(n - 2.0).inverseSurvivalProbability(falseAlarmRate / (sides() * n));
        return (n - 1.0) / Math.sqrt(n) * Math.sqrt(t * t / (n - 2.0 + t * t));
    }

    /**
     * Tests one set of values.
     *
     * @param values the values of one metric, any one unit, at least 3, all finite
     * @return the result
     * @throws IllegalArgumentException if there are fewer than 3 values or one is not finite
     */
    public Result screen(double... values) {
        Data.check("values", values, 3);
        int n = values.length;
        if (Data.allEqual(values)) {
            return new Result(n, 0.0, cutOff(n), 1.0, List.of(), List.of(Flag.noSpread()));
        }
        double mean = Mean.of(values).getAsDouble();
        double sd = StandardDeviation.of(values).getAsDouble();
        int farthest = 0;
        double largest = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < n; i++) {
            double distance = switch (suspect) {
                case EITHER -> Math.abs(values[i] - mean);
                case LARGEST -> values[i] - mean;
                case SMALLEST -> mean - values[i];
            };
            if (distance > largest) {
                largest = distance;
                farthest = i;
            }
        }
        double g = largest / sd;
        double room = (n - 1.0) * (n - 1.0) - n * g * g;
        double tail = room > 0.0
                ? TDistribution.of(n - 2.0).survivalProbability(Math.sqrt(n * (n - 2.0) * g * g / room))
                : 0.0;
        double p = Math.min(1.0, sides() * n * tail);
        double cutOff = cutOff(n);
        List<Flag> flags = g > cutOff ? List.of(new Flag(farthest, NAME, "G", g, cutOff, falseAlarmRate)) : List.of();
        return new Result(n, g, cutOff, p, flags, List.of());
    }

    private double sides() {
        return suspect == Suspect.EITHER ? 2.0 : 1.0;
    }

    /** What the test found. Immutable and thread-safe. */
    public static final class Result {
        private final int n;
        private final double statistic;
        private final double cutOff;
        private final double pValue;
        private final List<Flag> flags;
        private final List<Warning> warnings;

        private Result(
                int n, double statistic, double cutOff, double pValue, List<Flag> flags, List<Warning> warnings) {
            this.n = n;
            this.statistic = statistic;
            this.cutOff = cutOff;
            this.pValue = pValue;
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
         * The statistic G.
         *
         * @return the distance of the farthest value from the mean, in standard deviations
         */
        public double statistic() {
            return statistic;
        }

        /**
         * The cut-off for G.
         *
         * @return the value that G must exceed to be flagged
         */
        public double cutOff() {
            return cutOff;
        }

        /**
         * The degrees of freedom of the t distribution behind cut-off and p.
         *
         * @return n - 2
         */
        public int degreesOfFreedom() {
            return n - 2;
        }

        /**
         * The p value (Bonferroni bound, at most 1).
         *
         * @return the probability of a G at least as large in a good set, in [0, 1]
         */
        public double pValue() {
            return pValue;
        }

        /**
         * The shots that stand out.
         *
         * @return at most one flag
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
