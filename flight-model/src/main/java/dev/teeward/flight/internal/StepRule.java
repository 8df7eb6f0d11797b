package dev.teeward.flight.internal;

/**
 * How long a step may be: {@code h = a V / (|acc| + b V)} from the state alone, and the limit of the error estimate above which
 * a step is thrown away and tried again at half its length.
 *
 * @param scale the a of the rule
 * @param damping the b of the rule: a ball that keeps its velocity steps a/b seconds [1/s]
 * @param shortestByRule the rule's shortest step, for a ball that hangs in the air [s]
 * @param guard the guard's limit for the error estimate of one step, see {@link PrinceDormand65} [m]
 * @param shearedGuard the same where the wind changes with height, because a profile has heights at which its curvature jumps
 *     [m]
 */
public record StepRule(double scale, double damping, double shortestByRule, double guard, double shearedGuard) {
    /** A step that must be shorter than this is taken for a failure [s]. */
    static final double SHORTEST = 1e-7;

    /**
     * The step the rule asks for.
     *
     * @param airSpeed the speed relative to the air [m/s]
     * @param acceleration the size of the acceleration, gravity included [m/s2]
     * @return the step [s]
     */
    public double step(double airSpeed, double acceleration) {
        return Math.max(shortestByRule, scale * airSpeed / (acceleration + damping * airSpeed));
    }

    /**
     * The guard's limit.
     *
     * @param windVaries whether the wind changes with height
     * @return the limit [m]
     */
    public double guard(boolean windVaries) {
        return windVaries ? shearedGuard : guard;
    }
}
