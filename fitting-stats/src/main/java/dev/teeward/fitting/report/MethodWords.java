package dev.teeward.fitting.report;

import dev.teeward.fitting.compare.MetricComparison;
import dev.teeward.fitting.compare.OriginCounts;
import dev.teeward.quantity.Interval;
import dev.teeward.quantity.Unit;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.function.ToIntFunction;

/** How it was computed, and what to know about it. */
final class MethodWords {
    /** What other sections say in their own words. */
    private static final Set<String> SAID = Set.of(
            "builds-differ",
            "broken-pairs",
            "shots-without-pair",
            "too-few-pairs",
            "no-pairs",
            "clubs-in-blocks",
            "primary-not-declared",
            "margin-not-declared",
            "elevation-assumed",
            "pressure-assumed",
            "temperature-assumed",
            "humidity-assumed",
            "wind-assumed");

    private static final int MOST_DUPLICATES = 3;

    private final Subject subject;

    MethodWords(Subject subject) {
        this.subject = subject;
    }

    Section methods() {
        List<Sentence> sentences = new ArrayList<>();
        MetricComparison primary = subject.result().primary();
        sentences.add(subject.words()
                .say("differences are always ")
                .quote(subject.first())
                .say(" minus ")
                .quote(subject.second())
                .say(", right of the target, up and towards the toe positive; that of "
                        + Subject.label(primary.metric()) + " is judged by the ")
                .quote(primary.difference().method())
                .say(", beside the ")
                .quote(primary.exact().method())
                .say(".")
                .sentence());
        sentences.add(subject.words()
                .say("unless another level is given, intervals hold the true value in ")
                .percent("/level_percent")
                .say(" of sessions, if shots scatter as normal ones do.")
                .sentence());
        origins("measured with at least one shot: ", OriginCounts::measured, sentences);
        origins("derived from other readings by definition: ", OriginCounts::derived, sentences);
        origins("filled in from the flight model where not measured: ", OriginCounts::computed, sentences);
        sentences.add(subject.words()
                .say("different or practically the same is said of a metric other than the one that decides only after"
                        + " allowing for how many were asked (Holm's method; for practically the same the declared margins among themselves and the others among "
                        + "themselves).")
                .sentence());
        margins(true, "margins declared: ", sentences);
        margins(false, "margins not declared, so those of common practice, for which there is no source: ", sentences);
        subject.result()
                .patterns()
                .ifPresent(p -> sentences.add(subject.words()
                        .say("landing patterns: ")
                        .quote(p.first().method())
                        .say("; compared by the ")
                        .quote(p.ratio().method())
                        .say(".")
                        .sentence()));
        drift(primary, sentences);
        sentences.addAll(new FlagWords(subject).reasons());
        return Section.of("method", "How it was computed", sentences);
    }

    private void origins(String words, ToIntFunction<OriginCounts> count, List<Sentence> sentences) {
        List<MetricComparison> of = subject.result().metrics().stream()
                .filter(c -> count.applyAsInt(c.firstOrigins()) + count.applyAsInt(c.secondOrigins()) > 0)
                .toList();
        if (!of.isEmpty()) {
            sentences.add(subject.words()
                    .say(words + Subject.list(Subject.labels(of)) + ".")
                    .sentence());
        }
    }

    private void margins(boolean declared, String words, List<Sentence> sentences) {
        Wording w = subject.words().say(words);
        boolean any = false;
        for (MetricComparison c : subject.result().metrics()) {
            if (c.margin().isEmpty() || c.equivalence().isEmpty() || c.marginDeclared() != declared) {
                continue;
            }
            Unit unit = subject.unit(c.metric());
            int d = NumberText.decimals(
                    NumberText.decimals(unit), 0.0, unit.fromSi(c.margin().getAsDouble()));
            w.say((any ? ", " : "") + Subject.label(c.metric()) + " ")
                    .number(Subject.place(c.metric()) + "/equivalence/margin", d)
                    .say(DifferenceWords.symbol(unit));
            any = true;
        }
        if (any) {
            sentences.add(w.say(".").sentence());
        }
    }

    private void drift(MetricComparison primary, List<Sentence> sentences) {
        String place = Subject.place(primary.metric()) + "/drift";
        Interval interval = primary.drift().estimate().interval();
        Unit unit = subject.unit(primary.metric());
        if (!interval.bounded()) {
            return;
        }
        boolean shown = DifferenceWords.leavesOut(interval, 0.0);
        int least = NumberText.decimals(unit) + 1;
        int d = shown
                ? NumberText.decimals(
                        least,
                        0.0,
                        unit.fromSi(primary.drift().estimate().value()),
                        unit.fromSi(interval.lower()),
                        unit.fromSi(interval.upper()))
                : least;
        sentences.add(subject.words()
                .say(Subject.label(primary.metric())
                        + (shown ? " drifted over the session, by " : ": no drift over the session shown, "))
                .number(place + "/value", d)
                .say(DifferenceWords.symbol(unit) + " per ten shots (")
                .percent("/level_percent")
                .say(" interval ")
                .number(place + "/lower", d)
                .say(" to ")
                .number(place + "/upper", d)
                .say(DifferenceWords.symbol(unit) + ").")
                .sentence());
    }

    /** What to know; without what other sections say. */
    Section warnings() {
        List<Warning> all = new ArrayList<>(subject.result().warnings());
        HiddenText.warning(subject.result().session()).ifPresent(all::add);
        all.addAll(subject.result().primary().warnings());
        all.addAll(subject.result().primary().difference().warnings());
        subject.result().patterns().ifPresent(p -> {
            all.addAll(p.ratio().warnings());
            all.addAll(p.first().warnings());
            all.addAll(p.second().warnings());
        });
        List<String> messages = new ArrayList<>();
        for (Warning warning : all) {
            if (!SAID.contains(warning.code())) {
                messages.add(warning.message());
            }
        }
        messages.addAll(texts("/session/air/warnings"));
        messages.addAll(screening());
        List<Sentence> sentences = new ArrayList<>();
        duplicates(sentences);
        messages.stream()
                .distinct()
                .map(message -> subject.words().quote(capital(message)).say(".").sentence())
                .forEach(sentences::add);
        return Section.of("warnings", "What to keep in mind", sentences);
    }

    private void duplicates(List<Sentence> sentences) {
        for (int i = 0; subject.data().value("/duplicates/" + i) != null; i++) {
            if (i == MOST_DUPLICATES) {
                sentences.add(subject.words().say("there are more such shots.").sentence());
                return;
            }
            sentences.add(subject.words()
                    .say("shot ")
                    .count("/duplicates/" + i + "/shot")
                    .say(" has all the readings of shot ")
                    .count("/duplicates/" + i + "/like")
                    .say("; if the row was copied, exclude it.")
                    .sentence());
        }
    }

    /** The checks that too few shots made impossible are told in one sentence; the data has them one by one. */
    private List<String> screening() {
        List<String> others = new ArrayList<>();
        boolean few = false;
        for (int i = 0; subject.data().value("/screening/warnings/" + i + "/message") instanceof String message; i++) {
            if ("too-few-shots".equals(subject.data().value("/screening/warnings/" + i + "/code"))) {
                few = true;
            } else {
                others.add(message);
            }
        }
        if (few) {
            others.add("some checks for mishits and misreads need more shots than there are, so one may have gone"
                    + " unnoticed");
        }
        return others;
    }

    private List<String> texts(String pointer) {
        List<String> texts = new ArrayList<>();
        for (int i = 0; subject.data().value(pointer + "/" + i + "/message") instanceof String message; i++) {
            if (!SAID.contains(String.valueOf(subject.data().value(pointer + "/" + i + "/code")))) {
                texts.add(message);
            }
        }
        return texts;
    }

    private static String capital(String message) {
        String plain = message.endsWith(".") ? message.substring(0, message.length() - 1) : message;
        return plain.substring(0, 1).toUpperCase(Locale.ROOT) + plain.substring(1);
    }
}
