package dev.teeward.fitting.screen;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.teeward.fitting.internal.SubsetEnumeration;
import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Branch and bound against the plain walk through all subsets, each with its covariance in two passes. */
class McdEnumerationTest {
    private static double smallest(double[][] columns, int h) {
        SubsetEnumeration subsets = SubsetEnumeration.of(columns[0].length, h);
        double least = Double.POSITIVE_INFINITY;
        for (int changed = 0; changed >= 0; changed = subsets.advance()) {
            least = Math.min(least, Scatter.of(columns, subsets.current(), h).determinant());
        }
        return least;
    }

    @Test
    void findsTheSmallestDeterminantOfAllSubsets() {
        Random random = new Random(31L);
        for (int set = 0; set < 300; set++) {
            int p = 2 + set % 2;
            int n = 6 + random.nextInt(8);
            int h = Math.max(p + 1, n - random.nextInt(n / 2 + 1));
            double far = set % 3 == 0 ? 100.0 : 1.0;
            double[][] columns = new double[p][n];
            for (int k = 0; k < n; k++) {
                for (int j = 0; j < p; j++) {
                    double common = j > 0 ? 0.7 * (columns[0][k] - 150.0) : 0.0;
                    columns[j][k] = 150.0 + common + (k % 5 == 0 ? far : 1.0) * random.nextGaussian();
                }
            }
            int[] found = McdSearch.enumerate(columns, h);
            assertEquals(h, Arrays.stream(found).distinct().count());
            double least = smallest(columns, h);
            assertEquals(least, Scatter.of(columns, found, h).determinant(), 1e-9 * least, "set " + set);
        }
    }

    /** Points 2 and 3 are the same point, and 0 and 5 mirror each other: the first subset in lexicographic order counts. */
    @Test
    void amongEqualSubsetsTheFirstCounts() {
        double[][] twins = {{0.0, 1.0, 2.0, 2.0, 1.0, 9.0}, {0.0, 2.0, 1.0, 1.0, 0.5, 9.0}};
        int[] found = McdSearch.enumerate(twins, 4);
        double least = smallest(twins, 4);
        SubsetEnumeration subsets = SubsetEnumeration.of(6, 4);
        while (Scatter.of(twins, subsets.current(), 4).determinant() > least * (1.0 + 1e-9) + 1e-15) {
            subsets.advance();
        }
        assertArrayEquals(subsets.current(), found);
        double[][] mirrored = {{-3.0, -1.0, 0.0, 0.5, 1.0, 3.0}, {0.0, 1.0, -1.0, 0.3, -0.8, 0.0}};
        double[][] reversed = new double[2][6];
        for (int k = 0; k < 6; k++) {
            reversed[0][k] = mirrored[0][5 - k];
            reversed[1][k] = mirrored[1][5 - k];
        }
        int[] there = McdSearch.enumerate(mirrored, 4);
        int[] back = Arrays.stream(McdSearch.enumerate(reversed, 4))
                .map(k -> 5 - k)
                .sorted()
                .toArray();
        assertEquals(
                Scatter.of(mirrored, there, 4).determinant(),
                Scatter.of(mirrored, back, 4).determinant(),
                1e-12);
    }

    @Test
    void allPointsAreTheOnlySubsetOfAllPoints() {
        double[][] columns = {{0.0, 1.0, 2.0, 5.0}, {3.0, 1.0, 2.0, 4.0}};
        assertArrayEquals(new int[] {0, 1, 2, 3}, McdSearch.enumerate(columns, 4));
    }
}
