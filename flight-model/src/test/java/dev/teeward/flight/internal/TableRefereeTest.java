package dev.teeward.flight.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.flight.aero.AerodynamicModel;
import dev.teeward.flight.aero.SmitsSmith1994;
import dev.teeward.flight.aero.TableAerodynamics;
import dev.teeward.flight.aero.TypicalAerodynamics;
import dev.teeward.flight.air.Wind;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/**
 * Landings with coefficients from a table against Hipparchus' DormandPrince853 at tolerance 1e-11. The second derivatives of
 * a table jump from cell to cell, which costs steps, not accuracy.
 */
class TableRefereeTest {
    private static final double[] RE = {4e4, 5.5e4, 7e4, 9e4, 1.1e5, 1.4e5, 1.8e5, 2.4e5};
    private static final double[] S = {0.05, 0.1, 0.17, 0.26, 0.4, 0.7, 1.2};

    @Test
    void landingsAreAsCloseAsWithFormulas() {
        for (AerodynamicModel model : new AerodynamicModel[] {SmitsSmith1994.of(), TypicalAerodynamics.of()}) {
            AerodynamicModel table = TableAerodynamics.sampling(model, RE, S);
            SplittableRandom random = new SplittableRandom(20_260_301L);
            double worst = 0.0;
            int landings = 0;
            for (int i = 0; i < 300; i++) {
                double off = off(table, random);
                worst = Math.max(worst, off);
                landings++;
            }
            double measured = 1e3 * worst;
            assertEquals(300, landings);
            assertTrue(worst <= 1e-3, () -> model.reference() + ": " + measured + " mm");
        }
    }

    private static double off(AerodynamicModel table, SplittableRandom random) {
        double speed = random.nextDouble(20.0, 80.0);
        double up = Math.toRadians(random.nextDouble(5.0, 45.0));
        double spin = random.nextDouble(1500.0, 10_000.0) * Math.PI / 30.0;
        double tilt = Math.toRadians(random.nextDouble(-20.0, 20.0));
        FlightEquations equations =
                new FlightEquations(table, 0.04593, 0.04267, 8.363e-6, 1.225, 1.7894e-5, Wind.calm(), 9.80665);
        double[] launch = new double[FlightEquations.STATE];
        launch[FlightEquations.VX] = speed * Math.cos(up);
        launch[FlightEquations.VY] = speed * Math.sin(up);
        launch[FlightEquations.SPIN] = spin;
        double[] axis = {Math.sin(tilt) * Math.sin(up), -Math.sin(tilt) * Math.cos(up), Math.cos(tilt)};
        FlightPath path = new FlightIntegrator(equations, 0.0).fly(launch, axis);
        double[] ours = new double[FlightEquations.STATE];
        path.at(path.endTime(), ours);
        double[] theirs = new Referee(equations, launch, axis, 0.0, false).landing();
        return Math.hypot(
                ours[FlightEquations.X] - theirs[FlightEquations.X],
                ours[FlightEquations.Z] - theirs[FlightEquations.Z]);
    }
}
