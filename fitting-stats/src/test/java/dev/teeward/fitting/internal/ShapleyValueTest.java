package dev.teeward.fitting.internal;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Against the axioms (Shapley 1953), closed forms, and the average over all orders written out. */
class ShapleyValueTest {
    private static final double CLOSE = 1e-12;

    private static double[] random(int players, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        return random.doubles(1 << players).map(u -> 10.0 * u - 5.0).toArray();
    }

    @Test
    void isTheAverageOverAllOrders() {
        for (int players = 1; players <= 6; players++) {
            double[] worth = random(players, players);
            double[] sum = new double[players];
            int orders = permute(new int[players], 0, 0, worth, sum);
            int count = orders;
            assertArrayEquals(Arrays.stream(sum).map(s -> s / count).toArray(), ShapleyValue.of(worth), CLOSE);
        }
    }

    private static int permute(int[] order, int at, int used, double[] worth, double[] sum) {
        if (at == order.length) {
            int set = 0;
            for (int j : order) {
                sum[j] += worth[set | 1 << j] - worth[set];
                set |= 1 << j;
            }
            return 1;
        }
        int orders = 0;
        for (int j = 0; j < order.length; j++) {
            if ((used >> j & 1) == 0) {
                order[at] = j;
                orders += permute(order, at + 1, used | 1 << j, worth, sum);
            }
        }
        return orders;
    }

    @Test
    void sharesAddUp() {
        for (int players = 1; players <= 8; players++) {
            double[] worth = random(players, 100L + players);
            assertEquals(
                    worth[worth.length - 1] - worth[0],
                    Arrays.stream(ShapleyValue.of(worth)).sum(),
                    CLOSE);
        }
    }

    @Test
    void whoAddsNothingHasNothing() {
        double[] worth = random(4, 7);
        for (int set = 0; set < 16; set++) {
            worth[set] = worth[set & ~4];
        }
        assertEquals(0.0, ShapleyValue.of(worth)[2]);
    }

    @Test
    void twoWhoAddTheSameHaveTheSame() {
        double[] worth = random(4, 8);
        for (int set = 0; set < 16; set++) {
            if ((set & 3) == 2) {
                worth[set] = worth[set ^ 3];
            }
        }
        double[] shares = ShapleyValue.of(worth);
        assertEquals(shares[0], shares[1], CLOSE);
    }

    @Test
    void theSharesOfASumAreTheSumOfTheShares() {
        double[] one = random(5, 9);
        double[] two = random(5, 10);
        double[] both = new double[32];
        Arrays.setAll(both, i -> one[i] + two[i]);
        double[] expected = ShapleyValue.of(one);
        double[] other = ShapleyValue.of(two);
        Arrays.setAll(expected, j -> expected[j] + other[j]);
        assertArrayEquals(expected, ShapleyValue.of(both), CLOSE);
    }

    @Test
    void ofALinearModelItIsCoefficientTimesDifference() {
        double[] coefficient = {2.0, -3.0, 0.5, 7.0};
        double[] difference = {1.5, 0.2, -4.0, 0.0};
        double[] worth = new double[16];
        Arrays.setAll(worth, set -> {
            double sum = 11.0;
            for (int j = 0; j < 4; j++) {
                sum += (set >> j & 1) == 1 ? coefficient[j] * difference[j] : 0.0;
            }
            return sum;
        });
        double[] expected = new double[4];
        Arrays.setAll(expected, j -> coefficient[j] * difference[j]);
        assertArrayEquals(expected, ShapleyValue.of(worth), CLOSE);
    }

    /** One left glove and two right ones; a pair is worth 1: 2/3 and 1/6 each (a textbook example, from memory). */
    @Test
    void ofGloves() {
        double[] worth = {0.0, 0.0, 0.0, 1.0, 0.0, 1.0, 0.0, 1.0};
        assertArrayEquals(new double[] {2.0 / 3.0, 1.0 / 6.0, 1.0 / 6.0}, ShapleyValue.of(worth), CLOSE);
    }

    @Test
    void setsMustBeComplete() {
        for (int sets : new int[] {0, 1, 3, 6}) {
            assertThrows(IllegalArgumentException.class, () -> ShapleyValue.of(new double[sets]));
        }
    }
}
