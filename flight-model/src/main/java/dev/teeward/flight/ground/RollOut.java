package dev.teeward.flight.ground;

import dev.teeward.quantity.Length;
import dev.teeward.quantity.Warning;
import java.io.Serializable;
import java.util.List;
import java.util.Locale;

/**
 * What a ball does on the ground: bounces, skid, roll, and where it rests.
 *
 * <pre>{@code
 * RollOut run = flight.rollOut().orElseThrow();
 * run.rest().side().yards();
 * run.path().forEach(p -> draw(p.downrange(), p.side(), p.phase()));
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class RollOut {
    /** What the ball does. Immutable and thread-safe. */
    public enum Phase {
        /** It is in the air between two impacts, or at one. */
        BOUNCE,
        /** It slides on the turf, with the spin it has left. */
        SKID,
        /** It rolls without sliding. */
        ROLL,
        /** It has stopped. */
        REST
    }

    private final List<Point> path;
    private final int bounces;
    private final int rollStart;
    private final boolean restKnown;
    private final List<Warning> warnings;

    RollOut(List<Point> path, int bounces, int rollStart, boolean restKnown, List<Warning> warnings) {
        this.path = List.copyOf(path);
        this.bounces = bounces;
        this.rollStart = rollStart;
        this.restKnown = restKnown;
        this.warnings = List.copyOf(warnings);
    }

    /**
     * The impacts on the turf, the first included; 0 if the ball came down without one.
     *
     * @return how many
     */
    public int bounces() {
        return bounces;
    }

    /**
     * Where the ball first touched the ground.
     *
     * @return the place
     */
    public Point landing() {
        return path.get(0);
    }

    /**
     * Where the bouncing ended and the skid and roll began.
     *
     * @return the place
     */
    public Point bouncingEnd() {
        return path.get(rollStart);
    }

    /**
     * Where the ball stopped, or was after 60 s if it did not.
     *
     * @return the place
     */
    public Point rest() {
        return path.get(path.size() - 1);
    }

    /**
     * Whether the ball stopped within 60 s.
     *
     * @return false with the warning {@code does-not-stop}
     */
    public boolean atRest() {
        return rest().phase() == Phase.REST;
    }

    /**
     * Whether the rest, and with it the total, is worth a number.
     *
     * @return false if the first impact is so far outside what the bounce model covers that its answer has no meaning, as for a
     *     topped ball, or if it comes down too flat to bounce and yet faster than 10 m/s along the ground; there is then the warning {@code bounce-outside-model}, and {@link #rest} and {@link #path} are only what
     *     the formulas give
     */
    public boolean restKnown() {
        return restKnown;
    }

    /**
     * The time from the landing to the rest.
     *
     * @return the time [s]
     */
    public double durationSeconds() {
        return rest().timeSeconds();
    }

    /**
     * The whole path: the impacts, seven points between two of them, and the skid and roll about every tenth of a second.
     *
     * @return the points in order of time, unmodifiable; the first is the landing and the last the rest
     */
    public List<Point> path() {
        return path;
    }

    /**
     * What to know of this result.
     *
     * @return {@code bounce-extrapolated} if the first impact is faster or flatter than the bounce model covers, or {@code
     *     bounce-outside-model} if by far or if it grazes the turf (see {@link #restKnown}); {@code does-not-stop}; two of them or nothing
     */
    public List<Warning> warnings() {
        return warnings;
    }

    @Override
    public String toString() {
        return bounces + " bounces, rest " + rest();
    }

    /**
     * The ball at one time on the ground.
     *
     * <p>Immutable and thread-safe.
     */
    public static final class Point implements Serializable {
        private static final long serialVersionUID = 1L;

        /** Time since the landing [s]. */
        private final double time;

        /** Distance towards the target [m]. */
        private final double x;

        /** Height above the start [m]. */
        private final double y;

        /** Distance to the right of the target line [m]. */
        private final double z;

        /** What the ball does. */
        private final Phase phase;

        Point(double time, double x, double y, double z, Phase phase) {
            this.time = time;
            this.x = x;
            this.y = y;
            this.z = z;
            this.phase = phase;
        }

        /**
         * The time since the landing.
         *
         * @return the time [s]
         */
        public double timeSeconds() {
            return time;
        }

        /**
         * The distance along the target line.
         *
         * @return the distance, negative behind the start
         */
        public Length downrange() {
            return Length.ofMeters(x);
        }

        /**
         * The height above the start.
         *
         * @return the height, negative for lower ground
         */
        public Length height() {
            return Length.ofMeters(y);
        }

        /**
         * The distance from the target line.
         *
         * @return the distance, right positive
         */
        public Length side() {
            return Length.ofMeters(z);
        }

        /**
         * The horizontal distance from the start.
         *
         * @return the distance, not negative
         */
        public Length distance() {
            return Length.ofMeters(Math.sqrt(x * x + z * z));
        }

        /**
         * What the ball does at this time.
         *
         * @return the phase that begins here, or that the ball is in
         */
        public Phase phase() {
            return phase;
        }

        @Override
        public String toString() {
            return String.format(
                    Locale.ROOT,
                    "%s after %.2f s at %.2f m downrange, %.2f m high, %.2f m to the right",
                    phase,
                    time,
                    x,
                    y,
                    z);
        }
    }
}
