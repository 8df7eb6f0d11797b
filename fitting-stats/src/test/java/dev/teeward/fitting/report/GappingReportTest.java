package dev.teeward.fitting.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.fitting.Club;
import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.ShotSet;
import dev.teeward.fitting.UnitSystem;
import dev.teeward.fitting.gapping.Bag;
import dev.teeward.fitting.gapping.BagClub;
import dev.teeward.fitting.gapping.Gapping;
import dev.teeward.fitting.gapping.Mend;
import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Length;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;

/** The report of a bag: what it says is what was measured, and nothing of a file breaks it. */
class GappingReportTest {
    private static final String HOSTILE = "<script>alert(1)</script> & a very long name of a club indeed";

    private static Bag bag(String firstName, boolean wanted) {
        double[][] yards = {
            {172.0, 168.5, 175.5, 170.0, 171.5, 166.0},
            {151.0, 148.0, 154.5, 150.5, 147.0, 152.0},
            {149.0, 144.5, 151.0, 146.0, 150.0, 143.5}
        };
        List<Shot> shots = new ArrayList<>();
        for (int round = 0; round < yards[0].length; round++) {
            for (int club = 0; club < yards.length; club++) {
                shots.add(Shot.builder(club == 0 ? firstName : "club " + club)
                        .number(shots.size() + 1)
                        .measured(
                                Metric.CARRY, Length.ofYards(yards[club][round]).meters())
                        .build());
            }
        }
        Session session = Session.builder().shots(ShotSet.of(shots)).build();
        Gapping procedure = Gapping.withDefaults();
        return (wanted ? procedure.withWanted(Length.ofYards(10.0), Length.ofYards(3.0)) : procedure).measure(session);
    }

    @Test
    void theWordsSayWhatWasMeasured() {
        GappingReport report = GappingReport.of(bag("Alder", true));
        String text = report.text();
        String plain = text.replaceAll("\\s+", " ");
        // The means of the yards above, by hand: 1023.5/6, 903/6, 884/6.
        assertTrue(plain.contains("From Alder, 170.6 yd, to club 2, 147.3 yd."), text);
        assertTrue(plain.contains("Between Alder and club 1 lie 20.1 yd"), text);
        assertTrue(plain.contains("more than the wanted 10.0 yd, give or take 3.0"), text);
        assertTrue(plain.contains("Between club 1 and club 2 lie 3.2 yd"), text);
        assertTrue(plain.contains("No club covers "), text);
        assertTrue(plain.contains("the one with club 2 carries farther than the one with club 1"), text);
        assertTrue(text.lines().allMatch(line -> line.length() <= 96), text);
    }

    @Test
    void oneRowForEachClub() {
        Bag bag = bag("Alder", true);
        Table table = GappingReport.of(bag).table();
        assertEquals(
                bag.clubs().stream().map(BagClub::name).toList(),
                table.rows().stream().map(row -> row.get(0)).toList());
        assertEquals("170.6", table.rows().get(0).get(2));
        assertEquals(List.of("-", "-"), table.rows().get(2).subList(9, 11));
        assertEquals(11, table.headings().size());
        assertEquals(9, GappingReport.of(bag("Alder", false)).table().headings().size());
    }

    @Test
    void metresOnRequest() {
        GappingReport report = GappingReport.of(bag("Alder", true)).withUnits(UnitSystem.METRIC);
        // 170.5833 yd are 155.98 m.
        assertEquals("156.0", report.table().rows().get(0).get(2));
        assertEquals("m", report.data().get("unit"));
    }

    @Test
    void dataHoldEveryClubAndGap() {
        Map<String, ?> data = GappingReport.of(bag("Alder", true)).data();
        assertEquals(GappingReport.SCHEMA, data.get("schema"));
        List<?> clubs = (List<?>) data.get("clubs");
        List<?> gaps = (List<?>) data.get("gaps");
        assertEquals(3, clubs == null ? 0 : clubs.size());
        assertEquals(2, gaps == null ? 0 : gaps.size());
        Map<?, ?> carry = (Map<?, ?>) ((Map<?, ?>) clubs.get(0)).get("carry");
        assertEquals(1023.5 / 6.0, (Double) carry.get("value"), 1e-9);
        assertEquals(10.0, (Double) data.get("wanted"), 1e-9);
    }

    /** Title and description are in the picture, all of it lies on the paper, and all ids differ. */
    @Test
    void thePictureCanBeReadAndHeard() {
        Bag bag = bag("Alder", true);
        Picture picture = GappingReport.of(bag).picture();
        Document svg = Svg.parse(picture.svg());
        assertEquals(picture.title(), Svg.all(svg, "title").get(0).getTextContent());
        String description = Svg.all(svg, "desc").get(0).getTextContent();
        assertTrue(description.contains("Alder 170.6, club 1 150.5, club 2 147.3"), description);
        assertTrue(description.contains("Not covered: "), description);
        Element root = svg.getDocumentElement();
        assertEquals("img", root.getAttribute("role"));
        double height = Double.parseDouble(root.getAttribute("viewBox").split(" ", -1)[3]);
        List<Element> dots = Svg.all(svg, "circle");
        assertEquals(18, dots.size());
        for (Element dot : dots) {
            double x = Double.parseDouble(dot.getAttribute("cx"));
            double y = Double.parseDouble(dot.getAttribute("cy"));
            assertTrue(x >= 84.0 && x <= 350.0 && y > 0.0 && y < height);
        }
        List<String> texts =
                Svg.all(svg, "text").stream().map(Element::getTextContent).toList();
        assertTrue(texts.contains("20.1, large") && texts.contains("3.2, small"), texts.toString());
    }

    @Test
    void aHostileNameIsShownAndNotRun() {
        GappingReport report = GappingReport.of(bag(HOSTILE, true));
        String page = report.html();
        assertFalse(page.contains("<script"));
        Document document = Svg.parsePage(page);
        assertEquals(1, Svg.all(document, "svg").size());
        assertEquals(1, Svg.all(document, "table").size());
        Set<String> ids = new HashSet<>();
        Svg.all(document, "*").stream()
                .map(e -> e.getAttribute("id"))
                .filter(id -> !id.isEmpty())
                .forEach(id -> assertTrue(ids.add(id), id));
        assertTrue(report.text().lines().allMatch(line -> line.length() <= 96), report.text());
        assertEquals(page, GappingReport.of(bag(HOSTILE, true)).html());
    }

    @Test
    void withoutAWantedGapNothingIsJudged() {
        String text = GappingReport.of(bag("Alder", false)).text();
        assertFalse(text.contains("wanted"), text);
    }

    private static String words(Bag bag) {
        return GappingReport.of(bag).text().replaceAll("\\s+", " ");
    }

    /** Shots about their means by hand; launches and lofts so that what would mend a gap can be worked out. */
    private static Bag two(double gapYards, double scatter) {
        List<Shot> shots = new ArrayList<>();
        for (int i = 0; i < 16; i++) {
            boolean longer = i % 2 == 0;
            // Either club half above and half below its mean, not in step.
            boolean up = longer ? i / 2 % 2 == 0 : i / 4 % 2 == 0;
            double carry = (longer ? 120.0 : 120.0 - gapYards) + (up ? scatter : -scatter);
            shots.add(Shot.builder(longer ? "Alder" : "Rowan")
                    .number(i + 1)
                    .measured(Metric.CARRY, Length.ofYards(carry).meters())
                    .measured(Metric.BALL_SPEED, (longer ? 42.0 : 36.0) + 0.1 * (i / 2 % 4))
                    .measured(Metric.LAUNCH_ANGLE, Math.toRadians(longer ? 24.0 : 29.0))
                    .measured(Metric.START_DIRECTION, 0.0)
                    .measured(Metric.SPIN_RATE, longer ? 900.0 : 950.0)
                    .measured(Metric.AXIS_TILT, 0.0)
                    .build());
        }
        Session session = Session.builder()
                .shots(ShotSet.of(shots))
                .club(Club.builder("Alder").loft(Angle.ofDegrees(45.0)).build())
                .club(Club.builder("Rowan").loft(Angle.ofDegrees(54.0)).build())
                .build();
        return Gapping.withDefaults()
                .withWanted(Length.ofYards(12.0), Length.ofYards(3.0))
                .measure(session);
    }

    /** From 1.5 wanted gaps on, a half lies nearer to the wanted one than the whole. */
    @Test
    void aWideGapAsksForAClubBetweenAndNeverForASlowerSwing() {
        Bag wide = two(34.0, 1.0);
        List<Mend> mends = wide.gaps().get(0).mends();
        assertTrue(mends.stream().anyMatch(mend -> mend.means() == Mend.Means.CLUB_SPEED), mends.toString());
        assertTrue(
                mends.stream()
                        .allMatch(mend ->
                                mend.means() == Mend.Means.LOFT || mend.change().value() > 0.0),
                mends.toString());
        assertEquals(
                Length.ofYards(17.0).meters(), wide.halved(wide.gaps().get(0)).orElseThrow(), 1e-9);
        assertTrue(two(17.0, 1.0).halved(two(17.0, 1.0).gaps().get(0)).isEmpty());
        String said = words(wide);
        assertTrue(
                said.contains("Between Alder and Rowan one more club, half-way, would leave two gaps of 17.0 yd."),
                said);
        assertFalse(said.contains("less club speed"), said);
        assertFalse(words(two(17.0, 1.0)).contains("one more club"));
    }

    /** Half-widths by hand: 8 shots at mean +- s, sd s sqrt(8/7), t(0.975, 7) = 2.3646 (tables). */
    @Test
    void aHoleNarrowerThanTheMeansAreSureIsNoFact() {
        assertTrue(two(34.0, 1.0).uncovered().stream().allMatch(two(34.0, 1.0)::settled));
        Bag unsure = two(15.5, 3.0);
        assertFalse(unsure.settled(unsure.uncovered().get(0)));
        assertTrue(GappingReport.of(unsure).picture().svg().contains("(by the estimates)"));
        assertFalse(GappingReport.of(unsure).picture().svg().contains("no club covers it"));
        assertTrue(GappingReport.of(two(34.0, 1.0)).picture().svg().contains("no club covers it"));
        String sure = words(two(34.0, 1.0));
        assertTrue(sure.contains("No club covers ") && !sure.contains("by the estimates"), sure);
        String doubtful = words(two(15.5, 3.0));
        // 3 * sqrt(8/7) * 2.3646 / sqrt(8) = 2.68.
        assertTrue(
                doubtful.contains("by the estimates, which is less than they are sure: Rowan to 2.7 and Alder to 2.7"),
                doubtful);
    }

    /** Letters of 11 are the smallest that a printed page keeps above 8 pt. */
    @Test
    void noLettersAreTooSmallForPaper() {
        PictureTest.assertLetters(GappingReport.of(bag("Alder", true)).picture(), 8.0 / 11.0);
    }
}
