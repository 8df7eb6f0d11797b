package dev.teeward.flight.internal;

import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.flight.aero.AerodynamicModel;
import dev.teeward.flight.aero.SmitsSmith1994;
import dev.teeward.flight.aero.TableAerodynamics;
import dev.teeward.flight.aero.TypicalAerodynamics;
import dev.teeward.flight.air.Roughness;
import dev.teeward.flight.air.Wind;
import dev.teeward.flight.air.WindProfile;
import dev.teeward.flight.ground.Terrain;
import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Length;
import dev.teeward.quantity.Speed;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Landings with coefficients from a table against Hipparchus' DormandPrince853 at tolerance 1e-11. The second derivatives of
 * a table jump from cell to cell, which costs steps, not accuracy.
 */
class TableRefereeTest {
    private static final double[] RE = {4e4, 5.5e4, 7e4, 9e4, 1.1e5, 1.4e5, 1.8e5, 2.4e5};
    private static final double[] S = {0.05, 0.1, 0.17, 0.26, 0.4, 0.7, 1.2};
    private static final List<AerodynamicModel> TABLES = List.of(
            TableAerodynamics.sampling(TypicalAerodynamics.of(), RE, S),
            TableAerodynamics.sampling(SmitsSmith1994.of(), RE, S));

    /** The promise of the flight model [m]. */
    private static final double LANDING_BOUND = 1e-4;

    @Test
    void landingsAreAsCloseAsWithFormulas() {
        tables(20_260_301L, 2_000);
    }

    /** What makes steps short, all at once: a table, a wind that grows with height by either law, and a slope both ways. */
    @Test
    void landingsOnSlopesInAWindThatGrowsWithHeight() {
        allAtOnce(20_260_302L, 2_000);
    }

    @Test
    @Tag("sweep")
    void tenThousandLandings() {
        tables(20_260_303L, 10_000);
        allAtOnce(20_260_304L, 10_000);
    }

    private static void tables(long seed, int launches) {
        SplittableRandom random = new SplittableRandom(seed);
        double worst = 0.0;
        for (int i = 0; i < launches; i++) {
            double off = off(TABLES.get(i % TABLES.size()), Wind.calm(), Terrain.level(Length.ofMeters(0.0)), random);
            worst = Math.max(worst, off);
        }
        check(worst, launches);
    }

    private static void allAtOnce(long seed, int launches) {
        SplittableRandom random = new SplittableRandom(seed);
        double worst = 0.0;
        for (int i = 0; i < launches; i++) {
            Angle from = Angle.ofDegrees(random.nextDouble(-180.0, 180.0));
            Speed speed = Speed.ofMetersPerSecond(random.nextDouble(1.0, 11.0));
            Wind wind = random.nextBoolean()
                    ? WindProfile.logLaw(from, speed, Roughness.OPEN)
                    : WindProfile.powerLaw(from, speed, 1.0 / 7.0);
            Terrain slope = Terrain.plane(
                    Angle.ofDegrees(random.nextDouble(-4.0, 4.0)), Angle.ofDegrees(random.nextDouble(-4.0, 4.0)));
            worst = Math.max(worst, off(TABLES.get(i % TABLES.size()), wind, slope, random));
        }
        check(worst, launches);
    }

    /** Two programs that agree to the last bit would be one program. */
    private static void check(double worst, int launches) {
        assertTrue(
                worst > 0.0 && worst <= LANDING_BOUND,
                () -> String.format(Locale.ROOT, "worst of %d: %.3g mm", launches, 1e3 * worst));
    }

    private static double off(AerodynamicModel table, Wind wind, Terrain terrain, SplittableRandom random) {
        double speed = random.nextDouble(20.0, 80.0);
        double up = Math.toRadians(random.nextDouble(5.0, 45.0));
        double spin = random.nextDouble(1500.0, 10_000.0) * Math.PI / 30.0;
        double tilt = Math.toRadians(random.nextDouble(-20.0, 20.0));
        FlightEquations equations =
                new FlightEquations(table, 0.04593, 0.04267, 8.363e-6, 1.225, 1.7894e-5, wind, 9.80665);
        double[] launch = new double[FlightEquations.STATE];
        launch[FlightEquations.VX] = speed * Math.cos(up);
        launch[FlightEquations.VY] = speed * Math.sin(up);
        launch[FlightEquations.SPIN] = spin;
        double[] axis = {Math.sin(tilt) * Math.sin(up), -Math.sin(tilt) * Math.cos(up), Math.cos(tilt)};
        FlightPath path = new FlightIntegrator(equations, terrain).fly(launch, axis);
        double[] ours = new double[FlightEquations.STATE];
        path.at(path.endTime(), ours);
        double[] theirs = new Referee(equations, launch, axis, terrain, false).landing();
        return Math.hypot(
                ours[FlightEquations.X] - theirs[FlightEquations.X],
                ours[FlightEquations.Z] - theirs[FlightEquations.Z]);
    }
}
