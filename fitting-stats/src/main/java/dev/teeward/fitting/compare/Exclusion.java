package dev.teeward.fitting.compare;

/**
 * Some shots (or pairs) that a result does not use, and why.
 *
 * @param count how many, at least 1
 * @param reason why, not blank
 */
public record Exclusion(int count, String reason) {
    /**
     * An exclusion.
     *
     * @param count how many, at least 1
     * @param reason why, not blank
     * @throws IllegalArgumentException if the count is below 1 or the reason is blank
     */
    public Exclusion {
        if (count < 1) {
            throw new IllegalArgumentException("count of excluded shots must be at least 1, but was " + count);
        }
        if (reason.isBlank()) {
            throw new IllegalArgumentException("reason for an exclusion must not be blank");
        }
    }
}
