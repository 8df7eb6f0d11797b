package dev.teeward.examples;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.teeward.fitting.Session;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.ShotSet;
import dev.teeward.fitting.complete.SessionCompleter;
import dev.teeward.fitting.io.SessionReader;
import dev.teeward.fitting.screen.ScreenReport;
import dev.teeward.fitting.screen.SessionScreen;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/** A session that grows while it is hit, as a program beside a launch monitor would have it. */
class ShotByShotTest {
    private static final Session WHOLE =
            SessionReader.withDefaults().read(JsonText.resource(DemoCommand.SESSION), DemoCommand.SESSION);

    /** Of each club, so that its scatter is known; as the package text of the screen says. */
    private static final int FEWEST = 6;

    private static String json(Session session) {
        return JsonText.of(DemoCommand.report(session).data().root());
    }

    @Test
    void appendedOneByOneGivesTheSameBytes() {
        Session growing = WHOLE.withShots(ShotSet.of());
        for (Shot shot : WHOLE.shots()) {
            growing = growing.append(shot);
        }
        assertEquals(json(WHOLE), json(growing));
    }

    @Test
    void everyAnswerOnTheWayIsThatOfAFileThatEndsThere() {
        Session growing = WHOLE.withShots(ShotSet.of());
        int size = 0;
        for (Shot shot : WHOLE.shots()) {
            growing = growing.append(shot);
            size++;
            if (size >= 4 && size % 5 == 0) {
                Session cut = WHOLE.withShots(ShotSet.of(WHOLE.shots().shots().subList(0, size)));
                assertEquals(json(cut), json(growing));
            }
        }
        assertEquals(DemoTruth.SHOTS, size);
    }

    /**
     * A misread is told by a rule against {@value #FEWEST} readings of its club, the newest among them: shot 17 is the ninth
     * with Alder, so it is found when it comes. A mishit is one by comparison with {@value #FEWEST} shots of its club: shot
     * 10 is the fifth with Rowan and shot 11 the sixth, so it cannot be found before shot 11, and is then. Nothing else is
     * flagged on the way.
     */
    @Test
    void everyNewShotIsScreenedAtOnce() {
        Session growing = WHOLE.withShots(ShotSet.of());
        TreeSet<Integer> flaggedAtOnce = new TreeSet<>();
        TreeMap<Integer, Integer> firstFlagged = new TreeMap<>();
        Set<Integer> atTheEnd = Set.of();
        for (Shot shot : WHOLE.shots()) {
            growing = growing.append(shot);
            Session complete = SessionCompleter.withDefaults().complete(growing).session();
            int latest = growing.shots().size() - 1;
            ScreenReport all = SessionScreen.withDefaults().screen(complete);
            ScreenReport now = SessionScreen.withDefaults().screenLatest(complete);
            assertEquals(all.flags(latest).toString(), now.flags().toString());
            now.flagged().forEach(index -> flaggedAtOnce.add(shot.number()));
            all.flagged().forEach(index -> firstFlagged.putIfAbsent(index + 1, shot.number()));
            Set<Integer> numbers = new TreeSet<>();
            all.flagged().forEach(index -> numbers.add(index + 1));
            atTheEnd = numbers;
        }
        assertEquals(Set.of(DemoTruth.MISHIT_SHOT, DemoTruth.MISREAD_SHOT), atTheEnd);
        assertEquals(Set.of(DemoTruth.MISREAD_SHOT), flaggedAtOnce);
        for (int odd : atTheEnd) {
            assertEquals(earliest(odd), firstFlagged.get(odd), firstFlagged::toString);
        }
        assertEquals(atTheEnd, firstFlagged.keySet());
        assertEquals(11, earliest(DemoTruth.MISHIT_SHOT));
        assertEquals(DemoTruth.MISREAD_SHOT, earliest(DemoTruth.MISREAD_SHOT));
    }

    /** The shot with which a shot can be told from the others: itself, or the one that makes enough of its club. */
    private static int earliest(int odd) {
        String club = WHOLE.shots().shots().get(odd - 1).club();
        int enough = WHOLE.shots().club(club).stream()
                .skip(FEWEST - 1L)
                .findFirst()
                .orElseThrow()
                .number();
        return Math.max(odd, enough);
    }
}
