package dev.teeward.flight;

import static dev.teeward.quantity.Units.degrees;
import static dev.teeward.quantity.Units.meters;
import static dev.teeward.quantity.Units.metersPerSecond;
import static dev.teeward.quantity.Units.rpm;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.flight.air.Wind;
import dev.teeward.flight.internal.RationalAerodynamics;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class TrajectoryTest {
    private static final FlightModel MODEL = FlightModel.of(Ball.of(new RationalAerodynamics()));

    private static LaunchConditions launch(double mps, double up, double right) {
        return LaunchConditions.builder()
                .ballSpeed(metersPerSecond(mps))
                .launchAngle(degrees(up))
                .startDirection(degrees(right))
                .spinRate(rpm(5000.0))
                .axisTilt(degrees(8.0))
                .build();
    }

    @Test
    void endsAreLaunchAndLanding() {
        Flight flight = MODEL.fly(launch(60.0, 15.0, 2.0));
        Trajectory path = flight.trajectory();
        assertEquals(0.0, path.at(0.0).distance().meters());
        assertEquals(60.0, path.at(0.0).speed().metersPerSecond(), 1e-12);
        assertEquals(15.0, path.at(0.0).climbAngle().degrees(), 1e-12);
        assertEquals(2.0, path.at(0.0).direction().degrees(), 1e-12);
        Trajectory.Point end = path.at(path.durationSeconds());
        assertEquals(flight.carry(), end.distance());
        assertEquals(flight.side(), end.side());
        assertEquals(flight.landingSpeed(), end.speed());
        assertEquals(0.0, end.height().meters(), 1e-9);
        assertEquals(
                flight.apex().meters(),
                path.at(flight.apexTimeSeconds()).height().meters(),
                1e-12);
        assertThrows(IllegalArgumentException.class, () -> path.at(-1e-9));
        assertThrows(IllegalArgumentException.class, () -> path.at(path.durationSeconds() + 1e-9));
        assertThrows(IllegalArgumentException.class, () -> path.at(Double.NaN));
    }

    @Test
    void columnsHoldTheBitsOfThePoints() {
        double[] x = new double[2_000];
        double[] y = new double[2_000];
        double[] z = new double[2_000];
        for (double interval : new double[] {0.01, 0.1, 0.25, 100.0}) {
            Trajectory path = MODEL.fly(launch(60.0, 15.0, 2.0)).trajectory();
            List<Trajectory.Point> points = path.every(interval);
            assertEquals(points.size(), path.sampleInto(interval, x, y, z));
            for (int i = 0; i < points.size(); i++) {
                assertEquals(points.get(i).downrange().meters(), x[i]);
                assertEquals(points.get(i).height().meters(), y[i]);
                assertEquals(points.get(i).side().meters(), z[i]);
            }
            assertThrows(
                    IllegalArgumentException.class,
                    () -> path.sampleInto(interval, x, new double[points.size() - 1], z));
        }
        Trajectory none = MODEL.fly(launch(60.0, -15.0, 2.0)).trajectory();
        assertEquals(none.every(0.01).size(), none.sampleInto(0.01, x, y, z));
        assertEquals(0.0, y[0]);
        assertThrows(IllegalArgumentException.class, () -> none.sampleInto(0.0, x, y, z));
    }

    @Test
    void velocityIsTheDerivativeOfPositionBetweenTheStepsToo() {
        Trajectory path = MODEL.fly(launch(60.0, 15.0, 2.0)).trajectory();
        double h = 1e-4;
        for (double t = 0.05; t < path.durationSeconds() - 0.05; t += 0.0317) {
            Trajectory.Point before = path.at(t - h);
            Trajectory.Point after = path.at(t + h);
            // Central difference: h^2/6 times a third derivative of at most 30 m/s3, and a step end in between.
            assertEquals(
                    (after.downrange().meters() - before.downrange().meters()) / (2.0 * h),
                    path.at(t).velocityDownrange().metersPerSecond(),
                    1e-6);
            assertEquals(
                    (after.height().meters() - before.height().meters()) / (2.0 * h),
                    path.at(t).velocityUp().metersPerSecond(),
                    1e-6);
            assertEquals(
                    (after.side().meters() - before.side().meters()) / (2.0 * h),
                    path.at(t).velocityRight().metersPerSecond(),
                    1e-6);
        }
    }

    @Test
    void samplesAreEvenAndEndAtTheLanding() {
        Flight flight = MODEL.fly(launch(60.0, 15.0, 0.0));
        List<Trajectory.Point> hundred = flight.trajectory().evenly(101);
        assertEquals(101, hundred.size());
        double step = flight.flightTimeSeconds() / 100.0;
        for (int i = 0; i < hundred.size(); i++) {
            assertEquals(i * step, hundred.get(i).timeSeconds(), 1e-12);
            Trajectory.Point alone = flight.trajectory().at(hundred.get(i).timeSeconds());
            assertEquals(alone.distance(), hundred.get(i).distance());
            assertEquals(alone.speed(), hundred.get(i).speed());
        }
        List<Trajectory.Point> ticks = flight.trajectory().every(0.01);
        assertEquals((int) Math.ceil(flight.flightTimeSeconds() / 0.01) + 1, ticks.size());
        assertEquals(0.02, ticks.get(2).timeSeconds(), 1e-15);
        assertEquals(flight.carry(), ticks.get(ticks.size() - 1).distance());
        assertThrows(IllegalArgumentException.class, () -> flight.trajectory().evenly(1));
        assertThrows(IllegalArgumentException.class, () -> flight.trajectory().every(0.0));
        assertThrows(IllegalArgumentException.class, () -> flight.trajectory().every(1e-9));
    }

    @Test
    void spinFallsSteadily() {
        double before = 5000.0 + 1e-9;
        for (Trajectory.Point p :
                MODEL.fly(launch(70.0, 12.0, 0.0)).trajectory().every(0.05)) {
            assertTrue(p.spinRate().rpm() < before);
            before = p.spinRate().rpm();
        }
        assertTrue(before > 3500.0);
    }

    @Test
    void distancesAreCrossedWhereTheyAre() {
        Flight flight = MODEL.fly(launch(60.0, 15.0, 3.0));
        Trajectory path = flight.trajectory();
        for (double d = 1.0; d < flight.landing().downrange().meters(); d += 7.3) {
            Trajectory.Point there = path.crossingDistance(meters(d)).orElseThrow();
            assertEquals(d, there.downrange().meters(), 1e-9);
        }
        assertEquals(0.0, path.crossingDistance(meters(0.0)).orElseThrow().timeSeconds());
        assertEquals(Optional.empty(), path.crossingDistance(meters(500.0)));
        assertEquals(Optional.empty(), path.crossingDistance(meters(-1.0)));
        double end = flight.landing().downrange().meters();
        assertEquals(Optional.empty(), path.crossingDistance(meters(end + 1e-6)));
        assertTrue(path.crossingDistance(meters(end - 1e-6)).isPresent());
    }

    @Test
    void planesAreCrossedAlongTheirBearing() {
        Flight flight = MODEL.fly(launch(60.0, 15.0, 3.0));
        Trajectory path = flight.trajectory();
        assertEquals(
                5.0,
                path.crossingPlane(meters(5.0), degrees(90.0))
                        .orElseThrow()
                        .side()
                        .meters(),
                1e-9);
        Trajectory.Point oblique =
                path.crossingPlane(meters(80.0), degrees(30.0)).orElseThrow();
        double along = oblique.downrange().meters() * Math.cos(Math.toRadians(30.0))
                + oblique.side().meters() * Math.sin(Math.toRadians(30.0));
        assertEquals(80.0, along, 1e-9);
        assertEquals(Optional.empty(), path.crossingPlane(meters(5.0), degrees(-90.0)));
    }

    /** Blown back over its start: the plane 1 m behind is crossed once, on the way back; one ahead first on the way out. */
    @Test
    void aBallBlownBackCrossesPlanesBehindTheStart() {
        LaunchConditions lob = LaunchConditions.builder()
                .ballSpeed(metersPerSecond(30.0))
                .launchAngle(degrees(85.0))
                .spinRate(rpm(3000.0))
                .build();
        Flight flight =
                MODEL.withWind(Wind.from(degrees(0.0), metersPerSecond(15.0))).fly(lob);
        assertTrue(flight.landing().downrange().meters() < -1.0, flight::toString);
        Trajectory.Point behind =
                flight.trajectory().crossingDistance(meters(-1.0)).orElseThrow();
        assertTrue(behind.velocityDownrange().metersPerSecond() < 0.0);
        double furthest = flight.trajectory().every(0.001).stream()
                .mapToDouble(p -> p.downrange().meters())
                .max()
                .orElseThrow();
        Trajectory.Point ahead =
                flight.trajectory().crossingDistance(meters(furthest / 2.0)).orElseThrow();
        assertTrue(ahead.velocityDownrange().metersPerSecond() > 0.0);
        assertTrue(flight.trajectory().crossingDistance(meters(furthest - 1e-4)).isPresent());
    }
}
