package dev.teeward.fitting.report;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.compare.MetricComparison;
import dev.teeward.fitting.compare.ShotOrderKind;
import dev.teeward.fitting.compare.Verdict;
import dev.teeward.fitting.complete.UnevenAir;
import java.util.ArrayList;
import java.util.List;

/** The answer first. */
final class Answer {
    private final Subject subject;

    Answer(Subject subject) {
        this.subject = subject;
    }

    Section section() {
        List<Sentence> sentences = new ArrayList<>();
        primary(sentences);
        order(sentences);
        won(true, sentences);
        won(false, sentences);
        lists(sentences);
        if (subject.result().patterns().isPresent()) {
            PatternWords patterns = new PatternWords(subject);
            sentences.add(patterns.centres(""));
            sentences.add(patterns.tighter(""));
        }
        subject.result().withoutFlagged().ifPresent(other -> sentences.add(flagged()));
        if (allTheSame()) {
            sentences.add(open(subject.words()
                            .say(
                                    subject.result().primaryDeclared()
                                            ? "on everything that was declared to matter ("
                                                    + Subject.list(Subject.labels(declared())) + ") "
                                            : "in " + Subject.list(Subject.labels(declared())) + " ")
                            .quote(subject.first())
                            .say(" and ")
                            .quote(subject.second())
                            .say(" are practically the same, so price or feel may decide"))
                    .say(".")
                    .sentence());
        }
        return Section.of("in-short", "In short", sentences);
    }

    /** An answer that hangs on a shot that stands out says so at once. */
    private Sentence flagged() {
        List<String> changed = subject.result().changedVerdicts().stream()
                .map(change -> Subject.label(change.metric()))
                .toList();
        boolean one = subject.data().number("/screening/flagged").orElse(0.0) == 1.0;
        return subject.words()
                .count("/screening/flagged", "shot stands", "shots stand")
                .say(" out and " + (one ? "counts" : "count") + " all the same; without " + (one ? "it" : "them") + " "
                        + (changed.isEmpty()
                                ? "no verdict would change."
                                : "the verdict would be another in " + Subject.list(changed) + "."))
                .sentence();
    }

    private void primary(List<Sentence> sentences) {
        MetricComparison c = subject.result().primary();
        String place = Subject.place(c.metric());
        VerdictWords verdicts = new VerdictWords(subject);
        Wording first = subject.words()
                .say("what decides is " + Subject.label(c.metric())
                        + (subject.result().primaryDeclared() ? ", as declared" : " (no other was named)") + ", from ");
        shots(first, c, place)
                .say(verdicts.tooFew(c) || fewest(c) < PatternWords.FEW ? " only: " : ": ")
                .say(
                        switch (c.verdict().verdict()) {
                            case DIFFERENT ->
                                mixedAir(c)
                                        ? "they differ, but were not hit in the same air."
                                        : verdicts.borneOut(c)
                                                ? "the clubs differ."
                                                : "the clubs look different, but the exact test does not bear it out.";
                            case PRACTICALLY_THE_SAME ->
                                "in " + Subject.label(c.metric())
                                        + (mixedAir(c)
                                                ? " they came out practically the same, but were not hit in the same air."
                                                : " the clubs are practically the same.");
                            case UNDECIDED -> "can't tell yet.";
                        });
        sentences.add(first.sentence());
        if (verdicts.tooFew(c)) {
            sentences.add(subject.words()
                    .say(
                            "with so few shots even clubs that do not differ come out as clearly apart as they can, by luck alone, in ")
                    .percent(place + "/least_p_percent")
                    .say(" of sessions, so do not decide on these alone: hit more.")
                    .sentence());
        }
        Wording w = subject.words();
        switch (c.verdict().verdict()) {
            case DIFFERENT -> new DifferenceWords(subject).full(w, c, place).say(".");
            case PRACTICALLY_THE_SAME -> verdicts.same(w, c, place);
            case UNDECIDED -> {
                verdicts.undecided(w, c, place).say(". ");
                PlanWords plan = new PlanWords(subject);
                plan.condition(plan.more(w, c), c).say(".");
            }
        }
        sentences.add(w.sentence());
    }

    /** Whether what decides is moved by air, and the clubs met different airs. */
    private boolean mixedAir(MetricComparison c) {
        return UnevenAir.concerns(c.metric()) && subject.airsDiffer();
    }

    private static int fewest(MetricComparison c) {
        return c.paired() ? c.pairs() : Math.min(c.firstValues().length, c.secondValues().length);
    }

    private static Wording shots(Wording w, MetricComparison c, String place) {
        if (c.paired()) {
            return w.count(place + "/pairs", "pair", "pairs");
        }
        w.count(place + "/first/n");
        return c.firstValues().length == c.secondValues().length
                ? w.say(" shots with each club")
                : w.say(" and ").count(place + "/second/n").say(" shots");
    }

    private void order(List<Sentence> sentences) {
        if (subject.airsDiffer()) {
            sentences.add(subject.words()
                    .say(
                            "the clubs were not hit in the same air, so club and air can't be told apart in anything of the"
                                    + " flight: bring every shot into one air first.")
                    .sentence());
        }
        if (subject.result().order() == ShotOrderKind.BLOCKED) {
            sentences.add(subject.words()
                    .say("all shots of one club were hit before all of the other, so club and order can't be told"
                            + " apart: a difference may be one of warming up or tiring, and one may be hidden by it.")
                    .sentence());
        }
        if (subject.data().value("/duplicates/0") != null) {
            sentences.add(subject.words()
                    .say(
                            "some shots have the very readings of others, so rows may have been copied; see what to keep in"
                                    + " mind.")
                    .sentence());
        }
    }

    /** What a club has more of. */
    private void won(boolean first, List<Sentence> sentences) {
        DifferenceWords differences = new DifferenceWords(subject);
        List<MetricComparison> won = clearlyDifferent().stream()
                .filter(c -> differences.words(c).firstNamed() == first)
                .toList();
        if (won.isEmpty()) {
            return;
        }
        Wording w = subject.words()
                .say("with ")
                .quote(first ? subject.first() : subject.second())
                .say(" ");
        for (int i = 0; i < won.size(); i++) {
            w.say(i == 0 ? "" : i == won.size() - 1 ? " and " : ", ");
            differences.part(w, won.get(i), Subject.place(won.get(i).metric()));
        }
        w.say(" than with ").quote(first ? subject.second() : subject.first());
        sentences.add(w.say(".").sentence());
    }

    private List<MetricComparison> clearlyDifferent() {
        return subject.with(Verdict.DIFFERENT).stream()
                .filter(this::listed)
                .filter(c -> DifferenceWords.leavesOut(c.difference().estimate().interval(), 0.0))
                .toList();
    }

    /** Whether the lists name it: what decides has its own sentence, and so have the middles of the patterns. */
    private boolean listed(MetricComparison c) {
        boolean middles =
                subject.result().patterns().isPresent() && (c.metric() == Metric.CARRY || c.metric() == Metric.SIDE);
        return !c.primary() && !middles;
    }

    private void lists(List<Sentence> sentences) {
        list(Verdict.PRACTICALLY_THE_SAME, "practically the same: ", sentences);
        list(Verdict.UNDECIDED, "can't tell yet: ", sentences);
    }

    private void list(Verdict verdict, String words, List<Sentence> sentences) {
        List<MetricComparison> others =
                subject.with(verdict).stream().filter(this::listed).toList();
        if (!others.isEmpty()) {
            sentences.add(subject.words()
                    .say(words + Subject.list(Subject.labels(others)) + ".")
                    .sentence());
        }
    }

    private List<MetricComparison> declared() {
        return subject.result().metrics().stream()
                .filter(c -> c.primary() || c.marginDeclared())
                .toList();
    }

    /** What the advice to go by price or feel leaves open. */
    private Wording open(Wording w) {
        List<MetricComparison> undecided = subject.with(Verdict.UNDECIDED);
        long others = subject.result().metrics().stream()
                .filter(c -> c.inFamily() && !c.primary())
                .count();
        if (!undecided.isEmpty()) {
            w.say(", though ")
                    .say(2L * undecided.size() > others ? "most" : "some")
                    .say(" of what else was looked at can't be told yet");
            w.say(
                    undecided.stream().anyMatch(c -> SwingWords.SWING.contains(c.metric()))
                            ? ", the swings among it"
                            : "");
        }
        boolean measured = SwingWords.SWING.stream()
                .anyMatch(metric -> subject.result().find(metric).isPresent());
        return w.say(
                measured
                        ? ""
                        : undecided.isEmpty()
                                ? ", though the swings were not compared"
                                : ", and the swings were not compared");
    }

    /**
     * Whether price or feel may decide. In blocked order what is the same may be two differences that cancel; a few shots are
     * no ground for a purchase, however much alike; and of a declared metric that was not measured nobody knows.
     */
    private boolean allTheSame() {
        MetricComparison primary = subject.result().primary();
        return subject.result().order() != ShotOrderKind.BLOCKED
                && !subject.airsDiffer()
                && fewest(primary) >= PatternWords.FEW
                && !new VerdictWords(subject).tooFew(primary)
                && subject.result().warnings().stream().noneMatch(w -> w.code().equals("margin-not-used"))
                && subject.with(Verdict.DIFFERENT).isEmpty()
                && declared().stream().allMatch(c -> c.verdict().verdict() == Verdict.PRACTICALLY_THE_SAME)
                && subject.result().patterns().flatMap(p -> p.tighter()).isEmpty();
    }
}
