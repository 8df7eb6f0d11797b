package dev.teeward.flight.internal;

import dev.teeward.flight.ground.Terrain;
import dev.teeward.quantity.Length;
import java.util.Locale;
import org.hipparchus.analysis.UnivariateFunction;
import org.hipparchus.analysis.solvers.BracketedUnivariateSolver;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;
import org.hipparchus.ode.DenseOutputModel;
import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.ODEStateAndDerivative;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.events.Action;
import org.hipparchus.ode.events.AdaptableInterval;
import org.hipparchus.ode.events.ODEEventDetector;
import org.hipparchus.ode.events.ODEEventHandler;
import org.hipparchus.ode.nonstiff.DormandPrince853Integrator;

/**
 * An independent integrator and event finder over the same force sum: Hipparchus, Dormand and Prince 8(5,3), tolerances
 * 1e-11, landing by its event detection.
 */
public final class Referee {
    private final FlightEquations equations;
    private final double[] axis;
    private final DenseOutputModel dense = new DenseOutputModel();
    private final ODEStateAndDerivative landing;

    Referee(FlightEquations equations, double[] launch, double[] axis, double elevation, boolean keep) {
        this(equations, launch, axis, Terrain.level(Length.ofMeters(elevation)), keep);
    }

    public Referee(FlightEquations equations, double[] launch, double[] axis, Terrain terrain, boolean keep) {
        this.equations = equations;
        this.axis = axis;
        DormandPrince853Integrator integrator = new DormandPrince853Integrator(1e-10, 2.0, 1e-11, 1e-11);
        integrator.addEventDetector(new Descent(terrain));
        if (keep) {
            integrator.addStepHandler(dense);
        }
        landing = integrator.integrate(new Motion(), new ODEState(0.0, launch), 100.0);
    }

    double time() {
        return landing.getTime();
    }

    public double[] landing() {
        return landing.getPrimaryState();
    }

    double[] at(double time) {
        return dense.getInterpolatedState(time).getPrimaryState();
    }

    @Override
    public String toString() {
        return String.format(Locale.ROOT, "landing after %.9f s", time());
    }

    private final class Motion implements OrdinaryDifferentialEquation {
        private final double[] rates = new double[FlightEquations.RATES];

        @Override
        public int getDimension() {
            return FlightEquations.STATE;
        }

        @Override
        public double[] computeDerivatives(double t, double[] y) {
            equations.rates(y, axis, rates, 0);
            return java.util.Arrays.copyOf(rates, FlightEquations.STATE);
        }
    }

    private static final class Descent implements ODEEventDetector {
        private final Terrain terrain;
        private final BracketedUnivariateSolver<UnivariateFunction> solver =
                new BracketingNthOrderBrentSolver(0.0, 1e-13, 1e-14, 5);

        Descent(Terrain terrain) {
            this.terrain = terrain;
        }

        @Override
        public AdaptableInterval getMaxCheckInterval() {
            // Two crossings near the apex are a short time apart: look the closer, the slower the ball rises or falls.
            return (state, forward) ->
                    Math.max(0.01, Math.min(0.3, Math.abs(state.getPrimaryState()[FlightEquations.VY]) / 20.0));
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
            return (state, detector, increasing) -> increasing ? Action.CONTINUE : Action.STOP;
        }

        @Override
        public double g(ODEStateAndDerivative state) {
            double[] s = state.getPrimaryState();
            return s[FlightEquations.Y] - terrain.elevation(s[FlightEquations.X], s[FlightEquations.Z]);
        }
    }
}
