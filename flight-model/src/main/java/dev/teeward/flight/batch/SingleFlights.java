package dev.teeward.flight.batch;

import dev.teeward.flight.FlightModel;
import dev.teeward.flight.air.Wind;
import dev.teeward.flight.ground.Terrain;
import dev.teeward.flight.internal.FlightEquations;
import dev.teeward.flight.internal.FlightIntegrator;
import dev.teeward.flight.internal.FlightPath;
import dev.teeward.flight.internal.LaneExchange;
import dev.teeward.flight.internal.StepRule;
import org.jspecify.annotations.Nullable;

/**
 * Flies rows one after the other: over a terrain, where side by side every lane would wait for the search of another's landing, and
 * for a model of few rows, where most lanes would be empty.
 */
final class SingleFlights {
    private final FlightModel model;
    private final @Nullable Terrain terrain;
    private final FlightEquations common;
    private final StepRule rule;
    private final LaneExchange.Result result = new LaneExchange.Result();

    SingleFlights(FlightModel model, @Nullable Terrain terrain, FlightEquations common) {
        this.model = model;
        this.terrain = terrain;
        this.common = common;
        rule = StepRule.valueOf(model.accuracy().name());
    }

    /** Equations of a model's ball in some air and wind. */
    static FlightEquations equations(FlightModel model, double density, double viscosity, Wind wind) {
        return new FlightEquations(
                model.ball().aerodynamics(),
                model.ball().mass().kilograms(),
                model.ball().diameter().meters(),
                model.ball().momentOfInertia(),
                density,
                viscosity,
                wind,
                model.gravity());
    }

    void fly(boolean ownAir, boolean ownWind, LaneExchange exchange) {
        LaneExchange.Launch launch = new LaneExchange.Launch();
        while (exchange.next(launch)) {
            FlightEquations equations = ownAir || ownWind
                    ? equations(
                            model,
                            ownAir ? launch.density : model.air().density(),
                            ownAir ? launch.viscosity : model.air().dynamicViscosity(),
                            ownWind ? new SteadyWind(launch.alongTarget, launch.towardsRight) : model.wind())
                    : common;
            FlightIntegrator integrator = terrain == null
                    ? new FlightIntegrator(equations, launch.elevation, rule)
                    : new FlightIntegrator(equations, terrain, rule);
            describe(integrator.fly(launch.state, launch.axis), equations);
            result.row = launch.row;
            exchange.ended(result);
        }
    }

    private void describe(FlightPath path, FlightEquations equations) {
        path.at(path.endTime(), result.state);
        result.ending = path.ending();
        result.time = path.endTime();
        result.apexHeight = path.apexHeight();
        result.steps = path.steps();
        result.rejections = path.rejections();
        result.launchReynolds = equations.reynolds(path.airSpeed(0));
        result.launchSpinRatio = equations.radius() * path.spin(0) / path.airSpeed(0);
        result.leastReynolds = result.launchReynolds;
        result.mostReynolds = result.launchReynolds;
        result.leastSpinRatio = result.launchSpinRatio;
        result.mostSpinRatio = result.launchSpinRatio;
        for (int knot = 1; knot <= path.steps() && path.time(knot) <= path.endTime(); knot++) {
            double speed = path.airSpeed(knot);
            double re = equations.reynolds(speed);
            double s = equations.radius() * path.spin(knot) / speed;
            result.leastReynolds = Math.min(result.leastReynolds, re);
            result.mostReynolds = Math.max(result.mostReynolds, re);
            result.leastSpinRatio = Math.min(result.leastSpinRatio, s);
            result.mostSpinRatio = Math.max(result.mostSpinRatio, s);
        }
    }

    /** The wind of a row, the same at every height [m/s]. */
    private static final class SteadyWind implements Wind {
        private final double along;
        private final double right;

        SteadyWind(double along, double right) {
            this.along = along;
            this.right = right;
        }

        @Override
        public double alongTarget(double height) {
            return along;
        }

        @Override
        public double towardsRight(double height) {
            return right;
        }
    }
}
