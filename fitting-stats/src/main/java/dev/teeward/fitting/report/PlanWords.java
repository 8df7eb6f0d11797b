package dev.teeward.fitting.report;

import dev.teeward.fitting.compare.MetricComparison;
import java.util.OptionalDouble;

/** How much more it takes to settle a metric, in words. */
final class PlanWords {
    /** Beyond that a session would take hours and tire the golfer; common practice, no source. */
    private static final double MOST_IN_ONE_SESSION = 40.0;

    private final Subject subject;

    PlanWords(Subject subject) {
        this.subject = subject;
    }

    /** What the numbers of the sentences below mean. */
    Sentence meaning() {
        boolean both = Boolean.TRUE.equals(subject.data().value("/plan/counts_equivalence"));
        return subject.words()
                .say("the numbers of pairs or shots that follow settle a question in ")
                .percent("/plan/power_percent")
                .say(" of sessions, if it is the only question and the clubs differ by the margin"
                        + (both ? " or not at all" : "")
                        + "; the ranges are wide, as the scatter is known from these shots only.")
                .sentence();
    }

    /** A sentence of its own, without a full stop. */
    Wording more(Wording w, MetricComparison c) {
        String plan = "/plan/metrics/" + c.metric().key();
        if (subject.data().value(plan) == null) {
            return w.say(
                    c.margin().isEmpty()
                            ? "Without a margin no number of shots settles it"
                            : "The shots show no spread to plan from");
        }
        boolean paired = Boolean.TRUE.equals(subject.data().value(plan + "/paired"));
        String pairs = paired ? "pairs" : "shots with each club";
        OptionalDouble central = subject.data().number(plan + "/more/central");
        if (central.isEmpty()) {
            return w.say("The shots scatter so much against the margin that no practical number of " + pairs
                    + " would settle it");
        }
        if (central.getAsDouble() == 0.0) {
            range(w.say("Usually about ").count(plan + "/needed/central").say(" " + pairs), plan + "/needed");
            return w.say(" settle it, but the ")
                    .count(plan + "/now")
                    .say(" at hand did not, so it is a near thing that another session may settle");
        }
        String more = paired ? "more pair" : "more shot with each club";
        String mores = paired ? "more pairs" : "more shots with each club";
        range(w.say("About ").count(plan + "/more/central", more, mores), plan + "/more");
        return w.say(
                central.getAsDouble() > MOST_IN_ONE_SESSION
                        ? " would be needed, which is not practical in one session"
                        : " would usually settle it");
    }

    private void range(Wording w, String place) {
        double low = subject.data().number(place + "/low").orElse(0.0);
        OptionalDouble high = subject.data().number(place + "/high");
        if (high.isEmpty()) {
            w.say(", or ").count(place + "/low").say(" to far more,");
        } else if (low < high.getAsDouble()) {
            w.say(" (").count(place + "/low").say(" to ").count(place + "/high").say(")");
        }
    }
}
