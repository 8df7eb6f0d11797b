package dev.teeward.fitting.pool;

/**
 * How many golfers an interval of the mean effect needs in all, those already measured among them.
 *
 * <p>Immutable and thread-safe.
 *
 * @param golfers at the estimated variance between golfers
 * @param low at the lower limit of that variance
 * @param high at its upper limit
 * @param measured how many there are already
 */
public record GolfersNeeded(int golfers, int low, int high, int measured) {
    /**
     * How many more.
     *
     * @return golfers less those measured, at least 0
     */
    public int more() {
        return Math.max(0, golfers - measured);
    }
}
