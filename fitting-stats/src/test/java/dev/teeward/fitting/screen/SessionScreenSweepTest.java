package dev.teeward.fitting.screen;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.fitting.Session;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** How often a good session raises a flag, at 20,000 sessions. Minutes. */
@Tag("sweep")
class SessionScreenSweepTest {
    private static final int REPLICATES = 20_000;

    /** Four standard errors of 5 %, and 0.6 percentage points for the pooled cut-offs (MishitScreen says 4.0 to 6.1 %). */
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
        assertEquals(0.05, (double) mishits / REPLICATES, error + 0.006);
        assertTrue(single <= (0.05 + error) * REPLICATES, single + " of " + REPLICATES);
        assertEquals(0, rules);
    }
}
