package dev.teeward.fitting.gapping;

import dev.teeward.fitting.Club;
import dev.teeward.flight.impact.ClubHead;
import dev.teeward.flight.impact.TypicalHead;
import dev.teeward.quantity.Handedness;
import java.util.Optional;

/**
 * The typical head of a club of which only the loft is known; the mass too if it was written down. Which loft belongs to which
 * head is common practice, no source: driver below 13 deg, fairway wood below 20, hybrid below 23, irons by about 4 deg from
 * 25 deg for the 5-iron, wedge from 43.
 */
final class HeadByLoft {
    private static final double DRIVER_BELOW = 13.0;
    private static final double THREE_WOOD_BELOW = 16.5;
    private static final double WOOD_BELOW = 20.0;
    private static final double HYBRID_BELOW = 23.0;
    private static final double WEDGE_FROM = 43.0;

    private HeadByLoft() {}

    /** The head, or nothing if the loft is not known. */
    static Optional<ClubHead> of(Club club, Handedness hand) {
        return club.loft().map(loft -> {
            ClubHead.Builder head = byDegrees(loft.degrees()).toBuilder().handedness(hand);
            club.headMass().ifPresent(head::mass);
            return head.build();
        });
    }

    private static ClubHead byDegrees(double loft) {
        if (loft < DRIVER_BELOW) {
            return TypicalHead.driver();
        }
        if (loft < WOOD_BELOW) {
            return TypicalHead.fairwayWood(loft < THREE_WOOD_BELOW ? 3 : 5);
        }
        if (loft < HYBRID_BELOW) {
            return TypicalHead.hybrid(4);
        }
        if (loft < WEDGE_FROM) {
            return TypicalHead.iron((int) Math.min(9L, Math.max(5L, Math.round(5.0 + (loft - 25.0) / 4.0))));
        }
        return TypicalHead.wedge(Math.min(66.0, loft));
    }
}
