package dev.teeward.fitting.compare;

import dev.teeward.fitting.internal.Distributions;
import dev.teeward.fitting.internal.HeavyTails;
import dev.teeward.fitting.internal.Sample;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.IntStream;

/**
 * For each of several clubs, the probability that its mean is the best and the loss to expect from picking it.
 *
 * <p>Normal shots, a mean and a spread of its own for each club, reference priors: each mean is s / sqrt(n) t with n - 1
 * degrees of freedom about the sample mean, independently. P(best) is the integral of the density of one times the
 * distribution functions of the others; the expected loss of a club is E(largest mean) - E(its mean). Nothing is sampled.
 *
 * <p>P(best) alone over-reads: of five equal clubs with ten shots each, the leader has more than 0.5 in 50 % of sessions and
 * more than 0.8 in 6 % (simulated). Below 0.8 there is the warning {@code no-clear-winner}. The leader's mean is biased
 * upward by having been picked. With two shots a club the expected loss does not exist and is absent.
 *
 * <p>{@link #testRounds} is for clubs hit in rounds (the same golfer, the same wind): rounds differ as they like and one common
 * error is left, shot = club + round + error with (k - 1) (b - 1) degrees of freedom for k clubs in b rounds. The means are
 * then jointly t, which is integrated over the error as well.
 *
 * <pre>{@code
 * ProbabilityOfBest.Result r = ProbabilityOfBest.withDefaults().test(alder, rowan, hazel);
 * r.clubs().get(0).probability();
 * r.clubs().get(0).expectedLoss(); // in the unit of the shots
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class ProbabilityOfBest {
    private static final double CLEAR = 0.8;
    private static final ProbabilityOfBest DEFAULTS = new ProbabilityOfBest(false);

    private final boolean smallest;

    private ProbabilityOfBest(boolean smallest) {
        this.smallest = smallest;
    }

    /**
     * One club.
     *
     * @param mean the mean of its shots
     * @param probability that its mean is the best, in [0, 1]
     * @param expectedLoss how far it is expected to be from the best, at least 0, or empty with two shots a club
     */
    public record ClubChance(double mean, double probability, OptionalDouble expectedLoss) {}

    /**
     * What was found.
     *
     * @param method the model, in words
     * @param clubs one for each club, in their order; none if a club says nothing about its error
     * @param counts how many shots of each club were used, in their order; in rounds, the rounds
     * @param warnings what to know before using this
     */
    public record Result(String method, List<ClubChance> clubs, List<Integer> counts, List<Warning> warnings) {
        /**
         * Copies the lists.
         *
         * @param method the model, in words
         * @param clubs one for each club, in their order; none if a club says nothing about its error
         * @param counts how many shots of each club were used
         * @param warnings what to know before using this
         */
        public Result {
            clubs = List.copyOf(clubs);
            counts = List.copyOf(counts);
            warnings = List.copyOf(warnings);
        }
    }

    /**
     * The largest mean is the best.
     *
     * @return the default procedure
     */
    public static ProbabilityOfBest withDefaults() {
        return DEFAULTS;
    }

    /**
     * With the smallest mean as the best, such as of a distance from the target.
     *
     * @param wanted whether the smallest is the best; false unless changed
     * @return a changed copy
     */
    public ProbabilityOfBest withSmallestBest(boolean wanted) {
        return new ProbabilityOfBest(wanted);
    }

    /**
     * Compares.
     *
     * @param groups at least two clubs, each of at least one number, all finite
     * @return the chances, or none with the warning {@code too-few-shots} or {@code no-spread}
     * @throws IllegalArgumentException if there are fewer than two clubs, one is empty or a number is not finite
     */
    public Result test(double[]... groups) {
        List<Sample> samples = Groups.of(groups);
        String method = "probability of the " + (smallest ? "smallest" : "largest")
                + " mean, independent normal clubs, reference prior";
        List<Integer> counts = samples.stream().map(Sample::size).toList();
        boolean few = samples.stream().anyMatch(s -> s.size() < 2);
        if (few || samples.stream().anyMatch(s -> !(s.variance() > 0.0))) {
            Warning warning = few
                    ? Warning.of("too-few-shots", "a club with one shot says nothing about its error")
                    : Warning.of("no-spread", "a club with equal shots says nothing about its error");
            return new Result(method, List.of(), counts, List.of(warning));
        }
        double sign = smallest ? -1.0 : 1.0;
        double[] centres = samples.stream().mapToDouble(s -> sign * s.mean()).toArray();
        double[] scales = samples.stream()
                .mapToDouble(s -> s.standardDeviation() / Math.sqrt(s.size()))
                .toArray();
        double[] df = samples.stream().mapToDouble(s -> s.size() - 1.0).toArray();
        double leader = Arrays.stream(centres).max().orElseThrow();
        double[] best = new double[centres.length];
        double gain = 0.0;
        for (int i = 0; i < best.length; i++) {
            int own = i;
            best[i] = HeavyTails.integrate(x -> lead(x, own, centres, scales, df), centres, scales, df);
            gain += HeavyTails.integrate(x -> (x - leader) * lead(x, own, centres, scales, df), centres, scales, df);
        }
        double expected = gain;
        boolean exists = Arrays.stream(df).allMatch(d -> d > 1.0);
        List<ClubChance> clubs = IntStream.range(0, best.length)
                .mapToObj(i -> new ClubChance(
                        sign * centres[i] + 0.0,
                        Math.min(1.0, best[i]),
                        exists
                                ? OptionalDouble.of(Math.max(0.0, expected + leader - centres[i]))
                                : OptionalDouble.empty()))
                .toList();
        List<Warning> warnings = new ArrayList<>();
        if (Arrays.stream(best).max().orElseThrow() < CLEAR) {
            warnings.add(Warning.of("no-clear-winner", "no club is the best with a probability of 0.8"));
        }
        if (!exists) {
            warnings.add(Warning.of("no-expected-loss", "with two shots a club the expected loss does not exist"));
        }
        return new Result(method, clubs, counts, warnings);
    }

    /**
     * Compares clubs hit in rounds.
     *
     * @param groups at least two clubs, the k-th number of each from round k, at least two rounds, all finite
     * @return the chances, or none with the warning {@code too-few-shots} or {@code no-spread}
     * @throws IllegalArgumentException if there are fewer than two clubs, their numbers are not as many, or one is not finite
     */
    public Result testRounds(double[]... groups) {
        List<Sample> samples = Groups.ofRounds(groups);
        String method = "probability of the " + (smallest ? "smallest" : "largest")
                + " mean, normal clubs in rounds with one common error, reference prior";
        int rounds = samples.get(0).size();
        List<Integer> counts = samples.stream().map(Sample::size).toList();
        double df = (samples.size() - 1.0) * (rounds - 1.0);
        if (df < 1.0) {
            return new Result(
                    method,
                    List.of(),
                    counts,
                    List.of(Warning.of("too-few-shots", "one round says nothing about the error of a club")));
        }
        double error = Math.sqrt(Groups.interaction(samples) / df / rounds);
        if (!(error > 0.0)) {
            return new Result(
                    method,
                    List.of(),
                    counts,
                    List.of(Warning.of("no-spread", "the clubs differ by the same in every round: there is no error")));
        }
        double sign = smallest ? -1.0 : 1.0;
        double[] means = samples.stream().mapToDouble(Sample::mean).toArray();
        return result(
                method,
                counts,
                means,
                JointLead.of(Arrays.stream(means).map(m -> sign * m / error).toArray(), df),
                error,
                df > 1.0);
    }

    private static Result result(
            String method, List<Integer> counts, double[] means, JointLead lead, double error, boolean exists) {
        List<ClubChance> clubs = IntStream.range(0, means.length)
                .mapToObj(i -> new ClubChance(
                        means[i] + 0.0,
                        Math.min(1.0, lead.probability(i)),
                        exists ? OptionalDouble.of(error * lead.loss(i)) : OptionalDouble.empty()))
                .toList();
        List<Warning> warnings = new ArrayList<>();
        if (clubs.stream().noneMatch(c -> c.probability() >= CLEAR)) {
            warnings.add(Warning.of("no-clear-winner", "no club is the best with a probability of 0.8"));
        }
        if (!exists) {
            warnings.add(
                    Warning.of("no-expected-loss", "with two rounds of two clubs the expected loss does not exist"));
        }
        return new Result(method, clubs, counts, warnings);
    }

    /** The density of the chance that one club leads, at x. */
    private static double lead(double x, int own, double[] centres, double[] scales, double[] df) {
        double product = HeavyTails.density((x - centres[own]) / scales[own], df[own]) / scales[own];
        for (int j = 0; j < centres.length && product > 0.0; j++) {
            if (j != own) {
                product *= Distributions.tUpperTail((centres[j] - x) / scales[j], df[j]);
            }
        }
        return product;
    }
}
