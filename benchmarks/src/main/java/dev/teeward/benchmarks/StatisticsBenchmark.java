package dev.teeward.benchmarks;

import dev.teeward.fitting.compare.Bootstrap;
import dev.teeward.fitting.compare.Estimation;
import dev.teeward.fitting.compare.HedgesG;
import dev.teeward.fitting.compare.PermutationTest;
import dev.teeward.fitting.compare.TestResult;
import dev.teeward.fitting.screen.MinimumCovarianceDeterminant;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * The dear ones among the statistical procedures, at the sizes of a fitting: ten shots a club. The shots are invented,
 * normally spread. No peer has these procedures.
 *
 * <p>Run with {@code java -jar benchmarks/target/teeward-benchmarks.jar Statistics}.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 5, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(2)
public class StatisticsBenchmark {
    private final double[] alder = shots(10, 137.0, 1L);
    private final double[] rowan = shots(10, 139.0, 2L);
    private final double[] pooledCarry = shots(24, 137.0, 3L);
    private final double[] pooledSide = shots(24, 0.0, 4L);
    private final Bootstrap bootstrap = Bootstrap.withDefaults().withResamples(10_000);

    private static double[] shots(int count, double mean, long seed) {
        Random random = new Random(seed);
        return IntStream.range(0, count)
                .mapToDouble(i -> mean + 4.0 * random.nextGaussian())
                .toArray();
    }

    /**
     * All 184,756 arrangements of 10 + 10 shots: p and limits.
     *
     * @return the result
     */
    @Benchmark
    public TestResult permutation() {
        return PermutationTest.withDefaults().test(alder, rowan);
    }

    /**
     * The bias-corrected and accelerated interval of a statistic of the user's, the mean of the middle eight of ten shots, from
     * 10,000 resamples.
     *
     * @return the result
     */
    @Benchmark
    public Estimation bootstrap() {
        return bootstrap.estimate(alder, StatisticsBenchmark::middle);
    }

    private static double middle(double[] values) {
        double sum = 0.0;
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        for (double v : values) {
            sum += v;
            least = Math.min(least, v);
            most = Math.max(most, v);
        }
        return (sum - least - most) / (values.length - 2);
    }

    /**
     * The exact minimum covariance determinant of ten shots in two metrics.
     *
     * @return the result
     */
    @Benchmark
    public MinimumCovarianceDeterminant.Result robust() {
        return MinimumCovarianceDeterminant.withDefaults().screen(alder, rowan);
    }

    /**
     * The same of 24 shots, two clubs pooled: 134,596 subsets.
     *
     * @return the result
     */
    @Benchmark
    public MinimumCovarianceDeterminant.Result robustOfTwoClubs() {
        return MinimumCovarianceDeterminant.withDefaults().screen(pooledCarry, pooledSide);
    }

    /**
     * A standardised difference with its noncentral t interval.
     *
     * @return the result
     */
    @Benchmark
    public TestResult effectSize() {
        return HedgesG.withDefaults().test(alder, rowan);
    }
}
