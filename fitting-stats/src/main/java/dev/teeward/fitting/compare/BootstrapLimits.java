package dev.teeward.fitting.compare;

import dev.teeward.fitting.internal.Distributions;
import dev.teeward.fitting.internal.Resamples;
import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.Interval;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.stream.IntStream;

/** Limits from resampled statistics, and what is wrong with them. Not thread-safe; one for each run. */
final class BootstrapLimits {
    private static final double TIE = 1e-11;
    private static final int NARROW_BELOW = 20;

    private final Options options;
    private final Bootstrap.Method method;
    private final boolean tiesBelow;
    private final boolean outer;
    private final List<Warning> warnings = new ArrayList<>();

    BootstrapLimits(Options options, Bootstrap.Method method, boolean tiesBelow, boolean outer) {
        this.options = options;
        this.method = method;
        this.tiesBelow = tiesBelow;
        this.outer = outer;
    }

    Estimation estimate(
            String what, double value, double[][] replicates, double[][] jackknife, boolean all, long seed) {
        boolean layered = replicates.length > 1;
        int[] kept = IntStream.range(0, replicates[0].length)
                .filter(r -> Double.isFinite(replicates[0][r]) && (!layered || replicates[1][r] > 0.0))
                .toArray();
        double[] finite = Arrays.stream(kept).mapToDouble(r -> replicates[0][r]).toArray();
        int lost = replicates[0].length - finite.length;
        String count = all
                ? String.format(Locale.ROOT, "all %,d resamples", replicates[0].length)
                : String.format(Locale.ROOT, "%,d random resamples, seed %d", replicates[0].length, seed);
        if (lost > 0) {
            warn("undefined-resamples", lost + " resamples gave no finite statistic or error and were left out");
        }
        double mean = Arrays.stream(finite).average().orElse(value);
        double error = Math.sqrt(Arrays.stream(finite)
                .map(t -> (t - mean) * (t - mean))
                .average()
                .orElse(0.0));
        double size = Arrays.stream(finite).map(Math::abs).max().orElse(0.0);
        int smallest = Arrays.stream(jackknife).mapToInt(j -> j.length).min().orElse(0);
        if (smallest < 2) {
            warn("too-few-shots", "one shot cannot be resampled, so no limits are given");
        } else if (!(error > TIE * size)) {
            warn("no-spread", "every resample gives the same statistic, so no limits are given");
        } else if (lost > 0.1 * replicates[0].length) {
            warn("too-few-resamples", "the statistic is undefined on too many resamples, so no limits are given");
        } else {
            if (smallest < NARROW_BELOW) {
                warn(
                        "narrow-interval",
                        "below 20 shots bootstrap limits are too close: at 10 shots 95 % holds about 90 %");
            }
            double[] errors = layered
                    ? Arrays.stream(kept).mapToDouble(r -> replicates[1][r]).toArray()
                    : finite;
            return bounded(what, count, value, finite, errors, jackknife, error, mean - value);
        }
        return result(
                name(method) + " bootstrap, " + what + ", " + count,
                value,
                Interval.unbounded(options.level()),
                error,
                mean - value,
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                List.of(),
                finite.length);
    }

    private Estimation bounded(
            String what,
            String count,
            double value,
            double[] finite,
            double[] errors,
            double[][] jackknife,
            double error,
            double bias) {
        double low = options.tail();
        double high = 1.0 - options.tail();
        Bootstrap.Method used = method;
        OptionalDouble z0 = OptionalDouble.empty();
        OptionalDouble a = OptionalDouble.empty();
        if (method == Bootstrap.Method.BCA) {
            double share = shareBelow(value, finite);
            if (share > 0.0 && share < 1.0) {
                z0 = OptionalDouble.of(Distributions.normalQuantile(share) + 0.0);
                a = OptionalDouble.of(acceleration(jackknife));
                double z = Distributions.normalQuantile(low);
                low = adjusted(z0.getAsDouble(), a.getAsDouble(), z);
                high = adjusted(z0.getAsDouble(), a.getAsDouble(), -z);
            } else {
                used = Bootstrap.Method.PERCENTILE;
                warn("bca-undefined", "all resamples lie on one side of the estimate, so percentile limits are given");
            }
        }
        double[] values = finite.clone();
        double standardError = 0.0;
        if (method == Bootstrap.Method.STUDENTIZED) {
            standardError = Resamples.error(jackknife);
            Arrays.setAll(values, r -> (finite[r] - value) / errors[r]);
        }
        Arrays.sort(values);
        double lower = quantile(values, low);
        double upper = quantile(values, high);
        Interval interval = switch (used) {
            case BCA, PERCENTILE -> options.interval(lower, upper);
            case BASIC -> options.interval(2.0 * value - upper, 2.0 * value - lower);
            case STUDENTIZED -> options.interval(value - upper * standardError, value - lower * standardError);
        };
        return result(
                name(used) + " bootstrap, " + what + ", " + count,
                value,
                interval,
                error,
                bias,
                z0,
                a,
                List.of(low, high),
                finite.length);
    }

    private Estimation result(
            String words,
            double value,
            Interval interval,
            double error,
            double bias,
            OptionalDouble z0,
            OptionalDouble a,
            List<Double> probabilities,
            int count) {
        Estimate estimate = Estimate.of(value + 0.0, interval, options.unit());
        return new Estimation(words, estimate, error, bias, z0, a, probabilities, count, warnings);
    }

    private void warn(String code, String message) {
        warnings.add(Warning.of(code, message));
    }

    private static String name(Bootstrap.Method method) {
        return switch (method) {
            case BCA -> "BCa";
            case PERCENTILE -> "percentile";
            case BASIC -> "basic";
            case STUDENTIZED -> "studentised";
        };
    }

    private double shareBelow(double value, double[] finite) {
        double tie = TIE
                * Math.max(
                        Math.abs(value),
                        Arrays.stream(finite).map(Math::abs).max().orElse(0.0));
        double below = 0.0;
        for (double t : finite) {
            below += t < value - tie ? 1.0 : t <= value + tie && !tiesBelow ? 0.5 : 0.0;
        }
        return below / finite.length;
    }

    private double acceleration(double[][] jackknife) {
        double cubes = 0.0;
        double squares = 0.0;
        double size = 0.0;
        for (double[] values : jackknife) {
            double mean = Arrays.stream(values).average().orElse(0.0);
            for (double v : values) {
                double u = (mean - v) * (values.length - 1.0) / values.length;
                cubes += u * u * u;
                squares += u * u;
                size = Math.max(size, Math.abs(v));
            }
        }
        if (!(Math.sqrt(squares) > TIE * size) || !Double.isFinite(cubes)) {
            warn("no-acceleration", "leaving shots out one by one does not move the statistic, so a is taken as 0");
            return 0.0;
        }
        return cubes / (6.0 * Math.pow(squares, 1.5));
    }

    private static double adjusted(double z0, double a, double z) {
        double shift = z0 + z;
        double divisor = 1.0 - a * shift;
        // Beyond the pole the formula turns back; the nearest meaningful probability is an end.
        return divisor > 0.0 ? Distributions.normalCdf(z0 + shift / divisor) : shift > 0.0 ? 1.0 : 0.0;
    }

    private double quantile(double[] sorted, double p) {
        int last = sorted.length - 1;
        double at = outer ? p * (sorted.length + 1.0) - 1.0 : p * last;
        if (at < 0.0 || at > last || (!outer && (p * sorted.length < 1.0 || (1.0 - p) * sorted.length < 1.0))) {
            if (warnings.stream().noneMatch(w -> w.code().equals("beyond-resamples"))) {
                warn("beyond-resamples", "a limit lies at or beyond the most extreme resample; ask for more");
            }
        }
        double inside = Math.max(0.0, Math.min(last, at));
        int below = (int) Math.min(last - 1.0, Math.floor(inside));
        return last == 0 ? sorted[0] : sorted[below] + (inside - below) * (sorted[below + 1] - sorted[below]);
    }
}
