package dev.teeward.fitting.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.quantity.LengthUnit;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Bootstrap methods and posteriors: closed forms, degenerate data, refusals. */
class BootstrapTest {
    private static final double[] A = {171.2, 168.9, 173.4, 170.1, 169.5, 172.8, 167.7, 171.9, 170.6, 172.2};
    private static final double[] B = {174.0, 170.3, 175.9, 173.8, 170.2, 176.1, 171.0, 173.5, 174.4, 173.9};
    private static final double[] FLAT = {5.0, 5.0, 5.0, 5.0, 5.0};

    private static double mean(double[] x) {
        return Arrays.stream(x).sum() / x.length;
    }

    @Test
    void everyMethodIsNearTheNormalLimitsOfALargeSample() {
        double[] x = new Random(2L).ints(400, -500, 501).asDoubleStream().toArray();
        double error = Math.sqrt(
                Arrays.stream(x).map(v -> (v - mean(x)) * (v - mean(x))).sum() / 400.0 / 400.0);
        for (Bootstrap.Method m : Bootstrap.Method.values()) {
            boolean layered = m == Bootstrap.Method.STUDENTIZED;
            Bootstrap b = Bootstrap.withDefaults().withMethod(m).withResamples(layered ? 499 : 4_999);
            Estimation e = b.estimate(x, BootstrapTest::mean);
            double slack = layered ? 0.5 * error : 0.12 * error;
            assertEquals(mean(x) - 1.96 * error, e.estimate().interval().lower(), slack, m.toString());
            assertEquals(mean(x) + 1.96 * error, e.estimate().interval().upper(), slack, m.toString());
            assertFalse(e.warns("narrow-interval"));
            assertEquals(error, e.standardError(), 0.1 * error);
        }
    }

    /** The studentised interval of a mean is close to the t interval even at ten shots. */
    @Test
    void studentizedIntervalOfAMeanIsNearT() {
        Estimation e = Bootstrap.withDefaults()
                .withMethod(Bootstrap.Method.STUDENTIZED)
                .withUnit(LengthUnit.YARD)
                .withSeed(4L)
                .estimate(A, BootstrapTest::mean);
        TestResult t = PairedTTest.withDefaults().test(A, new double[10]);
        double width = t.estimate().interval().width();
        assertEquals(width, e.estimate().interval().width(), 0.2 * width);
        assertTrue(e.warns("narrow-interval") && e.method().contains("seed 4"));
        Estimation basic = Bootstrap.withDefaults()
                .withMethod(Bootstrap.Method.BASIC)
                .withAlternative(Alternative.GREATER)
                .estimate(A, BootstrapTest::mean);
        assertEquals(Double.POSITIVE_INFINITY, basic.estimate().interval().upper());
    }

    /** Pairs drawn whole: the mean difference is that of the differences, draw by draw. */
    @Test
    void pairsAreDrawnWhole() {
        double[] d = IntStream.range(0, 10).mapToDouble(i -> A[i] - B[i]).toArray();
        Estimation pairs = Bootstrap.withDefaults().estimatePairs(A, B, (x, y) -> mean(x) - mean(y));
        Estimation single = Bootstrap.withDefaults().estimate(d, BootstrapTest::mean);
        assertEquals(
                single.estimate().interval().lower(),
                pairs.estimate().interval().lower(),
                1e-9);
        assertEquals(single.acceleration().orElseThrow(), pairs.acceleration().orElseThrow(), 1e-9);
        Estimation apart = Bootstrap.withDefaults().estimate(A, B, (x, y) -> mean(x) - mean(y));
        assertTrue(apart.estimate().interval().width()
                > pairs.estimate().interval().width());
        assertTrue(Math.abs(apart.bias()) < 0.05);
    }

    @Test
    void degenerateDataSaySo() {
        Bootstrap b = Bootstrap.withDefaults();
        Estimation flat = b.estimate(FLAT, BootstrapTest::mean);
        assertTrue(flat.warns("no-spread"));
        assertFalse(flat.estimate().interval().bounded());
        assertTrue(b.estimate(new double[] {1.0}, BootstrapTest::mean).warns("too-few-shots"));
        Estimation most = b.estimate(A, x -> Arrays.stream(x).max().orElseThrow());
        assertTrue(most.estimate().interval().lower() <= 173.4);
        // Every resample of an unusual statistic is at or below the estimate; none is above.
        Estimation size = b.withTiesBelow(true)
                .estimate(A, x -> -Arrays.stream(x).distinct().count());
        assertTrue(size.warns("bca-undefined") && size.method().startsWith("percentile"));
        Estimation sometimes = b.estimate(A, x -> Math.log(mean(x) - 170.0));
        assertTrue(sometimes.warns("undefined-resamples"));
        Estimation rarely = b.estimate(A, x -> Math.sqrt(mean(x) - 170.82));
        assertTrue(rarely.warns("too-few-resamples"));
        Estimation still = b.estimate(
                new double[] {1.0, 1.0, 1.0, 9.0, 9.0, 9.0}, x -> mean(x) > 8.0 ? 2.0 : mean(x) < 2.0 ? 0.0 : 1.0);
        assertTrue(still.warns("no-acceleration"));
        assertEquals(0.0, still.acceleration().orElseThrow());
        assertTrue(b.withResamples(99)
                .withLevel(0.99)
                .estimate(A, BootstrapTest::mean)
                .warns("beyond-resamples"));
        assertThrows(IllegalArgumentException.class, () -> b.estimate(A, x -> Double.NaN));
        assertThrows(IllegalArgumentException.class, () -> b.withResamples(98));
        assertThrows(IllegalArgumentException.class, () -> b.estimate(new double[0], BootstrapTest::mean));
        assertThrows(IllegalArgumentException.class, () -> b.estimatePairs(A, FLAT, (x, y) -> mean(x) - mean(y)));
    }

    /** The posterior of pairs is the paired t; that of two samples is symmetric. */
    @Test
    void posteriorsAgreeWithTTests() {
        BayesianComparison bayes =
                BayesianComparison.withMargin(1.0).withLevel(0.9).withUnit(LengthUnit.YARD);
        BayesianComparison.Result pairs = bayes.testPairs(A, B);
        assertEquals(List.of(A.length), pairs.counts());
        assertEquals(
                List.of(A.length, 2), bayes.test(A, new double[] {1.0, 2.0}).counts());
        assertEquals(List.of(A.length, 1), bayes.test(A, new double[] {1.0}).counts());
        assertEquals(
                List.of(A.length, B.length, 1),
                ProbabilityOfBest.withDefaults().test(A, B, new double[] {1.0}).counts());
        TestResult t = PairedTTest.withDefaults().withLevel(0.9).test(A, B);
        assertEquals(
                t.estimate().interval().lower(), pairs.difference().interval().lower(), 1e-9);
        assertEquals(
                t.estimate().interval().upper(), pairs.difference().interval().upper(), 1e-9);
        double greater = pairs.posterior().orElseThrow().greater();
        assertEquals(0.5 * t.pValue(), greater, 1e-12);
        assertTrue(pairs.posterior().orElseThrow().wider().isEmpty());
        double[] wide = Arrays.stream(B).map(v -> 170.0 + 50.0 * (v - 173.3)).toArray();
        BayesianComparison.Posterior one = bayes.test(A, wide).posterior().orElseThrow();
        BayesianComparison.Posterior two = bayes.test(wide, A).posterior().orElseThrow();
        assertEquals(1.0, one.greater() + two.greater(), 1e-12);
        assertEquals(one.aboveMargin(), two.belowMargin(), 1e-12);
        assertEquals(1.0, one.aboveMargin() + one.belowMargin() + one.withinMargin(), 1e-12);
        assertTrue(two.wider().orElseThrow() > 0.999);
        assertTrue(bayes.test(FLAT, A).posterior().isEmpty());
        assertEquals(
                "too-few-shots",
                bayes.testPairs(new double[] {1.0}, new double[] {2.0})
                        .warnings()
                        .get(0)
                        .code());
        assertThrows(IllegalArgumentException.class, () -> BayesianComparison.withMargin(-1.0));
        assertThrows(IllegalArgumentException.class, () -> BayesianComparison.withMargin(Double.POSITIVE_INFINITY));
    }

    /** Two clubs with two shots each have Cauchy posteriors: P(best) = 1/2 + atan(d / (s1 + s2)) / pi. */
    @Test
    void chancesOfCauchyPosteriorsAreClosed() {
        double[] x = {1.0, 3.0};
        double[] y = {2.0, 2.5};
        ProbabilityOfBest.Result r = ProbabilityOfBest.withDefaults().test(x, y);
        double expected = 0.5 + Math.atan((2.0 - 2.25) / (1.0 + 0.25)) / Math.PI;
        assertEquals(expected, r.clubs().get(0).probability(), 1e-10);
        assertEquals(1.0 - expected, r.clubs().get(1).probability(), 1e-10);
        assertTrue(r.clubs().get(0).expectedLoss().isEmpty());
        assertEquals(2, r.warnings().size());
        assertEquals(
                expected,
                BayesianComparison.withMargin(0.0)
                        .test(x, y)
                        .posterior()
                        .orElseThrow()
                        .greater(),
                1e-10);
        ProbabilityOfBest.Result least =
                ProbabilityOfBest.withDefaults().withSmallestBest(true).test(x, y);
        assertEquals(1.0 - expected, least.clubs().get(0).probability(), 1e-10);
        assertEquals(2.0, least.clubs().get(0).mean());
    }

    /** The expected loss of two clubs from the posterior of their difference: E max(0, other - own), by Simpson's rule. */
    @Test
    void expectedLossIsThatOfTheDifference() {
        ProbabilityOfBest.Result r = ProbabilityOfBest.withDefaults().test(A, B);
        double sum = 0.0;
        double step = 0.05;
        for (int i = 0; i <= 200; i++) {
            double p = BayesianComparison.withMargin(i * step)
                    .test(A, B)
                    .posterior()
                    .orElseThrow()
                    .aboveMargin();
            sum += (i == 0 || i == 200 ? 1.0 : i % 2 == 1 ? 4.0 : 2.0) * p * step / 3.0;
        }
        assertEquals(sum, r.clubs().get(1).expectedLoss().orElseThrow(), 1e-6);
        double difference = r.clubs().get(1).mean() - r.clubs().get(0).mean();
        assertEquals(difference + sum, r.clubs().get(0).expectedLoss().orElseThrow(), 1e-6);
        assertTrue(r.warnings().isEmpty());
        assertTrue(ProbabilityOfBest.withDefaults().test(A, FLAT).clubs().isEmpty());
        assertTrue(ProbabilityOfBest.withDefaults()
                .test(A, new double[] {1.0})
                .clubs()
                .isEmpty());
    }

    @Test
    void knowledgeAddsUp() {
        NormalInverseGamma start = NormalInverseGamma.of(170.0, 2.0, 3.0, 12.0);
        NormalInverseGamma once = start.after(A).after(B);
        NormalInverseGamma joint = start.after(IntStream.range(0, 20)
                .mapToDouble(i -> i < 10 ? A[i] : B[i - 10])
                .toArray());
        assertEquals(joint.location(), once.location(), 1e-10);
        assertEquals(joint.scale(), once.scale(), 1e-9);
        assertEquals(
                start.logMarginal(A) + start.after(A).logMarginal(B),
                start.logMarginal(IntStream.range(0, 20)
                        .mapToDouble(i -> i < 10 ? A[i] : B[i - 10])
                        .toArray()),
                1e-9);
        assertTrue(once.nextShot(0.95, LengthUnit.YARD).interval().width()
                > once.mean(0.95, LengthUnit.YARD).interval().width());
        assertEquals(3.5, start.after(171.0).shape());
        assertThrows(IllegalArgumentException.class, () -> NormalInverseGamma.of(Double.NaN, 1.0, 1.0, 1.0));
        assertThrows(IllegalArgumentException.class, () -> NormalInverseGamma.of(0.0, 0.0, 1.0, 1.0));
        assertThrows(IllegalArgumentException.class, () -> start.mean(1.0, LengthUnit.YARD));
    }
}
