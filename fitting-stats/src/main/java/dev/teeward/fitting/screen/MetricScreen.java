package dev.teeward.fitting.screen;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.internal.Data;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * Single metrics of single clubs: Grubbs's test below 25 shots, where its rate is exact, and the generalized ESD test from
 * 25, where its critical values are good. The rate is shared equally over all clubs and metrics (Bonferroni), so that it
 * holds for the session, if the shots are normally spread.
 *
 * <p>The smash factor is not, since it falls with the square of the distance of the strike from the centre of the face;
 * where the strikes of a club were measured, {@link StrikeAllowance} takes that out first. Where they were not, 29 % of good
 * sessions of two clubs with 10 shots raise a flag at 1.39 - 0.012 (u^2 + v^2), u and v standard normal (own simulation,
 * 1,000 sessions, smash factor and ball speed together). Ball speed is tested as it is: it shows a weak shot whatever the
 * strike, and its rate is only as good as its spread is normal.
 *
 * <p>The tests look at both ends, and the rate is that of both. Speed, smash factor and carry that stand out at the upper end
 * are no mishit: they are told as a possible misread, on the fast side.
 */
final class MetricScreen {
    static final double FALSE_ALARM_RATE = 0.05;
    static final int SEVERAL_FROM = 25;

    /** Of these the golfer cannot hit too much by mishitting the ball. */
    private static final Set<Metric> BETTER_HIGH =
            EnumSet.of(Metric.SMASH_FACTOR, Metric.BALL_SPEED, Metric.CLUB_SPEED, Metric.CARRY, Metric.TOTAL);

    private MetricScreen() {}

    /** The readings of one metric with one club. */
    private static final class Column {
        private final String club;
        private final Metric metric;
        private final int[] shots;

        Column(String club, Metric metric, int[] shots) {
            this.club = club;
            this.metric = metric;
            this.shots = shots;
        }
    }

    /** The false-alarm rate for the session; empty if nothing could be screened. */
    static OptionalDouble apply(Screening screening, List<Metric> metrics) {
        List<Column> columns = new ArrayList<>();
        for (Map.Entry<String, int[]> club : screening.byClub().entrySet()) {
            for (Metric metric : metrics) {
                int[] shots = screening.with(club.getValue(), List.of(metric));
                if (shots.length >= Screening.FEWEST) {
                    columns.add(new Column(club.getKey(), metric, shots));
                } else if (shots.length > 0) {
                    screening.warn(
                            "too-few-shots",
                            metric.label() + " cannot be screened with " + shots.length + " shots with " + club.getKey()
                                    + "; it needs " + Screening.FEWEST);
                }
            }
        }
        if (columns.isEmpty()) {
            return OptionalDouble.empty();
        }
        double rate = FALSE_ALARM_RATE / columns.size();
        Map<Metric, StrikeAllowance> allowances = new EnumMap<>(Metric.class);
        for (Metric metric : metrics) {
            if (StrikeAllowance.concerns(metric)) {
                allowances.put(metric, StrikeAllowance.of(screening, metric));
            }
        }
        for (Column measured : columns) {
            Optional<StrikeAllowance> allowance =
                    Optional.ofNullable(allowances.get(measured.metric)).filter(a -> a.covers(measured.club));
            Column column = allowance
                    .map(a -> new Column(measured.club, measured.metric, a.shots(measured.club)))
                    .orElse(measured);
            double[] readings = screening.values(column.shots, column.metric);
            double[] values = allowance.map(a -> a.residuals(column.club)).orElse(readings);
            if (Data.allEqual(values)) {
                screening.warn(
                        "zero-spread",
                        "all shots with " + column.club + " have the same "
                                + column.metric.label()
                                + ", so that nothing can stand out; the readings may be rounded too coarsely");
                continue;
            }
            List<Flag> flags = values.length < SEVERAL_FROM
                    ? GrubbsTest.withDefaults()
                            .withFalseAlarmRate(rate)
                            .screen(values)
                            .flags()
                    : GeneralizedEsdTest.withDefaults()
                            .withFalseAlarmRate(rate)
                            .screen(values)
                            .flags();
            for (Flag flag : flags) {
                int index = column.shots[flag.index()];
                screening.test(
                        index,
                        List.of(column.metric),
                        flag,
                        Screening.format(
                                "%s %s %s%s, one of %d such tests, with which at most %.0f %% of good sessions raise a flag, if normally spread",
                                column.metric.label(),
                                Screening.words(column.metric, readings[flag.index()]),
                                allowance.isPresent() ? "(after what its strike explains) " : "",
                                flag.reason(),
                                columns.size(),
                                100.0 * FALSE_ALARM_RATE),
                        FALSE_ALARM_RATE,
                        BETTER_HIGH.contains(column.metric) && values[flag.index()] > Screening.median(values));
            }
        }
        return OptionalDouble.of(FALSE_ALARM_RATE);
    }
}
