package dev.teeward.fitting.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.UnitSystem;
import dev.teeward.fitting.compare.HeadToHead;
import dev.teeward.fitting.compare.HeadToHeadResult;
import dev.teeward.fitting.compare.MetricComparison;
import dev.teeward.fitting.compare.Verdict;
import dev.teeward.fitting.explain.Explain;
import dev.teeward.fitting.explain.FlightCounterfactual;
import dev.teeward.quantity.Handedness;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** Every sentence of 300 invented sessions is read back: its numbers, and what it says about their signs. */
class SentenceNumbersTest {
    private static final int SESSIONS = 300;
    private static final Explain EXPLAIN = Explain.withDefaults()
            .withFlights(FlightCounterfactual.withDefaults().withResamples(199));
    private static final Pattern NUMBER = Pattern.compile("-?\\d+(?:\\.\\d+)?");
    /** What must come up at least once. */
    private static final String PHRASES =
            "faster, longer, higher, steeper, more upright, nearer to the toe, higher on the"
                    + " face, farther right, farther left, farther right of the path, farther left of the path, more open, more"
                    + " closed, more open to the path, more closed to the path, more in-to-out, more out-to-in, more to the right,"
                    + " more to the left, more of a draw, more of a fade, right, left, long, short, toe, heel, above, below,"
                    + " tighter, which is the tighter, misses, along, across, push, pull, draw, fade, pull draw, pull fade, push"
                    + " draw, push fade, straight, starting, the clubs differ, can't tell yet, practically_the_same, undecided";

    /** What must be said of club or swing. */
    private static final String EXPLAINED =
            "taken together practically the same, taken together different, taken together can't be told, with that goes, the"
                    + " paths, by flights nothing, with it goes, they agree, they disagree, they undecided, among few,"
                    + " club or swing can't be told yet, club or swing swing, club or swing neither, club or swing club, club or swing both,"
                    + " corrected for errors";

    private static final String TURNED =
            "above, across, along, below, closed, draw, fade, farther, faster, heel, higher,"
                    + " in-to-out, left, long, longer, nearer, open, out-to-in, pull, push, right, short, steeper, toe, upright";

    private static final Pattern NO_NUMBER = Pattern.compile("NaN|null|Infinity|-0(\\.0+)?(?![.0-9])");
    private static final Pattern WORD = Pattern.compile("[a-z][a-z-]*", Pattern.CASE_INSENSITIVE);

    private static final Pattern CAUSE = Pattern.compile("because|caus|due to|owing to|leads to|results? in");

    /** Sides in it are conventions, and true whatever the shots are. */
    private static final Pattern NO_CLAIM = Pattern.compile(
            "up and towards the toe positive|ninety from the right" + "|draw and fade are not named|-handed");

    /** Sentences that are another claim with the clubs exchanged. */
    private static final Pattern NAMED = Pattern.compile(
            "than with #| minus #|times that of #|tighter landing pattern:|^#0: |, on average: | used with #\\d+,");

    /** So often each word is turned; after that more of the same prove nothing. */
    private static final int LIES = 40;

    private final Map<String, Integer> met = new TreeMap<>();
    private final Map<String, Integer> turned = new TreeMap<>();
    private int swapped;
    private int flipped;
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
            if (seed % 10 == 0) {
                report = report.withExplanation(EXPLAIN.explain(result));
            }
            List<Section> sections = report.sections();
            for (Section section : sections) {
                assertFalse(section.sentences().isEmpty(), section.id());
                for (Sentence sentence : section.sentences()) {
                    check(report, sentence, "seed " + seed + ", " + section.id() + ": " + sentence);
                }
            }
            verdicts(result, report, sections);
            page(
                    report.text(),
                    NumberText.line(result.first().name() + result.second().name()));
        }
        // A check that never meets a case is none; about half of what came up when this was written.
        assertTrue(sentences > 6_000, "sentences " + sentences);
        assertTrue(numbers > 12_000, "numbers " + numbers);
        assertTrue(directions > 2_000, "directions " + directions);
        assertTrue(swapped >= 20 * LIES, "names exchanged " + swapped);
        assertTrue(flipped >= 20 * LIES, "signs turned " + flipped);
        assertEquals(Set.of(), missing(PHRASES, met.keySet()), "never said, of " + met);
        assertEquals(Set.of(), missing(TURNED, turned.keySet()), "never turned, of " + turned);
        assertTrue(same > 100, "the same " + same);
        assertTrue(undecided > 700, "undecided " + undecided);
        assertTrue(flagged > 5, "flagged " + flagged);
    }

    @Test
    void whatIsSaidOfClubOrSwingIsReadBack() {
        for (long seed = 1; seed <= 16; seed++) {
            HeadToHeadResult result = ExplainedSessions.result(
                    seed,
                    seed % 4 == 0 ? 8 : 24,
                    seed % 2 == 0 ? Handedness.LEFT : Handedness.RIGHT,
                    seed % 3 == 0 ? 0.0 : seed % 3 == 1 ? 1.5 : -1.5,
                    seed % 5 == 0 ? -1.0 : 1.0);
            HeadToHeadReport report = HeadToHeadReport.of(result)
                    .withUnits(seed % 2 == 0 ? UnitSystem.US : UnitSystem.METRIC)
                    .withExplanation(EXPLAIN.explain(result));
            readBack(report, "seed " + seed);
        }
        // The ball is faster at the same swing, without and with a faster swing, and the swing alone; the speed is
        // stated to be read to 0.05 m/s.
        for (double[] faster : new double[][] {{3.0, 0.0}, {3.0, 1.0}, {0.0, 1.0}}) {
            Session session = ExplainedSessions.carries(1, faster[0], faster[1]).toBuilder()
                    .tolerance(Metric.CLUB_SPEED, 0.05)
                    .build();
            HeadToHeadResult result = HeadToHead.withDefaults()
                    .withClubs("Alder", "Rowan")
                    .withPrimary(Metric.CARRY)
                    .compare(session);
            HeadToHeadReport report = HeadToHeadReport.of(result).withExplanation(EXPLAIN.explain(result));
            String answer = "Club or swing, in carry, asked by itself: "
                    + (faster[1] == 0.0 ? "club;" : faster[0] == 0.0 ? "swing;" : "both;");
            assertTrue(
                    report.sections().stream()
                            .flatMap(s -> s.sentences().stream())
                            .anyMatch(s -> s.text().startsWith(answer)),
                    answer);
            readBack(report, answer);
        }
        assertEquals(Set.of(), missing(EXPLAINED, met.keySet()), "never said, of " + met);
    }

    private void readBack(HeadToHeadReport report, String what) {
        for (Section section : report.sections()) {
            for (Sentence sentence : section.sentences()) {
                check(report, sentence, what + ", " + section.id() + ": " + sentence);
            }
        }
    }

    private static Set<String> missing(String wanted, Set<String> found) {
        Set<String> missing = new TreeSet<>(List.of(wanted.split(", ")));
        missing.removeAll(found);
        return missing;
    }

    private void check(HeadToHeadReport report, Sentence sentence, String where) {
        sentences++;
        String own = withoutQuotations(sentence);
        assertFalse(sentence.text().chars().anyMatch(Character::isISOControl), where);
        assertFalse(NO_NUMBER.matcher(own).find(), where);
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
        Set<String> phrases = read(report.data()::value, sentence, where);
        directions += phrases.size();
        phrases.forEach(phrase -> met.merge(phrase, 1, Integer::sum));
        lies(report, sentence, where);
    }

    private static Set<String> read(Function<String, Object> data, Sentence sentence, String where) {
        try {
            return SpokenCheck.read(data, sentence);
        } catch (AssertionError e) {
            throw new AssertionError(where, e);
        }
    }

    /** Every lie that can be made of the sentence by changing a word, a name or a sign must be found out. */
    private void lies(HeadToHeadReport report, Sentence sentence, String where) {
        Function<String, Object> data = report.data()::value;
        String template = SpokenCheck.template(sentence);
        Matcher word = WORD.matcher(template);
        while (word.find()) {
            String other = SpokenCheck.opposites().get(word.group());
            if (other == null
                    || turned.getOrDefault(word.group(), 0) >= LIES
                    || template.startsWith("strike ", Math.max(0, word.start() - 7))
                    || template.contains("Strike " + word.group())
                    || NO_CLAIM.matcher(template).find()) {
                continue;
            }
            String lie = template.substring(0, word.start()) + other + template.substring(word.end());
            foundOut(data, filled(lie, sentence, UnaryOperator.identity()), where);
            turned.merge(word.group(), 1, Integer::sum);
        }
        String first = NumberText.line(report.result().first().name());
        String second = NumberText.line(report.result().second().name());
        if (swapped < 20 * LIES && NAMED.matcher(template).find()) {
            UnaryOperator<String> swap = name -> name.equals(first) ? second : name.equals(second) ? first : name;
            foundOut(data, filled(template, sentence, swap), where);
            swapped++;
        }
        for (QuotedNumber number : sentence.numbers()) {
            if (number.magnitude() && flipped < 20 * LIES) {
                String place = number.pointer().substring(0, number.pointer().lastIndexOf('/'));
                foundOut(pointer -> negated(data, place, pointer), sentence, where);
                flipped++;
            }
        }
    }

    private static @Nullable Object negated(Function<String, Object> data, String place, String pointer) {
        String source = pointer.equals(place + "/lower")
                ? place + "/upper"
                : pointer.equals(place + "/upper") ? place + "/lower" : pointer;
        Object value = data.apply(source);
        boolean number = value instanceof Number && pointer.matches(Pattern.quote(place) + "/(value|lower|upper)");
        return number ? (Object) (-((Number) value).doubleValue()) : value;
    }

    private static void foundOut(Function<String, Object> data, Sentence lie, String where) {
        Throwable fault = null;
        try {
            SpokenCheck.read(data, lie);
        } catch (AssertionError | IndexOutOfBoundsException e) {
            fault = e;
        }
        assertTrue(fault != null, "not found out: " + lie + "\ninstead of " + where);
    }

    /** A sentence of the words of a template, with the numbers of another and its quotations changed. */
    private static Sentence filled(String template, Sentence of, UnaryOperator<String> change) {
        StringBuilder text = new StringBuilder();
        List<Quotation> quotations = new ArrayList<>();
        Matcher slot = Pattern.compile("([#@])(\\d+)").matcher(template);
        int from = 0;
        while (slot.find()) {
            text.append(template, from, slot.start());
            int index = Integer.parseInt(slot.group(2));
            if (slot.group(1).equals("@")) {
                text.append(of.numbers().get(index).text());
            } else {
                Quotation q = of.quotations().get(index);
                String name = change.apply(of.text().substring(q.start(), q.end()));
                quotations.add(new Quotation(text.length(), text.length() + name.length()));
                text.append(name);
            }
            from = slot.end();
        }
        return Sentence.of(text.append(template.substring(from)).toString(), of.numbers(), quotations);
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

    private void verdicts(HeadToHeadResult result, HeadToHeadReport report, List<Section> sections) {
        flagged += report.data().number("/screening/flagged").orElseThrow() > 0.0 ? 1 : 0;
        for (MetricComparison c : result.metrics()) {
            // Within the margin, and still so after allowing for the number of such questions.
            boolean isSame = c.equivalence().map(e -> e.equivalent()).orElse(false)
                    && c.adjustedEquivalenceP().orElse(1.0) < 1.0 - result.level();
            same += isSame ? 1 : 0;
            undecided += c.verdict().verdict() == Verdict.UNDECIDED ? 1 : 0;
            assertEquals(
                    isSame,
                    report.data()
                            .value("/metrics/" + c.metric().key() + "/verdict")
                            .equals("practically_the_same"));
            assertEquals(isSame && c.inFamily(), says(sections, "same", c.metric()), c.toString());
            assertEquals(
                    c.inFamily() && c.verdict().verdict() == Verdict.UNDECIDED,
                    says(sections, "undecided", c.metric()));
            assertEquals(
                    c.inFamily() && c.verdict().verdict() == Verdict.DIFFERENT, says(sections, "differs", c.metric()));
        }
    }

    private static boolean says(List<Section> sections, String section, Metric metric) {
        return sections.stream()
                .filter(s -> s.id().equals(section))
                .flatMap(s -> s.sentences().stream())
                .flatMap(s -> s.numbers().stream())
                .anyMatch(n -> n.pointer().startsWith("/metrics/" + metric.key() + "/"));
    }

    private static void page(String text, String names) {
        assertFalse(text.contains("NaN") || text.contains("null") || text.contains("Infinity"), text);
        assertTrue(text.endsWith("\n"), text);
        for (String line : text.split("\n", -1)) {
            assertTrue(Columns.of(line) <= 96, line);
            // Own words are ASCII; names keep their letters.
            assertTrue(
                    line.chars().allMatch(c -> (c >= 0x20 && c < 0x7f) || (c > 0x7f && names.indexOf(c) >= 0)), line);
        }
    }
}
