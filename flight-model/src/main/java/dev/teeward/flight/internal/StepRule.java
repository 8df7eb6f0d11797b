package dev.teeward.flight.internal;

/**
 * How long a step may be: {@code h = a V / (|acc| + b V + c V^2)} from the state alone, and the limits of the error estimate above
 * which a step is thrown away and tried again at half its length.
 *
 * <p>b and c are such that steps all along a flight, and fast and slow flights, have about the same error: without c, the steps
 * of a slow ball near its apex would be half as long as need be where those of a fast one are just short enough.
 *
 * <p>An error of the height is one of the landing divided by the tangent of the angle of descent. Where a rule names a second,
 * smaller a, a ball that has come down at less than 10 deg flies again by that one, from the launch: steps short enough
 * for the few such flights need not be those of all.
 *
 * <p>The constants of the two that name a length were chosen on up to 100,000 launches of each of three samples, and hold their
 * promise on others, drawn from other seeds and flown by another table; a test says which.
 */
public enum StepRule {
    /** The rule of a flight that names no other. */
    STANDARD(0.45, 0.45, 2e-5, 2e-8, 2e-8),

    /** Somewhat longer steps; shorter ones for balls that come down at a shallow angle. */
    TENTH_MILLIMETER(0.50, 0.40, 2e-5, 2e-8, 2e-8),

    /** Longer steps. */
    MILLIMETER(0.85, 0.55, 4e-4, 5e-7, 1e-7);

    /** A step that must be shorter than this is taken for a failure [s]. */
    static final double SHORTEST = 1e-7;

    /**
     * A step shorter than this that still has a large error estimate crosses a jump of a coefficient, not a kink, and no step is
     * short enough for the limit of kinks [s].
     */
    static final double JUMP = 1e-5;

    /** The shortest step by any rule, for a ball that hangs in the air [s]. */
    static final double SHORTEST_BY_RULE = 0.05;

    /** The b of the rule: a ball that hardly moves and keeps its velocity steps a/b seconds [1/s]. */
    static final double DAMPING = 0.15;

    /** The c of the rule [1/m]. */
    static final double DRAG = 0.006;

    /** The square of the tangent of 10 deg. */
    private static final double SHALLOW_SQUARED = 1.0 / 32.0;

    private final double scale;
    private final double scaleAgain;
    private final double guard;
    private final double kinkedGuard;
    private final double shearedGuard;

    StepRule(double scale, double scaleAgain, double guard, double kinkedGuard, double shearedGuard) {
        this.scale = scale;
        this.scaleAgain = scaleAgain;
        this.guard = guard;
        this.kinkedGuard = kinkedGuard;
        this.shearedGuard = shearedGuard;
    }

    /**
     * The a of the rule.
     *
     * @return a
     */
    public double scale() {
        return scale;
    }

    /** The a of the flights that are flown again. */
    double scaleAgain() {
        return scaleAgain;
    }

    /** Whether any flight is. */
    boolean mayFlyAgain() {
        return scaleAgain < scale;
    }

    /**
     * Whether a flight by the first a is to be flown again.
     *
     * @param towards the velocity at the landing towards the target [m/s]
     * @param up upwards, less what the ground rises under the ball [m/s]
     * @param right to the right [m/s]
     */
    boolean again(double towards, double up, double right) {
        return mayFlyAgain() && up * up < SHALLOW_SQUARED * (towards * towards + right * right);
    }

    /**
     * The step that a rule asks for.
     *
     * @param a the a of the rule
     * @param airSpeed the speed relative to the air [m/s]
     * @param acceleration the size of the acceleration, gravity included [m/s2]
     * @return the step [s]
     */
    static double step(double a, double airSpeed, double acceleration) {
        return Math.max(SHORTEST_BY_RULE, a * airSpeed / (acceleration + airSpeed * (DAMPING + DRAG * airSpeed)));
    }

    /**
     * The guard's limit for steps shorter than {@link #JUMP}.
     *
     * @param windVaries whether the wind changes with height
     * @param smooth whether the coefficients have no kinks; if so, they have no jumps either
     * @return the limit [m]
     */
    double jumpGuard(boolean windVaries, boolean smooth) {
        return smooth ? guard(windVaries, true) : guard;
    }

    /**
     * Whether a step may be at most twice as long as the one before it, because heights or states at which the forces jump in one
     * of their derivatives lie close together.
     *
     * @param windVaries whether the wind changes with height
     * @param smooth whether the coefficients have no kinks
     * @return true where either makes the guard act often
     */
    boolean gentle(boolean windVaries, boolean smooth) {
        return windVaries || !smooth;
    }

    /**
     * The guard's limit for the error estimate of one step, see {@link PrinceDormand65}.
     *
     * @param windVaries whether the wind changes with height, because a profile has heights at which its curvature jumps
     * @param smooth whether the coefficients have no kinks
     * @return the limit [m]
     */
    public double guard(boolean windVaries, boolean smooth) {
        double limit = smooth ? guard : kinkedGuard;
        return windVaries ? Math.min(limit, shearedGuard) : limit;
    }
}
