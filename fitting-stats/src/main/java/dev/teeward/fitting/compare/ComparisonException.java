package dev.teeward.fitting.compare;

/**
 * A session that cannot be compared as asked, with one line that says why and what to do.
 *
 * <pre>{@code
 * try {
 *     HeadToHead.withDefaults().compare(session);
 * } catch (ComparisonException e) {
 *     show(e.getMessage()); // "the session has 3 clubs; choose two of Alder, Rowan, Hazel"
 * }
 * }</pre>
 */
public final class ComparisonException extends IllegalArgumentException {
    private static final long serialVersionUID = 1L;

    /** What stands in the way. */
    private final Reason reason;

    /** What can stand in the way of a comparison. */
    public enum Reason {
        /** The session has no shots. */
        NO_SHOTS,

        /** Every shot is excluded. */
        ALL_EXCLUDED,

        /** Only one club was hit. */
        ONE_CLUB,

        /** Three or more clubs were hit and none was chosen. */
        CLUBS_NOT_CHOSEN,

        /** A chosen club was not hit. */
        UNKNOWN_CLUB,

        /** A club has fewer than two used shots. */
        TOO_FEW_SHOTS,

        /** No metric has two used readings with each club. */
        NO_METRIC_IN_COMMON,

        /** The primary metric does not have two used readings with each club. */
        PRIMARY_NOT_AVAILABLE,

        /** A margin is not a usable number. */
        BAD_MARGIN
    }

    ComparisonException(Reason reason, String message) {
        super(message);
        this.reason = reason;
    }

    /**
     * What stands in the way.
     *
     * @return the reason
     */
    public Reason reason() {
        return reason;
    }
}
