package dev.teeward.fitting.summary;

import dev.teeward.quantity.Handedness;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * The shape of one shot: the class of its start direction and the class of its curve, nine in all.
 *
 * <p>The words are those of the trade (common practice, no source): a ball that starts on the golfer's far side is a push, on
 * the near side a pull; one that curves to the far side is a fade, to the near side a draw. Far is right for a right-handed
 * golfer.
 *
 * <pre>{@code
 * ShotShape.of(Side.RIGHT, Side.LEFT).words(Handedness.RIGHT);   // push draw
 * ShotShape.of(Side.STRAIGHT, Side.LEFT).words(Handedness.LEFT); // fade
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class ShotShape {
    /** Left, straight or right of the line in question. */
    public enum Side {
        /** To the left, beyond the threshold. */
        LEFT(-1.0),
        /** Within the threshold. */
        STRAIGHT(0.0),
        /** To the right, beyond the threshold. */
        RIGHT(1.0);

        private final double sign;

        Side(double sign) {
            this.sign = sign;
        }

        static Side of(double value, double threshold) {
            return value > threshold ? RIGHT : value < -threshold ? LEFT : STRAIGHT;
        }
    }

    private final Side start;
    private final Side curve;

    private ShotShape(Side start, Side curve) {
        this.start = start;
        this.curve = curve;
    }

    /**
     * A shape.
     *
     * @param start where the ball starts, against the target line
     * @param curve where it curves, against its start direction
     * @return the shape
     */
    public static ShotShape of(Side start, Side curve) {
        return new ShotShape(Objects.requireNonNull(start, "start"), Objects.requireNonNull(curve, "curve"));
    }

    /**
     * Where the ball starts.
     *
     * @return the class of the start direction
     */
    public Side start() {
        return start;
    }

    /**
     * Where the ball curves.
     *
     * @return the class of the curve
     */
    public Side curve() {
        return curve;
    }

    /**
     * The trade's words for this shape.
     *
     * @param hand the golfer's hand
     * @return {@code straight}, {@code push}, {@code pull}, {@code draw}, {@code fade}, or two of them such as
     *     {@code pull fade}
     */
    public String words(Handedness hand) {
        double away = hand.sign() * start.sign;
        String starts = away > 0.0 ? "push" : away < 0.0 ? "pull" : "";
        String curves = curve == Side.STRAIGHT ? "" : hand.curveWord(curve.sign);
        String both = (starts + " " + curves).strip();
        return both.isEmpty() ? "straight" : both;
    }

    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof ShotShape that && start == that.start && curve == that.curve;
    }

    @Override
    public int hashCode() {
        return Objects.hash(start, curve);
    }

    /** Start and curve, without a hand. */
    @Override
    public String toString() {
        return "start " + start + ", curve " + curve;
    }
}
