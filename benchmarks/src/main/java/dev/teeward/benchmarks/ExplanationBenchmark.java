package dev.teeward.benchmarks;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.ShotSet;
import dev.teeward.fitting.compare.HeadToHead;
import dev.teeward.fitting.compare.HeadToHeadResult;
import dev.teeward.fitting.explain.Balance;
import dev.teeward.fitting.explain.Explain;
import dev.teeward.fitting.explain.Explanation;
import dev.teeward.fitting.explain.FlightCounterfactual;
import dev.teeward.fitting.explain.TotalAndDirect;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.TimeUnit;
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
 * The whole explanation of a session of 24 shots, twelve pairs, and its parts: 32 sets of launch inputs for each of 999
 * resamples and 12 pairs left out, 32,384 flights in one batch and one thread. The shots are invented: normally spread, a
 * little apart between the clubs. There is no peer that does the same.
 *
 * <p>Run with {@code java -jar benchmarks/target/teeward-benchmarks.jar Explanation}.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 4, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class ExplanationBenchmark {
    private static final Map<Metric, double[]> TYPICAL = Map.ofEntries(
            Map.entry(Metric.CLUB_SPEED, new double[] {35.0, 0.5}),
            Map.entry(Metric.ATTACK_ANGLE, new double[] {-0.07, 0.01}),
            Map.entry(Metric.CLUB_PATH, new double[] {-0.03, 0.02}),
            Map.entry(Metric.FACE_ANGLE, new double[] {-0.01, 0.02}),
            Map.entry(Metric.DYNAMIC_LOFT, new double[] {0.38, 0.02}),
            Map.entry(Metric.STRIKE_TOE, new double[] {0.001, 0.005}),
            Map.entry(Metric.STRIKE_UP, new double[] {-0.002, 0.004}),
            Map.entry(Metric.BALL_SPEED, new double[] {48.5, 0.8}),
            Map.entry(Metric.LAUNCH_ANGLE, new double[] {0.28, 0.015}),
            Map.entry(Metric.START_DIRECTION, new double[] {-0.015, 0.02}),
            Map.entry(Metric.SPIN_RATE, new double[] {580.0, 25.0}),
            Map.entry(Metric.AXIS_TILT, new double[] {-0.05, 0.05}),
            Map.entry(Metric.CURVE, new double[] {-3.0, 3.0}),
            Map.entry(Metric.CARRY, new double[] {137.0, 4.0}),
            Map.entry(Metric.SIDE, new double[] {-3.0, 4.0}));

    private final HeadToHeadResult result = HeadToHead.withDefaults().compare(drawn());

    private static Session drawn() {
        Random random = new Random(1L);
        List<Shot> shots = new ArrayList<>();
        for (int i = 0; i < 24; i++) {
            boolean first = (i % 4 == 0) || (i % 4 == 3);
            Shot.Builder shot = Shot.builder(first ? "Alder" : "Rowan").number(i + 1);
            for (Metric metric : Metric.values()) {
                double[] typical = TYPICAL.get(metric);
                if (typical != null) {
                    double apart = first ? 0.0 : 0.3 * typical[1];
                    shot.measured(metric, typical[0] + apart + typical[1] * random.nextGaussian());
                }
            }
            shots.add(shot.build());
        }
        return Session.builder().shots(ShotSet.of(shots)).build();
    }

    /**
     * Everything.
     *
     * @return the explanation
     */
    @Benchmark
    public Explanation explain() {
        return Explain.withDefaults().explain(result);
    }

    /**
     * The flights alone.
     *
     * @return the shares
     */
    @Benchmark
    public Optional<FlightCounterfactual.Result> flights() {
        return FlightCounterfactual.withDefaults().explain(result);
    }

    /**
     * One difference at equal delivery.
     *
     * @return the difference
     */
    @Benchmark
    public Optional<TotalAndDirect.Result> effect() {
        return TotalAndDirect.withDefaults().explain(result, Metric.CARRY);
    }

    /**
     * The balance of the swings alone.
     *
     * @return the balance
     */
    @Benchmark
    public Balance.Result balance() {
        return Balance.withDefaults().compare(result);
    }
}
