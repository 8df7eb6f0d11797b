package dev.teeward.flight.batch;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.flight.Accuracy;
import dev.teeward.flight.Ball;
import dev.teeward.flight.FlightModel;
import dev.teeward.flight.air.AirState;
import dev.teeward.flight.air.Roughness;
import dev.teeward.flight.air.WindProfile;
import dev.teeward.flight.batch.FlightDerivatives.Input;
import dev.teeward.flight.batch.FlightDerivatives.Output;
import dev.teeward.flight.batch.RandomLaunches.Sample;
import dev.teeward.flight.ground.Terrain;
import dev.teeward.flight.internal.FlightEquations;
import dev.teeward.flight.internal.Referee;
import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Length;
import dev.teeward.quantity.Speed;
import org.junit.jupiter.api.Test;

class FlightDerivativesTest {
    /** Without air: carry = v^2 sin(2 a) / g, time = 2 v sin(a) / g, apex = (v sin a)^2 / (2 g). */
    @Test
    void inAVacuumTheyAreThoseOfTheParabola() {
        FlightModel vacuum = FlightModel.standard().withAir(AirState.of(0.0, 1.8e-5));
        double v = 50.0;
        double a = 0.4;
        double right = 0.05;
        double g = 9.80665;
        FlightDerivatives.Result result = FlightDerivatives.of(vacuum)
                .differentiate(LaunchTable.builder()
                        .ballSpeed(new double[] {v})
                        .launchAngle(new double[] {a})
                        .startDirection(new double[] {right})
                        .spinRate(new double[] {300.0})
                        .build());
        assertTrue(result.known(0));
        // The differences are exact for quadratics; of the sines they leave out d^2/6 of the third derivative, 3e-8 of
        // it.
        assertEquals(2.0 * v * Math.sin(2.0 * a) / g, result.of(Output.CARRY, Input.BALL_SPEED)[0], 1e-8);
        assertEquals(2.0 * v * v * Math.cos(2.0 * a) / g, result.of(Output.CARRY, Input.LAUNCH_ANGLE)[0], 3e-5);
        double carry = v * v * Math.sin(2.0 * a) / g;
        assertEquals(carry * Math.cos(right), result.of(Output.SIDE, Input.START_DIRECTION)[0], 1e-5);
        assertEquals(0.0, result.of(Output.CURVE, Input.START_DIRECTION)[0], 1e-6);
        assertEquals(2.0 * Math.sin(a) / g, result.of(Output.FLIGHT_TIME, Input.BALL_SPEED)[0], 1e-9);
        assertEquals(v * Math.sin(a) * Math.sin(a) / g, result.of(Output.APEX, Input.BALL_SPEED)[0], 1e-8);
        assertEquals(0.0, result.of(Output.CARRY, Input.SPIN_RATE)[0], 1e-9);
        assertEquals(0.0, result.of(Output.CARRY, Input.HEAD_WIND)[0], 1e-8);
        assertEquals(1.0, result.of(Output.DESCENT_ANGLE, Input.LAUNCH_ANGLE)[0], 1e-6);
    }

    /** Against single flights at the default accuracy, four steps of other sizes extrapolated to 0 (Richardson). */
    @Test
    void theyAgreeWithFinerDifferencesOfSingleFlights() {
        RandomLaunches drawn = new RandomLaunches(Sample.ALONG_THE_BAG, 200, 21L);
        FlightModel model = FlightModel.standard();
        FlightDerivatives.Result result =
                FlightDerivatives.of(model).differentiate(drawn.launches().build());
        double largest = 0.0;
        double off = 0.0;
        int compared = 0;
        for (int row = 0; row < 200; row++) {
            if (!result.known(row) || drawn.up[row] < 0.02 || drawn.spin[row] < 1.0) {
                continue;
            }
            compared++;
            double slope = result.of(Output.CARRY, Input.SPIN_RATE)[row];
            double fine = (4.0 * slope(model, drawn, row, 0.4) - slope(model, drawn, row, 0.8)) / 3.0;
            largest = Math.max(largest, Math.abs(slope));
            off = Math.max(off, Math.abs(slope - fine));
        }
        assertTrue(compared > 150);
        assertTrue(off < 1e-5 * largest, "off by " + off + " of " + largest);
    }

    private static double slope(FlightModel model, RandomLaunches drawn, int row, double step) {
        double was = drawn.spin[row];
        drawn.spin[row] = was + step;
        double high = model.fly(drawn.launch(row)).carry().meters();
        drawn.spin[row] = was - step;
        double low = model.fly(drawn.launch(row)).carry().meters();
        drawn.spin[row] = was;
        return (high - low) / (2.0 * step);
    }

    /**
     * A table with kinks, whose steps jump: against differences over the same distance between landings by Hipparchus 8(5,3) at
     * tolerance 1e-11. In calm air the carry does not depend on the start direction.
     */
    @Test
    void withKinksTheyAreRougher() {
        RandomLaunches drawn = new RandomLaunches(Sample.ALONG_THE_BAG, 200, 21L);
        FlightModel kinked = FlightModel.of(Ball.of(new BilinearTable()));
        double[] reference = new double[200];
        double largest = 0.0;
        double step = Input.BALL_SPEED.step();
        for (int row = 0; row < 200; row++) {
            double high = carry(kinked, drawn, row, drawn.speed[row] + step);
            reference[row] = (high - carry(kinked, drawn, row, drawn.speed[row] - step)) / (2.0 * step);
            largest = Math.max(largest, Math.abs(reference[row]));
        }
        for (Accuracy accuracy : Accuracy.values()) {
            FlightDerivatives.Result result = FlightDerivatives.of(kinked.withAccuracy(accuracy))
                    .differentiate(drawn.launches().build());
            double off = 0.0;
            int compared = 0;
            for (int row = 0; row < 200; row++) {
                if (result.known(row) && drawn.up[row] >= 0.02) {
                    off = Math.max(off, Math.abs(result.of(Output.CARRY, Input.BALL_SPEED)[row] - reference[row]));
                    compared++;
                }
            }
            assertTrue(compared > 150);
            double limit = accuracy == Accuracy.MILLIMETER ? 3e-3 : 5e-4;
            assertTrue(off < limit * largest, accuracy + " off by " + off + " of " + largest);
        }
    }

    private static double carry(FlightModel model, RandomLaunches drawn, int row, double speed) {
        double up = drawn.up[row];
        double tilt = drawn.tilt[row];
        double[] launch = new double[FlightEquations.STATE];
        launch[FlightEquations.VX] = speed * Math.cos(up);
        launch[FlightEquations.VY] = speed * Math.sin(up);
        launch[FlightEquations.SPIN] = drawn.spin[row];
        double[] axis = {Math.sin(tilt) * Math.sin(up), -Math.sin(tilt) * Math.cos(up), Math.cos(tilt)};
        FlightEquations equations = SingleFlights.equations(
                model, model.air().density(), model.air().dynamicViscosity(), model.wind());
        Terrain level = Terrain.level(Length.ofMeters(0.0));
        double[] landing = new Referee(equations, launch, axis, level, false).landing();
        return Math.hypot(landing[FlightEquations.X], landing[FlightEquations.Z]);
    }

    @Test
    void columnsAreKeptAndThreadsDoNotMatter() {
        RandomLaunches drawn = new RandomLaunches(Sample.EVEN, 5_000, 22L);
        LaunchTable table = drawn.launches()
                .landingElevation(drawn.elevation)
                .density(drawn.density)
                .viscosity(drawn.viscosity)
                .windAlongTarget(drawn.along)
                .windTowardsRight(drawn.across)
                .build();
        FlightDerivatives one = FlightDerivatives.of(FlightModel.standard());
        FlightDerivatives.Result result = one.differentiate(table);
        assertArrayEquals(
                result.of(Output.CARRY, Input.HEAD_WIND),
                one.withThreads(3).differentiate(table).of(Output.CARRY, Input.HEAD_WIND));
        int known = 0;
        for (int row = 0; row < 5_000; row++) {
            known += result.known(row) ? 1 : 0;
            assertEquals(result.known(row), Double.isFinite(result.of(Output.APEX, Input.BALL_SPEED)[row]));
        }
        assertTrue(known > 3_000 && known < 5_000, "some miss their elevation: " + known);
        FlightTable flights = FlightBatch.of(FlightModel.standard()).fly(table);
        assertTrue(flights.landed() >= known);
    }

    @Test
    void endsOfRangesAreDifferencedToTheInside() {
        FlightDerivatives.Result result = FlightDerivatives.of(FlightModel.standard())
                .differentiate(LaunchTable.builder()
                        .ballSpeed(new double[] {110.0})
                        .launchAngle(new double[] {0.3})
                        .spinRate(new double[] {0.0})
                        .build());
        assertTrue(result.known(0));
        assertTrue(result.of(Output.CARRY, Input.SPIN_RATE)[0] > 0.0);
        assertTrue(result.of(Output.CARRY, Input.BALL_SPEED)[0] > 0.0);
        assertTrue(result.of(Output.CARRY, Input.HEAD_WIND)[0] < 0.0);
        assertFalse(result.toString().isEmpty());
        assertThrows(
                IllegalArgumentException.class,
                () -> FlightDerivatives.of(FlightModel.standard()).withThreads(1025));
        assertThrows(
                IllegalArgumentException.class,
                () -> FlightDerivatives.of(FlightModel.standard()
                        .withWind(WindProfile.logLaw(
                                Angle.ofDegrees(0.0), Speed.ofMetersPerSecond(5.0), Roughness.OPEN))));
    }
}
