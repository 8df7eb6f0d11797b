package dev.teeward.fitting.report;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Rating;
import dev.teeward.fitting.compare.MetricComparison;
import dev.teeward.fitting.compare.Verdict;
import dev.teeward.fitting.summary.StrikePattern;
import dev.teeward.quantity.LengthUnit;
import java.util.ArrayList;
import java.util.List;

/** The golfer's part: were the swings the same, where was the ball struck, and how was it liked. */
final class SwingWords {
    static final List<Metric> SWING = List.of(Metric.CLUB_SPEED, Metric.ATTACK_ANGLE, Metric.CLUB_PATH);

    private final Subject subject;

    SwingWords(Subject subject) {
        this.subject = subject;
    }

    Section swings() {
        List<Sentence> sentences = new ArrayList<>();
        List<String> never = new ArrayList<>();
        List<String> seldom = new ArrayList<>();
        boolean same = true;
        for (Metric metric : SWING) {
            var found = subject.result().find(metric);
            if (found.isEmpty()) {
                (measured(metric) ? seldom : never).add(metric.label());
                continue;
            }
            same &= found.get().verdict().verdict() == Verdict.PRACTICALLY_THE_SAME;
            sentences.add(verdict(found.get()));
        }
        missing("not measured, so not known: ", never, sentences);
        missing("not measured often enough with both clubs, so not known: ", seldom, sentences);
        if (never.isEmpty() && seldom.isEmpty() && same) {
            sentences.add(
                    0,
                    subject.words()
                            .say("in speed, attack angle and path the swings were practically the same.")
                            .sentence());
        }
        return Section.of("swings", "Were the swings the same", sentences);
    }

    private void missing(String words, List<String> labels, List<Sentence> sentences) {
        if (!labels.isEmpty()) {
            sentences.add(
                    subject.words().say(words + Subject.list(labels) + ".").sentence());
        }
    }

    private boolean measured(Metric metric) {
        return subject.result().first().used().with(metric).size()
                        + subject.result().second().used().with(metric).size()
                > 0;
    }

    private Sentence verdict(MetricComparison c) {
        String place = Subject.place(c.metric());
        VerdictWords verdicts = new VerdictWords(subject);
        return switch (c.verdict().verdict()) {
            case DIFFERENT ->
                new DifferenceWords(subject)
                        .full(subject.words().say("different in "), c, place)
                        .say(".")
                        .sentence();
            case PRACTICALLY_THE_SAME ->
                verdicts.same(subject.words().say("practically the same in "), c, place)
                        .sentence();
            case UNDECIDED ->
                verdicts.undecided(subject.words().say("can't tell yet in "), c, place)
                        .say(".")
                        .sentence();
        };
    }

    /** Where on the face the balls were struck; no sentence if that was not measured. */
    List<Sentence> strikes() {
        List<Sentence> sentences = new ArrayList<>();
        subject.result().first().strike().ifPresent(s -> sentences.add(strike(subject.first(), s, "/strike/first")));
        subject.result().second().strike().ifPresent(s -> sentences.add(strike(subject.second(), s, "/strike/second")));
        return sentences;
    }

    private Sentence strike(String name, StrikePattern.Result s, String place) {
        Wording w = subject.words().quote(name).say(": seen from the middle of the face the strikes lie, on average, ");
        var toe = s.centerToe().convertTo(LengthUnit.MILLIMETER);
        var up = s.centerUp().convertTo(LengthUnit.MILLIMETER);
        if (DifferenceWords.leavesOut(toe.interval(), 0.0)) {
            boolean out = toe.interval().lower() > 0.0;
            DifferenceWords.directed(w, toe, place + "/center_toe", out ? "towards the toe" : "towards the heel");
        } else {
            DifferenceWords.value(w.say("with no offset along the face shown, "), toe, place + "/center_toe");
        }
        if (DifferenceWords.leavesOut(up.interval(), 0.0)) {
            boolean high = up.interval().lower() > 0.0;
            DifferenceWords.directed(w.say(" and "), up, place + "/center_up", high ? "above it" : "below it");
        } else {
            DifferenceWords.value(w.say(" and with no offset up or down shown, "), up, place + "/center_up");
        }
        return w.say(".").sentence();
    }

    /** What the golfer said; no sentence if nothing. */
    Section ratings() {
        List<Sentence> sentences = new ArrayList<>();
        for (Rating rating : Rating.values()) {
            String word = Branch.word(rating);
            boolean one = subject.result().first().rating(rating).isPresent();
            boolean two = subject.result().second().rating(rating).isPresent();
            if (!one && !two) {
                continue;
            }
            Wording w = subject.words().say(word + ", on average: ");
            rating(w, one, subject.first(), "/clubs/first/ratings/" + word);
            rating(w.say(", "), two, subject.second(), "/clubs/second/ratings/" + word);
            sentences.add(w.say(".").sentence());
        }
        if (!sentences.isEmpty()) {
            sentences.add(subject.words()
                    .say("the golfer rated shots from one, poor, to five, excellent; the averages are shown and not"
                            + " judged.")
                    .sentence());
        }
        return Section.of("ratings", "How the clubs were liked", sentences);
    }

    private static void rating(Wording w, boolean rated, String name, String place) {
        if (!rated) {
            w.say("none with ").quote(name);
            return;
        }
        w.number(place + "/mean/value", 1)
                .say(" with ")
                .quote(name)
                .say(" (")
                .count(place + "/n", "shot", "shots")
                .say(")");
    }
}
