package dev.teeward.fitting.report;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.compare.Association;
import dev.teeward.quantity.Unit;
import java.util.ArrayList;
import java.util.List;

/** What goes with the differences in start and curve. Never more than "goes with". */
final class CompanionWords {
    private final Subject subject;

    CompanionWords(Subject subject) {
        this.subject = subject;
    }

    Section section() {
        List<Sentence> sentences = new ArrayList<>();
        about(Metric.START_DIRECTION, sentences);
        about(Metric.CURVE, sentences);
        sentences.addAll(new SwingWords(subject).strikes());
        if (sentences.isEmpty()) {
            sentences.add(subject.words()
                    .say(
                            "for start direction and curve too little was measured beside them with both clubs, so nothing can be"
                                    + " said.")
                    .sentence());
        } else {
            sentences.add(subject.words()
                    .say("going with something is not coming from it: another thing may move both, and the parts"
                            + " overlap.")
                    .sentence());
        }
        return Section.of("companions", "What goes with start and curve", sentences);
    }

    private void about(Metric outcome, List<Sentence> sentences) {
        List<Association> all = subject.result().associations();
        List<String> unclear = new ArrayList<>();
        for (int i = 0; i < all.size(); i++) {
            Association a = all.get(i);
            if (a.outcome() != outcome) {
                continue;
            }
            if (a.clear()) {
                sentences.add(clear(a, "/associations/" + i));
            } else {
                unclear.add(Subject.label(a.candidate()));
            }
        }
        if (!unclear.isEmpty()) {
            sentences.add(subject.words()
                    .say("not shown to go with a difference in " + outcome.label() + ": " + Subject.list(unclear) + ".")
                    .sentence());
        }
    }

    private Sentence clear(Association a, String place) {
        Unit out = subject.unit(a.outcome());
        Unit along = subject.unit(a.candidate());
        String candidate = Subject.label(a.candidate());
        double slope = Math.abs(subject.data().number(place + "/slope/value").orElse(0.0));
        int d = NumberText.decimals(slope < 1.0 ? 3 : 1, 0.0, slope);
        Wording w = subject.words()
                .say(a.outcome().label() + " goes with " + candidate
                        + ": from shot to shot with the same club it changes by ")
                .number(place + "/slope/value", d)
                .say(" " + out.symbol() + " for each " + along.symbol() + " of " + candidate + ", ")
                .quote(subject.first())
                .say(" minus ")
                .quote(subject.second())
                .say(" is ")
                .number(place + "/candidate_difference/value", NumberText.decimals(along))
                .say(" " + along.symbol() + " in " + candidate + ", and with so much usually go ");
        DifferenceWords.value(w, a.part().convertTo(out), place + "/part");
        w.say(" of " + a.outcome().label() + ", where the difference found is ")
                .number(place + "/outcome_difference/value", NumberText.decimals(out))
                .say(" " + out.symbol());
        if (a.warnings().stream().anyMatch(x -> x.code().equals("computed-outcome"))) {
            w.say(", in part by construction, as the " + a.outcome().label() + " was computed from other readings");
        }
        return w.say(".").sentence();
    }
}
