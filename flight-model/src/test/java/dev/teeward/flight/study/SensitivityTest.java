package dev.teeward.flight.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.flight.Ball;
import dev.teeward.flight.FlightModel;
import dev.teeward.flight.LaunchConditions;
import dev.teeward.flight.aero.AerodynamicModel;
import dev.teeward.flight.air.AirState;
import dev.teeward.flight.air.Atmosphere;
import dev.teeward.flight.air.Wind;
import dev.teeward.flight.ground.Ground;
import dev.teeward.flight.ground.Terrain;
import dev.teeward.flight.ground.TurfClass;
import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Length;
import dev.teeward.quantity.LengthUnit;
import dev.teeward.quantity.Mass;
import dev.teeward.quantity.Pressure;
import dev.teeward.quantity.Speed;
import dev.teeward.quantity.SpeedUnit;
import dev.teeward.quantity.SpinRate;
import dev.teeward.quantity.Temperature;
import dev.teeward.quantity.TemperatureUnit;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;
import org.hipparchus.analysis.differentiation.Gradient;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Derivatives against automatic differentiation through a second writing of the equations, and against closed forms. */
class SensitivityTest {
    /** What was asked of them: the share of the derivative, or of 1/1000 of its natural scale. */
    private static final double BOUND = 1e-6;

    static LaunchConditions launch(double mps, double up, double right, double rpm, double tilt) {
        return LaunchConditions.builder()
                .ballSpeed(Speed.ofMetersPerSecond(mps))
                .launchAngle(Angle.ofDegrees(up))
                .startDirection(Angle.ofDegrees(right))
                .spinRate(SpinRate.ofRpm(rpm))
                .axisTilt(Angle.ofDegrees(tilt))
                .build();
    }

    @Test
    void derivativesOfRandomFlightsAreThoseOfAutomaticDifferentiation() {
        assertTrue(worst(1L, 8) <= BOUND);
    }

    @Test
    @Tag("sweep")
    void derivativesOfManyRandomFlights() {
        double worst = worst(2L, 300);
        System.out.printf(Locale.ROOT, "worst derivative: %.3g of its size%n", worst);
        assertTrue(worst <= BOUND, () -> "worst " + worst);
    }

    private static double worst(long seed, int flights) {
        SplittableRandom random = new SplittableRandom(seed);
        double worst = 0.0;
        for (int n = 0; n < flights; n++) {
            LaunchConditions launch = launch(
                    random.nextDouble(25.0, 80.0),
                    random.nextDouble(8.0, 40.0),
                    random.nextDouble(-8.0, 8.0),
                    random.nextDouble(1_500.0, 10_000.0),
                    random.nextDouble(-20.0, 20.0));
            double along = random.nextDouble(-8.0, 8.0);
            double right = random.nextDouble(-8.0, 8.0);
            FlightModel model = FlightModel.of(Ball.standard()
                            .withMass(Mass.ofGrams(random.nextDouble(44.0, 46.0)))
                            .withInertiaFactor(random.nextDouble(0.36, 0.44)))
                    .withAir(AirState.of(random.nextDouble(0.9, 1.3), 1.8e-5))
                    .withWind(Wind.from(
                            Angle.ofRadians(Math.atan2(-right, -along)),
                            Speed.ofMetersPerSecond(Math.hypot(along, right))))
                    .withLandingElevation(Length.ofMeters(random.nextDouble(-5.0, 2.0)));
            worst = Math.max(worst, worst(model, launch, along, right));
        }
        return worst;
    }

    private static double worst(FlightModel model, LaunchConditions launch, double along, double right) {
        Sensitivity.Result ours = Sensitivity.of(model).at(launch);
        double[] values = new double[VariationalFlight.INPUTS.length];
        for (int i = 0; i < values.length; i++) {
            values[i] = ours.situation().value(VariationalFlight.INPUTS[i]);
        }
        values[7] = along;
        values[8] = right;
        ReferenceFlight.Result flight = ReferenceFlight.withDefaults().fly(model, launch);
        Gradient[] theirs =
                new VariationalFlight(values).outputs(flight.value(FlightOutput.FLIGHT_TIME), flight.apexTimeSeconds());
        double worst = 0.0;
        for (FlightOutput output : FlightOutput.of(FlightModel.standard())) {
            assertEquals(theirs[output.place()].getValue(), ours.value(output), 1e-8 * output.scale());
            for (int i = 0; i < values.length; i++) {
                FlightInput input = VariationalFlight.INPUTS[i];
                double expected = theirs[output.place()].getPartialDerivative(i);
                double size = Math.max(Math.abs(expected), 1e-3 * output.scale() / input.scale());
                worst = Math.max(worst, Math.abs(ours.derivative(output, input) - expected) / size);
            }
        }
        return worst;
    }

    /** Temperature, pressure and humidity: the chain rule over density and viscosity, whose derivatives are simple sums. */
    @Test
    void airDerivativesFollowFromDensityAndViscosity() {
        Atmosphere air =
                Atmosphere.ofStationPressure(Pressure.ofHectopascals(840.0), Temperature.ofCelsius(24.0), 0.35);
        Sensitivity.Result s =
                Sensitivity.of(FlightModel.standard()).withAtmosphere(air).at(launch(52.0, 17.0, 1.0, 6_000.0, 5.0));
        check(
                s,
                FlightInput.TEMPERATURE,
                297.15,
                0.02,
                t -> air.withTemperature(Temperature.ofKelvins(t)).state());
        check(
                s,
                FlightInput.PRESSURE,
                84_000.0,
                10.0,
                p -> Atmosphere.ofStationPressure(Pressure.ofPascals(p), air.temperature(), air.relativeHumidity())
                        .state());
        check(
                s,
                FlightInput.HUMIDITY,
                0.35,
                1e-3,
                h -> air.withRelativeHumidity(h).state());
    }

    private interface Air {
        AirState at(double value);
    }

    private static void check(Sensitivity.Result s, FlightInput input, double at, double h, Air air) {
        double density = slope(x -> air.at(x).density(), at, h);
        double viscosity = slope(x -> air.at(x).dynamicViscosity(), at, h);
        for (FlightOutput output : FlightOutput.of(FlightModel.standard())) {
            double expected = density * s.derivative(output, FlightInput.AIR_DENSITY)
                    + viscosity * s.derivative(output, FlightInput.AIR_VISCOSITY);
            double size = Math.max(Math.abs(expected), 1e-3 * output.scale() / input.scale());
            assertEquals(expected, s.derivative(output, input), BOUND * size, output + " to " + input);
        }
    }

    private static double slope(DoubleUnaryOperator f, double x, double h) {
        return (8.0 * (f.applyAsDouble(x + h) - f.applyAsDouble(x - h))
                        - (f.applyAsDouble(x + 2 * h) - f.applyAsDouble(x - 2 * h)))
                / (12.0 * h);
    }

    /** Closed form: in a vacuum the carry is v^2 sin(2a)/g, the time 2 v sin(a)/g, the apex (v sin(a))^2/2g. */
    @Test
    void vacuumHasClosedForms() {
        double v = 40.0;
        double a = Math.toRadians(30.0);
        double g = 9.80665;
        Sensitivity.Result s = Sensitivity.of(FlightModel.standard().withAir(AirState.of(0.0, 1.8e-5)))
                .at(launch(v, 30.0, 0.0, 0.0, 0.0));
        assertEquals(2 * v * Math.sin(2 * a) / g, s.derivative(FlightOutput.CARRY, FlightInput.BALL_SPEED), 1e-7);
        assertEquals(2 * v * v * Math.cos(2 * a) / g, s.derivative(FlightOutput.CARRY, FlightInput.LAUNCH_ANGLE), 1e-5);
        assertEquals(-v * v * Math.sin(2 * a) / (g * g), s.derivative(FlightOutput.CARRY, FlightInput.GRAVITY), 1e-7);
        assertEquals(v * Math.sin(a) * Math.sin(a) / g, s.derivative(FlightOutput.APEX, FlightInput.BALL_SPEED), 1e-7);
        assertEquals(2 * v * Math.cos(a) / g, s.derivative(FlightOutput.FLIGHT_TIME, FlightInput.LAUNCH_ANGLE), 1e-6);
        assertEquals(0.0, s.derivative(FlightOutput.CARRY, FlightInput.SPIN_RATE), 1e-9);
        assertTrue(s.warnings().isEmpty(), () -> s.warnings().toString());
    }

    @Test
    void unitsOfOnesOwn() {
        Atmosphere air = Atmosphere.standardAt(Length.ofMeters(1_600.0));
        Sensitivity.Result s =
                Sensitivity.of(FlightModel.standard()).withAtmosphere(air).at(launch(52.0, 17.0, 0.0, 6_000.0, 0.0));
        assertTrue(s.inputs().contains(FlightInput.HUMIDITY), "one-sided where the air is dry");
        double perMph =
                s.derivative(FlightOutput.CARRY, LengthUnit.YARD, FlightInput.BALL_SPEED, SpeedUnit.MILE_PER_HOUR);
        assertEquals(
                s.derivative(FlightOutput.CARRY, FlightInput.BALL_SPEED) * 0.44704 / 0.9144, perMph, 1e-9 * perMph);
        double perDegree =
                s.derivative(FlightOutput.CARRY, LengthUnit.METER, FlightInput.TEMPERATURE, TemperatureUnit.FAHRENHEIT);
        assertEquals(s.derivative(FlightOutput.CARRY, FlightInput.TEMPERATURE) / 1.8, perDegree, 1e-9);
        // Common practice, no source: between 1 and 2 yd of a full shot for 10 F.
        Sensitivity.Result drive = Sensitivity.of(FlightModel.standard())
                .withAtmosphere(Atmosphere.seaLevel())
                .at(launch(75.0, 11.0, 0.0, 2_600.0, 0.0));
        double yards = 10.0
                * drive.derivative(
                        FlightOutput.CARRY, LengthUnit.YARD, FlightInput.TEMPERATURE, TemperatureUnit.FAHRENHEIT);
        assertTrue(yards > 1.0 && yards < 2.0, () -> yards + " yd for 10 F");
        assertThrows(
                IllegalArgumentException.class,
                () -> s.derivative(FlightOutput.CARRY, LengthUnit.YARD, FlightInput.BALL_SPEED, LengthUnit.METER));
        assertThrows(
                IllegalArgumentException.class,
                () -> s.derivative(FlightOutput.CARRY, SpeedUnit.KNOT, FlightInput.BALL_SPEED, SpeedUnit.KNOT));
    }

    @Test
    void airNeedsTheAtmosphereAndAFlightMustRise() {
        Sensitivity plain = Sensitivity.of(FlightModel.standard());
        Sensitivity.Result s = plain.at(launch(52.0, 17.0, 0.0, 6_000.0, 0.0));
        assertFalse(s.inputs().contains(FlightInput.TEMPERATURE));
        IllegalArgumentException e = assertThrows(
                IllegalArgumentException.class, () -> s.derivative(FlightOutput.CARRY, FlightInput.TEMPERATURE));
        assertTrue(e.getMessage().contains("withAtmosphere"), e.getMessage());
        assertThrows(IllegalArgumentException.class, () -> plain.at(launch(52.0, -3.0, 0.0, 6_000.0, 0.0)));
    }

    @Test
    void aKinkIsSaid() {
        // Lift that sets in at a threshold: the launch sits on the kink.
        AerodynamicModel kinked = new AerodynamicModel() {
            @Override
            public double dragCoefficient(double re, double s) {
                return 0.25;
            }

            @Override
            public double liftCoefficient(double re, double s) {
                return re > 1.5e5 ? 0.3 : 0.1;
            }
        };
        Sensitivity.Result s = Sensitivity.of(FlightModel.of(Ball.of(kinked)))
                .at(launch(1.5e5 * 1.7894e-5 / (1.225 * 0.04267), 15.0, 0.0, 3_000.0, 0.0));
        assertTrue(
                s.warnings().stream().anyMatch(w -> w.code().equals("derivative-not-smooth")),
                () -> s.warnings().toString());
    }

    /**
     * On a plane that does not tilt, a terrain is the same as level ground; and a total is carry plus run, so that their
     * derivatives add. The total's own are compared with differences over a hundred times the step, whose error is the
     * curvature and the jumps of the run.
     */
    @Test
    void totalAndRunAreDifferentiatedThroughTheRunOnGround() {
        LaunchConditions drive = launch(70.0, 13.0, 1.0, 2_600.0, 3.0);
        FlightModel level = FlightModel.standard().withGround(Ground.of(TurfClass.FAIRWAY));
        FlightModel plane = FlightModel.standard()
                .withGround(Ground.of(TurfClass.FAIRWAY)
                        .withTerrain(Terrain.plane(Angle.ofDegrees(0.0), Angle.ofDegrees(0.0))));
        Sensitivity.Result a = Sensitivity.of(level).at(drive);
        Sensitivity.Result b = Sensitivity.of(plane).at(drive);
        assertTrue(a.inputs().contains(FlightInput.LANDING_ELEVATION));
        assertFalse(b.inputs().contains(FlightInput.LANDING_ELEVATION));
        IllegalArgumentException e = assertThrows(
                IllegalArgumentException.class, () -> b.derivative(FlightOutput.CARRY, FlightInput.LANDING_ELEVATION));
        assertTrue(e.getMessage().contains("terrain"), e.getMessage());
        for (FlightInput input : b.inputs()) {
            assertEquals(
                    a.derivative(FlightOutput.CARRY, input),
                    b.derivative(FlightOutput.CARRY, input),
                    1e-6 * Math.max(1.0, Math.abs(a.derivative(FlightOutput.CARRY, input))),
                    input.key());
            double total = a.derivative(FlightOutput.TOTAL, input);
            assertEquals(
                    total,
                    a.derivative(FlightOutput.CARRY, input) + a.derivative(FlightOutput.RUN, input),
                    1e-6 * Math.max(1.0, Math.abs(total)),
                    input.key());
        }
        double up = level.fly(launch(70.4, 13.0, 1.0, 2_600.0, 3.0))
                .total()
                .orElseThrow()
                .meters();
        double down = level.fly(launch(69.6, 13.0, 1.0, 2_600.0, 3.0))
                .total()
                .orElseThrow()
                .meters();
        assertEquals((up - down) / 0.8, a.derivative(FlightOutput.TOTAL, FlightInput.BALL_SPEED), 0.1);
        assertEquals(level.fly(drive).total().orElseThrow().meters(), a.value(FlightOutput.TOTAL), 5e-3);
        Sensitivity.Result none = Sensitivity.of(FlightModel.standard()).at(drive);
        assertThrows(IllegalArgumentException.class, () -> none.derivative(FlightOutput.RUN, FlightInput.BALL_SPEED));
        assertThrows(IllegalArgumentException.class, () -> none.value(FlightOutput.TOTAL));
    }

    @Test
    void aTotalThatIsNotKnownIsNotDifferentiated() {
        FlightModel model = FlightModel.standard()
                .withLandingElevation(Length.ofMeters(-0.5))
                .withGround(Ground.of(TurfClass.FAIRWAY));
        Sensitivity.Result s = Sensitivity.of(model).at(launch(44.7, -3.0, 0.0, 2_000.0, 0.0));
        assertFalse(s.outputs().contains(FlightOutput.TOTAL));
        assertTrue(s.derivative(FlightOutput.CARRY, FlightInput.BALL_SPEED) > 0.0);
        IllegalArgumentException e = assertThrows(
                IllegalArgumentException.class, () -> s.derivative(FlightOutput.TOTAL, FlightInput.BALL_SPEED));
        assertTrue(e.getMessage().contains("bounce-outside-model"), e.getMessage());
    }

    /** A fold in the ground under the landing: the bounce changes there from one slope to another, and the derivatives say so. */
    @Test
    void aFoldInTheGroundIsSaid() {
        LaunchConditions iron = launch(52.0, 17.0, 0.0, 6_400.0, 0.0);
        double carry = FlightModel.standard().fly(iron).carry().meters();
        Terrain fold = (x, z) -> x < carry ? 0.0 : 0.5 * (x - carry);
        Sensitivity.Result s = Sensitivity.of(FlightModel.standard()
                        .withGround(Ground.of(TurfClass.FAIRWAY).withTerrain(fold)))
                .at(iron);
        assertTrue(
                s.warnings().stream()
                        .anyMatch(w -> w.code().equals("derivative-not-smooth")
                                && w.message().contains("total to ball_speed")),
                () -> s.warnings().toString());
    }
}
