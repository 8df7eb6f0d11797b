package dev.teeward.fitting.compare;

import dev.teeward.fitting.Shot;
import dev.teeward.fitting.ShotPair;
import dev.teeward.fitting.ShotSet;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Which shots of two clubs belong together, and which pairs are broken.
 *
 * <p>If any used shot names its pair, the names decide. Otherwise the order does, within each day and each file: if the two
 * clubs were hit in turn (each two successive shots hold both, the very last one may wait for its partner), successive twos
 * are the pairs, numbered from 1; excluded shots keep their place if that gives turns, else only the used shots are looked
 * at. If neither gives turns, a shot that was followed by another with the same club is left over ({@link
 * BrokenPair.Kind#SURPLUS}) and the next one begins a pair, as long as at most one shot, or one in ten, is left over that
 * way. A day with more of them has no pairs. No pair ever spans two days.
 *
 * <pre>{@code
 * ShotPairing pairing = ShotPairing.of(session.shots(), "Alder", "Rowan");
 * pairing.pairs();  // complete pairs of used shots
 * pairing.broken(); // the others, each with a reason
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class ShotPairing {
    private final Source source;
    private final ShotOrderKind order;
    private final List<ShotPair> pairs;
    private final List<BrokenPair> broken;
    private final List<Shot> unpaired;
    private final List<Shot> paired;
    private final boolean enough;

    /** Where pairs come from. */
    public enum Source {
        /** The shots name their pair. */
        NAMED,

        /** The clubs were hit in turn. */
        ORDER,

        /** There are no pairs. */
        NONE
    }

    private ShotPairing(Source source, ShotOrderKind order, ShotSet both, String first, String second) {
        this.source = source;
        this.order = order;
        List<Shot> single = new ArrayList<>();
        Map<String, List<Shot>> groups = new LinkedHashMap<>();
        for (Shot shot : both) {
            String id = source == Source.NONE ? null : shot.pair().orElse(null);
            if (id != null) {
                groups.computeIfAbsent(id, key -> new ArrayList<>(2)).add(shot);
            } else if (shot.used()) {
                single.add(shot);
            }
        }
        List<BrokenPair> incomplete = new ArrayList<>();
        List<Shot> whole = new ArrayList<>();
        groups.forEach((id, shots) -> {
            int firsts = 0;
            int seconds = 0;
            for (Shot shot : shots) {
                firsts += shot.used() && shot.club().equals(first) ? 1 : 0;
                seconds += shot.used() && shot.club().equals(second) ? 1 : 0;
            }
            if (firsts == 1 && seconds == 1) {
                for (Shot shot : shots) {
                    if (shot.used()) {
                        whole.add(shot);
                    }
                }
            } else {
                boolean leftOver = source == Source.ORDER && id.endsWith(Turns.LEFT_OVER);
                incomplete.add(leftOver ? surplus(id, shots) : broken(id, shots, firsts != 1 ? first : second));
            }
        });
        this.pairs = ShotSet.of(whole).pairs(first, second);
        Set<String> ids = new HashSet<>();
        for (ShotPair pair : pairs) {
            ids.add(pair.id());
        }
        List<Shot> ofPairs = new ArrayList<>();
        for (Shot shot : both) {
            if (shot.used() && ids.contains(shot.pair().orElse(null))) {
                ofPairs.add(shot);
            }
        }
        this.paired = Collections.unmodifiableList(ofPairs);
        this.broken = List.copyOf(incomplete);
        this.unpaired = List.copyOf(single);
        int fewest = Math.min(
                both.used().club(first).size(), both.used().club(second).size());
        this.enough = pairs.size() >= 2 && 2 * pairs.size() >= fewest;
    }

    /**
     * Pairs the shots of two clubs.
     *
     * @param shots all shots in the order of hitting, used and excluded; those with other clubs are passed over
     * @param first the name of a club
     * @param second the name of another club
     * @return the pairs
     * @throws IllegalArgumentException if the names are equal
     */
    public static ShotPairing of(ShotSet shots, String first, String second) {
        ShotSet both = bothClubs(shots, first, second);
        List<Turns> days = Turns.ofEachDay(both);
        ShotOrderKind order = Turns.kind(days, both.size());
        if (both.used().stream().anyMatch(shot -> shot.pair().isPresent())) {
            return new ShotPairing(Source.NAMED, order, both, first, second);
        }
        List<Shot> placed = new ArrayList<>();
        int number = 0;
        boolean found = false;
        for (Turns turns : days) {
            number = turns.name(placed, number);
            found |= turns.taken();
        }
        return new ShotPairing(
                found && both.size() >= 4 ? Source.ORDER : Source.NONE, order, ShotSet.of(placed), first, second);
    }

    static ShotPairing none(ShotSet shots, String first, String second) {
        ShotSet both = bothClubs(shots, first, second);
        return new ShotPairing(Source.NONE, Turns.kind(Turns.ofEachDay(both), both.size()), both, first, second);
    }

    private static ShotSet bothClubs(ShotSet shots, String first, String second) {
        return shots.filter(shot -> shot.club().equals(first) || shot.club().equals(second));
    }

    private static BrokenPair surplus(String id, List<Shot> shots) {
        Shot shot = shots.get(0);
        return new BrokenPair(
                id,
                BrokenPair.Kind.SURPLUS,
                "shot " + shot.number() + " with " + shot.club() + " was followed by another with the same club",
                shots);
    }

    private static BrokenPair broken(String id, List<Shot> shots, String club) {
        ShotSet own = ShotSet.of(shots).club(club);
        if (own.used().size() > 1) {
            return new BrokenPair(id, BrokenPair.Kind.SURPLUS, "there is more than one used shot with " + club, shots);
        }
        if (own.isEmpty()) {
            return new BrokenPair(id, BrokenPair.Kind.MISSING, "there is no shot with " + club, shots);
        }
        Shot out = own.shots().get(0);
        return new BrokenPair(
                id,
                BrokenPair.Kind.EXCLUDED,
                "shot " + out.number() + " with " + club + " is excluded ("
                        + out.exclusion().orElse("") + ")",
                shots);
    }

    /**
     * Where the pairs come from.
     *
     * @return the source
     */
    public Source source() {
        return source;
    }

    /**
     * In which order the clubs were hit, judged within each day and file; excluded shots keep their place where they were part of
     * a turn.
     *
     * @return the kind of order
     */
    public ShotOrderKind order() {
        return order;
    }

    /**
     * The complete pairs of used shots. Shots paired by order carry the number of their pair.
     *
     * @return the pairs in the order in which they begin, unmodifiable
     */
    public List<ShotPair> pairs() {
        return pairs;
    }

    /**
     * The pairs that lack a used shot.
     *
     * @return the broken pairs, unmodifiable
     */
    public List<BrokenPair> broken() {
        return broken;
    }

    /**
     * The used shots that name no pair, or of days without turns; all of them if there are no pairs.
     *
     * @return the shots, unmodifiable
     */
    public List<Shot> unpaired() {
        return unpaired;
    }

    /**
     * Whether the pairs are enough to compare by: at least two, and at least half of the used shots of the club that has
     * fewer.
     *
     * @return true if so
     */
    public boolean enough() {
        return enough;
    }

    /** The shots of the pairs in the order of hitting. */
    List<Shot> paired() {
        return paired;
    }

    @Override
    public String toString() {
        return pairs.size() + " pairs (" + source + "), " + broken.size() + " broken, " + unpaired.size() + " unpaired";
    }
}
