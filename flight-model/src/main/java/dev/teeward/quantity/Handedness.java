package dev.teeward.quantity;

/**
 * Which way a golfer stands, used only at the edge where signed numbers become the trade's words.
 *
 * <p>All numbers in this library are signed the same way for both hands: right of the target is positive. A right-handed
 * golfer's ball that curves right is a fade, a left-handed golfer's is a draw; the words are common practice, no source.
 *
 * <pre>{@code
 * Handedness.LEFT.curveWord(-3.0);  // fade
 * Handedness.LEFT.faceWord(2.0);    // closed
 * Handedness.RIGHT.pathWord(1.5);   // in-to-out
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public enum Handedness {
    /** Stands to the left of the ball as seen from behind, swings with the right hand low. */
    RIGHT(1.0),

    /** The mirror image. */
    LEFT(-1.0);

    private final double sign;

    Handedness(double sign) {
        this.sign = sign;
    }

    /**
     * The factor that turns "right of the target positive" into "away from the golfer positive".
     *
     * @return +1 for a right-handed golfer, -1 for a left-handed one
     */
    public double sign() {
        return sign;
    }

    /**
     * The word for a curve or an axis tilt.
     *
     * @param rightPositive the curve or tilt, right positive, any unit
     * @return {@code fade}, {@code draw}, or {@code straight} for exactly 0
     * @throws IllegalArgumentException if the number is NaN
     */
    public String curveWord(double rightPositive) {
        return word(rightPositive, "fade", "draw", "straight");
    }

    /**
     * The word for a face angle or a face-to-path.
     *
     * @param rightPositive the angle, right positive, any unit
     * @return {@code open}, {@code closed}, or {@code square} for exactly 0
     * @throws IllegalArgumentException if the number is NaN
     */
    public String faceWord(double rightPositive) {
        return word(rightPositive, "open", "closed", "square");
    }

    /**
     * The word for a club path.
     *
     * @param rightPositive the path, right positive, any unit
     * @return {@code in-to-out}, {@code out-to-in}, or {@code straight} for exactly 0
     * @throws IllegalArgumentException if the number is NaN
     */
    public String pathWord(double rightPositive) {
        return word(rightPositive, "in-to-out", "out-to-in", "straight");
    }

    private String word(double rightPositive, String away, String towards, String neither) {
        if (Double.isNaN(rightPositive)) {
            throw new IllegalArgumentException("there is no word for NaN");
        }
        double signed = sign * rightPositive;
        return signed > 0.0 ? away : signed < 0.0 ? towards : neither;
    }
}
