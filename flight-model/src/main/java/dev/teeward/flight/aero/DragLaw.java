package dev.teeward.flight.aero;

/**
 * A source that gives the drag coefficient of a ball and says nothing of its lift.
 *
 * <p>It flies only together with a {@link LiftLaw}, and only because the user asked for that pair:
 * {@link AerodynamicModel#combining(DragLaw, LiftLaw)}. Every {@link AerodynamicModel} is a drag law too. The force is
 * {@code D = 1/2 rho A V^2 Cd}; a source that leaves the one half out has a coefficient half as large.
 *
 * <pre>{@code
 * DragLaw drag = Williams1959.of();
 * AerodynamicModel model = AerodynamicModel.combining(drag, Lyu2018.of());
 * model.reference(); // names both
 * }</pre>
 *
 * <p>An implementation must be thread-safe and finite for every {@code re >= 0} and {@code s >= 0}.
 */
@FunctionalInterface
public interface DragLaw {
    /**
     * The drag coefficient.
     *
     * @param re the Reynolds number on the diameter, not negative
     * @param s the spin ratio, not negative
     * @return the coefficient, not negative for a real ball
     */
    double dragCoefficient(double re, double s);

    /**
     * Whether the coefficient has no kinks, see {@link AerodynamicModel#smooth()}.
     *
     * @return false unless the law says so
     */
    default boolean smooth() {
        return false;
    }

    /**
     * Where the drag was measured.
     *
     * @return the range of Reynolds number and spin ratio; a source that knows nothing of spin does not limit it
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
