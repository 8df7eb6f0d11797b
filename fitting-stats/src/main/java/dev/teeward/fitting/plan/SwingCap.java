package dev.teeward.fitting.plan;

/**
 * How many pairs the swings allow that are left.
 *
 * @param mostPairs never more pairs than these, unless they were hit already
 * @param swings the most full swings, all included
 * @param warmUp how many of them warm up
 * @param reserve how many of them are kept for re-hits; what is spent beyond it is taken from the pairs
 */
record SwingCap(int mostPairs, int swings, int warmUp, int reserve) {
    private static final int NO_CAP = 1_000_000;

    /** A number of pairs, however many swings they take. */
    static SwingCap ofPairs(int most) {
        return new SwingCap(most, NO_CAP, 0, 0);
    }

    /**
     * The pairs allowed in all, those that were hit included.
     *
     * @param whole the whole pairs
     * @param open 1 if a pair waits for its second shot, else 0
     * @param others the swings that made no pair, without warming up
     * @param warmed the swings that warmed up
     */
    int pairs(int whole, int open, int others, int warmed) {
        int kept = Math.max(0, reserve - others);
        int left = swings - Math.max(warmUp, warmed) - kept - (2 * whole) - open - others;
        int more = Math.max(0, left + open) / 2;
        return Math.min(whole + more, Math.max(whole, mostPairs));
    }
}
