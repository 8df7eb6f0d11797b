package dev.teeward.flight;

import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.flight.air.AirState;
import dev.teeward.flight.air.Wind;
import dev.teeward.flight.internal.RationalAerodynamics;
import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Length;
import dev.teeward.quantity.Speed;
import dev.teeward.quantity.SpinRate;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;

class FlightRobustnessTest {
    private static final FlightModel MODEL = FlightModel.of(Ball.of(new RationalAerodynamics()));

    /** Anything that can be entered flies to finite numbers or ends in the typed error. */
    @Property(tries = 3000, seed = "20240601", edgeCases = EdgeCasesMode.MIXIN)
    void everyValidLaunchEndsFiniteOrTyped(
            @ForAll @DoubleRange(min = 0.0, max = 110.0, minIncluded = false) double mps,
            @ForAll @DoubleRange(min = -90.0, max = 90.0) double up,
            @ForAll @DoubleRange(min = -90.0, max = 90.0) double right,
            @ForAll @DoubleRange(min = 0.0, max = 20_000.0) double rpm,
            @ForAll @DoubleRange(min = -180.0, max = 180.0) double tilt,
            @ForAll @DoubleRange(min = 0.0, max = 10.0) double density,
            @ForAll @DoubleRange(min = -180.0, max = 180.0) double from,
            @ForAll @DoubleRange(min = 0.0, max = 50.0) double wind,
            @ForAll @DoubleRange(min = -1000.0, max = 1000.0) double elevation) {
        LaunchConditions launch = LaunchConditions.builder()
                .ballSpeed(Speed.ofMetersPerSecond(mps))
                .launchAngle(Angle.ofDegrees(up))
                .startDirection(Angle.ofDegrees(right))
                .spinRate(SpinRate.ofRpm(rpm))
                .axisTilt(Angle.ofDegrees(tilt))
                .build();
        // Every second time on ground near the start, where the corners are.
        double ground = rpm % 2.0 < 1.0 ? elevation : elevation / 1e4;
        FlightModel model = MODEL.withAir(AirState.of(density, 1.8e-5))
                .withWind(Wind.from(Angle.ofDegrees(from), Speed.ofMetersPerSecond(wind)))
                .withLandingElevation(Length.ofMeters(ground));
        try {
            Flight flight = model.fly(launch);
            // A quantity cannot hold NaN: reading them all is the check.
            double sum = flight.carry().meters()
                    + flight.side().meters()
                    + flight.curve().meters()
                    + flight.apex().meters()
                    + flight.apexDistance().meters()
                    + flight.apexTimeSeconds()
                    + flight.flightTimeSeconds()
                    + flight.descentAngle().degrees()
                    + flight.landingSpeed().metersPerSecond()
                    + flight.landingSpin().rpm()
                    + flight.landingDirection().degrees();
            assertTrue(Double.isFinite(sum));
            assertTrue(flight.apexTimeSeconds() <= flight.flightTimeSeconds());
            assertTrue(flight.descentAngle().degrees() >= -1e-3, flight::toString);
            assertTrue(Math.abs(flight.landing().height().meters()
                            - (flight.warnings().isEmpty() ? ground : 0.0))
                    < 1e-6);
            assertTrue(flight.landingSpin().rpm() <= rpm * (1.0 + 1e-12));
        } catch (FlightException e) {
            assertTrue(e.lastPoint().distance().meters() >= 0.0);
            if (e.reason() == FlightException.Reason.ELEVATION_NOT_REACHED) {
                assertTrue(e.apex().meters() < ground, e::toString);
            } else {
                // With the air and the ball of this test only the limit of time is left, and only in next to no air.
                assertTrue(e.reason() == FlightException.Reason.DID_NOT_COME_DOWN, e::toString);
            }
        }
    }
}
