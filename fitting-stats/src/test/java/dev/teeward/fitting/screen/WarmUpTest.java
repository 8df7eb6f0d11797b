package dev.teeward.fitting.screen;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.ShotSet;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class WarmUpTest {
    private static Session session() {
        List<Shot> shots = new ArrayList<>();
        for (int i = 0; i < 12; i++) {
            Shot.Builder shot = Shot.builder(i % 2 == 0 ? "Alder" : "Rowan")
                    .number(i + 1)
                    .day(LocalDate.of(2026, 5, i < 8 ? 1 : 2))
                    .measured(Metric.CARRY, 150.0 + i);
            shots.add((i == 1 ? shot.exclusion("topped") : shot).build());
        }
        return Session.builder().shots(ShotSet.of(shots)).build();
    }

    /** Two of each club on each day; what was excluded before keeps its reason and its place. */
    @Test
    void theFirstShotsOfEachClubAndDayAreExcludedWithTheReason() {
        Session warm = WarmUp.ofFirst(2).exclude(session());
        List<Integer> excluded =
                warm.shots().excluded().stream().map(Shot::number).toList();
        assertEquals(List.of(1, 2, 3, 4, 9, 10, 11, 12), excluded);
        assertEquals(
                List.of("warm-up", "topped", "warm-up", "warm-up"),
                warm.shots().excluded().stream()
                        .limit(4)
                        .map(s -> s.exclusion().orElseThrow())
                        .toList());
        assertEquals(session().shots().size(), warm.shots().size());
    }

    @Test
    void noneIsTheSessionItself() {
        Session session = session();
        assertSame(session, WarmUp.ofFirst(0).exclude(session));
        assertEquals(2, WarmUp.ofFirst(2).shots());
        IllegalArgumentException negative = assertThrows(IllegalArgumentException.class, () -> WarmUp.ofFirst(-1));
        assertEquals("number of warm-up shots must be at least 0, but was -1; 0 for none", negative.getMessage());
    }
}
