package dev.teeward.fitting.report;

import dev.teeward.fitting.Sense;
import dev.teeward.fitting.compare.MetricComparison;
import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.Interval;
import dev.teeward.quantity.Unit;

/** A difference of two clubs in words. A direction is named only if the interval leaves out zero. */
final class DifferenceWords {
    private final Subject subject;

    DifferenceWords(Subject subject) {
        this.subject = subject;
    }

    /** Whether the interval of an estimate leaves out a value. */
    static boolean leavesOut(Interval interval, double value) {
        return interval.lower() > value || interval.upper() < value;
    }

    /** The metric, the difference and its interval, such as "carry: 4.1 yd longer with Rowan than with Alder (...)". */
    Wording full(Wording w, MetricComparison c, String place) {
        w.say(Subject.label(c.metric())).say(": ");
        return brief(w, c, place);
    }

    /** The difference and its interval. */
    Wording brief(Wording w, MetricComparison c, String place) {
        Estimate e = c.difference().estimate().convertTo(subject.unit(c.metric()));
        if (!leavesOut(e.interval(), 0.0)) {
            return signed(w, e, place + "/difference");
        }
        TradeWords words = words(c);
        compared(w, c, place).say(" than with ").quote(words.firstNamed() ? subject.second() : subject.first());
        if (!words.extra().isEmpty()) {
            w.say(", " + words.extra());
        }
        w.say(" (").percent("/level_percent").say(" interval ");
        return magnitudes(w, e, place + "/difference").say(")");
    }

    /** What a club has more of, and which, such as "the face was 1.4 deg more open with Alder". */
    Wording compared(Wording w, MetricComparison c, String place) {
        TradeWords words = words(c);
        String before = c.metric().sense() == Sense.NONE ? "" : words.before();
        Estimate e = c.difference().estimate().convertTo(subject.unit(c.metric()));
        magnitude(w.say(before.isEmpty() ? "" : before + " "), e, place + "/difference");
        return w.say(" " + words.after() + " with ").quote(words.firstNamed() ? subject.first() : subject.second());
    }

    /** The words for a difference of which the interval leaves out zero. */
    TradeWords words(MetricComparison c) {
        return TradeWords.of(c, c.difference().estimate().interval().lower() > 0.0, subject.hand());
    }

    /** The same without the clubs, as a part of a list: "the face was 1.4 deg more open". */
    Wording part(Wording w, MetricComparison c, String place) {
        TradeWords words = words(c);
        Estimate e = c.difference().estimate().convertTo(subject.unit(c.metric()));
        magnitude(w.say(words.before() + " "), e, place + "/difference").say(" " + words.after());
        return w.say(words.extra().isEmpty() ? "" : " (" + words.extra() + ")");
    }

    /** First minus second with the sign. */
    private Wording signed(Wording w, Estimate e, String place) {
        w.quote(subject.first()).say(" minus ").quote(subject.second()).say(" is ");
        return value(w, e, place);
    }

    /** A value with its sign and its interval. */
    static Wording value(Wording w, Estimate e, String place) {
        int d = decimals(e, 0.0);
        w.number(place + "/value", d).say(symbol(e.unit()));
        if (!e.interval().bounded()) {
            return w.say(" (no interval can be given)");
        }
        return w.say(" (")
                .percent("/level_percent")
                .say(" interval ")
                .number(place + "/lower", d)
                .say(" to ")
                .number(place + "/upper", d)
                .say(symbol(e.unit()) + ")");
    }

    static Wording magnitude(Wording w, Estimate e, String place) {
        return w.magnitude(place + "/value", decimals(e, 0.0)).say(symbol(e.unit()));
    }

    /** The ends of an interval that leaves out zero, the one nearer to zero first. */
    private static Wording magnitudes(Wording w, Estimate e, String place) {
        int d = decimals(e, 0.0);
        boolean up = e.interval().lower() > 0.0;
        return w.magnitude(place + (up ? "/lower" : "/upper"), d)
                .say(" to ")
                .magnitude(place + (up ? "/upper" : "/lower"), d)
                .say(symbol(e.unit()));
    }

    /** A value of which words tell the sign, with its interval. */
    static Wording directed(Wording w, Estimate e, String place, String words) {
        magnitude(w, e, place).say(" " + words + " (").percent("/level_percent").say(" interval ");
        return magnitudes(w, e, place).say(")");
    }

    static int decimals(Estimate e, double nullValue) {
        int least = NumberText.decimals(e.unit());
        return leavesOut(e.interval(), nullValue)
                ? NumberText.decimals(
                        least,
                        nullValue,
                        e.value(),
                        e.interval().lower(),
                        e.interval().upper())
                : least;
    }

    static String symbol(Unit unit) {
        return unit.symbol().isEmpty() ? "" : " " + unit.symbol();
    }
}
