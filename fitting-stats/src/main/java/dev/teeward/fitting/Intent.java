package dev.teeward.fitting;

import dev.teeward.quantity.Handedness;
import java.util.Locale;

/**
 * The shape that a golfer meant to hit, said before the shot, in words that hold for either hand.
 *
 * <pre>{@code
 * Intent.DRAW.curveSign(Handedness.RIGHT); // -1: to the left
 * Intent.DRAW.curveSign(Handedness.LEFT);  // 1: to the right
 * Intent.FADE.key();                       // "fade"
 * }</pre>
 */
public enum Intent {
    /** Curving towards the side the golfer stands on: left for a right-handed golfer. */
    DRAW(1),

    /** No curve. */
    STRAIGHT(0),

    /** Curving away from the side the golfer stands on: right for a right-handed golfer. */
    FADE(-1);

    private final int draw;

    Intent(int draw) {
        this.draw = draw;
    }

    /**
     * Where the ball should curve.
     *
     * @param hand the hand the golfer plays with
     * @return 1 to the right, -1 to the left, 0 not at all
     */
    public int curveSign(Handedness hand) {
        return hand == Handedness.LEFT ? draw : -draw;
    }

    /**
     * The name in files and sentences.
     *
     * @return {@code draw}, {@code straight} or {@code fade}
     */
    public String key() {
        return name().toLowerCase(Locale.ROOT);
    }
}
