package dev.teeward.fitting.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;
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
                    assertEquals(all[k - 1], OrderedPairs.difference(x, y, k));
                }
                int n = all.length;
                assertEquals(0.5 * (all[(n - 1) / 2] + all[n / 2]), OrderedPairs.medianDifference(x, y));
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
                    assertEquals(all[k - 1], OrderedPairs.walshAverage(d, k));
                }
                int n = all.length;
                assertEquals(0.5 * (all[(n - 1) / 2] + all[n / 2]), OrderedPairs.medianWalshAverage(d));
            }
        }
    }

    @Test
    void largeSamplesGiveTheSameToo() {
        SplittableRandom random = new SplittableRandom(3);
        for (DoubleUnaryOperator reading : READINGS) {
            double[] d = sorted(random, 2_000, reading);
            double[] all = walsh(d);
            for (int k : new int[] {1, 17, 500_000, all.length / 2, all.length - 3, all.length}) {
                assertEquals(all[k - 1], OrderedPairs.walshAverage(d, k));
            }
        }
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
