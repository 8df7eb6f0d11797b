package dev.teeward.fitting.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.ShotSet;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Shots declared as warming up count for nothing in a comparison, and every metric says so. */
class WarmUpComparisonTest {
    private static final Session SESSION = InventedSession.full(3L, 8, 1.0, 0.0);

    @Test
    void declaredShotsAreLeftOutAndCounted() {
        HeadToHead procedure = HeadToHead.withDefaults().withPrimary(Metric.CARRY);
        HeadToHeadResult warm = procedure.withWarmUp(2).compare(SESSION);
        HeadToHeadResult all = procedure.compare(SESSION);
        assertEquals(8, all.first().used().size());
        assertEquals(6, warm.first().used().size());
        assertEquals(6, warm.second().used().size());
        assertEquals(List.of(new Exclusion(2, "warm-up")), warm.first().exclusions());
        assertTrue(warm.primary().difference().exclusions().contains(new Exclusion(4, "shot excluded: warm-up")));
        assertEquals(6, warm.primary().pairs());
        assertEquals(List.of(), all.first().exclusions());
    }

    @Test
    void theAnswerIsThatWithoutThoseShots() {
        List<Shot> later = SESSION.shots().stream().skip(4).toList();
        HeadToHead procedure = HeadToHead.withDefaults().withPrimary(Metric.CARRY);
        TestResult without = procedure
                .compare(SESSION.withShots(ShotSet.of(later)))
                .primary()
                .difference();
        TestResult warm = procedure.withWarmUp(2).compare(SESSION).primary().difference();
        assertEquals(without.estimate(), warm.estimate());
        assertEquals(without.pValue(), warm.pValue());
    }

    @Test
    void tooManyLeaveNothingToCompare() {
        HeadToHead all = HeadToHead.withDefaults().withWarmUp(8);
        assertThrows(ComparisonException.class, () -> all.compare(SESSION));
        assertThrows(
                IllegalArgumentException.class, () -> HeadToHead.withDefaults().withWarmUp(-1));
    }
}
