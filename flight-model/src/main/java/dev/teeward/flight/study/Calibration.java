package dev.teeward.flight.study;

import dev.teeward.flight.LaunchConditions;
import dev.teeward.flight.LaunchTolerance;
import dev.teeward.flight.aero.AerodynamicModel;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;

/**
 * Fits any parametrised aerodynamic model to observed flights, with the uncertainty of its parameters.
 *
 * <p>Residuals, model less observation over the standard deviation stated of the observation, are made small by an M-estimate:
 * {@link RobustLoss} weighs them, iteratively reweighted least squares solve for it, and the scale of the residuals is 1.4826
 * times the median of their sizes, times sqrt(n/(n - p)). The stated standard deviations only have to be right relative to each
 * other. Flights in different air stand together, each flown in its own.
 *
 * <p>Covariance: {@code k^2 s^2 [sum psi^2/(n - p)] / [mean psi']^2 (J'J)^-1}, {@code k = 1 + (p/n) var(psi')/mean(psi')^2}
 * (Huber 1981, Robust Statistics, 7.6; from memory), which for {@link RobustLoss#SQUARES} is the usual {@code s^2 (J'J)^-1};
 * intervals by Student's t on n - p. With {@link #withErrorsSharedWithinFlights} it is the sandwich over flights, for errors of
 * unknown size that carry, apex and descent of one flight have in common; it needs many flights, and with 40 is still a little
 * short (below).
 *
 * <p><b>Launches measured with errors.</b> One error of a measured launch moves carry, apex, descent and time of its flight
 * together; taken as independent errors of each, it makes intervals too short: with a device good to 0.5 percent of ball speed,
 * 0.3 deg, 3 percent of spin and 1 deg of tilt those of the lift held the truth in 88.4 percent in place of 95.
 * {@link #withLaunchTolerance} states these errors. The rows r of a flight, in standard deviations of the observations, then
 * have the covariance {@code S = I + A A'}: a column of A is what one standard deviation of one number of the launch does to
 * them, a difference over one standard deviation to either side, flown with the fitted coefficients. The fit makes
 * {@code r' S^-1 r} small: generalised least squares with the law of propagation (JCGM 102:2011, 6.2.1; from memory), the launch
 * itself left as measured. It is right to first order. What it leaves: the bias that the curvature of a flight in its launch
 * makes, of second order; and errors that all launches of a device have in common, which no number of flights tells.
 *
 * <p>A robust loss then judges an observation by what all others of its flight, each with its weight, let expect of it: t is the
 * difference over its standard deviation sqrt(v), with all weights 1 {@code (S^-1 r)_i / sqrt((S^-1)_ii)}, and a weight m makes
 * the variance v/m, so that a misread pulls no more than m t and does not make its neighbours look misread. In the covariance
 * above J'J becomes {@code J' S^-1 J}, psi' is taken at t, and sum psi^2 becomes {@code g' S g}, where J'g is the score.
 *
 * <p><b>Partial pooling.</b> Where the family has {@linkplain ParametricAerodynamics#withPrior priors} the stated standard
 * deviations are taken as known, because few flights cannot tell their own scatter: the estimate is the most probable one given
 * flights and prior, the covariance {@code (e J'J + prior)^-1} with e = 1, or 0.95, the efficiency of the robust losses, and
 * intervals are normal. Errors that the observations of a flight have in common must then be stated too, by the tolerance of
 * the launch: a sandwich would have to learn them from the scatter of some 20 flights, and where there are so many no prior is
 * needed. A ball with few flights stays near the prior, one with many goes its own way; the result says how far.
 *
 * <p>Measured, 2,000 synthetic sets each of flights from drive to wedge in two airs, normal errors in carry, apex, descent and
 * time: intervals at 95 percent held the true factors of drag and lift in 95.8 and 95.0 percent (Huber, 24 flights; by the
 * profile 95.8 and 95.1), 94.9 and 95.2 (least squares, also by the profile), 96.1 and 95.5 (errors shared, 40 flights), 95.9
 * and 95.6 (pooled, 3 flights of balls drawn from the prior). With the launches measured with errors as above, and stated: 94.2
 * and 95.1 (least squares, also by the profile); of 800 sets, 95.0 and 95.0 (Huber, 24 flights), 95.8 and 95.8 (pooled, 3
 * flights). With these errors not stated, 40 flights, of 800 sets: 95.5 and 93.4 with errors shared within flights, 95.5 and
 * 88.5 without.
 *
 * <pre>{@code
 * CalibrationResult fit = Calibration.withDefaults()
 *     .withStandardDeviation(FlightOutput.CARRY, 1.5)
 *     .withLaunchTolerance(LaunchTolerance.typical())
 *     .fit(ParametricAerodynamics.scaled(TypicalAerodynamics.of()), flights);
 * fit.estimate("drag_scale");
 * }</pre>
 *
 * <p>Immutable, and thread-safe if the family and the winds are.
 */
public final class Calibration {
    private static final double MEDIAN_TO_DEVIATION = 1.4826;
    private static final int MOST_ROUNDS = 60;
    private static final int MOST_PASSES = 60;
    private static final double SETTLED = 1e-6;

    private final Map<FlightOutput, Double> deviations;
    private final double trackDeviation;
    private final RobustLoss loss;
    private final double level;
    private final boolean shared;
    private final Optional<LaunchErrors> launches;

    private Calibration(
            Map<FlightOutput, Double> deviations,
            double trackDeviation,
            RobustLoss loss,
            double level,
            boolean shared,
            Optional<LaunchErrors> launches) {
        this.deviations = deviations;
        this.trackDeviation = trackDeviation;
        this.loss = Objects.requireNonNull(loss, "loss");
        this.level = level;
        this.shared = shared;
        this.launches = launches;
    }

    /**
     * Huber's loss, intervals at 95 percent, errors independent, the {@linkplain FlightOutput#standardDeviation() usual} standard
     * deviations, 0.3 m for each coordinate of a track point.
     *
     * @return the procedure
     */
    public static Calibration withDefaults() {
        return new Calibration(new EnumMap<>(FlightOutput.class), 0.3, RobustLoss.HUBER, 0.95, false, Optional.empty());
    }

    /**
     * A copy with the standard deviation of an observation.
     *
     * @param output what is observed
     * @param si its standard deviation, positive, in its SI unit
     * @return the copy
     * @throws IllegalArgumentException if it is not positive and finite
     */
    public Calibration withStandardDeviation(FlightOutput output, double si) {
        Map<FlightOutput, Double> changed = new EnumMap<>(FlightOutput.class);
        changed.putAll(deviations);
        changed.put(output, positive("standard deviation of " + output.key(), si));
        return new Calibration(changed, trackDeviation, loss, level, shared, launches);
    }

    /**
     * A copy with the standard deviation of each coordinate of a track point.
     *
     * @param meters the standard deviation, positive [m]
     * @return the copy
     * @throws IllegalArgumentException if it is not positive and finite
     */
    public Calibration withTrackStandardDeviation(double meters) {
        return new Calibration(
                deviations, positive("standard deviation of the track", meters), loss, level, shared, launches);
    }

    /**
     * A copy with another loss.
     *
     * @param value the loss
     * @return the copy
     */
    public Calibration withLoss(RobustLoss value) {
        return new Calibration(deviations, trackDeviation, value, level, shared, launches);
    }

    /**
     * A copy with intervals at another level.
     *
     * @param value the level, in (0, 1)
     * @return the copy
     * @throws IllegalArgumentException if it lies outside
     */
    public Calibration withLevel(double value) {
        if (!(value > 0.0 && value < 1.0)) {
            throw new IllegalArgumentException("level must be in (0, 1), but was " + value);
        }
        return new Calibration(deviations, trackDeviation, loss, value, shared, launches);
    }

    /**
     * A copy whose standard errors allow for errors, of unknown size, that the observations of one flight have in common. It fits
     * families without priors only: where there are priors, the noise is the one stated, not one found from the flights, and
     * {@link #withLaunchTolerance} states it.
     *
     * @return the copy
     */
    public Calibration withErrorsSharedWithinFlights() {
        return new Calibration(deviations, trackDeviation, loss, level, true, launches);
    }

    /**
     * A copy for launches that were measured with the same tolerances, whatever the shot.
     *
     * @param value the standard deviations of what was measured of each launch
     * @return the copy
     */
    public Calibration withLaunchTolerance(LaunchTolerance value) {
        Objects.requireNonNull(value, "value");
        return withLaunchTolerance(launch -> value);
    }

    /**
     * A copy for launches whose tolerances depend on the shot: those in percent, above all.
     *
     * @param tolerances the standard deviations of what was measured of a launch, as it was measured
     * @return the copy
     */
    public Calibration withLaunchTolerance(Function<LaunchConditions, LaunchTolerance> tolerances) {
        return new Calibration(
                deviations,
                trackDeviation,
                loss,
                level,
                shared,
                Optional.of(new LaunchErrors(Objects.requireNonNull(tolerances, "tolerances"))));
    }

    private static double positive(String name, double value) {
        if (!(value > 0.0 && value < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(name + " must be positive and finite, but was " + value);
        }
        return value;
    }

    /**
     * Fits a family.
     *
     * @param family the models, with the parameters to find
     * @param flights what was observed
     * @return the parameters with their uncertainty
     * @throws IllegalArgumentException if there is no parameter, there are no more observations than parameters and no priors,
     *     or there are priors and errors are {@linkplain #withErrorsSharedWithinFlights shared within flights}
     * @throws IllegalStateException if the fit does not converge
     */
    public CalibrationResult fit(ParametricAerodynamics family, List<ObservedFlight> flights) {
        int p = family.names().size();
        if (p == 0) {
            throw new IllegalArgumentException("the family has no parameter to fit");
        }
        if (shared && family.hasPrior()) {
            throw new IllegalArgumentException(
                    "errors shared within flights cannot be allowed for where the family has priors, because these take the"
                            + " stated noise as known; fit without priors, or state what the errors come from by"
                            + " withLaunchTolerance");
        }
        Residuals residuals = new Residuals(List.copyOf(flights), deviations, trackDeviation);
        int n = residuals.rows();
        if (n == 0 || (n <= p && !family.hasPrior())) {
            throw new IllegalArgumentException(
                    n + " observations cannot tell " + p + " parameters; at least " + (p + 1) + " are needed");
        }
        FitProblem problem = new FitProblem(family, residuals);
        double[] point = problem.fit(family.start(), -1);
        int rounds = 1;
        boolean settled = loss == RobustLoss.SQUARES && launches.isEmpty();
        while (!settled && rounds < MOST_ROUNDS) {
            AerodynamicModel model = family.model(point);
            Residuals last = residuals;
            residuals =
                    weighed(launches.map(errors -> last.whitened(errors, model)).orElse(last), family, model);
            problem = new FitProblem(family, residuals);
            double[] next = problem.fit(point, -1);
            settled = moved(family, point, next) < SETTLED;
            point = next;
            rounds++;
        }
        return new CalibrationResult(problem, point, scale(problem, point), loss, level, shared, rounds, settled);
    }

    /**
     * The weights of the rows at a model. With errors of the launch a row is judged by the others of its flight, so that weights
     * depend on weights: half steps, because whole ones may swing.
     */
    private Residuals weighed(Residuals residuals, ParametricAerodynamics family, AerodynamicModel model) {
        List<double[]> raw = residuals.raw(model);
        double step = residuals.isWhitened() ? 0.5 : 1.0;
        Residuals at = residuals;
        for (int pass = 0; pass < (residuals.isWhitened() ? MOST_PASSES : 1); pass++) {
            double scale = family.hasPrior()
                    ? 1.0
                    : robustScale(at.judged(raw), family.names().size());
            double[] wanted = at.weights(loss, scale, raw);
            double[] weights = at.weights();
            double most = 0.0;
            for (int i = 0; i < weights.length; i++) {
                double change = step * (wanted[i] - weights[i]);
                weights[i] += change;
                most = Math.max(most, Math.abs(change));
            }
            at = at.weighed(weights);
            if (most < SETTLED) {
                break;
            }
        }
        return at;
    }

    /** The scale of the residuals: known where there are priors, never nothing. */
    private static double scale(FitProblem problem, double[] point) {
        return problem.family().hasPrior() ? 1.0 : robustScale(problem, point);
    }

    static double robustScale(FitProblem problem, double[] point) {
        Residuals residuals = problem.residuals();
        return robustScale(residuals.judged(residuals.raw(problem.family().model(point))), point.length);
    }

    private static double robustScale(double[] rows, int parameters) {
        double[] sizes = Arrays.stream(rows).map(Math::abs).sorted().toArray();
        int n = sizes.length;
        double median = n % 2 == 1 ? sizes[n / 2] : 0.5 * (sizes[n / 2 - 1] + sizes[n / 2]);
        double few = Math.sqrt(n / Math.max(1.0, n - parameters));
        // Flights without any error have no scale; a millionth of the stated one keeps the division whole.
        return Math.max(1e-6, MEDIAN_TO_DEVIATION * median * few);
    }

    private static double moved(ParametricAerodynamics family, double[] from, double[] to) {
        double most = 0.0;
        for (int j = 0; j < from.length; j++) {
            ParametricAerodynamics.Parameter p = family.parameters().get(j);
            most = Math.max(most, Math.abs(to[j] - from[j]) / (p.highest() - p.lowest()));
        }
        return most;
    }
}
