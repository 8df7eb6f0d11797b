package dev.teeward.fitting.plan;

/**
 * A shot that was thrown away and hit again.
 *
 * <pre>{@code
 * ReHit slip = session.reHits().get(0);
 * slip.reason(); // "slipped"
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 *
 * @param side with which club of the pair
 * @param reason why, in words
 * @param afterPairs how many whole pairs there were
 */
public record ReHit(Side side, String reason, int afterPairs) {
    /**
     * Takes a reason that says something.
     *
     * @param side with which club of the pair
     * @param reason why, in words
     * @param afterPairs how many whole pairs there were
     * @throws IllegalArgumentException if the reason is blank
     */
    public ReHit {
        if (reason.isBlank()) {
            throw new IllegalArgumentException("reason must not be blank: it says why the shot was thrown away");
        }
    }

    /** A club of the pair. */
    public enum Side {
        /** The club whose numbers come first in the difference. */
        FIRST,

        /** The other club. */
        SECOND
    }
}
