package dev.teeward.fitting.io;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.fitting.Intent;
import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.complete.SessionFlights;
import java.io.IOException;
import java.io.StringWriter;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Sessions of several days keep the air of each day when they are written and read. All invented. */
class CombinedSessionTest {
    private static final String TABLE = """
            club,pair,ball_speed_mph,launch_angle_deg,spin_rate_rpm,carry_yd
            Alder,1,117.8,17.1,6300,165.2
            Rowan,1,118.4,16.4,6100,167.0
            """;
    private static final String MONDAY = """
            # hand: left
            # elevation: 5280 ft
            # temperature: 85 F
            # humidity: 20 %
            # pressure: 24.9 inHg station
            # wind: 8 mph from 30 deg
            # date: 2026-05-11
            # place: a studio upstairs
            # tolerance ball_speed: 0.5 mph
            # club Alder: loft 29 deg, shaft graphite, regular
            # mat: worn, but ok
            # the door stood open
            """ + TABLE;
    private static final String TUESDAY = """
            # hand: left
            # elevation: 30 ft
            # temperature: 48 F
            # wind: calm
            # date: 2026-05-12
            """ + TABLE;

    private static Session read(String text) {
        return SessionReader.withDefaults().read(text, "session.csv");
    }

    private static String write(Session session) throws IOException {
        StringWriter text = new StringWriter();
        SessionWriter.withDefaults().write(text, session);
        return text.toString();
    }

    @Test
    void everyPartComesBackWhole() throws IOException {
        Session both = Session.combine(List.of(read(MONDAY), read(TUESDAY)));
        Session back = read(write(both));
        assertEquals(2, both.parts().size());
        assertEquals(both.parts(), back.parts());
        assertEquals(write(both), write(back));
        for (int i = 0; i < 4; i++) {
            Shot before = both.shots().shots().get(i);
            Shot after = back.shots().shots().get(i);
            assertEquals(before.part(), after.part());
            assertEquals(before.pair(), after.pair());
            assertEquals(before.day(), after.day());
            assertEquals(
                    SessionFlights.of(both).model(before).air().toString(),
                    SessionFlights.of(back).model(after).air().toString());
        }
        assertFalse(SessionFlights.of(back)
                .model(back.shots().shots().get(0))
                .air()
                .toString()
                .equals(SessionFlights.of(back)
                        .model(back.shots().shots().get(2))
                        .air()
                        .toString()));
    }

    @Test
    void aPartOfWhichNothingIsKnownIsStillAPart() throws IOException {
        Session both = Session.combine(List.of(read(TUESDAY), read(TABLE), read(TABLE)));
        Session back = read(write(both));
        assertEquals(both.parts(), back.parts());
        assertEquals(3, back.parts().size());
    }

    @Test
    void whatWasCombinedTwiceIsOneList() throws IOException {
        Session both = read(write(Session.combine(List.of(read(MONDAY), read(TUESDAY)))));
        Session three = Session.combine(List.of(both, read(TUESDAY)));
        Session back = read(write(three));
        assertEquals(3, back.parts().size());
        assertEquals(three.parts(), back.parts());
        assertEquals(2, back.shots().shots().get(5).part().orElseThrow());
    }

    @Test
    void wrongPartsAreRefusedInOneLine() {
        refused("# part 2 wind: calm\n" + TABLE, "header line part 2: needs the line parts");
        refused("# parts: 1\n# part 2 wind: calm\n" + TABLE, "is beyond the 1 of the line parts");
        refused("# parts: 0\n" + TABLE, "is not a whole number from 1 to 9999");
        refused("# parts: 2\n# part 1 part 2 wind: calm\n" + TABLE, "no parts of its own");
        refused("# parts: 2\n# part 1 windd: calm\n" + TABLE, "did you mean wind?");
        refused("# parts: 2\n# part 1 wind: calm\n# part 1 wind: calm\n" + TABLE, "is given twice");
        refused("club,part,carry_yd\nAlder,1,150\n", "needs the header line parts");
        refused("# parts: 2\nclub,part,carry_yd\nAlder,3,150\n", "is not a whole number from 1 to 2");
        refused("club,intent,carry_yd\nAlder,hook,150\n", "is none of draw, straight and fade");
    }

    private static void refused(String text, String words) {
        String message = String.valueOf(
                assertThrows(InputException.class, () -> read(text)).getMessage());
        assertTrue(message.contains(words), message);
        assertFalse(message.contains("\n"), message);
    }

    @Test
    void theIntentIsReadInAnyCase() {
        Session session = read("club,intent,carry_yd\nAlder,Draw,150\nAlder,fade,151\nAlder,,152\n");
        assertEquals(
                List.of(Intent.DRAW, Intent.FADE),
                session.shots().stream().flatMap(s -> s.intent().stream()).toList());
        assertEquals(3, session.shots().values(Metric.CARRY).length);
    }

    @Test
    void aNameThatWouldBecomeAPartIsNotWritten() {
        Session session =
                read(TABLE).toBuilder().other("part 3 weather", "fine").build();
        assertThrows(IllegalArgumentException.class, () -> write(session));
    }
}
