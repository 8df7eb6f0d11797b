package dev.teeward.fitting.report;

import dev.teeward.fitting.Sense;
import dev.teeward.fitting.compare.HeadToHeadResult;
import dev.teeward.fitting.compare.MetricComparison;
import dev.teeward.fitting.compare.Verdict;
import dev.teeward.quantity.Estimate;
import java.util.ArrayList;
import java.util.List;

/** The answer first. */
final class Answer {
    private final Subject subject;

    Answer(Subject subject) {
        this.subject = subject;
    }

    Section section() {
        List<Sentence> sentences = new ArrayList<>();
        primary(sentences);
        prizes(true, sentences);
        prizes(false, sentences);
        lateral(sentences);
        lists(sentences);
        if (subject.result().patterns().isPresent()) {
            sentences.add(new PatternWords(subject).tighter());
        }
        subject.result().withoutFlagged().ifPresent(other -> sentences.add(flagged(other)));
        if (allTheSame()) {
            sentences.add(subject.words()
                    .say(
                            subject.result().primaryDeclared()
                                    ? "on everything that was declared to matter ("
                                            + Subject.list(Subject.labels(declared())) + ") "
                                    : "in " + Subject.list(Subject.labels(declared())) + " ")
                    .quote(subject.first())
                    .say(" and ")
                    .quote(subject.second())
                    .say(" are practically the same, so price or feel may decide.")
                    .sentence());
        }
        return Section.of("in-short", "In short", sentences);
    }

    /** An answer that hangs on a shot that stands out says so at once. */
    private Sentence flagged(HeadToHeadResult other) {
        List<String> changed = other.metrics().stream()
                .filter(m -> subject.result()
                        .find(m.metric())
                        .filter(before ->
                                before.verdict().verdict() != m.verdict().verdict())
                        .isPresent())
                .map(m -> Subject.label(m.metric()))
                .toList();
        boolean one = subject.data().number("/screening/flagged").orElse(0.0) == 1.0;
        return subject.words()
                .count("/screening/flagged", "shot stands", "shots stand")
                .say(" out and " + (one ? "counts" : "count") + " all the same; without " + (one ? "it" : "them") + " "
                        + (changed.isEmpty()
                                ? "no verdict would change."
                                : "the verdict would be another in " + Subject.list(changed) + "."))
                .sentence();
    }

    private void primary(List<Sentence> sentences) {
        MetricComparison c = subject.result().primary();
        String place = Subject.place(c.metric());
        VerdictWords verdicts = new VerdictWords(subject);
        sentences.add(subject.words()
                .say("what decides is " + Subject.label(c.metric())
                        + (subject.result().primaryDeclared() ? ", as declared" : ", taken as no other was named")
                        + ": "
                        + switch (c.verdict().verdict()) {
                            case DIFFERENT -> "the clubs differ.";
                            case PRACTICALLY_THE_SAME -> "the clubs are practically the same.";
                            case UNDECIDED -> "it can't be told yet.";
                        })
                .sentence());
        Wording w = subject.words();
        switch (c.verdict().verdict()) {
            case DIFFERENT -> new DifferenceWords(subject).full(w, c, place).say(".");
            case PRACTICALLY_THE_SAME -> verdicts.same(w, c, place);
            case UNDECIDED -> verdicts.undecided(w, c, place).say(".");
        }
        sentences.add(w.sentence());
    }

    /** What more of a size a club gives. */
    private void prizes(boolean first, List<Sentence> sentences) {
        Wording w = subject.words();
        List<MetricComparison> won = clearlyDifferent().stream()
                .filter(c -> c.metric().sense() != Sense.LATERAL)
                .filter(c -> c.difference().estimate().interval().lower() > 0.0 == first)
                .toList();
        if (won.isEmpty()) {
            return;
        }
        w.quote(first ? subject.first() : subject.second()).say(" gives ");
        for (int i = 0; i < won.size(); i++) {
            w.say(i == 0 ? "" : i == won.size() - 1 ? " and " : ", ")
                    .say(DifferenceWords.prize(won.get(i).metric()) + " (by ");
            amount(w, won.get(i)).say(")");
        }
        sentences.add(w.say(".").sentence());
    }

    private void lateral(List<Sentence> sentences) {
        List<MetricComparison> moved = clearlyDifferent().stream()
                .filter(c -> c.metric().sense() == Sense.LATERAL)
                .toList();
        for (boolean right : new boolean[] {true, false}) {
            List<MetricComparison> side = moved.stream()
                    .filter(c -> c.difference().estimate().interval().lower() > 0.0 == right)
                    .toList();
            if (side.isEmpty()) {
                continue;
            }
            Wording w = subject.words()
                    .quote(subject.first())
                    .say(right ? " is farther right than " : " is farther left than ")
                    .quote(subject.second())
                    .say(" in ");
            for (int i = 0; i < side.size(); i++) {
                w.say(i == 0 ? "" : i == side.size() - 1 ? " and " : ", ")
                        .say(Subject.label(side.get(i).metric()) + " (by ");
                amount(w, side.get(i)).say(")");
            }
            sentences.add(w.say(".").sentence());
        }
    }

    private Wording amount(Wording w, MetricComparison c) {
        Estimate e = c.difference().estimate().convertTo(subject.unit(c.metric()));
        return DifferenceWords.magnitude(w, e, Subject.place(c.metric()) + "/difference");
    }

    private List<MetricComparison> clearlyDifferent() {
        return subject.with(Verdict.DIFFERENT).stream()
                .filter(c -> !c.primary())
                .filter(c -> DifferenceWords.leavesOut(c.difference().estimate().interval(), 0.0))
                .toList();
    }

    private void lists(List<Sentence> sentences) {
        list(Verdict.PRACTICALLY_THE_SAME, "practically the same: ", sentences);
        list(Verdict.UNDECIDED, "can't tell yet: ", sentences);
    }

    private void list(Verdict verdict, String words, List<Sentence> sentences) {
        List<MetricComparison> others =
                subject.with(verdict).stream().filter(c -> !c.primary()).toList();
        if (!others.isEmpty()) {
            sentences.add(subject.words()
                    .say(words + Subject.list(Subject.labels(others)) + ".")
                    .sentence());
        }
    }

    private List<MetricComparison> declared() {
        return subject.result().metrics().stream()
                .filter(c -> c.primary() || c.marginDeclared())
                .toList();
    }

    private boolean allTheSame() {
        return subject.with(Verdict.DIFFERENT).isEmpty()
                && declared().stream().allMatch(c -> c.verdict().verdict() == Verdict.PRACTICALLY_THE_SAME)
                && subject.result().patterns().flatMap(p -> p.tighter()).isEmpty();
    }
}
