package dev.teeward.flight.impact;

import dev.teeward.flight.Ball;

/**
 * What an impact needs to know of the ball: mass [kg], radius [m] and inertia factor k, the moment of inertia being
 * {@code k m r^2}.
 */
record StruckBall(double mass, double radius, double inertiaFactor) {

    /** The heaviest and smallest ball the rules allow (0.04593 kg, 42.67 mm), uniform inside (k = 2/5). */
    static final StruckBall STANDARD = of(Ball.standard());

    static StruckBall of(Ball ball) {
        return new StruckBall(ball.mass().kilograms(), 0.5 * ball.diameter().meters(), ball.inertiaFactor());
    }

    double inertia() {
        return inertiaFactor * mass * radius * radius;
    }
}
