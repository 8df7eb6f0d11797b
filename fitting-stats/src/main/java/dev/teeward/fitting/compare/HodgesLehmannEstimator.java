package dev.teeward.fitting.compare;

import dev.teeward.fitting.internal.Distributions;
import dev.teeward.fitting.internal.OrderedPairs;
import dev.teeward.fitting.internal.Ranks;
import dev.teeward.fitting.internal.Sample;
import java.util.Arrays;
import java.util.Objects;

/**
 * The Hodges-Lehmann estimate of a shift (1963) with its rank interval, and the rank test that belongs to it: a mishit or
 * two hardly move it.
 *
 * <p>Two samples: the median of all differences x - y, with the Mann-Whitney test (1947; statistic U, the pairs in which x
 * is larger, ties half). Pairs: the median of all averages of two differences, with the Wilcoxon signed-rank test (1945;
 * statistic V, the ranks of the positive differences). Exact p condition on the midranks, so ties are exact too; two-sided
 * p is twice the smaller tail. The limits are order statistics at ranks of the null distribution without ties, closed, and
 * so conservative with ties; they are unbounded when the samples are too small for the level.
 *
 * <p>No pair is formed: estimates and limits cost O(n log n) at any size. Exact distributions are used up to 200 pairs and
 * 100 shots in all, the normal approximation beyond, and {@link TestResult#method()} says which. Assumes equal shapes (two
 * samples) or symmetric differences (pairs).
 *
 * <pre>{@code
 * TestResult r = HodgesLehmannEstimator.withDefaults().testPairs(x, y);
 * r.estimate().value(); // the pseudomedian of x - y
 * r.pValue();           // of the signed-rank test
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class HodgesLehmannEstimator extends HypothesisTest<HodgesLehmannEstimator> {
    private static final String NO_SPREAD = "no-spread";
    private static final String NO_LIMITS =
            "nothing varies, so p is that of counting and no limits are given; record with finer resolution";

    private static final int LARGEST_EXACT_PAIRS = 200;
    private static final int LARGEST_EXACT_SHOTS = 100;
    private static final HodgesLehmannEstimator DEFAULTS =
            new HodgesLehmannEstimator(Options.DEFAULTS, RankMethod.AUTOMATIC, false);

    private final RankMethod rankMethod;
    private final boolean prattZeros;

    private HodgesLehmannEstimator(Options options, RankMethod rankMethod, boolean prattZeros) {
        super(options);
        this.rankMethod = rankMethod;
        this.prattZeros = prattZeros;
    }

    /**
     * Two-sided, 95 %, null value 0, exact where quick, zero differences left out of the signed-rank test.
     *
     * @return the default estimator
     */
    public static HodgesLehmannEstimator withDefaults() {
        return DEFAULTS;
    }

    @Override
    HodgesLehmannEstimator copy(Options changed) {
        return new HodgesLehmannEstimator(changed, rankMethod, prattZeros);
    }

    /**
     * With another way to p and limits.
     *
     * @param method the way; automatic unless changed
     * @return a changed copy
     */
    public HodgesLehmannEstimator withMethod(RankMethod method) {
        return new HodgesLehmannEstimator(options, Objects.requireNonNull(method, "method"), prattZeros);
    }

    /**
     * With zero differences ranked before they are left out (Pratt 1959), instead of left out at once (Wilcoxon 1945).
     *
     * @param wanted whether to; false unless changed
     * @return a changed copy
     */
    public HodgesLehmannEstimator withPrattZeros(boolean wanted) {
        return new HodgesLehmannEstimator(options, rankMethod, wanted);
    }

    /**
     * Estimates the shift between two samples, first minus second.
     *
     * @param x the first sample, at least one number, all finite
     * @param y the second sample, at least one number, all finite
     * @return the shift with its rank interval, U and its p
     * @throws IllegalArgumentException if a sample is empty or holds a number that is not finite, or if exact is asked of
     *     more than 100 shots
     */
    public TestResult test(double[] x, double[] y) {
        Sample first = Sample.of("x", x);
        Sample second = Sample.of("y", y);
        int n = x.length;
        int m = y.length;
        boolean exact = exact(n + m, LARGEST_EXACT_SHOTS, "shots");
        double[] pooled = Arrays.copyOf(first.plus(-options.nullValue()).toArray(), n + m);
        System.arraycopy(y, 0, pooled, n, m);
        int[] doubled =
                Ranks.doubledMidranks(pooled, Sample.of("pooled", pooled).tieTolerance());
        long doubledSum = 0;
        for (int i = 0; i < n; i++) {
            doubledSum += doubled[i];
        }
        double least = 0.5 * n * (n + 1.0);
        double u = 0.5 * doubledSum - least;
        double total = n + (double) m;
        double mean = 0.5 * n * m;
        double deviation = Math.sqrt(
                n * (double) m / 12.0 * (total + 1.0 - Ranks.tieTerm(doubled) / (total * Math.max(1.0, total - 1.0))));
        double[] tails = exact ? subsetTails(doubled, n, (int) doubledSum) : normalTails(u, mean, deviation);
        long pairs = (long) n * m;
        long k = exact
                ? rank(Ranks.subsetRankSum(plainRanks(n + m), n), (int) least)
                : normalRank(mean, Math.sqrt(n * (double) m * (total + 1.0) / 12.0));
        TestResult.Draft draft = draft("Hodges-Lehmann shift with Mann-Whitney test, ", "U", exact)
                .sizes(n, m)
                .statistic(u);
        double[] sortedX = first.sorted();
        double[] sortedY = second.sorted();
        if (first.constant() && second.constant()) {
            k = 0;
            draft.warn(NO_SPREAD, NO_LIMITS);
        }
        return finish(draft, tails, k < 1, OrderedPairs.differences(sortedX, sortedY, ranks(k, pairs)));
    }

    /**
     * Estimates the centre of the differences of pairs, first minus second.
     *
     * @param x the first of each pair, at least one number, all finite
     * @param y the second of each pair, as many
     * @return the pseudomedian with its rank interval, V and its p
     * @throws IllegalArgumentException if the lengths differ, there is no pair or a number is not finite, or if exact is
     *     asked of more than 200 pairs
     */
    public TestResult testPairs(double[] x, double[] y) {
        Sample d = Sample.differences("x", x, "y", y);
        int n = d.size();
        boolean exact = exact(n, LARGEST_EXACT_PAIRS, "pairs");
        Sample shifted = d.plus(-options.nullValue());
        double tie = shifted.tieTolerance();
        double[] ranked = shifted.toArray();
        double[] sizes = new double[ranked.length];
        int count = 0;
        for (double v : ranked) {
            if (prattZeros || Math.abs(v) > tie) {
                ranked[count] = v;
                sizes[count++] = Math.abs(v);
            }
        }
        int[] doubled = Ranks.doubledMidranks(Arrays.copyOf(sizes, count), tie);
        int zeros = 0;
        long doubledPositive = 0;
        double mean = 0.0;
        double variance = 0.0;
        int[] signed = new int[doubled.length];
        int kept = 0;
        for (int i = 0; i < doubled.length; i++) {
            if (Math.abs(ranked[i]) <= tie) {
                zeros++;
                continue;
            }
            signed[kept++] = doubled[i];
            doubledPositive += ranked[i] > 0.0 ? doubled[i] : 0;
            mean += 0.25 * doubled[i];
            variance += doubled[i] * (double) doubled[i] / 16.0;
        }
        signed = Arrays.copyOf(signed, kept);
        double v = 0.5 * doubledPositive;
        TestResult.Draft draft = draft("Hodges-Lehmann pseudomedian with Wilcoxon signed-rank test, ", "V", exact)
                .sizes(n)
                .statistic(v)
                .exclude(
                        prattZeros ? zeros : n - count,
                        "difference equal to the null value, not used by the signed-rank test");
        double[] tails = exact ? signedTails(signed, (int) doubledPositive) : normalTails(v, mean, Math.sqrt(variance));
        double all = 0.5 * n * (n + 1.0);
        long k = exact
                ? rank(Ranks.signedRankSum(plainRanks(n)), 0)
                : normalRank(0.5 * all, Math.sqrt(all * (2.0 * n + 1.0) / 12.0));
        double[] sorted = d.sorted();
        if (d.constant()) {
            k = 0;
            draft.warn(NO_SPREAD, NO_LIMITS);
        }
        return finish(draft, tails, k < 1, OrderedPairs.walshAverages(sorted, ranks(k, (long) all)));
    }

    /** The k-th from below, the two about the middle (or twice the middle one) and the k-th from above. */
    private static long[] ranks(long k, long all) {
        long end = Math.max(1, k);
        return new long[] {end, (all + 1) / 2, all / 2 + 1, all + 1 - end};
    }

    private boolean exact(int size, int limit, String what) {
        if (rankMethod == RankMethod.EXACT && size > limit) {
            throw new IllegalArgumentException("an exact rank test takes at most " + limit + " " + what + ", but got "
                    + size + "; use RankMethod.AUTOMATIC or NORMAL");
        }
        return rankMethod == RankMethod.EXACT || (rankMethod == RankMethod.AUTOMATIC && size <= limit);
    }

    private TestResult.Draft draft(String what, String statistic, boolean exact) {
        String how = exact
                ? "exact given the ties"
                : "normal approximation with tie correction "
                        + (rankMethod == RankMethod.NORMAL_UNCORRECTED ? "only" : "and continuity correction");
        return new TestResult.Draft(what + options.alternative().words() + ", " + how, statistic, options);
    }

    private TestResult finish(TestResult.Draft draft, double[] tails, boolean unlimited, double[] ordered) {
        if (unlimited) {
            draft.warn("too-few-shots", "there are too few shots for rank limits at this level");
        }
        return draft.pValue(options.alternative().pValue(tails[0], tails[1]))
                .estimate(
                        0.5 * (ordered[1] + ordered[2]),
                        options.interval(
                                unlimited ? Double.NEGATIVE_INFINITY : ordered[0],
                                unlimited ? Double.POSITIVE_INFINITY : ordered[3]));
    }

    private static double[] subsetTails(int[] doubled, int size, int observed) {
        double[] p = Ranks.subsetRankSum(doubled, size);
        return new double[] {Ranks.upperTail(p, observed), Ranks.lowerTail(p, observed)};
    }

    private static double[] signedTails(int[] doubled, int observed) {
        double[] p = Ranks.signedRankSum(doubled);
        return new double[] {Ranks.upperTail(p, observed), Ranks.lowerTail(p, observed)};
    }

    private double[] normalTails(double value, double mean, double deviation) {
        if (!(deviation > 0.0)) {
            return new double[] {1.0, 1.0};
        }
        double correction = rankMethod == RankMethod.NORMAL_UNCORRECTED ? 0.0 : 0.5;
        return new double[] {
            Distributions.normalUpperTail((value - mean - correction) / deviation),
            Distributions.normalCdf((value - mean + correction) / deviation)
        };
    }

    /** The largest k for which the chance of a sum below least + k is at most the tail; 0 if there is none. */
    private long rank(double[] p, int least) {
        double tail = options.tail() * (1.0 + 1e-12);
        double below = 0.0;
        int k = 0;
        while (least + k < p.length && below + p[least + k] <= tail) {
            below += p[least + k];
            k++;
        }
        return k;
    }

    private long normalRank(double mean, double deviation) {
        return (long) Math.floor(mean + 0.5 + Distributions.normalQuantile(options.tail()) * deviation);
    }

    private static int[] plainRanks(int n) {
        int[] ranks = new int[n];
        Arrays.setAll(ranks, i -> i + 1);
        return ranks;
    }
}
