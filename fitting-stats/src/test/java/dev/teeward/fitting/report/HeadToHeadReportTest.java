package dev.teeward.fitting.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.ShotSet;
import dev.teeward.fitting.UnitSystem;
import dev.teeward.fitting.compare.HeadToHead;
import dev.teeward.fitting.compare.HeadToHeadResult;
import dev.teeward.quantity.Handedness;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class HeadToHeadReportTest {
    private static final double[] CARRY = {150.0, 151.5, 149.0, 150.5, 148.5, 151.0};
    private static final double[] SIDE = {-3.0, 1.0, -6.0, 2.5, -1.5, -4.0};

    /** Six pairs, the second club longer by a carry and moved to the side by an amount. */
    private static Session session(String first, String second, double longer, double moved, Handedness hand) {
        double[] wobble = {0.3, -0.2, 0.1, -0.4, 0.2, 0.0};
        List<Shot> shots = new ArrayList<>();
        for (int i = 0; i < CARRY.length; i++) {
            Shot one = Shot.builder(first)
                    .measured(Metric.CARRY, CARRY[i])
                    .measured(Metric.SIDE, SIDE[i])
                    .measured(Metric.CURVE, SIDE[i])
                    .build();
            Shot two = Shot.builder(second)
                    .measured(Metric.CARRY, CARRY[i] + longer + wobble[i])
                    .measured(Metric.SIDE, SIDE[i] + moved + wobble[5 - i])
                    .measured(Metric.CURVE, SIDE[i] + moved - wobble[i])
                    .build();
            shots.add(i % 2 == 0 ? one : two);
            shots.add(i % 2 == 0 ? two : one);
        }
        return Session.builder().shots(ShotSet.of(shots)).hand(hand).build();
    }

    private static HeadToHeadReport report(Session session) {
        return HeadToHeadReport.of(
                HeadToHead.withDefaults().withPrimary(Metric.CARRY).compare(session));
    }

    private static String words(HeadToHeadReport report, String id) {
        return String.join(
                "\n",
                report.sections().stream()
                        .filter(s -> s.id().equals(id))
                        .flatMap(s -> s.sentences().stream())
                        .map(Sentence::text)
                        .toList());
    }

    @Test
    void theExampleOfThePackage() {
        Session session = session("Alder", "Rowan", 10.0, 0.0, Handedness.LEFT);

        HeadToHeadResult result =
                HeadToHead.withDefaults().withPrimary(Metric.CARRY).compare(session);
        HeadToHeadReport report = HeadToHeadReport.of(result).withUnits(UnitSystem.METRIC);
        String page = report.text();
        String answer = report.sections().get(0).sentences().get(1).text();
        double meters = report.data().number("/metrics/carry/difference/value").orElseThrow();

        assertTrue(page.contains("Alder and Rowan compared"), page);
        // Mean of the six differences put in: -(10 + 0.0).
        assertEquals(-10.0, meters, 1e-9);
        assertTrue(answer.contains("10.0 m longer with Rowan than with Alder"), answer);
        assertEquals(result, report.result());
        assertEquals(UnitSystem.METRIC, report.units());
    }

    @Test
    void unitsChangeTheNumbersAndNotTheAnswer() {
        HeadToHeadReport yards = report(session("Alder", "Rowan", 9.144, 0.0, Handedness.LEFT));
        HeadToHeadReport meters = yards.withUnits(UnitSystem.METRIC);
        // 9.144 m are 10 yd exactly (international yard, 1959).
        assertEquals(
                -10.0, yards.data().number("/metrics/carry/difference/value").orElseThrow(), 1e-9);
        assertEquals(
                -9.144, meters.data().number("/metrics/carry/difference/value").orElseThrow(), 1e-9);
        assertEquals("yd", yards.data().value("/metrics/carry/unit"));
        assertEquals(yards.data().value("/metrics/carry/verdict"), meters.data().value("/metrics/carry/verdict"));
    }

    @Test
    void clubsThatAreTheSameLeaveItToPriceOrFeel() {
        HeadToHeadReport report = report(session("Alder", "Rowan", 0.0, 0.0, Handedness.RIGHT));
        String answer = words(report, "in-short");
        assertTrue(answer.contains("practically the same, so price or feel may decide"), answer);
        String other = words(report(session("Alder", "Rowan", 10.0, 0.0, Handedness.RIGHT)), "in-short");
        assertFalse(other.contains("price or feel"), other);
    }

    @Test
    void drawAndFadeFollowTheHand() {
        String left = words(report(session("Alder", "Rowan", 0.0, -10.0, Handedness.LEFT)), "differs");
        String right = words(report(session("Alder", "Rowan", 0.0, -10.0, Handedness.RIGHT)), "differs");
        assertTrue(left.contains("farther right with Alder than with Rowan, more of a draw"), left);
        assertTrue(right.contains("farther right with Alder than with Rowan, more of a fade"), right);
    }

    @Test
    void aMirroredSessionGetsMirroredWords() {
        for (long seed = 1; seed <= 20; seed++) {
            Session session = InventedSessions.session(seed);
            HeadToHead procedure = InventedSessions.procedure(seed);
            HeadToHeadReport one = HeadToHeadReport.of(procedure.compare(session));
            HeadToHeadReport two = HeadToHeadReport.of(procedure.compare(InventedSessions.mirrored(session)));
            for (String id : List.of("in-short", "differs")) {
                List<String> lines = new ArrayList<>(
                        mirrored(words(one, id)).lines().sorted().toList());
                assertEquals(lines, words(two, id).lines().sorted().toList(), "seed " + seed);
            }
        }
    }

    /** Left for right and right for left; signed numbers of what is lateral are left out. */
    private static String mirrored(String words) {
        return words.replace("more to the right", "more to the LEFT")
                .replace("more to the left", "more to the right")
                .replace("more to the LEFT", "more to the left")
                .replace("farther right", "farther LEFT")
                .replace("farther left", "farther right")
                .replace("farther LEFT", "farther left");
    }

    @Test
    void hostileNamesStayText() {
        String hostile = "%s $1 <script>alert(1)</script> \u202Eevil {0} \\n";
        HeadToHeadReport report = report(session(hostile, "W".repeat(300), 10.0, 3.0, Handedness.RIGHT));
        String page = report.text();
        assertTrue(page.contains("%s $1 <script>alert(1)</script> evil {0} \\n"), page);
        assertTrue(page.lines().allMatch(line -> line.length() <= 96), page);
        assertTrue(page.chars().allMatch(c -> c == '\n' || (c >= 0x20 && c < 0x7f)), page);
        assertEquals(hostile, report.data().value("/clubs/first/name"));
        assertEquals("a b c", NumberText.line("a\u001b\tb\r\nc\u0007"));
    }

    @Test
    void numbersArePrintedPlainly() {
        assertEquals("0.0", NumberText.fixed(-0.04, 1));
        assertEquals("-0.1", NumberText.fixed(-0.06, 1));
        assertEquals("12345678", NumberText.fixed(1.2345678e7, 0));
        assertEquals(3, NumberText.decimals(1, 0.0, 4.2, 0.004));
        assertEquals(1, NumberText.decimals(1, 0.0, 4.2, 0.0));
        assertEquals("Erable ?", NumberText.ascii("\u00c9rable \u6728"));
    }

    @Test
    void pointersFollowTheStandard() {
        // RFC 6901, sections 4 and 5.
        ReportData data =
                report(session("Alder", "Rowan", 1.0, 0.0, Handedness.RIGHT)).data();
        assertEquals(data.root(), data.value(""));
        assertEquals(ReportData.SCHEMA, data.value("/schema"));
        assertEquals(6.0, data.number("/clubs/first/used").orElseThrow());
        assertEquals(OptionalDouble.of(6.0), data.number("/metrics/carry/difference/n/0"));
        assertEquals(OptionalDouble.empty(), data.number("/metrics/carry/difference/n/00"));
        assertEquals(OptionalDouble.empty(), data.number("/metrics/carry/difference/n/7"));
        assertEquals(OptionalDouble.empty(), data.number("/metrics/carry/unit"));
        assertEquals(OptionalDouble.empty(), data.number("/schema/deeper"));
        assertEquals(OptionalDouble.empty(), data.number("/no~1thing~0"));
        assertThrows(IllegalArgumentException.class, () -> data.number("metrics"));
    }

    @Test
    void theTreeHoldsPlainValuesOnly() {
        for (long seed = 1; seed <= 20; seed++) {
            ReportData data = ReportData.of(InventedSessions.result(seed), UnitSystem.US);
            plain(data.root(), "seed " + seed);
            assertThrows(UnsupportedOperationException.class, () -> data.root().clear());
        }
    }

    private static void plain(Object node, String where) {
        if (node instanceof Map<?, ?> map) {
            map.forEach((name, value) -> {
                assertTrue(name instanceof String text && text.matches("[a-z][a-z0-9_]*"), where + "/" + name);
                plain(value, where + "/" + name);
            });
        } else if (node instanceof List<?> list) {
            list.forEach(item -> plain(item, where + "/-"));
        } else if (node instanceof Double number) {
            assertTrue(Double.isFinite(number) && !number.equals(-0.0), where + " " + number);
        } else {
            assertTrue(
                    node == null || node instanceof Integer || node instanceof String || node instanceof Boolean,
                    where + " " + node);
        }
    }

    @Test
    void tablesPrintTheData() {
        HeadToHeadReport report = report(session("Alder", "Rowan", 10.0, 3.0, Handedness.RIGHT));
        assertEquals(
                List.of("means", "spreads", "tests", "patterns"),
                report.tables().stream().map(Table::id).toList());
        Table means = report.tables().get(0);
        List<String> carry = means.rows().stream()
                .filter(row -> row.get(0).equals("carry"))
                .findFirst()
                .orElseThrow();
        double mean = report.data().number("/metrics/carry/first/mean/value").orElseThrow();
        assertEquals(List.of("metric", "unit", "pairs"), means.headings().subList(0, 3));
        assertEquals("6", carry.get(2));
        assertEquals(String.format(Locale.ROOT, "%.1f", mean), carry.get(3));
        assertEquals("different", carry.get(7));
    }

    /**
     * A pin: it holds the page as it was looked at once, down to what other packages warn of, and says nothing about its
     * being right.
     */
    @Test
    void pinOfOnePage() throws IOException {
        String page =
                report(session("Alder", "Rowan", 6.0, -4.0, Handedness.LEFT)).text();
        String ours = page.substring(0, page.indexOf("\nWhat to keep in mind\n"));
        try (InputStream in = HeadToHeadReportTest.class.getResourceAsStream("page-pin.txt")) {
            assertEquals(new String(in.readAllBytes(), StandardCharsets.UTF_8), ours);
        }
    }
}
