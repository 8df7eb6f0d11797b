package dev.teeward.flight.internal;

/**
 * Watches the height, step by step, for the apex and for the ball coming down to the landing elevation.
 *
 * <p>A landing is a descent to the elevation by a ball that was at or above it. A ball that starts below, towards raised
 * ground, must first rise to it; when it comes back down to its starting height without having done so, the elevation is
 * missed. Mutable; one flight after the other.
 */
final class LandingSearch {
    /** What a step brought. */
    enum Event {
        NOTHING,
        LANDED,
        MISSED
    }

    /** What a search needs within one step; several flights of one thread may share it. */
    static final class Scratch {
        private final Quintic height = new Quintic();
        private final Quintic over = new Quintic();
        private final double[] ends = new double[Quintic.PIECE_ENDS];
    }

    private final Scratch scratch;
    private double elevation;
    private boolean above;
    private double apexHeight;
    private double apexTime;
    private double eventTime;

    LandingSearch(double elevation) {
        this(elevation, new Scratch());
    }

    LandingSearch(double elevation, Scratch scratch) {
        this.scratch = scratch;
        restart(elevation);
    }

    /** Forgets one flight and begins another. */
    void restart(double landingElevation) {
        elevation = landingElevation;
        above = landingElevation <= 0.0;
        apexHeight = 0.0;
        apexTime = 0.0;
        eventTime = 0.0;
    }

    /** The launch itself: on level ground a ball that does not rise lands at once, towards raised ground it misses. */
    Event launch(double upwardVelocity, double upwardAcceleration) {
        boolean rises = upwardVelocity > 0.0 || (upwardVelocity == 0.0 && upwardAcceleration > 0.0);
        if (rises || elevation < 0.0 || Double.isNaN(upwardAcceleration)) {
            return Event.NOTHING;
        }
        return above ? Event.LANDED : Event.MISSED;
    }

    /** A step of the height, starting at a time [s] and as long [s]; v and a are its derivatives at both ends. */
    Event step(double time, double h, double y0, double v0, double a0, double y1, double v1, double a1) {
        boolean rising = v0 > 0.0 && v1 > 0.0 && (a0 >= 0.0 || a1 <= 0.0);
        boolean falling = v0 < 0.0 && v1 < 0.0 && (a0 <= 0.0 || a1 >= 0.0);
        if (falling && y1 > level()) {
            return Event.NOTHING;
        }
        if (rising && y1 > y0) {
            seen(y1, time + h);
            return Event.NOTHING;
        }
        Quintic height = scratch.height.set(h, y0, v0, a0, y1, v1, a1);
        double[] ends = scratch.ends;
        if (falling) {
            return y0 > level() ? descent(time, h, height, 0.0, 1.0) : event(time);
        }
        if (v0 > 0.0 && v1 < 0.0 && a0 < 0.0 && a1 < 0.0) {
            double top = height.extremum(0.0, 1.0, true);
            double most = height.value(top);
            seen(most, time + h * top);
            return y1 <= level() && most > level() ? descent(time, h, height, top, 1.0) : Event.NOTHING;
        }
        height.monotonePieces(ends, true);
        double from = y0;
        for (int i = 1; i < ends.length; i++) {
            double to = i == ends.length - 1 ? y1 : height.value(ends[i]);
            if (to < from) {
                double level = level();
                if (to <= level) {
                    return from <= level
                            ? event(time + h * ends[i - 1])
                            : descent(time, h, height, ends[i - 1], ends[i]);
                }
            } else if (to > from) {
                seen(to, time + h * ends[i]);
            }
            from = to;
        }
        return Event.NOTHING;
    }

    private Event descent(double time, double h, Quintic height, double from, double to) {
        return event(time
                + h * scratch.over.combine(1.0, height, 0.0, height, level()).root(from, to, true));
    }

    private Event event(double time) {
        eventTime = time;
        return above ? Event.LANDED : Event.MISSED;
    }

    /** Whether the ball has been at or above the landing elevation. */
    boolean above() {
        return above;
    }

    /** The height at which a falling ball's flight ends [m]. */
    double level() {
        return above ? elevation : 0.0;
    }

    /** The ball was as high as this. */
    void seen(double height, double time) {
        above |= height >= elevation;
        if (height > apexHeight) {
            apexHeight = height;
            apexTime = time;
        }
    }

    /** The greatest height so far, at least the starting height 0 [m]. */
    double apexHeight() {
        return apexHeight;
    }

    /** When it was reached [s]. */
    double apexTime() {
        return apexTime;
    }

    /** When the last event happened [s]. */
    double eventTime() {
        return eventTime;
    }
}
