package dev.teeward.flight.aero;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.flight.Ball;
import dev.teeward.flight.FlightModel;
import dev.teeward.flight.LaunchConditions;
import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Speed;
import dev.teeward.quantity.SpinRate;
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

    /**
     * The carry of a 6-iron by 300 drawn balls: its standard deviation is the first-order one within three standard errors,
     * 3/sqrt(600), and the interval of two standard deviations holds 95.4 percent of them within three binomial ones.
     */
    @Test
    void flyingDrawnBallsGivesTheSpreadOfCarry() {
        LaunchConditions launch = LaunchConditions.builder()
                .ballSpeed(Speed.ofMph(118.0))
                .launchAngle(Angle.ofDegrees(17.2))
                .spinRate(SpinRate.ofRpm(6_400.0))
                .build();
        ToDoubleFunction<AerodynamicModel> carry =
                m -> FlightModel.of(Ball.of(m)).fly(launch).carry().meters();
        CoefficientSpread spread = CoefficientSpread.of(0.04, 0.05).withCorrelation(0.3);
        double expected = spread.standardDeviation(TypicalAerodynamics.of(), carry);
        double middle = carry.applyAsDouble(TypicalAerodynamics.of());
        SplittableRandom random = new SplittableRandom(20_260_202L);
        int n = 300;
        double squares = 0.0;
        int inside = 0;
        for (int i = 0; i < n; i++) {
            double off = carry.applyAsDouble(spread.draw(TypicalAerodynamics.of(), random)) - middle;
            squares += off * off / n;
            inside += Math.abs(off) <= 2.0 * expected ? 1 : 0;
        }
        assertEquals(1.0, Math.sqrt(squares) / expected, 3.0 / Math.sqrt(2.0 * n));
        assertEquals(0.954, (double) inside / n, 3.0 * Math.sqrt(0.954 * 0.046 / n));
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
