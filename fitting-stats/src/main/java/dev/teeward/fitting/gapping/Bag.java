package dev.teeward.fitting.gapping;

import dev.teeward.quantity.Interval;
import dev.teeward.quantity.Length;
import dev.teeward.quantity.Warning;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A bag measured: its clubs from the longest to the shortest carry, the gaps between neighbours, and what nobody covers.
 *
 * <p>Immutable and thread-safe.
 *
 * @param clubs at least two, the longest mean carry first, unmodifiable
 * @param gaps one fewer, between neighbours in that order, unmodifiable
 * @param uncovered the stretches between the longest and the shortest mean carry that no club covers, by the estimates, nearest
 *     first, unmodifiable; {@link #settled} tells which are more than that
 * @param level the level of all intervals, each by itself
 * @param wanted the gap wanted, or empty
 * @param tolerance how far from it a gap may be, or empty
 * @param coverTolerance a club covers a distance if enough shots land at most so far from it
 * @param coverShare the share of shots that is enough
 * @param method what was done, in words
 * @param warnings what to know, unmodifiable
 */
public record Bag(
        List<BagClub> clubs,
        List<Gap> gaps,
        List<Stretch> uncovered,
        double level,
        Optional<Length> wanted,
        Optional<Length> tolerance,
        Length coverTolerance,
        double coverShare,
        String method,
        List<Warning> warnings) {
    private static final double HALVED_FROM = 1.5;

    /**
     * Copies the lists.
     *
     * @param clubs the clubs, the longest first
     * @param gaps the gaps in that order
     * @param uncovered what no club covers
     * @param level the level of all intervals
     * @param wanted the gap wanted
     * @param tolerance how far from it a gap may be
     * @param coverTolerance how far from a distance a shot may land
     * @param coverShare the share of shots that is enough
     * @param method what was done
     * @param warnings what to know
     */
    public Bag {
        clubs = List.copyOf(clubs);
        gaps = List.copyOf(gaps);
        uncovered = List.copyOf(uncovered);
        warnings = List.copyOf(warnings);
    }

    /**
     * One club.
     *
     * @param name its name
     * @return the club
     * @throws IllegalArgumentException if the bag has no such club
     */
    public BagClub club(String name) {
        return clubs.stream()
                .filter(club -> club.name().equals(name))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("the bag has no club \"" + name + "\"; its clubs are "
                        + String.join(", ", clubs.stream().map(BagClub::name).toList())));
    }

    /**
     * The clubs on either side of a stretch: the shortest whose mean carry reaches its farther end, and the longest whose mean
     * carry does not pass its nearer end.
     *
     * @param stretch one of {@link #uncovered()}
     * @return the longer club and the shorter one
     */
    public List<BagClub> neighbours(Stretch stretch) {
        BagClub longer = clubs.get(0);
        BagClub shorter = clubs.get(clubs.size() - 1);
        for (BagClub club : clubs) {
            double mean = club.carry().value();
            if (mean >= stretch.to().meters()) {
                longer = club;
            }
            if (mean <= stretch.from().meters() && mean > shorter.carry().value()) {
                shorter = club;
            }
        }
        return List.of(longer, shorter);
    }

    /**
     * Whether a stretch that no club covers is more than an estimate: at least as wide as the half-widths of the intervals of its
     * two {@linkplain #neighbours neighbours'} carries together.
     *
     * @param stretch one of {@link #uncovered()}
     * @return false too if an interval has no ends
     */
    public boolean settled(Stretch stretch) {
        double unsure = 0.0;
        for (BagClub club : neighbours(stretch)) {
            Interval interval = club.carry().interval();
            unsure += interval.bounded() ? interval.halfWidth() : Double.POSITIVE_INFINITY;
        }
        return stretch.length().meters() >= unsure;
    }

    /**
     * What one more club, half-way, would make of a gap that is wider than 1.5 wanted ones: from there on a half lies nearer to
     * the wanted gap than the whole.
     *
     * @param gap one of {@link #gaps()}
     * @return each of the two gaps that it would leave [m]; empty if no gap is wanted or this one is not so wide
     */
    public OptionalDouble halved(Gap gap) {
        double lies = gap.difference().estimate().value();
        return wanted.isPresent() && lies > HALVED_FROM * wanted.get().meters()
                ? OptionalDouble.of(0.5 * lies)
                : OptionalDouble.empty();
    }

    /**
     * Whether there is a warning with a code.
     *
     * @param code the code
     * @return true if so
     */
    public boolean warns(String code) {
        return warnings.stream().anyMatch(warning -> warning.code().equals(code));
    }
}
