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
    /** Counts by the ordinal of the origin. */
    @SuppressWarnings("EnumOrdinal") // places in an array that is never kept
    static OriginCounts of(int[] counts) {
        return new OriginCounts(
                counts[Origin.MEASURED.ordinal()], counts[Origin.DERIVED.ordinal()], counts[Origin.COMPUTED.ordinal()]);
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
