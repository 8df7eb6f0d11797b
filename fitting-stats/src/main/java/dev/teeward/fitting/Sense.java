package dev.teeward.fitting;

/** What the sign of a metric means. */
public enum Sense {
    /** Right of the target (or curving right) is positive for both hands; a left-handed golfer's words are mirrored. */
    LATERAL,

    /** Up is positive, down negative. */
    UP,

    /** Towards the toe, or toe up, is positive for both hands; towards the heel, or toe down, negative. */
    TOE,

    /** A size without direction; never negative. */
    NONE
}
