package dev.teeward.flight.internal;

/**
 * How long a step may be: {@code h = a V / (|acc| + b V + c V^2)} from the state alone, and the limits of the error estimate above
 * which a step is thrown away and tried again at half its length.
 *
 * <p>b and c are such that steps all along a flight, and fast and slow flights, have about the same error: without c, the steps
 * of a slow ball near its apex would be half as long as need be where those of a fast one are just short enough.
 *
 * <p>The constants of the two that name a length were chosen on up to 100,000 launches of each of three samples, and hold their
 * promise on others, drawn from other seeds and flown by another table; a test says which.
 */
public enum StepRule {
    /** The rule of a flight that names no other. */
    STANDARD(0.45, 2e-5, 2e-8, 2e-8, Double.POSITIVE_INFINITY),

    /** The same steps; shorter ones at kinks and for shallow landings. */
    TENTH_MILLIMETER(0.45, 2e-5, 3e-8, 2e-8, 0.25),

    /** Longer steps. */
    MILLIMETER(0.70, 2e-4, 1e-6, 1e-7, 0.2);

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

    /** The square of the tangent of 14 deg. */
    private static final double SHALLOW_SQUARED = 0.0625;

    private final double scale;
    private final double guard;
    private final double kinkedGuard;
    private final double shearedGuard;
    private final double shallowStep;

    StepRule(double scale, double guard, double kinkedGuard, double shearedGuard, double shallowStep) {
        this.scale = scale;
        this.guard = guard;
        this.kinkedGuard = kinkedGuard;
        this.shearedGuard = shearedGuard;
        this.shallowStep = shallowStep;
    }

    /**
     * The a of the rule.
     *
     * @return a
     */
    public double scale() {
        return scale;
    }

    /**
     * The longest step in which a ball may come down at a shallow angle, where an error of the height between the ends of the step
     * becomes a large one of the landing [s].
     */
    double shallowStep() {
        return shallowStep;
    }

    /**
     * Whether a ball comes down, or dips, at a shallow angle somewhere in a step: it ends at or below the landing and, by the mean
     * acceleration of the step, met it at less than 14 deg; or it falls at the start and rises at the end.
     *
     * @param under how far below the landing the ball is at the end, negative if above [m]
     * @param h the step [s]
     */
    static boolean shallow(
            double under, double h, double vx0, double vy0, double vz0, double vx1, double vy1, double vz1) {
        if (vy1 >= 0.0) {
            return vy0 < 0.0;
        }
        double fallSquared = vy1 * vy1 - 2.0 * under * (vy0 - vy1) / h;
        return under >= 0.0 && fallSquared < SHALLOW_SQUARED * Math.max(vx0 * vx0 + vz0 * vz0, vx1 * vx1 + vz1 * vz1);
    }

    /**
     * The step the rule asks for.
     *
     * @param airSpeed the speed relative to the air [m/s]
     * @param acceleration the size of the acceleration, gravity included [m/s2]
     * @return the step [s]
     */
    public double step(double airSpeed, double acceleration) {
        return Math.max(SHORTEST_BY_RULE, scale * airSpeed / (acceleration + airSpeed * (DAMPING + DRAG * airSpeed)));
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
