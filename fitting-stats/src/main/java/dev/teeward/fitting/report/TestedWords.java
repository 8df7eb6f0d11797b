package dev.teeward.fitting.report;

import dev.teeward.fitting.Session;
import dev.teeward.fitting.compare.BrokenPair;
import dev.teeward.fitting.compare.BuildDifference;
import dev.teeward.fitting.compare.ClubShots;
import dev.teeward.fitting.compare.MetricComparison;
import dev.teeward.fitting.compare.ShotPairing;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** What was tested: shots, pairs, builds and air. */
final class TestedWords {
    private final Subject subject;

    TestedWords(Subject subject) {
        this.subject = subject;
    }

    Section section() {
        List<Sentence> sentences = new ArrayList<>();
        sentences.add(subject.words()
                .quote(subject.first())
                .say(" against ")
                .quote(subject.second())
                .say(": ")
                .count("/clubs/first/used", "shot", "shots")
                .say(" used with the one, ")
                .count("/clubs/second/used")
                .say(" with the other.")
                .sentence());
        for (String remark : subject.result().session().remarks()) {
            sentences.add(subject.words().say("remark: ").quote(remark).sentence());
        }
        unused(subject.result().first(), "/clubs/first", sentences);
        unused(subject.result().second(), "/clubs/second", sentences);
        order(sentences);
        pairs(sentences);
        builds(sentences);
        day(sentences);
        sentences.add(subject.words()
                .say("the air: ")
                .quote(text("/session/air/description"))
                .say(".")
                .sentence());
        return Section.of("tested", "What was tested", sentences);
    }

    private String text(String pointer) {
        return String.valueOf(subject.data().value(pointer));
    }

    private void unused(ClubShots club, String place, List<Sentence> sentences) {
        for (int i = 0; i < club.exclusions().size(); i++) {
            sentences.add(subject.words()
                    .say("not used with ")
                    .quote(club.name())
                    .say(": ")
                    .count(place + "/exclusions/" + i + "/count", "shot", "shots")
                    .say(" (")
                    .quote(club.exclusions().get(i).reason())
                    .say(").")
                    .sentence());
        }
    }

    private void order(List<Sentence> sentences) {
        String words = switch (subject.result().order()) {
            case ALTERNATED_ABBA ->
                "the clubs were hit in turn and the order was reversed again and again, so that"
                        + " a steady drift cancels.";
            case ALTERNATED ->
                "the clubs were hit in turn, one of them mostly first, so that a little of a drift"
                        + " stays in the differences.";
            case MIXED -> "the clubs were hit neither in turn nor each in one go.";
            case BLOCKED ->
                "each club was hit in one go, so that warming up or tiring can't be told from the" + " club.";
        };
        sentences.add(subject.words().say(words).sentence());
    }

    private void pairs(List<Sentence> sentences) {
        ShotPairing pairing = subject.result().pairing();
        boolean paired = subject.result().metrics().stream().anyMatch(MetricComparison::paired);
        Wording w = subject.words();
        if (pairing.pairs().isEmpty()) {
            w.say("there are no complete pairs, so all used shots were compared as two samples.");
        } else {
            w.say("of the shots ")
                    .count("/pairing/pairs", "complete pair", "complete pairs")
                    .say(
                            paired
                                    ? " could be made, and where there were enough, pairs were compared."
                                    : " could be made, too few, so that all used shots were compared as two samples.");
        }
        sentences.add(w.sentence());
        for (BrokenPair broken : pairing.broken()) {
            sentences.add(subject.words()
                    .say("pair ")
                    .quote(broken.id())
                    .say(" is broken: ")
                    .quote(broken.reason())
                    .say(".")
                    .sentence());
        }
    }

    private void builds(List<Sentence> sentences) {
        List<BuildDifference> differences = subject.result().buildDifferences();
        for (BuildDifference d : differences) {
            sentences.add(subject.words()
                    .say("the builds differ in " + d.property().label() + ": ")
                    .quote(d.firstText())
                    .say(" against ")
                    .quote(d.secondText())
                    .say(", and what the shots show may go with that.")
                    .sentence());
        }
        boolean described = subject.result().first().build().isPresent()
                && subject.result().second().build().isPresent();
        if (differences.isEmpty()) {
            sentences.add(subject.words()
                    .say(
                            described
                                    ? "as far as both are described, the two are built the same."
                                    : "how the clubs are built is not described for both, so whether they are built the"
                                            + " same is not known.")
                    .sentence());
        }
    }

    private void day(List<Sentence> sentences) {
        Session session = subject.result().session();
        Wording w = subject.words();
        w.say(session.hand()
                .map(h -> "the golfer is " + h.name().toLowerCase(Locale.ROOT) + "-handed")
                .orElse("the golfer's hand is not stated, so that draw and fade are not named"));
        session.place().ifPresent(place -> w.say("; place: ").quote(place));
        session.date().ifPresent(date -> w.say("; date: ").quote(date.toString()));
        session.ball().ifPresent(ball -> w.say("; ball: ").quote(ball));
        sentences.add(w.say(".").sentence());
    }
}
