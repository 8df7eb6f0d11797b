package dev.teeward.fitting.compare;

/**
 * What can be said about two clubs given a margin set beforehand.
 *
 * <p>Immutable and thread-safe.
 */
public enum Verdict {
    /** The difference is not zero, and it may matter. */
    DIFFERENT,

    /** The difference is surely smaller than the margin, whether or not it is zero. */
    PRACTICALLY_THE_SAME,

    /** Neither: more shots are needed. */
    UNDECIDED
}
