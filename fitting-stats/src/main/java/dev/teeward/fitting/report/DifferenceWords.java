package dev.teeward.fitting.report;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Sense;
import dev.teeward.fitting.compare.MetricComparison;
import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.Handedness;
import dev.teeward.quantity.Interval;
import dev.teeward.quantity.Unit;
import java.util.Optional;

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
        boolean firstHasMore = e.interval().lower() > 0.0;
        if (c.metric().sense() == Sense.LATERAL) {
            magnitude(w, e, place + "/difference")
                    .say(firstHasMore ? " farther right with " : " farther left with ")
                    .quote(subject.first())
                    .say(" than with ")
                    .quote(subject.second());
            handWords(w, c.metric(), firstHasMore ? 1.0 : -1.0);
        } else {
            magnitude(w, e, place + "/difference")
                    .say(" " + more(c.metric()) + " with ")
                    .quote(firstHasMore ? subject.first() : subject.second())
                    .say(" than with ")
                    .quote(firstHasMore ? subject.second() : subject.first());
        }
        w.say(" (").percent("/level_percent").say(" interval ");
        return magnitudes(w, e, place + "/difference").say(")");
    }

    private void handWords(Wording w, Metric metric, double rightPositive) {
        Optional<Handedness> hand = subject.hand();
        if (hand.isEmpty()) {
            return;
        }
        String word = switch (metric) {
            case CURVE, AXIS_TILT -> "more of a " + hand.get().curveWord(rightPositive);
            case FACE_ANGLE, FACE_TO_PATH -> "more " + hand.get().faceWord(rightPositive);
            case CLUB_PATH -> "more " + hand.get().pathWord(rightPositive);
            default -> "";
        };
        if (!word.isEmpty()) {
            w.say(", " + word);
        }
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

    /** What more of a metric is called. */
    static String more(Metric metric) {
        return switch (metric) {
            case CLUB_SPEED, BALL_SPEED, LANDING_SPEED -> "faster";
            case ATTACK_ANGLE -> "more upward";
            case DYNAMIC_LIE -> "more toe-up";
            case STRIKE_TOE -> "more towards the toe";
            case STRIKE_UP -> "higher up the face";
            case FLIGHT_TIME, CARRY, TOTAL -> "longer";
            case DESCENT_ANGLE -> "steeper";
            default -> "higher";
        };
    }

    /** More of a metric as a thing that a club gives, such as "the longer carry". */
    static String prize(Metric metric) {
        return switch (metric) {
            case STRIKE_TOE -> "the strike more towards the toe";
            case STRIKE_UP -> "the strike higher up the face";
            default -> "the " + more(metric) + " " + metric.label();
        };
    }
}
