package dev.teeward.fitting;

/** The stages of a shot, in the order in which they happen; tables list metrics in this order. */
public enum MetricGroup {
    /** How the club head comes to the ball. */
    APPROACH,

    /** How the face is delivered. */
    FACE,

    /** Where on the face the ball is struck. */
    STRIKE,

    /** How the ball starts. */
    START,

    /** What the ball does in the air. */
    FLIGHT,

    /** Where and how the ball comes down. */
    LANDING,

    /** Ratios of other metrics. */
    RATIOS
}
