package dev.teeward.fitting.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.fitting.Session;
import dev.teeward.fitting.UnitSystem;
import dev.teeward.quantity.Handedness;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;

/** Names on pages: short, of visible characters, never the same for both clubs. */
class ShownNamesTest {
    @Test
    void longNamesLoseTheirMiddleAndStayApart() {
        String same = "A".repeat(300);
        ShownNames ends = ShownNames.of(same + "one", same + "two");
        assertTrue(ends.first().length() <= 48 && ends.first().endsWith("one"), ends.first());
        assertNotEquals(ends.first(), ends.second());
        ShownNames middles = ShownNames.of(same + "1" + same, same + "2" + same);
        assertNotEquals(middles.first(), middles.second());
        assertEquals(new ShownNames("Alder", "Rowan"), ShownNames.of("Al\u200Bder", "Rowan\u2028"));
    }

    private static HeadToHeadReport report(String first, String second) {
        Session session = InventedSession.session(first, second, 4, Handedness.RIGHT, false);
        return HeadToHeadReport.of(InventedSession.compare(session)).withUnits(UnitSystem.US);
    }

    @Test
    void thePageShortensWhatItsTitleAndTheDataSayInFull() {
        String longName = "Alder " + "x".repeat(294);
        HeadToHeadReport report = report(longName, "Rowan");
        Document page = Svg.parsePage(report.html());
        assertTrue(page.getElementsByTagName("title").item(0).getTextContent().startsWith(longName));
        String heading = page.getElementsByTagName("h1").item(0).getTextContent();
        assertTrue(heading.startsWith("Alder xxx") && heading.length() < 80, heading);
        assertEquals(longName, report.data().value("/clubs/first/name"));
        assertFalse(report.text().contains("x".repeat(60)), report.text());
        for (Section section : report.sections()) {
            section.sentences().forEach(s -> assertFalse(s.text().contains("x".repeat(60)), s.text()));
        }
    }

    @Test
    void hiddenCharactersAreLeftOutAndMentioned() {
        HeadToHeadReport report = report("Al\u200Bder\u202E", "Ro\u2029wan");
        String html = report.html();
        for (int hidden : new int[] {0x200B, 0x202E, 0x2028, 0x2029}) {
            assertEquals(-1, html.indexOf(hidden), Integer.toHexString(hidden));
        }
        assertTrue(report.data().value("/warnings") instanceof List<?> list
                && list.stream().anyMatch(w -> w instanceof Map<?, ?> m && "hidden-characters".equals(m.get("code"))));
        assertTrue(report.text().replaceAll("\\s+", " ").contains("2 names or notes of the session hold characters"));
        assertFalse(report("Alder", "Rowan").text().contains("hold characters"));
    }
}
