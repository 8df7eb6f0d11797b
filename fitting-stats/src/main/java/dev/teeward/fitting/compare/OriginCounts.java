package dev.teeward.fitting.compare;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Origin;
import dev.teeward.fitting.Reading;
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
        int measured = 0;
        int derived = 0;
        int computed = 0;
        for (Shot shot : shots) {
            Origin origin = shot.reading(metric).map(Reading::origin).orElse(null);
            measured += origin == Origin.MEASURED ? 1 : 0;
            derived += origin == Origin.DERIVED ? 1 : 0;
            computed += origin == Origin.COMPUTED ? 1 : 0;
        }
        return new OriginCounts(measured, derived, computed);
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
