package dev.teeward.fitting.explain;

/** Which side of a swing an input belongs to. */
public enum SwingSide {
    /** What the golfer brings: unless changed club speed, attack angle and club path. */
    GOLFER,

    /** Where club and golfer meet: unless changed face angle, dynamic loft, dynamic lie and the strike. */
    MEETING
}
