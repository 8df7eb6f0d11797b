package dev.teeward.fitting.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.ShotSet;
import dev.teeward.fitting.UnitSystem;
import dev.teeward.fitting.choose.ClubChoice;
import dev.teeward.fitting.choose.Goal;
import dev.teeward.fitting.summary.TargetRegion;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;

/** The page of a choice: what it shows is what was found, and nothing of a file breaks it. */
class ChoiceReportTest {
    private static Session session(String first, int shots) {
        SplittableRandom random = new SplittableRandom(17L);
        List<Shot> all = new ArrayList<>();
        for (int i = 0; i < shots; i++) {
            for (String club : List.of(first, "Rowan", "Hazel")) {
                double mean = club.equals("Hazel") ? 147.0 : 150.0;
                all.add(Shot.builder(club)
                        .number(all.size() + 1)
                        .measured(Metric.CARRY, mean + 4.0 * random.nextGaussian())
                        .measured(Metric.SIDE, 5.0 * random.nextGaussian())
                        .build());
            }
        }
        return Session.builder().shots(ShotSet.of(all)).build();
    }

    private static ClubChoice.Result choice(String first) {
        return ClubChoice.withGoal(Goal.distance()).choose(session(first, 8));
    }

    /** Bars from the left of the full bar, as long as the chance; the chances of all clubs make one bar. */
    @Test
    void theBarsAreTheChances() {
        ClubChoice.Result result = choice("Alder");
        Picture picture = ChoiceReport.of(result).pictures().get(0);
        Document svg = Svg.check(picture);
        List<Element> bars = Svg.withClass(svg, "rect", "chance");
        assertEquals(3, bars.size());
        double sum = 0.0;
        for (int i = 0; i < 3; i++) {
            double width = Double.parseDouble(bars.get(i).getAttribute("width"));
            assertEquals(340.0 * result.clubs().get(i).probability().orElseThrow(), width, 0.051);
            sum += width;
        }
        assertEquals(340.0, sum, 0.2);
        String loss = NumberText.fixed(result.clubs().get(2).expectedLoss().orElseThrow() / 0.9144, 1);
        assertTrue(picture.description().contains("loss " + loss + " yd"), picture.description());
    }

    @Test
    void theStripsHoldEveryShotAndTheMean() {
        ClubChoice.Result result = choice("Alder");
        Picture picture =
                ChoiceReport.of(result).withUnits(UnitSystem.METRIC).pictures().get(1);
        Document svg = Svg.check(picture);
        assertEquals(24, Svg.all(svg, "circle").size());
        List<Element> means = Svg.withClass(svg, "path", "mean");
        List<Element> intervals = Svg.withClass(svg, "path", "interval");
        assertEquals(3, means.size());
        for (int i = 0; i < 3; i++) {
            double at = Svg.points(means.get(i).getAttribute("d")).get(0)[0];
            List<double[]> ends = Svg.points(intervals.get(i).getAttribute("d"));
            // A t interval is symmetric.
            assertEquals(0.5 * (ends.get(0)[0] + ends.get(1)[0]), at, 0.11);
            double carry = result.clubs().get(i).carry().orElseThrow().value();
            assertTrue(picture.description().contains(Decimals.label(carry, 1)), picture.description());
        }
    }

    @Test
    void theWordsAndTablesAreTheResult() {
        ClubChoice.Result result = choice("Alder");
        ChoiceReport report = ChoiceReport.of(result);
        String said = report.sections().get(0).sentences().toString();
        String mean = NumberText.fixed(result.leader().mean().value() / 0.9144, 1);
        assertTrue(said.contains("The best mean has " + result.leader().name() + ": " + mean + " yd."), said);
        assertEquals(
                List.of("clubs", "differences"),
                report.tables().stream().map(Table::id).toList());
        assertEquals(3, report.tables().get(1).rows().size());
        assertEquals(
                NumberText.fixed(result.clubs().get(1).mean().value() / 0.9144, 1),
                report.tables().get(0).rows().get(1).get(2));
        ClubChoice.Result against =
                ClubChoice.withGoal(Goal.distance()).withCurrentClub("Rowan").choose(session("Alder", 8));
        assertEquals(2, ChoiceReport.of(against).tables().get(1).rows().size());
    }

    /** A share of balls has no unit, and its numbers stay shares in both families of units. */
    @Test
    void sharesHaveNoUnit() {
        ClubChoice.Result result = ClubChoice.withGoal(Goal.holding(TargetRegion.circle(150.0, 0.0, 6.0)))
                .choose(session("Alder", 8));
        ChoiceReport us = ChoiceReport.of(result);
        assertEquals(
                us.tables().get(0).rows(),
                us.withUnits(UnitSystem.METRIC).tables().get(0).rows());
        assertFalse(us.sections().get(0).sentences().get(1).text().contains("yd"));
    }

    /** Nine of ten on the green with either: both are named, and that nothing is between them is said first. */
    @Test
    void aTieIsCalledATie() {
        List<Shot> all = new ArrayList<>();
        for (int i = 0; i < 10; i++) {
            for (String club : List.of("Alder", "Rowan")) {
                all.add(Shot.builder(club)
                        .measured(Metric.CARRY, i == 0 ? 120.0 : 150.0)
                        .measured(Metric.SIDE, 0.0)
                        .build());
            }
        }
        ChoiceReport report = ChoiceReport.of(ClubChoice.withGoal(Goal.holding(TargetRegion.circle(150.0, 0.0, 6.0)))
                .choose(Session.builder().shots(ShotSet.of(all)).build()));
        assertEquals("in-short", report.sections().get(0).id());
        String said = report.sections().get(0).sentences().toString();
        assertTrue(said.contains("The best mean is shared by Alder and Rowan: 0.900."), said);
        assertTrue(said.contains("The shots can't tell between Alder (50 %) and Rowan (50 %)"), said);
        // Wilson's interval of 9 of 10 is 0.596 to 0.982 (Newcombe 1998, from memory; by hand with z = 1.96).
        assertEquals("0.596 to 0.982", report.tables().get(0).rows().get(0).get(3));
    }

    @Test
    void aHostileNameIsShownAndNotRun() {
        for (String hostile : HostileText.ALL) {
            String name = HostileText.asShown(hostile).strip() + " a";
            ChoiceReport report = ChoiceReport.of(choice(name));
            String page = report.html();
            Document document = Svg.parsePage(page);
            Svg.assertUniqueIds(document);
            Svg.assertReferencesResolve(document);
            Svg.assertNoHandlers(document);
            HostileText.assertClean(page);
            assertEquals(2, Svg.all(document, "svg").size());
            assertEquals(page, report.html());
        }
    }

    @Test
    void equalShotsAndManyShotsAreDrawn() {
        List<Shot> shots = new ArrayList<>();
        for (int i = 0; i < 8; i++) {
            shots.add(Shot.builder(i % 2 == 0 ? "Alder" : "Rowan")
                    .measured(Metric.CARRY, 150.0)
                    .build());
        }
        ChoiceReport.of(ClubChoice.withGoal(Goal.distance())
                        .choose(Session.builder().shots(ShotSet.of(shots)).build()))
                .pictures()
                .forEach(Svg::check);
        Picture many = ChoiceReport.of(ClubChoice.withGoal(Goal.distance()).choose(session("Alder", 320)))
                .pictures()
                .get(1);
        assertEquals(900, Svg.all(Svg.check(many), "circle").size());
        assertTrue(many.description().endsWith("Of 320 shots 300 are drawn, evenly chosen."), many.description());
    }

    /** Letters of 11 are the smallest that a printed page keeps above 8 pt. */
    @Test
    void noLettersAreTooSmallForPaper() {
        ChoiceReport.of(choice("Alder")).pictures().forEach(picture -> PictureTest.assertLetters(picture, 8.0 / 11.0));
    }
}
