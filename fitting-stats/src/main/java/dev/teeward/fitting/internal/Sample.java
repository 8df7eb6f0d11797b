package dev.teeward.fitting.internal;

import java.util.Arrays;
import java.util.Objects;
import org.apache.commons.statistics.descriptive.Mean;
import org.apache.commons.statistics.descriptive.Median;
import org.apache.commons.statistics.descriptive.Variance;
import org.jspecify.annotations.Nullable;

/**
 * A validated sample of finite numbers with its first two moments, by two passes.
 *
 * <p>Numbers whose range is within a few units in the last place of their size count as constant, and a constant sample
 * has a variance of exactly zero: differences such as 0.3 - 0.2 and 0.2 - 0.1 must not pass for spread.
 *
 * <pre>{@code
 * Sample s = Sample.of("x", new double[] {1.0, 2.0, 4.0});
 * s.mean();     // 2.333
 * s.variance(); // 2.333, denominator n - 1
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class Sample {
    private static final double ROUNDING_ULPS = 8.0;

    private final double[] values;
    private final double scale;
    private final boolean constant;
    private @Nullable Double mean; // these two worked out when first asked for; the same whoever does
    private @Nullable Double variance;

    private Sample(double[] values, double scale) {
        this.values = values;
        this.scale = scale;
        this.constant = range(values) <= tieTolerance(scale);
    }

    private static double range(double[] values) {
        double min = Double.POSITIVE_INFINITY;
        double max = Double.NEGATIVE_INFINITY;
        for (double v : values) {
            min = v < min ? v : min;
            max = v > max ? v : max;
        }
        return max - min;
    }

    /**
     * A sample.
     *
     * @param name what to call it in an error message
     * @param values the numbers, at least one, all finite; copied
     * @return the sample
     * @throws IllegalArgumentException if there is no value or one is not finite
     */
    public static Sample of(String name, double[] values) {
        checkFinite(name, values);
        return new Sample(values.clone(), largest(values, 0.0));
    }

    /**
     * The differences first minus second of two samples whose elements belong together.
     *
     * @param first the name of the first
     * @param x the first, at least one number, all finite
     * @param second the name of the second
     * @param y the second, as long as the first, all finite
     * @return the differences
     * @throws IllegalArgumentException if the lengths differ, there is no value or one is not finite
     */
    public static Sample differences(String first, double[] x, String second, double[] y) {
        checkFinite(first, x);
        checkFinite(second, y);
        if (x.length != y.length) {
            throw new IllegalArgumentException(first + " and " + second + " must be pairs, but " + first + " has "
                    + x.length + " values and " + second + " has " + y.length
                    + "; drop the shots without a partner first, or use a test for unpaired samples");
        }
        double[] d = new double[x.length];
        for (int i = 0; i < d.length; i++) {
            d[i] = x[i] - y[i];
        }
        return new Sample(d, largest(y, largest(x, 0.0)));
    }

    private static void checkFinite(String name, double[] values) {
        Objects.requireNonNull(values, name);
        if (values.length == 0) {
            throw new IllegalArgumentException(name + " must hold at least 1 value, but is empty");
        }
        for (int i = 0; i < values.length; i++) {
            if (!(Math.abs(values[i]) <= 1e150)) {
                throw tooLarge(name, i, values[i]);
            }
        }
    }

    private static IllegalArgumentException tooLarge(String name, int index, double value) {
        return new IllegalArgumentException(name + "[" + index + "] must be finite and at most 1e150 in size, but was "
                + value + "; leave an absent measurement out");
    }

    private static double largest(double[] values, double atLeast) {
        double largest = atLeast;
        for (double v : values) {
            double size = Math.abs(v);
            largest = size > largest ? size : largest;
        }
        return largest;
    }

    /**
     * The same sample moved by a constant.
     *
     * @param shift what to add to each value
     * @return the moved sample
     */
    public Sample plus(double shift) {
        double[] moved = values.clone();
        for (int i = 0; i < moved.length; i++) {
            moved[i] += shift;
        }
        return new Sample(moved, Math.max(scale, Math.abs(shift)));
    }

    /**
     * The number of values.
     *
     * @return at least 1
     */
    public int size() {
        return values.length;
    }

    /**
     * One value.
     *
     * @param index its index from 0
     * @return the value
     */
    public double value(int index) {
        return values[index];
    }

    /**
     * The values in the order given.
     *
     * @return a copy
     */
    public double[] toArray() {
        return values.clone();
    }

    /**
     * The values in ascending order.
     *
     * @return a sorted copy
     */
    public double[] sorted() {
        double[] copy = values.clone();
        Arrays.sort(copy);
        return copy;
    }

    /**
     * The arithmetic mean.
     *
     * @return the mean
     */
    public double mean() {
        Double known = mean;
        if (known == null) {
            known = Mean.of(values).getAsDouble();
            mean = known;
        }
        return known;
    }

    /**
     * The variance with denominator n - 1.
     *
     * @return the variance; exactly 0 for a constant sample and for a single value
     */
    public double variance() {
        Double known = variance;
        if (known == null) {
            known = constant ? 0.0 : Variance.of(values).getAsDouble();
            variance = known;
        }
        return known;
    }

    /**
     * The square root of {@link #variance()}.
     *
     * @return the standard deviation
     */
    public double standardDeviation() {
        return Math.sqrt(variance());
    }

    /**
     * The middle value, or the mean of the two middle values.
     *
     * @return the median
     */
    public double median() {
        return Median.withDefaults().evaluate(values.clone());
    }

    /**
     * Whether the values are equal to within rounding; true for a single value.
     *
     * @return true if so
     */
    public boolean constant() {
        return constant;
    }

    /**
     * The distance within which two values count as tied: a few roundings of the largest number they came from.
     *
     * @return the distance, at least 0
     */
    public double tieTolerance() {
        return tieTolerance(scale);
    }

    /**
     * The distance within which two numbers count as tied.
     *
     * @param largest the size of the largest number they came from
     * @return a few roundings of it, at least 0
     */
    public static double tieTolerance(double largest) {
        return ROUNDING_ULPS * Math.ulp(largest);
    }

    /**
     * The absolute deviations from a centre.
     *
     * @param centre the centre
     * @return the absolute deviations, in the order of the values
     */
    public Sample absoluteDeviations(double centre) {
        double[] z = new double[values.length];
        for (int i = 0; i < z.length; i++) {
            z[i] = Math.abs(values[i] - centre);
        }
        return new Sample(z, scale);
    }

    /**
     * The lag-1 autocorrelation, sum of (x[i] - mean)(x[i+1] - mean) over the sum of squares.
     *
     * @return the coefficient in [-1, 1]; 0 for a constant sample
     */
    public double lagOneAutocorrelation() {
        if (constant) {
            return 0.0;
        }
        double mean = mean();
        double products = 0.0;
        double squares = 0.0;
        for (int i = 0; i < values.length; i++) {
            double d = values[i] - mean;
            squares += d * d;
            if (i + 1 < values.length) {
                products += d * (values[i + 1] - mean);
            }
        }
        return products / squares;
    }
}
