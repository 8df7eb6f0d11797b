package dev.teeward.fitting.compare;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Origin;
import dev.teeward.fitting.Reading;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.ShotPair;
import dev.teeward.fitting.ShotSet;
import dev.teeward.fitting.internal.Distributions;
import dev.teeward.fitting.internal.Sample;
import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.Interval;
import dev.teeward.quantity.RatioUnit;
import dev.teeward.quantity.Unit;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;

/** Looks for what goes with the differences of two clubs, one candidate at a time, at most eight for an outcome. */
final class AssociationSearch {
    /** What can plausibly move what, by the geometry of impact and flight. */
    private static final Map<Metric, List<Metric>> CANDIDATES = candidates();

    private final HeadToHeadResult result;
    private final ClubShots first;
    private final ClubShots second;
    private final ShotPairing pairing;
    private final double level;

    /** Of the pairs with both metrics: mostly all, whose numbers and differences serve every candidate. */
    private final Map<Metric, Pairs> ofAllPairs = new EnumMap<>(Metric.class);

    /** Which metrics all used shots of both clubs have, and so all pairs. */
    private final Map<Metric, Boolean> everywhere = new EnumMap<>(Metric.class);

    /** Whether a used shot of either club has a number of the metric from the flight model. */
    private final Map<Metric, Boolean> anyComputed = new EnumMap<>(Metric.class);

    /** The differences of pairs about their mean, and the test of them. */
    private static final class Pairs {
        private final double[] centred;
        private final TestResult difference;

        Pairs(double[] centred, TestResult difference) {
            this.centred = centred;
            this.difference = difference;
        }
    }

    private final Map<Double, Double> reaches = new HashMap<>();

    AssociationSearch(HeadToHeadResult result) {
        this.result = result;
        this.first = result.first();
        this.second = result.second();
        this.pairing = result.pairing();
        this.level = result.level();
    }

    private static Map<Metric, List<Metric>> candidates() {
        Map<Metric, List<Metric>> map = new EnumMap<>(Metric.class);
        map.put(
                Metric.START_DIRECTION,
                List.of(Metric.FACE_ANGLE, Metric.CLUB_PATH, Metric.DYNAMIC_LIE, Metric.STRIKE_TOE));
        map.put(
                Metric.CURVE,
                List.of(
                        Metric.FACE_TO_PATH,
                        Metric.FACE_ANGLE,
                        Metric.CLUB_PATH,
                        Metric.DYNAMIC_LIE,
                        Metric.STRIKE_TOE,
                        Metric.SPIN_RATE,
                        Metric.AXIS_TILT,
                        Metric.BALL_SPEED));
        map.put(
                Metric.SIDE,
                List.of(
                        Metric.START_DIRECTION,
                        Metric.AXIS_TILT,
                        Metric.FACE_ANGLE,
                        Metric.CLUB_PATH,
                        Metric.FACE_TO_PATH,
                        Metric.DYNAMIC_LIE,
                        Metric.STRIKE_TOE));
        map.put(
                Metric.CARRY,
                List.of(
                        Metric.BALL_SPEED,
                        Metric.LAUNCH_ANGLE,
                        Metric.SPIN_RATE,
                        Metric.CLUB_SPEED,
                        Metric.DYNAMIC_LOFT,
                        Metric.ATTACK_ANGLE,
                        Metric.STRIKE_TOE,
                        Metric.STRIKE_UP));
        map.put(
                Metric.BALL_SPEED,
                List.of(Metric.CLUB_SPEED, Metric.SPIN_LOFT, Metric.DYNAMIC_LOFT, Metric.STRIKE_TOE, Metric.STRIKE_UP));
        return map;
    }

    List<Association> find() {
        List<Association> all = new ArrayList<>();
        CANDIDATES.forEach((outcome, candidates) -> {
            List<Association> found = new ArrayList<>();
            for (Metric candidate : candidates) {
                ShotSet x = with(first.used(), outcome, candidate);
                ShotSet y = with(second.used(), outcome, candidate);
                if (x.size() >= 2 && y.size() >= 2) {
                    found.add(associate(outcome, candidate, x, y));
                }
            }
            double[] p = PValueAdjustment.HOLM.adjust(
                    found.stream().mapToDouble(a -> a.slope().pValue()).toArray());
            List<Association> adjusted = new ArrayList<>();
            for (int i = 0; i < p.length; i++) {
                adjusted.add(found.get(i).withAdjustedP(p[i]));
            }
            adjusted.sort(Comparator.comparingDouble(a -> -Math.abs(a.part().value())));
            all.addAll(adjusted);
        });
        return all;
    }

    private Association associate(Metric outcome, Metric candidate, ShotSet x, ShotSet y) {
        List<ShotPair> pairs = pairs(outcome, candidate);
        boolean paired = pairing.enough() && pairs.size() >= 2 && 2 * pairs.size() >= Math.min(x.size(), y.size());
        TestResult slope;
        TestResult moved;
        TestResult differs;
        if (paired) {
            Pairs result = pairs(pairs, outcome);
            Pairs cause = pairs(pairs, candidate);
            slope = pairedSlope(cause.centred, result.centred);
            moved = result.difference;
            differs = cause.difference;
        } else {
            slope = slope(x.values(candidate), y.values(candidate), x.values(outcome), y.values(outcome), level);
            moved = difference(false, outcome, x.values(outcome), y.values(outcome));
            differs = difference(false, candidate, x.values(candidate), y.values(candidate));
        }
        List<Warning> warnings = new ArrayList<>();
        if (anyComputed.computeIfAbsent(outcome, this::anyComputed) && (computed(x, outcome) || computed(y, outcome))) {
            warnings.add(Warning.of(
                    "computed-outcome",
                    outcome.label()
                            + " was computed by the flight model from other readings, so that going with them is"
                            + " partly by construction"));
        }
        return new Association(
                outcome,
                candidate,
                slope,
                moved,
                differs,
                part(slope, differs, outcome.siUnit(), level, this::reach),
                slope.pValue(),
                warnings);
    }

    private boolean everywhere(Metric metric) {
        return everywhere.computeIfAbsent(
                metric,
                m -> first.used().with(m).size() == first.used().size()
                        && second.used().with(m).size() == second.used().size());
    }

    private ShotSet with(ShotSet shots, Metric outcome, Metric candidate) {
        return everywhere(outcome) && everywhere(candidate)
                ? shots
                : shots.filter(shot -> shot.has(outcome) && shot.has(candidate));
    }

    /** The pairs that have both metrics with both clubs. */
    private List<ShotPair> pairs(Metric outcome, Metric candidate) {
        if (everywhere(outcome) && everywhere(candidate)) {
            return pairing.pairs();
        }
        List<ShotPair> pairs = new ArrayList<>();
        for (ShotPair pair : pairing.pairs()) {
            if (pair.first().has(outcome)
                    && pair.first().has(candidate)
                    && pair.second().has(outcome)
                    && pair.second().has(candidate)) {
                pairs.add(pair);
            }
        }
        return pairs;
    }

    private boolean anyComputed(Metric metric) {
        Optional<MetricComparison> compared = result.find(metric);
        return compared.isPresent()
                ? compared.get().firstOrigins().computed()
                                + compared.get().secondOrigins().computed()
                        > 0
                : computed(first.used(), metric) || computed(second.used(), metric);
    }

    private static boolean computed(ShotSet shots, Metric metric) {
        for (Shot shot : shots) {
            Optional<Reading> reading = shot.reading(metric);
            if (reading.isPresent() && reading.get().origin() == Origin.COMPUTED) {
                return true;
            }
        }
        return false;
    }

    private Pairs pairs(List<ShotPair> pairs, Metric metric) {
        return pairs.size() == pairing.pairs().size()
                ? ofAllPairs.computeIfAbsent(metric, this::numbersOfAll)
                : numbers(pairs, metric);
    }

    /** Of a metric that all pairs have, which the comparison therefore has together. */
    private Pairs numbersOfAll(Metric metric) {
        Optional<MetricComparison> compared =
                result.find(metric).filter(c -> c.pairs() == pairing.pairs().size());
        return compared.isPresent()
                ? pairs(metric, compared.get().pairedFirst(), compared.get().pairedSecond())
                : numbers(pairing.pairs(), metric);
    }

    private Pairs numbers(List<ShotPair> pairs, Metric metric) {
        double[] one = new double[pairs.size()];
        double[] two = new double[pairs.size()];
        for (int i = 0; i < one.length; i++) {
            one[i] = pairs.get(i).first().value(metric);
            two[i] = pairs.get(i).second().value(metric);
        }
        return pairs(metric, one, two);
    }

    private Pairs pairs(Metric metric, double[] one, double[] two) {
        return new Pairs(differences(one, two), difference(true, metric, one, two));
    }

    private TestResult difference(boolean paired, Metric metric, double[] x, double[] y) {
        return paired
                ? PairedTTest.withDefaults()
                        .withLevel(level)
                        .withUnit(metric.siUnit())
                        .test(x, y)
                : WelchTTest.withDefaults()
                        .withLevel(level)
                        .withUnit(metric.siUnit())
                        .test(x, y);
    }

    static TestResult slope(double[] x1, double[] x2, double[] y1, double[] y2, double level) {
        double[] u = centred(x1, x2);
        return slope("within clubs", u, centred(y1, y2), u.length, u.length - 3.0, level);
    }

    /** With an effect of each pair beside that of the club: what both shots of a pair share tells nothing. */
    private TestResult pairedSlope(double[] cause, double[] result) {
        return slope("within clubs and pairs", cause, result, 2 * cause.length, cause.length - 2.0, level);
    }

    /** Of pairs about their mean; exactly 0 when all are alike but for rounding. */
    private static double[] differences(double[] x, double[] y) {
        Sample d = Sample.differences("first", x, "second", y);
        return d.constant() ? new double[x.length] : d.plus(-d.mean()).toArray();
    }

    private static TestResult slope(String kind, double[] u, double[] v, int shots, double df, double level) {
        double uu = Moments.products(u, u);
        double uv = Moments.products(u, v);
        double vv = Moments.products(v, v);
        TestResult.Draft draft = new TestResult.Draft(
                        "least-squares slope " + kind + ", two-sided", "t", Options.DEFAULTS.withLevel(level))
                .sizes(shots);
        if (!(df > 0.0)) {
            return draft.warn("too-few-shots", "too few shots for a slope beside the mean of each club")
                    .unanswered(0.0);
        }
        if (!(uu > 0.0)) {
            return draft.warn("no-spread", "the candidate does not vary within the clubs, so there is no slope")
                    .unanswered(0.0);
        }
        double slope = uv / uu;
        double left = vv - slope * uv;
        if (!(left > 1e-20 * vv)) {
            return draft.warn("no-spread", "the shots lie on the line exactly, so there is no measure of error")
                    .unanswered(slope);
        }
        return new Moments.Pivot(slope, Math.sqrt(left / df / uu), df)
                .result(draft, Options.DEFAULTS.withLevel(level).withUnit(RatioUnit.ONE));
    }

    private static double[] centred(double[] x, double[] y) {
        Sample one = Sample.of("first", x);
        Sample two = Sample.of("second", y);
        double[] all = new double[x.length + y.length];
        for (int i = 0; i < x.length; i++) {
            all[i] = one.constant() ? 0.0 : x[i] - one.mean();
        }
        for (int i = 0; i < y.length; i++) {
            all[x.length + i] = two.constant() ? 0.0 : y[i] - two.mean();
        }
        return all;
    }

    /** How many standard errors an interval reaches to each side; only a few degrees of freedom come up. */
    private double reach(double df) {
        return reaches.computeIfAbsent(df, d -> reach(d, level));
    }

    private static double reach(double df, double level) {
        return Distributions.tQuantile(1.0 - 0.5 * (1.0 - level), df);
    }

    static Estimate part(TestResult slope, TestResult difference, Unit unit, double level) {
        return part(slope, difference, unit, level, df -> reach(df, level));
    }

    /** The product of two independent estimates; its variance is b^2 V(d) + d^2 V(b) + V(b) V(d). */
    private static Estimate part(
            TestResult slope, TestResult difference, Unit unit, double level, DoubleUnaryOperator reaches) {
        double b = slope.estimate().value();
        double d = difference.estimate().value();
        if (slope.statistic().isEmpty() || difference.statistic().isEmpty()) {
            return Estimate.of(b * d, Interval.unbounded(level), unit);
        }
        double sb = error(slope, reaches);
        double sd = error(difference, reaches);
        double df = Math.min(
                slope.degreesOfFreedom().get(0), difference.degreesOfFreedom().get(0));
        double reach = reaches.applyAsDouble(df) * Math.sqrt(b * b * sd * sd + d * d * sb * sb + sb * sb * sd * sd);
        return Estimate.of(b * d, Interval.of(b * d - reach, b * d + reach, level), unit);
    }

    private static double error(TestResult result, DoubleUnaryOperator reaches) {
        double df = result.degreesOfFreedom().get(0);
        return result.estimate().interval().halfWidth() / reaches.applyAsDouble(df);
    }
}
