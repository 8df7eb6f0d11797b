package dev.teeward.fitting.compare;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.ShotPair;
import dev.teeward.fitting.ShotSet;
import dev.teeward.fitting.internal.Distributions;
import dev.teeward.fitting.internal.Sample;
import dev.teeward.fitting.summary.LandingPattern;
import dev.teeward.quantity.Interval;
import dev.teeward.quantity.LengthUnit;
import dev.teeward.quantity.RatioUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Compares how widely two landing patterns are spread. */
final class PatternSpread {
    private static final int LEAST = 3;

    /** Relative rounding of one pseudo-value for each shot; below it there is no spread. */
    private static final double ROUNDING = 1e-13;

    private PatternSpread() {}

    static Optional<PatternComparison> compare(ClubShots first, ClubShots second, ShotPairing pairing, double level) {
        Optional<LandingPattern.Result> one = first.pattern();
        Optional<LandingPattern.Result> two = second.pattern();
        if (one.isEmpty() || two.isEmpty()) {
            return Optional.empty();
        }
        ShotSet x = complete(first.used());
        ShotSet y = complete(second.used());
        List<Shot> firsts = new ArrayList<>();
        List<Shot> seconds = new ArrayList<>();
        for (ShotPair pair : pairing.pairs()) {
            if (landed(pair.first()) && landed(pair.second())) {
                firsts.add(pair.first());
                seconds.add(pair.second());
            }
        }
        int pairs = firsts.size();
        boolean paired = pairing.enough() && pairs >= LEAST && 2 * pairs >= Math.min(x.size(), y.size());
        if (paired) {
            x = ShotSet.of(firsts);
            y = ShotSet.of(seconds);
        }
        return Optional.of(new PatternComparison(
                first,
                second,
                one.get(),
                two.get(),
                ratio(points(x), points(y), paired, level),
                distance(x, y, paired, level)));
    }

    private static boolean landed(Shot shot) {
        return shot.has(Metric.CARRY) && shot.has(Metric.SIDE);
    }

    private static ShotSet complete(ShotSet shots) {
        return shots.filter(PatternSpread::landed);
    }

    private static double[][] points(ShotSet shots) {
        return new double[][] {shots.values(Metric.CARRY), shots.values(Metric.SIDE)};
    }

    static TestResult ratio(double[][] x, double[][] y, boolean paired, double level) {
        TestResult.Draft draft = new TestResult.Draft(
                "ratio of root mean square radii about the own centre, its interval by the jackknife of the log total variance, "
                        + (paired ? "paired, " : "Welch, ") + "two-sided",
                "t",
                Options.DEFAULTS.withLevel(level).withNullValue(1.0));
        if (paired) {
            draft.sizes(x[0].length);
        } else {
            draft.sizes(x[0].length, y[0].length);
        }
        double[] px = pseudoValues(x);
        double[] py = pseudoValues(y);
        Interval nothing = Interval.of(0.0, Double.POSITIVE_INFINITY, level);
        if (px.length == 0 || py.length == 0) {
            return draft.warn(
                            "no-spread", "but for one of its shots a club shows no spread, so 1 stands with no limits")
                    .estimate(1.0, nothing, RatioUnit.ONE);
        }
        Sample difference = paired ? Sample.differences("x", px, "y", py) : null;
        Moments.Pivot pivot = difference == null
                ? Moments.Pivot.welch(Moments.of(Sample.of("x", px)), Moments.of(Sample.of("y", py)))
                : Moments.Pivot.paired(Moments.of(difference));
        double ratio = Math.sqrt(totalVariance(x) / totalVariance(y));
        if (!pivot.defined() || pivot.standardError() <= ROUNDING * x[0].length) {
            return draft.warn("no-spread", "the two patterns repeat each other exactly, so the test cannot judge")
                    .estimate(ratio, nothing, RatioUnit.ONE);
        }
        double t = pivot.t(0.0);
        double df = pivot.degreesOfFreedom();
        double reach = Distributions.tQuantile(1.0 - 0.5 * (1.0 - level), df) * pivot.standardError();
        return draft.statistic(t)
                .degreesOfFreedom(df)
                .pValue(2.0 * Distributions.tUpperTail(Math.abs(t), df))
                .estimate(
                        ratio,
                        Interval.of(
                                Math.exp(0.5 * (pivot.estimate() - reach)),
                                Math.exp(0.5 * (pivot.estimate() + reach)),
                                level),
                        RatioUnit.ONE);
    }

    private static double totalVariance(double[][] points) {
        return Sample.of("carry", points[0]).variance()
                + Sample.of("side", points[1]).variance();
    }

    /** n ln T - (n-1) ln T without each shot, T the total variance; empty if that leaves no spread somewhere. */
    private static double[] pseudoValues(double[][] points) {
        Sample carry = Sample.of("carry", points[0]);
        Sample side = Sample.of("side", points[1]);
        int n = carry.size();
        double total = carry.variance() + side.variance();
        double[] pseudo = new double[n];
        for (int i = 0; i < n; i++) {
            double u = carry.value(i) - carry.mean();
            double v = side.value(i) - side.mean();
            double without = ((n - 1) * total - (u * u + v * v) * n / (n - 1.0)) / (n - 2.0);
            if (!(without > 1e-12 * total)) {
                return new double[0];
            }
            pseudo[i] = n * Math.log(total) - (n - 1) * Math.log(without);
        }
        return pseudo;
    }

    private static TestResult distance(ShotSet x, ShotSet y, boolean paired, double level) {
        double[] a = distances(points(x));
        double[] b = distances(points(y));
        return paired
                ? PairedTTest.withDefaults()
                        .withLevel(level)
                        .withUnit(LengthUnit.METER)
                        .test(a, b)
                : WelchTTest.withDefaults()
                        .withLevel(level)
                        .withUnit(LengthUnit.METER)
                        .test(a, b);
    }

    private static double[] distances(double[][] points) {
        double carry = Sample.of("carry", points[0]).median();
        double side = Sample.of("side", points[1]).median();
        double[] distances = new double[points[0].length];
        for (int i = 0; i < distances.length; i++) {
            distances[i] = Math.hypot(points[0][i] - carry, points[1][i] - side);
        }
        return distances;
    }
}
