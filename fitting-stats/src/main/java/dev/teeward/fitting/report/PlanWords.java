package dev.teeward.fitting.report;

import dev.teeward.fitting.compare.MetricComparison;
import java.util.OptionalDouble;

/** How much more it takes to settle a metric, in words. */
final class PlanWords {
    private final Subject subject;

    PlanWords(Subject subject) {
        this.subject = subject;
    }

    /** A clause without a full stop. */
    Wording more(Wording w, MetricComparison c) {
        String plan = "/plan/metrics/" + c.metric().key();
        if (subject.data().value(plan) == null) {
            return w.say(
                    c.margin().isEmpty()
                            ? "without a margin no number of shots settles it"
                            : "the shots show no spread to plan from");
        }
        boolean paired = Boolean.TRUE.equals(subject.data().value(plan + "/paired"));
        String one = paired ? "more pair" : "more shot with each club";
        String many = paired ? "more pairs" : "more shots with each club";
        String place = plan + "/more";
        OptionalDouble central = subject.data().number(place + "/central");
        OptionalDouble high = subject.data().number(place + "/high");
        double low = subject.data().number(place + "/low").orElse(0.0);
        if (central.isEmpty()) {
            return w.say("shots scatter so much against the margin that it would take " + many + " than anybody hits");
        }
        if (central.getAsDouble() == 0.0) {
            return w.say("as many shots as there are would often have been enough, and a difference close to the margin"
                    + " takes " + many + " than can be planned");
        }
        w.say("about ").count(place + "/central", one, many).say(" would settle it");
        if (high.isEmpty()) {
            return w.say(", or far more, as the spread is hardly known yet");
        }
        if (low == high.getAsDouble()) {
            return w;
        }
        return w.say(", or ")
                .count(place + "/low")
                .say(" to ")
                .count(place + "/high")
                .say(", as the spread is known from these shots only");
    }
}
