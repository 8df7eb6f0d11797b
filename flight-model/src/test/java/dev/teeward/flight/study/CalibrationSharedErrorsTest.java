package dev.teeward.flight.study;

import static dev.teeward.flight.study.SensitivityTest.launch;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.flight.Ball;
import dev.teeward.flight.Flight;
import dev.teeward.flight.FlightModel;
import dev.teeward.flight.LaunchTolerance;
import dev.teeward.flight.aero.TypicalAerodynamics;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.junit.jupiter.api.Test;

/** Errors that the observations of one flight have in common: of a launch with a tolerance, or of unknown size. */
class CalibrationSharedErrorsTest {
    private static final ParametricAerodynamics SCALED = ParametricAerodynamics.scaled(TypicalAerodynamics.of());
    private static final Calibration CALIBRATION = Calibration.withDefaults();
    private static final Calibration STATED = CALIBRATION.withLaunchTolerance(SyntheticFlights::device);

    private static List<ObservedFlight> flights(int many, long seed) {
        return SyntheticFlights.of(
                SyntheticFlights.ball(1.05, 1.0), many, 1.0, SyntheticFlights::device, new SplittableRandom(seed));
    }

    private static List<ObservedFlight> misread(List<ObservedFlight> flights) {
        List<ObservedFlight> changed = new ArrayList<>(flights);
        for (int i = 0; i < flights.size(); i += 8) {
            ObservedFlight seen = flights.get(i);
            changed.set(
                    i,
                    seen.with(FlightOutput.CARRY, seen.value(FlightOutput.CARRY).orElseThrow() - 60.0));
        }
        return changed;
    }

    /** A misread pulls as far as without the tolerance, not further, and its flight's other observations are not to blame. */
    @Test
    void misreadsDoNotBendAFitWithAToleranceOfTheLaunch() {
        double pulled = 0.0;
        double allowed = 0.0;
        for (long seed = 41; seed < 43; seed++) {
            List<ObservedFlight> right = flights(16, seed);
            List<ObservedFlight> wrong = misread(right);
            CalibrationResult fit = STATED.fit(SCALED, wrong);
            pulled += fit.values()[0] - STATED.fit(SCALED, right).values()[0];
            allowed += CALIBRATION.fit(SCALED, wrong).values()[0]
                    - CALIBRATION.fit(SCALED, right).values()[0];
            assertEquals(
                    Set.of("flight 1 (carry)", "flight 9 (carry)"),
                    fit.suspects().keySet());
        }
        assertTrue(allowed > 0.0, "60 m short is more drag");
        assertTrue(pulled < 1.25 * allowed, pulled + " for " + allowed);
    }

    /** A misread of 60 m that the biweight leaves out is as good as not observed at all. */
    @Test
    void theBiweightLeavesAMisreadOut() {
        List<ObservedFlight> right = flights(16, 45L);
        CalibrationResult fit = STATED.withLoss(RobustLoss.TUKEY).fit(SCALED, misread(right));
        List<ObservedFlight> fewer = new ArrayList<>(right);
        for (int i = 0; i < right.size(); i += 8) {
            ObservedFlight seen = right.get(i);
            ObservedFlight rest =
                    ObservedFlight.of(seen.launch()).withName(seen.name()).withConditions(seen.conditions());
            for (FlightOutput output : seen.outputs()) {
                rest = output == FlightOutput.CARRY
                        ? rest
                        : rest.with(output, seen.value(output).orElseThrow());
            }
            fewer.set(i, rest);
        }
        CalibrationResult without = STATED.withLoss(RobustLoss.TUKEY).fit(SCALED, fewer);
        for (int j = 0; j < 2; j++) {
            double error = without.standardError(SCALED.names().get(j)).orElseThrow();
            assertEquals(without.values()[j], fit.values()[j], 0.2 * error);
        }
    }

    @Test
    void aTrackOfThreeHundredPointsWithAToleranceGivesTheBallBack() {
        Flight flight =
                FlightModel.of(Ball.of(SyntheticFlights.ball(0.95, 1.10))).fly(launch(65.0, 12.0, 1.0, 3_000.0, 4.0));
        List<ObservedFlight.TrackPoint> track = flight.trajectory().every(flight.flightTimeSeconds() / 300.0).stream()
                .map(p -> new ObservedFlight.TrackPoint(
                        p.timeSeconds(),
                        p.downrange().meters(),
                        p.height().meters(),
                        p.side().meters()))
                .toList();
        CalibrationResult fit = CALIBRATION
                .withLaunchTolerance(LaunchTolerance.typical())
                .fit(SCALED, List.of(ObservedFlight.of(flight.launch()).withTrack(track)));
        assertTrue(fit.observations() >= 900, () -> "observations " + fit.observations());
        assertEquals(0.95, fit.values()[0], 1e-5);
        assertEquals(1.10, fit.values()[1], 1e-5);
    }

    /** The sandwich over flights written anew, by Commons Math: (J'J)^-1 (sum of J_f' r_f r_f' J_f) (J'J)^-1 G/(G - p). */
    @Test
    void errorsSharedWithinFlightsGiveTheSandwichOverFlights() {
        List<ObservedFlight> flights = flights(24, 46L);
        CalibrationResult fit = CALIBRATION
                .withLoss(RobustLoss.SQUARES)
                .withErrorsSharedWithinFlights()
                .fit(SCALED, flights);
        RealMatrix squares = new Array2DRowRealMatrix(2, 2);
        RealMatrix middle = new Array2DRowRealMatrix(2, 2);
        for (ObservedFlight seen : flights) {
            RealVector rows = rows(seen, fit.values()[0], fit.values()[1]);
            RealMatrix jacobian = new Array2DRowRealMatrix(rows.getDimension(), 2);
            for (int j = 0; j < 2; j++) {
                double drag = j == 0 ? 1e-3 : 0.0;
                double lift = j == 1 ? 1e-3 : 0.0;
                jacobian.setColumnVector(
                        j,
                        rows(seen, fit.values()[0] + drag, fit.values()[1] + lift)
                                .subtract(rows(seen, fit.values()[0] - drag, fit.values()[1] - lift))
                                .mapDivide(2e-3));
            }
            squares = squares.add(jacobian.transpose().multiply(jacobian));
            RealVector score = jacobian.transpose().operate(rows);
            middle = middle.add(score.outerProduct(score));
        }
        RealMatrix bread = MatrixUtils.inverse(squares);
        RealMatrix covariance = bread.multiply(middle).multiply(bread).scalarMultiply(24.0 / 22.0);
        for (int j = 0; j < 2; j++) {
            String name = SCALED.names().get(j);
            double error = Math.sqrt(covariance.getEntry(j, j));
            assertEquals(error, fit.standardError(name).orElseThrow(), 2e-3 * error, name);
        }
        assertEquals(22.0, fit.degreesOfFreedom(), 0.0);
    }

    private static RealVector rows(ObservedFlight seen, double drag, double lift) {
        Flight flight = seen.conditions()
                .withBall(Ball.of(SyntheticFlights.ball(drag, lift)))
                .fly(seen.launch());
        return new ArrayRealVector(seen.outputs().stream()
                .mapToDouble(
                        output -> (output.of(flight) - seen.value(output).orElseThrow()) / output.standardDeviation())
                .toArray());
    }

    /** A launch measured with errors that nobody states: the lift is known less well than independent errors would say. */
    @Test
    void errorsSharedWithinFlightsWidenTheErrorOfTheLift() {
        double independent = 0.0;
        double shared = 0.0;
        for (long seed = 51; seed < 53; seed++) {
            List<ObservedFlight> flights = flights(40, seed);
            independent +=
                    CALIBRATION.fit(SCALED, flights).standardError("lift_scale").orElseThrow();
            shared += CALIBRATION
                    .withErrorsSharedWithinFlights()
                    .fit(SCALED, flights)
                    .standardError("lift_scale")
                    .orElseThrow();
        }
        assertTrue(shared > 1.1 * independent, shared + " against " + independent);
    }
}
