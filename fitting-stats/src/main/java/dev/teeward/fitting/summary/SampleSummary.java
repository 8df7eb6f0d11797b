package dev.teeward.fitting.summary;

import dev.teeward.fitting.internal.Data;
import dev.teeward.fitting.internal.Distributions;
import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.Interval;
import dev.teeward.quantity.RatioUnit;
import dev.teeward.quantity.Unit;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.apache.commons.numbers.arrays.Selection;
import org.apache.commons.statistics.descriptive.Mean;
import org.apache.commons.statistics.descriptive.StandardDeviation;
import org.apache.commons.statistics.distribution.BinomialDistribution;

/**
 * Mean, standard deviation and median of one metric, each with its interval.
 *
 * <ul>
 *   <li>mean: mean +- t s / sqrt(n), Student's t with n - 1 degrees of freedom (Student 1908);
 *   <li>standard deviation: s sqrt((n - 1) / chi-square quantile), exact for normal data (closed form);
 *   <li>median: between two order statistics, exact for any continuous distribution by the binomial distribution. The
 *       level is at least the one asked for and is stated in the interval; where even the whole range does not reach it
 *       (95 % needs 6 shots), the range is given with the level it has, and a warning.
 * </ul>
 *
 * <p>Equal values say nothing about spread: mean and median then have no limits, the standard deviation only 0 as its lower
 * one, and there is the warning {@code zero-spread}.
 *
 * <p>Means and squares are summed in two passes with correction. An angle is averaged as a number: keep it away from the
 * wrap at half a turn.
 *
 * <pre>{@code
 * SampleSummary.Result r = SampleSummary.withDefaults().withUnit(LengthUnit.METER).summarize(137.1, 140.2, 135.9);
 * r.mean();                 // 137.733 m [132.192, 143.275] at 95 %
 * r.standardDeviation();    // empty for a single value
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class SampleSummary {
    private static final SampleSummary DEFAULTS = new SampleSummary(0.95, RatioUnit.ONE);

    private final double level;
    private final Unit unit;

    private SampleSummary(double level, Unit unit) {
        this.level = level;
        this.unit = unit;
    }

    /**
     * The level 95 % and plain numbers.
     *
     * @return the procedure
     */
    public static SampleSummary withDefaults() {
        return DEFAULTS;
    }

    /**
     * The same procedure at another level.
     *
     * @param newLevel the level of all intervals, in (0, 1)
     * @return the procedure
     * @throws IllegalArgumentException if the level is not in (0, 1)
     */
    public SampleSummary withLevel(double newLevel) {
        return new SampleSummary(Data.checkLevel(newLevel), unit);
    }

    /**
     * The same procedure for values in a unit, which the estimates carry on. Nothing is converted.
     *
     * @param newUnit the unit of the values
     * @return the procedure
     */
    public SampleSummary withUnit(Unit newUnit) {
        return new SampleSummary(level, Objects.requireNonNull(newUnit, "newUnit"));
    }

    /**
     * Summarizes the values of one metric.
     *
     * @param values the values, at least 1, all finite
     * @return the summary
     * @throws IllegalArgumentException if there is no value or one is not finite
     */
    public Result summarize(double... values) {
        Data.check("values", values, 1);
        int n = values.length;
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        for (double value : values) {
            least = value < least ? value : least;
            most = value > most ? value : most;
        }
        least += 0.0; // no negative zero, whichever of the two came first
        most += 0.0;
        boolean constant = least == most;
        List<Warning> warnings = new ArrayList<>();
        double mean = Mean.of(values).getAsDouble();
        Interval meanInterval = Interval.unbounded(level);
        Optional<Estimate> deviation = Optional.empty();
        if (n == 1) {
            warnings.add(Warning.of(
                    "single-value", "a single value says nothing about spread, so that its mean has no bounds"));
        } else {
            double sd = constant ? 0.0 : StandardDeviation.of(values).getAsDouble();
            double t = -Distributions.tQuantile(0.5 * (1.0 - level), n - 1.0);
            double half = t * sd / Math.sqrt(n);
            if (sd > 0.0) {
                meanInterval = Interval.of(mean - half, mean + half, level);
            }
            deviation = Optional.of(Estimate.of(sd, SpreadFactors.interval(sd, n - 1.0, level), unit));
            if (sd == 0.0) {
                warnings.add(Warning.of(
                        "zero-spread",
                        "all values are equal, so that nothing is known about the spread and there are no limits; the readings"
                                + " may be rounded too coarsely"));
            }
        }
        Estimate median =
                constant ? Estimate.of(least, Interval.unbounded(level), unit) : median(values.clone(), warnings);
        return new Result(n, Estimate.of(mean, meanInterval, unit), deviation, median, least, most, warnings);
    }

    private Estimate median(double[] values, List<Warning> warnings) {
        int n = values.length;
        // The largest count below the lower end whose tail is small enough; the rank of the end is one more.
        BinomialDistribution binomial = BinomialDistribution.of(n, 0.5);
        double tail = 0.5 * (1.0 - level);
        int below = binomial.inverseCumulativeProbability(tail);
        while (below >= 0 && binomial.cumulativeProbability(below) > tail) {
            below--;
        }
        int rank = Math.max(0, below);
        double achieved = 1.0 - 2.0 * binomial.cumulativeProbability(rank);
        if (below < 0) {
            warnings.add(Warning.of(
                    "median-level-not-reached",
                    "the range of " + n + " values holds the median at a lower level than the one asked for"));
        }
        int lower = (n - 1) / 2;
        int upper = n / 2;
        Selection.select(values, new int[] {rank, lower, upper, n - 1 - rank});
        double median = lower == upper ? values[lower] : 0.5 * (values[lower] + values[upper]);
        return Estimate.of(median + 0.0, Interval.of(values[rank] + 0.0, values[n - 1 - rank] + 0.0, achieved), unit);
    }

    /** The summary of one metric. Immutable and thread-safe. */
    public static final class Result {
        private final int n;
        private final Estimate mean;
        private final Optional<Estimate> standardDeviation;
        private final Estimate median;
        private final double minimum;
        private final double maximum;
        private final List<Warning> warnings;

        private Result(
                int n,
                Estimate mean,
                Optional<Estimate> standardDeviation,
                Estimate median,
                double minimum,
                double maximum,
                List<Warning> warnings) {
            this.n = n;
            this.mean = mean;
            this.standardDeviation = standardDeviation;
            this.median = median;
            this.minimum = minimum;
            this.maximum = maximum;
            this.warnings = List.copyOf(warnings);
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
         * The degrees of freedom of the intervals of mean and standard deviation.
         *
         * @return n - 1
         */
        public int degreesOfFreedom() {
            return n - 1;
        }

        /**
         * The mean with its t interval.
         *
         * @return the mean; its interval is unbounded for a single value
         */
        public Estimate mean() {
            return mean;
        }

        /**
         * The standard deviation, n - 1 in the denominator, with its chi-square interval.
         *
         * @return the standard deviation; empty for a single value
         */
        public Optional<Estimate> standardDeviation() {
            return standardDeviation;
        }

        /**
         * The median with its order-statistic interval, whose level is the one achieved.
         *
         * @return the median; its interval is unbounded for a single value
         */
        public Estimate median() {
            return median;
        }

        /**
         * The smallest value.
         *
         * @return the value, in the unit of the data
         */
        public double minimum() {
            return minimum;
        }

        /**
         * The largest value.
         *
         * @return the value, in the unit of the data
         */
        public double maximum() {
            return maximum;
        }

        /**
         * The methods of the three intervals.
         *
         * @return one line of text
         */
        public String method() {
            return "mean by Student's t, standard deviation by chi-square, median by exact binomial order statistics";
        }

        /**
         * What to know about this summary.
         *
         * @return the warnings, often none
         */
        public List<Warning> warnings() {
            return warnings;
        }
    }
}
