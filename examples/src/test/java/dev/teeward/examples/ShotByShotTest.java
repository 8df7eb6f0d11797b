package dev.teeward.examples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.fitting.Session;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.ShotSet;
import dev.teeward.fitting.complete.SessionCompleter;
import dev.teeward.fitting.io.SessionReader;
import dev.teeward.fitting.screen.ScreenReport;
import dev.teeward.fitting.screen.SessionScreen;
import java.util.TreeMap;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/** A session that grows while it is hit, as a program beside a launch monitor would have it. */
class ShotByShotTest {
    private static final Session WHOLE =
            SessionReader.withDefaults().read(JsonText.resource(DemoCommand.SESSION), DemoCommand.SESSION);

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
     * Rules judge a shot by itself and find the misread when it comes. A mishit is one by comparison with enough others: it
     * is found as soon as there are, and not forgotten.
     */
    @Test
    void everyNewShotIsScreenedAtOnce() {
        Session growing = WHOLE.withShots(ShotSet.of());
        TreeSet<Integer> flaggedAtOnce = new TreeSet<>();
        TreeMap<Integer, Integer> firstFlagged = new TreeMap<>();
        for (Shot shot : WHOLE.shots()) {
            growing = growing.append(shot);
            Session complete = SessionCompleter.withDefaults().complete(growing).session();
            int latest = growing.shots().size() - 1;
            ScreenReport all = SessionScreen.withDefaults().screen(complete);
            ScreenReport now = SessionScreen.withDefaults().screenLatest(complete);
            assertEquals(all.flags(latest).toString(), now.flags().toString());
            now.flagged().forEach(index -> flaggedAtOnce.add(shot.number()));
            all.flagged().forEach(index -> firstFlagged.putIfAbsent(index + 1, shot.number()));
        }
        assertTrue(flaggedAtOnce.contains(DemoTruth.MISREAD_SHOT), flaggedAtOnce::toString);
        Integer found = firstFlagged.get(DemoTruth.MISHIT_SHOT);
        assertTrue(found != null && found <= DemoTruth.SHOTS, firstFlagged::toString);
    }
}
