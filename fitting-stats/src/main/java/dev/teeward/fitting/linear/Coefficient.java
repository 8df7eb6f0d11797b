package dev.teeward.fitting.linear;

import dev.teeward.fitting.internal.Distributions;
import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.Interval;
import dev.teeward.quantity.Unit;
import java.util.OptionalDouble;

/**
 * A coefficient, a mean or a contrast of a linear model: estimate with interval, standard error, t, degrees of freedom and
 * p.
 *
 * <p>t is the estimate over its standard error and p two-sided against 0. Where the data leave no error the interval is
 * unbounded, p is 1, and error and t are absent.
 *
 * <pre>{@code
 * Coefficient club = fit.coefficient("club=Rowan");
 * club.estimate().interval();
 * club.pValue();
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class Coefficient {
    private final String name;
    private final Estimate estimate;
    private final OptionalDouble standardError;
    private final double degreesOfFreedom;
    private final double pValue;

    private Coefficient(
            String name, Estimate estimate, OptionalDouble standardError, double degreesOfFreedom, double pValue) {
        this.name = name;
        this.estimate = estimate;
        this.standardError = standardError;
        this.degreesOfFreedom = degreesOfFreedom;
        this.pValue = pValue;
    }

    /** From an error; 0 or not a number stands for no known error. */
    static Coefficient of(String name, double value, double error, double df, double level, Unit unit) {
        if (!(error > 0.0) || !(df > 0.0) || !Double.isFinite(error) || Double.isInfinite(df)) {
            return new Coefficient(
                    name,
                    Estimate.of(value + 0.0, Interval.unbounded(level), unit),
                    OptionalDouble.empty(),
                    df > 0.0 && !Double.isInfinite(df) ? df : 0.0,
                    1.0);
        }
        double reach = Distributions.tQuantile(0.5 + 0.5 * level, df) * error;
        double p = Math.min(1.0, 2.0 * Distributions.tUpperTail(Math.abs(value / error), df));
        Interval interval = Interval.of(value - reach, value + reach, level);
        return new Coefficient(name, Estimate.of(value + 0.0, interval, unit), OptionalDouble.of(error), df, p);
    }

    /**
     * The name.
     *
     * @return such as {@code club=Rowan} or {@code speed}
     */
    public String name() {
        return name;
    }

    /**
     * The estimate with its interval.
     *
     * @return the estimate, in the unit of the response over that of the column
     */
    public Estimate estimate() {
        return estimate;
    }

    /**
     * The standard error.
     *
     * @return its value, above 0, or empty if the data do not show it
     */
    public OptionalDouble standardError() {
        return standardError;
    }

    /**
     * The estimate over its standard error.
     *
     * @return t, or empty if there is no error
     */
    public OptionalDouble t() {
        return standardError.isPresent()
                ? OptionalDouble.of(estimate.value() / standardError.getAsDouble())
                : OptionalDouble.empty();
    }

    /**
     * The degrees of freedom of t.
     *
     * @return a number of at least 0, possibly broken
     */
    public double degreesOfFreedom() {
        return degreesOfFreedom;
    }

    /**
     * The two-sided p against 0.
     *
     * @return in [0, 1]; 1 if there is no error
     */
    public double pValue() {
        return pValue;
    }

    /** Name, estimate and p. */
    @Override
    public String toString() {
        return name + ": " + estimate + ", p = " + pValue;
    }
}
