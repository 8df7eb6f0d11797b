package dev.teeward.fitting.pool;

import dev.teeward.fitting.internal.Data;
import dev.teeward.fitting.internal.Distributions;
import dev.teeward.fitting.internal.NoncentralT;
import dev.teeward.fitting.internal.Sample;
import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.Interval;
import dev.teeward.quantity.RatioUnit;
import dev.teeward.quantity.Unit;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;

/**
 * The mean of an effect over golfers who were drawn from many, each with an estimate and its standard error.
 *
 * <p>y_i = mu + u_i + e_i: u_i of variance tau^2 is how golfers truly differ, e_i of variance v_i, the squared standard error,
 * how exactly each was measured.
 *
 * <pre>
 *   tau^2        restricted maximum likelihood; 0 where its derivative is negative from there on
 *   mean         sum w_i y_i / sum w_i, w_i = 1 / (v_i + tau^2)
 *   its error    q / sum w_i with q = sum w_i (y_i - mean)^2 / (k - 1), t of k - 1 (Hartung and Knapp 2001; Sidik and Jonkman 2002)
 *   next golfer  mean +- t of k - 1 times sqrt(tau^2 + error^2): the true effect of one more golfer (Higgins and others 2009, there
 *                with k - 2; here with the degrees of freedom of the mean)
 *   tau^2 limits Q-profile: where sum w_i (y_i - mean)^2 meets the quantiles of chi-square with k - 1 (Viechtbauer 2007)
 *   Q            sum (y_i - fixed mean)^2 / v_i against chi-square with k - 1 (Cochran 1954)
 * </pre>
 *
 * <p>With equal standard errors the interval of the mean is that of Student's t over the golfers, exactly. The v_i are taken as
 * known; with a handful of shots each they are not. Simulated, nominal 95 %, 5 to 20 golfers of 8 to 20 pairs each, whose true
 * effects differ by 0 to 3 when a pair spreads by 4 to 9: the interval of the mean holds the truth in 93 to 95 %, that of the next golfer in
 * 87 to 96 % (least where golfers differ, but less than the errors show), the limits of tau^2 in 85 to 95 % (least where golfers do not
 * differ at all and are many). Longer sessions mend all three.
 *
 * <p><b>Warnings:</b> {@code few-golfers} (fewer than five tell little about how golfers differ), {@code no-golfer-variance}
 * (tau^2 is 0: the golfers differ no more than the errors), {@code closer-than-errors} (q is below 1, so that the interval is
 * narrower than the errors alone would make it), {@code no-spread} (all effects are equal: no limits).
 *
 * <pre>{@code
 * RandomEffects.Result r = RandomEffects.withDefaults().withUnit(LengthUnit.YARD).pool(effects, standardErrors);
 * r.mean();          // over all golfers of this kind
 * r.nextGolfer();    // what one more golfer may gain
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class RandomEffects {
    private static final RandomEffects DEFAULTS = new RandomEffects(0.95, RatioUnit.ONE);
    private static final int FEW = 5;

    private final double level;
    private final Unit unit;

    private RandomEffects(double level, Unit unit) {
        this.level = level;
        this.unit = unit;
    }

    /**
     * 95 %, a pure number.
     *
     * @return the default procedure
     */
    public static RandomEffects withDefaults() {
        return DEFAULTS;
    }

    /**
     * With another level of all intervals.
     *
     * @param value the level, in (0, 1)
     * @return a changed copy
     * @throws IllegalArgumentException if the level is not in (0, 1)
     */
    public RandomEffects withLevel(double value) {
        return new RandomEffects(Data.checkLevel(value), unit);
    }

    /**
     * With the unit of effects and errors; nothing is converted.
     *
     * @param value the unit
     * @return a changed copy
     */
    public RandomEffects withUnit(Unit value) {
        return new RandomEffects(level, Objects.requireNonNull(value, "value"));
    }

    /**
     * Pools.
     *
     * @param effects one for each golfer, at least two, all finite
     * @param standardErrors the standard error of each, above 0
     * @return the mean, its interval and how golfers differ
     * @throws IllegalArgumentException if there are fewer than two, the lengths differ, or a number is not finite or an error not
     *     above 0
     */
    public Result pool(double[] effects, double[] standardErrors) {
        Data.check("effects", effects, 2);
        Data.check("standardErrors", standardErrors, 2);
        if (effects.length != standardErrors.length) {
            throw new IllegalArgumentException("there must be one standard error for each of the " + effects.length
                    + " effects, but there were " + standardErrors.length);
        }
        for (int i = 0; i < standardErrors.length; i++) {
            if (!(standardErrors[i] > 0.0)) {
                throw new IllegalArgumentException("standardErrors must be above 0, but number " + (i + 1) + " was "
                        + standardErrors[i] + "; leave out a golfer whose shots show no spread");
            }
        }
        Fit fit = new Fit(effects, Arrays.stream(standardErrors).map(s -> s * s).toArray());
        int k = effects.length;
        double tau2 = fit.restricted();
        double q = fit.squares(tau2) / (k - 1.0);
        double mean = fit.mean(tau2);
        double error = Math.sqrt(q / fit.weights(tau2));
        double t = Distributions.tQuantile(0.5 * (1.0 + level), k - 1.0);
        List<Warning> warnings = new ArrayList<>();
        if (k < FEW) {
            warnings.add(Warning.of("few-golfers", "fewer than five golfers tell little about how golfers differ"));
        }
        if (tau2 == 0.0) {
            warnings.add(Warning.of(
                    "no-golfer-variance",
                    "the golfers differ no more than the errors, so their variance is taken as 0"));
        }
        boolean spread = error > 0.0;
        if (!spread) {
            warnings.add(Warning.of("no-spread", "all effects are equal, so that no limits are given"));
        } else if (q < 1.0 - 1e-9 && tau2 == 0.0) {
            warnings.add(Warning.of(
                    "closer-than-errors",
                    "the golfers lie closer together than their errors would put them, which narrows the interval"));
        }
        double reach = t * error;
        double next = t * Math.sqrt(tau2 + error * error);
        Interval ofTau2 = Interval.of(
                fit.profile(Distributions.chiSquareQuantile(0.5 * (1.0 + level), k - 1.0)),
                fit.profile(Distributions.chiSquareQuantile(0.5 * (1.0 - level), k - 1.0)),
                level);
        return new Result(
                k,
                Estimate.of(
                        mean,
                        spread ? Interval.of(mean - reach, mean + reach, level) : Interval.unbounded(level),
                        unit),
                error,
                Estimate.of(
                        mean, spread ? Interval.of(mean - next, mean + next, level) : Interval.unbounded(level), unit),
                tau2,
                ofTau2,
                fit.squares(0.0),
                Distributions.chiSquareUpperTail(fit.squares(0.0), k - 1.0),
                fit.typicalVariance(),
                warnings);
    }

    /**
     * What came out.
     *
     * @param golfers how many
     * @param mean the mean effect with its interval
     * @param standardError the standard error of the mean
     * @param nextGolfer the mean with the interval of the true effect of one more golfer
     * @param variance tau^2, the variance of the true effects [squared unit]
     * @param varianceInterval its limits; both may lie above or below the estimate, because they come from another equation
     * @param heterogeneity Q, with golfers - 1 degrees of freedom
     * @param heterogeneityP how often Q is as large if all golfers were alike
     * @param typicalVariance the squared error of a typical golfer, (k - 1) S1 / (S1^2 - S2) with S1 and S2 the sums of 1 / v_i
     *     and of its square (Higgins and Thompson 2002) [squared unit]
     * @param warnings what to know
     */
    public record Result(
            int golfers,
            Estimate mean,
            double standardError,
            Estimate nextGolfer,
            double variance,
            Interval varianceInterval,
            double heterogeneity,
            double heterogeneityP,
            double typicalVariance,
            List<Warning> warnings) {
        /**
         * Copies the list.
         *
         * @param golfers how many
         * @param mean the mean effect with its interval
         * @param standardError the standard error of the mean
         * @param nextGolfer the mean with the interval of the true effect of one more golfer
         * @param variance tau^2, the variance of the true effects [squared unit]
         * @param varianceInterval its limits
         * @param heterogeneity Q, with golfers - 1 degrees of freedom
         * @param heterogeneityP how often Q is as large if all golfers were alike
         * @param typicalVariance the squared error of a typical golfer [squared unit]
         * @param warnings what to know
         */
        public Result {
            warnings = List.copyOf(warnings);
        }

        /**
         * The standard deviation of the true effects, with the square roots of the limits of its square.
         *
         * @return tau, in the unit of the effects
         */
        public Estimate spread() {
            return Estimate.of(
                    Math.sqrt(variance),
                    Interval.of(
                            Math.sqrt(varianceInterval.lower()),
                            Math.sqrt(varianceInterval.upper()),
                            varianceInterval.level()),
                    mean.unit());
        }

        /**
         * The share of the variance of the effects that is not error, I^2 = tau^2 / (tau^2 + typical variance).
         *
         * @return the share, in [0, 1]
         */
        public double heterogeneityShare() {
            return variance / (variance + typicalVariance);
        }

        /**
         * What was done.
         *
         * @return one phrase
         */
        public String method() {
            return "random effects by restricted likelihood, mean by Hartung, Knapp, Sidik and Jonkman, variance limits by"
                    + " Q-profile";
        }
    }

    /** The sums that hang on tau^2. */
    @SuppressWarnings("ArrayRecordComponent") // never compared and never handed out
    private record Fit(Sample effects, double[] v) {
        Fit(double[] effects, double[] v) {
            this(Sample.of("effects", effects), v);
        }

        double weights(double tau2) {
            return Arrays.stream(v).map(x -> 1.0 / (x + tau2)).sum();
        }

        double mean(double tau2) {
            double sum = 0.0;
            for (int i = 0; i < v.length; i++) {
                sum += (effects.value(i) - effects.mean()) / (v[i] + tau2);
            }
            return effects.mean() + sum / weights(tau2);
        }

        double squares(double tau2) {
            double mean = mean(tau2);
            double sum = 0.0;
            for (int i = 0; i < v.length; i++) {
                double d = effects.value(i) - mean;
                sum += d * d / (v[i] + tau2);
            }
            return sum;
        }

        /** Twice the derivative of the restricted log likelihood. */
        private double slope(double tau2) {
            double mean = mean(tau2);
            double slope = 0.0;
            double squared = 0.0;
            for (int i = 0; i < v.length; i++) {
                double w = 1.0 / (v[i] + tau2);
                double d = effects.value(i) - mean;
                slope += w * w * d * d - w;
                squared += w * w;
            }
            return slope + squared / weights(tau2);
        }

        private double likelihood(double tau2) {
            double logs = Arrays.stream(v).map(x -> Math.log(x + tau2)).sum();
            return -0.5 * (logs + Math.log(weights(tau2)) + squares(tau2));
        }

        /** The highest of all places where the likelihood turns from rising to falling, 0 among them. */
        double restricted() {
            double size =
                    Math.max(effects.variance(), Arrays.stream(v).average().orElse(0.0));
            double best = 0.0;
            double most = likelihood(0.0);
            double low = 0.0;
            double before = slope(0.0);
            for (double high = 1e-6 * size; high < 1e3 * size; high *= 2.0) {
                double after = slope(high);
                if (before > 0.0 && after <= 0.0) {
                    double root = NoncentralT.root(this::slope, low, high);
                    if (likelihood(root) > most) {
                        most = likelihood(root);
                        best = root;
                    }
                }
                low = high;
                before = after;
            }
            return best;
        }

        /** Where the falling sum of squares meets a number. */
        double profile(double target) {
            if (squares(0.0) <= target) {
                return 0.0;
            }
            double high = effects.variance();
            while (squares(high) > target) {
                high *= 2.0;
            }
            return NoncentralT.root(tau2 -> squares(tau2) - target, 0.0, high);
        }

        double typicalVariance() {
            double first = weights(0.0);
            double second = Arrays.stream(v).map(x -> 1.0 / (x * x)).sum();
            return (v.length - 1.0) * first / (first * first - second);
        }
    }
}
