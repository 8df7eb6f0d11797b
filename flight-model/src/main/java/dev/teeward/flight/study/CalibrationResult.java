package dev.teeward.flight.study;

import dev.teeward.flight.aero.AerodynamicModel;
import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.Interval;
import dev.teeward.quantity.RatioUnit;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.distribution.continuous.TDistribution;

/**
 * The parameters that a {@link Calibration} found, how well they are known, and what the flights cannot tell.
 *
 * <pre>{@code
 * fit.estimate("drag_scale");          // with its t interval
 * fit.profileInterval("drag_scale");   // follows the misfit instead of its tangent
 * fit.warnings();                      // parameters that cannot be told apart, flights that look misread
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class CalibrationResult {
    private static final double ALIKE = 0.95;
    private static final double MISREAD = 0.3;

    private final FitProblem problem;
    private final double[] point;
    private final double scale;
    private final RobustLoss loss;
    private final double level;
    private final int rounds;
    private final Covariance covariance;
    private final double quantile;
    private final Map<String, Double> suspects;
    private final List<Warning> warnings;

    CalibrationResult(
            FitProblem problem,
            double[] point,
            double scale,
            RobustLoss loss,
            double level,
            boolean shared,
            int rounds,
            boolean settled) {
        this.problem = problem;
        this.point = point;
        this.scale = scale;
        this.loss = loss;
        this.level = level;
        this.rounds = rounds;
        covariance = Covariance.of(problem, point, loss, scale, shared);
        double q = 0.5 + level / 2.0;
        quantile = problem.family().hasPrior()
                ? new NormalDistribution(0.0, 1.0).inverseCumulativeProbability(q)
                : new TDistribution(covariance.degreesOfFreedom(), 1e-15).inverseCumulativeProbability(q);
        suspects = Collections.unmodifiableMap(far());
        warnings = warnings(settled);
    }

    /** What weighs little or, under least squares, would weigh little to Huber's loss. */
    private Map<String, Double> far() {
        RobustLoss judge = loss == RobustLoss.SQUARES ? RobustLoss.HUBER : loss;
        double[] seen = problem.residuals().judged(problem.residuals().raw(model()));
        Map<String, Double> found = new LinkedHashMap<>();
        for (int i = 0; i < seen.length; i++) {
            double weight = judge.weight(seen[i] / scale);
            if (weight < MISREAD) {
                found.merge(problem.residuals().describe(i), weight, Math::min);
            }
        }
        return found;
    }

    /**
     * The fitted model.
     *
     * @return the model
     */
    public AerodynamicModel model() {
        return problem.family().model(point);
    }

    /**
     * The fitted parameters.
     *
     * @return their values, in the order of the family
     */
    public double[] values() {
        return point.clone();
    }

    /**
     * A parameter with its interval, symmetric about it.
     *
     * @param name the parameter
     * @return the estimate; its interval is unbounded if the flights do not determine the parameter
     * @throws IllegalArgumentException if there is no such parameter
     */
    public Estimate estimate(String name) {
        int j = at(name);
        OptionalDouble error = standardError(name);
        Interval interval = error.isEmpty()
                ? Interval.unbounded(level)
                : Interval.of(
                        point[j] - quantile * error.getAsDouble(), point[j] + quantile * error.getAsDouble(), level);
        return Estimate.of(point[j], interval, RatioUnit.ONE);
    }

    /**
     * The standard error of a parameter; with a prior, its standard deviation given flights and prior.
     *
     * @param name the parameter
     * @return the standard error; empty if the flights do not determine the parameter
     * @throws IllegalArgumentException if there is no such parameter
     */
    public OptionalDouble standardError(String name) {
        int j = at(name);
        return covariance.knows(j) ? OptionalDouble.of(Math.sqrt(covariance.of(j, j))) : OptionalDouble.empty();
    }

    /**
     * The correlation of the errors of two parameters.
     *
     * @param one a parameter
     * @param other another
     * @return the correlation, in [-1, 1]; empty if the flights do not determine one of them
     * @throws IllegalArgumentException if there is no such parameter
     */
    public OptionalDouble correlation(String one, String other) {
        return covariance.correlation(at(one), at(other));
    }

    /**
     * The interval of a parameter by its profile: the values at which the misfit, made least over all other parameters, is not
     * worse than the level allows.
     *
     * <p>The weights stay as the fit has left them, and the misfit is measured so that for a straight-line model the interval is
     * that of {@link #estimate}: {@code C(value) - C(least) <= t^2 V_jj / [(J'WJ)^-1]_jj}; for least squares this is the
     * likelihood-ratio interval with the F correction (Bates and Watts 1988, 6.1). It costs some ten fits.
     *
     * @param name the parameter
     * @return the interval; an end is infinite where a bound is reached before the misfit is bad enough
     * @throws IllegalArgumentException if there is no such parameter
     */
    public Interval profileInterval(String name) {
        int j = at(name);
        if (!covariance.knows(j)) {
            return Interval.unbounded(level);
        }
        return new ProfileSearch(problem, point, covariance, quantile).interval(j, level);
    }

    /**
     * How much of what is known of a parameter comes from its prior: its variance given flights and prior over that of the prior.
     *
     * @param name the parameter
     * @return the share, in [0, 1]: 0 the flights say it all, 1 they say nothing; 0 for a parameter without a prior
     * @throws IllegalArgumentException if there is no such parameter
     */
    public double shareOfPrior(String name) {
        int j = at(name);
        return problem.family()
                .parameters()
                .get(j)
                .spread()
                .map(s -> covariance.of(j, j) / (s * s))
                .orElse(0.0);
    }

    /**
     * The scale of the residuals, in the standard deviations that were stated; 1 with priors, where those are taken as known.
     *
     * @return the scale, positive
     */
    public double scale() {
        return scale;
    }

    /**
     * How many numbers were observed.
     *
     * @return the number of residuals
     */
    public int observations() {
        return problem.residuals().rows();
    }

    /**
     * The degrees of freedom of the intervals.
     *
     * @return observations less parameters, or flights less parameters where errors are shared; infinite with priors
     */
    public double degreesOfFreedom() {
        return problem.family().hasPrior() ? Double.POSITIVE_INFINITY : covariance.degreesOfFreedom();
    }

    /**
     * Observations that lie far from the fit: misreads, perhaps.
     *
     * <p>They are those that the loss gives a weight below 0.3: 4.5 robust {@linkplain #scale() standard deviations} or more from
     * the fit for Huber's, 3.2 for the biweight. {@link RobustLoss#SQUARES} counts them in full; it names those that Huber's loss
     * would not, with the weight that this would give. A fit by least squares bends towards a misread and may hide it.
     * With {@linkplain Calibration#withLaunchTolerance a tolerance of the launch} an observation is judged given all others of its
     * flight, each with its weight. By least squares they count in full, and a misread may then name others of its flight too; and
     * where two observations of a flight contradict each other and nothing else decides, both are named.
     *
     * @return flight and what was seen, with that weight, unmodifiable
     */
    public Map<String, Double> suspects() {
        return suspects;
    }

    /**
     * How it was done.
     *
     * @return loss, rounds, covariance and whether launches have tolerances, in one line
     */
    public String method() {
        return loss.name().toLowerCase(Locale.ROOT) + ", " + rounds + " rounds, " + covariance.method()
                + (problem.residuals().isWhitened() ? ", tolerances of the launch propagated" : "");
    }

    /**
     * What to know.
     *
     * <ul>
     *   <li>{@code parameters-not-determined}: only a combination of those named is;
     *   <li>{@code parameters-hard-to-tell-apart}: the errors of two correlate by more than 0.95;
     *   <li>{@code parameter-on-bound}: its interval does not hold;
     *   <li>{@code residuals-far-out}: some observations hardly count or, by least squares, count in full and should not;
     *   <li>{@code rest-not-used}: total and run were seen; a calibration leaves them out, because they depend on the turf as much;
     *   <li>{@code noise-unlike-stated}: with priors, the residuals scatter twice or half as much as stated;
     *   <li>{@code not-settled}: the weights still moved in the last round.
     * </ul>
     *
     * @return the warnings, unmodifiable
     */
    public List<Warning> warnings() {
        return warnings;
    }

    private List<Warning> warnings(boolean settled) {
        List<String> names = problem.family().names();
        List<Warning> found = new ArrayList<>(1);
        for (List<Integer> mixture : covariance.mixtures()) {
            found.add(Warning.of(
                    "parameters-not-determined",
                    "the flights determine only a combination of "
                            + mixture.stream().map(names::get).toList()));
        }
        for (int a = 0; a < names.size(); a++) {
            for (int b = 0; b < a; b++) {
                double r = covariance.correlation(a, b).orElse(0.0);
                if (Math.abs(r) > ALIKE) {
                    found.add(Warning.of(
                            "parameters-hard-to-tell-apart",
                            String.format(
                                    Locale.ROOT,
                                    "the errors of %s and %s correlate by %.3f: the flights hardly tell them apart",
                                    names.get(b),
                                    names.get(a),
                                    r)));
                }
            }
            ParametricAerodynamics.Parameter p = problem.family().parameters().get(a);
            if (point[a] <= p.lowest() || point[a] >= p.highest()) {
                found.add(Warning.of(
                        "parameter-on-bound",
                        names.get(a) + " rests on its bound " + point[a] + ", so its interval fails"));
            }
        }
        if (!suspects.isEmpty()) {
            found.add(Warning.of(
                    "residuals-far-out",
                    "far from the fit, and "
                            + (loss == RobustLoss.SQUARES ? "counted in full by least squares: " : "hardly counted: ")
                            + suspects.keySet()));
        }
        int unused = problem.residuals().unused();
        if (unused > 0) {
            found.add(
                    Warning.of(
                            "rest-not-used",
                            unused
                                    + " observations of total or run are left out: they depend on the turf as much as on the flight"));
        }
        double seen = Calibration.robustScale(problem, point);
        if (problem.family().hasPrior() && observations() >= 8 && (seen > 2.0 || seen < 0.5)) {
            found.add(Warning.of(
                    "noise-unlike-stated",
                    String.format(
                            Locale.ROOT,
                            "the residuals scatter %.2g times as much as was stated and taken as known",
                            seen)));
        }
        if (!settled) {
            found.add(Warning.of("not-settled", "the weights had not settled after " + rounds + " rounds"));
        }
        return List.copyOf(found);
    }

    private int at(String name) {
        int j = problem.family().names().indexOf(name);
        if (j < 0) {
            throw new IllegalArgumentException("there is no parameter \"" + name + "\"; there are "
                    + problem.family().names());
        }
        return j;
    }

    @Override
    public String toString() {
        return problem.family().names().stream()
                .map(name -> name + " " + estimate(name))
                .toList()
                .toString();
    }
}
