package dev.teeward.flight.study;

import static dev.teeward.flight.study.SensitivityTest.launch;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.flight.Ball;
import dev.teeward.flight.FlightModel;
import dev.teeward.flight.LaunchConditions;
import dev.teeward.flight.LaunchTolerance;
import dev.teeward.flight.aero.CoefficientSpread;
import dev.teeward.flight.aero.Davies1949;
import dev.teeward.flight.aero.TypicalAerodynamics;
import dev.teeward.flight.air.AirState;
import dev.teeward.flight.air.Atmosphere;
import dev.teeward.flight.ground.Ground;
import dev.teeward.flight.ground.Turf;
import dev.teeward.flight.ground.TurfClass;
import dev.teeward.flight.ground.TurfSpread;
import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Interval;
import dev.teeward.quantity.Length;
import java.util.Arrays;
import java.util.SplittableRandom;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.junit.jupiter.api.Test;

/** Propagation by derivatives against simulation and closed forms. */
class TolerancePropagationTest {
    private static final TolerancePropagation PROPAGATION = TolerancePropagation.withDefaults();
    private static final FlightModel VACUUM = FlightModel.standard().withAir(AirState.of(0.0, 1.8e-5));

    @Test
    void smallErrorsAgreeWithTheSimulation() {
        Sensitivity.Result s = Sensitivity.of(FlightModel.standard())
                .withAtmosphere(Atmosphere.standardAt(Length.ofMeters(1_600.0)))
                .at(launch(52.0, 17.0, -1.0, 6_400.0, -4.0));
        Tolerances device = Tolerances.none()
                .with(FlightInput.BALL_SPEED, 0.3)
                .with(FlightInput.LAUNCH_ANGLE, Math.toRadians(0.3))
                .with(FlightInput.START_DIRECTION, Math.toRadians(0.4))
                .with(FlightInput.SPIN_RATE, 20.0)
                .with(FlightInput.AXIS_TILT, Math.toRadians(1.0))
                .with(FlightInput.TEMPERATURE, 2.0)
                .with(FlightInput.WIND_ALONG, 0.5)
                .with(FlightInput.DRAG_SCALE, 0.02)
                .withCorrelation(FlightInput.BALL_SPEED, FlightInput.LAUNCH_ANGLE, -0.5)
                .withCorrelation(FlightInput.START_DIRECTION, FlightInput.AXIS_TILT, 0.6);
        TolerancePropagation.Result linear = PROPAGATION.linear(s, device);
        TolerancePropagation.Result simulated = PROPAGATION.simulated(s, device, 20_000, new SplittableRandom(3L));
        assertTrue(linear.warnings().isEmpty(), () -> linear.warnings().toString());
        assertTrue(simulated.warnings().isEmpty());
        assertEquals("linear", linear.method());
        assertEquals("simulated", simulated.method());
        for (FlightOutput output : FlightOutput.of(FlightModel.standard())) {
            double sd = linear.standardDeviation(output);
            // The standard deviation of 20,000 draws is good to 0.5 percent (one standard error), its mean to 0.7
            // percent of the standard deviation; what the derivatives leave out adds a little.
            assertEquals(1.0, simulated.standardDeviation(output) / sd, 0.03, output.key());
            assertEquals(
                    linear.estimate(output).value(), simulated.estimate(output).value(), 0.06 * sd, output.key());
            assertEquals(
                    linear.estimate(output).interval().lower(),
                    simulated.estimate(output).interval().lower(),
                    0.12 * sd);
            assertEquals(
                    linear.estimate(output).interval().upper(),
                    simulated.estimate(output).interval().upper(),
                    0.12 * sd);
        }
        assertEquals(
                simulated.estimate(FlightOutput.CARRY),
                PROPAGATION
                        .simulated(s, device, 20_000, new SplittableRandom(3L))
                        .estimate(FlightOutput.CARRY));
    }

    /** Closed form in a vacuum: carry = v^2 sin(2a)/g. Errors that go wholly together add, opposed ones subtract. */
    @Test
    void correlationsAddAndSubtract() {
        double v = 40.0;
        double a = Math.toRadians(30.0);
        double g = 9.80665;
        Sensitivity.Result s = Sensitivity.of(VACUUM).at(launch(v, 30.0, 0.0, 0.0, 0.0));
        double bySpeed = 2.0 * v * Math.sin(2.0 * a) / g * 0.1;
        double byAngle = 2.0 * v * v * Math.cos(2.0 * a) / g * 0.002;
        Tolerances t = Tolerances.none().with(FlightInput.BALL_SPEED, 0.1).with(FlightInput.LAUNCH_ANGLE, 0.002);
        assertEquals(Math.hypot(bySpeed, byAngle), carryDeviation(s, t), 1e-6);
        assertEquals(
                bySpeed + byAngle,
                carryDeviation(s, t.withCorrelation(FlightInput.LAUNCH_ANGLE, FlightInput.BALL_SPEED, 1.0)),
                1e-6);
        assertEquals(
                Math.abs(bySpeed - byAngle),
                carryDeviation(s, t.withCorrelation(FlightInput.BALL_SPEED, FlightInput.LAUNCH_ANGLE, -1.0)),
                1e-6);
        // The normal quantile 1.644854 (standard tables).
        assertEquals(
                1.644854 * Math.hypot(bySpeed, byAngle),
                PROPAGATION
                        .withLevel(0.90)
                        .linear(s, t)
                        .estimate(FlightOutput.CARRY)
                        .interval()
                        .halfWidth(),
                1e-5);
    }

    private static double carryDeviation(Sensitivity.Result s, Tolerances t) {
        return PROPAGATION.linear(s, t).standardDeviation(FlightOutput.CARRY);
    }

    /** At 45 deg in a vacuum the carry can only fall: the derivative is 0, and the derivatives see no error at all. */
    @Test
    void itSaysWhereTheDerivativesFail() {
        Sensitivity.Result s = Sensitivity.of(VACUUM).at(launch(40.0, 45.0, 0.0, 0.0, 0.0));
        Tolerances t = Tolerances.none().with(FlightInput.LAUNCH_ANGLE, Math.toRadians(5.0));
        TolerancePropagation.Result linear = PROPAGATION.linear(s, t);
        assertTrue(
                linear.warnings().stream()
                        .anyMatch(w -> w.code().equals("linearization-fails")
                                && w.message().contains("carry")),
                () -> linear.warnings().toString());
        double centre = s.value(FlightOutput.CARRY);
        TolerancePropagation.Result simulated = PROPAGATION.simulated(s, t, 5_000, new SplittableRandom(1L));
        // E cos(2 e) for a normal e of standard deviation d is exp(-2 d^2).
        double d = Math.toRadians(5.0);
        assertEquals(
                centre * Math.exp(-2.0 * d * d),
                simulated.estimate(FlightOutput.CARRY).value(),
                0.1);
        assertTrue(simulated.estimate(FlightOutput.CARRY).interval().upper() <= centre + 1e-6);
    }

    /** Against 1,000 balls drawn and flown by hand, and against the derivatives. */
    @Test
    void ballsOfAKindSpreadAsTheyDoWhenFlown() {
        CoefficientSpread spread = CoefficientSpread.of(0.03, 0.05).withCorrelation(0.4);
        LaunchConditions drive = launch(70.0, 12.0, 0.0, 2_600.0, 4.0);
        Tolerances balls = Tolerances.none().withBallSpread(spread);
        SplittableRandom random = new SplittableRandom(77L);
        double[] carries = new double[1_000];
        for (int i = 0; i < carries.length; i++) {
            carries[i] = FlightModel.of(Ball.of(spread.draw(TypicalAerodynamics.of(), random)))
                    .fly(drive)
                    .carry()
                    .meters();
        }
        Arrays.sort(carries);
        double mean = Arrays.stream(carries).average().orElseThrow();
        double sd = Math.sqrt(
                Arrays.stream(carries).map(c -> (c - mean) * (c - mean)).sum() / 999.0);
        Sensitivity.Result s = Sensitivity.of(FlightModel.standard()).at(drive);
        TolerancePropagation.Result linear = PROPAGATION.linear(s, balls);
        TolerancePropagation.Result simulated = PROPAGATION.simulated(s, balls, 1_000, new SplittableRandom(5L));
        // The standard deviation of 1,000 draws has a standard error of 2.2 percent, an end of their 95 percent
        // interval one of
        // sqrt(0.025 * 0.975 / 1000) / 0.0584 = 0.085 standard deviations (0.0584 the normal density there): four of
        // each,
        // times sqrt(2) where both sides are drawn.
        assertEquals(1.0, linear.standardDeviation(FlightOutput.CARRY) / sd, 0.09);
        assertEquals(1.0, simulated.standardDeviation(FlightOutput.CARRY) / sd, 0.13);
        Interval interval = simulated.estimate(FlightOutput.CARRY).interval();
        assertEquals(carries[25], interval.lower(), 0.48 * sd);
        assertEquals(carries[974], interval.upper(), 0.48 * sd);
        assertEquals(
                spread.standardDeviation(
                        TypicalAerodynamics.of(),
                        m -> FlightModel.of(Ball.of(m)).fly(drive).carry().meters()),
                linear.standardDeviation(FlightOutput.CARRY),
                0.05 * sd);
    }

    /** 13 ball models differed by 18 m in carry (Lyu and others 2018, abstract): 18 / 3.336 = 5.4 m, of a drive. */
    @Test
    void theTypicalBallSpreadsAsPublishedInOneCall() {
        LaunchConditions drive = launch(70.0, 12.0, 0.0, 2_600.0, 0.0);
        TolerancePropagation.Result balls =
                PROPAGATION.betweenBalls(FlightModel.standard(), drive, 1_000, new SplittableRandom(9L));
        assertEquals(5.4, balls.standardDeviation(FlightOutput.CARRY), 0.8);
        Interval carry = balls.estimate(FlightOutput.CARRY).interval();
        assertEquals(0.95, carry.level(), 0.0);
        assertTrue(carry.contains(FlightModel.standard().fly(drive).carry().meters()));
        assertEquals(
                balls.estimate(FlightOutput.APEX),
                PROPAGATION
                        .betweenBalls(FlightModel.standard(), drive, 1_000, new SplittableRandom(9L))
                        .estimate(FlightOutput.APEX));
        FlightModel silent = FlightModel.of(Ball.of(Davies1949.of()));
        IllegalArgumentException e = assertThrows(
                IllegalArgumentException.class,
                () -> PROPAGATION.betweenBalls(silent, drive, 1_000, new SplittableRandom(9L)));
        assertTrue(e.getMessage().contains("states no spread"), e.getMessage());
        assertTrue(Tolerances.none()
                .withBallSpread(CoefficientSpread.of(0.0, 0.0))
                .inputs()
                .isEmpty());
    }

    /**
     * A drive on a fairway whose firmness is not known: the standard deviation of the total over 400 firmnesses at equal steps of
     * probability, each flown on a turf made by hand; the linear one by the flights 1.73 standard deviations to either side.
     */
    @Test
    void theTurfIsInTheTotalIfItsSpreadIsStated() {
        LaunchConditions drive = launch(66.0, 12.0, 0.0, 2_600.0, 0.0);
        FlightModel fairway = FlightModel.standard().withGround(Ground.of(TurfClass.FAIRWAY));
        Sensitivity.Result s = Sensitivity.of(fairway).at(drive);
        for (TolerancePropagation.Result silent : new TolerancePropagation.Result[] {
            PROPAGATION.linear(s, Tolerances.none()),
            PROPAGATION.simulated(s, Tolerances.none(), 100, new SplittableRandom(1L)),
            PROPAGATION.betweenBalls(fairway, drive, 100, new SplittableRandom(1L))
        }) {
            assertTrue(silent.warnings().stream().anyMatch(w -> w.code().equals("turf-taken-as-known")));
        }
        NormalDistribution normal = new NormalDistribution(0.0, 1.0);
        double sum = 0.0;
        double squares = 0.0;
        for (int i = 0; i < 400; i++) {
            double total = totalOn(drive, normal.inverseCumulativeProbability((i + 0.5) / 400.0));
            sum += total / 400.0;
            squares += total * total / 400.0;
        }
        double sd = Math.sqrt(squares - sum * sum);
        TolerancePropagation known = PROPAGATION.withTurfSpread(TurfSpread.typical());
        TolerancePropagation.Result simulated = known.simulated(s, Tolerances.none(), 2_000, new SplittableRandom(2L));
        // 2,000 draws give a standard deviation to 1.6 percent, one standard error.
        assertEquals(1.0, simulated.standardDeviation(FlightOutput.TOTAL) / sd, 0.07);
        assertEquals(0.0, simulated.standardDeviation(FlightOutput.CARRY), 1e-9);
        TolerancePropagation.Result linear = known.linear(s, Tolerances.none());
        double root = Math.sqrt(3.0);
        assertEquals(
                (totalOn(drive, root) - totalOn(drive, -root)) / (2.0 * root),
                linear.standardDeviation(FlightOutput.TOTAL),
                1e-9);
        assertEquals(0.0, linear.standardDeviation(FlightOutput.CARRY), 1e-9);
        for (TolerancePropagation.Result result : new TolerancePropagation.Result[] {simulated, linear}) {
            assertTrue(result.warnings().stream().noneMatch(w -> w.code().equals("turf-taken-as-known")));
        }
    }

    private static double totalOn(LaunchConditions launch, double firmness) {
        Turf turf = TurfClass.FAIRWAY
                .turf()
                .withRestitutionFactor(Math.exp(0.15 * firmness))
                .withTiltFactor(Math.exp(-0.12 * firmness))
                .withRollingResistance(0.131 * Math.exp(-0.18 * firmness));
        return FlightModel.standard()
                .withGround(Ground.of(turf))
                .fly(launch)
                .total()
                .orElseThrow()
                .meters();
    }

    @Test
    void rangesAreKept() {
        Sensitivity.Result s = Sensitivity.of(FlightModel.standard()).at(launch(52.0, 17.0, 0.0, 100.0, 0.0));
        Tolerances wide = Tolerances.none().with(FlightInput.SPIN_RATE, 50.0);
        assertTrue(PROPAGATION.linear(s, wide).warnings().stream()
                .anyMatch(w -> w.code().equals("linearization-fails")));
        assertTrue(PROPAGATION.simulated(s, wide, 200, new SplittableRandom(1L)).warnings().stream()
                .anyMatch(w -> w.code().equals("draws-without-a-flight")));
        TolerancePropagation.Result exact = PROPAGATION.linear(s, Tolerances.none());
        assertEquals(0.0, exact.standardDeviation(FlightOutput.CARRY), 0.0);
        assertFalse(exact.toString().isEmpty());
    }

    @Test
    void wrongInputIsRefused() {
        Tolerances t = Tolerances.none()
                .with(FlightInput.BALL_SPEED, 1.0)
                .with(FlightInput.LAUNCH_ANGLE, 0.1)
                .with(FlightInput.SPIN_RATE, 10.0);
        assertThrows(IllegalArgumentException.class, () -> t.with(FlightInput.AXIS_TILT, 0.0));
        assertThrows(IllegalArgumentException.class, () -> t.with(FlightInput.AXIS_TILT, Double.NaN));
        assertThrows(
                IllegalArgumentException.class,
                () -> t.withCorrelation(FlightInput.BALL_SPEED, FlightInput.AXIS_TILT, 0.1));
        assertThrows(
                IllegalArgumentException.class,
                () -> t.withCorrelation(FlightInput.BALL_SPEED, FlightInput.BALL_SPEED, 1.0));
        assertThrows(
                IllegalArgumentException.class,
                () -> t.withCorrelation(FlightInput.BALL_SPEED, FlightInput.SPIN_RATE, 1.1));
        // 0.9, 0.9 and -0.9 cannot be: the determinant is 1 - 3 (0.81) - 2 (0.729) < 0.
        assertThrows(
                IllegalArgumentException.class,
                () -> t.withCorrelation(FlightInput.BALL_SPEED, FlightInput.LAUNCH_ANGLE, 0.9)
                        .withCorrelation(FlightInput.LAUNCH_ANGLE, FlightInput.SPIN_RATE, 0.9)
                        .withCorrelation(FlightInput.BALL_SPEED, FlightInput.SPIN_RATE, -0.9));
        assertThrows(IllegalArgumentException.class, () -> PROPAGATION.withLevel(1.0));
        assertEquals(0.0, t.standardDeviation(FlightInput.GRAVITY), 0.0);
        Sensitivity.Result s = Sensitivity.of(FlightModel.standard()).at(launch(52.0, 17.0, 0.0, 6_000.0, 0.0));
        assertThrows(IllegalArgumentException.class, () -> PROPAGATION.simulated(s, t, 10, new SplittableRandom(1L)));
        assertThrows(IllegalArgumentException.class, () -> PROPAGATION.linear(s, t.with(FlightInput.HUMIDITY, 0.1)));
    }

    /** A device's tolerances in SI: 0.5 mph is 0.22352 m/s, 150 rpm are 5 pi rad/s. */
    @Test
    void theTolerancesOfALaunchAreThoseOfTheDevice() {
        Tolerances device = Tolerances.of(LaunchTolerance.typical().withAxisTilt(Angle.ofDegrees(0.0)));
        assertEquals(0.22352, device.standardDeviation(FlightInput.BALL_SPEED), 1e-12);
        assertEquals(Math.toRadians(0.3), device.standardDeviation(FlightInput.LAUNCH_ANGLE), 1e-12);
        assertEquals(Math.toRadians(0.3), device.standardDeviation(FlightInput.START_DIRECTION), 1e-12);
        assertEquals(5.0 * Math.PI, device.standardDeviation(FlightInput.SPIN_RATE), 1e-12);
        assertEquals(4, device.inputs().size());
    }
}
