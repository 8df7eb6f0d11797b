package dev.teeward.fitting.summary;

import dev.teeward.fitting.internal.Data;
import dev.teeward.fitting.internal.DiscProbability;
import dev.teeward.fitting.internal.SymmetricMatrix2;
import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.Interval;
import dev.teeward.quantity.LengthUnit;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.apache.commons.statistics.descriptive.Median;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.apache.commons.statistics.distribution.TDistribution;
import org.jspecify.annotations.Nullable;

/**
 * Where the balls come down: centre, spread, ellipses and the radii that hold half or nine tenths of the shots, about the
 * own centre (precision) and about a target (accuracy: precision and bias together).
 *
 * <p>Shots are taken as one bivariate normal sample, correlated and with a bias. Radii are exact quantiles of the distance
 * under that normal, by quadrature. Their intervals:
 *
 * <ul>
 *   <li><b>about the own centre</b>: R sqrt(nu / chi-square quantile) with nu = (n - 1) (tr S)^2 / tr(S^2), Satterthwaite's
 *       degrees of freedom of the total variance. Exact for a circular pattern (2 (n - 1)) and for shots on a line (n - 1),
 *       no random numbers. Measured
 *       coverage of R50 and R90 at 95 % with 10 and 20 shots and axis ratios of 1 to 5: 93 to 97 %.
 *   <li><b>about the target</b>: a seeded parametric bootstrap of mean and covariance (normal and Wishart draws), the
 *       interval reflected on the logarithm (R^2 / upper, R^2 / lower) and widened as Hesterberg 2015 (American Statistician
 *       69) does for small samples: tails of Phi(-t) with t of n - 1 degrees of freedom.
 *       Measured coverage, biases from none to five standard deviations: 92 to 98 %.
 * </ul>
 *
 * <pre>{@code
 * LandingPattern.Result p = LandingPattern.withDefaults().withTarget(150.0, 0.0).describe(carry, side);
 * p.radiusAboutCenter(0.5);   // R50, precision
 * p.radiusAboutTarget(0.9);   // R90, accuracy
 * }</pre>
 *
 * <p>Immutable and thread-safe; the same seed gives the same bits.
 */
public final class LandingPattern {
    private static final LandingPattern DEFAULTS = new LandingPattern(0.95, null, 20_261_124L, 999);

    private final double level;
    private final double @Nullable [] target;
    private final long seed;
    private final int resamples;

    private LandingPattern(double level, double @Nullable [] target, long seed, int resamples) {
        this.level = level;
        this.target = target;
        this.seed = seed;
        this.resamples = resamples;
    }

    /**
     * Intervals at 95 %, no target, 999 resamples from a fixed seed.
     *
     * @return the procedure
     */
    public static LandingPattern withDefaults() {
        return DEFAULTS;
    }

    /**
     * The same procedure with a target.
     *
     * @param carry the distance of the target along the target line [m]
     * @param side the offset of the target from that line, right positive [m], 0 as a rule
     * @return the procedure
     * @throws IllegalArgumentException if a coordinate is not finite
     */
    public LandingPattern withTarget(double carry, double side) {
        Data.check("target", new double[] {carry, side}, 2);
        return new LandingPattern(level, new double[] {carry, side}, seed, resamples);
    }

    /**
     * The same procedure at another level.
     *
     * @param newLevel the level of all intervals, in (0, 1)
     * @return the procedure
     * @throws IllegalArgumentException if the level is not in (0, 1)
     */
    public LandingPattern withLevel(double newLevel) {
        return new LandingPattern(Data.checkLevel(newLevel), target, seed, resamples);
    }

    /**
     * The same procedure with another seed for the intervals about the target.
     *
     * @param newSeed the seed
     * @return the procedure
     */
    public LandingPattern withSeed(long newSeed) {
        return new LandingPattern(level, target, newSeed, resamples);
    }

    /**
     * The same procedure with another number of resamples.
     *
     * @param count the number, at least 99
     * @return the procedure
     * @throws IllegalArgumentException if the number is less than 99
     */
    public LandingPattern withResamples(int count) {
        if (count < 99) {
            throw new IllegalArgumentException("resamples must be at least 99, but was " + count);
        }
        return new LandingPattern(level, target, seed, count);
    }

    /**
     * Describes the shots of one set.
     *
     * @param carry the distance along the target line [m], at least 3 finite values
     * @param side the offset from the target line, right positive [m], one for each shot
     * @return the pattern
     * @throws IllegalArgumentException if there are fewer than 3 shots, the columns differ in length, or a value is not finite
     */
    public Result describe(double[] carry, double[] side) {
        Data.check("carry", carry, 3);
        Data.check("side", side, 3);
        Data.checkSameLength("side", side, carry.length);
        return new Result(this, carry.clone(), side.clone());
    }

    /** The pattern of one set. Immutable and thread-safe. */
    public static final class Result {
        private final LandingPattern procedure;
        private final int n;
        private final SampleSummary.Result carry;
        private final SampleSummary.Result side;
        private final SymmetricMatrix2 covariance;
        private final double[] distances;
        private final List<Warning> warnings;

        private Result(LandingPattern procedure, double[] carries, double[] sides) {
            this.procedure = procedure;
            this.n = carries.length;
            SampleSummary summary =
                    SampleSummary.withDefaults().withLevel(procedure.level).withUnit(LengthUnit.METER);
            this.carry = summary.summarize(carries);
            this.side = summary.summarize(sides);
            this.covariance = SymmetricMatrix2.covarianceOf(carries, sides);
            this.distances = new double[n];
            for (int i = 0; i < n; i++) {
                distances[i] = Math.hypot(
                        carries[i] - carry.mean().value(),
                        sides[i] - side.mean().value());
            }
            List<Warning> found = new ArrayList<>();
            if (covariance.minorEigenvalue() == 0.0) {
                found.add(Warning.of(
                        "exact-fit",
                        "all shots lie on one point or line, so that ellipses have no area; the readings may be rounded"
                                + " too coarsely"));
            }
            if (n < 6) {
                found.add(Warning.of("few-shots", "only " + n + " shots were used, so that the intervals are rough"));
            }
            this.warnings = List.copyOf(found);
        }

        /**
         * How many shots were used: all of them.
         *
         * @return the number
         */
        public int n() {
            return n;
        }

        /**
         * The centre along the target line.
         *
         * @return the mean carry with its t interval [m]
         */
        public Estimate centerCarry() {
            return carry.mean();
        }

        /**
         * The centre across the target line.
         *
         * @return the mean side with its t interval [m], right positive
         */
        public Estimate centerSide() {
            return side.mean();
        }

        /**
         * The distance of the centre beyond the target.
         *
         * @return the bias in carry with its t interval [m], long positive; empty without a target
         */
        public Optional<Estimate> biasCarry() {
            return procedure.target == null
                    ? Optional.empty()
                    : Optional.of(shifted(carry.mean(), procedure.target[0]));
        }

        /**
         * The distance of the centre right of the target.
         *
         * @return the bias in side with its t interval [m], right positive; empty without a target
         */
        public Optional<Estimate> biasSide() {
            return procedure.target == null ? Optional.empty() : Optional.of(shifted(side.mean(), procedure.target[1]));
        }

        /**
         * The variance of the carry.
         *
         * @return the variance, n - 1 in the denominator [m^2]
         */
        public double varianceCarry() {
            return covariance.xx();
        }

        /**
         * The variance of the side.
         *
         * @return the variance, n - 1 in the denominator [m^2]
         */
        public double varianceSide() {
            return covariance.yy();
        }

        /**
         * The covariance of carry and side.
         *
         * @return the covariance [m^2], positive when long shots go right
         */
        public double covariance() {
            return covariance.xy();
        }

        /**
         * The generalized variance: the determinant of the covariance.
         *
         * @return the determinant [m^4]
         */
        public double generalizedVariance() {
            return Math.max(0.0, covariance.determinant());
        }

        /**
         * The total variance: the trace of the covariance.
         *
         * @return the sum of both variances [m^2]
         */
        public double totalVariance() {
            return covariance.trace();
        }

        /**
         * The prediction ellipse that holds the next shot with a probability of 90 %.
         *
         * @return the default ellipse
         */
        public Ellipse ellipse() {
            return ellipse(EllipseKind.PREDICTION, 0.9);
        }

        /**
         * An ellipse about the own centre.
         *
         * @param kind what it is to mean
         * @param level its level, in (0, 1)
         * @return the ellipse, x along carry and y along side
         * @throws IllegalArgumentException if the level is not in (0, 1)
         */
        public Ellipse ellipse(EllipseKind kind, double level) {
            return new Ellipse(kind, level, n, carry.mean().value(), side.mean().value(), covariance);
        }

        /**
         * The radius about the own centre that holds a share of all shots: precision.
         *
         * @param share the share, in (0, 1): 0.5 for R50, 0.9 for R90
         * @return the radius with its interval [m]
         * @throws IllegalArgumentException if the share is not in (0, 1)
         */
        public Estimate radiusAboutCenter(double share) {
            double radius = DiscProbability.of(covariance, 0.0, 0.0).radius(share);
            return Estimate.of(
                    radius, SpreadFactors.interval(radius, degreesOfFreedom(), procedure.level), LengthUnit.METER);
        }

        /**
         * The radius about the target that holds a share of all shots: accuracy, which contains the bias.
         *
         * @param share the share, in (0, 1): 0.5 for R50, 0.9 for R90
         * @return the radius with its interval [m]; empty without a target
         * @throws IllegalArgumentException if the share is not in (0, 1)
         */
        public Optional<Estimate> radiusAboutTarget(double share) {
            Data.checkLevel(share);
            if (procedure.target == null) {
                return Optional.empty();
            }
            double biasX = carry.mean().value() - procedure.target[0];
            double biasY = side.mean().value() - procedure.target[1];
            double radius = DiscProbability.of(covariance, biasX, biasY).radius(share);
            double[] draws = procedure.resampledRadii(covariance, biasX, biasY, n, share);
            double t = TDistribution.of(n - 1.0).inverseSurvivalProbability(0.5 * (1.0 - procedure.level));
            double tail = NormalDistribution.of(0.0, 1.0).survivalProbability(t);
            double lower = quantile(draws, tail);
            double upper = quantile(draws, 1.0 - tail);
            Interval interval = covariance.trace() == 0.0
                    ? Interval.of(0.0, Double.POSITIVE_INFINITY, procedure.level)
                    : radius == 0.0 || lower == 0.0
                            ? Interval.of(0.0, Math.max(radius, upper), procedure.level)
                            : Interval.of(radius * (radius / upper), radius * (radius / lower), procedure.level);
            return Optional.of(Estimate.of(radius, interval, LengthUnit.METER));
        }

        /**
         * The degrees of freedom of the intervals about the own centre.
         *
         * @return nu, from n - 1 (a line) to 2 (n - 1) (a circle)
         */
        public double degreesOfFreedom() {
            double trace = covariance.trace();
            double squares = covariance.traceOfSquare();
            return squares > 0.0 ? (n - 1.0) * (trace * (trace / squares)) : n - 1.0;
        }

        /**
         * The same pattern taken as circular.
         *
         * @return the circular normal pattern about the own centre
         */
        public CircularNormal circular() {
            return new CircularNormal(Math.sqrt(0.5 * covariance.trace()), 2 * (n - 1), procedure.level);
        }

        /**
         * The mean distance of the shots from their own centre.
         *
         * @return the distance [m]
         */
        public double meanRadius() {
            return Arrays.stream(distances).sum() / n;
        }

        /**
         * The median distance of the shots from their own centre.
         *
         * @return the distance [m]
         */
        public double medianRadius() {
            return Median.withDefaults().evaluate(distances.clone());
        }

        /**
         * The root mean square distance of the shots from their own centre.
         *
         * @return the distance, n in the denominator [m]
         */
        public double rmsRadius() {
            return Math.sqrt(covariance.trace() * (n - 1.0) / n);
        }

        /**
         * How radii and intervals were found.
         *
         * @return one line of text
         */
        public String method() {
            return "radii of the bivariate normal by quadrature; about the centre by chi-square with Satterthwaite's degrees"
                    + " of freedom, about the target by parametric bootstrap, " + procedure.resamples
                    + " resamples, seed "
                    + procedure.seed;
        }

        /**
         * What to know about this pattern.
         *
         * @return the warnings, often none
         */
        public List<Warning> warnings() {
            return warnings;
        }

        private static Estimate shifted(Estimate mean, double by) {
            Interval i = mean.interval();
            return Estimate.of(mean.value() - by, Interval.of(i.lower() - by, i.upper() - by, i.level()), mean.unit());
        }
    }

    /** Radii of resampled means and covariances, sorted. Works in the principal axes, so that directions do not matter. */
    private double[] resampledRadii(SymmetricMatrix2 covariance, double biasX, double biasY, int n, double share) {
        double s1 = Math.sqrt(covariance.majorEigenvalue());
        double s2 = Math.sqrt(covariance.minorEigenvalue());
        double angle = covariance.majorAngle();
        double m1 = Math.cos(angle) * biasX + Math.sin(angle) * biasY;
        double m2 = Math.cos(angle) * biasY - Math.sin(angle) * biasX;
        NormalDistribution normal = NormalDistribution.of(0.0, 1.0);
        ChiSquaredDistribution first = ChiSquaredDistribution.of(n - 1.0);
        ChiSquaredDistribution second = ChiSquaredDistribution.of(n - 2.0);
        SplittableRandom random = new SplittableRandom(seed);
        double[] radii = new double[resamples];
        for (int i = 0; i < resamples; i++) {
            // Bartlett's factor of a Wishart matrix with n - 1 degrees of freedom.
            double a = s1 * Math.sqrt(first.inverseCumulativeProbability(open(random)));
            double b = s2 * normal.inverseCumulativeProbability(open(random));
            double c = s2 * Math.sqrt(second.inverseCumulativeProbability(open(random)));
            SymmetricMatrix2 drawn = new SymmetricMatrix2(a * a, a * b, b * b + c * c).times(1.0 / (n - 1.0));
            double x = m1 + s1 * normal.inverseCumulativeProbability(open(random)) / Math.sqrt(n);
            double y = m2 + s2 * normal.inverseCumulativeProbability(open(random)) / Math.sqrt(n);
            radii[i] = DiscProbability.of(drawn, x, y).coarse().radius(share);
        }
        Arrays.sort(radii);
        return radii;
    }

    /** A number in (0, 1), both ends excluded. */
    private static double open(SplittableRandom random) {
        return (random.nextLong() >>> 12) * 0x1.0p-52 + 0x1.0p-53;
    }

    /** Linear between order statistics at (k + 1/2) / count; the extremes beyond. */
    private static double quantile(double[] sorted, double p) {
        double position = Math.max(0.0, Math.min(sorted.length - 1.0, p * sorted.length - 0.5));
        int below = (int) position;
        int above = Math.min(sorted.length - 1, below + 1);
        return sorted[below] + (position - below) * (sorted[above] - sorted[below]);
    }
}
