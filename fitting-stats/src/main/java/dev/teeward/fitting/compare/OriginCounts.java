package dev.teeward.fitting.compare;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Origin;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.ShotSet;

/**
 * How many numbers of a sample were measured, derived from other readings, or computed by the flight model.
 *
 * @param measured how many were reported by a device or a person
 * @param derived how many follow from other readings by definition
 * @param computed how many the flight model filled in
 */
public record OriginCounts(int measured, int derived, int computed) {
    static OriginCounts of(ShotSet shots, Metric metric) {
        return new OriginCounts(
                count(shots, metric, Origin.MEASURED),
                count(shots, metric, Origin.DERIVED),
                count(shots, metric, Origin.COMPUTED));
    }

    private static int count(ShotSet shots, Metric metric, Origin origin) {
        int count = 0;
        for (Shot shot : shots) {
            count += shot.reading(metric)
                            .filter(reading -> reading.origin() == origin)
                            .isPresent()
                    ? 1
                    : 0;
        }
        return count;
    }

    /**
     * All of them.
     *
     * @return the sum
     */
    public int total() {
        return measured + derived + computed;
    }
}
