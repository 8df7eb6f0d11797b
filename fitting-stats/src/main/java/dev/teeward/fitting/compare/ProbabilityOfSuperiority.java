package dev.teeward.fitting.compare;

import dev.teeward.fitting.internal.Distributions;
import dev.teeward.fitting.internal.Exchanges;
import dev.teeward.fitting.internal.Sample;
import dev.teeward.quantity.Interval;
import dev.teeward.quantity.RatioUnit;
import java.util.Objects;
import org.apache.commons.statistics.distribution.BetaDistribution;
import org.apache.commons.statistics.distribution.BinomialDistribution;

/**
 * The probability that a shot with the first club is larger than one with the second, equal shots counted half.
 *
 * <p>Two samples: A = P(X above Y) + P(X = Y) / 2 = (1 + delta) / 2 with Cliff's delta. The interval is taken on the logit, ln(A
 * / (1 - A)) +- z s / (A (1 - A)) with s^2 the variance of Brunner and Munzel (2000), which stays within [0, 1]; the test
 * against one half is theirs. {@link Method#CLIFF} is Cliff's asymmetric interval (1993) instead. Interval and test are two
 * approximations and may disagree at the border.
 *
 * <p>Measured coverage of nominal 95 %, normal shots, 10 + 10, 20,000 sessions each, true shifts of 0, 1, 1.5 and 2 standard
 * deviations: 97.1, 96.8, 96.6 and 97.9 % on the logit (97.2, 96.0, 95.7 and 97.5 % with spreads of 2 and 1 and the same A); 95.4, 94.2,
 * 92.8 and 91.2 % by Cliff's. With 20 + 20 and one spread three times the other both are too narrow where the clubs hardly
 * overlap: 92 % on the logit, 88 % by Cliff's, at A = 0.92.
 *
 * <p>When every shot of one club beats every one of the other both break down: then the interval is the exact one of as many independent wins as the smaller sample has shots, and p
 * is that of the exact rank test; the warning {@code complete-separation} says so.
 *
 * <p>Pairs: the share of pairs in which the first is larger, "A beats B in 7 of 10", with the exact sign test,
 * ties left out of it, and Clopper and Pearson's interval (1934) of the pairs that are not tied, which holds one half exactly
 * when the sign test does not reject it. Tied pairs pull both towards one half; their share has limits of the same kind.
 *
 * <p>If all shots are tied, nothing is said: the interval is [0, 1] and the warning {@code no-spread}.
 *
 * <p>O(n log n) at any size.
 *
 * <pre>{@code
 * TestResult r = ProbabilityOfSuperiority.withDefaults().test(x, y);
 * r.estimate().value(); // 0.5: neither is larger
 * r.pValue();           // of A = 1/2
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class ProbabilityOfSuperiority {
    private static final ProbabilityOfSuperiority DEFAULTS =
            new ProbabilityOfSuperiority(Options.DEFAULTS.withNullValue(0.5), Method.LOGIT);

    private final Options options;

    private final Method method;

    private ProbabilityOfSuperiority(Options options, Method method) {
        this.options = options;
        this.method = method;
    }

    /** How the interval of two samples is found. */
    public enum Method {
        /** Symmetric on the logit, with Brunner and Munzel's variance. */
        LOGIT("interval on the logit"),

        /** Cliff's asymmetric interval with the unbiased variance; too narrow where the clubs hardly overlap. */
        CLIFF("Cliff's asymmetric interval");

        private final String words;

        Method(String words) {
            this.words = words;
        }
    }

    /**
     * Two-sided, 95 %.
     *
     * @return the default procedure
     */
    public static ProbabilityOfSuperiority withDefaults() {
        return DEFAULTS;
    }

    /**
     * With another confidence level.
     *
     * @param level the level, in (0, 1)
     * @return a changed copy
     * @throws IllegalArgumentException if the level is not in (0, 1)
     */
    public ProbabilityOfSuperiority withLevel(double level) {
        return new ProbabilityOfSuperiority(options.withLevel(level), method);
    }

    /**
     * With another alternative.
     *
     * @param alternative the alternative; two-sided unless changed
     * @return a changed copy
     */
    public ProbabilityOfSuperiority withAlternative(Alternative alternative) {
        return new ProbabilityOfSuperiority(options.withAlternative(alternative), method);
    }

    /**
     * With another interval of two samples; that of pairs is exact.
     *
     * @param method the method; on the logit unless changed
     * @return a changed copy
     */
    public ProbabilityOfSuperiority withMethod(Method method) {
        return new ProbabilityOfSuperiority(options, Objects.requireNonNull(method, "method"));
    }

    /**
     * Two samples.
     *
     * @param x the first sample, at least one number, all finite
     * @param y the second sample, at least one number, all finite
     * @return the probability with its interval, Brunner and Munzel's statistic, degrees of freedom and p
     * @throws IllegalArgumentException if a sample is empty or holds a number that is not finite
     */
    public TestResult test(double[] x, double[] y) {
        Sample first = Sample.of("x", x);
        Sample second = Sample.of("y", y);
        double[] sortedX = first.sorted();
        double[] sortedY = second.sorted();
        double ties = 0.0;
        double[] dx = new double[x.length];
        for (int i = 0; i < dx.length; i++) {
            int below = countBelow(sortedY, x[i], false);
            int notAbove = countBelow(sortedY, x[i], true);
            dx[i] = (below - (double) (y.length - notAbove)) / y.length;
            ties += notAbove - below;
        }
        double[] dy = new double[y.length];
        for (int j = 0; j < dy.length; j++) {
            dy[j] = (x.length - countBelow(sortedX, y[j], true) - (double) countBelow(sortedX, y[j], false)) / x.length;
        }
        Sample rows = Sample.of("x", dx);
        Sample columns = Sample.of("y", dy);
        double delta = rows.mean();
        double a = 0.5 * (1.0 + delta);
        TestResult.Draft draft = new TestResult.Draft(
                        "probability of superiority, " + method.words + ", Brunner-Munzel test, "
                                + options.alternative().words(),
                        "t",
                        options)
                .sizes(x.length, y.length);
        if (Math.min(x.length, y.length) < 2) {
            draft.warn("too-few-shots", "one shot is too few for an interval");
            return draft.estimate(a, Interval.unbounded(options.level()), RatioUnit.ONE);
        }
        if (Math.abs(delta) == 1.0) {
            return separated(draft, a, x.length, y.length);
        }
        Moments.Pivot pivot = Moments.Pivot.welch(Moments.of(rows), Moments.of(columns));
        if (pivot.defined()) {
            double t = delta / pivot.standardError();
            draft.statistic(t)
                    .degreesOfFreedom(pivot.degreesOfFreedom())
                    .pValue(options.alternative()
                            .pValue(
                                    Distributions.tUpperTail(t, pivot.degreesOfFreedom()),
                                    Distributions.tUpperTail(-t, pivot.degreesOfFreedom())));
        } else {
            draft.warn("no-spread", "all shots are tied alike, so the test cannot judge");
            return draft.estimate(a, bounded(-1.0, 1.0), RatioUnit.ONE);
        }
        Interval interval = switch (method) {
            case LOGIT -> logitInterval(a, 0.5 * pivot.standardError());
            case CLIFF -> cliffInterval(delta, cliffVariance(rows, columns, ties));
        };
        return draft.estimate(a, interval, RatioUnit.ONE);
    }

    /** Cliff's unbiased variance of delta, never below zero. */
    static double cliffVariance(Sample rows, Sample columns, double ties) {
        double n = rows.size();
        double m = columns.size();
        double delta = rows.mean();
        double cells = n * m - ties - n * m * delta * delta;
        double sumRows = (n - 1.0) * rows.variance();
        double sumColumns = (m - 1.0) * columns.variance();
        return Math.max(0.0, (m * m * sumRows + n * n * sumColumns - cells) / (n * m * (n - 1.0) * (m - 1.0)));
    }

    private Interval logitInterval(double a, double error) {
        double centre = Math.log(a / (1.0 - a));
        double reach = -Distributions.normalQuantile(options.tail()) * error / (a * (1.0 - a));
        // 2 expit(l) - 1 = tanh(l / 2)
        return bounded(Math.tanh(0.5 * (centre - reach)), Math.tanh(0.5 * (centre + reach)));
    }

    private Interval cliffInterval(double delta, double variance) {
        double z = -Distributions.normalQuantile(options.tail());
        double zv = z * z * variance;
        double room = 1.0 - delta * delta;
        double reach = z * Math.sqrt(variance) * Math.sqrt(room * room + zv);
        double centre = delta * room;
        return bounded((centre - reach) / (room + zv), (centre + reach) / (room + zv));
    }

    /** From delta in [-1, 1] to a probability; a one-sided question leaves an end at 0 or 1. */
    private Interval bounded(double lowerDelta, double upperDelta) {
        double lower = options.alternative() == Alternative.LESS ? -1.0 : Math.max(-1.0, lowerDelta);
        double upper = options.alternative() == Alternative.GREATER ? 1.0 : Math.min(1.0, upperDelta);
        return Interval.of(0.5 * (1.0 + lower), 0.5 * (1.0 + upper), options.level());
    }

    private TestResult separated(TestResult.Draft draft, double a, int n, int m) {
        double least = Math.pow(options.tail(), 1.0 / Math.min(n, m));
        double chance = 1.0 / Exchanges.ways(n + m, Math.min(n, m), Long.MAX_VALUE / 4);
        double greater = a == 1.0 ? chance : 1.0;
        double less = a == 1.0 ? 1.0 : chance;
        draft.warn(
                        "complete-separation",
                        "every shot of one club is larger than every shot of the other, so interval and p are those of "
                                + "exact counts")
                .pValue(options.alternative().pValue(greater, less));
        Interval interval = a == 1.0 ? bounded(2.0 * least - 1.0, 1.0) : bounded(-1.0, 1.0 - 2.0 * least);
        return draft.estimate(a, interval, RatioUnit.ONE);
    }

    /**
     * Pairs.
     *
     * @param x the first of each pair, at least one number, all finite
     * @param y the second of each pair, as many
     * @return the share of pairs in which the first is larger, its interval, the number of such pairs and the sign
     *     test's p
     * @throws IllegalArgumentException if the lengths differ, there is no pair or a number is not finite
     */
    public TestResult testPairs(double[] x, double[] y) {
        Sample d = Sample.differences("x", x, "y", y);
        int wins = 0;
        int ties = 0;
        for (int i = 0; i < d.size(); i++) {
            if (Math.abs(d.value(i)) <= d.tieTolerance()) {
                ties++;
            } else if (d.value(i) > 0.0) {
                wins++;
            }
        }
        double n = d.size();
        double a = (wins + 0.5 * ties) / n;
        int decided = d.size() - ties;
        BinomialDistribution fair = BinomialDistribution.of(decided, 0.5);
        double greater = fair.survivalProbability(wins - 1);
        double less = fair.cumulativeProbability(wins);
        double lower = lowerOfAll(lowest(wins, decided), ties, d.size());
        double upper = 1.0 - lowerOfAll(1.0 - highest(wins, decided), ties, d.size());
        TestResult.Draft draft = new TestResult.Draft(
                        "share of pairs won, Clopper-Pearson interval, exact sign test, "
                                + options.alternative().words(),
                        "wins",
                        options)
                .sizes(d.size())
                .statistic(wins)
                .exclude(ties, "tied pair, not used by the sign test")
                .pValue(options.alternative().pValue(greater, less));
        if (decided == 0) {
            draft.warn("no-spread", "all pairs are tied, so nothing is said about which club gives more");
        }
        return draft.estimate(a, bounded(2.0 * lower - 1.0, 2.0 * upper - 1.0), RatioUnit.ONE);
    }

    /** Clopper and Pearson's lower limit of k in n, a quantile of the beta distribution. */
    private double lowest(int k, int n) {
        return k == 0 ? 0.0 : BetaDistribution.of(k, n - k + 1.0).inverseCumulativeProbability(options.tail());
    }

    private double highest(int k, int n) {
        return k == n ? 1.0 : BetaDistribution.of(k + 1.0, n - k).inverseSurvivalProbability(options.tail());
    }

    /** A lower limit among the untied pairs as one of all pairs: fewer ties let it fall further, more let it rise less. */
    private double lowerOfAll(double limit, int ties, int pairs) {
        double share = ties == 0 || ties == pairs ? 0.0 : limit < 0.5 ? lowest(ties, pairs) : highest(ties, pairs);
        return 0.5 + (1.0 - share) * (limit - 0.5);
    }

    /** How many of the sorted values are below v, or at most v. */
    private static int countBelow(double[] sorted, double v, boolean orEqual) {
        int low = 0;
        int high = sorted.length;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (sorted[middle] < v || (orEqual && sorted[middle] == v)) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }
}
