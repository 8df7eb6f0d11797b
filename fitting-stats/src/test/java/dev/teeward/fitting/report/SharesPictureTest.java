package dev.teeward.fitting.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.fitting.UnitSystem;
import dev.teeward.fitting.compare.HeadToHeadResult;
import dev.teeward.fitting.explain.Explain;
import dev.teeward.fitting.explain.Explanation;
import dev.teeward.fitting.explain.FlightCounterfactual;
import dev.teeward.fitting.explain.OutcomeShares;
import dev.teeward.quantity.Handedness;
import dev.teeward.quantity.LengthUnit;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;

/** The bars are as long as the shares, and stand where the section does. */
class SharesPictureTest {
    private static final HeadToHeadResult USUAL = InventedSession.usual(Handedness.LEFT);
    private static final Explanation WHY = Explain.withDefaults()
            .withFlights(FlightCounterfactual.withDefaults().withResamples(199))
            .explain(USUAL);

    private static double number(Element e, String name) {
        return Double.parseDouble(e.getAttribute(name));
    }

    @Test
    void barsAreAsLongAsTheShares() {
        Picture picture =
                SharesPicture.of(DrawnShots.of(USUAL), WHY, UnitSystem.METRIC).orElseThrow();
        Document document = Svg.check(picture);
        List<OutcomeShares> panels = ExplainedWords.outcomes(USUAL.primary().metric()).stream()
                .flatMap(m -> WHY.flights().orElseThrow().of(m).stream())
                .toList();
        List<Element> bars = Svg.withClass(document, "rect", "share");
        assertEquals(panels.stream().mapToInt(p -> p.shares().size()).sum(), bars.size());
        assertEquals(
                panels.stream().filter(p -> p.rest().isPresent()).count(),
                Svg.withClass(document, "rect", "rest").size());
        int at = 0;
        for (OutcomeShares panel : panels) {
            // Lengths of one panel are in one proportion: held against the longest of them.
            List<Element> own = bars.subList(at, at + panel.shares().size());
            at += panel.shares().size();
            int longest = 0;
            for (int i = 0; i < own.size(); i++) {
                longest = number(own.get(i), "width") > number(own.get(longest), "width") ? i : longest;
            }
            double scale = number(own.get(longest), "width")
                    / Math.abs(panel.shares().get(longest).share().value());
            for (int i = 0; i < own.size(); i++) {
                double share = Math.abs(panel.shares().get(i).share().value());
                assertEquals(scale * share, number(own.get(i), "width"), 0.2, panel.outcome() + " " + i);
            }
        }
        assertTrue(at > 0);
    }

    @Test
    void theDescriptionHasTheNumbers() {
        Picture picture =
                SharesPicture.of(DrawnShots.of(USUAL), WHY, UnitSystem.US).orElseThrow();
        OutcomeShares carry =
                WHY.flights().orElseThrow().of(dev.teeward.fitting.Metric.CARRY).orElseThrow();
        String speed = Decimals.label(
                LengthUnit.YARD.fromSi(carry.shares().get(0).share().value()), 1);
        assertTrue(picture.description().contains("Carry in yd: ball speed " + speed), picture.description());
        assertTrue(picture.description().contains("unexplained"), picture.description());
    }

    @Test
    void theExplanationOfAnotherResultIsRefused() {
        HeadToHeadReport other = HeadToHeadReport.of(InventedSession.usual(Handedness.LEFT));
        String message = assertThrows(IllegalArgumentException.class, () -> other.withExplanation(WHY))
                .getMessage();
        assertTrue(message.startsWith("explanation must be of the result of this report"), message);
        assertTrue(other.withExplanation(Explain.withDefaults().explain(other.result()))
                .explanation()
                .isPresent());
    }

    @Test
    void theSectionHoldsThePicture() {
        HeadToHeadReport report = HeadToHeadReport.of(USUAL).withExplanation(WHY);
        String html = report.html();
        int section = html.indexOf("<section class=\"part\" aria-labelledby=\"section-explained\"");
        int picture = html.indexOf("picture-explained-shares");
        int next = html.indexOf("<section class=\"part\" aria-labelledby=\"section-companions\"");
        assertTrue(section > 0 && section < picture && picture < next, section + " " + picture + " " + next);
        assertEquals(
                "Club or swing",
                report.sections().stream()
                        .filter(s -> s.id().equals("explained"))
                        .findFirst()
                        .orElseThrow()
                        .title());
        assertTrue(HeadToHeadReport.of(USUAL).sections().stream().noneMatch(s -> s.id().equals("explained")));
        assertEquals(WHY, report.withUnits(UnitSystem.METRIC).explanation().orElseThrow());
    }
}
