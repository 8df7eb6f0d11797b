package dev.teeward.fitting.explain;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Origin;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.ShotPair;
import dev.teeward.fitting.compare.Exclusion;
import dev.teeward.fitting.compare.HeadToHeadResult;
import dev.teeward.fitting.compare.PairedTTest;
import dev.teeward.fitting.compare.TestResult;
import dev.teeward.fitting.compare.WelchTTest;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.function.Predicate;
import java.util.stream.DoubleStream;

/** The shots of both clubs that have certain readings: whole pairs if pairs were compared, else all used shots. */
final class Readings {
    private final boolean paired;
    private final List<Shot> first;
    private final List<Shot> second;
    private final int leftOut;

    private Readings(boolean paired, List<Shot> first, List<Shot> second, int leftOut) {
        this.paired = paired;
        this.first = first;
        this.second = second;
        this.leftOut = leftOut;
    }

    static Readings of(HeadToHeadResult result, Collection<Metric> metrics) {
        Predicate<Shot> complete = shot -> metrics.stream().allMatch(shot::has);
        List<Shot> one = new ArrayList<>();
        List<Shot> two = new ArrayList<>();
        if (result.pairing().enough()) {
            List<ShotPair> pairs = result.pairing().pairs();
            for (ShotPair pair : pairs) {
                if (complete.test(pair.first()) && complete.test(pair.second())) {
                    one.add(pair.first());
                    two.add(pair.second());
                }
            }
            return new Readings(true, one, two, pairs.size() - one.size());
        }
        result.first().used().stream().filter(complete).forEach(one::add);
        result.second().used().stream().filter(complete).forEach(two::add);
        int all = result.first().used().size() + result.second().used().size();
        return new Readings(false, one, two, all - one.size() - two.size());
    }

    boolean paired() {
        return paired;
    }

    int firstSize() {
        return first.size();
    }

    int secondSize() {
        return second.size();
    }

    /** The pairs, or the shots of the club that has fewer. */
    int fewest() {
        return Math.min(first.size(), second.size());
    }

    List<Integer> sizes() {
        return paired ? List.of(first.size()) : List.of(first.size(), second.size());
    }

    /** Pairs or shots that lack a reading. */
    List<Exclusion> exclusions() {
        return leftOut == 0
                ? List.of()
                : List.of(new Exclusion(
                        leftOut,
                        paired ? "pairs in which a reading that is needed is missing" : "a reading is missing"));
    }

    double[] first(Metric metric) {
        return first.stream().mapToDouble(shot -> shot.value(metric)).toArray();
    }

    double[] second(Metric metric) {
        return second.stream().mapToDouble(shot -> shot.value(metric)).toArray();
    }

    /** The first club's, then the second's. */
    double[] both(Metric metric) {
        return DoubleStream.concat(Arrays.stream(first(metric)), Arrays.stream(second(metric)))
                .toArray();
    }

    /** First minus second, pair by pair. */
    double[] differences(Metric metric) {
        double[] difference = first(metric);
        double[] other = second(metric);
        for (int i = 0; i < difference.length; i++) {
            difference[i] -= other[i];
        }
        return difference;
    }

    boolean all(Metric metric) {
        return first.stream().allMatch(shot -> shot.has(metric))
                && second.stream().allMatch(shot -> shot.has(metric));
    }

    boolean mostly(Metric metric) {
        long with = first.stream().filter(shot -> shot.has(metric)).count()
                + second.stream().filter(shot -> shot.has(metric)).count();
        return 2 * with >= first.size() + second.size() && with > 0;
    }

    /** Whether the flight model worked out some of the numbers. */
    boolean computed(Metric metric) {
        return computed(first, metric) || computed(second, metric);
    }

    private static boolean computed(List<Shot> shots, Metric metric) {
        return shots.stream()
                .flatMap(shot -> shot.reading(metric).stream())
                .anyMatch(reading -> reading.origin() == Origin.COMPUTED);
    }

    /** The difference of the means, by the t test of the head-to-head comparison. */
    TestResult difference(Metric metric, double level) {
        return paired
                ? PairedTTest.withDefaults()
                        .withLevel(level)
                        .withUnit(metric.siUnit())
                        .test(first(metric), second(metric))
                : WelchTTest.withDefaults()
                        .withLevel(level)
                        .withUnit(metric.siUnit())
                        .test(first(metric), second(metric));
    }
}
