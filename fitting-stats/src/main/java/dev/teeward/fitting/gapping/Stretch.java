package dev.teeward.fitting.gapping;

import dev.teeward.quantity.Length;

/**
 * A stretch of distances from the golfer.
 *
 * <p>Immutable and thread-safe.
 *
 * @param from its nearer end
 * @param to its farther end, not nearer
 */
public record Stretch(Length from, Length to) {
    /**
     * A stretch.
     *
     * @param from its nearer end
     * @param to its farther end
     * @throws IllegalArgumentException if the farther end is nearer
     */
    public Stretch {
        if (to.meters() < from.meters()) {
            throw new IllegalArgumentException(
                    "to must be at least from, " + from.meters() + " m, but was " + to.meters() + " m");
        }
    }

    static Stretch ofMeters(double from, double to) {
        return new Stretch(Length.ofMeters(from), Length.ofMeters(to));
    }

    /**
     * How long it is.
     *
     * @return the length, at least 0
     */
    public Length length() {
        return Length.ofMeters(to.meters() - from.meters());
    }
}
