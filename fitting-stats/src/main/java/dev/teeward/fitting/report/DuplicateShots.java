package dev.teeward.fitting.report;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Origin;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.compare.HeadToHeadResult;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Used shots whose readings are all those of an earlier shot, as when a row was copied. Two shots agree by chance in one or
 * two rounded readings, hardly in all of four or more (common practice, no source).
 */
final class DuplicateShots {
    private static final int FEWEST_READINGS = 4;

    private DuplicateShots() {}

    static List<Branch> of(HeadToHeadResult result) {
        Map<Map<Metric, Double>, Shot> seen = new HashMap<>();
        List<Branch> found = new ArrayList<>();
        result.session().shots().used().stream()
                .filter(shot -> shot.club().equals(result.first().name())
                        || shot.club().equals(result.second().name()))
                .forEach(shot -> {
                    Map<Metric, Double> readings = measured(shot);
                    Shot before = readings.size() < FEWEST_READINGS ? null : seen.putIfAbsent(readings, shot);
                    if (before != null) {
                        found.add(new Branch()
                                .count("shot", shot.number())
                                .count("like", before.number())
                                .text("club", shot.club()));
                    }
                });
        return found;
    }

    private static Map<Metric, Double> measured(Shot shot) {
        Map<Metric, Double> readings = new EnumMap<>(Metric.class);
        for (Metric metric : shot.metrics()) {
            shot.reading(metric)
                    .filter(reading -> reading.origin() == Origin.MEASURED)
                    .ifPresent(reading -> readings.put(metric, shot.value(metric)));
        }
        return readings;
    }
}
