package dev.teeward.fitting.compare;

import dev.teeward.fitting.internal.Distributions;
import dev.teeward.fitting.internal.FlippedVectors;
import dev.teeward.fitting.internal.Sample;
import dev.teeward.fitting.internal.SymmetricMatrix;
import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.Interval;
import dev.teeward.quantity.RatioUnit;
import dev.teeward.quantity.Unit;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Hotelling's T2 (1931): whether clubs differ in several metrics at once, such as carry and curve.
 *
 * <p>Pairs: T2 = n d' S^-1 d with d the mean differences and S their covariance; (n - p) / (p (n - 1)) T2 is F with p and
 * n - p degrees of freedom. Two samples, unequal covariances: T2 = d' (S1/n + S2/m)^-1 d with the degrees of freedom of
 * Krishnamoorthy and Yu (2004, modified Nel and Van der Merwe); pooled on request. With sign flips p counts all 2^n
 * arrangements of whole pairs, exact if the differences are symmetric about 0 together.
 *
 * <p>The intervals hold for all metrics together: d_k +- sqrt(c V_kk), with V the covariance of d and c the critical T2.
 * They are wide; after T2 look at each metric with Holm's adjustment. Needs more shots than metrics; with a metric that
 * varies by rounding only, or with a singular covariance, such as a metric computed from the others, there is the warning
 * {@code no-spread}, p is 1 and the intervals are unbounded.
 *
 * <pre>{@code
 * HotellingTest.Result r = HotellingTest.withDefaults()
 *         .testPairs(new double[][] {carryX, curveX}, new double[][] {carryY, curveY});
 * r.pValue();
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class HotellingTest {
    private static final int LARGEST_ENUMERATION = 21;
    private static final int RANDOM_FLIPS = 9_999;
    private static final long SEED = 20_261_124L;
    private static final HotellingTest DEFAULTS = new HotellingTest(0.95, RatioUnit.ONE, false, false);

    private final double level;
    private final Unit unit;
    private final boolean pooled;
    private final boolean flips;

    private HotellingTest(double level, Unit unit, boolean pooled, boolean flips) {
        this.level = level;
        this.unit = unit;
        this.pooled = pooled;
        this.flips = flips;
    }

    /**
     * What the test found.
     *
     * @param method the method actually used, in words
     * @param differences the mean differences, first minus second, with intervals that hold together
     * @param t2 Hotelling's T2, or empty if the data do not define it
     * @param f the F ratio, or empty
     * @param degreesOfFreedom those of F, two numbers, or none
     * @param criticalT2 the T2 that is just significant at the level by F, or empty
     * @param pValue in [0, 1]; 1 if the data cannot answer
     * @param sampleSizes how many shots or pairs were used
     * @param warnings what to know before using this
     */
    public record Result(
            String method,
            List<Estimate> differences,
            OptionalDouble t2,
            OptionalDouble f,
            List<Double> degreesOfFreedom,
            OptionalDouble criticalT2,
            double pValue,
            List<Integer> sampleSizes,
            List<Warning> warnings) {
        /**
         * Copies the lists.
         *
         * @param method the method actually used, in words
         * @param differences the mean differences, first minus second, with intervals that hold together
         * @param t2 Hotelling's T2, or empty if the data do not define it
         * @param f the F ratio, or empty
         * @param degreesOfFreedom those of F, two numbers, or none
         * @param criticalT2 the T2 that is just significant at the level by F, or empty
         * @param pValue in [0, 1]; 1 if the data cannot answer
         * @param sampleSizes how many shots or pairs were used
         * @param warnings what to know before using this
         */
        public Result {
            differences = List.copyOf(differences);
            degreesOfFreedom = List.copyOf(degreesOfFreedom);
            sampleSizes = List.copyOf(sampleSizes);
            warnings = List.copyOf(warnings);
        }
    }

    /**
     * 95 %, unequal covariances, p by F.
     *
     * @return the default test
     */
    public static HotellingTest withDefaults() {
        return DEFAULTS;
    }

    /**
     * With another confidence level.
     *
     * @param level the level, in (0, 1)
     * @return a changed copy
     * @throws IllegalArgumentException if the level is not in (0, 1)
     */
    public HotellingTest withLevel(double level) {
        return new HotellingTest(Options.DEFAULTS.withLevel(level).level(), unit, pooled, flips);
    }

    /**
     * With the unit of the numbers, if the metrics have one in common.
     *
     * @param unit the unit
     * @return a changed copy
     */
    public HotellingTest withUnit(Unit unit) {
        return new HotellingTest(level, Objects.requireNonNull(unit, "unit"), pooled, flips);
    }

    /**
     * With one covariance for both samples.
     *
     * @param wanted whether to pool; false unless changed
     * @return a changed copy
     */
    public HotellingTest withPooledCovariance(boolean wanted) {
        return new HotellingTest(level, unit, wanted, flips);
    }

    /**
     * With p of pairs by sign flips: all of them up to 21 pairs, 9,999 random ones beyond.
     *
     * @param wanted whether to flip; false unless changed
     * @return a changed copy
     */
    public HotellingTest withSignFlips(boolean wanted) {
        return new HotellingTest(level, unit, pooled, wanted);
    }

    /**
     * Tests pairs.
     *
     * @param x one array for each metric: the first of each pair
     * @param y as many arrays: the second of each pair
     * @return what was found
     * @throws IllegalArgumentException if there is no metric, lengths differ or a number is not finite
     */
    public Result testPairs(double[][] x, double[][] y) {
        checkMetrics(x, y.length);
        List<Sample> d = new ArrayList<>();
        for (int k = 0; k < x.length; k++) {
            d.add(Sample.differences("x[" + k + "]", x[k], "y[" + k + "]", y[k]));
        }
        return oneSample("pairs", d);
    }

    /**
     * Tests whether the means of one sample are given ones.
     *
     * @param x one array for each metric
     * @param means one number for each metric
     * @return what was found; the differences are mean minus given
     * @throws IllegalArgumentException if there is no metric, lengths differ or a number is not finite
     */
    public Result testMeans(double[][] x, double... means) {
        checkMetrics(x, means.length);
        List<Sample> d = new ArrayList<>();
        for (int k = 0; k < x.length; k++) {
            d.add(Sample.of("x[" + k + "]", x[k]).plus(-means[k]));
        }
        return oneSample("one sample", d);
    }

    private static void checkMetrics(double[][] x, int others) {
        if (x.length == 0 || x.length != others) {
            throw new IllegalArgumentException("there must be at least one metric and as many on both sides, but were "
                    + x.length + " and " + others);
        }
        for (double[] column : x) {
            if (column.length != x[0].length) {
                throw new IllegalArgumentException("every metric must have one number for each of " + x[0].length
                        + " shots, but one had " + column.length + "; leave shots out that lack a metric");
            }
        }
    }

    private Result oneSample(String what, List<Sample> samples) {
        double[][] d = samples.stream().map(Sample::toArray).toArray(double[][]::new);
        int p = d.length;
        int n = d[0].length;
        double[] mean = SymmetricMatrix.means(d);
        String method = "Hotelling T2 of " + p + " metrics, " + what;
        if (n <= p) {
            return unanswered(method + ", F", mean, List.of(n), "too-few-shots", "more shots than metrics are needed");
        }
        SymmetricMatrix v = SymmetricMatrix.covarianceOf(d).times(1.0 / n);
        Optional<SymmetricMatrix> inverse = v.inverse();
        // What differs by rounding only has a covariance, but none that means anything.
        if (inverse.isEmpty() || samples.stream().anyMatch(Sample::constant)) {
            return singular(method + ", F", mean, List.of(n));
        }
        double t2 = inverse.get().quadraticForm(mean);
        if (!flips) {
            return answered(method + ", F", mean, v, t2, p, n - 1.0, OptionalDouble.empty(), List.of(n));
        }
        FlippedVectors vectors = FlippedVectors.of(d);
        boolean exact = n <= LARGEST_ENUMERATION;
        double flipped = exact ? vectors.exactP() : vectors.randomP(RANDOM_FLIPS, SEED);
        String how = exact
                ? String.format(Locale.ROOT, ", sign flips, exact: all %,d arrangements", 1L << n)
                : String.format(
                        Locale.ROOT, ", sign flips, Monte Carlo: %,d random arrangements, seed %d", RANDOM_FLIPS, SEED);
        return answered(method + how, mean, v, t2, p, n - 1.0, OptionalDouble.of(flipped), List.of(n));
    }

    /**
     * Tests two samples.
     *
     * @param x one array for each metric: the first sample
     * @param y as many arrays: the second sample
     * @return what was found, by F
     * @throws IllegalArgumentException if there is no metric, lengths differ within a sample or a number is not finite
     */
    public Result test(double[][] x, double[][] y) {
        checkMetrics(x, y.length);
        checkMetrics(y, x.length);
        int p = x.length;
        int n = x[0].length;
        int m = y[0].length;
        double[] first = SymmetricMatrix.means(x);
        double[] second = SymmetricMatrix.means(y);
        double[] d = new double[p];
        boolean spread = true;
        for (int k = 0; k < p; k++) {
            d[k] = first[k] - second[k];
            spread &= !(Sample.of("x[" + k + "]", x[k]).constant()
                    && Sample.of("y[" + k + "]", y[k]).constant());
        }
        String method = "Hotelling T2 of " + p + " metrics, two samples, "
                + (pooled ? "one covariance" : "unequal covariances (Krishnamoorthy and Yu)") + ", F";
        List<Integer> sizes = List.of(n, m);
        if (pooled ? n + m - 2 < p || n < 2 || m < 2 : n <= p || m <= p) {
            return unanswered(method, d, sizes, "too-few-shots", "more shots than metrics are needed in each sample");
        }
        SymmetricMatrix s1 = SymmetricMatrix.covarianceOf(x);
        SymmetricMatrix s2 = SymmetricMatrix.covarianceOf(y);
        double df = n + m - 2.0;
        SymmetricMatrix v = pooled
                ? s1.plus((n - 1.0) / df, s2, (m - 1.0) / df).times(1.0 / n + 1.0 / m)
                : s1.plus(1.0 / n, s2, 1.0 / m);
        Optional<SymmetricMatrix> inverse = v.inverse();
        if (inverse.isEmpty() || !spread) {
            return singular(method, d, sizes);
        }
        double nu = pooled ? df : unequalDf(s1.times(1.0 / n), n, s2.times(1.0 / m), m, inverse.get(), p);
        double t2 = inverse.get().quadraticForm(d);
        return answered(method, d, v, t2, p, nu, OptionalDouble.empty(), sizes);
    }

    private static double unequalDf(
            SymmetricMatrix v1, int n, SymmetricMatrix v2, int m, SymmetricMatrix inverse, int p) {
        double[] a = v1.tracesOfProduct(inverse);
        double[] b = v2.tracesOfProduct(inverse);
        return (p + (double) p * p) / ((a[1] + a[0] * a[0]) / (n - 1.0) + (b[1] + b[0] * b[0]) / (m - 1.0));
    }

    private Result answered(
            String method,
            double[] d,
            SymmetricMatrix v,
            double t2,
            int p,
            double nu,
            OptionalDouble exactP,
            List<Integer> sizes) {
        double df2 = nu - p + 1.0;
        double f = df2 / (p * nu) * t2;
        double critical = p * nu / df2 * Distributions.fQuantile(level, p, df2);
        List<Estimate> differences = new ArrayList<>();
        for (int k = 0; k < p; k++) {
            double reach = Math.sqrt(critical * v.at(k, k));
            differences.add(Estimate.of(d[k] + 0.0, Interval.of(d[k] - reach, d[k] + reach, level), unit));
        }
        return new Result(
                method,
                differences,
                OptionalDouble.of(t2),
                OptionalDouble.of(f),
                List.of((double) p, df2),
                OptionalDouble.of(critical),
                exactP.orElse(Distributions.fUpperTail(f, p, df2)),
                sizes,
                List.of());
    }

    private Result singular(String method, double[] d, List<Integer> sizes) {
        return unanswered(
                method,
                d,
                sizes,
                "no-spread",
                "a metric does not vary, or not independently of the others, so T2 is undefined; leave it out");
    }

    private Result unanswered(String method, double[] d, List<Integer> sizes, String code, String message) {
        List<Estimate> differences = new ArrayList<>();
        for (double value : d) {
            differences.add(Estimate.of(value + 0.0, Interval.unbounded(level), unit));
        }
        return new Result(
                method,
                differences,
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                List.of(),
                OptionalDouble.empty(),
                1.0,
                sizes,
                List.of(Warning.of(code, message)));
    }
}
