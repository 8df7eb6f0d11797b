package dev.teeward.flight;

import static dev.teeward.quantity.Units.degrees;
import static dev.teeward.quantity.Units.meters;
import static dev.teeward.quantity.Units.metersPerSecond;
import static dev.teeward.quantity.Units.mph;
import static dev.teeward.quantity.Units.rpm;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.flight.aero.AerodynamicModel;
import dev.teeward.flight.aero.ModelDomain;
import dev.teeward.flight.air.AirState;
import dev.teeward.flight.air.Wind;
import dev.teeward.flight.internal.RationalAerodynamics;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class FlightModelTest {
    private static final double G = 9.80665;
    private static final FlightModel MODEL = FlightModel.of(Ball.of(new RationalAerodynamics()));
    private static final FlightModel VACUUM = MODEL.withAir(AirState.of(0.0, 1.8e-5));

    private static LaunchConditions launch(double mps, double up, double right, double rpm, double tilt) {
        return LaunchConditions.builder()
                .ballSpeed(metersPerSecond(mps))
                .launchAngle(degrees(up))
                .startDirection(degrees(right))
                .spinRate(rpm(rpm))
                .axisTilt(degrees(tilt))
                .build();
    }

    private static AerodynamicModel constant(double drag, double lift) {
        return new AerodynamicModel() {
            @Override
            public double dragCoefficient(double re, double s) {
                return drag;
            }

            @Override
            public double liftCoefficient(double re, double s) {
                return lift;
            }
        };
    }

    /** Closed form: x = v cos t, y = v sin t - g t^2/2; spin and wind have nothing to act through. */
    @Test
    void inAVacuumTheBallFliesAParabola() {
        double v = 60.0;
        for (double up : new double[] {5.0, 20.0, 45.0, 80.0}) {
            for (double elevation : new double[] {-20.0, 0.0, 1.0}) {
                Flight flight = VACUUM.withWind(Wind.from(degrees(70.0), mph(20.0)))
                        .withLandingElevation(meters(elevation))
                        .fly(launch(v, up, 0.0, 6000.0, 15.0));
                double vy = v * Math.sin(Math.toRadians(up));
                double vx = v * Math.cos(Math.toRadians(up));
                double time = (vy + Math.sqrt(vy * vy - 2.0 * G * elevation)) / G;
                assertEquals(time, flight.flightTimeSeconds(), 1e-9);
                assertEquals(vx * time, flight.carry().meters(), 1e-9);
                assertEquals(vy * vy / (2.0 * G), flight.apex().meters(), 1e-9);
                assertEquals(vy / G, flight.apexTimeSeconds(), 1e-9);
                assertEquals(vx * vy / G, flight.apexDistance().meters(), 1e-9);
                assertEquals(0.0, flight.side().meters(), 1e-9);
                assertEquals(6000.0, flight.landingSpin().rpm(), 1e-9);
                assertEquals(
                        Math.toDegrees(Math.atan2(G * time - vy, vx)),
                        flight.descentAngle().degrees(),
                        1e-9);
                double half = time / 2.0;
                assertEquals(
                        vy * half - G * half * half / 2.0,
                        flight.trajectory().at(half).height().meters(),
                        1e-9);
            }
        }
    }

    /** Closed form for a fall with quadratic drag: v = vt tanh(g t/vt), y = vt^2/g ln cosh(g t/vt). */
    @Test
    void aFallWithQuadraticDragFollowsTheClosedForm() {
        Ball ball = Ball.of(constant(0.5, 0.0));
        double area = Math.PI * Math.pow(ball.diameter().meters() / 2.0, 2.0);
        double terminal = Math.sqrt(2.0 * ball.mass().kilograms() * G / (1.225 * area * 0.5));
        double depth = 200.0;
        // Thrown upwards, the ball rises for vt/g atan(v/vt) and vt^2/(2g) ln(1 + v^2/vt^2) before it falls.
        double v = 10.0;
        double rise = terminal * terminal / (2.0 * G) * Math.log1p(v * v / (terminal * terminal));
        double riseTime = terminal / G * Math.atan(v / terminal);
        double x = Math.exp((rise + depth) * G / (terminal * terminal));
        double fallTime = terminal / G * Math.log(x + Math.sqrt(x * x - 1.0));
        Flight flight = MODEL.withBall(ball)
                .withAir(AirState.of(1.225, 1.8e-5))
                .withLandingElevation(meters(-depth))
                .fly(launch(v, 90.0, 0.0, 0.0, 0.0));
        assertEquals(rise, flight.apex().meters(), 1e-6);
        assertEquals(riseTime + fallTime, flight.flightTimeSeconds(), 1e-6);
        assertEquals(
                terminal * Math.tanh(G * fallTime / terminal),
                flight.landingSpeed().metersPerSecond(),
                1e-6);
        assertEquals(90.0, flight.descentAngle().degrees(), 1e-6);
    }

    @Test
    void mirroredLaunchesFlyMirroredBitForBit() {
        SplittableRandom random = new SplittableRandom(7L);
        for (int i = 0; i < 500; i++) {
            double mps = random.nextDouble(5.0, 90.0);
            double up = random.nextDouble(1.0, 89.0);
            double right = random.nextDouble(-80.0, 80.0);
            double rpm = random.nextDouble(0.0, 12_000.0);
            double tilt = random.nextDouble(-170.0, 170.0);
            double from = random.nextDouble(-180.0, 180.0);
            FlightModel one = MODEL.withWind(Wind.from(degrees(from), metersPerSecond(6.0)));
            FlightModel other = MODEL.withWind(Wind.from(degrees(-from), metersPerSecond(6.0)));
            Flight a = one.fly(launch(mps, up, right, rpm, tilt));
            Flight b = other.fly(launch(mps, up, -right, rpm, -tilt));
            assertEquals(a.carry(), b.carry());
            assertEquals(a.side().meters(), 0.0 - b.side().meters());
            assertEquals(a.curve().meters(), 0.0 - b.curve().meters());
            assertEquals(a.apex(), b.apex());
            assertEquals(a.flightTimeSeconds(), b.flightTimeSeconds());
            assertEquals(
                    a.landingDirection().radians(), 0.0 - b.landingDirection().radians());
            assertEquals(a.descentAngle(), b.descentAngle());
            assertEquals(a.landingSpin(), b.landingSpin());
        }
    }

    @Test
    void positiveTiltCurvesRightAndBackspinLifts() {
        Flight straight = MODEL.fly(launch(60.0, 15.0, 0.0, 4000.0, 0.0));
        Flight fade = MODEL.fly(launch(60.0, 15.0, 0.0, 4000.0, 10.0));
        assertEquals(0.0, straight.side().meters());
        assertTrue(fade.side().meters() > 5.0, () -> "side " + fade.side());
        assertTrue(MODEL.fly(launch(60.0, 15.0, 0.0, 0.0, 0.0)).apex().meters()
                < straight.apex().meters());
        assertTrue(MODEL.fly(launch(60.0, 15.0, 0.0, 4000.0, 180.0)).carry().meters()
                < straight.carry().meters() / 2.0);
    }

    /** Turning the start direction turns the whole flight, when there is no wind to tell the directions apart. */
    @Test
    void curveIsMeasuredFromTheStartDirection() {
        Flight ahead = MODEL.fly(launch(60.0, 15.0, 0.0, 4000.0, 10.0));
        Flight turned = MODEL.fly(launch(60.0, 15.0, 6.0, 4000.0, 10.0));
        assertEquals(ahead.side().meters(), ahead.curve().meters(), 1e-12);
        assertEquals(ahead.curve().meters(), turned.curve().meters(), 1e-9);
        assertEquals(ahead.carry().meters(), turned.carry().meters(), 1e-9);
        assertTrue(turned.side().meters() > ahead.side().meters());
        assertEquals(6.0, turned.startDirection().degrees(), 1e-12);
        assertEquals(
                ahead.landingDirection().degrees() + 6.0,
                turned.landingDirection().degrees(),
                1e-9);
    }

    @Test
    void windBehavesAsNamed() {
        LaunchConditions shot = launch(55.0, 18.0, 0.0, 6000.0, 0.0);
        double calm = MODEL.fly(shot).carry().meters();
        double into = MODEL.withWind(Wind.from(degrees(0.0), mph(10.0)))
                .fly(shot)
                .carry()
                .meters();
        double behind = MODEL.withWind(Wind.from(degrees(180.0), mph(10.0)))
                .fly(shot)
                .carry()
                .meters();
        Flight across = MODEL.withWind(Wind.from(degrees(90.0), mph(10.0))).fly(shot);
        assertTrue(into < calm && calm < behind);
        assertTrue(across.side().meters() < -3.0, "a wind from the right carries the ball to the left");
    }

    /** In still air the mechanical energy of the flight, without the spin's, cannot rise: lift does no work, drag takes. */
    @Test
    void energyNeverRisesInStillAir() {
        SplittableRandom random = new SplittableRandom(11L);
        for (int i = 0; i < 200; i++) {
            Flight flight = MODEL.fly(launch(
                    random.nextDouble(3.0, 100.0),
                    random.nextDouble(1.0, 90.0),
                    0.0,
                    random.nextDouble(0.0, 15_000.0),
                    random.nextDouble(-60.0, 60.0)));
            double before = Double.POSITIVE_INFINITY;
            for (Trajectory.Point p : flight.trajectory().evenly(200)) {
                double v = p.speed().metersPerSecond();
                double energy = v * v / 2.0 + G * p.height().meters();
                // 1e-9 of the energy: rounding of the interpolation.
                assertTrue(energy <= before * (1.0 + 1e-9), () -> "energy rises at " + p);
                before = energy;
            }
        }
    }

    @Test
    void lowerGroundIsReachedLaterAndHigherGroundEarlier() {
        LaunchConditions shot = launch(60.0, 15.0, 0.0, 5000.0, 0.0);
        double level = MODEL.fly(shot).carry().meters();
        Flight down = MODEL.withLandingElevation(meters(-15.0)).fly(shot);
        Flight up = MODEL.withLandingElevation(meters(15.0)).fly(shot);
        assertTrue(up.carry().meters() < level && level < down.carry().meters());
        assertEquals(-15.0, down.landing().height().meters(), 1e-9);
        assertEquals(15.0, up.landing().height().meters(), 1e-9);
        assertTrue(up.descentAngle().degrees() > 0.0);
    }

    @Test
    void higherGroundThatIsNotReachedIsATypedError() {
        LaunchConditions chip = launch(12.0, 30.0, 0.0, 3000.0, 0.0);
        double apex = MODEL.fly(chip).apex().meters();
        FlightException failure = assertThrows(
                FlightException.class,
                () -> MODEL.withLandingElevation(meters(apex + 1e-6)).fly(chip));
        assertEquals(FlightException.Reason.ELEVATION_NOT_REACHED, failure.reason());
        assertEquals(apex, failure.apex().meters(), 1e-12);
        assertEquals(MODEL.fly(chip).flightTimeSeconds(), failure.timeSeconds(), 1e-9);
        assertEquals(0.0, failure.lastPoint().height().meters(), 1e-9);
        String message = String.valueOf(failure.getMessage());
        assertTrue(message.contains(" yd)") && message.contains(" ft"), message);
        // A hair lower, the ball grazes and lands near the apex.
        Flight graze = MODEL.withLandingElevation(meters(apex - 1e-9)).fly(chip);
        assertEquals(MODEL.fly(chip).apexTimeSeconds(), graze.flightTimeSeconds(), 1e-3);
    }

    @Test
    void aDownwardLaunchTowardsHigherGroundIsATypedErrorAtOnce() {
        FlightException failure = assertThrows(
                FlightException.class,
                () -> MODEL.withLandingElevation(meters(1.0)).fly(launch(30.0, -5.0, 0.0, 3000.0, 0.0)));
        assertEquals(FlightException.Reason.ELEVATION_NOT_REACHED, failure.reason());
        assertEquals(0.0, failure.timeSeconds());
    }

    @Test
    void aToppedShotLandsAtOnceOnLevelGroundAndFliesOverLower() {
        LaunchConditions topped = launch(30.0, -4.0, 2.0, 2000.0, 180.0);
        Flight level = MODEL.fly(topped);
        assertEquals(0.0, level.carry().meters());
        assertEquals(0.0, level.flightTimeSeconds());
        assertEquals(0.0, level.apex().meters());
        assertEquals(4.0, level.descentAngle().degrees(), 1e-12);
        assertEquals(
                List.of("lands-at-once"),
                level.warnings().stream().map(Warning::code).toList());
        assertEquals(2, level.trajectory().evenly(2).size());
        assertEquals(1, level.trajectory().every(0.1).size());
        Flight lower = MODEL.withLandingElevation(meters(-3.0)).fly(topped);
        assertTrue(lower.carry().meters() > 5.0 && lower.warnings().isEmpty());
        assertEquals(0.0, lower.apex().meters());
    }

    @Test
    void aLevelLaunchRisesOnlyIfTheLiftExceedsTheWeight() {
        assertTrue(MODEL.fly(launch(70.0, 0.0, 0.0, 6000.0, 0.0)).apex().meters() > 0.5);
        assertEquals(0.0, MODEL.fly(launch(15.0, 0.0, 0.0, 1000.0, 0.0)).carry().meters());
    }

    /** A dip: launched down over lower ground, the lift carries the ball back up; lower ground just below the dip is missed. */
    @Test
    void aDipWithinAStepIsSeen() {
        LaunchConditions skimming = launch(75.0, -3.0, 0.0, 6000.0, 0.0);
        Flight over = MODEL.withLandingElevation(meters(-5.0)).fly(skimming);
        double lowest = over.trajectory().every(0.001).stream()
                .filter(p -> p.timeSeconds() < over.apexTimeSeconds())
                .mapToDouble(p -> p.height().meters())
                .min()
                .orElseThrow();
        assertTrue(lowest < -0.05 && lowest > -4.0, () -> "dips to " + lowest);
        assertTrue(over.apex().meters() > 1.0);
        Flight hits = MODEL.withLandingElevation(meters(lowest + 1e-3)).fly(skimming);
        assertTrue(hits.flightTimeSeconds() < over.apexTimeSeconds() / 2.0);
        Flight clears = MODEL.withLandingElevation(meters(lowest - 1e-3)).fly(skimming);
        assertTrue(clears.flightTimeSeconds() > over.apexTimeSeconds());
    }

    @Test
    void aBallThatNeverComesDownIsATypedError() {
        // Lift that grows as the ball slows, with next to no drag and no spin decay: it loops for ever.
        AerodynamicModel balloon = new AerodynamicModel() {
            @Override
            public double dragCoefficient(double re, double s) {
                return 0.0;
            }

            @Override
            public double liftCoefficient(double re, double s) {
                return 5.0;
            }

            @Override
            public double momentSlope() {
                return 0.0;
            }
        };
        FlightException failure = assertThrows(
                FlightException.class,
                () -> MODEL.withBall(Ball.of(balloon))
                        .withLandingElevation(meters(-1000.0))
                        .fly(launch(80.0, 20.0, 0.0, 5000.0, 0.0)));
        assertEquals(FlightException.Reason.DID_NOT_COME_DOWN, failure.reason());
    }

    @Test
    void aModelThatTurnsNanIsATypedErrorWithTheLastFiniteState() {
        AerodynamicModel broken = new AerodynamicModel() {
            @Override
            public double dragCoefficient(double re, double s) {
                return re < 1e5 ? Double.NaN : 0.25;
            }

            @Override
            public double liftCoefficient(double re, double s) {
                return 0.2;
            }
        };
        FlightException failure = assertThrows(
                FlightException.class, () -> MODEL.withBall(Ball.of(broken)).fly(launch(60.0, 12.0, 0.0, 4000.0, 0.0)));
        assertEquals(FlightException.Reason.DID_NOT_CONVERGE, failure.reason());
        assertTrue(failure.timeSeconds() > 0.1);
        assertTrue(failure.lastPoint().speed().metersPerSecond() > 30.0);
        FlightException atOnce = assertThrows(
                FlightException.class,
                () -> MODEL.withBall(Ball.of(constant(Double.NaN, 0.0))).fly(launch(60.0, 12.0, 0.0, 4000.0, 0.0)));
        assertEquals(FlightException.Reason.DID_NOT_CONVERGE, atOnce.reason());
        assertEquals(60.0, atOnce.lastPoint().speed().metersPerSecond(), 1e-12);
    }

    @Test
    void leavingTheDomainOfTheModelIsAWarning() {
        AerodynamicModel narrow = new AerodynamicModel() {
            private final RationalAerodynamics all = new RationalAerodynamics();

            @Override
            public double dragCoefficient(double re, double s) {
                return all.dragCoefficient(re, s);
            }

            @Override
            public double liftCoefficient(double re, double s) {
                return all.liftCoefficient(re, s);
            }

            @Override
            public ModelDomain domain() {
                return ModelDomain.of(1e5, 1.5e5, 0.0, 0.15);
            }
        };
        Flight flight = MODEL.withBall(Ball.of(narrow)).fly(launch(65.0, 13.0, 0.0, 3500.0, 0.0));
        assertEquals(
                List.of("reynolds-outside-model", "spin-ratio-outside-model"),
                flight.warnings().stream().map(Warning::code).toList());
        assertTrue(flight.warnings().get(0).message().contains("1.00e+05 to 1.50e+05"), flight.warnings()::toString);
        assertTrue(flight.warnings().get(0).message().contains("% of the flight time"));
        assertTrue(MODEL.fly(launch(65.0, 13.0, 0.0, 3500.0, 0.0)).warnings().isEmpty());
    }

    @Test
    void oneModelFliesManyBallsAtOnceWithTheSameResults() {
        List<LaunchConditions> launches = new ArrayList<>();
        SplittableRandom random = new SplittableRandom(3L);
        for (int i = 0; i < 2000; i++) {
            launches.add(launch(
                    random.nextDouble(10.0, 80.0), random.nextDouble(2.0, 60.0), 0.0, random.nextDouble(9000.0), 5.0));
        }
        List<Double> serial =
                launches.stream().map(l -> MODEL.fly(l).carry().meters()).toList();
        List<Double> parallel = IntStream.range(0, launches.size())
                .parallel()
                .mapToObj(i -> MODEL.fly(launches.get(i)).carry().meters())
                .toList();
        assertEquals(serial, parallel);
    }

    @Test
    void copiesChangeOneThing() {
        Ball light = MODEL.ball().withMass(dev.teeward.quantity.Mass.ofGrams(40.0));
        FlightModel changed = MODEL.withBall(light)
                .withWind(Wind.from(degrees(0.0), mph(5.0)))
                .withGravity(1.62)
                .withLandingElevation(meters(2.0));
        assertEquals(light, changed.ball());
        assertEquals(MODEL.air(), changed.air());
        assertEquals(1.62, changed.gravity());
        assertEquals(meters(2.0), changed.landingElevation());
        assertEquals(Wind.from(degrees(0.0), mph(5.0)), changed.wind());
        assertEquals(meters(0.0), MODEL.landingElevation());
        assertTrue(changed.toString().contains("gravity 1.62"));
        assertTrue(MODEL.fly(launch(50.0, 15.0, 0.0, 5000.0, 0.0)).toString().startsWith("carry "));
    }

    @Test
    void settingsOutOfRangeAreRefusedByName() {
        String gravity = String.valueOf(assertThrows(IllegalArgumentException.class, () -> MODEL.withGravity(0.0))
                .getMessage());
        assertTrue(gravity.startsWith("gravity must be in [1, 30] m/s2"), gravity);
        String elevation = String.valueOf(
                assertThrows(IllegalArgumentException.class, () -> MODEL.withLandingElevation(meters(1001.0)))
                        .getMessage());
        assertTrue(elevation.startsWith("landingElevation must be in [-1000, 1000] m"), elevation);
        assertThrows(IllegalArgumentException.class, () -> MODEL.withGravity(Double.NaN));
    }
}
