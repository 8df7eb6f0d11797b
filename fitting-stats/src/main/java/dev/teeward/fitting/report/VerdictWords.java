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

    /** Whether there are so few shots that the exact test can show nothing, whatever the shots are. */
    boolean tooFew(MetricComparison c) {
        return MetricBranch.leastP(c) > 1.0 - subject.result().level();
    }

    /** Whether the exact test agrees that there is a difference; one that the t test has not shown needs none. */
    boolean borneOut(MetricComparison c) {
        return c.verdict().verdict() != Verdict.DIFFERENT
                || c.exact().pValue() <= 1.0 - subject.result().level();
    }

    Section differs() {
        List<Sentence> sentences = new ArrayList<>();
        for (MetricComparison c : subject.with(Verdict.DIFFERENT)) {
            Wording w = differences.full(subject.words(), c, Subject.place(c.metric()));
            if (c.primary()) {
                w.say(", ").p(Subject.place(c.metric()) + "/difference/p");
            }
            if (!borneOut(c)) {
                w.say("; the exact test does not bear it out");
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
                            + " different only after allowing for their number.")
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
        if (!open.isEmpty()) {
            sentences.add(new PlanWords(subject).meaning());
        }
        for (MetricComparison c : open) {
            Wording w = undecided(subject.words(), c, Subject.place(c.metric()));
            new PlanWords(subject).more(w.say(". "), c);
            sentences.add(w.say(".").sentence());
        }
        if (open.isEmpty()) {
            sentences.add(subject.words()
                    .say("there is nothing of what was compared that can't be told.")
                    .sentence());
        }
        return Section.of("undecided", "What can't be told yet", sentences);
    }

    /** What is known of a metric that is undecided, without a full stop. */
    Wording undecided(Wording w, MetricComparison c, String place) {
        found(w, c, place);
        if (c.equivalence().map(TostTest.Result::equivalent).orElse(false)) {
            margin(w.say(", and within the margin of "), c, place)
                    .say(" if taken alone, but not after allowing for how many metrics were looked at");
        }
        return w;
    }

    private Wording found(Wording w, MetricComparison c, String place) {
        Estimate e = c.difference().estimate();
        if (DifferenceWords.leavesOut(e.interval(), 0.0)) {
            Estimate shown = e.convertTo(subject.unit(c.metric()));
            w.say(Subject.label(c.metric()) + ": taken alone a difference is shown, ")
                    .quote(subject.first())
                    .say(" minus ")
                    .quote(subject.second())
                    .say(" is ");
            return DifferenceWords.value(w, shown, place + "/difference")
                    .say(", but not after allowing for how many metrics were looked at");
        }
        return differences.brief(w.say(Subject.label(c.metric())).say(": no difference shown, "), c, place);
    }
}
