package dev.teeward.fitting.plan;

import dev.teeward.fitting.compare.SequentialTTest;
import dev.teeward.fitting.compare.Verdict;
import dev.teeward.quantity.Warning;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * Where a session stands after its pairs so far, and what to do next.
 *
 * <pre>{@code
 * Standing now = session.standing();
 * now.advice();                     // SETTLED, KEEP_GOING or WILL_NOT_SETTLE
 * now.look().difference();          // with an interval that may be read after every pair
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 *
 * @param advice what to do
 * @param verdict what is settled, or undecided
 * @param look the always-valid test of all pairs so far, or empty before the first pair
 * @param settledAfter after how many pairs it was settled for the first time; it stays settled unless later looks exclude the
 *     earlier ones
 * @param prediction what to expect of more pairs, or empty if it is settled, with fewer than 3 pairs, without spread, or if the
 *     clubs were hit in blocks
 * @param warnings what to know before using this
 */
public record Standing(
        Advice advice,
        Verdict verdict,
        Optional<SequentialTTest.Result> look,
        OptionalInt settledAfter,
        Optional<Prediction> prediction,
        List<Warning> warnings) {
    /**
     * Copies the warnings.
     *
     * @param advice what to do
     * @param verdict what is settled, or undecided
     * @param look the always-valid test of all pairs so far, or empty before the first pair
     * @param settledAfter after how many pairs it was settled for the first time
     * @param prediction what to expect of more pairs
     * @param warnings what to know before using this
     */
    public Standing {
        warnings = List.copyOf(warnings);
    }

    /** What to do next. */
    public enum Advice {
        /** The clubs differ, or are practically the same: stop. */
        SETTLED,

        /** Hit another pair. */
        KEEP_GOING,

        /** The pairs that are allowed will hardly settle it: stop, or accept a wider margin. */
        WILL_NOT_SETTLE
    }

    /**
     * What to expect of more pairs, given those seen.
     *
     * @param chance that it is settled, either way, by the largest number of pairs allowed
     * @param low a tenth of the continued sessions are settled by so many more pairs, or empty if fewer are
     * @param central half of them, or empty
     * @param high nine tenths of them, or empty
     * @param allowed how many more pairs are allowed
     */
    public record Prediction(double chance, OptionalInt low, OptionalInt central, OptionalInt high, int allowed) {}
}
