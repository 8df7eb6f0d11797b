package dev.teeward.flight.aero;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.flight.aero.HandFlight.Air;
import dev.teeward.flight.aero.TypicalShots.Residual;
import dev.teeward.flight.aero.TypicalShots.Shot;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresBuilder;
import org.apache.commons.math3.fitting.leastsquares.LevenbergMarquardtOptimizer;
import org.apache.commons.math3.fitting.leastsquares.MultivariateJacobianFunction;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.util.Pair;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * The typical ball against the shots it was fitted to, flown by Commons Math. Agreement here is calibration, never
 * validation: the shots are common practice, recalled from memory.
 */
class TypicalCalibrationTest {
    private static final List<Shot> SHOTS = TypicalShots.read();

    // Limits agreed for the fit before it was made.
    private static final double CARRY_RMS_PERCENT = 2.0;
    private static final double CARRY_WORST_PERCENT = 5.0;
    private static final double APEX_RMS_YARDS = 1.3;
    private static final double DESCENT_RMS_DEGREES = 2.3;
    private static final double LEFT_OUT_CARRY_RMS_PERCENT = 2.8;

    @Test
    void residualsOfTheFourteenShotsKeepTheirLimits() {
        List<Residual> residuals = SHOTS.stream()
                .map(shot -> shot.residual(TypicalAerodynamics.of()))
                .toList();
        String table = table(residuals);
        assertEquals(14, residuals.size());
        assertTrue(rms(residuals, Residual::carry) <= CARRY_RMS_PERCENT, table);
        assertTrue(residuals.stream().allMatch(r -> Math.abs(r.carry()) <= CARRY_WORST_PERCENT), table);
        assertTrue(rms(residuals, Residual::apex) <= APEX_RMS_YARDS, table);
        assertTrue(rms(residuals, Residual::descent) <= DESCENT_RMS_DEGREES, table);
    }

    /** The numbers that the Javadoc states, to the digits it states them. */
    @Test
    void residualsAreTheDocumentedOnes() {
        List<Residual> residuals = SHOTS.stream()
                .map(shot -> shot.residual(TypicalAerodynamics.of()))
                .toList();
        assertEquals(1.6, rms(residuals, Residual::carry), 0.05);
        assertEquals(
                4.1,
                residuals.stream().mapToDouble(r -> Math.abs(r.carry())).max().orElseThrow(),
                0.05);
        assertEquals(1.2, rms(residuals, Residual::apex), 0.05);
        assertEquals(2.0, rms(residuals, Residual::descent), 0.05);
    }

    /** typical_aerodynamics_left_out.csv, made by the script beside it; the sweep below makes it again. */
    @Test
    void residualsOfShotsLeftOutKeepTheirLimit() {
        List<Residual> leftOut = TypicalShots.leftOut();
        assertEquals(14, leftOut.size());
        assertTrue(rms(leftOut, Residual::carry) <= LEFT_OUT_CARRY_RMS_PERCENT);
        assertEquals(1.6, rms(leftOut, Residual::carry), 0.05);
        assertEquals(1.3, rms(leftOut, Residual::apex), 0.05);
        assertEquals(2.2, rms(leftOut, Residual::descent), 0.05);
        assertEquals(4.2, worst(leftOut, Residual::carry), 0.05);
        assertEquals(2.7, worst(leftOut, Residual::apex), 0.05);
        assertEquals(4.5, worst(leftOut, Residual::descent), 0.05);
    }

    private static double worst(List<Residual> residuals, ToDoubleFunction<Residual> part) {
        return residuals.stream()
                .mapToDouble(r -> Math.abs(part.applyAsDouble(r)))
                .max()
                .orElseThrow();
    }

    /** Which bounds of the fit are active, as the Javadoc says; the constants are rounded to three digits. */
    @Test
    void fourBoundsOfTheFitAreActive() {
        AerodynamicModel ball = TypicalAerodynamics.of();
        double drag = PatentTable.ROWS.stream()
                .mapToDouble(row -> ball.dragCoefficient(row.re(), row.s()) / row.drag() - 1.0)
                .max()
                .orElseThrow();
        assertEquals(0.18, drag, 0.002);
        assertEquals(0.398, ball.liftCoefficient(0.0, 1e12), 0.0005);
        assertEquals(0.52, ball.dragCoefficient(4e4, 0.0), 0.001);
        assertEquals(0.24, ball.dragCoefficient(1.84e5, 0.106), 0.001);
    }

    @Test
    void domainHoldsEveryMomentOfTheCalibrationFlights() {
        ModelDomain domain = TypicalAerodynamics.of().domain();
        for (Shot shot : SHOTS) {
            HandFlight.of(
                    TypicalAerodynamics.of(),
                    Air.CALIBRATION,
                    shot.mph() * HandFlight.MPH,
                    shot.launch(),
                    shot.rpm(),
                    m -> assertTrue(domain.contains(m.re(), m.s()), () -> shot.name() + " at " + m));
        }
        PatentTable.ROWS.forEach(row -> assertTrue(domain.contains(row.re(), row.s())));
    }

    /** The shot that the fit without it misses most, fitted without it again. */
    @Test
    void theWorstOfTheShotsLeftOutIsFoundAgain() {
        List<Residual> leftOut = TypicalShots.leftOut();
        int worst = 0;
        for (int i = 1; i < leftOut.size(); i++) {
            if (Math.abs(leftOut.get(i).carry()) > Math.abs(leftOut.get(worst).carry())) {
                worst = i;
            }
        }
        List<Shot> others = new ArrayList<>(SHOTS);
        Shot left = others.remove(worst);
        Residual found = left.residual(
                new SevenConstants(fit(others, new double[] {0.209, 0.274, 0.368, 0.61, 0.23, 0.168, 0.200})));
        assertEquals(leftOut.get(worst).carry(), found.carry(), 0.1, left.name());
    }

    /** Fits all shots, and each thirteen, by Commons Math instead of SciPy, and must find what the script found. */
    @Test
    @Tag("sweep")
    void fittingAgainFindsTheSameConstantsAndTheSameLeftOutResiduals() {
        double[] full = fit(SHOTS, new double[] {0.21, 0.28, 0.37, 0.61, 0.23, 0.17, 0.20});
        double[] published = {0.209, 0.274, 0.368, 0.61, 0.23, 0.168, 0.200};
        for (int i = 0; i < full.length; i++) {
            assertEquals(published[i], full[i], 0.02 * published[i], "constant " + i);
        }
        List<Residual> expected = TypicalShots.leftOut();
        List<Residual> found = new ArrayList<>();
        for (int i = 0; i < SHOTS.size(); i++) {
            List<Shot> others = new ArrayList<>(SHOTS);
            Shot left = others.remove(i);
            found.add(left.residual(new SevenConstants(fit(others, full))));
            assertEquals(expected.get(i).carry(), found.get(i).carry(), 0.1, left.name());
        }
        assertTrue(rms(found, Residual::carry) <= LEFT_OUT_CARRY_RMS_PERCENT, table(found));
    }

    /** The form with free constants, in its written order. */
    private static final class SevenConstants implements AerodynamicModel {
        private final double[] p;

        SevenConstants(double[] p) {
            this.p = p;
        }

        @Override
        public double dragCoefficient(double re, double s) {
            double q = re * 1e-5 / p[3];
            return p[0] + p[1] * s / (1.0 + s) + p[2] / (1.0 + q * q * q * q);
        }

        @Override
        public double liftCoefficient(double re, double s) {
            double q = re / 1.5e5;
            double t = p[6] / (s + p[6]);
            return (p[4] + p[5] / (1.0 + q * q * q * q)) * (1.0 - t * t);
        }
    }

    /** Scaled residuals, then by how much each bound is missed, as in the script. */
    private static double[] misfit(List<Shot> shots, double[] p) {
        AerodynamicModel model = new SevenConstants(p);
        int rows = PatentTable.ROWS.size();
        double[] out = new double[3 * shots.size() + 2 * rows + 3];
        int n = 0;
        for (Shot shot : shots) {
            Residual r = shot.residual(model);
            out[n++] = r.carry() / 1.8;
            out[n++] = r.apex() / 1.2;
            out[n++] = r.descent() / 2.0;
        }
        for (PatentTable row : PatentTable.ROWS) {
            out[n++] = missed(0.18 - Math.abs(model.dragCoefficient(row.re(), row.s()) / row.drag() - 1.0));
            out[n++] = missed(0.18 - Math.abs(model.liftCoefficient(row.re(), row.s()) / row.lift() - 1.0));
        }
        out[n++] = missed(0.398 - p[4] - p[5]);
        out[n++] = missed(0.52 - model.dragCoefficient(4e4, 0.0));
        out[n] = missed(0.24 - model.dragCoefficient(1.84e5, 0.106));
        return out;
    }

    private static double missed(double room) {
        return 1000.0 * Math.min(0.0, room);
    }

    private static double[] fit(List<Shot> shots, double[] start) {
        MultivariateJacobianFunction function = point -> {
            double[] p = point.toArray();
            double[] value = misfit(shots, p);
            RealMatrix jacobian = new Array2DRowRealMatrix(value.length, p.length);
            for (int j = 0; j < p.length; j++) {
                double h = 1e-5 * p[j];
                double[] up = p.clone();
                double[] down = p.clone();
                up[j] += h;
                down[j] -= h;
                double[] above = misfit(shots, up);
                double[] below = misfit(shots, down);
                for (int i = 0; i < value.length; i++) {
                    jacobian.setEntry(i, j, (above[i] - below[i]) / (2.0 * h));
                }
            }
            return new Pair<>(new ArrayRealVector(value), jacobian);
        };
        return new LevenbergMarquardtOptimizer()
                .withCostRelativeTolerance(1e-9)
                .withParameterRelativeTolerance(1e-8)
                .optimize(new LeastSquaresBuilder()
                        .start(start)
                        .model(function)
                        .target(new double[misfit(shots, start).length])
                        .lazyEvaluation(false)
                        .maxEvaluations(500)
                        .maxIterations(500)
                        .build())
                .getPoint()
                .toArray();
    }

    private static double rms(List<Residual> residuals, ToDoubleFunction<Residual> part) {
        return HandFlight.rms(residuals.stream().mapToDouble(part).toArray());
    }

    private static String table(List<Residual> residuals) {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < residuals.size(); i++) {
            Residual r = residuals.get(i);
            text.append(String.format(
                    Locale.ROOT,
                    "%n%-32s carry %+.2f %%, apex %+.2f yd, descent %+.2f deg",
                    SHOTS.get(i).name(),
                    r.carry(),
                    r.apex(),
                    r.descent()));
        }
        return text.toString();
    }
}
