package dev.teeward.fitting.choose;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.LengthUnit;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** What is to be expected of a club, with variances of its own. */
class ExpectedMeansTest {
    /** How often each club's interval holds its true mean. */
    static double[] held(double[] spreads, int shots, double truths, int sessions) {
        SplittableRandom random = new SplittableRandom(77);
        double[] held = new double[spreads.length];
        for (int i = 0; i < sessions; i++) {
            double[] truth = new double[spreads.length];
            double[][] scores = new double[spreads.length][shots];
            for (int k = 0; k < spreads.length; k++) {
                truth[k] = 150.0 + truths * random.nextGaussian();
                for (int j = 0; j < shots; j++) {
                    scores[k][j] = truth[k] + spreads[k] * random.nextGaussian();
                }
            }
            List<Optional<Estimate>> shrunk = ExpectedMeans.of(scores, 0.95, LengthUnit.METER);
            for (int k = 0; k < spreads.length; k++) {
                held[k] += shrunk.get(k).orElseThrow().interval().contains(truth[k]) ? 1.0 / sessions : 0.0;
            }
        }
        return held;
    }

    /** 95 %, 300 sessions: four standard errors of 1.26 % below it are 0.90. A variance pooled over all held 0.68 to 0.86. */
    @Test
    void theLessEvenClubIsHeldAsOftenAsTheOthers() {
        for (double[] spreads : new double[][] {{4, 10}, {4, 4, 4, 10}, {5, 5, 5}}) {
            for (double truths : new double[] {0.0, 20.0}) {
                double[] held = held(spreads, 10, truths, 300);
                assertTrue(Arrays.stream(held).min().orElseThrow() > 0.90, Arrays.toString(held));
            }
        }
    }

    /** Far apart nothing is shrunk: the textbook t interval of each club, t(0.975, 2) = 4.302653 (tables) at three shots. */
    @Test
    void farApartEachHasTheIntervalOfItsOwnShots() {
        double[][] scores = {{99_999.0, 100_000.0, 100_001.0}, {-10.0, 0.0, 10.0}, {-100_100.0, -100_000.0, -99_900.0}};
        double[] spreads = {1.0, 10.0, 100.0};
        List<Optional<Estimate>> shrunk = ExpectedMeans.of(scores, 0.95, LengthUnit.METER);
        for (int k = 0; k < 3; k++) {
            double half = shrunk.get(k).orElseThrow().interval().halfWidth();
            assertEquals(4.302653 * spreads[k] / Math.sqrt(3.0), half, 2e-3 * half);
        }
    }

    @Test
    void aClubWithoutASpreadOfItsOwnHasNone() {
        double[][] scores = {{150.0, 152.0, 151.0}, {149.0}, {155.0, 155.0}, {147.0, 148.0, 150.0}};
        List<Optional<Estimate>> shrunk = ExpectedMeans.of(scores, 0.95, LengthUnit.METER);
        assertTrue(shrunk.get(1).isEmpty() && shrunk.get(2).isEmpty());
        List<Optional<Estimate>> others =
                ExpectedMeans.of(new double[][] {scores[0], scores[3]}, 0.95, LengthUnit.METER);
        assertEquals(others, List.of(shrunk.get(0), shrunk.get(3)));
        assertTrue(ExpectedMeans.of(new double[][] {scores[0], scores[1]}, 0.95, LengthUnit.METER).stream()
                .allMatch(Optional::isEmpty));
    }
}
