package dev.teeward.flight.aero;

import java.util.Optional;

/**
 * The drag and lift coefficients of a ball, as functions of Reynolds number and spin ratio.
 *
 * <p>Forces are {@code F = 1/2 rho A V^2 C} with {@code A = pi D^2/4}, {@code Re = rho V D / mu} and the spin ratio
 * {@code S = r omega / V}, V the speed of the ball relative to the air, D = 2r its diameter. Drag acts against the relative
 * velocity; lift along spin axis x relative velocity, so that backspin lifts for a positive coefficient.
 *
 * <p>A model of one's own is one class with two methods in SI doubles; extend {@code AerodynamicModelContract} (in this
 * artifact's test-jar) to test it. Both methods must be thread-safe and must return finite numbers for every
 * {@code re >= 0} and {@code s >= 0}: a slow ball reaches any spin ratio, so the methods are called outside
 * {@link #domain()} too. They should be continuous; the integrator shortens its steps at kinks. A model serves as well
 * that knows nothing outside its range, if it continues there in a bounded way: the flight says that it left the range.
 *
 * <pre>{@code
 * AerodynamicModel smooth = new AerodynamicModel() {
 *     public double dragCoefficient(double re, double s) { return 0.47; }
 *     public double liftCoefficient(double re, double s) { return 0.0; }
 * };
 * }</pre>
 */
public interface AerodynamicModel extends DragLaw, LiftLaw {
    // The laws' methods are declared again: to say what a whole model promises, and to settle which default holds.

    /**
     * The drag coefficient.
     *
     * @param re the Reynolds number on the diameter, not negative
     * @param s the spin ratio, not negative
     * @return the coefficient, not negative for a real ball
     */
    @Override
    double dragCoefficient(double re, double s);

    /**
     * The lift coefficient.
     *
     * @param re the Reynolds number on the diameter, not negative
     * @param s the spin ratio, not negative
     * @return the coefficient, positive when backspin lifts
     */
    @Override
    double liftCoefficient(double re, double s);

    /**
     * Many states at once; the same numbers, bit for bit, as the two methods above. Override it where a loop of one's own
     * is faster.
     *
     * @param re the Reynolds numbers
     * @param s the spin ratios, as many
     * @param drag receives the drag coefficients
     * @param lift receives the lift coefficients
     */
    default void coefficients(double[] re, double[] s, double[] drag, double[] lift) {
        for (int i = 0; i < re.length; i++) {
            drag[i] = dragCoefficient(re[i], s[i]);
            lift[i] = liftCoefficient(re[i], s[i]);
        }
    }

    /**
     * The slope of the decay moment: the air brakes the spin with the moment {@code 1/2 rho A V^2 D Cm}, and
     * {@code Cm = momentSlope * S}.
     *
     * <p>The default, 0.010, is derived from the decay law of Smits and Smith (1994), {@code d omega/dt = -2e-5 omega V/r},
     * quoted from memory, for a uniform ball in air of 1.2 kg/m3. Written as a moment it scales with the density of the
     * air and with the inertia of the ball.
     *
     * @return the slope, not negative; 0 keeps the spin constant
     */
    default double momentSlope() {
        return 0.010;
    }

    /**
     * Whether both coefficients have no kinks, within and outside the domain: derivatives of every order that matters to an
     * integrator, none of them jumping. For a model that does not claim it the integrator shortens its steps where they meet
     * kinks, which costs time and no accuracy.
     *
     * @return false unless the model says so
     */
    @Override
    default boolean smooth() {
        return false;
    }

    /**
     * How much balls of the kind that was measured differ from each other, if that is known.
     *
     * @return the relative spread of drag and lift; empty unless the author of the model states one
     */
    default Optional<CoefficientSpread> spread() {
        return Optional.empty();
    }

    /**
     * Where the model was measured or calibrated. A flight that leaves it carries a warning.
     *
     * @return the range of Reynolds number and spin ratio
     */
    @Override
    default ModelDomain domain() {
        return ModelDomain.unbounded();
    }

    /**
     * Where the numbers come from.
     *
     * @return author, year and what the model is, in one line
     */
    @Override
    default String reference() {
        return getClass().getName();
    }

    /**
     * Drag from one source and lift from another. Nobody measured them on one ball, so this is a choice and its name says
     * both.
     *
     * @param drag the drag
     * @param lift the lift
     * @return the model, with the states that both cover as its domain and the default decay of spin
     * @throws IllegalArgumentException if they cover no state in common
     */
    static AerodynamicModel combining(DragLaw drag, LiftLaw lift) {
        return new CombinedAerodynamics(drag, lift);
    }

    /**
     * A model with its coefficients multiplied, as for a ball that has a little more drag than the one measured.
     *
     * @param model the model
     * @param drag the factor on drag, in (0, 10]
     * @param lift the factor on lift, in (0, 10]
     * @return the model; domain, decay of spin and spread stay
     * @throws IllegalArgumentException if a factor lies outside
     */
    static AerodynamicModel scaled(AerodynamicModel model, double drag, double lift) {
        return new ScaledAerodynamics(model, drag, lift);
    }
}
