package dev.teeward.fitting.compare;

import dev.teeward.fitting.internal.Sample;
import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.Interval;
import dev.teeward.quantity.RatioUnit;
import dev.teeward.quantity.Unit;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.SplittableRandom;

/**
 * Single-step max-t by Westfall and Young (1993): p of several metrics of the same pairs, adjusted for having looked at all
 * of them, without assuming normal or independent metrics.
 *
 * <p>The signs of whole pairs are flipped, all metrics of a pair together. The adjusted p of a metric is the share of
 * arrangements in which the largest |t| of any metric reaches that metric's own; because correlated metrics move together it
 * is never above Bonferroni's and often well below. All 2^n arrangements up to 21 pairs, 9,999 random ones beyond with p = (b
 * + 1) / (m + 1). The intervals hold together: mean +- c se with c the quantile of the largest |t| when the differences less
 * their mean are flipped.
 *
 * <p>Exact for differences that are symmetric about 0 under the null hypothesis. A metric without spread keeps p = 1 and
 * gives the warning {@code no-spread}.
 *
 * <pre>{@code
 * MaxTTest.Result r = MaxTTest.withDefaults().testPairs(new double[][] {carryX, curveX}, new double[][] {carryY, curveY});
 * r.metrics().get(0).adjustedP();
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class MaxTTest {
    private static final int LARGEST_ENUMERATION = 21;
    private static final int RANDOM_FLIPS = 9_999;
    private static final double TIE = 1e-10;
    private static final MaxTTest DEFAULTS = new MaxTTest(0.95, RatioUnit.ONE, 20_261_124L);

    private final double level;
    private final Unit unit;
    private final long seed;

    private MaxTTest(double level, Unit unit, long seed) {
        this.level = level;
        this.unit = unit;
        this.seed = seed;
    }

    /**
     * One metric.
     *
     * @param difference the mean difference, first minus second, with an interval that holds for all metrics together
     * @param t the paired t, or empty if the metric does not vary
     * @param pValue two-sided, of this metric alone, by the same flips
     * @param adjustedP two-sided, adjusted for all metrics
     */
    public record MetricResult(Estimate difference, OptionalDouble t, double pValue, double adjustedP) {}

    /**
     * What was found.
     *
     * @param method the method actually used, in words
     * @param metrics one for each metric, in their order
     * @param pairs the number of pairs
     * @param warnings what to know before using this
     */
    public record Result(String method, List<MetricResult> metrics, int pairs, List<Warning> warnings) {
        /**
         * Copies the lists.
         *
         * @param method the method actually used, in words
         * @param metrics one for each metric, in their order
         * @param pairs the number of pairs
         * @param warnings what to know before using this
         */
        public Result {
            metrics = List.copyOf(metrics);
            warnings = List.copyOf(warnings);
        }
    }

    /**
     * 95 %, a pure number.
     *
     * @return the default test
     */
    public static MaxTTest withDefaults() {
        return DEFAULTS;
    }

    /**
     * With another confidence level.
     *
     * @param level the level, in (0, 1)
     * @return a changed copy
     * @throws IllegalArgumentException if the level is not in (0, 1)
     */
    public MaxTTest withLevel(double level) {
        return new MaxTTest(Options.DEFAULTS.withLevel(level).level(), unit, seed);
    }

    /**
     * With the unit of the numbers, if the metrics have one in common.
     *
     * @param unit the unit
     * @return a changed copy
     */
    public MaxTTest withUnit(Unit unit) {
        return new MaxTTest(level, Objects.requireNonNull(unit, "unit"), seed);
    }

    /**
     * With another seed for random arrangements.
     *
     * @param seed the seed; the same seed gives the same result
     * @return a changed copy
     */
    public MaxTTest withSeed(long seed) {
        return new MaxTTest(level, unit, seed);
    }

    /**
     * Tests several metrics of the same pairs.
     *
     * @param x one array for each metric: the first of each pair
     * @param y as many arrays: the second of each pair
     * @return what was found
     * @throws IllegalArgumentException if there is no metric, lengths differ or a number is not finite
     */
    public Result testPairs(double[][] x, double[][] y) {
        if (x.length == 0 || x.length != y.length) {
            throw new IllegalArgumentException("there must be at least one metric and as many on both sides, but were "
                    + x.length + " and " + y.length);
        }
        List<Sample> d = new ArrayList<>();
        for (int k = 0; k < x.length; k++) {
            d.add(Sample.differences("x[" + k + "]", x[k], "y[" + k + "]", y[k]));
            if (d.get(k).size() != d.get(0).size()) {
                throw new IllegalArgumentException("every metric must have one number for each of "
                        + d.get(0).size() + " pairs, but one had " + d.get(k).size());
            }
        }
        int n = d.get(0).size();
        boolean exact = n <= LARGEST_ENUMERATION;
        double[] observed = new double[d.size()];
        double[][] raw = new double[d.size()][];
        double[][] centred = new double[d.size()][];
        double[] ties = new double[d.size()];
        List<Warning> warnings = new ArrayList<>();
        for (int k = 0; k < observed.length; k++) {
            Sample s = d.get(k);
            raw[k] = scaled(s.toArray());
            centred[k] = s.constant() ? new double[n] : scaled(s.plus(-s.mean()).toArray());
            observed[k] = s.constant() ? 0.0 : Math.abs(Arrays.stream(raw[k]).sum());
            ties[k] = s.constant() ? TIE : tie(s);
            if (s.constant()) {
                raw[k] = new double[n];
                warnings.add(
                        Warning.of("no-spread", "metric " + (k + 1) + " does not vary, so nothing is said about it"));
            }
        }
        double[] own = new double[observed.length];
        double[] all = new double[observed.length];
        Flips flips = new Flips(raw, exact, seed);
        flips.visit(sums -> {
            double largest = 0.0;
            for (double s : sums) {
                largest = Math.max(largest, Math.abs(s));
            }
            for (int k = 0; k < own.length; k++) {
                double bound = observed[k] - ties[k];
                own[k] += Math.abs(sums[k]) >= bound ? 1.0 : 0.0;
                all[k] += largest >= bound ? 1.0 : 0.0;
            }
        });
        double critical = critical(new Flips(centred, exact, seed), n);
        if (Double.isInfinite(critical) && n > 1) {
            warnings.add(Warning.of("too-few-shots", n + " pairs have too few arrangements for limits at this level"));
        }
        List<MetricResult> metrics = new ArrayList<>();
        for (int k = 0; k < own.length; k++) {
            double add = exact ? 0.0 : 1.0;
            double total = flips.count() + add;
            metrics.add(metric(d.get(k), critical, (own[k] + add) / total, (all[k] + add) / total));
        }
        String how = exact
                ? String.format(Locale.ROOT, "exact: all %,d arrangements", 1L << n)
                : String.format(Locale.ROOT, "Monte Carlo: %,d random arrangements, seed %d", RANDOM_FLIPS, seed);
        return new Result(
                "single-step max-t of " + x.length + " metrics, sign flips, two-sided, " + how, metrics, n, warnings);
    }

    private MetricResult metric(Sample s, double critical, double own, double adjusted) {
        if (s.constant()) {
            Estimate open = Estimate.of(s.mean() + 0.0, Interval.unbounded(level), unit);
            return new MetricResult(open, OptionalDouble.empty(), 1.0, 1.0);
        }
        double error = s.standardDeviation() / Math.sqrt(s.size());
        double reach = critical * error;
        Interval interval = Interval.of(s.mean() - reach, s.mean() + reach, level);
        return new MetricResult(
                Estimate.of(s.mean() + 0.0, interval, unit), OptionalDouble.of(s.mean() / error), own, adjusted);
    }

    /** How far scaled sums may differ and yet be equal: what the rounding of the numbers as given makes of them. */
    private static double tie(Sample d) {
        double squares = Arrays.stream(d.toArray()).map(v -> v * v).sum();
        return squares > 0.0 ? Math.max(TIE, d.size() * d.tieTolerance() / Math.sqrt(squares)) : TIE;
    }

    /** To squares that add up to 1, so that the sum is an increasing function of t, the same for every metric. */
    private static double[] scaled(double[] d) {
        double squares = Arrays.stream(d).map(v -> v * v).sum();
        double length = squares > 0.0 ? Math.sqrt(squares) : 1.0;
        return Arrays.stream(d).map(v -> v / length).toArray();
    }

    /**
     * Tests all pairs of several clubs hit in rounds: the shots of each round are exchanged among the clubs, and the adjusted p
     * of a pair is the share of arrangements in which the largest |paired t| of any pair reaches its own. All (k!)^(b - 1)
     * arrangements of k clubs in b rounds up to 200,000, 9,999 random ones beyond. The intervals hold together: the
     * difference +- c se with c the quantile of the largest |t| when what is left of the shots less the means of club and
     * round is exchanged.
     *
     * <p>Exact when all clubs are alike; where some differ, their shots are exchanged too, so that what is said of the others is
     * an approximation, careful as a rule (Petrondas and Gabriel 1983, from memory). Follow it by Holm's
     * {@link PValueAdjustment} over {@link SignFlipTest} of each pair where that matters.
     *
     * <p>Two clubs that differ by the same in every round leave no error to judge by: p is 1, the interval unbounded, and there
     * is the warning {@code no-spread}.
     *
     * @param groups at least two clubs, the k-th number of each from round k, all finite
     * @return all pairs, the larger index first
     * @throws IllegalArgumentException if there are fewer than two clubs, their numbers are not as many, or one is not finite
     */
    public PairwiseComparison.Result testRounds(double[]... groups) {
        List<Sample> samples = Groups.ofRounds(groups);
        int n = samples.get(0).size();
        // Less the mean of each club's rounds at hand: the differences stay, the digits too.
        double centre = Sample.of("pooled", Groups.pooled(samples)).mean();
        double[][] centred =
                samples.stream().map(s -> s.plus(-centre).toArray()).toArray(double[][]::new);
        RoundPermutations arrangements = new RoundPermutations(centred, seed);
        double[] observed = arrangements.observed();
        double[] reached = new double[observed.length];
        double[] ties = new double[observed.length];
        for (int i = 1, p = 0; i < samples.size(); i++) {
            for (int j = 0; j < i; j++) {
                ties[p++] = tie(Sample.differences("first", groups[i], "second", groups[j]));
            }
        }
        arrangements.visit(shares -> {
            double largest = Arrays.stream(shares).max().orElse(0.0);
            for (int p = 0; p < reached.length; p++) {
                reached[p] += largest >= observed[p] - ties[p] ? 1.0 : 0.0;
            }
        });
        double add = arrangements.exact() ? 0.0 : 1.0;
        double critical = critical(new RoundPermutations(Groups.residuals(samples), seed), n);
        List<PairwiseComparison.Pair> pairs = new ArrayList<>();
        List<Warning> warnings = new ArrayList<>();
        if (Double.isInfinite(critical)) {
            warnings.add(Warning.of("too-few-shots", n + " rounds have too few arrangements for limits at this level"));
        }
        for (int i = 1; i < samples.size(); i++) {
            for (int j = 0; j < i; j++) {
                Moments.Pivot pivot =
                        Moments.Pivot.paired(Moments.of(Sample.differences("first", groups[i], "second", groups[j])));
                boolean defined = pivot.defined();
                double p = defined ? Math.min(1.0, (reached[pairs.size()] + add) / (arrangements.count() + add)) : 1.0;
                if (!defined && n > 1) {
                    warnings.add(Warning.of(
                            "no-spread",
                            "clubs " + (i + 1) + " and " + (j + 1)
                                    + " differ by the same in every round: there is no error"));
                }
                double reach = critical * pivot.standardError();
                Interval interval = defined && Double.isFinite(critical)
                        ? Interval.of(pivot.estimate() - reach, pivot.estimate() + reach, level)
                        : Interval.unbounded(level);
                pairs.add(new PairwiseComparison.Pair(
                        i,
                        j,
                        Estimate.of(pivot.estimate() + 0.0, interval, unit),
                        defined ? OptionalDouble.of(pivot.t(0.0)) : OptionalDouble.empty(),
                        defined ? n - 1.0 : 0.0,
                        p));
            }
        }
        String how = arrangements.exact()
                ? String.format(Locale.ROOT, "exact: all %,d arrangements", arrangements.count())
                : String.format(
                        Locale.ROOT, "Monte Carlo: %,d random arrangements, seed %d", arrangements.count(), seed);
        return new PairwiseComparison.Result("max-t within rounds, all pairs, " + how, pairs, warnings);
    }

    private double critical(RoundPermutations residuals, int n) {
        double[] largest = new double[residuals.count()];
        int[] filled = {0};
        residuals.visit(
                shares -> largest[filled[0]++] = Arrays.stream(shares).max().orElse(0.0));
        return critical(largest, n);
    }

    private double critical(Flips flips, int n) {
        double[] largest = new double[flips.count()];
        int[] filled = {0};
        flips.visit(sums -> {
            double most = 0.0;
            for (double s : sums) {
                most = Math.max(most, Math.abs(s));
            }
            largest[filled[0]++] = most;
        });
        return critical(largest, n);
    }

    private double critical(double[] largest, int n) {
        Arrays.sort(largest);
        int rank = (int) Math.ceil(level * (largest.length + 1.0) - 1e-9);
        if (rank > largest.length) {
            return Double.POSITIVE_INFINITY;
        }
        double share = largest[rank - 1] * largest[rank - 1] / n;
        return share < 1.0 - 1e-12 ? Math.sqrt((n - 1.0) * share / (1.0 - share)) : Double.POSITIVE_INFINITY;
    }

    /** All or many flips of whole pairs; the first sign stays, since flipping all of them changes no size. */
    private static final class Flips {
        private final double[][] columns;
        private final boolean exact;
        private final long seed;

        Flips(double[][] columns, boolean exact, long seed) {
            this.columns = columns;
            this.exact = exact;
            this.seed = seed;
        }

        interface Visitor {
            void visit(double[] sums);
        }

        int count() {
            return exact ? 1 << (columns[0].length - 1) : RANDOM_FLIPS;
        }

        void visit(Visitor visitor) {
            int n = columns[0].length;
            double[] sums = new double[columns.length];
            SplittableRandom random = new SplittableRandom(seed);
            boolean[] minus = new boolean[n];
            for (int f = 0; f < count(); f++) {
                for (int i = 1; i < n; i++) {
                    minus[i] = exact ? (f >> (i - 1) & 1) == 1 : random.nextBoolean();
                }
                for (int k = 0; k < sums.length; k++) {
                    double sum = 0.0;
                    for (int i = 0; i < n; i++) {
                        sum += minus[i] ? -columns[k][i] : columns[k][i];
                    }
                    sums[k] = sum;
                }
                visitor.visit(sums);
            }
        }
    }
}
