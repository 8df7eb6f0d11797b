package dev.teeward.flight.study;

import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.Interval;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.random.RandomGenerator;
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
 * <pre>{@code
 * TolerancePropagation p = TolerancePropagation.withDefaults().withLevel(0.95);
 * p.linear(Sensitivity.of(model).at(launch), device).estimate(FlightOutput.CARRY);
 * p.simulated(Sensitivity.of(model).at(launch), device, 10_000, new SplittableRandom(1)).estimate(FlightOutput.CARRY);
 * }</pre>
 *
 * <p>Immutable and thread-safe, the generator excepted.
 */
public final class TolerancePropagation {
    private static final int FEWEST_DRAWS = 100;

    private final double level;

    private TolerancePropagation(double level) {
        this.level = level;
    }

    /**
     * Intervals at 95 percent.
     *
     * @return the procedure
     */
    public static TolerancePropagation withDefaults() {
        return new TolerancePropagation(0.95);
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
        return new TolerancePropagation(value);
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
        int n = FlightOutput.values().length;
        double[] values = new double[n];
        double[][] along = new double[axes.length][n];
        for (FlightOutput output : FlightOutput.values()) {
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
        double z = new NormalDistribution(0.0, 1.0).inverseCumulativeProbability(0.5 + level / 2.0);
        double[] lower = new double[n];
        double[] upper = new double[n];
        for (int o = 0; o < n; o++) {
            lower[o] = values[o] - z * deviations[o];
            upper[o] = values[o] + z * deviations[o];
        }
        List<Warning> warnings = new ArrayList<>(sensitivity.warnings());
        Neighbourhood.addCurvature(sensitivity.situation(), inputs, axes, along, deviations, warnings);
        return new Result("linear", level, values, deviations, lower, upper, warnings);
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
        if (draws < FEWEST_DRAWS) {
            throw new IllegalArgumentException("draws must be at least " + FEWEST_DRAWS + ", but were " + draws);
        }
        Situation situation = sensitivity.situation();
        FlightInput[] inputs = tolerances.inputs().toArray(new FlightInput[0]);
        double[][] axes = tolerances.axes();
        FlightOutput[] outputs = FlightOutput.values();
        double[][] drawn = new double[outputs.length][draws];
        int flown = 0;
        for (int draw = 0; draw < draws; draw++) {
            double[] error = new double[inputs.length];
            for (double[] axis : axes) {
                double gauss = random.nextGaussian();
                for (int i = 0; i < error.length; i++) {
                    error[i] += gauss * axis[i];
                }
            }
            double[] values = Neighbourhood.library(situation, inputs, error);
            if (values.length > 0) {
                for (int o = 0; o < outputs.length; o++) {
                    drawn[o][flown] = values[o];
                }
                flown++;
            }
        }
        if (flown < 2) {
            throw new IllegalArgumentException("no draw gives a flight: the tolerances reach where nothing flies");
        }
        List<Warning> warnings = new ArrayList<>(1);
        if (flown < draws) {
            warnings.add(Warning.of(
                    "draws-without-a-flight",
                    (draws - flown) + " of " + draws
                            + " draws have no flight and are left out: an input beyond its range, or a"
                            + " ball that does not come to the landing elevation"));
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
    private static double quantile(double[] sorted, double q) {
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
         */
        public Estimate estimate(FlightOutput output) {
            int o = output.place();
            return Estimate.of(values[o], Interval.of(lower[o], upper[o], level), output.unit());
        }

        /**
         * The standard deviation of a number of the flight.
         *
         * @param output which
         * @return the standard deviation, in the SI unit
         */
        public double standardDeviation(FlightOutput output) {
            return deviations[output.place()];
        }

        /**
         * What to know: {@code linearization-fails}, {@code draws-without-a-flight}, and what the derivatives warn of.
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
