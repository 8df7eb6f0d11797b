package dev.teeward.fitting.linear;

import dev.teeward.fitting.internal.Distributions;
import dev.teeward.fitting.internal.Sample;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Whether the means of several clubs differ at all: one-way analysis of variance, with one common variance (Fisher 1925) or
 * without (Welch 1951).
 *
 * <p>F = (between squares / (k - 1)) / (within squares / (n - k)). Welch weighs each club by n / s^2 and is the one to use
 * for clubs whose spreads differ. It says that there is a difference, not where: go on with pairs adjusted for looking at
 * all of them.
 *
 * <pre>{@code
 * OneWayAnova.Result r = OneWayAnova.withDefaults().test(alder, rowan, hazel);
 * r.f();      // Welch's F
 * r.pValue();
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class OneWayAnova {
    private static final OneWayAnova DEFAULTS = new OneWayAnova(false);

    private final boolean common;

    private OneWayAnova(boolean common) {
        this.common = common;
    }

    /**
     * What the analysis found.
     *
     * @param method which analysis it was
     * @param f the F ratio, or empty if the data do not define it
     * @param betweenDegreesOfFreedom clubs minus 1
     * @param withinDegreesOfFreedom n - k, or Welch's broken number; 0 if the data do not define it
     * @param betweenSquares the sum of squares between clubs, squared unit of the data
     * @param withinSquares the sum of squares within clubs
     * @param pValue the upper tail of F, in [0, 1]; 1 if the data cannot answer
     * @param warnings what to know before using this
     */
    public record Result(
            String method,
            OptionalDouble f,
            double betweenDegreesOfFreedom,
            double withinDegreesOfFreedom,
            double betweenSquares,
            double withinSquares,
            double pValue,
            List<Warning> warnings) {
        /**
         * Copies the warnings.
         *
         * @param method which analysis it was
         * @param f the F ratio, or empty if the data do not define it
         * @param betweenDegreesOfFreedom clubs minus 1
         * @param withinDegreesOfFreedom n - k, or Welch's broken number; 0 if the data do not define it
         * @param betweenSquares the sum of squares between clubs, squared unit of the data
         * @param withinSquares the sum of squares within clubs
         * @param pValue the upper tail of F, in [0, 1]; 1 if the data cannot answer
         * @param warnings what to know before using this
         */
        public Result {
            warnings = List.copyOf(warnings);
        }
    }

    /**
     * Welch's analysis.
     *
     * @return the default procedure
     */
    public static OneWayAnova withDefaults() {
        return DEFAULTS;
    }

    /**
     * With one common variance for all clubs, or without.
     *
     * @param wanted whether to pool the variances; false unless changed
     * @return a changed copy
     */
    public OneWayAnova withCommonVariance(boolean wanted) {
        return new OneWayAnova(wanted);
    }

    /**
     * Tests.
     *
     * @param groups at least two clubs, each of at least one number, all finite
     * @return F and p; p = 1 with the warning {@code too-few-shots} or {@code no-spread} if the data cannot answer
     * @throws IllegalArgumentException if there are fewer than two clubs, one is empty or a number is not finite
     */
    public Result test(double[]... groups) {
        if (groups.length < 2) {
            throw new IllegalArgumentException(
                    "an analysis of variance needs at least 2 clubs, but got " + groups.length);
        }
        List<Sample> samples = new ArrayList<>();
        int n = 0;
        double total = 0.0;
        double within = 0.0;
        for (int g = 0; g < groups.length; g++) {
            Sample s = Sample.of("group " + (g + 1), groups[g]);
            samples.add(s);
            n += s.size();
            total += s.size() * s.mean();
            within += (s.size() - 1.0) * s.variance();
        }
        double between = 0.0;
        for (Sample s : samples) {
            between += s.size() * (s.mean() - total / n) * (s.mean() - total / n);
        }
        double df1 = groups.length - 1.0;
        String method = "one-way analysis of variance, "
                + (common ? "one common variance" : "unequal variances (Welch)") + ", F";
        boolean few = common ? n <= groups.length : samples.stream().anyMatch(s -> s.size() < 2);
        boolean flat = common ? !(within > 0.0) : samples.stream().anyMatch(s -> !(s.variance() > 0.0));
        if (few || flat) {
            Warning warning = few
                    ? Warning.of("too-few-shots", "a club has too few shots to show its spread, so nothing is said")
                    : Warning.of("no-spread", "the shots of a club are all equal, so there is no measure of error");
            return new Result(method, OptionalDouble.empty(), df1, 0.0, between, within, 1.0, List.of(warning));
        }
        double df2 = n - (double) groups.length;
        double f = between / df1 / (within / df2);
        if (!common) {
            double[] welch = welch(samples);
            f = welch[0];
            df2 = welch[1];
        }
        return new Result(
                method,
                OptionalDouble.of(f),
                df1,
                df2,
                between,
                within,
                Distributions.fUpperTail(f, df1, df2),
                List.of());
    }

    private static double[] welch(List<Sample> samples) {
        int k = samples.size();
        double all = 0.0;
        double mean = 0.0;
        for (Sample s : samples) {
            double w = s.size() / s.variance();
            all += w;
            mean += w * s.mean();
        }
        mean /= all;
        double between = 0.0;
        double rest = 0.0;
        for (Sample s : samples) {
            double w = s.size() / s.variance();
            between += w * (s.mean() - mean) * (s.mean() - mean);
            rest += (1.0 - w / all) * (1.0 - w / all) / (s.size() - 1.0);
        }
        double f = between / (k - 1.0) / (1.0 + 2.0 * (k - 2.0) * rest / (k * (double) k - 1.0));
        return new double[] {f, (k * (double) k - 1.0) / (3.0 * rest)};
    }
}
