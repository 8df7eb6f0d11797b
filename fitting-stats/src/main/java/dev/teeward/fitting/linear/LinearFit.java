package dev.teeward.fitting.linear;

import dev.teeward.fitting.internal.Distributions;
import dev.teeward.fitting.internal.LeastSquares;
import dev.teeward.quantity.Unit;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * A fitted linear model: coefficients, marginal means, contrasts, residuals and what to check.
 *
 * <p>Warnings: {@code too-few-shots} (as many coefficients as shots), {@code no-spread} (the model fits every shot exactly),
 * {@code leverage-of-one} (a shot that the model fits whatever it is, so that HC2 to HC4 are undefined),
 * {@code many-coefficients} (fewer than five shots for each), {@code collinear} (a variance inflation above 10).
 *
 * <pre>{@code
 * LinearFit fit = LinearModel.withDefaults().fit(design, carry);
 * fit.marginalMeans("club").get(0).estimate(); // the mean of the reference club at the mean swing
 * fit.varianceInflation();                     // above 10: do not split credit between these columns
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class LinearFit {
    private static final double EXACT = 1e-13;
    private static final double FULL_LEVERAGE = 1.0 - 1e-10;

    private final Design design;
    private final List<String> names;
    private final LeastSquares squares;
    private final double level;
    private final Unit unit;
    private final ErrorModel errors;
    private final double[] beta;
    private final double[] residuals;
    private final double[] leverages;
    private final double[][] gram;
    private final double[][] covariance;
    private final boolean known;
    private final double residualSquares;
    private final double totalSquares;
    private final List<Warning> warnings = new ArrayList<>();

    LinearFit(Design design, LeastSquares squares, double[] y, double level, ErrorModel errors, Unit unit) {
        this.design = design;
        this.squares = squares;
        this.level = level;
        this.errors = errors;
        this.unit = unit;
        names = design.names();
        beta = squares.solve(y);
        residuals = squares.residuals(y, beta);
        leverages = squares.leverages();
        gram = squares.inverseGram();
        double mean = Arrays.stream(y).average().orElseThrow();
        double rss = 0.0;
        double tss = 0.0;
        double size = 0.0;
        for (int i = 0; i < y.length; i++) {
            rss += residuals[i] * residuals[i];
            tss += (y[i] - mean) * (y[i] - mean);
            size = Math.max(size, Math.abs(y[i]));
        }
        boolean exact = Math.sqrt(rss / y.length) <= EXACT * size;
        residualSquares = exact ? 0.0 : rss;
        totalSquares = tss;
        known = judge(exact);
        covariance = known ? covariance() : gram;
    }

    private boolean judge(boolean exact) {
        int k = beta.length;
        int n = residuals.length;
        boolean answerable = true;
        if (n == k) {
            warn("too-few-shots", "there are as many coefficients as shots, so there is no measure of error");
            answerable = false;
        } else if (exact) {
            warn("no-spread", "the model fits every shot exactly, so there is no measure of error; record more finely");
            answerable = false;
        }
        boolean full = Arrays.stream(leverages).anyMatch(h -> h > FULL_LEVERAGE);
        if (full && answerable && errors.dividesByRestOfLeverage()) {
            warn(
                    "leverage-of-one",
                    "the model fits a shot whatever it is, such as the only one of its block, so " + errors
                            + " errors are undefined; leave that shot out or use ErrorModel.CONSTANT");
            answerable = false;
        }
        if (n < 5 * k && n > k) {
            warn("many-coefficients", n + " shots for " + k + " coefficients: keep to fewer, chosen beforehand");
        }
        varianceInflation().forEach((name, factor) -> {
            if (factor > 10.0) {
                warn("collinear", name + " is nearly a combination of the others: credit cannot be split between them");
            }
        });
        return answerable;
    }

    private void warn(String code, String message) {
        warnings.add(Warning.of(code, message));
    }

    private double[][] covariance() {
        int k = beta.length;
        if (errors == ErrorModel.CONSTANT) {
            double variance = residualSquares / degreesOfFreedom();
            double[][] scaled = new double[k][k];
            for (int i = 0; i < k; i++) {
                for (int j = 0; j < k; j++) {
                    scaled[i][j] = variance * gram[i][j];
                }
            }
            return scaled;
        }
        double[] weights = new double[residuals.length];
        Arrays.setAll(weights, i -> errors.weight(residuals[i], leverages[i], residuals.length, k));
        return squares.sandwich(weights);
    }

    /**
     * How the errors were reckoned.
     *
     * @return one phrase
     */
    public String method() {
        return "least squares, "
                + (errors == ErrorModel.CONSTANT ? "errors from one common variance" : errors + " sandwich errors")
                + ", t with "
                + degreesOfFreedom() + " degrees of freedom";
    }

    /**
     * The coefficients.
     *
     * @return one for each column of the design, in its order
     */
    public List<Coefficient> coefficients() {
        List<Coefficient> all = new ArrayList<>();
        for (int j = 0; j < beta.length; j++) {
            double[] weights = new double[beta.length];
            weights[j] = 1.0;
            all.add(combination(names.get(j), weights));
        }
        return all;
    }

    /**
     * One coefficient.
     *
     * @param name the name of a column
     * @return its coefficient
     * @throws IllegalArgumentException if there is no such column
     */
    public Coefficient coefficient(String name) {
        if (!names.contains(name)) {
            throw new IllegalArgumentException("no column " + name + "; there are " + names);
        }
        return coefficients().get(names.indexOf(name));
    }

    /**
     * A combination of coefficients, such as the difference of two levels.
     *
     * @param name what to call it
     * @param weights one finite weight for each column
     * @return the sum of weight times coefficient
     * @throws IllegalArgumentException if the weights are not as many as columns
     */
    public Coefficient combination(String name, double... weights) {
        if (weights.length != beta.length) {
            throw new IllegalArgumentException(
                    "weights must have one number for each of " + beta.length + " columns, but had " + weights.length);
        }
        double value = 0.0;
        double variance = 0.0;
        for (int i = 0; i < beta.length; i++) {
            value += weights[i] * beta[i];
            for (int j = 0; j < beta.length; j++) {
                variance += weights[i] * covariance[i][j] * weights[j];
            }
        }
        double error = known ? Math.sqrt(Math.max(0.0, variance)) : 0.0;
        return Coefficient.of(name, value, error, degreesOfFreedom(), level, unit);
    }

    /**
     * The means at each level of a factor, at the mean of every covariate and in the middle of every other factor
     * (estimated marginal means; Searle, Speed and Milliken 1980).
     *
     * @param factor the name of a factor of the design
     * @return one mean for each level, the reference first
     * @throws IllegalArgumentException if there is no such factor
     */
    public List<Coefficient> marginalMeans(String factor) {
        return design.levels(factor).stream()
                .map(l -> combination(factor + "=" + l, design.marginalWeights(factor, l)))
                .toList();
    }

    /**
     * What the model leaves.
     *
     * @return one residual for each shot, in the unit of the response
     */
    public double[] residuals() {
        return residuals.clone();
    }

    /**
     * How much each shot pulls its own fitted value.
     *
     * @return the leverages, in [0, 1]; their sum is the number of coefficients
     */
    public double[] leverages() {
        return leverages.clone();
    }

    /**
     * The residuals over their errors reckoned without the shot itself; each is t with n - k - 1 degrees of freedom.
     *
     * @return externally studentised residuals; 0 where the data do not define one
     */
    public double[] studentizedResiduals() {
        double df = degreesOfFreedom() - 1.0;
        double[] t = new double[residuals.length];
        for (int i = 0; i < t.length; i++) {
            double rest = 1.0 - leverages[i];
            double square = residuals[i] * residuals[i];
            double without = rest > 1.0 - FULL_LEVERAGE ? (residualSquares - square / rest) / df : 0.0;
            t[i] = df > 0.0 && without > 0.0 ? residuals[i] / Math.sqrt(without * rest) : 0.0;
        }
        return t;
    }

    /**
     * How far the coefficients move when a shot is left out, in units of their error (Cook 1977).
     *
     * @return e^2 h / (k s^2 (1 - h)^2) for each shot; 0 where the data do not define it
     */
    public double[] cooksDistances() {
        double[] d = new double[residuals.length];
        double variance = known ? residualSquares / degreesOfFreedom() : 0.0;
        for (int i = 0; i < d.length; i++) {
            double rest = 1.0 - leverages[i];
            d[i] = variance > 0.0 && rest > 1.0 - FULL_LEVERAGE
                    ? residuals[i] * residuals[i] * leverages[i] / (beta.length * variance * rest * rest)
                    : 0.0;
        }
        return d;
    }

    /**
     * The residual standard deviation.
     *
     * @return sqrt(residual squares / (n - k)), in the unit of the response; 0 without degrees of freedom
     */
    public double residualDeviation() {
        return degreesOfFreedom() > 0 ? Math.sqrt(residualSquares / degreesOfFreedom()) : 0.0;
    }

    /**
     * The residual degrees of freedom.
     *
     * @return shots minus coefficients
     */
    public int degreesOfFreedom() {
        return residuals.length - beta.length;
    }

    /**
     * The share of the variance that the model explains. At ten shots it is large by chance.
     *
     * @return R squared, in [0, 1]; 0 if the response does not vary
     */
    public double determination() {
        return totalSquares > 0.0 ? Math.max(0.0, 1.0 - residualSquares / totalSquares) : 0.0;
    }

    /**
     * F of all coefficients but the intercept.
     *
     * @return F with k - 1 and n - k degrees of freedom, or empty if the data do not define it
     */
    public OptionalDouble fStatistic() {
        double df1 = beta.length - 1.0;
        return df1 > 0.0 && degreesOfFreedom() > 0 && residualSquares > 0.0
                ? OptionalDouble.of((totalSquares - residualSquares) / df1 / (residualSquares / degreesOfFreedom()))
                : OptionalDouble.empty();
    }

    /**
     * Serial dependence of the residuals: the sum of squared steps over the sum of squares (Durbin and Watson 1950).
     *
     * @return about 2 without dependence, towards 0 with drift; empty if there are no residuals
     */
    public OptionalDouble durbinWatson() {
        double steps = 0.0;
        for (int i = 1; i < residuals.length; i++) {
            steps += (residuals[i] - residuals[i - 1]) * (residuals[i] - residuals[i - 1]);
        }
        return residualSquares > 0.0 ? OptionalDouble.of(steps / residualSquares) : OptionalDouble.empty();
    }

    /**
     * The p of unequal variance: n R squared of the squared residuals on the same columns, by chi-square with k - 1 degrees
     * of freedom (Breusch and Pagan 1979, studentised by Koenker 1981).
     *
     * @return p in [0, 1]; 1 if the data do not define it
     */
    public double breuschPaganP() {
        if (!known || beta.length < 2) {
            return 1.0;
        }
        double[] square = Arrays.stream(residuals).map(e -> e * e).toArray();
        double mean = Arrays.stream(square).average().orElseThrow();
        double total = Arrays.stream(square).map(s -> (s - mean) * (s - mean)).sum();
        double rest = Arrays.stream(squares.residuals(square, squares.solve(square)))
                .map(e -> e * e)
                .sum();
        return total > 0.0
                ? Distributions.chiSquareUpperTail(square.length * (1.0 - rest / total), beta.length - 1.0)
                : 1.0;
    }

    /**
     * By how much each column's dependence on the others inflates the variance of its coefficient.
     *
     * @return 1 / (1 - R squared of the column on the others) for each column but the intercept, at least 1
     */
    public Map<String, Double> varianceInflation() {
        Map<String, Double> factors = new LinkedHashMap<>();
        double[][] columns = design.columns();
        for (int j = 1; j < columns.length; j++) {
            double mean = Arrays.stream(columns[j]).average().orElseThrow();
            double sum =
                    Arrays.stream(columns[j]).map(v -> (v - mean) * (v - mean)).sum();
            factors.put(names.get(j), Math.max(1.0, sum * gram[j][j]));
        }
        return factors;
    }

    /**
     * What to know before using this.
     *
     * @return the warnings, possibly none
     */
    public List<Warning> warnings() {
        return List.copyOf(warnings);
    }
}
