package dev.teeward.fitting.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.UnitSystem;
import dev.teeward.fitting.VisibleText;
import dev.teeward.fitting.pool.ClubOverGolfers;
import dev.teeward.fitting.pool.GolferEffect;
import dev.teeward.fitting.pool.RandomEffects;
import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.Interval;
import dev.teeward.quantity.LengthUnit;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;

/** The forest plot of golfers that are invented. */
class PoolReportTest {
    private static final double[] EFFECTS = {3.0, -1.0, 4.5, 2.0, 6.0};
    private static final double[] ERRORS = {1.0, 1.5, 2.0, 0.8, 1.2};

    private static ClubOverGolfers.Result result(String name, double lastHalfWidth) {
        List<GolferEffect> golfers = new ArrayList<>();
        for (int i = 0; i < EFFECTS.length; i++) {
            double half = i == EFFECTS.length - 1 ? lastHalfWidth : 2.2 * ERRORS[i];
            golfers.add(new GolferEffect(
                    i == 0 ? name : "golfer " + i,
                    Estimate.of(EFFECTS[i], Interval.of(EFFECTS[i] - half, EFFECTS[i] + half, 0.95), LengthUnit.METER),
                    ERRORS[i],
                    11.0,
                    true,
                    i == 1,
                    List.of()));
        }
        return new ClubOverGolfers.Result(
                "Alder",
                "Rowan",
                Metric.CARRY,
                RandomEffects.withDefaults().withUnit(LengthUnit.METER).pool(EFFECTS, ERRORS),
                golfers,
                Map.of("golfer 9", "no shots with Rowan"),
                List.of(Warning.of(
                        "clubs-in-blocks", "with 1 of 5 golfers (" + VisibleText.line(name) + ") in one go")));
    }

    /** Where a number is drawn, from two labelled ticks. */
    private static double[] axis(Document svg) {
        List<Element> ticks = Svg.all(svg, "text").stream()
                .filter(e -> e.getAttribute("text-anchor").equals("middle"))
                .filter(e -> e.getTextContent().matches("\u2212?[0-9.]+"))
                .toList();
        Element a = ticks.get(0);
        Element b = ticks.get(ticks.size() - 1);
        double low = Double.parseDouble(a.getTextContent().replace('\u2212', '-'));
        double high = Double.parseDouble(b.getTextContent().replace('\u2212', '-'));
        double atLow = Double.parseDouble(a.getAttribute("x"));
        double perUnit = (Double.parseDouble(b.getAttribute("x")) - atLow) / (high - low);
        return new double[] {atLow - perUnit * low, perUnit};
    }

    @Test
    void everyMarkIsWhereItsNumberSays() {
        ClubOverGolfers.Result result = result("Ash", 2.6);
        Picture picture = PoolReport.of(result).withUnits(UnitSystem.METRIC).picture();
        Document svg = Svg.check(picture);
        double[] axis = axis(svg);
        List<Element> means = Svg.withClass(svg, "path", "mean");
        assertEquals(7, means.size());
        // Half a step of the coordinates at either tick and at the mark.
        double pixel = 0.2;
        for (int i = 0; i < 7; i++) {
            double value = i < 5 ? EFFECTS[i] : result.pooled().mean().value();
            assertEquals(
                    axis[0] + axis[1] * value,
                    Svg.points(means.get(i).getAttribute("d")).get(0)[0],
                    pixel);
        }
        List<double[]> first =
                Svg.points(Svg.withClass(svg, "path", "interval").get(0).getAttribute("d"));
        assertEquals(axis[0] + axis[1] * 0.8, first.get(0)[0], pixel);
        assertEquals(axis[0] + axis[1] * 5.2, first.get(1)[0], pixel);
        Element next = Svg.withClass(svg, "rect", "interval").get(0);
        assertEquals(
                axis[1] * 2.0 * result.pooled().nextGolfer().interval().halfWidth(),
                Double.parseDouble(next.getAttribute("width")),
                pixel);
        List<double[]> zero =
                Svg.points(Svg.withClass(svg, "path", "reference").get(0).getAttribute("d"));
        assertEquals(axis[0], zero.get(0)[0], pixel);
        assertEquals(0, Svg.withClass(svg, "path", "arrow").size());
    }

    /** One golfer who hit three balls must not press all others together. */
    @Test
    void aVeryLongIntervalEndsInArrows() {
        Document svg = Svg.check(PoolReport.of(result("Ash", 400.0)).picture());
        assertEquals(2, Svg.withClass(svg, "path", "arrow").size());
        assertTrue(axis(svg)[1] > 5.0, "a yard is " + axis(svg)[1]);
    }

    @Test
    void wordsAndTableAreTheResult() {
        ClubOverGolfers.Result result = result("Ash", 2.6);
        PoolReport report = PoolReport.of(result);
        String said = report.sections().get(0).sentences().toString();
        String mean = NumberText.fixed(result.pooled().mean().value() / 0.9144, 1);
        assertTrue(said.contains("Alder minus Rowan, carry, over 5 golfers: " + mean + " yd (95 % interval "), said);
        assertTrue(said.contains("Left out: golfer 9, because no shots with Rowan."), said);
        assertTrue(report.sections().get(1).sentences().stream()
                .anyMatch(s -> s.text().equals("With 1 of 5 golfers (Ash) in one go.")));
        assertTrue(report.html().contains("With 1 of 5 golfers (Ash) in one go."));
        assertEquals(5, report.table().rows().size());
        // 3 m are 3.28 yd.
        assertEquals(
                List.of("Ash", "3.3", "0.9", "5.7", "pairs", "no"),
                report.table().rows().get(0));
        assertEquals("yes", report.table().rows().get(1).get(5));
    }

    @Test
    void hostileNamesStayText() {
        for (String hostile : HostileText.ALL) {
            String page = PoolReport.of(result(hostile, 2.6)).html();
            Document document = Svg.parsePage(page);
            Svg.assertUniqueIds(document);
            Svg.assertReferencesResolve(document);
            Svg.assertNoHandlers(document);
            HostileText.assertClean(page);
            assertEquals(page, PoolReport.of(result(hostile, 2.6)).html());
        }
    }

    /** Letters of 11 are the smallest that a printed page keeps above 8 pt. */
    @Test
    void noLettersAreTooSmallForPaper() {
        PictureTest.assertLetters(PoolReport.of(result("Ash", 2.6)).picture(), 8.0 / 11.0);
    }
}
