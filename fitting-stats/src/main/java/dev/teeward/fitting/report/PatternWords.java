package dev.teeward.fitting.report;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.compare.ClubShots;
import dev.teeward.fitting.compare.HeadToHeadResult;
import dev.teeward.fitting.compare.MetricComparison;
import dev.teeward.fitting.compare.PatternComparison;
import dev.teeward.fitting.compare.Verdict;
import dev.teeward.fitting.summary.Ellipse;
import dev.teeward.fitting.summary.LandingPattern;
import dev.teeward.fitting.summary.ShotShape;
import dev.teeward.fitting.summary.ShotShapes;
import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;

/** Where the balls come down, and how they get there. */
final class PatternWords {
    /** Below that an outline for the next ball says little; as of the warning few-shots of a landing pattern. */
    static final int FEW = 6;

    private final Subject subject;
    private final HeadToHeadResult result;
    private final String root;
    private final Unit unit;

    PatternWords(Subject subject) {
        this(subject, subject.result(), "");
    }

    /** Of another result, whose numbers stand at another place. */
    PatternWords(Subject subject, HeadToHeadResult result, String root) {
        this.subject = subject;
        this.result = result;
        this.root = root;
        this.unit = subject.unit(Metric.CARRY);
    }

    Section section() {
        List<Sentence> sentences = new ArrayList<>();
        club(subject.result().first(), "/patterns/first", sentences);
        club(subject.result().second(), "/patterns/second", sentences);
        if (subject.result().patterns().isPresent()) {
            sentences.add(centres(""));
            sentences.add(tighter(""));
        } else {
            sentences.add(subject.words()
                    .say("two patterns to compare need three shots with carry and side of each club.")
                    .sentence());
        }
        return Section.of("patterns", "Where the balls came down", sentences);
    }

    /** How far the centres are from each other, as far as that is decided; begins with words of the caller. */
    Sentence centres(String opening) {
        List<MetricComparison> axes = Stream.of(Metric.SIDE, Metric.CARRY)
                .flatMap(metric -> result.find(metric).stream())
                .toList();
        DifferenceWords differences = new DifferenceWords(subject);
        Wording w = subject.words().say(opening + "the middles of the two patterns: ");
        for (int i = 0; i < axes.size(); i++) {
            MetricComparison c = axes.get(i);
            w.say(i == 0 ? "" : "; ").say(c.metric() == Metric.CARRY ? "in carry, " : "to the side, ");
            boolean clear = DifferenceWords.leavesOut(c.difference().estimate().interval(), 0.0);
            if (c.verdict().verdict() == Verdict.DIFFERENT && clear) {
                differences.compared(w, c, root + Subject.place(c.metric())).say(" than with ");
                w.quote(differences.words(c).firstNamed() ? subject.second() : subject.first());
            } else {
                w.say(FlagWords.words(c.verdict().verdict()));
            }
        }
        return w.say(".").sentence();
    }

    /** Which pattern is tighter; begins with words of the caller. */
    Sentence tighter(String opening) {
        PatternComparison p = result.patterns().orElseThrow();
        Estimate ratio = p.ratio().estimate();
        boolean clear = p.tighter().isPresent() && DifferenceWords.leavesOut(ratio.interval(), 1.0);
        double forbidden = clear ? 1.0 : 0.0;
        int d = NumberText.decimals(
                2,
                forbidden,
                ratio.value(),
                ratio.interval().lower(),
                ratio.interval().upper());
        d = NumberText.decimals(d, 0.0, ratio.value(), ratio.interval().lower());
        Wording w = subject.words().say(opening);
        if (clear) {
            w.quote(p.tighter().get()).say(" has the tighter landing pattern");
        } else {
            w.say("which landing pattern is the tighter can't be told yet");
        }
        w.say(Math.min(p.first().n(), p.second().n()) < FEW ? ", from few balls only" : "")
                .say(": the spread of ")
                .quote(subject.first())
                .say(" is ")
                .number(root + "/patterns/ratio/value", d)
                .say(" times that of ")
                .quote(subject.second());
        if (ratio.interval().bounded()) {
            w.say(" (")
                    .percent("/level_percent")
                    .say(" interval ")
                    .number(root + "/patterns/ratio/lower", d)
                    .say(" to ")
                    .number(root + "/patterns/ratio/upper", d)
                    .say(")");
        } else {
            w.say(" (no interval can be given)");
        }
        return w.say(".").sentence();
    }

    private void club(ClubShots club, String place, List<Sentence> sentences) {
        club.pattern().ifPresent(p -> landing(club.name(), p, place + "/landing", sentences));
        club.shapes().ifPresent(s -> shapes(club.name(), s, place + "/shapes", sentences));
    }

    private void landing(String name, LandingPattern.Result p, String place, List<Sentence> sentences) {
        Wording centre = subject.words().quote(name).say(": the balls land at ");
        DifferenceWords.value(centre, p.centerCarry().convertTo(unit), place + "/center/carry")
                .say(" on average, ");
        Estimate side = p.centerSide().convertTo(unit);
        offset(
                centre,
                side,
                place + "/center/side",
                "right of the target line",
                "left of the target line",
                "to the side");
        sentences.add(centre.say(".").sentence());
        if (p.biasCarry().isPresent()) {
            Wording bias = subject.words().quote(name).say(": against the target the centre lies ");
            Estimate carry = p.biasCarry().get().convertTo(unit);
            offset(bias, carry, place + "/bias/carry", "long", "short", "along the line");
            sentences.add(bias.say(".").sentence());
            radii(
                    name,
                    place,
                    "r50_target",
                    "r90_target",
                    "the target",
                    p.radiusAboutTarget(0.5).isPresent(),
                    sentences);
        }
        radii(name, place, "r50_center", "r90_center", "that centre", true, sentences);
        if (p.n() < FEW) {
            sentences.add(subject.words()
                    .quote(name)
                    .say(": ")
                    .count(place + "/n", "ball is", "balls are")
                    .say(" too few to say where the next one lands; an outline for it is very uncertain.")
                    .sentence());
            return;
        }
        Ellipse e = p.ellipse();
        sentences.add(subject.words()
                .quote(name)
                .say(": the next ball lands, with a chance of ")
                .percent(place + "/ellipse/level_percent")
                .say(", in an ellipse that reaches ")
                .number(place + "/ellipse/semi_major", 1)
                .say(" and ")
                .number(place + "/ellipse/semi_minor", 1)
                .say(" " + unit.symbol() + " from its middle, the length "
                        + (Math.abs(e.angle()) < Math.PI / 4.0 ? "mostly along" : "mostly across")
                        + " the target line.")
                .sentence());
    }

    private void offset(Wording w, Estimate e, String place, String above, String below, String neither) {
        if (DifferenceWords.leavesOut(e.interval(), 0.0)) {
            DifferenceWords.directed(w, e, place, e.interval().lower() > 0.0 ? above : below);
        } else {
            DifferenceWords.value(w.say("with no offset " + neither + " shown, "), e, place);
        }
    }

    private void radii(
            String name,
            String place,
            String half,
            String most,
            String about,
            boolean present,
            List<Sentence> sentences) {
        if (!present) {
            return;
        }
        Wording w = subject.words().quote(name).say(": half of the balls come down within ");
        radius(w, place + "/" + half);
        radius(w.say(" of " + about + ", nine in ten within "), place + "/" + most);
        sentences.add(w.say(".").sentence());
    }

    private void radius(Wording w, String place) {
        w.number(place + "/value", 1).say(" " + unit.symbol());
        if (subject.data().number(place + "/lower").isPresent()
                && subject.data().number(place + "/upper").isPresent()) {
            w.say(" (")
                    .percent("/level_percent")
                    .say(" interval ")
                    .number(place + "/lower", 1)
                    .say(" to ")
                    .number(place + "/upper", 1)
                    .say(" " + unit.symbol() + ")");
        }
    }

    private void shapes(String name, ShotShapes.Result s, String place, List<Sentence> sentences) {
        Wording w = subject.words().quote(name).say(": of ").count(place + "/n", "shot", "shots");
        boolean any = false;
        int row = 0;
        for (Map.Entry<ShotShape, Integer> entry : s.table().entrySet()) {
            if (entry.getValue() > 0) {
                w.say(any ? ", " : " these were the shapes: ")
                        .count(place + "/table/" + row + "/count")
                        .say(" " + words(entry.getKey()));
                any = true;
            }
            row++;
        }
        sentences.add(w.say(".").sentence());
        Wording misses = subject.words().quote(name).say(": ");
        if (s.missesLeft() + s.missesRight() == 0) {
            misses.say("no miss to either side");
        } else {
            misses.count(place + "/misses_left", "miss", "misses")
                    .say(" to the left and ")
                    .count(place + "/misses_right")
                    .say(" to the right");
        }
        misses.say("; a ball counts as one that lands more than ")
                .number(place + "/miss_angle/value", 1)
                .say(" deg off the target line");
        if (subject.data().number(place + "/miss_limit/value").isPresent()) {
            misses.say(", at this carry ")
                    .number(place + "/miss_limit/value", 1)
                    .say(" " + unit.symbol());
        }
        sentences.add(misses.say(".").sentence());
        sentences.add(subject.words()
                .quote(name)
                .say(": ")
                .number(place + "/crossing_share/value", 0)
                .say(" % of the balls started on one side of the target line and landed on the other (")
                .percent("/level_percent")
                .say(" interval ")
                .number(place + "/crossing_share/lower", 0)
                .say(" to ")
                .number(place + "/crossing_share/upper", 0)
                .say(" %).")
                .sentence());
    }

    private String words(ShotShape shape) {
        return subject.hand().map(shape::words).orElseGet(() -> {
            String start = shape.start().name().toLowerCase(Locale.ROOT);
            String curve = shape.curve().name().toLowerCase(Locale.ROOT);
            return start.equals(curve) && start.equals("straight")
                    ? "straight"
                    : "starting " + start + " and curving " + curve;
        });
    }
}
