package dev.teeward.flight.study;

import static dev.teeward.flight.study.SensitivityTest.launch;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.flight.Ball;
import dev.teeward.flight.Flight;
import dev.teeward.flight.FlightModel;
import dev.teeward.flight.LaunchConditions;
import dev.teeward.flight.LaunchTolerance;
import dev.teeward.flight.aero.TypicalAerodynamics;
import dev.teeward.flight.ground.Ground;
import dev.teeward.flight.ground.TurfClass;
import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Interval;
import dev.teeward.quantity.Length;
import dev.teeward.quantity.Speed;
import dev.teeward.quantity.SpinRate;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.UnaryOperator;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresBuilder;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresOptimizer;
import org.apache.commons.math3.fitting.leastsquares.LevenbergMarquardtOptimizer;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.util.Pair;
import org.junit.jupiter.api.Test;

class CalibrationTest {
    private static final ParametricAerodynamics SCALED = ParametricAerodynamics.scaled(TypicalAerodynamics.of());
    private static final Calibration CALIBRATION = Calibration.withDefaults();

    @Test
    void flightsWithoutErrorsGiveTheBallBack() {
        List<ObservedFlight> flights =
                SyntheticFlights.of(SyntheticFlights.ball(1.07, 0.93), 12, 0.0, new SplittableRandom(1L));
        for (RobustLoss loss : RobustLoss.values()) {
            CalibrationResult fit = CALIBRATION.withLoss(loss).fit(SCALED, flights);
            assertEquals(1.07, fit.values()[0], 1e-5, loss.name());
            assertEquals(0.93, fit.values()[1], 1e-5, loss.name());
            assertEquals(48, fit.observations());
        }
    }

    @Test
    void trackPointsGiveTheBallBack() {
        Flight flight =
                FlightModel.of(Ball.of(SyntheticFlights.ball(0.95, 1.10))).fly(launch(65.0, 12.0, 1.0, 3_000.0, 4.0));
        List<ObservedFlight.TrackPoint> track = flight.trajectory().every(0.25).stream()
                .map(p -> new ObservedFlight.TrackPoint(
                        p.timeSeconds(),
                        p.downrange().meters(),
                        p.height().meters(),
                        p.side().meters()))
                .toList();
        CalibrationResult fit = CALIBRATION
                .withTrackStandardDeviation(0.2)
                .fit(SCALED, List.of(ObservedFlight.of(flight.launch()).withTrack(track)));
        assertEquals(0.95, fit.values()[0], 1e-5);
        assertEquals(1.10, fit.values()[1], 1e-5);
        assertEquals(3 * track.size(), fit.observations());
    }

    /** Least squares against Commons Math 3, which forms its own differences: point and covariance. */
    @Test
    void leastSquaresAreThoseOfAnotherLibrary() {
        List<ObservedFlight> flights =
                SyntheticFlights.of(SyntheticFlights.ball(1.04, 0.97), 16, 1.0, new SplittableRandom(2L));
        CalibrationResult fit = CALIBRATION.withLoss(RobustLoss.SQUARES).fit(SCALED, flights);
        int n = fit.observations();
        LeastSquaresOptimizer.Optimum other = new LevenbergMarquardtOptimizer()
                .optimize(new LeastSquaresBuilder()
                        .start(new double[] {1.0, 1.0})
                        .target(new double[n])
                        .lazyEvaluation(false)
                        .maxEvaluations(200)
                        .maxIterations(200)
                        .model(p -> {
                            RealMatrix jacobian = new Array2DRowRealMatrix(n, 2);
                            for (int j = 0; j < 2; j++) {
                                double[] above = misfit(
                                        flights,
                                        p.getEntry(0) + (j == 0 ? 1e-3 : 0),
                                        p.getEntry(1) + (j == 1 ? 1e-3 : 0));
                                double[] below = misfit(
                                        flights,
                                        p.getEntry(0) - (j == 0 ? 1e-3 : 0),
                                        p.getEntry(1) - (j == 1 ? 1e-3 : 0));
                                for (int i = 0; i < n; i++) {
                                    jacobian.setEntry(i, j, (above[i] - below[i]) / 2e-3);
                                }
                            }
                            return new Pair<>(
                                    new ArrayRealVector(misfit(flights, p.getEntry(0), p.getEntry(1))), jacobian);
                        })
                        .build());
        double variance = other.getCost() * other.getCost() / (n - 2);
        RealMatrix covariance = other.getCovariances(1e-12).scalarMultiply(variance);
        for (int j = 0; j < 2; j++) {
            String name = SCALED.names().get(j);
            double error = Math.sqrt(covariance.getEntry(j, j));
            assertEquals(other.getPoint().getEntry(j), fit.values()[j], 1e-3 * error, name);
            assertEquals(error, fit.standardError(name).orElseThrow(), 1e-3 * error, name);
        }
        double r = covariance.getEntry(0, 1) / Math.sqrt(covariance.getEntry(0, 0) * covariance.getEntry(1, 1));
        assertEquals(r, fit.correlation("drag_scale", "lift_scale").orElseThrow(), 1e-3);
        // Student's t, 0.975, 62 degrees of freedom: 1.99897 (standard tables).
        double half = 1.99897 * fit.standardError("drag_scale").orElseThrow();
        assertEquals(half, fit.estimate("drag_scale").interval().halfWidth(), 1e-4 * half);
        // Nearly a straight line over so short an interval, so the profile is nearly the tangent's interval.
        Interval profile = fit.profileInterval("drag_scale");
        assertEquals(fit.estimate("drag_scale").interval().lower(), profile.lower(), 0.05 * half);
        assertEquals(fit.estimate("drag_scale").interval().upper(), profile.upper(), 0.05 * half);
    }

    private static double[] misfit(List<ObservedFlight> flights, double drag, double lift) {
        List<Double> rows = new ArrayList<>();
        for (ObservedFlight seen : flights) {
            Flight flight = seen.conditions()
                    .withBall(Ball.of(SyntheticFlights.ball(drag, lift)))
                    .fly(seen.launch());
            for (FlightOutput output : seen.outputs()) {
                rows.add((output.of(flight) - seen.value(output).orElseThrow()) / output.standardDeviation());
            }
        }
        return rows.stream().mapToDouble(Double::doubleValue).toArray();
    }

    /** The estimating equations of an M-estimate: the sum of psi times each derivative is 0 at the fit. */
    @Test
    void robustFitsSolveTheirEquations() {
        List<ObservedFlight> flights =
                SyntheticFlights.of(SyntheticFlights.ball(1.04, 0.97), 16, 1.0, new SplittableRandom(3L));
        for (RobustLoss loss : List.of(RobustLoss.HUBER, RobustLoss.TUKEY)) {
            CalibrationResult fit = CALIBRATION.withLoss(loss).fit(SCALED, flights);
            double[] p = fit.values();
            double[] rows = misfit(flights, p[0], p[1]);
            for (int j = 0; j < 2; j++) {
                double[] above = misfit(flights, p[0] + (j == 0 ? 1e-3 : 0), p[1] + (j == 1 ? 1e-3 : 0));
                double[] below = misfit(flights, p[0] - (j == 0 ? 1e-3 : 0), p[1] - (j == 1 ? 1e-3 : 0));
                double sum = 0.0;
                double size = 0.0;
                for (int i = 0; i < rows.length; i++) {
                    double u = rows[i] / fit.scale();
                    double term = u * loss.weight(u) * (above[i] - below[i]) / 2e-3;
                    sum += term;
                    size += Math.abs(term);
                }
                assertEquals(0.0, sum, 1e-3 * size, loss.name());
            }
            assertEquals(1.0, fit.scale(), 0.3);
        }
    }

    @Test
    void misreadsDoNotBendARobustFit() {
        List<ObservedFlight> flights = new ArrayList<>(
                SyntheticFlights.of(SyntheticFlights.ball(1.0, 1.0), 24, 1.0, new SplittableRandom(4L)));
        for (int i = 0; i < 24; i += 8) {
            ObservedFlight seen = flights.get(i);
            flights.set(
                    i,
                    seen.with(FlightOutput.CARRY, seen.value(FlightOutput.CARRY).orElseThrow() - 60.0));
        }
        CalibrationResult plain = CALIBRATION.withLoss(RobustLoss.SQUARES).fit(SCALED, flights);
        CalibrationResult tukey = CALIBRATION.withLoss(RobustLoss.TUKEY).fit(SCALED, flights);
        CalibrationResult huber = CALIBRATION.fit(SCALED, flights);
        double off = Math.abs(plain.values()[0] - 1.0);
        assertTrue(Math.abs(huber.values()[0] - 1.0) < 0.4 * off, huber + " " + plain);
        assertTrue(Math.abs(tukey.values()[0] - 1.0) < 0.4 * off, tukey + " " + plain);
        for (CalibrationResult fit : List.of(huber, tukey)) {
            assertTrue(fit.suspects().keySet().containsAll(List.of("flight 1 (carry)", "flight 9 (carry)")));
            assertTrue(fit.warnings().stream().anyMatch(w -> w.code().equals("residuals-far-out")));
            assertTrue(fit.suspects().size() <= 5, fit.suspects().toString());
        }
        assertTrue(huber.method().startsWith("huber, "), huber.method());
        // Least squares weigh a misread in full, and still name it.
        assertTrue(
                plain.suspects().keySet().containsAll(List.of("flight 1 (carry)", "flight 9 (carry)")),
                () -> plain.suspects().toString());
        assertTrue(plain.suspects().values().stream().allMatch(weight -> weight > 0.0 && weight < 0.3));
        assertTrue(
                plain.warnings().stream()
                        .anyMatch(w -> w.code().equals("residuals-far-out")
                                && w.message().contains("counted in full")),
                () -> plain.warnings().toString());
    }

    @Test
    void whatCannotBeToldApartIsNamed() {
        List<ObservedFlight> flights =
                SyntheticFlights.of(SyntheticFlights.ball(1.1, 1.0), 8, 0.5, new SplittableRandom(5L));
        ParametricAerodynamics product = ParametricAerodynamics.of(p -> SyntheticFlights.ball(p[0] * p[1], p[2]))
                .with("one", 1.0, 0.5, 2.0)
                .with("other", 1.0, 0.5, 2.0)
                .with("lift", 1.0, 0.5, 2.0);
        CalibrationResult fit = CALIBRATION.fit(product, flights);
        assertEquals(1.1, fit.values()[0] * fit.values()[1], 0.03);
        assertTrue(
                fit.warnings().stream()
                        .anyMatch(w -> w.code().equals("parameters-not-determined")
                                && w.message().contains("one, other")),
                () -> fit.warnings().toString());
        assertFalse(fit.estimate("one").interval().bounded());
        assertTrue(fit.standardError("one").isEmpty());
        assertTrue(fit.correlation("one", "lift").isEmpty());
        assertFalse(fit.profileInterval("other").bounded());
        assertTrue(fit.estimate("lift").interval().bounded());
        // The carry of one kind of shot alone: more drag and more lift look alike.
        List<ObservedFlight> carries = new ArrayList<>();
        for (int i = 0; i < 6; i++) {
            carries.add(ObservedFlight.of(launch(60.0 + 0.2 * i, 12.0, 0.0, 3_000.0, 0.0))
                    .with(FlightOutput.CARRY, 180.0 + i % 2));
        }
        CalibrationResult alike = CALIBRATION.fit(SCALED, carries);
        assertTrue(
                alike.warnings().stream()
                        .anyMatch(w -> w.code().equals("parameters-hard-to-tell-apart")
                                && w.message().contains("drag_scale and lift_scale")),
                () -> alike.warnings().toString());
    }

    @Test
    void aParameterOnItsBoundIsSaid() {
        List<ObservedFlight> flights =
                SyntheticFlights.of(SyntheticFlights.ball(1.3, 1.0), 8, 0.5, new SplittableRandom(6L));
        ParametricAerodynamics narrow =
                ParametricAerodynamics.of(p -> SyntheticFlights.ball(p[0], 1.0)).with("drag_scale", 1.0, 0.9, 1.1);
        CalibrationResult fit = CALIBRATION.fit(narrow, flights);
        assertEquals(1.1, fit.values()[0], 1e-9);
        assertTrue(fit.warnings().stream().anyMatch(w -> w.code().equals("parameter-on-bound")));
        assertEquals(Double.POSITIVE_INFINITY, fit.profileInterval("drag_scale").upper(), 0.0);
    }

    /** Normal theory for one parameter: precision-weighted means, with the flights' own estimate from a fit without prior. */
    @Test
    void poolingIsThePrecisionWeightedMean() {
        List<ObservedFlight> flights =
                SyntheticFlights.of(SyntheticFlights.ball(1.12, 1.0), 3, 1.0, new SplittableRandom(7L));
        ParametricAerodynamics free =
                ParametricAerodynamics.of(p -> SyntheticFlights.ball(p[0], 1.0)).with("drag_scale", 1.0, 0.5, 2.0);
        CalibrationResult own = CALIBRATION.withLoss(RobustLoss.SQUARES).fit(free, flights);
        CalibrationResult pooled =
                CALIBRATION.withLoss(RobustLoss.SQUARES).fit(free.withPrior("drag_scale", 0.02), flights);
        double seen = squares(flights, own.values()[0]) / (own.observations() - 1);
        double variance = Math.pow(own.standardError("drag_scale").orElseThrow(), 2) / seen;
        double share = variance / (variance + 0.02 * 0.02);
        assertEquals(share, pooled.shareOfPrior("drag_scale"), 0.03);
        assertEquals(share + (1.0 - share) * own.values()[0], pooled.values()[0], 0.003);
        assertTrue(pooled.values()[0] < own.values()[0] && pooled.values()[0] > 1.0);
        assertEquals(1.0, pooled.scale(), 0.0);
        assertEquals(0.0, own.shareOfPrior("drag_scale"), 0.0);
        assertEquals(Double.POSITIVE_INFINITY, pooled.degreesOfFreedom(), 0.0);
    }

    @Test
    void priorsAndErrorsSharedWithinFlightsAreRefusedTogether() {
        List<ObservedFlight> flights =
                SyntheticFlights.of(SyntheticFlights.ball(1.0, 1.0), 3, 1.0, new SplittableRandom(7L));
        IllegalArgumentException e = assertThrows(
                IllegalArgumentException.class,
                () -> CALIBRATION.withErrorsSharedWithinFlights().fit(SCALED.withPrior("drag_scale", 0.02), flights));
        assertTrue(e.getMessage().contains("priors"), e.getMessage());
        assertEquals(
                "errors shared within flights, t intervals",
                Covariance.of(
                                new FitProblem(SCALED, new Residuals(flights, java.util.Map.of(), 0.3)),
                                SCALED.start(),
                                RobustLoss.SQUARES,
                                1.0,
                                true)
                        .method());
    }

    /**
     * Generalised least squares written anew: the whole covariance of all observations, with derivatives of the flights to their
     * launches over a tenth of the step of the library's, its inverse by Commons Math, and Gauss and Newton.
     */
    @Test
    void launchTolerancesGiveGeneralisedLeastSquares() {
        List<ObservedFlight> flights = SyntheticFlights.of(
                SyntheticFlights.ball(1.04, 0.97), 8, 1.0, SyntheticFlights::device, new SplittableRandom(21L));
        CalibrationResult fit = CALIBRATION
                .withLoss(RobustLoss.SQUARES)
                .withLaunchTolerance(SyntheticFlights::device)
                .fit(SCALED, flights);
        double[] at = fit.values();
        double[] rows = misfit(flights, at[0], at[1]);
        int n = rows.length;
        RealMatrix covariance = new Array2DRowRealMatrix(n, n);
        for (int i = 0; i < n; i++) {
            covariance.setEntry(i, i, 1.0);
        }
        for (int k = 0; k < flights.size(); k++) {
            LaunchTolerance device = SyntheticFlights.device(flights.get(k).launch());
            List<UnaryOperator<LaunchConditions>> errors = new ArrayList<>();
            for (double sign : new double[] {0.1, -0.1}) {
                errors.add(l -> l.toBuilder()
                        .ballSpeed(Speed.ofMetersPerSecond(l.ballSpeed().metersPerSecond()
                                + sign * device.ballSpeed().metersPerSecond()))
                        .build());
                errors.add(l -> l.toBuilder()
                        .launchAngle(Angle.ofRadians(l.launchAngle().radians()
                                + sign * device.launchAngle().radians()))
                        .build());
                errors.add(l -> l.toBuilder()
                        .startDirection(Angle.ofRadians(l.startDirection().radians()
                                + sign * device.startDirection().radians()))
                        .build());
                errors.add(l -> l.toBuilder()
                        .spinRate(SpinRate.ofRpm(
                                l.spinRate().rpm() + sign * device.spinRate().rpm()))
                        .build());
                errors.add(l -> l.toBuilder()
                        .axisTilt(Angle.ofRadians(l.axisTilt().radians()
                                + sign * device.axisTilt().radians()))
                        .build());
            }
            for (int e = 0; e < 5; e++) {
                double[] up = moved(flights.get(k), errors.get(e), at);
                double[] down = moved(flights.get(k), errors.get(e + 5), at);
                for (int i = 0; i < 4; i++) {
                    for (int j = 0; j < 4; j++) {
                        covariance.addToEntry(
                                4 * k + i, 4 * k + j, (up[i] - down[i]) * (up[j] - down[j]) / (0.2 * 0.2));
                    }
                }
            }
        }
        RealMatrix inverse = MatrixUtils.inverse(covariance);
        RealMatrix jacobian = new Array2DRowRealMatrix(n, 2);
        for (int j = 0; j < 2; j++) {
            double[] above = misfit(flights, at[0] + (j == 0 ? 1e-3 : 0), at[1] + (j == 1 ? 1e-3 : 0));
            double[] below = misfit(flights, at[0] - (j == 0 ? 1e-3 : 0), at[1] - (j == 1 ? 1e-3 : 0));
            for (int i = 0; i < n; i++) {
                jacobian.setEntry(i, j, (above[i] - below[i]) / 2e-3);
            }
        }
        RealMatrix parameters =
                MatrixUtils.inverse(jacobian.transpose().multiply(inverse).multiply(jacobian));
        double[] score = jacobian.transpose().multiply(inverse).operate(rows);
        double[] step = parameters.operate(score);
        double chi = new ArrayRealVector(rows).dotProduct(inverse.operate(new ArrayRealVector(rows)));
        for (int j = 0; j < 2; j++) {
            double error = Math.sqrt(parameters.getEntry(j, j) * chi / (n - 2));
            String name = SCALED.names().get(j);
            assertEquals(0.0, step[j], 0.01 * error, name);
            assertEquals(error, fit.standardError(name).orElseThrow(), 0.005 * error, name);
        }
        assertTrue(fit.method().endsWith(", tolerances of the launch propagated"), fit.method());
        CalibrationResult exact = CALIBRATION.withLoss(RobustLoss.SQUARES).fit(SCALED, flights);
        assertFalse(exact.method().contains("propagated"), exact.method());
    }

    private static double[] moved(ObservedFlight seen, UnaryOperator<LaunchConditions> error, double[] at) {
        Flight flight = seen.conditions()
                .withBall(Ball.of(SyntheticFlights.ball(at[0], at[1])))
                .fly(error.apply(seen.launch()));
        return seen.outputs().stream()
                .mapToDouble(output -> output.of(flight) / output.standardDeviation())
                .toArray();
    }

    /** No tolerance at all is the fit of exact launches; with a prior, a tolerance leaves more to the prior. */
    @Test
    void launchTolerancesComeWithPriorsAndVanishWhenTheyAreNothing() {
        List<ObservedFlight> flights = SyntheticFlights.of(
                SyntheticFlights.ball(1.04, 0.97), 4, 1.0, SyntheticFlights::device, new SplittableRandom(22L));
        CalibrationResult exact = CALIBRATION.fit(ParametricAerodynamics.ball(), flights);
        CalibrationResult nothing =
                CALIBRATION.withLaunchTolerance(SyntheticFlights.EXACT).fit(ParametricAerodynamics.ball(), flights);
        CalibrationResult noisy =
                CALIBRATION.withLaunchTolerance(LaunchTolerance.typical()).fit(ParametricAerodynamics.ball(), flights);
        for (String name : SCALED.names()) {
            assertEquals(exact.estimate(name).value(), nothing.estimate(name).value(), 1e-6);
            assertEquals(exact.shareOfPrior(name), nothing.shareOfPrior(name), 1e-6);
            assertTrue(noisy.shareOfPrior(name) > 1.05 * exact.shareOfPrior(name), name);
        }
    }

    @Test
    void aToleranceBeyondWhereThereAreFlightsIsRefused() {
        // Half a degree of launch angle is not enough to rise 4 m.
        FlightModel hill = FlightModel.standard().withLandingElevation(Length.ofMeters(4.0));
        Flight flight = hill.fly(launch(40.0, 12.0, 0.0, 3_000.0, 0.0));
        List<ObservedFlight> up = List.of(ObservedFlight.of(flight.launch())
                .withConditions(hill)
                .with(FlightOutput.CARRY, flight.carry().meters())
                .with(FlightOutput.APEX, flight.apex().meters())
                .with(FlightOutput.FLIGHT_TIME, flight.flightTimeSeconds()));
        IllegalArgumentException e = assertThrows(
                IllegalArgumentException.class,
                () -> CALIBRATION
                        .withLaunchTolerance(LaunchTolerance.typical().withLaunchAngle(Angle.ofDegrees(11.5)))
                        .fit(SCALED, up));
        assertTrue(e.getMessage().startsWith("the tolerance of launch_angle"), e.getMessage());
    }

    @Test
    void totalsAreNotCalibratedOn() {
        FlightModel turf = FlightModel.standard().withGround(Ground.of(TurfClass.FAIRWAY));
        List<ObservedFlight> flights =
                SyntheticFlights.of(SyntheticFlights.ball(1.0, 1.0), 8, 1.0, new SplittableRandom(23L));
        List<ObservedFlight> more = flights.stream()
                .map(seen -> seen.withConditions(turf.withAir(seen.conditions().air())
                                .withWind(seen.conditions().wind()))
                        .with(FlightOutput.TOTAL, 500.0))
                .toList();
        CalibrationResult fit = CALIBRATION.fit(SCALED, more);
        assertEquals(CALIBRATION.fit(SCALED, flights).values()[0], fit.values()[0], 1e-9);
        assertEquals(32, fit.observations());
        assertTrue(fit.warnings().stream().anyMatch(w -> w.code().equals("rest-not-used")));
    }

    private static double squares(List<ObservedFlight> flights, double drag) {
        double sum = 0.0;
        for (double r : misfit(flights, drag, 1.0)) {
            sum += r * r;
        }
        return sum;
    }

    @Test
    void oneShotOfABallStaysNearTheTypicalOneAndManyDoNot() {
        CalibrationResult one = CALIBRATION.fit(
                ParametricAerodynamics.ball(),
                SyntheticFlights.of(SyntheticFlights.ball(1.1, 0.9), 1, 0.2, new SplittableRandom(8L)));
        CalibrationResult many = CALIBRATION.fit(
                ParametricAerodynamics.ball(),
                SyntheticFlights.of(SyntheticFlights.ball(1.1, 0.9), 60, 0.9, new SplittableRandom(9L)));
        assertTrue(one.shareOfPrior("drag_scale") > 0.05, one::toString);
        assertTrue(many.shareOfPrior("drag_scale") < 0.05, many::toString);
        assertEquals(1.1, many.values()[0], 0.03);
        assertEquals(0.9, many.values()[1], 0.03);
        assertTrue(many.model().reference().startsWith("Typical"));
    }

    /**
     * The published spread of balls: 18 m of carry over 13 models; the mean range of 13 normal values is 3.336 standard deviations
     * (the constant d2 of control charts, standard tables).
     */
    @Test
    void thePriorOfABallSpreadsADriveAsBallsDo() {
        Sensitivity.Result s = Sensitivity.of(FlightModel.standard()).at(launch(72.0, 11.0, 0.0, 2_600.0, 0.0));
        TolerancePropagation.Result spread = TolerancePropagation.withDefaults()
                .linear(s, Tolerances.none().with(FlightInput.DRAG_SCALE, 0.03).with(FlightInput.LIFT_SCALE, 0.03));
        double meters = spread.standardDeviation(FlightOutput.CARRY);
        assertEquals(18.0 / 3.336, meters, 0.5);
    }

    @Test
    void noiseUnlikeTheStatedOneIsSaidWithAPrior() {
        CalibrationResult fit = CALIBRATION.fit(
                ParametricAerodynamics.ball(),
                SyntheticFlights.of(SyntheticFlights.ball(1.0, 1.0), 8, 5.0, new SplittableRandom(10L)));
        assertTrue(fit.warnings().stream().anyMatch(w -> w.code().equals("noise-unlike-stated")));
    }

    @Test
    void wrongInputIsRefused() {
        List<ObservedFlight> one =
                List.of(ObservedFlight.of(launch(60.0, 12.0, 0.0, 3_000.0, 0.0)).with(FlightOutput.CARRY, 190.0));
        assertThrows(IllegalArgumentException.class, () -> CALIBRATION.fit(SCALED, one));
        assertThrows(IllegalArgumentException.class, () -> CALIBRATION.fit(ParametricAerodynamics.ball(), List.of()));
        assertThrows(
                IllegalArgumentException.class,
                () -> CALIBRATION.fit(ParametricAerodynamics.of(p -> TypicalAerodynamics.of()), one));
        assertThrows(IllegalArgumentException.class, () -> CALIBRATION.withStandardDeviation(FlightOutput.CARRY, 0.0));
        assertThrows(IllegalArgumentException.class, () -> CALIBRATION.withTrackStandardDeviation(Double.NaN));
        assertThrows(IllegalArgumentException.class, () -> CALIBRATION.withLevel(0.0));
        assertThrows(IllegalArgumentException.class, () -> SCALED.with("drag_scale", 1.0, 0.5, 2.0));
        assertThrows(IllegalArgumentException.class, () -> SCALED.with("Drag", 1.0, 0.5, 2.0));
        assertThrows(IllegalArgumentException.class, () -> SCALED.with("more", 3.0, 0.5, 2.0));
        assertThrows(IllegalArgumentException.class, () -> SCALED.withPrior("none", 1.0));
        assertThrows(IllegalArgumentException.class, () -> SCALED.withPrior("drag_scale", -1.0));
        assertThrows(IllegalArgumentException.class, () -> SCALED.model(1.0));
        assertThrows(IllegalArgumentException.class, () -> one.get(0).with(FlightOutput.APEX, Double.NaN));
        assertThrows(IllegalArgumentException.class, () -> new ObservedFlight.TrackPoint(-1.0, 0.0, 0.0, 0.0));
        CalibrationResult fit = CALIBRATION.fit(ParametricAerodynamics.ball(), one);
        assertThrows(IllegalArgumentException.class, () -> fit.estimate("none"));
    }
}
