package dev.teeward.benchmarks;

import dev.teeward.flight.internal.FlightEquations;
import java.util.Arrays;
import org.hipparchus.analysis.UnivariateFunction;
import org.hipparchus.analysis.differentiation.Gradient;
import org.hipparchus.analysis.differentiation.GradientField;
import org.hipparchus.analysis.solvers.BracketedRealFieldUnivariateSolver;
import org.hipparchus.analysis.solvers.BracketedUnivariateSolver;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;
import org.hipparchus.analysis.solvers.FieldBracketingNthOrderBrentSolver;
import org.hipparchus.ode.FieldExpandableODE;
import org.hipparchus.ode.FieldODEState;
import org.hipparchus.ode.FieldODEStateAndDerivative;
import org.hipparchus.ode.FieldOrdinaryDifferentialEquation;
import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.ODEStateAndDerivative;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.events.AdaptableInterval;
import org.hipparchus.ode.events.FieldAdaptableInterval;
import org.hipparchus.ode.events.FieldODEEventDetector;
import org.hipparchus.ode.events.FieldODEEventHandler;
import org.hipparchus.ode.events.ODEEventDetector;
import org.hipparchus.ode.events.ODEEventHandler;
import org.hipparchus.ode.nonstiff.AdaptiveStepsizeIntegrator;
import org.hipparchus.ode.nonstiff.DormandPrince54FieldIntegrator;
import org.hipparchus.util.MathArrays;

/** General integrators on our right-hand side, level ground: the landing of one ball. */
final class Peers {
    private static final double LONGEST = 60.0;

    private Peers() {}

    static double[] hipparchus(
            AdaptiveStepsizeIntegrator integrator, FlightEquations equations, double[] state, double[] axis) {
        integrator.addEventDetector(new HipparchusDescent());
        return integrator
                .integrate(new HipparchusMotion(equations, axis), new ODEState(0.0, state), LONGEST)
                .getPrimaryState();
    }

    static double[] hipparchus(AdaptiveStepsizeIntegrator integrator, SpeedSample.PeerLaunch launch) {
        return hipparchus(integrator, launch.equations(), launch.state(), launch.axis());
    }

    static AdaptiveStepsizeIntegrator hipparchus853(double tolerance) {
        return new org.hipparchus.ode.nonstiff.DormandPrince853Integrator(1e-10, 2.0, tolerance, tolerance);
    }

    static AdaptiveStepsizeIntegrator hipparchus54(double tolerance) {
        return new org.hipparchus.ode.nonstiff.DormandPrince54Integrator(1e-10, 2.0, tolerance, tolerance);
    }

    static double[] commonsMath54(SpeedSample.PeerLaunch launch) {
        var integrator = new org.apache.commons.math3.ode.nonstiff.DormandPrince54Integrator(1e-8, 2.0, 1e-6, 1e-6);
        integrator.addEventHandler(new CommonsDescent(), 1.0, 1e-8, 100);
        double[] end = new double[FlightEquations.STATE];
        integrator.integrate(new CommonsMotion(launch.equations(), launch.axis()), 0.0, launch.state(), LONGEST, end);
        return end;
    }

    /** Fourth order, fixed steps, the landing by a straight line in the last: the trivial baseline. */
    static double[] fixedStep(SpeedSample.PeerLaunch launch, double step) {
        FlightEquations equations = launch.equations();
        double[] axis = launch.axis();
        double[] y = launch.state().clone();
        double[] stage = new double[FlightEquations.STATE];
        double[] k = new double[4 * FlightEquations.RATES];
        double[] before = y.clone();
        while (y[FlightEquations.Y] >= 0.0) {
            System.arraycopy(y, 0, before, 0, y.length);
            equations.rates(y, axis, k, 0);
            for (int s = 1; s < 4; s++) {
                double h = s == 3 ? step : step / 2.0;
                for (int c = 0; c < y.length; c++) {
                    stage[c] = y[c] + h * k[(s - 1) * FlightEquations.RATES + c];
                }
                equations.rates(stage, axis, k, s * FlightEquations.RATES);
            }
            for (int c = 0; c < y.length; c++) {
                y[c] += step
                        / 6.0
                        * (k[c]
                                + 2.0 * k[FlightEquations.RATES + c]
                                + 2.0 * k[2 * FlightEquations.RATES + c]
                                + k[3 * FlightEquations.RATES + c]);
            }
        }
        double q = before[FlightEquations.Y] / (before[FlightEquations.Y] - y[FlightEquations.Y]);
        for (int c = 0; c < y.length; c++) {
            y[c] = before[c] + q * (y[c] - before[c]);
        }
        return y;
    }

    /**
     * The derivatives of the landing by six inputs, by automatic differentiation: Hipparchus, Dormand and Prince 5(4). The force sum is written out once more, for the typical ball, because ours is in doubles.
     *
     * @param launch speed, launch angle, start direction, spin, tilt, head wind
     * @param across the wind towards the right
     * @param tolerance absolute and relative
     * @return x and z at the landing with their derivatives
     */
    static Gradient[] gradient(double[] launch, double across, double tolerance) {
        Gradient[] v = new Gradient[launch.length];
        for (int i = 0; i < v.length; i++) {
            v[i] = Gradient.variable(launch.length, i, launch[i]);
        }
        Gradient cu = v[1].cos();
        Gradient su = v[1].sin();
        Gradient cr = v[2].cos();
        Gradient sr = v[2].sin();
        Gradient ct = v[4].cos();
        Gradient st = v[4].sin();
        Gradient zero = v[0].getField().getZero();
        Gradient[] state = MathArrays.buildArray(v[0].getField(), FlightEquations.STATE);
        state[FlightEquations.VX] = v[0].multiply(cu).multiply(cr);
        state[FlightEquations.VY] = v[0].multiply(su);
        state[FlightEquations.VZ] = v[0].multiply(cu).multiply(sr);
        state[FlightEquations.SPIN] = v[3];
        state[FlightEquations.Y] = zero;
        state[FlightEquations.X] = zero;
        state[FlightEquations.Z] = zero;
        Gradient[] axis = {
            st.multiply(su).multiply(cr).subtract(ct.multiply(sr)),
            st.multiply(cu).negate(),
            ct.multiply(cr).add(st.multiply(su).multiply(sr))
        };
        var integrator = new DormandPrince54FieldIntegrator<>(v[0].getField(), 1e-8, 2.0, tolerance, tolerance);
        integrator.addEventDetector(new GradientDescent(zero));
        FieldODEStateAndDerivative<Gradient> end = integrator.integrate(
                new FieldExpandableODE<>(new GradientMotion(axis, v[5], across)),
                new FieldODEState<>(zero, state),
                zero.add(LONGEST));
        // The landing moves in time too: at the height 0, dt = -dy / vy.
        Gradient[] y = end.getPrimaryState();
        Gradient late =
                y[FlightEquations.Y].divide(y[FlightEquations.VY].getReal()).negate();
        return new Gradient[] {
            y[FlightEquations.X].add(late.multiply(y[FlightEquations.VX].getReal())),
            y[FlightEquations.Z].add(late.multiply(y[FlightEquations.VZ].getReal()))
        };
    }

    private static final class GradientMotion implements FieldOrdinaryDifferentialEquation<Gradient> {
        private static final double AREA = Math.PI * 0.04267 * 0.04267 / 4.0;
        private static final double FORCE = 1.225 * AREA / (2.0 * 0.04593);
        private static final double INERTIA = 0.4 * 0.04593 * 0.04267 * 0.04267 / 4.0;
        private static final double DECAY = 1.225 * AREA * 0.04267 * 0.01 * 0.021335 / (2.0 * INERTIA);

        private final Gradient[] axis;
        private final Gradient headWind;
        private final double across;

        GradientMotion(Gradient[] axis, Gradient headWind, double across) {
            this.axis = axis;
            this.headWind = headWind;
            this.across = across;
        }

        @Override
        public int getDimension() {
            return FlightEquations.STATE;
        }

        @Override
        public Gradient[] computeDerivatives(Gradient t, Gradient[] y) {
            Gradient ux = y[FlightEquations.VX].add(headWind);
            Gradient uy = y[FlightEquations.VY];
            Gradient uz = y[FlightEquations.VZ].subtract(across);
            Gradient speed = ux.square().add(uy.square()).add(uz.square()).sqrt();
            Gradient re = speed.multiply(1.225 * 0.04267 / 1.7894e-5);
            Gradient s = y[FlightEquations.SPIN].multiply(0.021335).divide(speed);
            Gradient x = re.multiply(1.0 / 0.61e5).square().square().add(1.0);
            Gradient cd = s.divide(s.add(1.0))
                    .multiply(0.274)
                    .add(x.reciprocal().multiply(0.368))
                    .add(0.209);
            Gradient z = re.multiply(1.0 / 1.5e5).square().square().add(1.0);
            Gradient w = s.divide(s.add(0.200));
            Gradient cl = z.reciprocal()
                    .multiply(0.168)
                    .add(0.230)
                    .multiply(w.multiply(w.negate().add(2.0)));
            Gradient drag = cd.multiply(speed).multiply(FORCE);
            Gradient lift = cl.multiply(speed).multiply(FORCE);
            Gradient[] rates = MathArrays.buildArray(speed.getField(), FlightEquations.STATE);
            rates[FlightEquations.VX] = lift.multiply(axis[1].multiply(uz).subtract(axis[2].multiply(uy)))
                    .subtract(drag.multiply(ux));
            rates[FlightEquations.VY] = lift.multiply(axis[2].multiply(ux).subtract(axis[0].multiply(uz)))
                    .subtract(drag.multiply(uy))
                    .subtract(9.80665);
            rates[FlightEquations.VZ] = lift.multiply(axis[0].multiply(uy).subtract(axis[1].multiply(ux)))
                    .subtract(drag.multiply(uz));
            rates[FlightEquations.SPIN] =
                    speed.multiply(y[FlightEquations.SPIN]).multiply(-DECAY);
            rates[FlightEquations.Y] = uy;
            rates[FlightEquations.X] = y[FlightEquations.VX];
            rates[FlightEquations.Z] = y[FlightEquations.VZ];
            return rates;
        }
    }

    private static final class GradientDescent implements FieldODEEventDetector<Gradient> {
        private final BracketedRealFieldUnivariateSolver<Gradient> solver;

        GradientDescent(Gradient zero) {
            GradientField field = zero.getField();
            solver = new FieldBracketingNthOrderBrentSolver<>(
                    field.getZero(), field.getZero().add(1e-8), field.getZero(), 5);
        }

        @Override
        public FieldAdaptableInterval<Gradient> getMaxCheckInterval() {
            return FieldAdaptableInterval.of(1.0);
        }

        @Override
        public int getMaxIterationCount() {
            return 100;
        }

        @Override
        public BracketedRealFieldUnivariateSolver<Gradient> getSolver() {
            return solver;
        }

        @Override
        public FieldODEEventHandler<Gradient> getHandler() {
            return (state, detector, increasing) ->
                    increasing ? org.hipparchus.ode.events.Action.CONTINUE : org.hipparchus.ode.events.Action.STOP;
        }

        @Override
        public Gradient g(FieldODEStateAndDerivative<Gradient> state) {
            return state.getPrimaryState()[FlightEquations.Y];
        }
    }

    private static final class HipparchusMotion implements OrdinaryDifferentialEquation {
        private final FlightEquations equations;
        private final double[] axis;
        private final double[] rates = new double[FlightEquations.RATES];

        HipparchusMotion(FlightEquations equations, double[] axis) {
            this.equations = equations;
            this.axis = axis;
        }

        @Override
        public int getDimension() {
            return FlightEquations.STATE;
        }

        @Override
        public double[] computeDerivatives(double t, double[] y) {
            equations.rates(y, axis, rates, 0);
            return Arrays.copyOf(rates, FlightEquations.STATE);
        }
    }

    private static final class HipparchusDescent implements ODEEventDetector {
        private final BracketedUnivariateSolver<UnivariateFunction> solver =
                new BracketingNthOrderBrentSolver(0.0, 1e-8, 0.0, 5);

        @Override
        public AdaptableInterval getMaxCheckInterval() {
            return AdaptableInterval.of(1.0);
        }

        @Override
        public int getMaxIterationCount() {
            return 100;
        }

        @Override
        public BracketedUnivariateSolver<UnivariateFunction> getSolver() {
            return solver;
        }

        @Override
        public ODEEventHandler getHandler() {
            return (state, detector, increasing) ->
                    increasing ? org.hipparchus.ode.events.Action.CONTINUE : org.hipparchus.ode.events.Action.STOP;
        }

        @Override
        public double g(ODEStateAndDerivative state) {
            return state.getPrimaryState()[FlightEquations.Y];
        }
    }

    private static final class CommonsMotion implements org.apache.commons.math3.ode.FirstOrderDifferentialEquations {
        private final FlightEquations equations;
        private final double[] axis;
        private final double[] rates = new double[FlightEquations.RATES];

        CommonsMotion(FlightEquations equations, double[] axis) {
            this.equations = equations;
            this.axis = axis;
        }

        @Override
        public int getDimension() {
            return FlightEquations.STATE;
        }

        @Override
        public void computeDerivatives(double t, double[] y, double[] derivatives) {
            equations.rates(y, axis, rates, 0);
            System.arraycopy(rates, 0, derivatives, 0, FlightEquations.STATE);
        }
    }

    private static final class CommonsDescent implements org.apache.commons.math3.ode.events.EventHandler {
        @Override
        public void init(double t0, double[] y0, double t) {}

        @Override
        public double g(double t, double[] y) {
            return y[FlightEquations.Y];
        }

        @Override
        public Action eventOccurred(double t, double[] y, boolean increasing) {
            return increasing ? Action.CONTINUE : Action.STOP;
        }

        @Override
        public void resetState(double t, double[] y) {}
    }
}
