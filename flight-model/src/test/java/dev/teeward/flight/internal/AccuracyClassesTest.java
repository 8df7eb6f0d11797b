package dev.teeward.flight.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.flight.Accuracy;
import dev.teeward.flight.aero.AerodynamicModel;
import dev.teeward.flight.aero.TableAerodynamics;
import dev.teeward.flight.aero.TypicalAerodynamics;
import dev.teeward.flight.air.Wind;
import dev.teeward.flight.batch.BilinearTable;
import dev.teeward.flight.batch.RandomLaunches;
import dev.teeward.flight.batch.RandomLaunches.Sample;
import dev.teeward.flight.ground.Terrain;
import dev.teeward.flight.internal.FlightPath.Ending;
import dev.teeward.quantity.Angle;
import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * The promises of {@link Accuracy} against {@link Referee} (Hipparchus 4.0.2, Dormand and Prince 8(5,3), tolerances 1e-11): three
 * samples drawn differently over the whole ranges, the typical ball, a table with kinks and one with jumps of curvature. The steps of the rules were chosen on
 * samples like these, from other seeds and, where there are kinks, with another table.
 */
class AccuracyClassesTest {
    /** Below this angle of descent the landing is ill-conditioned, and time of flight times rate of fall is held instead. */
    private static final double GRAZING = StrictMath.toRadians(3.0);

    private static final double[] RE = {4e4, 5.5e4, 7e4, 9e4, 1.1e5, 1.4e5, 1.8e5, 2.4e5};
    private static final double[] S = {0.05, 0.1, 0.17, 0.26, 0.4, 0.7, 1.2};

    @Test
    void tenThousandLandingsKeepThePromises() {
        for (Sample sample : Sample.values()) {
            check(sample, TypicalAerodynamics.of(), 2_900, 9_000L);
            check(sample, new BilinearTable(), 440, 9_100L);
            check(sample, TableAerodynamics.sampling(TypicalAerodynamics.of(), RE, S), 220, 9_400L);
        }
    }

    @Test
    @Tag("sweep")
    void aHundredThousandLandingsOfEitherModelKeepThePromises() {
        for (Sample sample : Sample.values()) {
            check(sample, TypicalAerodynamics.of(), 100_000, 42_000L);
            check(sample, new BilinearTable(), 100_000, 9_300L);
        }
    }

    /** Over slopes the angle that makes a landing shallow is that to the slope. */
    @Test
    void landingsOnSlopesKeepThePromises() {
        RandomLaunches drawn = new RandomLaunches(Sample.ALONG_THE_BAG, 400, 9_500L);
        for (int row = 0; row < drawn.rows; row++) {
            Terrain slope = Terrain.plane(Angle.ofDegrees(row % 13 - 6.0), Angle.ofDegrees(row % 7 - 3.0));
            FlightEquations equations = new FlightEquations(
                    TypicalAerodynamics.of(), 0.04593, 0.04267, 8.363e-6, 1.225, 1.7894e-5, drawn.wind(row), 9.80665);
            double[] launch = new double[FlightEquations.STATE];
            double[] axis = new double[3];
            double up = drawn.up[row] / 2.0 + Math.toRadians(8.0);
            LaunchState.write(drawn.speed[row], up, drawn.right[row], drawn.spin[row], drawn.tilt[row], launch, axis);
            double[] theirs = new Referee(equations, launch, axis, slope, false).landing();
            double rise = slope.slopeAlongTarget(0.0, 0.0) * theirs[FlightEquations.VX]
                    + slope.slopeTowardsRight(0.0, 0.0) * theirs[FlightEquations.VZ];
            double along = Math.hypot(theirs[FlightEquations.VX], theirs[FlightEquations.VZ]);
            if (Math.atan2(rise - theirs[FlightEquations.VY], along) < GRAZING) {
                continue;
            }
            for (Accuracy accuracy : Accuracy.values()) {
                FlightPath path =
                        new FlightIntegrator(equations, slope, StepRule.valueOf(accuracy.name())).fly(launch, axis);
                double[] ours = new double[FlightEquations.STATE];
                path.at(path.endTime(), ours);
                double off = Math.hypot(
                        ours[FlightEquations.X] - theirs[FlightEquations.X],
                        ours[FlightEquations.Z] - theirs[FlightEquations.Z]);
                assertTrue(off <= accuracy.landingErrorMeters(), accuracy + ": " + off + " m");
            }
        }
    }

    private static void check(Sample sample, AerodynamicModel model, int launches, long seed) {
        RandomLaunches drawn =
                new RandomLaunches(sample, launches, seed + sample.name().length());
        Map<Accuracy, Worst> all = new EnumMap<>(Accuracy.class);
        int landings = 0;
        for (int row = 0; row < launches; row++) {
            Wind wind = drawn.wind(row);
            FlightEquations equations =
                    new FlightEquations(model, 0.04593, 0.04267, 8.363e-6, 1.225, 1.7894e-5, wind, 9.80665);
            double[] launch = new double[FlightEquations.STATE];
            double[] axis = new double[3];
            LaunchState.write(
                    drawn.speed[row], drawn.up[row], drawn.right[row], drawn.spin[row], drawn.tilt[row], launch, axis);
            Referee referee = null;
            for (Accuracy accuracy : Accuracy.values()) {
                FlightPath path = new FlightIntegrator(
                                equations, drawn.elevation[row], StepRule.valueOf(accuracy.name()))
                        .fly(launch, axis);
                if (path.ending() != Ending.LANDED) {
                    assertTrue(
                            path.ending() == Ending.ELEVATION_NOT_REACHED || path.ending() == Ending.LANDED_AT_ONCE,
                            () -> path.ending().toString());
                    continue;
                }
                if (referee == null) {
                    referee = new Referee(equations, launch, axis, drawn.elevation[row], false);
                    landings++;
                }
                all.computeIfAbsent(accuracy, a -> new Worst()).see(path, referee);
            }
        }
        assertTrue(landings > 0.6 * launches, "landings: " + landings);
        for (Map.Entry<Accuracy, Worst> entry : all.entrySet()) {
            Accuracy accuracy = entry.getKey();
            double promise = model.smooth() ? accuracy.landingErrorMeters() : accuracy.landingErrorWithKinksMeters();
            Worst worst = entry.getValue();
            assertTrue(worst.landing <= promise, () -> sample + ", " + model + ", " + accuracy + ": " + worst);
            assertTrue(worst.grazing <= promise, () -> sample + ", " + model + ", " + accuracy + ": " + worst);
        }
        assertEquals(Accuracy.values().length, all.size());
    }

    private static final class Worst {
        private double landing;
        private double grazing;
        private long steps;
        private int flights;

        void see(FlightPath path, Referee referee) {
            double[] ours = new double[FlightEquations.STATE];
            path.at(path.endTime(), ours);
            double[] theirs = referee.landing();
            flights++;
            steps += path.steps() + path.rejections();
            double descent = Math.atan2(
                    -theirs[FlightEquations.VY], Math.hypot(theirs[FlightEquations.VX], theirs[FlightEquations.VZ]));
            if (descent < GRAZING) {
                double fall = Math.max(Math.abs(theirs[FlightEquations.VY]), Math.abs(ours[FlightEquations.VY]));
                grazing = Math.max(grazing, Math.abs(path.endTime() - referee.time()) * fall);
            } else {
                landing = Math.max(
                        landing,
                        Math.hypot(
                                ours[FlightEquations.X] - theirs[FlightEquations.X],
                                ours[FlightEquations.Z] - theirs[FlightEquations.Z]));
            }
        }

        @Override
        public String toString() {
            return String.format(
                    Locale.ROOT,
                    "%d landings, worst %.4f mm, grazing %.4f mm, %.1f steps tried a flight",
                    flights,
                    1e3 * landing,
                    1e3 * grazing,
                    (double) steps / flights);
        }
    }
}
