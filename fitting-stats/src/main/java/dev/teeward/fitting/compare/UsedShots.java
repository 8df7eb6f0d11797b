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
    private final int firsts;
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
        int ofFirst = 0;
        for (int i = 0; i < clubs.length; i++) {
            clubs[i] = shots.shots().get(i).club().equals(first.name()) ? 0 : 1;
            ofFirst += 1 - clubs[i];
        }
        this.firsts = ofFirst;
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
        double[] first = new double[firsts];
        double[] second = new double[clubs.length - firsts];
        OriginCounts.Tally[] origins = {new OriginCounts.Tally(), new OriginCounts.Tally()};
        int x = 0;
        int y = 0;
        for (int i = 0; i < clubs.length; i++) {
            Reading reading = all[i].reading(metric).orElse(null);
            if (reading != null) {
                double value = reading.value();
                origins[clubs[i]].add(reading.origin());
                ordered[x + y] = value;
                order[x + y] = clubs[i];
                if (clubs[i] == 0) {
                    first[x++] = value;
                } else {
                    second[y++] = value;
                }
            }
        }
        double[] pairedFirst = new double[pairFirsts.length];
        double[] pairedSecond = new double[pairFirsts.length];
        int complete = pairs(metric, pairedFirst, pairedSecond);
        boolean paired = pairing.enough() && complete >= 2 && 2 * complete >= Math.min(x, y);
        return new MetricSamples(
                metric,
                Arrays.copyOf(first, x),
                Arrays.copyOf(second, y),
                Arrays.copyOf(ordered, x + y),
                Arrays.copyOf(order, x + y),
                x + y == clubs.length ? this.order : null,
                Arrays.copyOf(pairedFirst, complete),
                Arrays.copyOf(pairedSecond, complete),
                origins[0].counts(),
                origins[1].counts(),
                paired,
                pairing.enough() && !paired,
                exclusions(metric, x + y, paired ? complete : 0));
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
