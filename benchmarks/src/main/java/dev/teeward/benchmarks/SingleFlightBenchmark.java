package dev.teeward.benchmarks;

import dev.teeward.flight.Ball;
import dev.teeward.flight.Flight;
import dev.teeward.flight.FlightModel;
import dev.teeward.flight.LaunchConditions;
import dev.teeward.flight.air.AirState;
import dev.teeward.flight.air.Wind;
import dev.teeward.flight.internal.FlightEquations;
import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Speed;
import dev.teeward.quantity.SpinRate;
import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import org.hipparchus.analysis.UnivariateFunction;
import org.hipparchus.analysis.solvers.BracketedUnivariateSolver;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;
import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.ODEStateAndDerivative;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.events.AdaptableInterval;
import org.hipparchus.ode.events.ODEEventDetector;
import org.hipparchus.ode.events.ODEEventHandler;
import org.hipparchus.ode.nonstiff.AdaptiveStepsizeIntegrator;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * One flight after the other, 1,024 random launches in turn: ours against general integrators on the same right-hand side,
 * and against the trivial baseline, a fourth-order Runge-Kutta method with fixed steps.
 *
 * <p>Only our landing error is held by a test (0.1 mm); those of the peers at tolerance 1e-6 and of the baseline are not
 * measured here, so the ratios compare times and not times at equal error.
 *
 * <p>Run with {@code java -jar benchmarks/target/teeward-benchmarks.jar SingleFlight -prof gc}. Compare scores within one
 * run only.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 5, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(2)
public class SingleFlightBenchmark {
    private static final int LAUNCHES = 1024;
    private static final double LONGEST = 60.0;
    private static final double FIXED_STEP = 0.05;

    private final SmoothBall aerodynamics = new SmoothBall();
    private final Wind wind = Wind.from(Angle.ofDegrees(40.0), Speed.ofMetersPerSecond(4.0));
    private final FlightModel model = FlightModel.of(Ball.of(aerodynamics))
            .withAir(AirState.of(1.225, 1.7894e-5))
            .withWind(wind);
    private final FlightEquations equations =
            new FlightEquations(aerodynamics, 0.04593, 0.04267, 8.363e-6, 1.225, 1.7894e-5, wind, 9.80665);
    private final LaunchConditions[] launches = new LaunchConditions[LAUNCHES];
    private final double[][] states = new double[LAUNCHES][];
    private final double[][] axes = new double[LAUNCHES][];
    private int turn;

    /** Draws the launches. */
    @Setup
    public void draw() {
        SplittableRandom random = new SplittableRandom(1L);
        for (int i = 0; i < LAUNCHES; i++) {
            double speed = random.nextDouble(30.0, 80.0);
            double up = Math.toRadians(random.nextDouble(5.0, 45.0));
            double right = Math.toRadians(random.nextDouble(-8.0, 8.0));
            double spin = random.nextDouble(1500.0, 10_000.0) * Math.PI / 30.0;
            double tilt = Math.toRadians(random.nextDouble(-20.0, 20.0));
            launches[i] = LaunchConditions.builder()
                    .ballSpeed(Speed.ofMetersPerSecond(speed))
                    .launchAngle(Angle.ofRadians(up))
                    .startDirection(Angle.ofRadians(right))
                    .spinRate(SpinRate.ofRadiansPerSecond(spin))
                    .axisTilt(Angle.ofRadians(tilt))
                    .build();
            states[i] = new double[] {
                speed * Math.cos(up) * Math.cos(right),
                speed * Math.sin(up),
                speed * Math.cos(up) * Math.sin(right),
                spin,
                0.0,
                0.0,
                0.0
            };
            axes[i] = new double[] {
                Math.sin(tilt) * Math.sin(up) * Math.cos(right) - Math.cos(tilt) * Math.sin(right),
                -Math.sin(tilt) * Math.cos(up),
                Math.cos(tilt) * Math.cos(right) + Math.sin(tilt) * Math.sin(up) * Math.sin(right)
            };
        }
    }

    private int next() {
        turn = (turn + 1) % LAUNCHES;
        return turn;
    }

    /**
     * Our flight: landing, apex and path.
     *
     * @return the flight
     */
    @Benchmark
    public Flight teeward() {
        return model.fly(launches[next()]);
    }

    /**
     * Our flight and its points at every 10 ms.
     *
     * @return the points
     */
    @Benchmark
    public Object teewardSampled() {
        return model.fly(launches[next()]).trajectory().every(0.01);
    }

    /**
     * Hipparchus, Dormand and Prince 8(5,3), tolerance 1e-6.
     *
     * @return the landing
     */
    @Benchmark
    public Object hipparchus853() {
        return hipparchus(new org.hipparchus.ode.nonstiff.DormandPrince853Integrator(1e-8, 2.0, 1e-6, 1e-6));
    }

    /**
     * Hipparchus, Dormand and Prince 5(4), tolerance 1e-6.
     *
     * @return the landing
     */
    @Benchmark
    public Object hipparchus54() {
        return hipparchus(new org.hipparchus.ode.nonstiff.DormandPrince54Integrator(1e-8, 2.0, 1e-6, 1e-6));
    }

    /**
     * Hipparchus, Dormand and Prince 5(4), tolerance 1e-6, and its points at every 10 ms.
     *
     * @return the landing
     */
    @Benchmark
    public Object hipparchus54Sampled() {
        var integrator = new org.hipparchus.ode.nonstiff.DormandPrince54Integrator(1e-8, 2.0, 1e-6, 1e-6);
        double[] sum = new double[1];
        integrator.addStepHandler(new org.hipparchus.ode.sampling.StepNormalizer(
                0.01, (state, last) -> sum[0] += state.getPrimaryState()[FlightEquations.Y]));
        return hipparchus(integrator).getTime() + sum[0];
    }

    /**
     * Commons Math 3, Dormand and Prince 5(4), tolerance 1e-6.
     *
     * @return the time of the landing
     */
    @Benchmark
    public double commonsMath54() {
        int i = next();
        var integrator = new org.apache.commons.math3.ode.nonstiff.DormandPrince54Integrator(1e-8, 2.0, 1e-6, 1e-6);
        integrator.addEventHandler(new CommonsDescent(), 1.0, 1e-8, 100);
        double[] end = new double[FlightEquations.STATE];
        return integrator.integrate(new CommonsMotion(axes[i]), 0.0, states[i], LONGEST, end);
    }

    /**
     * The baseline: fixed steps of 50 ms, the landing by a straight line in the last.
     *
     * @return the landing
     */
    @Benchmark
    public double[] fixedStep() {
        int i = next();
        double[] axis = axes[i];
        double[] y = states[i].clone();
        double[] stage = new double[FlightEquations.STATE];
        double[] k = new double[4 * FlightEquations.RATES];
        double[] before = y.clone();
        while (y[FlightEquations.Y] >= 0.0) {
            System.arraycopy(y, 0, before, 0, y.length);
            equations.rates(y, axis, k, 0);
            stage(y, k, 0, FIXED_STEP / 2.0, stage);
            equations.rates(stage, axis, k, FlightEquations.RATES);
            stage(y, k, 1, FIXED_STEP / 2.0, stage);
            equations.rates(stage, axis, k, 2 * FlightEquations.RATES);
            stage(y, k, 2, FIXED_STEP, stage);
            equations.rates(stage, axis, k, 3 * FlightEquations.RATES);
            for (int c = 0; c < y.length; c++) {
                y[c] += FIXED_STEP
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

    private static void stage(double[] y, double[] k, int of, double h, double[] stage) {
        for (int c = 0; c < y.length; c++) {
            stage[c] = y[c] + h * k[of * FlightEquations.RATES + c];
        }
    }

    private ODEStateAndDerivative hipparchus(AdaptiveStepsizeIntegrator integrator) {
        int i = next();
        integrator.addEventDetector(new HipparchusDescent());
        return integrator.integrate(new HipparchusMotion(axes[i]), new ODEState(0.0, states[i]), LONGEST);
    }

    private final class HipparchusMotion implements OrdinaryDifferentialEquation {
        private final double[] axis;
        private final double[] rates = new double[FlightEquations.RATES];

        HipparchusMotion(double[] axis) {
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

    private final class CommonsMotion implements org.apache.commons.math3.ode.FirstOrderDifferentialEquations {
        private final double[] axis;
        private final double[] rates = new double[FlightEquations.RATES];

        CommonsMotion(double[] axis) {
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
