package dev.teeward.fitting.report;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.compare.HeadToHeadResult;
import dev.teeward.fitting.compare.MetricComparison;
import dev.teeward.fitting.compare.Verdict;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The shots that stand out, and what the answer is without them. */
final class FlagWords {
    private final Subject subject;

    FlagWords(Subject subject) {
        this.subject = subject;
    }

    Section section() {
        List<Sentence> sentences = new ArrayList<>();
        boolean any = subject.data().value("/screening/flags") instanceof List<?> flags && flag(flags, sentences);
        if (!any) {
            sentences.add(subject.words()
                    .say("no used shot stands out, so there is nothing to leave out.")
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

    private boolean flag(List<?> flags, List<Sentence> sentences) {
        for (int i = 0; i < flags.size(); i++) {
            Map<?, ?> flag = (Map<?, ?>) flags.get(i);
            if (flag == null) {
                continue;
            }
            sentences.add(subject.words()
                    .say("shot ")
                    .count("/screening/flags/" + i + "/shot")
                    .say(" with ")
                    .quote(String.valueOf(flag.get("club")))
                    .say(" may be a " + flag.get("kind") + ": it stands out in " + readings(flag) + ".")
                    .sentence());
        }
        return !flags.isEmpty();
    }

    private static String readings(Map<?, ?> flag) {
        List<String> labels = new ArrayList<>();
        if (flag.get("metrics") instanceof List<?> keys) {
            for (Metric metric : Metric.values()) {
                if (keys.contains(metric.key())) {
                    labels.add(Subject.label(metric));
                }
            }
        }
        return labels.isEmpty() ? "its readings" : Subject.list(labels);
    }

    /** How each was found; no sentence if none was. */
    List<Sentence> reasons() {
        List<Sentence> sentences = new ArrayList<>();
        if (subject.data().value("/screening/flags") instanceof List<?> flags) {
            for (int i = 0; i < flags.size(); i++) {
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
        List<String> changed = new ArrayList<>();
        for (MetricComparison m : other.metrics()) {
            Optional<Verdict> before =
                    subject.result().find(m.metric()).map(x -> x.verdict().verdict());
            if (before.isPresent() && before.get() != m.verdict().verdict()) {
                changed.add(Subject.label(m.metric()) + " from " + words(before.get()) + " to "
                        + words(m.verdict().verdict()));
            }
        }
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
