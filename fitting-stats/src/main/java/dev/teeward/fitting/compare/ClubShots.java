package dev.teeward.fitting.compare;

import dev.teeward.fitting.Club;
import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Rating;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.ShotSet;
import dev.teeward.fitting.summary.LandingPattern;
import dev.teeward.fitting.summary.SampleSummary;
import dev.teeward.fitting.summary.ShotShapes;
import dev.teeward.fitting.summary.StrikePattern;
import dev.teeward.quantity.Length;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.jspecify.annotations.Nullable;

/**
 * The shots of one of the clubs compared, and what describes them together.
 *
 * <pre>{@code
 * ClubShots alder = result.first();
 * alder.used().size();    // shots that count
 * alder.exclusions();     // why the others do not
 * alder.shapes();         // table of start by curve, if both were measured or computed
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class ClubShots {
    private final String name;
    private final Optional<Club> build;
    private final ShotSet shots;
    private final ShotSet used;
    private final double level;
    private final @Nullable Length target;

    ClubShots(String name, Session session, double level, @Nullable Length target) {
        this.name = name;
        this.build = session.club(name);
        this.shots = session.shots().club(name);
        this.used = shots.used();
        this.level = level;
        this.target = target;
    }

    /**
     * The name of the club.
     *
     * @return the name
     */
    public String name() {
        return name;
    }

    /**
     * How the club is built.
     *
     * @return the description, or empty
     */
    public Optional<Club> build() {
        return build;
    }

    /**
     * The shots that count.
     *
     * @return the shots in the order of hitting
     */
    public ShotSet used() {
        return used;
    }

    /**
     * The shots that do not count.
     *
     * @return the shots in the order of hitting, each with its reason
     */
    public ShotSet excluded() {
        return shots.excluded();
    }

    /**
     * Why shots do not count.
     *
     * @return the reasons with their number, in the order in which they first occur
     */
    public List<Exclusion> exclusions() {
        Map<String, Integer> counts = new LinkedHashMap<>();
        for (Shot shot : excluded()) {
            counts.merge(shot.exclusion().orElse(""), 1, Integer::sum);
        }
        return counts.entrySet().stream()
                .map(entry -> new Exclusion(entry.getValue(), entry.getKey()))
                .toList();
    }

    /**
     * Where the balls come down.
     *
     * @return the pattern of the used shots with carry and side, or empty below three
     */
    public Optional<LandingPattern.Result> pattern() {
        ShotSet complete = used.with(Metric.CARRY).with(Metric.SIDE);
        if (complete.size() < 3) {
            return Optional.empty();
        }
        LandingPattern pattern = LandingPattern.withDefaults().withLevel(level);
        return Optional.of((target == null ? pattern : pattern.withTarget(target.meters(), 0.0))
                .describe(complete.values(Metric.CARRY), complete.values(Metric.SIDE)));
    }

    /**
     * How the balls fly.
     *
     * @return the shapes of the used shots with start direction, curve, side and a carry above 0, or empty if there is none
     */
    public Optional<ShotShapes.Result> shapes() {
        ShotSet complete = used.with(Metric.START_DIRECTION)
                .with(Metric.CURVE)
                .with(Metric.SIDE)
                .with(Metric.CARRY)
                .filter(shot -> shot.value(Metric.CARRY) > 0.0);
        if (complete.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(ShotShapes.withDefaults()
                .withLevel(level)
                .describe(
                        complete.values(Metric.START_DIRECTION),
                        complete.values(Metric.CURVE),
                        complete.values(Metric.SIDE),
                        complete.values(Metric.CARRY)));
    }

    /**
     * Where the face meets the balls, and what off-centre strikes cost in ball speed.
     *
     * @return the pattern of the used shots with both strike offsets (the cost only if all of them have a ball speed), or
     *     empty below three
     */
    public Optional<StrikePattern.Result> strike() {
        ShotSet complete = used.with(Metric.STRIKE_TOE).with(Metric.STRIKE_UP);
        if (complete.size() < 3) {
            return Optional.empty();
        }
        double[] speeds = complete.values(Metric.BALL_SPEED);
        double[] toe = complete.values(Metric.STRIKE_TOE);
        double[] up = complete.values(Metric.STRIKE_UP);
        StrikePattern pattern = StrikePattern.withDefaults().withLevel(level);
        return Optional.of(speeds.length == toe.length ? pattern.describe(toe, up, speeds) : pattern.describe(toe, up));
    }

    /**
     * What the golfer said.
     *
     * @param rating which rating
     * @return the ratings of the used shots summarized, 1 to 5, or empty if there is none
     */
    public Optional<SampleSummary.Result> rating(Rating rating) {
        double[] all = new double[used.size()];
        int count = 0;
        for (Shot shot : used) {
            OptionalInt said = shot.rating(rating);
            if (said.isPresent()) {
                all[count++] = said.getAsInt();
            }
        }
        double[] values = Arrays.copyOf(all, count);
        return values.length == 0
                ? Optional.empty()
                : Optional.of(SampleSummary.withDefaults().withLevel(level).summarize(values));
    }

    @Override
    public String toString() {
        return name + ": " + used.size() + " shots used, " + excluded().size() + " excluded";
    }
}
