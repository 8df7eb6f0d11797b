package dev.teeward.fitting.report;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.compare.HeadToHeadResult;
import dev.teeward.fitting.compare.MetricComparison;
import dev.teeward.fitting.compare.Verdict;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** The shots that stand out, and what the answer is without them. */
final class FlagWords {
    /** So many shots are told one by one; the data has them all. */
    private static final int MOST = 20;

    private final Subject subject;

    FlagWords(Subject subject) {
        this.subject = subject;
    }

    Section section() {
        List<Sentence> sentences = new ArrayList<>();
        boolean any = subject.data().value("/screening/flags") instanceof List<?> flags && flag(flags, sentences);
        if (!any) {
            sentences.add(subject.words()
                    .say(
                            tested()
                                    ? "no used shot stands out, so there is nothing to leave out."
                                    : "whether a used shot stands out is not known, as mishits can't be told from these shots; see"
                                            + " what to keep in mind.")
                    .sentence());
        } else if (subject.result().withoutFlagged().isPresent()) {
            changes(subject.result().withoutFlagged().get(), sentences);
        } else {
            sentences.add(subject.words()
                    .say(
                            "what the answer would be without the shots that stand out is not known: too few would remain.")
                    .sentence());
        }
        if (any) {
            sentences.add(subject.words()
                    .say("a shot that stands out counts all the same; leave it out only for a reason other than its"
                            + " number.")
                    .sentence());
        }
        return Section.of("flagged", "The answer without the shots that stand out", sentences);
    }

    /** Whether a test for mishits was made of any shots; the rules for misreads are none. */
    private boolean tested() {
        return subject.data().number("/screening/false_alarm_bound_percent").orElse(0.0) > 0.0;
    }

    private boolean flag(List<?> flags, List<Sentence> sentences) {
        int first = told(flags);
        Set<List<@Nullable Object>> told = new HashSet<>();
        for (int i = 0; i < first; i++) {
            Map<?, ?> flag = (Map<?, ?>) flags.get(i);
            if (flag == null || !told.add(suspicion(flag))) {
                continue;
            }
            sentences.add(subject.words()
                    .say("shot ")
                    .count("/screening/flags/" + i + "/shot")
                    .say(" with ")
                    .quote(String.valueOf(flag.get("club")))
                    .say(" may be a " + flag.get("kind") + ": it stands out" + (fast(flag) ? " (fast)" : "") + " in "
                            + readings(flags, flag) + ".")
                    .sentence());
        }
        if (first < flags.size()) {
            sentences.add(subject.words()
                    .say("there are more shots that stand out, ")
                    .count("/screening/flagged")
                    .say(" in all.")
                    .sentence());
        }
        return !flags.isEmpty();
    }

    /** How many of the flags, which are in the order of the shots, are of the first shots. */
    private static int told(List<?> flags) {
        Set<String> shots = new HashSet<>();
        int told = 0;
        for (Object flag : flags) {
            shots.add(String.valueOf(flag instanceof Map<?, ?> map ? map.get("index") : null));
            if (shots.size() > MOST) {
                break;
            }
            told++;
        }
        return told;
    }

    /** What is suspected of which shot; several methods may. */
    private static List<@Nullable Object> suspicion(Map<?, ?> flag) {
        return Arrays.asList(flag.get("index"), flag.get("kind"), fast(flag));
    }

    /** A misread that a test found and no rule: better than the other shots. */
    private static boolean fast(Map<?, ?> flag) {
        return "misread".equals(flag.get("kind")) && flag.get("test_false_alarm_percent") != null;
    }

    /** All that the shot stands out in, by whatever method. */
    private static String readings(List<?> flags, Map<?, ?> of) {
        Set<Object> keys = new HashSet<>();
        for (Object flag : flags) {
            if (flag instanceof Map<?, ?> map
                    && Objects.equals(map.get("index"), of.get("index"))
                    && suspicion(map).equals(suspicion(of))
                    && map.get("metrics") instanceof List<?> metrics) {
                keys.addAll(metrics);
            }
        }
        List<String> labels = new ArrayList<>();
        for (Metric metric : Metric.values()) {
            if (keys.contains(metric.key())) {
                labels.add(Subject.label(metric));
            }
        }
        return labels.isEmpty() ? "its readings" : Subject.list(labels);
    }

    /** How each was found; no sentence if none was. */
    List<Sentence> reasons() {
        List<Sentence> sentences = new ArrayList<>();
        if (subject.data().value("/screening/flags") instanceof List<?> flags) {
            int told = told(flags);
            for (int i = 0; i < told; i++) {
                String place = "/screening/flags/" + i;
                sentences.add(subject.words()
                        .say("shot ")
                        .count(place + "/shot")
                        .say(" stands out: ")
                        .quote(String.valueOf(subject.data().value(place + "/reason")))
                        .say(".")
                        .sentence());
            }
        }
        return sentences;
    }

    private void changes(HeadToHeadResult other, List<Sentence> sentences) {
        MetricComparison c = other.primary();
        Wording w = subject.words().say("without ");
        w.say(one() ? "this shot, " : "these shots, ");
        String place = "/without_flagged" + Subject.place(c.metric());
        VerdictWords verdicts = new VerdictWords(subject);
        switch (c.verdict().verdict()) {
            case DIFFERENT ->
                new DifferenceWords(subject)
                        .full(w.say("different in "), c, place)
                        .say(".");
            case PRACTICALLY_THE_SAME -> verdicts.same(w.say("practically the same in "), c, place);
            case UNDECIDED ->
                verdicts.undecided(w.say("can't tell yet in "), c, place).say(".");
        }
        sentences.add(w.sentence());
        if (other.patterns().isPresent()) {
            PatternWords patterns = new PatternWords(subject, other, "/without_flagged");
            String without = one() ? "without it, " : "without them, ";
            sentences.add(patterns.centres(without));
            sentences.add(patterns.tighter(without));
        }
        List<String> changed = subject.result().changedVerdicts().stream()
                .map(change -> Subject.label(change.metric()) + " from " + words(change.with()) + " to "
                        + words(change.without()))
                .toList();
        sentences.add(subject.words()
                .say(
                        changed.isEmpty()
                                ? "no verdict changes without what stands out."
                                : "verdicts that change: " + String.join("; ", changed) + ".")
                .sentence());
    }

    private boolean one() {
        return subject.data().number("/screening/flagged").orElse(0.0) == 1.0;
    }

    static String words(Verdict verdict) {
        return switch (verdict) {
            case DIFFERENT -> "different";
            case PRACTICALLY_THE_SAME -> "practically the same";
            case UNDECIDED -> "can't tell yet";
        };
    }
}
