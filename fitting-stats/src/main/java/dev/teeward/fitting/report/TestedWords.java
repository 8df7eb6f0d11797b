package dev.teeward.fitting.report;

import dev.teeward.fitting.Club;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.compare.BrokenPair;
import dev.teeward.fitting.compare.BuildDifference;
import dev.teeward.fitting.compare.ClubShots;
import dev.teeward.fitting.compare.Exclusion;
import dev.teeward.fitting.compare.MetricComparison;
import dev.teeward.fitting.compare.ShotPairing;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** What was tested: shots, pairs, builds and air. */
final class TestedWords {
    private static final int MOST_LISTED = 10;

    private final Subject subject;

    TestedWords(Subject subject) {
        this.subject = subject;
    }

    Section section() {
        List<Sentence> sentences = new ArrayList<>();
        Wording used = subject.words()
                .quote(subject.first())
                .say(" against ")
                .quote(subject.second())
                .say(": ");
        boolean equal = subject.result().first().used().size()
                == subject.result().second().used().size();
        if (equal) {
            used.count("/clubs/first/used", "shot", "shots").say(" used with each.");
        } else {
            used.count("/clubs/first/used", "shot", "shots")
                    .say(" used with ")
                    .quote(subject.first())
                    .say(", ")
                    .count("/clubs/second/used")
                    .say(" with ")
                    .quote(subject.second())
                    .say(".");
        }
        sentences.add(used.sentence());
        for (String remark : subject.result().session().remarks()) {
            sentences.add(subject.words().say("remark: ").quote(remark).sentence());
        }
        unused(subject.result().first(), "/clubs/first", sentences);
        unused(subject.result().second(), "/clubs/second", sentences);
        order(sentences);
        pairs(sentences);
        builds(sentences);
        day(sentences);
        sentences.addAll(new AirWords(subject).sentences());
        return Section.of("tested", "What was tested", sentences);
    }

    private void unused(ClubShots club, String place, List<Sentence> sentences) {
        List<Exclusion> exclusions = club.exclusions();
        for (int i = 0; i < exclusions.size(); i++) {
            sentences.add(subject.words()
                    .say("not used with ")
                    .quote(club.name())
                    .say(": ")
                    .count(place + "/exclusions/" + i + "/count", "shot", "shots")
                    .say(" (")
                    .quote(exclusions.get(i).reason())
                    .say(").")
                    .sentence());
        }
    }

    private void order(List<Sentence> sentences) {
        String words = switch (subject.result().order()) {
            case ALTERNATED_ABBA ->
                "the clubs were hit in turn and the order was reversed from pair to pair, so that"
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
            w.count("/pairing/pairs", "complete pair of shots was", "complete pairs of shots were")
                    .say(
                            paired
                                    ? " found, and the clubs were compared pair by pair where there were enough."
                                    : " found, too few, so that all used shots were compared as two samples.");
        }
        sentences.add(w.sentence());
        broken(pairing, sentences);
        if (paired) {
            alone(sentences);
        }
    }

    private void broken(ShotPairing pairing, List<Sentence> sentences) {
        for (int i = 0; i < pairing.broken().size(); i++) {
            if (i == MOST_LISTED) {
                sentences.add(subject.words()
                        .say("in all ")
                        .count("/pairing/broken_count")
                        .say(" pairs are broken.")
                        .sentence());
                return;
            }
            BrokenPair broken = pairing.broken().get(i);
            sentences.add(subject.words()
                    .say("pair ")
                    .quote(broken.id())
                    .say(" is broken: ")
                    .quote(broken.reason())
                    .say(".")
                    .sentence());
        }
    }

    /** The shots that are in the means and not in the differences. */
    private void alone(List<Sentence> sentences) {
        if (!(subject.data().value("/pairing/without_partner") instanceof List<?> alone) || alone.isEmpty()) {
            return;
        }
        Wording w = subject.words()
                .say("without a partner for "
                        + Subject.label(subject.result().primary().metric()) + ": ")
                .say(alone.size() == 1 ? "shot " : "shots ");
        int shown = Math.min(alone.size(), MOST_LISTED);
        for (int i = 0; i < shown; i++) {
            w.say(i == 0 ? "" : i == alone.size() - 1 ? " and " : ", ").count("/pairing/without_partner/" + i);
        }
        w.say(alone.size() > shown ? " and others" : "")
                .say("; differences come from the pairs alone, so they can be other than those of the two means, which"
                        + " take in every used shot.");
        sentences.add(w.sentence());
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
        Optional<Club> one = subject.result().first().build();
        Optional<Club> two = subject.result().second().build();
        List<String> given = new ArrayList<>();
        List<String> open = new ArrayList<>();
        for (BuildDifference.Property property : BuildDifference.Property.values()) {
            boolean both = one.filter(club -> has(club, property)).isPresent()
                    && two.filter(club -> has(club, property)).isPresent();
            if (!both) {
                open.add(property.label());
            } else if (differences.stream().noneMatch(d -> d.property() == property)) {
                given.add(property.label());
            }
        }
        if (!given.isEmpty()) {
            sentences.add(subject.words()
                    .say("the builds are the same, within what measuring gives, in " + Subject.list(given) + ".")
                    .sentence());
        }
        if (!open.isEmpty()) {
            sentences.add(subject.words()
                    .say("not known of both clubs, so perhaps not the same: " + Subject.list(open) + ".")
                    .sentence());
        }
    }

    private static boolean has(Club club, BuildDifference.Property property) {
        return switch (property) {
            case LOFT -> club.loft().isPresent();
            case LIE -> club.lie().isPresent();
            case LENGTH -> club.length().isPresent();
            case HEAD_MASS -> club.headMass().isPresent();
            case SHAFT -> club.shaft().isPresent();
        };
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
