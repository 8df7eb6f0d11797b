package dev.teeward.fitting.report;

/**
 * A shot at its place in a picture.
 *
 * @param x the coordinate to the right
 * @param y the coordinate downwards
 * @param kind how it is marked
 */
record PlacedShot(double x, double y, Kind kind) {
    /** How a shot is marked. */
    enum Kind {
        /** It counts. */
        USED,

        /** It counts, and screening flagged it. */
        FLAGGED,

        /** It does not count. */
        EXCLUDED
    }
}
