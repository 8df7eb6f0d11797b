package dev.teeward.fitting.screen;

import dev.teeward.fitting.Metric;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import org.apache.commons.statistics.descriptive.Mean;

/**
 * Mishits: shots whose strike, or failing that whose smash factor and launch angle, lie far from the bulk.
 *
 * <p>With one club its shots are screened as they are. With several, each club is standardized first, so that a club that
 * scatters more raises no more flags than another: the club's mean is subtracted, and the rest of each metric divided by the
 * reweighted one-dimensional minimum covariance determinant scale of the club. The clubs are then pooled and screened
 * together. The scales are uncertain, so the cut-off for one set of N shots is multiplied by 1 + k / m, for k clubs of which
 * the smallest has m shots: a bound put above the factors that 5 % needs (own simulation, 1,500 to 6,000 sessions each: 1.08
 * for two clubs of 6, 1.29 of 7, 1.17 of 8, 1.12 of 9, 1.06 of 10, 1.22 for 6 and 9, 1.13 for 6 and 14, 1.32 for three of 6;
 * {@code SessionScreenSweepTest} holds the rates). The rate does not depend on the spreads at all, since a standardized
 * reading has no scale; the simulations suppose the same correlation of the two metrics with each club.
 */
final class MishitScreen {
    static final List<Metric> STRIKE = List.of(Metric.STRIKE_TOE, Metric.STRIKE_UP);
    static final List<Metric> LAUNCH = List.of(Metric.SMASH_FACTOR, Metric.LAUNCH_ANGLE);

    /** Beyond this ratio of scales the clubs are reported as uneven; a choice of this library. */
    private static final double LARGEST_RATIO = 3.0;

    private MishitScreen() {}

    /** The false-alarm rate for the session; empty if nothing could be screened. */
    static OptionalDouble apply(Screening screening, Set<Metric> left) {
        if (screening.used().length == 0) {
            return OptionalDouble.empty();
        }
        int strike = count(screening, STRIKE, left);
        int launch = count(screening, LAUNCH, left);
        boolean byStrike = strike >= Screening.FEWEST && 2 * strike >= launch;
        List<Metric> metrics = byStrike ? STRIKE : LAUNCH;
        if (!byStrike && launch == 0) {
            return OptionalDouble.empty();
        }
        List<int[]> pooled = new ArrayList<>();
        List<double[]> firsts = new ArrayList<>();
        List<double[]> seconds = new ArrayList<>();
        List<double[]> scales = new ArrayList<>();
        int fewest = Integer.MAX_VALUE;
        for (Map.Entry<String, int[]> club : screening.byClub().entrySet()) {
            int[] shots = screening.with(club.getValue(), metrics);
            if (shots.length < Screening.FEWEST) {
                screening.warn(
                        "too-few-shots",
                        "mishits cannot be told with " + shots.length + " measured shots with " + club.getKey()
                                + "; it needs " + Screening.FEWEST);
                continue;
            }
            double[] first = screening.values(shots, metrics.get(0));
            double[] second = screening.values(shots, metrics.get(1));
            OptionalDouble firstScale = scale(first);
            OptionalDouble secondScale = scale(second);
            if (firstScale.isEmpty() || secondScale.isEmpty()) {
                screening.warn(
                        "exact-fit",
                        "mishits with " + club.getKey() + " cannot be told, because most of its shots have the same "
                                + metrics.get(firstScale.isEmpty() ? 0 : 1).label()
                                + "; the readings may be rounded too coarsely");
                continue;
            }
            pooled.add(shots);
            fewest = Math.min(fewest, shots.length);
            firsts.add(standardized(first, firstScale.getAsDouble()));
            seconds.add(standardized(second, secondScale.getAsDouble()));
            scales.add(new double[] {firstScale.getAsDouble(), secondScale.getAsDouble()});
        }
        if (pooled.isEmpty()) {
            return OptionalDouble.empty();
        }
        checkSpreads(screening, metrics, scales);
        double[] firstJoined = joined(firsts);
        double[] secondJoined = joined(seconds);
        MinimumCovarianceDeterminant.Result result =
                MinimumCovarianceDeterminant.withDefaults().screen(firstJoined, secondJoined);
        for (Warning warning : result.warnings()) {
            screening.warn(warning.code(), "mishits: " + warning.message());
        }
        if (result.cutOff().isEmpty() || result.statistic().isEmpty()) {
            return OptionalDouble.empty();
        }
        int[] indices = pooled.stream().flatMapToInt(Arrays::stream).toArray();
        double cutOff = factor(firsts.size(), fewest) * result.cutOff().getAsDouble();
        double[] distances = result.rawSquaredDistances().orElseThrow();
        for (Flag found : result.flags()) {
            double distance = distances[found.index()];
            if (distance > cutOff) {
                int index = indices[found.index()];
                Flag flag = new Flag(
                        found.index(),
                        found.method(),
                        "squared distance",
                        distance,
                        cutOff,
                        McdCutOffs.FALSE_ALARM_RATE);
                screening.test(
                        index,
                        metrics,
                        flag,
                        reason(screening, index, metrics, flag, firsts.size()),
                        McdCutOffs.FALSE_ALARM_RATE,
                        !byStrike && fast(firstJoined[found.index()], secondJoined[found.index()]));
            }
        }
        return OptionalDouble.of(McdCutOffs.FALSE_ALARM_RATE);
    }

    /** Standardized: more by its smash factor than by its launch, and upwards. */
    private static boolean fast(double smash, double launch) {
        return smash > 0.0 && smash >= Math.abs(launch);
    }

    /** Says why neither strike nor launch could be screened; nothing if a mishit was found all the same. */
    static void explain(Screening screening, Set<Metric> left, boolean otherwise) {
        if (screening.used().length == 0
                || screening.mishits()
                || count(screening, LAUNCH, left) > 0
                || count(screening, STRIKE, left) >= Screening.FEWEST) {
            return;
        }
        List<String> missing = new ArrayList<>();
        boolean strike = count(screening, STRIKE, left) > 0;
        missing.add(strike ? "enough strikes" : "the strike");
        for (Metric metric : LAUNCH) {
            if (count(screening, List.of(metric), left) == 0) {
                missing.add(metric.label());
            }
        }
        String what = missing.size() == 1
                ? missing.get(0) + " and smash factor with launch angle of the same shot were not"
                : "neither " + String.join(" nor ", missing) + " were";
        screening.warn(
                "mishits-not-screened",
                (otherwise
                                ? "mishits can be told by the single readings only, because "
                                : "mishits cannot be told, because ")
                        + what + " measured" + (left.isEmpty() ? "" : " and left to the screen"));
    }

    private static int count(Screening screening, List<Metric> metrics, Set<Metric> left) {
        return metrics.stream().anyMatch(left::contains) ? 0 : screening.with(screening.used(), metrics).length;
    }

    private static String reason(Screening screening, int index, List<Metric> metrics, Flag flag, int clubs) {
        Metric first = metrics.get(0);
        Metric second = metrics.get(1);
        return Screening.format(
                "%s %s and %s %s %s%s",
                first.label(),
                Screening.words(first, screening.known(first)[index]),
                second.label(),
                Screening.words(second, screening.known(second)[index]),
                flag.reason(),
                ", if normally spread"
                        + (clubs > 1
                                ? ", " + clubs + " clubs pooled, each about its own mean and in its own spread"
                                : ""));
    }

    /** What the cut-off for one set is multiplied by where clubs with scales of their own are pooled. */
    static double factor(int clubs, int fewest) {
        return clubs == 1 ? 1.0 : 1.0 + (double) clubs / fewest;
    }

    /** The robust standard deviation of a club; empty if most of its values are the same. */
    static OptionalDouble scale(double[] values) {
        return MinimumCovarianceDeterminant.withDefaults()
                .screen(values)
                .covariance()
                .map(covariance -> OptionalDouble.of(Math.sqrt(covariance[0][0])))
                .orElse(OptionalDouble.empty());
    }

    /** The deviations from the mean in units of the scale. */
    static double[] standardized(double[] values, double scale) {
        double mean = Mean.of(values).getAsDouble();
        double[] standardized = new double[values.length];
        for (int i = 0; i < standardized.length; i++) {
            standardized[i] = (values[i] - mean) / scale;
        }
        return standardized;
    }

    private static void checkSpreads(Screening screening, List<Metric> metrics, List<double[]> scales) {
        for (int j = 0; j < metrics.size(); j++) {
            int column = j;
            double[] sorted =
                    scales.stream().mapToDouble(s -> s[column]).sorted().toArray();
            if (sorted[sorted.length - 1] > LARGEST_RATIO * sorted[0]) {
                screening.warn(
                        "unequal-spread",
                        metrics.get(j).label()
                                + " scatters more than three times as much with one club as with another; mishits are"
                                + " told in the spread of each club, so that the same strike may stand out with one of"
                                + " them only");
            }
        }
    }

    private static double[] joined(List<double[]> parts) {
        double[] joined =
                new double[parts.stream().mapToInt(part -> part.length).sum()];
        int filled = 0;
        for (double[] part : parts) {
            System.arraycopy(part, 0, joined, filled, part.length);
            filled += part.length;
        }
        return joined;
    }
}
