package dev.teeward.fitting.explain;

import dev.teeward.fitting.Metric;
import dev.teeward.flight.FlightModel;
import dev.teeward.flight.impact.ClubHead;
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * The shares of every draw, with few flights. Flown are the draws without random choice and, of the random ones, the sixteen
 * farthest from the middle. The others follow from a {@link CubicFlight}, fitted to six launches for each of its coefficients,
 * of the draws that are farthest then, if it gives every share of those sixteen to 10 % of the share's spread over all draws.
 * Otherwise all are flown.
 *
 * <p>The ends of an interval lie nearer to the middle than those sixteen, and what a third degree leaves grows with the
 * fourth power of the distance: they are within 5 % of that spread of what flights would give (tested). By the chance of 999
 * resamples alone they are uncertain by 8 % of it (of a normal share the root of 0.025 x 0.975 / 999 over the density at that
 * quantile).
 */
final class DrawnShares {
    private static final int CHECKED = 16;
    private static final int LAUNCHES_OF_DRAW = 6;
    private static final double CLOSE = 0.1;
    private static final long SEED = 20_261_130L;

    /** An exchange that changes less than this of what is flown changes it by rounding alone. */
    private static final double ROUNDING = 1e-10;

    /** What is split, by draw. */
    private static final class Split {
        private final double[] totals;
        private final double[][] shares;
        private final double[] lie;

        Split(double[] totals, double[][] shares, double[] lie) {
            this.totals = totals;
            this.shares = shares;
            this.lie = lie;
        }
    }

    private final boolean landed;
    private final boolean flown;
    private final Map<Metric, Split> splits = new EnumMap<>(Metric.class);

    /**
     * Flies.
     *
     * @param outcomes what is split
     * @param inputs what is exchanged
     * @param first the inputs of the first club, by input and draw
     * @param second the inputs of the second club
     * @param lie by how much the lies turn the faces apart, for each draw, or null
     * @param random from which draw on they are random
     * @param model the air and the ball
     * @param head what strikes the ball, or null if the inputs are those of the launch
     */
    DrawnShares(
            List<Metric> outcomes,
            List<Metric> inputs,
            double[][] first,
            double[][] second,
            double @Nullable [] lie,
            int random,
            FlightModel model,
            @Nullable ClubHead head) {
        int draws = first[0].length;
        int[] far = farthest(first, second, random);
        int fitted = CubicFlight.terms(inputs.size());
        boolean many = far.length > CHECKED + fitted;
        int[] exact = many
                ? IntStream.concat(IntStream.range(0, random), Arrays.stream(far, 0, CHECKED))
                        .toArray()
                : IntStream.range(0, draws).toArray();
        Coalitions some = new Coalitions(inputs, first, second, lie, exact, model, head);
        landed = some.landed();
        boolean close = landed && many;
        if (close) {
            Coalitions.Sample sample = some.sample(
                    Arrays.copyOfRange(far, CHECKED, CHECKED + fitted), LAUNCHES_OF_DRAW, new SplittableRandom(SEED));
            Optional<CubicFlight.Design> design = CubicFlight.design(sample.inputs());
            Corners corners = new Corners(inputs, first, second, lie);
            for (Metric outcome : outcomes) {
                Split known = split(some, outcome, lie != null);
                double[] worths = sample.worths(outcome);
                Optional<Split> all = design.filter(d -> Arrays.stream(worths).allMatch(Double::isFinite))
                        .map(d -> d.fit(worths))
                        .flatMap(cubic -> corners.close(cubic, known, exact, random));
                all.ifPresent(split -> splits.put(outcome, split));
                close &= all.isPresent();
            }
        }
        flown = !close;
        if (landed && !close) {
            Coalitions all = many
                    ? new Coalitions(
                            inputs,
                            first,
                            second,
                            lie,
                            IntStream.range(0, draws).toArray(),
                            model,
                            head)
                    : some;
            for (Metric outcome : outcomes) {
                splits.put(outcome, split(all, outcome, lie != null));
            }
        }
    }

    private static Split split(Coalitions of, Metric outcome, boolean lie) {
        return new Split(of.totals(outcome), of.shares(outcome), lie ? of.lieShares(outcome) : new double[0]);
    }

    /** The random draws, those first whose means are farthest from the means of all, each input in units of its own spread. */
    private static int[] farthest(double[][] first, double[][] second, int random) {
        int draws = first[0].length;
        double[] distance = new double[draws];
        for (double[][] club : new double[][][] {first, second}) {
            for (double[] input : club) {
                double squares = 0.0;
                for (int d = random; d < draws; d++) {
                    squares += (input[d] - input[0]) * (input[d] - input[0]);
                }
                for (int d = random; d < draws && squares > 0.0; d++) {
                    distance[d] += (input[d] - input[0]) * (input[d] - input[0]) / squares;
                }
            }
        }
        return IntStream.range(random, draws)
                .boxed()
                .sorted(Comparator.<Integer>comparingDouble(d -> -distance[d]))
                .mapToInt(Integer::intValue)
                .toArray();
    }

    /** Whether both clubs' own means land. */
    boolean landed() {
        return landed;
    }

    /** Whether every draw was flown. */
    boolean flown() {
        return flown;
    }

    private Split of(Metric outcome) {
        return Objects.requireNonNull(splits.get(outcome), outcome.key());
    }

    /** The difference of both clubs' own launches for each draw; NaN where a ball does not land. */
    double[] totals(Metric outcome) {
        return of(outcome).totals;
    }

    /** The share of each input, by input and draw; NaN where a ball does not land. */
    double[][] shares(Metric outcome) {
        return of(outcome).shares;
    }

    /** Of the face's share the part of the lie, by draw. */
    double[] lieShares(Metric outcome) {
        return of(outcome).lie;
    }

    /** The mean launches of both clubs in every draw. */
    private static final class Corners {
        private final double[][] first;
        private final double[][] second;
        private final double @Nullable [] lie;
        private final int face;
        private final int draws;

        Corners(List<Metric> inputs, double[][] first, double[][] second, double @Nullable [] lie) {
            this.first = first;
            this.second = second;
            this.lie = lie;
            face = inputs.indexOf(Metric.FACE_ANGLE);
            draws = first[0].length;
        }

        /** All draws, the known ones as they are, or nothing if the others would not be close. */
        Optional<Split> close(CubicFlight flight, Split known, int[] exact, int random) {
            int k = first.length;
            double[] totals = new double[draws];
            double[][] shares = new double[k][draws];
            double[] part = new double[lie == null ? 0 : draws];
            double[] one = new double[k];
            double[] two = new double[k];
            boolean[] idle = idle(known);
            for (int d = 0; d < draws; d++) {
                for (int j = 0; j < k; j++) {
                    one[j] = first[j][d];
                    two[j] = second[j][d];
                }
                double[] slopes = flight.slopes(one, two);
                for (int j = 0; j < k; j++) {
                    shares[j][d] = idle[j] ? rounding(known.shares[j], d) : slopes[j] * (one[j] - two[j]);
                    totals[d] += shares[j][d];
                }
                if (lie != null) {
                    part[d] = idle[face]
                            ? rounding(known.lie, d)
                            : lie[d] * (slopes[face] + flight.bend(face, one[face] - two[face], lie[d]));
                }
            }
            boolean close = close(totals, known.totals, exact, random);
            for (int j = 0; j < k; j++) {
                close = close && (idle[j] || close(shares[j], known.shares[j], exact, random));
            }
            close = close && (lie == null || idle[face] || close(part, known.lie, exact, random));
            if (!close) {
                return Optional.empty();
            }
            put(totals, known.totals, exact);
            for (int j = 0; j < k; j++) {
                put(shares[j], known.shares[j], exact);
            }
            if (lie != null) {
                put(part, known.lie, exact);
            }
            return Optional.of(new Split(totals, shares, part));
        }

        /** The inputs that do nothing, such as a start direction in still air to the carry. */
        private static boolean[] idle(Split known) {
            double most = Arrays.stream(known.shares)
                    .flatMapToDouble(Arrays::stream)
                    .map(Math::abs)
                    .max()
                    .orElse(0.0);
            boolean[] idle = new boolean[known.shares.length];
            for (int j = 0; j < idle.length; j++) {
                idle[j] = Arrays.stream(known.shares[j]).allMatch(s -> Math.abs(s) <= ROUNDING * most);
            }
            return idle;
        }

        /** Rounding is all there is of an idle input: as much as was found, up and down in turn. */
        private static double rounding(double[] known, int draw) {
            double most = Arrays.stream(known).map(Math::abs).max().orElse(0.0);
            return draw % 2 == 0 ? most : -most;
        }

        private static boolean close(double[] values, double[] known, int[] exact, int random) {
            double mean = 0.0;
            for (int d = random; d < values.length; d++) {
                mean += values[d] / (values.length - random);
            }
            double squares = 0.0;
            for (int d = random; d < values.length; d++) {
                squares += (values[d] - mean) * (values[d] - mean);
            }
            double most = CLOSE * Math.sqrt(squares / (values.length - random));
            for (int i = random; i < random + CHECKED; i++) {
                // Not a number is not close.
                if (!(Math.abs(values[exact[i]] - known[i]) <= most)) {
                    return false;
                }
            }
            return true;
        }

        private static void put(double[] values, double[] known, int[] exact) {
            for (int i = 0; i < exact.length; i++) {
                values[exact[i]] = known[i];
            }
        }
    }
}
