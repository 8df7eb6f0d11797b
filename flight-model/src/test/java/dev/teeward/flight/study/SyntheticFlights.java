package dev.teeward.flight.study;

import static dev.teeward.flight.study.SensitivityTest.launch;

import dev.teeward.flight.Ball;
import dev.teeward.flight.Flight;
import dev.teeward.flight.FlightModel;
import dev.teeward.flight.LaunchConditions;
import dev.teeward.flight.aero.AerodynamicModel;
import dev.teeward.flight.aero.TypicalAerodynamics;
import dev.teeward.flight.air.Atmosphere;
import dev.teeward.flight.air.Wind;
import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Length;
import dev.teeward.quantity.Speed;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/** Invented flights of a known ball, in two airs, with normal errors of the usual standard deviations. */
final class SyntheticFlights {
    static final FlightOutput[] SEEN = {
        FlightOutput.CARRY, FlightOutput.APEX, FlightOutput.DESCENT_ANGLE, FlightOutput.FLIGHT_TIME
    };

    private static final FlightModel LOW = FlightModel.standard();
    private static final FlightModel HIGH = FlightModel.standard()
            .withAir(Atmosphere.standardAt(Length.ofMeters(1_600.0)))
            .withWind(Wind.from(Angle.ofDegrees(40.0), Speed.ofMetersPerSecond(3.0)));

    private SyntheticFlights() {}

    static AerodynamicModel ball(double drag, double lift) {
        return new ScaledCoefficients(TypicalAerodynamics.of(), drag, lift);
    }

    /** Flights from drive to wedge; {@code noise} in the usual standard deviations. */
    static List<ObservedFlight> of(AerodynamicModel ball, int many, double noise, SplittableRandom random) {
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
            ObservedFlight seen = ObservedFlight.of(launch)
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
