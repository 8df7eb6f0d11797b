package dev.teeward.fitting.compare;

/**
 * How a rank test gets its p and the ranks of its limits.
 *
 * <p>Immutable and thread-safe.
 */
public enum RankMethod {
    /** Exact as far as it is quick (200 pairs, 100 shots in all), else normal with continuity correction; the result says which. */
    AUTOMATIC,

    /** Exact; larger samples are refused rather than approximated. */
    EXACT,

    /** Normal approximation with tie correction and continuity correction. */
    NORMAL,

    /** Normal approximation with tie correction, without continuity correction. */
    NORMAL_UNCORRECTED
}
