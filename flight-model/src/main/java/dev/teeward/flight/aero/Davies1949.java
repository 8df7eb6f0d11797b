package dev.teeward.flight.aero;

import java.io.Serializable;

/**
 * The first measurement of a spinning golf ball, by Davies.
 *
 * <pre>
 * Cd = 0.30 + 0.35 S
 * Cl = 0.317 (1 - exp(-3.72 S))
 * </pre>
 *
 * <p>J. M. Davies, "The aerodynamics of golf balls", Journal of Applied Physics 20, 1949, 821 to 828. Dimpled balls of that
 * time were dropped, spinning at up to 8,000 rpm, across a stream of 105 ft/s (32 m/s), and the forces inferred from where
 * they came down. From memory: lift 0.064 (1 - exp(-0.00026 N)) lb, N in rpm (surely), and drag about 0.06 lb without spin,
 * rising about linearly to 0.10 lb at 8,000 rpm (fairly surely). The coefficients are derived from these for the ball of
 * 42.67 mm in air of 1.225 kg/m3, to the digits shown.
 *
 * <p><b>Range.</b> One air speed, so one Reynolds number: {@link #domain()} is Re 8.9e4 to 9.3e4, the width being that of the
 * unknown air, and S 0 to 0.56. The formulas hold the coefficients the same at every Reynolds number, which nobody measured:
 * every flight leaves the range and says so. A modern ball has more lift and less drag: with this model typical shots carry
 * about a quarter too short.
 *
 * <pre>{@code
 * AerodynamicModel old = Davies1949.of();
 * old.dragCoefficient(9.1e4, 0.2793); // 0.3978
 * old.liftCoefficient(9.1e4, 0.2793); // 0.2048
 * }</pre>
 *
 * <p>The exponential is that of {@link StrictMath}: the same bits on every virtual machine. Immutable and thread-safe; there
 * is one instance.
 */
public final class Davies1949 implements AerodynamicModel, Serializable {
    private static final long serialVersionUID = 1L;
    private static final Davies1949 INSTANCE = new Davies1949();
    private static final ModelDomain DOMAIN = ModelDomain.of(8.9e4, 9.3e4, 0.0, 0.56);

    private Davies1949() {}

    /**
     * The model.
     *
     * @return the one instance
     */
    public static Davies1949 of() {
        return INSTANCE;
    }

    /**
     * The drag coefficient; above S 0.56, which was not measured, it stays at its value there.
     *
     * @param re the Reynolds number, which makes no difference
     * @param s the spin ratio, not negative
     * @return the coefficient, in [0.30, 0.496]
     */
    @Override
    public double dragCoefficient(double re, double s) {
        return 0.30 + 0.35 * Math.min(s, 0.56);
    }

    @Override
    public double liftCoefficient(double re, double s) {
        return 0.317 * (1.0 - StrictMath.exp(-3.72 * s));
    }

    @Override
    public ModelDomain domain() {
        return DOMAIN;
    }

    @Override
    public String reference() {
        return "Davies 1949, J. Appl. Phys. 20, 821-828 (from memory): balls of that time at Re 9e4, S up to 0.56";
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
        return "Davies1949";
    }
}
