package dev.teeward.fitting.compare;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;

/**
 * Clubs exchanged within rounds: for each arrangement the size of the paired t of every pair of clubs, as |sum d| / sqrt(sum d^2)
 * of its differences d, which grows with |t| and never exceeds sqrt(rounds). Immutable.
 *
 * <p>The first round stays as it is, since exchanging all rounds alike only renames the clubs. All (k!)^(rounds - 1)
 * arrangements up to 200,000, random ones beyond.
 */
final class RoundPermutations {
    private static final int LARGEST_ENUMERATION = 200_000;
    private static final int RANDOM = 9_999;

    /** By round and club. */
    private final double[][] values;

    private final int clubs;
    private final long seed;
    private final boolean exact;
    private final int count;

    RoundPermutations(double[][] byClub, long seed) {
        this.clubs = byClub.length;
        this.values = new double[byClub[0].length][clubs];
        for (int b = 0; b < values.length; b++) {
            for (int j = 0; j < clubs; j++) {
                values[b][j] = byClub[j][b];
            }
        }
        this.seed = seed;
        double ways = Math.pow(factorial(clubs), values.length - 1.0);
        this.exact = ways <= LARGEST_ENUMERATION;
        this.count = exact ? (int) Math.round(ways) : RANDOM;
    }

    private static double factorial(int k) {
        double product = 1.0;
        for (int i = 2; i <= k; i++) {
            product *= i;
        }
        return product;
    }

    boolean exact() {
        return exact;
    }

    /** How many arrangements are seen; the observed one is among them only when all are. */
    int count() {
        return count;
    }

    /** What is seen of one arrangement. */
    @FunctionalInterface
    interface Visitor {
        /** The share of each pair of clubs, in the order (1, 0), (2, 0), (2, 1), ...; the same array every time. */
        void visit(double[] shares);
    }

    /** The shares of the clubs as they are. */
    double[] observed() {
        double[] shares = new double[clubs * (clubs - 1) / 2];
        fill(values, shares);
        return shares;
    }

    void visit(Visitor visitor) {
        double[][] dealt = Arrays.stream(values).map(double[]::clone).toArray(double[][]::new);
        double[] shares = new double[clubs * (clubs - 1) / 2];
        if (exact) {
            all(1, dealt, permutations(), shares, visitor);
            return;
        }
        SplittableRandom random = new SplittableRandom(seed);
        for (int r = 0; r < RANDOM; r++) {
            for (int b = 1; b < dealt.length; b++) {
                for (int i = clubs - 1; i > 0; i--) {
                    int other = random.nextInt(i + 1);
                    double swap = dealt[b][i];
                    dealt[b][i] = dealt[b][other];
                    dealt[b][other] = swap;
                }
            }
            fill(dealt, shares);
            visitor.visit(shares);
        }
    }

    private void all(int round, double[][] dealt, List<int[]> permutations, double[] shares, Visitor visitor) {
        if (round == dealt.length) {
            fill(dealt, shares);
            visitor.visit(shares);
            return;
        }
        for (int[] permutation : permutations) {
            for (int j = 0; j < clubs; j++) {
                dealt[round][j] = values[round][permutation[j]];
            }
            all(round + 1, dealt, permutations, shares, visitor);
        }
    }

    private List<int[]> permutations() {
        List<int[]> found = new ArrayList<>();
        found.add(new int[0]);
        for (int k = 0; k < clubs; k++) {
            List<int[]> longer = new ArrayList<>();
            for (int[] shorter : found) {
                for (int place = 0; place <= k; place++) {
                    int[] next = new int[k + 1];
                    System.arraycopy(shorter, 0, next, 0, place);
                    next[place] = k;
                    System.arraycopy(shorter, place, next, place + 1, k - place);
                    longer.add(next);
                }
            }
            found = longer;
        }
        return found;
    }

    private void fill(double[][] rounds, double[] shares) {
        int pair = 0;
        for (int i = 1; i < clubs; i++) {
            for (int j = 0; j < i; j++) {
                double sum = 0.0;
                double squares = 0.0;
                for (double[] round : rounds) {
                    double d = round[i] - round[j];
                    sum += d;
                    squares += d * d;
                }
                shares[pair++] = squares > 0.0 ? Math.abs(sum) / Math.sqrt(squares) : 0.0;
            }
        }
    }
}
