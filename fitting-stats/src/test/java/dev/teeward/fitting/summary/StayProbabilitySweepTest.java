package dev.teeward.fitting.summary;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Locale;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** How often the interval of the probability to land and stay holds the truth, ten shots. About a minute. */
@Tag("sweep")
class StayProbabilitySweepTest {
    private static final int SESSIONS = 1_200;

    /** Stated: 97 to 99 %; three standard errors beside it. */
    @Test
    void intervalsHoldTheTruth() {
        // Landing points with spread 1 about the middle of a square; rolls with mean 0.5 and spread 0.5 along the line,
        // 0
        // and 0.3 across. One integral for each direction, by scipy.integrate.quad (1.14).
        covers(1.5, 0.6079901619080739, 1L);
        covers(1.0, 0.3034635297912505, 2L);
    }

    private static void covers(double half, double truth, long seed) {
        TargetRegion square =
                TargetRegion.polygon(new double[] {-half, half, half, -half}, new double[] {-half, -half, half, half});
        StayProbability stay = StayProbability.withDefaults().withDraws(199);
        SplittableRandom random = new SplittableRandom(seed);
        int held = 0;
        for (int r = 0; r < SESSIONS; r++) {
            double[] carry = shots(random, 0.0, 1.0);
            double[] side = shots(random, 0.0, 1.0);
            double[] restCarry = plus(carry, shots(random, 0.5, 0.5));
            double[] restSide = plus(side, shots(random, 0.0, 0.3));
            held += stay.withSeed(r)
                            .estimate(square, carry, side, restCarry, restSide)
                            .probability()
                            .orElseThrow()
                            .interval()
                            .contains(truth)
                    ? 1
                    : 0;
        }
        double coverage = held / (double) SESSIONS;
        System.err.printf(Locale.ROOT, "SWEEP stay, truth %.3f: %.4f of %d%n", truth, coverage, SESSIONS);
        double low = 0.97 - 3.0 * Math.sqrt(0.97 * 0.03 / SESSIONS);
        double high = 0.99 + 3.0 * Math.sqrt(0.99 * 0.01 / SESSIONS);
        assertTrue(coverage >= low && coverage <= high, "truth " + truth + ": " + coverage);
    }

    private static double[] shots(SplittableRandom random, double mean, double sd) {
        double[] x = new double[10];
        Arrays.setAll(x, i -> mean + sd * random.nextGaussian());
        return x;
    }

    private static double[] plus(double[] x, double[] y) {
        double[] sum = new double[x.length];
        Arrays.setAll(sum, i -> x[i] + y[i]);
        return sum;
    }
}
