package dev.teeward.benchmarks;

import dev.teeward.flight.Accuracy;
import dev.teeward.flight.batch.FlightBatch;
import dev.teeward.flight.batch.LaunchTable;
import java.io.PrintStream;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.util.Locale;

/**
 * Streams many rows through one block and says how long it took and how much memory was in use: run it with a small heap.
 *
 * <p>{@code java -Xmx64m -cp benchmarks/target/teeward-benchmarks.jar dev.teeward.benchmarks.StreamRun 100000000 2}
 */
public final class StreamRun {
    private static final int BLOCK = 50_000;

    private StreamRun() {}

    /**
     * Streams and prints.
     *
     * @param arguments the rows and the threads
     */
    public static void main(String[] arguments) {
        long rows = Long.parseLong(arguments[0]);
        int threads = Integer.parseInt(arguments[1]);
        SpeedSample sample = new SpeedSample(BLOCK);
        LaunchTable block = sample.table(BLOCK);
        long[] left = {rows};
        long[] most = {0};
        double[] sum = {0.0};
        var memory = ManagementFactory.getMemoryMXBean();
        long before = System.nanoTime();
        long flown = FlightBatch.of(SpeedSample.MODEL.withAccuracy(Accuracy.MILLIMETER)).withThreads(threads).stream(
                block,
                into -> {
                    int n = (int) Math.min(left[0], BLOCK);
                    left[0] -= n;
                    return n;
                },
                (from, flights, n) -> {
                    for (int i = 0; i < n; i++) {
                        sum[0] += flights.carry()[i];
                    }
                    most[0] = Math.max(most[0], memory.getHeapMemoryUsage().getUsed());
                });
        double seconds = (System.nanoTime() - before) / 1e9;
        new PrintStream(System.out, true, StandardCharsets.UTF_8)
                .printf(
                        Locale.ROOT,
                        "%,d rows in %d thread(s): %.1f s by the clock, %.3f us a row; most heap in use %.1f MB of"
                                + " %.0f; mean carry %.3f m%n",
                        flown,
                        threads,
                        seconds,
                        1e6 * seconds / flown,
                        most[0] / 1e6,
                        Runtime.getRuntime().maxMemory() / 1e6,
                        sum[0] / flown);
    }
}
