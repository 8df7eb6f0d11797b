package dev.teeward.fitting.compare;

/** In which order two clubs were hit. */
public enum ShotOrderKind {
    /** In turn, with the order reversed from each pair to the next: a steady drift cancels in every two pairs. */
    ALTERNATED_ABBA,

    /** In turn, not reversed from each pair to the next: up to one shot of a drift stays in the difference. */
    ALTERNATED,

    /** Neither in turn nor each in one go. */
    MIXED,

    /** Each club in one go, so that warming up or tiring cannot be told from the club. */
    BLOCKED
}
