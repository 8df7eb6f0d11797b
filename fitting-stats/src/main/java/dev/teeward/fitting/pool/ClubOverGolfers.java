package dev.teeward.fitting.pool;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Sense;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.compare.ComparisonException;
import dev.teeward.fitting.compare.HeadToHead;
import dev.teeward.fitting.compare.HeadToHeadResult;
import dev.teeward.fitting.compare.MetricComparison;
import dev.teeward.fitting.compare.TestResult;
import dev.teeward.fitting.internal.Distributions;
import dev.teeward.fitting.plan.PairsNeeded;
import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.Handedness;
import dev.teeward.quantity.Interval;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * What a club does over many golfers: one session each, one difference each by {@link HeadToHead}, pooled by
 * {@link RandomEffects}.
 *
 * <p>Golfers count as drawn at random from those the answer is for; shots of one golfer say nothing about the next. A golfer
 * whose session cannot be compared is left out with the reason. Numbers that have a right and a left are mirrored for
 * left-handed golfers before they are pooled, so that more fade is more fade with everyone; a warning {@code left-handers-mirrored} says so.
 * A golfer whose session gives no hand counts as right-handed there; a warning {@code hand-assumed} names them.
 *
 * <p>What spoils the difference of a single session spoils the mean too if it does so with many golfers: {@code clubs-in-blocks},
 * {@code drift-not-cancelled}, {@code flagged-shots} and, where the air moves the metric, {@code airs-differ} stand with each golfer
 * ({@link GolferEffect#warnings()}) and once over all, with the count and the names. The golfers count all the same.
 *
 * <pre>{@code
 * ClubOverGolfers.Result r = ClubOverGolfers.of("Alder", "Rowan", Metric.CARRY).pool(sessionsByGolfer);
 * r.pooled().mean();                       // Alder minus Rowan over golfers, metres
 * r.pooled().nextGolfer();                 // for one more golfer
 * r.golfersNeeded(yards(2.0).meters());    // for +-2 yd
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class ClubOverGolfers {
    private static final double SESSION_LEVEL = 0.95;

    private final String first;
    private final String second;
    private final Metric metric;
    private final double level;

    private ClubOverGolfers(String first, String second, Metric metric, double level) {
        this.first = Objects.requireNonNull(first, "first");
        this.second = Objects.requireNonNull(second, "second");
        this.metric = Objects.requireNonNull(metric, "metric");
        this.level = level;
    }

    /**
     * Two clubs and what to compare, 95 %.
     *
     * @param first the club that comes first in every difference
     * @param second the club that is subtracted
     * @param metric the metric, chosen before the shots are looked at
     * @return the procedure
     * @throws IllegalArgumentException if both names are equal
     */
    public static ClubOverGolfers of(String first, String second, Metric metric) {
        HeadToHead.withDefaults().withClubs(first, second);
        return new ClubOverGolfers(first, second, metric, 0.95);
    }

    /**
     * With another level of all intervals.
     *
     * @param value the level, in [0.5, 1)
     * @return a changed copy
     * @throws IllegalArgumentException if the level is not in [0.5, 1)
     */
    public ClubOverGolfers withLevel(double value) {
        if (!(value >= 0.5 && value < 1.0)) {
            throw new IllegalArgumentException(
                    "level must be in [0.5, 1), but was " + value + "; for 95 percent use 0.95");
        }
        return new ClubOverGolfers(first, second, metric, value);
    }

    /**
     * Pools.
     *
     * @param sessions one for each golfer, by the name of the golfer or the file
     * @return the effect over golfers
     * @throws IllegalArgumentException if fewer than two golfers have shots with both clubs and the metric
     */
    public Result pool(Map<String, Session> sessions) {
        List<GolferEffect> golfers = new ArrayList<>();
        Map<String, String> leftOut = new LinkedHashMap<>();
        HeadToHead comparison = HeadToHead.withDefaults()
                .withClubs(first, second)
                .withPrimary(metric)
                .withLevel(SESSION_LEVEL);
        sessions.forEach((golfer, session) -> {
            try {
                HeadToHeadResult result = comparison.compare(session);
                MetricComparison compared = result.primary();
                TestResult difference = compared.difference();
                if (compared.metric() != metric
                        || !difference.estimate().interval().bounded()) {
                    leftOut.put(golfer, "the shots give no error of the difference in " + metric.label());
                } else {
                    golfers.add(effect(golfer, session, compared, SessionTraps.of(result, session)));
                }
            } catch (ComparisonException e) {
                leftOut.put(golfer, String.valueOf(e.getMessage()));
            }
        });
        if (golfers.size() < 2) {
            throw new IllegalArgumentException("at least two golfers must have hit both " + first + " and " + second
                    + " with " + metric.label() + ", but " + golfers.size() + " had; left out: " + leftOut);
        }
        RandomEffects.Result pooled = RandomEffects.withDefaults()
                .withLevel(level)
                .withUnit(metric.siUnit())
                .pool(
                        golfers.stream()
                                .mapToDouble(g -> g.difference().value())
                                .toArray(),
                        golfers.stream()
                                .mapToDouble(GolferEffect::standardError)
                                .toArray());
        List<Warning> warnings = new ArrayList<>(pooled.warnings());
        warnings.addAll(SessionTraps.over(golfers));
        long mirrored = golfers.stream().filter(GolferEffect::mirrored).count();
        if (mirrored > 0) {
            warnings.add(Warning.of(
                    "left-handers-mirrored",
                    mirrored
                            + " left-handed golfers are counted in mirror image, so that right means right of a right-handed"
                            + " golfer"));
        }
        List<String> assumed = golfers.stream()
                .map(GolferEffect::golfer)
                .filter(g -> metric.sense() == Sense.LATERAL
                        && Objects.requireNonNull(sessions.get(g), g).hand().isEmpty())
                .toList();
        if (!assumed.isEmpty()) {
            warnings.add(Warning.of(
                    "hand-assumed",
                    "no hand is given for " + assumed.size() + " of " + golfers.size() + " golfers ("
                            + String.join(", ", assumed)
                            + "), who are counted as right-handed; for a left-handed one right and left are the wrong way"
                            + " round"));
        }
        return new Result(first, second, metric, pooled, golfers, leftOut, warnings);
    }

    private GolferEffect effect(String golfer, Session session, MetricComparison compared, List<Warning> traps) {
        Estimate found = compared.difference().estimate();
        double df = compared.difference().degreesOfFreedom().get(0);
        double error = found.interval().halfWidth() / Distributions.tQuantile(0.5 * (1.0 + SESSION_LEVEL), df);
        boolean mirror = metric.sense() == Sense.LATERAL
                && session.hand().filter(h -> h == Handedness.LEFT).isPresent();
        Estimate seen = mirror
                ? Estimate.of(
                        -found.value(),
                        Interval.of(-found.interval().upper(), -found.interval().lower(), SESSION_LEVEL),
                        found.unit())
                : found;
        return new GolferEffect(golfer, seen, error, df, compared.paired(), mirror, traps);
    }

    /**
     * A club's effect over golfers.
     *
     * @param first the club that comes first
     * @param second the club that is subtracted
     * @param metric what was compared
     * @param pooled mean, next golfer and variance between golfers [SI unit of the metric]
     * @param golfers each golfer's difference at 95 %, in the order given
     * @param leftOut why a golfer does not count, by name
     * @param warnings what to know
     */
    public record Result(
            String first,
            String second,
            Metric metric,
            RandomEffects.Result pooled,
            List<GolferEffect> golfers,
            Map<String, String> leftOut,
            List<Warning> warnings) {
        /**
         * Copies the collections.
         *
         * @param first the club that comes first
         * @param second the club that is subtracted
         * @param metric what was compared
         * @param pooled mean, next golfer and variance between golfers [SI unit of the metric]
         * @param golfers each golfer's difference at 95 %, in the order given
         * @param leftOut why a golfer does not count, by name
         * @param warnings what to know
         */
        public Result {
            golfers = List.copyOf(golfers);
            leftOut = Map.copyOf(leftOut);
            warnings = List.copyOf(warnings);
        }

        /**
         * How many golfers an interval of the mean needs, each measured as a typical one was: t sqrt((tau^2 + typical v) / k)
         * must not be above the half-width.
         *
         * @param halfWidth the half-width wanted, above 0 [SI unit of the metric]
         * @return the number at the estimate of tau^2 and at its limits
         * @throws IllegalArgumentException if the half-width is not above 0, or more than a million would be needed
         */
        public GolfersNeeded golfersNeeded(double halfWidth) {
            Interval variance = pooled.varianceInterval();
            return new GolfersNeeded(
                    needed(halfWidth, pooled.variance()),
                    needed(halfWidth, Math.min(variance.lower(), pooled.variance())),
                    needed(halfWidth, Math.max(variance.upper(), pooled.variance())),
                    pooled.golfers());
        }

        private int needed(double halfWidth, double variance) {
            return PairsNeeded.withDefaults()
                    .withAlpha(1.0 - pooled.mean().interval().level())
                    .forHalfWidth(halfWidth, Math.sqrt(variance + pooled.typicalVariance()))
                    .shots();
        }
    }
}
