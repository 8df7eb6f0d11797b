package dev.teeward.fitting.plan;

import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.fitting.compare.PairedTTest;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Three planned looks at paired shots without a difference, 20,000 seeded sessions. */
@Tag("sweep")
class GroupSequentialSweepTest {
    private static final int SESSIONS = 20_000;

    /** Bounds for a normal statistic used for t by their nominal p: 5 %, and documented as slightly lively. */
    @Test
    void threeLooksTogetherRaiseFivePercentOfAlarms() {
        for (GroupSequentialPlan.Shape shape : GroupSequentialPlan.Shape.values()) {
            List<GroupSequentialPlan.Look> looks =
                    GroupSequentialPlan.withDefaults().withShape(shape).afterShots(8, 12, 16);
            int[] shots = {8, 12, 16};
            SplittableRandom random = new SplittableRandom(21L);
            int alarms = 0;
            for (int s = 0; s < SESSIONS; s++) {
                double[] d = new double[16];
                Arrays.setAll(d, i -> random.nextGaussian());
                boolean alarm = false;
                for (int k = 0; k < 3 && !alarm; k++) {
                    double[] soFar = Arrays.copyOf(d, shots[k]);
                    double p = PairedTTest.withDefaults()
                            .test(soFar, new double[shots[k]])
                            .pValue();
                    alarm = p <= looks.get(k).nominalP();
                }
                alarms += alarm ? 1 : 0;
            }
            double rate = alarms / (double) SESSIONS;
            System.err.printf(Locale.ROOT, "SWEEP three looks, %s: %.4f of %d%n", shape, rate, SESSIONS);
            double three = 3.0 * Math.sqrt(0.0475 / SESSIONS);
            assertTrue(rate >= 0.045 - three && rate <= 0.055 + three, shape + " " + rate);
        }
    }
}
