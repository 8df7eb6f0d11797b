package dev.teeward.fitting.plan;

import dev.teeward.fitting.internal.Data;
import dev.teeward.fitting.internal.Distributions;
import dev.teeward.fitting.internal.GaussLegendre;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;

/**
 * What is known beforehand of the standard deviation of the paired differences: taken for known, or estimated from earlier
 * pairs.
 *
 * <p>From a pilot of m pairs with standard deviation s the true one is s / sqrt(chi-square(m - 1) / (m - 1)) (reference
 * prior), so that a chance becomes its mean over that distribution: the assurance (O'Hagan, Stevens and Campbell 2005).
 * After ten pairs the true value is within 0.69 and 1.83 times the estimate (95 %), so that a plan that takes a pilot's spread
 * for known is too hopeful.
 *
 * <pre>{@code
 * SpreadGuess known = SpreadGuess.known(6.0);
 * SpreadGuess pilot = SpreadGuess.ofPilot(6.0, 10);
 * pilot.value(); // 6.0
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class SpreadGuess {
    private static final GaussLegendre RULE = new GaussLegendre(20);
    private static final int PANELS = 3;

    private final double value;
    private final OptionalInt pairs;
    private final double[] ratios;
    private final double[] weights;

    private SpreadGuess(double value, OptionalInt pairs) {
        if (!(value > 0.0 && value < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("sd must be finite and above 0, but was " + value
                    + "; it is the standard deviation of the differences within pairs");
        }
        this.value = value;
        this.pairs = pairs;
        List<double[]> nodes = new ArrayList<>();
        if (pairs.isPresent()) {
            // Over the normal quantile of the probability, where nothing is steep; beyond 6 lies 2e-9.
            RULE.visit(
                    -6.0,
                    6.0,
                    PANELS,
                    (u, w) -> nodes.add(new double[] {
                        ratio(Distributions.normalCdf(u)), w * Math.exp(-0.5 * u * u) / Math.sqrt(2.0 * Math.PI)
                    }));
        } else {
            nodes.add(new double[] {1.0, 1.0});
        }
        ratios = nodes.stream().mapToDouble(node -> node[0]).toArray();
        weights = nodes.stream().mapToDouble(node -> node[1]).toArray();
    }

    /**
     * A standard deviation taken for known.
     *
     * @param sd the standard deviation of the differences within pairs, finite and above 0
     * @return the guess
     * @throws IllegalArgumentException if it is not
     */
    public static SpreadGuess known(double sd) {
        return new SpreadGuess(sd, OptionalInt.empty());
    }

    /**
     * A standard deviation estimated from earlier pairs.
     *
     * @param sd the standard deviation of their differences, finite and above 0
     * @param pairs how many pairs, at least 2
     * @return the guess
     * @throws IllegalArgumentException if a number is out of range
     */
    public static SpreadGuess ofPilot(double sd, int pairs) {
        if (pairs < 2) {
            throw new IllegalArgumentException("pairs of the pilot must be at least 2, but were " + pairs);
        }
        return new SpreadGuess(sd, OptionalInt.of(pairs));
    }

    /**
     * From the differences of earlier pairs.
     *
     * @param differences at least two finite numbers that are not all equal
     * @return the guess
     * @throws IllegalArgumentException if they are not
     */
    public static SpreadGuess ofDifferences(double... differences) {
        Data.check("differences", differences, 2);
        RunningLooks run = new RunningLooks(new double[differences.length + 1], 1.0);
        for (double difference : differences) {
            run.add(difference);
        }
        return ofPilot(run.standardDeviation(), differences.length);
    }

    /**
     * The standard deviation.
     *
     * @return the value, above 0
     */
    public double value() {
        return value;
    }

    /**
     * From how many pairs it comes.
     *
     * @return the pairs, or empty if it is taken for known
     */
    public OptionalInt pairs() {
        return pairs;
    }

    /** The mean of a function of the true standard deviation. */
    double expectation(DoubleUnaryOperator chance) {
        double sum = 0.0;
        for (int i = 0; i < ratios.length; i++) {
            sum += weights[i] * chance.applyAsDouble(value * ratios[i]);
        }
        return sum;
    }

    /** True standard deviations over the estimate, drawn. */
    double[] draw(SplittableRandom random, int draws) {
        double[] drawn = new double[draws];
        for (int i = 0; i < draws; i++) {
            // Stratified, so that the spread of the spread adds nothing to the noise of a simulation.
            drawn[i] = pairs.isPresent() ? ratio((i + random.nextDouble(1e-9, 1.0)) / draws) : 1.0;
        }
        return drawn;
    }

    private double ratio(double p) {
        double df = pairs.orElseThrow() - 1.0;
        return Math.sqrt(df / Distributions.chiSquareQuantile(p, df));
    }

    /** The value, and from how many pairs. */
    @Override
    public String toString() {
        return pairs.isPresent() ? value + " from " + pairs.getAsInt() + " pairs" : value + ", taken for known";
    }
}
