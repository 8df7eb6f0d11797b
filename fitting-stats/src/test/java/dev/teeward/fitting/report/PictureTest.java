package dev.teeward.fitting.report;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.MetricGroup;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.ShotSet;
import dev.teeward.fitting.UnitSystem;
import dev.teeward.fitting.compare.HeadToHead;
import dev.teeward.fitting.compare.HeadToHeadResult;
import dev.teeward.fitting.summary.Ellipse;
import dev.teeward.quantity.Handedness;
import dev.teeward.quantity.LengthUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;

/** What is drawn is where the numbers say, and nothing in a file can break out of it. */
class PictureTest {
    private static final HeadToHeadResult USUAL = InventedSession.usual(Handedness.LEFT);

    /** Half a step of the coordinates, which have one decimal, and a rounding. */
    private static final double HALF_STEP = 0.0501;

    @Test
    void everyPictureIsWellFormedAndDescribed() {
        for (UnitSystem units : UnitSystem.values()) {
            List<Picture> pictures = InventedSession.pictures(DrawnShots.of(USUAL, Set.of(0, 7)), units);
            assertEquals(10, pictures.size());
            pictures.forEach(Svg::check);
        }
    }

    @Test
    void hostileNamesStayText() {
        for (int i = 0; i + 1 < HostileText.ALL.size(); i++) {
            String first = HostileText.asShown(HostileText.ALL.get(i)).strip();
            String second = HostileText.asShown(HostileText.ALL.get(i + 1)).strip() + " \u202Eb";
            Session session = InventedSession.session("\u202E" + first + " a", second, 3, Handedness.RIGHT, true);
            for (Picture picture : InventedSession.pictures(
                    DrawnShots.of(InventedSession.compare(session), Set.of(1)), UnitSystem.US)) {
                Document document = Svg.check(picture);
                assertEquals(0, document.getElementsByTagName("script").getLength());
                assertEquals(0, document.getElementsByTagName("img").getLength());
                HostileText.assertClean(picture.svg());
            }
        }
    }

    /** Below six shots an ellipse tells nothing; the picture says so and the shots set its scale. */
    @Test
    void fewShotsHaveNoEllipse() {
        for (int perClub : new int[] {3, 5, 8}) {
            Session session = InventedSession.session("Alder", "Rowan", perClub, Handedness.RIGHT, true);
            HeadToHeadResult result = InventedSession.compare(session);
            boolean enough = perClub == 8;
            for (Picture picture : List.of(
                    LandingPicture.of(result, UnitSystem.US).orElseThrow(),
                    FacePicture.of(result, UnitSystem.US).orElseThrow())) {
                Document document = Svg.check(picture);
                assertEquals(
                        enough ? 2 : 0,
                        Svg.withClass(document, "path", "ellipse").size(),
                        perClub + " " + picture.id());
                assertEquals(!enough, picture.svg().contains("no outline: under 6 shots a club"), picture.svg());
            }
            boolean row = HeadToHeadReport.of(result).tables().stream()
                    .flatMap(table -> table.rows().stream())
                    .anyMatch(cells -> cells.get(0).startsWith("ellipse"));
            assertEquals(enough, row);
        }
        Session few = InventedSession.session("Alder", "Rowan", 4, Handedness.RIGHT, true);
        HeadToHeadResult result = InventedSession.compare(few);
        Axis carry =
                carryAxis(Svg.check(LandingPicture.of(result, UnitSystem.METRIC).orElseThrow()));
        double longest = Stream.of(result.first(), result.second())
                .flatMap(club -> club.pattern().stream())
                .mapToDouble(pattern -> 2.0 * pattern.ellipse().semiMajor())
                .max()
                .orElseThrow();
        assertTrue(
                longest * carry.perUnit() > SvgDrawing.WIDTH,
                longest + " m at " + carry.perUnit() + " a metre would fit, so the ellipse may have set the scale");
    }

    /** Maps a coordinate back to the number by two labelled ticks of the same axis. */
    private record Axis(double low, double atLow, double high, double atHigh) {
        double value(double coordinate) {
            return low + (coordinate - atLow) / (atHigh - atLow) * (high - low);
        }

        double perUnit() {
            return Math.abs((atHigh - atLow) / (high - low));
        }
    }

    /** Ticks of the carry axis of the landing picture: right-aligned numbers. */
    private static Axis carryAxis(Document document) {
        List<Element> ticks = Svg.all(document, "text").stream()
                .filter(e -> e.getAttribute("text-anchor").equals("end"))
                .filter(e -> e.getTextContent().matches("[0-9.]+"))
                .toList();
        Element a = ticks.get(0);
        Element b = ticks.get(ticks.size() - 1);
        return new Axis(
                Double.parseDouble(a.getTextContent()),
                Double.parseDouble(a.getAttribute("y")) - 4.0,
                Double.parseDouble(b.getTextContent()),
                Double.parseDouble(b.getAttribute("y")) - 4.0);
    }

    /** Ticks of the side axis: middle-aligned sizes, left of 0 negative. */
    private static Axis sideAxis(Document document) {
        List<Element> ticks = Svg.all(document, "text").stream()
                .filter(e -> e.getAttribute("text-anchor").equals("middle"))
                .filter(e -> e.getTextContent().matches("[0-9.]+"))
                .toList();
        int zero = 0;
        while (!ticks.get(zero).getTextContent().equals("0")) {
            zero++;
        }
        Element other = ticks.get(zero == 0 ? ticks.size() - 1 : 0);
        double size = Double.parseDouble(other.getTextContent());
        return new Axis(
                0.0,
                Double.parseDouble(ticks.get(zero).getAttribute("x")),
                zero == 0 ? size : -size,
                Double.parseDouble(other.getAttribute("x")));
    }

    @Test
    void theEllipseIsWhereItsNumbersSay() {
        for (UnitSystem units : UnitSystem.values()) {
            LengthUnit unit = units == UnitSystem.US ? LengthUnit.YARD : LengthUnit.METER;
            Document document = Svg.check(LandingPicture.of(USUAL, units).orElseThrow());
            Axis carry = carryAxis(document);
            Axis side = sideAxis(document);
            List<Element> outlines = Svg.withClass(document, "path", "ellipse");
            List<Element> centers = Svg.withClass(document, "path", "center");
            assertEquals(2, outlines.size());
            Ellipse[] ellipses = {
                USUAL.patterns().orElseThrow().first().ellipse(),
                USUAL.patterns().orElseThrow().second().ellipse()
            };
            double pixel = 1.0 / carry.perUnit();
            for (int club = 0; club < 2; club++) {
                Ellipse ellipse = ellipses[club];
                List<double[]> points = Svg.points(outlines.get(club).getAttribute("d"));
                assertEquals(72, points.size());
                // The ends of both axes by their closed form; the outline starts at an end of the longer one.
                double[][] ends = {
                    {ellipse.semiMajor(), 0.0},
                    {0.0, ellipse.semiMinor()},
                    {-ellipse.semiMajor(), 0.0},
                    {0.0, -ellipse.semiMinor()}
                };
                for (int i = 0; i < 4; i++) {
                    double along = Math.cos(ellipse.angle()) * ends[i][0] - Math.sin(ellipse.angle()) * ends[i][1];
                    double across = Math.sin(ellipse.angle()) * ends[i][0] + Math.cos(ellipse.angle()) * ends[i][1];
                    double[] drawn = points.get(18 * i);
                    assertEquals(unit.fromSi(ellipse.centerX() + along), carry.value(drawn[1]), pixel);
                    assertEquals(unit.fromSi(ellipse.centerY() + across), side.value(drawn[0]), pixel);
                }
                List<double[]> cross = Svg.points(centers.get(club).getAttribute("d"));
                assertEquals(unit.fromSi(ellipse.centerX()), carry.value(cross.get(0)[1]), pixel);
                assertEquals(
                        unit.fromSi(ellipse.centerY()), side.value(0.5 * (cross.get(0)[0] + cross.get(1)[0])), pixel);
            }
        }
    }

    @Test
    void bothAxesOfTheLandingPictureHaveTheSameScale() {
        Document document = Svg.check(LandingPicture.of(USUAL, UnitSystem.US).orElseThrow());
        double step = 2.0 * HALF_STEP;
        double carry = carryAxis(document).perUnit();
        assertEquals(carry, sideAxis(document).perUnit(), carry * step / 20.0);
    }

    @Test
    void everyShotIsOnThePictureAndMarkedForWhatItIs() {
        int flagged = 4;
        assertTrue(USUAL.session().shots().shots().get(flagged).used());
        Document document = Svg.check(LandingPicture.of(DrawnShots.of(USUAL, Set.of(flagged)), UnitSystem.US)
                .orElseThrow());
        Axis carry = carryAxis(document);
        Axis side = sideAxis(document);
        // Circles: the legend, twelve shots of Alder, the ring of the flagged one.
        List<Element> circles = Svg.all(document, "circle");
        assertEquals(1 + 12 + 1, circles.size());
        Shot shot = USUAL.session().shots().shots().get(flagged);
        Element ring = circles.get(13);
        assertEquals("none", ((Element) ring.getParentNode()).getAttribute("fill"));
        double pixel = 1.0 / carry.perUnit();
        assertEquals(
                LengthUnit.YARD.fromSi(shot.value(Metric.CARRY)),
                carry.value(Double.parseDouble(ring.getAttribute("cy"))),
                pixel);
        assertEquals(
                LengthUnit.YARD.fromSi(shot.value(Metric.SIDE)),
                side.value(Double.parseDouble(ring.getAttribute("cx"))),
                pixel);
        List<Element> hollow = Svg.all(document, "g").stream()
                .filter(g -> g.getAttribute("fill").equals("none")
                        && g.getAttribute("stroke").equals(Palette.SECOND))
                .toList();
        assertEquals(1, hollow.size());
        assertEquals(1, hollow.get(0).getElementsByTagName("path").getLength());
    }

    @Test
    void theFaceIsMirroredForLeftHanders() {
        Document left = Svg.check(FacePicture.of(USUAL, UnitSystem.US).orElseThrow());
        Document right = Svg.check(FacePicture.of(InventedSession.usual(Handedness.RIGHT), UnitSystem.US)
                .orElseThrow());
        // Seen from the target the toe of a right-handed club points to the left: in the frame x to the target and z to
        // the
        // right, the golfer stands at negative z and the toe points to positive z, which is at the left looking back.
        assertTrue(place(left, "toe \u2192") > place(left, "\u2190 heel"));
        assertTrue(place(right, "\u2190 toe") < place(right, "heel \u2192"));
        List<double[]> one =
                Svg.points(Svg.withClass(left, "path", "outline").get(0).getAttribute("d"));
        List<double[]> other =
                Svg.points(Svg.withClass(right, "path", "outline").get(0).getAttribute("d"));
        for (int i = 0; i < one.size(); i++) {
            assertEquals(SvgDrawing.WIDTH - one.get(i)[0], other.get(i)[0], 0.11);
            assertEquals(one.get(i)[1], other.get(i)[1], 1e-9);
        }
        List<Element> a = Svg.all(left, "circle");
        List<Element> b = Svg.all(right, "circle");
        for (int i = 1; i < a.size(); i++) {
            assertEquals(
                    SvgDrawing.WIDTH - Double.parseDouble(a.get(i).getAttribute("cx")),
                    Double.parseDouble(b.get(i).getAttribute("cx")),
                    0.11);
        }
    }

    private static double place(Document document, String text) {
        return Double.parseDouble(Svg.all(document, "text").stream()
                .filter(e -> e.getTextContent().equals(text))
                .findFirst()
                .orElseThrow()
                .getAttribute("x"));
    }

    @Test
    void flightsEndWhereTheModelLands() {
        Picture picture = FlightPicture.of(USUAL, UnitSystem.US).orElseThrow();
        Document document = Svg.check(picture);
        List<Element> groups = Svg.withClass(document, "g", "shots");
        assertEquals(4, groups.size());
        assertEquals(12, groups.get(0).getElementsByTagName("path").getLength());
        assertEquals(11, groups.get(1).getElementsByTagName("path").getLength());
        assertEquals(4, Svg.withClass(document, "g", "mean").size());
        // All flights of the side view begin at one point and come down to the same height.
        double ground = -1.0;
        for (Element path :
                Svg.all(document, "path").subList(0, Svg.all(document, "path").size())) {
            if (path.getParentNode() == groups.get(0)) {
                List<double[]> points = Svg.points(path.getAttribute("d"));
                ground = ground < 0.0 ? points.get(0)[1] : ground;
                assertEquals(ground, points.get(0)[1], 1e-9);
                assertEquals(ground, points.get(points.size() - 1)[1], 0.11);
                assertTrue(points.get(points.size() / 2)[1] < ground - 20.0);
            }
        }
    }

    @Test
    void stripsShowMeansAndIntervals() {
        Picture picture =
                StripPicture.of(USUAL, MetricGroup.LANDING, UnitSystem.US).orElseThrow();
        Document document = Svg.check(picture);
        int rows = (int) USUAL.metrics().stream()
                .filter(m -> m.metric().group() == MetricGroup.LANDING)
                .count();
        assertEquals(3 * rows, Svg.withClass(document, "path", "interval").size());
        assertEquals(3 * rows, Svg.withClass(document, "path", "mean").size());
        String value = Decimals.label(
                USUAL.primary().first().mean().convertTo(LengthUnit.YARD).value(), 1);
        assertTrue(picture.description().contains("carry [yd]: Alder " + value + " ("), picture.description());
    }

    private static Session plain(int perClub, Metric metric, double... values) {
        List<Shot> shots = new ArrayList<>();
        for (int i = 0; i < 2 * perClub; i++) {
            shots.add(Shot.builder(i % 2 == 0 ? "One" : "Two")
                    .number(i + 1)
                    .measured(metric, values[i % values.length])
                    .build());
        }
        return Session.builder().shots(ShotSet.of(shots)).build();
    }

    @Test
    void poorSessionsAreDrawnAsFarAsTheyGo() {
        // Two shots with each club, one metric; equal shots; no carry.
        for (Session session : List.of(
                plain(2, Metric.BALL_SPEED, 50.0, 51.0, 50.5, 49.0),
                plain(2, Metric.BALL_SPEED, 50.0),
                plain(3, Metric.SIDE, 0.0))) {
            HeadToHeadResult result = HeadToHead.withDefaults().compare(session);
            List<Picture> pictures = InventedSession.pictures(DrawnShots.of(result), UnitSystem.METRIC);
            assertEquals(1, pictures.size());
            pictures.forEach(Svg::check);
            assertTrue(LandingPicture.of(result, UnitSystem.US).isEmpty());
            assertTrue(FlightPicture.of(result, UnitSystem.US).isEmpty());
            assertTrue(FacePicture.of(result, UnitSystem.US).isEmpty());
        }
    }

    @Test
    void withoutDirectionsNothingIsDrawnFromAbove() {
        Session full = InventedSession.session("One", "Two", 3, Handedness.RIGHT, false);
        Session session = full.withShots(ShotSet.of(full.shots().stream()
                .map(shot -> shot.without(Metric.START_DIRECTION))
                .toList()));
        Picture picture = FlightPicture.of(InventedSession.compare(session), UnitSystem.US)
                .orElseThrow();
        Document document = Svg.check(picture);
        assertEquals(2, Svg.withClass(document, "g", "shots").size());
        assertTrue(picture.description().contains("Not drawn from above"));
    }

    @Test
    void tenThousandShotsStaySmall() {
        HeadToHeadResult result =
                InventedSession.compare(InventedSession.session("One", "Two", 5_000, Handedness.RIGHT, false));
        List<Picture> pictures = InventedSession.pictures(DrawnShots.of(result, Set.of(3)), UnitSystem.US);
        pictures.forEach(Svg::check);
        long size = pictures.stream().mapToLong(p -> p.svg().length()).sum();
        assertTrue(size < 2_000_000L, "size " + size);
        assertTrue(pictures.get(0).description().contains("Of 5000 shots 400 are drawn, evenly chosen."));
        assertTrue(pictures.get(1).description().contains("Of 5000 shots 60 are drawn, evenly chosen."));
    }

    @Test
    void ticksAreRoundNumbers() {
        assertEquals(
                List.of(145.0, 150.0, 155.0, 160.0, 165.0),
                Ticks.of(142.0, 168.0, 6).values());
        assertEquals(List.of(-0.2, 0.0, 0.2), Ticks.of(-0.3, 0.3, 4).values());
        assertEquals("\u22120.2", Ticks.of(-0.3, 0.3, 4).label(-0.2));
        assertEquals("0", Ticks.of(-3.0, 3.0, 4).label(-0.0));
        for (double width = 1e-4; width < 1e6; width *= 1.37) {
            Ticks ticks = Ticks.of(-0.3 * width, 0.7 * width, 5);
            assertTrue(ticks.values().size() <= 5 && ticks.values().size() >= 2, "width " + width);
            assertTrue(ticks.values().contains(0.0));
        }
    }

    @Test
    void colorsOfThePageHaveTheContrastOfWcag() throws java.io.IOException {
        String css;
        try (var in = java.util.Objects.requireNonNull(HtmlPage.class.getResourceAsStream("page.css"))) {
            css = new String(in.readAllBytes(), java.nio.charset.StandardCharsets.UTF_8);
        }
        int dark = css.indexOf("prefers-color-scheme: dark");
        for (String part : List.of(css.substring(0, dark), css.substring(dark))) {
            for (String behind : List.of("paper", "band")) {
                // WCAG 2.1, 1.4.3: 4.5 for text; 1.4.11: 3 for graphics.
                assertTrue(contrast(part, "ink", behind) >= 4.5);
                assertTrue(contrast(part, "soft", behind) >= 4.5);
                assertTrue(contrast(part, "first", behind) >= 3.0);
                assertTrue(contrast(part, "second", behind) >= 3.0, behind + " " + contrast(part, "second", behind));
            }
        }
        // Black on white is 21 by definition.
        assertEquals(21.0, ratio(0x000000, 0xFFFFFF), 1e-9);
    }

    /** What is printed as wide as the style sheet says has no letters below 8 pt: a point is 25.4 / 72 mm. */
    @Test
    void lettersOfPicturesAreEightPointsOnPaper() throws java.io.IOException {
        String css;
        try (var in = java.util.Objects.requireNonNull(HtmlPage.class.getResourceAsStream("page.css"))) {
            css = new String(in.readAllBytes(), java.nio.charset.StandardCharsets.UTF_8);
        }
        Matcher width = Pattern.compile("\\.pictures figure \\{ width: ([0-9.]+)mm; \\}")
                .matcher(css.substring(css.indexOf("@media print")));
        assertTrue(width.find());
        double millimeters = Double.parseDouble(width.group(1));
        // A4 less margins of 7 mm, in two columns 6 mm apart.
        assertTrue(millimeters <= 0.5 * (210.0 - 14.0 - 6.0), "a column is narrower than " + millimeters);
        double pointsPerUnit = millimeters / SvgDrawing.WIDTH * 72.0 / 25.4;
        for (Picture picture : List.of(
                LandingPicture.of(USUAL, UnitSystem.US).orElseThrow(),
                FlightPicture.of(USUAL, UnitSystem.US).orElseThrow())) {
            assertLetters(picture, pointsPerUnit);
        }
    }

    static void assertLetters(Picture picture, double pointsPerUnit) {
        int seen = 0;
        for (Element element : Svg.all(Svg.parse(picture.svg()), "*")) {
            if (element.hasAttribute("font-size")) {
                seen++;
                double points = Double.parseDouble(element.getAttribute("font-size")) * pointsPerUnit;
                assertTrue(points >= 8.0, () -> picture.id() + " prints " + points + " pt");
            }
        }
        assertTrue(seen > 0);
    }

    private static double contrast(String css, String one, String other) {
        return ratio(color(css, one), color(css, other));
    }

    private static int color(String css, String name) {
        Matcher matcher =
                Pattern.compile("--teeward-" + name + ": #([0-9a-f]{6});").matcher(css);
        assertTrue(matcher.find(), name);
        return Integer.parseInt(matcher.group(1), 16);
    }

    /** WCAG 2.1, definition of contrast ratio and relative luminance. */
    private static double ratio(int one, int other) {
        double a = luminance(one);
        double b = luminance(other);
        return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
    }

    private static double luminance(int rgb) {
        double[] weights = {0.2126, 0.7152, 0.0722};
        double sum = 0.0;
        for (int i = 0; i < 3; i++) {
            double c = (rgb >> (16 - 8 * i) & 255) / 255.0;
            sum += weights[i] * (c <= 0.03928 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4));
        }
        return sum;
    }

    @Test
    void thePictureIsTheSameEachTime() {
        DrawnShots shots = DrawnShots.of(USUAL, Set.of(4));
        List<Picture> one = InventedSession.pictures(shots, UnitSystem.US);
        List<Picture> other = InventedSession.pictures(
                DrawnShots.of(InventedSession.usual(Handedness.LEFT), Set.of(4)), UnitSystem.US);
        assertArrayEquals(
                one.stream().map(Picture::svg).toArray(),
                other.stream().map(Picture::svg).toArray());
        one.forEach(p -> assertFalse(Pattern.compile("\\d,\\d").matcher(p.svg()).find(), "a decimal comma"));
    }
}
