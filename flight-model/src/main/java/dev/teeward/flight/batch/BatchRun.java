package dev.teeward.flight.batch;

import dev.teeward.flight.FlightModel;
import dev.teeward.flight.ground.Ground;
import dev.teeward.flight.ground.Terrain;
import dev.teeward.flight.internal.FlightEquations;
import dev.teeward.flight.internal.LaneIntegrator;
import dev.teeward.flight.internal.StepRule;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.BooleanSupplier;
import java.util.function.LongConsumer;
import org.jspecify.annotations.Nullable;

/**
 * One run of a batch: the work space of every thread that has rows to fly, and how rows are shared out among them.
 *
 * <p>Rows are taken in portions from a common counter, so that no thread waits for another; which thread flies a row does not
 * matter to its result. With several models the rows are first put in the order of their models, which are flown in turn.
 */
final class BatchRun {
    private static final int PORTION = 1024;

    /** One of several models with fewer rows flies them one by one: setting up the lanes takes as long as some 40 flights. */
    private static final int FEW = 32;

    private final List<FlightModel> models;
    private final FlightEquations[] equations;
    private final int threads;
    private final List<RowExchange> exchanges = new ArrayList<>();
    private final List<LaneIntegrator> integrators = new ArrayList<>();
    private final LongConsumer progress;
    private final BooleanSupplier cancelled;
    private final AtomicInteger next = new AtomicInteger();
    private final AtomicReference<@Nullable Throwable> failure = new AtomicReference<>();
    private final Thread caller = Thread.currentThread();
    private final int[] firstOfModel;
    private int[] order = {};
    private long before;
    private long reported;
    private int end;

    BatchRun(List<FlightModel> models, int threads, LongConsumer progress, BooleanSupplier cancelled) {
        this.models = models;
        this.threads = threads;
        this.progress = progress;
        this.cancelled = cancelled;
        equations = new FlightEquations[models.size()];
        for (int i = 0; i < equations.length; i++) {
            FlightModel model = models.get(i);
            equations[i] = SingleFlights.equations(
                    model, model.air().density(), model.air().dynamicViscosity(), model.wind());
        }
        firstOfModel = new int[models.size() + 1];
    }

    void fly(LaunchTable launches, int rows, FlightTable flights) {
        if (flights.rows() < rows) {
            throw new IllegalArgumentException(
                    "the flights must have at least " + rows + " rows, but have " + flights.rows());
        }
        launches.check(rows, models.size(), before);
        requireElevationsOfTerrains(launches, rows);
        flights.clear();
        sort(launches.model(), rows);
        for (int m = 0; m < models.size(); m++) {
            if (firstOfModel[m + 1] > firstOfModel[m]) {
                fly(m, launches, flights);
            }
        }
        before += rows;
        report(before);
    }

    private void fly(int m, LaunchTable launches, FlightTable flights) {
        next.set(firstOfModel[m]);
        end = firstOfModel[m + 1];
        FlightModel model = models.get(m);
        boolean sorted = launches.model() != null;
        int useful = Math.min(threads, (end - firstOfModel[m] + PORTION - 1) / PORTION);
        while (exchanges.size() < useful) {
            exchanges.add(new RowExchange(this));
            integrators.add(new LaneIntegrator());
        }
        Thread[] helpers = new Thread[useful - 1];
        for (int i = 0; i < useful; i++) {
            exchanges.get(i).begin(model, launches, flights, sorted ? order : null);
            if (i > 0) {
                int number = i;
                helpers[i - 1] = new Thread(() -> work(m, number, launches), "flight-batch-" + number);
                helpers[i - 1].setDaemon(true);
                helpers[i - 1].start();
            }
        }
        work(m, 0, launches);
        await(helpers);
        Throwable thrown = failure.getAndSet(null);
        if (thrown instanceof CancellationException) {
            throw new CancellationException("the batch was stopped");
        }
        if (thrown instanceof Error error) {
            throw error;
        }
        if (thrown instanceof RuntimeException exception) {
            throw exception;
        }
    }

    private void work(int m, int number, LaunchTable launches) {
        try {
            FlightModel model = models.get(m);
            boolean ownAir = launches.density() != null;
            boolean ownWind = launches.windAlongTarget() != null;
            Terrain terrain = model.ground().flatMap(Ground::terrain).orElse(null);
            boolean few = models.size() > 1 && firstOfModel[m + 1] - firstOfModel[m] < FEW;
            if (terrain == null && !few) {
                StepRule rule = StepRule.valueOf(model.accuracy().name());
                integrators.get(number).fly(equations[m], rule, ownAir, ownWind, exchanges.get(number));
            } else {
                new SingleFlights(model, terrain, equations[m]).fly(ownAir, ownWind, exchanges.get(number));
            }
        } catch (RuntimeException | Error e) {
            failure.compareAndSet(null, e);
            next.set(end);
        }
    }

    /** The helpers stop soon after an interruption of the caller, which sees it itself: so this waits for all of them. */
    private static void await(Thread[] helpers) {
        boolean interrupted = false;
        for (Thread helper : helpers) {
            while (helper.isAlive()) {
                try {
                    helper.join();
                } catch (InterruptedException e) {
                    interrupted = true;
                }
            }
        }
        if (interrupted) {
            Thread.currentThread().interrupt();
        }
    }

    /** The first row of the next portion, or -1. */
    int portion() {
        if (caller.isInterrupted() || cancelled.getAsBoolean()) {
            throw new CancellationException("the batch was stopped");
        }
        int first = next.getAndUpdate(at -> at >= end ? end : Math.min(end, at + PORTION));
        if (first >= end) {
            return -1;
        }
        report(before + first);
        return first;
    }

    /** The end of the portion that starts at a row. */
    int portionEnd(int first) {
        return Math.min(end, first + PORTION);
    }

    private synchronized void report(long rows) {
        if (rows > reported) {
            reported = rows;
            progress.accept(rows);
        }
    }

    /** A terrain has the elevations: as {@link FlightModel#withGround} has it, a row may not name another. */
    private void requireElevationsOfTerrains(LaunchTable launches, int rows) {
        double[] elevation = launches.landingElevation();
        int[] model = launches.model();
        for (int row = 0; elevation != null && row < rows; row++) {
            FlightModel over = models.get(model == null ? 0 : model[row]);
            if (elevation[row] != 0.0 && over.ground().flatMap(Ground::terrain).isPresent()) {
                throw new IllegalArgumentException("row " + (before + row)
                        + ": landingElevation must be 0 over ground with a terrain, but was " + elevation[row]
                        + " m; the terrain has the elevations");
            }
        }
    }

    /** Rows in the order of their models; those of one model in their own order. */
    private void sort(int @Nullable [] model, int rows) {
        Arrays.fill(firstOfModel, 0);
        if (model == null) {
            Arrays.fill(firstOfModel, 1, firstOfModel.length, rows);
            return;
        }
        if (order.length < rows) {
            order = new int[rows];
        }
        for (int row = 0; row < rows; row++) {
            firstOfModel[model[row] + 1]++;
        }
        for (int m = 1; m < firstOfModel.length; m++) {
            firstOfModel[m] += firstOfModel[m - 1];
        }
        int[] at = firstOfModel.clone();
        for (int row = 0; row < rows; row++) {
            order[at[model[row]]++] = row;
        }
    }
}
