package dev.teeward.fitting.report;

/**
 * A linear axis: numbers to coordinates of the picture.
 *
 * @param low a number
 * @param high another number
 * @param from the coordinate of the first
 * @param to the coordinate of the other
 */
record Scale(double low, double high, double from, double to) {
    /** The coordinate of a number. */
    double at(double value) {
        return from + (value - low) / (high - low) * (to - from);
    }

    /** The coordinate of a number, held within the axis. */
    double within(double value) {
        return at(Math.max(Math.min(low, high), Math.min(Math.max(low, high), value)));
    }

    /** How many coordinates one unit takes. */
    double perUnit() {
        return Math.abs((to - from) / (high - low));
    }
}
