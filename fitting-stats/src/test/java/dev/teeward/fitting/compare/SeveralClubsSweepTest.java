package dev.teeward.fitting.compare;

import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.fitting.linear.Design;
import dev.teeward.fitting.linear.ErrorModel;
import dev.teeward.fitting.linear.LinearModel;
import dev.teeward.fitting.linear.RandomInterceptModel;
import dev.teeward.fitting.summary.HoldProbability;
import dev.teeward.fitting.summary.TargetRegion;
import java.util.Arrays;
import java.util.Comparator;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import org.apache.commons.statistics.descriptive.Variance;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Sizes and coverages by simulation, ten shots a club, seeded, as many replicates as a minute of one core allows where that
 * is less than 20,000. A rate p over r replicates has a standard deviation of sqrt(p (1 - p) / r); bounds are three of them
 * beside what is claimed.
 */
@Tag("sweep")
class SeveralClubsSweepTest {
    private static final int MANY = 20_000;

    private static double[] shots(SplittableRandom random, int n, double mean, double sd) {
        return IntStream.range(0, n)
                .mapToDouble(i -> mean + sd * random.nextGaussian())
                .toArray();
    }

    private static double rate(long seed, int replicates, Predicate<SplittableRandom> event) {
        SplittableRandom random = new SplittableRandom(seed);
        int found = 0;
        for (int r = 0; r < replicates; r++) {
            found += event.test(random) ? 1 : 0;
        }
        return found / (double) replicates;
    }

    private static void within(String what, double rate, double low, double high, int replicates) {
        System.err.printf(Locale.ROOT, "SWEEP %s: %.4f of %d%n", what, rate, replicates);
        assertTrue(rate >= low - three(low, replicates) && rate <= high + three(high, replicates), what + " " + rate);
    }

    private static double three(double rate, int replicates) {
        return 3.0 * Math.sqrt(rate * (1.0 - rate) / replicates);
    }

    /** Exact by construction: T2 by F, and by flips, whose 512 pairs of opposite arrangements allow floor(25.6) / 512. */
    @Test
    void hotellingHoldsItsLevel() {
        within("F", rate(1L, MANY, r -> hotelling(r, HotellingTest.withDefaults())), 0.05, 0.05, MANY);
        within(
                "flips",
                rate(2L, MANY, r -> hotelling(r, HotellingTest.withDefaults().withSignFlips(true))),
                25.0 / 512.0,
                25.0 / 512.0,
                MANY);
    }

    private static boolean hotelling(SplittableRandom r, HotellingTest test) {
        double[] common = shots(r, 10, 0.0, 1.0);
        double[] u = shots(r, 10, 0.0, 1.0);
        double[] v =
                IntStream.range(0, 10).mapToDouble(i -> common[i] + 0.8 * u[i]).toArray();
        return test.testPairs(new double[][] {u, v}, new double[2][10]).pValue() <= 0.05;
    }

    /** One covariance: exact. Unequal ones, spreads of 1 and 3, by Krishnamoorthy and Yu: nearly. */
    @Test
    void hotellingOfTwoSamplesHoldsItsLevel() {
        HotellingTest unequal = HotellingTest.withDefaults();
        within(
                "T2 pooled",
                rate(15L, MANY, r -> twoSamples(r, unequal.withPooledCovariance(true), 1.0)),
                0.05,
                0.05,
                MANY);
        within("T2 unequal, spreads alike", rate(16L, MANY, r -> twoSamples(r, unequal, 1.0)), 0.045, 0.05, MANY);
        within("T2 unequal, spreads 1 and 3", rate(17L, MANY, r -> twoSamples(r, unequal, 3.0)), 0.045, 0.055, MANY);
    }

    private static boolean twoSamples(SplittableRandom r, HotellingTest test, double sd) {
        double[][] x = {shots(r, 10, 0.0, 1.0), shots(r, 10, 0.0, 1.0)};
        double[][] y = {shots(r, 10, 0.0, sd), shots(r, 10, 0.0, sd)};
        return test.test(x, y).pValue() <= 0.05;
    }

    /** Attainable with 512 pairs of opposite arrangements: floor(25.6) / 512. */
    @Test
    void maxTHoldsItsFamilyWiseLevel() {
        double alarms = rate(3L, MANY, r -> {
            double[][] x = {shots(r, 10, 0.0, 1.0), shots(r, 10, 0.0, 2.0), shots(r, 10, 0.0, 3.0)};
            return MaxTTest.withDefaults().testPairs(x, new double[3][10]).metrics().stream()
                    .anyMatch(m -> m.adjustedP() <= 0.05);
        });
        within("max-t", alarms, 25.0 / 512.0, 25.0 / 512.0, MANY);
    }

    /** Three clubs alike in ten rounds that differ: exchanged within rounds, 9,999 arrangements, so exactly 500 / 10,000. */
    @Test
    void maxTWithinRoundsHoldsItsFamilyWiseLevel() {
        double alarms = rate(13L, 7_000, r -> {
            double[] rounds = shots(r, 10, 0.0, 3.0);
            double[][] clubs = new double[3][];
            for (int j = 0; j < 3; j++) {
                double[] own = shots(r, 10, 0.0, 1.0);
                clubs[j] = IntStream.range(0, 10)
                        .mapToDouble(i -> rounds[i] + own[i])
                        .toArray();
            }
            return MaxTTest.withDefaults().testRounds(clubs).pairs().stream().anyMatch(p -> p.pValue() <= 0.05);
        });
        within("max-t within rounds", alarms, 0.05, 0.05, 7_000);
    }

    /** Five clubs alike, ten shots each: the leader's probability exceeds 0.8 in 5.75 % of 40,000 sessions simulated with NumPy. */
    @Test
    void aLeaderOfEqualClubsIsRarelyClear() {
        double clear = rate(14L, 3_000, r -> {
            double[][] clubs =
                    IntStream.range(0, 5).mapToObj(j -> shots(r, 10, 0.0, 1.0)).toArray(double[][]::new);
            double[][] best = Arrays.stream(clubs)
                    .sorted(Comparator.comparingDouble(SeveralClubsSweepTest::mean)
                            .reversed())
                    .toArray(double[][]::new);
            // No club is best of five more often than it beats the second alone, which is quicker to say.
            return clear(best[0], best[1]) && clear(clubs);
        });
        within("P(best) above 0.8", clear, 0.0575, 0.0575, 3_000);
    }

    private static double mean(double[] x) {
        return Arrays.stream(x).average().orElseThrow();
    }

    private static boolean clear(double[]... clubs) {
        return ProbabilityOfBest.withDefaults().test(clubs).clubs().stream().anyMatch(c -> c.probability() > 0.8);
    }

    /** Yuen's test is approximate: between 3.5 and 6 % for normal shots with spreads of 1 and 2. */
    @Test
    void yuenHoldsItsLevelNearly() {
        double alarms = rate(
                4L,
                MANY,
                r -> YuenTest.withDefaults()
                                .test(shots(r, 10, 0.0, 1.0), shots(r, 10, 0.0, 2.0))
                                .pValue()
                        <= 0.05);
        within("Yuen", alarms, 0.035, 0.06, MANY);
    }

    /** Exact for as many shots of equal spread a club: Dunnett, and Tukey and Kramer. */
    @Test
    void dunnettHoldsItsLevel() {
        PairwiseComparison test = PairwiseComparison.withDefaults().withMethod(PairwiseComparison.Method.DUNNETT);
        within("Dunnett", rate(5L, 8_000, r -> any(test, true, clubs(r, 1.0))), 0.05, 0.05, 8_000);
    }

    /** Eight shots of spread 8 against twice twenty of spread 3: nearly held, where one common variance names a difference in a fifth. */
    @Test
    void welchAgainstTheFirstHoldsItsLevelWhereDunnettDoesNot() {
        PairwiseComparison test = PairwiseComparison.withDefaults().withMethod(PairwiseComparison.Method.WELCH_SIDAK);
        within("Welch-Sidak", rate(19L, MANY, r -> anyNamed(test, unlike(r))), 0.02, 0.05, MANY);
        within("Welch-Sidak, alike", rate(20L, MANY, r -> anyNamed(test, clubs(r, 1.0))), 0.04, 0.05, MANY);
        PairwiseComparison dunnett = test.withMethod(PairwiseComparison.Method.DUNNETT);
        within("Dunnett, unlike", rate(21L, 300, r -> anyNamed(dunnett, unlike(r))), 0.2, 0.3, 300);
    }

    private static double[][] unlike(SplittableRandom r) {
        return new double[][] {shots(r, 8, 0.0, 8.0), shots(r, 20, 0.0, 3.0), shots(r, 20, 0.0, 3.0)};
    }

    private static boolean anyNamed(PairwiseComparison test, double[][] clubs) {
        return test.test(clubs).pairs().stream().anyMatch(p -> p.pValue() <= 0.05);
    }

    @Test
    void tukeyAndKramerHoldTheirLevel() {
        PairwiseComparison test = PairwiseComparison.withDefaults().withMethod(PairwiseComparison.Method.TUKEY_KRAMER);
        within("Tukey-Kramer", rate(18L, MANY, r -> any(test, true, clubs(r, 1.0))), 0.05, 0.05, MANY);
    }

    /** Approximate; 5.00 % of 200,000 sessions with spreads of 1, 2 and 1 simulated with SciPy's studentised range. */
    @Test
    void gamesAndHowellHoldTheirLevelNearly() {
        PairwiseComparison test = PairwiseComparison.withDefaults();
        within("Games-Howell", rate(6L, 7_000, r -> any(test, false, clubs(r, 2.0))), 0.05, 0.05, 7_000);
    }

    private static double[][] clubs(SplittableRandom r, double sd) {
        return new double[][] {shots(r, 10, 0.0, 1.0), shots(r, 10, 0.0, sd), shots(r, 10, 0.0, 1.0)};
    }

    /** Whether any pair is called different; where no pair is before the adjustment, none is after it, which saves time. */
    private static boolean any(PairwiseComparison test, boolean common, double[][] clubs) {
        // 2.0518: Student's t, 27 degrees of freedom, 97.5 % (printed tables); with Welch's fewer it is larger.
        double pooled = Arrays.stream(clubs)
                .mapToDouble(c -> Variance.of(c).getAsDouble())
                .average()
                .orElseThrow();
        boolean likely = false;
        for (int i = 1; i < clubs.length; i++) {
            for (int j = 0; j < i; j++) {
                double own = 0.5
                        * (Variance.of(clubs[i]).getAsDouble()
                                + Variance.of(clubs[j]).getAsDouble());
                double error = Math.sqrt(0.2 * (common ? pooled : own));
                likely |= Math.abs(mean(clubs[i]) - mean(clubs[j])) > 2.05 * error;
            }
        }
        return likely && test.test(clubs).pairs().stream().anyMatch(p -> p.pValue() <= 0.05);
    }

    /** Residuals are only nearly exchangeable: stated are 3 to 5 %. */
    @Test
    void permutedSpreadsHoldTheirLevel() {
        double alarms = rate(
                7L,
                2_500,
                r -> PermutationDispersionTest.withDefaults()
                                .testPatterns(
                                        shots(r, 10, 0.0, 2.0),
                                        shots(r, 10, 3.0, 1.0),
                                        shots(r, 10, 9.0, 2.0),
                                        shots(r, 10, 0.0, 1.0))
                                .pValue()
                        <= 0.05);
        within("dispersion", alarms, 0.03, 0.05, 2_500);
    }

    @Test
    void lookingAfterEveryPairRaisesFewAlarms() {
        double alarms = rate(
                8L,
                MANY,
                r -> SequentialTTest.withDefaults()
                                .testPairs(shots(r, 30, 0.0, 1.0), new double[30])
                                .pValue()
                        <= 0.05);
        within("always-valid", alarms, 0.005, 0.05, MANY);
    }

    /** HC3 with spreads of 1 and 3, one covariate; and the mixed model with ten blocks, its 95 % interval. */
    @Test
    void linearModelsHoldTheirLevel() {
        String[] club =
                IntStream.range(0, 20).mapToObj(i -> i % 2 == 0 ? "a" : "b").toArray(String[]::new);
        String[] block = IntStream.range(0, 20).mapToObj(i -> "" + i / 2).toArray(String[]::new);
        double hc3 = rate(9L, MANY, r -> {
            double[] x = shots(r, 20, 0.0, 1.0);
            double[] y = IntStream.range(0, 20)
                    .mapToDouble(i -> x[i] + (i % 2 == 0 ? 1.0 : 3.0) * r.nextGaussian())
                    .toArray();
            Design design = Design.of(20).withFactor("club", "a", club).withCovariate("x", x);
            return LinearModel.withDefaults()
                            .withErrors(ErrorModel.HC3)
                            .fit(design, y)
                            .coefficient("club=b")
                            .pValue()
                    <= 0.05;
        });
        within("HC3", hc3, 0.03, 0.055, MANY);
        double mixed = rate(10L, MANY, r -> {
            double[] blocks = shots(r, 10, 0.0, 1.5);
            double[] x = shots(r, 20, 0.0, 1.0);
            double[] y = IntStream.range(0, 20)
                    .mapToDouble(i -> blocks[i / 2] + r.nextGaussian())
                    .toArray();
            Design design = Design.of(20).withFactor("club", "a", club).withCovariate("x", x);
            return !RandomInterceptModel.withDefaults()
                    .fit(design, block, y)
                    .coefficient("club=b")
                    .estimate()
                    .interval()
                    .contains(0.0);
        });
        within("mixed", mixed, 0.04, 0.06, MANY);
    }

    /** The interval of the probability to hold a circle, ten shots, true probability 0.393: 93 to 97 %. */
    @Test
    void holdProbabilityIntervalsHold() {
        TargetRegion circle = TargetRegion.circle(0.0, 0.0, 1.0);
        double truth = 1.0 - Math.exp(-0.5);
        double missed = rate(
                11L,
                4_000,
                r -> !HoldProbability.withDefaults()
                        .withDraws(199)
                        .estimate(circle, shots(r, 10, 0.0, 1.0), shots(r, 10, 0.0, 1.0))
                        .probability()
                        .orElseThrow()
                        .interval()
                        .contains(truth));
        within("hold", missed, 0.03, 0.07, 4_000);
    }

    /** BCa of a mean at ten shots is known to be too narrow: stated are 89 %, never 95 %. */
    @Test
    void bootstrapAtTenShotsIsTooNarrowAsStated() {
        double missed = rate(
                12L,
                MANY,
                r -> !Bootstrap.withDefaults()
                        .withResamples(999)
                        .estimate(shots(r, 10, 0.0, 1.0), x -> Arrays.stream(x).sum() / x.length)
                        .estimate()
                        .interval()
                        .contains(0.0));
        within("BCa", missed, 0.11, 0.11, MANY);
    }
}
