package dev.teeward.fitting.compare;

/**
 * The verdict of a difference test and an equivalence test together.
 *
 * <p>If the interval lies inside the margin the clubs are practically the same, even when the difference is surely not
 * zero: that is {@link #differentButTrivial()}. Otherwise they are different if the difference test is significant, and
 * undecided if not.
 *
 * <pre>{@code
 * ThreeWayVerdict v = ThreeWayVerdict.of(
 *         PairedTTest.withDefaults().test(x, y), TostTest.withinMargin(5.0).testPairs(x, y));
 * v.verdict(); // DIFFERENT, PRACTICALLY_THE_SAME or UNDECIDED
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 *
 * @param verdict the verdict
 * @param differentButTrivial whether the difference is significant and yet inside the margin
 */
public record ThreeWayVerdict(Verdict verdict, boolean differentButTrivial) {
    /**
     * The verdict of two tests on the same shots.
     *
     * @param difference a two-sided test of no difference
     * @param equivalence the equivalence test against the margin
     * @return the verdict
     * @throws IllegalArgumentException if the difference test is one-sided or has a null value other than 0
     */
    public static ThreeWayVerdict of(TestResult difference, TostTest.Result equivalence) {
        if (difference.alternative() != Alternative.TWO_SIDED || difference.nullValue() != 0.0) {
            throw new IllegalArgumentException("difference must be a two-sided test of 0, but was "
                    + difference.alternative().words() + " of " + difference.nullValue());
        }
        boolean different = difference.significant();
        if (equivalence.equivalent()) {
            return new ThreeWayVerdict(Verdict.PRACTICALLY_THE_SAME, different);
        }
        return new ThreeWayVerdict(different ? Verdict.DIFFERENT : Verdict.UNDECIDED, false);
    }
}
