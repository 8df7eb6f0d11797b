package dev.teeward.fitting.report;

import dev.teeward.fitting.compare.MetricComparison;
import java.util.Optional;

/** How much more it takes to settle a metric, in words. */
final class PlanWords {
    private final Subject subject;

    PlanWords(Subject subject) {
        this.subject = subject;
    }

    /** A clause without a full stop. */
    Wording more(Wording w, MetricComparison c) {
        Optional<Plan> plan = Plan.of(c, subject.result().level());
        if (plan.isEmpty()) {
            return w.say(
                    c.margin().isEmpty()
                            ? "without a margin no number of shots settles it"
                            : "the shots show no spread to plan from");
        }
        String one = plan.get().paired() ? "more pair" : "more shot with each club";
        String many = plan.get().paired() ? "more pairs" : "more shots with each club";
        String place = "/plan/metrics/" + c.metric().key() + "/more";
        if (plan.get().central().isEmpty()) {
            return w.say("shots scatter so much against the margin that it would take " + many + " than anybody hits");
        }
        int central = plan.get().central().getAsInt() - plan.get().now();
        if (central <= 0) {
            return w.say("as many shots as there are would often have been enough, and a difference close to the margin"
                    + " takes " + many + " than can be planned");
        }
        w.say("about ").count(place + "/central", one, many).say(" would settle it");
        int low = Math.max(0, plan.get().low().orElse(0) - plan.get().now());
        if (plan.get().high().isEmpty()) {
            return w.say(", or far more, as the spread is hardly known yet");
        }
        int high = plan.get().high().getAsInt() - plan.get().now();
        if (low == central && high == central) {
            return w;
        }
        return w.say(", or ")
                .count(place + "/low")
                .say(" to ")
                .count(place + "/high")
                .say(", as the spread is known from these shots only");
    }
}
