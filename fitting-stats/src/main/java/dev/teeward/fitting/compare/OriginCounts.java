package dev.teeward.fitting.compare;

import dev.teeward.fitting.Origin;

/**
 * How many numbers of a sample were measured, derived from other readings, or computed by the flight model.
 *
 * @param measured how many were reported by a device or a person
 * @param derived how many follow from other readings by definition
 * @param computed how many the flight model filled in
 */
public record OriginCounts(int measured, int derived, int computed) {
    /** Counts one by one. */
    static final class Tally {
        private int measured;
        private int derived;
        private int computed;

        void add(Origin origin) {
            switch (origin) {
                case MEASURED -> measured++;
                case DERIVED -> derived++;
                case COMPUTED -> computed++;
            }
        }

        OriginCounts counts() {
            return new OriginCounts(measured, derived, computed);
        }
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
