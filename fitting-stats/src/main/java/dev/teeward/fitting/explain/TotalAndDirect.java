package dev.teeward.fitting.explain;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.MetricGroup;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.compare.Exclusion;
import dev.teeward.fitting.compare.HeadToHeadResult;
import dev.teeward.fitting.compare.TestResult;
import dev.teeward.fitting.linear.Coefficient;
import dev.teeward.fitting.linear.ErrorModel;
import dev.teeward.fitting.linear.LinearFit;
import dev.teeward.fitting.linear.MeanDecomposition;
import dev.teeward.fitting.linear.ReadingErrorCorrection;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * The whole difference of two clubs beside the difference at equal delivery.
 *
 * <p>The total difference is what the golfer gets when handed the club. The direct one is the coefficient of the club beside
 * two or three covariates of the delivery: what the club would do to the same swing, if nothing else moved. They differ by
 * exactly sum of slope times difference of the covariate, {@link MeanDecomposition}. Pairs are kept whole: the differences
 * within pairs are fitted, which is the model with an effect of each pair, with the textbook error: differences within pairs have
 * one variance even if the clubs scatter differently. Without pairs errors are HC3 (MacKinnon and White 1985), so that clubs may
 * scatter differently. Both with t. {@link ClubOrSwing} judges by these very numbers.
 *
 * <p><b>What adjusting can say at ten shots, and what it cannot.</b> Ten pairs and two covariates leave seven degrees of
 * freedom. Where the deliveries were much the same, total and direct agree and adjusting only takes out scatter. Where they
 * were not, the slopes must come from the same few shots: the interval of the direct difference is long, and only large
 * effects of the club show. Covariates must be chosen before the shots are seen; the best of many always explains something.
 * A covariate read with error has its slope drawn towards 0, and too little of the difference is given to it; where the
 * session states that error, {@link Result#corrected()} makes up for it. If the club
 * itself changes the covariate (a longer shaft the speed, another grip the face), adjusting takes a real effect of the club
 * away: then the total is the answer. A delivery that was not measured is not adjusted for. None of this proves a cause.
 *
 * <pre>{@code
 * TotalAndDirect.Result r = TotalAndDirect.withDefaults().explain(result, Metric.CURVE).orElseThrow();
 * r.total().estimate();                                    // as hit
 * r.direct().estimate();                                   // at the same face to path and club speed
 * r.explained().get(Metric.FACE_TO_PATH).estimate();       // slope times difference
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class TotalAndDirect {
    private static final int MOST = 3;
    private static final int FEWEST_DEGREES = 3;
    private static final int FEW_PAIRS = 20;
    private static final TotalAndDirect DEFAULTS = new TotalAndDirect(usual());
    private static final TotalAndDirect GOLFER_SIDE = new TotalAndDirect(golfer());

    private final Map<Metric, List<Metric>> covariates;

    private TotalAndDirect(Map<Metric, List<Metric>> covariates) {
        this.covariates = covariates;
    }

    private static Map<Metric, List<Metric>> usual() {
        Map<Metric, List<Metric>> map = new EnumMap<>(Metric.class);
        map.put(Metric.BALL_SPEED, List.of(Metric.CLUB_SPEED, Metric.STRIKE_TOE));
        map.put(Metric.START_DIRECTION, List.of(Metric.FACE_ANGLE, Metric.CLUB_PATH));
        map.put(Metric.CURVE, List.of(Metric.FACE_TO_PATH, Metric.CLUB_SPEED));
        map.put(Metric.SIDE, List.of(Metric.FACE_ANGLE, Metric.CLUB_PATH));
        map.put(Metric.CARRY, List.of(Metric.CLUB_SPEED, Metric.ATTACK_ANGLE));
        map.put(Metric.APEX, List.of(Metric.CLUB_SPEED, Metric.ATTACK_ANGLE));
        map.put(Metric.DESCENT_ANGLE, List.of(Metric.CLUB_SPEED, Metric.ATTACK_ANGLE));
        map.put(Metric.LAUNCH_ANGLE, List.of(Metric.CLUB_SPEED, Metric.ATTACK_ANGLE));
        map.put(Metric.SPIN_RATE, List.of(Metric.CLUB_SPEED, Metric.ATTACK_ANGLE));
        map.put(Metric.TOTAL, List.of(Metric.CLUB_SPEED, Metric.ATTACK_ANGLE));
        return map;
    }

    /**
     * Covariates that the geometry of impact suggests, two for each outcome: speed and attack angle for what goes up and far,
     * face and path for where the ball starts and ends, face to path and speed for the curve, speed and the strike along the
     * face for the ball speed (common practice, no source). Dynamic loft is not among them: it is the club's doing as much as
     * the golfer's.
     *
     * @return the default procedure
     */
    public static TotalAndDirect withDefaults() {
        return DEFAULTS;
    }

    private static Map<Metric, List<Metric>> golfer() {
        Map<Metric, List<Metric>> map = usual();
        map.put(Metric.BALL_SPEED, List.of(Metric.CLUB_SPEED));
        for (Metric outcome : List.of(Metric.START_DIRECTION, Metric.CURVE, Metric.SIDE)) {
            map.put(outcome, List.of(Metric.CLUB_PATH, Metric.CLUB_SPEED));
        }
        return map;
    }

    /**
     * Covariates of the golfer's side only ({@link SwingSide#GOLFER}), on which {@link ClubOrSwing} rests: path and speed for
     * start, curve and side, speed for the ball speed, the others as by {@link #withDefaults()} (common practice, no source).
     * Face, loft, lie and strike are where club and golfer meet: a club that opens the face is not a swing that differed.
     *
     * @return the procedure
     */
    public static TotalAndDirect ofGolferSide() {
        return GOLFER_SIDE;
    }

    /** The first covariate that is not of the approach of the club, if there is one. */
    Optional<Metric> beyondTheApproach() {
        return covariates.values().stream()
                .flatMap(List::stream)
                .filter(m -> m.group() != MetricGroup.APPROACH)
                .findFirst();
    }

    /**
     * With covariates of an outcome.
     *
     * @param outcome which
     * @param chosen one to three different metrics, not the outcome itself, chosen before the shots are looked at
     * @return a changed copy
     * @throws IllegalArgumentException if they are none, more than three, not different, or the outcome is among them
     */
    public TotalAndDirect withCovariates(Metric outcome, Metric... chosen) {
        List<Metric> list = List.of(chosen);
        if (list.isEmpty() || list.size() > MOST || list.stream().distinct().count() < list.size()) {
            throw new IllegalArgumentException("covariates must be 1 to " + MOST + " different metrics, but were "
                    + list.stream().map(Metric::key).toList() + "; twenty shots carry two or three");
        }
        if (list.contains(Objects.requireNonNull(outcome, "outcome"))) {
            throw new IllegalArgumentException("covariates must not hold the outcome, but held " + outcome.key());
        }
        Map<Metric, List<Metric>> changed = new EnumMap<>(covariates);
        changed.put(outcome, list);
        return new TotalAndDirect(changed);
    }

    /**
     * The covariates of an outcome.
     *
     * @param outcome which
     * @return the covariates, or none if the outcome has none
     */
    public List<Metric> covariates(Metric outcome) {
        return covariates.getOrDefault(outcome, List.of());
    }

    /**
     * Puts both differences side by side.
     *
     * @param result two clubs compared; its level is taken
     * @param outcome what is to be explained
     * @return both, or empty if the outcome has no covariate that was measured, fewer than three degrees of freedom would be
     *     left, or the covariates do not vary on their own
     */
    public Optional<Result> explain(HeadToHeadResult result, Metric outcome) {
        List<Metric> measured = covariates(outcome).stream()
                .filter(m -> result.find(m).isPresent())
                .toList();
        if (measured.isEmpty() || result.find(outcome).isEmpty()) {
            return Optional.empty();
        }
        List<Metric> needed = new ArrayList<>(measured);
        needed.add(outcome);
        Readings readings = Readings.of(result, needed);
        int rows = readings.paired() ? readings.firstSize() : readings.firstSize() + readings.secondSize();
        int terms = measured.size() + (readings.paired() ? 1 : 2);
        if (readings.fewest() < 2 || rows - terms < FEWEST_DEGREES) {
            return Optional.empty();
        }
        MeanDecomposition procedure = MeanDecomposition.withDefaults()
                .withLevel(result.level())
                .withUnit(outcome.siUnit())
                .withErrors(readings.paired() ? ErrorModel.CONSTANT : ErrorModel.HC3);
        MeanDecomposition.Result split;
        try {
            split = readings.paired()
                    ? pairs(procedure, readings, measured, outcome)
                    : shots(procedure, readings, measured, outcome);
        } catch (IllegalArgumentException dependent) {
            // The readings are finite and enough, so one covariate is a combination of the others.
            return Optional.empty();
        }
        return Optional.of(new Result(
                outcome,
                measured,
                readings,
                split,
                readingErrors(result, measured, outcome, readings),
                result.level(),
                missing(outcome, measured)));
    }

    private static ReadingErrors readingErrors(
            HeadToHeadResult result, List<Metric> covariates, Metric outcome, Readings readings) {
        Session session = result.session();
        List<Metric> stated =
                covariates.stream().filter(m -> stated(session, m) > 0.0).toList();
        if (stated.isEmpty()) {
            return new ReadingErrors(stated, Optional.empty(), "");
        }
        ReadingErrorCorrection procedure =
                ReadingErrorCorrection.withDefaults().withLevel(result.level()).withUnit(outcome.siUnit());
        double[] errors =
                covariates.stream().mapToDouble(m -> stated(session, m)).toArray();
        double[][] x = covariates.stream()
                .map(m -> readings.paired() ? readings.differences(m) : readings.both(m))
                .toArray(double[][]::new);
        return new ReadingErrors(
                stated,
                readings.paired()
                        ? procedure.pairs(x, errors, readings.differences(outcome))
                        : procedure.shots(readings.firstSize(), x, errors, readings.both(outcome)),
                procedure.method(readings.paired()));
    }

    /** The stated error of a reading, 0 if none is; face to path is read as a difference of two unless it has an error of its own. */
    private static double stated(Session session, Metric metric) {
        if (metric == Metric.FACE_TO_PATH && session.tolerance(metric).isEmpty()) {
            return Math.hypot(stated(session, Metric.FACE_ANGLE), stated(session, Metric.CLUB_PATH));
        }
        return session.tolerance(metric).orElse(0.0);
    }

    /** Which covariates are stated to be read with error, and the direct difference corrected for it, if that can be done. */
    private record ReadingErrors(List<Metric> stated, Optional<Coefficient> corrected, String method) {}

    private List<Warning> missing(Metric outcome, List<Metric> measured) {
        return covariates(outcome).stream()
                .filter(m -> !measured.contains(m))
                .map(m -> Warning.of(
                        "covariate-not-measured",
                        m.label() + " was not measured with both clubs, so it could not be held equal"))
                .toList();
    }

    private static MeanDecomposition.Result pairs(
            MeanDecomposition procedure, Readings readings, List<Metric> covariates, Metric outcome) {
        Map<String, double[]> differences = new LinkedHashMap<>();
        covariates.forEach(m -> differences.put(m.key(), readings.differences(m)));
        return procedure.decomposePairs(differences, readings.differences(outcome));
    }

    private static MeanDecomposition.Result shots(
            MeanDecomposition procedure, Readings readings, List<Metric> covariates, Metric outcome) {
        String[] club = new String[readings.firstSize() + readings.secondSize()];
        Arrays.fill(club, "second");
        Arrays.fill(club, 0, readings.firstSize(), "first");
        Map<String, double[]> values = new LinkedHashMap<>();
        covariates.forEach(m -> values.put(m.key(), readings.both(m)));
        return procedure.decompose("second", club, values, readings.both(outcome));
    }

    /**
     * Both differences, and what lies between them.
     *
     * <p>Warnings: those of {@link LinearFit} ({@code collinear}, {@code many-coefficients} and others),
     * {@code few-to-adjust} (fewer than twenty pairs, or shots a club), {@code covariate-moved} (a covariate differs between the
     * clubs: if the club did that, the direct difference leaves it out; if it was read with error, the direct difference keeps
     * a part of it, which more shots do not mend), {@code covariate-read-with-error} (the session states an error of reading
     * of a covariate: {@link #corrected()} takes it off), {@code covariate-not-measured}.
     *
     * <p>Immutable and thread-safe.
     */
    public static final class Result {
        private final Metric outcome;
        private final List<Metric> covariates;
        private final Readings readings;
        private final TestResult total;
        private final MeanDecomposition.Result split;
        private final ReadingErrors errors;
        private final Map<Metric, Coefficient> explained;
        private final Map<Metric, TestResult> differences;
        private final List<Warning> warnings;

        private Result(
                Metric outcome,
                List<Metric> covariates,
                Readings readings,
                MeanDecomposition.Result split,
                ReadingErrors errors,
                double level,
                List<Warning> missing) {
            this.outcome = outcome;
            this.covariates = covariates;
            this.readings = readings;
            this.split = split;
            this.errors = errors;
            this.total = readings.difference(outcome, level);
            Map<Metric, Coefficient> parts = new LinkedHashMap<>();
            Map<Metric, TestResult> moved = new LinkedHashMap<>();
            List<Warning> list = new ArrayList<>(split.fit().warnings());
            list.addAll(missing);
            int df = split.fit().degreesOfFreedom();
            if (readings.fewest() < FEW_PAIRS) {
                list.add(Warning.of(
                        "few-to-adjust",
                        "beside " + covariates.size() + (covariates.size() == 1 ? " covariate " : " covariates ") + df
                                + " degrees of freedom are left: only a large effect of the club can show at equal"
                                + " delivery, and too little is given to what was read with error"));
            }
            for (Metric covariate : covariates) {
                parts.put(covariate, Objects.requireNonNull(split.explained().get(covariate.key()), covariate.key()));
                TestResult difference = readings.difference(covariate, level);
                moved.put(covariate, difference);
                if (difference.significant()) {
                    list.add(Warning.of(
                            "covariate-moved",
                            covariate.label() + " differs between the clubs; if that is the club's own doing, the"
                                    + " difference at equal delivery takes a real effect away; if it was read with"
                                    + " error, too little is given to it and too much to the club, however many"
                                    + " shots there are"));
                }
            }
            for (Metric covariate : errors.stated()) {
                list.add(Warning.of(
                        "covariate-read-with-error",
                        covariate.label() + " is stated to be read with error; "
                                + (errors.corrected().isPresent()
                                        ? "the clubs are called different or the same at equal delivery only if the"
                                                + " difference corrected for that says the same"
                                        : "less than half of the variance of the readings is left without it, so that"
                                                + " club and swing cannot be told apart")));
            }
            this.explained = Collections.unmodifiableMap(parts);
            this.differences = Collections.unmodifiableMap(moved);
            this.warnings = List.copyOf(list);
        }

        /**
         * What is explained.
         *
         * @return the outcome
         */
        public Metric outcome() {
            return outcome;
        }

        /**
         * What was held equal.
         *
         * @return the covariates that were measured, in the order in which they were chosen
         */
        public List<Metric> covariates() {
            return covariates;
        }

        /**
         * The whole difference, of the same shots.
         *
         * @return the difference of the means with the t test of the comparison, first minus second [SI]
         */
        public TestResult total() {
            return total;
        }

        /**
         * The difference at equal delivery.
         *
         * @return the coefficient of the club, first minus second [SI], by {@link #method()}
         */
        public Coefficient direct() {
            return split.direct();
        }

        /**
         * The difference at equal delivery, corrected for the errors with which the session says that covariates are read
         * ({@link Session#tolerance}, taken as independent from shot to shot), by {@link ReadingErrorCorrection}. Less is left
         * to the club by accident.
         *
         * @return the coefficient of the club, first minus second [SI], by {@link #correctedMethod()}, or empty if no error is
         *     stated, or less than half of the variance of the readings is left without it
         */
        public Optional<Coefficient> corrected() {
            return errors.corrected();
        }

        /**
         * What is read with error.
         *
         * @return the covariates for which the session states an error of reading, possibly none
         */
        public List<Metric> readWithError() {
            return errors.stated();
        }

        /**
         * What was really done to correct the difference.
         *
         * @return one line of text, or empty if there is no corrected difference
         */
        public Optional<String> correctedMethod() {
            return errors.corrected().map(c -> errors.method());
        }

        /**
         * What goes with each covariate: slope times difference. With the direct difference they add up to the total.
         *
         * @return the parts by covariate, first minus second [SI unit of the outcome], by the delta method
         */
        public Map<Metric, Coefficient> explained() {
            return explained;
        }

        /**
         * By how much the covariates differ.
         *
         * @return the differences by covariate, first minus second [SI unit of the covariate]
         */
        public Map<Metric, TestResult> differences() {
            return differences;
        }

        /**
         * By how much each covariate's dependence on the others inflates the variance of its slope; above 10 credit cannot be
         * split between them.
         *
         * @return the factors by covariate, at least 1
         */
        public Map<Metric, Double> varianceInflation() {
            Map<String, Double> byName = split.fit().varianceInflation();
            Map<Metric, Double> factors = new LinkedHashMap<>();
            covariates.forEach(m -> factors.put(m, Objects.requireNonNull(byName.get(m.key()), m.key())));
            return Collections.unmodifiableMap(factors);
        }

        /**
         * The model behind the direct difference.
         *
         * @return the fit: of the differences within pairs, or of all shots
         */
        public LinearFit fit() {
            return split.fit();
        }

        /**
         * Whether pairs were kept.
         *
         * @return true for pairs, false for all shots
         */
        public boolean paired() {
            return readings.paired();
        }

        /**
         * How many pairs were used, or shots of each club.
         *
         * @return one number for pairs, two for shots
         */
        public List<Integer> sampleSizes() {
            return readings.sizes();
        }

        /**
         * What was left out.
         *
         * @return pairs or shots that lack a reading, possibly none
         */
        public List<Exclusion> exclusions() {
            return readings.exclusions();
        }

        /**
         * What was really done.
         *
         * @return one line of text
         */
        public String method() {
            return (readings.paired() ? "differences within pairs, " : "all shots, ")
                    + split.fit().method();
        }

        /**
         * What to know before using this.
         *
         * @return the warnings, possibly none
         */
        public List<Warning> warnings() {
            return warnings;
        }

        @Override
        public String toString() {
            return outcome.label() + ": total " + total.estimate() + ", at equal delivery "
                    + split.direct().estimate();
        }
    }
}
