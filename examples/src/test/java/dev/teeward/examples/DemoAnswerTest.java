package dev.teeward.examples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.UnitSystem;
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

    /** The difference in face to path is one of the face, not of the path. */
    @Test
    void theSwingsAreNotCalledDifferent() {
        for (Metric metric : Set.of(Metric.CLUB_SPEED, Metric.ATTACK_ANGLE, Metric.CLUB_PATH, Metric.DYNAMIC_LOFT)) {
            assertTrue(metric(metric).verdict().verdict() != Verdict.DIFFERENT, metric(metric)::toString);
        }
    }

    @Test
    void intervalsContainWhatWasPutIn() {
        for (Metric metric : DemoTruth.metrics()) {
            if (metric == Metric.STRIKE_TOE || metric == Metric.STRIKE_UP) {
                continue; // the mishit is of another mean
            }
            Interval interval = metric(metric).difference().estimate().interval();
            double truth = DemoTruth.difference(metric);
            // Nine intervals at 95 %: the chance that all hold is 0.63 and more, so three more widths are given.
            double room = 0.25 * (interval.upper() - interval.lower());
            assertTrue(
                    interval.lower() - room <= truth && truth <= interval.upper() + room,
                    metric.key() + ": " + interval + " without " + truth);
        }
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
