package dev.teeward.fitting.explain;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.compare.HeadToHeadResult;
import dev.teeward.fitting.compare.Verdict;
import dev.teeward.fitting.internal.Distributions;
import dev.teeward.fitting.internal.LeastSquares;
import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.Interval;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;

/**
 * Whether physics and the shots themselves give an input the same part of a difference: the share by flights beside slope
 * times difference, the slopes being those of the shots.
 *
 * <p>The two lean on the same readings, so their difference is judged as one number, by its jackknife error over pairs (Tukey
 * 1958; over the shots of both clubs without pairs; of more than a hundred, by groups) and t with the degrees of freedom of the linear model. They agree on an
 * input if the difference lies within the margin of the outcome by two one-sided tests, and disagree if it is not 0 and not
 * within it, both by Holm over the inputs of the outcome. Disagreement means that the flight model, the device or a
 * straight line is wrong, or that something unmeasured goes along with the input.
 *
 * <pre>{@code
 * Agreement curve = why.agreement(Metric.CURVE).orElseThrow();
 * curve.accord();          // AGREE, DISAGREE or UNDECIDED
 * curve.inputs().get(0);   // the axis tilt by flights and by the line
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 *
 * @param outcome whose difference was split
 * @param inputs what both views give to each input
 * @param accord disagreement if they disagree on one input, agreement only if they agree on all
 * @param margin up to what they count as agreeing: the margin of the outcome [SI], or empty without one
 * @param degreesOfFreedom of the linear model, and of the intervals
 * @param method what was really done, one line of text
 * @param warnings {@code computed-outcome}: some readings of the outcome are flights themselves, so that the views agree by
 *     construction
 */
public record Agreement(
        Metric outcome,
        List<Input> inputs,
        Accord accord,
        OptionalDouble margin,
        int degreesOfFreedom,
        String method,
        List<Warning> warnings) {
    private static final int FEWEST_DEGREES = 3;
    private static final Map<Metric, List<Metric>> LAUNCH = launch();
    private static final Map<Metric, List<Metric>> DELIVERY = delivery();

    /** What two views of the same difference say. */
    public enum Accord {
        /** Their difference is surely below what matters. */
        AGREE,

        /** Their difference is not 0, and it may matter. */
        DISAGREE,

        /** Neither can be told. */
        UNDECIDED
    }

    /**
     * Both views of one input.
     *
     * @param input which
     * @param byFlights its share by flights [SI unit of the outcome]
     * @param byLine slope times difference, with a jackknife interval [SI unit of the outcome]
     * @param apart the first minus the second, with a jackknife interval [SI unit of the outcome]
     * @param adjustedP the p of no difference between the views, by Holm over the inputs
     * @param accord what can be said of this input
     */
    public record Input(
            Metric input, Estimate byFlights, Estimate byLine, Estimate apart, double adjustedP, Accord accord) {}

    /**
     * Copies the lists.
     *
     * @param outcome whose difference was split
     * @param inputs what both views give to each input
     * @param accord what they say together
     * @param margin up to what they count as agreeing [SI], or empty
     * @param degreesOfFreedom of the linear model, and of the intervals
     * @param method what was really done
     * @param warnings what to know
     */
    public Agreement {
        Objects.requireNonNull(outcome, "outcome");
        Objects.requireNonNull(accord, "accord");
        Objects.requireNonNull(margin, "margin");
        Objects.requireNonNull(method, "method");
        inputs = List.copyOf(inputs);
        warnings = List.copyOf(warnings);
    }

    /** At most three inputs that an outcome depends on most. */
    private static Map<Metric, List<Metric>> launch() {
        Map<Metric, List<Metric>> map = new EnumMap<>(Metric.class);
        List<Metric> height = List.of(Metric.BALL_SPEED, Metric.LAUNCH_ANGLE, Metric.SPIN_RATE);
        map.put(Metric.CURVE, List.of(Metric.AXIS_TILT, Metric.BALL_SPEED));
        map.put(Metric.CARRY, height);
        map.put(Metric.SIDE, List.of(Metric.START_DIRECTION, Metric.AXIS_TILT));
        map.put(Metric.APEX, height);
        map.put(Metric.DESCENT_ANGLE, height);
        return map;
    }

    private static Map<Metric, List<Metric>> delivery() {
        Map<Metric, List<Metric>> map = new EnumMap<>(Metric.class);
        List<Metric> height = List.of(Metric.CLUB_SPEED, Metric.ATTACK_ANGLE, Metric.DYNAMIC_LOFT);
        map.put(Metric.CURVE, List.of(Metric.FACE_ANGLE, Metric.CLUB_PATH));
        map.put(Metric.CARRY, height);
        map.put(Metric.SIDE, List.of(Metric.FACE_ANGLE, Metric.CLUB_PATH));
        map.put(Metric.APEX, height);
        map.put(Metric.DESCENT_ANGLE, height);
        return map;
    }

    /** Compares both views of an outcome; nothing if the shots cannot carry the line. */
    static Optional<Agreement> of(HeadToHeadResult result, FlightCounterfactual.Result flights, OutcomeShares outcome) {
        Metric metric = outcome.outcome();
        Readings readings = flights.readings();
        List<Metric> inputs =
                Objects.requireNonNull((flights.ofDelivery() ? DELIVERY : LAUNCH).get(metric), metric.key());
        if (!readings.all(metric) || !flights.inputs().containsAll(inputs)) {
            return Optional.empty();
        }
        Lines lines = new Lines(readings, inputs, metric);
        Optional<double[][]> parts = lines.degreesOfFreedom() < FEWEST_DEGREES ? Optional.empty() : lines.parts();
        return parts.map(p -> judge(result, flights, outcome, inputs, p, lines.degreesOfFreedom()));
    }

    private static Agreement judge(
            HeadToHeadResult result,
            FlightCounterfactual.Result flights,
            OutcomeShares outcome,
            List<Metric> inputs,
            double[][] parts,
            int df) {
        Metric metric = outcome.outcome();
        Draws draws = flights.draws();
        double[][] shares = flights.drawn(outcome);
        // Only the draws with groups left out have a line; there are random ones after them.
        OptionalDouble margin = result.find(metric).stream()
                .flatMapToDouble(c -> c.margin().stream())
                .findFirst();
        int k = inputs.size();
        Estimate[] line = new Estimate[k];
        Estimate[] apart = new Estimate[k];
        double[] different = new double[k];
        double[] same = new double[k];
        double level = result.level();
        for (int j = 0; j < k; j++) {
            double[] share = shares[flights.inputs().indexOf(inputs.get(j))];
            double[] gap = new double[parts[j].length];
            for (int d = 0; d < gap.length; d++) {
                gap[d] = share[d] - parts[j][d];
            }
            double error = draws.error(gap);
            line[j] = estimate(parts[j][0], draws.error(parts[j]), df, level, metric);
            apart[j] = estimate(gap[0], error, df, level, metric);
            boolean known = error > 0.0 && Double.isFinite(error);
            different[j] = known ? Math.min(1.0, 2.0 * Distributions.tUpperTail(Math.abs(gap[0]) / error, df)) : 1.0;
            same[j] = known && margin.isPresent()
                    ? Distributions.tUpperTail((margin.getAsDouble() - Math.abs(gap[0])) / error, df)
                    : 1.0;
        }
        Verdicts verdicts = new Verdicts(different, same, 1.0 - level);
        List<Input> found = new ArrayList<>();
        for (int j = 0; j < k; j++) {
            found.add(new Input(
                    inputs.get(j),
                    outcome.share(inputs.get(j)).orElseThrow().share(),
                    line[j],
                    apart[j],
                    verdicts.difference(j),
                    accord(verdicts.verdict(j).verdict())));
        }
        Accord together = Verdicts.together(
                        found.stream().map(i -> verdict(i.accord())).toList())
                .map(Agreement::accord)
                .orElseThrow();
        List<Warning> warnings = flights.readings().computed(metric)
                ? List.of(Warning.of(
                        "computed-outcome",
                        metric.label() + " was computed by the flight model, so that both views agree by construction"))
                : List.of();
        return new Agreement(
                metric,
                found,
                together,
                margin,
                df,
                "share by flights less slope times difference, jackknife error over "
                        + (flights.paired() ? "pairs" : "the shots of both clubs") + ", t with " + df
                        + " degrees of freedom",
                warnings);
    }

    private static Estimate estimate(double value, double error, int df, double level, Metric metric) {
        double reach = Distributions.tQuantile(0.5 + 0.5 * level, df) * error;
        return Estimate.of(
                value + 0.0,
                reach > 0.0 && Double.isFinite(reach)
                        ? Interval.of(value - reach, value + reach, level)
                        : Interval.unbounded(level),
                metric.siUnit());
    }

    private static Accord accord(Verdict verdict) {
        return switch (verdict) {
            case DIFFERENT -> Accord.DISAGREE;
            case PRACTICALLY_THE_SAME -> Accord.AGREE;
            case UNDECIDED -> Accord.UNDECIDED;
        };
    }

    private static Verdict verdict(Accord accord) {
        return switch (accord) {
            case DISAGREE -> Verdict.DIFFERENT;
            case AGREE -> Verdict.PRACTICALLY_THE_SAME;
            case UNDECIDED -> Verdict.UNDECIDED;
        };
    }

    /** Slope times difference of all shots, and of all but one. */
    private static final class Lines {
        private final boolean paired;
        private final int firstSize;
        private final double[][] x;
        private final double[] y;

        Lines(Readings readings, List<Metric> inputs, Metric outcome) {
            paired = readings.paired();
            firstSize = readings.firstSize();
            x = inputs.stream()
                    .map(m -> paired ? readings.differences(m) : readings.both(m))
                    .toArray(double[][]::new);
            y = paired ? readings.differences(outcome) : readings.both(outcome);
        }

        int degreesOfFreedom() {
            return y.length - x.length - (paired ? 1 : 2);
        }

        /** By input; first of all shots, then with each group left out. Nothing if a column depends on the others. */
        Optional<double[][]> parts() {
            int secondSize = y.length - firstSize;
            int groups = paired ? Draws.groups(y.length) : Draws.groups(firstSize) + Draws.groups(secondSize);
            int[] group = new int[y.length];
            Arrays.setAll(
                    group,
                    i -> paired
                            ? Draws.group(i, y.length)
                            : i < firstSize
                                    ? Draws.group(i, firstSize)
                                    : Draws.groups(firstSize) + Draws.group(i - firstSize, secondSize));
            double[][] parts = new double[x.length][groups + 1];
            for (int left = -1; left < groups; left++) {
                int out = left;
                Optional<double[]> found = of(IntStream.range(0, y.length)
                        .filter(i -> group[i] != out)
                        .toArray());
                if (found.isEmpty()) {
                    return Optional.empty();
                }
                for (int j = 0; j < x.length; j++) {
                    parts[j][left + 1] = found.get()[j];
                }
            }
            return Optional.of(parts);
        }

        private Optional<double[]> of(int[] rows) {
            int lead = paired ? 1 : 2;
            double[][] columns = new double[x.length + lead][];
            double[] ones = new double[y.length];
            Arrays.fill(ones, 1.0);
            columns[0] = pick(ones, rows);
            if (!paired) {
                double[] club = new double[y.length];
                Arrays.fill(club, 0, firstSize, 1.0);
                columns[1] = pick(club, rows);
            }
            for (int j = 0; j < x.length; j++) {
                columns[lead + j] = pick(x[j], rows);
            }
            LeastSquares squares = LeastSquares.of(columns);
            if (squares.dependentColumn().isPresent()) {
                return Optional.empty();
            }
            double[] beta = squares.solve(pick(y, rows));
            double[] parts = new double[x.length];
            for (int j = 0; j < parts.length; j++) {
                parts[j] = beta[lead + j] * difference(columns[lead + j], columns[lead - 1]);
            }
            return Optional.of(parts);
        }

        /** The mean where the mark is 1 less that where it is 0; of pairs, all marks being 1, the mean. */
        private static double difference(double[] values, double[] mark) {
            double one = 0.0;
            double two = 0.0;
            double count = 0.0;
            for (int i = 0; i < values.length; i++) {
                one += mark[i] * values[i];
                two += (1.0 - mark[i]) * values[i];
                count += mark[i];
            }
            return one / count - (count < values.length ? two / (values.length - count) : 0.0);
        }

        private static double[] pick(double[] values, int[] rows) {
            return Arrays.stream(rows).mapToDouble(i -> values[i]).toArray();
        }
    }
}
