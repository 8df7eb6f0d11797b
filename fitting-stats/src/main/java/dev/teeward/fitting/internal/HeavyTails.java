package dev.teeward.fitting.internal;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.apache.commons.statistics.distribution.TDistribution;

/**
 * Integrals over the whole line of products of shifted and scaled Student densities and distribution functions, by
 * Gauss-Legendre on pieces whose ends lie at powers of 2 of each scale from each centre.
 *
 * <p>Stateless and thread-safe.
 */
public final class HeavyTails {
    private static final GaussLegendre RULE = new GaussLegendre(16);

    private HeavyTails() {}

    /**
     * The integral.
     *
     * @param f the function, falling at least as fast as the slowest of the densities
     * @param centres the centres
     * @param scales the scales, each above 0
     * @param degreesOfFreedom the degrees of freedom, each at least 1
     * @return the integral over all real numbers
     */
    public static double integrate(
            DoubleUnaryOperator f, double[] centres, double[] scales, double[] degreesOfFreedom) {
        double[] ends = IntStream.range(0, centres.length)
                .boxed()
                .flatMapToDouble(j -> {
                    // The tail beyond u scales holds about u^-df: stop at 1e-17.
                    int steps = 4 + (int) Math.ceil(57.0 / degreesOfFreedom[j]);
                    return DoubleStream.concat(
                            DoubleStream.of(centres[j]),
                            IntStream.range(-1, steps)
                                    .mapToDouble(e -> Math.scalb(scales[j], e))
                                    .flatMap(d -> DoubleStream.of(centres[j] - d, centres[j] + d)));
                })
                .sorted()
                .toArray();
        double[] pieces = new double[ends.length];
        Arrays.setAll(pieces, i -> i > 0 && ends[i] > ends[i - 1] ? RULE.integrate(f, ends[i - 1], ends[i], 1) : 0.0);
        return Arrays.stream(pieces).sum();
    }

    /**
     * The density of Student's t.
     *
     * @param t the argument
     * @param df the degrees of freedom, above 0
     * @return the density
     */
    public static double density(double t, double df) {
        return TDistribution.of(df).density(t);
    }
}
