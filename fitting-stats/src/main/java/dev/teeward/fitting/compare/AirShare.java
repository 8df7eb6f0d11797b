package dev.teeward.fitting.compare;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.ShotPair;
import dev.teeward.fitting.ShotSet;
import dev.teeward.fitting.complete.SameAir;
import dev.teeward.fitting.complete.SessionCompleter;
import dev.teeward.fitting.internal.Data;
import dev.teeward.flight.FlightModel;
import dev.teeward.flight.aero.AerodynamicModel;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Predicate;

/**
 * How much of a difference between two days, or between two clubs hit on several days, is the air: the difference as found,
 * the part that goes when every shot is brought to one air by {@link SameAir}, and the rest.
 *
 * <pre>
 *   as found = air + rest        for the mean of every metric that the air moves, first minus second
 * </pre>
 *
 * <p><b>Intervals</b> by the delta method. The change of each shot, from its own air to the common one, is worked out at the
 * launch as measured; shots are a sample, so that means and their differences have Welch's t intervals (Student's of the pair
 * differences for clubs hit in pairs). To the parts of the air and the rest comes what is not known of the ball, which is the same for all
 * shots: the half-difference of the result between balls of one standard deviation more and less drag, and lift, squared and
 * added; degrees of freedom by Satterthwaite (1946). The share air / found is bounded by Fieller's theorem (1954, the form from
 * memory), with the smallest of the degrees of freedom, and is left out where the difference itself may be 0.
 *
 * <p><b>Not in the intervals:</b> errors of the air that was written down, and what temperature does to ball, club and golfer.
 * <b>Warnings</b> beside those of {@link SameAir}: {@code balls-differ} (a change of ball is not separated from the rest),
 * {@code share-unsettled} (the difference may be 0, so there is no share of it), {@code too-few-shots}.
 *
 * <pre>{@code
 * AirShare share = AirShare.of(SameAir.standardAt(feet(0.0)));
 * AirShareResult carry = share.betweenDays(monday, tuesday, Metric.CARRY);
 * carry.air().convertTo(LengthUnit.YARD);   // of so many yards between the days, these are the air
 * }</pre>
 *
 * <p>Immutable, and thread-safe if the aerodynamic model is.
 */
public final class AirShare {
    private final SameAir place;
    private final double level;
    private final double dragSpread;
    private final double liftSpread;

    private AirShare(SameAir place, double level, double dragSpread, double liftSpread) {
        this.place = Objects.requireNonNull(place, "place");
        this.level = level;
        this.dragSpread = dragSpread;
        this.liftSpread = liftSpread;
    }

    /**
     * 95 %, and balls that differ by 5 percent in drag and in lift, as in {@link dev.teeward.flight.OtherAir}.
     *
     * @param place the air to bring all shots to, such as standard air or that of the home course
     * @return the procedure
     */
    public static AirShare of(SameAir place) {
        return new AirShare(place.withoutIntervals(), 0.95, 0.05, 0.05);
    }

    /**
     * With another level of all intervals.
     *
     * @param value the level, in (0, 1)
     * @return a changed copy
     * @throws IllegalArgumentException if the level is not in (0, 1)
     */
    public AirShare withLevel(double value) {
        return new AirShare(place, Data.checkLevel(value), dragSpread, liftSpread);
    }

    /**
     * With a ball that is known better or worse.
     *
     * @param drag the standard deviation of its drag over the model's, in [0, 0.2]; 0 is known
     * @param lift the same of its lift
     * @return a changed copy
     * @throws IllegalArgumentException if one lies outside
     */
    public AirShare withBallSpread(double drag, double lift) {
        if (!(drag >= 0.0 && drag <= 0.2 && lift >= 0.0 && lift <= 0.2)) {
            throw new IllegalArgumentException(
                    "drag and lift spread must be in [0, 0.2], but were " + drag + " and " + lift);
        }
        return new AirShare(place, level, drag, lift);
    }

    /**
     * The mean of one day minus that of another, over all used shots.
     *
     * @param first one session, in its air
     * @param second the other, in its own; best with the same clubs
     * @param metric what to compare, one of {@link SameAir#metrics()}
     * @return the difference and its parts
     * @throws IllegalArgumentException if the air does not move the metric, or a session has no used shot with it and a launch
     */
    public AirShareResult betweenDays(Session first, Session second, Metric metric) {
        AirColumns columns = new AirColumns(metric, level);
        columns.first(flown(first, metric, shot -> true, columns));
        columns.second(flown(second, metric, shot -> true, columns));
        if (!first.ball().equals(second.ball())) {
            columns.warn(ballsDiffer());
        }
        return columns.result();
    }

    /**
     * The mean of one club minus that of another, in a session that was combined from several days; by pairs where there are
     * enough of them, as {@link ShotPairing} says.
     *
     * @param session the session; each shot flies in the air of its part
     * @param first the club that comes first
     * @param second the club that is subtracted
     * @param metric what to compare, one of {@link SameAir#metrics()}
     * @return the difference and its parts
     * @throws IllegalArgumentException if the air does not move the metric, or a club has no used shot with it and a launch
     */
    public AirShareResult betweenClubs(Session session, String first, String second, Metric metric) {
        AirColumns columns = new AirColumns(metric, level);
        if (session.parts().stream().map(Session::ball).distinct().count() > 1) {
            columns.warn(ballsDiffer());
        }
        List<AirColumns.Row> rows = flown(
                session,
                metric,
                shot -> shot.club().equals(first) || shot.club().equals(second),
                columns);
        ShotSet kept = ShotSet.of(rows.stream().map(AirColumns.Row::shot).toList());
        ShotPairing pairing = ShotPairing.of(kept, first, second);
        if (pairing.enough()) {
            List<AirColumns.Row> differences = new ArrayList<>();
            Map<Shot, AirColumns.Row> byShot = new HashMap<>();
            rows.forEach(r -> byShot.put(bare(r.shot()), r));
            for (ShotPair pair : pairing.pairs()) {
                differences.add(row(byShot, pair.first()).minus(row(byShot, pair.second())));
            }
            columns.pairs(differences);
            columns.exclude(rows.size() - 2 * differences.size(), "not in a pair");
        } else {
            columns.first(
                    rows.stream().filter(r -> r.shot().club().equals(first)).toList());
            columns.second(
                    rows.stream().filter(r -> r.shot().club().equals(second)).toList());
        }
        return columns.result();
    }

    /**
     * What bringing a session over changes: for every metric that the air moves, the mean in the common air minus the mean as
     * found, over all used shots.
     *
     * @param session the session
     * @return one change for each metric that any used shot with a launch has, in the order of the metrics
     */
    public List<AirChange> changes(Session session) {
        List<AirChange> changes = new ArrayList<>();
        for (Metric metric : SameAir.metrics()) {
            AirColumns columns = new AirColumns(metric, level);
            List<AirColumns.Row> rows = flown(session, metric, shot -> true, columns);
            if (!rows.isEmpty()) {
                columns.pairs(rows);
                changes.add(columns.change());
            }
        }
        return List.copyOf(changes);
    }

    private static Warning ballsDiffer() {
        return Warning.of(
                "balls-differ",
                "not all shots were hit with one ball: every ball is flown alike, so that what a ball does stays in the rest");
    }

    /** A shot that was paired by its place in the order carries the number of its pair, which it did not have. */
    private static Shot bare(Shot shot) {
        return shot.toBuilder().pair("any").build();
    }

    private static AirColumns.Row row(Map<Shot, AirColumns.Row> rows, Shot shot) {
        return Objects.requireNonNull(rows.get(bare(shot)), "row");
    }

    private List<AirColumns.Row> flown(Session session, Metric metric, Predicate<Shot> wanted, AirColumns columns) {
        if (!SameAir.metrics().contains(metric)) {
            throw new IllegalArgumentException("metric must be one that the air moves, "
                    + SameAir.metrics().stream().map(Metric::key).toList() + ", but was " + metric.key());
        }
        List<Shot> found = SessionCompleter.withDefaults()
                .withFlightModel(place.flightModel())
                .complete(session)
                .session()
                .shots()
                .shots();
        SameAir.Result result = place.bring(session);
        result.warnings().forEach(columns::warn);
        List<Shot> brought = result.session().shots().shots();
        double[][] balls = {
            moved(session, metric, 1.0 + dragSpread, 1.0), moved(session, metric, 1.0 - dragSpread, 1.0),
            moved(session, metric, 1.0, 1.0 + liftSpread), moved(session, metric, 1.0, 1.0 - liftSpread)
        };
        List<AirColumns.Row> rows = new ArrayList<>();
        int excluded = 0;
        int lost = 0;
        for (int i = 0; i < found.size(); i++) {
            Shot shot = found.get(i);
            if (!wanted.test(shot)) {
                continue;
            }
            boolean known = shot.has(metric) && brought.get(i).has(metric);
            for (double[] ball : balls) {
                known &= Double.isFinite(ball[i]);
            }
            if (!shot.used()) {
                excluded++;
            } else if (!known) {
                lost++;
            } else {
                rows.add(new AirColumns.Row(
                        shot,
                        shot.value(metric),
                        shot.value(metric) - brought.get(i).value(metric),
                        0.5 * (balls[0][i] - balls[1][i]),
                        0.5 * (balls[2][i] - balls[3][i])));
            }
        }
        columns.exclude(excluded, "excluded in the session");
        columns.exclude(lost, "without " + metric.label() + " or a launch that lands");
        return rows;
    }

    /** Found minus brought over, for another ball; infinite where there is none. */
    private double[] moved(Session session, Metric metric, double drag, double lift) {
        FlightModel model = place.flightModel();
        AerodynamicModel scaled = AerodynamicModel.scaled(model.ball().aerodynamics(), drag, lift);
        FlightModel other = model.withBall(model.ball().withAerodynamics(scaled));
        List<Shot> found = SessionCompleter.withDefaults()
                .withFlightModel(other)
                .complete(session)
                .session()
                .shots()
                .shots();
        List<Shot> brought =
                place.withFlightModel(other).bring(session).session().shots().shots();
        double[] moved = new double[found.size()];
        for (int i = 0; i < moved.length; i++) {
            moved[i] = found.get(i).has(metric) && brought.get(i).has(metric)
                    ? found.get(i).value(metric) - brought.get(i).value(metric)
                    : Double.POSITIVE_INFINITY;
        }
        return moved;
    }
}
