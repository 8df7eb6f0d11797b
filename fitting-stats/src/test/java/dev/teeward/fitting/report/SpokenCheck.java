package dev.teeward.fitting.report;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * Reads a sentence back. Every word of it must be known: one that names no side and no winner, from a list, or one of those
 * below, which must stand in a clause whose claim is checked against the sign of the number and its interval. What words
 * mean is written down here once more, on purpose, and not taken from the classes that write the sentences.
 */
final class SpokenCheck {
    /** What air moves, by its key. */
    private static final Set<String> AIR_MOVES =
            Set.of("carry", "apex", "flight_time", "landing_speed", "side", "curve", "descent_angle", "total");

    /** A side, a direction or a winner; each must be in a clause that is checked. */
    static final Set<String> DIRECTIONS = Set.of(("longer shorter faster slower higher lower steeper shallower farther"
                    + " nearer right left tighter looser upward downward upright flatter toe heel above below long short"
                    + " open closed draw fade push pull straight in-to-out out-to-in up down along across better worse"
                    + " differ shown draws fades pushes pulls")
            .split(" ", -1));

    /** Words without a side or a winner in them, as they came up; a new one fails until somebody has looked at it. */
    private static final Set<String> PLAIN = plain();

    private static final String BOTH = "(?:right|left)";
    private static final String PHRASE = "(faster|longer|steeper|more upward|more upright|nearer to the toe"
            + "|higher on the face|higher|farther " + BOTH + " of the path|farther " + BOTH
            + "|more (?:open|closed) to the path|more (?:open|closed)|more (?:in-to-out|out-to-in)|more to the " + BOTH
            + ")";
    private static final Map<String, Set<String>> MORE = Map.of(
            "faster", Set.of("club_speed", "ball_speed", "landing_speed"),
            "longer", Set.of("flight_time", "carry", "total"),
            "higher", Set.of("dynamic_loft", "spin_loft", "launch_angle", "spin_rate", "apex", "smash_factor"),
            "steeper", Set.of("descent_angle"),
            "more upward", Set.of("attack_angle"),
            "more upright", Set.of("dynamic_lie"),
            "nearer to the toe", Set.of("strike_toe"),
            "higher on the face", Set.of("strike_up"));

    private static final Pattern WORD = Pattern.compile("[a-z][a-z'-]*", Pattern.CASE_INSENSITIVE);
    private static final Map<String, Pattern> COMPILED = new ConcurrentHashMap<>();

    private final Function<String, Object> data;
    private final Sentence sentence;
    private final String text;
    private final BitSet covered = new BitSet();
    private final Set<String> phrases = new TreeSet<>();

    private SpokenCheck(Function<String, Object> data, Sentence sentence) {
        this.data = data;
        this.sentence = sentence;
        this.text = template(sentence);
    }

    /** The phrases of which the claim was checked; an AssertionError if one does not hold or a word is not known. */
    static Set<String> read(Function<String, Object> data, Sentence sentence) {
        SpokenCheck check = new SpokenCheck(data, sentence);
        check.names();
        check.comparisons();
        check.places();
        check.patterns();
        check.shown();
        check.verdicts();
        check.advice();
        check.explained();
        check.conventions();
        check.words();
        return check.phrases;
    }

    /** Quotations become #0, #1, ...; numbers of the data become @0, @1, ... */
    static String template(Sentence sentence) {
        StringBuilder out = new StringBuilder();
        int quotation = 0;
        int number = 0;
        int at = 0;
        String all = sentence.text();
        while (at < all.length()) {
            if (quotation < sentence.quotations().size()
                    && sentence.quotations().get(quotation).start() == at) {
                at = sentence.quotations().get(quotation).end();
                out.append('#').append(quotation++);
            } else if (number < sentence.numbers().size()
                    && all.startsWith(sentence.numbers().get(number).text(), at)) {
                at += sentence.numbers().get(number).text().length();
                out.append('@').append(number++);
            } else {
                out.append(all.charAt(at++));
            }
        }
        require(number == sentence.numbers().size(), "a number is not there", sentence);
        return out.toString();
    }

    private static void require(boolean holds, String what, Object where) {
        if (!holds) {
            throw new AssertionError(what + ": " + where);
        }
    }

    private void require(boolean holds, String what) {
        require(holds, what, sentence + " as " + text);
    }

    private static Pattern compiled(String pattern) {
        return COMPILED.computeIfAbsent(pattern, Pattern::compile);
    }

    private List<MatchResult> all(String pattern) {
        List<MatchResult> found = compiled(pattern).matcher(text).results().toList();
        found.forEach(m -> covered.set(m.start(), m.end()));
        return found;
    }

    private QuotedNumber number(String index) {
        return sentence.numbers().get(Integer.parseInt(index));
    }

    private String quoted(String index) {
        Quotation q = sentence.quotations().get(Integer.parseInt(index));
        return sentence.text().substring(q.start(), q.end());
    }

    private String club(boolean first) {
        return NumberText.line(String.valueOf(data.apply(first ? "/clubs/first/name" : "/clubs/second/name")));
    }

    private void isClub(String index, boolean first) {
        require(quoted(index).equals(club(first)), "should be " + club(first));
    }

    private double at(String pointer) {
        Object value = data.apply(pointer);
        require(value instanceof Number, "no number at " + pointer);
        return ((Number) value).doubleValue();
    }

    private boolean leavesOut(String place, double value) {
        Object lower = data.apply(place + "/lower");
        Object upper = data.apply(place + "/upper");
        return (lower instanceof Number l && l.doubleValue() > value)
                || (upper instanceof Number u && u.doubleValue() < value);
    }

    /** The value of a number of which words tell the sign, with an interval that leaves out zero. */
    private double shown(QuotedNumber number, String end) {
        require(number.magnitude(), "words tell a sign that the number has as well");
        require(number.pointer().endsWith(end), "should be of " + end + " and not " + number.pointer());
        String place = number.pointer().substring(0, number.pointer().lastIndexOf('/'));
        require(leavesOut(place, 0.0), "the interval holds zero");
        double value = at(number.pointer());
        require(
                value < 0.0
                        == ((Number) Objects.requireNonNullElse(data.apply(place + "/upper"), 1.0)).doubleValue() < 0.0,
                "sign");
        return value;
    }

    /** Who is who. */
    private void names() {
        for (MatchResult m : all("#(\\d+) minus #(\\d+)")) {
            isClub(m.group(1), true);
            isClub(m.group(2), false);
        }
        for (MatchResult m : all("the spread of #(\\d+) is @(\\d+) times that of #(\\d+)")) {
            require(number(m.group(2)).pointer().endsWith("/patterns/ratio/value"), "ratio");
            isClub(m.group(1), true);
            isClub(m.group(3), false);
        }
        Pattern side = compiled("/(?:patterns|strike|clubs)/(first|second)/.*");
        if (text.matches("#0: .*|Not used with #0: .*")) {
            for (QuotedNumber n : sentence.numbers()) {
                Matcher m = side.matcher(n.pointer());
                if (m.matches()) {
                    isClub("0", m.group(1).equals("first"));
                }
            }
        }
        for (MatchResult m : all("@(\\d+)(?: shots?)?(?: used)? with #(\\d+)")) {
            String pointer = number(m.group(1)).pointer();
            Matcher of = side.matcher(pointer);
            if (of.matches()) {
                isClub(m.group(2), of.group(1).equals("first"));
            } else {
                String club = String.valueOf(data.apply(pointer.replace("/shot", "/club")));
                require(quoted(m.group(2)).equals(NumberText.line(club)), "should be " + club);
            }
        }
    }

    /** One club has more of something than the other. */
    private void comparisons() {
        for (MatchResult m : all("@(\\d+)(?: [^ @#;,.()]+)? " + PHRASE
                + "(?: \\((more of a (?:draw|fade))\\))?(?: with #(\\d+) than with #(\\d+))?"
                + "(?:, (more of a (?:draw|fade)))?")) {
            boolean own = m.group(4) != null;
            Matcher whole = compiled("With #(\\d+) .* than with #(\\d+)\\.").matcher(text);
            require(own || whole.matches(), "who has more");
            String named = own ? m.group(4) : whole.group(1);
            String other = own ? m.group(5) : whole.group(2);
            boolean first = quoted(named).equals(club(true));
            isClub(named, first);
            isClub(other, !first);
            QuotedNumber number = number(m.group(1));
            double difference = shown(number, "/difference/value") * (first ? 1.0 : -1.0);
            String key = key(number.pointer());
            require(sign(m.group(2), key) == Math.signum(difference), m.group(2));
            phrases.add(m.group(2));
            for (String extra : Arrays.asList(m.group(3), m.group(6))) {
                if (extra != null) {
                    require(Set.of("axis_tilt", "curve").contains(key), extra);
                    require(away(extra.endsWith("fade")) == Math.signum(difference), extra);
                    phrases.add(extra);
                }
            }
        }
    }

    private String key(String pointer) {
        Matcher m =
                Pattern.compile("(?:/without_flagged)?/metrics/([a-z_]+)/.*").matcher(pointer);
        require(m.matches(), "no metric in " + pointer);
        return m.group(1);
    }

    /** Far side of the golfer, right for a right-handed one, as a sign; or near side. */
    private double away(boolean far) {
        Object hand = data.apply("/session/hand");
        require("right".equals(hand) || "left".equals(hand), "the hand is not known");
        return far == "right".equals(hand) ? 1.0 : -1.0;
    }

    /** The sign of a difference that the phrase is true of. */
    private double sign(String phrase, String key) {
        if (phrase.equals("steeper") && key.equals("attack_angle")) {
            // Of blows that go down the steeper one has the smaller angle.
            require(
                    at("/metrics/attack_angle/first/mean/value") < 0.0
                            && at("/metrics/attack_angle/second/mean/value") < 0.0,
                    "not both go down");
            return -1.0;
        }
        if (MORE.containsKey(phrase)) {
            require(MORE.get(phrase).contains(key), phrase + " of " + key);
            return 1.0;
        }
        Set<String> of = phrase.endsWith(" the path")
                ? Set.of("face_to_path")
                : phrase.startsWith("more to the ")
                        ? Set.of("axis_tilt")
                        : phrase.startsWith("farther")
                                ? Set.of("side", "curve", "start_direction", "face_angle", "club_path")
                                : phrase.contains("-to-") ? Set.of("club_path") : Set.of("face_angle");
        require(of.contains(key), phrase + " of " + key);
        if (phrase.contains("right") || phrase.contains("left")) {
            return phrase.contains("right") ? 1.0 : -1.0;
        }
        return away(phrase.contains("open") || phrase.contains("in-to-out"));
    }

    /** Where something lies. */
    private void places() {
        place("@(\\d+) \\S+ (right|left) of the target line", "/center/side/value", "right");
        place("@(\\d+) \\S+ (long|short)(?= \\()", "/bias/carry/value", "long");
        place("@(\\d+) mm towards the (toe|heel)", "/center_toe/value", "toe");
        place("@(\\d+) mm (above|below) it", "/center_up/value", "above");
    }

    private void place(String pattern, String end, String positive) {
        for (MatchResult m : all(pattern)) {
            double value = shown(number(m.group(1)), end);
            require(m.group(2).equals(positive) == value > 0.0, m.group(2));
            phrases.add(m.group(2));
        }
    }

    private void patterns() {
        for (MatchResult m : all("#(\\d+) has the tighter landing pattern.*@(\\d+) times")) {
            QuotedNumber ratio = number(m.group(2));
            String place = ratio.pointer().substring(0, ratio.pointer().length() - "/value".length());
            require(leavesOut(place, 1.0), "the interval holds one");
            isClub(m.group(1), at(ratio.pointer()) < 1.0);
            phrases.add("tighter");
        }
        for (MatchResult m : all("(?i)which landing pattern is the tighter can't be told yet.*@(\\d+) times")) {
            String pointer = number(m.group(1)).pointer();
            require(!leavesOut(pointer.substring(0, pointer.length() - "/value".length()), 1.0), "it can be told");
            phrases.add("which is the tighter");
        }
        for (MatchResult m : all("@(\\d+) ((?:(?:push|pull) )?(?:draw|fade)|push|pull|straight"
                + "|starting [a-z]+ and curving [a-z]+)((?:e?s)?)(?=[,.])")) {
            String row = number(m.group(1)).pointer().replace("/count", "");
            Object words = data.apply(row + "/words");
            String start = String.valueOf(data.apply(row + "/start"));
            String curve = String.valueOf(data.apply(row + "/curve"));
            boolean plain = (start + curve).equals("straightstraight");
            String expected = words != null
                    ? words.toString()
                    : plain ? "straight" : "starting " + start + " and curving " + curve;
            require(m.group(2).equals(expected), expected);
            boolean many = at(number(m.group(1)).pointer()) != 1.0 && words != null && !expected.equals("straight");
            require(m.group(3).equals(!many ? "" : expected.endsWith("push") ? "es" : "s"), "one or many");
            phrases.add(m.group(2).startsWith("starting") ? "starting" : m.group(2));
        }
        for (MatchResult m : all("@(\\d+) miss(?:es)? to the left and @(\\d+) to the right")) {
            require(number(m.group(1)).pointer().endsWith("/misses_left"), "left");
            require(number(m.group(2)).pointer().endsWith("/misses_right"), "right");
            phrases.add("misses");
        }
        for (MatchResult m : all("the length mostly (along|across) the target line")) {
            String place = sentence.numbers().get(0).pointer().replace("/level_percent", "");
            require(m.group(1).equals("along") == Math.abs(at(place + "/angle/value")) < 45.0, m.group(1));
            phrases.add(m.group(1));
        }
    }

    /** Whether something is said to be shown. */
    private void shown() {
        contains("no difference shown, #\\d+ minus #\\d+ is @(\\d+)", false);
        contains("a difference is shown, #\\d+ minus #\\d+ is @(\\d+)", true);
        contains("with no offset (?:to the side|along the line|along the face|up or down) shown, @(\\d+)", false);
        contains("no drift over the session shown, @(\\d+)", false);
        contains("drifted over the session, by @(\\d+)", true);
    }

    private void contains(String pattern, boolean out) {
        for (MatchResult m : all(pattern)) {
            String pointer = number(m.group(1)).pointer();
            require(leavesOut(pointer.substring(0, pointer.lastIndexOf('/')), 0.0) == out, m.group());
            phrases.add(pattern.substring(0, pattern.indexOf(',')).replaceAll("\\(.*?\\)", "X"));
        }
    }

    private void verdicts() {
        String primary = "/metrics/" + data.apply("/primary");
        for (MatchResult m : all("^What decides is .*: (the clubs differ"
                + "|the clubs look different, but the exact test does not bear it out|in [a-z ]+ the clubs are practically the same"
                + "|they differ, but were not hit in the same air"
                + "|in [a-z ]+ they came out practically the same, but were not hit in the same air"
                + "|can't tell yet)\\.$")) {
            String verdict = String.valueOf(data.apply(primary + "/verdict"));
            boolean exact = at(primary + "/exact/p") <= 1.0 - at("/level") + 1e-12;
            boolean airs = AIR_MOVES.contains(String.valueOf(data.apply("/primary")))
                    && String.valueOf(data.apply("/warnings")).contains("airs-differ");
            String here = "in " + label(String.valueOf(data.apply("/primary")));
            String expected = verdict.equals("undecided")
                    ? "can't tell yet"
                    : airs
                            ? (verdict.equals("different")
                                            ? "they differ"
                                            : here + " they came out practically the same")
                                    + ", but were not hit in the same air"
                            : verdict.equals("practically_the_same")
                                    ? here + " the clubs are practically the same"
                                    : exact
                                            ? "the clubs differ"
                                            : "the clubs look different, but the exact test does not bear it out";
            require(m.group(1).equals(expected), expected);
            boolean paired = Boolean.TRUE.equals(data.apply(primary + "/paired"));
            double fewest =
                    paired ? at(primary + "/pairs") : Math.min(at(primary + "/first/n"), at(primary + "/second/n"));
            boolean few =
                    fewest < 6.0 || at(primary + "/least_p_percent") > 100.0 * (1.0 - at("/level")) * (1.0 + 1e-9);
            require(text.contains(" only: ") == few, "few or not");
            phrases.add(m.group(1).replaceFirst("^in .* the clubs", "the clubs"));
        }
        for (MatchResult m : all("p below one in a thousand")) {
            require(at("/metrics/" + key(sentence.numbers().get(0).pointer()) + "/difference/p") < 0.001, m.group());
        }
        for (MatchResult m : all("; the exact test does not bear it out(?=\\.)")) {
            String place = "/metrics/" + key(sentence.numbers().get(0).pointer());
            require(at(place + "/exact/p") > 1.0 - at("/level"), m.group());
        }
        listed("^Practically the same: (.*)\\.$", "practically_the_same");
        listed("^Can't tell yet: (.*)\\.$", "undecided");
        for (MatchResult m : all("(to the side|in carry), (different|practically the same|can't tell yet)")) {
            String root = text.startsWith("Without") ? "/without_flagged" : "";
            Object verdict =
                    data.apply(root + "/metrics/" + (m.group(1).endsWith("carry") ? "carry" : "side") + "/verdict");
            String words = "undecided".equals(verdict)
                    ? "can't tell yet"
                    : String.valueOf(verdict).replace('_', ' ');
            require(m.group(2).equals(words), words);
        }
    }

    private static String label(String key) {
        return key.equals("strike_toe")
                ? "strike along the face"
                : key.equals("strike_up") ? "strike up the face" : key.replace('_', ' ');
    }

    private static String keyOf(String label) {
        return label.equals("strike along the face")
                ? "strike_toe"
                : label.equals("strike up the face") ? "strike_up" : label.replace(' ', '_');
    }

    /** Advice, and what is said about the questions as a whole. */
    private void advice() {
        for (MatchResult m :
                all("so price or feel may decide(?:, though (most|some) of what else was looked at can't be told"
                        + " yet(, the swings among it)?)?")) {
            require(!"blocked".equals(data.apply("/order")), "order and club can't be told apart");
            int undecided = 0;
            int others = 0;
            boolean swings = false;
            for (Map.Entry<?, ?> entry : ((Map<?, ?>) Objects.requireNonNull(data.apply("/metrics"))).entrySet()) {
                Map<?, ?> metric = (Map<?, ?>) entry.getValue();
                if (Boolean.TRUE.equals(metric.get("in_family"))) {
                    boolean open = "undecided".equals(metric.get("verdict"));
                    require(!"different".equals(metric.get("verdict")), entry.getKey() + " differs");
                    undecided += open ? 1 : 0;
                    others += Boolean.TRUE.equals(metric.get("primary")) ? 0 : 1;
                    swings |= open
                            && Set.of("club_speed", "attack_angle", "club_path").contains(entry.getKey());
                }
            }
            String much = undecided == 0 ? null : 2 * undecided > others ? "most" : "some";
            require(Objects.equals(much, m.group(1)) && swings == (m.group(2) != null), "how much is open");
        }
        for (MatchResult m :
                all("^Worked out from the launch and the air, not measured, and so not judged: (.*)\\.$")) {
            for (String label : m.group(1).split(", | and ", -1)) {
                require(Boolean.FALSE.equals(data.apply("/metrics/" + keyOf(label) + "/in_family")), label);
            }
        }
        for (MatchResult m : all(
                "^Spread: the ratio of the SDs is (not )?shown to be other than one, .*: ([a-z, ]+) \\(#0\\)\\.$")) {
            for (String label : m.group(2).split(", | and ", -1)) {
                String place = "/metrics/" + keyOf(label) + "/spread";
                require(leavesOut(place + "/ratio", 1.0) == (m.group(1) == null), label);
                require(at(place + "/test/p") <= 1.0 - at("/level") == (m.group(1) != null), label);
            }
            phrases.add("spreads");
        }
        for (MatchResult m :
                all("Shot @0 with #0 may be a (mishit|misread): it stands out( \\(fast\\))? in ([a-z, ]+)\\.$")) {
            String place = number("0").pointer().replace("/shot", "");
            require(m.group(1).equals(data.apply(place + "/kind")), m.group(1));
            boolean test = data.apply(place + "/test_false_alarm_percent") != null;
            require(m.group(2) != null == (m.group(1).equals("misread") && test), "fast or not");
        }
        for (MatchResult m : all("^(No used shot stands out, so|Whether a used shot stands out is not known,)")) {
            require(
                    m.group(1).startsWith("No") == (at("/screening/false_alarm_bound_percent") > 0.0),
                    "shots that were not tested");
            require(((List<?>) Objects.requireNonNull(data.apply("/screening/flags"))).isEmpty(), "nothing stands out");
        }
        for (MatchResult m : all("; asked alone it would be settled, asked together with the others it is not")) {
            String place = "/metrics/" + key(sentence.numbers().get(0).pointer());
            if (!sentence.numbers().get(0).pointer().startsWith("/without")) {
                require("undecided".equals(data.apply(place + "/verdict")), m.group());
                require(
                        at(place + "/difference/p") <= 1.0 - at("/level")
                                || Boolean.TRUE.equals(data.apply(place + "/equivalence/equivalent")),
                        m.group());
            }
        }
        for (MatchResult m : all("by the @(\\d+) % interval it could be anything")) {
            String place = number("0").pointer().replace("/value", "");
            require(
                    at(place + "/upper") > 10.0
                            && at(place + "/lower") < 0.1
                            && m.group(1).equals("1"),
                    m.group());
        }
    }

    /** Club or swing. */
    private void explained() {
        for (MatchResult m : all("^Club or swing, in ([a-z ]+), asked by itself:"
                + " (club|swing|both|neither|can't be told yet);"
                + " (?:the swings were (different|practically the same) in ([a-z ,]+)"
                + "|whether the swings were the same can't be told (yet|as surely as this answer needs));"
                + " at equal (.*), (?:([a-z ]+) was (different|practically the same)"
                + "|whether ([a-z ]+) was the same can't be told(?: yet"
                + "|, as beside the stated errors of ([a-z ,]+) the readings vary too little)"
                + "|club and air can't be told apart in ([a-z ]+), as the clubs were not hit in the same air)\\.$")) {
            Map<?, ?> answer = answer(keyOf(m.group(1)));
            String swing = String.valueOf(Objects.requireNonNullElse(m.group(3), "undecided"));
            String club = String.valueOf(Objects.requireNonNullElse(m.group(8), "undecided"));
            for (int group : new int[] {7, 9, 11}) {
                require(m.group(group) == null || m.group(group).equals(m.group(1)), "another outcome");
            }
            if (swing.equals("undecided")) {
                // Both are of the golfer's side, so that they must not contradict each other.
                require(
                        "as surely as this answer needs".equals(m.group(5))
                                == ("practically_the_same".equals(side("What the golfer brings"))
                                        && List.of(m.group(6).split(", | and ", -1)).stream()
                                                .allMatch(label -> "practically_the_same"
                                                        .equals(input(keyOf(label))
                                                                .get("verdict")))),
                        "the same together");
            }
            boolean airs = !((List<?>) Objects.requireNonNull(answer.get("warnings"))).isEmpty();
            require(airs == (m.group(11) != null), "the air");
            String equal = "/explanation/golfer_side/" + swingIndex(keyOf(m.group(1)));
            List<String> errors = ((List<?>) Objects.requireNonNull(data.apply(equal + "/read_with_error")))
                    .stream().map(String::valueOf).toList();
            boolean hidden = club.equals("undecided")
                    && !airs
                    && !errors.isEmpty()
                    && data.apply(equal + "/direct_corrected") == null;
            require(hidden == (m.group(10) != null), "the errors of reading");
            require(
                    !hidden
                            || List.of(m.group(10).split(", | and ", -1)).stream()
                                    .map(SpokenCheck::keyOf)
                                    .toList()
                                    .equals(errors),
                    "what is read with error");
            require(
                    List.of(m.group(6).split(", | and ", -1)).stream()
                            .map(SpokenCheck::keyOf)
                            .toList()
                            .equals(keys(
                                    "/explanation/golfer_side/" + swingIndex(keyOf(m.group(1))) + "/covariates",
                                    "metric")),
                    "what was held equal");
            require(swing.replace(' ', '_').equals(answer.get("swing")), swing);
            require(club.replace(' ', '_').equals(answer.get("club")), club);
            // The answer once more from both verdicts, and not only from the data.
            boolean open = swing.equals("undecided") || club.equals("undecided");
            boolean bySwing = swing.equals("different");
            boolean byClub = club.equals("different");
            String expected = open
                    ? "can't be told yet"
                    : bySwing && byClub ? "both" : bySwing ? "swing" : byClub ? "club" : "neither";
            require(expected.equals(m.group(2)), expected);
            require((open ? "can_not_tell" : expected).equals(answer.get("answer")), expected);
            java.util.List<?> differs = (java.util.List<?>) Objects.requireNonNull(answer.get("swing_differs"));
            require(bySwing != differs.isEmpty(), "what differs");
            for (String label : m.group(4) == null ? new String[0] : m.group(4).split(", | and ", -1)) {
                require(bySwing == differs.contains(keyOf(label)), label);
            }
            phrases.add("club or swing " + m.group(2));
        }
        for (MatchResult m : all(
                "^(What the golfer brings|How club and golfer meet), taken together, was (practically the same|different): (.*)\\.$")) {
            require(side(m.group(1)).equals(m.group(2).replace(' ', '_')), m.group(2));
            for (String part : m.group(3).replaceFirst("^in ", "").split(", | and ", -1)) {
                Map<?, ?> input = input(keyOf(part.replaceFirst(" within .*", "")));
                require(m.group(2).replace(' ', '_').equals(input.get("verdict")), part);
            }
            phrases.add("taken together " + m.group(2));
        }
        for (MatchResult m : all("^Settled only when asked among these few, .*: (.*)\\.$")) {
            for (String label : m.group(1).split(", | and ", -1)) {
                require(!"undecided".equals(input(keyOf(label)).get("verdict")), label);
                require("undecided".equals(data.apply("/metrics/" + keyOf(label) + "/verdict")), label);
            }
            phrases.add("among few");
        }
        for (MatchResult m :
                all("^Whether (what the golfer brings|how club and golfer meet), taken together, was the same"
                        + " can't be told yet(?:, for want of (.*))?\\.$")) {
            require(side(m.group(1)).equals("undecided"), m.group(1));
            for (String label : m.group(2) == null ? new String[0] : m.group(2).split(", | and ", -1)) {
                require("undecided".equals(input(keyOf(label)).get("verdict")), label);
            }
            phrases.add("taken together can't be told");
        }
        for (MatchResult m :
                all("with that goes(?:, by flights,)? @(\\d+)(?: \\S+)? of the @(\\d+)(?: \\S+)? in ([a-z ]+)")) {
            QuotedNumber part = number(m.group(1));
            QuotedNumber whole = number(m.group(2));
            double share = shown(part, "/value");
            double total = shown(whole, "/difference/value");
            require(key(whole.pointer()).equals(keyOf(m.group(3))), m.group(3));
            require(share / total > 0.0 && share / total <= 1.0, "a part of the whole");
            named(part.pointer(), keyOf(m.group(3)));
            phrases.add("with that goes");
        }
        for (MatchResult m : all("^Corrected for the stated errors of reading ([a-z ,]+) #\\d+ minus #\\d+ is, at equal"
                + " readings, @(\\d+).* in ([a-z ]+)\\.$")) {
            String place = number(m.group(2)).pointer().replaceFirst("/direct_corrected/value$", "");
            require(keyOf(m.group(3)).equals(data.apply(place + "/outcome")), m.group(3));
            java.util.List<?> stated =
                    (java.util.List<?>) Objects.requireNonNull(data.apply(place + "/read_with_error"));
            for (String label : m.group(1).split(", | and ", -1)) {
                require(stated.contains(keyOf(label)), label);
            }
            phrases.add("corrected for errors");
        }
        for (MatchResult m : all("; the paths were practically the same, within @(\\d+)")) {
            require("practically_the_same".equals(input("club_path").get("verdict")), m.group());
            require(number(m.group(1)).pointer().endsWith("/within/value"), m.group());
            phrases.add("the paths");
        }
        for (MatchResult m : all("^By flights nothing in ([a-z ]+) is shown to go with (.*)\\.$")) {
            for (String label : m.group(2).split(", | and ", -1)) {
                require(!byFlights(share(keyOf(m.group(1)), keyOf(label)), keyOf(m.group(1))), label);
            }
            phrases.add("by flights nothing");
        }
        for (MatchResult m : all("(?:, |; )with (?!that )([a-z ]+) goes @(\\d+)")) {
            String place = number(m.group(2)).pointer().replaceFirst("/share/value$", "");
            require(keyOf(m.group(1)).equals(data.apply(place + "/input")), m.group(1));
            require(leavesOut(place + "/share", 0.0), "the interval holds zero");
            named(place + "/share/value", whatIsSplit(place));
            phrases.add("with it goes");
        }
        for (MatchResult m : all(
                "^On what goes with .* in ([a-z ]+) flights and shots (agree|disagree)(?:, so rely on"
                        + " neither)?\\.$|^Whether flights and shots agree on what goes with .* in ([a-z ]+) can't be told yet\\.$")) {
            String outcome = keyOf(m.group(1) == null ? m.group(3) : m.group(1));
            String accord = m.group(2) == null ? "undecided" : m.group(2);
            require(
                    ((java.util.List<?>) Objects.requireNonNull(data.apply("/explanation/agreements")))
                            .stream()
                                    .anyMatch(a -> outcome.equals(((Map<?, ?>) a).get("outcome"))
                                            && accord.equals(((Map<?, ?>) a).get("accord"))),
                    accord);
            phrases.add("they " + accord);
        }
    }

    /** The outcome differs, the reading does among those asked with it by Holm, and the part is not zero among theirs. */
    private void named(String pointer, String outcome) {
        Matcher effect = compiled("(/explanation/effects/\\d+)(/covariates/\\d+)/part/value")
                .matcher(pointer);
        if (effect.matches()) {
            require(outcome.equals(data.apply(effect.group(1) + "/outcome")), outcome);
            List<String> asked = keys(effect.group(1) + "/covariates", "metric");
            String input = String.valueOf(data.apply(effect.group(1) + effect.group(2) + "/metric"));
            require(different(outcome) && differsAmong(input, asked), input + " of " + outcome);
            require(
                    at(pointer.replaceFirst("/value$", "/p")) <= (1.0 - at("/level")) / asked.size(),
                    "not shown among " + asked);
        } else {
            require(byFlights(pointer.replaceFirst("/value$", ""), outcome), pointer + " of " + outcome);
        }
    }

    private boolean byFlights(String share, String outcome) {
        String place = share.replaceFirst("/share$", "");
        require(outcome.equals(whatIsSplit(place)), outcome);
        return different(outcome)
                && differsAmong(
                        String.valueOf(data.apply(place + "/input")), keys(place.replaceFirst("/\\d+$", ""), "input"))
                && leavesOut(place + "/together", 0.0);
    }

    private List<String> keys(String place, String name) {
        return ((List<?>) Objects.requireNonNull(data.apply(place)))
                .stream().map(x -> String.valueOf(((Map<?, ?>) x).get(name))).toList();
    }

    /** Holm's step-down: the smallest p times k, the next times k - 1, ..., until one is not small enough. */
    private boolean differsAmong(String input, List<String> asked) {
        List<String> sorted = asked.stream()
                .sorted(java.util.Comparator.comparingDouble(key -> at("/metrics/" + key + "/difference/p")))
                .toList();
        for (int i = 0; i < sorted.size(); i++) {
            if (at("/metrics/" + sorted.get(i) + "/difference/p") * (sorted.size() - i) > 1.0 - at("/level")) {
                return false;
            }
            if (sorted.get(i).equals(input)) {
                return true;
            }
        }
        return false;
    }

    private String whatIsSplit(String place) {
        return String.valueOf(data.apply(place.replaceFirst("/shares/\\d+$", "/outcome")));
    }

    private boolean different(String key) {
        return "different".equals(data.apply("/metrics/" + key + "/verdict"));
    }

    private String side(String words) {
        return String.valueOf(data.apply("/explanation/balance/" + (words.endsWith("brings") ? "golfer" : "meeting")));
    }

    private int swingIndex(String outcome) {
        return keys("/explanation/golfer_side", "outcome").indexOf(outcome);
    }

    private Map<?, ?> answer(String outcome) {
        for (Object answer : (java.util.List<?>) Objects.requireNonNull(data.apply("/explanation/club_or_swing"))) {
            if (outcome.equals(((Map<?, ?>) answer).get("outcome"))) {
                return (Map<?, ?>) answer;
            }
        }
        throw new AssertionError("no answer of " + outcome + ": " + text);
    }

    private Map<?, ?> input(String key) {
        for (Object input : (java.util.List<?>) Objects.requireNonNull(data.apply("/explanation/balance/inputs"))) {
            if (key.equals(((Map<?, ?>) input).get("metric"))) {
                return (Map<?, ?>) input;
            }
        }
        throw new AssertionError("no input " + key + ": " + text);
    }

    /** The place of a share. */
    private String share(String outcome, String input) {
        for (int i = 0; data.apply("/explanation/flights/outcomes/" + i) != null; i++) {
            String place = "/explanation/flights/outcomes/" + i;
            for (int j = 0; data.apply(place + "/shares/" + j) != null; j++) {
                if (outcome.equals(data.apply(place + "/outcome"))
                        && input.equals(data.apply(place + "/shares/" + j + "/input"))) {
                    return place + "/shares/" + j + "/share";
                }
            }
        }
        throw new AssertionError("no share of " + input + " in " + outcome);
    }

    private void listed(String pattern, String verdict) {
        for (MatchResult m : all(pattern)) {
            for (String label : m.group(1).split(", | and ", -1)) {
                require(verdict.equals(data.apply("/metrics/" + keyOf(label) + "/verdict")), label);
                require(Boolean.TRUE.equals(data.apply("/metrics/" + keyOf(label) + "/in_family")), label);
            }
            phrases.add(verdict);
        }
    }

    /** Sides that are named and claim nothing of the shots. */
    private void conventions() {
        for (MatchResult m : all("(left|right)-handed")) {
            require(m.group(1).equals(data.apply("/session/hand")), m.group());
        }
        all("right of the target, up and towards the toe positive");
        all("zero is straight against and ninety from the right");
        all("draw and fade are not named");
        all("balls come down within");
        all("warming up or tiring");
        all("(?i)strike (?:up|along) the face");
        all("even clubs that do not differ");
        all("if (?:it is the one that decides and )?the clubs differ by the margin");
        all("(?i)not shown to go with a difference in");
        all("the averages are shown and not judged");
        all("^(?:Nothing that was compared is shown to differ|Nothing is shown to be practically the same)\\.$");
        all("^The builds differ in ");
    }

    private void words() {
        Matcher word = WORD.matcher(text);
        while (word.find()) {
            String plain = word.group().toLowerCase(java.util.Locale.ROOT);
            if (DIRECTIONS.contains(plain)) {
                require(covered.get(word.start()), "nothing checks \"" + plain + "\"");
            } else {
                require(PLAIN.contains(plain), "an unknown word, \"" + plain + "\"");
            }
        }
        for (int i = 0; i < sentence.numbers().size(); i++) {
            if (sentence.numbers().get(i).magnitude()) {
                Pattern interval = compiled(" interval (?:@\\d+ to )?@" + i + "\\b");
                int at = compiled("@" + i + "\\b")
                        .matcher(text)
                        .results()
                        .findFirst()
                        .orElseThrow()
                        .start();
                require(
                        covered.get(at) || interval.matcher(text).find(),
                        "no words tell the sign of " + sentence.numbers().get(i).text());
            }
        }
    }

    static Map<String, String> opposites() {
        Map<String, String> both = new HashMap<>();
        String pairs = "longer shorter faster slower higher lower steeper shallower farther nearer right left upward"
                + " downward upright flatter toe heel above below long short open closed draw fade push pull in-to-out"
                + " out-to-in up down along across";
        String[] words = pairs.split(" ", -1);
        for (int i = 0; i < words.length; i += 2) {
            both.put(words[i], words[i + 1]);
            both.put(words[i + 1], words[i]);
        }
        return both;
    }

    private static Set<String> plain() {
        try (InputStream in = SpokenCheck.class.getResourceAsStream("plain-words.txt")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .filter(line -> !line.startsWith("#"))
                    .flatMap(line -> Arrays.stream(line.strip().split(" +", -1)))
                    .collect(Collectors.toSet());
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }
}
