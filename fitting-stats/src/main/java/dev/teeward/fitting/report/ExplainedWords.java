package dev.teeward.fitting.report;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.compare.MetricComparison;
import dev.teeward.fitting.compare.Verdict;
import dev.teeward.fitting.explain.Agreement;
import dev.teeward.fitting.explain.Balance;
import dev.teeward.fitting.explain.ClubOrSwing;
import dev.teeward.fitting.explain.Explanation;
import dev.teeward.fitting.explain.InputShare;
import dev.teeward.fitting.explain.OutcomeShares;
import dev.teeward.fitting.explain.SwingSide;
import dev.teeward.fitting.explain.TotalAndDirect;
import dev.teeward.fitting.linear.Coefficient;
import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.Unit;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Club or swing. Never more than "goes with"; which parts are named is for {@link NamedParts} to say, and the same is said only
 * if the equivalence test says so.
 */
final class ExplainedWords {
    private static final String PLACE = "/explanation";

    private final Subject subject;
    private final Explanation why;
    private final NamedParts parts;

    ExplainedWords(Subject subject, Explanation why) {
        this.subject = subject;
        this.why = why;
        this.parts = new NamedParts(subject.result());
    }

    /** What is explained in words and in the picture: what decides, curve and carry. */
    static Set<Metric> outcomes(Metric primary) {
        Set<Metric> all = new LinkedHashSet<>(List.of(primary));
        all.addAll(List.of(Metric.CURVE, Metric.CARRY));
        return all;
    }

    Section section() {
        List<Sentence> sentences = new ArrayList<>();
        for (Metric outcome : outcomes(subject.result().primary().metric())) {
            answer(outcome, sentences);
        }
        if (!sentences.isEmpty()) {
            sentences.add(subject.words()
                    .say(
                            "what goes with face, loft, lie and strike is how club and golfer meet, and is not counted to the"
                                    + " swing; shots do not tell whether the club or the golfer set them.")
                    .sentence());
        }
        side(SwingSide.GOLFER, "what the golfer brings", sentences);
        side(SwingSide.MEETING, "how club and golfer meet", sentences);
        amongFew(sentences);
        boolean adjusted = false;
        boolean flown = false;
        for (Metric outcome : outcomes(subject.result().primary().metric())) {
            adjusted |= equal(outcome, sentences);
            flown |= flights(outcome, sentences);
            agreement(outcome, sentences);
        }
        if (adjusted) {
            caution(sentences);
        }
        if (flown) {
            sentences.add(subject.words()
                    .say(
                            "these flights are those of the mean launch with each club, in which one reading after the other"
                                    + " is exchanged; what no exchange gives is called unexplained.")
                    .sentence());
        }
        if (adjusted || flown) {
            sentences.add(subject.words()
                    .say(
                            "each of these intervals holds by itself; a part is named only if the outcome is different, and"
                                    + " among all readings asked with it the reading is different and the part not zero.")
                    .sentence());
        }
        sentences.add(subject.words()
                .say("the golfer may move with the club as well as without it, so none of this tells who changed the"
                        + " swing.")
                .sentence());
        return Section.of("explained", "Club or swing", sentences);
    }

    /** Both verdicts of one outcome and their answer; each outcome is a question with a budget of its own. */
    private void answer(Metric outcome, List<Sentence> sentences) {
        Optional<ClubOrSwing> found = ClubOrSwing.of(subject.result(), why, outcome);
        if (found.isEmpty()) {
            return;
        }
        ClubOrSwing a = found.get();
        TotalAndDirect.Result equal = why.atEqualSwing(outcome).orElseThrow();
        String inputs = labels(equal.covariates());
        String answer = switch (a.answer()) {
            case CLUB -> "club";
            case SWING -> "swing";
            case BOTH -> "both";
            case NEITHER -> "neither";
            case CAN_NOT_TELL -> "can't be told yet";
        };
        String swing = switch (a.swing()) {
            case DIFFERENT ->
                "the swings were different in "
                        + Subject.list(
                                a.swingDiffers().stream().map(Subject::label).toList());
            case PRACTICALLY_THE_SAME -> "the swings were practically the same in " + inputs;
            case UNDECIDED ->
                "whether the swings were the same can't be told "
                        + (sameTogether(equal.covariates()) ? "as surely as this answer needs" : "yet");
        };
        String label = Subject.label(outcome);
        String club = switch (a.club()) {
            case DIFFERENT -> label + " was different";
            case PRACTICALLY_THE_SAME -> label + " was practically the same";
            case UNDECIDED ->
                a.warnings().isEmpty()
                        ? "whether " + label + " was the same can't be told" + hidden(equal)
                        : "club and air can't be told apart in " + label
                                + ", as the clubs were not hit in the same air";
        };
        sentences.add(subject.words()
                .say("club or swing, in " + label + ", asked by itself: " + answer + "; " + swing + "; at equal "
                        + inputs + ", " + club + ".")
                .sentence());
    }

    /** Whether the golfer's side taken together, which spends twice as much, calls all of them the same. */
    private boolean sameTogether(List<Metric> covariates) {
        return why.balance()
                        .side(SwingSide.GOLFER)
                        .filter(v -> v == Verdict.PRACTICALLY_THE_SAME)
                        .isPresent()
                && covariates.stream()
                        .allMatch(metric -> why.balance()
                                .find(metric)
                                .filter(i -> i.verdict().verdict() == Verdict.PRACTICALLY_THE_SAME)
                                .isPresent());
    }

    private static String labels(List<Metric> metrics) {
        return Subject.list(metrics.stream().map(Subject::label).toList());
    }

    /** Why a verdict is withheld that the interval beside it might suggest. */
    private static String hidden(TotalAndDirect.Result equal) {
        List<Metric> read = equal.readWithError();
        return read.isEmpty() || equal.corrected().isPresent()
                ? " yet"
                : ", as beside the stated errors of " + labels(read) + " the readings vary too little";
    }

    /** Were the swings the same on one side, taken together. */
    private void side(SwingSide side, String what, List<Sentence> sentences) {
        Optional<Verdict> verdict = why.balance().side(side);
        if (verdict.isEmpty()) {
            return;
        }
        List<Balance.Input> inputs =
                why.balance().inputs().stream().filter(i -> i.side() == side).toList();
        switch (verdict.get()) {
            case PRACTICALLY_THE_SAME -> {
                Wording w = subject.words().say(what + ", taken together, was practically the same: ");
                for (int i = 0; i < inputs.size(); i++) {
                    w.say(i == 0 ? "" : i == inputs.size() - 1 ? " and " : ", ");
                    within(w.say(Subject.label(inputs.get(i).metric()) + " within "), inputs.get(i));
                }
                sentences.add(w.say(".").sentence());
            }
            case DIFFERENT ->
                sentences.add(subject.words()
                        .say(what + ", taken together, was different: in "
                                + Subject.list(labels(inputs, Verdict.DIFFERENT)) + ".")
                        .sentence());
            case UNDECIDED -> {
                List<String> open = labels(inputs, Verdict.UNDECIDED);
                sentences.add(subject.words()
                        .say("whether " + what + ", taken together, was the same can't be told yet"
                                + (open.isEmpty() ? "" : ", for want of " + Subject.list(open)) + ".")
                        .sentence());
            }
        }
    }

    /** The lists of the whole report ask more at once, and may say less for it. */
    private void amongFew(List<Sentence> sentences) {
        List<String> settled = why.balance().inputs().stream()
                .filter(i -> i.verdict().verdict() != Verdict.UNDECIDED)
                .filter(i -> subject.result()
                        .find(i.metric())
                        .filter(c -> c.verdict().verdict() == Verdict.UNDECIDED)
                        .isPresent())
                .map(i -> Subject.label(i.metric()))
                .toList();
        if (!settled.isEmpty()) {
            sentences.add(subject.words()
                    .say("settled only when asked among these few, and not among everything that was looked at: "
                            + Subject.list(settled) + ".")
                    .sentence());
        }
    }

    private static List<String> labels(List<Balance.Input> inputs, Verdict verdict) {
        return inputs.stream()
                .filter(i -> i.verdict().verdict() == verdict)
                .map(i -> Subject.label(i.metric()))
                .toList();
    }

    private Wording within(Wording w, Balance.Input input) {
        Unit unit = subject.unit(input.metric());
        String place = PLACE + "/balance/inputs/" + why.balance().inputs().indexOf(input) + "/within/value";
        // One digit more than usual: "within" must not be stronger for its rounding.
        return w.number(place, NumberText.decimals(unit) + (unit.symbol().equals("rpm") ? 0 : 1))
                .say(DifferenceWords.symbol(unit));
    }

    /** The difference at equal delivery, and in trade words what goes with it. */
    private boolean equal(Metric outcome, List<Sentence> sentences) {
        Optional<TotalAndDirect.Result> found = why.effect(outcome);
        if (found.isEmpty()) {
            return false;
        }
        TotalAndDirect.Result r = found.get();
        int index = why.effects().indexOf(r);
        String place = PLACE + "/effects/" + index;
        Set<Metric> named = parts.of(r);
        for (int k = 0; k < r.covariates().size(); k++) {
            if (named.contains(r.covariates().get(k))) {
                goesWith(r, k, place, sentences);
            }
        }
        atEqual(r, place, sentences);
        why.atEqualSwing(outcome)
                .filter(swing -> !swing.covariates().equals(r.covariates()))
                .ifPresent(swing -> atEqual(
                        swing, PLACE + "/golfer_side/" + why.golferSide().indexOf(swing), sentences));
        return true;
    }

    private void atEqual(TotalAndDirect.Result r, String place, List<Sentence> sentences) {
        Unit unit = subject.unit(r.outcome());
        Wording w = subject.words()
                .say("at equal "
                        + Subject.list(
                                r.covariates().stream().map(Subject::label).toList()) + " ")
                .quote(subject.first())
                .say(" minus ")
                .quote(subject.second())
                .say(" is ");
        DifferenceWords.value(w, r.direct().estimate().convertTo(unit), place + "/direct")
                .say(" in " + Subject.label(r.outcome()) + ", and as hit ");
        DifferenceWords.value(w, r.total().estimate().convertTo(unit), place + "/total");
        sentences.add(w.say(".").sentence());
        r.corrected().ifPresent(c -> corrected(c, r, place, sentences));
    }

    private void corrected(Coefficient direct, TotalAndDirect.Result r, String place, List<Sentence> sentences) {
        Wording w = subject.words()
                .say("corrected for the stated errors of reading "
                        + Subject.list(
                                r.readWithError().stream().map(Subject::label).toList()) + " ")
                .quote(subject.first())
                .say(" minus ")
                .quote(subject.second())
                .say(" is, at equal readings, ");
        DifferenceWords.value(w, direct.estimate().convertTo(subject.unit(r.outcome())), place + "/direct_corrected");
        sentences.add(w.say(" in " + Subject.label(r.outcome()) + ".").sentence());
    }

    private void goesWith(TotalAndDirect.Result r, int k, String place, List<Sentence> sentences) {
        Metric covariate = r.covariates().get(k);
        Coefficient part = r.explained().get(covariate);
        if (part != null && r.exclusions().isEmpty()) {
            goesWith(covariate, r.outcome(), part.estimate(), place + "/covariates/" + k + "/part", "", sentences);
        }
    }

    /** "The face was 0.9 deg more open to the path with Rowan than with Alder (...); with that goes 5 of the 7 yd ...". */
    private void goesWith(
            Metric input, Metric outcome, Estimate part, String place, String how, List<Sentence> sentences) {
        Optional<MetricComparison> cause = subject.result().find(input);
        Optional<MetricComparison> effect = subject.result().find(outcome);
        if (cause.isEmpty() || effect.isEmpty()) {
            return;
        }
        Estimate moved = cause.get().difference().estimate();
        Estimate total = effect.get().difference().estimate();
        double share = part.value() / total.value();
        // Of a larger part there is no "of the", and one the other way needs more words than it is worth.
        if (!shown(moved) || !shown(total) || !shown(part) || !(share > 0.0 && share <= 1.0)) {
            return;
        }
        Unit unit = subject.unit(outcome);
        Wording w = subject.words();
        new DifferenceWords(subject).full(w, cause.get(), Subject.place(input)).say("; with that goes" + how + " ");
        DifferenceWords.magnitude(w, part.convertTo(unit), place).say(" of the ");
        DifferenceWords.magnitude(w, total.convertTo(unit), Subject.place(outcome) + "/difference")
                .say(" in " + Subject.label(outcome));
        if (outcome == Metric.CURVE) {
            paths(w);
        }
        sentences.add(w.say(".").sentence());
    }

    private static boolean shown(Estimate e) {
        return e.interval().bounded() && DifferenceWords.leavesOut(e.interval(), 0.0);
    }

    /** That the paths were the same, if it is known. */
    private void paths(Wording w) {
        why.balance()
                .find(Metric.CLUB_PATH)
                .filter(i -> i.verdict().verdict() == Verdict.PRACTICALLY_THE_SAME
                        && i.within().isPresent())
                .ifPresent(i -> within(w.say("; the paths were practically the same, within "), i));
    }

    /** What the flights give to each input. */
    private boolean flights(Metric outcome, List<Sentence> sentences) {
        Optional<OutcomeShares> found = why.flights().flatMap(f -> f.of(outcome));
        if (found.isEmpty()) {
            return false;
        }
        OutcomeShares o = found.get();
        Set<Metric> named = parts.of(o);
        Unit unit = subject.unit(outcome);
        String place = PLACE + "/flights/outcomes/"
                + why.flights().orElseThrow().outcomes().indexOf(o);
        if (why.flights().orElseThrow().exclusions().isEmpty()) {
            for (int j = 0; j < o.shares().size(); j++) {
                InputShare s = o.shares().get(j);
                if (named.contains(s.input())) {
                    goesWith(
                            s.input(),
                            outcome,
                            s.share(),
                            place + "/shares/" + j + "/share",
                            ", by flights,",
                            sentences);
                }
            }
        }
        Wording w = subject.words()
                .say("by flights ")
                .quote(subject.first())
                .say(" minus ")
                .quote(subject.second());
        DifferenceWords.value(w.say(" is "), o.modelled().convertTo(unit), place + "/modelled")
                .say(" in " + Subject.label(outcome));
        List<String> rest = new ArrayList<>();
        int count = 0;
        for (int j = 0; j < o.shares().size(); j++) {
            InputShare s = o.shares().get(j);
            if (!named.contains(s.input())) {
                rest.add(Subject.label(s.input()));
                continue;
            }
            w.say((count == 0 ? "; with " : ", with ") + Subject.label(s.input()) + " goes ");
            DifferenceWords.value(w, s.share().convertTo(unit), place + "/shares/" + j + "/share");
            lie(w, s, place + "/shares/" + j, unit);
            count++;
        }
        sentences.add(w.say(".").sentence());
        if (!rest.isEmpty()) {
            sentences.add(subject.words()
                    .say("by flights nothing in " + Subject.label(outcome) + " is shown to go with "
                            + Subject.list(rest) + ".")
                    .sentence());
        }
        unexplained(o, place, unit, sentences);
        return true;
    }

    /** Inside the share of the face, never beside it. */
    private static void lie(Wording w, InputShare s, String place, Unit unit) {
        s.lie()
                .ifPresent(e ->
                        DifferenceWords.value(w.say(", of it with dynamic lie "), e.convertTo(unit), place + "/lie"));
    }

    private void unexplained(OutcomeShares o, String place, Unit unit, List<Sentence> sentences) {
        if (o.measured().isEmpty() || o.rest().isEmpty() || computed(o.outcome())) {
            return;
        }
        Wording w = subject.words().say("found in " + Subject.label(o.outcome()) + " was ");
        DifferenceWords.value(w, o.measured().get().convertTo(unit), place + "/measured")
                .say("; unexplained is ");
        DifferenceWords.value(w, o.rest().get().convertTo(unit), place + "/rest");
        sentences.add(w.say(".").sentence());
    }

    private boolean computed(Metric outcome) {
        return why.flights().orElseThrow().warnings().stream()
                .anyMatch(
                        x -> x.code().equals("computed-outcome") && x.message().startsWith(outcome.label() + " "));
    }

    private void agreement(Metric outcome, List<Sentence> sentences) {
        Optional<Agreement> found = why.agreement(outcome);
        if (found.isEmpty() || !found.get().warnings().isEmpty()) {
            return;
        }
        String inputs = Subject.list(
                found.get().inputs().stream().map(i -> Subject.label(i.input())).toList());
        String label = Subject.label(outcome);
        sentences.add(subject.words()
                .say(
                        switch (found.get().accord()) {
                            case AGREE -> "on what goes with " + inputs + " in " + label + " flights and shots agree.";
                            case DISAGREE ->
                                "on what goes with " + inputs + " in " + label
                                        + " flights and shots disagree, so rely on neither.";
                            case UNDECIDED ->
                                "whether flights and shots agree on what goes with " + inputs + " in " + label
                                        + " can't be told yet.";
                        })
                .sentence());
    }

    /** What adjusting cannot say. */
    private void caution(List<Sentence> sentences) {
        boolean few = why.effects().stream()
                .anyMatch(e -> e.warnings().stream().anyMatch(x -> x.code().equals("few-to-adjust")));
        boolean tied = why.effects().stream()
                .anyMatch(e -> e.warnings().stream().anyMatch(x -> x.code().equals("collinear")));
        sentences.add(subject.words()
                .say("the differences at equal readings take from few shots how much a reading matters"
                        + (few ? ", too few here for any but a large effect to be seen" : "")
                        + "; if the club itself moved the reading, that is taken away as well.")
                .sentence());
        if (tied) {
            sentences.add(subject.words()
                    .say("some of these readings go together so closely that credit cannot be split between them.")
                    .sentence());
        }
    }
}
