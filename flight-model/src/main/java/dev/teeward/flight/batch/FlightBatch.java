package dev.teeward.flight.batch;

import dev.teeward.flight.FlightModel;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;
import java.util.function.LongConsumer;

/**
 * Flies many balls at once.
 *
 * <p>Every row comes out with the bits of {@link FlightModel#fly} for the same launch, air and wind, whatever its neighbours,
 * however many threads. The accuracy is that of the model, {@link FlightModel#withAccuracy}. Nothing is allocated for a row,
 * but over a terrain, for a total, where one of several models has fewer than 32 rows, which are flown one by one, and, since
 * Java 21, for a launch or start angle beyond 45 deg or an axis tilted further than that, whose sine and cosine are left to
 * {@link StrictMath}, which there allocates 32 bytes a call. What a thread needs, 0.26 MB, is allocated once a call.
 *
 * <p>The state of a row that does not land is its {@link FlightStatus}; its numbers are NaN. What single flights warn of is in
 * {@link FlightTable#warnings}.
 *
 * <p>A model with a ground fills the columns total and run, where the table has them; they are NaN where
 * the single flight has no total. Over a terrain the rows are flown one by
 * one, at the speed of single flights; a column of landing elevations must then be 0.
 *
 * <p>Any aerodynamic model and any wind will do; they go fastest if they override their forms for many states at once
 * ({@link dev.teeward.flight.aero.AerodynamicModel#coefficients}) with short loops.
 *
 * <pre>{@code
 * FlightBatch batch = FlightBatch.of(FlightModel.standard().withAccuracy(Accuracy.MILLIMETER)).withThreads(2);
 * FlightTable flights = batch.fly(launches);
 * flights.carry()[0];
 * }</pre>
 *
 * <p>Immutable, and thread-safe if the models' winds and aerodynamic models are; the tables are not.
 */
public final class FlightBatch {
    private static final int MOST_THREADS = 1024;

    /** Where the launches of a {@linkplain #stream stream} come from. */
    @FunctionalInterface
    public interface Source {
        /**
         * Fills the arrays of a block, from row 0 on.
         *
         * @param block the table given to {@link #stream}
         * @return the number of rows filled; 0 ends the stream
         */
        int fill(LaunchTable block);
    }

    /** Where the flights of a {@linkplain #stream stream} go to. */
    @FunctionalInterface
    public interface Sink {
        /**
         * Takes the flights of a block, in the order of its rows; blocks come in the order in which they were filled.
         *
         * @param launches the block
         * @param flights its flights; overwritten by the next block
         * @param rows how many rows of both count
         */
        void accept(LaunchTable launches, FlightTable flights, int rows);
    }

    private final List<FlightModel> models;
    private final int threads;
    private final LongConsumer progress;
    private final BooleanSupplier cancelled;

    private FlightBatch(List<FlightModel> models, int threads, LongConsumer progress, BooleanSupplier cancelled) {
        this.models = models;
        this.threads = threads;
        this.progress = progress;
        this.cancelled = cancelled;
    }

    /**
     * Flies every row by one model, in the calling thread.
     *
     * @param model the model
     * @return the batch
     */
    public static FlightBatch of(FlightModel model) {
        return of(List.of(model));
    }

    /**
     * Flies each row by the model that the column {@link LaunchTable#model()} names, in the calling thread.
     *
     * @param models the models, at least one
     * @return the batch
     * @throws IllegalArgumentException if there is none
     */
    public static FlightBatch of(List<FlightModel> models) {
        if (models.isEmpty()) {
            throw new IllegalArgumentException("models must not be empty");
        }
        return new FlightBatch(List.copyOf(models), 1, rows -> {}, () -> false);
    }

    /**
     * A copy that uses several threads. The results are the same bits for any number.
     *
     * @param value how many, in [1, 1024]; the calling thread is one of them
     * @return the copy
     * @throws IllegalArgumentException if the number lies outside
     */
    public FlightBatch withThreads(int value) {
        return new FlightBatch(models, threads(value), progress, cancelled);
    }

    /** The number of threads, if it is one that a batch may have. */
    static int threads(int value) {
        if (value < 1 || value > MOST_THREADS) {
            throw new IllegalArgumentException("threads must be in [1, " + MOST_THREADS + "], but was " + value);
        }
        return value;
    }

    /**
     * A copy that reports how far it is.
     *
     * @param value is called every few thousand rows, and at the end of each table or block, with the number of rows taken up
     *     so far; from any of the threads, but by one at a time and with growing numbers
     * @return the copy
     */
    public FlightBatch withProgress(LongConsumer value) {
        return new FlightBatch(models, threads, value, cancelled);
    }

    /**
     * A copy that can be stopped. Interrupting the calling thread stops a batch too.
     *
     * @param value is asked every few thousand rows, from any of the threads; true stops the batch
     * @return the copy
     */
    public FlightBatch withCancellation(BooleanSupplier value) {
        return new FlightBatch(models, threads, progress, value);
    }

    /**
     * Flies a table.
     *
     * @param launches the launches
     * @return the flights, every column; total and run too if a model has a ground
     * @throws IllegalArgumentException if a row lies outside the ranges of {@link LaunchTable}
     * @throws CancellationException if it was stopped
     */
    public FlightTable fly(LaunchTable launches) {
        FlightTable flights = table(launches.rows());
        fly(launches, flights);
        return flights;
    }

    /**
     * Flies a table into columns that are there already.
     *
     * @param launches the launches
     * @param flights receives the flights, in the order of the launches
     * @throws IllegalArgumentException if a row lies outside the ranges of {@link LaunchTable}, or the table for the flights is
     *     shorter than that of the launches
     * @throws CancellationException if it was stopped; rows not yet flown are then {@link FlightStatus#NOT_FLOWN}
     */
    public void fly(LaunchTable launches, FlightTable flights) {
        new BatchRun(models, threads, progress, cancelled).fly(launches, launches.rows(), flights);
    }

    /**
     * Flies more rows than memory holds: fills one block again and again, flies it, and hands it on. Source and sink run in the
     * calling thread and in turn.
     *
     * @param block the launches of one block; several ten thousand rows keep the threads busy
     * @param source fills the block
     * @param sink takes the flights
     * @return the number of rows flown
     * @throws IllegalArgumentException if a row lies outside the ranges of {@link LaunchTable}, named as counted from the start
     *     of the stream, or the source claims more rows than the block has
     * @throws CancellationException if it was stopped
     */
    public long stream(LaunchTable block, Source source, Sink sink) {
        return stream(block, table(block.rows()), source, sink);
    }

    /** A table with every column that some of the models can fill. */
    private FlightTable table(int rows) {
        boolean ground = models.stream().anyMatch(model -> model.ground().isPresent());
        return ground ? FlightTable.withTotals(rows) : FlightTable.ofRows(rows);
    }

    long stream(LaunchTable block, FlightTable flights, Source source, Sink sink) {
        BatchRun run = new BatchRun(models, threads, progress, cancelled);
        long flown = 0;
        while (true) {
            int rows = source.fill(block);
            if (rows < 0 || rows > block.rows()) {
                throw new IllegalArgumentException("the source must fill 0 to " + block.rows()
                        + " rows, as many as the block has, but said " + rows);
            }
            if (rows == 0) {
                return flown;
            }
            run.fly(block, rows, flights);
            flown += rows;
            sink.accept(block, flights, rows);
        }
    }

    /**
     * The models.
     *
     * @return the models, unmodifiable
     */
    public List<FlightModel> models() {
        return models;
    }

    @Override
    public String toString() {
        return models + " in " + threads + " thread(s)";
    }
}
