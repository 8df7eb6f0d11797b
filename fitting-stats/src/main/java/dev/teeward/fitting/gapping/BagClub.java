package dev.teeward.fitting.gapping;

import dev.teeward.fitting.Club;
import dev.teeward.fitting.compare.Exclusion;
import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.Interval;
import dev.teeward.quantity.Length;
import java.util.List;
import java.util.Optional;

/**
 * One club of a bag: how far it carries, and how far it goes.
 *
 * <pre>{@code
 * BagClub longest = bag.clubs().get(0);
 * longest.carry().convertTo(LengthUnit.YARD);   // mean with its t interval
 * longest.nextShot().orElseThrow();             // where 8 of 10 single shots to come land [m]
 * longest.covers();                             // the distances that it is good for
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 *
 * @param name the name of the club
 * @param build how it is built, or empty
 * @param shots the used shots with a carry
 * @param carries their carries in the order of hitting, unmodifiable [m]
 * @param computed how many of these carries the flight model worked out from the launch
 * @param flagged how many of these shots a screen for mishits and misreads flags; they count all the same
 * @param exclusions what is not used, and why
 * @param carry the mean with its t interval, n - 1 degrees of freedom [m]; without ends if all are equal
 * @param deviation the standard deviation of the shots with its chi-square interval [m]
 * @param nextShot what holds a single shot to come with a probability of {@link Gapping#NEXT_SHOT_SHARE}, mean
 *     plus or minus {@code t s sqrt(1 + 1/n)} [m]; empty if all shots are equal
 * @param total the mean of carry and run with its t interval [m], of the used shots that have a total; empty below two
 * @param covers the distances that the club covers, as {@link Gapping} defines it; empty if it covers none
 */
public record BagClub(
        String name,
        Optional<Club> build,
        int shots,
        List<Double> carries,
        int computed,
        int flagged,
        List<Exclusion> exclusions,
        Estimate carry,
        Estimate deviation,
        Optional<Interval> nextShot,
        Optional<Estimate> total,
        Optional<Stretch> covers) {
    /**
     * Copies the lists.
     *
     * @param name the name of the club
     * @param build how it is built, or empty
     * @param shots the used shots with a carry
     * @param carries their carries [m]
     * @param computed how many carries the flight model worked out
     * @param flagged how many of these shots a screen flags
     * @param exclusions what is not used, and why
     * @param carry the mean with its t interval [m]
     * @param deviation the standard deviation with its interval [m]
     * @param nextShot where a single shot to come lands [m]
     * @param total the mean total with its interval [m]
     * @param covers the distances that the club covers
     */
    public BagClub {
        carries = List.copyOf(carries);
        exclusions = List.copyOf(exclusions);
    }

    /**
     * The mean carry as a length.
     *
     * @return the mean
     */
    public Length meanCarry() {
        return Length.ofMeters(carry.value());
    }
}
