package dev.teeward.flight.aero;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;

/** Of a number that is linear in drag and lift, everything has a closed form: {@code sd^2 = a^2 + b^2 + 2 c a b}. */
class CoefficientSpreadTest {
    private static final AerodynamicModel BALL = TypicalAerodynamics.of();

    private static double linear(AerodynamicModel m) {
        return -300.0 * m.dragCoefficient(1.5e5, 0.2) + 100.0 * m.liftCoefficient(1.5e5, 0.2);
    }

    @Test
    void theBallsAtTheEndsLieSoManyDeviationsOff() {
        double drag = -300.0 * 0.04 * BALL.dragCoefficient(1.5e5, 0.2);
        double lift = 100.0 * 0.03 * BALL.liftCoefficient(1.5e5, 0.2);
        for (double correlation : new double[] {-1.0, -0.6, 0.0, 0.3, 1.0}) {
            CoefficientSpread spread = CoefficientSpread.of(0.04, 0.03).withCorrelation(correlation);
            double sd = Math.sqrt(drag * drag + lift * lift + 2.0 * correlation * drag * lift);
            assertEquals(sd, spread.standardDeviation(BALL, CoefficientSpreadTest::linear), 1e-9);
            for (double z : new double[] {-1.96, 0.5, 3.0}) {
                double there = linear(spread.ballAt(BALL, CoefficientSpreadTest::linear, z));
                assertEquals(linear(BALL) + z * sd, there, 1e-9);
            }
        }
    }

    @Test
    void aNumberThatNothingMovesIsThatOfTheBallItself() {
        assertSame(BALL, CoefficientSpread.of(0.0, 0.0).ballAt(BALL, CoefficientSpreadTest::linear, 1.0));
        assertSame(BALL, CoefficientSpread.of(0.1, 0.1).ballAt(BALL, m -> 7.0, 1.0));
    }

    @Test
    void refusesWhatNoBallIs() {
        CoefficientSpread spread = CoefficientSpread.of(0.04, 0.03);
        assertThrows(IllegalArgumentException.class, () -> spread.ballAt(BALL, CoefficientSpreadTest::linear, 3.1));
        assertThrows(
                IllegalArgumentException.class, () -> spread.ballAt(BALL, CoefficientSpreadTest::linear, Double.NaN));
    }
}
