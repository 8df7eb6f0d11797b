package dev.teeward.flight.aero;

import java.io.Serializable;

/**
 * The drag of a driven ball after Williams, that falls as the ball gets faster. Drag only.
 *
 * <pre>
 * Cd = 46/V  (V in ft/s)  =  14/V  (V in m/s)  =  3.85e4/Re
 * </pre>
 *
 * <p>D. Williams, "Drag force on a golf ball in flight and its practical significance", Quarterly Journal of Mechanics and
 * Applied Mathematics 12, 1959, 387 (title from memory). A driving machine hit British balls of 1.62 in; the carry in yards
 * was 1.5 v - 103, v the launch speed from 180 to 280 ft/s (surely, from memory), and that line asks for drag proportional
 * to speed, not to its square; the 46 is less sure (from memory). In terms of the Reynolds number, for the ball of 1.62 in
 * (41.15 mm) and a kinematic viscosity of 1.5e-5 m2/s, which is an assumption. A source that writes the force without the
 * one half gives 7/V for the same drag.
 *
 * <p><b>Range.</b> Launch speeds of 180 to 280 ft/s, so Re 1.5e5 to 2.35e5; spin was not varied, so it is not limited. The
 * line describes whole flights, in which a ball slows to half its launch speed, but says nothing of each speed on its own.
 * Below Re 7.7e4, far outside, the coefficient is held at 0.5, about that of a smooth sphere, because the formula would go on
 * without limit.
 *
 * <pre>{@code
 * DragLaw drag = Williams1959.of();
 * drag.dragCoefficient(1.925e5, 0.1); // 0.2
 * AerodynamicModel model = AerodynamicModel.combining(drag, Lyu2018.of());
 * }</pre>
 *
 * <p>Immutable and thread-safe; there is one instance.
 */
public final class Williams1959 implements DragLaw, Serializable {
    private static final long serialVersionUID = 1L;
    private static final Williams1959 INSTANCE = new Williams1959();
    private static final ModelDomain DOMAIN = ModelDomain.of(1.5e5, 2.35e5, 0.0, Double.POSITIVE_INFINITY);
    private static final double PRODUCT = 3.85e4;
    private static final double SLOW = 0.5;

    private Williams1959() {}

    /**
     * The law.
     *
     * @return the one instance
     */
    public static Williams1959 of() {
        return INSTANCE;
    }

    @Override
    public double dragCoefficient(double re, double s) {
        return re <= PRODUCT / SLOW ? SLOW : PRODUCT / re;
    }

    @Override
    public ModelDomain domain() {
        return DOMAIN;
    }

    @Override
    public String reference() {
        return "Williams 1959, Q. J. Mech. Appl. Math. 12, 387 (from memory): drag only, driven balls of 1.62 in";
    }

    /**
     * Keeps the instance single when it is read back.
     *
     * @return the one instance
     */
    private Object readResolve() {
        return INSTANCE;
    }

    @Override
    public String toString() {
        return "Williams1959";
    }
}
