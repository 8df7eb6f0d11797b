package dev.teeward.fitting.screen;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Comparator;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** The search in nested groups, which begins beyond 600 points, against concentration of all points from known good starts. */
class McdSearchTest {
    private static final int N = 3_000;
    private static final int H = 2_250;

    /** One metric, few different values: the window of a stable sort in plain words, with sums of squares by definition. */
    @Test
    void windowsOfTiedValuesAreThoseOfAStableSort() {
        Random random = new Random(14L);
        for (int round = 0; round < 2_000; round++) {
            int n = 2 + random.nextInt(14);
            int h = 1 + random.nextInt(n);
            double[] values = random.doubles(n).map(v -> Math.floor(5.0 * v)).toArray();
            Integer[] order = IntStream.range(0, n).boxed().toArray(Integer[]::new);
            Arrays.sort(order, Comparator.comparingDouble(i -> values[i]));
            int[] found = McdSearch.window(values, h);
            double least = Double.POSITIVE_INFINITY;
            for (int start = 0; start + h <= n; start++) {
                least = Math.min(least, squares(values, Arrays.copyOfRange(order, start, start + h)));
            }
            Integer[] boxed = Arrays.stream(found).boxed().toArray(Integer[]::new);
            assertEquals(least, squares(values, boxed), 1e-12, "not the smallest window of " + Arrays.toString(values));
            int[] ranks = Arrays.stream(found)
                    .map(i -> Arrays.asList(order).indexOf(i))
                    .sorted()
                    .toArray();
            assertArrayEquals(
                    IntStream.range(ranks[0], ranks[0] + h).toArray(),
                    ranks,
                    "not neighbours in a stable sort of " + Arrays.toString(values));
            assertArrayEquals(Arrays.stream(found).sorted().toArray(), found);
        }
    }

    private static double squares(double[] values, Integer[] places) {
        double mean =
                Arrays.stream(places).mapToDouble(i -> values[i]).average().orElseThrow();
        return Arrays.stream(places)
                .mapToDouble(i -> (values[i] - mean) * (values[i] - mean))
                .sum();
    }

    @Test
    void cleanPointsGiveTheSubsetThatConcentrationFromAllOfThemGives() {
        double[][] columns = points(0.0, 11L);
        assertWithin(columns, concentrated(columns, IntStream.range(0, N).toArray()));
    }

    /** A fifth of the points lie apart: the mean of all is pulled, so the reference starts from the good ones, known here. */
    @Test
    void pointsApartAreLeftOutAsByConcentrationFromTheGoodOnes() {
        double[][] columns = points(0.2, 12L);
        int[] good = IntStream.range(0, N).filter(i -> i % 5 != 0).toArray();
        int[] found = McdSearch.concentrate(columns, H, 1L);
        assertTrue(Arrays.stream(found).noneMatch(i -> i % 5 == 0), "a point that lies apart is in the subset");
        assertWithin(columns, concentrated(columns, good));
    }

    /** Just beyond the limit there are two groups, the last one longer than 300. */
    @Test
    void theSmallestNestedSearchFindsTheSameBulkAsTheLargestWholeOne() {
        double[][] columns = points(0.2, 13L);
        for (int n : new int[] {600, 601, 899, 1_500, 1_501}) {
            double[][] some = {Arrays.copyOf(columns[0], n), Arrays.copyOf(columns[1], n)};
            int[] found = McdSearch.concentrate(some, 3 * n / 4, 5L);
            assertEquals(3 * n / 4, Arrays.stream(found).distinct().count());
            assertTrue(Arrays.stream(found).noneMatch(i -> i % 5 == 0), "of " + n + " points");
        }
    }

    @Test
    void theSameSeedGivesTheSameSubset() {
        double[][] columns = points(0.1, 14L);
        assertArrayEquals(McdSearch.concentrate(columns, H, 3L), McdSearch.concentrate(columns, H, 3L));
    }

    @Test
    void moreThanHalfOnOneLineAreAnExactFit() {
        double[][] columns = points(0.0, 15L);
        for (int i = 0; i < N; i++) {
            columns[1][i] = i % 10 == 0 ? columns[1][i] : 2.0 * columns[0][i];
        }
        assertTrue(MinimumCovarianceDeterminant.withDefaults()
                .screen(columns[0], columns[1])
                .exactFit());
    }

    /** Whatever the seed, the determinant is that of the reference within 1 in 1,000: a step moves single points at the edge. */
    private static void assertWithin(double[][] columns, double reference) {
        for (long seed = 1; seed <= 5; seed++) {
            int[] found = McdSearch.concentrate(columns, H, seed);
            assertEquals(H, Arrays.stream(found).distinct().count());
            double determinant = Scatter.of(columns, found, H).determinant();
            assertEquals(reference, determinant, 1e-3 * reference);
        }
    }

    /** The determinant to which the C-step of the definition leads from some points: sort by distance, keep the h nearest. */
    private static double concentrated(double[][] columns, int[] from) {
        Scatter scatter = Scatter.of(columns, from, from.length);
        double before = Double.POSITIVE_INFINITY;
        while (true) {
            double[] distances = scatter.squaredDistances(columns);
            int[] nearest = IntStream.range(0, N)
                    .boxed()
                    .sorted((a, b) -> Double.compare(distances[a], distances[b]))
                    .limit(H)
                    .mapToInt(i -> i)
                    .toArray();
            scatter = Scatter.of(columns, nearest, H);
            if (!(scatter.determinant() < before)) {
                return before;
            }
            before = scatter.determinant();
        }
    }

    /** Correlated normal points; the share of them lies ten standard deviations apart. */
    private static double[][] points(double apart, long seed) {
        Random random = new Random(seed);
        double[][] columns = new double[2][N];
        for (int i = 0; i < N; i++) {
            double first = random.nextGaussian();
            columns[0][i] = 150.0 + 3.0 * first;
            columns[1][i] = 2.0 * first + 1.5 * random.nextGaussian();
            if (apart > 0.0 && i % (int) Math.round(1.0 / apart) == 0) {
                columns[0][i] -= 30.0;
            }
        }
        return columns;
    }
}
