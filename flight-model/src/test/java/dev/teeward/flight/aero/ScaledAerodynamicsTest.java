package dev.teeward.flight.aero;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;

/** A model times two factors, and the spread of balls that is made of such models. */
class ScaledAerodynamicsTest extends AerodynamicModelContract {
    @Override
    protected AerodynamicModel model() {
        return AerodynamicModel.scaled(TypicalAerodynamics.of(), 1.05, 0.9);
    }

    @Test
    void multipliesAndKeepsTheRest() {
        AerodynamicModel ball = TypicalAerodynamics.of();
        assertEquals(1.05 * ball.dragCoefficient(1.5e5, 0.1), model().dragCoefficient(1.5e5, 0.1));
        assertEquals(0.9 * ball.liftCoefficient(1.5e5, 0.1), model().liftCoefficient(1.5e5, 0.1));
        assertEquals(ball.domain(), model().domain());
        assertEquals(ball.momentSlope(), model().momentSlope());
        assertEquals(ball.spread(), model().spread());
        assertTrue(model().reference().endsWith("drag times 1.050, lift times 0.9000"), model().reference());
        assertEquals(model().reference(), model().toString());
        assertThrows(IllegalArgumentException.class, () -> AerodynamicModel.scaled(ball, 0.0, 1.0));
        assertThrows(IllegalArgumentException.class, () -> AerodynamicModel.scaled(ball, 1.0, Double.NaN));
    }

    /** A result linear in the logarithm-free factors: its variance is that of the sum, (2 a + 3 b)'s with correlation c. */
    @Test
    void standardDeviationOfALinearResultIsExact() {
        AerodynamicModel flat = AerodynamicModel.combining((re, s) -> 2.0, (re, s) -> 3.0);
        ToDoubleFunction<AerodynamicModel> sum = m -> m.dragCoefficient(1e5, 0.1) + m.liftCoefficient(1e5, 0.1);
        double a = 2.0 * 0.03;
        double b = 3.0 * 0.05;
        CoefficientSpread spread = CoefficientSpread.of(0.03, 0.05);
        assertEquals(Math.sqrt(a * a + b * b), spread.standardDeviation(flat, sum), 1e-12);
        assertEquals(a + b, spread.withCorrelation(1.0).standardDeviation(flat, sum), 1e-12);
        assertEquals(b - a, spread.withCorrelation(-1.0).standardDeviation(flat, sum), 1e-12);
        assertEquals(0.0, CoefficientSpread.of(0.0, 0.0).standardDeviation(flat, sum));
    }

    /** Mean, standard deviations and correlation of 20,000 balls; four standard errors each. */
    @Test
    void drawnBallsHaveTheStatedSpread() {
        AerodynamicModel one = AerodynamicModel.combining((re, s) -> 1.0, (re, s) -> 1.0);
        CoefficientSpread spread = CoefficientSpread.of(0.03, 0.05).withCorrelation(-0.4);
        SplittableRandom random = new SplittableRandom(20_260_201L);
        int n = 20_000;
        double[] sums = new double[5];
        for (int i = 0; i < n; i++) {
            AerodynamicModel ball = spread.draw(one, random);
            double a = (ball.dragCoefficient(1e5, 0.1) - 1.0) / 0.03;
            double b = (ball.liftCoefficient(1e5, 0.1) - 1.0) / 0.05;
            double[] terms = {a, b, a * a, b * b, a * b};
            for (int k = 0; k < terms.length; k++) {
                sums[k] += terms[k] / n;
            }
        }
        double error = 4.0 / Math.sqrt(n);
        assertEquals(0.0, sums[0], error);
        assertEquals(0.0, sums[1], error);
        assertEquals(1.0, sums[2], error * Math.sqrt(2.0));
        assertEquals(1.0, sums[3], error * Math.sqrt(2.0));
        assertEquals(-0.4, sums[4], error * Math.sqrt(1.0 + 0.16));
    }

    @Test
    void spreadIsAValue() {
        CoefficientSpread spread = CoefficientSpread.of(0.03, 0.05);
        assertEquals(0.03, spread.drag());
        assertEquals(0.05, spread.lift());
        assertEquals(0.0, spread.correlation());
        assertEquals(spread, CoefficientSpread.of(0.03, 0.05));
        assertEquals(spread.hashCode(), CoefficientSpread.of(0.03, 0.05).hashCode());
        List<CoefficientSpread> others = new ArrayList<>();
        others.add(CoefficientSpread.of(0.02, 0.05));
        others.add(CoefficientSpread.of(0.03, 0.04));
        others.add(spread.withCorrelation(0.5));
        others.forEach(other -> assertTrue(!spread.equals(other), other::toString));
        assertThrows(IllegalArgumentException.class, () -> CoefficientSpread.of(-0.1, 0.0));
        assertThrows(IllegalArgumentException.class, () -> CoefficientSpread.of(5.0, 0.0));
        assertThrows(IllegalArgumentException.class, () -> spread.withCorrelation(1.5));
        assertTrue(spread.toString().startsWith("drag 3.0 %"), spread.toString());
    }
}
