package dev.teeward.flight.study;

import dev.teeward.flight.Ball;
import dev.teeward.flight.FlightModel;
import dev.teeward.flight.LaunchConditions;
import dev.teeward.flight.aero.AerodynamicModel;
import dev.teeward.flight.air.AirState;
import dev.teeward.flight.air.Atmosphere;
import dev.teeward.flight.air.Wind;
import dev.teeward.flight.ground.Ground;
import dev.teeward.flight.ground.TurfSpread;
import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Length;
import dev.teeward.quantity.Mass;
import dev.teeward.quantity.Pressure;
import dev.teeward.quantity.Speed;
import dev.teeward.quantity.SpinRate;
import dev.teeward.quantity.Temperature;
import org.jspecify.annotations.Nullable;

/**
 * A launch and everything it flies in, with every {@link FlightInput} readable and changeable.
 *
 * @param atmosphere where the air of the model comes from, if that is known
 */
record Situation(FlightModel model, @Nullable Atmosphere atmosphere, LaunchConditions launch) {
    static Situation of(FlightModel model, @Nullable Atmosphere atmosphere, LaunchConditions launch) {
        return new Situation(atmosphere == null ? model : model.withAir(atmosphere), atmosphere, launch);
    }

    boolean has(FlightInput input) {
        return switch (input) {
            case TEMPERATURE, PRESSURE, HUMIDITY -> atmosphere != null;
            case LANDING_ELEVATION -> model.ground().flatMap(Ground::terrain).isEmpty();
            default -> true;
        };
    }

    /** The value of an input, in SI. */
    double value(FlightInput input) {
        return switch (input) {
            case BALL_SPEED -> launch.ballSpeed().metersPerSecond();
            case LAUNCH_ANGLE -> launch.launchAngle().radians();
            case START_DIRECTION -> launch.startDirection().radians();
            case SPIN_RATE -> launch.spinRate().radiansPerSecond();
            case AXIS_TILT -> launch.axisTilt().radians();
            case TEMPERATURE -> given(input).temperature().kelvins();
            case PRESSURE -> given(input).pressure().pascals();
            case HUMIDITY -> given(input).relativeHumidity();
            case AIR_DENSITY -> model.air().density();
            case AIR_VISCOSITY -> model.air().dynamicViscosity();
            case WIND_ALONG, WIND_RIGHT -> 0.0;
            case BALL_MASS -> model.ball().mass().kilograms();
            case BALL_DIAMETER -> model.ball().diameter().meters();
            case INERTIA_FACTOR -> model.ball().inertiaFactor();
            case DRAG_SCALE, LIFT_SCALE -> 1.0;
            case LANDING_ELEVATION -> model.landingElevation().meters();
            case GRAVITY -> model.gravity();
        };
    }

    /** The same with one input set to a value in SI. */
    Situation with(FlightInput input, double si) {
        Ball ball = model.ball();
        return switch (input) {
            case BALL_SPEED, LAUNCH_ANGLE, START_DIRECTION, SPIN_RATE, AXIS_TILT ->
                new Situation(model, atmosphere, launched(input, si));
            case TEMPERATURE, PRESSURE, HUMIDITY -> of(model, aired(input, si), launch);
            case AIR_DENSITY ->
                withModel(model.withAir(AirState.of(si, model.air().dynamicViscosity())));
            case AIR_VISCOSITY ->
                withModel(model.withAir(AirState.of(model.air().density(), si)));
            case WIND_ALONG -> withModel(model.withWind(new AddedWind(model.wind(), si, 0.0)));
            case WIND_RIGHT -> withModel(model.withWind(new AddedWind(model.wind(), 0.0, si)));
            case BALL_MASS -> withModel(model.withBall(ball.withMass(Mass.ofKilograms(si))));
            case BALL_DIAMETER -> withModel(model.withBall(ball.withDiameter(Length.ofMeters(si))));
            case INERTIA_FACTOR -> withModel(model.withBall(ball.withInertiaFactor(si)));
            case DRAG_SCALE ->
                withModel(model.withBall(ball.withAerodynamics(AerodynamicModel.scaled(ball.aerodynamics(), si, 1.0))));
            case LIFT_SCALE ->
                withModel(model.withBall(ball.withAerodynamics(AerodynamicModel.scaled(ball.aerodynamics(), 1.0, si))));
            case LANDING_ELEVATION -> withModel(model.withLandingElevation(Length.ofMeters(si)));
            case GRAVITY -> withModel(model.withGravity(si));
        };
    }

    /** The same on turf that is firmer by some standard deviations; as it is without a ground. */
    Situation onTurf(TurfSpread spread, double firmness) {
        return model.ground()
                .map(ground -> withModel(model.withGround(ground.withTurf(spread.at(ground.turf(), firmness)))))
                .orElse(this);
    }

    private Situation withModel(FlightModel changed) {
        return new Situation(changed, atmosphere, launch);
    }

    private LaunchConditions launched(FlightInput input, double si) {
        LaunchConditions.Builder builder = launch.toBuilder();
        switch (input) {
            case BALL_SPEED -> builder.ballSpeed(Speed.ofMetersPerSecond(si));
            case LAUNCH_ANGLE -> builder.launchAngle(Angle.ofRadians(si));
            case START_DIRECTION -> builder.startDirection(Angle.ofRadians(si));
            case SPIN_RATE -> builder.spinRate(SpinRate.ofRadiansPerSecond(si));
            default -> builder.axisTilt(Angle.ofRadians(si));
        }
        return builder.build();
    }

    private Atmosphere aired(FlightInput input, double si) {
        Atmosphere air = given(input);
        return switch (input) {
            case TEMPERATURE -> air.withTemperature(Temperature.ofKelvins(si));
            case PRESSURE ->
                Atmosphere.ofStationPressure(Pressure.ofPascals(si), air.temperature(), air.relativeHumidity());
            default -> air.withRelativeHumidity(si);
        };
    }

    private Atmosphere given(FlightInput input) {
        if (atmosphere == null) {
            throw new IllegalArgumentException(
                    input.key() + " needs the atmosphere, not only its density; give it by withAtmosphere");
        }
        return atmosphere;
    }

    /** A steady wind on top of another. */
    private record AddedWind(Wind base, double along, double right) implements Wind {
        @Override
        public double alongTarget(double height) {
            return base.alongTarget(height) + along;
        }

        @Override
        public double towardsRight(double height) {
            return base.towardsRight(height) + right;
        }
    }
}
