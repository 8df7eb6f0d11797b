package dev.teeward.fitting.compare;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.ShotPair;
import dev.teeward.fitting.ShotSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The used numbers of one metric: of each club, of the pairs, and in the order of hitting. */
record MetricSamples(
        Metric metric,
        ShotSet first,
        ShotSet second,
        ShotSet inOrder,
        List<ShotPair> pairs,
        boolean paired,
        boolean pairsPassedOver,
        List<Exclusion> exclusions) {
    static MetricSamples of(Metric metric, ClubShots first, ClubShots second, ShotSet used, ShotPairing pairing) {
        ShotSet x = first.used().with(metric);
        ShotSet y = second.used().with(metric);
        List<ShotPair> pairs = pairing.pairs().stream()
                .filter(pair -> pair.first().has(metric) && pair.second().has(metric))
                .toList();
        boolean paired = pairing.enough() && pairs.size() >= 2 && 2 * pairs.size() >= Math.min(x.size(), y.size());
        Map<String, Integer> left = new LinkedHashMap<>();
        first.excluded()
                .forEach(shot -> left.merge("shot excluded: " + shot.exclusion().orElse(""), 1, Integer::sum));
        second.excluded()
                .forEach(shot -> left.merge("shot excluded: " + shot.exclusion().orElse(""), 1, Integer::sum));
        int absent = first.used().size() - x.size() + second.used().size() - y.size();
        if (absent > 0) {
            left.put("shot without " + metric.label(), absent);
        }
        int alone = x.size() + y.size() - 2 * pairs.size();
        if (paired && alone > 0) {
            left.put("shot whose partner is missing, excluded or without " + metric.label(), alone);
        }
        List<Exclusion> exclusions = left.entrySet().stream()
                .map(entry -> new Exclusion(entry.getValue(), entry.getKey()))
                .toList();
        return new MetricSamples(
                metric, x, y, used.with(metric), pairs, paired, pairing.enough() && !paired, exclusions);
    }

    boolean comparable() {
        return first.size() >= 2 && second.size() >= 2;
    }

    double[] firstValues() {
        return first.values(metric);
    }

    double[] secondValues() {
        return second.values(metric);
    }

    double[] pairedFirst() {
        return pairs.stream().mapToDouble(pair -> pair.first().value(metric)).toArray();
    }

    double[] pairedSecond() {
        return pairs.stream().mapToDouble(pair -> pair.second().value(metric)).toArray();
    }

    double[] orderedValues() {
        return inOrder.values(metric);
    }

    ShotOrder order(String firstClub) {
        return ShotOrder.of(inOrder.stream()
                .map(Shot::club)
                .mapToInt(club -> club.equals(firstClub) ? 0 : 1)
                .toArray());
    }
}
