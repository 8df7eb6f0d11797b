package dev.teeward.fitting.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Numbers with one digit behind the point tie often. A large constant added to all of them rounds them, and must not undo the
 * ties: every p is the one without the constant. The counts without it are exact in integers: 10 times the numbers.
 */
class TiesUnderOffsetTest {
    private static final double[] X = {.1, .3, .5, .7, .2, .4, .9, 1.1, .6, .8};
    private static final double[] Y = {.2, .6, .9, 1.1, .5, .7, 1.0, 1.3, .8, .4};

    private static double[] plus(double[] x, double by) {
        return Arrays.stream(x).map(v -> v + by).toArray();
    }

    /** Of 1,024 flips of the differences in tenths, how many are as extreme: by counting in integers. */
    @Test
    void withoutOffsetTheCountIsThatOfIntegers() {
        int as = 0;
        int total = 0;
        int[] d = new int[10];
        for (int i = 0; i < 10; i++) {
            d[i] = (int) Math.rint(10.0 * X[i]) - (int) Math.rint(10.0 * Y[i]);
            total += d[i];
        }
        for (int f = 0; f < 1024; f++) {
            int sum = 0;
            for (int i = 0; i < 10; i++) {
                sum += (f >> i & 1) == 1 ? -d[i] : d[i];
            }
            as += Math.abs(sum) >= Math.abs(total) ? 1 : 0;
        }
        assertEquals(50, as);
        assertEquals(as / 1024.0, SignFlipTest.withDefaults().test(X, Y).pValue(), 1e-15);
    }

    @ParameterizedTest
    @ValueSource(doubles = {1e3, 1e6, -1e6, 1e9})
    void anOffsetDoesNotUndoTies(double offset) {
        double[] x = plus(X, offset);
        double[] y = plus(Y, offset);
        assertEquals(50.0 / 1024.0, SignFlipTest.withDefaults().test(x, y).pValue(), 1e-15);
        assertEquals(50.0 / 1024.0, SignFlipTest.withDefaults().pValue(x, y), 1e-15);
        SignFlipTest sampled = SignFlipTest.withDefaults().withLargestEnumeration(100);
        assertEquals(sampled.test(X, Y).pValue(), sampled.test(x, y).pValue(), 1e-15);
        PermutationTest exchange = PermutationTest.withDefaults();
        assertEquals(exchange.test(X, Y).pValue(), exchange.test(x, y).pValue(), 1e-15);
        PermutationTest drawn = exchange.withLargestEnumeration(100);
        assertEquals(drawn.test(X, Y).pValue(), drawn.test(x, y).pValue(), 1e-15);
        // Unequal sizes are studentised.
        double[] seven = Arrays.copyOf(X, 7);
        double[] movedSeven = Arrays.copyOf(x, 7);
        assertEquals(
                exchange.test(seven, Y).pValue(), exchange.test(movedSeven, y).pValue(), 1e-15);
        MaxTTest.Result plain =
                MaxTTest.withDefaults().testPairs(new double[][] {X, Y}, new double[][] {Y, plus(X, -0.3)});
        MaxTTest.Result moved = MaxTTest.withDefaults().testPairs(new double[][] {x, y}, new double[][] {
            y, plus(plus(X, -0.3), offset)
        });
        for (int k = 0; k < 2; k++) {
            assertEquals(plain.metrics().get(k).pValue(), moved.metrics().get(k).pValue(), 1e-15);
            assertEquals(
                    plain.metrics().get(k).adjustedP(), moved.metrics().get(k).adjustedP(), 1e-15);
        }
        assertEquals(50.0 / 1024.0, plain.metrics().get(0).pValue(), 1e-15);
        double[] third = {.3, .2, .8, .9, .4, .6, .7, 1.2, .9, .5};
        PairwiseComparison.Result rounds = MaxTTest.withDefaults().testRounds(shorter(X), shorter(Y), shorter(third));
        PairwiseComparison.Result movedRounds =
                MaxTTest.withDefaults().testRounds(shorter(x), shorter(y), shorter(plus(third, offset)));
        for (int p = 0; p < 3; p++) {
            assertEquals(
                    rounds.pairs().get(p).pValue(), movedRounds.pairs().get(p).pValue(), 1e-15);
        }
    }

    private static double[] shorter(double[] x) {
        return Arrays.copyOf(x, 6);
    }

    /** What differs by more than rounding is not a tie. */
    @Test
    void aDifferenceThatTheNumbersCanTellIsKept() {
        double[] near = Y.clone();
        near[0] += 0.01;
        near[1] -= 0.02;
        double apart = SignFlipTest.withDefaults().test(X, near).pValue();
        assertNotEquals(50.0 / 1024.0, apart, 1e-9);
        assertEquals(
                apart,
                SignFlipTest.withDefaults().test(plus(X, 1e6), plus(near, 1e6)).pValue(),
                1e-15);
    }
}
