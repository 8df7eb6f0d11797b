package dev.teeward.fitting.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.fitting.UnitSystem;
import dev.teeward.fitting.compare.MetricComparison;
import dev.teeward.quantity.Handedness;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;

/** The page: one document, safe, complete, the same bytes each time. */
class HtmlPageTest {
    private static Section section(String id, String title, String... sentences) {
        return Section.of(
                id,
                title,
                List.of(sentences).stream().map(s -> Sentence.of(s, List.of())).toList());
    }

    private static String usualPage() {
        DrawnShots shots = DrawnShots.of(InventedSession.usual(Handedness.LEFT), Set.of(4));
        List<List<String>> rows = new ArrayList<>();
        for (MetricComparison m : shots.result().metrics()) {
            rows.add(List.of(
                    m.metric().label(),
                    Decimals.label(m.first().mean().value(), 2),
                    Decimals.label(m.second().mean().value(), 2),
                    Decimals.label(m.difference().estimate().value(), 2) + " (interval "
                            + Decimals.label(
                                    m.difference().estimate().interval().lower(), 2) + " to "
                            + Decimals.label(
                                    m.difference().estimate().interval().upper(), 2) + ")",
                    Decimals.label(m.adjustedP(), 3),
                    m.verdict().verdict().toString()));
        }
        Table table = Table.of(
                "metrics",
                "All metrics compared, SI units",
                List.of("metric", "Alder, mean", "Rowan, mean", "Alder minus Rowan", "p, adjusted", "verdict"),
                rows);
        String filler =
                "This sentence stands for one of the report, of usual length, with a number such as 4.1 yd in it.";
        return HtmlPage.of(
                "Alder and Rowan, head to head",
                "en",
                List.of(
                        section("answer", "The answer", filler, filler, filler, filler),
                        section("session", "What was hit", filler, filler, filler, filler, filler, filler),
                        section("differs", "What differs", filler, filler, filler, filler, filler, filler),
                        section("swing", "Were the swings the same", filler, filler, filler, filler),
                        section("method", "How it was computed", filler, filler, filler, filler, filler, filler)),
                List.of(table),
                InventedSession.pictures(shots, UnitSystem.US));
    }

    @Test
    void theUsualPageIsOneSelfContainedDocument() throws IOException {
        String page = usualPage();
        Document document = Svg.parsePage(page);
        assertEquals("en", document.getDocumentElement().getAttribute("lang"));
        Svg.assertUniqueIds(document);
        Svg.assertReferencesResolve(document);
        assertEquals(0, document.getElementsByTagName("script").getLength());
        assertEquals(0, document.getElementsByTagName("img").getLength());
        assertEquals(0, document.getElementsByTagName("link").getLength());
        String withoutNamespace = page.replace("http://www.w3.org/2000/svg", "");
        assertFalse(withoutNamespace.contains("://") || withoutNamespace.contains("url("), "an address");
        assertTrue(page.contains("default-src &#39;none&#39;"));
        assertEquals(1, document.getElementsByTagName("h1").getLength());
        assertEquals(5, document.getElementsByTagName("h2").getLength());
        assertTrue(page.length() < 400_000, "length " + page.length());
        // Kept for the browser check.
        Files.writeString(Path.of("target", "invented-page.html"), page);
    }

    @Test
    void theSameInputGivesTheSameBytes() {
        assertEquals(usualPage(), usualPage());
    }

    @Test
    void theAnswerComesFirstAndPartsStandWithTheirSections() {
        String page = usualPage();
        int answer = page.indexOf("id=\"section-answer\"");
        int landing = page.indexOf("id=\"picture-landing\"");
        int session = page.indexOf("id=\"section-session\"");
        int strips = page.indexOf("id=\"section-differs\"");
        int start = page.indexOf("id=\"picture-strips-start\"");
        int swing = page.indexOf("id=\"section-swing\"");
        int table = page.indexOf("id=\"table-metrics\"");
        assertTrue(0 < answer && answer < landing && landing < session, "pictures without a section follow the answer");
        assertTrue(strips < start && start < swing, "strips stand where it is said what differs");
        assertTrue(swing < table, "a table without a section comes last");
    }

    @Test
    void theLongestMatchingSectionOwnsAPicture() {
        Picture picture = Picture.of("a-b-c", "t", "d", "<svg xmlns=\"http://www.w3.org/2000/svg\"></svg>");
        String page = HtmlPage.of(
                "t",
                "en",
                List.of(section("a", "A"), section("a-b", "B"), section("a-bc", "C")),
                List.of(),
                List.of(picture));
        assertTrue(page.indexOf("section-a-b\"") < page.indexOf("<figure>"));
        assertTrue(page.indexOf("<figure>") < page.indexOf("section-a-bc\""));
    }

    @Test
    void hostileTextIsShownAndNeverRun() {
        for (String text : HostileText.ALL) {
            Table table = Table.of("t", text, List.of(text, "b"), List.of(List.of(text, text)));
            String page = HtmlPage.of(text, "en", List.of(section("s", text, text)), List.of(table), List.of());
            Document document = Svg.parsePage(page);
            String plain = HostileText.asShown(text);
            assertEquals(plain, document.getElementsByTagName("h1").item(0).getTextContent());
            assertEquals(plain, document.getElementsByTagName("caption").item(0).getTextContent());
            assertEquals(plain, document.getElementsByTagName("td").item(0).getTextContent());
            assertEquals(plain, document.getElementsByTagName("p").item(0).getTextContent());
            assertEquals(0, document.getElementsByTagName("script").getLength());
            assertEquals(0, document.getElementsByTagName("img").getLength());
            Svg.assertNoHandlers(document);
            HostileText.assertClean(page);
        }
    }

    @Test
    void idsThatAreNoWordsOrAppearTwiceAreRefused() {
        Section good = section("a", "A");
        IllegalArgumentException twice = assertThrows(
                IllegalArgumentException.class,
                () -> HtmlPage.of("t", "en", List.of(good, good), List.of(), List.of()));
        assertEquals("two sections have the id \"a\"", twice.getMessage());
        assertThrows(
                IllegalArgumentException.class,
                () -> HtmlPage.of("t", "en", List.of(section("A\" x", "A")), List.of(), List.of()));
        assertThrows(
                IllegalArgumentException.class, () -> HtmlPage.of("t", "\"><b>", List.of(good), List.of(), List.of()));
    }

    @Test
    void aPageOfNothingButATitleStands() {
        Document document = Svg.parsePage(HtmlPage.of("Only a title", "de-AT", List.of(), List.of(), List.of()));
        Element title = (Element) document.getElementsByTagName("title").item(0);
        assertEquals("Only a title", title.getTextContent());
        assertEquals("de-AT", document.getDocumentElement().getAttribute("lang"));
    }
}
