package dev.teeward.fitting.internal;

import java.util.SplittableRandom;

/**
 * All or many ways to split pooled values into two samples, each given as the sum and the sum of squares of the first one.
 * For the mean difference and Welch's t {@link Exchanges} is quicker; this serves any other statistic of two sums.
 *
 * <p>Immutable and thread-safe.
 */
public final class Splits {
    private final double[] pooled;
    private final int n;

    /** What to do with a split. */
    @FunctionalInterface
    public interface Visitor {
        /**
         * Sees one split.
         *
         * @param sum the sum of the first sample
         * @param squares the sum of its squares
         */
        void visit(double sum, double squares);
    }

    /**
     * Values to be split.
     *
     * @param pooled the values; not copied
     * @param n the size of the first sample, at least 1 and below the number of values
     */
    public Splits(double[] pooled, int n) {
        this.pooled = pooled;
        this.n = n;
    }

    /**
     * Sees every split once.
     *
     * @param visitor what to do
     */
    public void forAll(Visitor visitor) {
        SubsetEnumeration walk = SubsetEnumeration.of(pooled.length, n);
        double[] sums = new double[n + 1];
        double[] squares = new double[n + 1];
        int changed = 0;
        while (changed >= 0) {
            int[] subset = walk.current();
            for (int i = changed; i < n; i++) {
                double v = pooled[subset[i]];
                sums[i + 1] = sums[i] + v;
                squares[i + 1] = squares[i] + v * v;
            }
            visitor.visit(sums[n], squares[n]);
            changed = walk.advance();
        }
    }

    /**
     * Sees random splits.
     *
     * @param splits how many
     * @param seed the seed; the same seed gives the same splits
     * @param visitor what to do
     */
    public void forRandom(int splits, long seed, Visitor visitor) {
        SplittableRandom random = new SplittableRandom(seed);
        double[] deck = pooled.clone();
        for (int s = 0; s < splits; s++) {
            double sum = 0.0;
            double squares = 0.0;
            for (int i = 0; i < n; i++) {
                int j = i + random.nextInt(deck.length - i);
                double v = deck[j];
                deck[j] = deck[i];
                deck[i] = v;
                sum += v;
                squares += v * v;
            }
            visitor.visit(sum, squares);
        }
    }
}
