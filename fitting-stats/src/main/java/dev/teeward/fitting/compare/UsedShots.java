package dev.teeward.fitting.compare;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Reading;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.ShotPair;
import dev.teeward.fitting.ShotSet;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** The used shots of two clubs in the order of hitting, with what the samples of all metrics have in common. */
@SuppressWarnings("EnumOrdinal") // places in an array of one method; never kept
final class UsedShots {
    private final ShotSet shots;
    private final int[] clubs;
    private final ShotOrder order;
    private final ShotPairing pairing;
    private final Map<String, Integer> excluded;
    private final Shot[] all;
    private final Shot[] pairFirsts;
    private final Shot[] pairSeconds;

    UsedShots(ShotSet session, ClubShots first, ClubShots second, ShotPairing pairing) {
        this.shots = session.filter(shot ->
                shot.used() && (shot.club().equals(first.name()) || shot.club().equals(second.name())));
        this.clubs = new int[shots.size()];
        for (int i = 0; i < clubs.length; i++) {
            clubs[i] = shots.shots().get(i).club().equals(first.name()) ? 0 : 1;
        }
        this.order = ShotOrder.of(clubs);
        this.pairing = pairing;
        this.all = shots.shots().toArray(new Shot[0]);
        this.pairFirsts = pairing.pairs().stream().map(ShotPair::first).toArray(Shot[]::new);
        this.pairSeconds = pairing.pairs().stream().map(ShotPair::second).toArray(Shot[]::new);
        Map<String, Integer> left = new LinkedHashMap<>();
        for (ClubShots club : List.of(first, second)) {
            for (Shot shot : club.excluded()) {
                left.merge("shot excluded: " + shot.exclusion().orElse(""), 1, Integer::sum);
            }
        }
        this.excluded = Collections.unmodifiableMap(left);
    }

    int size() {
        return clubs.length;
    }

    Set<Metric> metrics() {
        return shots.metrics();
    }

    MetricSamples samples(Metric metric) {
        double[] ordered = new double[clubs.length];
        int[] order = new int[clubs.length];
        OriginCounts.Tally[] origins = {new OriginCounts.Tally(), new OriginCounts.Tally()};
        int count = fill(metric, ordered, order, origins);
        double[] first = of(0, ordered, order, count);
        double[] second = of(1, ordered, order, count);
        int x = first.length;
        int y = second.length;
        double[] pairedFirst = new double[pairFirsts.length];
        double[] pairedSecond = new double[pairFirsts.length];
        int complete = pairs(metric, pairedFirst, pairedSecond);
        boolean paired = pairing.enough() && complete >= 2 && 2 * complete >= Math.min(x, y);
        return new MetricSamples(
                metric,
                first,
                second,
                Arrays.copyOf(ordered, count),
                Arrays.copyOf(order, count),
                count == clubs.length ? this.order : null,
                Arrays.copyOf(pairedFirst, complete),
                Arrays.copyOf(pairedSecond, complete),
                origins[0].counts(),
                origins[1].counts(),
                paired,
                pairing.enough() && !paired,
                exclusions(metric, count, paired ? complete : 0));
    }

    /** How many shots have the metric; puts their numbers, clubs and origins into the arrays. */
    private int fill(Metric metric, double[] ordered, int[] order, OriginCounts.Tally[] origins) {
        int count = 0;
        for (int i = 0; i < clubs.length; i++) {
            Reading reading = all[i].reading(metric).orElse(null);
            if (reading != null) {
                origins[clubs[i]].add(reading.origin());
                order[count] = clubs[i];
                ordered[count++] = reading.value();
            }
        }
        return count;
    }

    private static double[] of(int club, double[] ordered, int[] order, int count) {
        double[] own = new double[count];
        int found = 0;
        for (int i = 0; i < count; i++) {
            if (order[i] == club) {
                own[found++] = ordered[i];
            }
        }
        return Arrays.copyOf(own, found);
    }

    /** How many pairs have the metric with both clubs; puts their numbers into the arrays. */
    private int pairs(Metric metric, double[] ofFirst, double[] ofSecond) {
        int complete = 0;
        for (int i = 0; i < pairFirsts.length; i++) {
            if (pairFirsts[i].has(metric) && pairSeconds[i].has(metric)) {
                ofFirst[complete] = pairFirsts[i].value(metric);
                ofSecond[complete++] = pairSeconds[i].value(metric);
            }
        }
        return complete;
    }

    /** With how many pairs are compared; none if all shots are. */
    private List<Exclusion> exclusions(Metric metric, int measured, int pairs) {
        List<Exclusion> exclusions = new ArrayList<>(excluded.size() + 2);
        excluded.forEach((reason, count) -> exclusions.add(new Exclusion(count, reason)));
        int absent = clubs.length - measured;
        if (absent > 0) {
            exclusions.add(new Exclusion(absent, "shot without " + metric.label()));
        }
        int alone = pairs == 0 ? 0 : measured - 2 * pairs;
        if (alone > 0) {
            exclusions.add(
                    new Exclusion(alone, "shot whose partner is missing, excluded or without " + metric.label()));
        }
        return exclusions;
    }
}
