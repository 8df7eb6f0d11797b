package dev.teeward.flight.aero;

import java.io.Serializable;

/**
 * The lift of thirteen ball models in still air, pooled by Lyu, Kensrud, Smith and Tosaya. Lift only.
 *
 * <pre>
 * Cl = 1.99 S - 3.25 S^2    up to S = 0.306, where it peaks at 0.305; held there beyond
 * </pre>
 *
 * <p>B. Lyu, J. Kensrud, L. Smith, T. Tosaya, "Aerodynamics of golf balls in still air", Proceedings (MDPI) 2(6):238, 2018. Balls
 * in free flight past three stations, 18 to 91 m/s and 1,500 to 4,500 rpm (abstract). The second-order fit is from memory
 * (fairly surely); its drag constants are not remembered, so there is no drag here. The abstract says that drag differed
 * between models by more than 0.1 below Re 1e5 and by less than 0.05 above.
 *
 * <p><b>Range.</b> {@link #domain()} is Re 5.1e4 to 2.6e5, from the speeds, and S from 0.037 (1,500 rpm at 91 m/s) to 0.306:
 * beyond its peak a parabola falls as no ball does, so the fit is left there and the lift held, which is ours.
 *
 * <pre>{@code
 * LiftLaw lift = Lyu2018.of();
 * lift.liftCoefficient(1.5e5, 0.1); // 0.1665
 * AerodynamicModel model = AerodynamicModel.combining(Williams1959.of(), lift);
 * }</pre>
 *
 * <p>Immutable and thread-safe; there is one instance.
 */
public final class Lyu2018 implements LiftLaw, Serializable {
    private static final long serialVersionUID = 1L;
    private static final Lyu2018 INSTANCE = new Lyu2018();
    private static final double LINEAR = 1.99;
    private static final double QUADRATIC = 3.25;
    private static final double PEAK = LINEAR / (2.0 * QUADRATIC);
    private static final ModelDomain DOMAIN = ModelDomain.of(5.1e4, 2.6e5, 0.037, PEAK);

    private Lyu2018() {}

    /**
     * The law.
     *
     * @return the one instance
     */
    public static Lyu2018 of() {
        return INSTANCE;
    }

    @Override
    public double liftCoefficient(double re, double s) {
        double held = Math.min(s, PEAK);
        return held * (LINEAR - QUADRATIC * held);
    }

    @Override
    public ModelDomain domain() {
        return DOMAIN;
    }

    @Override
    public String reference() {
        return "Lyu, Kensrud, Smith and Tosaya 2018, Proceedings 2(6):238 (fit from memory): lift only, 13 models";
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
        return "Lyu2018";
    }
}
