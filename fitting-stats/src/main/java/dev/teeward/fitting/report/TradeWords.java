package dev.teeward.fitting.report;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Sense;
import dev.teeward.fitting.compare.MetricComparison;
import dev.teeward.quantity.Handedness;
import java.util.Optional;

/**
 * How the trade says that one club has more of a metric (common practice, no source): "the face was", a number, "more open
 * to the path". Of what has a side the first club is named, of anything else the one with more.
 *
 * @param before what stands before the number; empty if the label of the metric is enough
 * @param after what stands after the number
 * @param extra what it means for the golfer's hand; empty if nothing, or if the hand is unknown
 * @param firstNamed whether the club that the words are true of is the first
 */
record TradeWords(String before, String after, String extra, boolean firstNamed) {
    static TradeWords of(MetricComparison c, boolean firstHasMore, Optional<Handedness> hand) {
        Metric metric = c.metric();
        double right = firstHasMore ? 1.0 : -1.0;
        if (metric.sense() == Sense.LATERAL) {
            return lateral(metric, right, hand);
        }
        if (metric == Metric.ATTACK_ANGLE) {
            boolean down = c.first().mean().value() < 0.0 && c.second().mean().value() < 0.0;
            return new TradeWords("the attack was", down ? "steeper" : "more upward", "", down != firstHasMore);
        }
        return new TradeWords(subject(metric), more(metric), "", firstHasMore);
    }

    private static TradeWords lateral(Metric metric, double right, Optional<Handedness> hand) {
        String side = right > 0.0 ? "right" : "left";
        String farther = "farther " + side;
        String curve = hand.map(h -> "more of a " + h.curveWord(right)).orElse("");
        return switch (metric) {
            case FACE_ANGLE ->
                new TradeWords(
                        "the face was",
                        hand.map(h -> "more " + h.faceWord(right)).orElse(farther),
                        "",
                        true);
            case FACE_TO_PATH ->
                new TradeWords(
                        "the face was",
                        hand.map(h -> "more " + h.faceWord(right) + " to the path")
                                .orElse(farther + " of the path"),
                        "",
                        true);
            case CLUB_PATH ->
                new TradeWords(
                        "the path was",
                        hand.map(h -> "more " + h.pathWord(right)).orElse(farther),
                        "",
                        true);
            case AXIS_TILT -> new TradeWords("the spin axis was tilted", "more to the " + side, curve, true);
            case CURVE -> new TradeWords("the ball curved", farther, curve, true);
            case START_DIRECTION -> new TradeWords("the ball started", farther, "", true);
            case SIDE -> new TradeWords("the ball landed", farther, "", true);
            default -> new TradeWords("", farther, "", true);
        };
    }

    private static String subject(Metric metric) {
        return switch (metric) {
            case DYNAMIC_LIE -> "the club was";
            case STRIKE_TOE, STRIKE_UP -> "the strike was";
            default -> "the " + metric.label() + " was";
        };
    }

    private static String more(Metric metric) {
        return switch (metric) {
            case CLUB_SPEED, BALL_SPEED, LANDING_SPEED -> "faster";
            case DYNAMIC_LIE -> "more upright";
            case STRIKE_TOE -> "nearer to the toe";
            case STRIKE_UP -> "higher on the face";
            case FLIGHT_TIME, CARRY, TOTAL -> "longer";
            case DESCENT_ANGLE -> "steeper";
            default -> "higher";
        };
    }
}
