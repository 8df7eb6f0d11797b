package dev.teeward.flight.aero;

import java.io.Serializable;
import java.util.Objects;
import java.util.function.ToDoubleFunction;
import java.util.random.RandomGenerator;
import org.jspecify.annotations.Nullable;

/**
 * How much the coefficients differ from ball to ball: a relative standard deviation of drag, one of lift, and their
 * correlation.
 *
 * <p>One ball is taken to have {@code (1 + a) Cd} and {@code (1 + b) Cl} in every state, a and b normal with mean 0 and
 * these standard deviations. That is the simplest statement of a spread and leaves out balls whose curves have another
 * shape. Published (Lyu, Kensrud, Smith, Tosaya 2018, abstract): 13 models differ by less than 0.05 in drag above Re 1e5;
 * the range of 13 normal values is 3.34 standard deviations on average, so that is at most 0.015, or 6 percent of 0.24. Of
 * lift no spread is published there.
 *
 * <pre>{@code
 * CoefficientSpread spread = CoefficientSpread.of(0.03, 0.05);
 * ToDoubleFunction<AerodynamicModel> carry = m -> FlightModel.of(Ball.of(m)).fly(launch).carry().meters();
 * double sd = spread.standardDeviation(TypicalAerodynamics.of(), carry); // [m]
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class CoefficientSpread implements Serializable {
    private static final long serialVersionUID = 1L;

    /** The relative standard deviation of drag. */
    private final double drag;

    /** The relative standard deviation of lift. */
    private final double lift;

    /** The correlation of the two. */
    private final double correlation;

    private CoefficientSpread(double drag, double lift, double correlation) {
        this.drag = within("drag", drag, 0.0, 0.3);
        this.lift = within("lift", lift, 0.0, 0.3);
        this.correlation = within("correlation", correlation, -1.0, 1.0);
    }

    private static double within(String name, double value, double low, double high) {
        if (!(value >= low && value <= high)) {
            throw new IllegalArgumentException(name + " must be in [" + low + ", " + high + "], but was " + value
                    + "; standard deviations are relative, 0.05 for 5 percent");
        }
        return value;
    }

    /**
     * A spread in which drag and lift vary independently.
     *
     * @param drag the relative standard deviation of the drag coefficient, in [0, 0.3]
     * @param lift the relative standard deviation of the lift coefficient, in [0, 0.3]
     * @return the spread
     * @throws IllegalArgumentException if one lies outside
     */
    public static CoefficientSpread of(double drag, double lift) {
        return new CoefficientSpread(drag, lift, 0.0);
    }

    /**
     * A copy in which drag and lift vary together.
     *
     * @param value the correlation, in [-1, 1]
     * @return the copy
     * @throws IllegalArgumentException if it lies outside
     */
    public CoefficientSpread withCorrelation(double value) {
        return new CoefficientSpread(drag, lift, value);
    }

    /**
     * The relative standard deviation of the drag coefficient.
     *
     * @return the standard deviation, in [0, 0.3]
     */
    public double drag() {
        return drag;
    }

    /**
     * The relative standard deviation of the lift coefficient.
     *
     * @return the standard deviation, in [0, 0.3]
     */
    public double lift() {
        return lift;
    }

    /**
     * The correlation of drag and lift.
     *
     * @return the correlation, in [-1, 1]
     */
    public double correlation() {
        return correlation;
    }

    /**
     * One ball out of this spread.
     *
     * @param model the ball in the middle
     * @param random where chance comes from; two normal deviates are drawn
     * @return the model with drag and lift multiplied; a factor below 0.05, 3 standard deviations or more away, is 0.05
     */
    public AerodynamicModel draw(AerodynamicModel model, RandomGenerator random) {
        double first = random.nextGaussian();
        double second = random.nextGaussian();
        double other = correlation * first + Math.sqrt((1.0 - correlation) * (1.0 + correlation)) * second;
        return AerodynamicModel.scaled(model, Math.max(0.05, 1.0 + drag * first), Math.max(0.05, 1.0 + lift * other));
    }

    /**
     * The standard deviation that the spread gives any number computed from a model, to first order: differences over one
     * standard deviation to either side of each coefficient, four evaluations.
     *
     * @param model the ball in the middle
     * @param result the number, such as the carry of a flight
     * @return the standard deviation, in the unit of the number
     */
    public double standardDeviation(AerodynamicModel model, ToDoubleFunction<AerodynamicModel> result) {
        return deviation(effects(model, result));
    }

    /**
     * The likeliest ball at which a number computed from a model lies so many of its standard deviations off, to first order;
     * four evaluations. With -1.96 and 1.96 these are the balls at the ends of what 95 of 100 balls give.
     *
     * @param model the ball in the middle
     * @param result the number, such as the carry of a flight
     * @param deviations how far off, in {@linkplain #standardDeviation standard deviations} of the number, in [-3, 3]
     * @return the model with drag and lift multiplied; the model itself if the spread does nothing to the number
     * @throws IllegalArgumentException if the deviations lie outside
     */
    public AerodynamicModel ballAt(
            AerodynamicModel model, ToDoubleFunction<AerodynamicModel> result, double deviations) {
        if (!(deviations >= -3.0 && deviations <= 3.0)) {
            throw new IllegalArgumentException("deviations must be in [-3, 3], but was " + deviations
                    + "; it counts standard deviations of the result");
        }
        double[] effects = effects(model, result);
        double whole = deviation(effects);
        if (whole == 0.0) {
            return model;
        }
        double first = deviations * (effects[0] + correlation * effects[1]) / whole;
        double other = deviations * (effects[1] + correlation * effects[0]) / whole;
        return AerodynamicModel.scaled(model, Math.max(0.05, 1.0 + drag * first), Math.max(0.05, 1.0 + lift * other));
    }

    /** What one standard deviation of drag does to a number, and one of lift. */
    private double[] effects(AerodynamicModel model, ToDoubleFunction<AerodynamicModel> result) {
        double byDrag = drag == 0.0
                ? 0.0
                : 0.5
                        * (result.applyAsDouble(AerodynamicModel.scaled(model, 1.0 + drag, 1.0))
                                - result.applyAsDouble(AerodynamicModel.scaled(model, 1.0 - drag, 1.0)));
        double byLift = lift == 0.0
                ? 0.0
                : 0.5
                        * (result.applyAsDouble(AerodynamicModel.scaled(model, 1.0, 1.0 + lift))
                                - result.applyAsDouble(AerodynamicModel.scaled(model, 1.0, 1.0 - lift)));
        return new double[] {byDrag, byLift};
    }

    private double deviation(double[] effects) {
        double variance =
                effects[0] * effects[0] + effects[1] * effects[1] + 2.0 * correlation * effects[0] * effects[1];
        return Math.sqrt(Math.max(0.0, variance));
    }

    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof CoefficientSpread that
                && Double.compare(drag, that.drag) == 0
                && Double.compare(lift, that.lift) == 0
                && Double.compare(correlation, that.correlation) == 0;
    }

    @Override
    public int hashCode() {
        return Objects.hash(drag, lift, correlation);
    }

    @Override
    public String toString() {
        return "drag " + 100.0 * drag + " %, lift " + 100.0 * lift + " %, correlation " + correlation;
    }
}
