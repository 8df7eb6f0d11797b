package dev.teeward.fitting.choose;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.ShotSet;
import dev.teeward.fitting.compare.HedgesG;
import dev.teeward.fitting.compare.TestResult;
import dev.teeward.fitting.compare.WelchTTest;
import dev.teeward.fitting.internal.Data;
import dev.teeward.fitting.internal.Distributions;
import dev.teeward.fitting.internal.Sample;
import dev.teeward.quantity.AngleUnit;
import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.Handedness;
import dev.teeward.quantity.Interval;
import dev.teeward.quantity.LengthUnit;
import dev.teeward.quantity.RatioUnit;
import dev.teeward.quantity.Unit;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * Straight or workable: how a club repeats one intent, and how much it answers to another.
 *
 * <p>The shots carry the intended shape as text in a column of the session file: {@code intent} with {@code draw}, {@code straight}
 * or {@code fade}, written before the shot is hit. Shots without one count as straight only if no shot has one.
 *
 * <p><b>Repeats</b>: the standard deviation of start direction, curve and side about the mean of each intent, pooled over the
 * intents, with its chi-square interval. <b>Answers</b>: mean curve with a fade intended less mean curve with a draw intended, with
 * Welch's interval; positive if the ball does what the golfer wants, for both hands. Per standard deviation of curve it is
 * Hedges' g (1981). Two clubs are compared by {@link Result#answersMoreThan} and {@link Result#spreadAgainst}.
 * Which of the two matters is the golfer's business.
 *
 * <pre>{@code
 * Workability.Result alder = Workability.withDefaults().describe(session.shots().club("Alder"), Handedness.LEFT);
 * alder.curve().orElseThrow();                 // how far the curve spreads at one intent [m]
 * alder.answer().orElseThrow().estimate();     // how much more it fades when it should [m]
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class Workability {
    private static final Workability DEFAULTS = new Workability(0.95, "intent");

    private final double level;
    private final String column;

    private Workability(double level, String column) {
        this.level = level;
        this.column = column;
    }

    /** The shape that is intended. */
    public enum Intent {
        /** Curving towards the side the golfer stands on: to the left for a right-handed golfer. */
        DRAW,

        /** Without curve. */
        STRAIGHT,

        /** Curving away from the golfer: to the right for a right-handed golfer. */
        FADE
    }

    /**
     * 95 %, the column {@code intent}.
     *
     * @return the default procedure
     */
    public static Workability withDefaults() {
        return DEFAULTS;
    }

    /**
     * With another level.
     *
     * @param wanted the level, in (0, 1)
     * @return a changed copy
     * @throws IllegalArgumentException if the level is not in (0, 1)
     */
    public Workability withLevel(double wanted) {
        return new Workability(Data.checkLevel(wanted), column);
    }

    /**
     * With another column of intents.
     *
     * @param heading its heading
     * @return a changed copy
     */
    public Workability withColumn(String heading) {
        return new Workability(level, Objects.requireNonNull(heading, "heading"));
    }

    /**
     * Describes one club.
     *
     * @param shots its shots; excluded ones and those without start direction, curve, side or intent are passed over
     * @param hand the golfer's hand
     * @return repeatability and answer
     * @throws IllegalArgumentException if an intent is none of draw, straight and fade
     */
    public Result describe(ShotSet shots, Handedness hand) {
        Objects.requireNonNull(hand, "hand");
        ShotSet used = shots.used();
        ShotSet complete = used.with(Metric.START_DIRECTION).with(Metric.CURVE).with(Metric.SIDE);
        boolean tagged = used.stream().anyMatch(shot -> !text(shot).isEmpty());
        Map<Intent, List<Shot>> groups = new EnumMap<>(Intent.class);
        for (Shot shot : complete) {
            String written = text(shot);
            if (!written.isEmpty() || !tagged) {
                groups.computeIfAbsent(written.isEmpty() ? Intent.STRAIGHT : intent(written), key -> new ArrayList<>())
                        .add(shot);
            }
        }
        Map<Intent, ShotSet> sets = new EnumMap<>(Intent.class);
        groups.forEach((intent, list) -> sets.put(intent, ShotSet.of(list)));
        int counted = sets.values().stream().mapToInt(ShotSet::size).sum();
        return new Result(level, hand, sets, used.size() - counted);
    }

    private String text(Shot shot) {
        return shot.other().getOrDefault(column, "").strip();
    }

    private Intent intent(String written) {
        return switch (written.toLowerCase(Locale.ROOT)) {
            case "draw" -> Intent.DRAW;
            case "straight" -> Intent.STRAIGHT;
            case "fade" -> Intent.FADE;
            default ->
                throw new IllegalArgumentException(
                        column + " must be draw, straight or fade, but was \"" + written + "\"");
        };
    }

    /** One club. Immutable and thread-safe. */
    public static final class Result {
        private final double level;
        private final Handedness hand;
        private final Map<Intent, ShotSet> shots;
        private final int leftOut;

        private Result(double level, Handedness hand, Map<Intent, ShotSet> shots, int leftOut) {
            this.level = level;
            this.hand = hand;
            this.shots = Collections.unmodifiableMap(shots);
            this.leftOut = leftOut;
        }

        /**
         * The shots of each intent.
         *
         * @return the shots counted, by intent; only intents that occur
         */
        public Map<Intent, ShotSet> shots() {
            return shots;
        }

        /**
         * How many used shots were passed over.
         *
         * @return those without a reading or without an intent
         */
        public int leftOut() {
            return leftOut;
        }

        /**
         * How far the start direction spreads at one intent.
         *
         * @return the pooled standard deviation with its interval [rad], or empty with no intent of two different shots
         */
        public Optional<Estimate> start() {
            return spread(Metric.START_DIRECTION, AngleUnit.RADIAN);
        }

        /**
         * How far the curve spreads at one intent.
         *
         * @return the pooled standard deviation with its interval [m], or empty with no intent of two different shots
         */
        public Optional<Estimate> curve() {
            return spread(Metric.CURVE, LengthUnit.METER);
        }

        /**
         * How far the landing spreads to the side at one intent.
         *
         * @return the pooled standard deviation with its interval [m], or empty with no intent of two different shots
         */
        public Optional<Estimate> landing() {
            return spread(Metric.SIDE, LengthUnit.METER);
        }

        private Optional<Estimate> spread(Metric metric, Unit unit) {
            double df = degreesOfFreedom();
            double variance = df > 0.0 ? pooledVariance(metric, df) : 0.0;
            if (!(variance > 0.0)) {
                return Optional.empty();
            }
            double sd = Math.sqrt(variance);
            double tail = 0.5 * (1.0 - level);
            return Optional.of(Estimate.of(
                    sd,
                    Interval.of(
                            sd * Math.sqrt(df / Distributions.chiSquareQuantile(1.0 - tail, df)),
                            sd * Math.sqrt(df / Distributions.chiSquareQuantile(tail, df)),
                            level),
                    unit));
        }

        private double degreesOfFreedom() {
            return shots.values().stream().mapToDouble(set -> set.size() - 1.0).sum();
        }

        private double pooledVariance(Metric metric, double df) {
            double squares = 0.0;
            for (ShotSet set : shots.values()) {
                squares += set.size() > 1
                        ? (set.size() - 1.0)
                                * Sample.of("shots", set.values(metric)).variance()
                        : 0.0;
            }
            return squares / df;
        }

        /**
         * How much the curve answers: with a fade intended less with a draw intended, positive if the ball does what is
         * intended.
         *
         * @return Welch's test of no answer, the difference in metres with its interval; empty without shots of both intents
         */
        public Optional<TestResult> answer() {
            return both()
                    ? Optional.of(WelchTTest.withDefaults()
                            .withLevel(level)
                            .withUnit(LengthUnit.METER)
                            .test(curves(Intent.FADE), curves(Intent.DRAW)))
                    : Optional.empty();
        }

        /**
         * How much the curve answers, in standard deviations of curve at one intent.
         *
         * @return Hedges' g with its interval, or empty without shots of both intents
         */
        public Optional<TestResult> answerInSpreads() {
            return both()
                    ? Optional.of(
                            HedgesG.withDefaults().withLevel(level).test(curves(Intent.FADE), curves(Intent.DRAW)))
                    : Optional.empty();
        }

        private boolean both() {
            return shots.containsKey(Intent.FADE) && shots.containsKey(Intent.DRAW);
        }

        private double[] curves(Intent intent) {
            double[] curves = Objects.requireNonNull(shots.get(intent)).values(Metric.CURVE);
            for (int i = 0; i < curves.length; i++) {
                curves[i] *= hand.sign();
            }
            return curves;
        }

        /**
         * How much more this club answers than another.
         *
         * @param other the other club
         * @return the difference of the two answers [m] with Satterthwaite's interval, or empty if one of them has none or an
         *     intent has fewer than two different shots
         */
        public Optional<Estimate> answersMoreThan(Result other) {
            if (!both() || !other.both()) {
                return Optional.empty();
            }
            double difference = 0.0;
            double variance = 0.0;
            double fourth = 0.0;
            for (int club = 0; club < 2; club++) {
                for (Intent intent : List.of(Intent.FADE, Intent.DRAW)) {
                    Sample s = Sample.of("curve", (club == 0 ? this : other).curves(intent));
                    if (s.size() < 2 || !(s.variance() > 0.0)) {
                        return Optional.empty();
                    }
                    boolean plus = (club == 0) == (intent == Intent.FADE);
                    double part = s.variance() / s.size();
                    difference += plus ? s.mean() : -s.mean();
                    variance += part;
                    fourth += part * part / (s.size() - 1.0);
                }
            }
            double reach =
                    Distributions.tQuantile(0.5 + 0.5 * level, variance * variance / fourth) * Math.sqrt(variance);
            return Optional.of(Estimate.of(
                    difference, Interval.of(difference - reach, difference + reach, level), LengthUnit.METER));
        }

        /**
         * How far the curve of this club spreads at one intent, as a multiple of another's.
         *
         * @param other the other club
         * @return the ratio of the pooled standard deviations with its F interval, or empty if one of them has none
         */
        public Optional<Estimate> spreadAgainst(Result other) {
            if (curve().isEmpty() || other.curve().isEmpty()) {
                return Optional.empty();
            }
            double ratio = curve().get().value() / other.curve().get().value();
            double df1 = degreesOfFreedom();
            double df2 = other.degreesOfFreedom();
            double tail = 0.5 * (1.0 - level);
            return Optional.of(Estimate.of(
                    ratio,
                    Interval.of(
                            ratio / Math.sqrt(Distributions.fQuantile(1.0 - tail, df1, df2)),
                            ratio / Math.sqrt(Distributions.fQuantile(tail, df1, df2)),
                            level),
                    RatioUnit.ONE));
        }
    }
}
