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

    private final Quintic height = new Quintic();
    private final Quintic over = new Quintic();
    private final double[] ends = new double[Quintic.PIECE_ENDS];
    private double elevation;
    private boolean above;
    private double apexHeight;
    private double apexTime;
    private double eventTime;

    LandingSearch(double elevation) {
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
        if (falling && y1 > (above ? elevation : 0.0)) {
            return Event.NOTHING;
        }
        if (rising && y1 > y0) {
            seen(y1, time + h);
            return Event.NOTHING;
        }
        height.set(h, y0, v0, a0, y1, v1, a1);
        height.monotonePieces(ends);
        double from = y0;
        for (int i = 1; i < ends.length; i++) {
            double to = i == ends.length - 1 ? y1 : height.value(ends[i]);
            if (to < from) {
                double level = above ? elevation : 0.0;
                if (to <= level) {
                    over.combine(1.0, height, 0.0, height, level);
                    double q = from <= level ? ends[i - 1] : over.root(ends[i - 1], ends[i]);
                    eventTime = time + h * q;
                    return above ? Event.LANDED : Event.MISSED;
                }
            } else if (to > from) {
                seen(to, time + h * ends[i]);
            }
            from = to;
        }
        return Event.NOTHING;
    }

    private void seen(double height, double time) {
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
