package dev.teeward.fitting.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** Known sample sizes and the monotony of plans; more against R and mpmath in the comparison's reference test. */
class PairsNeededTest {
    private static final PairsNeeded PLAN = PairsNeeded.withDefaults();

    /** Sizes by R 4.2.2 power.t.test(strict = TRUE), rounded up. */
    @Test
    void knownSizes() {
        double[] effects = {0.5, 0.75, 1.0, 1.25, 1.5, 2.0};
        int[] pairs = {34, 16, 10, 8, 6, 5};
        int[] each = {64, 29, 17, 12, 9, 6};
        for (int i = 0; i < effects.length; i++) {
            assertEquals(pairs[i], PLAN.forDifference(effects[i], 1.0).shots());
            assertEquals(
                    each[i], PLAN.unpaired().forDifference(-effects[i], 1.0).shots());
            assertTrue(PLAN.forDifference(effects[i], 1.0).achieved() >= 0.8);
        }
    }

    @Test
    void packageExample() {
        assertEquals(14, PLAN.forDifference(5.0, 6.0).shots());
        assertEquals(12, PLAN.forHalfWidth(4.0, 6.0).shots());
        assertEquals(14, PLAN.forHalfWidth(4.0, 6.0, 0.8).shots());
        assertEquals(0.64, PLAN.assurance(12.0, 4.0, 6.0), 0.005);
        assertTrue(PLAN.forHalfWidth(4.0, 6.0).achieved() <= 4.0);
        assertTrue(PLAN.unpaired().forHalfWidth(4.0, 6.0).shots() > 12);
        assertEquals(2, PLAN.forHalfWidth(1e6, 1.0).shots());
    }

    /** At ten pairs the 95 % interval of a standard deviation is 0.688 to 1.826 of it (chi-square tables). */
    @Test
    void pilotRangeIsAboutSevenfold() {
        PairsNeeded.Range range = PLAN.fromPilot(0.5, 1.0, 10);
        assertEquals(34, range.central().shots());
        assertEquals(PLAN.forDifference(0.5, 0.68784).shots(), range.low().shots());
        assertEquals(PLAN.forDifference(0.5, 1.82561).shots(), range.high().shots());
        assertTrue(range.safe().shots() > range.central().shots()
                && range.safe().shots() < range.high().shots());
        double ratio = range.high().exact() / range.low().exact();
        assertTrue(ratio > 5.5 && ratio < 7.1, "ratio was " + ratio);
    }

    @Test
    void impossiblePlansAreRefused() {
        assertThrows(IllegalArgumentException.class, () -> PLAN.forDifference(0.0, 1.0));
        assertThrows(IllegalArgumentException.class, () -> PLAN.forDifference(1e-9, 1.0));
        assertThrows(IllegalArgumentException.class, () -> PLAN.forDifference(1.0, 0.0));
        assertThrows(IllegalArgumentException.class, () -> PLAN.forDifference(Double.NaN, 1.0));
        assertThrows(IllegalArgumentException.class, () -> PLAN.forHalfWidth(0.0, 1.0));
        assertThrows(IllegalArgumentException.class, () -> PLAN.power(1.0, 1.0, 1.0));
        assertThrows(IllegalArgumentException.class, () -> PLAN.withPower(0.05));
        assertThrows(IllegalArgumentException.class, () -> PLAN.withAlpha(0.0));
        assertThrows(IllegalArgumentException.class, () -> PLAN.fromPilot(1.0, 1.0, 1));
    }

    /** 50 and 19 shots a club: exact F power by R 4.2.2. */
    @Test
    void spreadsNeedManyShots() {
        assertEquals(50, SpreadShotsNeeded.withDefaults().forRatio(1.5));
        assertEquals(19, SpreadShotsNeeded.withDefaults().forRatio(2.0));
        assertEquals(19, SpreadShotsNeeded.withDefaults().forRatio(0.5));
        assertTrue(SpreadShotsNeeded.withDefaults().withPower(0.9).forRatio(2.0) > 19);
        assertThrows(
                IllegalArgumentException.class,
                () -> SpreadShotsNeeded.withDefaults().forRatio(1.0));
        assertThrows(
                IllegalArgumentException.class,
                () -> SpreadShotsNeeded.withDefaults().forRatio(0.0));
        assertThrows(
                IllegalArgumentException.class,
                () -> SpreadShotsNeeded.withDefaults().withPower(1.0));
    }

    @Test
    void equivalenceSizeReachesItsPowerAndOneLessDoesNot() {
        EquivalenceShotsNeeded plan = EquivalenceShotsNeeded.withDefaults().unpaired();
        int shots = plan.forMargin(1.0, 1.0);
        assertTrue(plan.power(shots, 0.0, 1.0, 1.0) >= 0.8);
        assertTrue(plan.power(shots - 1, 0.0, 1.0, 1.0) < 0.8);
        assertTrue(plan.withPower(0.9).forMargin(1.0, 1.0) > shots);
        assertTrue(EquivalenceShotsNeeded.withDefaults().forMargin(1.0, 1.0) < shots);
        assertThrows(IllegalArgumentException.class, () -> plan.forMargin(1e-4, 1.0));
        assertThrows(IllegalArgumentException.class, () -> plan.power(1, 0.0, 1.0, 1.0));
        assertThrows(IllegalArgumentException.class, () -> plan.withPower(0.0));
    }
}
