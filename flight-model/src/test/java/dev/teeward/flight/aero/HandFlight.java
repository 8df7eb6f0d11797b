package dev.teeward.flight.aero;

import java.util.Arrays;
import java.util.function.Consumer;
import org.apache.commons.math3.ode.FirstOrderDifferentialEquations;
import org.apache.commons.math3.ode.events.EventHandler;
import org.apache.commons.math3.ode.nonstiff.DormandPrince853Integrator;
import org.apache.commons.math3.ode.sampling.StepHandler;
import org.apache.commons.math3.ode.sampling.StepInterpolator;

/**
 * A flight in the vertical plane from the written formulas and Commons Math's Dormand-Prince 8(5,3): nothing of the
 * project's own integration. m a = -m g y + 1/2 rho A V^2 (-Cd u + Cl z x u), d omega/dt = -(1/2 rho A D Cm r/I) V omega.
 *
 * @param carry where the ball comes down [m]
 * @param apex the greatest height [m]
 * @param descent the angle below the horizontal at landing [deg]
 * @param spinShare the spin at landing over that at launch
 */
record HandFlight(double carry, double apex, double descent, double spinShare) {
    static final double YARD = 0.9144;
    static final double MPH = 0.44704;
    static final double RPM = Math.PI / 30.0;

    private static final double G = 9.80665;
    private static final double MASS = 0.04593;
    private static final double DIAMETER = 0.04267;
    private static final double R = DIAMETER / 2.0;
    private static final double AREA = Math.PI * R * R;
    private static final double INERTIA = 0.4 * MASS * R * R;

    /**
     * Still or uniformly moving air.
     *
     * @param density [kg/m3]
     * @param viscosity [Pa s]
     * @param tailwind [m/s]
     */
    record Air(double density, double viscosity, double tailwind) {
        /** 20 C, 1013.25 hPa, 50 percent humidity; viscosity by Sutherland's law, US Standard Atmosphere 1976. */
        static final Air CALIBRATION = new Air(1.19931, 1.458e-6 * Math.pow(293.15, 1.5) / (293.15 + 110.4), 0.0);

        static final Air GOVERNING_BODY = new Air(1.18, 1.83e-5, 0.0);

        Air withDensity(double newDensity) {
            return new Air(newDensity, viscosity, tailwind);
        }

        Air withTailwind(double newTailwind) {
            return new Air(density, viscosity, newTailwind);
        }
    }

    /** State of the ball for someone who watches the flight: position, relative speed and the two dimensionless numbers. */
    record Moment(double x, double y, double re, double s) {}

    double carryYards() {
        return carry / YARD;
    }

    double apexYards() {
        return apex / YARD;
    }

    static HandFlight of(AerodynamicModel model, Air air, double speed, double launchDegrees, double rpm) {
        return of(model, air, speed, launchDegrees, rpm, moment -> {});
    }

    static HandFlight of(
            AerodynamicModel model, Air air, double speed, double launchDegrees, double rpm, Consumer<Moment> watcher) {
        double omega = rpm * RPM;
        double angle = Math.toRadians(launchDegrees);
        double[] state = {0.0, 0.0, speed * Math.cos(angle), speed * Math.sin(angle), omega};
        DormandPrince853Integrator integrator = new DormandPrince853Integrator(1e-9, 0.5, 1e-9, 1e-10);
        double[] top = new double[1];
        integrator.addEventHandler(new Crossing(3, y -> top[0] = y[1], false), 0.5, 1e-10, 200);
        integrator.addEventHandler(new Crossing(1, y -> {}, true), 0.5, 1e-10, 200);
        integrator.addStepHandler(new StepHandler() {
            @Override
            public void init(double t0, double[] y0, double t) {}

            @Override
            public void handleStep(StepInterpolator step, boolean isLast) {
                double from = step.getPreviousTime();
                for (int i = 0; i < 20; i++) {
                    step.setInterpolatedTime(from + (step.getCurrentTime() - from) * i / 20.0);
                    double[] y = step.getInterpolatedState();
                    double v = Math.hypot(y[2] - air.tailwind(), y[3]);
                    watcher.accept(
                            new Moment(y[0], y[1], air.density() * v * DIAMETER / air.viscosity(), R * y[4] / v));
                }
            }
        });
        integrator.integrate(new Equations(model, air), 0.0, state, 30.0, state);
        return new HandFlight(
                state[0],
                top[0],
                Math.toDegrees(Math.atan2(-state[3], state[2])),
                omega == 0.0 ? 1.0 : state[4] / omega);
    }

    private record Equations(AerodynamicModel model, Air air) implements FirstOrderDifferentialEquations {
        @Override
        public int getDimension() {
            return 5;
        }

        @Override
        public void computeDerivatives(double t, double[] y, double[] dot) {
            double u = y[2] - air.tailwind();
            double v = y[3];
            double speed = Math.hypot(u, v);
            double re = air.density() * speed * DIAMETER / air.viscosity();
            double s = R * y[4] / speed;
            double force = 0.5 * air.density() * AREA * speed * speed;
            double drag = force * model.dragCoefficient(re, s);
            double lift = force * model.liftCoefficient(re, s);
            dot[0] = y[2];
            dot[1] = y[3];
            dot[2] = (-drag * u / speed - lift * v / speed) / MASS;
            dot[3] = (-drag * v / speed + lift * u / speed) / MASS - G;
            dot[4] = -0.5 * air.density() * AREA * DIAMETER * model.momentSlope() * R / INERTIA * speed * y[4];
        }
    }

    private record Crossing(int component, Consumer<double[]> seen, boolean ends) implements EventHandler {
        @Override
        public void init(double t0, double[] y0, double t) {}

        @Override
        public double g(double t, double[] y) {
            return y[component];
        }

        @Override
        public Action eventOccurred(double t, double[] y, boolean increasing) {
            if (increasing) {
                return Action.CONTINUE;
            }
            seen.accept(y);
            return ends ? Action.STOP : Action.CONTINUE;
        }

        @Override
        public void resetState(double t, double[] y) {}
    }

    /** Root of the mean square. */
    static double rms(double[] values) {
        return Math.sqrt(Arrays.stream(values).map(v -> v * v).average().orElseThrow());
    }
}
