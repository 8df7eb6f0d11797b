package dev.teeward.fitting.pool;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.quantity.Warning;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

class RandomEffectsTest {
    /** Thirteen trials of a vaccine against tuberculosis, Colditz and others 1994: cases and others, vaccinated and not. */
    private static final int[][] TRIALS = {
        {4, 119, 11, 128},
        {6, 300, 29, 274},
        {3, 228, 11, 209},
        {62, 13536, 248, 12619},
        {33, 5036, 47, 5761},
        {180, 1361, 372, 1079},
        {8, 2537, 10, 619},
        {505, 87886, 499, 87892},
        {29, 7470, 45, 7232},
        {17, 1699, 65, 1600},
        {186, 50448, 141, 27197},
        {5, 2493, 3, 2338},
        {27, 16886, 29, 17825}
    };

    /**
     * Published (Viechtbauer 2010, Journal of Statistical Software 36(3), from memory): REML tau^2 0.3132, mean -0.7145, Q 152.2330,
     * I^2 92.22 %, tau^2 limits 0.1197 to 1.1115. Computed, in R 4 from the formulas of the class text (pool/random-effects.R): the rest.
     */
    @Test
    void theVaccineTrialsOfTheTextbooks() {
        double[] effects = new double[13];
        double[] errors = new double[13];
        for (int i = 0; i < 13; i++) {
            int[] t = TRIALS[i];
            double treated = t[0] + (double) t[1];
            double control = t[2] + (double) t[3];
            effects[i] = Math.log(t[0] / treated) - Math.log(t[2] / control);
            errors[i] = Math.sqrt(1.0 / t[0] - 1.0 / treated + 1.0 / t[2] - 1.0 / control);
        }
        RandomEffects.Result r = RandomEffects.withDefaults().pool(effects, errors);
        assertEquals(0.3132, r.variance(), 5e-5);
        assertEquals(-0.7145, r.mean().value(), 5e-5);
        assertEquals(152.2330, r.heterogeneity(), 5e-5);
        assertEquals(0.9222, r.heterogeneityShare(), 5e-5);
        assertEquals(0.1197, r.varianceInterval().lower(), 5e-5);
        assertEquals(1.1115, r.varianceInterval().upper(), 5e-5);
        assertEquals(0.1807917441, r.standardError(), 1e-8);
        assertEquals(-1.108443714, r.mean().interval().lower(), 1e-8);
        assertEquals(-0.3206209706, r.mean().interval().upper(), 1e-8);
        assertEquals(-1.996016834, r.nextGolfer().interval().lower(), 1e-7);
        assertEquals(0.5669521499, r.nextGolfer().interval().upper(), 1e-7);
        assertEquals(List.of(), r.warnings());
    }

    /** Computed in R 4 (pool/random-effects.R). */
    @Test
    void sixGolfersAsInR() {
        RandomEffects.Result r = RandomEffects.withDefaults()
                .pool(new double[] {3.1, 5.6, -0.4, 4.2, 2.8, 7.5}, roots(1.2, 2.5, 0.9, 1.6, 3.1, 2.0));
        assertEquals(6.116329257, r.variance(), 1e-7);
        assertEquals(3.686106909, r.mean().value(), 1e-8);
        assertEquals(0.8015772266, r.mean().interval().lower(), 1e-7);
        assertEquals(6.570636591, r.mean().interval().upper(), 1e-7);
        assertEquals(26.57385225, r.heterogeneity(), 1e-7);
        assertEquals(6.904206283e-05, r.heterogeneityP(), 1e-12);
        assertEquals(1.389104159, r.varianceInterval().lower(), 1e-7);
        assertEquals(42.05547552, r.varianceInterval().upper(), 1e-6);
        assertEquals(-3.295049756, r.nextGolfer().interval().lower(), 1e-7);
    }

    /** Computed in R 4: golfers closer together than their errors. */
    @Test
    void golfersWhoDoNotDifferHaveNoVariance() {
        RandomEffects.Result r = RandomEffects.withDefaults()
                .pool(new double[] {3.1, 3.6, 2.4, 3.2, 2.8}, roots(1.2, 2.5, 0.9, 1.6, 3.1));
        assertEquals(0.0, r.variance());
        assertEquals(2.914080405, r.mean().value(), 1e-8);
        assertEquals(0.2073105598, r.standardError(), 1e-9);
        assertEquals(0.0, r.varianceInterval().lower());
        assertEquals(0.2105153061, r.varianceInterval().upper(), 1e-8);
        assertEquals(
                List.of("no-golfer-variance", "closer-than-errors"),
                r.warnings().stream().map(Warning::code).toList());
    }

    private static double[] roots(double... v) {
        return Arrays.stream(v).map(Math::sqrt).toArray();
    }

    /** Closed form: equal errors give Student's t over the golfers, and tau^2 = s^2 - v. 1 to 5: s^2 = 2.5, t(4) = 2.776445. */
    @Test
    void equalErrorsGiveStudentsT() {
        RandomEffects.Result r =
                RandomEffects.withDefaults().pool(new double[] {1, 2, 3, 4, 5}, roots(0.5, 0.5, 0.5, 0.5, 0.5));
        assertEquals(3.0, r.mean().value(), 1e-12);
        assertEquals(2.776445 * Math.sqrt(0.5), r.mean().interval().halfWidth(), 1e-6);
        assertEquals(2.0, r.variance(), 1e-9);
        assertEquals(0.5, r.typicalVariance(), 1e-12);
        // Q = 10 / 0.5; limits of tau^2: 10 / chi-square(4) - v, with 11.1433 and 0.484419 of the printed tables.
        assertEquals(20.0, r.heterogeneity(), 1e-9);
        assertEquals(10.0 / 11.1433 - 0.5, r.varianceInterval().lower(), 1e-5);
        assertEquals(10.0 / 0.484419 - 0.5, r.varianceInterval().upper(), 1e-4);
        assertEquals(Math.sqrt(2.0), r.spread().value(), 1e-9);
        assertEquals(0.8, r.heterogeneityShare(), 1e-9);
    }

    @Test
    void degenerateInputIsAnsweredOrRefused() {
        RandomEffects.Result flat = RandomEffects.withDefaults().pool(new double[] {2, 2}, new double[] {1, 1});
        assertFalse(flat.mean().interval().bounded());
        assertTrue(flat.warnings().stream().anyMatch(w -> w.code().equals("no-spread")));
        assertTrue(flat.warnings().stream().anyMatch(w -> w.code().equals("few-golfers")));
        RandomEffects plain = RandomEffects.withDefaults();
        assertThrows(IllegalArgumentException.class, () -> plain.pool(new double[] {1}, new double[] {1}));
        assertThrows(IllegalArgumentException.class, () -> plain.pool(new double[] {1, 2}, new double[] {1, 0}));
        assertThrows(IllegalArgumentException.class, () -> plain.pool(new double[] {1, 2}, new double[] {1}));
        assertThrows(
                IllegalArgumentException.class, () -> plain.pool(new double[] {1, Double.NaN}, new double[] {1, 1}));
        assertThrows(IllegalArgumentException.class, () -> plain.withLevel(0.0));
    }

    /**
     * Golfers with 8, 12 or 20 pairs, spreads of 4 to 9 and a true difference that varies by tau: nominal 95 %. The limit is that of
     * the promise less three standard errors of 4,000 runs and one percent for standard errors that are estimated.
     */
    @Test
    @Tag("sweep")
    void intervalsHoldTheTruth() {
        int runs = 4_000;
        for (int golfers : new int[] {5, 10, 20}) {
            for (double tau : new double[] {0.0, 1.0, 3.0}) {
                Random random = new Random(1_000L * golfers + (long) (10 * tau));
                int mean = 0;
                int next = 0;
                int variance = 0;
                for (int run = 0; run < runs; run++) {
                    double[] effects = new double[golfers];
                    double[] errors = new double[golfers];
                    for (int g = 0; g < golfers; g++) {
                        measure(g, 2.0 + tau * random.nextGaussian(), random, effects, errors);
                    }
                    RandomEffects.Result r = RandomEffects.withDefaults().pool(effects, errors);
                    mean += r.mean().interval().contains(2.0) ? 1 : 0;
                    next += r.nextGolfer().interval().contains(2.0 + tau * random.nextGaussian()) ? 1 : 0;
                    variance += r.varianceInterval().contains(tau * tau) ? 1 : 0;
                }
                String cell = golfers + " golfers, tau " + tau + ": mean " + mean / (double) runs + ", next "
                        + next / (double) runs + ", tau^2 " + variance / (double) runs;
                assertTrue(mean >= 0.93 * runs, cell);
            }
        }
    }

    private static void measure(int golfer, double truth, Random random, double[] effects, double[] errors) {
        int pairs = new int[] {8, 12, 20}[golfer % 3];
        double sd = 4.0 + golfer % 6;
        double sum = 0.0;
        double squares = 0.0;
        for (int i = 0; i < pairs; i++) {
            double d = truth + sd * random.nextGaussian();
            sum += d;
            squares += d * d;
        }
        effects[golfer] = sum / pairs;
        errors[golfer] = Math.sqrt((squares - sum * sum / pairs) / (pairs - 1.0) / pairs);
    }
}
