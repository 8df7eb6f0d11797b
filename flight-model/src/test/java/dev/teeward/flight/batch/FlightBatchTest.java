package dev.teeward.flight.batch;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.flight.Accuracy;
import dev.teeward.flight.Ball;
import dev.teeward.flight.Flight;
import dev.teeward.flight.FlightException;
import dev.teeward.flight.FlightModel;
import dev.teeward.flight.aero.AerodynamicModel;
import dev.teeward.flight.air.Roughness;
import dev.teeward.flight.air.WindProfile;
import dev.teeward.flight.batch.RandomLaunches.Sample;
import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Length;
import dev.teeward.quantity.Speed;
import dev.teeward.quantity.Warning;
import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.CancellationException;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.IntFunction;
import org.junit.jupiter.api.Test;

class FlightBatchTest {
    private static final FlightModel STANDARD = FlightModel.standard();

    /** Counts what the rows met, so that the comparison is known to have covered it. */
    private final Map<FlightStatus, Integer> met = new EnumMap<>(FlightStatus.class);

    private final Set<RowWarning> warned = new HashSet<>();

    @Test
    void hundredThousandRowsHaveTheBitsOfSingleFlights() {
        int differing = 0;
        // Own wind, elevation and air in every row.
        for (Sample sample : Sample.values()) {
            for (Accuracy accuracy : new Accuracy[] {Accuracy.STANDARD, Accuracy.MILLIMETER}) {
                RandomLaunches drawn =
                        new RandomLaunches(sample, 13_000, 100L + sample.name().length());
                FlightModel model = STANDARD.withAccuracy(accuracy);
                LaunchTable table = drawn.launches()
                        .landingElevation(drawn.elevation)
                        .density(drawn.density)
                        .viscosity(drawn.viscosity)
                        .windAlongTarget(drawn.along)
                        .windTowardsRight(drawn.across)
                        .build();
                differing += compare(
                        drawn,
                        FlightBatch.of(model).fly(table),
                        row -> drawn.inWind(drawn.inAir(drawn.over(model, row), row), row));
            }
        }
        // Level ground, everything from the model; the three accuracies.
        for (Accuracy accuracy : Accuracy.values()) {
            RandomLaunches drawn = new RandomLaunches(Sample.EVEN, 6_000, 200L);
            FlightModel model = STANDARD.withAccuracy(accuracy);
            differing +=
                    compare(drawn, FlightBatch.of(model).fly(drawn.launches().build()), row -> model);
        }
        assertEquals(0, differing, "numbers that differ in any bit");
        assertEquals(96_000, met.values().stream().mapToInt(n -> n).sum());
        assertTrue(met.getOrDefault(FlightStatus.ELEVATION_NOT_REACHED, 0) > 1000, met::toString);
        assertTrue(met.getOrDefault(FlightStatus.LANDED_AT_ONCE, 0) > 100, met::toString);
        assertTrue(met.getOrDefault(FlightStatus.LANDED, 0) > 50_000, met::toString);
        assertEquals(
                Set.of(
                        RowWarning.LANDS_AT_ONCE,
                        RowWarning.REYNOLDS_OUTSIDE_MODEL,
                        RowWarning.SPIN_RATIO_OUTSIDE_MODEL,
                        RowWarning.REVERSE_LIFT_POSSIBLE),
                warned);
    }

    /** Rejections by the guard, and steps that may only double. */
    @Test
    void kinkedTablesAndWindProfilesHaveTheBitsOfSingleFlights() {
        int differing = 0;
        FlightModel kinked = FlightModel.of(Ball.of(new BilinearTable()));
        FlightModel sheared = STANDARD.withWind(
                WindProfile.logLaw(Angle.ofDegrees(40.0), Speed.ofMetersPerSecond(7.0), Roughness.OPEN));
        for (FlightModel model : List.of(
                kinked,
                kinked.withAccuracy(Accuracy.MILLIMETER),
                sheared,
                sheared.withAccuracy(Accuracy.MILLIMETER).withLandingElevation(Length.ofMeters(-3.0)))) {
            RandomLaunches drawn = new RandomLaunches(Sample.ALONG_THE_BAG, 1_000, 300L);
            differing +=
                    compare(drawn, FlightBatch.of(model).fly(drawn.launches().build()), row -> model);
        }
        assertEquals(0, differing, "numbers that differ in any bit");
    }

    /** Ten rows for each of sixty balls: such rows are flown one by one, in their own air, wind and elevation. */
    @Test
    void aModelOfFewRowsHasTheBitsOfSingleFlights() {
        List<FlightModel> models = new ArrayList<>();
        for (int i = 0; i < 60; i++) {
            AerodynamicModel air = STANDARD.ball().aerodynamics();
            models.add(STANDARD.withAccuracy(i % 2 == 0 ? Accuracy.STANDARD : Accuracy.MILLIMETER)
                    .withBall(Ball.of(AerodynamicModel.scaled(air, 0.9 + 0.003 * i, 1.1 - 0.003 * i))));
        }
        for (Sample sample : Sample.values()) {
            RandomLaunches drawn = new RandomLaunches(sample, 600, 320L);
            int[] which = new int[600];
            Arrays.setAll(which, row -> row % 60);
            LaunchTable own = drawn.launches()
                    .landingElevation(drawn.elevation)
                    .density(drawn.density)
                    .viscosity(drawn.viscosity)
                    .windAlongTarget(drawn.along)
                    .windTowardsRight(drawn.across)
                    .model(which)
                    .build();
            FlightTable flights = FlightBatch.of(models).withThreads(2).fly(own);
            int differing = compare(
                    drawn,
                    flights,
                    row -> drawn.inWind(drawn.inAir(drawn.over(models.get(which[row]), row), row), row));
            FlightTable level =
                    FlightBatch.of(models).fly(drawn.launches().model(which).build());
            differing += compare(drawn, level, row -> models.get(which[row]));
            assertEquals(0, differing, "numbers that differ in any bit");
        }
        assertTrue(met.getOrDefault(FlightStatus.ELEVATION_NOT_REACHED, 0) > 10, met::toString);
        assertTrue(met.getOrDefault(FlightStatus.LANDED_AT_ONCE, 0) > 5, met::toString);
    }

    /** A lift that jumps, which a model should not have: flights go on as single ones do, by the three accuracies. */
    @Test
    void coefficientsThatJumpHaveTheBitsOfSingleFlights() {
        AerodynamicModel jumping = new AerodynamicModel() {
            @Override
            public double dragCoefficient(double re, double s) {
                return 0.25;
            }

            @Override
            public double liftCoefficient(double re, double s) {
                return re > 1.2e5 ? 0.2 : 0.1;
            }
        };
        for (Accuracy accuracy : Accuracy.values()) {
            RandomLaunches drawn = new RandomLaunches(Sample.ALONG_THE_BAG, 300, 310L);
            FlightModel model = FlightModel.of(Ball.of(jumping)).withAccuracy(accuracy);
            FlightTable flights = FlightBatch.of(model).fly(drawn.launches().build());
            assertEquals(0, compare(drawn, flights, row -> model), "numbers that differ in any bit");
            assertEquals(300, flights.landed(), accuracy.toString());
        }
    }

    /** Low launches, nearly all of which come down at a shallow angle and are flown twice where a length is promised. */
    @Test
    void flightsFlownTwiceHaveTheBitsOfSingleFlights() {
        RandomLaunches drawn = new RandomLaunches(Sample.EVEN, 2_000, 320L);
        for (int row = 0; row < drawn.rows; row++) {
            drawn.up[row] = Math.toRadians(0.5 + 6.0 * row / drawn.rows);
            drawn.spin[row] /= 4.0;
        }
        LaunchTable table = drawn.launches().build();
        for (Accuracy accuracy : Accuracy.values()) {
            FlightModel model = STANDARD.withAccuracy(accuracy);
            FlightTable flights = FlightBatch.of(model).fly(table);
            assertEquals(0, compare(drawn, flights, row -> model), "numbers that differ in any bit");
            assertArrayEquals(
                    flights.carry(),
                    FlightBatch.of(model).withThreads(3).fly(table).carry());
            long shallow = Arrays.stream(flights.descentAngle())
                    .filter(angle -> angle < Math.toRadians(10.0))
                    .count();
            assertTrue(shallow > 1_000 && shallow < 2_000, "shallow: " + shallow);
        }
    }

    /** A balloon that hangs in the air until time is up, among balls that fly. */
    @Test
    void flightsThatDoNotComeDownHaveTheEndOfSingleFlights() {
        FlightModel balloon = FlightModel.of(Ball.of(new AerodynamicModel() {
                    @Override
                    public double dragCoefficient(double re, double s) {
                        return 0.25;
                    }

                    @Override
                    public double liftCoefficient(double re, double s) {
                        return 5.0;
                    }

                    @Override
                    public double momentSlope() {
                        return 0.0;
                    }

                    @Override
                    public boolean smooth() {
                        return true;
                    }
                }))
                .withLandingElevation(Length.ofMeters(-1000.0));
        RandomLaunches drawn = new RandomLaunches(Sample.ALONG_THE_BAG, 200, 330L);
        for (Accuracy accuracy : Accuracy.values()) {
            FlightModel model = balloon.withAccuracy(accuracy);
            FlightTable flights = FlightBatch.of(model).fly(drawn.launches().build());
            assertEquals(0, compare(drawn, flights, row -> model), "numbers that differ in any bit");
            int late = 0;
            for (int row = 0; row < drawn.rows; row++) {
                late += flights.status(row) == FlightStatus.DID_NOT_COME_DOWN ? 1 : 0;
            }
            assertTrue(late > 20, "late: " + late);
        }
    }

    private int compare(RandomLaunches drawn, FlightTable flights, IntFunction<FlightModel> models) {
        int differing = 0;
        for (int row = 0; row < drawn.rows; row++) {
            met.merge(flights.status(row), 1, Integer::sum);
            warned.addAll(flights.warnings(row));
            try {
                Flight flight = models.apply(row).fly(drawn.launch(row));
                assertTrue(flights.status(row).landed(), "status");
                differing += differ(flight.carry().meters(), flights.carry()[row]);
                differing += differ(flight.side().meters(), flights.side()[row]);
                differing += differ(flight.curve().meters(), flights.curve()[row]);
                differing += differ(flight.apex().meters(), flights.apex()[row]);
                differing += differ(flight.flightTimeSeconds(), flights.flightTime()[row]);
                differing += differ(flight.descentAngle().radians(), flights.descentAngle()[row]);
                differing += differ(flight.landingSpeed().metersPerSecond(), flights.landingSpeed()[row]);
                differing += differ(flight.landingSpin().radiansPerSecond(), flights.landingSpin()[row]);
                assertEquals(
                        flight.warnings().stream().map(Warning::code).sorted().toList(),
                        flights.warnings(row).stream()
                                .map(RowWarning::code)
                                .sorted()
                                .toList());
            } catch (FlightException e) {
                assertEquals(e.reason().name(), flights.status(row).name());
                assertTrue(Double.isNaN(flights.carry()[row]) && Double.isNaN(flights.apex()[row]));
            }
        }
        return differing;
    }

    private static int differ(double a, double b) {
        return Double.doubleToLongBits(a) == Double.doubleToLongBits(b) ? 0 : 1;
    }

    @Test
    void threadsModelsAndBlocksDoNotChangeABit() {
        RandomLaunches drawn = new RandomLaunches(Sample.CORNERS, 10_001, 400L);
        int[] model = new int[drawn.rows];
        for (int i = 0; i < model.length; i++) {
            model[i] = i % 3 == 0 ? 2 : i % 2;
        }
        List<FlightModel> models = List.of(
                STANDARD.withAccuracy(Accuracy.MILLIMETER),
                STANDARD,
                FlightModel.of(Ball.standard().withMass(dev.teeward.quantity.Mass.ofGrams(44.0))));
        LaunchTable table = drawn.launches().model(model).build();
        FlightTable alone = FlightBatch.of(models).fly(table);
        for (int threads = 2; threads <= 5; threads++) {
            FlightTable shared = FlightBatch.of(models).withThreads(threads).fly(table);
            assertArrayEquals(alone.carry(), shared.carry());
            assertArrayEquals(alone.landingSpin(), shared.landingSpin());
        }
        for (int row = 0; row < 300; row++) {
            FlightTable one = FlightBatch.of(models.get(model[row]))
                    .fly(LaunchTable.builder()
                            .ballSpeed(new double[] {drawn.speed[row]})
                            .launchAngle(new double[] {drawn.up[row]})
                            .spinRate(new double[] {drawn.spin[row]})
                            .startDirection(new double[] {drawn.right[row]})
                            .axisTilt(new double[] {drawn.tilt[row]})
                            .build());
            assertEquals(alone.carry()[row], one.carry()[0]);
        }
        // A stream of the same rows in blocks of 1,000, the last one short.
        LaunchTable block =
                LaunchTable.builder().rows(1_000).model(new int[1_000]).build();
        List<Double> carries = new ArrayList<>();
        int[] at = new int[1];
        long flown = FlightBatch.of(models).withThreads(2).stream(
                block,
                into -> {
                    int n = Math.min(1_000, drawn.rows - at[0]);
                    System.arraycopy(drawn.speed, at[0], into.ballSpeed(), 0, n);
                    System.arraycopy(drawn.up, at[0], into.launchAngle(), 0, n);
                    System.arraycopy(drawn.spin, at[0], into.spinRate(), 0, n);
                    System.arraycopy(drawn.right, at[0], startDirection(into), 0, n);
                    System.arraycopy(drawn.tilt, at[0], axisTilt(into), 0, n);
                    System.arraycopy(model, at[0], modelColumn(into), 0, n);
                    at[0] += n;
                    return n;
                },
                (launches, flights, rows) -> {
                    for (int i = 0; i < rows; i++) {
                        carries.add(flights.carry()[i]);
                    }
                });
        assertEquals(drawn.rows, flown);
        assertArrayEquals(
                alone.carry(), carries.stream().mapToDouble(Double::doubleValue).toArray());
    }

    private static double[] startDirection(LaunchTable table) {
        double[] column = table.startDirection();
        return column == null ? new double[0] : column;
    }

    private static double[] axisTilt(LaunchTable table) {
        double[] column = table.axisTilt();
        return column == null ? new double[0] : column;
    }

    private static int[] modelColumn(LaunchTable table) {
        int[] column = table.model();
        return column == null ? new int[0] : column;
    }

    /**
     * Bytes allocated by 40,000 rows less those of 20,000: the fixed work space drops out, and what is left is per row. From
     * Java 21 on the virtual machine's own {@code StrictMath.sin} and {@code cos}, eight calls a row, allocate two doubles or 32
     * bytes a call (measured on 25); nothing else may.
     */
    @Test
    void nothingIsAllocatedForARow() {
        var threads = (com.sun.management.ThreadMXBean) ManagementFactory.getThreadMXBean();
        long few = 0;
        long many = 0;
        for (int round = 0; round < 4; round++) {
            few = allocated(threads, 20_000);
            many = allocated(threads, 40_000);
        }
        long ofTheMachine = Runtime.version().feature() >= 21 ? 20_000L * 8 * 32 : 0;
        assertTrue(many - few < ofTheMachine + 20_000, "20,000 more rows allocated " + (many - few) + " B more");
    }

    private static long allocated(com.sun.management.ThreadMXBean threads, int rows) {
        RandomLaunches drawn = new RandomLaunches(Sample.EVEN, rows, 500L);
        LaunchTable table = drawn.launches().landingElevation(drawn.elevation).build();
        FlightTable into = FlightTable.ofRows(rows);
        FlightBatch batch = FlightBatch.of(STANDARD.withAccuracy(Accuracy.MILLIMETER));
        long before = threads.getThreadAllocatedBytes(Thread.currentThread().getId());
        batch.fly(table, into);
        return threads.getThreadAllocatedBytes(Thread.currentThread().getId()) - before;
    }

    @Test
    void aRowOutsideItsRangeIsNamed() {
        RandomLaunches drawn = new RandomLaunches(Sample.EVEN, 20, 600L);
        drawn.speed[17] = 167.0;
        LaunchTable table = drawn.launches().build();
        assertEquals(
                "row 17: ballSpeed must be in (0, 110] m/s (0-246 mph), but was 167.0 m/s",
                assertThrows(
                                IllegalArgumentException.class,
                                () -> FlightBatch.of(STANDARD).fly(table))
                        .getMessage());
        drawn.speed[17] = 67.0;
        for (double[] column : List.of(
                drawn.up,
                drawn.right,
                drawn.spin,
                drawn.tilt,
                drawn.elevation,
                drawn.density,
                drawn.viscosity,
                drawn.along,
                drawn.across)) {
            double was = column[3];
            column[3] = Double.NaN;
            LaunchTable bad = drawn.launches()
                    .landingElevation(drawn.elevation)
                    .density(drawn.density)
                    .viscosity(drawn.viscosity)
                    .windAlongTarget(drawn.along)
                    .windTowardsRight(drawn.across)
                    .build();
            assertTrue(assertThrows(
                            IllegalArgumentException.class,
                            () -> FlightBatch.of(STANDARD).fly(bad))
                    .getMessage()
                    .startsWith("row 3: "));
            column[3] = was;
        }
        int[] model = new int[20];
        model[5] = 1;
        LaunchTable unknown = drawn.launches().model(model).build();
        assertEquals(
                "row 5: model must be in [0, 0], the number of a flight model, but was 1",
                assertThrows(
                                IllegalArgumentException.class,
                                () -> FlightBatch.of(STANDARD).fly(unknown))
                        .getMessage());
    }

    @Test
    void columnsMustFit() {
        double[] two = {30.0, 40.0};
        double[] one = {0.3};
        assertThrows(
                IllegalStateException.class,
                () -> LaunchTable.builder().ballSpeed(two).launchAngle(two).build());
        assertThrows(
                IllegalArgumentException.class,
                () -> LaunchTable.builder()
                        .ballSpeed(two)
                        .launchAngle(one)
                        .spinRate(two)
                        .build());
        assertThrows(
                IllegalArgumentException.class,
                () -> LaunchTable.builder()
                        .ballSpeed(one)
                        .launchAngle(one)
                        .spinRate(one)
                        .density(one)
                        .build());
        assertThrows(
                IllegalArgumentException.class, () -> FlightTable.builder(2).carry(one));
        FlightTable carryOnly = FlightTable.builder(1).carry(new double[1]).build();
        FlightBatch.of(STANDARD)
                .fly(
                        LaunchTable.builder()
                                .ballSpeed(new double[] {60.0})
                                .launchAngle(one)
                                .spinRate(new double[] {400.0})
                                .build(),
                        carryOnly);
        assertTrue(carryOnly.carry()[0] > 100.0);
        assertThrows(IllegalStateException.class, carryOnly::side);
        assertThrows(
                IllegalArgumentException.class, () -> FlightBatch.of(STANDARD).withThreads(0));
        assertThrows(IllegalArgumentException.class, () -> FlightBatch.of(List.of()));
    }

    @Test
    void aBatchCanBeStoppedAndSaysHowFarItIs() {
        RandomLaunches drawn = new RandomLaunches(Sample.EVEN, 20_000, 700L);
        LaunchTable table = drawn.launches().build();
        List<Long> seen = new ArrayList<>();
        FlightBatch.of(STANDARD).withThreads(2).withProgress(seen::add).fly(table);
        assertEquals(20_000L, seen.get(seen.size() - 1));
        assertTrue(seen.size() > 5);
        for (int i = 1; i < seen.size(); i++) {
            assertTrue(seen.get(i) > seen.get(i - 1));
        }
        AtomicBoolean stop = new AtomicBoolean();
        FlightTable flights = FlightTable.ofRows(20_000);
        assertTrue(Double.isNaN(flights.carry()[19_999]), "nothing has flown");
        FlightBatch.of(STANDARD).fly(table, flights);
        assertEquals(20_000, flights.landed());
        FlightBatch stoppable = FlightBatch.of(STANDARD)
                .withThreads(2)
                .withProgress(rows -> stop.set(rows > 5_000))
                .withCancellation(stop::get);
        assertThrows(CancellationException.class, () -> stoppable.fly(table, flights));
        assertTrue(flights.landed() < 20_000);
        assertEquals(FlightStatus.NOT_FLOWN, flights.status(19_999));
        for (int row = 0; row < 20_000; row++) {
            boolean landed = flights.status(row).landed();
            assertEquals(landed, Double.isFinite(flights.carry()[row]), "carry of row " + row);
            assertEquals(landed, Double.isFinite(flights.landingSpin()[row]), "spin of row " + row);
        }
        Thread.currentThread().interrupt();
        assertThrows(CancellationException.class, () -> FlightBatch.of(STANDARD).fly(table));
        assertTrue(Thread.interrupted(), "the flag is left to the caller");
    }

    /** A block of 1,000 rows and one of 500: what lies beyond a short one is not what the block before left there. */
    @Test
    void aShortBlockHoldsNothingOfTheOneBefore() {
        RandomLaunches drawn = new RandomLaunches(Sample.EVEN, 1_000, 710L);
        List<Integer> landed = new ArrayList<>();
        List<Double> beyond = new ArrayList<>();
        int[] left = {1_500};
        FlightBatch.of(STANDARD).stream(
                drawn.launches().build(),
                block -> {
                    int n = Math.min(1_000, left[0]);
                    left[0] -= n;
                    return n;
                },
                (launches, flights, rows) -> {
                    landed.add(flights.landed());
                    beyond.add(flights.carry()[999]);
                });
        assertEquals(List.of(1_000, 500), landed);
        assertTrue(Double.isFinite(beyond.get(0)) && Double.isNaN(beyond.get(1)), beyond::toString);
    }

    @Test
    void aStreamNamesTheRowCountedFromItsStart() {
        RandomLaunches drawn = new RandomLaunches(Sample.EVEN, 1_000, 720L);
        int[] blocks = new int[1];
        FlightBatch batch = FlightBatch.of(STANDARD);
        LaunchTable block = drawn.launches().build();
        assertEquals(
                "row 2007: ballSpeed must be in (0, 110] m/s (0-246 mph), but was 167.0 m/s",
                assertThrows(
                                IllegalArgumentException.class,
                                () -> batch.stream(
                                        block,
                                        into -> {
                                            if (++blocks[0] == 3) {
                                                into.ballSpeed()[7] = 167.0;
                                            }
                                            return 1_000;
                                        },
                                        (launches, flights, rows) -> {}))
                        .getMessage());
    }

    /** Ten rows keep one thread busy; the work space of one is some 260,000 bytes. */
    @Test
    void threadsWithoutRowsCostNoWorkSpace() {
        var threads = (com.sun.management.ThreadMXBean) ManagementFactory.getThreadMXBean();
        LaunchTable table = new RandomLaunches(Sample.EVEN, 10, 730L).launches().build();
        FlightBatch batch = FlightBatch.of(STANDARD).withThreads(64);
        batch.fly(table);
        long before = threads.getThreadAllocatedBytes(Thread.currentThread().getId());
        batch.fly(table);
        long allocated = threads.getThreadAllocatedBytes(Thread.currentThread().getId()) - before;
        assertTrue(allocated < 500_000, "ten rows allocated " + allocated + " B");
    }

    @Test
    void forcesThatAreNotFiniteAreAStatusAndFailuresOfAModelReachTheCaller() {
        RandomLaunches drawn = new RandomLaunches(Sample.EVEN, 3_000, 800L);
        LaunchTable table = drawn.launches().build();
        FlightTable flights = FlightBatch.of(FlightModel.of(Ball.of(drag((re, s) -> s > 0.5 ? Double.NaN : 0.3))))
                .fly(table);
        Set<FlightStatus> all = new HashSet<>();
        for (int row = 0; row < 3_000; row++) {
            all.add(flights.status(row));
            assertEquals(flights.status(row).landed(), Double.isFinite(flights.carry()[row]));
        }
        assertTrue(all.containsAll(Set.of(FlightStatus.LANDED, FlightStatus.DID_NOT_CONVERGE)), all::toString);
        FlightBatch failing = FlightBatch.of(FlightModel.of(Ball.of(drag((re, s) -> {
                    throw new ArithmeticException("no table");
                }))))
                .withThreads(2);
        assertEquals(
                "no table",
                assertThrows(ArithmeticException.class, () -> failing.fly(table))
                        .getMessage());
    }

    @FunctionalInterface
    private interface Coefficient {
        double of(double re, double s);
    }

    private static AerodynamicModel drag(Coefficient drag) {
        return new AerodynamicModel() {
            @Override
            public double dragCoefficient(double re, double s) {
                return drag.of(re, s);
            }

            @Override
            public double liftCoefficient(double re, double s) {
                return 0.1;
            }
        };
    }

    @Test
    void warningsAreCounted() {
        FlightTable flights = FlightBatch.of(STANDARD)
                .fly(LaunchTable.builder()
                        .ballSpeed(new double[] {22.0, 70.0, 50.0})
                        .launchAngle(new double[] {0.3, 0.2, -0.1})
                        .spinRate(new double[] {150.0, 300.0, 300.0})
                        .build());
        assertEquals(3, flights.landed());
        assertEquals(1, flights.warned(RowWarning.REVERSE_LIFT_POSSIBLE));
        assertEquals(Set.of(RowWarning.LANDS_AT_ONCE), flights.warnings(2));
        assertEquals(0.0, flights.carry()[2]);
        assertFalse(flights.toString().isEmpty());
    }
}
