package dev.teeward.fitting.screen;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.fitting.Session;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** How often a good session raises a flag, at 20,000 sessions. Minutes. */
@Tag("sweep")
class SessionScreenSweepTest {
    private static final int REPLICATES = 20_000;

    /** Four standard errors of 5 %; with pooled clubs the rate is a bound, and half of it would be needlessly blind. */
    @Test
    void goodSessionsOfTenPairsRaiseFlagsAtTheStatedRate() {
        int mishits = 0;
        int single = 0;
        int rules = 0;
        for (int r = 0; r < REPLICATES; r++) {
            Session session = SimulatedSession.of(10, 5_000_011L + 7919L * r);
            Set<String> kinds = new TreeSet<>();
            for (ShotFlag flag : SessionScreen.withDefaults().screen(session).flags()) {
                kinds.add(
                        flag.falseAlarmRate().isEmpty()
                                ? "rule"
                                : flag.metrics().size() == 2 ? "mishit" : "single");
            }
            mishits += kinds.contains("mishit") ? 1 : 0;
            single += kinds.contains("single") ? 1 : 0;
            rules += kinds.contains("rule") ? 1 : 0;
        }
        double error = 4.0 * Math.sqrt(0.05 * 0.95 / REPLICATES);
        double rate = (double) mishits / REPLICATES;
        assertTrue(rate <= 0.05 + error && rate >= 0.015, "mishits " + rate);
        assertTrue(single <= (0.05 + error) * REPLICATES, single + " of " + REPLICATES);
        assertEquals(0, rules);
    }

    /** Whatever the spreads and the numbers of shots: four standard errors of a binomial share above 5 %. */
    @ParameterizedTest
    @CsvSource({"6, 6", "7, 7", "8, 8", "9, 9", "10, 10", "11, 11", "12, 12", "6, 9", "6, 14", "15, 7"})
    void clubsOfUnequalSpreadRaiseNoMoreFlagsThanStated(int first, int second) {
        int replicates = first + second <= 20 ? 5_000 : 2_000;
        double most = 0.05 + 4.0 * Math.sqrt(0.05 * 0.95 / replicates);
        for (double ratio : new double[] {1.0, 1.5, 2.0, 3.0}) {
            double rate = UnequalClubs.rate(
                    SessionScreen.withDefaults().withMetrics(),
                    replicates,
                    seed -> UnequalClubs.strikes(first, second, ratio, seed));
            assertTrue(rate <= most, first + " and " + second + " shots, ratio " + ratio + ": " + rate);
        }
    }
}
