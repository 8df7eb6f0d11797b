package dev.teeward.fitting.compare;

import dev.teeward.fitting.internal.Distributions;
import dev.teeward.fitting.internal.Sample;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;

/**
 * The Mann-Kendall test of a trend over the session (Mann 1945, Kendall 1975) with the slope of Theil (1950) and Sen (1968):
 * warming up or tiring, hardly moved by mishits.
 *
 * <p>S = sum over all pairs i before j of sign(y_j - y_i). Without ties p is exact up to 50 shots, by the distribution of S
 * over all orders; otherwise normal with the variance (n (n - 1) (2 n + 5) - sum t (t - 1) (2 t + 5)) / 18 and a continuity
 * correction of 1, and {@link TestResult#method()} says which. The estimate is the median of the slopes between all pairs,
 * per shot; its limits are the order statistics of the slopes at which S is just significant.
 *
 * <p>With more than one club use {@link #test(double[], ShotOrder)}, which takes each club's mean off first: raw values of
 * alternated clubs mix the clubs' difference in and hide a drift.
 * Needs at least two shots; equal shots give p = 1 and the warning {@code no-spread}.
 *
 * <pre>{@code
 * MannKendallTest.Result r = MannKendallTest.withDefaults().test(carries, ShotOrder.of(0, 1, 1, 0, 0, 1, 1, 0));
 * r.slope().estimate(); // per shot
 * r.tau();              // between -1 and 1
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class MannKendallTest extends HypothesisTest<MannKendallTest> {
    private static final int LARGEST_EXACT = 50;
    private static final int MOST_SHOTS = 2_000;
    private static final MannKendallTest DEFAULTS = new MannKendallTest(Options.DEFAULTS, RankMethod.AUTOMATIC);

    private final RankMethod rankMethod;

    private MannKendallTest(Options options, RankMethod rankMethod) {
        super(options);
        this.rankMethod = rankMethod;
    }

    /**
     * What was found.
     *
     * @param slope the slope per shot with its interval; the statistic is S
     * @param tau S over the number of pairs, between -1 and 1
     * @param varianceOfS its variance without a trend, given the ties
     * @param z the normal statistic with the continuity correction, or empty if nothing varies
     */
    public record Result(TestResult slope, double tau, double varianceOfS, OptionalDouble z) {}

    /**
     * Two-sided, 95 %, null value 0, exact where there are no ties and at most 50 shots.
     *
     * @return the default test
     */
    public static MannKendallTest withDefaults() {
        return DEFAULTS;
    }

    @Override
    MannKendallTest copy(Options changed) {
        return new MannKendallTest(changed, rankMethod);
    }

    /**
     * With another way to p and limits.
     *
     * @param method the way; automatic unless changed
     * @return a changed copy
     */
    public MannKendallTest withMethod(RankMethod method) {
        return new MannKendallTest(options, Objects.requireNonNull(method, "method"));
    }

    /**
     * Tests.
     *
     * @param y one number for each shot in the order hit, at least two, all finite
     * @return the slope, S, tau and p
     * @throws IllegalArgumentException if there are fewer than 2 or more than 2,000 numbers, one is not finite, or exact is asked of
     *     ties or of more than 50 shots
     */
    public Result test(double... y) {
        return test(Sample.of("y", y), "", List.of());
    }

    /**
     * Tests within clubs: each value less the mean of its club.
     *
     * <p>Residuals of a club add up to 0 and so depend on each other a little, by -1/(n - 1) between any two of n; p is reckoned
     * as if they did not. Called at 5 % without drift, ten and ten shots in ABBA have a trend in 5.4 % of 20,000 sessions
     * (simulated); of least squares, {@link Drift}, 5.0 %, which is exact.
     *
     * <p>The slope is that of the residuals: the drift
     * itself when the clubs are hit equally late on average (ABBA), less than it otherwise, and the order's warnings say so.
     *
     * @param values the metric of each shot in the order hit, at least two, all finite
     * @param order the clubs in the same order
     * @return the slope, S, tau and p; the warnings also those of the order, and {@code one-shot-club}
     * @throws IllegalArgumentException if the lengths differ, there are fewer than 2 or more than 2,000 numbers, one is not
     *     finite, or exact is asked of ties or of more than 50 shots
     */
    public Result test(double[] values, ShotOrder order) {
        List<Warning> warnings = new ArrayList<>(order.warnings());
        warnings.addAll(order.residualWarnings());
        return test(order.residuals(values), "within clubs, ", warnings);
    }

    private Result test(Sample sample, String where, List<Warning> warnings) {
        double[] y = sample.toArray();
        int n = y.length;
        if (n < 2 || n > MOST_SHOTS) {
            throw new IllegalArgumentException("a trend needs 2 to " + MOST_SHOTS + " shots, but got " + n);
        }
        double tie = sample.tieTolerance();
        double[] slopes = new double[n * (n - 1) / 2];
        long s = 0;
        int pairs = 0;
        for (int i = 0; i < n; i++) {
            for (int j = i + 1; j < n; j++) {
                double rise = y[j] - y[i] - options.nullValue() * (j - i);
                s += Math.abs(rise) <= tie ? 0 : rise > 0.0 ? 1 : -1;
                slopes[pairs++] = (y[j] - y[i]) / (j - i);
            }
        }
        Arrays.sort(slopes);
        double[] levels = new double[n];
        Arrays.setAll(levels, i -> y[i] - options.nullValue() * i);
        double ties = ties(levels, tie);
        double variance = (n * (n - 1.0) * (2.0 * n + 5.0) - ties) / 18.0;
        boolean exact = exact(n, ties > 0.0);
        double estimate = pairs % 2 == 1 ? slopes[pairs / 2] : 0.5 * (slopes[pairs / 2 - 1] + slopes[pairs / 2]);
        TestResult.Draft draft = new TestResult.Draft(
                        "Mann-Kendall test with Theil-Sen slope, " + where
                                + options.alternative().words() + ", "
                                + (exact ? "exact" : "normal approximation with tie and continuity correction"),
                        "S",
                        options)
                .sizes(n)
                .statistic((double) s);
        warnings.forEach(w -> draft.warn(w.code(), w.message()));
        double tau = s / (double) pairs;
        if (!(variance > 0.0)) {
            draft.warn("no-spread", "all values are equal, so there is no trend to judge");
            return new Result(draft.unanswered(estimate), tau, 0.0, OptionalDouble.empty());
        }
        double deviation = Math.sqrt(variance);
        double[] tail = exact ? upperTails(n) : new double[0];
        double greater = exact ? atLeast(tail, s, pairs) : Distributions.normalUpperTail((s - 1.0) / deviation);
        double less = exact ? atLeast(tail, -s, pairs) : Distributions.normalUpperTail((-s - 1.0) / deviation);
        draft.pValue(options.alternative().pValue(greater, less));
        int m = 0;
        while (m < pairs / 2 && limitTail(m + 1, pairs, tail, exact, deviation) <= options.tail() * (1.0 + 1e-12)) {
            m++;
        }
        if (m == 0) {
            draft.warn("too-few-shots", "there are too few shots for limits of the slope at this level");
        }
        double lower = m == 0 ? Double.NEGATIVE_INFINITY : slopes[m - 1];
        double upper = m == 0 ? Double.POSITIVE_INFINITY : slopes[pairs - m];
        return new Result(
                draft.estimate(estimate, options.interval(lower, upper)),
                tau,
                variance,
                OptionalDouble.of((s - Long.signum(s)) / deviation));
    }

    /** The chance that fewer than m slopes lie below the true one. */
    private static double limitTail(int m, int pairs, double[] tail, boolean exact, double deviation) {
        long s = pairs - 2L * m + 2L;
        return exact ? atLeast(tail, s, pairs) : Distributions.normalUpperTail((s - 1.0) / deviation);
    }

    private boolean exact(int n, boolean tied) {
        if (rankMethod == RankMethod.EXACT && (tied || n > LARGEST_EXACT)) {
            throw new IllegalArgumentException("an exact trend test takes at most " + LARGEST_EXACT
                    + " shots without ties, but got " + n + (tied ? " with ties" : "") + "; use RankMethod.AUTOMATIC");
        }
        return rankMethod == RankMethod.EXACT || (rankMethod == RankMethod.AUTOMATIC && !tied && n <= LARGEST_EXACT);
    }

    /** The sum of t (t - 1) (2 t + 5) over groups of ties. */
    private static double ties(double[] values, double tie) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        double sum = 0.0;
        int start = 0;
        for (int i = 1; i <= sorted.length; i++) {
            if (i == sorted.length || sorted[i] - sorted[i - 1] > tie) {
                double t = i - start;
                sum += t * (t - 1.0) * (2.0 * t + 5.0);
                start = i;
            }
        }
        return sum;
    }

    /** P(at least k pairs rise) for each k: the orders of n by their number of inversions. */
    private static double[] upperTails(int n) {
        int pairs = n * (n - 1) / 2;
        double[] p = new double[pairs + 1];
        p[0] = 1.0;
        for (int size = 2; size <= n; size++) {
            double[] next = new double[pairs + 1];
            int reach = size * (size - 1) / 2;
            for (int k = 0; k <= reach; k++) {
                for (int j = Math.max(0, k - size + 1); j <= k; j++) {
                    next[k] += p[j] / size;
                }
            }
            p = next;
        }
        for (int k = pairs - 1; k >= 0; k--) {
            p[k] += p[k + 1];
        }
        return p;
    }

    /** P(S at least s), with S = 2 (rising pairs) - pairs. */
    private static double atLeast(double[] tail, long s, int pairs) {
        int k = (int) Math.max(0L, (s + pairs + 1L) / 2L);
        return k > pairs ? 0.0 : Math.min(1.0, tail[k]);
    }
}
