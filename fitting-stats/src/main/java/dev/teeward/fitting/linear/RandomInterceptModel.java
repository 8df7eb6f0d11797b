package dev.teeward.fitting.linear;

import dev.teeward.fitting.internal.LeastSquares;
import dev.teeward.fitting.internal.NoncentralT;
import dev.teeward.quantity.RatioUnit;
import dev.teeward.quantity.Unit;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;

/**
 * A linear model with one random intercept: several golfers, or blocks of shots that are not complete.
 *
 * <p>y = X beta + b_g + e with b_g of variance v_b for each group and e of variance v_e. The ratio v_b / v_e is where the
 * derivative of the profiled restricted likelihood (Patterson and Thompson 1971) vanishes; the rest is least squares on
 * data from which each group's mean is partly taken away. Errors and degrees of freedom are those of Kenward and Roger
 * (1997), which for complete pairs make the club's t, df and p those of the paired t test as long as the group variance is
 * above 0.
 *
 * <p>For two clubs and complete pairs the paired t test needs no model, and is the one to report. With ten groups a group
 * variance of 0 is common (warning {@code no-group-variance}). Then estimates and standard errors of complete groups are those
 * of plain least squares, but not the degrees of freedom, which still allow for the variance having been estimated: for ten
 * pairs 9 and not 18, so that the interval is longer than that of plain least squares. It is not the paired interval either,
 * whose error is that of the differences.
 *
 * <pre>{@code
 * Design design = Design.of(carry.length).withFactor("club", "Alder", club);
 * RandomInterceptModel.Result r = RandomInterceptModel.withDefaults().fit(design, golfer, carry);
 * r.coefficient("club=Rowan").estimate();
 * r.groupVariance(); // between golfers
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class RandomInterceptModel {
    private static final RandomInterceptModel DEFAULTS = new RandomInterceptModel(0.95, RatioUnit.ONE);

    private final double level;
    private final Unit unit;

    private RandomInterceptModel(double level, Unit unit) {
        this.level = level;
        this.unit = unit;
    }

    /**
     * What came out.
     *
     * @param method what was really done, in words
     * @param coefficients one for each column of the design, in its order
     * @param groupVariance the variance between groups, squared unit of the response
     * @param residualVariance the variance within groups
     * @param criterion minus twice the restricted log likelihood, or empty if the data leave nothing to chance
     * @param groups the number of groups
     * @param warnings what to know before using this
     */
    public record Result(
            String method,
            List<Coefficient> coefficients,
            double groupVariance,
            double residualVariance,
            OptionalDouble criterion,
            int groups,
            List<Warning> warnings) {
        /**
         * Copies the lists.
         *
         * @param method what was really done, in words
         * @param coefficients one for each column of the design, in its order
         * @param groupVariance the variance between groups, squared unit of the response
         * @param residualVariance the variance within groups
         * @param criterion minus twice the restricted log likelihood, or empty if the data leave nothing to chance
         * @param groups the number of groups
         * @param warnings what to know before using this
         */
        public Result {
            coefficients = List.copyOf(coefficients);
            warnings = List.copyOf(warnings);
        }

        /**
         * One coefficient.
         *
         * @param name the name of a column
         * @return its coefficient
         * @throws IllegalArgumentException if there is no such column
         */
        public Coefficient coefficient(String name) {
            return coefficients.stream()
                    .filter(c -> c.name().equals(name))
                    .findFirst()
                    .orElseThrow(() -> new IllegalArgumentException("no column " + name + "; there are "
                            + coefficients.stream().map(Coefficient::name).toList()));
        }
    }

    /**
     * 95 %, a pure number.
     *
     * @return the default procedure
     */
    public static RandomInterceptModel withDefaults() {
        return DEFAULTS;
    }

    /**
     * With another confidence level.
     *
     * @param level the level, in (0, 1)
     * @return a changed copy
     * @throws IllegalArgumentException if the level is not in (0, 1)
     */
    public RandomInterceptModel withLevel(double level) {
        LinearModel.withDefaults().withLevel(level);
        return new RandomInterceptModel(level, unit);
    }

    /**
     * With the unit of the response.
     *
     * @param unit the unit that the responses are in
     * @return a changed copy
     */
    public RandomInterceptModel withUnit(Unit unit) {
        return new RandomInterceptModel(level, Objects.requireNonNull(unit, "unit"));
    }

    /**
     * Fits.
     *
     * @param design the fixed columns
     * @param group the group of each row: at least two groups, and one of at least two rows
     * @param y the response, one finite number for each row
     * @return the fit
     * @throws IllegalArgumentException if lengths differ, a number is not finite, there are fewer than two groups or no
     *     group of two rows, no degrees of freedom are left, or columns depend on each other
     */
    public Result fit(Design design, String[] group, double... y) {
        LinearModel.factor(design, y);
        if (group.length != y.length) {
            throw new IllegalArgumentException(
                    "group must have one label for each of " + y.length + " rows, but had " + group.length);
        }
        Map<String, Integer> index = new LinkedHashMap<>();
        int[] of = new int[y.length];
        Arrays.setAll(of, i -> index.computeIfAbsent(group[i], k -> index.size()));
        int[] sizes = new int[index.size()];
        Arrays.stream(of).forEach(g -> sizes[g]++);
        int k = design.names().size();
        if (sizes.length < 2 || Arrays.stream(sizes).max().orElse(0) < 2 || y.length <= k) {
            throw new IllegalArgumentException(
                    "a random intercept needs at least 2 groups, one of them of 2 shots, and "
                            + "more shots than coefficients, but had " + sizes.length + " groups, " + y.length
                            + " shots and " + k
                            + " coefficients");
        }
        Profile profile = new Profile(design.columns(), y, of, sizes);
        List<Warning> warnings = new ArrayList<>();
        OptionalDouble best = profile.flat() ? OptionalDouble.empty() : profile.bestRatio();
        if (best.isEmpty()) {
            warnings.add(Warning.of(
                    "no-spread", "columns and groups fit every shot exactly, so there is no measure of error"));
            double[] beta = LeastSquares.of(design.columns()).solve(y);
            List<Coefficient> bare = new ArrayList<>();
            for (int j = 0; j < k; j++) {
                bare.add(Coefficient.of(design.names().get(j), beta[j], 0.0, 0.0, level, unit));
            }
            return new Result(
                    "least squares, no measure of error",
                    bare,
                    0.0,
                    0.0,
                    OptionalDouble.empty(),
                    sizes.length,
                    warnings);
        }
        double ratio = best.getAsDouble();
        if (ratio == 0.0) {
            warnings.add(Warning.of(
                    "no-group-variance",
                    "the groups do not differ more than chance, so their variance is taken as 0; for two clubs and"
                            + " complete pairs report the paired t test, whose error does not rest on that"));
        }
        if (sizes.length < 5) {
            warnings.add(Warning.of("few-groups", "fewer than five groups tell little about how groups differ"));
        }
        Profile.Point at = profile.at(ratio);
        double residual = at.residualVariance;
        double[][] covariance = at.covariance;
        double[][] adjusted = new double[k][k];
        double[][][] slopes = new double[2][][];
        double[][] w = KenwardRoger.adjust(
                design.columns(), of, sizes, ratio * residual, residual, covariance, adjusted, slopes);
        List<Coefficient> coefficients = new ArrayList<>();
        for (int j = 0; j < k; j++) {
            double df = KenwardRoger.degreesOfFreedom(j, covariance, slopes, w);
            coefficients.add(Coefficient.of(
                    design.names().get(j), at.beta[j], Math.sqrt(Math.max(0.0, adjusted[j][j])), df, level, unit));
        }
        return new Result(
                "random intercept by restricted likelihood, "
                        + (ratio > 0.0 ? "" : "group variance 0, ")
                        + "errors and degrees of freedom of Kenward and Roger",
                coefficients,
                ratio * residual,
                residual,
                OptionalDouble.of(at.criterion),
                sizes.length,
                warnings);
    }

    /** The restricted likelihood, profiled over everything but the ratio of the variances. */
    private static final class Profile {
        private final double[][] columns;
        private final double[] y;
        private final int[] of;
        private final int[] sizes;

        Profile(double[][] columns, double[] y, int[] of, int[] sizes) {
            this.columns = columns;
            this.y = y;
            this.of = of;
            this.sizes = sizes;
        }

        private static final class Point {
            final double[] beta;
            final double residualVariance;
            final double[][] covariance;
            final double criterion;
            final double derivative;

            Point(double[] beta, double residualVariance, double[][] covariance, double criterion, double derivative) {
                this.beta = beta;
                this.residualVariance = residualVariance;
                this.covariance = covariance;
                this.criterion = criterion;
                this.derivative = derivative;
            }
        }

        boolean flat() {
            double size = Arrays.stream(y).map(Math::abs).max().orElse(0.0);
            return Math.sqrt(at(0.0).residualVariance) <= 1e-13 * size;
        }

        /** Takes the part of each group's mean away that makes the rows uncorrelated with variance 1. */
        private double[] whiten(double[] x, double ratio) {
            double[] sums = sums(x);
            double[] z = x.clone();
            for (int i = 0; i < z.length; i++) {
                int n = sizes[of[i]];
                z[i] -= (1.0 - 1.0 / Math.sqrt(1.0 + n * ratio)) * sums[of[i]] / n;
            }
            return z;
        }

        private double[] sums(double[] x) {
            double[] sums = new double[sizes.length];
            for (int i = 0; i < x.length; i++) {
                sums[of[i]] += x[i];
            }
            return sums;
        }

        Point at(double ratio) {
            int k = columns.length;
            double df = y.length - (double) k;
            double[][] white = Arrays.stream(columns).map(c -> whiten(c, ratio)).toArray(double[][]::new);
            double[] target = whiten(y, ratio);
            LeastSquares squares = LeastSquares.of(white);
            double[] beta = squares.solve(target);
            double rss = Arrays.stream(squares.residuals(target, beta))
                    .map(e -> e * e)
                    .sum();
            double[][] gram = squares.inverseGram();
            double[] rest = LeastSquares.of(columns).residuals(y, beta);
            double[] groupRest = sums(rest);
            double[][] groupColumns = Arrays.stream(columns).map(this::sums).toArray(double[][]::new);
            double logDeterminant = 0.0;
            double slope = 0.0;
            for (int g = 0; g < sizes.length; g++) {
                double h = 1.0 + sizes[g] * ratio;
                logDeterminant += Math.log(h);
                double e = groupRest[g] / h;
                slope += sizes[g] / h - df * e * e / rss;
                for (int a = 0; a < k; a++) {
                    for (int b = 0; b < k; b++) {
                        slope -= gram[a][b] * groupColumns[a][g] * groupColumns[b][g] / (h * h);
                    }
                }
            }
            double variance = rss / df;
            for (double[] row : gram) {
                for (int b = 0; b < k; b++) {
                    row[b] *= variance;
                }
            }
            double criterion =
                    df * (1.0 + Math.log(2.0 * Math.PI * variance)) + logDeterminant + squares.logGramDeterminant();
            return new Point(beta, variance, gram, criterion, slope);
        }

        /**
         * The ratio of least criterion: 0, or where its derivative turns from falling to rising. Empty if it falls for ever,
         * because the groups leave no residual.
         */
        OptionalDouble bestRatio() {
            double best = 0.0;
            double least = at(0.0).criterion;
            double low = 0.0;
            double slope = at(0.0).derivative;
            for (double high = 1e-6; high < 1e9; high *= 2.0) {
                double next = at(high).derivative;
                if (slope < 0.0 && next >= 0.0) {
                    double root = NoncentralT.root(r -> at(r).derivative, low, high);
                    double value = at(root).criterion;
                    if (value < least) {
                        least = value;
                        best = root;
                    }
                }
                low = high;
                slope = next;
            }
            return slope < 0.0 ? OptionalDouble.empty() : OptionalDouble.of(best);
        }
    }
}
