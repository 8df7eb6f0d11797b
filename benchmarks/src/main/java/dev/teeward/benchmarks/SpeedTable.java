package dev.teeward.benchmarks;

import dev.teeward.flight.Accuracy;
import dev.teeward.flight.Flight;
import dev.teeward.flight.FlightModel;
import dev.teeward.flight.LaunchConditions;
import dev.teeward.flight.batch.FlightBatch;
import dev.teeward.flight.batch.FlightDerivatives;
import dev.teeward.flight.batch.FlightMonteCarlo;
import dev.teeward.flight.batch.FlightTable;
import dev.teeward.flight.batch.LaunchSpread;
import dev.teeward.flight.batch.LaunchTable;
import dev.teeward.flight.internal.FlightEquations;
import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Speed;
import dev.teeward.quantity.SpinRate;
import java.io.IOException;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * Prints the table of speeds: ours and the peers' in turn, round after round in one run, with the largest landing error of each
 * against Hipparchus 8(5,3) at 1e-11 measured in the same run.
 *
 * <p>Times are processor time of the thread (but for two threads, which the clock times), medians over rounds; compare only the
 * ratios, and only within one table. The launches are those of {@link SpeedSample}.
 *
 * <p>{@code java -cp benchmarks/target/teeward-benchmarks.jar dev.teeward.benchmarks.SpeedTable [rounds]}
 */
public final class SpeedTable {
    private static final int LAUNCHES = 20_000;
    private static final int CHECKED = 2_000;
    private static final int PEER_FLIGHTS = 400;
    private static final int GRADIENTS_CHECKED = 200;
    private static final FlightModel MODEL = SpeedSample.MODEL;
    private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();

    private final SpeedSample sample = new SpeedSample(LAUNCHES);
    private final SpeedSample.PeerLaunch[] peers = new SpeedSample.PeerLaunch[CHECKED];
    private final FlightModel[] models = new FlightModel[CHECKED];
    private final LaunchConditions[] launches = new LaunchConditions[CHECKED];
    private final LaunchTable table = sample.table(LAUNCHES);
    private final double[][] referee = new double[CHECKED][];
    private double sink;

    /** Flies some launches, from one row on, and gives the landing x and z of the last. */
    @FunctionalInterface
    private interface Work {
        double[] run(int first, int count);
    }

    private record Contender(String name, int flights, Work work, boolean hasError) {}

    private SpeedTable() {
        for (int i = 0; i < CHECKED; i++) {
            peers[i] = sample.peer(i);
            models[i] = sample.model(i);
            launches[i] = sample.launch(i);
            referee[i] = landing(Peers.hipparchus(Peers.hipparchus853(1e-11), peers[i]));
        }
    }

    private static double[] landing(double[] state) {
        return new double[] {state[FlightEquations.X], state[FlightEquations.Z]};
    }

    /**
     * Measures and prints.
     *
     * @param arguments the number of rounds, 15 unless given
     */
    public static void main(String[] arguments) {
        int rounds = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 15;
        new SpeedTable().run(rounds, new PrintStream(System.out, true, StandardCharsets.UTF_8));
    }

    private List<Contender> contenders() {
        FlightTable flights = FlightTable.ofRows(LAUNCHES);
        FlightBatch millimeter = FlightBatch.of(MODEL.withAccuracy(Accuracy.MILLIMETER));
        FlightBatch tenth = FlightBatch.of(MODEL.withAccuracy(Accuracy.TENTH_MILLIMETER));
        double[] x = new double[4000];
        double[] y = new double[4000];
        double[] z = new double[4000];
        LaunchConditions middle = launches[0];
        FlightMonteCarlo draws = FlightMonteCarlo.withDefaults()
                .withDraws(LAUNCHES)
                .withSpread(LaunchSpread.none()
                        .withBallSpeed(Speed.ofMetersPerSecond(0.5))
                        .withSpinRate(SpinRate.ofRpm(300.0))
                        .withLaunchAngle(Angle.ofDegrees(0.7)));
        FlightDerivatives derivatives = FlightDerivatives.of(MODEL.withAccuracy(Accuracy.MILLIMETER));
        int gradients = LAUNCHES / 10;
        LaunchTable few = sample.table(gradients);
        List<Contender> all = new ArrayList<>();
        all.add(new Contender(
                "Hipparchus 8(5,3), 1e-6",
                PEER_FLIGHTS,
                each(i -> landing(Peers.hipparchus(Peers.hipparchus853(1e-6), peers[i]))),
                true));
        all.add(new Contender(
                "Hipparchus 5(4), 1e-6",
                PEER_FLIGHTS,
                each(i -> landing(Peers.hipparchus(Peers.hipparchus54(1e-6), peers[i]))),
                true));
        all.add(new Contender(
                "Commons Math 5(4), 1e-6", PEER_FLIGHTS, each(i -> landing(Peers.commonsMath54(peers[i]))), true));
        all.add(new Contender(
                "Runge-Kutta 4, fixed 0.05 s, line at the landing",
                PEER_FLIGHTS,
                each(i -> landing(Peers.fixedStep(peers[i], 0.05))),
                true));
        all.add(new Contender("**batch, 1 mm**", LAUNCHES, batch(millimeter, flights), true));
        all.add(new Contender("**batch, 0.1 mm**", LAUNCHES, batch(tenth, flights), true));
        all.add(new Contender(
                "**single flight, default**", PEER_FLIGHTS, each(i -> landing(models[i].fly(launches[i]))), true));
        all.add(new Contender(
                "**single flight and 10 ms samples, columns**",
                PEER_FLIGHTS,
                each(i -> {
                    Flight flight = models[i].fly(launches[i]);
                    flight.trajectory().sampleInto(0.01, x, y, z);
                    return landing(flight);
                }),
                true));
        all.add(new Contender(
                "Hipparchus 8(5,3), 1e-6, and 10 ms samples",
                PEER_FLIGHTS / 4,
                each(i -> {
                    var integrator = Peers.hipparchus853(1e-6);
                    integrator.addStepHandler(new org.hipparchus.ode.sampling.StepNormalizer(
                            0.01, (state, last) -> sink += state.getPrimaryState()[FlightEquations.Y]));
                    return landing(Peers.hipparchus(integrator, peers[i]));
                }),
                true));
        all.add(new Contender(
                "Hipparchus 5(4), 1e-6, and 10 ms samples",
                PEER_FLIGHTS / 4,
                each(i -> {
                    var integrator = Peers.hipparchus54(1e-6);
                    integrator.addStepHandler(new org.hipparchus.ode.sampling.StepNormalizer(
                            0.01, (state, last) -> sink += state.getPrimaryState()[FlightEquations.Y]));
                    return landing(Peers.hipparchus(integrator, peers[i]));
                }),
                true));
        all.add(new Contender(
                "**gradient by six inputs, batch 1 mm**",
                gradients,
                (first, count) -> {
                    sink += derivatives.differentiate(few)
                            .of(FlightDerivatives.Output.CARRY, FlightDerivatives.Input.BALL_SPEED)[0];
                    return new double[2];
                },
                false));
        all.add(new Contender(
                "gradient by six inputs, Hipparchus Gradient 5(4), 1e-6",
                40,
                each(i -> {
                    var end = Peers.gradient(sample.inputs(i), sample.across[i], 1e-6);
                    return new double[] {end[0].getValue(), end[1].getValue()};
                }),
                true));
        all.add(new Contender(
                "**Monte Carlo, default, drawn and summed up**",
                LAUNCHES,
                (first, count) -> {
                    sink += draws.fly(MODEL, middle).carry().value();
                    return new double[2];
                },
                false));
        return all;
    }

    @FunctionalInterface
    private interface OneFlight {
        double[] landing(int row);
    }

    private static Work each(OneFlight flight) {
        return (first, count) -> {
            double[] last = new double[2];
            for (int i = first; i < first + count; i++) {
                last = flight.landing(i % CHECKED);
            }
            return last;
        };
    }

    private static double[] landing(Flight flight) {
        return new double[] {
            flight.landing().downrange().meters(), flight.landing().side().meters()
        };
    }

    private Work batch(FlightBatch batch, FlightTable into) {
        return (first, count) -> {
            batch.fly(table, into);
            double carry = into.carry()[first];
            double side = into.side()[first];
            return new double[] {Math.sqrt(carry * carry - side * side), side};
        };
    }

    private double worst(Contender contender) {
        double worst = 0.0;
        for (int i = 0; i < CHECKED; i++) {
            if (contender.flights() == LAUNCHES && i > 0) {
                break;
            }
            double[] end = contender.work().run(i, 1);
            worst = Math.max(worst, Math.hypot(end[0] - referee[i][0], end[1] - referee[i][1]));
        }
        return worst;
    }

    /** All checked flights of a batch come out of one run. */
    private double worstOfBatch(FlightTable flights) {
        double worst = 0.0;
        for (int i = 0; i < CHECKED; i++) {
            double carry = flights.carry()[i];
            double side = flights.side()[i];
            double x = Math.copySign(Math.sqrt(carry * carry - side * side), referee[i][0]);
            worst = Math.max(worst, Math.hypot(x - referee[i][0], side - referee[i][1]));
        }
        return worst;
    }

    private void run(int rounds, PrintStream out) {
        List<Contender> all = contenders();
        double[][] times = new double[all.size()][rounds];
        // The first rounds warm up and do not count.
        for (int round = -rounds; round < rounds; round++) {
            for (int c = 0; c < all.size(); c++) {
                Contender contender = all.get(c);
                long before = THREADS.getCurrentThreadCpuTime();
                int repeats = contender.flights() == LAUNCHES ? 3 : 1;
                for (int i = 0; i < repeats; i++) {
                    sink += contender.work().run((round + rounds) * 97 % CHECKED, contender.flights())[0];
                }
                double each = (double) (THREADS.getCurrentThreadCpuTime() - before) / repeats / contender.flights();
                if (round >= 0) {
                    times[c][round] = each;
                }
            }
        }
        out.println(machine());
        out.println();
        out.println("| what | max error | us each | times Hipparchus 8(5,3) | times Commons Math 5(4) |");
        out.println("|---|---|---|---|---|");
        double hipparchus = median(times[0]);
        double commons = median(times[2]);
        for (int c = 0; c < all.size(); c++) {
            Contender contender = all.get(c);
            double time = median(times[c]);
            String error = contender.hasError() ? String.format(Locale.ROOT, "%.3f mm", 1e3 * error(contender, c)) : "";
            out.printf(
                    Locale.ROOT,
                    "| %s | %s | %.3f | %.1f | %.1f |%n",
                    contender.name(),
                    error,
                    time / 1e3,
                    hipparchus / time,
                    commons / time);
        }
        out.println();
        out.printf(
                Locale.ROOT,
                "Samples: %.1f times Hipparchus 8(5,3), %.1f times Hipparchus 5(4). Gradient: %.1f times Hipparchus"
                        + " Gradient.%n",
                median(times[8]) / median(times[7]),
                median(times[9]) / median(times[7]),
                median(times[11]) / median(times[10]));
        gradientErrors(out);
        twoThreads(rounds, out);
        sink += new MemoryAndSizes(sample, out).print();
        if (sink == 0.0) {
            out.println("nothing was flown");
        }
    }

    private double error(Contender contender, int number) {
        if (number == 4 || number == 5) {
            FlightTable flights = FlightTable.ofRows(LAUNCHES);
            FlightBatch.of(MODEL.withAccuracy(number == 4 ? Accuracy.MILLIMETER : Accuracy.TENTH_MILLIMETER))
                    .fly(table, flights);
            return worstOfBatch(flights);
        }
        return worst(contender);
    }

    /** The derivatives of the carry against automatic differentiation at tolerance 1e-11, each by the largest of its kind. */
    private void gradientErrors(PrintStream out) {
        FlightDerivatives.Input[] inputs = FlightDerivatives.Input.values();
        FlightDerivatives.Result ours = FlightDerivatives.of(MODEL.withAccuracy(Accuracy.MILLIMETER))
                .differentiate(sample.table(GRADIENTS_CHECKED));
        double[] largest = new double[inputs.length];
        double[] off = new double[inputs.length];
        double[] peerOff = new double[inputs.length];
        for (int row = 0; row < GRADIENTS_CHECKED; row++) {
            double[] exact = slopes(row, 1e-11);
            double[] peer = slopes(row, 1e-6);
            for (int k = 0; k < inputs.length; k++) {
                largest[k] = Math.max(largest[k], Math.abs(exact[k]));
                double our = ours.of(FlightDerivatives.Output.CARRY, inputs[k])[row];
                off[k] = Math.max(off[k], Math.abs(our - exact[k]));
                peerOff[k] = Math.max(peerOff[k], Math.abs(peer[k] - exact[k]));
            }
        }
        double worst = 0.0;
        double peerWorst = 0.0;
        for (int k = 0; k < inputs.length; k++) {
            worst = Math.max(worst, off[k] / largest[k]);
            peerWorst = Math.max(peerWorst, peerOff[k] / largest[k]);
        }
        out.printf(
                Locale.ROOT,
                "Derivatives of the carry, largest error of %d rows by the largest of each kind: ours %.1e, Hipparchus"
                        + " Gradient 1e-6 %.1e.%n",
                GRADIENTS_CHECKED,
                worst,
                peerWorst);
    }

    private double[] slopes(int row, double tolerance) {
        var end = Peers.gradient(sample.inputs(row), sample.across[row], tolerance);
        double x = end[0].getValue();
        double z = end[1].getValue();
        double[] slopes = new double[sample.inputs(row).length];
        for (int k = 0; k < slopes.length; k++) {
            slopes[k] = (x * end[0].getPartialDerivative(k) + z * end[1].getPartialDerivative(k)) / Math.hypot(x, z);
        }
        return slopes;
    }

    private void twoThreads(int rounds, PrintStream out) {
        FlightTable flights = FlightTable.ofRows(LAUNCHES);
        FlightBatch one = FlightBatch.of(MODEL.withAccuracy(Accuracy.MILLIMETER));
        FlightBatch two = one.withThreads(2);
        double[] gains = new double[rounds];
        for (int round = -3; round < rounds; round++) {
            double single = clock(one, flights);
            double both = clock(two, flights);
            if (round >= 0) {
                gains[round] = single / both;
            }
        }
        out.printf(
                Locale.ROOT,
                "Two threads, by the clock: %.2f times one in the median of %d rounds, %.2f in the best.%n",
                median(gains),
                rounds,
                Arrays.stream(gains).max().orElse(0.0));
    }

    private double clock(FlightBatch batch, FlightTable flights) {
        long before = System.nanoTime();
        for (int i = 0; i < 5; i++) {
            batch.fly(table, flights);
        }
        return System.nanoTime() - before;
    }

    private static double median(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        int middle = sorted.length / 2;
        return sorted.length % 2 == 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2.0;
    }

    private static String machine() {
        String processor = System.getProperty("os.arch");
        Path info = Path.of("/proc/cpuinfo");
        if (Files.isReadable(info)) {
            try {
                processor = Files.readAllLines(info, StandardCharsets.UTF_8).stream()
                        .filter(line -> line.startsWith("model name"))
                        .findFirst()
                        .map(line -> line.substring(line.indexOf(':') + 2))
                        .orElse(processor);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
        return String.format(
                Locale.ROOT,
                "%s, %d processors, load %.1f; Java %s, %s",
                processor,
                Runtime.getRuntime().availableProcessors(),
                ManagementFactory.getOperatingSystemMXBean().getSystemLoadAverage(),
                System.getProperty("java.version"),
                System.getProperty("os.name"));
    }
}
