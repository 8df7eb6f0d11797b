package dev.teeward.fitting.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.quantity.Warning;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Trend, runs and serial dependence within clubs, where the clubs' difference would hide or feign them. */
class WithinClubSequenceTest {
    private static final ShotOrder ABBA = ShotOrder.of(0, 1, 1, 0, 0, 1, 1, 0, 0, 1, 1, 0, 0, 1, 1, 0, 0, 1, 1, 0);
    private static final int SESSIONS = 20_000;

    private static double[] session(SplittableRandom random, double apart, double drift) {
        double[] y = new double[20];
        Arrays.setAll(y, i -> 150.0 + apart * ABBA.club(i) + drift * i + random.nextGaussian());
        return y;
    }

    /** The closed form: the mean of each club off, by hand. */
    private static double[] byHand(double[] y, ShotOrder order) {
        double[] sum = new double[order.clubs()];
        int[] n = new int[order.clubs()];
        for (int i = 0; i < y.length; i++) {
            sum[order.club(i)] += y[i];
            n[order.club(i)]++;
        }
        double[] rest = new double[y.length];
        Arrays.setAll(rest, i -> y[i] - sum[order.club(i)] / n[order.club(i)]);
        return rest;
    }

    @Test
    void withinClubsIsTheTestOfWhatIsLeftOfTheClubMeans() {
        double[] y = session(new SplittableRandom(5L), 15.0, 0.1);
        double[] rest = byHand(y, ABBA);
        MannKendallTest trend = MannKendallTest.withDefaults();
        MannKendallTest.Result a = trend.test(y, ABBA);
        MannKendallTest.Result b = trend.test(rest);
        assertEquals(b.slope().pValue(), a.slope().pValue());
        assertEquals(
                b.slope().estimate().interval().upper(),
                a.slope().estimate().interval().upper(),
                1e-12);
        assertEquals(b.slope().estimate().value(), a.slope().estimate().value(), 1e-12);
        assertEquals(b.tau(), a.tau());
        assertTrue(a.slope().method().contains("within clubs"), a.slope().method());
        assertEquals(
                RunsTest.withDefaults().test(rest).runs(),
                RunsTest.withDefaults().test(y, ABBA).runs());
        assertEquals(
                RunsTest.withDefaults().test(rest).pValue(),
                RunsTest.withDefaults().test(y, ABBA).pValue());
        SerialDependenceTest.Result whole = SerialDependenceTest.withDefaults().test(rest);
        SerialDependenceTest.Result within = SerialDependenceTest.withDefaults().test(y, ABBA);
        assertEquals(whole.lagOne().orElseThrow(), within.lagOne().orElseThrow(), 1e-12);
        assertEquals(whole.vonNeumannP(), within.vonNeumannP(), 1e-12);
        assertEquals(whole.ljungBoxP(), within.ljungBoxP(), 1e-12);
    }

    /** Clubs that scatter alike and steadily: rounding of the means makes no ranks. */
    @Test
    void roundingIsNoTrend() {
        double[] flat = new double[20];
        Arrays.setAll(flat, i -> ABBA.club(i) == 0 ? 170.1 : 151.7);
        MannKendallTest.Result r = MannKendallTest.withDefaults().test(flat, ABBA);
        assertEquals(1.0, r.slope().pValue());
        assertTrue(r.slope().warnings().stream().anyMatch(w -> w.code().equals("no-spread")));
        assertEquals(1.0, RunsTest.withDefaults().test(flat, ABBA).pValue());
        assertEquals(1.0, SerialDependenceTest.withDefaults().test(flat, ABBA).ljungBoxP());
        double[] pairs = {150.1, 170.3, 170.7, 150.5, 150.8, 171.0, 171.2, 151.0};
        ShotOrder order = ShotOrder.of(0, 1, 1, 0, 0, 1, 1, 0);
        // Both clubs leave -0.5, -0.1, 0.2, 0.4: four ties, so nothing exact.
        assertTrue(MannKendallTest.withDefaults()
                .test(pairs, order)
                .slope()
                .method()
                .contains("normal approximation"));
    }

    /** How far apart the clubs are does not matter: shifting one by 15 leaves every answer. */
    @Test
    void theDifferenceOfTheClubsDoesNotMatter() {
        double[] near = session(new SplittableRandom(6L), 0.0, 0.2);
        double[] far = near.clone();
        Arrays.setAll(far, i -> near[i] + 15.0 * ABBA.club(i));
        MannKendallTest trend = MannKendallTest.withDefaults();
        assertEquals(
                trend.test(near, ABBA).slope().pValue(),
                trend.test(far, ABBA).slope().pValue(),
                1e-12);
        assertEquals(
                trend.test(near, ABBA).slope().estimate().value(),
                trend.test(far, ABBA).slope().estimate().value(),
                1e-12);
        assertTrue(trend.test(far, ABBA).slope().pValue() < 0.05
                && trend.test(far).slope().pValue() > 0.05);
        assertEquals(
                RunsTest.withDefaults().test(near, ABBA).pValue(),
                RunsTest.withDefaults().test(far, ABBA).pValue());
        assertEquals(
                SerialDependenceTest.withDefaults().test(near, ABBA).lagOne().orElseThrow(),
                SerialDependenceTest.withDefaults().test(far, ABBA).lagOne().orElseThrow(),
                1e-12);
    }

    /** A line without scatter: in ABBA the slope comes back whole. */
    @Test
    void theSlopeOfALineComesBack() {
        double[] y = new double[20];
        Arrays.setAll(y, i -> 150.0 + 15.0 * ABBA.club(i) + 0.25 * i);
        MannKendallTest.Result r = MannKendallTest.withDefaults().test(y, ABBA);
        assertEquals(0.25, r.slope().estimate().value(), 1e-12);
        assertEquals(1.0, r.tau(), 1e-12);
    }

    @Test
    void whatTheOrderSpoilsIsSaid() {
        ShotOrder blocks = ShotOrder.of(0, 0, 0, 1, 1, 1, 2);
        double[] y = {1.0, 2.5, 3.0, 7.0, 8.5, 9.0, 4.0};
        List<Warning> trend =
                MannKendallTest.withDefaults().test(y, blocks).slope().warnings();
        assertTrue(trend.stream().anyMatch(w -> w.code().equals("clubs-in-blocks")));
        for (List<Warning> warnings : List.of(
                trend,
                RunsTest.withDefaults().test(y, blocks).warnings(),
                SerialDependenceTest.withDefaults().test(y, blocks).warnings())) {
            assertTrue(warnings.stream().anyMatch(w -> w.code().equals("one-shot-club")));
        }
        ShotOrder two = ShotOrder.of(0, 1);
        double[] pair = {1.0, 2.0};
        assertTrue(RunsTest.withDefaults().test(pair, two).warnings().stream()
                .anyMatch(w -> w.code().equals("no-spread")));
        assertTrue(SerialDependenceTest.withDefaults().test(pair, two).warnings().stream()
                .anyMatch(w -> w.code().equals("too-few-shots")));
        assertThrows(
                IllegalArgumentException.class,
                () -> MannKendallTest.withDefaults().test(pair, blocks));
        assertThrows(
                IllegalArgumentException.class, () -> RunsTest.withDefaults().test(pair, blocks));
        assertThrows(
                IllegalArgumentException.class,
                () -> SerialDependenceTest.withDefaults().test(pair, blocks));
    }

    /**
     * Ten and ten shots in ABBA, clubs 15 standard deviations apart, without and with a drift of 0.15 a shot. A rate of 5 % has
     * a standard deviation of 0.154 points.
     */
    @Test
    @Tag("sweep")
    void sizesWithinClubsAreNearTheirLevel() {
        SplittableRandom random = new SplittableRandom(8L);
        int[] still = new int[5];
        int[] drifting = new int[3];
        for (int s = 0; s < SESSIONS; s++) {
            double[] y = session(random, 15.0, 0.0);
            SerialDependenceTest.Result serial =
                    SerialDependenceTest.withDefaults().test(y, ABBA);
            still[0] +=
                    found(MannKendallTest.withDefaults().test(y, ABBA).slope().pValue());
            still[1] += found(RunsTest.withDefaults().test(y, ABBA).pValue());
            still[2] += found(serial.ljungBoxP());
            still[3] += found(serial.vonNeumannP());
            still[4] += found(Drift.withDefaults().test(y, ABBA).pValue());
            double[] z = session(random, 15.0, 0.15);
            drifting[0] +=
                    found(MannKendallTest.withDefaults().test(z, ABBA).slope().pValue());
            drifting[1] += found(MannKendallTest.withDefaults().test(z).slope().pValue());
            drifting[2] += found(Drift.withDefaults().test(z, ABBA).pValue());
        }
        System.err.printf(
                Locale.ROOT,
                "SWEEP sizes within clubs: Mann-Kendall %.4f, runs %.4f, Ljung-Box %.4f, von Neumann %.4f, least"
                        + " squares %.4f%n",
                rate(still[0]),
                rate(still[1]),
                rate(still[2]),
                rate(still[3]),
                rate(still[4]));
        System.err.printf(
                Locale.ROOT,
                "SWEEP a drift of 0.15 found: Mann-Kendall within clubs %.4f, of raw values %.4f, least squares %.4f%n",
                rate(drifting[0]),
                rate(drifting[1]),
                rate(drifting[2]));
        assertTrue(rate(still[0]) < 0.055, "Mann-Kendall");
        assertTrue(rate(still[1]) < 0.055, "runs");
        assertTrue(rate(still[2]) < 0.065, "Ljung-Box");
        assertTrue(rate(still[3]) < 0.065, "von Neumann");
        assertEquals(0.05, rate(still[4]), 0.005, "least squares");
        assertTrue(rate(drifting[0]) > 0.9 * rate(drifting[2]), "power");
        assertTrue(rate(drifting[1]) < 0.2, "raw values hide the drift");
    }

    private static int found(double p) {
        return p <= 0.05 ? 1 : 0;
    }

    private static double rate(int found) {
        return found / (double) SESSIONS;
    }
}
