package dev.teeward.fitting.gapping;

import dev.teeward.quantity.Estimate;

/**
 * One change that would make a gap the wanted one, all else as it is. A change to a club moves both of its gaps.
 *
 * <p>Immutable and thread-safe.
 *
 * @param club the club to change
 * @param means what would be changed
 * @param change by how much, with its interval, which leaves out 0 and ends where the search does, at 6 deg or 20 % of the
 *     club's mean speed: loft in [rad], more loft positive; club speed in [m/s], always faster
 * @param shots how many swings of that club the models flew to find it
 */
public record Mend(String club, Means means, Estimate change, int shots) {
    /** What would be changed. */
    public enum Means {
        /** The loft of the club; a degree more loft is taken to deliver a degree more dynamic loft. */
        LOFT,

        /** The speed of the club head; only more of it, since nobody is told to swing slower. */
        CLUB_SPEED
    }
}
