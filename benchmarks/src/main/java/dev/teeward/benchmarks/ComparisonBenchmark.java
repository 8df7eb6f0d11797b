package dev.teeward.benchmarks;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.ShotSet;
import dev.teeward.fitting.compare.HeadToHead;
import dev.teeward.fitting.compare.HeadToHeadResult;
import dev.teeward.fitting.report.HeadToHeadReport;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * A whole head-to-head comparison of two clubs hit in turn, with 14 measured metrics of each shot, and the page made of it.
 * The shots are invented: normally spread, a little apart between the clubs. There is no peer that does the same.
 *
 * <p>Run with {@code java -jar benchmarks/target/teeward-benchmarks.jar Comparison}. From 1,000 shots on, metrics are worked
 * out on the common pool.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 5, time = 2)
@Measurement(iterations = 5, time = 2)
@Fork(2)
public class ComparisonBenchmark {
    private static final List<Measure> MEASURES = List.of(
            new Measure(Metric.CLUB_SPEED, 35.0, 0.5),
            new Measure(Metric.ATTACK_ANGLE, -0.07, 0.01),
            new Measure(Metric.CLUB_PATH, -0.03, 0.02),
            new Measure(Metric.FACE_ANGLE, -0.01, 0.02),
            new Measure(Metric.DYNAMIC_LOFT, 0.38, 0.02),
            new Measure(Metric.STRIKE_TOE, 0.001, 0.005),
            new Measure(Metric.STRIKE_UP, -0.002, 0.004),
            new Measure(Metric.BALL_SPEED, 48.5, 0.8),
            new Measure(Metric.LAUNCH_ANGLE, 0.28, 0.015),
            new Measure(Metric.START_DIRECTION, -0.015, 0.02),
            new Measure(Metric.SPIN_RATE, 580.0, 25.0),
            new Measure(Metric.AXIS_TILT, -0.05, 0.05),
            new Measure(Metric.CARRY, 137.0, 4.0),
            new Measure(Metric.SIDE, -3.0, 4.0));

    /** What is drawn of one metric, in its SI unit. */
    private record Measure(Metric metric, double mean, double sd) {}

    @Param({"24", "10000"})
    private int shots;

    private Session session = Session.builder().shots(ShotSet.of()).build();
    private HeadToHeadResult result = HeadToHead.withDefaults().compare(drawn(24));

    /** Draws the session. */
    @Setup
    public void draw() {
        session = drawn(shots);
        result = HeadToHead.withDefaults().compare(session);
    }

    private static Session drawn(int count) {
        Random random = new Random(1L);
        List<Shot> drawn = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            boolean first = (i % 4 == 0) || (i % 4 == 3);
            Shot.Builder shot = Shot.builder(first ? "Alder" : "Rowan").number(i + 1);
            for (Measure measure : MEASURES) {
                double apart = first ? 0.0 : 0.3 * measure.sd;
                shot.measured(measure.metric, measure.mean + apart + measure.sd * random.nextGaussian());
            }
            drawn.add(shot.build());
        }
        return Session.builder().shots(ShotSet.of(drawn)).build();
    }

    /**
     * Completes, screens and compares, with and without the flagged shots.
     *
     * @return the result
     */
    @Benchmark
    public HeadToHeadResult compare() {
        return HeadToHead.withDefaults().compare(session);
    }

    /**
     * The numbers, sentences, tables and pictures of a result.
     *
     * @return the page
     */
    @Benchmark
    public String page() {
        return HeadToHeadReport.of(result).html();
    }
}
