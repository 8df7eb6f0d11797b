package dev.teeward.fitting.explain;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.MetricGroup;
import dev.teeward.fitting.compare.HeadToHeadResult;
import dev.teeward.fitting.compare.MetricComparison;
import dev.teeward.fitting.compare.PracticalMargins;
import dev.teeward.fitting.compare.TestResult;
import dev.teeward.fitting.compare.ThreeWayVerdict;
import dev.teeward.fitting.compare.TostTest;
import dev.teeward.fitting.compare.Verdict;
import dev.teeward.quantity.Interval;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Were the swings the same? Each input of the impact is compared between the clubs, on the side of what the golfer brings and
 * on the side of where club and golfer meet.
 *
 * <p>Every input has the difference with its interval, and the equivalence test against a margin: different, practically the
 * same, or can't tell. The questions of one side are one family, adjusted by Holm (1979) for differences and again for
 * equivalences; a side is different if one of its inputs is, the same only if each of them was measured and is. Differing
 * swings do not tell why: a club may move the golfer as well as the golfer the club.
 *
 * <p>{@link MetricComparison#verdict()} asks the same of all metrics at once, and is stricter for that.
 *
 * <pre>{@code
 * Balance.Result balance = Balance.withDefaults().withMargin(Metric.CLUB_PATH, Math.toRadians(0.8)).compare(result);
 * balance.side(SwingSide.GOLFER);                    // DIFFERENT, PRACTICALLY_THE_SAME or UNDECIDED
 * balance.find(Metric.CLUB_PATH).orElseThrow().difference().estimate();
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class Balance {
    private static final Balance DEFAULTS = new Balance(usual(), PracticalMargins.none());

    private final Map<Metric, SwingSide> sides;
    private final PracticalMargins margins;

    private Balance(Map<Metric, SwingSide> sides, PracticalMargins margins) {
        this.sides = sides;
        this.margins = margins;
    }

    private static Map<Metric, SwingSide> usual() {
        Map<Metric, SwingSide> map = new EnumMap<>(Metric.class);
        for (Metric metric : List.of(Metric.CLUB_SPEED, Metric.ATTACK_ANGLE, Metric.CLUB_PATH)) {
            map.put(metric, SwingSide.GOLFER);
        }
        for (Metric metric : List.of(
                Metric.FACE_ANGLE, Metric.DYNAMIC_LOFT, Metric.DYNAMIC_LIE, Metric.STRIKE_TOE, Metric.STRIKE_UP)) {
            map.put(metric, SwingSide.MEETING);
        }
        return map;
    }

    /**
     * The usual inputs on each {@linkplain SwingSide side}, with the margins of the comparison.
     *
     * @return the default procedure
     */
    public static Balance withDefaults() {
        return DEFAULTS;
    }

    /**
     * With an input on a side.
     *
     * @param input what belongs there: of the approach, the face or the strike
     * @param side where it belongs
     * @return a changed copy
     * @throws IllegalArgumentException if the metric is none of the delivery
     */
    public Balance withInput(Metric input, SwingSide side) {
        MetricGroup group = input.group();
        if (group != MetricGroup.APPROACH && group != MetricGroup.FACE && group != MetricGroup.STRIKE) {
            throw new IllegalArgumentException("input must be of the approach, the face or the strike, but was "
                    + input.key() + ", which comes after the impact");
        }
        Map<Metric, SwingSide> changed = new EnumMap<>(sides);
        changed.put(input, Objects.requireNonNull(side, "side"));
        return new Balance(changed, margins);
    }

    /**
     * Without an input.
     *
     * @param input what is not asked
     * @return a changed copy
     */
    public Balance withoutInput(Metric input) {
        Map<Metric, SwingSide> changed = new EnumMap<>(Metric.class);
        changed.putAll(sides);
        changed.remove(Objects.requireNonNull(input, "input"));
        return new Balance(changed, margins);
    }

    /**
     * With a margin of an input, instead of that of the comparison.
     *
     * @param input which
     * @param si the largest difference that does not matter [SI unit of the metric]
     * @return a changed copy
     * @throws dev.teeward.fitting.compare.ComparisonException if the margin is not above 0, not finite, or absurdly large
     */
    public Balance withMargin(Metric input, double si) {
        return new Balance(sides, margins.with(input, si));
    }

    /**
     * Compares the swings.
     *
     * @param result two clubs compared; its level is taken
     * @return the answers
     */
    public Result compare(HeadToHeadResult result) {
        List<Input> inputs = new ArrayList<>();
        Map<SwingSide, Verdict> together = new EnumMap<>(SwingSide.class);
        List<Metric> missing = new ArrayList<>();
        for (SwingSide side : SwingSide.values()) {
            List<MetricComparison> family = new ArrayList<>();
            boolean whole = true;
            for (Map.Entry<Metric, SwingSide> entry : sides.entrySet()) {
                if (entry.getValue() == side) {
                    Optional<MetricComparison> found = result.find(entry.getKey());
                    found.ifPresent(family::add);
                    if (found.isEmpty()) {
                        missing.add(entry.getKey());
                        whole = false;
                    }
                }
            }
            List<Input> answered = answers(side, family, result.level());
            inputs.addAll(answered);
            boolean known = whole;
            Verdicts.together(answered.stream().map(i -> i.verdict().verdict()).toList())
                    .map(v -> v == Verdict.PRACTICALLY_THE_SAME && !known ? Verdict.UNDECIDED : v)
                    .ifPresent(v -> together.put(side, v));
        }
        return new Result(inputs, together, missing, result.level());
    }

    private List<Input> answers(SwingSide side, List<MetricComparison> family, double level) {
        List<Optional<TostTest.Result>> tests =
                family.stream().map(c -> equivalence(c, level)).toList();
        Verdicts verdicts = new Verdicts(
                family.stream().mapToDouble(c -> c.difference().pValue()).toArray(),
                tests.stream()
                        .mapToDouble(t -> t.map(TostTest.Result::pValue).orElse(1.0))
                        .toArray(),
                1.0 - level);
        List<Input> inputs = new ArrayList<>();
        for (int i = 0; i < family.size(); i++) {
            inputs.add(new Input(
                    family.get(i).metric(),
                    side,
                    family.get(i).difference(),
                    tests.get(i),
                    verdicts.difference(i),
                    tests.get(i).isPresent() ? OptionalDouble.of(verdicts.equivalence(i)) : OptionalDouble.empty(),
                    verdicts.verdict(i)));
        }
        return inputs;
    }

    /** The equivalence test of the comparison, or one against a margin of one's own. */
    private Optional<TostTest.Result> equivalence(MetricComparison c, double level) {
        OptionalDouble own = margins.of(c.metric());
        if (own.isEmpty()) {
            return c.equivalence();
        }
        TostTest test = TostTest.withinMargin(own.getAsDouble())
                .withAlpha(1.0 - level)
                .withUnit(c.metric().siUnit());
        return Optional.of(
                c.paired()
                        ? test.testPairs(c.pairedFirst(), c.pairedSecond())
                        : test.test(c.firstValues(), c.secondValues()));
    }

    /**
     * One input compared.
     *
     * @param metric which
     * @param side where it belongs
     * @param difference the difference of the means, first minus second [SI]
     * @param equivalence the test against the margin, or empty without one
     * @param adjustedP the p of the difference, by Holm over the side
     * @param adjustedEquivalenceP the p of the equivalence, by Holm over the side, or empty without a margin
     * @param verdict what can be said
     */
    public record Input(
            Metric metric,
            SwingSide side,
            TestResult difference,
            Optional<TostTest.Result> equivalence,
            double adjustedP,
            OptionalDouble adjustedEquivalenceP,
            ThreeWayVerdict verdict) {
        /**
         * Within what the swings are the same: the smallest margin that the equivalence test would meet at this level, which is
         * the end farther from 0 of its interval (Hsu, Hwang, Liu and Ruberg 1994, from memory).
         *
         * @return the distance [SI unit of the metric], or empty without a margin or an interval
         */
        public OptionalDouble within() {
            return equivalence.map(test -> test.estimate().interval()).filter(Interval::bounded).stream()
                    .mapToDouble(i -> Math.max(Math.abs(i.lower()), Math.abs(i.upper())))
                    .findFirst();
        }
    }

    /**
     * Whether the swings were the same.
     *
     * <p>Warnings: {@code input-not-compared} (an input was not measured twice with each club, so that its side cannot be
     * called the same).
     *
     * <p>Immutable and thread-safe.
     */
    public static final class Result {
        private final List<Input> inputs;
        private final Map<SwingSide, Verdict> together;
        private final List<Metric> missing;
        private final double level;

        private Result(List<Input> inputs, Map<SwingSide, Verdict> together, List<Metric> missing, double level) {
            this.inputs = List.copyOf(inputs);
            this.together = Collections.unmodifiableMap(together);
            this.missing = List.copyOf(missing);
            this.level = level;
        }

        /**
         * The inputs compared.
         *
         * @return the golfer's side first, within a side in the order in which a shot runs
         */
        public List<Input> inputs() {
            return inputs;
        }

        /**
         * One input.
         *
         * @param metric which
         * @return its answer, or empty if it was not compared
         */
        public Optional<Input> find(Metric metric) {
            return inputs.stream().filter(i -> i.metric() == metric).findFirst();
        }

        /**
         * A side as a whole.
         *
         * @param side which
         * @return different if an input is by Holm's adjustment, the same only if all were measured and are; empty if none was
         *     compared
         */
        public Optional<Verdict> side(SwingSide side) {
            return Optional.ofNullable(together.get(side));
        }

        /**
         * What was asked and could not be compared.
         *
         * @return the metrics, possibly none
         */
        public List<Metric> missing() {
            return missing;
        }

        /**
         * The level of all intervals; differences and equivalences are called at 1 minus it.
         *
         * @return the level
         */
        public double level() {
            return level;
        }

        /**
         * What to know before using this.
         *
         * @return the warnings, possibly none
         */
        public List<Warning> warnings() {
            return missing.stream()
                    .map(metric -> Warning.of(
                            "input-not-compared",
                            metric.label()
                                    + " was not measured twice with each club, so it is not known whether it was the"
                                    + " same"))
                    .toList();
        }

        @Override
        public String toString() {
            return together.toString();
        }
    }
}
