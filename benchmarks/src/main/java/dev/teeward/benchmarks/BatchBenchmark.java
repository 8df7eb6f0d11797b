package dev.teeward.benchmarks;

import dev.teeward.flight.Accuracy;
import dev.teeward.flight.FlightModel;
import dev.teeward.flight.batch.FlightBatch;
import dev.teeward.flight.batch.FlightDerivatives;
import dev.teeward.flight.batch.FlightMonteCarlo;
import dev.teeward.flight.batch.FlightTable;
import dev.teeward.flight.batch.LaunchSpread;
import dev.teeward.flight.batch.LaunchTable;
import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Speed;
import dev.teeward.quantity.SpinRate;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * Many flights at once: a table, gradients and Monte Carlo, with general integrators on the same right-hand side beside them, one
 * launch after the other. Times are those of one flight, one gradient, one draw. The launches are those of {@link SpeedSample};
 * the errors stand in the table of {@link SpeedTable}.
 *
 * <p>Run with {@code java -jar benchmarks/target/teeward-benchmarks.jar BatchBenchmark -prof gc}. Compare scores within one run
 * only.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 5, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(2)
public class BatchBenchmark {
    private static final int ROWS = 20_000;
    private static final int GRADIENTS = 2_000;
    private static final int PEERS = 1_000;

    private final SpeedSample sample = new SpeedSample(ROWS);
    private final SpeedSample.PeerLaunch[] peers = new SpeedSample.PeerLaunch[PEERS];
    private final LaunchTable table = sample.table(ROWS);
    private final LaunchTable few = sample.table(GRADIENTS);
    private final FlightTable flights = FlightTable.ofRows(ROWS);
    private final FlightModel quick = SpeedSample.MODEL.withAccuracy(Accuracy.MILLIMETER);
    private final FlightBatch millimeter = FlightBatch.of(quick);
    private final FlightBatch tenth = FlightBatch.of(SpeedSample.MODEL.withAccuracy(Accuracy.TENTH_MILLIMETER));
    private final FlightDerivatives derivatives = FlightDerivatives.of(quick);
    private final FlightMonteCarlo draws = FlightMonteCarlo.withDefaults()
            .withDraws(ROWS)
            .withSpread(LaunchSpread.none()
                    .withBallSpeed(Speed.ofMetersPerSecond(0.5))
                    .withSpinRate(SpinRate.ofRpm(300.0))
                    .withLaunchAngle(Angle.ofDegrees(0.7)));
    private int turn;

    /** Draws the launches. */
    public BatchBenchmark() {
        for (int i = 0; i < PEERS; i++) {
            peers[i] = sample.peer(i);
        }
    }

    private int next() {
        turn = (turn + 1) % PEERS;
        return turn;
    }

    /**
     * A table at 1 mm.
     *
     * @return the flights
     */
    @Benchmark
    @OperationsPerInvocation(ROWS)
    public FlightTable millimeter() {
        millimeter.fly(table, flights);
        return flights;
    }

    /**
     * A table at 0.1 mm.
     *
     * @return the flights
     */
    @Benchmark
    @OperationsPerInvocation(ROWS)
    public FlightTable tenthMillimeter() {
        tenth.fly(table, flights);
        return flights;
    }

    /**
     * Derivatives by six inputs at 1 mm.
     *
     * @return the derivatives
     */
    @Benchmark
    @OperationsPerInvocation(GRADIENTS)
    public FlightDerivatives.Result gradient() {
        return derivatives.differentiate(few);
    }

    /**
     * Launches drawn about one, flown at 0.1 mm and summed up.
     *
     * @return the summary
     */
    @Benchmark
    @OperationsPerInvocation(ROWS)
    public Object monteCarlo() {
        return draws.fly(SpeedSample.MODEL, sample.launch(0));
    }

    /**
     * The baseline of the draws: single flights one after the other, the mean of their carries.
     *
     * @return the mean
     */
    @Benchmark
    @OperationsPerInvocation(PEERS)
    public double monteCarloOneByOne() {
        SplittableRandom random = new SplittableRandom(1L);
        double sum = 0.0;
        for (int i = 0; i < PEERS; i++) {
            var launch = sample.launch(0);
            var drawn = dev.teeward.flight.LaunchConditions.builder()
                    .ballSpeed(
                            Speed.ofMetersPerSecond(launch.ballSpeed().metersPerSecond() + 0.5 * random.nextGaussian()))
                    .launchAngle(Angle.ofDegrees(launch.launchAngle().degrees() + 0.7 * random.nextGaussian()))
                    .startDirection(launch.startDirection())
                    .spinRate(SpinRate.ofRpm(launch.spinRate().rpm() + 300.0 * random.nextGaussian()))
                    .axisTilt(launch.axisTilt())
                    .build();
            sum += SpeedSample.MODEL.fly(drawn).carry().meters();
        }
        return sum / PEERS;
    }

    /**
     * Hipparchus, Dormand and Prince 8(5,3), tolerance 1e-6.
     *
     * @return the landing
     */
    @Benchmark
    public double[] hipparchus853() {
        return Peers.hipparchus(Peers.hipparchus853(1e-6), peers[next()]);
    }

    /**
     * Hipparchus, Dormand and Prince 5(4), tolerance 1e-6.
     *
     * @return the landing
     */
    @Benchmark
    public double[] hipparchus54() {
        return Peers.hipparchus(Peers.hipparchus54(1e-6), peers[next()]);
    }

    /**
     * Commons Math 3, Dormand and Prince 5(4), tolerance 1e-6.
     *
     * @return the landing
     */
    @Benchmark
    public double[] commonsMath54() {
        return Peers.commonsMath54(peers[next()]);
    }

    /**
     * The trivial baseline: fixed steps of 50 ms.
     *
     * @return the landing
     */
    @Benchmark
    public double[] fixedStep() {
        return Peers.fixedStep(peers[next()], 0.05);
    }

    /**
     * Hipparchus, automatic differentiation by six inputs, Dormand and Prince 5(4), tolerance 1e-6.
     *
     * @return the landing with its derivatives
     */
    @Benchmark
    public Object hipparchusGradient() {
        int i = next();
        return Peers.gradient(sample.inputs(i), sample.across[i], 1e-6);
    }
}
