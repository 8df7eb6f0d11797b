package dev.teeward.fitting.compare;

import dev.teeward.fitting.internal.Distributions;
import dev.teeward.fitting.internal.DunnettDistribution;
import dev.teeward.fitting.internal.Sample;
import dev.teeward.fitting.internal.StudentizedRange;
import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.Interval;
import dev.teeward.quantity.RatioUnit;
import dev.teeward.quantity.Unit;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;

/**
 * Several clubs compared pair by pair, with p and intervals that hold for all pairs together: Games and Howell (1976),
 * Tukey and Kramer (1953, 1956), Tamhane (1979), Dunnett (1955).
 *
 * <p>{@link Method#GAMES_HOWELL}: Welch's error and degrees of freedom for each pair, p from the studentised range at |t| sqrt
 * 2. {@link Method#TUKEY_KRAMER}: one common variance, p likewise. {@link Method#WELCH_SIDAK}: every club against the first
 * one, Welch's test of each, p adjusted to 1 - (1 - p)^m for m clubs beside the first (Sidak 1967; Tamhane's T2 for comparisons
 * with a control; cited from memory). {@link Method#DUNNETT}: every club against the first one, one common variance: exact if the
 * clubs scatter alike, and far too free if the first one has fewer shots and scatters more. Clubs hit in rounds are better
 * compared within rounds, by a linear model with the rounds as blocks.
 *
 * <p>A pair whose spread is unknown gets an unbounded interval, p = 1 and the warning {@code too-few-shots} or
 * {@code no-spread}.
 *
 * <pre>{@code
 * PairwiseComparison.Result r = PairwiseComparison.withDefaults().test(alder, rowan, hazel);
 * r.pair(2, 0).difference(); // mean of the third minus that of the first
 * r.pair(2, 0).pValue();
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class PairwiseComparison {
    private static final PairwiseComparison DEFAULTS =
            new PairwiseComparison(0.95, RatioUnit.ONE, Method.GAMES_HOWELL, Alternative.TWO_SIDED);

    private final double level;
    private final Unit unit;
    private final Method method;
    private final Alternative alternative;

    private PairwiseComparison(double level, Unit unit, Method method, Alternative alternative) {
        this.level = level;
        this.unit = unit;
        this.method = method;
        this.alternative = alternative;
    }

    /** How the pairs are compared. */
    public enum Method {
        /** All pairs, unequal variances. */
        GAMES_HOWELL,

        /** All pairs, one common variance. */
        TUKEY_KRAMER,

        /** Each club against the first one, unequal variances. */
        WELCH_SIDAK,

        /** Each club against the first one, one common variance: only for clubs that scatter alike. */
        DUNNETT;

        boolean againstFirst() {
            return this == WELCH_SIDAK || this == DUNNETT;
        }

        boolean unequal() {
            return this == GAMES_HOWELL || this == WELCH_SIDAK;
        }
    }

    /**
     * One pair.
     *
     * @param first the index of one club, the larger one
     * @param second the index of the other club; 0 with the methods against the first
     * @param difference mean of the first minus mean of the second, with an interval that holds for all pairs together
     * @param t the difference over its error, or empty if the data do not define it
     * @param degreesOfFreedom those of t; 0 if the data do not define them
     * @param pValue adjusted for looking at all pairs, in [0, 1]
     */
    public record Pair(
            int first, int second, Estimate difference, OptionalDouble t, double degreesOfFreedom, double pValue) {}

    /**
     * What was found.
     *
     * @param method the method actually used, in words
     * @param pairs all pairs, or those with the first club
     * @param counts how many shots of each club were used, in the order of the clubs; none if the procedure does not tell
     * @param warnings what to know before using this
     */
    public record Result(String method, List<Pair> pairs, List<Integer> counts, List<Warning> warnings) {
        /**
         * Copies the lists.
         *
         * @param method the method actually used, in words
         * @param pairs all pairs, or those with the first club
         * @param counts how many shots of each club were used
         * @param warnings what to know before using this
         */
        public Result {
            pairs = List.copyOf(pairs);
            counts = List.copyOf(counts);
            warnings = List.copyOf(warnings);
        }

        /**
         * Without counts.
         *
         * @param method the method actually used, in words
         * @param pairs all pairs, or those with the first club
         * @param warnings what to know before using this
         */
        public Result(String method, List<Pair> pairs, List<Warning> warnings) {
            this(method, pairs, List.of(), warnings);
        }

        /**
         * One pair.
         *
         * @param first the larger index
         * @param second the smaller index
         * @return the comparison of the two
         * @throws IllegalArgumentException if they were not compared
         */
        public Pair pair(int first, int second) {
            return pairs.stream()
                    .filter(p -> p.first() == first && p.second() == second)
                    .findFirst()
                    .orElseThrow(() -> new IllegalArgumentException(
                            "clubs " + first + " and " + second + " were not compared in this order"));
        }
    }

    /**
     * Games and Howell, 95 %, a pure number.
     *
     * @return the default procedure
     */
    public static PairwiseComparison withDefaults() {
        return DEFAULTS;
    }

    /**
     * With another confidence level.
     *
     * @param level the level, in (0, 1)
     * @return a changed copy
     * @throws IllegalArgumentException if the level is not in (0, 1)
     */
    public PairwiseComparison withLevel(double level) {
        return new PairwiseComparison(Options.DEFAULTS.withLevel(level).level(), unit, method, alternative);
    }

    /**
     * With the unit of the numbers.
     *
     * @param unit the unit
     * @return a changed copy
     */
    public PairwiseComparison withUnit(Unit unit) {
        return new PairwiseComparison(level, Objects.requireNonNull(unit, "unit"), method, alternative);
    }

    /**
     * With another method.
     *
     * @param method the method
     * @return a changed copy
     */
    public PairwiseComparison withMethod(Method method) {
        return new PairwiseComparison(level, unit, Objects.requireNonNull(method, "method"), alternative);
    }

    /**
     * With another alternative, for the methods against the first club only: whether the others are greater, or less, than the first club.
     *
     * @param alternative the alternative; two-sided unless changed
     * @return a changed copy
     */
    public PairwiseComparison withAlternative(Alternative alternative) {
        return new PairwiseComparison(level, unit, method, Objects.requireNonNull(alternative, "alternative"));
    }

    /**
     * Compares.
     *
     * @param groups at least two clubs, each of at least one number, all finite
     * @return all pairs
     * @throws IllegalArgumentException if there are fewer than two clubs, one is empty, a number is not finite, or a one-sided
     *     question is asked of a method for all pairs
     */
    public Result test(double[]... groups) {
        List<Sample> samples = Groups.of(groups);
        boolean dunnett = method == Method.DUNNETT;
        if (!method.againstFirst() && alternative != Alternative.TWO_SIDED) {
            throw new IllegalArgumentException(
                    "one-sided questions need Method.WELCH_SIDAK or Method.DUNNETT, but the method is " + method);
        }
        double df = 0.0;
        double squares = 0.0;
        for (Sample s : samples) {
            df += s.size() - 1.0;
            squares += (s.size() - 1.0) * s.variance();
        }
        double common = df > 0.0 ? squares / df : 0.0;
        int k = samples.size();
        int[] others = samples.stream().skip(1).mapToInt(Sample::size).toArray();
        DunnettDistribution many = new DunnettDistribution(
                samples.get(0).size(), others, Math.max(1.0, df), alternative == Alternative.TWO_SIDED);
        double critical = dunnett
                ? many.quantile(level)
                : method == Method.TUKEY_KRAMER
                        ? StudentizedRange.quantile(level, k, Math.max(1.0, df)) / Math.sqrt(2.0)
                        : 0.0;
        List<Pair> pairs = new ArrayList<>();
        List<Warning> warnings = new ArrayList<>();
        for (int a = 0; a < (method.againstFirst() ? 1 : k); a++) {
            for (int b = a + 1; b < k; b++) {
                Moments first = Moments.of(samples.get(b));
                Moments second = Moments.of(samples.get(a));
                Moments.Pivot pivot = method.unequal()
                        ? Moments.Pivot.welch(first, second)
                        : new Moments.Pivot(
                                first.mean() - second.mean(),
                                Math.sqrt(common * (1.0 / first.size() + 1.0 / second.size())),
                                df);
                boolean few = method.unequal() ? Math.min(first.size(), second.size()) < 2 : df < 1.0;
                pairs.add(pair(b, a, pivot, few, critical, k, many, warnings));
            }
        }
        return new Result(words(), pairs, samples.stream().map(Sample::size).toList(), warnings);
    }

    private String words() {
        return switch (method) {
            case GAMES_HOWELL -> "Games-Howell, all pairs, unequal variances, studentised range";
            case TUKEY_KRAMER -> "Tukey-Kramer, all pairs, one common variance, studentised range";
            case WELCH_SIDAK ->
                "Welch's test of each club against the first, unequal variances, adjusted after Sidak, "
                        + alternative.words();
            case DUNNETT -> "Dunnett, each club against the first, one common variance, " + alternative.words();
        };
    }

    private Pair pair(
            int first,
            int second,
            Moments.Pivot pivot,
            boolean few,
            double critical,
            int k,
            DunnettDistribution many,
            List<Warning> warnings) {
        if (few || !pivot.defined()) {
            warnings.add(Warning.of(
                    few ? "too-few-shots" : "no-spread",
                    "clubs " + (first + 1) + " and " + (second + 1)
                            + " show no measure of error, so nothing is said about them"));
            Estimate open = Estimate.of(pivot.estimate() + 0.0, Interval.unbounded(level), unit);
            return new Pair(first, second, open, OptionalDouble.empty(), 0.0, 1.0);
        }
        double t = pivot.t(0.0);
        double df = pivot.degreesOfFreedom();
        double c = switch (method) {
            case GAMES_HOWELL -> StudentizedRange.quantile(level, k, Math.max(1.0, df)) / Math.sqrt(2.0);
            case WELCH_SIDAK -> Distributions.tQuantile(1.0 - alternative.tail(Math.pow(level, 1.0 / (k - 1))), df);
            case TUKEY_KRAMER, DUNNETT -> critical;
        };
        double p = switch (method) {
            case WELCH_SIDAK -> sidak(t, df, k - 1);
            case DUNNETT ->
                many.upperTail(
                        alternative == Alternative.TWO_SIDED
                                ? Math.abs(t)
                                : alternative == Alternative.GREATER ? t : -t);
            case GAMES_HOWELL, TUKEY_KRAMER ->
                StudentizedRange.upperTail(Math.abs(t) * Math.sqrt(2.0), k, Math.max(1.0, df));
        };
        double reach = c * pivot.standardError();
        Interval interval =
                new Options(level, alternative, 0.0, unit).interval(pivot.estimate() - reach, pivot.estimate() + reach);
        return new Pair(
                first, second, Estimate.of(pivot.estimate() + 0.0, interval, unit), OptionalDouble.of(t), df, p);
    }

    /** 1 - (1 - p)^m without loss where p is small. */
    private double sidak(double t, double df, int m) {
        double p = alternative.pValue(Distributions.tUpperTail(t, df), Distributions.tUpperTail(-t, df));
        return -Math.expm1(m * Math.log1p(-p));
    }

    /**
     * The t that is just significant when several clubs of equal size are compared with a control.
     *
     * @param others the number of clubs beside the control, at least 1
     * @param df the degrees of freedom of the common variance, at least 1
     * @return the critical t at this level and alternative
     * @throws IllegalArgumentException if a number is below 1
     */
    public double dunnettCritical(int others, double df) {
        if (others < 1 || !(df >= 1.0)) {
            throw new IllegalArgumentException("others and df must be at least 1, but were " + others + " and " + df);
        }
        int[] sizes = new int[others];
        Arrays.fill(sizes, 1);
        return new DunnettDistribution(1, sizes, df, alternative == Alternative.TWO_SIDED).quantile(level);
    }
}
