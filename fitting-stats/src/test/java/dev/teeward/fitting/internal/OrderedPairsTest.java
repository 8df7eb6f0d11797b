package dev.teeward.fitting.internal;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;

/** Against all pairs formed and sorted, which is the definition. */
class OrderedPairsTest {
    private static final DoubleUnaryOperator[] READINGS = {
        v -> v,
        Math::rint, // many ties
        v -> 0.3048 * Math.rint(10.0 * v) / 10.0, // ties up to rounding
        v -> Math.copySign(Math.exp(40.0 * Math.abs(v)), v), // over 100 powers of ten
        v -> v > 1.5 ? 1e100 : 0.0, // nearly all alike
        v -> -0.0,
    };

    @Test
    void everyDifferenceIsThatOfAllPairsSorted() {
        SplittableRandom random = new SplittableRandom(1);
        for (DoubleUnaryOperator reading : READINGS) {
            for (int[] size : new int[][] {{1, 1}, {1, 7}, {9, 2}, {40, 31}}) {
                double[] x = sorted(random, size[0], reading);
                double[] y = sorted(random, size[1], reading);
                double[] all = Arrays.stream(x)
                        .flatMap(a -> Arrays.stream(y).map(b -> a - b + 0.0))
                        .sorted()
                        .toArray();
                for (int k = 1; k <= all.length; k++) {
                    assertArrayEquals(new double[] {all[k - 1]}, OrderedPairs.differences(x, y, k));
                }
                assertArrayEquals(all, OrderedPairs.differences(x, y, ranks(all.length)));
            }
        }
    }

    @Test
    void everyWalshAverageIsThatOfAllPairsSorted() {
        SplittableRandom random = new SplittableRandom(2);
        for (DoubleUnaryOperator reading : READINGS) {
            for (int size : new int[] {1, 2, 3, 10, 45}) {
                double[] d = sorted(random, size, reading);
                double[] all = walsh(d);
                for (int k = 1; k <= all.length; k++) {
                    assertArrayEquals(new double[] {all[k - 1]}, OrderedPairs.walshAverages(d, k));
                }
                assertArrayEquals(all, OrderedPairs.walshAverages(d, ranks(all.length)));
                int middle = (all.length + 1) / 2;
                assertArrayEquals(
                        new double[] {all[0], all[middle - 1], all[middle - 1], all[all.length - 1]},
                        OrderedPairs.walshAverages(d, 1, middle, middle, all.length));
            }
        }
    }

    @Test
    void largeSamplesGiveTheSameToo() {
        SplittableRandom random = new SplittableRandom(3);
        for (DoubleUnaryOperator reading : READINGS) {
            double[] d = sorted(random, 2_000, reading);
            double[] all = walsh(d);
            long[] ranks = {1, 17, 17, 500_000, all.length / 2, all.length / 2 + 1, all.length - 3, all.length};
            double[] together = OrderedPairs.walshAverages(d, ranks);
            for (int i = 0; i < ranks.length; i++) {
                assertEquals(all[(int) ranks[i] - 1], together[i]);
                assertEquals(together[i], OrderedPairs.walshAverages(d, ranks[i])[0]);
            }
            double[] x = Arrays.copyOf(d, 900);
            double[] differences = Arrays.stream(x)
                    .flatMap(a -> Arrays.stream(d).map(b -> a - b + 0.0))
                    .sorted()
                    .toArray();
            long[] some = {1, 2, 700_000, 900_000, 900_001, 1_799_999, 1_800_000};
            double[] found = OrderedPairs.differences(x, d, some);
            for (int i = 0; i < some.length; i++) {
                assertEquals(differences[(int) some[i] - 1], found[i]);
            }
        }
    }

    private static long[] ranks(int count) {
        return LongStream.rangeClosed(1, count).toArray();
    }

    private static double[] walsh(double[] d) {
        double[] all = new double[d.length * (d.length + 1) / 2];
        int filled = 0;
        for (int i = 0; i < d.length; i++) {
            for (int j = i; j < d.length; j++) {
                all[filled++] = 0.5 * (d[i] + d[j]) + 0.0;
            }
        }
        Arrays.sort(all);
        return all;
    }

    private static double[] sorted(SplittableRandom random, int size, DoubleUnaryOperator reading) {
        double[] values = new double[size];
        Arrays.setAll(values, i -> reading.applyAsDouble(normal(random)));
        Arrays.sort(values);
        return values;
    }

    /** Roughly normal: the sum of twelve uniform numbers. */
    private static double normal(SplittableRandom random) {
        return random.doubles(12).sum() - 6.0;
    }
}
