package dev.teeward.examples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.UnitSystem;
import dev.teeward.fitting.compare.HeadToHead;
import dev.teeward.fitting.compare.HeadToHeadResult;
import dev.teeward.fitting.compare.MetricComparison;
import dev.teeward.fitting.compare.Verdict;
import dev.teeward.fitting.io.SessionReader;
import dev.teeward.fitting.report.HeadToHeadReport;
import dev.teeward.fitting.screen.ShotFlag;
import dev.teeward.quantity.Interval;
import dev.teeward.quantity.Unit;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The answer on the demo session against what was put into it. */
class DemoAnswerTest {
    private static final Session SESSION =
            SessionReader.withDefaults().read(JsonText.resource(DemoCommand.SESSION), DemoCommand.SESSION);
    private static final HeadToHeadResult RESULT = DemoCommand.report(SESSION).result();

    @TempDir
    private Path folder = Path.of("");

    private static MetricComparison metric(Metric metric) {
        return RESULT.find(metric).orElseThrow();
    }

    /** A session with a wild shot in it is answered twice; the truth is that of the shots without one. */
    private static MetricComparison withoutFlagged(Metric metric) {
        return RESULT.withoutFlagged().orElseThrow().find(metric).orElseThrow();
    }

    @Test
    void differencesAreAlderMinusRowan() {
        assertEquals(DemoTruth.ALDER, RESULT.first().name());
        assertEquals(DemoTruth.ROWAN, RESULT.second().name());
    }

    @Test
    void faceToPathIsFoundWithItsSignAndAnIntervalThatContainsTheTruth() {
        double truth = DemoTruth.difference(Metric.FACE_TO_PATH);
        assertTrue(truth < 0.0);
        for (MetricComparison found : List.of(metric(Metric.FACE_TO_PATH), withoutFlagged(Metric.FACE_TO_PATH))) {
            assertEquals(Verdict.DIFFERENT, found.verdict().verdict(), found::toString);
            Interval interval = found.difference().estimate().interval();
            assertTrue(interval.upper() < 0.0, interval::toString);
            assertTrue(interval.lower() <= truth && truth <= interval.upper(), interval + " without " + truth);
        }
    }

    /**
     * The difference in face to path is one of the face, not of the path. No difference in the swings is claimed, and that is
     * not for want of proof: club speed is shown to be the same, and of each metric the interval holds the truth, which is 0.
     */
    @Test
    void theSwingsAreNotCalledDifferent() {
        List<Metric> swing = List.of(Metric.CLUB_SPEED, Metric.ATTACK_ANGLE, Metric.CLUB_PATH, Metric.DYNAMIC_LOFT);
        for (Metric metric : swing) {
            assertEquals(0.0, DemoTruth.difference(metric), 0.0, metric.key());
            assertTrue(metric(metric).verdict().verdict() != Verdict.DIFFERENT, metric(metric)::toString);
            assertTrue(within(metric(metric), 0.0), metric(metric)::toString);
        }
        assertEquals(
                Verdict.PRACTICALLY_THE_SAME,
                metric(Metric.CLUB_SPEED).verdict().verdict());
        // Each of the others lies within its margin if taken alone, or its interval is too wide for that: none goes
        // beyond.
        assertTrue(
                swing.stream()
                                .filter(m ->
                                        metric(m).equivalence().orElseThrow().equivalent())
                                .count()
                        >= 3,
                "only club speed could be told");
        assertEquals(
                Verdict.DIFFERENT,
                metric(Metric.FACE_ANGLE).verdict().verdict(),
                "the face must be told from the path");
    }

    private static boolean within(MetricComparison comparison, double truth) {
        Interval interval = comparison.difference().estimate().interval();
        return interval.lower() <= truth && truth <= interval.upper();
    }

    /**
     * All intervals together hold what was put in, at the level that Bonferroni's inequality gives each of them for 95 % of
     * all sessions. The mishit is of another strike, so the answer without the shots that stand out is asked where it is.
     */
    @Test
    void intervalsContainWhatWasPutIn() {
        double each = 1.0 - 0.05 / DemoTruth.metrics().size();
        HeadToHeadResult wide = HeadToHead.withDefaults()
                .withPrimary(Metric.FACE_TO_PATH)
                .withLevel(each)
                .compare(SESSION);
        for (Metric metric : DemoTruth.metrics()) {
            boolean strike = metric == Metric.STRIKE_TOE || metric == Metric.STRIKE_UP;
            MetricComparison comparison = (strike ? wide.withoutFlagged().orElseThrow() : wide)
                    .find(metric)
                    .orElseThrow();
            double truth = DemoTruth.difference(metric);
            assertEquals(each, comparison.difference().estimate().interval().level(), 1e-12);
            assertTrue(within(comparison, truth), comparison + " without " + truth);
        }
    }

    /** That nothing of it was measured is on every page, before any number. */
    @Test
    void thePagesSayThatTheSessionIsInvented() {
        String invented = "This session is invented. No golfer, club or device was measured";
        HeadToHeadReport report = DemoCommand.report(SESSION);
        String text = report.text().replaceAll("\\s+", " ");
        assertTrue(text.contains(invented), text);
        assertTrue(text.indexOf(invented) < text.indexOf("What differs"), text);
        String html = report.html();
        assertTrue(html.contains(invented), html);
        assertTrue(html.indexOf(invented) < html.indexOf("id=\"section-differs\""), html);
    }

    @Test
    void practicallyTheSame() {
        for (Metric metric : DemoTruth.practicallySame().keySet()) {
            MetricComparison comparison = metric(metric);
            assertTrue(comparison.marginDeclared(), metric.key());
            assertEquals(
                    DemoTruth.practicallySame().get(metric), comparison.margin().orElseThrow(), 0.0, metric.key());
            assertEquals(Verdict.PRACTICALLY_THE_SAME, comparison.verdict().verdict(), comparison::toString);
        }
    }

    @Test
    void theMishitAndTheMisreadAreFlagged() {
        assertEquals(Set.of(DemoTruth.MISHIT_SHOT), flagged(ShotFlag.Kind.MISHIT));
        assertEquals(Set.of(DemoTruth.MISREAD_SHOT), flagged(ShotFlag.Kind.MISREAD));
    }

    private static Set<Integer> flagged(ShotFlag.Kind kind) {
        return RESULT.screening().flags().stream()
                .filter(flag -> flag.kind() == kind)
                .map(flag -> flag.shot().number())
                .collect(Collectors.toCollection(TreeSet::new));
    }

    @Test
    void theDemoWritesThreeFilesAndSaysWhereThePageIs() throws IOException {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        int code = TeewardExamples.run(new PrintWriter(out), new PrintWriter(err), "demo", "--out", folder.toString());
        assertEquals("", err.toString());
        assertEquals(0, code);
        Path page = folder.resolve(DemoCommand.PAGE);
        assertEquals(
                page.toAbsolutePath().normalize().toString(),
                out.toString().lines().reduce((a, b) -> b).orElseThrow());
        HeadToHeadReport report = DemoCommand.report(SESSION);
        assertTrue(out.toString().startsWith(report.text()), out.toString());
        assertTrue(report.text().contains(DemoTruth.ALDER), report.text());
        assertEquals(JsonText.of(report.data().root()), Files.readString(folder.resolve(DemoCommand.NUMBERS)));
        assertEquals(JsonText.resource(DemoCommand.SESSION), Files.readString(folder.resolve(DemoCommand.SESSION)));
        String html = Files.readString(page, StandardCharsets.UTF_8);
        assertTrue(html.contains(DemoTruth.ROWAN), html);
        try (var files = Files.list(folder)) {
            assertEquals(3, files.count());
        }
    }

    /** What the demo does can be had with compare. */
    @Test
    void compareGivesTheSame() throws IOException {
        Path session = Files.writeString(folder.resolve("s.csv"), JsonText.resource(DemoCommand.SESSION));
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        Path json = folder.resolve("n.json");
        List<String> args = new ArrayList<>(List.of(
                "compare",
                session.toString(),
                "--primary",
                "face_to_path",
                "--units",
                "us",
                "--json",
                json.toString()));
        DemoTruth.practicallySame().forEach((metric, si) -> {
            Unit unit = metric.unit(UnitSystem.US);
            args.add("--margin");
            args.add(String.format(Locale.ROOT, "%s=%.1f%s", metric.key(), unit.fromSi(si), unit.symbol()));
        });
        int code = TeewardExamples.run(new PrintWriter(out), new PrintWriter(err), args.toArray(new String[0]));
        assertEquals("", err.toString());
        assertEquals(0, code);
        HeadToHeadReport report = DemoCommand.report(SESSION).withUnits(UnitSystem.US);
        assertEquals(report.text(), out.toString());
        assertEquals(JsonText.of(report.data().root()), Files.readString(json));
    }
}
