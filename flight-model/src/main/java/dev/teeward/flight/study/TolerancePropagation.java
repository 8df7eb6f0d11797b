package dev.teeward.flight.study;

import dev.teeward.flight.Flight;
import dev.teeward.flight.FlightModel;
import dev.teeward.flight.LaunchConditions;
import dev.teeward.flight.aero.AerodynamicModel;
import dev.teeward.flight.aero.CoefficientSpread;
import dev.teeward.flight.ground.TurfSpread;
import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.Interval;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.random.RandomGenerator;
import java.util.stream.Stream;
import org.hipparchus.distribution.continuous.NormalDistribution;

/**
 * From how well a launch, the air and the ball are known to how well the flight is: intervals of carry, side, apex and the
 * rest.
 *
 * <p>{@link #linear} is the law of propagation, {@code cov(out) = D cov(in) D'} with the derivatives D of {@link Sensitivity},
 * and intervals of normal errors (JCGM 100:2008, Guide to the expression of uncertainty in measurement, 5.2.2). Two flights
 * along every principal axis of the errors, 1.73 standard deviations to either side (the points of the unscented
 * transformation of Julier and Uhlmann 1997), look for what the derivatives miss: where that is more than a tenth of the
 * standard deviation of an output, the result warns ({@code linearization-fails}), and {@link #simulated} should be asked.
 *
 * <p>{@link #simulated} draws the errors and flies each draw (JCGM 101:2008): mean, standard deviation and the equal-tailed
 * interval of the draws. The same generator state gives the same result.
 *
 * <p>Total and run depend on the turf more than on anything here. {@link #withTurfSpread} says how well it is known; without it
 * they take it as known, and the result warns: {@code turf-taken-as-known}. A delivery of the club instead of a launch goes to
 * {@link DeliveryPropagation}.
 *
 * <p>{@link #betweenBalls} is the same for a launch known exactly and a ball that is one of its kind: factors on drag and lift,
 * as the aerodynamic model states their spread.
 *
 * <pre>{@code
 * TolerancePropagation p = TolerancePropagation.withDefaults().withLevel(0.95);
 * p.linear(Sensitivity.of(model).at(launch), device).estimate(FlightOutput.CARRY);
 * p.simulated(Sensitivity.of(model).at(launch), device, 10_000, new SplittableRandom(1)).estimate(FlightOutput.CARRY);
 * p.betweenBalls(model, launch, 1_000, new SplittableRandom(1)).estimate(FlightOutput.CARRY);
 * }</pre>
 *
 * <p>Immutable and thread-safe, the generator excepted.
 */
public final class TolerancePropagation {
    private static final int FEWEST_DRAWS = 100;

    /** What to say of every total where nobody said how well the turf is known. */
    static final Warning TURF_TAKEN_AS_KNOWN = Warning.of(
            "turf-taken-as-known",
            "the intervals of total and run take the turf as known exactly; between a soft and a firm fairway the same drive can end"
                    + " tens of yards apart. State a TurfSpread");

    private final double level;
    private final Optional<TurfSpread> turf;

    private TolerancePropagation(double level, Optional<TurfSpread> turf) {
        this.level = level;
        this.turf = turf;
    }

    /**
     * Intervals at 95 percent.
     *
     * @return the procedure
     */
    public static TolerancePropagation withDefaults() {
        return new TolerancePropagation(0.95, Optional.empty());
    }

    /**
     * A copy with another level.
     *
     * @param value the level, in (0, 1)
     * @return the copy
     * @throws IllegalArgumentException if it lies outside
     */
    public TolerancePropagation withLevel(double value) {
        if (!(value > 0.0 && value < 1.0)) {
            throw new IllegalArgumentException("level must be in (0, 1), but was " + value);
        }
        return new TolerancePropagation(value, turf);
    }

    /**
     * A copy that knows the turf of the model's ground only so well; it changes total and run alone.
     *
     * @param spread how well, {@link TurfSpread#typical()} for common practice
     * @return the copy
     */
    public TolerancePropagation withTurfSpread(TurfSpread spread) {
        return new TolerancePropagation(level, Optional.of(spread));
    }

    /**
     * Propagates by the derivatives.
     *
     * @param sensitivity the derivatives at the launch
     * @param tolerances how well the inputs are known
     * @return the flight with its intervals
     * @throws IllegalArgumentException if there are no derivatives to an input that has a tolerance
     */
    public Result linear(Sensitivity.Result sensitivity, Tolerances tolerances) {
        FlightInput[] inputs = tolerances.inputs().toArray(new FlightInput[0]);
        double[][] axes = tolerances.axes();
        List<FlightOutput> outputs = sensitivity.outputs();
        int n = outputs.size();
        double[] values = new double[n];
        double[][] along = new double[axes.length][n];
        for (FlightOutput output : outputs) {
            values[output.place()] = sensitivity.value(output);
            for (int k = 0; k < axes.length; k++) {
                for (int i = 0; i < inputs.length; i++) {
                    along[k][output.place()] += sensitivity.derivative(output, inputs[i]) * axes[k][i];
                }
            }
        }
        double[] deviations = new double[n];
        for (double[] axis : along) {
            for (int o = 0; o < n; o++) {
                deviations[o] = Math.hypot(deviations[o], axis[o]);
            }
        }
        List<Warning> warnings = new ArrayList<>(sensitivity.warnings());
        Neighbourhood.addCurvature(sensitivity.situation(), outputs, inputs, axes, along, deviations, warnings);
        addTurf(sensitivity.situation(), outputs, deviations, warnings);
        double z = new NormalDistribution(0.0, 1.0).inverseCumulativeProbability(0.5 + level / 2.0);
        double[] lower = new double[n];
        double[] upper = new double[n];
        for (int o = 0; o < n; o++) {
            lower[o] = values[o] - z * deviations[o];
            upper[o] = values[o] + z * deviations[o];
        }
        return new Result("linear", level, values, deviations, lower, upper, warnings);
    }

    private void addTurf(Situation situation, List<FlightOutput> outputs, double[] deviations, List<Warning> warnings) {
        if (outputs.contains(FlightOutput.TOTAL)) {
            turf.ifPresentOrElse(
                    spread -> Neighbourhood.addTurf(situation, outputs, spread, deviations, warnings),
                    () -> warnings.add(TURF_TAKEN_AS_KNOWN));
        }
    }

    /**
     * Propagates by simulation.
     *
     * @param sensitivity what was asked at the launch; only the launch, the air and the model are used
     * @param tolerances how well the inputs are known
     * @param draws how many flights, at least 100; 10,000 give the ends of a 95 percent interval to 3 percent of its width
     * @param random where the errors come from
     * @return the flight with its intervals
     * @throws IllegalArgumentException if there are fewer draws, or none of them flies
     */
    public Result simulated(Sensitivity.Result sensitivity, Tolerances tolerances, int draws, RandomGenerator random) {
        return simulated(sensitivity.situation(), sensitivity.outputs(), tolerances, draws, random);
    }

    /**
     * The flights of different balls of one kind, launched alike: what not knowing the ball costs.
     *
     * @param model whose ball states how much balls of its kind differ, {@link AerodynamicModel#spread()}
     * @param launch the launch, known exactly
     * @param draws how many balls, at least 100
     * @param random where they come from
     * @return the flight with its intervals, which hold {@link #withLevel the level} of the balls
     * @throws IllegalArgumentException if the aerodynamic model states no spread, there are fewer draws, or none of them flies
     */
    public Result betweenBalls(FlightModel model, LaunchConditions launch, int draws, RandomGenerator random) {
        AerodynamicModel ball = model.ball().aerodynamics();
        CoefficientSpread spread = ball.spread()
                .orElseThrow(() -> new IllegalArgumentException("the ball's model (" + ball.reference()
                        + ") states no spread; give one to Tolerances.withBallSpread and ask simulated"));
        Flight middle = model.fly(launch);
        List<FlightOutput> outputs =
                Stream.of(FlightOutput.values()).filter(o -> o.knownOf(middle)).toList();
        return simulated(
                Situation.of(model, null, launch), outputs, Tolerances.none().withBallSpread(spread), draws, random);
    }

    private Result simulated(
            Situation situation, List<FlightOutput> outputs, Tolerances tolerances, int draws, RandomGenerator random) {
        if (draws < FEWEST_DRAWS) {
            throw new IllegalArgumentException("draws must be at least " + FEWEST_DRAWS + ", but were " + draws);
        }
        FlightInput[] inputs = tolerances.inputs().toArray(new FlightInput[0]);
        double[][] axes = tolerances.axes();
        double[][] drawn = new double[outputs.size()][draws];
        boolean total = outputs.contains(FlightOutput.TOTAL);
        int flown = 0;
        for (int draw = 0; draw < draws; draw++) {
            double[] error = new double[inputs.length];
            for (double[] axis : axes) {
                double gauss = random.nextGaussian();
                for (int i = 0; i < error.length; i++) {
                    error[i] += gauss * axis[i];
                }
            }
            Situation here =
                    turf.isPresent() && total ? situation.onTurf(turf.orElseThrow(), random.nextGaussian()) : situation;
            double[] values = Neighbourhood.library(here, outputs, inputs, error);
            if (values.length > 0) {
                for (int o = 0; o < drawn.length; o++) {
                    drawn[o][flown] = values[o];
                }
                flown++;
            }
        }
        if (flown < 2) {
            throw new IllegalArgumentException("no draw gives a flight: the tolerances reach where nothing flies");
        }
        List<Warning> warnings = new ArrayList<>(2);
        if (total && turf.isEmpty()) {
            warnings.add(TURF_TAKEN_AS_KNOWN);
        }
        if (flown < draws) {
            warnings.add(Warning.of(
                    "draws-without-a-flight",
                    (draws - flown) + " of " + draws
                            + " draws have no flight and are left out: an input beyond its range, or a"
                            + " ball that does not come to the landing elevation or whose rest is not known"));
        }
        return summary(drawn, flown, warnings);
    }

    private Result summary(double[][] drawn, int flown, List<Warning> warnings) {
        int n = drawn.length;
        double[] means = new double[n];
        double[] deviations = new double[n];
        double[] lower = new double[n];
        double[] upper = new double[n];
        for (int o = 0; o < n; o++) {
            double[] sorted = Arrays.copyOf(drawn[o], flown);
            Arrays.sort(sorted);
            means[o] = Arrays.stream(sorted).average().orElseThrow();
            double mean = means[o];
            deviations[o] = Math.sqrt(
                    Arrays.stream(sorted).map(v -> (v - mean) * (v - mean)).sum() / (flown - 1));
            lower[o] = quantile(sorted, (1.0 - level) / 2.0);
            upper[o] = quantile(sorted, (1.0 + level) / 2.0);
        }
        return new Result("simulated", level, means, deviations, lower, upper, warnings);
    }

    /** Linear between order statistics, at (n - 1) q: definition 7 of Hyndman and Fan 1996. */
    static double quantile(double[] sorted, double q) {
        double at = q * (sorted.length - 1);
        int below = (int) at;
        double share = at - below;
        return below + 1 < sorted.length ? sorted[below] + share * (sorted[below + 1] - sorted[below]) : sorted[below];
    }

    /**
     * A flight with its uncertainty.
     *
     * <p>Immutable and thread-safe.
     */
    public static final class Result {
        private final String method;
        private final double level;
        private final double[] values;
        private final double[] deviations;
        private final double[] lower;
        private final double[] upper;
        private final List<Warning> warnings;

        private Result(
                String method,
                double level,
                double[] values,
                double[] deviations,
                double[] lower,
                double[] upper,
                List<Warning> warnings) {
            this.method = Objects.requireNonNull(method, "method");
            this.level = level;
            this.values = values;
            this.deviations = deviations;
            this.lower = lower;
            this.upper = upper;
            this.warnings = List.copyOf(warnings);
        }

        /**
         * Which method was used.
         *
         * @return {@code linear} or {@code simulated}
         */
        public String method() {
            return method;
        }

        /**
         * A number of the flight with its interval.
         *
         * @param output which
         * @return the value (of the flight, or the mean of the draws) and the interval, in the SI unit
         * @throws IllegalArgumentException if the flight has no total
         */
        public Estimate estimate(FlightOutput output) {
            int o = place(output);
            return Estimate.of(values[o], Interval.of(lower[o], upper[o], level), output.unit());
        }

        /**
         * The standard deviation of a number of the flight.
         *
         * @param output which
         * @return the standard deviation, in the SI unit
         * @throws IllegalArgumentException if the flight has no total
         */
        public double standardDeviation(FlightOutput output) {
            return deviations[place(output)];
        }

        private int place(FlightOutput output) {
            if (output.place() >= values.length) {
                throw output.noTotal();
            }
            return output.place();
        }

        /**
         * What to know: {@code linearization-fails}, {@code draws-without-a-flight}, {@code turf-taken-as-known} where there is a
         * total and no {@linkplain #withTurfSpread spread of the turf}, and what the derivatives warn of.
         *
         * @return the warnings, unmodifiable, usually none
         */
        public List<Warning> warnings() {
            return warnings;
        }

        @Override
        public String toString() {
            return method + ": carry " + estimate(FlightOutput.CARRY) + ", side " + estimate(FlightOutput.SIDE);
        }
    }
}
