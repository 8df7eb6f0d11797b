package dev.teeward.flight.impact;

/**
 * What an impact needs to know of the ball: mass [kg], radius [m] and inertia factor k, the moment of inertia being
 * {@code k m r^2}.
 */
record StruckBall(double mass, double radius, double inertiaFactor) {

    /** The heaviest and smallest ball the rules allow (0.04593 kg, 42.67 mm), uniform inside (k = 2/5). */
    static final StruckBall STANDARD = new StruckBall(0.04593, 0.021335, 0.4);

    double inertia() {
        return inertiaFactor * mass * radius * radius;
    }
}
