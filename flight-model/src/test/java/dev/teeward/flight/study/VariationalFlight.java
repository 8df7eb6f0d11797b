package dev.teeward.flight.study;

import org.hipparchus.analysis.differentiation.Gradient;
import org.hipparchus.analysis.differentiation.GradientField;
import org.hipparchus.ode.FieldExpandableODE;
import org.hipparchus.ode.FieldODEState;
import org.hipparchus.ode.FieldODEStateAndDerivative;
import org.hipparchus.ode.FieldOrdinaryDifferentialEquation;
import org.hipparchus.ode.nonstiff.DormandPrince853FieldIntegrator;

/**
 * The derivatives of a flight of the typical ball by automatic differentiation: the equations written a second time, for
 * numbers that carry their gradient (Hipparchus 4.0.2, Dormand and Prince 8(5,3), tolerances 1e-13), so that the variational
 * equations are integrated beside the flight. The constants are those that the Javadoc of the typical ball prints.
 */
final class VariationalFlight {
    /** The inputs, in the order of the gradient; air by density and viscosity. */
    static final FlightInput[] INPUTS = {
        FlightInput.BALL_SPEED,
        FlightInput.LAUNCH_ANGLE,
        FlightInput.START_DIRECTION,
        FlightInput.SPIN_RATE,
        FlightInput.AXIS_TILT,
        FlightInput.AIR_DENSITY,
        FlightInput.AIR_VISCOSITY,
        FlightInput.WIND_ALONG,
        FlightInput.WIND_RIGHT,
        FlightInput.BALL_MASS,
        FlightInput.BALL_DIAMETER,
        FlightInput.INERTIA_FACTOR,
        FlightInput.DRAG_SCALE,
        FlightInput.LIFT_SCALE,
        FlightInput.LANDING_ELEVATION,
        FlightInput.GRAVITY
    };

    private static final int N = INPUTS.length;

    private final Gradient[] p = new Gradient[N];

    VariationalFlight(double[] values) {
        for (int i = 0; i < N; i++) {
            p[i] = Gradient.variable(N, i, values[i]);
        }
    }

    /** The outputs in the order of {@link FlightOutput}, each with its gradient, near a known landing and apex. */
    Gradient[] outputs(double landingTime, double apexTime) {
        Gradient one = p[0].getField().getOne();
        Gradient cosUp = p[1].cos();
        Gradient sinUp = p[1].sin();
        Gradient cosRight = p[2].cos();
        Gradient sinRight = p[2].sin();
        Gradient cosTilt = p[4].cos();
        Gradient sinTilt = p[4].sin();
        Gradient[] start = {
            one.multiply(0.0),
            one.multiply(0.0),
            one.multiply(0.0),
            p[0].multiply(cosUp).multiply(cosRight),
            p[0].multiply(sinUp),
            p[0].multiply(cosUp).multiply(sinRight),
            p[3]
        };
        // The tilted axis: the right of the launch times cos(tilt), less the up of the launch times sin(tilt).
        Gradient[] axis = {
            sinTilt.multiply(sinUp).multiply(cosRight).subtract(cosTilt.multiply(sinRight)),
            sinTilt.multiply(cosUp).negate(),
            cosTilt.multiply(cosRight).add(sinTilt.multiply(sinUp).multiply(sinRight))
        };
        Gradient[] end = until(start, axis, landingTime);
        Gradient[] acceleration = derivatives(end, axis);
        // Landing is where y is the elevation: one Newton step in numbers that know their gradient is exact to first
        // order.
        Gradient dt = p[14].subtract(end[1]).divide(end[4]);
        Gradient[] landed = new Gradient[7];
        for (int i = 0; i < 7; i++) {
            landed[i] = end[i].add(acceleration[i].multiply(dt));
        }
        Gradient[] top = until(start, axis, apexTime);
        Gradient rise = top[4].divide(derivatives(top, axis)[4]).negate();
        Gradient apex = top[1].add(top[4].multiply(rise));
        Gradient level =
                landed[3].multiply(landed[3]).add(landed[5].multiply(landed[5])).sqrt();
        return new Gradient[] {
            landed[0].multiply(landed[0]).add(landed[2].multiply(landed[2])).sqrt(),
            landed[2],
            landed[2].multiply(cosRight).subtract(landed[0].multiply(sinRight)),
            apex,
            landed[4].negate().divide(level).atan(),
            dt.add(landingTime),
            level.multiply(level).add(landed[4].multiply(landed[4])).sqrt()
        };
    }

    private Gradient[] until(Gradient[] start, Gradient[] axis, double time) {
        GradientField field = p[0].getField();
        DormandPrince853FieldIntegrator<Gradient> integrator =
                new DormandPrince853FieldIntegrator<>(field, 1e-10, 0.1, 1e-13, 1e-13);
        FieldODEStateAndDerivative<Gradient> end = integrator.integrate(
                new FieldExpandableODE<Gradient>(new FieldOrdinaryDifferentialEquation<Gradient>() {
                    @Override
                    public int getDimension() {
                        return 7;
                    }

                    @Override
                    public Gradient[] computeDerivatives(Gradient t, Gradient[] y) {
                        return derivatives(y, axis);
                    }
                }),
                new FieldODEState<>(field.getZero(), start),
                field.getZero().add(time));
        return end.getPrimaryState();
    }

    /** State x, y, z, vx, vy, vz, spin. */
    private Gradient[] derivatives(Gradient[] y, Gradient[] axis) {
        Gradient ux = y[3].subtract(p[7]);
        Gradient uy = y[4];
        Gradient uz = y[5].subtract(p[8]);
        Gradient v = ux.multiply(ux)
                .add(uy.multiply(uy))
                .add(uz.multiply(uz))
                .add(1e-12)
                .sqrt();
        Gradient radius = p[10].multiply(0.5);
        Gradient re = p[5].multiply(v).multiply(p[10]).divide(p[6]);
        Gradient s = radius.multiply(y[6]).divide(v);
        Gradient force = p[5].multiply(p[10])
                .multiply(p[10])
                .multiply(Math.PI / 8.0)
                .divide(p[9])
                .multiply(v);
        Gradient cd = re.divide(0.61e5)
                .pow(4)
                .add(1.0)
                .reciprocal()
                .multiply(0.368)
                .add(0.209)
                .add(s.divide(s.add(1.0)).multiply(0.274))
                .multiply(p[12]);
        Gradient w = s.divide(s.add(0.2));
        Gradient cl = re.divide(1.5e5)
                .pow(4)
                .add(1.0)
                .reciprocal()
                .multiply(0.168)
                .add(0.230)
                .multiply(w)
                .multiply(w.negate().add(2.0))
                .multiply(p[13]);
        Gradient drag = force.multiply(cd);
        Gradient lift = force.multiply(cl);
        Gradient inertia = p[11].multiply(p[9]).multiply(radius).multiply(radius);
        Gradient decay = p[5].multiply(p[10].pow(3))
                .multiply(Math.PI / 8.0 * 0.010)
                .multiply(radius)
                .divide(inertia);
        return new Gradient[] {
            y[3],
            y[4],
            y[5],
            lift.multiply(axis[1].multiply(uz).subtract(axis[2].multiply(uy))).subtract(drag.multiply(ux)),
            lift.multiply(axis[2].multiply(ux).subtract(axis[0].multiply(uz)))
                    .subtract(drag.multiply(uy))
                    .subtract(p[15]),
            lift.multiply(axis[0].multiply(uy).subtract(axis[1].multiply(ux))).subtract(drag.multiply(uz)),
            decay.multiply(v).multiply(y[6]).negate()
        };
    }
}
