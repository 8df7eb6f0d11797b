package dev.teeward.fitting.internal;

/**
 * Shares of what a set of players is worth together (Shapley 1953): what each adds, averaged over all orders of entry.
 *
 * <p>share(j) = sum over sets S without j of (v(S + j) - v(S)) / (k C(k - 1, |S|)). The shares add up to v(all) - v(none), a
 * player who never adds anything has none, and two who always add the same have the same. For a worth that is a sum over the
 * players the share is the player's own term.
 *
 * <pre>{@code
 * ShapleyValue.of(0.0, 2.0, 3.0, 7.0); // {3, 4}: v(none), v(first), v(second), v(both)
 * }</pre>
 *
 * <p>Thread-safe.
 */
public final class ShapleyValue {
    private ShapleyValue() {}

    /**
     * The share of each player.
     *
     * @param worth what each set is worth; bit j of the index tells whether player j is in it
     * @return one share for each player
     * @throws IllegalArgumentException if the sets are not 2, 4, 8, ... in number
     */
    public static double[] of(double... worth) {
        int players = Integer.numberOfTrailingZeros(worth.length);
        if (players < 1 || worth.length != 1 << players) {
            throw new IllegalArgumentException(
                    "worth must have 2, 4, 8, ... sets, one for each choice of players, but had " + worth.length);
        }
        double[] weights = weights(players);
        double[] shares = new double[players];
        for (int j = 0; j < players; j++) {
            for (int set = 0; set < worth.length; set++) {
                if ((set >> j & 1) == 0) {
                    shares[j] += weights[Integer.bitCount(set)] * (worth[set | 1 << j] - worth[set]);
                }
            }
        }
        return shares;
    }

    /**
     * The weight of what a player adds to a set, by the size of the set: the chance that just those come before.
     *
     * @param players how many there are, at least 1
     * @return 1 / (k C(k - 1, s)) for s = 0 to k - 1
     */
    public static double[] weights(int players) {
        double[] weights = new double[players];
        double ways = 1.0;
        for (int s = 0; s < players; s++) {
            weights[s] = 1.0 / (players * ways);
            ways = ways * (players - 1 - s) / (s + 1);
        }
        return weights;
    }
}
