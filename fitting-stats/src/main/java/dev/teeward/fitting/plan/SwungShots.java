package dev.teeward.fitting.plan;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.ShotPair;
import dev.teeward.fitting.ShotSet;
import dev.teeward.fitting.compare.BrokenPair;
import dev.teeward.fitting.compare.ShotPairing;
import dev.teeward.fitting.screen.WarmUp;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * What every shot of a session file with either club was: of a whole pair, opening the pair in play, thrown away and hit
 * again, warming up, or none of these; all of them were swung. Confined to one thread.
 */
final class SwungShots {
    private final List<Shot> both;
    private final String first;
    private final Map<Integer, BrokenPair> broken = new HashMap<>();
    private final boolean named;
    private final Set<String> dropped = new HashSet<>();
    private final List<ShotPair> whole;
    private final List<Shot> thrown = new ArrayList<>();
    private Optional<Shot> open = Optional.empty();
    private int warmed;

    SwungShots(ShotSet shots, String first, String second, Metric metric) {
        this.first = first;
        both = numbered(
                shots.filter(shot -> shot.club().equals(first) || shot.club().equals(second)));
        ShotPairing pairing = ShotPairing.of(ShotSet.of(both), first, second);
        named = pairing.source() == ShotPairing.Source.NAMED;
        whole = pairing.pairs().stream()
                .filter(pair -> pair.first().has(metric) && pair.second().has(metric))
                .sorted(Comparator.comparingInt(SwungShots::completed))
                .toList();
        for (BrokenPair pair : pairing.broken()) {
            pair.shots().forEach(shot -> broken.put(shot.number(), pair));
        }
        inPlay().ifPresent(pair -> {
            List<Shot> used = pair.shots().stream().filter(Shot::used).toList();
            if (used.size() == 1 && used.get(0).has(metric)) {
                open = Optional.of(used.get(0));
            }
        });
        Set<String> begun = new HashSet<>();
        for (Shot shot : both) {
            if (shot.used()) {
                begun.add(shot.club());
            } else if (!begun.contains(shot.club())
                    && shot.exclusion().filter(WarmUp.REASON::equals).isPresent()) {
                warmed++;
            } else {
                excluded(shot);
            }
        }
    }

    /** Pairing by order copies shots, and numbers in a file need not be unique. */
    private static List<Shot> numbered(ShotSet shots) {
        List<Shot> numbered = new ArrayList<>();
        for (Shot shot : shots) {
            numbered.add(shot.toBuilder().number(numbered.size() + 1).build());
        }
        return numbered;
    }

    /** The pair of the last shot, if it still waits for a shot. */
    private Optional<BrokenPair> inPlay() {
        return Optional.ofNullable(broken.get(both.size()));
    }

    private void excluded(Shot shot) {
        Optional<BrokenPair> pair = Optional.ofNullable(broken.get(shot.number()));
        boolean again;
        if (pair.isPresent()) {
            again = pair.get().shots().stream()
                            .anyMatch(other -> other.used() && other.club().equals(shot.club()))
                    || pair.equals(inPlay());
        } else {
            again = (named && shot.pair().isPresent()) || hitAgainAtOnce(shot);
        }
        if (again) {
            thrown.add(shot);
        } else {
            dropped.add(pair.map(BrokenPair::id).orElse("shot " + shot.number()));
        }
    }

    private boolean hitAgainAtOnce(Shot shot) {
        for (Shot next : both.subList(shot.number(), both.size())) {
            if (!next.club().equals(shot.club())) {
                return false;
            }
            if (next.used()) {
                return true;
            }
        }
        return true;
    }

    private static int completed(ShotPair pair) {
        return Math.max(pair.first().number(), pair.second().number());
    }

    /** The whole pairs that have the metric, in the order in which they became whole. */
    List<ShotPair> whole() {
        return whole;
    }

    /** How many of the whole pairs have a shot of another one between their two. */
    int apart() {
        List<Integer> swings = whole.stream()
                .flatMap(pair -> Stream.of(pair.first().number(), pair.second().number()))
                .sorted()
                .toList();
        Map<Integer, Integer> places = new HashMap<>();
        swings.forEach(swing -> places.put(swing, places.size()));
        return (int) whole.stream()
                .filter(pair -> Math.abs(place(places, pair.first()) - place(places, pair.second())) > 1)
                .count();
    }

    private static int place(Map<Integer, Integer> places, Shot shot) {
        return places.getOrDefault(shot.number(), 0);
    }

    /** The only used shot of the pair in play. */
    Optional<Shot> open() {
        return open;
    }

    /** The shots that were hit again in their pair, or are to be if it is in play. */
    List<Shot> thrown() {
        return thrown;
    }

    /** How many swings warmed up. */
    int warmed() {
        return warmed;
    }

    /** How many swings are none of the others: no reading, a partner lost, an exclusion that was not hit again. */
    int others() {
        return both.size() - (2 * whole.size()) - (open.isPresent() ? 1 : 0) - thrown.size() - warmed;
    }

    /** How many pairs an exclusion took out. */
    int dropped() {
        return dropped.size();
    }

    ReHit.Side side(Shot shot) {
        return shot.club().equals(first) ? ReHit.Side.FIRST : ReHit.Side.SECOND;
    }
}
