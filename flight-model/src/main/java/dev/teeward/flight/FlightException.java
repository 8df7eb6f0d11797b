package dev.teeward.flight;

import dev.teeward.quantity.Length;
import java.util.Locale;

/**
 * A flight without a landing: the ball never came to the landing elevation, never came down, or could not be computed.
 *
 * <pre>{@code
 * try {
 *     model.withLandingElevation(yards(30.0)).fly(chip);
 * } catch (FlightException e) {
 *     if (e.reason() == FlightException.Reason.ELEVATION_NOT_REACHED) { e.apex().feet(); }
 * }
 * }</pre>
 */
public final class FlightException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    /** Why there is no landing. */
    public enum Reason {
        /** The ball fell to its starting height, or started down, before it reached the higher landing elevation. */
        ELEVATION_NOT_REACHED(
                "the ball did not reach the landing elevation of %s before it fell to its starting height or below"),
        /** The ball was still in the air after 300 s or 20,000 steps. */
        DID_NOT_COME_DOWN("the ball did not come down to the landing elevation of %s within the limits of a flight"),
        /** The forces were not finite, or jumped so that no step was short enough. */
        DID_NOT_CONVERGE(
                "the flight to the landing elevation of %s could not be computed, because the forces are not finite or jump"
                        + " without end; check the aerodynamic model and the wind");

        private final String sentence;

        Reason(String sentence) {
            this.sentence = sentence;
        }
    }

    /** Why there is no landing. */
    private final Reason reason;

    /** The last state known. */
    private final Trajectory.Point last;

    /** The greatest height reached. */
    private final Length apex;

    FlightException(Reason reason, Length elevation, Trajectory.Point last, Length apex) {
        super(String.format(Locale.ROOT, reason.sentence, shown(elevation)) + "; apex " + shown(apex) + ", last state: "
                + last);
        this.reason = reason;
        this.last = last;
        this.apex = apex;
    }

    /**
     * Why there is no landing.
     *
     * @return the reason
     */
    public Reason reason() {
        return reason;
    }

    /**
     * When the computation ended.
     *
     * @return the time since the launch [s]
     */
    public double timeSeconds() {
        return last.timeSeconds();
    }

    /**
     * The last state known.
     *
     * @return where the ball was, and how fast, when the computation ended
     */
    public Trajectory.Point lastPoint() {
        return last;
    }

    /**
     * The greatest height reached until then.
     *
     * @return the height above the start, not negative
     */
    public Length apex() {
        return apex;
    }

    private static String shown(Length length) {
        return String.format(Locale.ROOT, "%.2f m (%.1f ft, %.1f yd)", length.meters(), length.feet(), length.yards());
    }
}
