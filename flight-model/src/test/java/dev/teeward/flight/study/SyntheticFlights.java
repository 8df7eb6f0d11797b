package dev.teeward.flight.study;

import static dev.teeward.flight.study.SensitivityTest.launch;

import dev.teeward.flight.Ball;
import dev.teeward.flight.Flight;
import dev.teeward.flight.FlightModel;
import dev.teeward.flight.LaunchConditions;
import dev.teeward.flight.LaunchTolerance;
import dev.teeward.flight.aero.AerodynamicModel;
import dev.teeward.flight.aero.TypicalAerodynamics;
import dev.teeward.flight.air.Atmosphere;
import dev.teeward.flight.air.Wind;
import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Length;
import dev.teeward.quantity.Speed;
import dev.teeward.quantity.SpinRate;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.Function;

/** Invented flights of a known ball, in two airs, with normal errors of the usual standard deviations. */
final class SyntheticFlights {
    static final FlightOutput[] SEEN = {
        FlightOutput.CARRY, FlightOutput.APEX, FlightOutput.DESCENT_ANGLE, FlightOutput.FLIGHT_TIME
    };

    private static final FlightModel LOW = FlightModel.standard();
    private static final FlightModel HIGH = FlightModel.standard()
            .withAir(Atmosphere.standardAt(Length.ofMeters(1_600.0)))
            .withWind(Wind.from(Angle.ofDegrees(40.0), Speed.ofMetersPerSecond(3.0)));

    static final LaunchTolerance EXACT = LaunchTolerance.typical()
            .withBallSpeed(Speed.ofMetersPerSecond(0.0))
            .withLaunchAngle(Angle.ofDegrees(0.0))
            .withStartDirection(Angle.ofDegrees(0.0))
            .withSpinRate(SpinRate.ofRpm(0.0))
            .withAxisTilt(Angle.ofDegrees(0.0));

    private SyntheticFlights() {}

    /** A device that measures ball speed to 0.5 percent, angles to 0.3 deg and spin to 3 percent, one standard deviation each. */
    static LaunchTolerance device(LaunchConditions launch) {
        return LaunchTolerance.typical()
                .withBallSpeed(
                        Speed.ofMetersPerSecond(0.005 * launch.ballSpeed().metersPerSecond()))
                .withLaunchAngle(Angle.ofDegrees(0.3))
                .withStartDirection(Angle.ofDegrees(0.3))
                .withSpinRate(SpinRate.ofRpm(0.03 * launch.spinRate().rpm()));
    }

    static AerodynamicModel ball(double drag, double lift) {
        return AerodynamicModel.scaled(TypicalAerodynamics.of(), drag, lift);
    }

    /** Flights from drive to wedge; {@code noise} in the usual standard deviations. */
    static List<ObservedFlight> of(AerodynamicModel ball, int many, double noise, SplittableRandom random) {
        return of(ball, many, noise, launch -> EXACT, random);
    }

    /** The same, with launches of which only a measurement with errors is told. */
    static List<ObservedFlight> of(
            AerodynamicModel ball,
            int many,
            double noise,
            Function<LaunchConditions, LaunchTolerance> tolerances,
            SplittableRandom random) {
        List<ObservedFlight> flights = new ArrayList<>();
        for (int i = 0; i < many; i++) {
            double club = i % 8 / 7.0;
            LaunchConditions launch = launch(
                    70.0 - 28.0 * club + random.nextDouble(-1.0, 1.0),
                    11.0 + 15.0 * club + random.nextDouble(-1.0, 1.0),
                    random.nextDouble(-3.0, 3.0),
                    2_600.0 + 6_000.0 * club + random.nextDouble(-300.0, 300.0),
                    random.nextDouble(-8.0, 8.0));
            FlightModel conditions = i / 8 % 2 == 0 ? LOW : HIGH;
            Flight flight = conditions.withBall(Ball.of(ball)).fly(launch);
            LaunchTolerance tolerance = tolerances.apply(launch);
            LaunchConditions measured = tolerance == EXACT ? launch : tolerance.draw(launch, random);
            ObservedFlight seen = ObservedFlight.of(measured)
                    .withName("flight " + (i + 1))
                    .withGroup(club < 0.4 ? "long" : "short")
                    .withConditions(conditions);
            for (FlightOutput output : SEEN) {
                seen = seen.with(
                        output, output.of(flight) + noise * output.standardDeviation() * random.nextGaussian());
            }
            flights.add(seen);
        }
        return flights;
    }
}
