package dev.teeward.fitting.compare;

import dev.teeward.fitting.Intent;
import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.ShotSet;
import dev.teeward.fitting.internal.Data;
import dev.teeward.fitting.internal.Distributions;
import dev.teeward.fitting.internal.NoncentralT;
import dev.teeward.fitting.internal.Sample;
import dev.teeward.fitting.screen.ScreenReport;
import dev.teeward.fitting.screen.SessionScreen;
import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.Handedness;
import dev.teeward.quantity.Interval;
import dev.teeward.quantity.RatioUnit;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;

/**
 * Straight or workable: how closely a club repeats what was meant, and how much it answers when the golfer means another shape.
 * The session says with each shot what was meant, see {@link Shot#intent()}.
 *
 * <p><b>Repeatability</b> is the spread of start direction, curve, side and carry about the mean of each intent, pooled over the
 * intents: s^2 = sum of squares / (n - intents), with the exact chi-square interval for normal shots of equal spread.
 *
 * <p><b>Answer</b> is the difference of the mean curve between two intents, positive when the ball goes the way it was asked, for
 * either hand; Welch's interval. <b>Signal</b> is the answer in pooled spreads of the curve, with the interval of the noncentral t (as
 * {@link HedgesG}, but uncorrected): at 2 the two shapes overlap in one shot of six either way.
 *
 * <p><b>Two clubs</b>: the ratio of their spreads by F, and the difference of their answers by Welch and Satterthwaite. A lean towards a club
 * is told only if the interval leaves no other; each interval holds at its own level, not all together. The F interval is for normal
 * shots, and mishits make it too narrow, so a lean by spread is told only if the Brown-Forsythe test (1974) of the deviations from the
 * median of each intent rejects as well, at 1 - level.
 *
 * <p><b>Warnings:</b> {@code hand-assumed} (no hand is given, so a right-handed golfer is taken), {@code intent-missing} (used shots without
 * one do not count), {@code few-shots} (an intent with fewer than 5 shots), {@code flagged-shots} (by {@link SessionScreen#forCarriesOf};
 * they count all the same, and one mishit can double a spread); of two clubs, {@code not-normal} (the F interval speaks for
 * a club and the Brown-Forsythe test does not, as with a few mishits; no lean is told).
 *
 * <pre>{@code
 * Workability.Comparison c = Workability.withDefaults().compare(session, "Alder", "Rowan");
 * c.first().answer(Intent.DRAW, Intent.FADE);     // metres of curve from fade to draw
 * c.advice(Workability.Wish.REPEAT_THE_LANDING);  // ratio of spreads, and to which club that leans, if any
 * }</pre>
 *
 * <p>Curves are taken as the session has them; complete it first where they are missing. Immutable and thread-safe.
 */
public final class Workability {
    private static final Metric[] REPEATED = {Metric.START_DIRECTION, Metric.CURVE, Metric.SIDE, Metric.CARRY};
    private static final int FEW = 5;
    private static final Workability DEFAULTS = new Workability(0.95);

    private final double level;

    private Workability(double level) {
        this.level = level;
    }

    /** What a golfer may want of a club. */
    public enum Wish {
        /** The same start every time: the smaller spread of start direction. */
        REPEAT_THE_START(Metric.START_DIRECTION),

        /** The same curve every time: the smaller spread of curve. */
        REPEAT_THE_CURVE(Metric.CURVE),

        /** Balls that land on one line: the smaller spread of side. */
        REPEAT_THE_LANDING(Metric.SIDE),

        /** Balls that land at one distance: the smaller spread of carry. */
        REPEAT_THE_DISTANCE(Metric.CARRY),

        /** Shapes on demand: the larger answer from fade to draw. */
        SHAPE_SHOTS(Metric.CURVE);

        private final Metric metric;

        Wish(Metric metric) {
            this.metric = metric;
        }
    }

    /** To which club an interval leans. */
    public enum Lean {
        /** The whole interval speaks for the first. */
        FIRST,

        /** The interval leaves both open. */
        OPEN,

        /** The whole interval speaks for the second. */
        SECOND
    }

    /**
     * 95 %.
     *
     * @return the default procedure
     */
    public static Workability withDefaults() {
        return DEFAULTS;
    }

    /**
     * With another level of all intervals.
     *
     * @param value the level, in (0, 1)
     * @return a changed copy
     * @throws IllegalArgumentException if the level is not in (0, 1)
     */
    public Workability withLevel(double value) {
        return new Workability(Data.checkLevel(value));
    }

    /**
     * One club.
     *
     * @param session the session, whose shots say what was meant
     * @param club the club
     * @return its spreads and answers
     * @throws IllegalArgumentException if no used shot with the club says what was meant
     */
    public ClubResult describe(Session session, String club) {
        return describe(session, club, screen(session));
    }

    /** What was not meant as anything does not count, and is not screened. */
    private static ScreenReport screen(Session session) {
        Session meant =
                session.withShots(session.shots().filter(shot -> shot.intent().isPresent()));
        return SessionScreen.withDefaults().forCarriesOf(meant).screen(meant);
    }

    private ClubResult describe(Session session, String club, ScreenReport screened) {
        ShotSet used = session.shots().club(club).used();
        Map<Intent, ShotSet> byIntent = new EnumMap<>(Intent.class);
        for (Intent intent : Intent.values()) {
            ShotSet meant =
                    used.filter(shot -> shot.intent().filter(i -> i == intent).isPresent());
            if (!meant.isEmpty()) {
                byIntent.put(intent, meant);
            }
        }
        if (byIntent.isEmpty()) {
            throw new IllegalArgumentException(
                    "no used shot with " + club + " says what was meant; give each an intent: draw, straight or fade");
        }
        List<Warning> warnings = new ArrayList<>();
        if (session.hand().isEmpty()) {
            warnings.add(Warning.of("hand-assumed", "no hand is given, so that a draw is taken to curve to the left"));
        }
        long silent = used.stream().filter(shot -> shot.intent().isEmpty()).count();
        if (silent > 0) {
            warnings.add(Warning.of(
                    "intent-missing", silent + " shots with " + club + " do not say what was meant and do not count"));
        }
        byIntent.forEach((intent, shots) -> {
            if (shots.size() < FEW) {
                warnings.add(Warning.of(
                        "few-shots",
                        "only " + shots.size() + " shots with " + club + " were meant as " + intent.key()));
            }
        });
        screened.flaggedWarning(List.of(club)).ifPresent(warnings::add);
        return new ClubResult(club, session.hand().orElse(Handedness.RIGHT), byIntent, level, warnings);
    }

    /**
     * Two clubs.
     *
     * @param session the session, whose shots say what was meant
     * @param first the club that comes first in every ratio and difference
     * @param second the other
     * @return both, and how they compare
     * @throws IllegalArgumentException if no used shot with a club says what was meant
     */
    public Comparison compare(Session session, String first, String second) {
        ScreenReport screened = screen(session);
        return new Comparison(describe(session, first, screened), describe(session, second, screened), level);
    }

    /** One club. Immutable and thread-safe. */
    public static final class ClubResult {
        private final String club;
        private final Handedness hand;
        private final Map<Intent, ShotSet> shots;
        private final double level;
        private final List<Warning> warnings;

        private ClubResult(
                String club, Handedness hand, Map<Intent, ShotSet> shots, double level, List<Warning> warnings) {
            this.club = club;
            this.hand = hand;
            this.shots = new EnumMap<>(shots);
            this.level = level;
            this.warnings = List.copyOf(warnings);
        }

        /**
         * The club.
         *
         * @return its name
         */
        public String club() {
            return club;
        }

        /**
         * How many used shots were meant in one way.
         *
         * @param intent the shape
         * @return the number
         */
        public int shots(Intent intent) {
            ShotSet meant = shots.get(intent);
            return meant == null ? 0 : meant.size();
        }

        /**
         * The mean of a metric at one intent, right positive.
         *
         * @param metric which
         * @param intent the shape
         * @return the mean with Student's interval; empty without two shots that have it and differ
         */
        public Optional<Estimate> mean(Metric metric, Intent intent) {
            double[] values = values(metric, intent);
            if (values.length < 2) {
                return Optional.empty();
            }
            Moments m = Moments.of(Sample.of("values", values));
            double reach = Distributions.tQuantile(0.5 * (1.0 + level), m.size() - 1.0) * Math.sqrt(m.meanVariance());
            return reach > 0.0
                    ? Optional.of(Estimate.of(
                            m.mean(), Interval.of(m.mean() - reach, m.mean() + reach, level), metric.siUnit()))
                    : Optional.empty();
        }

        /**
         * The spread of a metric at fixed intent.
         *
         * @param metric start direction, curve, side and carry are the usual ones
         * @return the pooled standard deviation with its interval; empty without spread or with no intent of two shots
         */
        public Optional<Estimate> spread(Metric metric) {
            Pool pool = pool(metric);
            if (!pool.known()) {
                return Optional.empty();
            }
            double s = Math.sqrt(pool.variance());
            double tail = 0.5 * (1.0 - level);
            return Optional.of(Estimate.of(
                    s,
                    Interval.of(
                            s * Math.sqrt(pool.df() / Distributions.chiSquareQuantile(1.0 - tail, pool.df())),
                            s * Math.sqrt(pool.df() / Distributions.chiSquareQuantile(tail, pool.df())),
                            level),
                    metric.siUnit()));
        }

        /**
         * How much the curve follows when another shape is meant.
         *
         * @param meant the one shape
         * @param other the other
         * @return the difference of mean curves, positive if the ball goes the way it was asked [m]; empty without two shots
         *     of each that have a curve, or without spread
         * @throws IllegalArgumentException if both are the same
         */
        public Optional<Estimate> answer(Intent meant, Intent other) {
            return pivot(meant, other).map(p -> {
                double reach = Distributions.tQuantile(0.5 * (1.0 + level), p.degreesOfFreedom()) * p.standardError();
                return Estimate.of(
                        p.estimate(),
                        Interval.of(p.estimate() - reach, p.estimate() + reach, level),
                        Metric.CURVE.siUnit());
            });
        }

        /**
         * The answer in spreads of the curve at fixed intent.
         *
         * @param meant the one shape
         * @param other the other
         * @return signal over noise; empty where there is no answer
         * @throws IllegalArgumentException if both are the same
         */
        public Optional<Estimate> signal(Intent meant, Intent other) {
            Optional<Moments.Pivot> answer = pivot(meant, other);
            Pool pool = pool(Metric.CURVE);
            if (answer.isEmpty() || !pool.known()) {
                return Optional.empty();
            }
            double perRoot =
                    Math.sqrt(1.0 / values(Metric.CURVE, meant).length + 1.0 / values(Metric.CURVE, other).length);
            double signal = answer.get().estimate() / Math.sqrt(pool.variance());
            double t = signal / perRoot;
            double tail = 0.5 * (1.0 - level);
            Interval interval = Math.abs(t) > 1e3
                    ? Interval.unbounded(level)
                    : Interval.of(
                            NoncentralT.noncentrality(t, pool.df(), tail) * perRoot,
                            NoncentralT.noncentrality(t, pool.df(), 1.0 - tail) * perRoot,
                            level);
            return Optional.of(Estimate.of(signal, interval, RatioUnit.ONE));
        }

        /**
         * What to know.
         *
         * @return the warnings, possibly none
         */
        public List<Warning> warnings() {
            return warnings;
        }

        private double[] values(Metric metric, Intent intent) {
            ShotSet meant = shots.get(intent);
            return meant == null ? new double[0] : meant.values(metric);
        }

        /** Turned so that the way from other to meant is positive. */
        private Optional<Moments.Pivot> pivot(Intent meant, Intent other) {
            if (meant == other) {
                throw new IllegalArgumentException("two shapes are needed, but both were " + meant.key());
            }
            double[] x = values(Metric.CURVE, meant);
            double[] y = values(Metric.CURVE, other);
            if (Math.min(x.length, y.length) < 2) {
                return Optional.empty();
            }
            int sign = Integer.signum(meant.curveSign(hand) - other.curveSign(hand));
            Moments.Pivot pivot = Moments.Pivot.welch(Moments.of(turned(x, sign)), Moments.of(turned(y, sign)));
            return pivot.defined() ? Optional.of(pivot) : Optional.empty();
        }

        /** From the median of each intent with two shots or more. */
        private double[] deviations(Metric metric) {
            return shots.keySet().stream()
                    .map(intent -> values(metric, intent))
                    .filter(values -> values.length > 1)
                    .flatMapToDouble(values -> {
                        double median = Sample.of("values", values).median();
                        return DoubleStream.of(values).map(value -> value - median);
                    })
                    .toArray();
        }

        private static Sample turned(double[] x, int sign) {
            return Sample.of(
                    "curve",
                    IntStream.range(0, x.length).mapToDouble(i -> sign * x[i]).toArray());
        }

        private Pool pool(Metric metric) {
            double squares = 0.0;
            double df = 0.0;
            for (Intent intent : shots.keySet()) {
                double[] values = values(metric, intent);
                if (values.length > 1) {
                    squares +=
                            (values.length - 1.0) * Sample.of("values", values).variance();
                    df += values.length - 1.0;
                }
            }
            return new Pool(squares, df);
        }
    }

    /** Squares about the mean of each intent. */
    private record Pool(double squares, double df) {
        boolean known() {
            return df > 0.0 && squares > 0.0;
        }

        double variance() {
            return squares / df;
        }
    }

    /**
     * What the numbers say to a wish.
     *
     * @param wish what the golfer wants
     * @param estimate the ratio of spreads, first over second, or the difference of answers, first minus second [m]
     * @param lean the club that the whole interval speaks for, and by spread the Brown-Forsythe test too, if any
     */
    public record Advice(Wish wish, Estimate estimate, Lean lean) {}

    /** Two clubs. Immutable and thread-safe. */
    public static final class Comparison {
        private final ClubResult first;
        private final ClubResult second;
        private final double level;

        private Comparison(ClubResult first, ClubResult second, double level) {
            this.first = first;
            this.second = second;
            this.level = level;
        }

        /**
         * The first club.
         *
         * @return its spreads and answers
         */
        public ClubResult first() {
            return first;
        }

        /**
         * The second club.
         *
         * @return its spreads and answers
         */
        public ClubResult second() {
            return second;
        }

        /**
         * The ratio of the spreads at fixed intent.
         *
         * @param metric which
         * @return first over second, by the F distribution; empty if a club has no spread of it
         */
        public Optional<Estimate> spreadRatio(Metric metric) {
            Pool x = first.pool(metric);
            Pool y = second.pool(metric);
            if (!x.known() || !y.known()) {
                return Optional.empty();
            }
            double f = x.variance() / y.variance();
            double high = 0.5 * (1.0 + level);
            return Optional.of(Estimate.of(
                    Math.sqrt(f),
                    Interval.of(
                            Math.sqrt(f / Distributions.fQuantile(high, x.df(), y.df())),
                            Math.sqrt(f * Distributions.fQuantile(high, y.df(), x.df())),
                            level),
                    RatioUnit.ONE));
        }

        /**
         * The difference of the answers to the same two intents.
         *
         * @param meant the one shape
         * @param other the other
         * @return first minus second [m]; empty if a club has no answer
         * @throws IllegalArgumentException if both shapes are the same
         */
        public Optional<Estimate> answerDifference(Intent meant, Intent other) {
            Optional<Moments.Pivot> x = first.pivot(meant, other);
            Optional<Moments.Pivot> y = second.pivot(meant, other);
            if (x.isEmpty() || y.isEmpty()) {
                return Optional.empty();
            }
            double a = x.get().standardError() * x.get().standardError();
            double b = y.get().standardError() * y.get().standardError();
            // Satterthwaite once more: exact for the four variances, because a df of each is (sum v)^2 / sum v^2/df.
            double df = (a + b)
                    * (a + b)
                    / (a * a / x.get().degreesOfFreedom() + b * b / y.get().degreesOfFreedom());
            double value = x.get().estimate() - y.get().estimate();
            double reach = Distributions.tQuantile(0.5 * (1.0 + level), df) * Math.sqrt(a + b);
            return Optional.of(
                    Estimate.of(value, Interval.of(value - reach, value + reach, level), Metric.CURVE.siUnit()));
        }

        /**
         * What the numbers say to a wish.
         *
         * @param wish what the golfer wants
         * @return the number with its interval and which club it leans to; empty where the shots cannot tell
         */
        public Optional<Advice> advice(Wish wish) {
            if (wish == Wish.SHAPE_SHOTS) {
                return answerDifference(Intent.DRAW, Intent.FADE)
                        .map(e -> new Advice(wish, e, lean(e.interval(), 0.0, Lean.FIRST, Lean.SECOND)));
            }
            return spreadRatio(wish.metric).map(e -> {
                Lean byF = lean(e.interval(), 1.0, Lean.SECOND, Lean.FIRST);
                return new Advice(wish, e, byF == leanByMedians(wish.metric) ? byF : Lean.OPEN);
            });
        }

        /**
         * What to know of the comparison, beside the warnings of each club.
         *
         * @return {@code not-normal} for each usual metric whose F interval alone speaks for a club; unmodifiable
         */
        public List<Warning> warnings() {
            List<Warning> warnings = new ArrayList<>();
            for (Metric metric : REPEATED) {
                spreadRatio(metric)
                        .map(e -> lean(e.interval(), 1.0, Lean.SECOND, Lean.FIRST))
                        .filter(byF -> byF != Lean.OPEN && byF != leanByMedians(metric))
                        .ifPresent(byF -> warnings.add(Warning.of(
                                "not-normal",
                                "the interval of the ratio of spreads of " + metric.key()
                                        + " holds for normal shots only, and a test that mishits do not mislead can't"
                                        + " tell the clubs apart; look at the farthest shots first")));
            }
            return List.copyOf(warnings);
        }

        /** Brown-Forsythe, which holds its level with mishits. */
        private Lean leanByMedians(Metric metric) {
            double[] x = first.deviations(metric);
            double[] y = second.deviations(metric);
            if (Math.min(x.length, y.length) < 3) {
                return Lean.OPEN;
            }
            TestResult test = BrownForsytheTest.withDefaults().withLevel(level).test(x, y);
            if (test.statistic().isEmpty() || test.pValue() >= 1.0 - level) {
                return Lean.OPEN;
            }
            return test.estimate().value() > 0.0 ? Lean.SECOND : Lean.FIRST;
        }

        /**
         * Everything that the shots can tell about every wish.
         *
         * @return the advice in the order of the wishes, unmodifiable
         */
        public List<Advice> advice() {
            List<Advice> all = new ArrayList<>();
            for (Wish wish : Wish.values()) {
                advice(wish).ifPresent(all::add);
            }
            return List.copyOf(all);
        }

        private static Lean lean(Interval interval, double none, Lean above, Lean below) {
            return interval.lower() > none ? above : interval.upper() < none ? below : Lean.OPEN;
        }
    }

    /**
     * The metrics whose repeatability is of interest.
     *
     * @return start direction, curve, side and carry, unmodifiable
     */
    public static List<Metric> repeated() {
        return List.of(REPEATED);
    }
}
