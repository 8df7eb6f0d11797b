package dev.teeward.flight.study;

import dev.teeward.flight.internal.FlightEquations;
import org.hipparchus.analysis.UnivariateFunction;
import org.hipparchus.analysis.solvers.BracketedUnivariateSolver;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;
import org.hipparchus.ode.ODEStateAndDerivative;
import org.hipparchus.ode.events.Action;
import org.hipparchus.ode.events.AdaptableInterval;
import org.hipparchus.ode.events.ODEEventDetector;
import org.hipparchus.ode.events.ODEEventHandler;
import org.jspecify.annotations.Nullable;

/** Where one number of the state falls through a value: the height at landing, the vertical velocity at the apex. */
final class DownwardCrossing implements ODEEventDetector {
    private final int component;
    private final double value;
    private final boolean last;
    private final BracketedUnivariateSolver<UnivariateFunction> solver =
            new BracketingNthOrderBrentSolver(0.0, 1e-13, 1e-14, 5);
    private @Nullable ODEStateAndDerivative highest;

    private DownwardCrossing(int component, double value, boolean last) {
        this.component = component;
        this.value = value;
        this.last = last;
    }

    static DownwardCrossing landing(double elevation) {
        return new DownwardCrossing(FlightEquations.Y, elevation, true);
    }

    static DownwardCrossing apex() {
        return new DownwardCrossing(FlightEquations.VY, 0.0, false);
    }

    /** The crossing at the greatest height, if there was one. */
    @Nullable
    ODEStateAndDerivative highest() {
        return highest;
    }

    boolean found() {
        return highest != null;
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
        return (state, detector, increasing) -> {
            if (increasing) {
                return Action.CONTINUE;
            }
            if (highest == null
                    || state.getPrimaryState()[FlightEquations.Y] > highest.getPrimaryState()[FlightEquations.Y]) {
                highest = state;
            }
            return last ? Action.STOP : Action.CONTINUE;
        };
    }

    @Override
    public double g(ODEStateAndDerivative state) {
        return state.getPrimaryState()[component] - value;
    }
}
