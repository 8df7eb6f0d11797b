package dev.teeward.fitting.report;

import dev.teeward.fitting.compare.MetricComparison;
import dev.teeward.fitting.compare.TostTest;
import dev.teeward.fitting.compare.Verdict;
import dev.teeward.quantity.Estimate;
import java.util.ArrayList;
import java.util.List;

/** The sections that follow the verdicts: what differs, what is practically the same, what is undecided. */
final class VerdictWords {
    private final Subject subject;
    private final DifferenceWords differences;

    VerdictWords(Subject subject) {
        this.subject = subject;
        this.differences = new DifferenceWords(subject);
    }

    Section differs() {
        List<Sentence> sentences = new ArrayList<>();
        for (MetricComparison c : subject.with(Verdict.DIFFERENT)) {
            Wording w = differences.full(subject.words(), c, Subject.place(c.metric()));
            if (c.primary()) {
                w.say(", ").p(Subject.place(c.metric()) + "/difference/p");
            }
            sentences.add(w.say(".").sentence());
        }
        if (sentences.isEmpty()) {
            sentences.add(subject.words()
                    .say("nothing that was compared is shown to differ.")
                    .sentence());
        }
        if (subject.result().metrics().size() > 1) {
            sentences.add(subject.words()
                    .say("besides " + Subject.label(subject.result().primary().metric()) + ", ")
                    .count("/secondary_count", "other metric was", "other metrics were")
                    .say(" looked at; the more one looks at, the more stands out by luck alone, so these are called"
                            + " different only after allowing for their number (by Holm's method).")
                    .sentence());
        }
        return Section.of("differs", "What differs", sentences);
    }

    Section same() {
        List<Sentence> sentences = new ArrayList<>();
        for (MetricComparison c : subject.with(Verdict.PRACTICALLY_THE_SAME)) {
            sentences.add(same(subject.words(), c, Subject.place(c.metric())).sentence());
        }
        if (sentences.isEmpty()) {
            sentences.add(subject.words()
                    .say("nothing is shown to be practically the same.")
                    .sentence());
        }
        return Section.of("same", "What is practically the same", sentences);
    }

    /** The sentence of a metric whose interval lies inside the margin. */
    Wording same(Wording w, MetricComparison c, String place) {
        TostTest.Result test = c.equivalence().orElseThrow();
        Estimate e = test.estimate().convertTo(subject.unit(c.metric()));
        int d = NumberText.decimals(e.unit());
        String unit = DifferenceWords.symbol(e.unit());
        if (c.verdict().differentButTrivial()
                && DifferenceWords.leavesOut(c.difference().estimate().interval(), 0.0)) {
            return margin(differences.full(w, c, place).say(", surely less than the margin of "), c, place)
                    .say(".");
        }
        w.say(Subject.label(c.metric()))
                .say(": ")
                .quote(subject.first())
                .say(" minus ")
                .quote(subject.second())
                .say(" is ")
                .number(place + "/difference/value", d)
                .say(unit + ", and the ")
                .percent("/equivalence_level_percent")
                .say(" interval, ")
                .number(place + "/equivalence/lower", d)
                .say(" to ")
                .number(place + "/equivalence/upper", d)
                .say(unit + ", lies within the margin of ");
        return margin(w, c, place).say(".");
    }

    private Wording margin(Wording w, MetricComparison c, String place) {
        var unit = subject.unit(c.metric());
        double shown = unit.fromSi(c.margin().orElse(0.0));
        return w.number(place + "/equivalence/margin", NumberText.decimals(NumberText.decimals(unit), 0.0, shown))
                .say(DifferenceWords.symbol(unit));
    }

    Section undecided() {
        List<Sentence> sentences = new ArrayList<>();
        List<MetricComparison> open = subject.with(Verdict.UNDECIDED);
        for (MetricComparison c : open) {
            Wording w = undecided(subject.words(), c, Subject.place(c.metric()));
            new PlanWords(subject).more(w.say("; "), c);
            sentences.add(w.say(".").sentence());
        }
        if (open.isEmpty()) {
            sentences.add(subject.words().say("nothing is undecided.").sentence());
        } else {
            sentences.add(subject.words()
                    .say("these numbers settle the matter in ")
                    .percent("/plan/power_percent")
                    .say(
                            Boolean.TRUE.equals(subject.data().value("/plan/counts_equivalence"))
                                    ? " of sessions, whether the clubs differ by the margin or not at all."
                                    : " of sessions if the clubs differ by the margin.")
                    .sentence());
        }
        return Section.of("undecided", "What can't be told yet", sentences);
    }

    /** What is known of a metric that is undecided, without a full stop. */
    Wording undecided(Wording w, MetricComparison c, String place) {
        found(w, c, place);
        if (c.equivalence().map(TostTest.Result::equivalent).orElse(false)) {
            margin(w.say(", and within the margin of "), c, place)
                    .say(" if taken alone, but not after allowing for how many were asked");
        }
        return w;
    }

    private Wording found(Wording w, MetricComparison c, String place) {
        Estimate e = c.difference().estimate();
        if (DifferenceWords.leavesOut(e.interval(), 0.0)) {
            Estimate shown = e.convertTo(subject.unit(c.metric()));
            w.say(Subject.label(c.metric()) + ": taken alone the interval leaves out zero, ")
                    .quote(subject.first())
                    .say(" minus ")
                    .quote(subject.second())
                    .say(" is ");
            return DifferenceWords.value(w, shown, place + "/difference")
                    .say(", but not after allowing for the number of metrics looked at");
        }
        return differences.brief(w.say(Subject.label(c.metric())).say(": no difference shown, "), c, place);
    }
}
