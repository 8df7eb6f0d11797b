package dev.teeward.fitting.compare;

import dev.teeward.fitting.internal.Distributions;
import dev.teeward.fitting.internal.NoncentralT;
import dev.teeward.fitting.internal.Sample;
import dev.teeward.fitting.internal.ScaledT;
import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.Interval;
import dev.teeward.quantity.RatioUnit;
import dev.teeward.quantity.Unit;
import dev.teeward.quantity.Warning;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Two clubs compared by the posterior of the difference of their means, with a region of practical equivalence (Kruschke
 * 2018).
 *
 * <p>Normal shots, a mean and a spread of its own for each club, and the reference prior 1 / sigma^2 for each (Behrens 1929,
 * Fisher 1935, Jeffreys): each mean is s / sqrt(n) t with n - 1 degrees of freedom about the sample mean, and the difference
 * of two such is integrated, not sampled. Pairs: the t of the differences, whose intervals equal those of the paired t
 * test. The probability that the first spread is larger is P(F at most s_x^2 / s_y^2) with n - 1 and m - 1 degrees of
 * freedom.
 *
 * <p>The numbers are probabilities of statements given the shots and this prior; they are not p values. With one shot or
 * without spread there is no posterior: the interval is unbounded and the warning {@code too-few-shots} or
 * {@code no-spread} says why.
 *
 * <pre>{@code
 * BayesianComparison.Result r = BayesianComparison.withMargin(3.0).withUnit(LengthUnit.YARD).test(x, y);
 * r.posterior().orElseThrow().greater();      // that the first mean is larger at all
 * r.posterior().orElseThrow().withinMargin(); // that the means are practically the same
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class BayesianComparison {
    private final double level;
    private final double margin;
    private final Unit unit;

    private BayesianComparison(double level, double margin, Unit unit) {
        this.level = level;
        this.margin = margin;
        this.unit = unit;
    }

    /**
     * What was found.
     *
     * @param method the model, in words
     * @param difference first mean minus second, with the interval that holds it with the level's probability, equal tails
     * @param posterior the probabilities, or empty if the data say nothing about their error
     * @param counts how many shots of the first and the second were used, or one number of pairs
     * @param warnings what to know before using this
     */
    public record Result(
            String method,
            Estimate difference,
            Optional<Posterior> posterior,
            List<Integer> counts,
            List<Warning> warnings) {
        /**
         * Copies the lists.
         *
         * @param method the model, in words
         * @param difference first mean minus second, with the interval that holds it with the level's probability, equal tails
         * @param posterior the probabilities, or empty if the data say nothing about their error
         * @param counts how many shots of the first and the second were used, or one number of pairs
         * @param warnings what to know before using this
         */
        public Result {
            counts = List.copyOf(counts);
            warnings = List.copyOf(warnings);
        }
    }

    /**
     * Probabilities of statements about two clubs.
     *
     * @param greater that the first mean is larger
     * @param withinMargin that the means differ by less than the margin
     * @param aboveMargin that the first mean is larger by more than the margin
     * @param belowMargin that the second mean is larger by more than the margin
     * @param wider that the first spread is larger; absent for pairs
     */
    public record Posterior(
            double greater, double withinMargin, double aboveMargin, double belowMargin, OptionalDouble wider) {}

    /**
     * With the largest difference that does not matter, set before the shots; 95 %.
     *
     * @param margin the margin, at least 0, in the unit of the numbers
     * @return the procedure
     * @throws IllegalArgumentException if the margin is negative or not finite
     */
    public static BayesianComparison withMargin(double margin) {
        if (!(margin >= 0.0) || Double.isInfinite(margin)) {
            throw new IllegalArgumentException("margin must be finite and at least 0, but was " + margin);
        }
        return new BayesianComparison(0.95, margin, RatioUnit.ONE);
    }

    /**
     * With another level.
     *
     * @param level the level, in (0, 1)
     * @return a changed copy
     * @throws IllegalArgumentException if the level is not in (0, 1)
     */
    public BayesianComparison withLevel(double level) {
        return new BayesianComparison(Options.DEFAULTS.withLevel(level).level(), margin, unit);
    }

    /**
     * With the unit of the numbers.
     *
     * @param unit the unit
     * @return a changed copy
     */
    public BayesianComparison withUnit(Unit unit) {
        return new BayesianComparison(level, margin, Objects.requireNonNull(unit, "unit"));
    }

    /**
     * Compares two independent samples.
     *
     * @param x the first sample, at least one number, all finite
     * @param y the second sample, at least one number, all finite
     * @return what the posterior says
     * @throws IllegalArgumentException if a sample is empty or holds a number that is not finite
     */
    public Result test(double[] x, double[] y) {
        Moments a = Moments.of(Sample.of("x", x));
        Moments b = Moments.of(Sample.of("y", y));
        String method = "posterior of the difference of means, two normal samples, reference prior";
        double difference = a.mean() - b.mean();
        List<Integer> counts = List.of(x.length, y.length);
        if (Math.min(x.length, y.length) < 2 || !(a.variance() > 0.0) || !(b.variance() > 0.0)) {
            return unanswered(method, difference, counts, Math.min(x.length, y.length) < 2);
        }
        OptionalDouble wider =
                OptionalDouble.of(Distributions.fCdf(a.variance() / b.variance(), a.size() - 1.0, b.size() - 1.0));
        return result(
                method,
                difference,
                counts,
                Math.sqrt(a.meanVariance() + b.meanVariance()),
                wider,
                d -> ScaledT.differenceAbove(d, mean(a), mean(b)));
    }

    /**
     * Compares pairs.
     *
     * @param x the first of each pair, at least one number, all finite
     * @param y the second of each pair, as many
     * @return what the posterior says
     * @throws IllegalArgumentException if the lengths differ, there is no pair or a number is not finite
     */
    public Result testPairs(double[] x, double[] y) {
        Moments d = Moments.of(Sample.differences("x", x, "y", y));
        String method = "posterior of the mean difference of pairs, normal differences, reference prior";
        if (d.size() < 2 || !(d.variance() > 0.0)) {
            return unanswered(method, d.mean(), List.of(x.length), d.size() < 2);
        }
        double error = Math.sqrt(d.meanVariance());
        return result(
                method,
                d.mean(),
                List.of(x.length),
                error,
                OptionalDouble.empty(),
                at -> Distributions.tUpperTail((at - d.mean()) / error, d.size() - 1.0));
    }

    private static ScaledT mean(Moments m) {
        return ScaledT.meanBehind(m.size(), m.mean(), m.variance());
    }

    private interface Tail {
        double above(double d);
    }

    private Result result(
            String method, double difference, List<Integer> counts, double error, OptionalDouble wider, Tail tail) {
        double half = 0.5 * (1.0 - level);
        double reach = error;
        while (tail.above(difference + reach) > half || tail.above(difference - reach) < 1.0 - half) {
            reach *= 2.0;
        }
        double lower = NoncentralT.root(d -> (1.0 - half) - tail.above(d), difference - reach, difference);
        double upper = NoncentralT.root(d -> half - tail.above(d), difference, difference + reach);
        double over = tail.above(margin);
        double notUnder = tail.above(-margin);
        return new Result(
                method,
                Estimate.of(difference + 0.0, Interval.of(lower, upper, level), unit),
                Optional.of(
                        new Posterior(tail.above(0.0), Math.max(0.0, notUnder - over), over, 1.0 - notUnder, wider)),
                counts,
                List.of());
    }

    private Result unanswered(String method, double difference, List<Integer> counts, boolean few) {
        Warning warning = few
                ? Warning.of("too-few-shots", "one shot says nothing about its error, so there is no posterior")
                : Warning.of("no-spread", "equal shots say nothing about their error, so there is no posterior");
        return new Result(
                method,
                Estimate.of(difference + 0.0, Interval.unbounded(level), unit),
                Optional.empty(),
                counts,
                List.of(warning));
    }
}
