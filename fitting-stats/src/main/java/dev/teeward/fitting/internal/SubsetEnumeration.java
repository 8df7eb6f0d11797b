package dev.teeward.fitting.internal;

/**
 * Walks through all subsets of size k of 0..n-1 in lexicographic order.
 *
 * <p>{@link #advance()} names the first position that changed, so that a caller who keeps running sums over prefixes only
 * repeats the rest: about (n + 1) / (n - k + 1) positions a subset instead of k.
 *
 * <pre>{@code
 * SubsetEnumeration subsets = SubsetEnumeration.of(4, 2);
 * subsets.current();   // {0, 1}
 * subsets.advance();   // 1: now {0, 2}
 * }</pre>
 *
 * <p>Mutable, not thread-safe.
 */
public final class SubsetEnumeration {
    private final int n;
    private final int[] subset;

    private SubsetEnumeration(int n, int k) {
        this.n = n;
        this.subset = new int[k];
        for (int i = 0; i < k; i++) {
            subset[i] = i;
        }
    }

    /**
     * Starts at the first subset, 0..k-1.
     *
     * @param n the number of things, at least 0
     * @param k the size of the subsets, in [0, n]
     * @return the enumeration
     * @throws IllegalArgumentException if k is not in [0, n]
     */
    public static SubsetEnumeration of(int n, int k) {
        checkSize(n, k);
        return new SubsetEnumeration(n, k);
    }

    /**
     * The number of subsets, n over k.
     *
     * @param n the number of things, at least 0
     * @param k the size of the subsets, in [0, n]
     * @return the number, or {@link Long#MAX_VALUE} if it is larger than a long holds
     * @throws IllegalArgumentException if k is not in [0, n]
     */
    public static long count(int n, int k) {
        checkSize(n, k);
        int smaller = Math.min(k, n - k);
        long count = 1L;
        for (int i = 1; i <= smaller; i++) {
            long factor = (long) n - smaller + i;
            if (count > Long.MAX_VALUE / factor) {
                return Long.MAX_VALUE;
            }
            count = count * factor / i;
        }
        return count;
    }

    /**
     * The subset that the walk stands at.
     *
     * @return the indices in ascending order; the same array every time, not to be changed
     */
    public int[] current() {
        return subset;
    }

    /**
     * Steps to the next subset.
     *
     * @return the first position whose index changed, or -1 if the last subset has been reached
     */
    public int advance() {
        int position = subset.length - 1;
        while (position >= 0 && subset[position] == n - subset.length + position) {
            position--;
        }
        if (position >= 0) {
            subset[position]++;
            for (int i = position + 1; i < subset.length; i++) {
                subset[i] = subset[i - 1] + 1;
            }
        }
        return position;
    }

    private static void checkSize(int n, int k) {
        if (k < 0 || k > n) {
            throw new IllegalArgumentException("subset size must be in [0, " + n + "], but was " + k);
        }
    }
}
