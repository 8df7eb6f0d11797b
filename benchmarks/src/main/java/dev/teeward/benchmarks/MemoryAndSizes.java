package dev.teeward.benchmarks;

import com.sun.management.ThreadMXBean;
import dev.teeward.flight.Accuracy;
import dev.teeward.flight.FlightModel;
import dev.teeward.flight.LaunchConditions;
import dev.teeward.flight.batch.FlightBatch;
import dev.teeward.flight.batch.FlightTable;
import dev.teeward.flight.batch.LaunchTable;
import dev.teeward.flight.internal.FlightEquations;
import dev.teeward.flight.internal.FlightIntegrator;
import dev.teeward.flight.internal.StepRule;
import java.io.PrintStream;
import java.lang.management.ManagementFactory;
import java.util.Arrays;
import java.util.Locale;

/** What flights allocate, and how the time grows with the rows; run by {@link SpeedTable} when everything is warm. */
final class MemoryAndSizes {
    private static final int BLOCK = 10_000;
    private static final int SINGLE_FLIGHTS = 2_000;
    private static final int REPEATS = 9;
    private static final ThreadMXBean THREAD = (ThreadMXBean) ManagementFactory.getThreadMXBean();

    private final SpeedSample sample;
    private final PrintStream out;
    private final FlightBatch batch = FlightBatch.of(SpeedSample.MODEL.withAccuracy(Accuracy.MILLIMETER));
    private double sink;

    MemoryAndSizes(SpeedSample sample, PrintStream out) {
        this.sample = sample;
        this.out = out;
    }

    /** Prints both; a number that depends on everything flown, so that nothing is left out as useless. */
    double print() {
        allocations();
        sizes();
        return sink;
    }

    private void allocations() {
        LaunchConditions[] launches = new LaunchConditions[SINGLE_FLIGHTS];
        FlightModel[] models = new FlightModel[SINGLE_FLIGHTS];
        SpeedSample.PeerLaunch[] bare = new SpeedSample.PeerLaunch[SINGLE_FLIGHTS];
        FlightIntegrator[] integrators = new FlightIntegrator[SINGLE_FLIGHTS];
        for (int i = 0; i < SINGLE_FLIGHTS; i++) {
            launches[i] = sample.launch(i);
            models[i] = sample.model(i);
            bare[i] = sample.peer(i);
            integrators[i] = new FlightIntegrator(bare[i].equations(), 0.0, StepRule.STANDARD);
        }
        double flight = Double.POSITIVE_INFINITY;
        double path = Double.POSITIVE_INFINITY;
        for (int repeat = 0; repeat < REPEATS; repeat++) {
            long before = THREAD.getCurrentThreadAllocatedBytes();
            for (int i = 0; i < SINGLE_FLIGHTS; i++) {
                sink += models[i].fly(launches[i]).apex().meters();
            }
            flight = Math.min(flight, (double) (THREAD.getCurrentThreadAllocatedBytes() - before) / SINGLE_FLIGHTS);
            before = THREAD.getCurrentThreadAllocatedBytes();
            for (int i = 0; i < SINGLE_FLIGHTS; i++) {
                sink += integrators[i].fly(bare[i].state(), bare[i].axis()).endTime();
            }
            path = Math.min(path, (double) (THREAD.getCurrentThreadAllocatedBytes() - before) / SINGLE_FLIGHTS);
        }
        double few = allocated(BLOCK / 2);
        double many = allocated(BLOCK);
        out.printf(
                Locale.ROOT,
                "Allocated: %.0f B by a single flight, %.0f B of them its path and the work space (%d numbers in a state and"
                        + " its rates at each of some ten steps); %.0f B by a batch whatever its rows, and %.2f B a flight.%n",
                flight,
                path,
                FlightEquations.STATE + FlightEquations.RATES,
                few,
                (many - few) / (BLOCK - BLOCK / 2));
    }

    private double allocated(int rows) {
        LaunchTable launches = sample.table(rows);
        FlightTable flights = FlightTable.ofRows(rows);
        double least = Double.POSITIVE_INFINITY;
        for (int repeat = 0; repeat < REPEATS; repeat++) {
            long before = THREAD.getCurrentThreadAllocatedBytes();
            batch.fly(launches, flights);
            least = Math.min(least, (double) (THREAD.getCurrentThreadAllocatedBytes() - before));
        }
        sink += flights.carry()[rows - 1];
        return least;
    }

    /** Streams more and more rows, and says what each costs. A stream of one row tells what any stream costs before its first. */
    private void sizes() {
        stream(10 * BLOCK);
        double[] starts = new double[REPEATS];
        for (int i = 0; i < REPEATS; i++) {
            starts[i] = stream(1);
        }
        Arrays.sort(starts);
        double start = starts[REPEATS / 2];
        out.printf(
                Locale.ROOT,
                "Processor time of a stream of one row, all set-up: %.0f us. A row beyond it:",
                start / 1e3);
        for (long rows = BLOCK; rows <= 1_000L * BLOCK; rows *= 10) {
            double time = Double.POSITIVE_INFINITY;
            for (int i = 0; i < (rows < 100L * BLOCK ? REPEATS : 1); i++) {
                time = Math.min(time, stream(rows));
            }
            out.printf(
                    Locale.ROOT,
                    " %.3f us of %,d%s",
                    (time - start) / 1e3 / rows,
                    rows,
                    rows < 1_000L * BLOCK ? "," : ".");
        }
        out.println();
    }

    private double stream(long rows) {
        LaunchTable block = LaunchTable.builder().rows(BLOCK).build();
        long[] left = {rows};
        long before = THREAD.getCurrentThreadCpuTime();
        batch.stream(
                block,
                into -> {
                    int n = (int) Math.min(left[0], BLOCK);
                    left[0] -= n;
                    System.arraycopy(sample.speed, 0, into.ballSpeed(), 0, n);
                    System.arraycopy(sample.up, 0, into.launchAngle(), 0, n);
                    System.arraycopy(sample.spin, 0, into.spinRate(), 0, n);
                    return n;
                },
                (from, flights, count) -> sink += flights.carry()[count - 1]);
        return THREAD.getCurrentThreadCpuTime() - before;
    }
}
