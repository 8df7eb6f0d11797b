package dev.teeward.fitting.screen;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Shot;
import java.util.List;
import java.util.OptionalDouble;

/**
 * A shot that stands out in a session, and why. A flag never removes the shot: the fitter does, by excluding it with a
 * reason.
 *
 * <pre>{@code
 * for (ShotFlag flag : SessionScreen.withDefaults().screen(session).flags()) {
 *     System.out.println(flag);   // "shot 7 with Alder, mishit: ..."
 * }
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class ShotFlag {
    /** What is suspected. */
    public enum Kind {
        /** The device got it wrong: the readings contradict each other or what is possible. */
        MISREAD,
        /** The golfer got it wrong: the readings may be right, and lie far from the other shots. */
        MISHIT
    }

    private final int index;
    private final Shot shot;
    private final Kind kind;
    private final String method;
    private final List<Metric> metrics;
    private final String reason;
    private final double statistic;
    private final double cutOff;
    private final OptionalDouble testFalseAlarmRate;
    private final OptionalDouble falseAlarmRate;

    ShotFlag(
            int index,
            Shot shot,
            Kind kind,
            String method,
            List<Metric> metrics,
            String reason,
            double statistic,
            double cutOff,
            OptionalDouble testFalseAlarmRate,
            OptionalDouble falseAlarmRate) {
        this.index = index;
        this.shot = shot;
        this.kind = kind;
        this.method = method;
        this.metrics = List.copyOf(metrics);
        this.reason = reason;
        this.statistic = statistic;
        this.cutOff = cutOff;
        this.testFalseAlarmRate = testFalseAlarmRate;
        this.falseAlarmRate = falseAlarmRate;
    }

    /**
     * Where the shot stands in the session.
     *
     * @return the index among all shots, used and excluded, from 0
     */
    public int index() {
        return index;
    }

    /**
     * The shot.
     *
     * @return the shot as it is in the session
     */
    public Shot shot() {
        return shot;
    }

    /**
     * What is suspected.
     *
     * @return misread or mishit
     */
    public Kind kind() {
        return kind;
    }

    /**
     * The rule or test that raised the flag.
     *
     * @return a few words
     */
    public String method() {
        return method;
    }

    /**
     * The metrics concerned.
     *
     * @return the metrics, unmodifiable
     */
    public List<Metric> metrics() {
        return metrics;
    }

    /**
     * The reason for people.
     *
     * @return one sentence with numbers and units
     */
    public String reason() {
        return reason;
    }

    /**
     * The number that was compared.
     *
     * @return the statistic, without a unit; what it is says {@link #reason()}
     */
    public double statistic() {
        return statistic;
    }

    /**
     * What the number was compared with.
     *
     * @return the cut-off, without a unit
     */
    public double cutOff() {
        return cutOff;
    }

    /**
     * How often the one test that raised this flag, of one set of readings, flags a good set, normally spread.
     *
     * @return the rate, in (0, 1); empty for a rule, which is not a statistical test
     */
    public OptionalDouble testFalseAlarmRate() {
        return testFalseAlarmRate;
    }

    /**
     * How often a good session, normally spread, raises at least one flag of this method over all clubs and metrics.
     *
     * @return the rate, in (0, 1); empty for a rule, which is not a statistical test
     */
    public OptionalDouble falseAlarmRate() {
        return falseAlarmRate;
    }

    @Override
    public String toString() {
        return "shot " + shot.number() + " with " + shot.club() + ", " + (kind == Kind.MISREAD ? "misread" : "mishit")
                + ": " + reason;
    }
}
