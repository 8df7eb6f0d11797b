package dev.teeward.fitting.internal;

/**
 * How many draws a two-sided percentile interval takes, and which of the sorted draws are its limits: the k-th from either
 * end with k = floor((1 - level) / 2 (draws + 1)). For k of at least 1 it takes 2 / (1 - level) - 1 draws; fewer would give
 * the most extreme draw whatever the level. Where more were needed than asked for, more are taken, up to 9,999.
 *
 * <pre>{@code
 * TailDraws tail = TailDraws.of(399, 0.999);
 * tail.draws();  // 1,999
 * tail.beyond(); // false: the limits are draws of that level
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 *
 * @param draws how many draws to take
 * @param rank which draw from either end is a limit, from 1
 * @param beyond whether the limits of this level lie beyond the most extreme draw, which is then given instead
 */
public record TailDraws(int draws, int rank, boolean beyond) {
    private static final int MOST_ADDED = 9_999;
    private static final double ROUNDING = 1e-9;

    /**
     * For an interval.
     *
     * @param asked how many draws are asked for, at least 1
     * @param level the level, in (0, 1)
     * @return the draws to take
     */
    public static TailDraws of(int asked, double level) {
        double needed = Math.ceil(2.0 / (1.0 - level) * (1.0 - ROUNDING) - 1.0);
        int draws = (int) Math.max(asked, Math.min(MOST_ADDED, needed));
        int rank = (int) Math.floor(0.5 * (1.0 - level) * (draws + 1.0) * (1.0 + ROUNDING));
        return new TailDraws(draws, Math.max(1, rank), rank < 1);
    }
}
