package dev.teeward.fitting.summary;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.fitting.internal.TailDraws;
import dev.teeward.quantity.Estimate;
import java.util.Random;
import org.junit.jupiter.api.Test;

class RobustPatternTest {
    private static double[][] shots(int n, double sd, long seed) {
        Random random = new Random(seed);
        double[][] columns = new double[2][n];
        for (int i = 0; i < n; i++) {
            columns[0][i] = 150.0 + sd * random.nextGaussian();
            columns[1][i] = sd * random.nextGaussian();
        }
        return columns;
    }

    /** However far a mishit flies, the robust pattern stays where it is, and the plain one does not. */
    @Test
    void aMishitDoesNotMoveIt() {
        double[][] near = shots(10, 4.0, 1L);
        near[0][3] = 90.0;
        double[][] far = shots(10, 4.0, 1L);
        far[0][3] = 10.0;
        RobustPattern.Result a = RobustPattern.withDefaults().describe(near[0], near[1]);
        RobustPattern.Result b = RobustPattern.withDefaults().describe(far[0], far[1]);
        assertEquals(a.centerCarry(), b.centerCarry(), 1e-9);
        assertEquals(a.centerSide(), b.centerSide(), 1e-9);
        assertEquals(a.radius(0.95), b.radius(0.95));
        assertTrue(a.used() < 10 && a.n() == 10);
        double plain = LandingPattern.withDefaults()
                .describe(far[0], far[1])
                .radiusAboutCenter(0.95)
                .value();
        assertTrue(plain > 3.0 * b.radius(0.95).orElseThrow().value(), "" + plain);
        assertEquals(150.0, b.centerCarry(), 5.0);
        assertEquals(150.0, b.median().x(), 5.0);
    }

    /** The least draws of a level: (1 - level) / 2 of one more than them is one. */
    @Test
    void aHighLevelTakesMoreResamplesOrSaysSo() {
        assertEquals(new TailDraws(399, 10, false), TailDraws.of(399, 0.95));
        assertEquals(new TailDraws(399, 20, false), TailDraws.of(399, 0.9));
        assertEquals(new TailDraws(999, 1, false), TailDraws.of(999, 0.998));
        assertEquals(new TailDraws(1_999, 1, false), TailDraws.of(399, 0.999));
        assertEquals(new TailDraws(9_999, 1, true), TailDraws.of(399, 0.999999));
        assertEquals(new TailDraws(1_999_999, 1, false), TailDraws.of(1_999_999, 0.999999));
        double[][] good = shots(10, 4.0, 3L);
        RobustPattern.Result high = RobustPattern.withDefaults().withLevel(0.98).describe(good[0], good[1]);
        RobustPattern.Result higher =
                RobustPattern.withDefaults().withLevel(0.999).describe(good[0], good[1]);
        assertTrue(higher.radius(0.5).orElseThrow().interval().width()
                > high.radius(0.5).orElseThrow().interval().width());
        assertTrue(higher.method().contains("1999 resamples"), higher.method());
        assertTrue(higher.warnings().stream().noneMatch(w -> w.code().equals("beyond-resamples")));
        assertTrue(RobustPattern.withDefaults().withLevel(0.999999).describe(good[0], good[1]).warnings().stream()
                .anyMatch(w -> w.code().equals("beyond-resamples")));
    }

    /** Many good round shots of spread 4: R50 = 1.17741 and R95 = 2.44775 standard deviations (Rayleigh). */
    @Test
    void manyGoodShotsGiveTheRayleighRadii() {
        double[][] good = shots(2_000, 4.0, 2L);
        RobustPattern.Result r = RobustPattern.withDefaults().describe(good[0], good[1]);
        Estimate half = r.radius(0.5).orElseThrow();
        assertEquals(4.0 * 1.17741, half.value(), 0.15);
        assertEquals(4.0 * 2.44775, r.radius(0.95).orElseThrow().value(), 0.35);
        assertTrue(half.interval().contains(4.0 * 1.17741));
        assertTrue(half.interval().upper() - half.interval().lower() < 0.8, half.toString());
        assertEquals(0.95, r.ellipse(0.95).orElseThrow().level());
        assertEquals(4.0 * 2.44775, r.ellipse(0.95).orElseThrow().semiMajor(), 0.5);
    }

    @Test
    void fewShotsHaveWideIntervalsThatHoldTheEstimate() {
        double[][] few = shots(8, 4.0, 3L);
        RobustPattern.Result r =
                RobustPattern.withDefaults().withLevel(0.9).withSeed(5L).describe(few[0], few[1]);
        Estimate ninetyFive = r.radius(0.95).orElseThrow();
        assertTrue(ninetyFive.interval().contains(ninetyFive.value()));
        assertEquals(0.9, ninetyFive.interval().level());
        assertTrue(ninetyFive.interval().upper() > 1.4 * ninetyFive.interval().lower());
        assertTrue(r.warnings().stream().anyMatch(w -> w.code().equals("few-shots")));
        assertTrue(r.method().contains("seed 5"), r.method());
    }

    @Test
    void shotsOnALineHaveNoRadii() {
        double[] carry = {150, 151, 152, 153, 154, 155, 149};
        double[] side = {0, 1, 2, 3, 4, 5, -1};
        RobustPattern.Result r = RobustPattern.withDefaults().describe(carry, side);
        assertTrue(r.radius(0.5).isEmpty() && r.ellipse(0.5).isEmpty());
        assertTrue(r.warnings().stream().anyMatch(w -> w.code().equals("exact-fit")));
        assertEquals(152.0, r.centerCarry(), 1e-6);
    }

    /** The outline says itself that it must not be compared. */
    @Test
    void anOutlineWarnsOfTheNumberOfShots() {
        PatternExtent extent = PatternExtent.of(new double[] {0, 4, 0}, new double[] {0, 0, 3});
        assertEquals("grows-with-shots", extent.warnings().get(0).code());
        assertTrue(extent.warnings().get(0).message().contains("3 shots"));
        assertEquals(2.5, extent.circleRadius(), 1e-12);
        assertEquals(6.0, extent.hullArea(), 1e-12);
    }

    @Test
    void whatCannotBeDescribedIsRefused() {
        double[] five = {1, 2, 3, 4, 5};
        assertThrows(
                IllegalArgumentException.class,
                () -> RobustPattern.withDefaults().describe(five, five));
        assertThrows(
                IllegalArgumentException.class,
                () -> RobustPattern.withDefaults().withResamples(98));
        assertThrows(
                IllegalArgumentException.class,
                () -> RobustPattern.withDefaults().withLevel(1.0));
    }
}
