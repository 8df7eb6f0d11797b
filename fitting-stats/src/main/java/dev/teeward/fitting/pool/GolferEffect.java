package dev.teeward.fitting.pool;

import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.Warning;
import java.util.List;

/**
 * The difference between two clubs with one golfer.
 *
 * <p>Immutable and thread-safe.
 *
 * @param golfer the name by which the session was given
 * @param difference first club minus second, in the direction of a right-handed golfer if directions were mirrored
 * @param standardError its standard error, above 0 [unit of the difference]
 * @param degreesOfFreedom those of the standard error
 * @param paired whether it is that of pairs
 * @param mirrored whether its sign was turned, because the golfer is left-handed
 * @param warnings what makes the difference doubtful as one of the clubs; {@link ClubOverGolfers} lists the codes
 */
public record GolferEffect(
        String golfer,
        Estimate difference,
        double standardError,
        double degreesOfFreedom,
        boolean paired,
        boolean mirrored,
        List<Warning> warnings) {
    /**
     * Copies the list.
     *
     * @param golfer the name by which the session was given
     * @param difference first club minus second, in the direction of a right-handed golfer if directions were mirrored
     * @param standardError its standard error, above 0 [unit of the difference]
     * @param degreesOfFreedom those of the standard error
     * @param paired whether it is that of pairs
     * @param mirrored whether its sign was turned, because the golfer is left-handed
     * @param warnings what makes the difference doubtful as one of the clubs
     */
    public GolferEffect {
        warnings = List.copyOf(warnings);
    }
}
