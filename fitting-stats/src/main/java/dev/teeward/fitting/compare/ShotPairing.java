package dev.teeward.fitting.compare;

import dev.teeward.fitting.Shot;
import dev.teeward.fitting.ShotPair;
import dev.teeward.fitting.ShotSet;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Which shots of two clubs belong together, and which pairs are broken.
 *
 * <p>If any used shot names its pair, the names decide. Otherwise, if the two clubs were hit in turn (each two successive
 * shots hold both, the very last one may wait for its partner), successive twos are the pairs, numbered from 1; excluded
 * shots keep their place if that gives turns, else only the used shots are looked at. Otherwise there are no pairs.
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
                groups.computeIfAbsent(id, key -> new ArrayList<>()).add(shot);
            } else if (shot.used()) {
                single.add(shot);
            }
        }
        List<BrokenPair> incomplete = new ArrayList<>();
        List<Shot> whole = new ArrayList<>();
        groups.forEach((id, shots) -> {
            ShotSet used = ShotSet.of(shots).used();
            int firsts = used.club(first).size();
            int seconds = used.club(second).size();
            if (firsts == 1 && seconds == 1) {
                whole.addAll(used.shots());
            } else {
                incomplete.add(broken(id, shots, firsts != 1 ? first : second));
            }
        });
        this.pairs = ShotSet.of(whole).pairs(first, second);
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
        ShotOrderKind order = kind(both.shots());
        if (both.used().stream().anyMatch(shot -> shot.pair().isPresent())) {
            return new ShotPairing(Source.NAMED, order, both, first, second);
        }
        if (inTurn(both.shots())) {
            return new ShotPairing(Source.ORDER, order, numbered(both.shots()), first, second);
        }
        if (inTurn(both.used().shots())) {
            return new ShotPairing(Source.ORDER, order, numbered(both.used().shots()), first, second);
        }
        return new ShotPairing(Source.NONE, order, both, first, second);
    }

    static ShotPairing none(ShotSet shots, String first, String second) {
        ShotSet both = bothClubs(shots, first, second);
        return new ShotPairing(Source.NONE, kind(both.shots()), both, first, second);
    }

    private static ShotSet bothClubs(ShotSet shots, String first, String second) {
        return shots.filter(shot -> shot.club().equals(first) || shot.club().equals(second));
    }

    private static ShotSet numbered(List<Shot> shots) {
        List<Shot> named = new ArrayList<>();
        for (int i = 0; i < shots.size(); i++) {
            named.add(shots.get(i).toBuilder().pair(String.valueOf(i / 2 + 1)).build());
        }
        return ShotSet.of(named);
    }

    private static boolean inTurn(List<Shot> shots) {
        if (shots.size() < 4) {
            return false;
        }
        for (int i = 0; i + 1 < shots.size(); i += 2) {
            if (shots.get(i).club().equals(shots.get(i + 1).club())) {
                return false;
            }
        }
        return true;
    }

    private static ShotOrderKind kind(List<Shot> shots) {
        if (inTurn(shots)) {
            String lead = shots.get(0).club();
            int twos = shots.size() / 2;
            int led = 0;
            for (int i = 0; i < twos; i++) {
                led += shots.get(2 * i).club().equals(lead) ? 1 : 0;
            }
            return Math.abs(2 * led - twos) <= 1 ? ShotOrderKind.ALTERNATED_ABBA : ShotOrderKind.ALTERNATED;
        }
        int runs = 0;
        for (int i = 0; i < shots.size(); i++) {
            runs += i == 0 || !shots.get(i).club().equals(shots.get(i - 1).club()) ? 1 : 0;
        }
        return runs == 2 && shots.size() > 2 ? ShotOrderKind.BLOCKED : ShotOrderKind.MIXED;
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
     * In which order the clubs were hit, excluded shots included.
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
     * The used shots that name no pair; all of them if there are no pairs.
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

    @Override
    public String toString() {
        return pairs.size() + " pairs (" + source + "), " + broken.size() + " broken, " + unpaired.size() + " unpaired";
    }
}
