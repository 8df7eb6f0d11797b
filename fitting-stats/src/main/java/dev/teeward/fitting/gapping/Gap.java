package dev.teeward.fitting.gapping;

import dev.teeward.fitting.compare.TestResult;
import dev.teeward.quantity.Interval;
import java.util.List;
import java.util.OptionalDouble;

/**
 * What lies between two neighbours of the bag. The first club is the one whose mean carry is longer.
 *
 * <pre>{@code
 * Gap gap = bag.gaps().get(2);
 * gap.difference().estimate();   // mean difference with its interval [m]
 * gap.overlap();                 // probability that a shot with the longer club lands shorter
 * gap.smaller();                 // probability that the gap is smaller than wanted
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 *
 * @param longer the club that carries farther on average
 * @param shorter its neighbour
 * @param difference longer minus shorter, by the paired t test if the shots alternate, else by Welch's [m]; each interval
 *     holds by itself
 * @param together the interval that holds for all gaps of the bag together with at least the level, after Bonferroni [m]
 * @param ordered the probability that the mean of the first club is the longer one; empty if the shots say nothing about
 *     their error, as all probabilities here
 * @param overlap the predictive probability that one single shot with the longer club carries less than one with the shorter,
 *     both to come and independent of each other. It holds the error of means and spreads too: where the clubs
 *     overlap in 8 % of shots in the long run, ten shots of each state 12 % on average (simulated)
 * @param smaller the probability that the gap is smaller than wanted, below wanted minus tolerance; empty if no gap is wanted
 * @param larger the probability that the gap is larger than wanted, above wanted plus tolerance; empty if no gap is wanted
 * @param mends what would make the estimate the wanted gap, each by itself, unmodifiable; none if no gap is wanted or the
 *     models cannot tell. A slower swing is no mend, nor is what makes the longest club of the bag shorter, nor a change
 *     of which the interval holds 0
 */
public record Gap(
        String longer,
        String shorter,
        TestResult difference,
        Interval together,
        OptionalDouble ordered,
        OptionalDouble overlap,
        OptionalDouble smaller,
        OptionalDouble larger,
        List<Mend> mends) {
    /**
     * Copies the list.
     *
     * @param longer the club that carries farther
     * @param shorter its neighbour
     * @param difference longer minus shorter [m]
     * @param together the interval for all gaps together [m]
     * @param ordered the probability of this order
     * @param overlap the probability that a longer club's shot lands shorter
     * @param smaller the probability that the gap is too small
     * @param larger the probability that the gap is too large
     * @param mends what would mend it
     */
    public Gap {
        mends = List.copyOf(mends);
    }
}
