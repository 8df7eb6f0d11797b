package dev.teeward.flight.aero;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.ObjectInputStream;
import java.io.ObjectOutputStream;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

/** The published facts about coefficients that a typical ball must obey, and its bounds over the grid of full shots. */
class TypicalAerodynamicsTest extends AerodynamicModelContract {
    private static final AerodynamicModel BALL = TypicalAerodynamics.of();
    private static final double RE_STEP = 2e3;
    private static final double S_STEP = 0.01;

    @Override
    protected AerodynamicModel model() {
        return BALL;
    }

    /** What does something at every state of the grid Re 4e4 to 2.4e5, S 0 to 0.6. */
    private interface State {
        void at(double re, double s);
    }

    private static void overTheGrid(State state) {
        for (int i = 0; i <= 100; i++) {
            for (int j = 0; j <= 60; j++) {
                state.at(4e4 + RE_STEP * i, S_STEP * j);
            }
        }
    }

    @Test
    void formulaInItsWrittenForm() {
        overTheGrid((re, s) -> {
            double drag = 0.209 + 0.274 * s / (1.0 + s) + 0.368 / (1.0 + Math.pow(re / 0.61e5, 4.0));
            double lift =
                    (0.230 + 0.168 / (1.0 + Math.pow(re / 1.5e5, 4.0))) * (1.0 - Math.pow(0.200 / (s + 0.200), 2.0));
            assertEquals(drag, BALL.dragCoefficient(re, s), 1e-14);
            assertEquals(lift, BALL.liftCoefficient(re, s), 1e-14);
        });
    }

    /** US 6,729,976, table 1, from memory. */
    @Test
    void withinTwentyPercentOfThePatentTable() {
        for (PatentTable row : PatentTable.ROWS) {
            assertEquals(row.drag(), BALL.dragCoefficient(row.re(), row.s()), 0.2 * row.drag(), row::toString);
            assertEquals(row.lift(), BALL.liftCoefficient(row.re(), row.s()), 0.2 * row.lift(), row::toString);
        }
    }

    @Test
    void dragIsPositiveAndLiftIsZeroOnlyWithoutSpin() {
        overTheGrid((re, s) -> {
            assertTrue(BALL.dragCoefficient(re, s) > 0.15, "a dimpled ball in flight never has so little drag");
            assertTrue(s == 0.0 ? BALL.liftCoefficient(re, s) == 0.0 : BALL.liftCoefficient(re, s) > 0.0);
        });
    }

    @Test
    void liftNeverExceedsTwoFifths() {
        overTheGrid((re, s) -> assertTrue(BALL.liftCoefficient(re, s) <= 0.40));
        assertTrue(BALL.liftCoefficient(0.0, 1e9) <= 0.40);
    }

    /** Pooled measurements peak at 0.305 near S 0.31 (Lyu and others 2018, fit from memory): flat from there on. */
    @Test
    void liftLevelsOffNearThreeTenthsAtOneHundredAndTwentyThousand() {
        double atThreeTenths = BALL.liftCoefficient(1.2e5, 0.3);
        assertEquals(0.30, atThreeTenths, 0.03);
        assertEquals(0.30, BALL.liftCoefficient(1.2e5, 0.6), 0.04);
        double first = BALL.liftCoefficient(1.2e5, 0.1);
        double last = BALL.liftCoefficient(1.2e5, 0.6) - BALL.liftCoefficient(1.2e5, 0.5);
        assertTrue(last < 0.1 * first, "a tenth of spin ratio near 0.6 adds less than a tenth of what the first adds");
    }

    /**
     * The level by Reynolds number as documented, over the whole range: it is not one number. Against the pooled peak of
     * 0.305 (Lyu and others 2018, from memory) it lies up to 0.07 above for a slow ball and 0.07 below for a fast one.
     */
    @Test
    void levelOfTheLiftFallsWithReynoldsNumberAsDocumented() {
        double[][] documented = {{6e4, 0.37}, {1e5, 0.35}, {1.2e5, 0.33}, {1.5e5, 0.29}, {2.3e5, 0.24}};
        for (double[] row : documented) {
            assertEquals(row[1], BALL.liftCoefficient(row[0], 0.6), 0.005, "Re " + row[0]);
        }
        for (double re = 4.7e4; re <= 2.3e5; re += RE_STEP) {
            String where = "Re " + re;
            double level = BALL.liftCoefficient(re, 0.6);
            assertEquals(0.305, level, 0.07, where);
            assertTrue(level > BALL.liftCoefficient(re + RE_STEP, 0.6), where);
            double last = level - BALL.liftCoefficient(re, 0.5);
            assertTrue(last < 0.1 * BALL.liftCoefficient(re, 0.1), where);
            assertTrue(BALL.liftCoefficient(re, 1.0) <= 0.40, where);
        }
        for (double re = 8e4; re <= 1.2e5; re += RE_STEP) {
            assertEquals(0.305, BALL.liftCoefficient(re, 0.3), 0.03, "Re " + re);
        }
    }

    @Test
    void moreSpinMeansMoreLiftAndMoreDrag() {
        overTheGrid((re, s) -> {
            assertTrue(BALL.liftCoefficient(re, s + S_STEP) > BALL.liftCoefficient(re, s));
            assertTrue(BALL.dragCoefficient(re, s + S_STEP) > BALL.dragCoefficient(re, s));
        });
    }

    /** Drag crisis of dimpled balls: about 0.5 at Re 4e4 falling to about 0.25 by 8e4 to 9e4, then flat (from memory). */
    @Test
    void dragRisesBelowNineByTenToTheFour() {
        for (int j = 0; j <= 60; j++) {
            double s = S_STEP * j;
            for (double re = 4e4; re < 9e4; re += RE_STEP) {
                assertTrue(BALL.dragCoefficient(re, s) > BALL.dragCoefficient(re + RE_STEP, s) + 1e-4);
            }
            double fast = BALL.dragCoefficient(2.4e5, s);
            assertTrue(BALL.dragCoefficient(1.2e5, s) - fast < 0.05, "flat above the crisis");
        }
        assertEquals(0.50, BALL.dragCoefficient(4e4, 0.0), 0.05);
        assertEquals(0.25, BALL.dragCoefficient(9e4, 0.0), 0.05);
        assertEquals(0.22, BALL.dragCoefficient(2e5, 0.0), 0.03);
    }

    /**
     * Halving the step of a smooth function quarters its second difference, up to the fourth power of the step; at a kink it
     * only halves, at a jump it stays. A slope that jumps by 1e-6 over the step would be seen.
     */
    @Test
    void smoothOverTheGrid() {
        double re = 500.0;
        double s = 0.002;
        overTheGrid((re0, s0) -> {
            assertSmooth(t -> BALL.dragCoefficient(re0 + re * t, s0));
            assertSmooth(t -> BALL.liftCoefficient(re0 + re * t, s0));
            assertSmooth(t -> BALL.dragCoefficient(re0, s0 + s * t));
            assertSmooth(t -> BALL.liftCoefficient(re0, s0 + s * t));
        });
    }

    private static void assertSmooth(DoubleUnaryOperator f) {
        double wide = f.applyAsDouble(0.0) - 2.0 * f.applyAsDouble(1.0) + f.applyAsDouble(2.0);
        double narrow = f.applyAsDouble(0.5) - 2.0 * f.applyAsDouble(1.0) + f.applyAsDouble(1.5);
        assertEquals(wide, 4.0 * narrow, 1e-6);
    }

    /** WO 2001/019464, claim 1: lift above 0.18 at Re 70,000 and 2,000 rpm, which is S 0.18. */
    @Test
    void liftOfTheSlowBallExceedsTheClaimedLeast() {
        assertTrue(BALL.liftCoefficient(7e4, 0.18) > 0.18);
    }

    /** A reduced-distance ball is claimed with drag above 0.251 at Re 184,000 and S 0.106 (US 2009/0124428, derived). */
    @Test
    void dragAtDriveSpeedLiesBelowTheReducedDistanceBall() {
        double drag = BALL.dragCoefficient(1.84e5, 0.106);
        assertTrue(drag < 0.251, () -> "drag " + drag);
    }

    /**
     * WO 2001/019464 claims drag below 0.232 at Re 180,000 and 3,000 rpm, which is S 0.109 in standard air, for a long ball.
     * A typical ball misses that by less than a twentieth: a stated deviation.
     */
    @Test
    void dragOfTheLongBallIsMissedByLessThanATwentieth() {
        double diameter = 0.04267;
        double speed = 1.8e5 * 1.7894e-5 / (1.225 * diameter);
        double s = diameter / 2.0 * 3_000.0 * Math.PI / 30.0 / speed;
        assertEquals(0.232, BALL.dragCoefficient(1.8e5, s), 0.05 * 0.232);
    }

    /** Lyu, Kensrud, Smith, Tosaya 2018: Cl = 1.99 S - 3.25 S^2, pooled over 13 ball models; constants from memory. */
    @Test
    void liftFollowsThePooledFitOfThirteenModels() {
        for (double s : new double[] {0.1, 0.15, 0.2, 0.25, 0.3}) {
            double pooled = 1.99 * s - 3.25 * s * s;
            assertEquals(pooled, BALL.liftCoefficient(1.2e5, s), 0.2 * pooled, "S " + s);
        }
    }

    /** Jenkins, Arellano, Ross, Snell 2018: six balls without spin, 0.24 to 0.7 over Re 3e4 to 1.08e5. */
    @Test
    void dragWithoutSpinLiesWithinTheSixBallsMeasured() {
        for (double re = 3e4; re <= 1.08e5; re += 1e3) {
            double drag = BALL.dragCoefficient(re, 0.0);
            assertTrue(drag > 0.24 && drag < 0.7, () -> "drag " + drag);
        }
    }

    @Test
    void boundsHoldFarOutside() {
        for (double re : new double[] {0.0, 1e-300, 1.0, 1e5, 1e9, 1e30}) {
            for (double s : new double[] {0.0, 1e-300, 1e-12, 0.3, 1e9, 1e300, Double.MAX_VALUE}) {
                double drag = BALL.dragCoefficient(re, s);
                double lift = BALL.liftCoefficient(re, s);
                assertTrue(drag > 0.2 && drag < 0.852, () -> "drag " + drag);
                assertTrue(lift >= 0.0 && lift < 0.3981, () -> "lift " + lift);
            }
        }
    }

    @Test
    void documentedExampleHolds() {
        assertEquals(0.23965, BALL.dragCoefficient(1.84e5, 0.106), 1e-5);
        assertEquals(0.16123, BALL.liftCoefficient(1.84e5, 0.106), 1e-5);
        assertEquals("TypicalAerodynamics", BALL.toString());
    }

    @Test
    void bothModelsSurviveSerializationAsTheOneInstance() throws IOException, ClassNotFoundException {
        for (AerodynamicModel model : new AerodynamicModel[] {BALL, SmitsSmith1994.of()}) {
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            try (ObjectOutputStream out = new ObjectOutputStream(bytes)) {
                out.writeObject(model);
            }
            try (ObjectInputStream in = new ObjectInputStream(new ByteArrayInputStream(bytes.toByteArray()))) {
                assertSame(model, in.readObject());
            }
        }
    }
}
