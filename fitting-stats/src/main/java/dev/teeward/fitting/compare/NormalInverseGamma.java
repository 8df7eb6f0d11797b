package dev.teeward.fitting.compare;

import dev.teeward.fitting.internal.Distributions;
import dev.teeward.fitting.internal.Sample;
import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.Interval;
import dev.teeward.quantity.Unit;
import org.apache.commons.numbers.gamma.LogGamma;

/**
 * What is known of a mean and a variance before or after some shots, when earlier sessions are to count: the variance is
 * inverse gamma (shape a, scale b) and the mean, given the variance, normal about m with variance over k (Gelman et al.,
 * Bayesian Data Analysis, 3rd ed., section 3.3).
 *
 * <p>After n shots of mean y and sum of squares Q: k' = k + n, m' = (k m + n y) / k', a' = a + n/2, b' = b + Q/2 + k n (y - m)^2 /
 * (2 k'). The mean is then t with 2 a' degrees of freedom about m' with scale sqrt(b' / (a' k')), the next shot t with scale
 * sqrt(b' (k' + 1) / (a' k')).
 *
 * <pre>{@code
 * NormalInverseGamma before = NormalInverseGamma.of(168.0, 4.0, 3.0, 40.0); // like four shots at 168
 * NormalInverseGamma after = before.after(carry);
 * after.mean(0.95, LengthUnit.YARD).interval();
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class NormalInverseGamma {
    private final double m;
    private final double k;
    private final double a;
    private final double b;

    private NormalInverseGamma(double m, double k, double a, double b) {
        this.m = m;
        this.k = k;
        this.a = a;
        this.b = b;
    }

    /**
     * A state of knowledge.
     *
     * @param location m, finite
     * @param weight k: how many shots the location is worth, above 0
     * @param shape a: half of how many degrees of freedom the variance is worth, above 0
     * @param scale b: shape times the variance expected, roughly, above 0
     * @return the state
     * @throws IllegalArgumentException if a number is outside its range
     */
    public static NormalInverseGamma of(double location, double weight, double shape, double scale) {
        if (!Double.isFinite(location)) {
            throw new IllegalArgumentException("location must be finite, but was " + location);
        }
        checkPositive("weight", weight);
        checkPositive("shape", shape);
        checkPositive("scale", scale);
        return new NormalInverseGamma(location, weight, shape, scale);
    }

    private static void checkPositive(String name, double value) {
        if (!(value > 0.0) || Double.isInfinite(value)) {
            throw new IllegalArgumentException(name + " must be finite and above 0, but was " + value);
        }
    }

    /**
     * What is known after some shots.
     *
     * @param x the shots, at least one number, all finite
     * @return the new state
     * @throws IllegalArgumentException if there is no shot or a number is not finite
     */
    public NormalInverseGamma after(double... x) {
        Sample s = Sample.of("x", x);
        double n = s.size();
        double more = k + n;
        double d = s.mean() - m;
        double squares = n > 1 ? (n - 1.0) * s.variance() : 0.0;
        return new NormalInverseGamma(
                (k * m + n * s.mean()) / more, more, a + 0.5 * n, b + 0.5 * squares + k * n * d * d / (2.0 * more));
    }

    /**
     * The logarithm of the probability density of shots before they were made, for comparing states of knowledge.
     *
     * @param x the shots, at least one number, all finite
     * @return the natural logarithm
     * @throws IllegalArgumentException if there is no shot or a number is not finite
     */
    public double logMarginal(double... x) {
        NormalInverseGamma after = after(x);
        return LogGamma.value(after.a)
                - LogGamma.value(a)
                + a * Math.log(b)
                - after.a * Math.log(after.b)
                + 0.5 * Math.log(k / after.k)
                - 0.5 * x.length * Math.log(2.0 * Math.PI);
    }

    /**
     * The mean.
     *
     * @param level the probability of the interval, in (0, 1)
     * @param unit the unit of the numbers
     * @return the location with its interval of equal tails
     * @throws IllegalArgumentException if the level is not in (0, 1)
     */
    public Estimate mean(double level, Unit unit) {
        return t(level, unit, meanScale());
    }

    /**
     * The next shot.
     *
     * @param level the probability of the interval, in (0, 1)
     * @param unit the unit of the numbers
     * @return the location with the interval that holds the next shot
     * @throws IllegalArgumentException if the level is not in (0, 1)
     */
    public Estimate nextShot(double level, Unit unit) {
        return t(level, unit, nextShotScale());
    }

    private Estimate t(double level, Unit unit, double scale) {
        Options.DEFAULTS.withLevel(level);
        double reach = Distributions.tQuantile(0.5 + 0.5 * level, 2.0 * a) * scale;
        return Estimate.of(m, Interval.of(m - reach, m + reach, level), unit);
    }

    /**
     * m.
     *
     * @return the location, in the unit of the numbers
     */
    public double location() {
        return m;
    }

    /**
     * k.
     *
     * @return the number of shots that the location is worth
     */
    public double weight() {
        return k;
    }

    /**
     * a.
     *
     * @return the shape
     */
    public double shape() {
        return a;
    }

    /**
     * b.
     *
     * @return the scale, in the squared unit of the numbers
     */
    public double scale() {
        return b;
    }

    /**
     * The scale of the t of the mean, whose degrees of freedom are twice the shape.
     *
     * @return sqrt(b / (a k))
     */
    public double meanScale() {
        return Math.sqrt(b / (a * k));
    }

    /**
     * The scale of the t of the next shot, whose degrees of freedom are twice the shape.
     *
     * @return sqrt(b (k + 1) / (a k))
     */
    public double nextShotScale() {
        return Math.sqrt(b * (k + 1.0) / (a * k));
    }
}
