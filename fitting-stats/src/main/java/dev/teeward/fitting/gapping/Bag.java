package dev.teeward.fitting.gapping;

import dev.teeward.quantity.Length;
import dev.teeward.quantity.Warning;
import java.util.List;
import java.util.Optional;

/**
 * A bag measured: its clubs from the longest to the shortest carry, the gaps between neighbours, and what nobody covers.
 *
 * <p>Immutable and thread-safe.
 *
 * @param clubs at least two, the longest mean carry first, unmodifiable
 * @param gaps one fewer, between neighbours in that order, unmodifiable
 * @param uncovered the stretches between the longest and the shortest mean carry that no club covers, nearest first,
 *     unmodifiable
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
     * Whether there is a warning with a code.
     *
     * @param code the code
     * @return true if so
     */
    public boolean warns(String code) {
        return warnings.stream().anyMatch(warning -> warning.code().equals(code));
    }
}
