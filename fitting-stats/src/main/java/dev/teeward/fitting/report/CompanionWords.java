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
                clear(a, "/associations/" + i, sentences);
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

    private void clear(Association a, String place, List<Sentence> sentences) {
        Unit out = subject.unit(a.outcome());
        Unit along = subject.unit(a.candidate());
        String candidate = Subject.label(a.candidate());
        String slope = place + "/slope";
        double size = Math.abs(read(slope + "/value"));
        int d = NumberText.decimals(size < 0.1 ? 3 : 1, 0.0, size, read(slope + "/lower"), read(slope + "/upper"));
        Wording goes = subject.words()
                .say(a.outcome().label() + " goes with " + candidate + ": from shot to shot with the same club, "
                        + (along.symbol().isEmpty() ? "one" : "each " + along.symbol()) + " more of " + candidate
                        + " goes with ")
                .number(slope + "/value", d)
                .say(" " + out.symbol() + " of " + a.outcome().label());
        if (a.slope().estimate().interval().bounded()) {
            goes.say(" (")
                    .percent("/level_percent")
                    .say(" interval ")
                    .number(slope + "/lower", d)
                    .say(" to ")
                    .number(slope + "/upper", d)
                    .say(" " + out.symbol() + ")");
        }
        sentences.add(goes.say(".").sentence());
        Wording w = subject.words()
                .quote(subject.first())
                .say(" minus ")
                .quote(subject.second())
                .say(" is ")
                .number(place + "/candidate_difference/value", NumberText.decimals(along))
                .say(DifferenceWords.symbol(along) + " in " + candidate + ", and with that usually goes ");
        DifferenceWords.value(w, a.part().convertTo(out), place + "/part");
        w.say(" of " + a.outcome().label() + "; found was ")
                .number(place + "/outcome_difference/value", NumberText.decimals(out))
                .say(" " + out.symbol());
        if (a.warnings().stream().anyMatch(x -> x.code().equals("computed-outcome"))) {
            w.say(", in part by construction, as the " + a.outcome().label() + " was computed from other readings");
        }
        sentences.add(w.say(".").sentence());
    }

    private double read(String place) {
        return subject.data().number(place).orElse(0.0);
    }
}
