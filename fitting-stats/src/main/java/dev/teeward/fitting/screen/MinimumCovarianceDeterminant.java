package dev.teeward.fitting.screen;

import dev.teeward.fitting.internal.SubsetEnumeration;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;

/**
 * The minimum covariance determinant: centre and covariance of the h shots whose covariance has the smallest determinant,
 * and from them the distance of every shot, which bad shots cannot pull towards themselves.
 *
 * <p>One to three metrics. The subset holds h = floor(2m - n + 2 (n - m) a) shots with m = floor((n + p + 1) / 2) and the
 * share a, by default 0.75. Its covariance is multiplied by a consistency factor and by the small-sample factor of Pison,
 * Van Aelst and Willems 2002 (Metrika 55): the raw estimate. Shots within the 97.5 % chi-square distance of it give the
 * reweighted estimate, with its own two factors (Rousseeuw and Van Driessen 1999, Technometrics 41).
 *
 * <p><b>Exact up to 20 shots</b>: all subsets are tried (for one metric, exact at any number). Beyond 200,000 subsets
 * the search concentrates from 500 seeded random starts, and beyond 600 shots it does so in the nested groups of Rousseeuw
 * and Van Driessen 1999: five of about 300 shots, then those together, then all; {@link Result#method()} says
 * which it was.
 *
 * <p><b>Flags</b> compare the raw squared distance with a simulated cut-off that 5 % of good, normally spread sets of that
 * size exceed. Chi-square cut-offs would flag a good shot in most sets of ten. Cut-offs exist for two metrics, the share
 * 0.75 and at least 6 shots; otherwise there are distances but no flags, and a warning.
 *
 * <pre>{@code
 * MinimumCovarianceDeterminant.Result r = MinimumCovarianceDeterminant.withDefaults().screen(carry, side);
 * r.flags();     // shots far from the bulk
 * r.center();    // where the bulk lies
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class MinimumCovarianceDeterminant {
    private static final String NAME = "minimum covariance determinant";
    private static final MinimumCovarianceDeterminant DEFAULTS =
            new MinimumCovarianceDeterminant(McdCutOffs.SHARE, 20_261_124L);

    private final double share;
    private final long seed;

    private MinimumCovarianceDeterminant(double share, long seed) {
        this.share = share;
        this.seed = seed;
    }

    /**
     * The share 0.75 and a fixed seed.
     *
     * @return the procedure
     */
    public static MinimumCovarianceDeterminant withDefaults() {
        return DEFAULTS;
    }

    /**
     * The same procedure with another share of shots in the subset: 0.5 withstands the most bad shots, 1 none.
     *
     * @param alpha the share, in [0.5, 1]
     * @return the procedure
     * @throws IllegalArgumentException if the share is not in [0.5, 1]
     */
    public MinimumCovarianceDeterminant withSubsetShare(double alpha) {
        if (!(alpha >= 0.5 && alpha <= 1.0)) {
            throw new IllegalArgumentException("subset share must be in [0.5, 1], but was " + alpha);
        }
        return new MinimumCovarianceDeterminant(alpha, seed);
    }

    /**
     * The same procedure with another seed for the random starts; without effect where the search is exact.
     *
     * @param newSeed the seed
     * @return the procedure
     */
    public MinimumCovarianceDeterminant withSeed(long newSeed) {
        return new MinimumCovarianceDeterminant(share, newSeed);
    }

    /**
     * Screens the shots of one set.
     *
     * @param metrics one to three columns of equal length, each in any one unit, all finite; at least two shots more than
     *     metrics
     * @return the result
     * @throws IllegalArgumentException if there are no columns or more than three, too few shots, columns of unequal length,
     *     or a value that is not finite
     */
    public Result screen(double[]... metrics) {
        int p = metrics.length;
        if (p < 1 || p > 3) {
            throw new IllegalArgumentException("number of metrics must be in [1, 3], but was " + p);
        }
        int n = metrics[0].length;
        double[][] columns = new double[p][];
        for (int j = 0; j < p; j++) {
            Data.check(metrics[j], p + 2);
            if (metrics[j].length != n) {
                throw new IllegalArgumentException("metrics must have one value for each shot, but had " + n + " and "
                        + metrics[j].length + "; leave out shots that lack one");
            }
            columns[j] = metrics[j].clone();
        }
        int h = McdFactors.subsetSize(n, p, share);
        long subsets = SubsetEnumeration.count(n, h);
        boolean exact = p == 1 || subsets <= McdSearch.LARGEST_ENUMERATION;
        int[] subset;
        String method;
        if (p == 1) {
            subset = McdSearch.window(columns[0], h);
            method = "exact, all windows of " + h + " of " + n + " sorted values";
        } else if (exact) {
            subset = McdSearch.enumerate(columns, h);
            method = "exact, all " + subsets + " subsets of " + h + " of " + n + " shots";
        } else {
            subset = McdSearch.concentrate(columns, h, seed);
            method = "approximate, concentration from " + McdSearch.STARTS + " random starts for " + h + " of " + n
                    + " shots" + (n > McdSearch.LARGEST_WHOLE ? ", in nested groups" : "") + ", seed " + seed;
        }
        return estimate(columns, h, subset, method, exact);
    }

    private Result estimate(double[][] columns, int h, int[] subset, String method, boolean exact) {
        int n = columns[0].length;
        int p = columns.length;
        List<Warning> warnings = new ArrayList<>();
        if (!exact) {
            warnings.add(Warning.of(
                    "search-not-exhaustive",
                    "too many subsets to try them all, so that the best one found need not be the best there is"));
        }
        Scatter plain = subset.length == h ? Scatter.of(columns, subset, h) : null;
        if (plain == null || plain.singular()) {
            warnings.add(Warning.of(
                    "exact-fit",
                    "at least " + h + " of " + n + " shots lie on one point, line or plane, so that distances from them"
                            + " have no scale; the readings may be rounded too coarsely"));
            return new Result(n, h, subset, method, Optional.empty(), OptionalDouble.empty(), List.of(), warnings);
        }
        double consistency = McdFactors.consistency(p, h, n);
        double smallSample = McdFactors.smallSample(n, p, share);
        Scatter raw = plain.times(consistency * smallSample);
        double[] rawDistances = raw.squaredDistances(columns);
        double within = ChiSquaredDistribution.of(p).inverseSurvivalProbability(0.025);
        int[] kept = new int[n];
        int count = 0;
        for (int i = 0; i < n; i++) {
            if (rawDistances[i] < within) {
                kept[count++] = i;
            }
        }
        Scatter reweighted = count > p ? Scatter.of(columns, kept, count) : plain;
        double consistencyReweighted = McdFactors.consistency(p, count, n);
        double smallSampleReweighted = McdFactors.smallSampleReweighted(n, p, share);
        Scatter last = reweighted.singular() ? raw : reweighted.times(consistencyReweighted * smallSampleReweighted);
        double[] factors = {consistency, smallSample, consistencyReweighted, smallSampleReweighted};
        Fit fit = new Fit(columns, plain, raw, last, factors, count);
        OptionalDouble cutOff = McdCutOffs.of(n, p, share);
        List<Flag> flags = new ArrayList<>();
        if (cutOff.isPresent()) {
            for (int i = 0; i < n; i++) {
                if (rawDistances[i] > cutOff.getAsDouble()) {
                    flags.add(new Flag(
                            i,
                            NAME,
                            "squared distance",
                            rawDistances[i],
                            cutOff.getAsDouble(),
                            McdCutOffs.FALSE_ALARM_RATE));
                }
            }
        } else {
            warnings.add(Warning.of(
                    "no-simulated-cut-off",
                    "flags need two metrics, the subset share 0.75 and at least " + McdCutOffs.FEWEST
                            + " shots, so that only distances are given"));
        }
        return new Result(n, h, subset, method, Optional.of(fit), cutOff, flags, warnings);
    }

    /** The numbers of a fit with a scale. */
    private static final class Fit {
        private final Scatter plain;
        private final Scatter raw;
        private final Scatter reweighted;
        private final double[] factors;
        private final int kept;
        private final double[] rawDistances;
        private final double[] distances;

        Fit(double[][] columns, Scatter plain, Scatter raw, Scatter reweighted, double[] factors, int kept) {
            this.plain = plain;
            this.raw = raw;
            this.reweighted = reweighted;
            this.factors = factors;
            this.kept = kept;
            this.rawDistances = raw.squaredDistances(columns);
            this.distances = reweighted.squaredDistances(columns);
        }
    }

    /** What the screen found. Immutable and thread-safe. */
    public static final class Result {
        private final int n;
        private final int h;
        private final int[] subset;
        private final String method;
        private final Optional<Fit> fit;
        private final OptionalDouble cutOff;
        private final List<Flag> flags;
        private final List<Warning> warnings;

        private Result(
                int n,
                int h,
                int[] subset,
                String method,
                Optional<Fit> fit,
                OptionalDouble cutOff,
                List<Flag> flags,
                List<Warning> warnings) {
            this.n = n;
            this.h = h;
            this.subset = subset;
            this.method = method;
            this.fit = fit;
            this.cutOff = cutOff;
            this.flags = List.copyOf(flags);
            this.warnings = List.copyOf(warnings);
        }

        /**
         * How many shots were used: all of them.
         *
         * @return the number
         */
        public int n() {
            return n;
        }

        /**
         * How many shots the subset holds.
         *
         * @return the number h
         */
        public int subsetSize() {
            return h;
        }

        /**
         * The shots of the subset.
         *
         * @return the indices in ascending order, from 0
         */
        public int[] subset() {
            return subset.clone();
        }

        /**
         * How the subset was found.
         *
         * @return text that begins with {@code exact} or {@code approximate}
         */
        public String method() {
            return method;
        }

        /**
         * Whether the bulk of the shots has no extent in some direction, so that there are no distances and no estimates.
         *
         * @return true if so
         */
        public boolean exactFit() {
            return fit.isEmpty();
        }

        /**
         * The determinant of the subset's covariance, before any factor.
         *
         * @return the determinant, in the square of the product of the metrics' units; 0 for an exact fit
         */
        public double determinant() {
            return fit.map(f -> f.plain.determinant()).orElse(0.0);
        }

        /**
         * The raw centre.
         *
         * @return the mean of the subset, a number for each metric; empty for an exact fit
         */
        public Optional<double[]> rawCenter() {
            return fit.map(f -> f.raw.center());
        }

        /**
         * The raw covariance, with both factors.
         *
         * @return rows and columns in the order of the metrics; empty for an exact fit
         */
        public Optional<double[][]> rawCovariance() {
            return fit.map(f -> f.raw.covariance());
        }

        /**
         * The reweighted centre.
         *
         * @return a number for each metric; empty for an exact fit
         */
        public Optional<double[]> center() {
            return fit.map(f -> f.reweighted.center());
        }

        /**
         * The reweighted covariance, with both factors.
         *
         * @return rows and columns in the order of the metrics; empty for an exact fit
         */
        public Optional<double[][]> covariance() {
            return fit.map(f -> f.reweighted.covariance());
        }

        /**
         * The four factors that the covariances were multiplied by.
         *
         * @return raw consistency, raw small-sample, reweighted consistency, reweighted small-sample; empty for an exact fit
         */
        public Optional<double[]> factors() {
            return fit.map(f -> f.factors.clone());
        }

        /**
         * How many shots the reweighted estimate rests on.
         *
         * @return the number; 0 for an exact fit
         */
        public int reweightedCount() {
            return fit.map(f -> f.kept).orElse(0);
        }

        /**
         * The squared distances from the raw estimate, which the flags rest on.
         *
         * @return one for each shot, without a unit; empty for an exact fit
         */
        public Optional<double[]> rawSquaredDistances() {
            return fit.map(f -> f.rawDistances.clone());
        }

        /**
         * The squared distances from the reweighted estimate.
         *
         * @return one for each shot, without a unit; empty for an exact fit
         */
        public Optional<double[]> squaredDistances() {
            return fit.map(f -> f.distances.clone());
        }

        /**
         * The statistic of the screen.
         *
         * @return the largest raw squared distance, without a unit; empty for an exact fit
         */
        public OptionalDouble statistic() {
            return fit.map(f -> Arrays.stream(f.rawDistances).max()).orElse(OptionalDouble.empty());
        }

        /**
         * The simulated cut-off for a squared distance from the raw estimate.
         *
         * @return the value that 5 % of good sets exceed; empty where none was simulated
         */
        public OptionalDouble cutOff() {
            return cutOff;
        }

        /**
         * The shots that stand out.
         *
         * @return the flags in the order of the shots
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
