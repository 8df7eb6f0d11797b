package dev.teeward.fitting.compare;

/** In which order two clubs were hit. */
public enum ShotOrderKind {
    /** In turn, with the order reversed in half of the pairs: a steady drift cancels. */
    ALTERNATED_ABBA,

    /** In turn, one club mostly first: a little of a drift stays in the difference. */
    ALTERNATED,

    /** Neither in turn nor each in one go. */
    MIXED,

    /** Each club in one go, so that warming up or tiring cannot be told from the club. */
    BLOCKED
}
