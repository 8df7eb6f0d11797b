package dev.teeward.flight.aero;

/**
 * A source that gives the lift coefficient of a ball and says nothing of its drag.
 *
 * <p>It flies only together with a {@link DragLaw}, and only because the user asked for that pair:
 * {@link AerodynamicModel#combining(DragLaw, LiftLaw)}. Every {@link AerodynamicModel} is a lift law too. The force is
 * {@code L = 1/2 rho A V^2 Cl}, along spin axis x relative velocity.
 *
 * <pre>{@code
 * LiftLaw lift = Lyu2018.of();
 * lift.liftCoefficient(1.5e5, 0.1); // 0.1665
 * AerodynamicModel model = AerodynamicModel.combining(TypicalAerodynamics.of(), lift);
 * }</pre>
 *
 * <p>An implementation must be thread-safe and finite for every {@code re >= 0} and {@code s >= 0}.
 */
@FunctionalInterface
public interface LiftLaw {
    /**
     * The lift coefficient.
     *
     * @param re the Reynolds number on the diameter, not negative
     * @param s the spin ratio, not negative
     * @return the coefficient, positive when backspin lifts
     */
    double liftCoefficient(double re, double s);

    /**
     * Whether the coefficient has no kinks, see {@link AerodynamicModel#smooth()}.
     *
     * @return false unless the law says so
     */
    default boolean smooth() {
        return false;
    }

    /**
     * Where the lift was measured.
     *
     * @return the range of Reynolds number and spin ratio
     */
    default ModelDomain domain() {
        return ModelDomain.unbounded();
    }

    /**
     * Where the numbers come from.
     *
     * @return author, year and what the law is, in one line
     */
    default String reference() {
        return getClass().getName();
    }
}
