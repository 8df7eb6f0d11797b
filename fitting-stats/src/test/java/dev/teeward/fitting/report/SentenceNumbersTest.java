package dev.teeward.fitting.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.UnitSystem;
import dev.teeward.fitting.compare.HeadToHeadResult;
import dev.teeward.fitting.compare.MetricComparison;
import dev.teeward.fitting.compare.Verdict;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** Every sentence of 300 invented sessions is read back: its numbers, and what it says about their signs. */
class SentenceNumbersTest {
    private static final int SESSIONS = 300;
    private static final Pattern NUMBER = Pattern.compile("-?\\d+(?:\\.\\d+)?");
    private static final Pattern DIRECTION = Pattern.compile("\\b(longer|shorter|faster|slower|higher|lower|steeper"
            + "|shallower|farther|right|left|tighter|upward|downward|toe-up|towards the (toe|heel)|above it|below it"
            + "|long|short|open|closed|draw|fade|in-to-out|out-to-in)\\b");
    private static final Pattern COMPARED = Pattern.compile("((?:more )?[a-z][a-z -]*?) with # than with #");
    private static final Pattern CAUSE = Pattern.compile("because|caus|due to|owing to|leads to|results? in");

    private int sentences;
    private int numbers;
    private int directions;
    private int same;
    private int undecided;
    private int flagged;

    @Test
    void everyNumberIsOneOfTheDataAndEveryDirectionIsShown() {
        for (long seed = 1; seed <= SESSIONS; seed++) {
            HeadToHeadResult result = InventedSessions.result(seed);
            HeadToHeadReport report =
                    HeadToHeadReport.of(result).withUnits(seed % 2 == 0 ? UnitSystem.US : UnitSystem.METRIC);
            for (Section section : report.sections()) {
                assertFalse(section.sentences().isEmpty(), section.id());
                for (Sentence sentence : section.sentences()) {
                    check(report, sentence, "seed " + seed + ", " + section.id() + ": " + sentence);
                }
            }
            verdicts(result, report);
            page(report.text());
        }
        // A check that never meets a case is none; about a third of what came up when this was written.
        // A check that never meets a case is none; about half of what came up when this was written.
        assertTrue(sentences > 6_000, "sentences " + sentences);
        assertTrue(numbers > 12_000, "numbers " + numbers);
        assertTrue(directions > 400, "directions " + directions);
        assertTrue(same > 100, "the same " + same);
        assertTrue(undecided > 700, "undecided " + undecided);
        assertTrue(flagged > 5, "flagged " + flagged);
    }

    private void check(HeadToHeadReport report, Sentence sentence, String where) {
        sentences++;
        String own = withoutQuotations(sentence);
        assertFalse(sentence.text().chars().anyMatch(Character::isISOControl), where);
        assertFalse(
                Pattern.compile("NaN|null|Infinity|-0(\\.0+)?(?![.0-9])")
                        .matcher(own)
                        .find(),
                where);
        assertFalse(CAUSE.matcher(own).find(), where);
        List<String> found = new ArrayList<>();
        Matcher matcher = NUMBER.matcher(own);
        while (matcher.find()) {
            found.add(matcher.group());
        }
        assertEquals(sentence.numbers().stream().map(QuotedNumber::text).toList(), found, where);
        for (QuotedNumber number : sentence.numbers()) {
            numbers++;
            double source = report.data().number(number.pointer()).orElseThrow(() -> new AssertionError(where));
            double printed = Double.parseDouble(number.text());
            int point = number.text().indexOf('.');
            double half = 0.5
                    * Math.pow(10.0, point < 0 ? 0 : point + 1 - number.text().length());
            assertEquals(number.magnitude() ? Math.abs(source) : source, printed, half * (1.0 + 1e-9), where);
        }
        directions(report, sentence, own.replaceAll("(left|right)-handed", ""), where);
    }

    private void directions(HeadToHeadReport report, Sentence sentence, String own, String where) {
        for (QuotedNumber number : sentence.numbers()) {
            if (number.magnitude()) {
                assertTrue(leavesOut(report.data(), number.pointer(), 0.0), where);
            }
        }
        if (!DIRECTION.matcher(own).find() || own.contains("draw and fade are not named")) {
            return;
        }
        directions++;
        boolean counted = sentence.numbers().stream().allMatch(n -> n.pointer().contains("/shapes/"));
        if (counted) {
            assertFalse(sentence.numbers().isEmpty(), where);
            return;
        }
        boolean ratio = own.contains("tighter");
        assertTrue(
                sentence.numbers().stream()
                        .anyMatch(n -> ratio
                                ? n.pointer().equals("/patterns/ratio/value")
                                        && leavesOut(report.data(), n.pointer(), 1.0)
                                : n.magnitude()),
                where);
        winner(report, sentence, own, where);
    }

    /** Who is said to have more, against the sign of the difference. */
    private static void winner(HeadToHeadReport report, Sentence sentence, String own, String where) {
        Matcher compared = COMPARED.matcher(own);
        if (!compared.find()) {
            return;
        }
        QuotedNumber number = sentence.numbers().stream()
                .filter(QuotedNumber::magnitude)
                .findFirst()
                .orElseThrow();
        double difference = report.data().number(number.pointer()).orElseThrow();
        String first = NumberText.line(report.result().first().name());
        // The name before "than" is the quotation before the one after it.
        int quoted = (int)
                own.substring(0, compared.end()).chars().filter(c -> c == '#').count();
        Quotation name = sentence.quotations().get(quoted - 2);
        boolean named = sentence.text().substring(name.start(), name.end()).equals(first);
        String words = compared.group(1);
        if (words.endsWith("farther right")) {
            assertTrue(named && difference > 0.0, where);
        } else if (words.endsWith("farther left")) {
            assertTrue(named && difference < 0.0, where);
        } else {
            assertEquals(difference > 0.0, named, where);
        }
    }

    private static boolean leavesOut(ReportData data, String pointer, double value) {
        String place = pointer.substring(0, pointer.lastIndexOf('/'));
        double lower = data.number(place + "/lower").orElse(Double.NEGATIVE_INFINITY);
        double upper = data.number(place + "/upper").orElse(Double.POSITIVE_INFINITY);
        return lower > value || upper < value;
    }

    /** Each quotation becomes a hash sign. */
    private static String withoutQuotations(Sentence sentence) {
        StringBuilder own = new StringBuilder();
        int from = 0;
        for (Quotation quotation : sentence.quotations()) {
            own.append(sentence.text(), from, quotation.start()).append('#');
            from = quotation.end();
        }
        return own.append(sentence.text().substring(from)).toString();
    }

    private void verdicts(HeadToHeadResult result, HeadToHeadReport report) {
        flagged += report.data().number("/screening/flagged").orElseThrow() > 0.0 ? 1 : 0;
        for (MetricComparison c : result.metrics()) {
            boolean isSame = c.equivalence().map(e -> e.equivalent()).orElse(false);
            same += isSame ? 1 : 0;
            undecided += c.verdict().verdict() == Verdict.UNDECIDED ? 1 : 0;
            assertEquals(
                    isSame,
                    report.data()
                            .value("/metrics/" + c.metric().key() + "/verdict")
                            .equals("practically_the_same"));
            assertEquals(isSame, says(report, "same", c.metric()), c.toString());
            assertEquals(c.verdict().verdict() == Verdict.UNDECIDED, says(report, "undecided", c.metric()));
            assertEquals(c.verdict().verdict() == Verdict.DIFFERENT, says(report, "differs", c.metric()));
        }
    }

    private static boolean says(HeadToHeadReport report, String section, Metric metric) {
        return report.sections().stream()
                .filter(s -> s.id().equals(section))
                .flatMap(s -> s.sentences().stream())
                .flatMap(s -> s.numbers().stream())
                .anyMatch(n -> n.pointer().startsWith("/metrics/" + metric.key() + "/"));
    }

    private static void page(String text) {
        assertFalse(text.contains("NaN") || text.contains("null") || text.contains("Infinity"), text);
        assertTrue(text.endsWith("\n"), text);
        for (String line : text.split("\n", -1)) {
            assertTrue(line.length() <= 96, line);
            assertTrue(line.chars().allMatch(c -> c >= 0x20 && c < 0x7f), line);
        }
    }
}
