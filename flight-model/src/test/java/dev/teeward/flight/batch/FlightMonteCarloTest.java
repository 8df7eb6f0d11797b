package dev.teeward.flight.batch;

import static dev.teeward.quantity.Units.degrees;
import static dev.teeward.quantity.Units.metersPerSecond;
import static dev.teeward.quantity.Units.rpm;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.flight.FlightModel;
import dev.teeward.flight.LaunchConditions;
import dev.teeward.flight.air.AirState;
import dev.teeward.flight.air.Roughness;
import dev.teeward.flight.air.Wind;
import dev.teeward.flight.air.WindProfile;
import dev.teeward.flight.batch.LaunchSpread.Input;
import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.LengthUnit;
import org.junit.jupiter.api.Test;

class FlightMonteCarloTest {
    private static final FlightModel VACUUM = FlightModel.standard().withAir(AirState.of(0.0, 1.8e-5));

    private static LaunchConditions launch() {
        return LaunchConditions.builder()
                .ballSpeed(metersPerSecond(50.0))
                .launchAngle(degrees(20.0))
                .spinRate(rpm(5000.0))
                .build();
    }

    /**
     * Without air the carry is v^2 sin(2a)/g: to first order its deviation is that of v times 2 v sin(2a)/g and that of a times
     * 2 v^2 cos(2a)/g, with the correlation between. 1.959964 deviations to either side hold 95 percent.
     */
    @Test
    void inAVacuumTheSpreadIsThatOfTheParabola() {
        double a = StrictMath.toRadians(20.0);
        double perSpeed = 2.0 * 50.0 * Math.sin(2.0 * a) / 9.80665;
        double perAngle = 2.0 * 50.0 * 50.0 * Math.cos(2.0 * a) / 9.80665;
        double sv = 0.1;
        double sa = StrictMath.toRadians(0.1);
        for (double correlation : new double[] {0.0, -0.6, 0.8}) {
            LaunchSpread spread = LaunchSpread.none()
                    .withBallSpeed(metersPerSecond(sv))
                    .withLaunchAngle(degrees(0.1))
                    .withCorrelation(Input.LAUNCH_ANGLE, Input.BALL_SPEED, correlation);
            Estimate carry = FlightMonteCarlo.withDefaults()
                    .withSpread(spread)
                    .withDraws(100_000)
                    .withSeed(7L)
                    .fly(VACUUM, launch())
                    .carry();
            double u = perSpeed * sv;
            double w = perAngle * sa;
            double deviation = Math.sqrt(u * u + w * w + 2.0 * correlation * u * w);
            double centre = 50.0 * 50.0 * Math.sin(2.0 * a) / 9.80665;
            // Five standard errors: of a median 1.2533/sqrt(n), of the ends 2.67/sqrt(n) deviations.
            assertEquals(centre, carry.value(), 5.0 * 1.2533 / Math.sqrt(1e5) * deviation + 1e-3);
            assertEquals(
                    1.959964 * deviation, carry.interval().halfWidth(), 5.0 * 2.67 / Math.sqrt(1e5) * deviation + 1e-3);
            assertEquals(0.95, carry.interval().level());
            assertEquals(LengthUnit.METER, carry.unit());
        }
    }

    /** To first order a gust across moves the side by the derivative by a cross wind; here from two single flights. */
    @Test
    void gustsSpreadTheSideByItsDerivative() {
        FlightModel calm = FlightModel.standard();
        FlightMonteCarlo.Result result = FlightMonteCarlo.withDefaults()
                .withGusts(metersPerSecond(0.0), metersPerSecond(0.5))
                .withLevel(0.9)
                .withDraws(20_000)
                .fly(calm, launch());
        double drift = calm.withWind(Wind.from(degrees(-90.0), metersPerSecond(0.5)))
                .fly(launch())
                .side()
                .meters();
        // 1.644854 deviations hold 90 percent.
        assertEquals(1.644854 * drift, result.side().interval().halfWidth(), 0.05 * drift);
        assertTrue(result.carry().interval().width() < 0.2 * drift);
        assertEquals(20_000, result.landed());
        assertEquals(0, result.redrawn());
        FlightModel sheared = calm.withWind(WindProfile.logLaw(degrees(0.0), metersPerSecond(5.0), Roughness.OPEN));
        assertThrows(
                IllegalArgumentException.class,
                () -> FlightMonteCarlo.withDefaults()
                        .withGusts(metersPerSecond(1.0), metersPerSecond(1.0))
                        .fly(sheared, launch()));
    }

    @Test
    void theSameSeedGivesTheSameBitsForAnyNumberOfThreads() {
        LaunchSpread spread = LaunchSpread.none()
                .withBallSpeed(metersPerSecond(1.0))
                .withStartDirection(degrees(2.0))
                .withSpinRate(rpm(400.0))
                .withAxisTilt(degrees(3.0));
        FlightMonteCarlo procedure = FlightMonteCarlo.withDefaults()
                .withSpread(spread)
                .withGusts(metersPerSecond(1.0), metersPerSecond(1.0));
        FlightMonteCarlo.Result one = procedure.fly(FlightModel.standard(), launch());
        FlightMonteCarlo.Result three = procedure.withThreads(3).fly(FlightModel.standard(), launch());
        assertArrayEquals(one.flights().carry(), three.flights().carry());
        assertEquals(one.side(), three.side());
        FlightMonteCarlo.Result other = procedure.withSeed(2L).fly(FlightModel.standard(), launch());
        assertTrue(other.carry().value() != one.carry().value());
        for (Estimate estimate : new Estimate[] {
            one.curve(), one.apex(), one.flightTime(), one.descentAngle(), one.landingSpeed(), one.landingSpin()
        }) {
            assertTrue(estimate.interval().contains(estimate.value()));
        }
        assertEquals(10_000, one.launches().rows());
        assertFalse(one.toString().isEmpty());
        assertFalse(procedure.toString().isEmpty());
    }

    @Test
    void drawsOutsideTheRangesAreDrawnAgainAndCounted() {
        LaunchConditions slow = LaunchConditions.builder()
                .ballSpeed(metersPerSecond(10.0))
                .launchAngle(degrees(30.0))
                .spinRate(rpm(100.0))
                .build();
        FlightMonteCarlo.Result result = FlightMonteCarlo.withDefaults()
                .withSpread(LaunchSpread.none().withSpinRate(rpm(100.0)))
                .fly(FlightModel.standard(), slow);
        // A normal number lies below minus one deviation with probability 0.158655: redrawn until it does not, 0.18857
        // a draw.
        assertEquals(1886.0, (double) result.redrawn(), 200.0);
        assertThrows(IllegalArgumentException.class, () -> LaunchSpread.none().withSpinRate(rpm(-1.0)));
        assertThrows(
                IllegalArgumentException.class,
                () -> LaunchSpread.none().withCorrelation(Input.BALL_SPEED, Input.BALL_SPEED, 0.5));
        LaunchSpread tied = LaunchSpread.none()
                .withCorrelation(Input.BALL_SPEED, Input.SPIN_RATE, 0.7)
                .withCorrelation(Input.BALL_SPEED, Input.LAUNCH_ANGLE, 0.6);
        assertThrows(
                IllegalArgumentException.class, () -> tied.withCorrelation(Input.SPIN_RATE, Input.LAUNCH_ANGLE, -0.9));
        assertEquals(0.7, tied.correlation(Input.SPIN_RATE, Input.BALL_SPEED));
        assertEquals(0.0, tied.deviation(Input.AXIS_TILT));
        assertFalse(tied.toString().isEmpty());
        assertThrows(
                IllegalArgumentException.class,
                () -> FlightMonteCarlo.withDefaults().withDraws(1));
        assertThrows(
                IllegalArgumentException.class,
                () -> FlightMonteCarlo.withDefaults().withThreads(0));
        assertThrows(
                IllegalArgumentException.class,
                () -> FlightMonteCarlo.withDefaults().withLevel(1.0));
        assertThrows(
                IllegalArgumentException.class,
                () -> FlightMonteCarlo.withDefaults().withGusts(metersPerSecond(11.0), metersPerSecond(1.0)));
    }

    /** The limit of a launch, 20,000 rpm, is no draw outside the ranges. */
    @Test
    void theGreatestSpinIsDrawn() {
        LaunchConditions fastest = LaunchConditions.builder()
                .ballSpeed(metersPerSecond(50.0))
                .launchAngle(degrees(20.0))
                .spinRate(rpm(20_000.0))
                .build();
        FlightMonteCarlo.Result result =
                FlightMonteCarlo.withDefaults().withDraws(10).fly(FlightModel.standard(), fastest);
        assertEquals(0, result.redrawn());
        assertEquals(10, result.landed());
    }

    @Test
    void withoutALandingThereIsNoEstimate() {
        FlightMonteCarlo.Result none = FlightMonteCarlo.withDefaults()
                .withDraws(10)
                .fly(
                        FlightModel.standard().withLandingElevation(dev.teeward.quantity.Length.ofMeters(300.0)),
                        launch());
        assertEquals(0, none.landed());
        assertThrows(IllegalStateException.class, none::carry);
    }
}
