package dev.teeward.fitting.screen;

import dev.teeward.fitting.Metric;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.apache.commons.statistics.descriptive.Mean;
import org.apache.commons.statistics.descriptive.StandardDeviation;

/**
 * Mishits: shots whose strike, or failing that whose smash factor and launch angle, lie far from the bulk.
 *
 * <p>Each club's mean is subtracted and the rest multiplied by sqrt(n / (n - 1)), which restores its variance; the clubs are
 * then pooled and screened together by the minimum covariance determinant. The cut-offs simulated for one set of N shots
 * hold for pooled ones too: with 2 clubs of 6, 8, 10, 12, 20, 40 shots, 3 of 6, 4 of 8 and 10 of 8, between 4.0 and 6.1 % of
 * good sessions raised a flag (own simulation, 1,500 to 8,000 sessions each).
 */
final class MishitScreen {
    static final List<Metric> STRIKE = List.of(Metric.STRIKE_TOE, Metric.STRIKE_UP);
    static final List<Metric> LAUNCH = List.of(Metric.SMASH_FACTOR, Metric.LAUNCH_ANGLE);

    /** Beyond this ratio of standard deviations the clubs should hardly be pooled; a choice of this library. */
    private static final double LARGEST_RATIO = 3.0;

    private MishitScreen() {}

    /** The false-alarm rate for the session; empty if nothing could be screened. */
    static OptionalDouble apply(Screening screening) {
        if (screening.used().isEmpty()) {
            return OptionalDouble.empty();
        }
        int strike = screening.with(screening.used(), STRIKE).size();
        int launch = screening.with(screening.used(), LAUNCH).size();
        boolean byStrike = strike >= Screening.FEWEST && 2 * strike >= launch;
        List<Metric> metrics = byStrike ? STRIKE : LAUNCH;
        if (!byStrike && launch == 0) {
            screening.warn(
                    "mishits-not-screened",
                    "mishits cannot be told, because neither the strike nor smash factor and launch angle were measured");
            return OptionalDouble.empty();
        }
        List<Integer> pooled = new ArrayList<>();
        List<double[]> firsts = new ArrayList<>();
        List<double[]> seconds = new ArrayList<>();
        for (Map.Entry<String, List<Integer>> club : screening.byClub().entrySet()) {
            List<Integer> shots = screening.with(club.getValue(), metrics);
            if (shots.size() < Screening.FEWEST) {
                screening.warn(
                        "too-few-shots",
                        "mishits cannot be told with " + shots.size() + " measured shots with " + club.getKey()
                                + "; it needs " + Screening.FEWEST);
                continue;
            }
            pooled.addAll(shots);
            firsts.add(within(screening.values(shots, metrics.get(0))));
            seconds.add(within(screening.values(shots, metrics.get(1))));
        }
        if (pooled.isEmpty()) {
            return OptionalDouble.empty();
        }
        checkSpreads(screening, metrics.get(0), firsts);
        checkSpreads(screening, metrics.get(1), seconds);
        MinimumCovarianceDeterminant.Result result =
                MinimumCovarianceDeterminant.withDefaults().screen(joined(firsts), joined(seconds));
        for (Warning warning : result.warnings()) {
            screening.warn(warning.code(), "mishits: " + warning.message());
        }
        for (Flag flag : result.flags()) {
            int index = pooled.get(flag.index());
            screening.test(
                    index,
                    metrics,
                    flag,
                    reason(screening, index, metrics, flag, firsts.size()),
                    flag.falseAlarmRate());
        }
        return result.cutOff().isPresent() && result.statistic().isPresent()
                ? OptionalDouble.of(McdCutOffs.FALSE_ALARM_RATE)
                : OptionalDouble.empty();
    }

    private static String reason(Screening screening, int index, List<Metric> metrics, Flag flag, int clubs) {
        Metric first = metrics.get(0);
        Metric second = metrics.get(1);
        return Screening.format(
                "%s %s and %s %s %s%s",
                first.label(),
                Screening.words(
                        first, Screening.value(screening.shot(index), first).orElseThrow()),
                second.label(),
                Screening.words(
                        second, Screening.value(screening.shot(index), second).orElseThrow()),
                flag.reason(),
                clubs > 1 ? ", " + clubs + " clubs pooled, each about its own mean" : "");
    }

    private static double[] within(double[] values) {
        double mean = Mean.of(values).getAsDouble();
        double factor = Math.sqrt(values.length / (values.length - 1.0));
        double[] rest = new double[values.length];
        for (int i = 0; i < rest.length; i++) {
            rest[i] = factor * (values[i] - mean);
        }
        return rest;
    }

    private static void checkSpreads(Screening screening, Metric metric, List<double[]> clubs) {
        double smallest = Double.POSITIVE_INFINITY;
        double largest = 0.0;
        for (double[] rest : clubs) {
            double sd = StandardDeviation.of(rest).getAsDouble();
            smallest = Math.min(smallest, sd);
            largest = Math.max(largest, sd);
        }
        if (largest > LARGEST_RATIO * smallest) {
            screening.warn(
                    "unequal-spread",
                    metric.label() + " scatters more than three times as much with one club as with another, so that"
                            + " flags of mishits may only show which club scatters more");
        }
    }

    private static double[] joined(List<double[]> parts) {
        return parts.stream().flatMapToDouble(Arrays::stream).toArray();
    }
}
